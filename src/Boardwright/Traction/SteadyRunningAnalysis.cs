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
static class SteadyRunningAnalysis
{
    /// <summary>Motors, gears and wheels.</summary>
    internal static Answer<WheelDrive> WheelsOf(Board board, Answer<GearRatio> gearing, Answer<MotorModel> motor) =>
        Answer<WheelDrive>.Ask("", needs =>
    {
        var motors = needs.Read(board.Parts.Drive.Motors);
        var gear = needs.Read(gearing);
        var model = needs.Read(motor);
        var diameter = needs.Read(board.Parts.Wheels.Diameter);
        return needs.Unmet ? null : new WheelDrive(
            motors, gear.Ratio, gear.Efficiency, diameter.Metres / 2, model.Constants.NewtonMetresPerPeakAmpere,
            model.Constants.FluxLinkageWebers,
            model.Constants.PolePairs, model.PhaseResistance.Ohms, model.Inductance.Henries,
            (model.Drag.Constant + model.OilLoss).NewtonMetres, model.Drag.NewtonMetreSecondsPerRadian);
    });

    /// <summary>Electrical drive, without what limits it.</summary>
    public static Answer<Propulsion> DriveOf(Board board, Answer<WheelDrive> wheels) => Answer<Propulsion>.Ask("", needs =>
    {
        var controller = board.Parts.Controller;
        var turning = needs.Read(wheels);
        var bridge = needs.Read(controller.BridgeResistance);
        var time = needs.Read(controller.SwitchingTime);
        var frequency = needs.Read(controller.SwitchingFrequency);
        var idle = needs.Read(controller.IdlePower);
        return needs.Unmet ? null : new Propulsion(turning)
        {
            SwitchResistance = bridge.Ohms,
            SwitchingFactor = 6 / PI * 0.5 * time.Seconds * frequency.Hertz,
            IdlePower = idle.Watts * PartSlot.ControllerCount(needs, board.Parts),
        };
    });

    /// <summary>Electrical drive as the board holds it when driving.</summary>
    public static Answer<Propulsion> Limited(
        Board board, Answer<Propulsion> drive, Answer<CurrentLimits> phase, Answer<CurrentLimits> pack) =>
        Answer<Propulsion>.Ask("", needs =>
        {
            var electric = needs.Read(drive);
            var electrical = needs.Read(board.Parts.Controller.ElectricalSpeedLimit, AngularSpeed.FromRadiansPerSecond(1e9));
            var limits = (Phase: needs.Read(phase), Pack: needs.Read(pack));
            return needs.Unmet ? null : electric with
            {
                PhaseLimit = limits.Phase.Enforced.Current.Amperes,
                PackLimit = limits.Pack.Enforced.Current.Amperes,
                ElectricalSpeedLimit = electrical.RadiansPerSecond,
            };
        });

    /// <summary>Air, rolling and mass on the brief's road.</summary>
    public static Answer<LoadOfBoard> LoadOf(Board board, Answer<RollingMass> mass) => Answer<LoadOfBoard>.Ask("", needs =>
    {
        var brief = board.Brief;
        var rolling = needs.Read(mass);
        var area = needs.Read(brief.DragArea);
        var air = needs.Read(AirOf(board));
        var table = needs.Read(board.Parts.Wheels.RollingResistance);
        if (needs.Unmet)
            return null;
        Number? coefficient = table.Everywhere;
        if (coefficient is null)
        {
            var surface = needs.Read(brief.Surface);
            coefficient = needs.Unmet ? null : table.On(surface);
            if (coefficient is null && !needs.Unmet)
                needs.Lack($"{board.Parts.Wheels.RollingResistance.Key}.{Entry.Word(surface)}");
        }

        return needs.Unmet ? null
            : new LoadOfBoard(new RoadLoad(rolling.Mass, coefficient!.Value, area, air.DensityKilogramsPerCubicMetre));
    });

    /// <summary>Air at the brief's altitude and temperature.</summary>
    public static Answer<Air> AirOf(Board board) => Answer<Air>.Ask("", needs =>
    {
        var temperature = needs.Read(board.Brief.Temperature);
        var altitude = needs.Read(board.Brief.Altitude, default);
        return needs.Unmet ? default : Air.At(altitude, temperature);
    });

    /// <summary>Mass that rolls: board, rider and gear.</summary>
    public static Answer<RollingMass> MassOf(Board board, Answer<Masses> masses) => Answer<RollingMass>.Ask("mass.rolling", needs =>
    {
        var own = needs.Read(masses);
        var rider = needs.Read(board.Brief.RiderMass);
        var gear = needs.Read(board.Brief.GearMass, default);
        return needs.Unmet ? null : new RollingMass(own.Board + rider + gear);
    });

