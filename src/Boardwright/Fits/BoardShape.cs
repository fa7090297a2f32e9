using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Fits;

/// <summary>The deck as it lies on its trucks.</summary>
/// <param name="Back">Its tail end, x.</param>
/// <param name="Front">Its nose end, x.</param>
/// <param name="Width">Greatest width.</param>
/// <param name="Thickness">Thickness.</param>
/// <param name="Underside">Height of its underside where the trucks are bolted.</param>
/// <param name="Drop">How much lower its platform hangs; zero where it has none.</param>
/// <param name="PlatformBack">Where the flat underside begins, x.</param>
/// <param name="PlatformFront">Where it ends.</param>
/// <param name="IsGuess">Whether a dimension of it is not in the file.</param>
public sealed record DeckShape(
    Length Back, Length Front, Length Width, Length Thickness, Length Underside, Length Drop, Length PlatformBack, Length PlatformFront,
    bool IsGuess)
{
    /// <summary>Height of the underside of the platform, or of the whole deck where it has none.</summary>
    public Length Platform => Underside - Drop;
}

/// <summary>One axle with its truck and wheels.</summary>
/// <param name="Slot">Key of its truck.</param>
/// <param name="X">Where it is.</param>
/// <param name="IsDriven">Whether motors turn its wheels.</param>
/// <param name="HangerWidth">Width of the hanger.</param>
/// <param name="MountHeight">Height of the truck's mounting plane above the axle.</param>
/// <param name="LeanStop">Greatest lean.</param>
/// <param name="Axle">The axle.</param>
/// <param name="Wheels">Its wheels, left and right.</param>
/// <param name="Bearing">Diameter of the wheels' bearings.</param>
/// <param name="IsGuess">Whether a dimension of the truck is not in the file.</param>
public sealed record AxleShape(
    string Slot, Length X, bool IsDriven, Length HangerWidth, Length MountHeight, Angle LeanStop, RoundBody Axle,
    IReadOnlyList<RoundBody> Wheels, Length Bearing, bool IsGuess);

/// <summary>One motor with what carries its torque to the wheel.</summary>
/// <param name="Axle">Number of its axle: 0 the rear one, 1 the front one.</param>
/// <param name="Side">The side on which its wheel is.</param>
/// <param name="Direction">1 where it sits ahead of its axle, −1 where behind, 0 in the wheel.</param>
/// <param name="Can">The can.</param>
/// <param name="Shaft">The shaft beyond the face that is bolted to the mount; none in a wheel.</param>
/// <param name="Plate">The mount's plate, as wide and as high as axle and can; none where no mount is chosen.</param>
/// <param name="Pulley">The motor pulley, over its flanges.</param>
/// <param name="WheelPulley">The wheel pulley, over its flanges or over the belt where it has none.</param>
/// <param name="Belt">The belt, its pitch path and its edges; none where it does not go around.</param>
/// <param name="Gears">The pair of gears.</param>
public sealed record MotorShape(
    int Axle, BoardSide Side, int Direction, RoundBody Can, RoundBody? Shaft, FlatBody? Plate, RoundBody? Pulley, RoundBody? WheelPulley,
    BeltShape? Belt, GearShape? Gears);

/// <summary>A belt around two pulleys.</summary>
/// <param name="MotorRadius">Pitch radius on the motor.</param>
/// <param name="WheelRadius">Pitch radius on the wheel.</param>
/// <param name="From">Its right edge, the lesser y.</param>
/// <param name="To">Its left edge.</param>
/// <param name="Teeth">Teeth of motor pulley and wheel pulley; 0 where not known.</param>
/// <param name="IsGuess">Whether a dimension of it is not in the file.</param>
public sealed record BeltShape(Length MotorRadius, Length WheelRadius, Length From, Length To, (int Motor, int Wheel) Teeth, bool IsGuess);

/// <summary>A pair of gears: their pitch circles follow from the shafts' distance and the ratio.</summary>
/// <param name="MotorGear">The gear on the motor.</param>
/// <param name="WheelGear">The gear on the wheel.</param>
public sealed record GearShape(RoundBody MotorGear, RoundBody WheelGear);

/// <summary>A dimension that is not in the file and was taken as is usual, so that there is something to look at.</summary>
/// <param name="Key">Key of the entry.</param>
/// <param name="Value">What was taken, as it would be written.</param>
public sealed record AssumedSize(string Key, Phrase Value);

