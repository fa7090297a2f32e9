using Boardwright.Analyses;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;

namespace Boardwright.Rules;

/// <summary>Parts must not meet each other, the deck or the road.</summary>
static class GeometryRules
{
    static readonly Length Touch = Length.FromMillimetres(3);
    static readonly Length BetweenCans = Length.FromMillimetres(3);
    static readonly Length LeastAboveRoad = Length.FromMillimetres(12);
    static readonly Length LeastUnderBox = Length.FromMillimetres(20);
    static readonly Length TruckReach = Length.FromMillimetres(50);
    static readonly Angle LeastLean = Angle.FromDegrees(8);
    static readonly Angle LeastBreakover = Angle.FromDegrees(8);

    /// <summary>Two motors fit side by side.</summary>
    public static Rule<BoardAnalysis> MotorsSideBySide { get; } = new(
        "fit.motors_side_by_side", "motor.can_length", "Two motors on one side of an axle do not meet in the middle.",
        "2 can_length + 3 mm must be at most hanger_width − 2 (plate_from_wheel + plate_thickness).",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (e.IsHub || !parts.Mount.IsChosen || DrivenAxle.MotorsOnIt(needs, parts) < 2)
                return null;
            var can = needs.Read(parts.Motor.CanLength);
            var hanger = needs.Read(DrivenAxle.TruckOf(parts).HangerWidth);
            var plate = needs.Read(parts.Mount.PlateFromWheel) + needs.Read(parts.Mount.PlateThickness);
            if (needs.Unmet)
                return null;
            var gap = hanger - plate * 2 - can * 2;
            var (value, limit) = (Amount.Create(gap, "mm"), Amount.Create(BetweenCans, "mm"));
            return gap >= BetweenCans
                ? [MotorsSideBySide!.Found(Level.Fine, $"{gap:0.0 mm} stay between the two cans.", value: value, limit: limit)]
                : [MotorsSideBySide!.Found(Level.Stop,
                    gap.Si < 0 ? (FormattableString)$"The two cans overlap by {-gap:0.0 mm} in the middle of the axle." : $"Only {gap:0.0 mm} stay between the two cans.",
                    $"Sit one motor ahead of the axle and one behind, take cans of at most {(hanger - plate * 2 - BetweenCans) / 2:0.0 mm}, or a hanger of at least {hanger - gap + BetweenCans:0.0 mm}.", value, limit)];
        });

    /// <summary>The motor clears the leaned deck.</summary>
    public static Rule<BoardAnalysis> MotorClearsDeck { get; } = new(
        "fit.motor_deck", "drive.mount_angle", "The motors clear the deck when it is leaned to the stop.",
        "Clearance = deck above axle − |y| tan φ − (C sin α + can/2) at the can's outer end, with the lean stop φ, the mount angle α and the shafts' distance C. Below 3 mm paint goes, below zero the deck hits a motor in a turn.",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (e.IsHub || !parts.Mount.IsChosen)
                return null;
            var truck = DrivenAxle.TruckOf(parts);
            var centre = needs.Read(e.Centre);
            var can = needs.Read(parts.Motor.CanDiameter);
            var angle = needs.Read(e.MountAngle);
            var lean = needs.Read(truck.LeanStop);
            var hanger = needs.Read(truck.HangerWidth);
            var plate = needs.Read(parts.Mount.PlateFromWheel) + needs.Read(parts.Mount.PlateThickness);
            var placement = needs.Read(parts.Drive.Placement);
            var deck = DrivenAxle.DeckAboveAxle(needs, parts, placement == Placement.Ahead);
            var width = parts.Deck.Width.Or(Length.FromMetres(1));
            if (needs.Unmet)
                return null;
            if (placement == Placement.Behind)
            {
                // Behind the axle the deck ends somewhere; beyond its end nothing can be hit.
                var tail = needs.Read(parts.Deck.TailOverhang);
                if (needs.Unmet)
                    return null;
                if (tail <= new MotorPlace(centre, angle, can).Near)
                    return [MotorClearsDeck!.Found(Level.Fine, $"The deck ends {tail:0 mm} behind the axle, before the motors begin.")];
            }

            var outer = hanger / 2 - plate;
            var sideways = outer < width / 2 ? outer : width / 2;
            Length Clearance(Angle a, Length c) => new MotorPlace(c, a, can).UnderDeck(deck, sideways, lean);
            var free = Clearance(angle, centre);
            // The other angles are said beside the one that is meant, so that the builder need not try them one by one.
            FormattableString AtEveryAngle(FormattableString meant) => $"{Phrase.Join([meant, .. (parts.Mount.Angles.IsKnown ? parts.Mount.Angles.Value.Items : []).Where(a => Math.Abs(a.Si - angle.Si) > 1e-9).Select(Elsewhere)])}";
            Phrase Elsewhere(Angle a) => Clearance(a, centre) is var c && c.Si < 0
                ? (FormattableString)$"At {a:0 deg} they would meet by {-c:0.0 mm}."
                : (FormattableString)$"At {a:0 deg} {c:0.0 mm} would stay.";
            var (value, limit) = (Amount.Create(free, "mm"), Amount.Create(Touch, "mm"));
            if (free >= Touch)
                return [MotorClearsDeck!.Found(Level.Fine, AtEveryAngle($"At {angle:0 deg} the motors stay {free:0.0 mm} clear of a deck leaned to {lean:0 deg}."), value: value, limit: limit)];

            var others = parts.Mount.Angles.IsKnown
                ? parts.Mount.Angles.Value.Items.Where(a => a.Si != angle.Si && Clearance(a, centre) >= Touch)
                .OrderByDescending(a => Clearance(a, centre).Si).ToArray()
                : [];
            FormattableString remedy;
            Change? mend = null;
            var riser = Touch - free;
            if (others.Length > 0)
            {
                remedy = $"Mount the motors at {others[0]:0 deg}: there they clear by {Clearance(others[0], centre):0.0 mm}.";
                mend = new Change("drive.mount_angle", $"{others[0]:0.## deg}");
            }
            else
            {
                // In the slot, the end that brings the can away from the deck.
                var ends = new[] { parts.Mount.CentreMin, parts.Mount.CentreMax }.Where(k => k.IsKnown).Select(k => k.Value)
                    .OrderByDescending(c => Clearance(angle, c).Si).ToArray();
                var leaned = LeanThatClears(deck, sideways, new MotorPlace(centre, angle, can));
                remedy = ends.Length > 0 && Clearance(angle, ends[0]) >= Touch
                    ? (FormattableString)$"Sit the motors at {ends[0]:0.0 mm} from the axle: there they clear by {Clearance(angle, ends[0]):0.0 mm}; the belt must then be chosen for that distance."
                    : leaned >= LeastLean
                        ? (FormattableString)$"No angle or slot position of this mount clears. A riser of {riser:0.0 mm} under the trucks does, or a lean stop of {leaned:0 deg} by harder or taller bushings."
                        : $"No angle or slot position of this mount clears. A riser of {riser:0.0 mm} under the trucks does, or cans that are smaller by as much.";
            }

            return
            [
                MotorClearsDeck!.Found(free.Si < 0 ? Level.Stop : Level.Fix,
                    AtEveryAngle(free.Si < 0
                        ? (FormattableString)$"At {angle:0 deg} a deck leaned to {lean:0 deg} meets the motors {-free:0.0 mm} before its stop."
                        : $"At {angle:0 deg} only {free:0.0 mm} stay between the motors and a deck leaned to {lean:0 deg}."),
                    remedy, value, limit, mend: mend),
            ];
        });

    /// <summary>The deck does not touch the wheels.</summary>
    public static Rule<BoardAnalysis> NoWheelBite { get; } = new(
        "fit.wheel_bite", "wheels.diameter", "The deck does not touch the wheels when it is leaned to the stop.",
        "Where the deck covers the wheels, clearance = deck above axle − |y| tan φ − r at the deck's edge or the wheel's outer face, whichever is nearer to the middle. A wheel that touches the deck stops the board and throws the rider.",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            var found = new List<Finding>();
            var mounting = needs.Read(parts.Deck.Mounting);
            var width = needs.Read(parts.Deck.Width);
            var radius = needs.Read(e.WheelRadius);
            var wheel = needs.Read(parts.Wheels.Width);
            foreach (var (name, truck) in new[] { ("front", parts.FrontTruck), ("rear", parts.RearTruck) })
            {
                var lean = needs.Read(truck.LeanStop);
                var hanger = needs.Read(truck.HangerWidth);
                var height = needs.Read(truck.Height);
                var thickness = mounting == Mounting.DropThrough ? needs.Read(parts.Deck.Thickness) : default;
                if (needs.Unmet)
                    continue;
                if (width <= hanger)
                {
                    found.Add(NoWheelBite!.Found(Level.Fine, $"The deck is {width:0 mm} wide and lies inside the {name} wheels.", where: $"{name}_truck.lean_stop"));
                    continue;
                }

                var edge = width / 2;
                var outer = hanger / 2 + wheel;
                var sideways = edge < outer ? edge : outer;
                var deck = height - thickness;
                var free = deck - sideways * Math.Tan(lean.Radians) - radius;
                var (value, limit) = (Amount.Create(free, "mm"), Amount.Create(Touch, "mm"));
                if (free >= Touch)
                {
                    found.Add(NoWheelBite!.Found(Level.Fine, $"Leaned to {lean:0 deg} the deck stays {free:0.0 mm} above the {name} wheels.", value: value, limit: limit, where: $"{name}_truck.lean_stop"));
                }
                else if (mounting == Mounting.DropThrough)
                {
                    found.Add(NoWheelBite!.Found(Level.Measure, $"A drop-through deck runs its {name} wheels in cut-outs whose shape is not in the file; without them they would meet by {-free:0.0 mm}.",
                        $"Lean the deck by hand to both stops and look at all four wheels.", where: $"{name}_truck.lean_stop"));
                }
                else
                {
                    found.Add(NoWheelBite!.Found(free.Si < 0 ? Level.Stop : Level.Fix,
                        free.Si < 0 ? (FormattableString)$"Leaned to {lean:0 deg} the deck meets the {name} wheels {-free:0.0 mm} before its stop." : $"Leaned to {lean:0 deg} only {free:0.0 mm} stay above the {name} wheels.",
                        $"Put a riser of {Touch - free:0.0 mm} under the trucks, take wheels {(Touch - free) * 2:0.0 mm} smaller in diameter, or cut wheel wells of {Touch - free:0.0 mm}.", value, limit, $"{name}_truck.lean_stop"));
                }
            }

            return found;
        });

    /// <summary>The motor clears the road.</summary>
    public static Rule<BoardAnalysis> MotorClearsRoad { get; } = new(
        "fit.ground_motor", "motor.can_diameter", "At least 12 mm stay between the motors and the road.",
        "Clearance = r + C sin α − can/2. Boards of the trade ride with 12 to 20 mm there; a kerb stone's edge or a cable cover is higher.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            if (e.IsHub || !e.Board.Parts.Mount.IsChosen)
                return null;
            var radius = needs.Read(e.WheelRadius);
            var place = needs.Read(e.MotorPlace);
            if (needs.Unmet)
                return null;
            var free = place.AboveRoad(radius);
            return [AboveRoad(MotorClearsRoad!, "the motors", $"cans {(LeastAboveRoad - free) * 2:0.0 mm} smaller in diameter, or motors mounted {LeastAboveRoad - free:0.0 mm} higher", free, LeastAboveRoad)];
        });

    /// <summary>The wheel pulley clears the road.</summary>
    public static Rule<BoardAnalysis> PulleyClearsRoad { get; } = new(
        "fit.ground_pulley", "wheel_pulley.teeth", "At least 12 mm stay between the wheel pulleys and the road.",
        "Clearance = r − half the flange's diameter (or of the teeth and the belt on them where no flange is given).",
        Sources.CommonPractice,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var radius = needs.Read(e.WheelRadius);
            var pulley = e.Board.Parts.WheelPulley;
            var across = pulley.FlangeDiameter.IsKnown ? needs.Read(pulley.FlangeDiameter) : needs.Read(e.WheelPulleyOverBelt);
            if (needs.Unmet)
                return null;
            var free = radius - across / 2;
            return [AboveRoad(PulleyClearsRoad!, "the wheel pulleys", $"wheel pulleys {(LeastAboveRoad - free) * 2:0.0 mm} smaller over their flanges", free, LeastAboveRoad)];
        });

    /// <summary>The box clears the road and breaks over.</summary>
    public static Rule<BoardAnalysis> BoxClearsRoad { get; } = new(
        "fit.ground_box", "box.inner_depth", "The box clears a hump: breakover angle of at least 8°, and 20 mm above the road.",
        "Clearance = r + deck above axle − box depth and floor − the deck's bend under the rider; breakover angle = 2 atan(2 c / wheelbase).",
        Sources.CommonPractice,
        (e, needs) =>
        {
            if (!e.Board.Parts.Box.IsChosen)
                return null;
            var ground = needs.Read(e.BoxAboveRoad);
            var wheelbase = needs.Read(e.Wheelbase);
            if (needs.Unmet)
                return null;
            if (ground < LeastUnderBox)
                return [AboveRoad(BoxClearsRoad!, "the box", $"risers of {LeastUnderBox - ground:0.0 mm} under the trucks, or a box as much shallower", ground, LeastUnderBox)];
            var breakover = RoadClearance.Breakover(ground, wheelbase);
            var (value, limit) = (Amount.Create(breakover, "deg"), Amount.Create(LeastBreakover, "deg"));
            var needed = wheelbase / 2 * Math.Tan(LeastBreakover.Radians / 2);
            return breakover >= LeastBreakover
                ? [BoxClearsRoad!.Found(Level.Fine, $"{ground:0 mm} stay under the loaded box; the board breaks over {breakover:0.0 deg}.", value: value, limit: limit)]
                : [BoxClearsRoad!.Found(Level.Fix, $"{ground:0 mm} under the loaded box let the board break over only {breakover:0.0 deg}: it sits down on the first speed hump.",
                    $"A box {needed - ground:0.0 mm} shallower, wheels {(needed - ground) * 2:0.0 mm} larger in diameter, or risers of {needed - ground:0.0 mm}.", value, limit)];
        });

    /// <summary>The box fits between the trucks.</summary>
    public static Rule<BoardAnalysis> BoxBetweenTrucks { get; } = new(
        "fit.box_between_trucks", "box.inner_length", "The box fits on the flat underside, between trucks and motors.",
        "Outer length = inner + 2 (wall + flange); it must fit the flat underside, and the wheelbase less 50 mm for each base plate, or less the motors' reach where they sit between the trucks.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!parts.Box.IsChosen)
                return null;
            var around = (needs.Read(parts.Box.Wall) + needs.Read(parts.Box.FlangeWidth)) * 2;
            var length = needs.Read(parts.Box.InnerLength) + around;
            var width = needs.Read(parts.Box.InnerWidth) + around;
            var flatLength = needs.Read(parts.Deck.UndersideFlatLength);
            var flatWidth = needs.Read(parts.Deck.UndersideFlatWidth);
            var wheelbase = needs.Read(e.Wheelbase);
            var ahead = !e.IsHub && parts.Mount.IsChosen && parts.Drive.Placement is { IsKnown: true, Value: Placement.Ahead };
            var motor = ahead ? needs.Read(e.MotorPlace).Reach + Length.FromMillimetres(5) : default;
            if (needs.Unmet)
                return null;
            var driven = parts.Drive.Driven.Or(Driven.Rear) == Driven.Both ? 2 : 1;
            var reach = motor > TruckReach ? motor : TruckReach;
            var between = wheelbase - reach * driven - TruckReach * (2 - driven);
            var room = flatLength < between ? flatLength : between;
            var found = new List<Finding>
            {
                length <= room
                    ? BoxBetweenTrucks!.Found(Level.Fine, $"The box is {length:0 mm} long over its flanges; {room - length:0 mm} stay free.", value: Amount.Create(length, "mm"), limit: Amount.Create(room, "mm"))
                    : BoxBetweenTrucks!.Found(Level.Stop, $"The box is {length:0 mm} long over its flanges; there is room for {room:0 mm} {(flatLength < between ? "of flat underside" : "between the trucks")}.",
                        $"Take a box {length - room:0 mm} shorter, or a deck with {length - room:0 mm} more {(flatLength < between ? "flat underside" : "wheelbase")}.", Amount.Create(length, "mm"), Amount.Create(room, "mm")),
            };
            if (width > flatWidth)
            {
                found.Add(BoxBetweenTrucks.Found(Level.Stop, $"The box is {width:0 mm} wide over its flanges; the underside is flat for {flatWidth:0 mm}.",
                    $"Take a box {width - flatWidth:0 mm} narrower, or flanges of {parts.Box.FlangeWidth.Value - (width - flatWidth) / 2:0.0 mm}.", Amount.Create(width, "mm"), Amount.Create(flatWidth, "mm"), "box.inner_width"));
            }

            return found;
        });

    /// <summary>Pack and controllers go into the box.</summary>
    public static Rule<BoardAnalysis> BoxHoldsParts { get; } = new(
        "fit.box_contents", "box.inner_depth", "Pack and controllers go into the box, one behind the other or side by side.",
        "Only the outlines are compared: height against depth, and lengths end to end or widths side by side. Bend radius, foam and fittings need room besides.",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!parts.Box.IsChosen)
                return null;
            var (length, width, depth) =
                (needs.Read(parts.Box.InnerLength), needs.Read(parts.Box.InnerWidth), needs.Read(parts.Box.InnerDepth));
            var pack = (L: needs.Read(parts.Pack.Length), W: needs.Read(parts.Pack.Width), H: needs.Read(parts.Pack.Height));
            var controller = (L: needs.Read(parts.Controller.Length), W: needs.Read(parts.Controller.Width),
                H: needs.Read(parts.Controller.Height));
            if (needs.Unmet)
                return null;
            var count = PartSlot.ControllerCount(parts);
            var found = new List<Finding>();
            var room = BoxRoom.Compute(parts.Box, parts.Controller, count, pack.L, pack.W, pack.H);
            var (highest, endToEnd, beside) = (room.Highest, room.EndToEnd, room.Beside);
            if (!room.IsDeepEnough)
            {
                found.Add(BoxHoldsParts!.Found(Level.Stop, $"The {(pack.H > controller.H ? "pack" : "controller")} is {highest:0 mm} high, the box {depth:0 mm} deep.",
                    $"Take a box at least {highest + Length.FromMillimetres(3):0 mm} deep, which leaves 3 mm for foam.", Amount.Create(highest, "mm"), Amount.Create(depth, "mm")));
            }

            if (!room.IsLargeEnough)
            {
                found.Add(BoxHoldsParts!.Found(Level.Stop, $"Pack and controllers are {endToEnd:0 mm} long end to end and {beside:0 mm} wide side by side; the box is {length:0 mm} by {width:0 mm} inside.",
                    $"Take a box of at least {endToEnd:0 mm} by {(pack.W > controller.W ? pack.W : controller.W):0 mm}, or {(pack.L > controller.L * count ? pack.L : controller.L * count):0 mm} by {beside:0 mm}.", Amount.Create(endToEnd, "mm"), Amount.Create(length, "mm"), "box.inner_length"));
            }

            return found.Count > 0 ? found
                : [BoxHoldsParts!.Found(Level.Fine, $"Pack and controllers go in with {depth - highest:0 mm} above them.", value: Amount.Create(highest, "mm"), limit: Amount.Create(depth, "mm"))];
        });

    /// <summary>Every rule about clearances.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [MotorsSideBySide, MotorClearsDeck, NoWheelBite, MotorClearsRoad, PulleyClearsRoad, BoxClearsRoad,
        BoxBetweenTrucks, BoxHoldsParts];

    static Angle LeanThatClears(Length deck, Length sideways, MotorPlace place) =>
        Angle.FromDegrees(Math.Floor(
        180 / Math.PI * Math.Atan(Math.Max(0, (deck - place.Height - place.CanDiameter / 2 - Touch) / sideways))));

    static Finding AboveRoad(Rule<BoardAnalysis> rule, string what, FormattableString instead, Length free, Length least)
    {
        var (value, limit) = (Amount.Create(free, "mm"), Amount.Create(least, "mm"));
        return free >= least
            ? rule.Found(Level.Fine, $"{free:0 mm} stay between {what} and the road.", value: value, limit: limit)
            : rule.Found(free.Si <= 0 ? Level.Stop : Level.Fix, $"Only {free:0 mm} stay between {what} and the road.",
                $"Wheels {(least - free) * 2:0.0 mm} larger in diameter give {least:0 mm}; so do {new Phrase(instead)}.", value, limit);
    }
}
