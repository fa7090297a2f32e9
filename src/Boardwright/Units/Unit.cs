namespace Boardwright.Units;

/// <summary>One way to write a quantity: SI value = written value × factor + offset.</summary>
/// <param name="Symbol">How the unit is written out.</param>
/// <param name="Factor">SI units in one of this unit.</param>
/// <param name="Offset">SI value of zero in this unit; not zero for temperatures only.</param>
/// <param name="Imperial">The unit that stands in its place in an imperial report, or <c>null</c> where the trade uses this one everywhere.</param>
/// <param name="Spellings">Other spellings that are read.</param>
public sealed record Unit(string Symbol, double Factor, double Offset, string? Imperial, IReadOnlyList<string> Spellings)
{
    /// <summary>The SI value of a number written in this unit.</summary>
    public double ToSi(double written) => written * Factor + Offset;

    /// <summary>The number to write in this unit for an SI value.</summary>
    public double FromSi(double si) => (si - Offset) / Factor;

    /// <summary>Whether a text names this unit.</summary>
    public bool Names(string text) => Symbol == text || Spellings.Contains(text, StringComparer.Ordinal);
}