/// <summary>Every part of a board that can be drawn, in the board's frame, standing level and unloaded.</summary>
/// <remarks>
/// What the file does not say is taken as is usual in the trade and listed in <see cref="Guesses"/>; a part that was not chosen, or of
/// which nothing can be said, is left out and named in <see cref="LeftOut"/>.
/// The deck lies level at the height of the driven truck. What stands along the driven axle lies where <see cref="AxialStackUp"/> has it; a
/// single motor is drawn on the right.
/// </remarks>
/// <validity>Two axles, motors on their hangers, parts with their faces along and across the board. The deck's outline at its ends, the
/// hanger's shape and the wheel's flanks are no entries of a board.</validity>
/// <source cref="Sources.Geometry"/>
/// <source cref="Sources.CommonPractice"/>
public sealed class BoardShape
{
    readonly List<AssumedSize> guesses = [];
    readonly List<string> leftOut = [];
    readonly Board board;
    bool isCentreGuessed;

    BoardShape(Board board, Answer<BeltDrive> belt)
    {
        this.board = board;
        var parts = board.Parts;
        Driven = parts.Drive.Driven.Or(Parts.Driven.Rear);
        WheelRadius = AssumeUnknown(parts.Wheels.Diameter, 90) / 2;
        Wheelbase = WheelbaseOf(parts.Deck);
        MountAngle = parts.Drive.MountAngle.IsKnown ? parts.Drive.MountAngle.Value
            : parts.Mount.Angles.IsKnown ? parts.Mount.Angles.Value.Items[0]
            : default;
        var mayBeBehind = parts.Drive.Placement.Or(Placement.Behind) == Placement.Behind;
        Axles = [AxleOf(parts.RearTruck, "rear_truck", default, Driven != Parts.Driven.Front),
            AxleOf(parts.FrontTruck, "front_truck", Wheelbase, Driven != Parts.Driven.Rear)];
        Motors = MotorsOf(belt, mayBeBehind ? -1 : 1);
        Axles = [.. Axles.Select((axle, i) => WithWheels(axle, i))];
        Motors = [.. Motors.Select(InWheel)];
        Deck = DeckOf(parts.Deck);
        (Box, Contents) = BoxOf(parts);
    }

    /// <summary>The deck.</summary>
    public DeckShape Deck { get; }
    /// <summary>The rear axle and the front axle.</summary>
    public IReadOnlyList<AxleShape> Axles { get; }
    /// <summary>The motors.</summary>
    public IReadOnlyList<MotorShape> Motors { get; }
    /// <summary>The box over its walls; none where none is chosen.</summary>
    public BoxShape? Box { get; }
    /// <summary>Pack and controllers in the box.</summary>
    public IReadOnlyList<FlatBody> Contents { get; }
    /// <summary>Distance between the axles.</summary>
    public Length Wheelbase { get; }
    /// <summary>Rolling radius.</summary>
    public Length WheelRadius { get; }
    /// <summary>Distance between motor shaft and axle; zero where motors sit in the wheels.</summary>
    public Length Centre { get; private set; }
    /// <summary>Angle of the motors above the horizontal.</summary>
    public Angle MountAngle { get; }
    /// <summary>Which axle is driven; the rear one where the file does not say.</summary>
    public Driven Driven { get; }
    /// <summary>The driven axle, the rear one when both are.</summary>
    public AxleShape DrivenAxle => Axles[Driven == Parts.Driven.Front ? 1 : 0];
    /// <summary>Motors that turn the wheels of <see cref="DrivenAxle"/>.</summary>
    public IEnumerable<MotorShape> MotorsOnDrivenAxle => Motors.Where(m => m.Axle == (Driven == Parts.Driven.Front ? 1 : 0));

    /// <summary>Whether a motor lies under the deck: ahead of its axle always, behind it where the deck reaches beyond the motor's near
    /// side.</summary>
    public bool IsUnderDeck(MotorShape motor)
    {
        ArgumentNullException.ThrowIfNull(motor);
        return motor.Axle == 0 ? motor.Direction > 0 || Deck.Back < motor.Can.X + motor.Can.Radius
            : motor.Direction < 0 || Deck.Front > motor.Can.X - motor.Can.Radius;
    }

    /// <summary>Height of the deck's underside over a motor: between the trucks a platform hangs lower.</summary>
    public Length UndersideOver(MotorShape motor)
    {
        ArgumentNullException.ThrowIfNull(motor);
        return motor.Direction == (motor.Axle == 0 ? 1 : -1) ? Deck.Platform : Deck.Underside;
    }

