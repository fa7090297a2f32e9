namespace Boardwright.Units;

/// <summary>Heat for each kelvin of warming.</summary>
public readonly record struct HeatCapacity : IQuantity<HeatCapacity>, IComparable<HeatCapacity>
{
    HeatCapacity(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "heat capacity", "J/K", "46 J/K", 0.0, 10000000.0,
        [
            new("J/K", 1.0, 0.0, null, ["J/°C"]),
        ]);

    /// <inheritdoc/>
    public static HeatCapacity FromSi(double si) => new(si);

    /// <summary>The value in J/K.</summary>
    public double JoulesPerKelvin => Si;

    /// <summary>From a value in J/K.</summary>
    public static HeatCapacity FromJoulesPerKelvin(double joulesPerKelvin) => new(joulesPerKelvin);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(HeatCapacity a, HeatCapacity b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(HeatCapacity a, HeatCapacity b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(HeatCapacity a, HeatCapacity b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(HeatCapacity a, HeatCapacity b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(HeatCapacity other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
