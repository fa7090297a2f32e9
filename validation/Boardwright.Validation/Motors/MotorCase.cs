using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Units;

namespace Boardwright.Validation.Motors;

/// <summary>Motor constants, operating points and the drive.</summary>
public sealed class MotorCase : Case
{
    static readonly MotorConstants Kv190 = new(SpeedConstant.FromRpmPerVolt(190), 7);
    static readonly Winding Phase = new(Kv190, Resistance.FromMilliohms(30), Inductance.FromMicrohenries(30));
    static readonly Voltage Bus = Voltage.FromVolts(50.4);

    /// <inheritdoc/>
    public override string Room => "Motors";

    /// <inheritdoc/>
    public override string Topic => "Motor and drive";

    /// <inheritdoc/>
    public override string About =>
        "Torque constants and sheets of general-purpose motors, the operating point of a sinusoidal drive, and the losses of its bridge. No measured efficiency map of a board's motor is open to anyone.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare() => [.. Constants(), .. Sheets(), .. Drive(), .. Bridges()];

    static IEnumerable<Check> Constants()
    {
        foreach (var (kv, constant, printed) in new[] { (407.0, "23.463", "23.4"), (178, "53.648", "53.8"), (77.8, "122.742", "123") })
        {
            var ours = 1000 * new MotorConstants(SpeedConstant.FromRpmPerVolt(kv), 1).NewtonMetresPerDcAmpere;
            yield return new("Torque constant, direct current", $"{kv} r/min/V", printed, "mN m/A", ours, Sources.MakersSheet, "",
                EvidenceLevel.Published)
            { Allowed = Allowance.Part(5e-3, "both constants rounded on the sheet") };
            yield return By("Torque constant, direct current", $"{kv} r/min/V", constant, "mN m/A", ours);
        }

        foreach (var (volts, printed) in new[] { (51, "0.49"), (43, "0.41") })
            yield return new("Torque constant, direct current", $"{volts} V at 1000 r/min", printed, "N m/A",
            new MotorConstants(SpeedConstant.FromRpmPerVolt(1000.0 / volts), 1).NewtonMetresPerDcAmpere, Sources.MakersSheet, "",
            EvidenceLevel.Published);
        yield return By("Torque constant, direct current", "KV 190, 7 pole pairs", "0.050259", "N m/A", Kv190.NewtonMetresPerDcAmpere);
        yield return By("Flux linkage", "KV 190, 7 pole pairs", "4.1453", "mWb", 1000 * Kv190.FluxLinkageWebers);
        yield return By("Torque constant, amplitude", "KV 190, 7 pole pairs", "0.043526", "N m/A", Kv190.NewtonMetresPerPeakAmpere);
        yield return By("Torque constant, root mean square", "KV 190, 7 pole pairs", "0.061555", "N m/A", Kv190.NewtonMetresPerRmsAmpere);
        yield return By("Amplitude over direct current", "", "0.866025", "", Kv190.NewtonMetresPerPeakAmpere / Kv190.NewtonMetresPerDcAmpere);
        var servo = new MotorConstants(SpeedConstant.FromRadiansPerSecondPerVolt(1 / (Math.Sqrt(3) * 0.12258 * 4)), 4);
        yield return By("Torque constant, amplitude", "0.12258 Wb, 4 pole pairs", "0.73548", "N m/A", servo.NewtonMetresPerPeakAmpere);
        yield return new("Torque constant, root mean square", "0.12258 Wb, 4 pole pairs", "1.01", "N m/A", servo.NewtonMetresPerRmsAmpere, Sources.MakersSheet, "servo motor's parameter file",
            EvidenceLevel.Published)
        { Allowed = Allowance.Part(3.5e-2, "the sheet's torque constant is of a warm, saturated motor") };
        yield return By("Speed constant of the same coils in delta", "star of KV 1", "1.7320508", "", MotorConstants.StarToDelta(SpeedConstant.FromRpmPerVolt(1)).RpmPerVolt);
        yield return By("Resistance of the same coils in delta", "star of 0.0600 Ω", "0.0200", "Ω", MotorConstants.StarToDelta(Resistance.FromOhms(0.06)).Ohms);
        var equal = MotorConstants.EqualTorque(Current.FromAmperes(40));
        yield return By("Phase current of equal torque", "40 A direct", "46.188", "A", equal.Amperes);
        yield return By("Copper loss of equal torque", "40 A direct, 0.06 Ω between leads", "96.0", "W", Phase.At(equal, default).CopperLoss.Watts);
    }

