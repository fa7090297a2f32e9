using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Boardwright.Numerics;

namespace Boardwright.Traction;

/// <summary>Motors, gears and wheels at rest temperature, raw SI: from a phase current to a force on the road and back.</summary>
/// <param name="Motors">Number of motors.</param>
/// <param name="Ratio">Turns of a motor for one turn of a wheel.</param>
/// <param name="Efficiency">Efficiency of belt or gears on torque, 0 to 1.</param>
/// <param name="WheelRadius">Rolling radius in metres.</param>
/// <param name="TorqueConstant">Torque for each ampere of phase amplitude, N·m/A.</param>
/// <param name="FluxLinkage">Flux linkage, Wb.</param>
/// <param name="PolePairs">Pole pairs.</param>
/// <param name="PhaseResistance">Resistance of one phase at the board's rest temperature, ohm.</param>
/// <param name="PhaseInductance">Inductance of one phase, H.</param>
/// <param name="DragTorque">Drag torque at standstill, N·m.</param>
/// <param name="DragSlope">Growth of the drag torque with speed, N·m·s/rad.</param>
/// <source cref="Findings.Sources.Pmsm"/>
public record WheelDrive(
    int Motors, double Ratio, double Efficiency, double WheelRadius, double TorqueConstant, double FluxLinkage, int PolePairs,
    double PhaseResistance, double PhaseInductance, double DragTorque, double DragSlope)
{
    // A copy with another drag keeps these, so nothing that they rest on can be changed in a copy.
    readonly double radiansPerMetre = Ratio / WheelRadius, forcePerTorque = Motors * Ratio / WheelRadius,
        torquePerForce = WheelRadius / (Motors * Ratio), lossFactor = 1 / Efficiency;

    /// <summary>Number of motors.</summary>
    public int Motors { get; } = Motors;
    /// <summary>Turns of a motor for one turn of a wheel.</summary>
    public double Ratio { get; } = Ratio;
    /// <summary>Efficiency of belt or gears on torque, 0 to 1.</summary>
    public double Efficiency { get; } = Efficiency;
    /// <summary>Rolling radius in metres.</summary>
    public double WheelRadius { get; } = WheelRadius;
    /// <summary>Motor speed at a road speed, rad/s.</summary>
    public double MotorSpeed(double metresPerSecond) => MotorSpeed<Narrow>(metresPerSecond);
    /// <summary>Drag torque of one motor at its speed, N·m.</summary>
    public double Drag(double motorSpeed) => Drag<Narrow>(motorSpeed);
    /// <summary>Force at the wheels of a phase current, N: n G η (Kt i − drag)/r; a motor that is dragged pays the losses of belt or gears
    /// as well.</summary>
    public double Force(double current, double metresPerSecond) => Force<Narrow>(current, metresPerSecond);
    /// <summary>Phase current that gives a force at the wheels, A; below zero where the motors have to brake. Undoes
    /// <see cref="Force(double, double)"/>.</summary>
    public double CurrentFor(double force, double metresPerSecond) => CurrentFor<Narrow>(force, metresPerSecond);

    /// <summary>Force at the wheels of a braking phase current, N: n G (Kt i + drag)/(η r); losses brake as well.</summary>
    public double BrakeForce(double current, double metresPerSecond) =>
        forcePerTorque * (TorqueConstant * current + Drag(MotorSpeed(metresPerSecond))) / Efficiency;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal T MotorSpeed<T>(T metresPerSecond)
        where T : struct, ILanes<T> => metresPerSecond * radiansPerMetre;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal T Drag<T>(T motorSpeed)
        where T : struct, ILanes<T> => DragTorque + DragSlope * motorSpeed;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal T Force<T>(T current, T metresPerSecond)
        where T : struct, ILanes<T>
    {
        var torque = TorqueConstant * current - Drag(MotorSpeed(metresPerSecond));
        return forcePerTorque * torque * T.Where(torque, Efficiency, lossFactor);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal T CurrentFor<T>(T force, T metresPerSecond)
        where T : struct, ILanes<T>
    {
        var torque = force * torquePerForce * T.Where(force, lossFactor, Efficiency);
        return (torque + Drag(MotorSpeed(metresPerSecond))) / TorqueConstant;
    }
}

/// <summary>A drive with what feeds it at one moment, controllers and pack: what a phase current asks of the bus, and by how much it holds
/// the limits. One number of each, or several side by side, so that examination, ride and search compute by the same equations.</summary>
/// <remarks>
/// Sinusoidal, field-oriented drive with i_d = 0: v_d = −ω_e L i, v_q = R i + ω_e λ, held to √(v_d² + v_q²) ≤ m V/√3.
/// The bus carries 3/2 (R + R_switch) i² + Kt i ω + s V i for each motor and the controllers' idle power, with
/// s = (6/π) · ½ · switching time · switching frequency; it sags by the resistance of pack and wiring.
/// </remarks>
/// <param name="Wheels">Motors, gears and wheels, which are the same side by side.</param>
/// <param name="PhaseResistance">Resistance of one phase as warm as it is, ohm.</param>
/// <param name="SwitchResistance">Resistance of one switch of the bridge, ohm.</param>
/// <param name="SwitchingFactor">Switching loss for each volt of bus and ampere of phase amplitude.</param>
/// <param name="IdlePower">Idle power of all controllers, W.</param>
/// <param name="PackLimit">Greatest current out of the pack, A.</param>
/// <param name="ChargeLimit">Greatest current into it, by its limits and by its full voltage, A.</param>
/// <param name="RestVoltage">Rest voltage of the pack, V.</param>
/// <param name="Resistance">Resistance of pack and wiring, ohm.</param>
/// <param name="TaperStart">Bus voltage below which power fades; zero where nothing fades.</param>
/// <param name="TaperEnd">Bus voltage at which power is cut.</param>
/// <validity>Steady state, no field weakening, no saturation of the iron.</validity>
/// <error>Not stated by the source; the motor's constants dominate.</error>
/// <source cref="Findings.Sources.Pmsm"/>
[StructLayout(LayoutKind.Auto)]
readonly record struct FedDrive<T>(
    WheelDrive Wheels, T PhaseResistance, T SwitchResistance, T SwitchingFactor, T IdlePower, T PackLimit, T ChargeLimit,
    T RestVoltage, T Resistance, T TaperStart, T TaperEnd)
    where T : struct, ILanes<T>
{
    /// <summary>The bus under a phase current, driving when positive and braking when negative.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public BusLanes<T> BusAt(T current, T speed)
    {
        var power = Wheels.Motors * (1.5 * (PhaseResistance + SwitchResistance) * current * current
            + Wheels.TorqueConstant * current * Wheels.MotorSpeed(speed)) + IdlePower;
        var switching = Wheels.Motors * SwitchingFactor * T.Abs(current);
        var left = RestVoltage - switching * Resistance;
        var volts = BusLanes<T>.VoltsUnder(power, left, Resistance, out var root);
        return new(volts, (power + switching * volts) / volts, left, root);
    }

    /// <summary>Voltage that the bus can make beyond what a current asks, V.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T VoltageMargin(T current, T speed, T volts)
    {
        var electrical = Wheels.PolePairs * Wheels.MotorSpeed(speed);
        var across = electrical * Wheels.PhaseInductance * current;
        var along = PhaseResistance * current + electrical * Wheels.FluxLinkage;
        return Propulsion.Modulation / 1.7320508075688772 * volts - T.Sqrt(across * across + along * along);
    }

    /// <summary>By how much a driving current holds the limits of pack and voltage, as a part of them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T DriveMargin(T current, T speed, in BusLanes<T> bus) =>
        T.Min((PackLimit * Supply.Fade(bus.Volts, TaperStart, TaperEnd) - bus.Amperes) / PackLimit,
        VoltageMargin(current, speed, bus.Volts) / RestVoltage);

    /// <summary>By how much a braking current, which is negative, holds them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T BrakeMargin(T current, T speed, in BusLanes<T> bus) =>
        T.Min(ChargeMargin(bus), VoltageMargin(current, speed, bus.Volts) / RestVoltage);
    /// <summary>By how much the current into the pack holds its limit, as a part of what the pack gives.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T ChargeMargin(in BusLanes<T> bus) => (ChargeLimit + bus.Amperes) / PackLimit;
    /// <summary>Braking current at which the power that is fed back is greatest: beyond it copper eats what is gained.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Crest(T speed) => Wheels.TorqueConstant * Wheels.MotorSpeed(speed) / (3 * (PhaseResistance + SwitchResistance));
}

/// <summary>The bus at one moment, and whether the pack can give the power at all.</summary>
/// <param name="Volts">Voltage at the controller.</param>
/// <param name="Amperes">Current out of the pack; negative when it flows back.</param>
/// <param name="Left">Rest voltage less what switching takes; above zero where the pack can give the power.</param>
/// <param name="Root">What the root is drawn from; zero or more where the pack can give the power.</param>
[StructLayout(LayoutKind.Auto)]
readonly record struct BusLanes<T>(T Volts, T Amperes, T Left, T Root)
    where T : struct, ILanes<T>
{
    /// <summary>The bus when a stated power is drawn from it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BusLanes<T> Under(T watts, T left, T resistance)
    {
        var volts = VoltsUnder(watts, left, resistance, out var root);
        return new(volts, watts / volts, left, root);
    }

    /// <summary>Its voltage: V = ½ (E + √(E² − 4 P R)), above zero even where the pack cannot give the power.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T VoltsUnder(T watts, T left, T resistance, out T root)
    {
        root = left * left - 4 * watts * resistance;
        return T.Max((left + T.Sqrt(T.Max(root, 0))) * 0.5, 1e-3);
    }

    /// <summary>By how much the pack can give the power, as a part of its rest voltage; below zero where it cannot.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T FedMargin(T rest) => T.Min(Root, Left * rest) / (rest * rest);
}
