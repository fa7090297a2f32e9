using System.Numerics;
using System.Runtime.InteropServices;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Motors;
using Boardwright.Parts;

namespace Boardwright.Searches;

/// <summary>What turns and carries: one choice for every place from the deck to the gearbox.</summary>
[StructLayout(LayoutKind.Auto)]
readonly record struct DriveChoice(
    short Deck, short Trucks, short Wheels, short Mount, short Motor, short MotorPulley, short WheelPulley, short Belt, short Gearbox);

/// <summary>What feeds it: one choice for every place from the box to the charger.</summary>
[StructLayout(LayoutKind.Auto)]
readonly record struct SupplyChoice(
    short Box, short Controller, short Cell, short Pack, short Protection, short Fuse, short Remote, short Charger);

/// <summary>A number of feedings that share box and controller, so that what turns and carries goes with all of them or none.</summary>
[StructLayout(LayoutKind.Auto)]
readonly record struct SupplyGroup(int Box, int Controller, int From, int To);

/// <summary>Every choice of parts that go together with one number of motors in one place: what turns and carries on one side, what feeds
/// it on the other. Boards are pairs of the two.</summary>
sealed class SearchSpace
{
    readonly CandidateParts offers;
    readonly PartFits joints;
    readonly int drive;
    readonly RejectionCounts tally;
    readonly int[] pick = new int[CandidateParts.Slots];
    readonly BigInteger[] below = new BigInteger[CandidateParts.Slots + 1];
    readonly Dictionary<(int, int, int), BeltChoice> belts = [];
    readonly bool isBelt;
    readonly bool isHub;
    readonly bool isAhead;
    readonly int motors;
    readonly string? overlooked;

    /// <summary>Finds what goes together under one drive.</summary>
    /// <param name="offers">What may go in the places.</param>
    /// <param name="drive">Number of the drive.</param>
    /// <param name="tally">Takes what is left out.</param>
    /// <param name="overlooked">A rule that is not asked, to see what would go together without it.</param>
    public SearchSpace(CandidateParts offers, int drive, RejectionCounts tally, string? overlooked = null)
    {
        (this.offers, this.drive, this.tally) = (offers, drive, tally);
        this.overlooked = overlooked;
        joints = new PartFits(offers, drive, overlooked);
        var how = offers.Drives[drive];
        (isBelt, isHub) = (how.Kind.Value == DriveKind.Belt, how.Kind.Value == DriveKind.Hub);
        isAhead = how.Placement is { IsKnown: true, Value: Placement.Ahead };
        motors = how.Motors.Value;
        below[CandidateParts.Slots] = 1;
        for (var s = CandidateParts.Slots - 1; s >= 0; s--)
            below[s] = below[s + 1] * offers.SizeOf((Slot)s);
        Array.Fill(pick, -1);
        pick[(int)Slot.Drive] = drive;
        Roll(Slot.Deck);
        Feed();
    }

    /// <summary>Number of motors.</summary>
    public int Motors => motors;
    /// <summary>Number of the drive among the offers.</summary>
    public int Drive => drive;
    /// <summary>What turns and carries.</summary>
    public List<DriveChoice> Rollings { get; } = [];
    /// <summary>What feeds it, those of one group after one another.</summary>
    public List<SupplyChoice> Feedings { get; } = [];
    /// <summary>The groups, in order.</summary>
    public List<SupplyGroup> Groups { get; } = [];

    /// <summary>Boards that lie below one place: the product of what may go in the places from it on.</summary>
    BigInteger Below(Slot slot) => below[(int)slot + 1];

    /// <summary>The choice for every place.</summary>
    public int[] PickOf(int rolling, int feeding)
    {
        var (r, f) = (Rollings[rolling], Feedings[feeding]);
        return
        [
            drive, r.Deck, r.Trucks, r.Wheels, r.Mount, r.Motor, r.MotorPulley, r.WheelPulley, r.Belt, r.Gearbox,
            f.Box, f.Controller, f.Cell, f.Pack, f.Protection, f.Fuse, f.Remote, f.Charger,
        ];
    }

