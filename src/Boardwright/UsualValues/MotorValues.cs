using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.UsualValues;

/// <summary>Usual values of a sealed or open outrunner with sintered magnets, 0.2 to 1.2 kg.</summary>
static class MotorValues
{
    const int UsualPolePairs = 7;
    const string Outrunners = "outrunners of 0.2 to 1.2 kg with 14 magnets or fewer";

    public static IReadOnlyList<UsualValue> All { get; } =
    [
        UsualValue.Table(
            "motor.pole_pairs", "motor.can_diameter", "7: twelve slots, fourteen magnets", 1,
            "cans of 40 to 65 mm; 5 and 10 happen, so no limit of the electrical speed passes on it: count the magnets", Sources.DroneMotors,
            b => b.Parts.Motor.PolePairs, (b, v) => With(b, m => m with { PolePairs = v }),
            b => b.Parts.Motor.CanDiameter is { IsKnown: true, Value: { Millimetres: >= 40 and <= 65 } } ? new(UsualPolePairs) : null),
        UsualValue.Quantity(
            "motor.line_resistance", "motor.mass, motor.kv", "(60/(2π KV)/K)², K = 0.31 m^0.8 N·m/√W", 1.6,
            Outrunners + "; a printed one is better", Sources.DroneMotors,
            b => b.Parts.Motor.LineResistance, (b, v) => With(b, m => m with { LineResistance = v }),
            b => b.Parts.Motor is { PhaseResistance.IsKnown: false, Mass.IsKnown: true, Kv.IsKnown: true } motor
                ? new(Resistance.FromOhms(Pow(1 / motor.Kv.Value.Si / (0.31 * Pow(motor.Mass.Value.Kilograms, 0.8)), 2))) : null),
        UsualValue.Quantity(
            "motor.phase_inductance", "motor.mass, motor.kv, motor.pole_pairs, or a measured motor.phase_resistance",
            "1.5 p λ²/(15 N·m/kg · m), λ = 60/(√3 2π KV p); 0.57 ms · R where R was measured", 1.35,
            "not flat motors with ring magnets (six times as much); not the gains of a current loop", Sources.MotorWindings,
            b => b.Parts.Motor.PhaseInductance, (b, v) => With(b, m => m with { PhaseInductance = v }),
            b => Inductance(b.Parts.Motor)),
        UsualValue.Table(
            "motor.no_load_tests", "motor.mass, motor.kv, motor.pole_pairs",
            "torque 0.070 N·m/kg · m (0.6 + 0.4 f/400 Hz), f = p KV V/60; above 7 pole pairs twice that", 1.65,
            Outrunners + "; above 7 pole pairs ×/÷ 2.1; not for claims of efficiency", Sources.DroneMotors,
            b => b.Parts.Motor.NoLoadTests, (b, v) => With(b, m => m with { NoLoadTests = v }),
            b => NoLoad(b.Parts.Motor)),
        UsualValue.Quantity(
            "motor.no_load_voltage", "", "24 V, where a listing prints the current alone", 1.5,
            "the current at no load rises little with the voltage", Sources.CommonPractice,
            b => b.Parts.Motor.NoLoadVoltage, (b, v) => With(b, m => m with { NoLoadVoltage = v }),
            b => b.Parts.Motor is { NoLoadCurrent.IsKnown: true, NoLoadTests.IsKnown: false } ? new(Voltage.FromVolts(24)) : null),
        UsualValue.Quantity(
            "motor.rotor_inertia", "motor.mass, motor.can_diameter", "0.26 m D²/4", 1.2,
            "moves a stop by 0.1 % and nothing else", Sources.ServoSheets,
            b => b.Parts.Motor.RotorInertia, (b, v) => With(b, m => m with { RotorInertia = v }),
            b => b.Parts.Motor is { Mass.IsKnown: true, CanDiameter.IsKnown: true } motor
                ? new(Inertia.FromKilogramSquareMetres(0.26 * motor.Mass.Value.Kilograms * Pow(motor.CanDiameter.Value.Metres, 2) / 4))
                : null),
        ByMass(
            "motor.winding_capacity", "0.14 m · 385 J/(kg K): one part in seven is copper", 1.45, "", Sources.CommonPractice,
            m => m.WindingCapacity, (m, v) => m with { WindingCapacity = v },
            kilograms => HeatCapacity.FromJoulesPerKelvin(0.14 * 385 * kilograms)),
        ByMass(
            "motor.case_capacity", "310 J/(kg K) · m", 1.3, "", Sources.ServoSheets,
            m => m.CaseCapacity, (m, v) => m with { CaseCapacity = v },
            kilograms => HeatCapacity.FromJoulesPerKelvin(310 * kilograms)),
        ByMass(
            "motor.winding_to_case", "0.80 K kg/W / m", 2.2, "six sheets of which one is an outrunner's; not for saying that a motor stays cool",
            Sources.ServoSheets,
            m => m.WindingToCase, (m, v) => m with { WindingToCase = v },
            kilograms => ThermalResistance.FromKelvinsPerWatt(0.80 / kilograms)),
        UsualValue.Quantity(
            "drive.shielding", "", "1.3: a motor behind a truck and a wheel warms 1.3 times as far above the air as one alone", 1.4,
            "motors on mounts, without a closed cover; together with half of the board's speed as the speed of the air", Sources.CommonPractice,
            b => b.Parts.Drive.Shielding, (b, v) => b with { Parts = b.Parts with { Drive = b.Parts.Drive with { Shielding = v } } },
            b => b.Parts.Drive.IsHub || b.Parts.Motor.CaseToAir.IsKnown ? null : new(Number.FromValue(1.3))),
    ];

