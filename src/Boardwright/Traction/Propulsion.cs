using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Traction;

/// <summary>The electric side of a drive at rest temperature: what a phase current gives at the wheels and asks of the pack, and which
/// currents its limits allow. Raw SI numbers inside, because solvers call it thousands of times.</summary>
/// <remarks>The equations are those of <see cref="WheelDrive"/> and <see cref="FedDrive{T}"/>.</remarks>
/// <validity>Steady state, no field weakening, no saturation of the iron.</validity>
/// <error>Not stated by the source; the motor's constants dominate.</error>
/// <source cref="Findings.Sources.Pmsm"/>
public sealed record Propulsion : WheelDrive
{
    /// <summary>Part of the bus voltage that the modulation may use.</summary>
    public const double Modulation = 0.95;

    const int Strides = 128;

    /// <summary>Motors, gears and wheels, whose controllers are still to be told.</summary>
    internal Propulsion(WheelDrive wheels)
        : base(wheels)
    {
    }

    /// <summary>Resistance of one switch of the bridge, ohm.</summary>
    public required double SwitchResistance { get; init; }
    /// <summary>Switching loss for each volt of bus and ampere of phase amplitude: (6/π) · ½ · time · frequency.</summary>
    public required double SwitchingFactor { get; init; }
    /// <summary>Idle power of all controllers, W.</summary>
    public required double IdlePower { get; init; }
    /// <summary>Greatest phase amplitude when driving, A; infinity where the question is only what a speed asks.</summary>
    public double PhaseLimit { get; init; } = double.PositiveInfinity;
    /// <summary>Greatest current out of the pack, A; infinity likewise.</summary>
    public double PackLimit { get; init; } = double.PositiveInfinity;
    /// <summary>Greatest electrical speed, rad/s; infinity likewise.</summary>
    public double ElectricalSpeedLimit { get; init; } = double.PositiveInfinity;

    /// <summary>The bus under a phase current, driving when positive and braking when negative.</summary>
    /// <returns>Volts and amperes out of the pack (negative into it), or <c>null</c> when the pack cannot give the power.</returns>
    public Bus? BusAt(double current, double metresPerSecond, in Supply supply) => BusAt(current, metresPerSecond, supply, PhaseResistance);

    /// <summary>The bus under a phase current when the windings have a resistance of their own, ohm.</summary>
    /// <inheritdoc cref="BusAt(double, double, in Supply)"/>
    public Bus? BusAt(double current, double metresPerSecond, in Supply supply, double phaseResistance) =>
        Found(Fed(supply, phaseResistance).BusAt(current, metresPerSecond));

    /// <summary>The bus when a stated power is drawn from it.</summary>
    /// <returns>Volts and amperes, or <c>null</c> when the pack cannot give the power.</returns>
    public static Bus? BusUnder(double watts, in Supply supply) =>
        Found(BusLanes<Narrow>.Under(watts, supply.RestVoltage, supply.Resistance));

    /// <summary>The largest driving current that holds every electrical limit at a speed, A.</summary>
    /// <returns>The current, or <c>null</c> when not even an idling motor holds them: the speed is beyond the drive.</returns>
    public double? LargestCurrent(double metresPerSecond, in Supply supply) =>
        LargestCurrent(metresPerSecond, supply, PhaseResistance, PhaseLimit);

    /// <summary>The largest driving current at a speed when the windings have a resistance of their own, ohm, and a hot controller allows
    /// less phase current, A.</summary>
    /// <inheritdoc cref="LargestCurrent(double, in Supply)"/>
    public double? LargestCurrent(double metresPerSecond, in Supply supply, double phaseResistance, double phaseLimit)
    {
        if (PolePairs * MotorSpeed(metresPerSecond) > ElectricalSpeedLimit)
            return null;
        var margin = new DriveMargin(Fed(supply, phaseResistance), metresPerSecond);
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
        if (current > phaseLimit || PolePairs * MotorSpeed(metresPerSecond) > ElectricalSpeedLimit)
            return false;
        var fed = Fed(supply, phaseResistance);
        var found = fed.BusAt(current, metresPerSecond);
        if (!IsFed(found))
            return false;
        bus = new(found.Volts, found.Amperes);
        return bus.Amperes <= PackLimit * supply.Fade(bus.Volts) && fed.VoltageMargin(current, metresPerSecond, bus.Volts) >= 0;
    }

    /// <summary>The largest braking current that holds every electrical limit at a speed, A; zero when none does.</summary>
    /// <param name="metresPerSecond">Speed on the road.</param>
    /// <param name="supply">The pack.</param>
    /// <param name="most">What the board holds the current to when braking.</param>
    public double LargestBrakeCurrent(double metresPerSecond, in Supply supply, BrakeLimits most) =>
        LargestBrakeCurrent(metresPerSecond, supply, PhaseResistance, most);