    /// <summary>Why what turns and carries does not go with a box or a controller; one thread at a time may ask.</summary>
    /// <returns>The rule's id, or <c>null</c> when they go together.</returns>
    public string? Apart(in DriveChoice rolling, in SupplyGroup group)
    {
        Span<int> chosen = stackalloc int[CandidateParts.Slots];
        chosen[(int)Slot.Deck] = rolling.Deck;
        chosen[(int)Slot.Trucks] = rolling.Trucks;
        chosen[(int)Slot.Wheels] = rolling.Wheels;
        chosen[(int)Slot.Motor] = rolling.Motor;
        chosen[(int)Slot.Box] = group.Box;
        chosen[(int)Slot.Controller] = group.Controller;
        return joints.StoppedBy(MotorOnController, chosen) ?? joints.StoppedBy(BoxOverRoad, chosen)
            ?? joints.StoppedBy(BoxUnderDeck, chosen)
            ?? (isAhead && !isHub && overlooked != "fit.box_between_trucks" && MeetsMotors(rolling, group.Box) ? "fit.box_between_trucks" : null);
    }

    static readonly int MotorOnController = PartFits.CountFor(Slot.Motor, Slot.Controller);
    static readonly int BoxOverRoad = PartFits.CountFor(Slot.Deck, Slot.Trucks, Slot.Wheels, Slot.Box);
    static readonly int BoxUnderDeck = PartFits.CountFor(Slot.Deck, Slot.Box);

    void Roll(Slot slot)
    {
        if (slot == Slot.Box)
        {
            Rollings.Add(new((short)pick[1], (short)pick[2], (short)pick[3], (short)pick[4], (short)pick[5], (short)pick[6], (short)pick[7],
                (short)pick[8], (short)pick[9]));
            return;
        }

        if (slot == Slot.Belt && isBelt)
        {
            RollBelts();
            return;
        }

        for (var i = 0; i < offers.SizeOf(slot); i++)
        {
            pick[(int)slot] = i;
            if ((Lacks(slot, i) ?? Stopped(slot) ?? (slot == Slot.Gearbox && !isHub && !isBelt ? Meets(GearCentre()) : null)) is { } reason)
                tally.Add(reason, Below(slot));
            else
                Roll(slot + 1);
        }

        pick[(int)slot] = -1;
    }

    /// <summary>Belts that lie in the mount's slot around two pulleys, and why the others do not.</summary>
    void RollBelts()
    {
        var key = (pick[(int)Slot.Mount], pick[(int)Slot.MotorPulley], pick[(int)Slot.WheelPulley]);
        if (!belts.TryGetValue(key, out var choice))
            belts[key] = choice = BeltsFor();
        foreach (var (reason, count) in choice.Left)
            tally.Add(reason, count * Below(Slot.Belt));
        foreach (var (belt, centre) in choice.Belts)
        {
            pick[(int)Slot.Belt] = belt;
            if (Meets(centre) is { } reason)
                tally.Add(reason, Below(Slot.Belt));
            else
                Roll(Slot.Gearbox);
        }

        pick[(int)Slot.Belt] = -1;
    }

    BeltChoice BeltsFor()
    {
        var left = new Dictionary<string, int>(StringComparer.Ordinal);
        var fitting = new List<(int Belt, Length Centre)>();
        for (var i = 0; i < offers.Belts.Length; i++)
        {
            pick[(int)Slot.Belt] = i;
            var reason = Lacks(Slot.Belt, i) ?? Stopped(Slot.Belt);
            Length? centre = null;
            if (reason is null)
                (reason, centre) = InSlot();
            if (reason is not null)
                left[reason] = left.GetValueOrDefault(reason) + 1;
            else if (centre is { } taut)
                fitting.Add((i, taut));
        }

        pick[(int)Slot.Belt] = -1;
        return new([.. left.Select(l => (l.Key, l.Value))], fitting);
    }

