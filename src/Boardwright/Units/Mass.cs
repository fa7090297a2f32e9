namespace Boardwright.Units;

/// <summary>A mass.</summary>
public readonly record struct Mass : IQuantity<Mass>, IComparable<Mass>
{
    Mass(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "mass", "kg", "82 kg", 0.0, 1000.0,
        [
            new("kg", 1.0, 0.0, "lb", []),
            new("g", 0.001, 0.0, "oz", []),
            new("lb", 0.45359237, 0.0, null, ["lbs"]),
            new("oz", 0.028349523125, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Mass FromSi(double si) => new(si);

    /// <summary>The value in kg.</summary>
    public double Kilograms => Si;

    /// <summary>From a value in kg.</summary>
    public static Mass FromKilograms(double kilograms) => new(kilograms);

    /// <summary>The value in g.</summary>
    public double Grams => Si / 0.001;

    /// <summary>From a value in g.</summary>
    public static Mass FromGrams(double grams) => new(grams * 0.001);

    /// <summary>The sum.</summary>
    public static Mass operator +(Mass a, Mass b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Mass operator -(Mass a, Mass b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Mass operator -(Mass a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Mass operator *(Mass a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Mass operator *(double times, Mass a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Mass operator /(Mass a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Mass a, Mass b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Mass a, Mass b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Mass a, Mass b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Mass a, Mass b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Mass a, Mass b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
