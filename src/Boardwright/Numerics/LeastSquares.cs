using static System.FormattableString;

namespace Boardwright.Numerics;

/// <summary>
/// Linear least squares with a least and a greatest value for each unknown: the x that makes Σ (row · x − target)² least.
/// </summary>
/// <remarks>
/// Rows are folded into a triangle by Householder reflections as they come, so that any number of them takes the room of
/// a few; the normal equations, which would square the condition, are never formed. The bounds are met by an active set:
/// unknowns at a bound are freed one at a time, the one whose release promises most first, until none promises anything.
/// Not for use by several threads at once.
/// </remarks>
/// <source>
/// P. B. Stark and R. L. Parker, "Bounded-variable least-squares: an algorithm and applications", Computational
/// Statistics 10 (1995) 129-141; folding of rows: C. L. Lawson and R. J. Hanson, Solving Least Squares Problems (1974), ch. 27.
/// </source>
/// <error>
/// Rounding times the condition of the rows, as far as they tell the unknowns apart; an unknown they do not tell apart from
/// the others keeps the value it has when it is met, which is 0 or its nearest bound.
/// </error>
sealed class LeastSquares
{
    const int Block = 128;
    const double Rounding = 2.220446049250313e-16;

    // Squares below this lose digits to underflow.
    const double Nothing = 1e-280;

    readonly int _unknowns;
    readonly Triangle _triangle;

