using System.Numerics;
using System.Runtime.InteropServices;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Numerics;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Road;
using Boardwright.Traction;
using Boardwright.Wiring;
using static System.Math;

namespace Boardwright.Searches;

/// <summary>The brief as the screening reads it, SI.</summary>
readonly struct BriefTargets
{
    public required double RiderMass { get; init; }

    public required double GearMass { get; init; }

    public required double Cruise { get; init; }

    public required double ClimbSpeed { get; init; }

    public required double Climb { get; init; }

    /// <summary>Zero where none is wanted.</summary>
    public required double TopSpeed { get; init; }

    /// <summary>How much of each thing counts.</summary>
    public required Merits Worth { get; init; }

    /// <summary>Zero where none is wanted.</summary>
    public required double Range { get; init; }

    public required double Reserve { get; init; }

    public required double Headwind { get; init; }

    /// <summary>½ ρ A c, kg/m.</summary>
    public required double Drag { get; init; }

    public required double Grip { get; init; }

    public required double WeightShare { get; init; }

    /// <summary>The most that all parts together may cost, in ten-thousandths of the currency; infinity where there is no budget.</summary>
    public required double PartsBudget { get; init; }

    /// <summary>Mass of the fittings, which come last.</summary>
    public required double[] Fittings { get; init; }

    /// <summary>Their price, in ten-thousandths of the currency.</summary>
    public required double FittingsPrice { get; init; }

    /// <summary>Of a board whose brief is complete.</summary>
    /// <returns>The brief; the keys that are missing otherwise.</returns>
    public static Answer<CompleteBrief> Read(Board board) => Answer<CompleteBrief>.Ask("", needs =>
    {
        var brief = board.Brief;
        var air = needs.Read(SteadyRunningAnalysis.AirOf(board));
        var rider = needs.Read(brief.RiderMass);
        var (cruise, climbSpeed, climb) = (needs.Read(brief.CruiseSpeed), needs.Read(brief.ClimbSpeed), needs.Read(brief.ClimbWanted));
        var reserve = needs.Read(brief.Reserve);
        var area = brief.DragArea.IsKnown ? needs.Read(brief.DragArea) : brief.Stance.IsKnown ? SteadyRunningAnalysis.DragAreaOf(needs.Read(brief.Stance)) : needs.Read(brief.DragArea);
        if (needs.Unmet)
            return null;
        var fittings = board.Parts.Fittings.Where(f => f.IsChosen).ToArray();
        return new(new BriefTargets
        {
            RiderMass = rider.Kilograms,
            GearMass = brief.GearMass.Or(default).Kilograms,
            Cruise = cruise.MetresPerSecond,
            ClimbSpeed = climbSpeed.MetresPerSecond,
            Climb = climb.Value,
            TopSpeed = brief.TopSpeedWanted.Or(default).MetresPerSecond,
            Worth = Merits.FromBrief(brief),
            Range = brief.RangeWanted.Or(default).Metres,
            Reserve = reserve.Value,
            Headwind = brief.Headwind.Or(default).MetresPerSecond,
            Drag = 0.5 * air.DensityKilogramsPerCubicMetre * area.SquareMetres,
            Grip = brief.Road.Or(Weather.Dry) == Weather.Wet ? SteadyRunning.WetGrip : SteadyRunning.DryGrip,
            WeightShare = board.Parts.Drive.WeightShare.Or(Fraction.FromPercent(50)).Value,
            PartsBudget = BudgetOf(board),
            Fittings = [.. fittings.Where(f => f.Mass.IsKnown).Select(f => f.Mass.Value.Kilograms * f.Count.Or(1))],
            FittingsPrice = fittings.Sum(f => Scaled(f, f.Count.Or(1))),
        });
    });

    /// <summary>Price of a number of parts in ten-thousandths, which sums without rounding.</summary>
    public static double Scaled(Part part, int count) => part.IsChosen && part.Price.IsKnown ? (double)(part.Price.Value.Amount * count * 10000) : 0;

    static double BudgetOf(Board board)
    {
        if (!board.Brief.Budget.IsKnown)
            return double.PositiveInfinity;
        var (money, budget) = (board.Money, board.Brief.Budget.Value.Amount);
        // The price rests on the parts alone where work and margin are not said.
        if (!money.LabourHours.IsKnown || !money.LabourRate.IsKnown || !money.Overhead.IsKnown || !money.Margin.IsKnown)
            return (double)(budget * 10000);
        var cost = budget / (1 + (decimal)money.Margin.Value.Value);
        return (double)((cost / (1 + (decimal)money.Overhead.Value.Value) - (decimal)money.LabourHours.Value.Hours * money.LabourRate.Value.PerHour.Amount) * 10000);
    }
}

