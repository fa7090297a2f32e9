namespace Boardwright.Numerics;

/// <summary>The distribution of a sum of squares of normal numbers.</summary>
static class ChiSquared
{
    /// <summary>The value that a given share of the distribution lies at or below: ν (1 − 2/9ν + z √(2/9ν))³.</summary>
    /// <param name="share">Above 0 and below 1.</param>
    /// <param name="degreesOfFreedom">ν, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <error>
    /// From 5 % to 95 %: 2 % of the answer from five degrees of freedom on, 6 % above the middle for one; below the middle for
    /// fewer than three it is 0.01 to 0.1 off.
    /// </error>
    /// <source>E. B. Wilson and M. M. Hilferty, "The distribution of chi-square", Proc. Natl. Acad. Sci. 17 (1931) 684-688.</source>
    public static double Quantile(double share, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(degreesOfFreedom, 1);
        var small = 2 / (9 * degreesOfFreedom);
        return degreesOfFreedom * Math.Pow(Math.Max(0, 1 - small + Normal.Quantile(share) * Math.Sqrt(small)), 3);
    }
}
