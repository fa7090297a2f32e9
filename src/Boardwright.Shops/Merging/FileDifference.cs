using Boardwright.Files.Yaml;

namespace Boardwright.Shops.Merging;

/// <summary>A value that differs between two revisions.</summary>
/// <param name="File">The file.</param>
/// <param name="Key">The key; empty where the file has no keys or is new or gone as a whole.</param>
/// <param name="Old">What was written, or <c>null</c> where it was not there.</param>
/// <param name="New">What is written, or <c>null</c> where it is gone.</param>
public sealed record KeyChange(string File, string Key, string? Old, string? New);

/// <summary>A line of the difference between two texts.</summary>
/// <param name="Sign">A minus for a line that is gone, a plus for a new one, a blank for one that stayed and is shown for
/// orientation.</param>
/// <param name="Number">Number of the line, in the old text for a line that is gone, in the new one otherwise; from 1.</param>
/// <param name="Text">The line without its line break.</param>
public sealed record LineChange(char Sign, int Number, string Text);

/// <summary>What differs between two revisions, by key and by line.</summary>
/// <param name="Keys">Values and comments that differ.</param>
/// <param name="Lines">Lines that differ, by file, with a few that do not around them.</param>
public sealed record FileDifference(IReadOnlyList<KeyChange> Keys, IReadOnlyDictionary<string, IReadOnlyList<LineChange>> Lines)
{
    const int Around = 2;

    /// <summary>Compares two sets of files.</summary>
    public static FileDifference Compute(FileSet old, FileSet changed)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(changed);
        var keys = new List<KeyChange>();
        var lines = new SortedDictionary<string, IReadOnlyList<LineChange>>(StringComparer.Ordinal);
        foreach (var path in old.Files.Concat(changed.Files).Select(static file => file.Path).Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal))
        {
            var (before, after) = (old.Find(path), changed.Find(path));
            if (before?.Hash == after?.Hash)
                continue;
            keys.AddRange(ByKey(path, before, after));
            lines[path] = ByLine(before?.Text ?? "", after?.Text ?? "");
        }

        return new(keys, lines);
    }

    static IEnumerable<KeyChange> ByKey(string path, KeptFile? before, KeptFile? after)
    {
        var isYaml = path.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || path.EndsWith(".yml", StringComparison.OrdinalIgnoreCase);
        if (before is null || after is null || !isYaml || KeyedText.Read(before.Text) is not { } old
            || KeyedText.Read(after.Text) is not { } changed)
        {
            yield return new(path, "", before is null ? null : "", after is null ? null : "");
            yield break;
        }

        foreach (var key in changed.Entries.Concat(old.Entries).Select(static entry => entry.Key).Distinct(StringComparer.Ordinal))
        {
            var (was, now) = (old.Leaves.GetValueOrDefault(key)?.Written, changed.Leaves.GetValueOrDefault(key)?.Written);
            if (was != now)
                yield return new(path, key, was, now);
        }
    }

    static List<LineChange> ByLine(string before, string after)
    {
        var (old, changed) = (LineDifference.Lines(before), LineDifference.Lines(after));
        var shown = new List<LineChange>();
        var next = 0;
        var hunks = LineDifference.Compute(old, changed);
        foreach (var (i, hunk) in hunks.Index())
        {
            for (var line = Math.Max(next, hunk.New - Around); line < hunk.New; line++)
                shown.Add(new(' ', line + 1, changed[line].TrimEnd('\r', '\n')));
            for (var line = hunk.Old; line < hunk.Old + hunk.OldCount; line++)
                shown.Add(new('-', line + 1, old[line].TrimEnd('\r', '\n')));
            for (var line = hunk.New; line < hunk.New + hunk.NewCount; line++)
                shown.Add(new('+', line + 1, changed[line].TrimEnd('\r', '\n')));
            next = hunk.New + hunk.NewCount;
            var end = Math.Min(next + Around, i + 1 < hunks.Count ? hunks[i + 1].New : changed.Count);
            for (; next < end; next++)
                shown.Add(new(' ', next + 1, changed[next].TrimEnd('\r', '\n')));
        }

        return shown;
    }
}
