namespace Boardwright.Documents.Charts;

/// <summary>Thins a long line out to what a column of pixels can show: its first, least, greatest and last point.</summary>
/// <remarks>The drawn line covers the same pixels, and no peak is lost.</remarks>
static class Decimation
{
    /// <summary>Places of the points that are kept, rising.</summary>
    /// <param name="x">Where the points are, never falling.</param>
    /// <param name="y">Their values, finite.</param>
    /// <param name="from">Start of the first column.</param>
    /// <param name="to">End of the last column, above <paramref name="from"/>.</param>
    /// <param name="columns">Number of columns, at least 1.</param>
    public static IReadOnlyList<int> Reduce(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double from, double to, int columns)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(y.Length, x.Length, nameof(y));
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        var kept = new List<int>(Math.Min(x.Length, 4 * columns));
        if (x.Length <= 2 * columns)
        {
            for (var i = 0; i < x.Length; i++)
                kept.Add(i);
            return kept;
        }

        var perColumn = columns / (to - from);
        for (var start = 0; start < x.Length;)
        {
            var column = Column(x[start]);
            var (least, greatest, end) = (start, start, start + 1);
            while (end < x.Length && Column(x[end]) == column)
            {
                if (y[end] < y[least])
                    least = end;
                if (y[end] > y[greatest])
                    greatest = end;
                end++;
            }

            Keep(start);
            Keep(Math.Min(least, greatest));
            Keep(Math.Max(least, greatest));
            Keep(end - 1);
            start = end;
        }

        return kept;

        int Column(double at) => (int)Math.Clamp((at - from) * perColumn, -1, columns);

        void Keep(int i)
        {
            if (kept.Count == 0 || kept[^1] < i)
                kept.Add(i);
        }
    }
}
