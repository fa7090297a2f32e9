using Boardwright.Boxes;
using Boardwright.Drivetrains;
using Boardwright.Findings;

namespace Boardwright.Tests.Boxes;

public sealed class BoltPatternTests
{
    [Theory]
    [InlineData(6)]
    [InlineData(8)]
    [InlineData(10)]
    [InlineData(12)]
    [InlineData(14)]
    public void Corners_and_the_middles_of_the_long_sides_always_have_a_bolt(int count)
    {
        var pattern = Of(("fixings.box.count", $"{count}"));
        var (x, y) = ((pattern.Flange.OuterLength / 2 - pattern.Inset).Millimetres,
            (pattern.Flange.OuterWidth / 2 - pattern.Inset).Millimetres);

        Assert.Equal(count, pattern.Places.Count);
        foreach (var (at, side) in new[] { (x, y), (x, -y), (-x, y), (-x, -y), (0, y), (0, -y) })
            Assert.Contains(pattern.Places, p => Math.Abs(p.X.Millimetres - at) < 1e-9 && Math.Abs(p.Y.Millimetres - side) < 1e-9);
        Assert.Equal(count, pattern.Places.Distinct().Count());
        Assert.Equal(pattern.Places.Count, pattern.Places.Select(p => p.Name).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_bolt_lies_on_the_flange_and_outside_of_the_walls()
    {
        var pattern = Of();
        var flange = pattern.Flange;

        Assert.All(pattern.Places, p =>
        {
            var (inX, inY) = (flange.OuterLength.Millimetres / 2 - Math.Abs(p.X.Millimetres),
                flange.OuterWidth.Millimetres / 2 - Math.Abs(p.Y.Millimetres));
            Assert.Equal(pattern.Inset.Millimetres, Math.Min(inX, inY), 1e-9);
            Assert.True(pattern.Inset.Millimetres >= HoleEdges.EdgeDistance(pattern.BoxHole).Millimetres - 1e-9);
        });
    }

    // Tern by hand: 590 + 2 (2.5 + 12) = 619 mm; a 5.5 mm hole keeps 1.2 · 5.5 = 6.6 mm from the edge; the bolts lie (619 − 13.2)/2 = 302.9
    // mm apart.
    [Fact]
    public void Terns_pattern_is_what_its_dimensions_say()
    {
        var pattern = Of();

        Assert.Equal(619, pattern.Flange.OuterLength.Millimetres, 1e-9);
        Assert.Equal(181, pattern.Flange.OuterWidth.Millimetres, 1e-9);
        Assert.Equal(6.6, pattern.Inset.Millimetres, 1e-9);
        Assert.Equal(302.9, pattern.Pitch.Millimetres, 1e-9);
        Assert.Equal(6.5, pattern.DeckHole.Millimetres, 1e-9);
        Assert.Equal(5.5, pattern.BoxHole.Millimetres, 1e-9);
    }

    // By hand: I = 2.5 · 52³/12 = 29 293 mm⁴; w = 0.063 · 14.5 = 0.9135 N/mm; δ = 0.15 · 3 = 0.45 mm; (185 · 2200 · 29 293 · 0.45 /
    // 0.9135)^¼ = 276.8 mm.
    [Fact]
    public void The_gaskets_pitch_follows_the_beam() =>
        Assert.Equal(276.8, Of().GreatestPitch!.Value.Millimetres, 0.1);

    [Fact]
    public void The_count_for_the_gasket_keeps_within_its_pitch()
    {
        var pattern = Of();
        Assert.True(pattern.Pitch > pattern.GreatestPitch);

        var enough = Of(("fixings.box.count", $"{pattern.CountForGasket}"));
        Assert.True(enough.Pitch <= enough.GreatestPitch);
    }

    [Fact]
    public void A_count_that_cannot_lie_alike_on_both_sides_is_drawn_as_the_next_that_does() =>
        Assert.Equal(8, Of(("fixings.box.count", "7")).Places.Count);

    [Fact]
    public void A_measured_insert_hole_goes_before_the_usual_one()
    {
        var pattern = Of(("fixings.box.insert_hole", "7.2 mm"));

        Assert.Equal(7.2, pattern.DeckHole.Millimetres, 1e-9);
        Assert.False(pattern.IsDeckHoleUsual);
    }

    [Fact]
    public void What_is_missing_is_named()
    {
        var answer = BoltPattern.Compute(Boards.Tern.With(("box.flange_width", ""), ("fixings.box.bolt", "")));

        Assert.False(answer.IsKnown);
        Assert.Equal(["box.flange_width", "fixings.box.bolt"], answer.Missing);
    }

    static BoltPattern Of(params (string Key, string Value)[] changes) => BoltPattern.Compute(Boards.Tern.With(changes)).Value;
}
