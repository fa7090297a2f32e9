using System.Collections.Concurrent;
using System.Numerics;
using System.Runtime.InteropServices;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Numerics;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Prices;
using Boardwright.Road;
using Boardwright.Traction;
using Boardwright.UsualValues;
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
    /// <summary>The most that all parts together may cost, in ten-thousandths of the currency; infinity where there is no budget.</summary>
    public required double PartsBudget { get; init; }

    /// <summary>Of a board whose brief is complete.</summary>
    /// <returns>The brief; the keys that are missing otherwise.</returns>
    public static Answer<CompleteBrief> Read(Board board) => Answer<CompleteBrief>.Ask("", needs =>
    {
        var brief = UsualTable.Complete(board).Brief;
        var air = needs.Read(SteadyRunningAnalysis.AirOf(board));
        var rider = needs.Read(brief.RiderMass);
        var (cruise, climbSpeed, climb) = (needs.Read(brief.CruiseSpeed), needs.Read(brief.ClimbSpeed), needs.Read(brief.ClimbWanted));
        var reserve = needs.Read(brief.Reserve);
        var area = needs.Read(brief.DragArea);
        return needs.Unmet ? null : new(new BriefTargets
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
            PartsBudget = BudgetOf(board),
        });
    });

    static double BudgetOf(Board board)
    {
        if (!board.Brief.Budget.IsKnown)
            return double.PositiveInfinity;
        var (money, budget) = (board.Money, board.Brief.Budget.Value.Amount);
        // The price rests on the parts alone where work and margin are not said.
        if (!money.LabourHours.IsKnown || !money.LabourRate.IsKnown || !money.Overhead.IsKnown || !money.Margin.IsKnown)
            return (double)(budget * 10000);
        var cost = budget / (1 + (decimal)money.Margin.Value.Value);
        return (double)((cost / (1 + (decimal)money.Overhead.Value.Value) - (decimal)money.LabourHours.Value.Hours
            * money.LabourRate.Value.PerHour.Amount) * 10000);
    }
}

/// <summary>A complete brief.</summary>
/// <param name="Wanted">It.</param>
sealed record CompleteBrief(BriefTargets Wanted);

/// <summary>What turns and carries as the screening reads it, SI.</summary>
[StructLayout(LayoutKind.Auto)]
readonly record struct DriveNumbers(
    double Mass, double Price, WheelDrive Wheels, double Rolling, double TurningMass, TyreGrip Tyres, double Phase, double BrakePhase)
{
    /// <summary>All of them, so that a saved search knows its own.</summary>
    public double[] Values =>
    [
        Mass, Price, Wheels.Motors, Wheels.Ratio, Wheels.Efficiency, Wheels.WheelRadius, Wheels.TorqueConstant, Wheels.FluxLinkage,
            Wheels.PolePairs,
        Wheels.PhaseResistance, Wheels.PhaseInductance, Wheels.DragTorque, Wheels.DragSlope, Rolling, TurningMass,
        Tyres.Coefficient, Tyres.WeightShare, Tyres.Wheelbase, (double)Tyres.Driven, Tyres.CentreHeight, Phase, BrakePhase,
    ];
}

/// <summary>The numbers of a field: one record for each rolling, and a column for each number of the feedings, cut into tiles that stay in
/// the processor's cache.</summary>
sealed class FilterTables
{
    /// <summary>Feedings of a tile; a multiple of every width.</summary>
    public const int Tile = 256;

    const int Panels = 4;

    // The columns of a tile; masses in the order of the examination, and for a state of charge rest voltage, resistance and the current
    // that may be fed back.
    public const int Real = 0, Price = 1, Masses = 2, EndOfMasses = 9, Switch = 9, Switching = 10, Idle = 11, Phase = 12, BrakePhase = 13,
        Pack = 14,
        Electrical = 15, TaperStart = 16, TaperEnd = 17, Full = 18, Half = 21, Reserve = 24, Coulombs = 27, VoltsLeft = 28, Nodes = 29;

    // Mass that is added to none, so that what turns is told alone.
    static readonly Answer<RollingMass> Nothing = Answer<RollingMass>.Ask("", _ => new RollingMass(default));

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
    readonly ConcurrentDictionary<DriveChoice, (double Drive, double Brake)> phases = [];
    readonly ConcurrentDictionary<DriveChoice, DriveNumbers> turnings = [];
    readonly Answer<MotorModel>?[] motors;

