namespace Boardwright.Numerics;

/// <summary>A line through measured points, y over x; the end values hold beyond the ends.</summary>
abstract class PointLine
{
    private protected readonly Knots _x;
    private protected readonly double[] _y;

    /// <summary>Keeps a copy of the points.</summary>
    /// <param name="x">At least two places, finite and strictly rising.</param>
    /// <param name="y">One finite value for each place.</param>
    /// <exception cref="ArgumentException">The points break one of these conditions.</exception>
    private protected PointLine(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        _x = new Knots(x, nameof(x));
        _y = Knots.Values(y, x.Length, nameof(y));
    }

    /// <summary>The smallest x with a point.</summary>
    public double Start => _x.Start;
    /// <summary>The largest x with a point.</summary>
    public double End => _x.End;
    /// <summary>True when x lies between the first and the last point, ends included.</summary>
    public bool Covers(double x) => x >= Start && x <= End;
    /// <summary>y at x; beyond an end, the y of that end. Not a number gives not a number.</summary>
    public abstract double At(double x);
    /// <summary>dy/dx at x; 0 beyond an end, and the one-sided slope at an end.</summary>
    public abstract double Slope(double x);
}
