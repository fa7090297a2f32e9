namespace Boardwright.Units;

/// <summary>A plain number, such as a ratio or a coefficient; a percent sign may be used.</summary>
public readonly record struct Number : IQuantity<Number>, IComparable<Number>
{
    Number(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "number", "", "0.014", -1000000.0, 1000000.0,
        [
            new("", 1.0, 0.0, null, []),
            new("%", 0.01, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Number FromSi(double si) => new(si);

    /// <summary>The value in plain number.</summary>
    public double Value => Si;

    /// <summary>From a value in plain number.</summary>
    public static Number FromValue(double value) => new(value);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Number a, Number b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Number a, Number b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Number a, Number b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Number a, Number b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Number other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
