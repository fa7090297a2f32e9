using System.Globalization;

namespace Boardwright.Numerics;

/// <summary>Writes what is left at each reading: model less reading, in units of the reading's own spread where readings differ in worth.</summary>
/// <param name="unknowns">The unknowns.</param>
/// <param name="left">Takes one number for each reading.</param>
public delegate void Residuals(ReadOnlySpan<double> unknowns, Span<double> left);

/// <summary>Writes how each residual changes with each unknown, row by row.</summary>
/// <param name="unknowns">The unknowns.</param>
/// <param name="slopes">Takes readings × unknowns numbers; the unknowns of one reading lie side by side. It holds zeros on entry.</param>
public delegate void Slopes(ReadOnlySpan<double> unknowns, Span<double> slopes);

/// <summary>A sum of squares to be made least: Σ r_i(x)², the r_i curved in x.</summary>
/// <param name="Readings">How many residuals, at least as many as unknowns.</param>
/// <param name="Left">The residuals; a value that is not finite tells that the unknowns lie outside the model's domain.</param>
public sealed record NonlinearProblem(int Readings, Residuals Left)
{
    /// <summary>The slopes; by central differences where none are given.</summary>
    public Slopes? Slopes { get; init; }

    /// <summary>The least value of each unknown; empty where none is bounded.</summary>
    public IReadOnlyList<double> Least { get; init; } = [];

    /// <summary>The greatest value of each unknown; empty where none is bounded.</summary>
    public IReadOnlyList<double> Greatest { get; init; } = [];
}

/// <summary>Least squares with a curved model, by Levenberg and Marquardt's damped steps.</summary>
/// <remarks>
/// Each step is the least-squares answer of the slopes with μ D² added, D the largest column lengths met so far, solved by
/// reflections and never by normal equations. μ follows the ratio of gained to promised fall (Nielsen). Unknowns at a bound
/// that the gradient pushes outwards are held; steps are cut at the bounds. The same start gives the same answer bit for bit.
/// </remarks>
/// <error>
/// At a minimum with a clear curvature all but the last three or four digits; with residuals that are far from zero the
/// central differences leave about eight. It finds the valley it starts in, not the deepest of several.
/// </error>
/// <source>
/// J. J. Moré, "The Levenberg-Marquardt algorithm: implementation and theory", Lecture Notes in Mathematics 630 (1978)
/// 105-116; damping: H. B. Nielsen, "Damping parameter in Marquardt's method", report IMM-REP-1999-05, from memory.
/// </source>
public static class NonlinearLeastSquares
{
    const int MostSteps = 5000;
    const double SmallStep = 1e-12;
    const double SmallFall = 1e-15;
    const double NearStationary = 1e-4;