/// <summary>A complete brief.</summary>
/// <param name="Wanted">It.</param>
sealed record CompleteBrief(BriefTargets Wanted);

/// <summary>What turns and carries as the screening reads it, SI.</summary>
[StructLayout(LayoutKind.Auto)]
readonly record struct DriveNumbers(
    double Mass, double Price, double Motors, double Ratio, double Efficiency, double Radius, double Torque, double Flux, double PolePairs, double Ohms, double Henries,
    double Drag, double DragSlope, double Rolling, double WheelMass, double RotorMass, double Wheelbase, double Phase, double BrakePhase, double Transfers);

/// <summary>The numbers of a field: one record for each rolling, and a column for each number of the feedings, cut into tiles that stay in the processor's cache.</summary>
sealed class FilterTables
{
    /// <summary>Feedings of a tile; a multiple of every width.</summary>
    public const int Tile = 256;

    const int Panels = 4;

    // The columns of a tile.
    public const int Real = 0, ControllerMass = 1, CellMass = 2, PackMass = 3, ProtectionMass = 4, RemoteMass = 5, BoxMass = 6, FuseMass = 7, Price = 8,
        Switch = 9, Switching = 10, Idle = 11, Phase = 12, BrakePhase = 13, Pack = 14, Regen = 15, Electrical = 16, TaperStart = 17, TaperEnd = 18,
        FullVolts = 19, FullOhms = 20, FullRoom = 21, HalfVolts = 22, HalfOhms = 23, HalfRoom = 24, ReserveVolts = 25, ReserveOhms = 26, Coulombs = 27, VoltsLeft = 28,
        Nodes = 29;

    /// <summary>States of charge at which the range is summed up, and their weights.</summary>
    public static IReadOnlyList<(double At, double Weight)> NodesOf(double from)
    {
        var found = new List<(double, double)>();
        var collecting = new Collecting(found);
        Quadrature.Integrate(collecting, from, 1, Panels);
        // Each place is weighed by asking the rule for the integral of a function that is one there and zero elsewhere.
        return [.. found.Select(f => (f.Item1, Quadrature.Integrate(new Picking(f.Item1), from, 1, Panels)))];
    }

    readonly CandidateParts offers;
    readonly SearchSpace field;
    readonly Dictionary<(int, int, int, int), (double, double)> phases = [];
    readonly MotorModel?[] motors;

    public FilterTables(CandidateParts offers, SearchSpace field, in BriefTargets asked)
    {
        (this.offers, this.field) = (offers, field);
        NodePlaces = NodesOf(asked.Reserve);
        Columns = Nodes + 2 * NodePlaces.Count;
        motors = new MotorModel?[offers.Motors.Length];
        // Wanted for here, one after another, so that later several may read at once.
        foreach (var rolling in field.Rollings)
        {
            PhaseOf(rolling);
            if (!offers.Gearboxes[rolling.Gearbox].IsChosen)
                ModelOf(rolling.Motor, offers.Gearboxes[rolling.Gearbox]);
        }

        FillColumns(asked);
    }

    /// <summary>Columns of a tile.</summary>
    public int Columns { get; }

    /// <summary>States of charge and weights of the range's sum.</summary>
    public IReadOnlyList<(double At, double Weight)> NodePlaces { get; }

    /// <summary>The tiles after one another; within each, column by column.</summary>
    public double[] Cells { get; private set; } = [];

    /// <summary>Number of the feeding in each place of the tiles; below zero where a place is empty.</summary>
    public int[] Feedings { get; private set; } = [];

    /// <summary>Pieces of groups that lie in one tile.</summary>
    public List<(int Group, int From, int To)> Pieces { get; } = [];

