using System.Runtime.InteropServices;
using Boardwright.Documents.Drawings;
using Boardwright.Fits;
using static System.Math;

namespace Boardwright.Documents.Views;

/// <summary>The driven axle from behind: u is to the right, v up.</summary>
static class BehindView
{
    // Where a can's end bells are joined, as parts of its length.
    static readonly double[] Seams = [0.12, 0.88];

    public static Drawing Draw(ViewedBoard seen, Angle lean, ViewWishes wishes)
    {
        var shape = seen.Shape;
        var (deck, axle) = (shape.Deck, shape.DrivenAxle);
        var clearances = Clearances.At(shape, lean);
        var leaned = new Leaned(clearances.Lean.Radians, deck.Underside.Millimetres);
        var motors = shape.MotorsOnDrivenAxle.ToList();
        var radius = shape.WheelRadius.Millimetres;
        var half = deck.Width.Millimetres / 2;
        var section = leaned.Rectangle(-half, 0, half, deck.Thickness.Millimetres);
        var wide = Max(axle.Wheels[0].To.Millimetres, axle.Axle.To.Millimetres);
        var points = section.Append(new(-wide, -radius)).Append(new(wide, radius))
            .Concat(motors.SelectMany(
            m => new ViewPoint[] { new(-m.Can.From.Millimetres, (m.Can.Z - m.Can.Radius).Millimetres),
            new(-m.Can.To.Millimetres, (m.Can.Z + m.Can.Radius).Millimetres) }));
        if (BoxOf(shape) is { } b)
            points = points.Concat(leaned.Rectangle(
                b.Flange.Right.Millimetres, (b.Outside.Bottom - deck.Underside).Millimetres, b.Flange.Left.Millimetres, 0));
        var all = points.ToList();
        var (left, right, low, high) = (all.Min(p => p.U), all.Max(p => p.U), all.Min(p => p.V), all.Max(p => p.V));
        var dims = wishes.Dimensions != Dimensioned.Nothing;
        var board = new DrawingBoard(wishes, (left, low, right, high), dims ? (50, 26, 50, 60) : (24, 20, 24, 28));

        Deck(board, seen, leaned, section);
        var (nearer, farther) = (motors.Where(m => m.Direction <= 0).ToList(), motors.Where(m => m.Direction > 0).ToList());
        foreach (var motor in farther)
            Motor(board, seen, motor);
        Truck(board, seen, leaned);
        foreach (var motor in nearer)
            Motor(board, seen, motor);
        // A deck that leans into a motor or a wheel is seen through it.
        board.Part("deck", seen.Name("deck"), () =>
        {
            foreach (var body in nearer.Select(m => m.Can).Concat(axle.Wheels))
                board.HiddenPart(section, Face(body, 0));
        });
        board.Road(-radius, left - 12 / board.Long(1), right + 12 / board.Long(1));
        board.Part(axle.Slot, seen.Name(axle.Slot), () =>
        {
            board.CentreLine(new(0, -radius - 4), new(0, high + 6 / board.Long(1)));
            board.CentreLine(new(-wide - 8 / board.Long(1), 0), new(wide + 8 / board.Long(1), 0));
        });
        Measure(board, seen, clearances, low);
        if (board.Wants(Dimensioned.Clearances))
            List(board, clearances);
        seen.Excuse(board);
        var way = Abs(leaned.Angle) < 1e-9 ? "level" : board.Say($"leaned {Angle.FromRadians(Abs(leaned.Angle)):0.# deg} to the {(leaned.Angle > 0 ? "right" : "left")}");
        var where = shape.Driven == Parts.Driven.Front ? "front axle" : "rear axle";
        return board.Finish("behind", seen.Title($"{where} from behind, deck {way}"), $"The {where} from behind, to scale, with the deck {way}. Its axle stays parallel to the road; steering is left out.", seen.Pins());
    }

