using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class NonlinearLeastSquaresTests
{
    // Printed to eleven digits; six are asked for, and the difference of the last is allowed.
    const double SixDigits = 1e-6;

    public static TheoryData<string, int> Sets =>
        [.. ReferenceSet.Lower.Concat(ReferenceSet.Average).SelectMany(s => new (string, int)[] { (s.Name, 1), (s.Name, 2) })];

    [Theory]
    [MemberData(nameof(Sets))]
    public void Certified_sets_are_matched_to_six_digits_from_both_starts(string name, int start)
    {
        var set = ReferenceSet.Lower.Concat(ReferenceSet.Average).Single(s => s.Name == name);
        var fit = NonlinearLeastSquares.Solve(Problem(set), start == 1 ? set.Start1 : set.Start2);

        for (var j = 0; j < set.Values.Length; j++)
            Assert.Equal(1, fit.Values[j] / set.Values[j], SixDigits);
        for (var j = 0; j < set.Deviations.Length; j++)
            Assert.Equal(1, fit.Deviation(j) / set.Deviations[j], 1e-5);
        if (!double.IsNaN(set.SumOfSquares))
            Assert.Equal(1, fit.SumOfSquares / set.SumOfSquares, SixDigits);
    }

    static NonlinearProblem Problem(ReferenceSet set) => new(set.Readings.Length, (unknowns, left) =>
    {
        var b = unknowns.ToArray();
        for (var i = 0; i < left.Length; i++) left[i] = set.Model(b, set.Places[i]) - set.Readings[i];
    });

    static NonlinearProblem Fall(double[] times, double[] readings) => new(times.Length, (x, left) =>
    {
        for (var i = 0; i < times.Length; i++) left[i] = x[0] * Math.Exp(-x[1] * times[i]) - readings[i];
    });

    [Fact]
    public void The_same_start_gives_the_same_answer_bit_for_bit()
    {
        var set = ReferenceSet.Lower.First();
        Assert.Equal(NonlinearLeastSquares.Solve(Problem(set), set.Start1).Values,
            NonlinearLeastSquares.Solve(Problem(set), set.Start1).Values);
    }

    // An exact fall is found again wherever it lies, and stated slopes lead to the same place as differences.
    [Fact]
    public void A_fall_that_was_made_is_found_again() =>
        Gen.Select(Gen.Double[0.5, 20], Gen.Double[0.1, 3]).Sample((size, rate) =>
        {
            var times = Enumerable.Range(0, 30).Select(i => 0.1 * i).ToArray();
            var problem = Fall(times, [.. times.Select(t => size * Math.Exp(-rate * t))]);
            var stated = problem with
            {
                Slopes = (x, slopes) =>
                {
                    for (var i = 0; i < times.Length; i++)
                    {
                        slopes[2 * i] = Math.Exp(-x[1] * times[i]);
                        slopes[2 * i + 1] = -x[0] * times[i] * slopes[2 * i];
                    }
                },
            };
            return Near(NonlinearLeastSquares.Solve(problem, [1, 1]).Values) && Near(NonlinearLeastSquares.Solve(stated, [1, 1]).Values);

            bool Near(IReadOnlyList<double> values) => Math.Abs(values[0] / size - 1) < 1e-7 && Math.Abs(values[1] / rate - 1) < 1e-7;
        });

    // The best fall through 2 e^(−t) with a rate of at most 0.5 keeps that rate, and its size is the straight least-squares answer beside
    // it.
    // A start at a bound, the right one or the wrong one, is no trap.
    [Theory]
    [InlineData(1, 0.2)]
    [InlineData(1, 0.5)]
    [InlineData(1, 0)]
    [InlineData(5, 0.49)]
    public void A_bound_that_bites_is_met_and_the_rest_is_best_beside_it(double size, double rate)
    {
        double[] times = [0, 1, 2, 3];
        var readings = times.Select(t => 2 * Math.Exp(-t)).ToArray();
        var fit = NonlinearLeastSquares.Solve(
            Fall(times, readings) with { Least = [double.NegativeInfinity, 0], Greatest = [double.PositiveInfinity, 0.5] }, [size, rate]);

        Assert.Equal(0.5, fit.Values[1]);
        Assert.Equal([1], fit.Held);
        var weights = times.Select(t => Math.Exp(-0.5 * t)).ToArray();
        Assert.Equal(weights.Zip(readings, (w, y) => w * y).Sum() / weights.Sum(w => w * w), fit.Values[0], 1e-9);
        Assert.Equal(0, fit.Deviation(1));
        Assert.Equal(3, fit.DegreesOfFreedom);
    }

    // A straight model: the covariance is that of the line, s²/Σ(x − x̄)² for the slope; s² = 1/2 as in the linear case found by hand.
    [Fact]
    public void The_covariance_of_a_straight_model_is_that_of_the_line()
    {
        double[] y = [1, 3, 4, 4];
        var fit = NonlinearLeastSquares.Solve(
            new(4, (x, left) =>
            {
                for (var i = 0; i < 4; i++) left[i] = x[0] + x[1] * i - y[i];
            }),
            [0, 0]);

        Assert.Equal(1.5, fit.Values[0], 1e-9);
        Assert.Equal(1, fit.Values[1], 1e-9);
        Assert.Equal(0.5 / 5, fit.Covariance(1, 1), 1e-8);
        Assert.Equal(-0.5 * 1.5 / 5, fit.Covariance(0, 1), 1e-8);
        // Columns (1, 1, 1, 1) and (0, 1, 2, 3) meet at cosine 6/√56, so the condition is √((1 + c)/(1 − c)).
        var cosine = 6 / Math.Sqrt(56);
        Assert.Equal(Math.Sqrt((1 + cosine) / (1 - cosine)), fit.Condition, 1e-6);
    }

    [Fact]
    public void Unknowns_that_are_not_told_apart_have_no_end_of_spread()
    {
        var fit = NonlinearLeastSquares.Solve(
            new(5, (x, left) =>
            {
                for (var i = 0; i < 5; i++) left[i] = x[0] + x[1] - i;
            }),
            [0.5, 0.25]);

        Assert.True(fit.Condition > 1e8);
        Assert.True(fit.Deviation(0) > 1e6);
        Assert.Equal(2, fit.Values[0] + fit.Values[1], 1e-9);
    }

    // Groups of one reading each: the sandwich of the mean of n is Σ r²/n² · n/(n − 1), the deviation of the mean as everyone knows it.
    [Fact]
    public void Scatter_of_single_readings_is_the_deviation_of_their_mean()
    {
        double[] y = [1, 2, 4, 9];
        var fit = NonlinearLeastSquares.Solve(
            new(4, (x, left) =>
            {
                for (var i = 0; i < 4; i++) left[i] = x[0] - y[i];
            }),
            [0]);
        var scatter = fit.ScatterOf([0, 1, 2, 3], [0]);

        Assert.NotNull(scatter);
        Assert.Equal(fit.Covariance(0, 0), scatter[0, 0], 1e-9);
        Assert.Null(fit.ScatterOf([0, 0, 0, 0], [0]));
    }

    [Fact]
    public void What_cannot_be_solved_is_refused()
    {
        var problem = Fall([0, 1], [1, 0.5]);

        Assert.Throws<ArgumentException>(() => NonlinearLeastSquares.Solve(problem with { Readings = 1 }, [1, 1]));
        Assert.Throws<ArgumentException>(() => NonlinearLeastSquares.Solve(problem, [1, double.NaN]));
        Assert.Throws<ArgumentException>(() => NonlinearLeastSquares.Solve(problem with { Least = [1, 2], Greatest = [2, 1] }, [1, 1]));
        Assert.Throws<ArgumentException>(() => NonlinearLeastSquares.Solve(problem with { Least = [1] }, [1, 1]));
        Assert.Throws<ArgumentException>(() => NonlinearLeastSquares.Solve(problem, [1, -1e6]));
    }

    // From memory of the printed table of Student's t, one-sided 5 %: 6.314, 2.015, 1.812, 1.697.
    [Theory]
    [InlineData(1, "6.314")]
    [InlineData(5, "2.015")]
    [InlineData(10, "1.812")]
    [InlineData(30, "1.697")]
    public void Quantiles_of_Student_are_those_of_the_table(double degrees, string printed) =>
        Printed.Matches(printed, StudentT.Quantile(0.95, degrees));

    [Fact]
    public void Quantiles_of_Student_undo_his_shares_and_are_even() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[1, 400]).Sample((share, degrees) =>
            Math.Abs(StudentT.Cumulative(StudentT.Quantile(share, degrees), degrees) - share) < 1e-8
            && Math.Abs(StudentT.Quantile(share, degrees) + StudentT.Quantile(1 - share, degrees)) < 1e-6);
}
