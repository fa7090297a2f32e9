using Boardwright.Examinations;
using Boardwright.Fits;
using Boardwright.Parts;

namespace Boardwright.Tests.Fits;

public sealed class BoardShapeTests
{
    static BoardShape Shape(Board board) => Examination.Examine(board).Shape;

    public static TheoryData<string> Names { get; } = [.. Boards.Names];

    [Fact]
    public void Motors_sit_behind_the_rear_axle_or_ahead_of_it_and_the_other_way_round_on_the_front_axle()
    {
        double X(string driven, string placement) =>
            Shape(Boards.Tern.With(("drive.driven", driven), ("drive.placement", placement))).Motors[0].Can.X.Millimetres;
        var along = 68.3 * Math.Cos(15 * Math.PI / 180);

        Assert.Equal(-along, X("rear", "behind"), 0.1);
        Assert.Equal(along, X("rear", "ahead"), 0.1);
        Assert.Equal(780 + along, X("front", "behind"), 0.1);
        Assert.Equal(780 - along, X("front", "ahead"), 0.1);
    }

    [Theory]
    [InlineData(1, "rear", 1, 0)]
    [InlineData(2, "rear", 2, 0)]
    [InlineData(3, "both", 2, 1)]
    [InlineData(4, "both", 2, 2)]
    [InlineData(2, "front", 0, 2)]
    public void Every_motor_has_its_axle(int motors, string driven, int rear, int front)
    {
        var shape = Shape(Boards.Tern.With(("drive.motors", $"{motors}"), ("drive.driven", driven)));

        Assert.Equal((rear, front), (shape.Motors.Count(m => m.Axle == 0), shape.Motors.Count(m => m.Axle == 1)));
        Assert.Equal(motors, shape.Motors.Select(m => (m.Axle, m.Side)).Distinct().Count());
    }

    [Fact]
    public void Four_motors_on_one_axle_sit_on_both_sides_of_it()
    {
        var motors = Shape(Boards.Tern.With(("drive.motors", "4"))).Motors;

        Assert.Equal(4, motors.Select(m => (m.Side, m.Direction)).Distinct().Count());
    }

    [Fact]
    public void The_cans_begin_where_the_plates_end()
    {
        var can = Shape(Boards.Tern).Motors.Single(m => m.Side == BoardSide.Left).Can;

        // Half the hanger of 184 mm less 8 mm to the plate and its 7 mm.
        Assert.Equal(77, can.To.Millimetres, 1e-9);
        Assert.Equal(3, can.From.Millimetres, 1e-9);
    }

    [Theory]
    [InlineData("tern")]
    [InlineData("puffin")]
    public void A_belt_runs_on_both_pulleys_and_clear_of_the_wheel(string name)
    {
        var shape = Shape(Boards.Read(name));
        foreach (var motor in shape.Motors)
        {
            var (belt, small, large) = (motor.Belt!, motor.Pulley!, motor.WheelPulley!);
            var wheel = shape.DrivenAxle.Wheels[motor.Side == BoardSide.Left ? 0 : 1];
            Assert.True(small.From <= belt.From && belt.To <= small.To && large.From <= belt.From && belt.To <= large.To);
            Assert.True(motor.Side == BoardSide.Left ? belt.To <= wheel.From : belt.From >= wheel.To);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Pack_and_controllers_lie_in_the_box_and_the_box_between_the_trucks(string name)
    {
        var shape = Shape(Boards.Read(name));
        var inside = shape.Box!.Inside;

        Assert.Contains(shape.Contents, c => c.Slot == "pack");
        Assert.Contains(shape.Contents, c => c.Slot == "controller");
        Assert.All(shape.Contents, c => Assert.True(
            c.Back >= inside.Back && c.Front <= inside.Front && c.Right >= inside.Right && c.Left <= inside.Left
            && c.Bottom >= inside.Bottom && c.Top <= inside.Top));
        Assert.All(shape.Contents.SelectMany((a, i) => shape.Contents.Skip(i + 1).Select(b => (a, b))),
            p => Assert.True(p.a.Front <= p.b.Back || p.b.Front <= p.a.Back || p.a.Left <= p.b.Right || p.b.Left <= p.a.Right));
        Assert.True(shape.Box.Flange.Back.Millimetres > 0 && shape.Box.Flange.Front < shape.Wheelbase);
    }

    [Fact]
    public void Under_the_unloaded_box_there_is_what_its_figure_says_without_the_bend()
    {
        var exam = Examination.Examine(Boards.Tern.With(("deck.bend_per_kg", "0 mm/kg")));

        Assert.Equal(exam.BoxAboveRoad.Value.Millimetres, (exam.Shape.Box!.Outside.Bottom + exam.Shape.WheelRadius).Millimetres, 1e-9);
    }

    [Fact]
    public void Motors_in_the_wheels_lie_in_the_middle_of_them()
    {
        var shape = Shape(Boards.Tern.With(("drive.kind", "hub")));

        Assert.All(shape.Motors, m =>
            Assert.Equal(shape.DrivenAxle.Wheels[m.Side == BoardSide.Left ? 0 : 1].Middle.Millimetres, m.Can.Middle.Millimetres, 1e-9));
        Assert.All(Clearances.At(shape, default).All, c => Assert.Equal(Clearing.WheelToDeck, c.What));
    }

    [Fact]
    public void Gears_meet_on_the_line_between_the_shafts_in_their_ratio()
    {
        var gears = Shape(Boards.Curlew).Motors[0].Gears!;

        Assert.Equal(6.8, gears.WheelGear.Radius / gears.MotorGear.Radius, 1e-12);
        Assert.Equal(62, (gears.WheelGear.Radius + gears.MotorGear.Radius).Millimetres, 1e-9);
    }

    [Fact]
    public void What_the_file_does_not_say_is_named_with_what_was_taken()
    {
        var shape = Shape(Boards.Tern.With(("motor.can_length", ""), ("deck.width", "")));

        Assert.Equal(["deck.width 230 mm", "motor.can_length 70 mm"], shape.Guesses.Select(g => $"{g.Key} {g.Value}").Order(StringComparer.Ordinal));
        Assert.True(shape.Deck.IsGuess);
        Assert.All(shape.Motors, m => Assert.True(m.Can.IsGuess));
        Assert.Empty(Shape(Boards.Tern).Guesses);
        Assert.Empty(Shape(Boards.Tern).LeftOut);
    }

    [Fact]
    public void What_was_not_chosen_is_left_out_and_named()
    {
        var shape = Shape(Boards.Tern with { Parts = Boards.Tern.Parts with { Box = new(), Belt = new(), Mount = new() } });

        Assert.Equal(["belt", "box", "mount"], shape.LeftOut.Order(StringComparer.Ordinal));
        Assert.Null(shape.Box);
        Assert.All(shape.Motors, m => Assert.Null(m.Plate));
    }
}
