using Boardwright.Parts;

namespace Boardwright.Searches;

/// <summary>What may go in each place: the shelf's parts of the right kind, or the one that the board or the request fixes.</summary>
sealed class CandidateParts
{
    /// <summary>Number of places.</summary>
    public const int Slots = (int)Slot.Charger + 1;

    const int MostParallel = 12;

    readonly Dictionary<(int Cell, int Pack), IReadOnlyList<PackLayout>> ways = [];
    readonly int[] sizes = new int[Slots];

    public CandidateParts(SearchRequest request)
    {
        Request = request;
        var assumptions = Assumption.For(request.Board);
        Assumptions = assumptions;
        Brief = assumptions.Count > 0 ? assumptions[^1].Board : request.Board;
        var parts = Brief.Parts;
        var kind = parts.Drive.Kind.Or(DriveKind.Belt);
        var (isBelt, isGear, isHub) = (kind == DriveKind.Belt, kind == DriveKind.Gear, kind == DriveKind.Hub);
        Drives = DrivesOf(parts.Drive, kind);
        Decks = PartsFor(Slot.Deck, parts.Deck, "deck", true);
        var trucks = PartsFor(Slot.Trucks, parts.RearTruck.IsChosen ? parts.RearTruck : parts.FrontTruck, "rear_truck", true);
        Trucks = [.. trucks.Select(t => (
            parts.FrontTruck.IsChosen ? parts.FrontTruck : (Truck)Board.WithNames(t, "front_truck"),
            parts.RearTruck.IsChosen ? parts.RearTruck : (Truck)Board.WithNames(t, "rear_truck")))];
        Wheels = PartsFor(Slot.Wheels, parts.Wheels, "wheels", true);
        Mounts = isHub ? [(parts.Mount, default)] : MountsOf(PartsFor(Slot.Mount, parts.Mount, "mount", isBelt), parts.Drive);
        Motors = PartsFor(Slot.Motor, parts.Motor, "motor", true);
        MotorPulleys = isBelt ? PartsFor(Slot.MotorPulley, parts.MotorPulley, "motor_pulley", true, static p => p.Bore.IsKnown) : [parts.MotorPulley];
        WheelPulleys = isBelt ? PartsFor(Slot.WheelPulley, parts.WheelPulley, "wheel_pulley", true, static p => p.Core.IsKnown) : [parts.WheelPulley];
        Belts = isBelt ? PartsFor(Slot.Belt, parts.Belt, "belt", true) : [parts.Belt];
        Gearboxes = isGear ? PartsFor(Slot.Gearbox, parts.Gearbox, "gearbox", true) : [parts.Gearbox];
        Boxes = PartsFor(Slot.Box, parts.Box, "box", false);
        Controllers = PartsFor(Slot.Controller, parts.Controller, "controller", true);
        Cells = PartsFor(Slot.Cell, parts.Cell, "cell", true);
        Protections = PartsFor(Slot.Protection, parts.Pack.Protection, "pack.protection", true);
        Fuses = PartsFor(Slot.Fuse, parts.Fuse, "fuse", false);
        Remotes = PartsFor(Slot.Remote, parts.Remote, "remote", false);
        Chargers = PartsFor(Slot.Charger, parts.Charger, "charger", false);
        Packs = PacksOf(parts.Pack);
        (sizes[(int)Slot.Drive], sizes[(int)Slot.Deck], sizes[(int)Slot.Trucks], sizes[(int)Slot.Wheels]) =
            (Drives.Length, Decks.Length, Trucks.Length, Wheels.Length);
        (sizes[(int)Slot.Mount], sizes[(int)Slot.Motor], sizes[(int)Slot.MotorPulley], sizes[(int)Slot.WheelPulley]) =
            (Mounts.Length, Motors.Length, MotorPulleys.Length, WheelPulleys.Length);
        (sizes[(int)Slot.Belt], sizes[(int)Slot.Gearbox], sizes[(int)Slot.Box], sizes[(int)Slot.Controller]) =
            (Belts.Length, Gearboxes.Length, Boxes.Length, Controllers.Length);
        (sizes[(int)Slot.Cell], sizes[(int)Slot.Pack], sizes[(int)Slot.Protection], sizes[(int)Slot.Fuse]) =
            (Cells.Length, Packs.Length, Protections.Length, Fuses.Length);
        (sizes[(int)Slot.Remote], sizes[(int)Slot.Charger]) = (Remotes.Length, Chargers.Length);
    }

    public SearchRequest Request { get; }

    /// <summary>The board of the request with usual values for what its brief leaves open.</summary>
    public Board Brief { get; }

