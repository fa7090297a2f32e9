using Boardwright.Documents.Drawings;
using Boardwright.Findings;
using Boardwright.Fits;
using static System.Math;

namespace Boardwright.Documents.Views;

/// <summary>The board from its right side: u is forward, v up.</summary>
static class SideView
{
    const double BeltThickness = 3.8, GearWall = 6, MostTeeth = 150;

    public static Drawing Draw(ViewedBoard seen, ViewWishes wishes)
    {
        var shape = seen.Shape;
        var (deck, radius) = (shape.Deck, shape.WheelRadius.Millimetres);
        // One of each: the left side repeats the right one.
        var motors = shape.Motors.OrderBy(m => m.Side).DistinctBy(m => (m.Axle, m.Direction)).ToList();
        var (left, right) = (Min(deck.Back.Millimetres, -radius), Max(deck.Front.Millimetres, shape.Wheelbase.Millimetres + radius));
        var (low, high) = (-radius, Max(radius, (deck.Underside + deck.Thickness).Millimetres + 8));
        foreach (var can in motors.Select(m => m.Can))
            (left, right, low, high) =
                (Min(left, (can.X - can.Radius).Millimetres), Max(right, (can.X + can.Radius).Millimetres),
                Min(low, (can.Z - can.Radius).Millimetres), Max(high, (can.Z + can.Radius).Millimetres));
        if (shape.Box is { } b)
            (left, right, low) = (Min(left, b.Flange.Back.Millimetres), Max(right, b.Flange.Front.Millimetres),
                Min(low, b.Outside.Bottom.Millimetres));
        low = Min(low, deck.Platform.Millimetres);
        var dims = wishes.Dimensions != Dimensioned.Nothing;
        var board = new DrawingBoard(wishes, (left, low, right, high), dims ? (80, 52, 90, 58) : (24, 24, 24, 28));

        board.Part("deck", seen.Name("deck"), () => board.Body(Profile(deck, shape), isGuess: deck.IsGuess));
        board.Place("deck", new((deck.Back + deck.Front).Millimetres / 2 + (deck.Front - deck.Back).Millimetres * 0.12,
            (deck.Platform + deck.Thickness).Millimetres));
        Box(board, seen);
        for (var i = 0; i < shape.Axles.Count; i++)
            Axle(board, seen, i, motors.Where(m => m.Axle == i));
        board.Road(-radius, left - 20 / board.Long(1), right + 20 / board.Long(1));
        Measure(board, seen, motors, low, high, left, right);
        seen.Excuse(board);
        return board.Finish("side", seen.Title("seen from the right"), "The board from its right side with its nose to the right, to scale, standing level and unloaded. Dashed lines lie behind the wheels or in the box.", seen.Pins());
    }

    static ViewPoint[] Profile(DeckShape deck, BoardShape shape)
    {
        var (back, front, low, thick) =
            (deck.Back.Millimetres, deck.Front.Millimetres, deck.Underside.Millimetres, deck.Thickness.Millimetres);
        if (deck.Drop.Si == 0)
            return Outlines.Rectangle(back, low, front, low + thick, 4);
        var (from, to, drop) = (deck.PlatformBack.Millimetres, deck.PlatformFront.Millimetres, deck.Drop.Millimetres);
        // The ramps end short of the base plates.
        var (rear, nose) = (Min(from, 50), Max(to, shape.Wheelbase.Millimetres - 50));
        return
        [
            new(back, low), new(rear, low), new(from, low - drop), new(to, low - drop), new(nose, low), new(front, low),
            new(front, low + thick), new(nose, low + thick), new(to, low + thick - drop), new(from, low + thick - drop),
                new(rear, low + thick), new(back, low + thick),
        ];
    }

    static void Box(DrawingBoard board, ViewedBoard seen)
    {
        if (seen.Shape.Box is not { } box)
            return;
        board.Part("box", seen.Name("box"), () =>
        {
            board.Body(Upright(box.Flange, 0), isGuess: box.Outside.IsGuess, width: 1.1);
            board.Body(Upright(box.Outside, 5), isGuess: box.Outside.IsGuess);
        });
        board.Place("box", new(box.Outside.Front.Millimetres - 14, box.Outside.Bottom.Millimetres + 6));
        foreach (var body in seen.Shape.Contents.DistinctBy(b => (b.Slot, b.Back)))
        {
            board.Part(body.Slot, seen.Name(body.Slot), () => board.HiddenEdge(Upright(body, 2)));
            var middle = new ViewPoint((body.Back + body.Front).Millimetres / 2, (body.Bottom + body.Top).Millimetres / 2);
            board.Place(body.Slot, middle with { U = middle.U + 0.3 * (body.Front - body.Back).Millimetres });
            board.Label(middle, board.Long((body.Front - body.Back).Millimetres), 4, body.Slot);
        }
    }

