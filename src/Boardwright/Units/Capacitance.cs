namespace Boardwright.Units;

/// <summary>A capacitance.</summary>
public readonly record struct Capacitance : IQuantity<Capacitance>, IComparable<Capacitance>
{
    Capacitance(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "capacitance", "uF", "2040 uF", 0.0, 100.0,
        [
            new("F", 1.0, 0.0, null, []),
            new("mF", 0.001, 0.0, null, []),
            new("uF", 1e-06, 0.0, null, ["µF", "μF"]),
        ]);

    /// <inheritdoc/>
    public static Capacitance FromSi(double si) => new(si);

    /// <summary>The value in F.</summary>
    public double Farads => Si;

    /// <summary>From a value in F.</summary>
    public static Capacitance FromFarads(double farads) => new(farads);

    /// <summary>From a value in mF.</summary>
    public static Capacitance FromMillifarads(double millifarads) => new(millifarads * 0.001);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Capacitance a, Capacitance b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Capacitance a, Capacitance b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Capacitance a, Capacitance b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Capacitance a, Capacitance b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Capacitance other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
