using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class LeastSquaresTests
{
    // Rounding, with the modest conditions of random rows.
    const double Rounding = 1e-9;

    static LeastSquares Of(double[][] rows, double[] targets)
    {
        var problem = new LeastSquares(rows[0].Length);
        for (var i = 0; i < rows.Length; i++) problem.Add(rows[i], targets[i]);
        return problem;
    }

    // By hand: through (0, 1), (1, 3), (2, 4), (3, 4) the mean of x is 1.5 and of y 3; Σ(x − 1.5)(y − 3) = 5 and Σ(x − 1.5)² = 5, so the
    // line is
    // 1.5 + x, and the errors 0.5, −0.5, −0.5, 0.5 have the sum of squares 1.
    [Fact]
    public void A_line_through_four_points_is_the_one_found_by_hand()
    {
        var solution = Of([[1, 0], [1, 1], [1, 2], [1, 3]], [1, 3, 4, 4]).Solve();

        Assert.Equal(1.5, solution.Values[0], Rounding);
        Assert.Equal(1, solution.Values[1], Rounding);
        Assert.Equal(1, solution.SumOfSquares, Rounding);
        Assert.Empty(solution.Held);
    }

    // By hand: with a slope of at most 0.8 it is 0.8, and the level 3 − 0.8 · 1.5 = 1.8; the sum of squares is 1 + 0.2² · 5 = 1.2.
    [Fact]
    public void A_bound_that_bites_is_met_and_the_rest_is_best_beside_it()
    {
        var solution = Of([[1, 0], [1, 1], [1, 2], [1, 3]], [1, 3, 4, 4])
            .Solve([double.NegativeInfinity, 0], [double.PositiveInfinity, 0.8]);

        Assert.Equal(1.8, solution.Values[0], Rounding);
        Assert.Equal(0.8, solution.Values[1]);
        Assert.Equal(1.2, solution.SumOfSquares, Rounding);
        Assert.Equal([1], solution.Held);
    }

    // Where each unknown stands alone, the best is the target kept within its bounds.
    [Fact]
    public void Unknowns_that_stand_alone_are_clamped() =>
        Gen.Double[-3, 3].Array[1, 12].Sample(targets =>
        {
            var n = targets.Length;
            var rows = Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Select(j => i == j ? 2.0 : 0).ToArray()).ToArray();
            var solution = Of(rows, targets).Solve(Enumerable.Repeat(-1.0, n).ToArray(), Enumerable.Repeat(0.5, n).ToArray());
            return targets.Zip(solution.Values).All(p => Math.Abs(Math.Clamp(p.First / 2, -1, 0.5) - p.Second) < Rounding);
        });

    static readonly Gen<(double[][] Rows, double[] Targets, double[] Least, double[] Greatest)> Problems =
        from unknowns in Gen.Int[1, 9]
        from count in Gen.Int[1, 300]
        from rows in Gen.Double[-1, 1].Array[unknowns].Array[count]
        from targets in Gen.Double[-5, 5].Array[count]
        from bounds in Gen.Select(Gen.Double[-1.5, 1], Gen.Double[0, 1.5]).Array[unknowns]
        select (rows, targets, bounds.Select(b => b.Item1).ToArray(), bounds.Select(b => b.Item1 + b.Item2).ToArray());

    // Karush, Kuhn and Tucker: a free unknown has no slope, one at its least value none that falls upwards, one at its greatest none that
    // falls downwards.
    // Fewer rows than unknowns are among the problems.
    [Fact]
    public void No_unknown_can_move_and_lower_the_sum_of_squares() =>
        Problems.Sample(problem =>
        {
            var (rows, targets, least, greatest) = problem;
            var x = Of(rows, targets).Solve(least, greatest).Values;
            for (var j = 0; j < x.Count; j++)
            {
                if (x[j] < least[j] || x[j] > greatest[j]) return false;
                double slope = 0;
                for (var i = 0; i < rows.Length; i++) slope += rows[i][j] * (targets[i] - rows[i].Zip(x, (a, b) => a * b).Sum());
                var scale = 1e-8 * rows.Length; // rounding of the sum above
                if (slope > scale && x[j] < greatest[j] || slope < -scale && x[j] > least[j]) return false;
            }

            return true;
        });

    [Fact]
    public void The_sum_of_squares_is_that_of_the_rows() =>
        Problems.Sample(problem =>
        {
            var (rows, targets, least, greatest) = problem;
            var solution = Of(rows, targets).Solve(least, greatest);
            var answers = rows.Select(row => row.Zip(solution.Values, (a, b) => a * b).Sum()).ToArray();
            var squares = answers.Zip(targets).Sum(p => Math.Pow(p.First - p.Second, 2));
            // Rounding goes with the larger of the two that are subtracted.
            return Math.Abs(squares - solution.SumOfSquares) <= 1e-10 * (targets.Sum(t => t * t) + answers.Sum(a => a * a));
        });

    // An independent method: the best of the box is the best of all its faces, each solved without bounds.
    [Fact]
    public void The_answer_is_the_best_of_every_face_of_the_box() =>
        Gen.Select(Gen.Double[-1, 1].Array[3].Array[5], Gen.Double[-3, 3].Array[5]).Sample((rows, targets) =>
        {
            double[] least = [-0.5, -0.5, -0.5], greatest = [0.4, 0.6, 0.8];
            var best = double.PositiveInfinity;
            for (var face = 0; face < 27; face++)
            {
                int[] place = [face % 3, face / 3 % 3, face / 9];
                var free = Enumerable.Range(0, 3).Where(j => place[j] == 0).ToArray();
                var x = Enumerable.Range(0, 3).Select(j => place[j] == 1 ? least[j] : greatest[j]).ToArray();
                if (free.Length > 0)
                {
                    var part = new LeastSquares(free.Length);
                    for (var i = 0; i < rows.Length; i++)
                        part.Add([.. free.Select(j => rows[i][j])],
                            targets[i] - Enumerable.Range(0, 3).Except(free).Sum(j => rows[i][j] * x[j]));
                    var values = part.Solve().Values;
                    for (var k = 0; k < free.Length; k++) x[free[k]] = values[k];
                }

                if (x.Where((v, j) => v < least[j] - 1e-12 || v > greatest[j] + 1e-12).Any()) continue;
                best = Math.Min(best, rows.Zip(targets).Sum(p => Math.Pow(p.First.Zip(x, (a, b) => a * b).Sum() - p.Second, 2)));
            }

            return Math.Abs(Of(rows, targets).Solve(least, greatest).SumOfSquares - best) < 1e-9 * (1 + best);
        });

    [Fact]
    public void Rows_told_twice_are_not_told_apart_and_the_answer_still_fits()
    {
        var solution = Of([[1, 1], [2, 2], [3, 3]], [2, 4, 6]).Solve([0, 0], [5, 5]);

        Assert.Equal(2, solution.Values[0] + solution.Values[1], Rounding);
        Assert.Equal(0, solution.SumOfSquares, Rounding);
    }

    // The matrix of Läuchli, e = 1e-9: the normal equations would lose e² beside 1 and find no answer. The exact one is 1/(3 + e²) each.
    [Fact]
    public void A_condition_that_the_normal_equations_cannot_bear_is_borne()
    {
        const double e = 1e-9;
        var solution = Of([[1, 1, 1], [e, 0, 0], [0, e, 0], [0, 0, e]], [1, 0, 0, 0]).Solve();

        Assert.All(solution.Values, v => Assert.Equal(1 / 3.0, v, 1e-6)); // rounding over e
    }

    [Fact]
    public void A_value_between_equal_bounds_stays_there() =>
        Assert.Equal([0.25, 0.75], Of([[1, 1]], [1]).Solve([0.25, 0], [0.25, 2]).Values);

    [Fact]
    public void What_cannot_be_solved_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new LeastSquares(0));
        Assert.Throws<ArgumentException>(() => new LeastSquares(2).Add([1], 0));
        Assert.Throws<ArgumentException>(() => new LeastSquares(1).Add([double.NaN], 0));
        Assert.Throws<ArgumentException>(() => new LeastSquares(1).Add([1], double.PositiveInfinity));
        Assert.Throws<ArgumentException>(() => new LeastSquares(1).Solve([1], [0]));
        Assert.Throws<ArgumentException>(() => new LeastSquares(2).Solve([1], [2]));
        Assert.Throws<ArgumentException>(() => new LeastSquares(1).Solve([double.NaN], [1]));
    }
}
