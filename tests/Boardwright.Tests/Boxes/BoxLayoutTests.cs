using Boardwright.Examinations;
using Boardwright.Boxes;
using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Tests.Boxes;

public sealed class BoxLayoutTests
{
    static BoxLayout LayoutOf(Board board) => Examination.Examine(board).Layout.Value;

    static double Tenths(Length value) => Math.Round(value.Millimetres, 1);

    public static TheoryData<string> BoardsByName { get; } = new(Boards.Names);

    [Theory]
    [MemberData(nameof(BoardsByName))]
    public void A_proposal_has_a_place_for_everything_and_keeps_its_own_rules(string name)
    {
        var layout = LayoutOf(Boards.Read(name));

        Assert.True(layout.IsComplete);
        Assert.Empty(layout.Unsized);
        // Looked at as if all of it were stated, which is when every pair is judged.
        foreach (var thing in layout.Things)
            Assert.Empty(layout.With(thing).Faults);
    }

    [Theory]
    [MemberData(nameof(BoardsByName))]
    public void What_is_written_down_is_read_back_to_the_same_places(string name)
    {
        var board = Boards.Read(name);
        var layout = LayoutOf(board);
        var text = LayoutText.Write(File.ReadAllText(Boards.PathOf(name)), layout.Things);
        Assert.Null(text.Refusal);
        var again = LayoutOf(BoardFile.ReadText(text.Text, Boards.PathOf(name)).Board!);

        Assert.All(again.Things, thing => Assert.True(thing.IsStated));
        Assert.Equal(layout.Things.Select(t => (t.Name, t.Turn, t.Wall, Tenths(t.X), Tenths(t.Y))),
            again.Things.Select(t => (t.Name, t.Turn, t.Wall, Tenths(t.X), Tenths(t.Y))));
        Assert.Empty(again.Faults);
    }

    [Fact]
    public void The_same_board_is_laid_out_the_same_way_twice() =>
        Assert.Equal(LayoutOf(Boards.Tern).Things.Select(t => (t.Name, t.X, t.Y, t.Turn)),
        LayoutOf(Boards.Tern).Things.Select(t => (t.Name, t.X, t.Y, t.Turn)));

    [Fact]
    public void Terns_glands_look_to_the_motors_and_its_controller_lies_beside_them()
    {
        var layout = LayoutOf(Boards.Tern);

        Assert.Equal("pack controller fuse receiver gland 1|gland 2|charge socket|switch|gauge".Replace('|', ' '), string.Join(' ', layout.Things.Select(t => t.Name)));
        Assert.All(layout.Things.Where(t => t.Kind == ThingKind.Gland), gland => Assert.Equal(BoxWall.Rear, gland.Wall));
        Assert.True(layout["controller"]!.X < layout["pack"]!.X);
        Assert.All(layout["controller"]!.Leads.Where(l => l.Name.StartsWith("motor", StringComparison.Ordinal)),
            lead => Assert.Equal(BoxWall.Rear, lead.Towards));
    }

    [Theory]
    [InlineData(0, 12, 5, BoxWall.Front)]
    [InlineData(90, -5, 12, BoxWall.Right)]
    [InlineData(180, -12, -5, BoxWall.Rear)]
    [InlineData(270, 5, -12, BoxWall.Left)]
    public void A_thing_turns_clockwise_seen_from_above(int turn, double x, double y, BoxWall towards)
    {
        static Length Mm(double value) => Length.FromMillimetres(value);
        var thing = new BoxThing(
            "fuse", ThingKind.Fuse, "fuse", "fuse", Mm(24), Mm(10), Mm(8), default, [new Lead("out", Mm(12), Mm(5), BoxWall.Front, Mm(7), Mm(4))]);
        var placed = new PlacedThing(thing, default, default, turn, null, true);

        var lead = Assert.Single(placed.Leads);
        Assert.Equal((x, y, towards), (lead.X.Millimetres, lead.Y.Millimetres, lead.Towards));
        var room = Assert.Single(placed.Rooms);
        Assert.Equal(turn % 180 == 0 ? (7, 4) : (4, 7), (Math.Round(room.Along.Millimetres, 6), Math.Round(room.Across.Millimetres, 6)));
        Assert.Equal(turn % 180 == 0 ? (24, 10) : (10, 24),
            (Math.Round(placed.Body.Along.Millimetres, 6), Math.Round(placed.Body.Across.Millimetres, 6)));
    }

