namespace Boardwright.Units;

/// <summary>A rate of change of speed.</summary>
public readonly record struct Acceleration : IQuantity<Acceleration>, IComparable<Acceleration>
{
    Acceleration(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "acceleration", "m/s2", "1.2 m/s2", 0.0, 50.0,
        [
            new("m/s2", 1.0, 0.0, "ft/s2", ["m/s²"]),
            new("ft/s2", 0.3048, 0.0, null, ["ft/s²"]),
        ]);

    /// <inheritdoc/>
    public static Acceleration FromSi(double si) => new(si);

    /// <summary>The value in m/s2.</summary>
    public double MetresPerSecondSquared => Si;

    /// <summary>From a value in m/s2.</summary>
    public static Acceleration FromMetresPerSecondSquared(double metresPerSecondSquared) => new(metresPerSecondSquared);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Acceleration a, Acceleration b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Acceleration a, Acceleration b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Acceleration a, Acceleration b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Acceleration a, Acceleration b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Acceleration other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