    static IEnumerable<Check> Sheets()
    {
        foreach (var (name, volts, ohms, kv, idle, stall, torque, speed, gradient, best) in new (string, double, double, double, double,
            string, string?, string, string, string)[]
        {
            ("12 V motor 118743", 12, 2.18, 407, 0.0263, "5.5", "129", "4860", "37.7", "87"),
            ("48 V motor of 260 g", 48, 2.45, 178, 0.0786, "19.6", null, "8490", "8.09", "88"),
        })
        {
            var motor = new DirectCurrentMotor(SpeedConstant.FromRpmPerVolt(kv), Resistance.FromOhms(ohms), Current.FromAmperes(idle));
            var supply = Voltage.FromVolts(volts);
            var rounded = Allowance.Part(1e-2, "the sheet's rounded constants");
            var given = $"{name}, {ohms} Ω, {kv} r/min/V, no load {1000 * idle} mA";
            yield return Sheet("Stall current", given, stall, "A", motor.StallCurrent(supply).Amperes) with { Allowed = rounded };
            if (torque is not null)
                yield return Sheet("Stall torque", given, torque, "mN m", 1000 * motor.StallTorque(supply).NewtonMetres) with { Allowed = rounded };
            yield return Sheet("No-load speed", given, speed, "r/min", motor.NoLoadSpeed(supply).Rpm) with { Allowed = rounded };
            yield return Sheet("Speed lost for each mN m", given, gradient, "r/min",
                motor.SpeedLossPerNewtonMetre * 30 / Math.PI / 1000) with
            { Allowed = Allowance.Part(1.5e-2, "it holds the square of a rounded constant") };
            yield return Sheet("Best efficiency", given, best, "%", 100 * motor.BestEfficiency(supply)) with { Allowed = rounded };
        }

        yield return By("Current of best efficiency", "12 V motor 118743", "0.3805", "A",
            new DirectCurrentMotor(SpeedConstant.FromRpmPerVolt(407), Resistance.FromOhms(2.18), Current.FromMilliamperes(26.3))
            .BestCurrent(Voltage.FromVolts(12)).Amperes);

        var servo = new DirectCurrentMotor(SpeedConstant.FromRpmPerVolt(1000 / 43.0), Resistance.FromOhms(1.6), Current.FromAmperes(0.53));
        const string why = "The sheet's curve leaves out the voltage that the no-load current loses in the winding, 0.53 A times 1.6 Ω, which the motor's equations take.";
        foreach (var (ounceInches, amperes, rpm, watts, efficiency) in new[] { (165, "3.4", "2685", "327.70", "0.81097"), (330, "6.2", "2580", "629.62", "0.84563") })
        {
            var supply = Voltage.FromVolts(120);
            var current = servo.CurrentAt(Torque.FromPoundForceInches(ounceInches / 16.0));
            var given = $"servo motor 500400167, 120 V, 43 V at 1000 r/min, 1.6 Ω, 0.53 A, {ounceInches} oz-in";
            yield return Sheet("Current", given, amperes, "A", current.Amperes);
            yield return Sheet("Speed", given, rpm, "r/min", servo.Speed(supply, current).Rpm) with { MissBecause = why };
            yield return Sheet("Power at the shaft", given, watts, "W", servo.ShaftPower(supply, current).Watts) with { MissBecause = why };
            yield return Sheet("Efficiency", given, efficiency, "", servo.Efficiency(supply, current)) with { MissBecause = why };
        }
    }

