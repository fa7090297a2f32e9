namespace Boardwright.Units;

/// <summary>An amount of energy.</summary>
public readonly record struct Energy : IQuantity<Energy>, IComparable<Energy>
{
    Energy(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "energy", "Wh", "532 Wh", 0.0, 1000000000.0,
        [
            new("J", 1.0, 0.0, null, []),
            new("Wh", 3600.0, 0.0, null, []),
            new("kWh", 3600000.0, 0.0, null, []),
            new("kJ", 1000.0, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Energy FromSi(double si) => new(si);

    /// <summary>The value in J.</summary>
    public double Joules => Si;

    /// <summary>From a value in J.</summary>
    public static Energy FromJoules(double joules) => new(joules);

    /// <summary>The value in Wh.</summary>
    public double WattHours => Si / 3600.0;

    /// <summary>From a value in Wh.</summary>
    public static Energy FromWattHours(double wattHours) => new(wattHours * 3600.0);

    /// <summary>The sum.</summary>
    public static Energy operator +(Energy a, Energy b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Energy operator -(Energy a, Energy b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Energy operator -(Energy a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Energy operator *(Energy a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Energy operator *(double times, Energy a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Energy operator /(Energy a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Energy a, Energy b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Energy a, Energy b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Energy a, Energy b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Energy a, Energy b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Energy a, Energy b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Energy other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
