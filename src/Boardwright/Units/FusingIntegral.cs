namespace Boardwright.Units;

/// <summary>The current squared times time that melts a fuse or a wire.</summary>
public readonly record struct FusingIntegral : IQuantity<FusingIntegral>, IComparable<FusingIntegral>
{
    FusingIntegral(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "fusing integral", "A2s", "4200 A2s", 0.0, 1000000000000.0,
        [
            new("A2s", 1.0, 0.0, null, ["A²s", "A2·s", "A²·s"]),
        ]);

    /// <inheritdoc/>
    public static FusingIntegral FromSi(double si) => new(si);

    /// <summary>The value in A2s.</summary>
    public double AmpereSquaredSeconds => Si;

    /// <summary>From a value in A2s.</summary>
    public static FusingIntegral FromAmpereSquaredSeconds(double ampereSquaredSeconds) => new(ampereSquaredSeconds);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(FusingIntegral a, FusingIntegral b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(FusingIntegral a, FusingIntegral b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(FusingIntegral a, FusingIntegral b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(FusingIntegral a, FusingIntegral b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(FusingIntegral other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