    static IEnumerable<Check> Drive()
    {
        yield return By("Greatest phase voltage, space vector", "50.4 V", "29.0985", "V", Winding.GreatestPhaseVoltage(Bus).Volts);
        yield return By("Greatest phase voltage, sine", "50.4 V", "25.2", "V", Winding.GreatestWithSine(Bus).Volts);
        yield return By("Greatest phase voltage, six-step", "50.4 V", "32.0856", "V", Winding.GreatestInSixStep(Bus).Volts);
        var point = Phase.At(Current.FromAmperes(50), AngularSpeed.FromRpm(6000));
        const string given = "KV 190, 7 pole pairs, 30 mΩ, 30 µH, 50 A, 6000 r/min";
        yield return By("v_d", given, "-6.5973", "V", point.Direct.Volts);
        yield return By("v_q", given, "19.7321", "V", point.Quadrature.Volts);
        yield return By("Phase voltage", given, "20.8058", "V", point.PhaseVoltage.Volts);
        yield return By("Torque", given, "2.17630", "N m", point.Torque.NewtonMetres);
        yield return By("Mechanical power", given, "1367.41", "W", point.Mechanical.Watts);
        yield return By("Copper loss", given, "112.50", "W", point.CopperLoss.Watts);
        yield return By("Power in", given, "1479.91", "W", point.Input.Watts);
        yield return By("Bus current", given + ", 50.4 V", "29.363", "A", point.BusCurrent(Bus).Amperes);
        yield return By("Modulation", given + ", 50.4 V", "0.71501", "", point.Modulation(Bus));
        yield return By("Base speed", given + ", 50.4 V", "8566.74", "r/min",
            Phase.BaseSpeed(Current.FromAmperes(50), Winding.GreatestPhaseVoltage(Bus))?.Rpm ?? double.NaN);
        yield return By("Ideal no-load speed", "KV 190, 50.4 V", "9576", "r/min", Kv190.IdealNoLoad(Bus).Rpm);
        yield return By("Least speed at which braking gives", "20 A direct, 0.06 Ω between leads", "23.876", "rad/s", Phase.LeastSpeedThatGives(MotorConstants.EqualTorque(Current.FromAmperes(20))).RadiansPerSecond);
    }

    static IEnumerable<Check> Bridges()
    {
        var bridge = new Bridge(Resistance.FromMilliohms(1.5), Duration.FromNanoseconds(120), Frequency.FromKilohertz(20));
        var eighty = Current.FromAmperes(80);
        yield return By("Conduction loss", "80 A, 1.5 mΩ", "14.40", "W", bridge.Conduction(eighty).Watts);
        yield return By("Switching loss", "80 A, 50.4 V, 60 + 60 ns, 20 kHz", "9.2407", "W", bridge.Switching(eighty, Bus).Watts);
        yield return By("Dead-time loss", "80 A, 0.8 V, 500 ns, 20 kHz", "2.4446", "W", bridge.DeadTime(eighty, Voltage.FromVolts(0.8), Duration.FromNanoseconds(500)).Watts);
        foreach (var (modulation, degrees, ripple, supply) in new[] { (0.8, 0, "34.993", "48.0"), (0.6, 30, "33.839", "31.177"), (1.0, 20, "28.618", "56.382") })
        {
            var given = $"80 A, modulation {modulation}, {degrees}°";
            yield return new("Ripple current", given, ripple, "A", Bridge.Ripple(eighty, modulation, Angle.FromDegrees(degrees)).Amperes,
                Sources.Kolar2006, "formula", EvidenceLevel.ComputedFromPublished);
            yield return new("Supply current", given, supply, "A", Bridge.SupplyCurrent(eighty, modulation, Angle.FromDegrees(degrees)).Amperes,
                Sources.Kolar2006, "formula", EvidenceLevel.ComputedFromPublished);
        }
    }

    static Check By(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.Pmsm, "definition", EvidenceLevel.ComputedFromPublished);

    static Check Sheet(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.MakersSheet, "", EvidenceLevel.Published);
}
