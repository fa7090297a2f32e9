using Boardwright.Analyses;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;

namespace Boardwright.Rules;

/// <summary>What stands along the driven axle goes together: pulleys in one plane, on enough shaft, under the cover, with a full nut.
/// </summary>
static class StackRules
{
    static readonly Length CoverGap = Length.FromMillimetres(1);
    static readonly Length UnsaidGive = Length.FromMillimetres(0.4);
    // More washers than these on top of each other want a longer standoff instead.
    const int MostWashers = 4;

    /// <summary>The belt cover closes over shaft and pulley.</summary>
    public static Rule<BoardAnalysis> CoverCloses { get; } = new(
        "fit.shaft_cover", "motor.shaft_length", "The belt cover closes over the motor's shaft and pulley with 1 mm to spare.",
        "Beyond the plate stand shaft_length − plate_thickness of shaft, and the motor pulley with its teeth in the plane of the wheel pulley's: plate_from_wheel + pulley_from_hanger + the wheel pulley's face_offset + half its face_width, and what the motor pulley has beyond the middle of its teeth. Both must stay 1 mm inside cover_depth + cover_standoff when every dimension is off the wrong way, or the cover grinds and its screws bend.",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!parts.Drive.TurnsBelts(needs))
                return null;
            var room = AxialStackUp.CoverRoom(needs, parts);
            var beyond = AxialStackUp.ShaftBeyondPlate(needs, parts);
            var bolt = parts.Mount.CoverBolt.Or("M4");
            if (needs.Unmet)
                return null;
            var shaft = room.Minus(beyond);
            var stack = needs.Read(e.AxialStack);
            // Without the pulley's place the shaft alone may already be too long.
            if (needs.Unmet)
            {
                var text = WasherText(CoverGap - shaft.Least, bolt, parts.Mount);
                Phrase cut = (FormattableString)$"Shorten the shaft by {Up(CoverGap - shaft.Least):0.0 mm} if enough of it then stays in the pulley, or {text}.";
                return shaft.Nominal < CoverGap ? [Covered(shaft, shaft, beyond.Nominal, room.Nominal, cut)] : null;
            }

