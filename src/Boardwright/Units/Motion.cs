namespace Boardwright.Units;

/// <summary>A length of time.</summary>
public readonly record struct Duration : IAdditive<Duration>
{
    public static Dimension Dimension { get; } = new(
        "duration", "s", "120 ns", 0, 1e7,
        [
            new("s", 1, null, "sec"), new("min", 60), new("h", 3600, null, "hr"), new("ms", 0.001), new("us", 1e-06, null, "µs", "μs"),
            new("ns", 1e-09),
        ]);

    public double Si { get; private init; }
    public static Duration FromSi(double si) => new() { Si = si };
    public int CompareTo(Duration other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in s.</summary>
    public double Seconds => Si;
    /// <summary>From a value in s.</summary>
    public static Duration FromSeconds(double seconds) => FromSi(seconds);
    /// <summary>The value in min.</summary>
    public double Minutes => Si / 60.0;
    /// <summary>The value in h.</summary>
    public double Hours => Si / 3600.0;
    /// <summary>From a value in h.</summary>
    public static Duration FromHours(double hours) => FromSi(hours * 3600.0);
    /// <summary>The value in us.</summary>
    public double Microseconds => Si / 1e-06;
    /// <summary>From a value in us.</summary>
    public static Duration FromMicroseconds(double microseconds) => FromSi(microseconds * 1e-06);
    /// <summary>From a value in ns.</summary>
    public static Duration FromNanoseconds(double nanoseconds) => FromSi(nanoseconds * 1e-09);
}

/// <summary>A frequency.</summary>
public readonly record struct Frequency : IQuantity<Frequency>
{
    public static Dimension Dimension { get; } = new(
        "frequency", "Hz", "20 kHz", 0, 10000000000, [new("Hz", 1), new("kHz", 1000), new("MHz", 1e6)]);

    public double Si { get; private init; }
    public static Frequency FromSi(double si) => new() { Si = si };
    public int CompareTo(Frequency other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in Hz.</summary>
    public double Hertz => Si;
    /// <summary>From a value in Hz.</summary>
    public static Frequency FromHertz(double hertz) => FromSi(hertz);
    /// <summary>From a value in kHz.</summary>
    public static Frequency FromKilohertz(double kilohertz) => FromSi(kilohertz * 1000.0);
}

/// <summary>A speed along the road, or of the wind.</summary>
public readonly record struct Speed : IAdditive<Speed>
{
    public static Dimension Dimension { get; } = new(
        "speed", "km/h", "28 km/h", 0, 100,
        [
            new("m/s", 1, "ft/s"), new("km/h", 0.2777777777777778, "mph", "kmh", "kph"), new("mph", 0.44704, null, "mi/h"),
            new("ft/s", 0.3048),
        ]);

    public double Si { get; private init; }
    public static Speed FromSi(double si) => new() { Si = si };
    public int CompareTo(Speed other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in m/s.</summary>
    public double MetresPerSecond => Si;
    /// <summary>From a value in m/s.</summary>
    public static Speed FromMetresPerSecond(double metresPerSecond) => FromSi(metresPerSecond);
    /// <summary>The value in km/h.</summary>
    public double KilometresPerHour => Si / 0.2777777777777778;
    /// <summary>From a value in km/h.</summary>
    public static Speed FromKilometresPerHour(double kilometresPerHour) => FromSi(kilometresPerHour * 0.2777777777777778);
    /// <summary>The value in mph.</summary>
    public double MilesPerHour => Si / 0.44704;
    /// <summary>From a value in mph.</summary>
    public static Speed FromMilesPerHour(double milesPerHour) => FromSi(milesPerHour * 0.44704);
}

/// <summary>A rate of change of speed.</summary>
public readonly record struct Acceleration : IQuantity<Acceleration>
{
    public static Dimension Dimension { get; } = new(
        "acceleration", "m/s2", "1.2 m/s2", 0, 50, [new("m/s2", 1, "ft/s2", "m/s²"), new("ft/s2", 0.3048, null, "ft/s²")]);

    public double Si { get; private init; }
    public static Acceleration FromSi(double si) => new() { Si = si };
    public int CompareTo(Acceleration other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in m/s2.</summary>
    public double MetresPerSecondSquared => Si;
    /// <summary>From a value in m/s2.</summary>
    public static Acceleration FromMetresPerSecondSquared(double metresPerSecondSquared) => FromSi(metresPerSecondSquared);
}

/// <summary>A speed of rotation.</summary>
public readonly record struct AngularSpeed : IQuantity<AngularSpeed>
{
    public static Dimension Dimension { get; } = new(
        "angular speed", "rpm", "60000 rpm", 0, 1e6, [new("rad/s", 1), new("rpm", 0.10471975511965977, null, "r/min", "1/min")]);

    public double Si { get; private init; }
    public static AngularSpeed FromSi(double si) => new() { Si = si };
    public int CompareTo(AngularSpeed other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in rad/s.</summary>
    public double RadiansPerSecond => Si;
    /// <summary>From a value in rad/s.</summary>
    public static AngularSpeed FromRadiansPerSecond(double radiansPerSecond) => FromSi(radiansPerSecond);
    /// <summary>The value in rpm.</summary>
    public double Rpm => Si / 0.10471975511965977;
    /// <summary>From a value in rpm.</summary>
    public static AngularSpeed FromRpm(double rpm) => FromSi(rpm * 0.10471975511965977);
}
