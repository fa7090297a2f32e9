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
        return unit.Symbol.Length == 0 ? number : $"{number} {unit.Symbol}";
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

/// <summary>One way to write a quantity: SI value = written value × factor + offset.</summary>
/// <param name="Symbol">How the unit is written out.</param>
/// <param name="Factor">SI units in one of this unit.</param>
/// <param name="Imperial">The unit in its place in an imperial report, or <c>null</c> where the trade uses this one everywhere.</param>
/// <param name="Spellings">Other spellings that are read.</param>
public sealed record Unit(string Symbol, double Factor, string? Imperial = null, params IReadOnlyList<string> Spellings)
{
    /// <summary>SI value of zero in this unit; not zero for temperatures only.</summary>
    public double Offset { get; init; }
    /// <summary>The SI value of a number written in this unit.</summary>
    public double ToSi(double written) => written * Factor + Offset;
    /// <summary>The number to write in this unit for an SI value.</summary>
    public double FromSi(double si) => (si - Offset) / Factor;
    /// <summary>Whether a text names this unit.</summary>
    public bool Names(string text) => Symbol == text || Spellings.Contains(text, StringComparer.Ordinal);
}

/// <summary>Every dimension, so that a number with the symbol of its unit can be written in the reader's units.</summary>
public static class Dimensions
{
    /// <summary>Every dimension. Where two share a symbol the first is meant: <c>K</c> alone is a difference, <c>%</c> a number.</summary>
    public static IReadOnlyList<Dimension> All { get; } =
    [
        Number.Dimension, Fraction.Dimension, Length.Dimension, Speed.Dimension, Mass.Dimension, Force.Dimension, Torque.Dimension,
        Power.Dimension, Energy.Dimension, EnergyPerDistance.Dimension, Charge.Dimension, Voltage.Dimension, Current.Dimension,
        Resistance.Dimension, Inductance.Dimension, Capacitance.Dimension, TemperatureDifference.Dimension, Temperature.Dimension,
        ThermalResistance.Dimension, HeatCapacity.Dimension, Duration.Dimension, Frequency.Dimension, Angle.Dimension,
        AngularSpeed.Dimension, AngularStiffness.Dimension, Acceleration.Dimension, Area.Dimension, BendPerMass.Dimension,
        FusingIntegral.Dimension, Inertia.Dimension, SpeedConstant.Dimension,
    ];

    /// <summary>A number in the reader's units.</summary>
    /// <param name="value">The number.</param>
    /// <param name="symbol">Symbol of its unit, as figures and findings write it.</param>
    /// <param name="system">The reader's units.</param>
    /// <returns>Number and symbol; as they were where the unit has no counterpart or is none of ours, such as a currency.</returns>
    public static (double Value, string Symbol) In(UnitSystem system, double value, string symbol)
    {
        foreach (var dimension in All)
        {
            if (dimension.Find(symbol) is not { } unit)
                continue;
            return system.IsImperial && unit.Imperial is { } counterpart && dimension.Find(counterpart) is { } imperial
                ? (imperial.FromSi(unit.ToSi(value)), imperial.Symbol)
                : (value, unit.Symbol);
        }

        return (value, symbol);
    }
}
