namespace Boardwright.Units;

/// <summary>An electric potential difference.</summary>
public readonly record struct Voltage : IAdditive<Voltage>
{
    public static Dimension Dimension { get; } = new(
        "voltage", "V", "3.6 V", 0, 10000, [new("V", 1), new("mV", 0.001), new("kV", 1000)]);

    public double Si { get; private init; }
    public static Voltage FromSi(double si) => new() { Si = si };
    public int CompareTo(Voltage other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in V.</summary>
    public double Volts => Si;
    /// <summary>From a value in V.</summary>
    public static Voltage FromVolts(double volts) => FromSi(volts);
    /// <summary>The value in mV.</summary>
    public double Millivolts => Si / 0.001;
    /// <summary>From a value in mV.</summary>
    public static Voltage FromMillivolts(double millivolts) => FromSi(millivolts * 0.001);
}

/// <summary>An electric current.</summary>
public readonly record struct Current : IAdditive<Current>
{
    public static Dimension Dimension { get; } = new(
        "current", "A", "60 A", 0, 10000, [new("A", 1), new("mA", 0.001)]);

    public double Si { get; private init; }
    public static Current FromSi(double si) => new() { Si = si };
    public int CompareTo(Current other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in A.</summary>
    public double Amperes => Si;
    /// <summary>From a value in A.</summary>
    public static Current FromAmperes(double amperes) => FromSi(amperes);
    /// <summary>From a value in mA.</summary>
    public static Current FromMilliamperes(double milliamperes) => FromSi(milliamperes * 0.001);
}

/// <summary>An electric charge.</summary>
public readonly record struct Charge : IAdditive<Charge>
{
    public static Dimension Dimension { get; } = new(
        "charge", "Ah", "3.0 Ah", 0, 100000000, [new("C", 1), new("Ah", 3600), new("mAh", 3.6)]);

    public double Si { get; private init; }
    public static Charge FromSi(double si) => new() { Si = si };
    public int CompareTo(Charge other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in C.</summary>
    public double Coulombs => Si;
    /// <summary>From a value in C.</summary>
    public static Charge FromCoulombs(double coulombs) => FromSi(coulombs);
    /// <summary>The value in Ah.</summary>
    public double AmpereHours => Si / 3600.0;
    /// <summary>From a value in Ah.</summary>
    public static Charge FromAmpereHours(double ampereHours) => FromSi(ampereHours * 3600.0);
}

/// <summary>An electric resistance.</summary>
public readonly record struct Resistance : IAdditive<Resistance>
{
    public static Dimension Dimension { get; } = new(
        "resistance", "mohm", "28 mohm", 0, 1e7,
        [
            new("ohm", 1, null, "Ω", "Ω", "Ohm", "ohms", "Ohms"),
            new("mohm", 0.001, null, "mΩ", "mΩ", "mOhm", "mohms", "milliohm"),
            new("uohm", 1e-06, null, "µΩ", "μΩ", "uΩ", "µohm", "μohm"),
            new("kohm", 1000, null, "kΩ", "kΩ"),
        ]);

    public double Si { get; private init; }
    public static Resistance FromSi(double si) => new() { Si = si };
    public int CompareTo(Resistance other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in ohm.</summary>
    public double Ohms => Si;
    /// <summary>From a value in ohm.</summary>
    public static Resistance FromOhms(double ohms) => FromSi(ohms);
    /// <summary>The value in mohm.</summary>
    public double Milliohms => Si / 0.001;
    /// <summary>From a value in mohm.</summary>
    public static Resistance FromMilliohms(double milliohms) => FromSi(milliohms * 0.001);
}

/// <summary>An inductance.</summary>
public readonly record struct Inductance : IQuantity<Inductance>
{
    public static Dimension Dimension { get; } = new(
        "inductance", "uH", "30 uH", 0, 10, [new("H", 1), new("mH", 0.001), new("uH", 1e-06, null, "µH", "μH")]);

    public double Si { get; private init; }
    public static Inductance FromSi(double si) => new() { Si = si };
    public int CompareTo(Inductance other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in H.</summary>
    public double Henries => Si;
    /// <summary>From a value in H.</summary>
    public static Inductance FromHenries(double henries) => FromSi(henries);
    /// <summary>From a value in uH.</summary>
    public static Inductance FromMicrohenries(double microhenries) => FromSi(microhenries * 1e-06);
}

/// <summary>A capacitance.</summary>
public readonly record struct Capacitance : IQuantity<Capacitance>
{
    public static Dimension Dimension { get; } = new(
        "capacitance", "uF", "2040 uF", 0, 100, [new("F", 1), new("mF", 0.001), new("uF", 1e-06, null, "µF", "μF")]);

    public double Si { get; private init; }
    public static Capacitance FromSi(double si) => new() { Si = si };
    public int CompareTo(Capacitance other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in F.</summary>
    public double Farads => Si;
    /// <summary>From a value in F.</summary>
    public static Capacitance FromFarads(double farads) => FromSi(farads);
    /// <summary>From a value in mF.</summary>
    public static Capacitance FromMillifarads(double millifarads) => FromSi(millifarads * 0.001);
}

/// <summary>KV: turns of the motor for each volt of DC bus at no load and full modulation.</summary>
public readonly record struct SpeedConstant : IQuantity<SpeedConstant>
{
    public static Dimension Dimension { get; } = new(
        "speed constant", "rpm/V", "190 rpm/V", 0, 10000,
        [new("rad/s/V", 1), new("rpm/V", 0.10471975511965977, null, "r/min/V", "1/min/V", "KV", "Kv", "kv", "RPM/V")]);

    public double Si { get; private init; }
    public static SpeedConstant FromSi(double si) => new() { Si = si };
    public int CompareTo(SpeedConstant other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in rad/s/V.</summary>
    public double RadiansPerSecondPerVolt => Si;
    /// <summary>From a value in rad/s/V.</summary>
    public static SpeedConstant FromRadiansPerSecondPerVolt(double radiansPerSecondPerVolt) => FromSi(radiansPerSecondPerVolt);
    /// <summary>The value in rpm/V.</summary>
    public double RpmPerVolt => Si / 0.10471975511965977;
    /// <summary>From a value in rpm/V.</summary>
    public static SpeedConstant FromRpmPerVolt(double rpmPerVolt) => FromSi(rpmPerVolt * 0.10471975511965977);
}

/// <summary>The current squared times time that melts a fuse or a wire.</summary>
public readonly record struct FusingIntegral : IQuantity<FusingIntegral>
{
    public static Dimension Dimension { get; } = new(
        "fusing integral", "A2s", "4200 A2s", 0, 1000000000000, [new("A2s", 1, null, "A²s", "A2·s", "A²·s")]);

    public double Si { get; private init; }
    public static FusingIntegral FromSi(double si) => new() { Si = si };
    public int CompareTo(FusingIntegral other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in A2s.</summary>
    public double AmpereSquaredSeconds => Si;
    /// <summary>From a value in A2s.</summary>
    public static FusingIntegral FromAmpereSquaredSeconds(double ampereSquaredSeconds) => FromSi(ampereSquaredSeconds);
}