    public IReadOnlyList<Assumption> Assumptions { get; }

    public Drive[] Drives { get; }

    public Deck[] Decks { get; }

    public (Truck Front, Truck Rear)[] Trucks { get; }

    public Wheel[] Wheels { get; }

    public (Mount Mount, Angle? Angle)[] Mounts { get; }

    public Motor[] Motors { get; }

    public Pulley[] MotorPulleys { get; }

    public Pulley[] WheelPulleys { get; }

    public Belt[] Belts { get; }

    public Gearbox[] Gearboxes { get; }

    public Box[] Boxes { get; }

    public Controller[] Controllers { get; }

    public Cell[] Cells { get; }

    public (int Series, int Parallel)[] Packs { get; }

    public Protection[] Protections { get; }

    public Fuse[] Fuses { get; }

    public Remote[] Remotes { get; }

    public Charger[] Chargers { get; }

    /// <summary>How many may go in a place.</summary>
    public int SizeOf(Slot slot) => sizes[(int)slot];

    /// <summary>What stands in a place, in a word.</summary>
    public string NameOf(Slot slot, int at) => slot switch
    {
        Slot.Drive => FormattableString.Invariant($"{Drives[at].Motors.Or(1)} {(Drives[at].Motors.Or(1) == 1 ? "motor" : "motors")} {Entry.Word(Drives[at].Placement.Or(Placement.Behind))}"),
        Slot.Trucks => Trucks[at].Rear.Id,
        Slot.Mount => Mounts[at].Angle is { } angle ? FormattableString.Invariant($"{Mounts[at].Mount.Id} at {angle.Degrees:0.##} deg") : Mounts[at].Mount.Id,
        Slot.Pack => FormattableString.Invariant($"{Packs[at].Series}s{Packs[at].Parallel}p"),
        _ => PartIn(slot, at).Id,
    };

    /// <summary>The part in a place that holds one.</summary>
    public Part PartIn(Slot slot, int at) => slot switch
    {
        Slot.Deck => Decks[at],
        Slot.Trucks => Trucks[at].Rear,
        Slot.Wheels => Wheels[at],
        Slot.Mount => Mounts[at].Mount,
        Slot.Motor => Motors[at],
        Slot.MotorPulley => MotorPulleys[at],
        Slot.WheelPulley => WheelPulleys[at],
        Slot.Belt => Belts[at],
        Slot.Gearbox => Gearboxes[at],
        Slot.Box => Boxes[at],
        Slot.Controller => Controllers[at],
        Slot.Cell => Cells[at],
        Slot.Protection => Protections[at],
        Slot.Fuse => Fuses[at],
        Slot.Remote => Remotes[at],
        Slot.Charger => Chargers[at],
        _ => throw new ArgumentOutOfRangeException(nameof(slot), slot, "Holds no part."),
    };

    /// <summary>The brief's board with some places filled; a place whose number is below zero is left as it is.</summary>
    public Board Partly(ReadOnlySpan<int> pick)
    {
        var parts = Brief.Parts;
        var drive = pick[(int)Slot.Drive] is >= 0 and var d ? Drives[d] : parts.Drive;
        var mount = parts.Mount;
        if (pick[(int)Slot.Mount] is >= 0 and var m)
        {
            (mount, var angle) = Mounts[m];
            if (angle is { } chosen)
                drive = drive with { MountAngle = new Known<Angle>(chosen, key: "drive.mount_angle") };
        }

        var pack = parts.Pack;
        if (pick[(int)Slot.Pack] is >= 0 and var p)
        {
            var (series, parallel) = Packs[p];
            pack = pack with { IsChosen = true, Series = new Known<int>(series, key: "pack.series"), Parallel = new Known<int>(parallel, key: "pack.parallel") };
        }

        if (pick[(int)Slot.Protection] is >= 0 and var protection)
            pack = pack with { Protection = Protections[protection] };
        return Brief with
        {
            Parts = parts with
            {
                Drive = drive,
                Deck = In(Decks, Slot.Deck, pick, parts.Deck),
                FrontTruck = pick[(int)Slot.Trucks] is >= 0 and var front ? Trucks[front].Front : parts.FrontTruck,
                RearTruck = pick[(int)Slot.Trucks] is >= 0 and var rear ? Trucks[rear].Rear : parts.RearTruck,
                Wheels = In(Wheels, Slot.Wheels, pick, parts.Wheels),
                Mount = mount,
                Motor = In(Motors, Slot.Motor, pick, parts.Motor),
                MotorPulley = In(MotorPulleys, Slot.MotorPulley, pick, parts.MotorPulley),
                WheelPulley = In(WheelPulleys, Slot.WheelPulley, pick, parts.WheelPulley),
                Belt = In(Belts, Slot.Belt, pick, parts.Belt),
                Gearbox = In(Gearboxes, Slot.Gearbox, pick, parts.Gearbox),
                Box = In(Boxes, Slot.Box, pick, parts.Box),
                Controller = In(Controllers, Slot.Controller, pick, parts.Controller),
                Cell = In(Cells, Slot.Cell, pick, parts.Cell),
                Pack = pack,
                Fuse = In(Fuses, Slot.Fuse, pick, parts.Fuse),
                Remote = In(Remotes, Slot.Remote, pick, parts.Remote),
                Charger = In(Chargers, Slot.Charger, pick, parts.Charger),
            },
        };
    }

