using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Road;
using Boardwright.Wiring;
using static System.Math;

namespace Boardwright.Traction;

/// <summary>Puts a board's parts together as one that runs.</summary>
public static class RunningAnalysis
{
    /// <summary>Drag area of a stance where none is given; a guess.</summary>
    public static Area DragAreaOf(Stance stance) => Area.FromSquareMetres(stance switch
    {
        Stance.Tucked => 0.30,
        Stance.Crouched => 0.45,
        _ => 0.60,
    });

    /// <summary>Electrical drive and its limits.</summary>
    public static Answer<Propulsion> DriveOf(
        Board board, Answer<GearRatio> gearing, Answer<MotorModel> motor,
        Answer<CurrentLimits> phase, Answer<CurrentLimits> brakePhase, Answer<CurrentLimits> pack, Answer<CurrentLimits> regen) =>
        Answer<Propulsion>.Ask("", needs =>
        {
            var controller = board.Parts.Controller;
            var motors = needs.Of(board.Parts.Drive.Motors);
            var gear = needs.Of(gearing);
            var model = needs.Of(motor);
            var diameter = needs.Of(board.Parts.Wheels.Diameter);
            var bridge = needs.Of(controller.BridgeResistance);
            var time = needs.Of(controller.SwitchingTime);
            var frequency = needs.Of(controller.SwitchingFrequency);
            var idle = needs.Of(controller.IdlePower);
            var electrical = needs.Of(controller.ElectricalSpeedLimit, AngularSpeed.FromRadiansPerSecond(1e9));
            var limits = (Phase: needs.Of(phase), BrakePhase: needs.Of(brakePhase), Pack: needs.Of(pack), Regen: needs.Of(regen));
            return needs.Unmet ? null : new Propulsion
            {
                Motors = motors,
                Ratio = gear.Ratio,
                Efficiency = gear.Efficiency,
                WheelRadius = diameter.Metres / 2,
                TorqueConstant = model.Constants.NewtonMetresPerPeakAmpere,
                FluxLinkage = model.Constants.FluxLinkageWebers,
                PolePairs = model.Constants.PolePairs,
                PhaseResistance = model.PhaseResistance.Ohms,
                PhaseInductance = model.Inductance.Henries,
                DragTorque = (model.Drag.Constant + model.OilLoss).NewtonMetres,
                DragSlope = model.Drag.NewtonMetreSecondsPerRadian,
                SwitchResistance = bridge.Ohms,
                SwitchingFactor = 6 / PI * 0.5 * time.Seconds * frequency.Hertz,
                IdlePower = idle.Watts * Place.ControllerCount(board.Parts),
                PhaseLimit = limits.Phase.Weakest.Current.Amperes,
                BrakePhaseLimit = limits.BrakePhase.Weakest.Current.Amperes,
                PackLimit = limits.Pack.Weakest.Current.Amperes,
                RegenLimit = limits.Regen.Weakest.Current.Amperes,
                ElectricalSpeedLimit = electrical.RadiansPerSecond,
            };
        });

    /// <summary>Air, rolling and mass on the brief's road.</summary>
    public static Answer<LoadOfBoard> LoadOf(Board board, Answer<RollingMass> mass) => Answer<LoadOfBoard>.Ask("", needs =>
    {
        var brief = board.Brief;
        var rolling = needs.Of(mass);
        var area = brief.DragArea.IsKnown ? needs.Of(brief.DragArea) : brief.Stance.IsKnown ? DragAreaOf(needs.Of(brief.Stance)) : needs.Of(brief.DragArea);
        var air = needs.Of(AirOf(board));
        var table = needs.Of(board.Parts.Wheels.RollingResistance);
        if (needs.Unmet)
            return null;
        Number? coefficient = table.Everywhere;
        if (coefficient is null)
        {
            var surface = needs.Of(brief.Surface);
            coefficient = needs.Unmet ? null : table.On(surface);
            if (coefficient is null && !needs.Unmet)
                needs.Lack($"{board.Parts.Wheels.RollingResistance.Key}.{Entry.Word(surface)}");
        }

        return needs.Unmet ? null : new LoadOfBoard(new RoadLoad(rolling.Mass, coefficient!.Value, area, air.DensityKilogramsPerCubicMetre));
    });