    [Fact]
    public void A_stated_place_stays_and_everything_else_goes_around_it()
    {
        var layout = LayoutOf(Boards.Tern.With(("layout.pack.x", "-150 mm"), ("layout.pack.y", "0 mm"), ("layout.switch.wall", "left"), ("layout.switch.along", "100 mm"), ("layout.receiver.turn", "90 deg")));

        Assert.True(layout.IsComplete);
        Assert.Equal((-150, 0, 0, true), (layout["pack"]!.X.Millimetres, layout["pack"]!.Y.Millimetres, layout["pack"]!.Turn, layout["pack"]!.IsStated));
        Assert.Equal((BoxWall.Left, 100), (layout["switch"]!.Wall!.Value, layout["switch"]!.Along.Millimetres));
        Assert.Equal(90, layout["receiver"]!.Turn);
        Assert.Empty(layout.With(layout["fuse"]!).Faults);
    }

    [Fact]
    public void What_would_let_everything_in_does()
    {
        var board = Boards.Tern.With(("box.inner_length", "400 mm"));
        var shortfall = LayoutOf(board).Shortfall!;

        Assert.NotNull(shortfall.Longer);
        Assert.True(LayoutOf(Boards.Tern.With(("box.inner_length", FormattableString.Invariant($"{400 + shortfall.Longer!.Value.Millimetres:0} mm")))).IsComplete);
        if (shortfall.Wider is { } wider)
            Assert.True(LayoutOf(board.With(("box.inner_width", FormattableString.Invariant($"{152 + wider.Millimetres:0} mm")))).IsComplete);
        Assert.Null(LayoutOf(Boards.Tern).Shortfall);
    }

    [Fact]
    public void Openings_are_where_the_fittings_are_seen_from_outside_with_the_board_turned_over()
    {
        var layout = LayoutOf(Boards.Tern.With(("layout.gland 1.wall", "rear"), ("layout.gland 1.along", "-30 mm"), ("layout.gauge.wall", "right"), ("layout.gauge.along", "20 mm")));

        // From behind, the board upside down, its left-hand side is on the right.
        Assert.Contains(layout.Openings, o => o.Wall == BoxWall.Rear && Math.Abs(o.Along.Millimetres - 30) < 1e-9);
        Assert.Contains(layout.Openings, o => o.Wall == BoxWall.Right && Math.Abs(o.Along.Millimetres + 20) < 1e-9 && o.Tall is not null);
        Assert.Equal(5, layout.Openings.Count);
    }

    [Theory]
    [InlineData("M12 cable gland", null, ThingKind.Gland)]
    [InlineData("push button 16", null, ThingKind.Switch)]
    [InlineData("charge socket with cap", null, ThingKind.ChargeSocket)]
    [InlineData("charge gauge", null, ThingKind.Gauge)]
    [InlineData("vent", null, ThingKind.Fitting)]
    [InlineData("vent", FittingRole.Switch, ThingKind.Switch)]
    public void A_fitting_is_what_its_role_or_its_name_says(string name, FittingRole? role, ThingKind kind) =>
        Assert.Equal(kind, BoxThing.RoleOf(new Fitting { Name = name, Role = role is { } stated ? stated : default(Known<FittingRole>) }));

    [Fact]
    public void A_deck_that_bends_takes_from_the_depth_only_what_it_bends_between_two_bolts()
    {
        // 0.08 mm/kg and 85 kg are 6.8 mm in the middle of 780 mm: 12 δ/L² p²/8 over the bolts' distance.
        var pitch = BoltPattern.Compute(Boards.Tern).Value.Pitch.Metres;
        Assert.Equal(12 * 6.8 / (0.78 * 0.78) * pitch * pitch / 8, LayoutOf(Boards.Tern).Sag.Value.Millimetres, 1e-9);
        Assert.Equal(default, LayoutOf(Boards.Tern.With(("deck.bend_per_kg", "0 mm/kg"))).Sag.Value);
    }
}
