namespace Boardwright.Units;

/// <summary>A speed of rotation.</summary>
public readonly record struct AngularSpeed : IQuantity<AngularSpeed>, IComparable<AngularSpeed>
{
    AngularSpeed(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "angular speed", "rpm", "60000 rpm", 0.0, 1000000.0,
        [
            new("rad/s", 1.0, 0.0, null, []),
            new("rpm", 0.10471975511965977, 0.0, null, ["r/min", "1/min"]),
        ]);

    /// <inheritdoc/>
    public static AngularSpeed FromSi(double si) => new(si);

    /// <summary>The value in rad/s.</summary>
    public double RadiansPerSecond => Si;

    /// <summary>From a value in rad/s.</summary>
    public static AngularSpeed FromRadiansPerSecond(double radiansPerSecond) => new(radiansPerSecond);

    /// <summary>The value in rpm.</summary>
    public double Rpm => Si / 0.10471975511965977;

    /// <summary>From a value in rpm.</summary>
    public static AngularSpeed FromRpm(double rpm) => new(rpm * 0.10471975511965977);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(AngularSpeed a, AngularSpeed b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(AngularSpeed a, AngularSpeed b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(AngularSpeed a, AngularSpeed b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(AngularSpeed a, AngularSpeed b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(AngularSpeed other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
