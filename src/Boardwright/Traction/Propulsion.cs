using System.Runtime.InteropServices;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Traction;

/// <summary>The electric side of a drive at rest temperature: what a phase current gives at the wheels and asks of the pack, and which currents its limits allow. Raw SI numbers inside, because solvers call it thousands of times.</summary>
/// <remarks>
/// Sinusoidal, field-oriented drive with i_d = 0: v_d = −ω_e L i, v_q = R i + ω_e λ, held to √(v_d² + v_q²) ≤ m V/√3.
/// The bus carries 3/2 (R + R_switch) i² + Kt i ω + s V i for each motor and the controllers' idle power, with
/// s = (6/π) · ½ · switching time · switching frequency; it sags by the resistance of pack and wiring.
/// </remarks>
/// <validity>Steady state, no field weakening, no saturation of the iron.</validity>
/// <error>Not stated by the source; the motor's constants dominate.</error>
/// <source cref="Findings.Sources.Pmsm"/>
public sealed record Propulsion
{
    /// <summary>Part of the bus voltage that the modulation may use.</summary>
    public const double Modulation = 0.95;

    const int Strides = 128;

    /// <summary>Number of motors.</summary>
    public required int Motors { get; init; }

    /// <summary>Turns of a motor for one turn of a wheel.</summary>
    public required double Ratio { get; init; }

    /// <summary>Efficiency of belt or gears on torque, 0 to 1.</summary>
    public required double Efficiency { get; init; }

    /// <summary>Rolling radius in metres.</summary>
    public required double WheelRadius { get; init; }

    /// <summary>Torque for each ampere of phase amplitude, N·m/A.</summary>
    public required double TorqueConstant { get; init; }

    /// <summary>Flux linkage, Wb.</summary>
    public required double FluxLinkage { get; init; }

    /// <summary>Pole pairs.</summary>
    public required int PolePairs { get; init; }

    /// <summary>Resistance of one phase at the board's rest temperature, ohm.</summary>
    public required double PhaseResistance { get; init; }

    /// <summary>Inductance of one phase, H.</summary>
    public required double PhaseInductance { get; init; }

    /// <summary>Drag torque at standstill, N·m.</summary>
    public required double DragTorque { get; init; }

    /// <summary>Growth of the drag torque with speed, N·m·s/rad.</summary>
    public required double DragSlope { get; init; }

    /// <summary>Resistance of one switch of the bridge, ohm.</summary>
    public required double SwitchResistance { get; init; }

    /// <summary>Switching loss for each volt of bus and ampere of phase amplitude: (6/π) · ½ · time · frequency.</summary>
    public required double SwitchingFactor { get; init; }

    /// <summary>Idle power of all controllers, W.</summary>
    public required double IdlePower { get; init; }

    /// <summary>Greatest phase amplitude when driving, A.</summary>
    public required double PhaseLimit { get; init; }

    /// <summary>Greatest phase amplitude when braking, A.</summary>
    public required double BrakePhaseLimit { get; init; }

    /// <summary>Greatest current out of the pack, A.</summary>
    public required double PackLimit { get; init; }

    /// <summary>Greatest current into the pack, A; zero where it may not be charged at all.</summary>
    public required double RegenLimit { get; init; }

    /// <summary>Greatest electrical speed, rad/s.</summary>
    public required double ElectricalSpeedLimit { get; init; }

    /// <summary>Motor speed at a road speed, rad/s.</summary>
    public double MotorSpeed(double metresPerSecond) => metresPerSecond * Ratio / WheelRadius;

    /// <summary>Drag torque of one motor at its speed, N·m.</summary>
    public double Drag(double motorSpeed) => DragTorque + DragSlope * motorSpeed;

    /// <summary>Force at the wheels of a phase current, N: n G η (Kt i − drag)/r; a motor that is dragged pays the losses of belt or gears as well.</summary>
    public double Force(double current, double metresPerSecond)
    {
        var torque = TorqueConstant * current - Drag(MotorSpeed(metresPerSecond));
        return Motors * Ratio / WheelRadius * torque * (torque >= 0 ? Efficiency : 1 / Efficiency);
    }

    /// <summary>Phase current that gives a force at the wheels, A; below zero where the motors have to brake. Undoes <see cref="Force"/>.</summary>
    public double CurrentFor(double force, double metresPerSecond)
    {
        var torque = force * WheelRadius / (Motors * Ratio) * (force >= 0 ? 1 / Efficiency : Efficiency);
        return (torque + Drag(MotorSpeed(metresPerSecond))) / TorqueConstant;
    }

