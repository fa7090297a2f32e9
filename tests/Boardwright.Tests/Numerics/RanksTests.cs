using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class RanksTests
{
    // M. Hollander and D. A. Wolfe, Nonparametric Statistical Methods (1973), p. 185: lightness of tuna and a panel's score
    // of nine lots. Without ties ρ = 1 − 6 Σd² / (n (n² − 1)); the ranks differ by Σd² = 48, so ρ = 0.6.
    [Fact]
    public void Spearman_of_the_tuna_of_Hollander_and_Wolfe_is_six_tenths() =>
        Assert.Equal(
            0.6,
            Assert.NotNull(Ranks.Spearman(
                [44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1],
                [2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8])),
            1e-15); // rounding

    // By hand: ranks 1, 2.5, 2.5, 4 against 1, 3, 2, 4 deviate by −1.5, 0, 0, 1.5 and −1.5, 0.5, −0.5, 1.5:
    // ρ = 4.5 / √(4.5 · 5) = √0.9.
    [Fact]
    public void Ties_share_their_mean_rank()
    {
        Assert.Equal([1, 2.5, 2.5, 4], Ranks.Compute([-3, 7, 7, 10]));
        Assert.Equal([2, 2, 2], Ranks.Compute([5, 5, 5]));
        Assert.Equal(Math.Sqrt(0.9), Assert.NotNull(Ranks.Spearman([-3, 7, 7, 10], [1, 3, 2, 4])), 1e-15); // rounding
    }

    [Fact]
    public void Only_the_order_counts() =>
        // Whole numbers, so that ties occur and no two become equal by rounding.
        Gen.Select(Gen.Int[-5, 5].Select(static i => (double)i).Array[8], Gen.Int[-5, 5].Select(static i => (double)i).Array[8]).Sample((x, y) =>
            Ranks.Spearman(x, y) == Ranks.Spearman([.. x.Select(Math.Exp)], [.. y.Select(static v => 3 * v - 1)])
            && Ranks.Spearman(x, y) == Ranks.Spearman(y, x)
            && Ranks.Spearman(x, y) == -Ranks.Spearman(x, [.. y.Select(static v => -v)]));

    [Fact]
    public void Ranks_without_ties_are_the_whole_numbers_in_order() =>
        Gen.Shuffle(Enumerable.Range(1, 20).Select(static i => (double)i).ToArray()).Sample(values =>
            Ranks.Compute(values).SequenceEqual(values));

    [Fact]
    public void Lists_in_the_same_order_correlate_fully_and_in_opposite_order_fully_the_other_way()
    {
        Assert.Equal(1, Ranks.Spearman([1, 2, 3], [10, 20, 1000]));
        Assert.Equal(-1, Ranks.Spearman([1, 2, 3], [3, 2, -50]));
    }

    [Fact]
    public void A_list_of_equal_values_has_no_correlation() => Assert.Null(Ranks.Spearman([1, 1, 1], [1, 2, 3]));

    [Fact]
    public void Lists_that_cannot_be_compared_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Ranks.Spearman([1, 2], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => Ranks.Spearman([1], [1]));
        Assert.Throws<ArgumentException>(() => Ranks.Spearman([1, double.NaN], [1, 2]));
    }
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