    /// <summary>Air at the brief's altitude and temperature.</summary>
    public static Answer<Air> AirOf(Board board) => Answer<Air>.Ask("", needs =>
    {
        var temperature = needs.Of(board.Brief.Temperature);
        var altitude = needs.Of(board.Brief.Altitude, default);
        return needs.Unmet ? default : Air.At(altitude, temperature);
    });

    /// <summary>Mass that rolls: board, rider and gear.</summary>
    public static Answer<RollingMass> MassOf(Board board, Answer<Masses> masses) => Answer<RollingMass>.Ask("mass.rolling", needs =>
    {
        var own = needs.Of(masses);
        var rider = needs.Of(board.Brief.RiderMass);
        var gear = needs.Of(board.Brief.GearMass, default);
        return needs.Unmet ? null : new RollingMass(own.Board + rider + gear);
    });

    /// <summary>Mass with the rotating parts: m + Σ J_wheel/r² + n J_rotor G²/r². A wheel without an inertia is a solid disc.</summary>
    public static Answer<RollingMass> EffectiveMassOf(Board board, Answer<RollingMass> rolling, Answer<GearRatio> gearing) => Answer<RollingMass>.Ask("mass.effective", needs =>
    {
        var wheels = board.Parts.Wheels;
        var mass = needs.Of(rolling);
        var ratio = needs.Of(gearing);
        var radius = needs.Of(wheels.Diameter) / 2;
        var motors = needs.Of(board.Parts.Drive.Motors);
        var rotor = needs.Of(board.Parts.Motor.RotorInertia);
        var wheel = wheels.Inertia.IsKnown ? needs.Of(wheels.Inertia) : RotatingMass.Disc(needs.Of(wheels.Mass), radius);
        return needs.Unmet ? null : new RollingMass(
            mass.Mass + RotatingMass.Equivalent(wheel, radius) * wheels.Count.Or(4) + RotatingMass.Equivalent(rotor, radius, ratio.Ratio) * motors);
    });

    /// <summary>The whole board on the road.</summary>
    public static Answer<Running> Of(
        Board board, Answer<Propulsion> drive, Answer<PackModel> pack, Answer<PackWiring> wiring, Answer<LoadOfBoard> load, Answer<RollingMass> effective) =>
        Answer<Running>.Ask("", needs =>
        {
            var (brief, parts, limits) = (board.Brief, board.Parts, board.Limits);
            var electric = needs.Of(drive);
            var model = needs.Of(pack);
            var wires = needs.Of(wiring);
            var road = needs.Of(load);
            var full = needs.Of(parts.Cell.VoltageFull);
            var mass = needs.Of(effective);
            var wheelbase = needs.Of(parts.Deck.Wheelbase);
            var tapers = limits.TaperStart.IsKnown && limits.TaperEnd.IsKnown;
            var start = tapers ? needs.Of(limits.TaperStart) : default;
            var end = tapers ? needs.Of(limits.TaperEnd) : limits.TaperEnd.IsKnown ? needs.Of(limits.TaperEnd) : needs.Of(parts.Cell.VoltageEmpty);
            return needs.Unmet ? null : new Running
            {
                Drive = electric,
                Pack = model,
                Load = road.Load,
                Headwind = needs.Of(brief.Headwind, default).MetresPerSecond,
                WiringResistance = wires.Resistance.Ohms,
                FullVoltage = full.Volts * model.Series,
                TaperStart = start > end ? start.Volts * model.Series : 0,
                TaperEnd = end.Volts * model.Series,
                EffectiveMass = mass.Mass.Kilograms,
                Grip = needs.Of(brief.Road, Weather.Dry) == Weather.Wet ? Running.WetGrip : Running.DryGrip,
                WeightShare = needs.Of(parts.Drive.WeightShare, Fraction.FromPercent(50)).Value,
                Wheelbase = wheelbase.Items[0].Metres,
                Driven = needs.Of(parts.Drive.Driven, Driven.Rear),
            };
        });
}

/// <summary>A mass that rolls.</summary>
/// <param name="Mass">The mass.</param>
public sealed record RollingMass(Mass Mass);

/// <summary>Air, rolling and mass of a board.</summary>
/// <param name="Load">The road load.</param>
public sealed record LoadOfBoard(RoadLoad Load);