    public FilterTables(CandidateParts offers, SearchSpace field, in BriefTargets asked)
    {
        (this.offers, this.field) = (offers, field);
        NodePlaces = NodesOf(asked.Reserve);
        Columns = Nodes + 2 * NodePlaces.Count;
        motors = new Answer<MotorModel>?[offers.Motors.Length];
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
    /// <summary>Masses of the fittings, which come last.</summary>
    public double[] Fittings { get; private set; } = [];

    /// <summary>The numbers of a rolling.</summary>
    public DriveNumbers TurningOf(int rolling)
    {
        // Any feeding will do: nothing that is told here rests on it.
        var (r, board) = (field.Rollings[rolling], UsualTable.Complete(offers.Partly(field.PickOf(rolling, 0))));
        var places = PartSlot.All(board).Value.TakeWhile(p => p.Part is not Controller).ToList();
        var (phase, brake) = phases.GetOrAdd(r with { Deck = 0, Trucks = 0, Wheels = 0, Mount = 0, Gearbox = 0 }, key => PhasesOf(
            (Slot.Motor, key.Motor), (Slot.MotorPulley, key.MotorPulley), (Slot.WheelPulley, key.WheelPulley), (Slot.Belt, key.Belt)));
        return turnings.GetOrAdd(r with { Trucks = 0, Mount = 0, Belt = 0 }, key => TurningOf(key.Motor, board)) with
        {
            Mass = places.Sum(Kilograms),
            Price = places.Sum(Scaled),
            Phase = phase,
            BrakePhase = brake,
        };
    }

    DriveNumbers TurningOf(int motor, Board board)
    {
        var gearing = GearRatio.Compute(board);
        // Only gears change a motor's model, by their oil.
        var model = board.Parts.Gearbox.IsChosen ? MotorModel.Compute(board) : motors[motor] ??= MotorModel.Compute(board);
        return new()
        {
            Wheels = SteadyRunningAnalysis.WheelsOf(board, gearing, model).Value,
            Rolling = SteadyRunningAnalysis.LoadOf(board, Nothing).Value.Load.RollingResistance.Value,
            TurningMass = SteadyRunningAnalysis.EffectiveMassOf(board, Nothing, gearing).Value.Mass.Kilograms,
            Tyres = TyreGrip.Compute(board).Value,
        };
    }

    /// <summary>Phase currents that some of the parts allow, driving and braking, with the limits that would be set for them
    /// alone.</summary>
    (double Drive, double Brake) PhasesOf(params ReadOnlySpan<(Slot Slot, int At)> chosen)
    {
        Span<int> pick = stackalloc int[CandidateParts.Slots];
        pick.Fill(-1);
        pick[(int)Slot.Drive] = field.Drive;
        foreach (var (slot, at) in chosen)
            pick[(int)slot] = at;
        var board = Settings.WithLimits(offers.Partly(pick));
        static double Least(Answer<CurrentLimits> answer) =>
            answer.IsKnown ? answer.Value.Enforced.Current.Amperes : double.PositiveInfinity;
        return (Least(CurrentLimits.Phase(board)), Least(CurrentLimits.BrakePhase(board)));
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
        if (field.Rollings.Count == 0)
            return;
        Cells = new double[places.Count * Columns];
        var rows = new Dictionary<(int, int, int, int, int), (Fitted Parts, double[] Row)>();
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
            if (!rows.TryGetValue((f.Controller, f.Cell, f.Pack, f.Protection, f.Fuse), out var known))
                rows[(f.Controller, f.Cell, f.Pack, f.Protection, f.Fuse)] = known = RowOf(places[at], asked);
            var (parts, row) = known;
            var held = PartSlot.All(UsualTable.Complete(offers.Brief with
            {
                Parts =
                parts with { Box = offers.Boxes[f.Box], Remote = offers.Remotes[f.Remote], Charger = offers.Chargers[f.Charger] }
            }))
                .Value.SkipWhile(p => p.Part is not Controller).ToList();
            row[Price] = held.Sum(Scaled);
            foreach (var (i, place) in held.Where(p => p.Carried && p.Part is not Fitting).Index())
                row[Masses + i] = Kilograms(place);
            Fittings = [.. held.Where(p => p.Part is Fitting).Select(Kilograms)];
            for (var c = 0; c < Columns; c++)
                Cells[tile + c * Tile] = row[c];
        }
    }

    /// <summary>The numbers that rest on controller, cell, pack, protection and fuse, from the examination's own answers on a board that
    /// holds them; what it cannot say is no number, and nothing that is asked of it holds.</summary>
    (Fitted Parts, double[] Row) RowOf(int feeding, in BriefTargets asked)
    {
        var board = UsualTable.Complete(Settings.Applied(offers.Partly(field.PickOf(0, feeding)), null));
        var row = new double[Columns];
        Array.Fill(row, double.NaN);
        row[Real] = 1;
        var own = SteadyRunningOfBoard.Compute(board);
        if (own.Braked is not { IsKnown: true, Value: var run } || !own.Drive.IsKnown)
            return (board.Parts, row);
        var (drive, most) = (own.Drive.Value, board.Parts.Controller.VoltageMax);
        (row[Switch], row[Switching], row[Idle]) = (drive.SwitchResistance, drive.SwitchingFactor, drive.IdlePower);
        (row[Phase], row[BrakePhase]) = PhasesOf((Slot.Controller, field.Feedings[feeding].Controller));
        (row[Pack], row[Electrical]) = (drive.PackLimit, drive.ElectricalSpeedLimit);
        (row[TaperStart], row[TaperEnd]) = (run.TaperStart, run.TaperEnd);
        row[Coulombs] = run.Pack.Capacity.Coulombs;
        row[VoltsLeft] = most.IsKnown ? 1 - run.FullVoltage / most.Value.Volts : double.PositiveInfinity;
        foreach (var (column, charge) in ((int, double)[])[(Full, 1), (Half, 0.5), (Reserve, asked.Reserve),
            .. NodePlaces.Select((n, i) => (Nodes + 2 * i, n.At))])
        {
            var supply = run.SupplyAt(charge);
            (row[column], row[column + 1]) = (supply.RestVoltage, supply.Resistance);
            if (column < Nodes)
                row[column + 2] = Min(run.Braking.Regen, supply.ChargeHeadroom);
        }

        return (board.Parts, row);
    }

    static double Kilograms(PartSlot place) =>
        place is { Carried: true, Part.IsChosen: true } && Road.Masses.EachIn(place) is { IsKnown: true } each
        ? (each.Value * place.Count).Kilograms : 0;

    /// <summary>Price of all in a place in ten-thousandths of the currency, which sums without rounding.</summary>
    static double Scaled(PartSlot place) => (double)((new PurchaseLine(place, 0).Worth?.Amount ?? 0) * 10000);

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