    /// <summary>Dimensions that are not in the file, with what was taken for them.</summary>
    public IReadOnlyList<AssumedSize> Guesses => guesses;
    /// <summary>Keys of the places that are left out.</summary>
    public IReadOnlyList<string> LeftOut => leftOut;

    /// <summary>Puts a board together.</summary>
    /// <param name="board">The board.</param>
    /// <param name="belt">Its belt on the pulleys.</param>
    public static BoardShape Compute(Board board, Answer<BeltDrive> belt)
    {
        ArgumentNullException.ThrowIfNull(board);
        ArgumentNullException.ThrowIfNull(belt);
        return new(board, belt);
    }

    Length AssumeUnknown(Known<Length> known, double millimetres)
    {
        if (known.IsKnown)
            return known.Value;
        var usual = Length.FromMillimetres(millimetres);
        Guessed(known.Key, $"{usual:0 mm}");
        return usual;
    }

    void Guessed(string key, FormattableString value)
    {
        if (key.Length > 0 && !guesses.Exists(g => g.Key == key))
            guesses.Add(new(key, value));
    }

    Length WheelbaseOf(Deck deck)
    {
        if (deck.Wheelbase.IsKnown)
            return deck.Wheelbase.Value.Items[0];
        var usual = deck.Length.IsKnown ? deck.Length.Value * 0.8 : Length.FromMillimetres(740);
        Guessed(deck.Wheelbase.Key, $"{usual:0 mm}");
        return usual;
    }

    DeckShape DeckOf(Deck deck)
    {
        var isGuess = !(deck.Length.IsKnown && deck.Width.IsKnown && deck.Wheelbase.IsKnown);
        var length = AssumeUnknown(deck.Length, (Wheelbase / 0.8).Millimetres);
        var tail = AssumeUnknown(deck.TailOverhang, Max(0, ((length - Wheelbase) / 2).Millimetres));
        var thickness = AssumeUnknown(deck.Thickness, 12);
        var drop = deck.Mounting is { IsKnown: true, Value: Mounting.DropPlatform } ? AssumeUnknown(deck.PlatformDrop, 15) : default;
        var underside = DrivenAxle.MountHeight - (deck.Mounting is { IsKnown: true, Value: Mounting.DropThrough } ? thickness : default);
        var flat = AssumeUnknown(deck.UndersideFlatLength, (Wheelbase * 0.75).Millimetres);
        var middle = Wheelbase / 2;
        return new(-tail, length - tail, AssumeUnknown(deck.Width, 230), thickness, underside, drop, middle - flat / 2, middle + flat / 2,
            isGuess);
    }

    AxleShape AxleOf(Truck truck, string slot, Length x, bool isDriven)
    {
        var isGuess = !(truck.HangerWidth.IsKnown && truck.Height.IsKnown);
        var hanger = AssumeUnknown(truck.HangerWidth, 180);
        var axle = AssumeUnknown(truck.AxleDiameter, 8);
        var half = hanger / 2 + AssumeUnknown(truck.AxleOverhang, 60);
        var stop = truck.LeanStop;
        if (!stop.IsKnown)
            Guessed(stop.Key, $"{Usual.Lean:0 deg}");
        return new(slot, x, isDriven, hanger, AssumeUnknown(truck.Height, 75), stop.Or(Usual.Lean),
            new(slot, x, default, axle / 2, -half, half, isGuess), [], default, isGuess);
    }

    AxleShape WithWheels(AxleShape axle, int number)
    {
        var wheel = board.Parts.Wheels;
        var isGuess = !(wheel.Diameter.IsKnown && wheel.Width.IsKnown);
        var width = AssumeUnknown(wheel.Width, 60);
        var bearing = wheel.Bearing.IsKnown && BallBearing.Parse(wheel.Bearing.Value) is { } named ? named.OutsideDiameter
            : Length.FromMillimetres(22);
        RoundBody On(BoardSide side)
        {
            var inner = InnerFace(axle, number, side);
            return RoundBody.On(side, "wheels", (axle.X, default), WheelRadius, inner, inner + width, isGuess);
        }

        return axle with { Wheels = [On(BoardSide.Left), On(BoardSide.Right)], Bearing = bearing };
    }

