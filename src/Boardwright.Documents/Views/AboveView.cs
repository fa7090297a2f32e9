using Boardwright.Documents.Drawings;
using Boardwright.Fits;
using static System.Math;

namespace Boardwright.Documents.Views;

/// <summary>The board from above: u is forward, v to the left.</summary>
static class AboveView
{
    // Where a can's end bells are joined, as parts of its length.
    static readonly double[] Seams = [0.12, 0.88];

    public static Drawing Draw(ViewedBoard seen, ViewWishes wishes)
    {
        var shape = seen.Shape;
        var (deck, axles) = (shape.Deck, shape.Axles);
        var (back, front, half) = (deck.Back.Millimetres, deck.Front.Millimetres, deck.Width.Millimetres / 2);
        var radius = shape.WheelRadius.Millimetres;
        var left = Min(Min(back, -radius), shape.Motors.Select(m => (m.Can.X - m.Can.Radius).Millimetres).DefaultIfEmpty(0).Min());
        var right = Max(Max(front, shape.Wheelbase.Millimetres + radius),
            shape.Motors.Select(m => (m.Can.X + m.Can.Radius).Millimetres).DefaultIfEmpty(0).Max());
        var wide = Max(half, axles.Max(a => Max(a.Wheels[0].To.Millimetres, a.Axle.To.Millimetres)));
        if (shape.Box is { } b)
            (left, right, wide) = (Min(left, b.Flange.Back.Millimetres), Max(right, b.Flange.Front.Millimetres),
                Max(wide, b.Flange.Left.Millimetres));
        var dims = wishes.Dimensions != Dimensioned.Nothing;
        var board = new DrawingBoard(wishes, (left, -wide, right, wide), dims ? (66, 44, 98, 62) : (24, 24, 60, 24));
        var outline = Outlines.Deck(back, front, half, EndOf(-back, half, deck), EndOf(front - shape.Wheelbase.Millimetres, half, deck));

        board.Part("deck", seen.Name("deck"), () => board.Body(outline, isGuess: deck.IsGuess));
        Box(board, seen, outline);
        for (var i = 0; i < axles.Count; i++)
            Axle(board, seen, i, outline);
        // Over all that lies beneath it, the deck's edge.
        board.Part("deck", seen.Name("deck"), () =>
        {
            board.Edge(outline, isGuess: deck.IsGuess, width: 2);
            board.CentreLine(new(left - 14 / board.Long(1), 0), new(right + 14 / board.Long(1), 0));
        });
        board.Place("deck", new((back + front) / 2 + (front - back) * 0.12, half * 0.86));
        Measure(board, seen, wide, left, right);
        seen.Excuse(board);
        return board.Finish("above", seen.Title("seen from above"), "The board from above with its nose to the right, to scale. Dashed lines lie under the deck.", seen.Pins());
    }

    // How much of the deck's length its rounding takes at one end, at most half of it.
    static double EndOf(double overhang, double half, DeckShape deck) =>
        Min(Max(1.2 * overhang + 0.25 * half, 0.5 * half), Max(0.05, (deck.Front - deck.Back).Millimetres / 2));

    static void Box(DrawingBoard board, ViewedBoard seen, IReadOnlyList<ViewPoint> deck)
    {
        if (seen.Shape.Box is not { } box)
            return;
        board.Part("box", seen.Name("box"), () =>
        {
            board.Body(Plan(box.Flange, 8), cover: deck, isGuess: box.Outside.IsGuess);
            board.Edge(Plan(box.Outside, 6), deck);
        });
        board.Place("box", new(box.Outside.Front.Millimetres - 20, box.Outside.Right.Millimetres + 6));
        foreach (var body in seen.Shape.Contents)
        {
            board.Part(body.Slot, seen.Name(body.Slot), () =>
            {
                board.Body(Plan(body, 3), cover: deck, isGuess: body.IsGuess);
                var middle = new ViewPoint((body.Back + body.Front).Millimetres / 2, (body.Left + body.Right).Millimetres / 2);
                board.Label(middle, board.Long((body.Front - body.Back).Millimetres), -6, body.Slot);
            });
            board.Place(body.Slot, new(
                (body.Back + body.Front).Millimetres / 2, body.Right.Millimetres + 0.25 * (body.Left - body.Right).Millimetres));
        }
    }

