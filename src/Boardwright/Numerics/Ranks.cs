using System.Globalization;

namespace Boardwright.Numerics;

/// <summary>Comparison of lists of numbers by order alone.</summary>
public static class Ranks
{
    /// <summary>The rank of each value, 1 for the smallest; equal values share the mean of the ranks they take up.</summary>
    /// <exception cref="ArgumentException">A value is not a number.</exception>
    public static double[] Compute(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        var order = new int[values.Length];
        for (var i = 0; i < order.Length; i++)
        {
            if (double.IsNaN(values[i]))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Value {i} is not a number."), nameof(values));
            order[i] = i;
        }

        Array.Sort(sorted, order);
        var ranks = new double[order.Length];
        for (var first = 0; first < sorted.Length;)
        {
            var end = first + 1;
            while (end < sorted.Length && sorted[end] == sorted[first]) end++;
            // Places first to end − 1 hold ranks first + 1 to end.
            for (var i = first; i < end; i++) ranks[order[i]] = (first + 1 + end) / 2.0;
            first = end;
        }

        return ranks;
    }

    /// <summary>Spearman's rank correlation: the correlation of the ranks, −1 to 1; equal values share their mean rank.</summary>
    /// <param name="x">At least two values.</param>
    /// <param name="y">As many values.</param>
    /// <returns>The correlation, or <c>null</c> when all values of one list are equal, so that it has no order.</returns>
    /// <exception cref="ArgumentException">The lists differ in length, are shorter than two, or hold a value that is not a number.</exception>
    /// <source>M. G. Kendall, Rank Correlation Methods, 4th ed. (1970), ch. 1 and, for equal values, ch. 3.</source>
    public static double? Spearman(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length || x.Length < 2)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Two lists of equal length, at least 2, are needed; these have {x.Length} and {y.Length}."), nameof(y));
        var (u, v) = (Compute(x), Compute(y));
        // Tied or not, ranks always average this.
        var mean = (x.Length + 1) / 2.0;
        var (uu, vv, uv) = (0.0, 0.0, 0.0);
        for (var i = 0; i < u.Length; i++)
        {
            var (du, dv) = (u[i] - mean, v[i] - mean);
            uu += du * du;
            vv += dv * dv;
            uv += du * dv;
        }

        return uu == 0 || vv == 0 ? null : Math.Clamp(uv / Math.Sqrt(uu * vv), -1, 1);
    }
}