    /// <summary>The numbers of a rolling.</summary>
    public DriveNumbers TurningOf(int rolling)
    {
        var r = field.Rollings[rolling];
        var drive = offers.Drives[field.Drive];
        var kind = drive.Kind.Value;
        var count = field.Motors;
        var (deck, (front, rear), wheels, mount, motor) = (offers.Decks[r.Deck], offers.Trucks[r.Trucks], offers.Wheels[r.Wheels], offers.Mounts[r.Mount].Mount, offers.Motors[r.Motor]);
        var (small, large, belt, gears) = (offers.MotorPulleys[r.MotorPulley], offers.WheelPulleys[r.WheelPulley], offers.Belts[r.Belt], offers.Gearboxes[r.Gearbox]);
        var model = ModelOf(r.Motor, gears);
        var mass = 0.0;
        void Weigh(Part part, int times, Known<Mass> each) => mass += part.IsChosen && each.IsKnown ? each.Value.Kilograms * times : 0;
        Weigh(deck, deck.Count.Or(1), deck.Mass);
        Weigh(front, front.Count.Or(1), front.Mass);
        Weigh(rear, rear.Count.Or(1), rear.Mass);
        Weigh(wheels, wheels.Count.Or(4), wheels.Mass);
        Weigh(mount, mount.Count.Or(count), mount.Mass);
        Weigh(motor, motor.Count.Or(count), motor.Mass);
        Weigh(small, small.Count.Or(count), small.Mass);
        Weigh(large, large.Count.Or(count), large.Mass);
        Weigh(belt, belt.Count.Or(count), belt.Mass.IsKnown ? belt.Mass : BeltMass.Compute(belt));
        Weigh(gears, gears.Count.Or(count), gears.Mass);
        var price = BriefTargets.Scaled(deck, deck.Count.Or(1)) + BriefTargets.Scaled(front, front.Count.Or(1)) + BriefTargets.Scaled(rear, rear.Count.Or(1))
            + BriefTargets.Scaled(wheels, wheels.Count.Or(4)) + BriefTargets.Scaled(mount, mount.Count.Or(count)) + BriefTargets.Scaled(motor, motor.Count.Or(count))
            + BriefTargets.Scaled(small, small.Count.Or(count)) + BriefTargets.Scaled(large, large.Count.Or(count)) + BriefTargets.Scaled(belt, belt.Count.Or(count)) + BriefTargets.Scaled(gears, gears.Count.Or(count));
        var (ratio, efficiency) = kind switch
        {
            DriveKind.Hub => (1, drive.Efficiency.Or(Number.FromValue(1)).Value),
            DriveKind.Gear => (gears.Ratio.Value.Value, (gears.Efficiency.IsKnown ? gears.Efficiency : drive.Efficiency).Or(Number.FromValue(GearRatio.UsualEfficiency)).Value),
            _ => ((double)large.Teeth.Value / small.Teeth.Value, drive.Efficiency.Or(Number.FromValue(GearRatio.UsualEfficiency)).Value),
        };
        var radius = wheels.Diameter.Value / 2;
        var disc = wheels.Inertia.IsKnown ? wheels.Inertia.Value : RotatingMass.Disc(wheels.Mass.Value, radius);
        var (phase, brake) = PhaseOf(r);
        return new(
            mass, price, count, ratio, efficiency, radius.Metres, model.Constants.NewtonMetresPerPeakAmpere, model.Constants.FluxLinkageWebers, model.Constants.PolePairs,
            model.PhaseResistance.Ohms, model.Inductance.Henries, (model.Drag.Constant + model.OilLoss).NewtonMetres, model.Drag.NewtonMetreSecondsPerRadian,
            (wheels.RollingResistance.Value.Everywhere ?? wheels.RollingResistance.Value.On(offers.Brief.Brief.Surface.Value))!.Value.Value,
            RotatingMass.Equivalent(disc, radius).Kilograms * wheels.Count.Or(4), RotatingMass.Equivalent(motor.RotorInertia.Value, radius, ratio).Kilograms * count,
            deck.Wheelbase.Value.Items[0].Metres, phase, brake,
            drive.Driven.Or(Driven.Rear) switch { Driven.Rear => 1, Driven.Front => -1, _ => 0 });
    }