    static void Deck(DrawingBoard board, ViewedBoard seen, Leaned leaned, ViewPoint[] section)
    {
        var (shape, deck) = (seen.Shape, seen.Shape.Deck);
        var half = deck.Width.Millimetres / 2;
        if (BoxOf(shape) is { } box)
        {
            var zero = deck.Underside;
            board.Part("box", seen.Name("box"), () =>
            {
                board.Body(leaned.Corners(box.Flange, zero), isGuess: box.Outside.IsGuess, width: 0.9);
                board.Body(leaned.Corners(box.Outside, zero), isGuess: box.Outside.IsGuess, width: 0.9);
            });
            // On the side that goes up, where more of it is to be seen.
            board.Place("box", leaned.At(
                box.Outside.Left.Millimetres * (leaned.Angle < 0 ? 0.8 : -0.8), (box.Outside.Bottom - zero).Millimetres * 0.6));
        }

        if (deck.Drop.Si > 0)
            board.Part("deck", seen.Name("deck"),
                () => board.Body(leaned.Rectangle(-half, -deck.Drop.Millimetres, half, (deck.Thickness - deck.Drop).Millimetres),
                isGuess: deck.IsGuess, width: 0.9));
        board.Part("deck", seen.Name("deck"), () =>
        {
            board.Body(section, isGuess: deck.IsGuess);
            board.Hatch(section, 9);
            board.Edge(section, isGuess: deck.IsGuess);
        });
        board.Place("deck", leaned.At(half * 0.55, deck.Thickness.Millimetres));
    }

    static void Truck(DrawingBoard board, ViewedBoard seen, Leaned leaned)
    {
        var shape = seen.Shape;
        var axle = shape.DrivenAxle;
        var (hanger, mount) = (axle.HangerWidth.Millimetres / 2, axle.MountHeight.Millimetres);
        var isOver = shape.Deck.Underside < axle.MountHeight;
        // Base plate and bushings turn with the deck, the hanger stays with its wheels.
        var plateLow = isOver ? mount - shape.Deck.Underside.Millimetres : -7;
        var (waist, hump) = (Min(22, hanger), Max(4, mount - 24));
        board.Part(axle.Slot, seen.Name(axle.Slot), () =>
        {
            ViewPoint a = leaned.At(-16, isOver ? 0 : -7), b = leaned.At(16, isOver ? 0 : -7);
            board.Body([new(-16, hump), new(16, hump), b, a], isGuess: axle.IsGuess, width: 0.9);
            board.Body(Face(axle.Axle, 1), isGuess: axle.IsGuess, width: 1.1);
            board.Body(
                [new(-hanger, -11), new(hanger, -11), new(hanger, 11), new(Min(hanger, waist + 14), 13), new(waist, hump),
                new(-waist, hump), new(-Min(hanger, waist + 14), 13), new(-hanger, 11)],
                isGuess: axle.IsGuess);
            board.Body(leaned.Rectangle(-30, plateLow, 30, plateLow + 7), isGuess: axle.IsGuess, width: 1.1);
        });
        board.Place(axle.Slot, new(-waist * 0.4, hump * 0.85));
        foreach (var wheel in axle.Wheels)
        {
            board.Part("wheels", seen.Name("wheels"), () =>
            {
                board.Body(Face(wheel, 10), isGuess: wheel.IsGuess);
                var bearing = axle.Bearing.Millimetres / 2;
                board.HiddenEdge(Outlines.Rectangle(-wheel.To.Millimetres, -bearing, -wheel.From.Millimetres, bearing));
            });
            board.Place("wheels", new(-wheel.Middle.Millimetres, wheel.Radius.Millimetres * 0.8));
        }
    }

