namespace Boardwright.Units;

/// <summary>A speed along the road, or of the wind.</summary>
public readonly record struct Speed : IQuantity<Speed>, IComparable<Speed>
{
    Speed(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "speed", "km/h", "28 km/h", 0.0, 100.0,
        [
            new("m/s", 1.0, 0.0, "ft/s", []),
            new("km/h", 0.2777777777777778, 0.0, "mph", ["kmh", "kph"]),
            new("mph", 0.44704, 0.0, null, ["mi/h"]),
            new("ft/s", 0.3048, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Speed FromSi(double si) => new(si);

    /// <summary>The value in m/s.</summary>
    public double MetresPerSecond => Si;

    /// <summary>From a value in m/s.</summary>
    public static Speed FromMetresPerSecond(double metresPerSecond) => new(metresPerSecond);

    /// <summary>The value in km/h.</summary>
    public double KilometresPerHour => Si / 0.2777777777777778;

    /// <summary>From a value in km/h.</summary>
    public static Speed FromKilometresPerHour(double kilometresPerHour) => new(kilometresPerHour * 0.2777777777777778);

    /// <summary>The value in mph.</summary>
    public double MilesPerHour => Si / 0.44704;

    /// <summary>From a value in mph.</summary>
    public static Speed FromMilesPerHour(double milesPerHour) => new(milesPerHour * 0.44704);

    /// <summary>The sum.</summary>
    public static Speed operator +(Speed a, Speed b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Speed operator -(Speed a, Speed b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Speed operator -(Speed a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Speed operator *(Speed a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Speed operator *(double times, Speed a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Speed operator /(Speed a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Speed a, Speed b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Speed a, Speed b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Speed a, Speed b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Speed a, Speed b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Speed a, Speed b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Speed other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
