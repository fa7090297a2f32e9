using System.Globalization;

namespace Boardwright.Units;

/// <summary>What a quantity measures, in which units it may be written and within which bounds it makes sense on a board.</summary>
public sealed record Dimension
{
    /// <summary>Describes a dimension.</summary>
    /// <param name="name">The name in a sentence, such as <c>length</c>.</param>
    /// <param name="usual">Symbol of the unit used where nothing else is asked for.</param>
    /// <param name="example">A right value as a person would write it.</param>
    /// <param name="least">Least sensible value, SI.</param>
    /// <param name="greatest">Greatest sensible value, SI.</param>
    /// <param name="units">Every unit that is read; the empty symbol stands for a bare number.</param>
    public Dimension(string name, string usual, string example, double least, double greatest, IReadOnlyList<Unit> units)
    {
        (Name, Example, Least, Greatest, Units) = (name, example, least, greatest, units);
        Usual = Find(usual) ?? throw new ArgumentException($"'{usual}' is not a unit of {name}.", nameof(usual));
    }

    /// <summary>The name in a sentence, such as <c>length</c>.</summary>
    public string Name { get; }

    /// <summary>A right value as a person would write it.</summary>
    public string Example { get; }

    /// <summary>Least sensible value, SI.</summary>
    public double Least { get; }

    /// <summary>Greatest sensible value, SI.</summary>
    public double Greatest { get; }

    /// <summary>Every unit that is read.</summary>
    public IReadOnlyList<Unit> Units { get; }

    /// <summary>The unit used where nothing else is asked for.</summary>
    public Unit Usual { get; }

    /// <summary>The unit that a text names.</summary>
    /// <returns>The unit, or <c>null</c> when the text names none of this dimension.</returns>
    public Unit? Find(string symbol)
    {
        foreach (var unit in Units)
        {
            if (unit.Names(symbol))
                return unit;
        }

        return null;
    }

    /// <summary>
    /// Writes an SI value. The format is empty (the usual unit, about three significant digits), a unit
    /// (<c>mm</c>), or a number format and a unit (<c>0.00 mm</c>). Under <see cref="UnitSystem.Imperial"/> the unit is
    /// replaced by its imperial counterpart and, as the asked-for decimals belong to the metric unit, three significant digits are shown.
    /// </summary>
    public string Write(double si, string? format, IFormatProvider? provider)
    {
        var (digits, unit) = Split(format);
        if (UnitSystem.Of(provider).IsImperial && unit.Imperial is { } counterpart && Find(counterpart) is { } imperial)
            (digits, unit) = (null, imperial);
        var written = unit.FromSi(si);
        var number = digits is null ? Figures(written) : (written + 0.0).ToString(digits, CultureInfo.InvariantCulture);
        return unit.Symbol switch
        {
            "" => number,
            _ => $"{number} {unit.Symbol}",
        };
    }

    /// <summary>A number with three significant digits, or all whole digits when it has more; never an exponent below a million.</summary>
    public static string Figures(double value)
    {
        if (!double.IsFinite(value))
            return value.ToString(CultureInfo.InvariantCulture);
        var magnitude = value == 0 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(value)) + 1e-12);
        var decimals = Math.Clamp(2 - magnitude, 0, 6);
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded + 0.0).ToString(decimals == 0 ? "0" : "0." + new string('#', decimals), CultureInfo.InvariantCulture);
    }

    (string? Digits, Unit Unit) Split(string? format)
    {
        if (string.IsNullOrEmpty(format) || format == "G")
            return (null, Usual);
        if (Find(format) is { } whole)
            return (null, whole);
        var gap = format.IndexOf(' ');
        var digits = gap < 0 ? format : format[..gap];
        var unit = gap < 0 ? Usual : Find(format[(gap + 1)..]);
        if (unit is null || digits.Trim('0', '#', '.').Length > 0)
            throw new FormatException($"'{format}' is not a number format and a unit of {Name}.");
        return (digits, unit);
    }
}
