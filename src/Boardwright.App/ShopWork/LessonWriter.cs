using System.Text;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Lessons;
using Boardwright.Shops;

namespace Boardwright.App.ShopWork;

/// <summary>What taking a lesson would write, and where.</summary>
/// <param name="Files">The board's files with the lesson in them.</param>
/// <param name="Lines">What is written, in what place, and what it stands in for; one line for each entry.</param>
/// <param name="Refusal">Why nothing can be written; empty where something can.</param>
sealed record LessonChanges(FileSet Files, IReadOnlyList<string> Lines, string Refusal);

/// <summary>Writes what rides taught into a board or its shelf, as measured, and nothing else in the files changes.</summary>
static class LessonWriter
{
    /// <summary>Prepares it; nothing is written yet.</summary>
    /// <param name="files">The board with its shelf.</param>
    /// <param name="lesson">What is taken.</param>
    /// <param name="intoShelf">Whether the shelf part is changed and not the board alone.</param>
    public static LessonChanges Apply(FileSet files, Lesson lesson, bool intoShelf)
    {
        if (!lesson.CanBeTaken)
            return new(files, [], lesson.Says);
        var lines = new List<string>();
        foreach (var entry in lesson.Entries)
        {
            var entered = new Entered(entry.Value, entry.Give, "measured");
            var dot = entry.Key.IndexOf('.', StringComparison.Ordinal);
            var place = entry.Key[..dot];
            if (!intoShelf || place == "brief")
            {
                var before = BoardText.Read(files.Main.Text, entry.Key);
                var changed = BoardText.Change(files.Main.Text, entry.Key, entered);
                if (changed.Refusal is { } refusal)
                    return new(files, [], $"{refusal.Says} {refusal.Remedy}");
                lines.Add($"{files.Main.Path}: {entry.Key}: {DescribeEntry(entered)}, {(before is null ? "for this board alone" : $"in place of {before.Value}")}");
                files = files.With(files.Main.Path, changed.Text);
                continue;
            }

            if (BoardText.Read(files.Main.Text, place)?.Value is not { } id)
                return new(files, [], $"The board file names no shelf part for {place}. Write it into the board instead.");
            if (BoardText.Read(files.Main.Text, entry.Key) is not null)
                return new(files, [], $"The board file has {entry.Key} of its own, which would still count. Write it into the board instead.");
            Changed? inShelf = null;
            var path = "";
            foreach (var file in files.Files.Where(
                f => f.Path != files.Main.Path && f.Path.EndsWith("ml", StringComparison.OrdinalIgnoreCase)))
            {
                if (BoardText.ChangePart(file.Text, id, entry.Key[(dot + 1)..], entered) is not { } found)
                    continue;
                (inShelf, path) = (found, file.Path);
                break;
            }

            if (inShelf is null)
                return new(files, [], $"No shelf file of the board has the part {id}. Write it into the board instead.");
            if (inShelf.Refusal is { } why)
                return new(files, [], $"{why.Says} {why.Remedy}");
            lines.Add($"{path}: {id}.{entry.Key[(dot + 1)..]}: {DescribeEntry(entered)}, for every board that uses {id}");
            files = files.With(path, inShelf.Text);
        }

        // What is written must be read again as it was meant; a board that was in order stays so.
        var texts = files.Files.ToDictionary(f => f.Path, f => f.Text, StringComparer.Ordinal);
        var loaded = BoardFile.ReadText(files.Main.Text, files.Main.Path, FileTree.FromTexts(texts));
        return loaded.Board is null
            ? new(files, [], "The board file would no longer be in order, so nothing was written: " + string.Join("; ", loaded.Complaints))
            : new(files, lines, "");
    }

    /// <summary>Why a revision was saved: what was measured, and on which ride.</summary>
    public static string Why(IEnumerable<Lesson> lessons, string ride) => $"{string.Join(" and ", lessons.SelectMany(l => l.Entries).Select(e => e.Key))} measured on {ride}";

    static string DescribeEntry(Entered entered) =>
        new StringBuilder("{ value: ").Append(entered.Value).Append(", give: ").Append(entered.Give).Append(", from: measured }").ToString();
}
