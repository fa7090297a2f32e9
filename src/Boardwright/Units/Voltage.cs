namespace Boardwright.Units;

/// <summary>An electric potential difference.</summary>
public readonly record struct Voltage : IQuantity<Voltage>, IComparable<Voltage>
{
    Voltage(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "voltage", "V", "3.6 V", 0.0, 10000.0,
        [
            new("V", 1.0, 0.0, null, []),
            new("mV", 0.001, 0.0, null, []),
            new("kV", 1000.0, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Voltage FromSi(double si) => new(si);

    /// <summary>The value in V.</summary>
    public double Volts => Si;

    /// <summary>From a value in V.</summary>
    public static Voltage FromVolts(double volts) => new(volts);

    /// <summary>The value in mV.</summary>
    public double Millivolts => Si / 0.001;

    /// <summary>From a value in mV.</summary>
    public static Voltage FromMillivolts(double millivolts) => new(millivolts * 0.001);

    /// <summary>The sum.</summary>
    public static Voltage operator +(Voltage a, Voltage b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Voltage operator -(Voltage a, Voltage b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Voltage operator -(Voltage a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Voltage operator *(Voltage a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Voltage operator *(double times, Voltage a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Voltage operator /(Voltage a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Voltage a, Voltage b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Voltage a, Voltage b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Voltage a, Voltage b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Voltage a, Voltage b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Voltage a, Voltage b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Voltage other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
