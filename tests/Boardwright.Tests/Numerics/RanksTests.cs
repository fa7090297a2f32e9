using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class RanksTests
{
    // M. Hollander and D. A. Wolfe, Nonparametric Statistical Methods (1973), p. 185: lightness of tuna and a panel's score
    // of nine lots. Their ρ = 1 − 6 Σd² / (n (n² − 1)) is 0.6, so the ranks differ by Σd² = 48.
    [Fact]
    public void Ranks_of_the_tuna_of_Hollander_and_Wolfe_differ_as_theirs()
    {
        var lightness = Ranks.Compute([44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1]);
        var score = Ranks.Compute([2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8]);

        Assert.Equal(48, lightness.Zip(score, static (a, b) => (a - b) * (a - b)).Sum());
    }

    [Fact]
    public void Ties_share_their_mean_rank()
    {
        Assert.Equal([1, 2.5, 2.5, 4], Ranks.Compute([-3, 7, 7, 10]));
        Assert.Equal([2, 2, 2], Ranks.Compute([5, 5, 5]));
    }

    [Fact]
    public void Only_the_order_counts() =>
        // Whole numbers, so that ties occur and no two become equal by rounding.
        Gen.Int[-5, 5].Select(static i => (double)i).Array[8].Sample(x =>
            Ranks.Compute(x).SequenceEqual(Ranks.Compute([.. x.Select(Math.Exp)]))
            && Ranks.Compute(x).SequenceEqual(Ranks.Compute([.. x.Select(static v => -v)]).Select(static r => 9 - r)));

    [Fact]
    public void Ranks_without_ties_are_the_whole_numbers_in_order() =>
        Gen.Shuffle(Enumerable.Range(1, 20).Select(static i => (double)i).ToArray()).Sample(values =>
            Ranks.Compute(values).SequenceEqual(values));

    [Fact]
    public void What_is_not_a_number_has_no_rank() => Assert.Throws<ArgumentException>(() => Ranks.Compute([1, double.NaN]));
}

public sealed class QuantileTests
{
    // By definition 7 of Hyndman and Fan: h = 3 · 0.25 = 0.75, so 1 + 0.75 · (2 − 1).
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.25, 1.75)]
    [InlineData(0.5, 3)]
    [InlineData(0.75, 5)]
    [InlineData(1, 8)]
    public void Quantiles_of_four_values_are_those_worked_by_hand(double share, double expected) =>
        Assert.Equal(expected, Quantile.OfSorted([1, 2, 4, 8], share));

    [Fact]
    public void A_quantile_at_a_rank_is_the_value_of_that_rank() =>
        Gen.Double[-5, 5].Array[2, 40].Sample(values =>
        {
            Array.Sort(values);
            return Enumerable.Range(0, values.Length).All(i =>
                // The share i / (n − 1) is rounded, so the rank is too.
                Math.Abs(Quantile.OfSorted(values, (double)i / (values.Length - 1)) - values[i]) < 1e-12);
        });

    [Fact]
    public void A_single_value_is_every_quantile() => Assert.Equal(7, Quantile.OfSorted([7], 0.3));

    [Fact]
    public void A_sample_of_nothing_and_a_share_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Quantile.OfSorted([], 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantile.OfSorted([1, 2], 1.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantile.OfSorted([1, 2], double.NaN));
    }
}
