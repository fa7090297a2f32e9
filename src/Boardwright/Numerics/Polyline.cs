namespace Boardwright.Numerics;

/// <summary>Straight lines from point to point; the end values hold beyond the ends.</summary>
sealed class Polyline : PointLine
{
    readonly double[] _slopes;

    /// <summary>Joins the points.</summary>
    /// <inheritdoc cref="PointLine(ReadOnlySpan{double}, ReadOnlySpan{double})"/>
    public Polyline(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
        : base(x, y)
    {
        _slopes = new double[x.Length - 1];
        for (var i = 0; i < _slopes.Length; i++)
            _slopes[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    }

    /// <inheritdoc/>
    public override double At(double x)
    {
        if (x <= Start) return _y[0];
        if (x >= End) return _y[^1];
        var i = _x.Interval(x);
        return _y[i] + _slopes[i] * (x - _x[i]);
    }

    /// <summary>dy/dx at x; 0 beyond an end; at a point, the slope of the line to its right, at the last point to its left.</summary>
    public override double Slope(double x)
    {
        if (double.IsNaN(x)) return x;
        return Covers(x) ? _slopes[_x.Interval(x)] : 0;
    }
}
