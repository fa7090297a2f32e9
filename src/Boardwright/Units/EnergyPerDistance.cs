namespace Boardwright.Units;

/// <summary>Energy spent for each length of road.</summary>
public readonly record struct EnergyPerDistance : IQuantity<EnergyPerDistance>, IComparable<EnergyPerDistance>
{
    EnergyPerDistance(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "energy per distance", "Wh/km", "14 Wh/km", -100000.0, 100000.0,
        [
            new("J/m", 1.0, 0.0, null, []),
            new("Wh/km", 3.6, 0.0, "Wh/mi", []),
            new("Wh/mi", 2.236936292054402, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static EnergyPerDistance FromSi(double si) => new(si);

    /// <summary>The value in J/m.</summary>
    public double JoulesPerMetre => Si;

    /// <summary>From a value in J/m.</summary>
    public static EnergyPerDistance FromJoulesPerMetre(double joulesPerMetre) => new(joulesPerMetre);

    /// <summary>The value in Wh/km.</summary>
    public double WattHoursPerKilometre => Si / 3.6;

    /// <summary>From a value in Wh/km.</summary>
    public static EnergyPerDistance FromWattHoursPerKilometre(double wattHoursPerKilometre) => new(wattHoursPerKilometre * 3.6);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(EnergyPerDistance a, EnergyPerDistance b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(EnergyPerDistance a, EnergyPerDistance b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(EnergyPerDistance a, EnergyPerDistance b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(EnergyPerDistance a, EnergyPerDistance b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(EnergyPerDistance other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