    static void Motor(DrawingBoard board, ViewedBoard seen, MotorShape motor)
    {
        if (motor.Direction == 0)
        {
            board.Part("motor", seen.Name("motor"), () => board.HiddenEdge(Face(motor.Can, 2)));
            board.Place("motor", new(-motor.Can.Middle.Millimetres, motor.Can.Radius.Millimetres * 0.6));
            return;
        }

        if (motor.Gears is { } gears)
        {
            var (wheel, reach) = (gears.WheelGear.Radius.Millimetres, Reach(motor.Can, gears.MotorGear.Radius));
            var (low, high) = (Min(-wheel, reach.Low) - 6, Max(wheel, reach.High) + 6);
            var outline = Outlines.Rectangle(-gears.WheelGear.To.Millimetres, low, -gears.WheelGear.From.Millimetres, high, 2);
            Solid("gearbox", outline, new(-gears.WheelGear.Middle.Millimetres, high * 0.8), gears.WheelGear.IsGuess);
        }

        Round(motor.WheelPulley);
        if (motor.Plate is { } plate)
        {
            var (left, right, top) = (plate.Left.Millimetres, plate.Right.Millimetres, plate.Top.Millimetres);
            var outline = Outlines.Rectangle(-left, plate.Bottom.Millimetres, -right, top, 1);
            Solid("mount", outline, new(-(plate.Left + plate.Right).Millimetres / 2, top * 0.7), plate.IsGuess);
        }

        Round(motor.Pulley);
        if (motor.Belt is { } belt)
        {
            var (wheel, reach) = (belt.WheelRadius.Millimetres, Reach(motor.Can, belt.MotorRadius));
            var (low, high) = (Min(-wheel, reach.Low), Max(wheel, reach.High));
            var outline = Outlines.Rectangle(-belt.To.Millimetres, low, -belt.From.Millimetres, high);
            var middle = new ViewPoint(-(belt.From + belt.To).Millimetres / 2, high * 0.5 + low * 0.5);
            Solid("belt", outline, middle, belt.IsGuess, Ink.Grid, 0.9);
        }

        Can(board, seen, motor);

        void Solid(string slot, ViewPoint[] outline, ViewPoint name, bool isGuess, Ink fill = Ink.Paper, double width = 1.1)
        {
            board.Part(slot, seen.Name(slot), () => board.Body(outline, fill, isGuess: isGuess, width: width));
            board.Place(slot, name);
        }

        void Round(RoundBody? body)
        {
            if (body is null)
                return;
            var up = body.Radius.Millimetres * 0.8 * (body.Slot == "motor_pulley" ? -1 : 1);
            Solid(body.Slot, Face(body, 1), new(-body.Middle.Millimetres, body.Z.Millimetres + up), body.IsGuess);
        }
    }

    // How far down and up a wheel on the motor's shaft reaches.
    static (double Low, double High) Reach(RoundBody can, Length radius) => ((can.Z - radius).Millimetres, (can.Z + radius).Millimetres);

    static void Can(DrawingBoard board, ViewedBoard seen, MotorShape motor)
    {
        var (can, (low, high)) = (motor.Can, Reach(motor.Can, motor.Can.Radius));
        board.Part("motor", seen.Name("motor"), () =>
        {
            if (motor is { Shaft: { } shaft, Pulley: null, Gears: null })
                board.Body(Face(shaft, 0), width: 0.9);
            else if (motor is { Shaft: { } inside, Gears: not null })
                board.HiddenEdge(Face(inside, 0));
            board.Body(Face(can, 5), isGuess: can.IsGuess);
            var length = (can.To - can.From).Millimetres;
            foreach (var part in Seams)
            {
                var u = -can.From.Millimetres - part * length;
                board.Detail(new(u, low), new(u, high));
            }

            board.CentreLine(new(-can.To.Millimetres - 5, can.Z.Millimetres), new(-can.From.Millimetres + 5, can.Z.Millimetres));
        });
        board.Place("motor", new(-can.Middle.Millimetres, can.Z.Millimetres + can.Radius.Millimetres * 0.5));
    }

