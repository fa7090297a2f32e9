namespace Boardwright.Files;

/// <summary>Finds what somebody probably meant to write.</summary>
static class Nearest
{
    const int LongestWord = 64;

    /// <summary>The word nearest to what was written, counting letters added, left out, changed or swapped with their neighbour.</summary>
    /// <returns>The word, or <c>null</c> when none is near: at most one slip for each three letters.</returns>
    public static string? To(string written, IEnumerable<string> words)
    {
        if (written.Length is 0 or > LongestWord)
            return null;
        var folded = Fold(written);
        var (best, least) = ((string?)null, Math.Max(1, folded.Length / 3) + 1);
        foreach (var word in words)
        {
            var candidate = Fold(word);
            if (Math.Abs(candidate.Length - folded.Length) >= least)
                continue;
            var distance = Distance(folded, candidate);
            if (distance < least)
                (best, least) = (word, distance);
        }

        return best;
    }

    /// <summary>The words that are few slips away or hold what was written, nearest first; none where nothing is near.</summary>
    public static IReadOnlyList<string> List(string written, IEnumerable<string> words, int most = 4) =>
    [
        .. words.Distinct(StringComparer.Ordinal)
            .Select(word => (Word: word, Slips: Distance(written.ToLowerInvariant(), word.ToLowerInvariant())))
            .Where(found => found.Slips <= Math.Max(2, written.Length / 3)
                || found.Word.Contains(written, StringComparison.OrdinalIgnoreCase))
            .OrderBy(static found => found.Slips).ThenBy(static found => found.Word, StringComparer.Ordinal)
            .Take(most).Select(static found => found.Word),
    ];

    /// <summary>Damerau and Levenshtein's distance in its form for neighbouring letters (optimal string alignment).</summary>
    internal static int Distance(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            rows[i, 0] = i;
        for (var j = 0; j <= b.Length; j++)
            rows[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                rows[i, j] = Math.Min(Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1, rows[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
            }
        }

        return rows[a.Length, b.Length];
    }

    static string Fold(string word) => word.ToLowerInvariant().Replace('-', '_').Replace(' ', '_');
}
