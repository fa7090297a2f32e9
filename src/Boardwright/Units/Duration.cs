namespace Boardwright.Units;

/// <summary>A length of time.</summary>
public readonly record struct Duration : IQuantity<Duration>, IComparable<Duration>
{
    Duration(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "duration", "s", "120 ns", 0.0, 10000000.0,
        [
            new("s", 1.0, 0.0, null, ["sec"]),
            new("min", 60.0, 0.0, null, []),
            new("h", 3600.0, 0.0, null, ["hr"]),
            new("ms", 0.001, 0.0, null, []),
            new("us", 1e-06, 0.0, null, ["µs", "μs"]),
            new("ns", 1e-09, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Duration FromSi(double si) => new(si);

    /// <summary>The value in s.</summary>
    public double Seconds => Si;

    /// <summary>From a value in s.</summary>
    public static Duration FromSeconds(double seconds) => new(seconds);

    /// <summary>The value in min.</summary>
    public double Minutes => Si / 60.0;

    /// <summary>The value in h.</summary>
    public double Hours => Si / 3600.0;

    /// <summary>From a value in h.</summary>
    public static Duration FromHours(double hours) => new(hours * 3600.0);

    /// <summary>The value in us.</summary>
    public double Microseconds => Si / 1e-06;

    /// <summary>From a value in us.</summary>
    public static Duration FromMicroseconds(double microseconds) => new(microseconds * 1e-06);

    /// <summary>From a value in ns.</summary>
    public static Duration FromNanoseconds(double nanoseconds) => new(nanoseconds * 1e-09);

    /// <summary>The sum.</summary>
    public static Duration operator +(Duration a, Duration b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Duration operator -(Duration a, Duration b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Duration operator -(Duration a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Duration operator *(Duration a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Duration operator *(double times, Duration a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Duration operator /(Duration a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Duration a, Duration b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Duration a, Duration b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Duration a, Duration b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Duration a, Duration b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Duration a, Duration b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Duration other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