    /// <summary>Where the belt is taut, as the rule on the mount's slot judges it.</summary>
    (string? Reason, Length? Centre) InSlot()
    {
        var board = offers.Partly(pick);
        var belt = BeltDrive.Compute(board);
        var mount = board.Parts.Mount;
        if (!belt.IsKnown)
            return belt.Missing.Count > 0 ? (PartFits.Unknown, null) : ("belt.slot", null);
        var (path, centre) = (belt.Value.Path, belt.Value.Path.CentreDistance);
        return overlooked != "belt.slot"
            && (path.Gap.Si <= 0 || (mount.CentreMin.IsKnown && mount.CentreMax.IsKnown
            && (centre < mount.CentreMin.Value || centre > mount.CentreMax.Value)))
            ? ("belt.slot", null)
            : (null, centre);
    }

    Length? GearCentre() => offers.Mounts[pick[(int)Slot.Mount]].Mount.CentreMin is { IsKnown: true } centre ? centre.Value : null;

    /// <summary>Whether the motors meet deck or road, from the same places as the rules.</summary>
    string? Meets(Length? distance)
    {
        var parts = offers.Partly(pick).Parts;
        if (distance is not { } centre || !parts.Mount.IsChosen || !parts.Motor.CanDiameter.IsKnown || AngleOf(parts) is not { } angle)
            return null;
        var place = new MotorPlace(centre, angle, parts.Motor.CanDiameter.Value);
        return overlooked != "fit.motor_deck" && MeetsDeck(parts, place) ? "fit.motor_deck"
            : overlooked != "fit.ground_motor" && parts.Wheels.Diameter.IsKnown && place.AboveRoad(parts.Wheels.Diameter.Value / 2).Si <= 0 ? "fit.ground_motor"
            : null;
    }

    static Angle? AngleOf(Fitted parts) =>
        parts.Drive.MountAngle.IsKnown ? parts.Drive.MountAngle.Value : parts.Mount.Angles.IsKnown ? parts.Mount.Angles.Value.Items[0]
        : null;

    bool MeetsDeck(Fitted parts, MotorPlace place)
    {
        var needs = new Needs();
        var truck = DrivenAxle.TruckOf(parts);
        var lean = needs.Read(truck.LeanStop);
        var hanger = needs.Read(truck.HangerWidth);
        var plate = needs.Read(parts.Mount.PlateFromWheel) + needs.Read(parts.Mount.PlateThickness);
        var deck = DrivenAxle.DeckAboveAxle(needs, parts, isAhead);
        var width = parts.Deck.Width.Or(Length.FromMetres(1));
        var tail = isAhead ? default : needs.Read(parts.Deck.TailOverhang);
        if (needs.Unmet || (!isAhead && tail <= place.Near))
            return false;
        var outer = hanger / 2 - plate;
        return place.UnderDeck(deck, outer < width / 2 ? outer : width / 2, lean).Si < 0;
    }

    /// <summary>Whether motors that sit between the trucks leave no room for the box, as the rule on the box's place judges it.</summary>
    bool MeetsMotors(in DriveChoice rolling, int box)
    {
        var (deck, chosen, motor) = (offers.Decks[rolling.Deck], offers.Boxes[box], offers.Motors[rolling.Motor]);
        var (mount, angle) = offers.Mounts[rolling.Mount];
        if (!chosen.IsChosen || !mount.IsChosen || !deck.Wheelbase.IsKnown || !motor.CanDiameter.IsKnown || !chosen.InnerLength.IsKnown
            || !chosen.Wall.IsKnown || !chosen.FlangeWidth.IsKnown)
            return false;
        var tilt = angle ?? (offers.Drives[drive].MountAngle.IsKnown ? offers.Drives[drive].MountAngle.Value : mount.Angles.IsKnown
            ? mount.Angles.Value.Items[0] : null);
        var centre = isBelt ? belts[(rolling.Mount, rolling.MotorPulley, rolling.WheelPulley)].CentreOf(rolling.Belt)
            : mount.CentreMin.IsKnown ? mount.CentreMin.Value : null;
        if (tilt is not { } known || centre is not { } distance)
            return false;
        var reach = new MotorPlace(distance, known, motor.CanDiameter.Value).Reach + Length.FromMillimetres(5);
        var truck = Length.FromMillimetres(50);
        var axles = offers.Drives[drive].Driven.Or(Driven.Rear) == Driven.Both ? 2 : 1;
        var between = deck.Wheelbase.Value.Items[0] - (reach > truck ? reach : truck) * axles - truck * (2 - axles);
        return chosen.InnerLength.Value + (chosen.Wall.Value + chosen.FlangeWidth.Value) * 2 > between;
    }

