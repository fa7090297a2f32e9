namespace Boardwright.Units;

/// <summary>How far a deck bends for each kilogram that stands on it.</summary>
public readonly record struct BendPerMass : IQuantity<BendPerMass>, IComparable<BendPerMass>
{
    BendPerMass(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "bend per mass", "mm/kg", "0.12 mm/kg", 0.0, 0.1,
        [
            new("m/kg", 1.0, 0.0, null, []),
            new("mm/kg", 0.001, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static BendPerMass FromSi(double si) => new(si);

    /// <summary>The value in m/kg.</summary>
    public double MetresPerKilogram => Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(BendPerMass a, BendPerMass b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(BendPerMass a, BendPerMass b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(BendPerMass a, BendPerMass b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(BendPerMass a, BendPerMass b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(BendPerMass other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