    static void Axle(DrawingBoard board, ViewedBoard seen, int number, IReadOnlyList<ViewPoint> deck)
    {
        var shape = seen.Shape;
        var axle = shape.Axles[number];
        var (x, hanger) = (axle.X.Millimetres, axle.HangerWidth.Millimetres / 2);
        board.Part(axle.Slot, seen.Name(axle.Slot), () =>
        {
            board.Body(Plan(axle.Axle, 1), cover: deck, isGuess: axle.IsGuess);
            var waist = Min(22, hanger);
            board.Body(
                [new(x - 11, -hanger), new(x + 11, -hanger), new(x + 24, -waist), new(x + 24, waist), new(x + 11, hanger),
                new(x - 11, hanger), new(x - 24, waist), new(x - 24, -waist)],
                cover: deck, isGuess: axle.IsGuess);
            board.Edge(Outlines.Rectangle(x - 42, -28, x + 42, 28, 8), deck, width: 0.9);
        });
        board.Place(axle.Slot, new(x + 8, -hanger * 0.5));
        foreach (var motor in shape.Motors.Where(m => m.Axle == number && m.Direction != 0).OrderBy(m => m.Side))
            Motor(board, seen, motor, deck);
        foreach (var wheel in axle.Wheels)
        {
            board.Part("wheels", seen.Name("wheels"), () =>
            {
                board.Body(Plan(wheel, 9), cover: deck, isGuess: wheel.IsGuess);
                board.Detail(new(x - wheel.Radius.Millimetres, wheel.Middle.Millimetres),
                    new(x + wheel.Radius.Millimetres, wheel.Middle.Millimetres), deck);
            });
            board.Place("wheels", new(x + wheel.Radius.Millimetres * 0.7, wheel.From.Millimetres + 8));
        }

        foreach (var motor in shape.Motors.Where(m => m.Axle == number && m.Direction == 0))
        {
            board.Part("motor", seen.Name("motor"), () => board.HiddenEdge(Plan(motor.Can, 2)));
            board.Place("motor", new(x, motor.Can.Middle.Millimetres));
        }

        var end = Max(axle.Axle.To.Millimetres, axle.Wheels[0].To.Millimetres) + 8;
        board.Part(axle.Slot, seen.Name(axle.Slot), () => board.CentreLine(new(x, -end), new(x, end)));
    }

    static void Motor(DrawingBoard board, ViewedBoard seen, MotorShape motor, IReadOnlyList<ViewPoint> deck)
    {
        if (motor.Gears is { } gears)
        {
            board.Part("gearbox", seen.Name("gearbox"),
                () => board.Body(Hull(gears.WheelGear, gears.MotorGear, 6), cover: deck, isGuess: gears.WheelGear.IsGuess));
            board.Place("gearbox", new((gears.WheelGear.X.Millimetres + gears.MotorGear.X.Millimetres) / 2, gears.WheelGear.Middle.Millimetres));
        }

        if (motor.WheelPulley is { } driven)
        {
            board.Part("wheel_pulley", seen.Name("wheel_pulley"), () => board.Body(Plan(driven, 1), cover: deck, isGuess: driven.IsGuess));
            board.Place("wheel_pulley", new(driven.X.Millimetres + driven.Radius.Millimetres * 0.8, driven.Middle.Millimetres));
        }

        if (motor.Plate is { } plate)
        {
            board.Part("mount", seen.Name("mount"), () => board.Body(Plan(plate, 1), cover: deck, isGuess: plate.IsGuess));
            board.Place("mount", new((plate.Back + plate.Front).Millimetres / 2, (plate.Left + plate.Right).Millimetres / 2));
        }

        if (motor.Pulley is { } driving)
        {
            board.Part("motor_pulley", seen.Name("motor_pulley"), () => board.Body(Plan(driving, 1), cover: deck, isGuess: driving.IsGuess));
            board.Place("motor_pulley", new(driving.X.Millimetres - motor.Direction * driving.Radius.Millimetres * 0.6, driving.Middle.Millimetres));
        }

        if (motor.Belt is { } belt)
        {
            var (axle, shaft, r) = (seen.Shape.Axles[motor.Axle].X.Millimetres, motor.Can.X.Millimetres,
                (Motor: belt.MotorRadius.Millimetres, Wheel: belt.WheelRadius.Millimetres));
            board.Part("belt", seen.Name("belt"), () => board.Body(
                Outlines.Rectangle(Min(axle - r.Wheel, shaft - r.Motor), belt.From.Millimetres, Max(axle + r.Wheel, shaft + r.Motor),
                belt.To.Millimetres), Ink.Grid, deck, belt.IsGuess, 1.1));
            board.Place("belt", new(axle + motor.Direction * Max(10, 0.55 * Abs(shaft - axle)), (belt.From + belt.To).Millimetres / 2));
        }

        board.Part("motor", seen.Name("motor"), () =>
        {
            if (motor is { Shaft: { } shaft, Pulley: null, Gears: null })
                board.Body(Plan(shaft, 0), cover: deck, width: 1.1);
            board.Body(Plan(motor.Can, 5), cover: deck, isGuess: motor.Can.IsGuess);
            var (low, high) = ((motor.Can.X - motor.Can.Radius).Millimetres, (motor.Can.X + motor.Can.Radius).Millimetres);
            var length = (motor.Can.To - motor.Can.From).Millimetres;
            foreach (var part in Seams)
                board.Detail(new(low, motor.Can.From.Millimetres + part * length), new(high, motor.Can.From.Millimetres + part * length),
                    deck);
            board.CentreLine(new(motor.Can.X.Millimetres, motor.Can.From.Millimetres - 6),
                new(motor.Can.X.Millimetres, motor.Can.To.Millimetres + 6));
        });
        board.Place("motor", new(motor.Can.X.Millimetres + motor.Direction * motor.Can.Radius.Millimetres * 0.5, motor.Can.Middle.Millimetres));
    }

