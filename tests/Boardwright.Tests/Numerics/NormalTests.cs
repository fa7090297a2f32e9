using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class NormalTests
{
    // M. J. Wichura, Algorithm AS 241, Appl. Statist. 37 (1988) 477-484, section on checking: PPND16 at 0.25, 0.001 and 1e-20.
    [Theory]
    [InlineData(0.25, -0.6744897501960817)]
    [InlineData(0.001, -3.090232306167814)]
    [InlineData(1e-20, -9.262340089798408)]
    public void Quantiles_are_those_printed_by_Wichura(double share, double expected) =>
        Assert.Equal(expected, Normal.Quantile(share), 4e-16 * Math.Abs(expected)); // two units of rounding

    // M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), table 26.1 (15 decimals).
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.5, 0.691462461274013)]
    [InlineData(1, 0.841344746068543)]
    [InlineData(2, 0.977249868051821)]
    [InlineData(2.98, 0.998558758082660)]
    public void Shares_are_those_tabulated_by_Abramowitz_and_Stegun(double x, double expected) =>
        Assert.Equal(expected, Normal.Cumulative(x), 1e-15); // half the last printed digit and rounding

    // The same, table 26.2: −log10 of the upper tail at 5, 10 and 20 is 6.54265, 23.11805 and 88.56010.
    [Theory]
    [InlineData(-5, 6.54265)]
    [InlineData(-10, 23.11805)]
    [InlineData(-20, 88.56010)]
    public void Far_tails_are_those_tabulated_by_Abramowitz_and_Stegun(double x, double expected) =>
        Assert.Equal(expected, -Math.Log10(Normal.Cumulative(x)), 5.01e-6); // half the last printed digit

    [Fact]
    public void The_quantile_undoes_the_share_far_into_the_lower_tail() =>
        Gen.Double[-36, 0].Sample(x => Math.Abs(Normal.Quantile(Normal.Cumulative(x)) - x) < 1e-13); // 3e-13 of the share is at most 3e-13 / |x|, near 0 rounding

    [Fact]
    public void The_share_is_the_integral_of_the_density() =>
        Gen.Double[-6, 6].Sample(x =>
            Math.Abs(0.5 + Quadrature.Integrate(Normal.Density, 0, x, 6) - Normal.Cumulative(x)) < 2e-15); // rounding of the sum

    [Fact]
    public void Both_halves_mirror_each_other() =>
        Gen.Double[0, 8].Sample(x => Math.Abs(Normal.Cumulative(x) + Normal.Cumulative(-x) - 1) <= 2.3e-16); // one rounding of 1

    [Fact]
    public void The_share_rises_with_x_across_the_change_of_formula() =>
        Assert.All(
            Enumerable.Range(-100, 200),
            static i => Assert.True(Normal.Cumulative(-3 + (i + 1) * 1e-9) > Normal.Cumulative(-3 + i * 1e-9)));

    [Fact]
    public void Ends_are_zero_and_one_and_not_a_number_stays_so()
    {
        Assert.Equal(0, Normal.Cumulative(double.NegativeInfinity));
        Assert.Equal(1, Normal.Cumulative(double.PositiveInfinity));
        Assert.Equal(double.NaN, Normal.Cumulative(double.NaN));
        Assert.Equal(0, Normal.Quantile(0.5));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void A_share_without_a_quantile_is_refused(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Quantile(share));
}
