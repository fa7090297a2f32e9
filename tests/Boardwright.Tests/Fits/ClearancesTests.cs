using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;

namespace Boardwright.Tests.Fits;

public sealed class ClearancesTests
{
    static readonly double[] Leans = [-90, -22, -7, 0, 3, 15, 60];

    static BoardShape Shape(Parts.Board board) => Examination.Examine(board).Shape;

    static double Found(Parts.Board board, string rule, string? where = null) =>
        Examination.Examine(board).Findings.First(f => f.Rule == rule && (where is null || f.Where == where)).Value!.Value.Value;

    static Angle Degrees(double degrees) => Angle.FromDegrees(degrees);

    public static TheoryData<string> Names { get; } = [.. Boards.Names];

    [Theory]
    [InlineData("tern")]
    [InlineData("curlew")]
    public void A_board_alike_on_both_sides_has_mirrored_clearances_at_mirrored_leans(string name)
    {
        var shape = Shape(Boards.Read(name));
        foreach (var lean in new[] { 0.0, 4, 11, 15 })
        {
            var (right, left) = (Clearances.At(shape, Degrees(lean)), Clearances.At(shape, Degrees(-lean)));
            Assert.NotEmpty(right.All);
            foreach (var c in right.All)
            {
                var other = left.On(c.Side == BoardSide.Left ? BoardSide.Right : BoardSide.Left, c.What)!;
                Assert.Equal(c.Free.Metres, other.Free.Metres, 1e-12);
                Assert.Equal(c.From.Y.Metres, -other.From.Y.Metres, 1e-12);
                Assert.Equal(c.To.Z.Metres, other.To.Z.Metres, 1e-12);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Level_they_are_what_the_motor_s_place_says(string name)
    {
        var exam = Examination.Examine(Boards.Read(name));
        var level = Clearances.At(exam.Shape, default);
        var place = exam.MotorPlace.Value;
        var deck = DrivenAxle.DeckAboveAxle(new Needs(), exam.Board.Parts, underPlatform: false);

        Assert.Equal(place.AboveRoad(exam.Shape.WheelRadius).Metres, level.Least(Clearing.MotorToRoad)!.Free.Metres, 1e-12);
        Assert.Equal(place.UnderDeck(deck, default, default).Metres, level.Least(Clearing.MotorToDeck)!.Free.Metres, 1e-12);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void At_the_stop_they_are_what_the_rules_find(string name)
    {
        var board = Boards.Read(name);
        var shape = Shape(board);
        var leaned = Clearances.At(shape, shape.DrivenAxle.LeanStop);

        Assert.Equal(Found(board, "fit.motor_deck"), leaned.Least(Clearing.MotorToDeck)!.Free.Millimetres, 1e-9);
        Assert.Equal(Found(board, "fit.ground_motor"), leaned.Least(Clearing.MotorToRoad)!.Free.Millimetres, 1e-9);
        if (leaned.Least(Clearing.PulleyToRoad) is { } pulley)
            Assert.Equal(Found(board, "fit.ground_pulley"), pulley.Free.Millimetres, 1e-9);
    }

    [Fact]
    public void Wheel_bite_is_what_its_rule_finds()
    {
        var shape = Shape(Boards.Tern);

        Assert.Equal(Found(Boards.Tern, "fit.wheel_bite", "rear_truck.lean_stop"),
            Clearances.At(shape, shape.DrivenAxle.LeanStop).Least(Clearing.WheelToDeck)!.Free.Millimetres, 1e-9);
    }

    [Fact]
    public void A_bigger_wheel_raises_what_is_over_the_road_by_half_the_difference_and_comes_nearer_to_the_deck_by_as_much()
    {
        var (small, large) = (Clearances.At(Shape(Boards.Tern), Degrees(9)), Clearances.At(Shape(Boards.Tern.With(("wheels.diameter", "107 mm"))), Degrees(9)));
        double Grown(Clearing what) => (large.Least(what)!.Free - small.Least(what)!.Free).Millimetres;

        Assert.Equal(3.5, Grown(Clearing.MotorToRoad), 1e-9);
        Assert.Equal(3.5, Grown(Clearing.PulleyToRoad), 1e-9);
        Assert.Equal(-3.5, Grown(Clearing.WheelToDeck), 1e-9);
        Assert.Equal(0, Grown(Clearing.MotorToDeck), 1e-9);
    }

    [Fact]
    public void The_more_the_deck_leans_the_less_stays_on_that_side_and_the_more_on_the_other()
    {
        var shape = Shape(Boards.Tern);
        var row = Enumerable.Range(0, 16).Select(d => Clearances.At(shape, Degrees(d))).ToList();
        foreach (var what in new[] { Clearing.MotorToDeck, Clearing.WheelToDeck })
        {
            Assert.All(row.Zip(row.Skip(1)),
                p => Assert.True(p.Second.On(BoardSide.Right, what)!.Free < p.First.On(BoardSide.Right, what)!.Free));
            Assert.All(row.Zip(row.Skip(1)),
                p => Assert.True(p.Second.On(BoardSide.Left, what)!.Free > p.First.On(BoardSide.Left, what)!.Free));
        }

        Assert.All(row, c => Assert.Equal(row[0].Least(Clearing.MotorToRoad), c.Least(Clearing.MotorToRoad)));
    }

    [Fact]
    public void Beyond_the_stop_nothing_leans()
    {
        var shape = Shape(Boards.Tern);

        Assert.Equal(Degrees(15), Clearances.At(shape, Degrees(40)).Lean);
        Assert.Equal(Clearances.At(shape, Degrees(-15)).All, Clearances.At(shape, Degrees(-16)).All);
    }

    [Fact]
    public void The_tightest_is_the_least_of_all()
    {
        var clearances = Clearances.At(Shape(Boards.Read("puffin")), Degrees(20));

        Assert.Equal(Clearing.MotorToDeck, clearances.Tightest!.What);
        Assert.All(clearances.All, c => Assert.True(c.Free >= clearances.Tightest.Free));
    }

    [Fact]
    public void A_motor_beyond_the_deck_s_end_has_no_clearance_to_it() =>
        Assert.Null(Clearances.At(Shape(Boards.Tern.With(("deck.tail_overhang", "20 mm"))), default).Least(Clearing.MotorToDeck));

    [Fact]
    public void A_deck_inside_its_wheels_has_no_clearance_to_them() =>
        Assert.Null(Clearances.At(Shape(Boards.Tern.With(("deck.width", "180 mm"))), default).Least(Clearing.WheelToDeck));

    [Fact]
    public void The_two_points_of_any_clearance_are_as_far_apart_as_it_says()
    {
        for (var seed = 0; seed < 150; seed++)
        {
            var shape = Shape(AnyBoardTests.Strange(seed));
            foreach (var c in Leans.SelectMany(lean => Clearances.At(shape, Degrees(lean)).All))
            {
                var (x, y, z) = ((c.From.X - c.To.X).Metres, (c.From.Y - c.To.Y).Metres, (c.From.Z - c.To.Z).Metres);
                Assert.Equal(Math.Abs(c.Free.Metres), Math.Sqrt(x * x + y * y + z * z), 1e-9);
            }
        }
    }

    static RoundBody Round(double x, double radius, double from, double to) => new("", Mm(x), default, Mm(radius), Mm(from), Mm(to), false);

    static Length Mm(double millimetres) => Length.FromMillimetres(millimetres);

    [Theory]
    [InlineData(50, 0, 10, 20)] // side by side: 50 less both radii of 10 and 20
    [InlineData(10, 14, 24, 4)] // end to end
    [InlineData(33, 14, 24, 5)] // edge to edge: 3 and 4
    [InlineData(25, 2, 12, -5)] // one in the other sideways
    [InlineData(0, 8, 18, -2)] // one in the other endways
    public void The_gap_of_two_round_bodies_is_the_shortest_way_between_them(double x, double from, double to, double free) =>
        Assert.Equal(free, Round(0, 10, 0, 10).GapTo(Round(x, 20, from, to)).Free.Millimetres, 1e-9);
}
