namespace Boardwright.App;

/// <summary>Which of the known words somebody may have meant.</summary>
static class Closeness
{
    /// <summary>The nearest words, best first; none where nothing is near.</summary>
    public static IReadOnlyList<string> Nearest(string word, IEnumerable<string> known, int most = 4) =>
    [
        .. known.Distinct(StringComparer.Ordinal)
            .Select(k => (Word: k, Steps: Steps(word, k)))
            .Where(k => k.Steps <= Math.Max(2, word.Length / 3) || k.Word.Contains(word, StringComparison.OrdinalIgnoreCase))
            .OrderBy(k => k.Steps).ThenBy(k => k.Word, StringComparer.Ordinal)
            .Take(most).Select(k => k.Word),
    ];

    /// <summary>How many letters have to be put in, taken out, replaced or swapped with the next to turn one word into the other.</summary>
    public static int Steps(string from, string to)
    {
        var steps = new int[from.Length + 1, to.Length + 1];
        for (var i = 0; i <= from.Length; i++)
        {
            for (var j = 0; j <= to.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    steps[i, j] = i + j;
                    continue;
                }

                var replaced = steps[i - 1, j - 1] + (Same(from[i - 1], to[j - 1]) ? 0 : 1);
                steps[i, j] = Math.Min(replaced, 1 + Math.Min(steps[i - 1, j], steps[i, j - 1]));
                if (i > 1 && j > 1 && Same(from[i - 1], to[j - 2]) && Same(from[i - 2], to[j - 1]))
                    steps[i, j] = Math.Min(steps[i, j], 1 + steps[i - 2, j - 2]);
            }
        }

        return steps[from.Length, to.Length];
    }

    static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
