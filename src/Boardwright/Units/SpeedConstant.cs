namespace Boardwright.Units;

/// <summary>KV: turns of the motor for each volt of DC bus at no load and full modulation.</summary>
public readonly record struct SpeedConstant : IQuantity<SpeedConstant>, IComparable<SpeedConstant>
{
    SpeedConstant(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "speed constant", "rpm/V", "190 rpm/V", 0.0, 10000.0,
        [
            new("rad/s/V", 1.0, 0.0, null, []),
            new("rpm/V", 0.10471975511965977, 0.0, null, ["r/min/V", "1/min/V", "KV"]),
        ]);

    /// <inheritdoc/>
    public static SpeedConstant FromSi(double si) => new(si);

    /// <summary>The value in rad/s/V.</summary>
    public double RadiansPerSecondPerVolt => Si;

    /// <summary>From a value in rad/s/V.</summary>
    public static SpeedConstant FromRadiansPerSecondPerVolt(double radiansPerSecondPerVolt) => new(radiansPerSecondPerVolt);

    /// <summary>The value in rpm/V.</summary>
    public double RpmPerVolt => Si / 0.10471975511965977;

    /// <summary>From a value in rpm/V.</summary>
    public static SpeedConstant FromRpmPerVolt(double rpmPerVolt) => new(rpmPerVolt * 0.10471975511965977);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(SpeedConstant a, SpeedConstant b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(SpeedConstant a, SpeedConstant b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(SpeedConstant a, SpeedConstant b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(SpeedConstant a, SpeedConstant b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(SpeedConstant other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
