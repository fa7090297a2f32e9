namespace Boardwright.Units;

/// <summary>An electric resistance.</summary>
public readonly record struct Resistance : IQuantity<Resistance>, IComparable<Resistance>
{
    Resistance(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "resistance", "mohm", "28 mohm", 0.0, 10000000.0,
        [
            new("ohm", 1.0, 0.0, null, ["Ω", "Ω"]),
            new("mohm", 0.001, 0.0, null, ["mΩ", "mΩ"]),
            new("uohm", 1e-06, 0.0, null, ["µΩ", "μΩ", "uΩ", "µohm", "μohm"]),
            new("kohm", 1000.0, 0.0, null, ["kΩ", "kΩ"]),
        ]);

    /// <inheritdoc/>
    public static Resistance FromSi(double si) => new(si);

    /// <summary>The value in ohm.</summary>
    public double Ohms => Si;

    /// <summary>From a value in ohm.</summary>
    public static Resistance FromOhms(double ohms) => new(ohms);

    /// <summary>The value in mohm.</summary>
    public double Milliohms => Si / 0.001;

    /// <summary>From a value in mohm.</summary>
    public static Resistance FromMilliohms(double milliohms) => new(milliohms * 0.001);

    /// <summary>The sum.</summary>
    public static Resistance operator +(Resistance a, Resistance b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Resistance operator -(Resistance a, Resistance b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Resistance operator -(Resistance a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Resistance operator *(Resistance a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Resistance operator *(double times, Resistance a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Resistance operator /(Resistance a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Resistance a, Resistance b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Resistance a, Resistance b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Resistance a, Resistance b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Resistance a, Resistance b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Resistance a, Resistance b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Resistance other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
