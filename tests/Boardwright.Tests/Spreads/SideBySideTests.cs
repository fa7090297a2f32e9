using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Spreads;

namespace Boardwright.Tests.Spreads;

public sealed class SideBySideTests
{
    static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    static readonly Examination Tern = Examination.Examine(Boards.Tern);

    static SideBySide With(string key, string value) =>
        SideBySide.Compare([Tern, Examination.Examine(Boards.Tern.With((key, value)))], 64, cancellation: Cancellation);

    [Fact]
    public void A_board_beside_itself_differs_in_nothing()
    {
        var sides = SideBySide.Compare([Tern, Examination.Examine(Boards.Read("tern"))], 32, cancellation: Cancellation);

        Assert.NotEmpty(sides.Differences[1]);
        Assert.All(sides.Differences[1].Values, d => Assert.Equal(new FigureDifference(0, 0, 0), d));
    }

    [Fact]
    public void A_faster_cruise_costs_range_by_more_than_is_unknown_although_the_ranges_overlap()
    {
        var sides = With("brief.cruise_speed", "27 km/h");
        var (slow, fast) = (sides.Intervals[0]["cruise.range"], sides.Intervals[1]["cruise.range"]);

        Assert.True(sides.Differences[1]["cruise.range"].IsClear);
        Assert.True(sides.Differences[1]["cruise.range"].High < 0);
        Assert.True(fast.High > slow.Low, $"{fast.High} and {slow.Low} should overlap, or the test shows nothing");
    }

    [Fact]
    public void What_a_change_does_not_touch_is_the_same_to_the_last_sample()
    {
        Assert.Equal(new FigureDifference(0, 0, 0), With("brief.cruise_speed", "27 km/h").Differences[1]["mass.board"]);
    }

    [Fact]
    public void The_intervals_of_a_board_are_near_those_of_its_own_sampling()
    {
        var alone = Spread.Sample(Tern, 256, cancellation: Cancellation).Intervals["cruise.range"];
        var beside = With("brief.cruise_speed", "27 km/h").Intervals[0]["cruise.range"];

        Assert.Equal(alone.Low, beside.Low, 0.15 * (alone.High - alone.Low));
        Assert.Equal(alone.High, beside.High, 0.15 * (alone.High - alone.Low));
    }

    [Fact]
    public void The_same_seed_gives_the_same_differences()
    {
        Assert.Equal(With("brief.rider_mass", "90 kg").Differences[1], With("brief.rider_mass", "90 kg").Differences[1]);
    }
}
