namespace Boardwright.Numerics;

/// <summary>
/// A smooth line through points that never overshoots them: between two neighbours it only rises, only falls, or
/// stays level, and a peak or a trough lies on a point. The end values hold beyond the ends.
/// </summary>
/// <remarks>
/// Cubic Hermite pieces. The slope at a point is that of the parabola through it and its two neighbours (0 at a peak or
/// trough); where the slopes a and b of a piece, as multiples of its mean slope, have a² + b² above 9, both are scaled
/// back to the circle of radius 3. Two points give a straight line. The slope is continuous, the curvature is not.
/// </remarks>
/// <source>
/// F. N. Fritsch and R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17 (1980) 238-246.
/// </source>
/// <error>Third order in the spacing where the data are smooth and strictly monotone, second where a slope was limited.</error>
sealed class MonotoneCubic : PointLine
{
    readonly double[] _slopes;
    readonly double[] _bends;
    readonly double[] _twists;

    /// <summary>Lays the line through the points.</summary>
    /// <inheritdoc cref="PointLine(ReadOnlySpan{double}, ReadOnlySpan{double})"/>
    public MonotoneCubic(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
        : base(x, y)
    {
        var pieces = x.Length - 1;
        var widths = new double[pieces];
        var means = new double[pieces];
        for (var i = 0; i < pieces; i++)
        {
            widths[i] = x[i + 1] - x[i];
            means[i] = (y[i + 1] - y[i]) / widths[i];
        }

        _slopes = Limited(Free(widths, means), means);
        _bends = new double[pieces];
        _twists = new double[pieces];
        for (var i = 0; i < pieces; i++)
        {
            _bends[i] = (3 * means[i] - 2 * _slopes[i] - _slopes[i + 1]) / widths[i];
            _twists[i] = (_slopes[i] + _slopes[i + 1] - 2 * means[i]) / (widths[i] * widths[i]);
        }
    }

    /// <inheritdoc/>
    public override double At(double x)
    {
        if (x <= Start) return _y[0];
        if (x >= End) return _y[^1];
        var i = _x.Interval(x);
        var s = x - _x[i];
        return _y[i] + s * (_slopes[i] + s * (_bends[i] + s * _twists[i]));
    }

    /// <inheritdoc/>
    public override double Slope(double x)
    {
        if (double.IsNaN(x)) return x;
        if (!Covers(x)) return 0;
        if (x == End) return _slopes[^1];
        var i = _x.Interval(x);
        var s = x - _x[i];
        return _slopes[i] + s * (2 * _bends[i] + s * 3 * _twists[i]);
    }

    static double[] Free(double[] widths, double[] means)
    {
        var last = means.Length;
        var slopes = new double[last + 1];
        if (last == 1)
        {
            slopes.AsSpan().Fill(means[0]);
            return slopes;
        }

        for (var i = 1; i < last; i++)
        {
            slopes[i] = Opposed(means[i - 1], means[i])
                ? 0
                : (widths[i] * means[i - 1] + widths[i - 1] * means[i]) / (widths[i - 1] + widths[i]);
        }

        slopes[0] = Outermost(widths[0], means[0], widths[1], means[1]);
        slopes[last] = Outermost(widths[^1], means[^1], widths[^2], means[^2]);
        return slopes;
    }

    /// <summary>The end slope of the parabola through the three outermost points, 0 where it would start the wrong way.</summary>
    static double Outermost(double width, double mean, double nextWidth, double nextMean)
    {
        var slope = mean + (mean - nextMean) * width / (width + nextWidth);
        return Opposed(slope, mean) ? 0 : slope;
    }

    static double[] Limited(double[] slopes, double[] means)
    {
        for (var i = 0; i < means.Length; i++)
        {
            // Slopes only ever shrink here, so a piece limited earlier stays within its circle.
            if (means[i] == 0)
            {
                slopes[i] = slopes[i + 1] = 0;
                continue;
            }

            var radius = double.Hypot(slopes[i] / means[i], slopes[i + 1] / means[i]);
            if (radius <= 3) continue;
            slopes[i] *= 3 / radius;
            slopes[i + 1] *= 3 / radius;
        }

        return slopes;
    }

    static bool Opposed(double a, double b) => a == 0 || b == 0 || a > 0 != b > 0;
}
