namespace Boardwright.App.Reports;

/// <summary>Which of the known words somebody may have meant.</summary>
static class NearestWords
{
    /// <summary>The words that are few slips away or hold what was written, nearest first; none where nothing is near.</summary>
    public static IReadOnlyList<string> Nearest(string word, IEnumerable<string> known, int most = 4) =>
    [
        .. known.Distinct(StringComparer.Ordinal)
            .Select(k => (Word: k, Slips: Files.Nearest.Distance(word.ToLowerInvariant(), k.ToLowerInvariant())))
            .Where(k => k.Slips <= Math.Max(2, word.Length / 3) || k.Word.Contains(word, StringComparison.OrdinalIgnoreCase))
            .OrderBy(k => k.Slips).ThenBy(k => k.Word, StringComparer.Ordinal)
            .Take(most).Select(k => k.Word),
    ];
}
