namespace Boardwright.Files;

/// <summary>A place in a file; lines and columns count from one.</summary>
/// <param name="File">The file as the user wrote it, or relative to the board file's folder as the user wrote that.</param>
/// <param name="Line">The line.</param>
/// <param name="Column">The column.</param>
public sealed record SourceLocation(string File, int Line, int Column)
{
    /// <summary>The place as compilers write it, so that editors can follow it.</summary>
    public override string ToString() => FormattableString.Invariant($"{File}:{Line}:{Column}");
}

/// <summary>One thing that is wrong in a file.</summary>
/// <param name="At">Where.</param>
/// <param name="Key">The dotted key, such as <c>motor.shaft_length</c>, or <c>p15-5m-10.teeth</c> for a part of a shelf file; empty when
/// the whole file is meant.</param>
/// <param name="Says">What is wrong, in one sentence.</param>
/// <param name="Remedy">How to mend it, in one sentence.</param>
public sealed record Complaint(SourceLocation At, string Key, string Says, string Remedy)
{
    /// <summary>The file.</summary>
    public string File => At.File;
    /// <summary>The line, from one.</summary>
    public int Line => At.Line;
    /// <summary>The column, from one.</summary>
    public int Column => At.Column;
    /// <summary>The complaint in one line.</summary>
    public override string ToString() => Key.Length == 0 ? $"{At}: {Says} {Remedy}" : $"{At}: {Key}: {Says} {Remedy}";
}

/// <summary>Complaints as they come up.</summary>
sealed class Complaints
{
    const int LongestKey = 80;
    readonly List<Complaint> all = [];

    /// <summary>How many there are so far.</summary>
    public int Count => all.Count;

    /// <summary>Every complaint by file and line; the board file, which is read first, comes first.</summary>
    public IReadOnlyList<Complaint> Sorted(string first) =>
    [
        .. all.Distinct()
            .OrderBy(complaint => complaint.File == first ? 0 : 1)
            .ThenBy(complaint => complaint.File, StringComparer.Ordinal)
            .ThenBy(complaint => complaint.Line)
            .ThenBy(complaint => complaint.Column),
    ];

    /// <summary>Whether a key was complained about already.</summary>
    public bool Names(string key) => all.Exists(complaint => complaint.Key == key);
    /// <summary>Forgets all but the first ones.</summary>
    public void Keep(int count) => all.RemoveRange(count, all.Count - count);

    /// <summary>Adds one.</summary>
    public void Add(SourceLocation at, string key, string says, string remedy) =>
        all.Add(new(at, key.Length > LongestKey ? key[..LongestKey] + "…" : key, says, remedy));

    /// <summary>Adds one for a refused value.</summary>
    public void Add(SourceLocation at, string key, Refusal refusal) => Add(at, key, refusal.Says, refusal.Remedy);
}
