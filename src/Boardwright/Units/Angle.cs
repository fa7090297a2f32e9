namespace Boardwright.Units;

/// <summary>An angle.</summary>
public readonly record struct Angle : IQuantity<Angle>, IComparable<Angle>
{
    Angle(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "angle", "deg", "25 deg", -3.141592653589793, 3.141592653589793,
        [
            new("rad", 1.0, 0.0, null, []),
            new("deg", 0.017453292519943295, 0.0, null, ["°", "degrees"]),
        ]);

    /// <inheritdoc/>
    public static Angle FromSi(double si) => new(si);

    /// <summary>The value in rad.</summary>
    public double Radians => Si;

    /// <summary>From a value in rad.</summary>
    public static Angle FromRadians(double radians) => new(radians);

    /// <summary>The value in deg.</summary>
    public double Degrees => Si / 0.017453292519943295;

    /// <summary>From a value in deg.</summary>
    public static Angle FromDegrees(double degrees) => new(degrees * 0.017453292519943295);

    /// <summary>The sum.</summary>
    public static Angle operator +(Angle a, Angle b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Angle operator -(Angle a, Angle b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Angle operator -(Angle a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Angle operator *(Angle a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Angle operator *(double times, Angle a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Angle operator /(Angle a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Angle a, Angle b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Angle a, Angle b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Angle a, Angle b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Angle a, Angle b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Angle a, Angle b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Angle other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