    /// <summary>The least sum of squares reached from a start.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="start">A finite first guess for each unknown; moved into the bounds where it lies outside.</param>
    /// <exception cref="ArgumentException">There are fewer readings than unknowns, bounds of another length or the wrong way round, or the model is not finite at the start.</exception>
    /// <exception cref="NonConvergenceException">The steps became no shorter, or lead nowhere though the gradient is not zero.</exception>
    public static NonlinearFit Solve(NonlinearProblem problem, ReadOnlySpan<double> start)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (start.Length == 0 || problem.Readings < start.Length)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{problem.Readings} readings do not tell {start.Length} unknowns."), nameof(problem));
        return new Search(problem, start).Run();
    }

    sealed class Search
    {
        readonly NonlinearProblem problem;
        readonly int rows;
        readonly int count;
        readonly double[] least;
        readonly double[] greatest;
        readonly double[] left;
        readonly double[] slopes;
        readonly double[] scale;
        readonly double[] typical;
        double[] x;

        public Search(NonlinearProblem problem, ReadOnlySpan<double> start)
        {
            (this.problem, rows, count) = (problem, problem.Readings, start.Length);
            least = Bounds(problem.Least, double.NegativeInfinity, nameof(problem.Least));
            greatest = Bounds(problem.Greatest, double.PositiveInfinity, nameof(problem.Greatest));
            for (var j = 0; j < count; j++)
            {
                if (!(least[j] <= greatest[j]))
                    throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Unknown {j} would lie between {least[j]} and {greatest[j]}."), nameof(problem));
                if (!double.IsFinite(start[j]))
                    throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Unknown {j} starts at {start[j]}."), nameof(start));
            }

            x = new double[count];
            for (var j = 0; j < count; j++) x[j] = Math.Clamp(start[j], least[j], greatest[j]);
            (left, slopes, scale) = (new double[rows], new double[rows * count], new double[count]);
            // The size an unknown is of, for differences where it is zero.
            typical = [.. x.Select(v => v == 0 ? 1 : Math.Abs(v))];
            problem.Left(x, left);
            if (!double.IsFinite(Square(left)))
                throw new ArgumentException("The model is not finite at the start.", nameof(problem));
        }

        public NonlinearFit Run()
        {
            var sum = Square(left);
            var (mu, growth) = (-1.0, 2.0);
            var next = new double[count];
            var trial = new double[rows];
            Differentiate();
            var triangle = new Triangle(slopes, left, rows, count);
            for (var step = 0; step < MostSteps; step++)
            {
                var gradient = triangle.Gradient();
                var free = Free(gradient);
                for (var j = 0; j < count; j++)
                {
                    var length = triangle.Length(j);
                    scale[j] = Math.Max(scale[j], length);
                }

                if (mu < 0)
                    mu = 1e-3;
                if (IsStationary(gradient, free, sum, 1e-13))
                    return Finish(triangle, sum, step);
                var move = triangle.Step(scale, mu, free);
                double moved = 0, size = 0;
                for (var j = 0; j < count; j++)
                {
                    next[j] = Math.Clamp(x[j] + move[j], least[j], greatest[j]);
                    var d = scale[j] == 0 ? 1 : scale[j];
                    moved += d * d * (next[j] - x[j]) * (next[j] - x[j]);
                    size += d * d * x[j] * x[j];
                }

                var promised = triangle.Fall(x, next);
                problem.Left(next, trial);
                var sumThere = Square(trial);
                var isShort = moved <= SmallStep * SmallStep * (size + double.Epsilon);
                var gained = sum - sumThere;
                if (double.IsFinite(sumThere) && gained > 0 && promised > 0)
                {
                    var ratio = gained / promised;
                    mu = Math.Max(1e-20, mu * Math.Max(0.1, 1 - Math.Pow(2 * ratio - 1, 3)));
                    growth = 2;
                    (x, next) = (next, x);
                    trial.CopyTo(left, 0);
                    var isFlat = gained <= SmallFall * sum && promised <= SmallFall * sum;
                    sum = sumThere;
                    Differentiate();
                    triangle = new Triangle(slopes, left, rows, count);
                    if (isShort || isFlat)
                        return Finish(triangle, sum, step + 1);
                    continue;
                }

                // An almost undamped step that is short leads to the minimum as near as rounding tells, even where nothing is left over.
                if (isShort && mu < 1e-3)
                    return Finish(triangle, sum, step + 1);
                // Rounding hides a fall this small: the place is as good as can be told.
                if ((isShort || (promised <= 1e-13 * sum && Math.Abs(gained) <= 1e-12 * sum)) && IsStationary(gradient, free, sum, NearStationary))
                    return Finish(triangle, sum, step + 1);
                if (mu > 1e40)
                    throw new NonConvergenceException(string.Create(CultureInfo.InvariantCulture, $"After {step + 1} steps no step lowers the sum of squares, {sum}, though its gradient is not zero."));
                mu *= growth;
                growth *= 2;
            }

            throw new NonConvergenceException(string.Create(CultureInfo.InvariantCulture, $"After {MostSteps} steps the sum of squares, {sum}, still falls."));
        }

        NonlinearFit Finish(Triangle triangle, double sum, int steps)
        {
            var free = Free(triangle.Gradient());
            return new NonlinearFit(
                [.. x], sum, rows, [.. Enumerable.Range(0, count).Where(j => !free[j])], steps,
                triangle.Inverse(free), triangle.Condition(free), (double[])left.Clone(), (double[])slopes.Clone());
        }

        /// <summary>Whether the residuals stand upright on every free column: the largest cosine is small.</summary>
        bool IsStationary(double[] gradient, bool[] free, double sum, double limit)
        {
            var norm = Math.Sqrt(sum);
            for (var j = 0; j < count; j++)
            {
                if (free[j] && Math.Abs(gradient[j]) > limit * norm * scale[j])
                    return false;
            }

            return true;
        }

        bool[] Free(double[] gradient)
        {
            var free = new bool[count];
            for (var j = 0; j < count; j++)
                free[j] = least[j] < greatest[j] && !(x[j] <= least[j] && gradient[j] >= 0) && !(x[j] >= greatest[j] && gradient[j] <= 0);
            return free;
        }

        void Differentiate()
        {
            Array.Clear(slopes);
            if (problem.Slopes is { } given)
            {
                given(x, slopes);
                return;
            }

            var (above, below) = (new double[rows], new double[rows]);
            var place = (double[])x.Clone();
            for (var j = 0; j < count; j++)
            {
                // The cube root of rounding balances curvature against rounding for central differences.
                var size = Math.Abs(x[j]) > 1e-8 * typical[j] ? Math.Abs(x[j]) : typical[j];
                var step = 6.06e-6 * size;
                var high = Math.Min(x[j] + step, greatest[j]);
                var low = Math.Max(x[j] - step, least[j]);
                if (high <= low) continue;
                place[j] = high;
                problem.Left(place, above);
                place[j] = low;
                problem.Left(place, below);
                place[j] = x[j];
                for (var i = 0; i < rows; i++)
                    slopes[i * count + j] = (above[i] - below[i]) / (high - low);
            }
        }

        double[] Bounds(IReadOnlyList<double> given, double none, string name) =>
            given.Count == 0 ? [.. Enumerable.Repeat(none, count)]
            : given.Count == count ? [.. given]
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{given.Count} bounds given for {count} unknowns."), name);

        static double Square(double[] values)
        {
            var sum = 0.0;
            foreach (var value in values) sum += value * value;
            return sum;
        }
    }

    /// <summary>The slopes folded into a triangle R by reflections, with the residuals reflected alike: J = Q R.</summary>
    sealed class Triangle
    {
        readonly int count;
        readonly double[] r;
        readonly double[] reflected;

        public Triangle(double[] slopes, double[] left, int rows, int count)
        {
            this.count = count;
            var (work, rest) = ((double[])slopes.Clone(), (double[])left.Clone());
            Reflect(work, rest, rows, count);
            r = work[..(count * count)];
            reflected = rest[..count];
        }

        /// <summary>Slope of half the sum of squares: Jᵀ r.</summary>
        public double[] Gradient()
        {
            var gradient = new double[count];
            for (var k = 0; k < count; k++)
            {
                for (var j = k; j < count; j++) gradient[j] += r[k * count + j] * reflected[k];
            }

            return gradient;
        }

        public double Length(int column)
        {
            var sum = 0.0;
            for (var k = 0; k <= column; k++) sum += r[k * count + column] * r[k * count + column];
            return Math.Sqrt(sum);
        }

        /// <summary>The damped step of the free unknowns.</summary>
        public double[] Step(double[] scale, double mu, bool[] free)
        {
            var (work, rest) = (new double[2 * count * count], new double[2 * count]);
            for (var k = 0; k < count; k++)
            {
                rest[k] = -reflected[k];
                for (var j = k; j < count; j++) work[k * count + j] = free[j] ? r[k * count + j] : 0;
                work[(count + k) * count + k] = free[k] ? Math.Sqrt(mu) * (scale[k] == 0 ? 1 : scale[k]) : 1;
            }

            Reflect(work, rest, 2 * count, count);
            var step = new double[count];
            for (var k = count - 1; k >= 0; k--)
            {
                var value = rest[k];
                for (var j = k + 1; j < count; j++) value -= work[k * count + j] * step[j];
                step[k] = work[k * count + k] == 0 ? 0 : value / work[k * count + k];
            }

            for (var j = 0; j < count; j++)
            {
                if (!free[j]) step[j] = 0;
            }

            return step;
        }

        /// <summary>How far the straightened model lets the sum of squares fall.</summary>
        public double Fall(double[] from, double[] to)
        {
            var fall = 0.0;
            for (var k = 0; k < count; k++)
            {
                var change = 0.0;
                for (var j = k; j < count; j++) change += r[k * count + j] * (to[j] - from[j]);
                fall -= change * (2 * reflected[k] + change);
            }

            return fall;
        }

        /// <summary>(JᵀJ)⁻¹ of the free unknowns, zero elsewhere; <c>null</c> where they are not told apart.</summary>
        public double[,]? Inverse(bool[] free)
        {
            var (small, places) = Part(free);
            var n = places.Length;
            var inverse = new double[n, n];
            for (var j = 0; j < n; j++)
            {
                if (Math.Abs(small[j, j]) <= 0)
                    return null;
            }

            for (var column = 0; column < n; column++)
            {
                for (var k = column; k >= 0; k--)
                {
                    var value = k == column ? 1.0 : 0;
                    for (var j = k + 1; j <= column; j++) value -= small[k, j] * inverse[j, column];
                    inverse[k, column] = value / small[k, k];
                }
            }

            var all = new double[count, count];
            for (var a = 0; a < n; a++)
            {
                for (var b = a; b < n; b++)
                {
                    var sum = 0.0;
                    for (var k = b; k < n; k++) sum += inverse[a, k] * inverse[b, k];
                    if (!double.IsFinite(sum)) return null;
                    all[places[a], places[b]] = all[places[b], places[a]] = sum;
                }
            }

            return all;
        }

        /// <summary>Largest over smallest singular value of the free columns, each brought to length 1.</summary>
        public double Condition(bool[] free)
        {
            var (small, places) = Part(free);
            var n = places.Length;
            if (n == 0) return 1;
            for (var j = 0; j < n; j++)
            {
                var length = 0.0;
                for (var k = 0; k <= j; k++) length += small[k, j] * small[k, j];
                if (length == 0) return double.PositiveInfinity;
                for (var k = 0; k <= j; k++) small[k, j] /= Math.Sqrt(length);
            }

            // One-sided rotations until every two columns stand upright on each other; their lengths are then the singular values.
            for (var sweep = 0; sweep < 60; sweep++)
            {
                var skew = 0.0;
                for (var p = 0; p < n - 1; p++)
                {
                    for (var q = p + 1; q < n; q++)
                    {
                        double a = 0, b = 0, c = 0;
                        for (var k = 0; k < n; k++)
                        {
                            a += small[k, p] * small[k, p];
                            b += small[k, q] * small[k, q];
                            c += small[k, p] * small[k, q];
                        }

                        if (c * c <= 1e-30 * a * b) continue;
                        skew = Math.Max(skew, Math.Abs(c) / Math.Sqrt(a * b));
                        var zeta = (b - a) / (2 * c);
                        var tangent = (zeta < 0 ? -1 : 1) / (Math.Abs(zeta) + Math.Sqrt(1 + zeta * zeta));
                        var cosine = 1 / Math.Sqrt(1 + tangent * tangent);
                        var sine = cosine * tangent;
                        for (var k = 0; k < n; k++)
                        {
                            var (u, v) = (small[k, p], small[k, q]);
                            small[k, p] = cosine * u - sine * v;
                            small[k, q] = sine * u + cosine * v;
                        }
                    }
                }

                if (skew < 1e-12) break;
            }

            double most = 0, fewest = double.PositiveInfinity;
            for (var j = 0; j < n; j++)
            {
                var length = 0.0;
                for (var k = 0; k < n; k++) length += small[k, j] * small[k, j];
                (most, fewest) = (Math.Max(most, length), Math.Min(fewest, length));
            }

            return fewest == 0 ? double.PositiveInfinity : Math.Sqrt(most / fewest);
        }

        /// <summary>The triangle of the free columns alone, folded again where others were taken out.</summary>
        (double[,] Small, int[] Places) Part(bool[] free)
        {
            var places = Enumerable.Range(0, count).Where(j => free[j]).ToArray();
            var n = places.Length;
            var (work, rest) = (new double[count * n], new double[count]);
            for (var k = 0; k < count; k++)
            {
                for (var j = 0; j < n; j++) work[k * n + j] = places[j] >= k ? r[k * count + places[j]] : 0;
            }

            Reflect(work, rest, count, n);
            var small = new double[n, n];
            for (var k = 0; k < n; k++)
            {
                for (var j = k; j < n; j++) small[k, j] = work[k * n + j];
            }

            return (small, places);
        }

        /// <summary>Householder reflections in place: afterwards the first rows hold the triangle.</summary>
        static void Reflect(double[] work, double[] rest, int rows, int columns)
        {
            var sums = new double[columns];
            for (var k = 0; k < columns; k++)
            {
                var norm = 0.0;
                for (var i = k; i < rows; i++) norm += work[i * columns + k] * work[i * columns + k];
                norm = Math.Sqrt(norm);
                if (norm == 0) continue;
                var head = work[k * columns + k];
                var alpha = head > 0 ? -norm : norm;
                var factor = 1 / (norm * (norm + Math.Abs(head)));
                work[k * columns + k] = head - alpha;
                Array.Clear(sums);
                var target = 0.0;
                for (var i = k; i < rows; i++)
                {
                    var v = work[i * columns + k];
                    if (v == 0) continue;
                    for (var j = k + 1; j < columns; j++) sums[j] += v * work[i * columns + j];
                    target += v * rest[i];
                }

                for (var i = k; i < rows; i++)
                {
                    var v = work[i * columns + k] * factor;
                    if (v == 0) continue;
                    for (var j = k + 1; j < columns; j++) work[i * columns + j] -= v * sums[j];
                    rest[i] -= v * target;
                    if (i > k) work[i * columns + k] = 0;
                }

                work[k * columns + k] = alpha;
            }
        }
    }
}

