using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Road;

public sealed class AscentTests
{
    static readonly Gen<double[]> Heights = Gen.Double[0, 60].Array[1, 60];

    [Fact]
    public void Every_rise_and_fall_counts_in_the_raw_sum() =>
        Assert.Equal((7.0, 6.0), Metres(Ascent.Raw([1, 3, 2, 5, 0, 2])));

    // By hand: 4 stays within 5 of 0; 6 counts 6, and 2 stays within 5 of it; 0 lowers the reference; 5 is not above it by more than 5; 7
    // is.
    [Fact]
    public void The_reference_follows_only_beyond_the_threshold() =>
        Assert.Equal((13.0, 6.0), Metres(Ascent.WithHysteresis([0, 4, 6, 2, 0, 5, 7], Length.FromMetres(5))));

    // By hand: 10 -> 8 is the head, 8 -> 20 the climb (the dip to 18.5 is no turn), 20 -> 15 a turn, 15 -> 16 the tail.
    [Fact]
    public void A_dip_lower_than_the_threshold_is_no_turn() =>
        Assert.Equal((13.0, 7.0), Metres(Ascent.BetweenTurns([10, 8, 19, 18.5, 20, 15, 16], Length.FromMetres(2))));

    [Fact]
    public void Up_less_down_between_turns_is_the_difference_of_the_ends() =>
        Gen.Select(Heights, Gen.Double[0, 20]).Sample((heights, threshold) =>
        {
            var ascent = Ascent.BetweenTurns(heights, Length.FromMetres(threshold));
            return Math.Abs((ascent.Up - ascent.Down).Metres - (heights[^1] - heights[0])) < 1e-9;
        });

    [Fact]
    public void The_other_way_exchanges_up_and_down() =>
        Gen.Select(Heights, Gen.Double[0, 20]).Sample((heights, threshold) =>
        {
            var (there, raw) = (Ascent.BetweenTurns(heights, Length.FromMetres(threshold)), Ascent.Raw(heights));
            double[] reversed = [.. heights.Reverse()];
            var (back, rawBack) = (Ascent.BetweenTurns(reversed, Length.FromMetres(threshold)), Ascent.Raw(reversed));
            return Math.Abs((there.Up - back.Down).Metres) < 1e-9 && Math.Abs((there.Down - back.Up).Metres) < 1e-9
                && Math.Abs((raw.Up - rawBack.Down).Metres) < 1e-9;
        });

    [Fact]
    public void A_higher_threshold_never_counts_more() =>
        Gen.Select(Heights, Gen.Double[0, 20], Gen.Double[0, 20]).Sample((heights, threshold, more) =>
            Ascent.BetweenTurns(heights, Length.FromMetres(threshold + more)).Up.Metres
            <= Ascent.BetweenTurns(heights, Length.FromMetres(threshold)).Up.Metres + 1e-9);

    [Fact]
    public void Without_a_threshold_the_three_sums_agree() =>
        Heights.Sample(heights =>
        {
            var raw = Ascent.Raw(heights).Up.Metres;
            return Math.Abs(raw - Ascent.BetweenTurns(heights, default).Up.Metres) < 1e-9
                && Math.Abs(raw - Ascent.WithHysteresis(heights, default).Up.Metres) < 1e-9;
        });

    [Fact]
    public void No_height_makes_no_ascent()
    {
        Assert.Equal(default, Ascent.Raw([]));
        Assert.Equal(default, Ascent.WithHysteresis([], default));
        Assert.Equal(default, Ascent.BetweenTurns([], default));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_threshold_below_zero_is_refused(double threshold)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Ascent.BetweenTurns([1, 2], Length.FromMetres(threshold)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Ascent.WithHysteresis([1, 2], Length.FromMetres(threshold)));
    }

    static (double, double) Metres(Ascent ascent) => (ascent.Up.Metres, ascent.Down.Metres);
}