    /// <summary>Force at the wheels of a braking phase current, N: n G (Kt i + drag)/(η r); losses brake as well.</summary>
    public double BrakeForce(double current, double metresPerSecond) =>
        Motors * Ratio / WheelRadius * (TorqueConstant * current + Drag(MotorSpeed(metresPerSecond))) / Efficiency;

    /// <summary>The bus under a phase current, driving when positive and braking when negative.</summary>
    /// <returns>Volts and amperes out of the pack (negative into it), or <c>null</c> when the pack cannot give the power.</returns>
    public Bus? BusAt(double current, double metresPerSecond, in Supply supply) => BusAt(current, metresPerSecond, supply, PhaseResistance);

    /// <summary>The bus under a phase current when the windings have a resistance of their own, ohm.</summary>
    /// <inheritdoc cref="BusAt(double, double, in Supply)"/>
    public Bus? BusAt(double current, double metresPerSecond, in Supply supply, double phaseResistance)
    {
        var amplitude = Abs(current);
        var power = Motors * (1.5 * (phaseResistance + SwitchResistance) * current * current
            + TorqueConstant * current * MotorSpeed(metresPerSecond)) + IdlePower;
        var switching = Motors * SwitchingFactor * amplitude;
        var rest = supply.RestVoltage - switching * supply.Resistance;
        var root = rest * rest - 4 * power * supply.Resistance;
        if (root < 0 || rest <= 0)
            return null;
        var volts = (rest + Sqrt(root)) / 2;
        return new Bus(volts, (power + switching * volts) / volts);
    }

    /// <summary>The bus when a stated power is drawn from it: V = ½ (E + √(E² − 4 P R)).</summary>
    /// <returns>Volts and amperes, or <c>null</c> when the pack cannot give the power.</returns>
    public static Bus? BusUnder(double watts, in Supply supply)
    {
        var root = supply.RestVoltage * supply.RestVoltage - 4 * watts * supply.Resistance;
        if (root < 0)
            return null;
        var volts = (supply.RestVoltage + Sqrt(root)) / 2;
        return new Bus(volts, watts / volts);
    }

    /// <summary>The largest driving current that holds every electrical limit at a speed, A.</summary>
    /// <returns>The current, or <c>null</c> when not even an idling motor holds them: the speed is beyond the drive.</returns>
    public double? LargestCurrent(double metresPerSecond, in Supply supply) => LargestCurrent(metresPerSecond, supply, PhaseResistance, PhaseLimit);

    /// <summary>The largest driving current at a speed when the windings have a resistance of their own, ohm, and a hot controller allows less phase current, A.</summary>
    /// <inheritdoc cref="LargestCurrent(double, in Supply)"/>
    public double? LargestCurrent(double metresPerSecond, in Supply supply, double phaseResistance, double phaseLimit)
    {
        if (PolePairs * MotorSpeed(metresPerSecond) > ElectricalSpeedLimit)
            return null;
        var margin = new DriveMargin(this, metresPerSecond, supply, phaseResistance);
        return margin.At(phaseLimit) >= 0 ? phaseLimit
            : margin.At(0) < 0 ? null
            : RootFinding.Within(margin, 0, phaseLimit, 1e-10);
    }

    /// <summary>Whether a driving current of zero or more holds every electrical limit at a speed.</summary>
    /// <param name="current">Phase current, A.</param>
    /// <param name="metresPerSecond">Speed on the road.</param>
    /// <param name="supply">The pack.</param>
    /// <param name="phaseResistance">Resistance of a phase as warm as it is, ohm.</param>
    /// <param name="phaseLimit">Greatest phase current, A.</param>
    /// <param name="bus">The bus, where the answer is yes.</param>
    public bool Allows(double current, double metresPerSecond, in Supply supply, double phaseResistance, double phaseLimit, out Bus bus)
    {
        bus = default;
        if (current > phaseLimit || PolePairs * MotorSpeed(metresPerSecond) > ElectricalSpeedLimit
            || BusAt(current, metresPerSecond, supply, phaseResistance) is not { } found)
            return false;
        bus = found;
        return found.Amperes <= PackLimit * supply.Fade(found.Volts) && VoltageMargin(current, metresPerSecond, found.Volts, phaseResistance) >= 0;
    }

    /// <summary>The largest braking current that holds every electrical limit at a speed, A; zero when none does.</summary>
    public double LargestBrakeCurrent(double metresPerSecond, in Supply supply) => LargestBrakeCurrent(metresPerSecond, supply, PhaseResistance, BrakePhaseLimit);

