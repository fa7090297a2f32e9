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

    // M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), table 26.1: shares to 15 decimals.
    [Theory]
    [InlineData(0.691462461274013, 0.5)]
    [InlineData(0.841344746068543, 1)]
    [InlineData(0.977249868051821, 2)]
    [InlineData(0.998558758082660, 2.98)]
    public void Quantiles_of_the_shares_tabulated_by_Abramowitz_and_Stegun_are_their_places(double share, double expected) =>
        Assert.Equal(expected, Normal.Quantile(share), 6e-16 / Density(expected)); // half the last printed digit and rounding

    // The same, table 26.2: −log10 of the upper tail at 5, 10 and 20 is 6.54265, 23.11805 and 88.56010.
    [Theory]
    [InlineData(6.54265, -5)]
    [InlineData(23.11805, -10)]
    [InlineData(88.56010, -20)]
    public void Quantiles_of_the_far_tails_tabulated_by_Abramowitz_and_Stegun_are_their_places(double logarithm, double expected) =>
        // Half the last printed digit; the logarithm to base ten falls by about x / 2.3 for each unit of x.
        Assert.Equal(expected, Normal.Quantile(Math.Pow(10, -logarithm)), 5.01e-6 * 2.31 / -expected);

    [Fact]
    public void The_density_has_the_share_below_the_quantile() =>
        Gen.Double[1e-9, 1 - 1e-9].Sample(share =>
            Math.Abs(0.5 + Quadrature.Integrate(Density, 0, Normal.Quantile(share), 6) - share) < 2e-15); // rounding of the sum

    // Abramowitz and Stegun, eq. 26.2.14: Laplace's continued fraction of the tail, good from 3 on.
    [Fact]
    public void The_tail_has_the_share_beyond_the_quantile() =>
        Gen.Double[3, 36].Sample(x =>
        {
            var fraction = x;
            for (var i = 40; i > 0; i--) fraction = x + i / fraction;
            return Math.Abs(Normal.Quantile(Density(x) / fraction) + x) < 1e-13; // 3e-13 of the share is at most 3e-13 / x
        });

    [Fact]
    public void Both_halves_mirror_each_other() =>
        Gen.Int[1, 1 << 20].Select(static i => i / (double)(1 << 21))
        .Sample(share => Normal.Quantile(share) == -Normal.Quantile(1 - share));

    static double Density(double x) => Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    public void A_share_without_a_quantile_is_refused(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Quantile(share));
}