    static void Axle(DrawingBoard board, ViewedBoard seen, int number, IEnumerable<MotorShape> motors)
    {
        var axle = seen.Shape.Axles[number];
        var wheel = axle.Wheels[1];
        var (x, radius) = (axle.X.Millimetres, wheel.Radius.Millimetres);
        ViewPoint middle = new(x, 0);
        var cover = Outlines.Circle(middle, radius, 96);
        // Of the wheel first its face, so that what lies behind can be drawn on it in dashes; its edge comes last.
        board.Part("wheels", seen.Name("wheels"), () => board.Fill(cover));
        board.Part(axle.Slot, seen.Name(axle.Slot), () =>
        {
            var mount = axle.MountHeight.Millimetres;
            var isOver = seen.Shape.Deck.Underside < axle.MountHeight;
            var (low, high) = isOver ? (mount, mount + 6) : (mount - 6, mount);
            board.Body([new(x - 12, -4), new(x + 12, -4), new(x + 26, Max(0, mount - 16)), new(x + 20, Max(0, mount - 6)),
                new(x - 20, Max(0, mount - 6)), new(x - 26, Max(0, mount - 16))], cover: cover, isGuess: axle.IsGuess, width: 1.1);
            board.Body(Outlines.Rectangle(x - 42, low, x + 42, high, 1), cover: cover, isGuess: axle.IsGuess, width: 1.1);
        });
        board.Place(axle.Slot, new(x + 16, Max(0, axle.MountHeight.Millimetres - 14)));
        foreach (var motor in motors)
            Motor(board, seen, motor, middle, cover);
        board.Part("wheels", seen.Name("wheels"), () =>
        {
            board.Edge(cover, isGuess: wheel.IsGuess);
            board.Disc(middle, axle.Bearing.Millimetres / 2, width: 0.9);
        });
        board.Place("wheels", ViewPoint.Polar(middle, radius * 0.9, PI / 4));
        board.Part(axle.Slot, seen.Name(axle.Slot), () =>
        {
            board.Disc(middle, axle.Axle.Radius.Millimetres, width: 1.1);
            board.CentreCross(middle, radius + 6);
        });
    }

    static void Motor(DrawingBoard board, ViewedBoard seen, MotorShape motor, ViewPoint axle, IReadOnlyList<ViewPoint> cover)
    {
        ViewPoint at = new(motor.Can.X.Millimetres, motor.Can.Z.Millimetres);
        var can = motor.Can.Radius.Millimetres;
        if (motor.Direction == 0)
        {
            board.Part("motor", seen.Name("motor"), () => board.HiddenEdge(Outlines.Circle(at, can)));
            board.Place("motor", ViewPoint.Polar(at, can * 0.8, 2.4));
            return;
        }

        board.Part("motor", seen.Name("motor"), () => board.Body(Outlines.Circle(at, can), cover: cover, isGuess: motor.Can.IsGuess));
        board.Place("motor", ViewPoint.Polar(at, can * 0.75, motor.Direction > 0 ? 0.5 : PI - 0.5));
        if (motor.Plate is { } plate)
        {
            board.Part("mount", seen.Name("mount"),
                () => board.Body(Outlines.Around(axle, 19, at, Max(12, 0.8 * can)), cover: cover, isGuess: plate.IsGuess, width: 1.1));
            board.Place("mount", (axle + at) * 0.5);
        }

        if (motor.Gears is { } gears)
        {
            var (small, large) = (gears.MotorGear.Radius.Millimetres, gears.WheelGear.Radius.Millimetres);
            board.Part("gearbox", seen.Name("gearbox"), () =>
            {
                board.Body(Outlines.Around(axle, large + GearWall, at, small + GearWall), cover: cover, isGuess: gears.WheelGear.IsGuess,
                    width: 1.1);
                foreach (var (middle, radius) in new[] { (axle, large), (at, small) })
                    board.PitchCircle(Outlines.Circle(middle, radius));
            });
            board.Place("gearbox", ViewPoint.Polar(axle, large, PI / 2 + motor.Direction));
        }

        Pulley(board, seen, motor.WheelPulley, axle, motor.Belt?.WheelRadius, motor.Belt?.Teeth.Wheel ?? 0, cover);
        Pulley(board, seen, motor.Pulley, at, motor.Belt?.MotorRadius, motor.Belt?.Teeth.Motor ?? 0, cover);
        if (motor.Belt is { } belt)
        {
            var path = Outlines.Around(axle, belt.WheelRadius.Millimetres, at, belt.MotorRadius.Millimetres);
            board.Part("belt", seen.Name("belt"), () => board.Edge(path, cover, belt.IsGuess, Clamp(board.Long(BeltThickness), 1.6, 6)));
            board.Place("belt", (path[20] + path[21]) * 0.5);
        }

        board.Part("motor", seen.Name("motor"), () =>
        {
            if (motor.Shaft is { } shaft)
                board.Edge(Outlines.Circle(at, shaft.Radius.Millimetres, 24), cover, width: 1.1);
            board.CentreCross(at, can + 6);
            board.CentreLine(axle, at);
        });
    }