    /// <summary>Where a wheel begins: at the hanger's end, or beyond what of its pulley stands out of it.</summary>
    Length InnerFace(AxleShape axle, int number, BoardSide side)
    {
        var end = axle.HangerWidth / 2;
        var motor = Motors.FirstOrDefault(m => m.Axle == number && m.Side == side);
        if (motor?.Gears is { WheelGear: var gear })
        {
            var cover = (side == BoardSide.Left ? gear.To : -gear.From) + AxialStackUp.Washer;
            return cover > end ? cover : end;
        }

        if (motor?.WheelPulley is not { } pulley)
            return end;
        var (needs, parts) = (new Needs(), AlongAxle());
        var seat = DimensionChain.Exact(board.Parts.Wheels.SeatOffset.Or(default));
        return (side == BoardSide.Left ? pulley.From : -pulley.To)
            + AxleStackUp.StandOut(PulleyAlong.Read(needs, parts.WheelPulley), seat).Nominal;
    }

    List<MotorShape> MotorsOf(Answer<BeltDrive> belt, int direction)
    {
        var parts = board.Parts;
        if (!parts.Motor.IsChosen)
        {
            leftOut.Add("motor");
            return [];
        }

        var count = Clamp(parts.Drive.Motors.Or(1), 1, 4);
        var kind = parts.Drive.Kind.Or(DriveKind.Belt);
        int[] axles = Driven switch
        {
            Parts.Driven.Front => [0, count],
            Parts.Driven.Both => [(count + 1) / 2, count / 2],
            _ => [count, 0],
        };
        var path = kind == DriveKind.Belt ? PathOf(belt) : null;
        isCentreGuessed = !(kind == DriveKind.Belt ? belt.IsKnown : parts.Mount.CentreMin.IsKnown);
        if (kind != DriveKind.Hub)
            Centre = path?.CentreDistance ?? CentreOf(parts.Mount);
        var motors = new List<MotorShape>();
        for (var axle = 0; axle < axles.Length; axle++)
        {
            for (var i = 0; i < axles[axle]; i++)
            {
                var side = i % 2 == 0 ? BoardSide.Right : BoardSide.Left;
                // More than one for a wheel: the second sits across the axle from the first.
                var ahead = (axle == 0 ? direction : -direction) * (i < 2 ? 1 : -1);
                motors.Add(kind == DriveKind.Hub ? HubOf(axle, side) : MotorOf(axle, side, ahead, kind, path));
            }
        }

        return motors;
    }

    BeltPath? PathOf(Answer<BeltDrive> belt)
    {
        if (belt.IsKnown)
            return belt.Value.Path;
        // Without a belt that fits, the slot says how far apart the shafts are.
        if (BeltDrive.Pulleys(new Needs(), board) is not { } pulleys)
            return null;
        var centre = CentreOf(board.Parts.Mount);
        return centre * 2 > Length.FromMetres(Abs((pulleys.Wheel.PitchDiameter - pulleys.Motor.PitchDiameter).Metres))
            ? new(pulleys.Motor, pulleys.Wheel, centre) : null;
    }

    Length CentreOf(Mount mount)
    {
        if (mount.CentreMin.IsKnown)
            return mount.CentreMin.Value;
        if (mount.CentreMax.IsKnown)
            return mount.CentreMax.Value;
        var usual = WheelRadius + Length.FromMillimetres(20);
        Guessed(mount.CentreMin.Key, $"{usual:0 mm}");
        return usual;
    }

    MotorShape HubOf(int axle, BoardSide side)
    {
        var motor = board.Parts.Motor;
        var isGuess = !(motor.CanDiameter.IsKnown && motor.CanLength.IsKnown);
        var length = AssumeUnknown(motor.CanLength, 50);
        return new(axle, side, 0,
            RoundBody.On(side, "motor", (Axles[axle].X, default), AssumeUnknown(motor.CanDiameter, 70) / 2, default, length, isGuess), null,
            null, null, null, null, null);
    }

    // A motor in its wheel lies in the wheel's middle, which is known only once the wheel is placed.
    MotorShape InWheel(MotorShape motor)
    {
        if (motor.Direction != 0)
            return motor;
        var wheel = Axles[motor.Axle].Wheels.First(w => w.Middle.Si * (int)motor.Side >= 0);
        var half = (motor.Can.To - motor.Can.From) / 2;
        return motor with { Can = motor.Can with { From = wheel.Middle - half, To = wheel.Middle + half } };
    }