/// <summary>The answer of a curved least-squares problem.</summary>
public sealed class NonlinearFit
{
    readonly double[,]? inverse;
    readonly double[] left;
    readonly double[] slopes;

    internal NonlinearFit(
        IReadOnlyList<double> values, double sumOfSquares, int readings, IReadOnlyList<int> held, int steps,
        double[,]? inverse, double condition, double[] left, double[] slopes)
    {
        (Values, SumOfSquares, Readings, Held, Steps, Condition) = (values, sumOfSquares, readings, held, steps, condition);
        (this.inverse, this.left, this.slopes) = (inverse, left, slopes);
    }

    /// <summary>The unknowns.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>Σ r², at the answer.</summary>
    public double SumOfSquares { get; }

    /// <summary>How many residuals there were.</summary>
    public int Readings { get; }

    /// <summary>The unknowns that lie at a bound.</summary>
    public IReadOnlyList<int> Held { get; }

    /// <summary>Steps taken.</summary>
    public int Steps { get; }

    /// <summary>
    /// How much worse than alone the unknowns are told apart together: largest over smallest singular value of the slopes, each
    /// column brought to length 1. 1 is best; above 1e8 or so the answer is noise in some direction.
    /// </summary>
    public double Condition { get; }

    /// <summary>The residuals at the answer.</summary>
    public IReadOnlyList<double> Left => left;

