using static System.FormattableString;

namespace Boardwright.Numerics;

/// <summary>A table of z over x and y, read between its entries; the edge values hold beyond the edges.</summary>
sealed class Grid
{
    readonly Knots _x;
    readonly Knots _y;
    readonly double[] _z;

    Grid(Knots x, Knots y, double[] z) => (_x, _y, _z) = (x, y, z);

    /// <summary>
    /// A table read linearly along x, and along y so that ln z is straight in 1/y: the law of Arrhenius when y is an
    /// absolute temperature.
    /// </summary>
    /// <param name="x">At least two places, finite and strictly rising.</param>
    /// <param name="y">At least two places, above 0, finite and strictly rising.</param>
    /// <param name="z">Finite values above 0, all y of the first x, then all y of the second x, and so on.</param>
    /// <exception cref="ArgumentException">The table breaks one of these conditions.</exception>
    public static Grid LogarithmicInReciprocal(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z)
    {
        var grid = new Grid(new Knots(x, nameof(x)), new Knots(y, nameof(y)), Knots.Values(z, x.Length * y.Length, nameof(z)));
        RequireAboveZero(y, nameof(y));
        RequireAboveZero(z, nameof(z));
        return grid;
    }

    /// <summary>z at (x, y); beyond an edge, z at the nearest place on it. Not a number gives not a number.</summary>
    public double At(double x, double y)
    {
        if (double.IsNaN(x) || double.IsNaN(y)) return double.NaN;
        var (left, right, across) = _x.Locate(x);
        var (below, above, up) = _y.Locate(y);
        var low = Row(left, right, across, below);
        if (below == above) return low;
        var high = Row(left, right, across, above);
        // (1/y0 − 1/y) / (1/y0 − 1/y1), written so that the ends give exactly 0 and 1.
        return low * Math.Exp(up * (_y[above] / y) * Math.Log(high / low));
    }

    double Row(int left, int right, double across, int y)
    {
        var low = _z[left * _y.Count + y];
        return low + across * (_z[right * _y.Count + y] - low);
    }

    static void RequireAboveZero(ReadOnlySpan<double> values, string name)
    {
        foreach (var value in values)
        {
            if (!(value > 0))
                throw new ArgumentException(Invariant($"{value} is among the values; all must be above 0."), name);
        }
    }
}