    /// <summary>Mass with the rotating parts: m + Σ J_wheel/r² + n J_rotor G²/r².</summary>
    public static Answer<RollingMass> EffectiveMassOf(Board board, Answer<RollingMass> rolling, Answer<GearRatio> gearing) =>
        Answer<RollingMass>.Ask("mass.effective", needs =>
    {
        var wheels = board.Parts.Wheels;
        var mass = needs.Read(rolling);
        var ratio = needs.Read(gearing);
        var radius = needs.Read(wheels.Diameter) / 2;
        var motors = needs.Read(board.Parts.Drive.Motors);
        var rotor = needs.Read(board.Parts.Motor.RotorInertia);
        var wheel = needs.Read(wheels.Inertia);
        return needs.Unmet ? null : new RollingMass(
            mass.Mass + RotatingMass.Equivalent(wheel, radius) * wheels.Count.Or(4) + RotatingMass.Equivalent(rotor, radius, ratio.Ratio)
            * motors);
    });

    /// <summary>What a speed asks of the board, whatever limits it.</summary>
    public static Answer<SteadyRunning> DemandOf(
        Board board, Answer<Propulsion> drive, Answer<PackModel> pack, Answer<PackWiring> wiring, Answer<LoadOfBoard> load) =>
        Answer<SteadyRunning>.Ask("", needs =>
        {
            var electric = needs.Read(drive);
            var model = needs.Read(pack);
            var wires = needs.Read(wiring);
            var road = needs.Read(load);
            var (start, end) = TaperOf(needs, board);
            return needs.Unmet ? null : new SteadyRunning
            {
                Drive = electric,
                Pack = model,
                Load = road.Load,
                Headwind = needs.Read(board.Brief.Headwind, default).MetresPerSecond,
                WiringResistance = wires.Resistance.Ohms,
                TaperStart = start * model.Series,
                TaperEnd = end * model.Series,
            };
        });

    /// <summary>The board at steady speeds within its limits.</summary>
    public static Answer<SteadyRunning> RunningOf(Board board, Answer<SteadyRunning> demand, Answer<Propulsion> limited) =>
        Answer<SteadyRunning>.Ask("", needs =>
        {
            var (run, drive) = (needs.Read(demand), needs.Read(limited));
            return needs.Unmet ? null : run with { Drive = drive, SteadyGrip = TyreGrip.SteadyOf(needs, board) };
        });

    /// <summary>The board while its speed changes.</summary>
    public static Answer<MovingRunning> MovingOf(Board board, Answer<SteadyRunning> running, Answer<RollingMass> effective) =>
        Answer<MovingRunning>.Ask("", needs =>
        {
            var (run, mass, tyres) = (needs.Read(running), needs.Read(effective), needs.Read(TyreGrip.Compute(board)));
            return needs.Unmet ? null : new MovingRunning(run, mass.Mass.Kilograms, tyres);
        });

    /// <summary>The board while it brakes.</summary>
    public static Answer<BrakedRunning> BrakedOf(
        Board board, Answer<MovingRunning> moving, Answer<CurrentLimits> phase, Answer<CurrentLimits> regen) =>
        Answer<BrakedRunning>.Ask("", needs =>
        {
            var run = needs.Read(moving);
            var limits = (Phase: needs.Read(phase), Regen: needs.Read(regen));
            var full = needs.Read(board.Parts.Cell.VoltageFull);
            return needs.Unmet ? null : new BrakedRunning(
                run, new(limits.Phase.Enforced.Current.Amperes, limits.Regen.Enforced.Current.Amperes), full.Volts * run.Pack.Series);
        });

    /// <summary>Speed with the wheels in the air at full charge, m/s: neither road nor mass has a part in it.</summary>
    public static Answer<Speed> UnloadedOf(Board board, Answer<Propulsion> limited, Answer<PackModel> pack, Answer<PackWiring> wiring) =>
        Answer<Speed>.Ask("", needs =>
        {
            var (drive, model, wires) = (needs.Read(limited), needs.Read(pack), needs.Read(wiring));
            var (start, end) = TaperOf(needs, board);
            return needs.Unmet ? default : Speed.FromMetresPerSecond(drive.UnloadedSpeed(new Supply(
                model.RestVoltsAt(1), model.OhmsAt(1) + wires.Resistance.Ohms, 0, start * model.Series, end * model.Series)));
        });

    /// <summary>Where power begins to fade and where it is cut, V per cell; a start of zero fades nothing.</summary>
    static (double Start, double End) TaperOf(Needs needs, Board board)
    {
        var limits = board.Limits;
        var tapers = limits.TaperStart.IsKnown && limits.TaperEnd.IsKnown;
        var start = tapers ? needs.Read(limits.TaperStart) : default;
        var end = limits.TaperEnd.IsKnown ? needs.Read(limits.TaperEnd) : needs.Read(board.Parts.Cell.VoltageEmpty);
        return (start > end ? start.Volts : 0, end.Volts);
    }
}

/// <summary>A mass that rolls.</summary>
/// <param name="Mass">The mass.</param>
public sealed record RollingMass(Mass Mass);

/// <summary>Air, rolling and mass of a board.</summary>
/// <param name="Load">The road load.</param>
public sealed record LoadOfBoard(RoadLoad Load);