    MotorShape MotorOf(int number, BoardSide side, int ahead, DriveKind kind, BeltPath? path)
    {
        var (parts, axle) = (board.Parts, Axles[number]);
        var (motor, mount) = (parts.Motor, parts.Mount);
        var place = new MotorPlace(Centre, MountAngle, AssumeUnknown(motor.CanDiameter, 63));
        var at = (X: axle.X + ahead * Cos(MountAngle.Radians) * Centre, Z: place.Height);
        var isGuess = !(motor.CanDiameter.IsKnown && motor.CanLength.IsKnown) || isCentreGuessed;
        var plateOuter = axle.HangerWidth / 2 - (mount.IsChosen ? AssumeUnknown(mount.PlateFromWheel, 10) : Length.FromMillimetres(10));
        var plateInner = plateOuter - (mount.IsChosen ? AssumeUnknown(mount.PlateThickness, 7) : Length.FromMillimetres(7));
        var can = RoundBody.On(side, "motor", at, place.CanDiameter / 2, plateInner - AssumeUnknown(motor.CanLength, 70), plateInner, isGuess);
        var shaft = RoundBody.On(
            side, "motor", at, AssumeUnknown(motor.ShaftDiameter, 8) / 2, plateInner, plateInner + AssumeUnknown(motor.ShaftLength, 34),
            isGuess);
        var reach = place.CanDiameter / 2;
        FlatBody? plate = null;
        if (mount.IsChosen)
        {
            var (back, front) = ahead < 0 ? (at.X - reach, axle.X + Usual.Hanger) : (axle.X - Usual.Hanger, at.X + reach);
            var (low, high) = side == BoardSide.Left ? (plateInner, plateOuter) : (-plateOuter, -plateInner);
            var (bottom, top) = (at.Z - reach, at.Z + reach);
            plate = new("mount", back, front, low, high, bottom < -Usual.Hanger ? bottom : -Usual.Hanger,
                top > Usual.Hanger ? top : Usual.Hanger, !(mount.PlateThickness.IsKnown && mount.PlateFromWheel.IsKnown));
        }
        else
        {
            LeaveOut("mount");
        }

        var bare = new MotorShape(number, side, ahead, can, shaft, plate, null, null, null, null);
        return kind == DriveKind.Gear ? WithGears(bare, axle, at, plateOuter) : WithBelt(bare, axle, at, path);
    }

    MotorShape WithGears(MotorShape motor, AxleShape axle, (Length X, Length Z) at, Length plateOuter)
    {
        var gearbox = board.Parts.Gearbox;
        if (!gearbox.Ratio.IsKnown)
        {
            LeaveOut("gearbox");
            return motor;
        }

        var ratio = gearbox.Ratio.Value.Value;
        // The gears run in the mount's cover; 30 mm where its depth is not known.
        var mount = board.Parts.Mount;
        var depth = mount.CoverDepth.IsKnown ? mount.CoverDepth.Value + mount.CoverStandoff.Or(default) : Length.FromMillimetres(30);
        var outer = plateOuter + depth;
        var isGuess = isCentreGuessed || !mount.CoverDepth.IsKnown;
        return motor with
        {
            Gears = new(
                RoundBody.On(motor.Side, "gearbox", at, Centre / (1 + ratio), plateOuter, outer, isGuess),
                RoundBody.On(motor.Side, "gearbox", (axle.X, default), Centre * (ratio / (1 + ratio)), plateOuter, outer, isGuess)),
        };
    }

