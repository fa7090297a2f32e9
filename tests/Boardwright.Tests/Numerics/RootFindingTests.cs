using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class RootFindingTests
{
    readonly struct Wallis : IFunction
    {
        public double At(double x) => x * x * x - 2 * x - 5;
    }

    // John Wallis's cubic x³ − 2x − 5 = 0, the example Newton used; its root is OEIS A007493, 2.09455148154232659...
    [Fact]
    public void Root_of_Newtons_cubic_is_the_published_one() =>
        Assert.Equal(2.0945514815423265, RootFinding.Within(new Wallis(), 2, 3, 1e-15), 2e-15); // the tolerance and rounding

    // The fixed point of the cosine, OEIS A003957, 0.73908513321516064...
    [Fact]
    public void Root_of_cos_x_less_x_is_the_published_one() =>
        Assert.Equal(0.7390851332151607, RootFinding.Within(x => Math.Cos(x) - x, 0, 1, 1e-15), 2e-15); // as above

    [Fact]
    public void A_root_anywhere_in_the_bracket_is_found_to_the_tolerance() =>
        Gen.Select(Gen.Double[-100, 100], Gen.Double[0.1, 50], Gen.Double[0.1, 50], Gen.Int[0, 3]).Sample((root, below, above, kind) =>
        {
            double F(double x) => kind switch
            {
                0 => x - root,
                1 => Math.Pow(x - root, 3),
                2 => Math.Atan(20 * (x - root)),
                _ => Math.Exp(x - root) - 1,
            };
            var found = RootFinding.Within(F, root - below, root + above, 1e-9);
            // The cube is so flat at its root, and e^x − 1 rounds so, that 1e-13 of rounding shows.
            return Math.Abs(found - root) <= 1e-9 + 1e-13;
        });

    [Fact]
    public void The_order_of_the_ends_and_the_sign_of_the_function_do_not_matter()
    {
        var expected = RootFinding.Within(x => x * x - 2, 0, 2, 1e-12);

        // Each answer is within the tolerance of the root, so two are within twice that.
        Assert.Equal(expected, RootFinding.Within(x => x * x - 2, 2, 0, 1e-12), 2e-12);
        Assert.Equal(expected, RootFinding.Within(x => 2 - x * x, 0, 2, 1e-12), 2e-12);
    }

    [Fact]
    public void Few_looks_find_the_root_of_a_smooth_function()
    {
        var looks = 0;
        RootFinding.Within(
            x =>
            {
                looks++;
                return Math.Exp(x) - 3;
            },
            0,
            5,
            1e-12);

        Assert.InRange(looks, 3, 20); // bisection needs 44
    }

    [Fact]
    public void A_zero_at_an_end_is_that_end()
    {
        Assert.Equal(0, RootFinding.Within(x => x, 0, 5, 1e-6));
        Assert.Equal(5, RootFinding.Within(x => x - 5, 0, 5, 1e-6));
    }

    [Fact]
    public void A_jump_is_found_where_it_is() =>
        Assert.Equal(0.3, RootFinding.Within(x => x < 0.3 ? -1 : 1, 0, 1, 1e-12), 2e-12); // the tolerance and rounding

    [Fact]
    public void A_function_that_grows_without_bound_still_has_its_root_found() =>
        Assert.Equal(1, RootFinding.Within(x => x >= 2 ? double.PositiveInfinity : x - 1, 0, 3, 1e-12), 2e-12); // as above

    [Fact]
    public void Without_a_change_of_sign_there_is_no_root()
    {
        Assert.Null(RootFinding.TryWithin(x => x * x + 1, -1, 1, 1e-9));
        Assert.Throws<ArgumentException>(() => RootFinding.Within(x => x * x + 1, -1, 1, 1e-9));
    }

    [Fact]
    public void A_tolerance_out_of_reach_is_a_failure_to_converge() =>
        // 200 halvings of 1e300 leave 1e240; nothing but halving works on a jump.
        Assert.Throws<NonConvergenceException>(() => RootFinding.Within(x => x < 1e-200 ? -1 : 1, -1, 1e300, 1e-300));

    [Fact]
    public void A_function_that_is_not_a_number_is_a_failure_to_converge() =>
        Assert.Throws<NonConvergenceException>(() => RootFinding.Within(x => x is 0 or 1 ? x - 0.5 : double.NaN, 0, 1, 1e-9));

    [Theory]
    [InlineData(double.NaN, 1, 1e-9)]
    [InlineData(0, double.PositiveInfinity, 1e-9)]
    [InlineData(0, 1, 0)]
    [InlineData(0, 1, double.NaN)]
    public void Ends_and_tolerance_that_cannot_work_are_refused(double low, double high, double tolerance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RootFinding.Within(x => x - 0.5, low, high, tolerance));

    [Fact]
    public void The_first_fall_is_the_first_of_several()
    {
        // cos falls through zero at π/2 and 5π/2 and rises at 3π/2.
        var fall = RootFinding.FirstFall(Math.Cos, 0, 20, 0.1);
        var rise = RootFinding.FirstRise(Math.Cos, 0, 20, 0.1);

        Assert.Equal(Math.PI / 2, Assert.NotNull(fall), 1e-10); // 1e-9 of a step of 0.1
        Assert.Equal(3 * Math.PI / 2, Assert.NotNull(rise), 1e-10);
    }

    [Fact]
    public void Walking_down_finds_the_fall_that_comes_first_on_the_way_down() =>
        // Coming from 20 downwards, cos is positive at 20 and falls through zero at 11π/2 = 17.28.
        Assert.Equal(5.5 * Math.PI, Assert.NotNull(RootFinding.FirstFall(Math.Cos, 20, 0, 0.1)), 1e-10); // 1e-9 of a step

    [Fact]
    public void A_start_at_or_below_zero_is_not_itself_a_fall() =>
        // −cos starts at −1, rises through zero at π/2 and falls at 3π/2.
        Assert.Equal(1.5 * Math.PI, Assert.NotNull(RootFinding.FirstFall(x => -Math.Cos(x), 0, 7, 0.5)),
        1e-9); // 1e-9 of a step, and rounding

    [Fact]
    public void The_last_part_step_is_looked_at_and_nothing_beyond_the_end()
    {
        Assert.Equal(0.95, Assert.NotNull(RootFinding.FirstFall(x => 0.95 - x, 0, 1, 0.3)), 1e-9); // 1e-9 of a step
        Assert.Equal(1, RootFinding.FirstFall(x => 1 - x, 0, 1, 0.3));
        Assert.Null(RootFinding.FirstFall(x => 1.05 - x, 0, 1, 0.3));
        Assert.Null(RootFinding.FirstFall(x => -x, 0, 0, 0.3));
    }

    [Fact]
    public void A_walk_of_too_many_steps_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RootFinding.FirstFall(x => x, 0, 1, double.Epsilon));
}