    /// <summary>The largest braking current at a speed when the windings have a resistance of their own, ohm, and no more phase current is
    /// asked or allowed than stated, A.</summary>
    /// <inheritdoc cref="LargestBrakeCurrent(double, in Supply, BrakeLimits)"/>
    public double LargestBrakeCurrent(double metresPerSecond, in Supply supply, double phaseResistance, BrakeLimits most)
    {
        // Braking holds no limit of driving: only the sign of a margin counts here, so that any scale will do.
        const double Scale = 1;
        var (fed, phaseLimit) = (Fed(supply, phaseResistance, Scale, Min(most.Regen, supply.ChargeHeadroom)), most.Phase);
        var margin = new BrakeMargin(fed, metresPerSecond);
        if (margin.At(0) <= 0)
            return 0;
        // The power fed back first grows with the current, then copper eats it. The controller stops at the first limit it
        // meets on the way up, even where a larger current would hold it again.
        var crest = Min(phaseLimit, fed.Crest(metresPerSecond));
        return margin.At(crest) < 0 ? RootFinding.Within(margin, 0, crest, 1e-10)
            : margin.At(phaseLimit) >= 0 ? phaseLimit
            : RootFinding.Within(margin, crest, phaseLimit, 1e-10);
    }

    /// <summary>Speed at which the motors run with the wheels in the air, m/s.</summary>
    /// <returns>The speed; zero when the pack cannot even keep the controllers awake.</returns>
    public double UnloadedSpeed(in Supply supply)
    {
        var margin = new IdleMargin(this, Fed(supply, PhaseResistance));
        if (margin.At(0) <= 0)
            return 0;
        // No motor outruns the speed at which its own voltage is all that the bus can make.
        var ideal = Modulation * supply.RestVoltage / (Sqrt(3) * PolePairs * FluxLinkage) * WheelRadius / Ratio;
        return RootFinding.FirstFall(margin, 0, ideal, ideal / Strides) ?? ideal;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    FedDrive<Narrow> Fed(in Supply supply, double phaseResistance) => Fed(supply, phaseResistance, PackLimit, 0);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    FedDrive<Narrow> Fed(in Supply supply, double phaseResistance, double packLimit, double chargeLimit) => new(
        this, phaseResistance, SwitchResistance, SwitchingFactor, IdlePower, packLimit, chargeLimit,
        supply.RestVoltage, supply.Resistance, supply.TaperStart, supply.TaperEnd);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static Bus? Found(in BusLanes<Narrow> bus) => IsFed(bus) ? new Bus(bus.Volts, bus.Amperes) : null;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static bool IsFed(in BusLanes<Narrow> bus) => bus.Root >= 0 && bus.Left > 0;

    readonly struct DriveMargin(FedDrive<Narrow> fed, double speed) : IFunction
    {
        public double At(double x)
        {
            var bus = fed.BusAt(x, speed);
            return IsFed(bus) ? fed.DriveMargin(x, speed, bus) : -1;
        }
    }

    readonly struct BrakeMargin(FedDrive<Narrow> fed, double speed) : IFunction
    {
        public double At(double x)
        {
            var bus = fed.BusAt(-x, speed);
            // A motor that spins faster than the bus can follow still brakes; the voltage only limits the current that is added.
            return !IsFed(bus) ? -1 : x == 0 ? fed.ChargeMargin(bus) : fed.BrakeMargin(-x, speed, bus);
        }
    }

    readonly struct IdleMargin(Propulsion drive, FedDrive<Narrow> fed) : IFunction
    {
        public double At(double x)
        {
            var current = drive.CurrentFor(0, x);
            var bus = fed.BusAt(current, x);
            return IsFed(bus) ? Min(fed.VoltageMargin(current, x, bus.Volts) / fed.RestVoltage,
                1 - drive.PolePairs * drive.MotorSpeed(x) / drive.ElectricalSpeedLimit) : -1;
        }
    }
}

/// <summary>What a board holds its currents to when braking.</summary>
/// <param name="Phase">Greatest phase amplitude of each motor, A.</param>
/// <param name="Regen">Greatest current into the pack, A; zero where nothing lets it back.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct BrakeLimits(double Phase, double Regen);

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
    public double Fade(double volts) => Fade<Narrow>(volts, TaperStart, TaperEnd);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T Fade<T>(T volts, T start, T end)
        where T : struct, ILanes<T> => T.Where(volts - start, 1, T.Max(0, (volts - end) / (start - end)));
}
