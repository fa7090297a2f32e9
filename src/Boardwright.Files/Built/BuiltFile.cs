using Boardwright.Builds;
using Boardwright.Files.Boards;
using Boardwright.Files.Logs;
using Boardwright.Files.Yaml;

namespace Boardwright.Files.Built;

/// <summary>What came of reading the file of a built board.</summary>
/// <param name="Built">The board, or <c>null</c> when there is any complaint: nothing is half loaded.</param>
/// <param name="Complaints">Everything that is wrong in the file.</param>
/// <param name="Places">Where each given value is written, by its dotted key.</param>
public sealed record LoadedBuilt(
    BuiltBoard? Built, IReadOnlyList<Complaint> Complaints, IReadOnlyDictionary<string, SourceLocation> Places);

/// <summary>Files of built boards: <c>SERIAL.built.yaml</c>.</summary>
public static class BuiltFile
{
    /// <summary>What the name of such a file ends in.</summary>
    public const string Ending = ".built.yaml";

    const string WhenEmpty = "Begin a built board with boardwright built begin.";

    /// <summary>Whether a file is called as files of built boards are.</summary>
    public static bool IsCalledSo(string path) => path.EndsWith(Ending, StringComparison.OrdinalIgnoreCase);

    /// <summary>The name of the file of a board with a serial number: in small letters, so that no two differ by their capitals
    /// alone.</summary>
    public static string NameFor(string serial)
    {
        ArgumentNullException.ThrowIfNull(serial);
        return serial.ToLowerInvariant() + Ending;
    }

    /// <summary>Why a text cannot be a serial number.</summary>
    /// <returns>The objection, or <c>null</c> where it can.</returns>
    public static Refusal? Objection(string serial)
    {
        const int Longest = 60;
        ArgumentNullException.ThrowIfNull(serial);
        return serial.Length is > 0 and <= Longest && char.IsLetterOrDigit(serial[0]) && char.IsLetterOrDigit(serial[^1])
            && serial.All(static c => char.IsLetterOrDigit(c) || c is '-' or '.' or '_')
            ? null
            : new($"{QuantityText.Quote(serial)} cannot be a serial number.", FormattableString.Invariant($"Write up to {Longest} letters, digits, points and hyphens, such as TERN-0001."));
    }

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file, as the user wrote it.</param>
    /// <param name="files">Where it is; the disk where not given.</param>
    public static LoadedBuilt Read(string path, FileTree? files = null)
    {
        var complaints = new Complaints();
        var shown = BoardFile.Shown(path);
        return Read((files ?? FileTree.OnDisk).ReadNodes(path, shown, WhenEmpty, complaints), shown, complaints);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="shown">How complaints name its file.</param>
    public static LoadedBuilt ReadText(string text, string shown)
    {
        ArgumentNullException.ThrowIfNull(text);
        var complaints = new Complaints();
        return Read(NodeReader.Read(text.StartsWith('\uFEFF') ? text[1..] : text, shown, WhenEmpty, complaints), shown, complaints);
    }

    static LoadedBuilt Read(Node? root, string shown, Complaints complaints)
    {
        LoadedBuilt Refused() => new(null, complaints.Sorted(shown), new Dictionary<string, SourceLocation>(StringComparer.Ordinal));
        if (root is not MapNode map)
        {
            if (root is not (null or SpoiledNode))
                complaints.Add(root.At, "", $"{(root is SequenceNode ? "A list" : ValueReader.Shown(root))} stands where the file of a built board wants its entries.", "Begin the file with boardwright: 1, then serial: and board:.");
            return Refused();
        }

        if (!BoardFile.HasOurVersion(map, shown, complaints))
            return Refused();
        var draft = new SheetDraft(typeof(BuiltBoard), map.At);
        new SheetReader(new ShelfReader(FileTree.OnDisk, complaints), complaints)
            .Fill(draft, typeof(BuiltBoard), map, "", "the file of a built board", [BoardFile.VersionKey]);
        var places = new Dictionary<string, SourceLocation>(StringComparer.Ordinal);
        draft.AddPlaces("", places);
        var built = ((BuiltBoard)draft.Build()).WithNames();
        new Checking(places, map.At, complaints).All(built);
        return complaints.Count > 0 ? Refused() : new(built, [], places);
    }

    /// <summary>What cannot be said of one entry alone.</summary>
    sealed class Checking(Dictionary<string, SourceLocation> places, SourceLocation start, Complaints complaints)
    {
        public void All(BuiltBoard built)
        {
            Due(built.Serial, "Write the number that stands on the board, such as serial: TERN-0001.");
            if (built.Serial.IsKnown && Objection(built.Serial.Value) is { } objection)
                complaints.Add(At(built.Serial.Key), built.Serial.Key, objection);
            foreach (var done in built.Steps.Concat(built.Bench))
            {
                Due(done.Step, "Write the id of the step, such as step: belt-1.note.");
                Due(done.When, $"Write when it was done, such as when: {Moment.Example}.");
                Due(done.Who, "Write who did it, such as who: Ada.");
                foreach (var value in done.Value.IsKnown ? done.Value.Value.Items : [])
                {
                    if (Benchwork.Objection(value, done.Value.Key) is { } refusal)
                        complaints.Add(At(done.Value.Key), done.Value.Key, refusal);
                }
            }

            foreach (var note in built.Notes)
            {
                if (!note.Says.IsKnown)
                    Due(note.File, "Write what there is to say, as in says: left lead sleeved, or name a file.");
                Inside(note.File);
            }

            foreach (var fault in built.Faults)
            {
                Due(fault.Says, "Write what is wrong, as in says: belt 2 jumps.");
                Due(fault.Found, $"Write when it was found, such as found: {Moment.Example}.");
            }

            foreach (var ride in built.Rides)
            {
                Due(ride.File, "Name the log, such as file: rides/harbour.csv.");
                Inside(ride.File);
                foreach (var column in ride.Columns.Columns.IsKnown ? ride.Columns.Columns.Value.Items : [])
                {
                    if (LoggerFile.Objection(column) is { } refusal)
                        complaints.Add(At(ride.Columns.Columns.Key), ride.Columns.Columns.Key, refusal);
                }
            }

            foreach (var marking in built.States)
            {
                Due(marking.Is, "Write the state, such as is: on the bench.");
                Due(marking.When, $"Write when, such as when: {Moment.Example}.");
                Due(marking.Who, "Write who, such as who: Ada.");
            }
        }

        SourceLocation At(string key) => places.TryGetValue(key, out var place) ? place : start;

        void Due<T>(Known<T> known, string remedy)
            where T : notnull
        {
            if (known.IsKnown)
                return;
            // Its own line is not there, so the line it belongs to is named; where it was complained about already, once is enough.
            var dot = known.Key.LastIndexOf('.');
            var place = At(dot < 0 ? known.Key : known.Key[..dot]);
            if (!complaints.Names(known.Key))
                complaints.Add(place, known.Key, $"{known.Key} is not said.", remedy);
        }

        void Inside(Known<string> file)
        {
            if (file.IsKnown && (file.Value.Split('/').Any(static name => name.Trim() is "" or "." or "..")
                || file.Value.Contains('\\', StringComparison.Ordinal) || file.Value.Contains(':', StringComparison.Ordinal)))
                complaints.Add(At(file.Key), file.Key, $"{QuantityText.Quote(file.Value)} does not lie in this file's folder or below it.", "Put it there, and name it from there with slashes, such as photos/motor.jpg.");
        }
    }
}
