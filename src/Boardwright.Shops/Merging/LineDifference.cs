using System.Runtime.InteropServices;

namespace Boardwright.Shops.Merging;

/// <summary>A stretch of lines that was replaced: from the old text, by lines of the new one.</summary>
/// <param name="Old">First old line, from 0.</param>
/// <param name="OldCount">How many old lines are gone.</param>
/// <param name="New">First new line, from 0.</param>
/// <param name="NewCount">How many new lines stand there.</param>
[StructLayout(LayoutKind.Auto)]
readonly record struct Hunk(int Old, int OldCount, int New, int NewCount);

/// <summary>The shortest way from one list of lines to another.</summary>
/// <source>E. W. Myers, An O(ND) difference algorithm and its variations, Algorithmica 1 (1986) 251-266.</source>
static class LineDifference
{
    // The steps kept grow with the square of the difference; texts further apart than this are one hunk.
    const int MostEdits = 2000;

    /// <summary>A text as lines, each with its line break, so that joining them gives the text again.</summary>
    public static List<string> Lines(string text)
    {
        var lines = new List<string>();
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end + 1;
            lines.Add(text[start..end]);
            start = end;
        }

        return lines;
    }

    /// <summary>The hunks, in order.</summary>
    public static List<Hunk> Compute(IReadOnlyList<string> old, IReadOnlyList<string> changed)
    {
        var start = 0;
        while (start < old.Count && start < changed.Count && old[start] == changed[start])
            start++;
        var (oldEnd, newEnd) = (old.Count, changed.Count);
        while (oldEnd > start && newEnd > start && old[oldEnd - 1] == changed[newEnd - 1])
            (oldEnd, newEnd) = (oldEnd - 1, newEnd - 1);
        if (oldEnd == start && newEnd == start)
            return [];
        return Steps(old, changed, start, oldEnd, newEnd) is { } steps ? JoinHunks(steps)
            : [new(start, oldEnd - start, start, newEnd - start)];
    }

    /// <summary>Single lines taken out (old at least 0, new below 0) and put in, from the first to the last.</summary>
    static List<(int Old, int New, bool IsPutIn)>? Steps(
        IReadOnlyList<string> old, IReadOnlyList<string> changed, int start, int oldEnd, int newEnd)
    {
        var (n, m) = (oldEnd - start, newEnd - start);
        var most = Math.Min(n + m, MostEdits);
        var furthest = new int[2 * most + 3];
        var middle = most + 1;
        var trace = new List<int[]>();
        for (var d = 0; d <= most; d++)
        {
            trace.Add(furthest[(middle - d - 1)..(middle + d + 2)]);
            for (var k = -d; k <= d; k += 2)
            {
                var x = k == -d || (k != d && furthest[middle + k - 1] < furthest[middle + k + 1]) ? furthest[middle + k + 1]
                    : furthest[middle + k - 1] + 1;
                while (x < n && x - k < m && old[start + x] == changed[start + x - k])
                    x++;
                furthest[middle + k] = x;
                if (x >= n && x - k >= m)
                    return Walked(trace, n, m, start);
            }
        }

        return null;
    }

    static List<(int Old, int New, bool IsPutIn)> Walked(List<int[]> trace, int n, int m, int start)
    {
        var steps = new List<(int, int, bool)>();
        var (x, y) = (n, m);
        for (var d = trace.Count - 1; d > 0; d--)
        {
            var furthest = trace[d];
            var k = x - y;
            int At(int diagonal) => furthest[diagonal + d + 1];
            var putIn = k == -d || (k != d && At(k - 1) < At(k + 1));
            var before = putIn ? k + 1 : k - 1;
            (x, y) = (At(before), At(before) - before);
            steps.Add((start + x, start + y, putIn));
        }

        steps.Reverse();
        return steps;
    }

    static List<Hunk> JoinHunks(List<(int Old, int New, bool IsPutIn)> steps)
    {
        var hunks = new List<Hunk>();
        foreach (var (old, changed, isPutIn) in steps)
        {
            var last = hunks.Count > 0 ? hunks[^1] : default;
            if (hunks.Count > 0 && last.Old + last.OldCount == old && last.New + last.NewCount == changed)
                hunks[^1] = isPutIn ? last with { NewCount = last.NewCount + 1 } : last with { OldCount = last.OldCount + 1 };
            else
                hunks.Add(isPutIn ? new(old, 0, changed, 1) : new(old, 1, changed, 0));
        }

        return hunks;
    }
}