    /// <summary>Begins without rows.</summary>
    /// <param name="unknowns">How many unknowns, at least one.</param>
    public LeastSquares(int unknowns)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(unknowns, 1);
        _unknowns = unknowns;
        _triangle = new Triangle(unknowns, Block);
    }

    /// <summary>Adds an equation.</summary>
    /// <param name="row">A finite factor for each unknown.</param>
    /// <param name="target">What their sum should be, finite.</param>
    /// <exception cref="ArgumentException">The row has another length, or something is not finite.</exception>
    public void Add(ReadOnlySpan<double> row, double target)
    {
        if (row.Length != _unknowns)
            throw new ArgumentException(Invariant($"{row.Length} factors given for {_unknowns} unknowns."), nameof(row));
        foreach (var factor in row)
        {
            if (!double.IsFinite(factor))
                throw new ArgumentException("A factor is not finite.", nameof(row));
        }

        if (!double.IsFinite(target))
            throw new ArgumentException("The target is not finite.", nameof(target));
        _triangle.Add(row, target);
    }

    /// <summary>The best values without bounds.</summary>
    public LeastSquaresSolution Solve() =>
        Solve([.. Enumerable.Repeat(double.NegativeInfinity, _unknowns)], [.. Enumerable.Repeat(double.PositiveInfinity, _unknowns)]);

    /// <summary>The best values within bounds.</summary>
    /// <param name="least">The least value of each unknown; may be minus infinity.</param>
    /// <param name="greatest">The greatest value of each unknown, at least the least; may be infinity.</param>
    /// <exception cref="ArgumentException">The bounds have another length or are the wrong way round.</exception>
    /// <exception cref="NonConvergenceException">Unknowns were freed and held again more often than rounding can explain.</exception>
    public LeastSquaresSolution Solve(ReadOnlySpan<double> least, ReadOnlySpan<double> greatest)
    {
        if (least.Length != _unknowns || greatest.Length != _unknowns)
            throw new ArgumentException("There must be a least and a greatest value for each unknown.", nameof(least));
        for (var i = 0; i < _unknowns; i++)
        {
            if (!(least[i] <= greatest[i]) || double.IsPositiveInfinity(least[i]) || double.IsNegativeInfinity(greatest[i]))
                throw new ArgumentException(Invariant($"Unknown {i} cannot lie between {least[i]} and {greatest[i]}."), nameof(least));
        }

        _triangle.Fold();
        return new ActiveSet(_triangle, least.ToArray(), greatest.ToArray()).Solve();
    }

    /// <summary>The rows so far as an upper triangle with the same sums of squares, and a block of rows still to be folded in.</summary>
    sealed class Triangle(int unknowns, int block)
    {
        // Columns, the target last; row k of the triangle is entry k of its column.
        readonly double[][] _upper = [.. Enumerable.Range(0, unknowns + 1).Select(k => new double[k + 1])];
        readonly double[][] _rows = [.. Enumerable.Range(0, unknowns + 1).Select(_ => new double[block])];
        int _waiting;

        public int Unknowns => unknowns;

        public double this[int row, int column] => row <= column ? _upper[column][row] : 0;

        public double Target(int row) => _upper[unknowns][row];

        /// <summary>What no choice of the unknowns can explain, as a sum of squares.</summary>
        public double Unexplained => _upper[unknowns][unknowns] * _upper[unknowns][unknowns];

        public void Add(ReadOnlySpan<double> row, double target)
        {
            for (var k = 0; k < unknowns; k++) _rows[k][_waiting] = row[k];
            _rows[unknowns][_waiting] = target;
            if (++_waiting == block) Fold();
        }

        public void Fold()
        {
            for (var k = 0; k <= unknowns; k++)
            {
                var column = _rows[k].AsSpan(0, _waiting);
                var squares = Dot(column, column);
                if (squares < Nothing) continue;
                var head = _upper[k][k];
                // The sign that does not cancel.
                var length = head > 0 ? -Math.Sqrt(head * head + squares) : Math.Sqrt(head * head + squares);
                var lead = head - length;
                var scale = -1 / (length * lead);
                for (var j = k + 1; j <= unknowns; j++)
                {
                    var other = _rows[j].AsSpan(0, _waiting);
                    var share = scale * (lead * _upper[j][k] + Dot(column, other));
                    if (share == 0) continue;
                    _upper[j][k] -= share * lead;
                    for (var i = 0; i < other.Length; i++) other[i] -= share * column[i];
                }

                _upper[k][k] = length;
            }

            _waiting = 0;
        }

        static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
        {
            // Four sums side by side, so that the additions do not wait for one another.
            double s0 = 0, s1 = 0, s2 = 0, s3 = 0;
            var i = 0;
            for (; i + 3 < a.Length && i + 3 < b.Length; i += 4)
            {
                s0 += a[i] * b[i];
                s1 += a[i + 1] * b[i + 1];
                s2 += a[i + 2] * b[i + 2];
                s3 += a[i + 3] * b[i + 3];
            }

            for (; i < a.Length; i++) s0 += a[i] * b[i];
            return s0 + s1 + (s2 + s3);
        }
    }

    enum Place
    {
        Free,
        AtLeast,
        AtGreatest,
    }

    sealed class ActiveSet(Triangle rows, double[] least, double[] greatest)
    {
        readonly int _count = rows.Unknowns;
        readonly double[] _x = new double[rows.Unknowns];
        readonly Place[] _place = new Place[rows.Unknowns];
        readonly HashSet<int> _denied = [];

        public LeastSquaresSolution Solve()
        {
            BeginInside();
            // Each round lowers the sum of squares, so none repeats; more than this many means that rounding has taken over.
            var rounds = 20 * _count + 100;
            while (MostPromising() is { } freed)
            {
                if (rounds-- == 0)
                    throw new NonConvergenceException("Bounded least squares did not settle on which unknowns lie at a bound.");
                _place[freed] = Place.Free;
                StepInside(freed);
            }

            var rest = Rest();
            var squares = rows.Unexplained;
            foreach (var r in rest) squares += r * r;
            return new LeastSquaresSolution(_x, squares, [.. Enumerable.Range(0, _count).Where(i => _place[i] != Place.Free)]);
        }

        bool IsInside(int i, double value) => value >= least[i] && value <= greatest[i];

        /// <summary>Starts from all unknowns free, and holds those that leave their bounds until none does.</summary>
        void BeginInside()
        {
            for (var i = 0; i < _count; i++)
            {
                _x[i] = Math.Clamp(0, least[i], greatest[i]);
                if (least[i] == greatest[i]) _place[i] = Place.AtLeast;
            }

            bool held;
            do
            {
                held = false;
                var best = BestOfFree();
                for (var i = 0; i < _count; i++)
                {
                    if (_place[i] != Place.Free) continue;
                    _x[i] = Math.Clamp(best[i], least[i], greatest[i]);
                    if (IsInside(i, best[i])) continue;
                    _place[i] = best[i] < least[i] ? Place.AtLeast : Place.AtGreatest;
                    held = true;
                }
            }
            while (held);
        }

        /// <summary>
        /// Goes to the best of the free unknowns; where the way there leaves the bounds, stops at the first of them, holds it and goes on.
        /// </summary>
        void StepInside(int freed)
        {
            var best = BestOfFree();
            // Rounding can promise an unknown a gain that its own step then denies.
            if (!IsInside(freed, best[freed]) && _x[freed] == Math.Clamp(best[freed], least[freed], greatest[freed]))
            {
                _place[freed] = _x[freed] == least[freed] ? Place.AtLeast : Place.AtGreatest;
                _denied.Add(freed);
                return;
            }

            while (FirstStop(best) is (var share, var stop))
            {
                for (var i = 0; i < _count; i++)
                {
                    if (_place[i] == Place.Free) _x[i] = Math.Clamp(_x[i] + share * (best[i] - _x[i]), least[i], greatest[i]);
                }

                _place[stop] = best[stop] < least[stop] ? Place.AtLeast : Place.AtGreatest;
                _x[stop] = _place[stop] == Place.AtLeast ? least[stop] : greatest[stop];
                best = BestOfFree();
            }

            best.CopyTo(_x, 0);
            _denied.Clear();
        }

        /// <summary>Which free unknown is first to meet a bound on the way to the best values, and after what share of it.</summary>
        (double Share, int Unknown)? FirstStop(double[] best)
        {
            var (share, stop) = (1.0, -1);
            for (var i = 0; i < _count; i++)
            {
                if (_place[i] != Place.Free || IsInside(i, best[i])) continue;
                var bound = best[i] < least[i] ? least[i] : greatest[i];
                var reach = (bound - _x[i]) / (best[i] - _x[i]);
                if (stop < 0 || reach < share) (share, stop) = (reach, i);
            }

            return stop < 0 ? null : (share, stop);
        }

        /// <summary>The unknown at a bound whose release lowers the sum of squares most steeply, in units of its own column.</summary>
        int? MostPromising()
        {
            var rest = Rest();
            var norm = Math.Sqrt(rest.Sum(r => r * r) + rows.Unexplained)
                + Math.Sqrt(Enumerable.Range(0, _count).Sum(k => rows.Target(k) * rows.Target(k)));
            var (promise, chosen) = (0.0, -1);
            for (var i = 0; i < _count; i++)
            {
                if (_place[i] == Place.Free || least[i] == greatest[i] || _denied.Contains(i)) continue;
                double slope = 0, square = 0;
                for (var k = 0; k <= i; k++)
                {
                    slope += rows[k, i] * rest[k];
                    square += rows[k, i] * rows[k, i];
                }

                if (square == 0) continue;
                var gain = (_place[i] == Place.AtLeast ? slope : -slope) / Math.Sqrt(square);
                if (gain > promise) (promise, chosen) = (gain, i);
            }

            return chosen >= 0 && promise > 64 * Rounding * _count * norm ? chosen : null;
        }

        /// <summary>Target less triangle times x.</summary>
        double[] Rest()
        {
            var rest = new double[_count];
            for (var k = 0; k < _count; k++)
            {
                rest[k] = rows.Target(k);
                for (var j = k; j < _count; j++) rest[k] -= rows[k, j] * _x[j];
            }

            return rest;
        }

        /// <summary>The best values of the free unknowns, the others kept where they are.</summary>
        double[] BestOfFree()
        {
            var free = Enumerable.Range(0, _count).Where(i => _place[i] == Place.Free).ToArray();
            var best = (double[])_x.Clone();
            if (free.Length == 0) return best;
            var part = new Triangle(free.Length, _count);
            var row = new double[free.Length];
            for (var k = 0; k < _count; k++)
            {
                var target = rows.Target(k);
                for (var j = k; j < _count; j++)
                {
                    if (_place[j] != Place.Free) target -= rows[k, j] * _x[j];
                }

                for (var j = 0; j < free.Length; j++) row[j] = rows[k, free[j]];
                part.Add(row, target);
            }

            part.Fold();
            for (var j = free.Length - 1; j >= 0; j--)
            {
                double square = 0;
                for (var k = 0; k <= j; k++) square += part[k, j] * part[k, j];
                if (Math.Abs(part[j, j]) <= 64 * Rounding * free.Length * Math.Sqrt(square)) continue;
                var value = part.Target(j);
                for (var m = j + 1; m < free.Length; m++) value -= part[j, m] * best[free[m]];
                best[free[j]] = value / part[j, j];
            }

            return best;
        }
    }
}

/// <summary>The answer of a least-squares problem.</summary>
/// <param name="Values">The unknowns.</param>
/// <param name="SumOfSquares">Σ (row · x − target)².</param>
/// <param name="Held">The unknowns that lie at a bound.</param>
sealed record LeastSquaresSolution(IReadOnlyList<double> Values, double SumOfSquares, IReadOnlyList<int> Held);