    static void Measure(DrawingBoard board, ViewedBoard seen, Clearances clearances, double low)
    {
        var axle = seen.Shape.DrivenAxle;
        var road = Min(low, -seen.Shape.WheelRadius.Millimetres);
        if (board.Wants(Dimensioned.Axles))
        {
            var isGuess = axle.IsGuess || axle.Wheels[0].IsGuess;
            var (l, r) = (axle.Wheels[0].Middle.Millimetres, axle.Wheels[1].Middle.Millimetres);
            board.Level("track", new(-l, -seen.Shape.WheelRadius.Millimetres), new(-r, -seen.Shape.WheelRadius.Millimetres), road, 28,
                ViewedBoard.Bracketed(isGuess, board.Say($"{axle.Wheels[0].Middle - axle.Wheels[1].Middle:0 mm}")));
            board.Level("over_wheels", new(-axle.Wheels[0].To.Millimetres, -seen.Shape.WheelRadius.Millimetres),
                new(-axle.Wheels[1].From.Millimetres, -seen.Shape.WheelRadius.Millimetres), road, 50,
                ViewedBoard.Bracketed(isGuess, board.Say($"{axle.Wheels[0].To - axle.Wheels[1].From:0 mm}")));
        }

        if (!board.Wants(Dimensioned.Clearances))
            return;
        // The tightest first, so that it has the best place.
        foreach (var c in clearances.All.GroupBy(c => c.What).Select(g => g.MinBy(c => c.Free.Si)!).OrderBy(c => c.Free.Si))
        {
            if (IsSeen(c))
                board.Gap($"clearance.{Parts.Entry.Snake(c.What.ToString())}", FromBehind(c.From), FromBehind(c.To), ViewedBoard.Bracketed(c.IsGuess, board.Say($"{c.Free:0.0 mm}")),
                    c == clearances.Tightest);
        }
    }

    static void List(DrawingBoard board, Clearances clearances)
    {
        var rows = new List<(string, string, string, bool)> { ("Stays free", "left", "right", false) };
        foreach (var kind in clearances.All.GroupBy(c => c.What))
        {
            string Of(BoardSide side) => clearances.On(side, kind.Key) is { } c ? ViewedBoard.Bracketed(c.IsGuess, board.Say($"{c.Free:0.0 mm}")) : "";
            rows.Add((NameOf(kind.Key) + (IsSeen(clearances.Least(kind.Key)!) ? "" : ", along the board"), Of(BoardSide.Left), Of(BoardSide.Right),
                clearances.Tightest is { } tightest && tightest.What == kind.Key));
        }

        if (rows.Count > 1)
            board.Table(rows);
    }

    // Before a front axle the box would hide what is to be seen.
    static BoxShape? BoxOf(BoardShape shape) => shape.Driven == Parts.Driven.Front ? null : shape.Box;

    // What is measured along the board cannot be seen from behind.
    static bool IsSeen(Clearance c) => Abs((FromBehind(c.From) - FromBehind(c.To)).Length - Abs(c.Free.Millimetres)) < 0.3;

    static ViewPoint FromBehind(BoardPoint p) => new(-p.Y.Millimetres, p.Z.Millimetres);

    static string NameOf(Clearing what) => what switch
    {
        Clearing.MotorToRoad => "motor to road",
        Clearing.MotorToDeck => "motor to deck",
        Clearing.WheelToDeck => "wheel to deck",
        Clearing.MotorToWheel => "motor to wheel",
        Clearing.PulleyToWheel => "motor pulley to wheel",
        _ => "wheel pulley to road",
    };

    static ViewPoint[] Face(RoundBody body, double round) =>
        Outlines.Rectangle(-body.To.Millimetres, (body.Z - body.Radius).Millimetres, -body.From.Millimetres,
        (body.Z + body.Radius).Millimetres, round);

    /// <summary>What leans with the deck, about the middle of its underside.</summary>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct Leaned(double Angle, double Underside)
    {
        // To the right, so that the right side goes down.
        public ViewPoint At(double u, double above) =>
            new(u * Cos(Angle) + above * Sin(Angle), Underside - u * Sin(Angle) + above * Cos(Angle));

        public ViewPoint[] Rectangle(double left, double low, double right, double high) =>
            [At(left, low), At(right, low), At(right, high), At(left, high)];

        public ViewPoint[] Corners(FlatBody body, Length zero) =>
            Rectangle(-body.Left.Millimetres, (body.Bottom - zero).Millimetres, -body.Right.Millimetres, (body.Top - zero).Millimetres);
    }
}