    void Feed()
    {
        // Each reason holds for every board on the other side.
        var times = new BigInteger(Rollings.Count);
        for (var box = 0; box < offers.Boxes.Length; box++)
        {
            pick[(int)Slot.Box] = box;
            if (Lacks(Slot.Box, box) is { } boxless)
            {
                tally.Add(boxless, times * Below(Slot.Box));
                continue;
            }

            for (var controller = 0; controller < offers.Controllers.Length; controller++)
            {
                pick[(int)Slot.Controller] = controller;
                if ((Lacks(Slot.Controller, controller) ?? Stopped(Slot.Controller)) is { } reason)
                {
                    tally.Add(reason, times * Below(Slot.Controller));
                    continue;
                }

                var from = Feedings.Count;
                FeedFrom(Slot.Cell, times);
                if (Feedings.Count > from)
                    Groups.Add(new(box, controller, from, Feedings.Count));
            }
        }
    }

    void FeedFrom(Slot slot, BigInteger times)
    {
        if (slot == Slot.Charger)
        {
            FeedChargers(times);
            return;
        }

        for (var i = 0; i < offers.SizeOf(slot); i++)
        {
            pick[(int)slot] = i;
            if ((Lacks(slot, i) ?? Stopped(slot)
                ?? (slot == Slot.Pack && overlooked != PartFits.NoLayout && HasNoRoom() ? PartFits.NoLayout : null)) is { } reason)
                tally.Add(reason, times * Below(slot));
            else
                FeedFrom(slot + 1, times);
        }

        pick[(int)slot] = -1;
    }

    /// <summary>Of chargers that serve, the cheapest: a charger changes nothing that a board is compared by but its price.</summary>
    void FeedChargers(BigInteger times)
    {
        var serving = new List<int>();
        for (var i = 0; i < offers.Chargers.Length; i++)
        {
            pick[(int)Slot.Charger] = i;
            if ((Lacks(Slot.Charger, i) ?? Stopped(Slot.Charger)) is { } reason)
                tally.Add(reason, times);
            else
                serving.Add(i);
        }

        decimal Price(int i) => offers.Chargers[i].Price.IsKnown ? offers.Chargers[i].Price.Value.Amount * offers.Chargers[i].Count.Or(1)
            : 0;
        var least = serving.Count > 0 ? serving.Min(Price) : 0;
        foreach (var i in serving)
        {
            if (Price(i) > least)
                tally.Add(PartFits.Dearer, times);
            else
                Feedings.Add(new((short)pick[10], (short)pick[11], (short)pick[12], (short)pick[13], (short)pick[14], (short)pick[15],
                    (short)pick[16], (short)i));
        }

        pick[(int)Slot.Charger] = -1;
    }

    bool HasNoRoom()
    {
        var parts = offers.Partly(pick).Parts;
        if (!parts.Box.IsChosen || !parts.Box.InnerLength.IsKnown || !parts.Box.InnerWidth.IsKnown || !parts.Box.InnerDepth.IsKnown
            || !parts.Controller.Length.IsKnown || !parts.Controller.Width.IsKnown || !parts.Controller.Height.IsKnown)
            return false;
        var pack = parts.Pack;
        if (pack.Length.IsKnown)
            return pack.Width.IsKnown && pack.Height.IsKnown
                && !BoxRoom.Compute(parts.Box, parts.Controller, PartSlot.ControllerCount(parts), pack.Length.Value, pack.Width.Value,
                pack.Height.Value).Holds;
        var ways = offers.WaysOf(pick[(int)Slot.Cell], pick[(int)Slot.Pack]);
        return ways.Count > 0 && CandidateParts.LayoutOf(parts, ways) is null;
    }