    static void Measure(DrawingBoard board, ViewedBoard seen, double wide, double left, double right)
    {
        var shape = seen.Shape;
        var (deck, axles) = (shape.Deck, shape.Axles);
        if (board.Wants(Dimensioned.Overall))
        {
            board.Level("deck.length", new(deck.Back.Millimetres, 0), new(deck.Front.Millimetres, 0), wide, -26,
                ViewedBoard.Bracketed(seen.IsGuessed("deck.length"), board.Say($"{deck.Front - deck.Back:0 mm}")));
            var half = deck.Width.Millimetres / 2;
            board.Upright("deck.width", new(deck.Front.Millimetres, half), new(deck.Front.Millimetres, -half), right, 52,
                ViewedBoard.Bracketed(seen.IsGuessed("deck.width"), board.Say($"{deck.Width:0 mm}")));
        }

        if (board.Wants(Dimensioned.Axles))
        {
            board.Level("deck.wheelbase", new(0, -axles[0].Axle.To.Millimetres), new(shape.Wheelbase.Millimetres, -axles[1].Axle.To.Millimetres), -wide,
                48, ViewedBoard.Bracketed(seen.IsGuessed("deck.wheelbase"), board.Say($"{shape.Wheelbase:0 mm}")));
            var rear = axles[0].Wheels;
            board.Upright("track", new(-rear[0].Radius.Millimetres, rear[0].Middle.Millimetres),
                new(-rear[1].Radius.Millimetres, rear[1].Middle.Millimetres), left, -26,
                ViewedBoard.Bracketed(axles[0].IsGuess || rear[0].IsGuess, board.Say($"{rear[0].Middle - rear[1].Middle:0 mm}")));
        }

        if (board.Wants(Dimensioned.Box) && shape.Box is { } box)
            board.Level("box.length", new(box.Outside.Back.Millimetres, box.Outside.Right.Millimetres),
                new(box.Outside.Front.Millimetres, box.Outside.Right.Millimetres), -wide, 18,
                ViewedBoard.Bracketed(box.Outside.IsGuess, board.Say($"{box.Outside.Front - box.Outside.Back:0 mm}")));
        var nose = board.At(new(right, 0));
        board.Arrow(new(nose.X + 10, nose.Y), new(nose.X + 40, nose.Y));
        board.Text(new(nose.X + 25, nose.Y + 17), "ahead", Anchor.Middle);
    }

    static ViewPoint[] Plan(RoundBody body, double round) =>
        Outlines.Rectangle((body.X - body.Radius).Millimetres, body.From.Millimetres, (body.X + body.Radius).Millimetres,
        body.To.Millimetres, round);

    static ViewPoint[] Plan(FlatBody body, double round) =>
        Outlines.Rectangle(body.Back.Millimetres, body.Right.Millimetres, body.Front.Millimetres, body.Left.Millimetres, round);

    static ViewPoint[] Hull(RoundBody a, RoundBody b, double wall) => Outlines.Rectangle(
        Min((a.X - a.Radius).Millimetres, (b.X - b.Radius).Millimetres) - wall, a.From.Millimetres,
        Max((a.X + a.Radius).Millimetres, (b.X + b.Radius).Millimetres) + wall, a.To.Millimetres, 2);
}
