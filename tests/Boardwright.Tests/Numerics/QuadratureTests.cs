using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class QuadratureTests
{
    // M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), table 26.1: the normal area from 0 to 1
    // is 0.34134 47460 68543.
    [Fact]
    public void Area_under_the_normal_density_is_the_tabulated_one() =>
        Assert.Equal(
            0.341344746068543,
            Quadrature.Integrate(static x => Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI), 0, 1, 1),
            5e-16); // half the last printed digit

    [Fact]
    public void A_polynomial_of_degree_fifteen_is_integrated_exactly_and_one_of_sixteen_is_not()
    {
        for (var power = 0; power <= 15; power++)
            Assert.Equal(1.0 / (power + 1), Quadrature.Integrate(x => Math.Pow(x, power), 0, 1, 1), 4e-16); // rounding of eight terms

        // Theory: (8!)^4 / (17 (16!)^3) · 16! = 3.55e-10 short on a panel of width 1.
        Assert.Equal(3.55e-10, 1.0 / 17 - Quadrature.Integrate(x => Math.Pow(x, 16), 0, 1, 1), 5e-13);
    }

    [Fact]
    public void Half_the_width_gives_a_65536th_of_the_error()
    {
        // The 16th derivative of x^16 is constant, so the order shows undisturbed.
        static double Error(int panels) => 1.0 / 17 - Quadrature.Integrate(x => Math.Pow(x, 16), 0, 1, panels);

        Assert.Equal(16, Math.Log2(Error(1) / Error(2)), 0.05); // rounding of 0.06 is a hundredth of Error(2), 5e-15
    }

    [Fact]
    public void Swapped_ends_change_the_sign_and_parts_add_up() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-3, 3]).Sample((a, b, c) =>
        {
            var whole = Quadrature.Integrate(Math.Sin, a, c, 4);
            var parts = Quadrature.Integrate(Math.Sin, a, b, 4) + Quadrature.Integrate(Math.Sin, b, c, 4);
            var back = Quadrature.Integrate(Math.Sin, c, a, 4);
            // A panel of at most 1.5 leaves under 1e-15 of error; the rest is rounding.
            return Math.Abs(whole - parts) < 1e-14 && Math.Abs(whole + back) < 1e-14
                && Math.Abs(whole - (Math.Cos(a) - Math.Cos(c))) < 1e-14;
        });

    [Fact]
    public void Ends_and_panels_that_cannot_work_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Quadrature.Integrate(Math.Sin, 0, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quadrature.Integrate(Math.Sin, double.NaN, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quadrature.Integrate(Math.Sin, 0, double.PositiveInfinity, 1));
    }
}