    string? Stopped(Slot slot)
    {
        foreach (var joint in Decided[(int)slot])
        {
            if (joints.StoppedBy(joint, pick) is { } reason)
                return reason;
        }

        return null;
    }

    // Pairs of one side with the other are asked when the sides meet.
    static readonly int[][] Decided =
        [.. Enumerable.Range(0, CandidateParts.Slots)
        .Select(s => PartFits.DecidedAt((Slot)s).Where(j => j != MotorOnController && j != BoxOverRoad && j != BoxUnderDeck).ToArray())];

    /// <summary>Whether a part lacks a value without which no board with it can be judged, or there are too few of it.</summary>
    string? Lacks(Slot slot, int at)
    {
        if (IsShort(slot, at))
            return PartFits.Stock;
        return IsUnknown(slot, at) ? PartFits.Unknown : null;
    }

    bool IsShort(Slot slot, int at)
    {
        if (offers.Request.IgnoresStock || slot is Slot.Drive)
            return false;
        if (slot == Slot.Pack)
            return offers.Cells[pick[(int)Slot.Cell]].Stock is { IsKnown: true } cells
                && cells.Value < offers.Packs[at].Series * offers.Packs[at].Parallel;
        var part = offers.PartIn(slot, at);
        var needed = slot switch
        {
            Slot.Trucks => 2,
            Slot.Wheels => part.Count.Or(4),
            Slot.Controller => PartSlot.ControllerCount(
                offers.Brief.Parts with { Drive = offers.Drives[drive], Controller = offers.Controllers[at] }),
            Slot.Mount or Slot.Motor or Slot.MotorPulley or Slot.WheelPulley or Slot.Belt or Slot.Gearbox => part.Count.Or(motors),
            _ => 1,
        };
        return part.IsChosen && part.Stock.IsKnown && part.Stock.Value < needed;
    }

    bool IsUnknown(Slot slot, int at)
    {
        switch (slot)
        {
            case Slot.Deck:
                return !offers.Decks[at].Wheelbase.IsKnown;
            case Slot.Wheels:
                var wheel = offers.Wheels[at];
                return !wheel.Diameter.IsKnown || (!wheel.Inertia.IsKnown && !wheel.Mass.IsKnown) || !wheel.RollingResistance.IsKnown
                    || (wheel.RollingResistance.Value.Everywhere is null
                    && (!offers.Brief.Brief.Surface.IsKnown || wheel.RollingResistance.Value.On(offers.Brief.Brief.Surface.Value) is null));
            case Slot.Motor:
                var motor = offers.Motors[at];
                return !motor.RotorInertia.IsKnown
                    || !MotorModel.Compute(offers.Brief with { Parts = offers.Brief.Parts with { Motor = motor } }).IsKnown;
            case Slot.MotorPulley:
                return isBelt && !offers.MotorPulleys[at].Teeth.IsKnown;
            case Slot.WheelPulley:
                return isBelt && !offers.WheelPulleys[at].Teeth.IsKnown;
            case Slot.Gearbox:
                return !isBelt && !isHub && !offers.Gearboxes[at].Ratio.IsKnown;
            case Slot.Controller:
                var controller = offers.Controllers[at];
                return !controller.BridgeResistance.IsKnown || !controller.SwitchingTime.IsKnown || !controller.SwitchingFrequency.IsKnown
                    || !controller.IdlePower.IsKnown;
            case Slot.Cell:
                var cell = offers.Cells[at];
                return !cell.Capacity.IsKnown || !cell.RestVoltage.IsKnown || !cell.Resistance.IsKnown || !cell.VoltageFull.IsKnown
                    || !cell.VoltageEmpty.IsKnown;
            default:
                return false;
        }
    }

    sealed record BeltChoice(IReadOnlyList<(string Reason, int Count)> Left, IReadOnlyList<(int Belt, Length Centre)> Belts)
    {
        public Length? CentreOf(int belt)
        {
            foreach (var (b, centre) in Belts)
            {
                if (b == belt)
                    return centre;
            }

            return null;
        }
    }
}
