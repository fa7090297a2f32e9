namespace Boardwright.Units;

/// <summary>A power.</summary>
public readonly record struct Power : IQuantity<Power>, IComparable<Power>
{
    Power(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "power", "W", "2500 W", 0.0, 1000000.0,
        [
            new("W", 1.0, 0.0, null, []),
            new("kW", 1000.0, 0.0, null, []),
            new("mW", 0.001, 0.0, null, []),
            new("hp", 745.6998715822702, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Power FromSi(double si) => new(si);

    /// <summary>The value in W.</summary>
    public double Watts => Si;

    /// <summary>From a value in W.</summary>
    public static Power FromWatts(double watts) => new(watts);

    /// <summary>From a value in kW.</summary>
    public static Power FromKilowatts(double kilowatts) => new(kilowatts * 1000.0);

    /// <summary>The value in mW.</summary>
    public double Milliwatts => Si / 0.001;

    /// <summary>The sum.</summary>
    public static Power operator +(Power a, Power b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Power operator -(Power a, Power b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Power operator -(Power a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Power operator *(Power a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Power operator *(double times, Power a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Power operator /(Power a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Power a, Power b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Power a, Power b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Power a, Power b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Power a, Power b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Power a, Power b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Power other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
