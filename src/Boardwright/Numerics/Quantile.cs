namespace Boardwright.Numerics;

/// <summary>The value that a given share of a sample lies below.</summary>
static class Quantile
{
    /// <summary>
    /// The quantile of a sorted sample by linear interpolation: with h = (n − 1) p, between value ⌊h⌋ and the next,
    /// counted from 0, by the fraction of h.
    /// </summary>
    /// <param name="sorted">At least one value, in rising order; the order is not checked.</param>
    /// <param name="share">The share p, 0 (the smallest value) to 1 (the largest).</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The share is not within 0 to 1.</exception>
    /// <source>
    /// R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", Amer. Statist. 50 (1996) 361-365, definition 7.
    /// </source>
    public static double OfSorted(ReadOnlySpan<double> sorted, double share)
    {
        if (sorted.IsEmpty) throw new ArgumentException("A sample of nothing has no quantile.", nameof(sorted));
        if (!(share >= 0 && share <= 1)) throw new ArgumentOutOfRangeException(nameof(share), share, "Must be within 0 to 1.");
        var h = (sorted.Length - 1) * share;
        var below = (int)h;
        return below == sorted.Length - 1
            ? sorted[below]
            : sorted[below] + (h - below) * (sorted[below + 1] - sorted[below]);
    }
}
