namespace Boardwright.Units;

/// <summary>A difference of two temperatures.</summary>
public readonly record struct TemperatureDifference : IQuantity<TemperatureDifference>, IComparable<TemperatureDifference>
{
    TemperatureDifference(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "temperature difference", "K", "12 K", -600.0, 600.0,
        [
            new("K", 1.0, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static TemperatureDifference FromSi(double si) => new(si);

    /// <summary>The value in K.</summary>
    public double Kelvins => Si;

    /// <summary>From a value in K.</summary>
    public static TemperatureDifference FromKelvins(double kelvins) => new(kelvins);

    /// <summary>The sum.</summary>
    public static TemperatureDifference operator +(TemperatureDifference a, TemperatureDifference b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static TemperatureDifference operator -(TemperatureDifference a, TemperatureDifference b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static TemperatureDifference operator -(TemperatureDifference a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static TemperatureDifference operator *(TemperatureDifference a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static TemperatureDifference operator *(double times, TemperatureDifference a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static TemperatureDifference operator /(TemperatureDifference a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(TemperatureDifference a, TemperatureDifference b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(TemperatureDifference a, TemperatureDifference b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(TemperatureDifference a, TemperatureDifference b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(TemperatureDifference a, TemperatureDifference b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(TemperatureDifference a, TemperatureDifference b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(TemperatureDifference other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