    /// <summary>The whole board of a choice for every place, with the pack laid out, and wires and limits as the parts carry them where the
    /// brief says nothing.</summary>
    public Board Whole(ReadOnlySpan<int> pick)
    {
        var board = Partly(pick);
        var lying = WaysOf(pick[(int)Slot.Cell], pick[(int)Slot.Pack]);
        // What goes into no box is laid as short as it can be, so that the rule on the box's contents says by how much.
        PackLayout? otherwise = board.Parts.Pack.Length.IsKnown || lying.Count == 0 ? null : lying[0];
        return Settings.Applied(board, LayoutOf(board.Parts, lying) ?? otherwise);
    }

    /// <summary>How the pack lies in the box, where the brief does not say.</summary>
    public static PackLayout? LayoutOf(Fitted parts, IReadOnlyList<PackLayout> ways) =>
        parts.Pack.Length.IsKnown ? null : PackLayout.In(parts.Box, parts.Controller, PartSlot.ControllerCount(parts), ways);

    public IReadOnlyList<PackLayout> WaysOf(int cell, int pack)
    {
        lock (ways)
        {
            if (!ways.TryGetValue((cell, pack), out var known))
                ways[(cell, pack)] = known = PackLayout.All(Cells[cell], Packs[pack].Series * Packs[pack].Parallel);
            return known;
        }
    }

    static T In<T>(T[] offers, Slot slot, ReadOnlySpan<int> pick, T otherwise) =>
        pick[(int)slot] is >= 0 and var at ? offers[at] : otherwise;

    T[] PartsFor<T>(Slot slot, T chosen, string key, bool isNeeded, Func<T, bool>? serves = null)
        where T : Part
    {
        if (chosen.IsChosen)
            return [chosen];
        var kind = Request.Shelf.OfType<T>().Where(p => serves?.Invoke(p) != false);
        if (Request.Fixed.TryGetValue(slot, out var id))
            return [.. kind.Where(p => p.Id == id).Take(1).Select(p => (T)Board.WithNames(p, key))];
        T[] all = [.. kind.Select(p => (T)Board.WithNames(p, key))];
        return all.Length == 0 && !isNeeded ? [chosen] : all;
    }

    static Drive[] DrivesOf(Drive drive, DriveKind kind)
    {
        var driven = drive with { Kind = new Known<DriveKind>(kind, key: "drive.kind") };
        Drive[] counts = drive.Motors.IsKnown ? [driven]
            : [.. Enumerable.Range(1, 2).Select(n => driven with { Motors = new Known<int>(n, key: "drive.motors") })];
        return drive.Placement.IsKnown || kind == DriveKind.Hub ? counts
            : [.. counts.SelectMany(c =>
            new[] { Placement.Behind, Placement.Ahead }.Select(p => c with { Placement = new Known<Placement>(p, key: "drive.placement") }))];
    }

    static (Mount Mount, Angle? Angle)[] MountsOf(Mount[] mounts, Drive drive) => drive.MountAngle.IsKnown
        ? [.. mounts.Select(m => (m, (Angle?)null))]
        : [.. mounts.SelectMany(m => m.Angles.IsKnown ? m.Angles.Value.Items.Select(a => (m, (Angle?)a)) : [(m, null)])];

    (int Series, int Parallel)[] PacksOf(Pack pack)
    {
        int[] series = pack.Series.IsKnown ? [pack.Series.Value]
            : [.. Protections.Where(p => p.Series.IsKnown).Select(p => p.Series.Value).Distinct().Order()];
        int[] parallel = pack.Parallel.IsKnown ? [pack.Parallel.Value] : [.. Enumerable.Range(1, MostParallel)];
        return [.. series.SelectMany(s => parallel.Select(p => (s, p)))];
    }
}
