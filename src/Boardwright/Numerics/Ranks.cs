using static System.FormattableString;

namespace Boardwright.Numerics;

/// <summary>What remains of a list of numbers when only their order counts.</summary>
static class Ranks
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
                throw new ArgumentException(Invariant($"Value {i} is not a number."), nameof(values));
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
}