    static UsualEstimate<Inductance>? Inductance(Motor motor)
    {
        if (motor.PhaseResistance is { IsKnown: true, From: Origin.Measured } measured)
            return new(Units.Inductance.FromHenries(0.57e-3 * measured.Value.Ohms));
        if (motor.LineResistance is { IsKnown: true, From: Origin.Measured } line)
            return new(Units.Inductance.FromHenries(0.57e-3 * line.Value.Ohms / 2));
        if (!motor.Mass.IsKnown || !motor.Kv.IsKnown)
            return null;
        var pairs = motor.PolePairs.Or(UsualPolePairs);
        var flux = 1 / (Sqrt(3) * motor.Kv.Value.Si * pairs);
        return new(Units.Inductance.FromHenries(1.5 * pairs * flux * flux / (15 * motor.Mass.Value.Kilograms)));
    }

    static UsualEstimate<Curve<Voltage, Current>>? NoLoad(Motor motor)
    {
        if (motor.NoLoadCurrent.IsKnown || !motor.Mass.IsKnown || !motor.Kv.IsKnown)
            return null;
        var pairs = motor.PolePairs.Or(UsualPolePairs);
        var (radiansPerVolt, many) = (motor.Kv.Value.Si, pairs > UsualPolePairs);
        double CurrentAt(double volts) => (many ? 0.140 : 0.070) * motor.Mass.Value.Kilograms
            * (0.6 + 0.4 * pairs * radiansPerVolt * volts / (2 * PI) / 400) * radiansPerVolt;
        return new(
            new Curve<Voltage, Current>([(12, CurrentAt(12)), (24, CurrentAt(24)), (48, CurrentAt(48))]), many ? 2.1 : null);
    }

    static UsualValue ByMass<T>(
        string key, string equation, double factor, string validity, Source source,
        Func<Motor, Known<T>> entry, Func<Motor, Known<T>, Motor> with, Func<double, T> value)
        where T : struct, IQuantity<T> =>
        UsualValue.Quantity(
            key, "motor.mass", equation, factor, validity, source,
            b => entry(b.Parts.Motor), (b, v) => With(b, m => with(m, v)),
            b => b.Parts.Motor.Mass.IsKnown ? new(value(b.Parts.Motor.Mass.Value.Kilograms)) : null);

    static Board With(Board board, Func<Motor, Motor> change) =>
        board with { Parts = board.Parts with { Motor = change(board.Parts.Motor) } };
}
