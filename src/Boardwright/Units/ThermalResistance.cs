namespace Boardwright.Units;

/// <summary>Temperature difference for each watt of heat that flows.</summary>
public readonly record struct ThermalResistance : IQuantity<ThermalResistance>, IComparable<ThermalResistance>
{
    ThermalResistance(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "thermal resistance", "K/W", "1.5 K/W", 0.0, 10000.0,
        [
            new("K/W", 1.0, 0.0, null, ["°C/W"]),
        ]);

    /// <inheritdoc/>
    public static ThermalResistance FromSi(double si) => new(si);

    /// <summary>The value in K/W.</summary>
    public double KelvinsPerWatt => Si;

    /// <summary>From a value in K/W.</summary>
    public static ThermalResistance FromKelvinsPerWatt(double kelvinsPerWatt) => new(kelvinsPerWatt);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(ThermalResistance a, ThermalResistance b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(ThermalResistance a, ThermalResistance b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(ThermalResistance a, ThermalResistance b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(ThermalResistance a, ThermalResistance b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(ThermalResistance other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
