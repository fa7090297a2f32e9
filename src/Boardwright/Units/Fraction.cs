namespace Boardwright.Units;

/// <summary>A part of a whole, or a slope (rise over run); written with a percent sign.</summary>
public readonly record struct Fraction : IQuantity<Fraction>, IComparable<Fraction>
{
    Fraction(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "fraction", "%", "12 %", -10.0, 10.0,
        [
            new("%", 0.01, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Fraction FromSi(double si) => new(si);

    /// <summary>The value in plain number.</summary>
    public double Value => Si;

    /// <summary>From a value in plain number.</summary>
    public static Fraction FromValue(double value) => new(value);

    /// <summary>The value in %.</summary>
    public double Percent => Si / 0.01;

    /// <summary>From a value in %.</summary>
    public static Fraction FromPercent(double percent) => new(percent * 0.01);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Fraction a, Fraction b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Fraction a, Fraction b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Fraction a, Fraction b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Fraction a, Fraction b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Fraction other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