    /// <summary>The largest braking current at a speed when the windings have a resistance of their own, ohm, and no more phase current is asked or allowed than stated, A.</summary>
    /// <inheritdoc cref="LargestBrakeCurrent(double, in Supply)"/>
    public double LargestBrakeCurrent(double metresPerSecond, in Supply supply, double phaseResistance, double phaseLimit)
    {
        var margin = new BrakeMargin(this, metresPerSecond, supply, phaseResistance);
        if (margin.At(0) <= 0)
            return 0;
        // The power fed back first grows with the current, then copper eats it. The controller stops at the first limit it
        // meets on the way up, even where a larger current would hold it again.
        var crest = Min(phaseLimit, TorqueConstant * MotorSpeed(metresPerSecond) / (3 * (phaseResistance + SwitchResistance)));
        return margin.At(crest) < 0 ? RootFinding.Within(margin, 0, crest, 1e-10)
            : margin.At(phaseLimit) >= 0 ? phaseLimit
            : RootFinding.Within(margin, crest, phaseLimit, 1e-10);
    }

    /// <summary>Speed at which the motors run with the wheels in the air, m/s.</summary>
    /// <returns>The speed; zero when the pack cannot even keep the controllers awake.</returns>
    public double UnloadedSpeed(in Supply supply)
    {
        var margin = new IdleMargin(this, supply);
        if (margin.At(0) <= 0)
            return 0;
        // No motor outruns the speed at which its own voltage is all that the bus can make.
        var ideal = Modulation * supply.RestVoltage / (Sqrt(3) * PolePairs * FluxLinkage) * WheelRadius / Ratio;
        return RootFinding.FirstFall(margin, 0, ideal, ideal / Strides) ?? ideal;
    }

    double VoltageMargin(double current, double metresPerSecond, double volts, double phaseResistance)
    {
        var electrical = PolePairs * MotorSpeed(metresPerSecond);
        var vd = electrical * PhaseInductance * current;
        var vq = phaseResistance * current + electrical * FluxLinkage;
        return Modulation * volts / Sqrt(3) - Sqrt(vd * vd + vq * vq);
    }

    readonly struct DriveMargin(Propulsion drive, double speed, Supply supply, double ohms) : IFunction
    {
        public double At(double x)
        {
            if (drive.BusAt(x, speed, supply, ohms) is not { } bus)
                return -1;
            var allowed = drive.PackLimit * supply.Fade(bus.Volts);
            return Min((allowed - bus.Amperes) / drive.PackLimit, drive.VoltageMargin(x, speed, bus.Volts, ohms) / supply.RestVoltage);
        }
    }

    readonly struct BrakeMargin(Propulsion drive, double speed, Supply supply, double ohms) : IFunction
    {
        public double At(double x)
        {
            if (drive.BusAt(-x, speed, supply, ohms) is not { } bus)
                return -1;
            var allowed = Min(drive.RegenLimit, supply.ChargeHeadroom);
            var current = (allowed + bus.Amperes) / drive.PackLimit;
            // A motor that spins faster than the bus can follow still brakes; the voltage only limits the current that is added.
            return x == 0 ? current : Min(current, drive.VoltageMargin(-x, speed, bus.Volts, ohms) / supply.RestVoltage);
        }
    }

    readonly struct IdleMargin(Propulsion drive, Supply supply) : IFunction
    {
        public double At(double x)
        {
            var motor = drive.MotorSpeed(x);
            var current = drive.Drag(motor) / drive.TorqueConstant;
            return drive.BusAt(current, x, supply) is not { } bus ? -1
                : Min(drive.VoltageMargin(current, x, bus.Volts, drive.PhaseResistance) / supply.RestVoltage, 1 - drive.PolePairs * motor / drive.ElectricalSpeedLimit);
        }
    }
}

/// <summary>The bus at one moment.</summary>
/// <param name="Volts">Voltage at the controller.</param>
/// <param name="Amperes">Current out of the pack; negative when it flows back.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Bus(double Volts, double Amperes)
{
    /// <summary>Power at the controller, W.</summary>
    public double Watts => Volts * Amperes;
}

/// <summary>The pack as the drive sees it at one state of charge.</summary>
/// <param name="RestVoltage">Rest voltage of the pack, V.</param>
/// <param name="Resistance">Resistance of pack and wiring, ohm.</param>
/// <param name="ChargeHeadroom">Current into the pack at which the loaded cells reach their full voltage, A; never negative.</param>
/// <param name="TaperStart">Bus voltage below which power fades; zero where nothing fades.</param>
/// <param name="TaperEnd">Bus voltage at which power is cut.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Supply(double RestVoltage, double Resistance, double ChargeHeadroom, double TaperStart, double TaperEnd)
{
    /// <summary>Part of the pack current that the taper leaves at a bus voltage, 0 to 1: linear between end and start.</summary>
    public double Fade(double volts) => volts >= TaperStart ? 1 : Max(0, (volts - TaperEnd) / (TaperStart - TaperEnd));
}