    /// <summary>Readings less unknowns that are free.</summary>
    public int DegreesOfFreedom => Readings - (Values.Count - Held.Count);

    /// <summary>Standard deviation of one residual: √(Σ r² / degrees of freedom); not a number without any.</summary>
    public double ResidualDeviation => DegreesOfFreedom > 0 ? Math.Sqrt(SumOfSquares / DegreesOfFreedom) : double.NaN;

    /// <summary>Covariance of two unknowns: s² (JᵀJ)⁻¹, right where residuals are independent and alike; zero for an unknown at a bound, infinite where the readings do not tell the unknowns apart.</summary>
    public double Covariance(int first, int second) =>
        inverse is null ? double.PositiveInfinity : ResidualDeviation * ResidualDeviation * inverse[first, second];

    /// <summary>Standard deviation of an unknown by <see cref="Covariance"/>.</summary>
    public double Deviation(int unknown) => Math.Sqrt(Covariance(unknown, unknown));

    /// <summary>
    /// Covariance as the groups scatter: (JᵀJ)⁻¹ Σ_g (J_gᵀ r_g)(J_gᵀ r_g)ᵀ (JᵀJ)⁻¹ · G/(G − p), right where residuals go
    /// together within a group, such as a run with its own gust, and are independent between groups.
    /// </summary>
    /// <remarks>An unknown that only one group tells does not count as shared.</remarks>
    /// <param name="groupOf">The group of each reading, counted from 0.</param>
    /// <param name="shared">The unknowns that all groups tell, of which the answer has one row and column each.</param>
    /// <returns>The covariances of the shared unknowns, or <c>null</c> where there are not more groups than shared unknowns.</returns>
    /// <source>K.-Y. Liang and S. L. Zeger, Longitudinal data analysis using generalized linear models, Biometrika 73 (1986) 13-22, from memory; the factor for few groups is the usual one.</source>
    public double[,]? ScatterOf(ReadOnlySpan<int> groupOf, ReadOnlySpan<int> shared)
    {
        if (groupOf.Length != Readings)
            throw new ArgumentException("Each reading belongs to a group.", nameof(groupOf));
        var groups = 0;
        foreach (var group in groupOf) groups = Math.Max(groups, group + 1);
        if (inverse is null || groups <= shared.Length)
            return null;
        var n = Values.Count;
        var pushes = new double[groups, n];
        for (var i = 0; i < Readings; i++)
        {
            for (var j = 0; j < n; j++) pushes[groupOf[i], j] += slopes[i * n + j] * left[i];
        }

        var answer = new double[shared.Length, shared.Length];
        var moves = new double[shared.Length];
        for (var group = 0; group < groups; group++)
        {
            for (var a = 0; a < shared.Length; a++)
            {
                moves[a] = 0;
                for (var j = 0; j < n; j++) moves[a] += inverse[shared[a], j] * pushes[group, j];
            }

            for (var a = 0; a < shared.Length; a++)
            {
                for (var b = 0; b < shared.Length; b++) answer[a, b] += moves[a] * moves[b] * groups / (groups - shared.Length);
            }
        }

        return answer;
    }
}
