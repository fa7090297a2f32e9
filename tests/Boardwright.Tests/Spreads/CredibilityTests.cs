using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pictures;
using Boardwright.Examinations;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Spreads;
using Boardwright.Tests.Lessons;

namespace Boardwright.Tests.Spreads;

public sealed class CredibilityTests(ITestOutputHelper output)
{
    // The thirteen trials of a vaccine of Colditz et al., JAMA 271 (1994), as logarithms of the relative risk with their variances; τ² of
    // DerSimonian and Laird 0.3088, mean −0.7141 (all from memory, as printed by several packages of statistics).
    [Fact]
    public void Trials_of_a_vaccine_have_the_printed_mean_and_spread()
    {
        double[] y = [-0.8893, -1.5854, -1.3481, -1.4416, -0.2175, -0.7861, -1.6209, 0.0120, -0.4694, -1.3713, -0.3394, 0.4459, -0.0173];
        double[] variances = [0.3256, 0.1946, 0.4154, 0.0200, 0.0512, 0.0069, 0.2230, 0.0040, 0.0564, 0.0730, 0.0124, 0.5325, 0.0714];
        double[] u = [.. variances.Select(Math.Sqrt)];
        var squared = Credibility.Moments(y, u);
        var (mean, error) = Credibility.Mean(y, u, squared);

        Assert.Equal(0.3088, squared, 6e-4);
        Assert.Equal(-0.7141, mean, 3e-4);
        Assert.InRange(error, 0.178, 0.19);
    }

    // M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), table 26.8.
    [Theory]
    [InlineData(0.95, 5, 11.0705, 0.01)]
    [InlineData(0.05, 5, 1.1455, 0.02)]
    [InlineData(0.95, 10, 18.3070, 0.005)]
    [InlineData(0.05, 10, 3.9403, 0.005)]
    [InlineData(0.95, 2, 5.9915, 0.02)]
    [InlineData(0.95, 1, 3.8415, 0.06)]
    public void Quantiles_of_the_sum_of_squares_are_those_of_the_tables(double share, double freedom, double printed, double part) =>
        Assert.Equal(1, ChiSquared.Quantile(share, freedom) / printed, part);

    static RideEvidence Made(string board, int ride, double ratio, double spread) => new(
        board, $"ride {ride}", new RideDifference(
        RideComparison.Energy, 40 * ratio, 40, 40 * (1 - 1.645 * spread), 40 * (1 + 1.645 * spread), "", "", 0));

    // Six rides of a model that is 5 % low with a spread of its own of 6 %, the boards known to 5 %.
    [Fact]
    public void The_true_bias_lies_in_its_range_nine_times_out_of_ten()
    {
        var (bias, spread) = (0, 0);
        for (var number = 0; number < 300; number++)
        {
            var chance = new Chance(81_000 + (ulong)number);
            var found = Credibility.Compute(
                Enumerable.Range(0, 6).Select(
                i => Made($"board {i}", i, Math.Exp(Math.Log(1.05) + 0.06 * chance.Normal() + 0.05 * chance.Normal()), 0.05)))[0];
            bias += found.Bias.Covers(Number.FromValue(1.05)) ? 1 : 0;
            spread += found.Spread.Covers(Number.FromValue(0.06)) ? 1 : 0;
        }

        output.WriteLine($"bias inside {bias / 3.0:0.0} %, spread inside {spread / 3.0:0.0} %");
        Assert.InRange(bias, 255, 292);
        Assert.InRange(spread, 255, 292);
    }

    [Fact]
    public void Rides_of_one_board_count_as_one_board_and_that_is_said()
    {
        var one = Credibility.Compute([Made("A", 1, 1.1, 0.05), Made("A", 2, 1.11, 0.05), Made("A", 3, 1.09, 0.05)])[0];
        var two = Credibility.Compute([Made("A", 1, 1.1, 0.05), Made("A", 2, 1.11, 0.05), Made("B", 3, 0.9, 0.05)])[0];
        var alone = Credibility.Compute([Made("A", 1, 1.1, 0.05)])[0];

        Assert.Contains(one.Cautions, c => c.Contains("one board", StringComparison.Ordinal));
        Assert.Equal(0, one.Spread.Value.Value);
        Assert.Equal(2, two.Boards);
        Assert.False(two.IsBiased);
        Assert.True(double.IsNaN(alone.Give));
        Assert.Contains("One ride tells no spread", alone.Says, StringComparison.Ordinal);
        Assert.Empty(Credibility.Compute([]));
    }

    [Fact]
    public void The_models_own_spread_widens_the_ranges_of_a_board_that_takes_it_over()
    {
        var plain = Spread.Sample(Examination.Examine(Boards.Tern), 64);
        var board = Boards.Tern with
        {
            Model = new ModelFactors
            {
                Energy = new Known<Number>(Number.FromValue(1.05), 0.08, Origin.Measured, "model.energy"),
                WindingRise = new Known<Number>(Number.FromValue(0.9), 0.2, Origin.Measured, "model.winding_rise")
            },
        };
        var examination = Examination.Examine(board);
        var wide = Spread.Sample(examination, 64);
        var consumption = examination.Figures.Single(f => f.Kind.Id == Catalogue.Consumption.Id).Value!.Value;

        (double Low, double High) Of(Spread spread, string id) => (spread.Intervals[id].Low, spread.Intervals[id].High);
        var (before, after) = (Of(plain, Catalogue.Consumption.Id), Of(wide, Catalogue.Consumption.Id));
        Assert.True(after.High - after.Low > before.High - before.Low);
        // The middle goes where the rides say, the value itself stays.
        Assert.Equal(1.05 * consumption
            - Math.Sqrt(Math.Pow(1.05 * (consumption - before.Low), 2) + Math.Pow(1.6449 * 0.08 * consumption, 2)), after.Low, 0.01);
        Assert.Equal(Examination.Examine(Boards.Tern).Figures.Single(f => f.Kind.Id == Catalogue.Consumption.Id).Value, consumption);
        Assert.True(Of(wide, Catalogue.Range.Id).Low < Of(plain, Catalogue.Range.Id).Low);
        Assert.True(Of(wide, Catalogue.Winding.Id).Low < Of(plain, Catalogue.Winding.Id).Low);
        Assert.Equal(Of(plain, Catalogue.TopFull.Id), Of(wide, Catalogue.TopFull.Id));
    }

    [Fact]
    public void The_picture_has_every_ride_on_the_line_on_which_both_are_the_same()
    {
        var quantity = Credibility.Compute([Made("Ash", 1, 1.1, 0.05), Made("Ash", 2, 1.02, 0.05), Made("Elm", 3, 0.97, 0.05)])[0];
        var chart = CredibilityPicture.Draw(quantity);
        var panel = (LinePanel)chart.Panels[0];

        Assert.Equal(3, panel.Marks.Count);
        Assert.Equal(2, panel.Marks.Select(m => m.Pen).Distinct().Count());
        Assert.Equal(["nine rides in ten", "as predicted"], panel.Series.Select(s => s.Name));
        var svg = Svg.Write(ChartLayout.Compute(chart, new ChartView(420)).Drawing);
        Assert.Contains("Ash", svg, StringComparison.Ordinal);
        Assert.Contains("Elm", svg, StringComparison.Ordinal);
        Assert.Equal(svg, Svg.Write(ChartLayout.Compute(CredibilityPicture.Draw(quantity), new ChartView(420)).Drawing));
    }
}