    MotorModel ModelOf(int motor, Gearbox gears)
    {
        Board With(Gearbox box) => offers.Brief with { Parts = offers.Brief.Parts with { Drive = offers.Drives[field.Drive], Motor = offers.Motors[motor], Gearbox = box } };
        // Only gears change a motor's model, by their oil.
        return gears.IsChosen ? MotorModel.Compute(With(gears)).Value : motors[motor] ??= MotorModel.Compute(With(gears)).Value;
    }

    (double Phase, double Brake) PhaseOf(in DriveChoice r)
    {
        var key = (r.Motor, r.MotorPulley, r.WheelPulley, r.Belt);
        if (phases.TryGetValue(key, out var known))
            return known;
        Span<int> pick = stackalloc int[CandidateParts.Slots];
        pick.Fill(-1);
        (pick[(int)Slot.Drive], pick[(int)Slot.Motor], pick[(int)Slot.MotorPulley], pick[(int)Slot.WheelPulley], pick[(int)Slot.Belt]) = (field.Drive, r.Motor, r.MotorPulley, r.WheelPulley, r.Belt);
        var board = offers.Partly(pick);
        var side = Settings.MotorSide(board);
        var peak = board.Parts.Motor.PhaseCurrentPeak;
        double Least(Known<Current> set) => Min(set.IsKnown ? set.Value.Amperes : double.IsFinite(side) ? Settings.Setting(side) : double.PositiveInfinity, peak.IsKnown ? peak.Value.Amperes : double.PositiveInfinity);
        return phases[key] = (Least(board.Limits.PhaseCurrent), Least(board.Limits.BrakePhaseCurrent));
    }

    void FillColumns(in BriefTargets asked)
    {
        var places = new List<int>();
        foreach (var (at, group) in field.Groups.Index())
        {
            for (var from = group.From; from < group.To;)
            {
                var room = Tile - places.Count % Tile;
                var take = Min(room, group.To - from);
                Pieces.Add((at, places.Count, places.Count + take));
                for (var i = 0; i < take; i++)
                    places.Add(from + i);
                from += take;
                // The next piece begins where a whole width begins.
                while (places.Count % Vector<double>.Count != 0)
                    places.Add(-1);
            }
        }

        while (places.Count % Tile != 0)
            places.Add(-1);
        Feedings = [.. places];
        Cells = new double[places.Count * Columns];
        var rows = new Dictionary<(int, int, int, int, int), double[]>();
        for (var at = 0; at < places.Count; at++)
        {
            var tile = at / Tile * Tile * Columns + at % Tile;
            // An empty place holds a feeding that is not real and divides by nothing.
            if (places[at] < 0)
            {
                for (var c = 1; c < Columns; c++)
                    Cells[tile + c * Tile] = 1;
                Cells[tile] = -1;
                continue;
            }

            var f = field.Feedings[places[at]];
            if (!rows.TryGetValue((f.Controller, f.Cell, f.Pack, f.Protection, f.Fuse), out var row))
                rows[(f.Controller, f.Cell, f.Pack, f.Protection, f.Fuse)] = row = RowOf(f, asked);
            for (var c = 0; c < Columns; c++)
                Cells[tile + c * Tile] = row[c];
            var (box, remote, charger) = (offers.Boxes[f.Box], offers.Remotes[f.Remote], offers.Chargers[f.Charger]);
            Cells[tile + RemoteMass * Tile] = Kilograms(remote, remote.Count.Or(1));
            Cells[tile + BoxMass * Tile] = Kilograms(box, box.Count.Or(1));
            Cells[tile + Price * Tile] += BriefTargets.Scaled(box, box.Count.Or(1)) + BriefTargets.Scaled(remote, remote.Count.Or(1)) + BriefTargets.Scaled(charger, charger.Count.Or(1));
        }
    }