    static void Pulley(DrawingBoard board, ViewedBoard seen, RoundBody? pulley, ViewPoint at, Length? pitchRadius, int teeth,
        IReadOnlyList<ViewPoint> cover)
    {
        if (pulley is null)
            return;
        var radius = pulley.Radius.Millimetres;
        board.Part(pulley.Slot, seen.Name(pulley.Slot), () =>
        {
            board.Body(Outlines.Circle(at, radius), cover: cover, isGuess: pulley.IsGuess, width: 1.1);
            if (pitchRadius is { } pitch && teeth is > 5 and < (int)MostTeeth && board.Long(2 * PI * pitch.Millimetres / teeth) > 2.4)
                board.Toothed(Outlines.Teeth(at, pitch.Millimetres - 0.57, pitch.Millimetres - 2.6, teeth, 0));
        });
        board.Place(pulley.Slot, ViewPoint.Polar(at, radius * 0.75, PI / 2));
    }

    static void Measure(DrawingBoard board, ViewedBoard seen, List<MotorShape> motors, double low, double high, double left, double right)
    {
        var (shape, deck) = (seen.Shape, seen.Shape.Deck);
        var road = -shape.WheelRadius.Millimetres;
        if (board.Wants(Dimensioned.Overall))
        {
            var top = (deck.Underside + deck.Thickness).Millimetres;
            board.Level("deck.length", new(deck.Back.Millimetres, top), new(deck.Front.Millimetres, top), high, -28,
                ViewedBoard.Bracketed(seen.IsGuessed("deck.length"), board.Say($"{deck.Front - deck.Back:0 mm}")));
            board.Upright("deck.height", new(deck.Front.Millimetres, top), new(deck.Front.Millimetres, road), right, 30,
                ViewedBoard.Bracketed(seen.IsGuessed("deck.thickness", "wheels.diameter", $"{shape.DrivenAxle.Slot}.height"), board.Say($"{deck.Underside + deck.Thickness + shape.WheelRadius:0 mm}")));
        }

        if (board.Wants(Dimensioned.Axles))
            board.Level("deck.wheelbase", new(0, 0), new(shape.Wheelbase.Millimetres, 0), Min(low, road), 44,
                ViewedBoard.Bracketed(seen.IsGuessed("deck.wheelbase"), board.Say($"{shape.Wheelbase:0 mm}")));
        if (board.Wants(Dimensioned.Box) && shape.Box is { Outside: var box })
        {
            var middle = (box.Back + box.Front).Millimetres / 2;
            var free = box.Bottom + shape.WheelRadius;
            // The rider bends the deck; the drawing does not.
            var loaded = seen.Examination.BoxAboveRoad;
            var text = loaded.IsKnown && Abs((loaded.Value - free).Millimetres) > 0.5 ? board.Say($"{free:0 mm}, loaded {loaded.Value:0 mm}") : board.Say($"{free:0 mm}");
            board.Gap("box.clearance", new(middle, box.Bottom.Millimetres), new(middle, road),
                ViewedBoard.Bracketed(shape.Box.Outside.IsGuess || shape.DrivenAxle.IsGuess || seen.IsGuessed("wheels.diameter"), text), false);
        }

        if (motors.FirstOrDefault(m => m.Direction != 0) is not { } motor)
            return;
        ViewPoint axle = new(shape.Axles[motor.Axle].X.Millimetres, 0), at = new(motor.Can.X.Millimetres, motor.Can.Z.Millimetres);
        if (board.Wants(Dimensioned.Clearances))
        {
            // What is measured across the board cannot be seen from its side.
            var clearances = Clearances.At(shape, default);
            foreach (var what in new[] { Clearing.PulleyToWheel, Clearing.MotorToRoad })
            {
                if (clearances.Least(what) is not { } c || shape.DrivenAxle != shape.Axles[motor.Axle])
                    continue;
                ViewPoint from = new(c.From.X.Millimetres, c.From.Z.Millimetres), to = new(c.To.X.Millimetres, c.To.Z.Millimetres);
                if (Abs((from - to).Length - Abs(c.Free.Millimetres)) < 0.3)
                    board.Gap($"clearance.{Parts.Entry.Snake(what.ToString())}", from, to, ViewedBoard.Bracketed(c.IsGuess, board.Say($"{c.Free:0.0 mm}")), clearances.Tightest?.What == what);
            }
        }

        if (board.Wants(Dimensioned.Drive))
            board.Note("drive.centre_distance", (axle + at) * 0.5, ViewedBoard.Bracketed(motor.Belt?.IsGuess ?? seen.IsGuessed("mount.centre_min"), board.Say($"{shape.Centre:0.0 mm} at {shape.MountAngle:0 deg}")));
    }

    static ViewPoint[] Upright(FlatBody body, double round) =>
        Outlines.Rectangle(body.Back.Millimetres, body.Bottom.Millimetres, body.Front.Millimetres, body.Top.Millimetres, round);
}
