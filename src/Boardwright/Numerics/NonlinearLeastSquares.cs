using static System.FormattableString;

namespace Boardwright.Numerics;

/// <summary>
/// Writes what is left at each reading: model less reading, in units of the reading's own spread where readings differ in worth.
/// </summary>
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
    const double Stationary = 1e-13;
    const double NearStationary = 1e-4;

    /// <summary>The least sum of squares reached from a start.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="start">A finite first guess for each unknown; moved into the bounds where it lies outside.</param>
    /// <exception cref="ArgumentException">
    /// There are fewer readings than unknowns, bounds of another length or the wrong way round, or the model is not finite at the start.
    /// </exception>
    /// <exception cref="NonConvergenceException">The steps became no shorter, or lead nowhere though the gradient is not zero.</exception>
    public static NonlinearFit Solve(NonlinearProblem problem, ReadOnlySpan<double> start)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (start.Length == 0 || problem.Readings < start.Length)
            throw new ArgumentException(Invariant($"{problem.Readings} readings do not tell {start.Length} unknowns."), nameof(problem));
        return new FitSearch(problem, start).Run();
    }

    sealed class FitSearch
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
        readonly double[] trial;
        double[] x;
        double[] next;
        double sum;
        double mu = 1e-3;
        double growth = 2;
        FoldedSlopes folded = null!;
        double[] gradient = [];
        bool[] free = [];

        public FitSearch(NonlinearProblem problem, ReadOnlySpan<double> start)
        {
            (this.problem, rows, count) = (problem, problem.Readings, start.Length);
            least = Bounds(problem.Least, double.NegativeInfinity, nameof(problem.Least));
            greatest = Bounds(problem.Greatest, double.PositiveInfinity, nameof(problem.Greatest));
            (x, next) = (new double[count], new double[count]);
            for (var j = 0; j < count; j++)
            {
                if (!(least[j] <= greatest[j]))
                    throw new ArgumentException(Invariant($"Unknown {j} would lie between {least[j]} and {greatest[j]}."), nameof(problem));
                if (!double.IsFinite(start[j]))
                    throw new ArgumentException(Invariant($"Unknown {j} starts at {start[j]}."), nameof(start));
                x[j] = Math.Clamp(start[j], least[j], greatest[j]);
            }

            (left, trial, slopes, scale) = (new double[rows], new double[rows], new double[rows * count], new double[count]);
            // The size an unknown is of, for differences where it is zero.
            typical = [.. x.Select(v => v == 0 ? 1 : Math.Abs(v))];
            problem.Left(x, left);
            sum = Square(left);
            if (!double.IsFinite(sum))
                throw new ArgumentException("The model is not finite at the start.", nameof(problem));
        }

        public NonlinearFit Run()
        {
            Look();
            for (var step = 0; step < MostSteps; step++)
            {
                if (IsStationary(Stationary) || Step())
                {
                    int[] held = [.. Enumerable.Range(0, count).Where(j => !free[j])];
                    return new NonlinearFit(x, sum, held, folded.Inverse(free), folded.Condition(free), left, slopes);
                }
            }

            throw new NonConvergenceException(Invariant($"After {MostSteps} steps the sum of squares, {sum}, still falls."));
        }

        /// <summary>Finds the slopes where the search is, and which unknowns they let move.</summary>
        void Look()
        {
            Differentiate();
            folded = new FoldedSlopes(slopes, left, rows, count);
            gradient = folded.Gradient();
            free = new bool[count];
            for (var j = 0; j < count; j++)
            {
                scale[j] = Math.Max(scale[j], folded.Length(j));
                free[j] = least[j] < greatest[j] && !(x[j] <= least[j] && gradient[j] >= 0) && !(x[j] >= greatest[j] && gradient[j] <= 0);
            }
        }

        /// <summary>Tries a damped step, and takes it where the sum of squares falls; otherwise the next one is damped more.</summary>
        /// <returns>Whether no better place can be told.</returns>
        bool Step()
        {
            var isShort = Reach(folded.Step(scale, mu, free));
            var promised = folded.Fall(x, next);
            problem.Left(next, trial);
            var there = Square(trial);
            var gained = sum - there;
            if (gained > 0 && promised > 0)
            {
                var isFlat = gained <= SmallFall * sum && promised <= SmallFall * sum;
                mu = Math.Max(1e-20, mu * Math.Max(0.1, 1 - Math.Pow(2 * (gained / promised) - 1, 3)));
                growth = 2;
                (x, next, sum) = (next, x, there);
                trial.CopyTo(left, 0);
                Look();
                return isShort || isFlat;
            }

            // An almost undamped step that is short leads to the minimum as near as rounding tells, even where nothing is left over.
            if (isShort && mu < 1e-3)
                return true;
            // Rounding hides a fall this small: the place is as good as can be told.
            if ((isShort || (promised <= 1e-13 * sum && Math.Abs(gained) <= 1e-12 * sum)) && IsStationary(NearStationary))
                return true;
            if (mu > 1e40)
                throw new NonConvergenceException(Invariant($"No step lowers the sum of squares, {sum}, though its gradient is not zero."));
            mu *= growth;
            growth *= 2;
            return false;
        }

        /// <summary>Writes the place that a move leads to, cut at the bounds.</summary>
        /// <returns>Whether it is hardly another place.</returns>
        bool Reach(double[] move)
        {
            double moved = 0, size = 0;
            for (var j = 0; j < count; j++)
            {
                next[j] = Math.Clamp(x[j] + move[j], least[j], greatest[j]);
                var d = scale[j] == 0 ? 1 : scale[j];
                moved += d * d * (next[j] - x[j]) * (next[j] - x[j]);
                size += d * d * x[j] * x[j];
            }

            return moved <= SmallStep * SmallStep * (size + double.Epsilon);
        }

        /// <summary>Whether the residuals stand upright on every free column: the largest cosine is small.</summary>
        bool IsStationary(double limit)
        {
            var norm = Math.Sqrt(sum);
            return !Enumerable.Range(0, count).Any(j => free[j] && Math.Abs(gradient[j]) > limit * norm * scale[j]);
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
            : throw new ArgumentException(Invariant($"{given.Count} bounds given for {count} unknowns."), name);

        static double Square(double[] values)
        {
            var squares = 0.0;
            foreach (var value in values) squares += value * value;
            return squares;
        }
    }
}