    MotorShape WithBelt(MotorShape motor, AxleShape axle, (Length X, Length Z) at, BeltPath? path)
    {
        var (small, large, belt) = (board.Parts.MotorPulley, board.Parts.WheelPulley, board.Parts.Belt);
        // The same sum as in the rules, so that views and findings give the same numbers.
        var (needs, along, end) = (new Needs(), AlongAxle(), axle.HangerWidth / 2);
        var stack = AxialStackUp.Read(needs, along)!;
        var (begin, middle) = (end + AxialStackUp.FromHanger(needs, along).Nominal, end + stack.Plane.Nominal);
        RoundBody? onMotor = null, onWheel = null;
        if (small.IsChosen)
        {
            NoteOffset(small, stack.Pulley.Offset);
            var (inner, outer) = (end + stack.PulleyInner.Nominal, end + stack.PulleyOuter.Nominal);
            onMotor = RoundBody.On(motor.Side, "motor_pulley", at, Across(small, path?.Driving, 26) / 2, inner, outer,
                !(small.Length.IsKnown && path is not null) || isCentreGuessed);
        }
        else
        {
            LeaveOut("motor_pulley");
        }

        if (large.IsChosen)
        {
            NoteOffset(large, PulleyAlong.OffsetOf(needs, along.WheelPulley));
            var outer = begin + along.WheelPulley.Length.Value;
            onWheel = RoundBody.On(motor.Side, "wheel_pulley", (axle.X, default), Across(large, path?.Driven, 60) / 2, begin, outer,
                !(large.Length.IsKnown && path is not null));
        }
        else
        {
            LeaveOut("wheel_pulley");
        }

        BeltShape? around = null;
        if (belt.IsChosen && path is not null)
        {
            var half = along.Belt.Width.Value / 2;
            var (from, to) = motor.Side == BoardSide.Left ? (middle - half, middle + half) : (-middle - half, -middle + half);
            around = new(path.Driving.PitchDiameter / 2, path.Driven.PitchDiameter / 2, from, to, (path.Driving.Teeth, path.Driven.Teeth),
                !belt.Width.IsKnown || isCentreGuessed);
        }
        else
        {
            LeaveOut("belt");
        }

        return motor with { Pulley = onMotor, WheelPulley = onWheel, Belt = around };
    }

    /// <summary>The parts along the driven axle, each dimension that is not in the file taken as is usual.</summary>
    Fitted AlongAxle()
    {
        Known<Length> Filled(Known<Length> known, double millimetres, bool isChosen = true) =>
            known.IsKnown ? known : known.With(isChosen ? AssumeUnknown(known, millimetres) : Length.FromMillimetres(millimetres));
        var (mount, motor, small, large, belt) =
            (board.Parts.Mount, board.Parts.Motor, board.Parts.MotorPulley, board.Parts.WheelPulley, board.Parts.Belt);
        var face = Filled(large.FaceWidth, 16, large.IsChosen);
        return board.Parts with
        {
            Mount = mount with
            {
                PlateFromWheel = Filled(mount.PlateFromWheel, 10, mount.IsChosen),
                PlateThickness = Filled(mount.PlateThickness, 7, mount.IsChosen),
            },
            Motor = motor with { ShaftLength = Filled(motor.ShaftLength, 34) },
            MotorPulley = small with
            {
                Length = Filled(small.Length, 22, small.IsChosen),
                FaceWidth = Filled(small.FaceWidth, face.Value.Millimetres, small.IsChosen),
            },
            WheelPulley = large with { FaceWidth = face, Length = Filled(large.Length, 21, large.IsChosen) },
            Belt = belt with { Width = Filled(belt.Width, 15, belt.IsChosen) },
        };
    }

    void NoteOffset(Pulley pulley, DimensionChain offset)
    {
        if (!pulley.FaceOffset.IsKnown)
            Guessed(pulley.FaceOffset.Key, $"{offset.Nominal:0.0 mm}");
    }

    Length Across(Pulley pulley, PulleyGeometry? geometry, double usual) =>
        pulley.FlangeDiameter.IsKnown ? pulley.FlangeDiameter.Value
        : geometry is not null ? geometry.OutsideDiameter
        : AssumeUnknown(pulley.FlangeDiameter, usual);

    void LeaveOut(string slot)
    {
        if (!leftOut.Contains(slot))
            leftOut.Add(slot);
    }

    (BoxShape? Box, IReadOnlyList<FlatBody> Contents) BoxOf(Fitted parts)
    {
        if (!parts.Box.IsChosen)
        {
            LeaveOut("box");
            return (null, []);
        }

        var box = parts.Box;
        var isGuess = !(box.InnerLength.IsKnown && box.InnerWidth.IsKnown && box.InnerDepth.IsKnown);
        var (length, width, depth) =
            (AssumeUnknown(box.InnerLength, (Wheelbase * 0.65).Millimetres), AssumeUnknown(box.InnerWidth, 150),
            AssumeUnknown(box.InnerDepth, 50));
        var (wall, flange) = (AssumeUnknown(box.Wall, 3), AssumeUnknown(box.FlangeWidth, 12));
        var middle = (FreeFrom(0, 1) + FreeFrom(1, -1)) / 2;
        var (x, y, top) = (length / 2, width / 2, Deck.Platform);
        FlatBody Grown(Length by, Length bottom) => new("box", middle - x - by, middle + x + by, -y - by, y + by, bottom, top, isGuess);
        var shape = new BoxShape(
            Grown(wall, top - depth - wall), Grown(default, top - depth),
            Grown(wall + flange, top - (wall.Si > 0 ? wall : Length.FromMillimetres(2))));
        return (shape, ContentsOf(parts, shape.Inside));
    }

