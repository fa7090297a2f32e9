namespace Boardwright.Shops.Merging;

/// <summary>What takes the place of a stretch of lines that both sides changed.</summary>
enum MergeText
{
    Mine,
    Theirs,
    Both,
}

/// <summary>Puts two changes of one text together, line by line.</summary>
static class LineMerge
{
    /// <summary>The text with the changes of both sides.</summary>
    /// <param name="before">The lines both began with.</param>
    /// <param name="mine">The lines of one side.</param>
    /// <param name="theirs">The lines of the other.</param>
    /// <param name="stand">Whose lines stand where both changed the same ones.</param>
    public static string Merge(IReadOnlyList<string> before, IReadOnlyList<string> mine, IReadOnlyList<string> theirs, MergeText stand)
    {
        var text = new System.Text.StringBuilder();
        var (left, right) = (Split(LineDifference.Compute(before, mine)), Split(LineDifference.Compute(before, theirs)));
        int at = 0, l = 0, r = 0;
        void Put(IReadOnlyList<string> lines, int from, int count)
        {
            for (var i = from; i < from + count; i++)
                text.Append(lines[i]);
        }

        while (l < left.Count || r < right.Count)
        {
            var start = Math.Min(l < left.Count ? left[l].Old : int.MaxValue, r < right.Count ? right[r].Old : int.MaxValue);
            Put(before, at, start - at);
            // Hunks of the two sides that touch the same lines are one stretch.
            int end = start, firstLeft = l, firstRight = r;
            bool grew;
            do
            {
                grew = false;
                while (l < left.Count && Touches(left[l], start, end))
                    (end, grew) = (Math.Max(end, left[l].Old + left[l++].OldCount), true);
                while (r < right.Count && Touches(right[r], start, end))
                    (end, grew) = (Math.Max(end, right[r].Old + right[r++].OldCount), true);
            }
            while (grew);
            var (myLines, theirLines) =
                (Side(before, mine, left, firstLeft, l, start, end), Side(before, theirs, right, firstRight, r, start, end));
            var mineFirst = l > firstLeft
                && (r == firstRight || stand != MergeText.Theirs || myLines.SequenceEqual(theirLines, StringComparer.Ordinal));
            foreach (var line in mineFirst ? myLines : theirLines)
                text.Append(line);
            if (l > firstLeft && r > firstRight && stand == MergeText.Both && !myLines.SequenceEqual(theirLines, StringComparer.Ordinal))
                text.AppendJoin("", theirLines);
            at = end;
        }

        Put(before, at, before.Count - at);
        return text.ToString();
    }

    static bool Touches(Hunk hunk, int start, int end) => hunk.Old < end || (hunk.Old == start && start == end);

    static List<string> Side(
        IReadOnlyList<string> before, IReadOnlyList<string> lines, List<Hunk> hunks, int first, int last, int start, int end)
    {
        var side = new List<string>();
        var at = start;
        for (var i = first; i < last; i++)
        {
            for (; at < hunks[i].Old; at++)
                side.Add(before[at]);
            for (var k = 0; k < hunks[i].NewCount; k++)
                side.Add(lines[hunks[i].New + k]);
            at = hunks[i].Old + hunks[i].OldCount;
        }

        for (; at < end; at++)
            side.Add(before[at]);
        return side;
    }

    /// <summary>As many lines for as many lines were changed one by one: two people who each change one of them do not meet.</summary>
    static List<Hunk> Split(List<Hunk> hunks) =>
    [
        .. hunks.SelectMany(static hunk => hunk.OldCount == hunk.NewCount
            ? Enumerable.Range(0, hunk.OldCount).Select(i => new Hunk(hunk.Old + i, 1, hunk.New + i, 1))
            : [hunk]),
    ];
}
