namespace Boardwright.Numerics;

/// <summary>A line through measured points, y over x.</summary>
public interface ICurve
{
    /// <summary>The smallest x with a point.</summary>
    double Start { get; }

    /// <summary>The largest x with a point.</summary>
    double End { get; }

    /// <summary>True when x lies between the first and the last point, ends included.</summary>
    bool Covers(double x);

    /// <summary>y at x; beyond an end, the y of that end. Not a number gives not a number.</summary>
    double At(double x);

    /// <summary>dy/dx at x; 0 beyond an end, and the one-sided slope at an end.</summary>
    double Slope(double x);
}
