namespace Boardwright.Numerics;

/// <summary>The slopes folded into a triangle R by reflections, with the residuals reflected alike: J = Q R.</summary>
sealed class FoldedSlopes
{
    readonly int count;
    readonly double[] r;
    readonly double[] reflected;

    public FoldedSlopes(double[] slopes, double[] left, int rows, int count)
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
            var length = Math.Sqrt(Dot(small, j, j));
            if (length == 0) return double.PositiveInfinity;
            for (var k = 0; k <= j; k++) small[k, j] /= length;
        }

        // Rotations until every two columns stand upright on each other; their lengths are then the singular values.
        for (var sweep = 0; sweep < 60; sweep++)
        {
            if (Straighten(small) < 1e-12) break;
        }

        var squares = Enumerable.Range(0, n).Select(j => Dot(small, j, j)).ToArray();
        return Math.Sqrt(squares.Max() / squares.Min());
    }

    /// <summary>Rotates every two columns once until they stand upright on each other.</summary>
    /// <returns>The largest cosine that was met between two columns.</returns>
    static double Straighten(double[,] columns)
    {
        var n = columns.GetLength(0);
        var skew = 0.0;
        for (var p = 0; p < n - 1; p++)
        {
            for (var q = p + 1; q < n; q++)
            {
                var (a, b, c) = (Dot(columns, p, p), Dot(columns, q, q), Dot(columns, p, q));
                if (c * c <= 1e-30 * a * b) continue;
                skew = Math.Max(skew, Math.Abs(c) / Math.Sqrt(a * b));
                var zeta = (b - a) / (2 * c);
                var tangent = (zeta < 0 ? -1 : 1) / (Math.Abs(zeta) + Math.Sqrt(1 + zeta * zeta));
                var cosine = 1 / Math.Sqrt(1 + tangent * tangent);
                var sine = cosine * tangent;
                for (var k = 0; k < n; k++)
                {
                    var (u, v) = (columns[k, p], columns[k, q]);
                    (columns[k, p], columns[k, q]) = (cosine * u - sine * v, sine * u + cosine * v);
                }
            }
        }

        return skew;
    }

    static double Dot(double[,] columns, int p, int q)
    {
        var sum = 0.0;
        for (var k = 0; k < columns.GetLength(0); k++) sum += columns[k, p] * columns[k, q];
        return sum;
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
