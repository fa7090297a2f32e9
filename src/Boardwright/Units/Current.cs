namespace Boardwright.Units;

/// <summary>An electric current.</summary>
public readonly record struct Current : IQuantity<Current>, IComparable<Current>
{
    Current(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "current", "A", "60 A", 0.0, 10000.0,
        [
            new("A", 1.0, 0.0, null, []),
            new("mA", 0.001, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Current FromSi(double si) => new(si);

    /// <summary>The value in A.</summary>
    public double Amperes => Si;

    /// <summary>From a value in A.</summary>
    public static Current FromAmperes(double amperes) => new(amperes);

    /// <summary>From a value in mA.</summary>
    public static Current FromMilliamperes(double milliamperes) => new(milliamperes * 0.001);

    /// <summary>The sum.</summary>
    public static Current operator +(Current a, Current b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Current operator -(Current a, Current b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Current operator -(Current a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Current operator *(Current a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Current operator *(double times, Current a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Current operator /(Current a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Current a, Current b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Current a, Current b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Current a, Current b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Current a, Current b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Current a, Current b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Current other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
