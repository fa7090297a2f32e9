namespace Boardwright.Units;

/// <summary>A force.</summary>
public readonly record struct Force : IQuantity<Force>, IComparable<Force>
{
    Force(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "force", "N", "115 N", 0.0, 1000000.0,
        [
            new("N", 1.0, 0.0, "lbf", []),
            new("kN", 1000.0, 0.0, "lbf", []),
            new("lbf", 4.4482216152605, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Force FromSi(double si) => new(si);

    /// <summary>The value in N.</summary>
    public double Newtons => Si;

    /// <summary>From a value in N.</summary>
    public static Force FromNewtons(double newtons) => new(newtons);

    /// <summary>The value in kN.</summary>
    public double Kilonewtons => Si / 1000.0;

    /// <summary>From a value in kN.</summary>
    public static Force FromKilonewtons(double kilonewtons) => new(kilonewtons * 1000.0);

    /// <summary>The value in lbf.</summary>
    public double PoundsForce => Si / 4.4482216152605;

    /// <summary>From a value in lbf.</summary>
    public static Force FromPoundsForce(double poundsForce) => new(poundsForce * 4.4482216152605);

    /// <summary>The sum.</summary>
    public static Force operator +(Force a, Force b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Force operator -(Force a, Force b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Force operator -(Force a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Force operator *(Force a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Force operator *(double times, Force a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Force operator /(Force a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Force a, Force b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Force a, Force b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Force a, Force b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Force a, Force b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Force a, Force b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Force other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
