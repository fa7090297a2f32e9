namespace Boardwright.Units;

/// <summary>An inductance.</summary>
public readonly record struct Inductance : IQuantity<Inductance>, IComparable<Inductance>
{
    Inductance(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "inductance", "uH", "30 uH", 0.0, 10.0,
        [
            new("H", 1.0, 0.0, null, []),
            new("mH", 0.001, 0.0, null, []),
            new("uH", 1e-06, 0.0, null, ["µH", "μH"]),
        ]);

    /// <inheritdoc/>
    public static Inductance FromSi(double si) => new(si);

    /// <summary>The value in H.</summary>
    public double Henries => Si;

    /// <summary>From a value in H.</summary>
    public static Inductance FromHenries(double henries) => new(henries);

    /// <summary>From a value in uH.</summary>
    public static Inductance FromMicrohenries(double microhenries) => new(microhenries * 1e-06);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Inductance a, Inductance b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Inductance a, Inductance b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Inductance a, Inductance b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Inductance a, Inductance b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Inductance other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
