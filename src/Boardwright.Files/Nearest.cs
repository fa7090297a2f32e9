using Boardwright.Parts;

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
            var distance = TradeName.Slips(folded, candidate);
            if (distance < least)
                (best, least) = (word, distance);
        }

        return best;
    }

    /// <summary>The words that are few slips away or hold what was written, nearest first; none where nothing is near.</summary>
    public static IReadOnlyList<string> List(string written, IEnumerable<string> words, int most = 4) =>
    [
        .. words.Distinct(StringComparer.Ordinal)
            .Select(word => (Word: word, Slips: TradeName.Slips(written.ToLowerInvariant(), word.ToLowerInvariant())))
            .Where(found => found.Slips <= Math.Max(2, written.Length / 3)
                || found.Word.Contains(written, StringComparison.OrdinalIgnoreCase))
            .OrderBy(static found => found.Slips).ThenBy(static found => found.Word, StringComparer.Ordinal)
            .Take(most).Select(static found => found.Word),
    ];

    static string Fold(string word) => word.ToLowerInvariant().Replace('-', '_').Replace(' ', '_');
}
