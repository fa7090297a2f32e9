using System.Globalization;
using System.Text.Json;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;

namespace Boardwright.Tests.Fits;

/// <summary>Belt drives along the axle, against a tape laid out by hand (tests/independent/stacks.py) and against what must hold for every
/// board.</summary>
public sealed class AxialStackUpTests
{
    static readonly JsonElement Worked =
        JsonDocument.Parse(File.ReadAllText(Repository.At("tests", "independent", "stacks.json"))).RootElement;

    public static TheoryData<string> Names { get; } = [.. Worked.EnumerateArray().Select(s => s.GetProperty("name").GetString()!)];

    static Board BoardOf(JsonElement stack) => Boards.Tern.With([.. stack.GetProperty("given").EnumerateObject().Select(
        p => (p.Name, p.Value.ValueKind == JsonValueKind.Null ? "" : $"{p.Value.GetDouble().ToString(CultureInfo.InvariantCulture)} mm"))]);

    [Fact]
    public void Twenty_stacks_were_worked_out_by_hand() => Assert.Equal(20, Names.Count);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_stack_is_what_was_worked_out_by_hand(string name)
    {
        var worked = Worked.EnumerateArray().Single(s => s.GetProperty("name").GetString() == name);
        var exam = Examination.Examine(BoardOf(worked));
        var (stack, axle) = (exam.AxialStack.Value, exam.AxleStack.Value);
        var room = AxialStackUp.CoverRoom(new Needs(), exam.Board.Parts);
        var under = stack.PulleyUnder(room);
        var found = new Dictionary<string, Length>
        {
            ["plane"] = stack.Plane.Nominal,
            ["pulley_inner"] = stack.PulleyInner.Nominal,
            ["pulley_outer"] = stack.PulleyOuter.Nominal,
            ["shaft_end"] = stack.ShaftEnd.Nominal,
            ["from_plate"] = stack.FromPlate.Nominal,
            ["from_plate_worst"] = stack.FromPlate.Worst,
            ["from_plate_likely"] = stack.FromPlate.Likely,
            ["misalignment"] = stack.Misalignment,
            ["on_shaft"] = stack.Pulley.Length.Nominal * stack.Seat,
            ["belt_past_shaft"] = stack.BeltOuter.Minus(stack.ShaftEnd).Nominal,
            ["shaft_under_cover"] = stack.ShaftUnder(room).Nominal,
            ["pulley_under_cover"] = under.Nominal,
            ["pulley_under_cover_worst"] = under.Worst,
            ["pulley_under_cover_likely"] = under.Likely,
            ["wheel"] = axle.Wheel.Nominal,
            ["bearing"] = axle.Bearing.Nominal,
            ["thread_left"] = axle.Free.Nominal,
        };

        Assert.All(worked.GetProperty("found").EnumerateObject(),
            p => Assert.Equal(p.Value.GetDouble(), found[p.Name].Millimetres, 0.01));
        Assert.Equal(found.Count, worked.GetProperty("found").EnumerateObject().Count());
    }

    [Theory]
    [InlineData(6)]
    [InlineData(9.5)]
    [InlineData(14)]
    [InlineData(30)]
    public void A_plate_one_millimetre_further_in_moves_the_pulley_one_millimetre_along_the_shaft(double from)
    {
        AxialStackUp At(double plate) =>
            Examination.Examine(Boards.Tern.With(("mount.plate_from_wheel", FormattableString.Invariant($"{plate} mm")))).AxialStack.Value;
        var (near, far) = (At(from), At(from + 1));

        Assert.Equal(1, (near.SeatLength.Nominal - far.SeatLength.Nominal).Millimetres, 1e-9);
        Assert.Equal(1, (far.FromPlate.Nominal - near.FromPlate.Nominal).Millimetres, 1e-9);
        Assert.Equal(near.PulleyOuter.Nominal.Millimetres, far.PulleyOuter.Nominal.Millimetres, 1e-9);
    }

    [Theory]
    [InlineData("mount.plate_from_wheel=8 mm")]
    [InlineData("mount.plate_from_wheel=2 mm")]
    [InlineData("mount.plate_from_wheel=25 mm;drive.pulley_from_hanger=3 mm")]
    [InlineData("motor_pulley.face_offset=;wheel_pulley.face_offset=")]
    public void What_is_drawn_lies_where_the_stack_has_it(string edits)
    {
        var exam = Examination.Examine(Boards.Tern.With([.. edits.Split(';').Select(e => e.Split('=', 2)).Select(e => (e[0], e[1]))]));
        var (stack, axle) = (exam.AxialStack.Value, exam.AxleStack.Value);
        var motor = exam.Shape.Motors.Single(m => m.Side == BoardSide.Left);
        var end = exam.Shape.DrivenAxle.HangerWidth / 2;
        void Same(DimensionChain expected, Length drawn) => Assert.Equal(expected.Nominal.Millimetres, (drawn - end).Millimetres, 1e-9);

        Same(stack.PulleyInner, motor.Pulley!.From);
        Same(stack.PulleyOuter, motor.Pulley.To);
        Same(stack.ShaftEnd, motor.Shaft!.To);
        Same(stack.BeltOuter, motor.Belt!.To);
        Same(axle.Wheel, exam.Shape.DrivenAxle.Wheels[0].From);
    }

    [Fact]
    public void A_pulley_turned_twice_lies_as_before()
    {
        var stack = Examination.Examine(Boards.Tern).AxialStack.Value;

        Assert.Equal(stack.PulleyInner.Nominal.Metres, stack.Turned.Turned.PulleyInner.Nominal.Metres, 1e-12);
        Assert.Equal(1, stack.Turned.Pulley.Offset.Nominal.Millimetres, 1e-9);
    }

    [Fact]
    public void Errors_add_up_at_worst_and_by_their_squares_otherwise_and_a_dimension_takes_itself_away()
    {
        var needs = new Needs();
        var motor = Boards.Tern.With(("motor.shaft_length", "38 mm"), ("motor.can_length", "74 mm")).Parts.Motor;
        var (shaft, can) =
            (DimensionChain.Read(needs, motor.ShaftLength, typeof(Motor)), DimensionChain.Read(needs, motor.CanLength, typeof(Motor)));
        var sum = shaft.Plus(can);

        Assert.Equal(0.8, sum.Worst.Millimetres, 1e-9);
        Assert.Equal(0.4 * Math.Sqrt(2), sum.Likely.Millimetres, 1e-9);
        Assert.Equal(0, shaft.Minus(shaft).Worst.Millimetres, 1e-12);
        Assert.Equal(can.Worst.Millimetres, sum.Minus(shaft).Worst.Millimetres, 1e-9);
        Assert.Equal(["motor.shaft_length", "motor.can_length"], sum.Loosest);
    }
}