    /// <summary>The numbers that rest on controller, cell, pack, protection and fuse, from the examination's own answers on a board that holds only these.</summary>
    double[] RowOf(in SupplyChoice f, in BriefTargets asked)
    {
        Span<int> pick = stackalloc int[CandidateParts.Slots];
        pick.Fill(-1);
        (pick[(int)Slot.Drive], pick[(int)Slot.Controller], pick[(int)Slot.Cell], pick[(int)Slot.Pack], pick[(int)Slot.Protection], pick[(int)Slot.Fuse]) =
            (field.Drive, f.Controller, f.Cell, f.Pack, f.Protection, f.Fuse);
        var board = Settings.Applied(offers.Partly(pick), null);
        var (parts, controller, pack) = (board.Parts, board.Parts.Controller, board.Parts.Pack);
        var count = PartSlot.ControllerCount(parts);
        var model = PackModel.Compute(board).Value;
        var wires = WiringRuns.PackSide(board) is { IsKnown: true } wiring ? wiring.Value.Resistance.Ohms : 0;
        var full = parts.Cell.VoltageFull.Value.Volts * model.Series;
        var limits = board.Limits;
        var end = (limits.TaperEnd.IsKnown ? limits.TaperEnd.Value : parts.Cell.VoltageEmpty.Value).Volts;
        var start = limits.TaperStart.IsKnown && limits.TaperEnd.IsKnown ? limits.TaperStart.Value.Volts : 0;
        static double Least(Answer<CurrentLimits> answer) => answer.IsKnown ? answer.Value.Weakest.Current.Amperes : double.PositiveInfinity;
        var row = new double[Columns];
        row[Real] = 1;
        row[ControllerMass] = Kilograms(controller, count);
        row[CellMass] = Kilograms(parts.Cell, model.Series * model.Parallel);
        row[PackMass] = pack.Mass.IsKnown ? pack.Mass.Value.Kilograms : pack.MassExtra.Or(default).Kilograms;
        row[ProtectionMass] = Kilograms(pack.Protection, pack.Protection.Count.Or(1));
        row[FuseMass] = Kilograms(parts.Fuse, parts.Fuse.Count.Or(1));
        row[Price] = BriefTargets.Scaled(controller, count) + BriefTargets.Scaled(parts.Cell, model.Series * model.Parallel) + BriefTargets.Scaled(pack, 1)
            + BriefTargets.Scaled(pack.Protection, pack.Protection.Count.Or(1)) + BriefTargets.Scaled(parts.Fuse, parts.Fuse.Count.Or(1)) + asked.FittingsPrice;
        row[Switch] = controller.BridgeResistance.Value.Ohms;
        row[Switching] = 6 / PI * 0.5 * controller.SwitchingTime.Value.Seconds * controller.SwitchingFrequency.Value.Hertz;
        row[Idle] = controller.IdlePower.Value.Watts * count;
        row[Phase] = Least(CurrentLimits.Phase(board));
        row[BrakePhase] = Least(CurrentLimits.BrakePhase(board));
        row[Pack] = Least(CurrentLimits.Pack(board));
        row[Regen] = Least(CurrentLimits.Regen(board));
        row[Electrical] = controller.ElectricalSpeedLimit.Or(AngularSpeed.FromRadiansPerSecond(1e9)).RadiansPerSecond;
        row[TaperStart] = start > end ? start * model.Series : 0;
        row[TaperEnd] = end * model.Series;
        (row[FullVolts], row[FullOhms], row[FullRoom]) = SupplyAt(1);
        (row[HalfVolts], row[HalfOhms], row[HalfRoom]) = SupplyAt(0.5);
        (row[ReserveVolts], row[ReserveOhms], _) = SupplyAt(asked.Reserve);
        row[Coulombs] = model.Capacity.Coulombs;
        row[VoltsLeft] = controller.VoltageMax.IsKnown ? 1 - full / controller.VoltageMax.Value.Volts : double.PositiveInfinity;
        foreach (var (at, node) in NodePlaces.Index())
            (row[Nodes + 2 * at], row[Nodes + 2 * at + 1], _) = SupplyAt(node.At);
        return row;

        (double Volts, double Ohms, double Room) SupplyAt(double charge)
        {
            var (rest, ohms) = (model.RestVoltsAt(charge), model.OhmsAt(charge));
            return (rest, ohms + wires, Max(0, (full - rest) / ohms));
        }
    }

    static double Kilograms(Part part, int count) => part.IsChosen && part.Mass.IsKnown ? part.Mass.Value.Kilograms * count : 0;

    readonly struct Collecting(List<(double, double)> found) : IFunction
    {
        public double At(double x)
        {
            found.Add((x, 0));
            return 0;
        }
    }

    readonly struct Picking(double place) : IFunction
    {
        public double At(double x) => x == place ? 1 : 0;
    }
}