    /// <summary>How near to an axle a box may come, where the motors sit between the trucks or the base plate is.</summary>
    Length FreeFrom(int axle, int inwards)
    {
        var reach = Usual.BasePlate;
        foreach (var motor in Motors.Where(m => m.Axle == axle && m.Direction == inwards))
        {
            var can = (motor.Can.X - Axles[axle].X) * inwards + motor.Can.Radius;
            reach = can > reach ? can : reach;
        }

        return Axles[axle].X + reach * inwards;
    }

    // As the rule on the box's contents has them: end to end, the controllers nearer to the driven axle, or side by side.
    List<FlatBody> ContentsOf(Fitted parts, FlatBody inside)
    {
        var (pack, controller) = (parts.Pack, parts.Controller);
        var hasPack = pack.Length.IsKnown && pack.Width.IsKnown && pack.Height.IsKnown;
        var hasController = controller.Length.IsKnown && controller.Width.IsKnown && controller.Height.IsKnown;
        if (!hasPack)
            LeaveOut("pack");
        if (!hasController)
            LeaveOut("controller");
        var (packLength, packWidth, packHeight) = (pack.Length.Or(default), pack.Width.Or(default), pack.Height.Or(default));
        var (length, width, height) = (controller.Length.Or(default), controller.Width.Or(default), controller.Height.Or(default));
        var count = hasController ? Min(PartSlot.ControllerCount(parts), MostControllers) : 0;
        var (roomLong, roomWide) = (inside.Front - inside.Back, inside.Left - inside.Right);
        var across = width.Si > 0 ? (int)Clamp(Floor(roomWide / width), 1, Max(1, count)) : 1;
        var rows = (count + across - 1) / across;
        var endToEnd = packLength + length * rows;
        var isBeside = hasPack && hasController && endToEnd > roomLong && packWidth + width <= roomWide && packLength <= roomLong
            && length * count <= roomLong;
        var bodies = new List<FlatBody>();
        void Put(string slot, Length back, Length along, Length middle, Length wide, Length high) =>
            bodies.Add(new(slot, back, back + along, middle - wide / 2, middle + wide / 2, inside.Bottom, inside.Bottom + high, false));
        if (isBeside)
        {
            Put("pack", inside.Back + (roomLong - packLength) / 2, packLength, inside.Left - packWidth / 2, packWidth, packHeight);
            for (var i = 0; i < count; i++)
                Put("controller", inside.Back + length * i, length, inside.Right + width / 2, width, height);
            return bodies;
        }

        var spare = roomLong - endToEnd;
        var gap = spare.Si > 0 ? spare / (rows + (hasPack ? 1 : 0) + 1) : default;
        var forward = Driven != Parts.Driven.Front;
        Length Along(Length fromDriven, Length along) => forward ? inside.Back + fromDriven : inside.Front - fromDriven - along;
        for (var i = 0; i < count; i++)
        {
            var (row, column) = (i / across, i % across);
            var inRow = Min(across, count - row * across);
            Put("controller", Along(gap + (length + gap) * row, length), length, width * (column - (inRow - 1) / 2.0), width, height);
        }

        if (hasPack)
            Put("pack", Along(gap + (length + gap) * rows, packLength), packLength, default, packWidth, packHeight);
        return bodies;
    }

    // No board has more; a count beyond it is another's mistake.
    const int MostControllers = 8;

    /// <summary>What is usual where the file says nothing; common practice, no source.</summary>
    static class Usual
    {
        public static Angle Lean { get; } = Angle.FromDegrees(20);

        public static Length Hanger { get; } = Length.FromMillimetres(14);

        public static Length BasePlate { get; } = Length.FromMillimetres(50);
    }
}

/// <summary>A box under a deck.</summary>
/// <param name="Outside">Over its walls and floor.</param>
/// <param name="Inside">Its room.</param>
/// <param name="Flange">Its flange.</param>
public sealed record BoxShape(FlatBody Outside, FlatBody Inside, FlatBody Flange);
