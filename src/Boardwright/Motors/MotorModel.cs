using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Motors;

/// <summary>A board's motor: constants, resistance at the brief's temperature, drag.</summary>
/// <param name="Constants">KV and pole pairs.</param>
/// <param name="PhaseResistance">Resistance of one phase at the brief's temperature.</param>
/// <param name="PhaseResistanceAt20">Resistance of one phase at 20 °C.</param>
/// <param name="Inductance">Inductance of one phase.</param>
/// <param name="Drag">Drag torque of the motor itself.</param>
/// <param name="OilLoss">Drag torque of a gearbox's oil at the motor shaft, which warms the gearbox and not the motor.</param>
/// <source cref="Sources.Pmsm"/>
public sealed record MotorModel(
    MotorConstants Constants, Resistance PhaseResistance, Resistance PhaseResistanceAt20, Inductance Inductance, MotorDrag Drag,
    Torque OilLoss)
{
    /// <summary>Growth of copper's resistance for each kelvin, of that at 20 °C.</summary>
    public const double CopperPerKelvin = 0.00393;

    /// <summary>Constants of the motor alone.</summary>
    public static Answer<MotorConstantsOfBoard> ConstantsOf(Board board) => Answer<MotorConstantsOfBoard>.Ask("motor.torque_constant", needs =>
    {
        var kv = needs.Read(board.Parts.Motor.Kv);
        // The torque constant does not need the pole pairs; the flux linkage does.
        var pairs = needs.Read(board.Parts.Motor.PolePairs, 0);
        return needs.Unmet ? null : new MotorConstantsOfBoard(kv, pairs);
    });

    /// <summary>Constants with the pole pairs, which the flux linkage needs.</summary>
    public static Answer<MotorConstants> FluxOf(Board board) => Answer<MotorConstants>.Ask("motor.flux_linkage", needs =>
        new MotorConstants(needs.Read(board.Parts.Motor.Kv), needs.Read(board.Parts.Motor.PolePairs)));

    /// <summary>The whole model.</summary>
    public static Answer<MotorModel> Compute(Board board) => Answer<MotorModel>.Ask("", needs =>
    {
        var motor = board.Parts.Motor;
        var kv = needs.Read(motor.Kv);
        var pairs = needs.Read(motor.PolePairs);
        var cold = PhaseResistanceOf(needs, motor);
        var inductance = needs.Read(motor.PhaseInductance);
        var temperature = needs.Read(board.Brief.Temperature);
        var oil = board.Parts.Drive.Kind is { IsKnown: true, Value: DriveKind.Gear } ? needs.Read(board.Parts.Gearbox.OilLoss, default)
            : default;
        MotorDrag drag = default;
        if (motor.NoLoadTests.IsKnown)
        {
            var tests = needs.Read(motor.NoLoadTests);
            if (!needs.Unmet)
            {
                // A motor that gets no voltage does not turn: such a point tells nothing about its drag.
                (Voltage Supply, Current Current)[] turning = [.. tests.Points.Where(t => t.X.Si > 0)];
                if (turning.Length > 0)
                    drag = MotorDrag.FromTests(kv, turning);
                else
                    needs.Lack(motor.NoLoadTests.Key);
            }
        }
        else
        {
            var (volts, current) = (needs.Read(motor.NoLoadVoltage), needs.Read(motor.NoLoadCurrent));
            if (!needs.Unmet)
                drag = MotorDrag.FromTest(kv, volts, current);
        }

        return needs.Unmet ? null : new MotorModel(
            new MotorConstants(kv, pairs),
            cold * (1 + CopperPerKelvin * (temperature.Celsius - 20)), cold, inductance,
            drag, oil);
    });

    /// <summary>Resistance of one phase at 20 °C: as given, or half of that between two leads.</summary>
    public static Resistance PhaseResistanceOf(Needs needs, Motor motor) =>
        needs.Read(motor.PhaseResistance, motor.LineResistance, line => line / 2);
}

/// <summary>What is known of a motor's constants.</summary>
/// <param name="Kv">Speed constant.</param>
/// <param name="PolePairs">Pole pairs; zero when not known.</param>
public sealed record MotorConstantsOfBoard(SpeedConstant Kv, int PolePairs);
