using System.Diagnostics.CodeAnalysis;

namespace Boardwright.Parts;

/// <summary>How names of the trade are compared: plugs, bearings, screws, profiles, ports, patterns. Capitals, spaces, hyphens and
/// underlines make no difference, nor does <c>×</c> for <c>x</c>.</summary>
public static class TradeName
{
    /// <summary>Compares names, for tables that are looked up by them.</summary>
    public static IEqualityComparer<string> Comparer { get; } = new NameComparer();

    /// <summary>Whether two names mean the same.</summary>
    public static bool Same(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var (i, j) = (0, 0);
        while (true)
        {
            while (i < a.Length && IsLeftOut(a[i]))
                i++;
            while (j < b.Length && IsLeftOut(b[j]))
                j++;
            if (i == a.Length || j == b.Length)
                return i == a.Length && j == b.Length;
            if (Plain(a[i++]) != Plain(b[j++]))
                return false;
        }
    }

    /// <summary>A name without what makes no difference.</summary>
    public static string Plain(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return string.Concat(name.Where(c => !IsLeftOut(c)).Select(Plain));
    }

    static bool IsLeftOut(char c) => char.IsWhiteSpace(c) || c is '-' or '_' or '‐' or '‑' or '–';

    static char Plain(char c) => c == '×' ? 'x' : char.ToLowerInvariant(c);

    /// <summary>Known names that are few slips from what was written, nearest first; none where nothing is near.</summary>
    /// <param name="written">What was written.</param>
    /// <param name="known">The names there are.</param>
    /// <param name="most">How many to offer.</param>
    public static IReadOnlyList<string> Near(string written, IEnumerable<string> known, int most = 3)
    {
        var plain = Plain(written);
        return
        [
            .. known.Distinct(Comparer).Select(name => (Name: name, Slips: Slips(plain, Plain(name))))
                .Where(found => found.Slips <= Math.Max(2, plain.Length / 3))
                .OrderBy(static found => found.Slips).ThenBy(static found => found.Name, StringComparer.Ordinal)
                .Take(most).Select(static found => found.Name),
        ];
    }

    /// <summary>Letters added, left out, changed or swapped with their neighbour: Damerau and Levenshtein's distance in its form for
    /// neighbouring letters (optimal string alignment).</summary>
    public static int Slips(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
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

    sealed class NameComparer : IEqualityComparer<string>
    {
        public bool Equals(string? x, string? y) => x is null || y is null ? ReferenceEquals(x, y) : Same(x, y);

        public int GetHashCode([DisallowNull] string obj)
        {
            var hash = 0;
            foreach (var c in obj)
            {
                if (!IsLeftOut(c))
                    hash = 31 * hash + Plain(c);
            }

            return hash;
        }
    }
}