            var pulley = stack.PulleyUnder(room);
            var tight = pulley.Least < shaft.Least ? pulley : shaft;
            var least = pulley.Nominal < shaft.Nominal ? pulley : shaft;
            var outer = room.Nominal - pulley.Nominal;
            var reach = outer > beyond.Nominal ? outer : beyond.Nominal;
            var (value, limit) = (Amount.Create(reach, "mm"), Amount.Create(room.Nominal - CoverGap, "mm"));
            if (Holds(tight, CoverGap))
                return [CoverCloses!.Found(Level.Fine, $"{beyond.Nominal:0.0 mm} of shaft and a pulley that ends at {outer:0.0 mm} stand in {room.Nominal:0.0 mm}; {least.Nominal:0.0 mm} stay free ({Give(least)}).", value: value, limit: limit)];
            var (cutting, mend) = CutOrTurn(stack, room);
            var washers = WasherText(CoverGap - tight.Least, bolt, parts.Mount);
            FormattableString remedy = cutting is { } done ? (FormattableString)$"{done}, or {washers}."
                : (FormattableString)$"No cut of the shaft and no turn of the pulley mends it, because {Obstacle(stack, pulley)}: {washers}, or take a mount whose plate lies nearer to the hanger's end.";
            // Where the teeth sit on the pulley is open until somebody measured it: only what fails wherever they sit fails.
            var fails = pulley.Possible < shaft.Nominal ? pulley : shaft;
            return fails.Possible < CoverGap
                ? [Covered(fails, tight, room.Nominal - fails.Nominal, room.Nominal, new Phrase(remedy)) with { Mend = mend }]
                : [Loose(CoverCloses!, $"{beyond.Nominal:0.0 mm} of shaft and a pulley that ends at {outer:0.0 mm} stand in {room.Nominal:0.0 mm}: {least.Nominal:0.0 mm} should stay free, and at worst {tight.Least:0.0 mm} do ({Give(tight)}).", tight, remedy, value, limit)];
        });

    /// <summary>The pulley sits on enough shaft.</summary>
    public static Rule<BoardAnalysis> PulleySeated { get; } = new(
        "fit.pulley_seat", "motor_pulley.length", "At least 0.8 of the motor pulley's length, and of the belt's width, is on the shaft.",
        "A pulley that hangs over the shaft's end is bent off by the belt. The pulley stands where its teeth are in the plane of the wheel pulley's; the shaft from its inner end on is compared with 0.8 of its length, and the shaft's end with 0.8 of the belt's width.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!parts.Drive.TurnsBelts(needs))
                return null;
            var beyond = AxialStackUp.ShaftBeyondPlate(needs, parts);
            var length = DimensionChain.Read(needs, parts.MotorPulley.Length, typeof(Pulley));
            if (needs.Unmet)
                return null;
            var (shaft, pulley, limit) = (parts.Motor.ShaftLength.Value, length.Nominal, new Amount(100 * AxialStackUp.LeastSeat, "%"));
            var plate = parts.Mount.PlateThickness.Value;
            Phrase Longer(Length by, Length inward) => (FormattableString)$"Take a motor whose shaft is at least {Up(shaft + by):0.0 mm} long{Thinner(by)}{Nearer(by, inward)}.";
            // A plate of less than half its thickness is no longer the same mount, and the pulley must not meet the plate instead.
            Phrase Thinner(Length by) => Up(by) <= plate / 2 ? (FormattableString)$", or a plate {Up(by):0.0 mm} thinner" : $"";
            Phrase Nearer(Length by, Length inward) => Up(by) <= inward ? (FormattableString)$", or a mount whose plate lies {Up(by):0.0 mm} nearer to the hanger's end" : $"";
            var stack = needs.Read(e.AxialStack);
            if (needs.Unmet)
            {
                // Nowhere can more of the pulley be on the shaft than against the plate.
                var most = Math.Clamp(beyond.Nominal / pulley, 0, 1);
                return most >= AxialStackUp.LeastSeat ? null
                    : [PulleySeated!.Found(most <= 0 ? Level.Stop : Level.Fix, $"At most {Fraction.FromValue(most):0 %} of the pulley is on the shaft: {beyond.Nominal:0.0 mm} stand beyond the plate, the pulley is {pulley:0.0 mm} long.", $"{Longer(pulley * AxialStackUp.LeastSeat - beyond.Least, default)}", new Amount(100 * most, "%"), limit)];
            }

            var (seat, past) = (stack.Seat, (stack.BeltOuter.Minus(stack.ShaftEnd)).Nominal);
            var value = new Amount(100 * seat, "%");
            var tight = stack.SeatSpare.Least < stack.BeltSpare.Least ? stack.SeatSpare : stack.BeltSpare;
            FormattableString belt = past.Si > 1e-9 ? (FormattableString)$" The belt runs {past:0.0 mm} past the shaft's end." : $"";
            if (Holds(tight, default))
                return [PulleySeated!.Found(Level.Fine, $"{Fraction.FromValue(seat):0 %} of the pulley is on the shaft, {stack.SeatLength.Nominal:0.0 mm} from its inner end to the shaft's ({Give(stack.SeatLength)}).{new Phrase(belt)}", value: value, limit: limit)];
            var turned = stack.Turned;
            var turns = stack.IsOffsetKnown && Holds(turned.SeatSpare, default) && Holds(turned.BeltSpare, default)
                && Holds(turned.FromPlate, default);
            var mend = turns ? Turn(turned) : null;
            FormattableString remedy = turns
                ? (FormattableString)$"Turn the pulley around on the shaft: {Fraction.FromValue(turned.Seat):0 %} of it is then on the shaft."
                : $"No place on this shaft works, because the belt's plane lies {(stack.Plane.Minus(stack.Plate)).Nominal:0.0 mm} beyond the plate and the shaft ends at {beyond.Nominal:0.0 mm}. {Longer(-tight.Least, stack.FromPlate.Least)}";
            return stack.SeatSpare.Possible.Si < -1e-9 || stack.BeltSpare.Possible.Si < -1e-9
                ? [PulleySeated!.Found(stack.SeatLength.Possible.Si <= 0 ? Level.Stop : Level.Fix, $"Only {Fraction.FromValue(seat):0 %} of the pulley is on the shaft: with its teeth in the belt's plane it stands {(stack.PulleyInner.Minus(stack.Plate)).Nominal:0.0 mm} to {(stack.PulleyOuter.Minus(stack.Plate)).Nominal:0.0 mm} beyond the plate, and the shaft ends at {beyond.Nominal:0.0 mm}.{new Phrase(belt)}", remedy, value, limit, mend: mend)]
                : [Loose(PulleySeated!, $"{Fraction.FromValue(seat):0 %} of the pulley should be on the shaft, and {tight.Nominal:0.0 mm} to spare; that may be off by {tight.Worst:0.0 mm} at worst ({tight.Likely:0.0 mm} likely).{new Phrase(belt)}", tight, remedy, value, limit)];
        });

    /// <summary>Both pulleys' teeth are in one plane.</summary>
    public static Rule<BoardAnalysis> PulleysInLine { get; } = new(
        "belt.alignment", "mount.plate_from_wheel", "The motor pulley can be set in the plane of the wheel pulley, to a quarter of a degree.",
        "The wheel pulley's place on the axle sets the belt's plane; the motor pulley slides on its shaft towards it until it meets the plate. What then remains, over the distance of shaft and axle, is at most tan 0.25°, angle and offset together: beyond it the belt climbs on its flanges and wears at its edge.",
        Sources.SdpSiAlignment,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var stack = needs.Read(e.AxialStack);
            if (needs.Unmet)
                return null;
            var (free, plane) = (stack.FromPlate, stack.Plane.Minus(stack.Plate).Nominal);
            if (Holds(free, default) && !e.Centre.IsKnown)
                return [PulleysInLine!.Found(Level.Fine, $"The belt's plane lies {plane:0.0 mm} beyond the plate and the motor pulley gets there; {new Phrase(Reaches(free))}.", value: Amount.Create(default(Length), "mm"))];
            var centre = needs.Read(e.Centre);
            if (needs.Unmet)
                return null;
            var allowed = AxialStackUp.Allowed(centre);
            var off = stack.Misalignment;
            var (value, limit) = (Amount.Create(off, "mm"), Amount.Create(allowed, "mm"));
            if (Holds(free, -allowed))
            {
                return [PulleysInLine!.Found(Level.Fine, stack.IsHeldByPlate
                    ? (FormattableString)$"Against the plate the motor pulley's teeth stay {off:0.00 mm} out of the belt's plane; a quarter of a degree over {centre:0.0 mm} allows {allowed:0.00 mm}."
                    : $"The belt's plane lies {plane:0.0 mm} beyond the plate and the motor pulley gets there; {new Phrase(Reaches(free))}. Set it with a straight edge, to {allowed:0.0 mm}.", value: value, limit: limit)];
            }

            // A distance that is written may be off; the usual washer, which stands where none is written, is not.
            var written = e.Board.Parts.Drive.PulleyFromHanger.IsKnown ? default : UnsaidGive;
            var needed = written - allowed - free.Least;
            var turned = stack.Turned;
            var turns = stack.IsOffsetKnown && Holds(turned.FromPlate, -allowed) && Holds(turned.SeatSpare, default);
            var washers = (int)Math.Ceiling(needed / AxialStackUp.Washer - 1e-9);
            var thread = e.AxleStack.IsKnown ? e.AxleStack.Value.Free : null;
            var hasThread = thread is null || Holds(thread, AxialStackUp.Washer * washers);
            FormattableString outward = hasThread
                ? (FormattableString)$"put {Count(washers)} of {AxialStackUp.Washer:0 mm} more on the axle between the hanger's end and the wheel pulley, which moves the belt's plane out"
                : $"take a mount whose plate lies {Up(needed):0.0 mm} further in from the hanger's end; the axle has no thread left for {Count(washers)} under the wheel pulley";
            FormattableString remedy = turns
                ? (FormattableString)$"Turn the motor pulley around on the shaft: its teeth then reach the plane with {turned.FromPlate.Nominal:0.0 mm} to the plate."
                : $"No position of the motor pulley works, because it meets the plate before its teeth reach the belt's plane: {new Phrase(outward)}.";
            var mend = turns ? Turn(turned)
                : hasThread ? new Change("drive.pulley_from_hanger", $"{FromHanger(e.Board.Parts) + AxialStackUp.Washer * washers:0.0# mm}") : null;
            return free.Possible < -allowed
                ? [PulleysInLine!.Found(Level.Fix, $"The motor pulley's teeth stay {off:0.0 mm} out of the belt's plane, {Angle.FromRadians(Math.Atan(off / centre)):0.0 deg} over {centre:0.0 mm}; {allowed:0.00 mm} are allowed.", remedy, value, limit, mend: mend)]
                : [Loose(PulleysInLine!, $"The belt's plane lies {plane:0.0 mm} beyond the plate; whether the motor pulley gets there is not certain: {new Phrase(Reaches(free))}.", free, remedy, value, limit)];
        });

    /// <summary>The axle is long enough.</summary>
    public static Rule<BoardAnalysis> AxleLongEnough { get; } = new(
        "fit.axle_length", "rear_truck.axle_overhang", "The driven axle carries washers, wheel pulley, wheel, bearings, spacer and a full nut.",
        "Needed = pulley_from_hanger (a 1 mm washer where not given) + what of the wheel pulley stays out of the wheel (length − seat_offset, and its teeth with their flange in any case) + seat_offset + two bearings + a 10 mm spacer + a washer + a nut as high as the axle is thick. With gears there is no pulley, and the inner bearing lies on the first washer.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (e.IsHub)
                return null;
            var truck = DrivenAxle.TruckOf(parts);
            var stack = needs.Read(e.AxleStack);
            if (needs.Unmet)
                return null;
            var (free, overhang, needed) = (stack.Free, stack.Axle.Nominal, stack.Needed.Nominal);
            var (value, limit) = (Amount.Create(needed, "mm"), Amount.Create(overhang, "mm"));
            if (Holds(free, default))
                return [AxleLongEnough!.Found(Level.Fine, $"{needed:0.0 mm} of {overhang:0.0 mm} are needed; {free.Nominal:0.0 mm} of thread stay ({Give(free)}).", value: value, limit: limit, where: truck.AxleOverhang.Key)];
            var lacks = Up(-free.Least);
            FormattableString remedy = $"Take a truck whose axle stands out at least {overhang + lacks:0.0 mm}, a wheel whose inner bearing lies {lacks:0.0 mm} less deep, or a wheel pulley that stands {lacks:0.0 mm} less out of the wheel.";
            return free.Possible.Si < -1e-9
                ? [AxleLongEnough!.Found(Level.Stop, $"{needed:0.0 mm} have to go on an axle that stands out {overhang:0.0 mm}: the nut would not be full by {-free.Nominal:0.0 mm}.", remedy, value, limit, truck.AxleOverhang.Key)]
                : [Loose(AxleLongEnough!, $"{needed:0.0 mm} of {overhang:0.0 mm} are needed; {free.Nominal:0.0 mm} of thread should stay, off by {free.Worst:0.0 mm} at worst ({free.Likely:0.0 mm} likely).", free, remedy, value, limit) with { Where = truck.AxleOverhang.Key }];
        });

    /// <summary>Every rule about what stands along the axle.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } = [CoverCloses, PulleySeated, AxleLongEnough, PulleysInLine];

    static bool Holds(DimensionChain chain, Length least) => (chain.Least - least).Si >= -1e-9;

    static Phrase Give(DimensionChain chain) => (FormattableString)$"±{chain.Likely:0.0 mm} likely, ±{chain.Worst:0.0 mm} at worst";

    static FormattableString Reaches(DimensionChain free) => $"its inner end then stands {free.Nominal:0.0 mm} off it ({Give(free)})";

    // What is to be bought or cut is rounded to half a millimetre, so that it holds as it is written.
    static Length Up(Length length) => Length.FromMillimetres(Math.Ceiling(length.Millimetres * 2 - 1e-6) / 2);

    static string Count(int washers) => washers == 1 ? "1 washer" : $"{washers} washers";

    static Length FromHanger(Fitted parts) => parts.Drive.PulleyFromHanger.Or(AxialStackUp.Washer);

    static Change Turn(AxialStackUp turned) => new("motor_pulley.face_offset", $"{turned.Pulley.Offset.Nominal:0.0# mm}");

    static Finding Covered(DimensionChain least, DimensionChain tight, Length reach, Length room, Phrase remedy) => CoverCloses.Found(
        least.Possible.Si < 0 ? Level.Stop : Level.Fix,
        $"{reach:0.0 mm} stand beyond the plate, the cover has {room:0.0 mm}: {(least.Nominal.Si < 0 ? (FormattableString)$"{-least.Nominal:0.0 mm} too much" : $"only {least.Nominal:0.0 mm} free")} ({Give(tight)}).",
        $"{remedy}", Amount.Create(reach, "mm"), Amount.Create(room - CoverGap, "mm"));

    /// <summary>Holds by what is written, and not when every dimension is off: only measuring tells.</summary>
    static Finding Loose(
        Rule<BoardAnalysis> rule, FormattableString says, DimensionChain chain, FormattableString otherwise, Amount value, Amount limit)
    {
        var keys = chain.Loosest.Take(3).ToArray();
        return rule.Found(Level.Measure, says, $"Measure {string.Join(", ", keys)}, or try it before anything is bought for it. {new Phrase(otherwise)}", value, limit) with
        {
            // What is not in the file at all waits to be filled in; what is there is only to be measured again.
            Needs = [.. keys.Where(k => k.EndsWith(".face_offset", StringComparison.Ordinal))],
        };
    }

    static Phrase Obstacle(AxialStackUp stack, DimensionChain pulley) => Holds(pulley, CoverGap)
        ? (FormattableString)$"too little of the shaft would stay in the pulley"
        : $"with its teeth in the belt's plane the pulley itself ends {stack.PulleyOuter.Minus(stack.Plate).Nominal:0.0 mm} beyond the plate";

    /// <summary>What a saw and the pulley turned around can do, and the change in the file for a turn alone.</summary>
    static (Phrase? Doing, Change? Mend) CutOrTurn(AxialStackUp stack, DimensionChain room)
    {
        foreach (var turns in new[] { false, true })
        {
            var pulley = turns ? stack.Turned : stack;
            var lacks = CoverGap - pulley.ShaftUnder(room).Least;
            var cut = lacks.Si > 0 ? Up(lacks) : default;
            if ((turns && !stack.IsOffsetKnown) || !Holds(pulley.PulleyUnder(room), CoverGap) || !Holds(pulley.FromPlate, default)
                || !Holds(pulley.SeatSpare, cut) || !Holds(pulley.BeltSpare, cut))
                continue;
            var left = Math.Clamp((pulley.SeatLength.Nominal - cut) / pulley.Pulley.Length.Nominal, 0, 1);
            Phrase sawn = (FormattableString)$"shaft by {cut:0.0 mm} (the pulley then still sits on {(left < 1 ? (FormattableString)$"{Fraction.FromValue(left):0 %}" : $"all")} of its length)";
            if (cut.Si <= 0)
                return ((FormattableString)$"Turn the motor pulley around on the shaft: it then ends {pulley.PulleyOuter.Minus(pulley.Plate).Nominal:0.0 mm} beyond the plate", Turn(pulley));
            return turns ? ((FormattableString)$"Turn the motor pulley around on the shaft, and shorten the {sawn}", null)
                : ((FormattableString)$"Shorten the {sawn}", null);
        }

        return (null, null);
    }

    static Phrase WasherText(Length more, string bolt, Mount mount)
    {
        var thickness = Drivetrains.BoltThread.Parse(bolt)?.Washer.Thickness ?? Length.FromMillimetres(0.8);
        var washers = (int)Math.Ceiling(more / thickness - 1e-9);
        return washers <= MostWashers
            ? (FormattableString)$"put {Count(washers)} ISO 7089-{bolt} ({thickness:0.0 mm}) under each cover screw, on its standoff"
            : $"take cover standoffs of {Up(mount.CoverStandoff.Value + more):0.0 mm}";
    }
}
