using System.Globalization;
using Boardwright.Files.Built;
using Boardwright.Files.Yaml;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>Board files and the shelves they name.</summary>
public static class BoardFile
{
    /// <summary>What the name of a board file ends in.</summary>
    public const string Ending = ".board.yaml";

    internal const string VersionKey = "boardwright";
    const string ShelfKey = "shelf";
    const string WhenEmpty = "Write a board into it, or begin one with boardwright new.";

    /// <summary>Whether a file is called as board files are; other YAML files in a folder are shelf files.</summary>
    public static bool IsCalledSo(string path) => path.EndsWith(Ending, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a YAML file among others can be one of a shelf, by its name.</summary>
    public static bool IsCalledAsShelf(string path) =>
        (path.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || path.EndsWith(".yml", StringComparison.OrdinalIgnoreCase))
        && !IsCalledSo(path) && !BuiltFile.IsCalledSo(path);

    /// <summary>The name of a file without its folder and its ending.</summary>
    public static string NameOf(string path) => IsCalledSo(path) ? Path.GetFileName(path)[..^Ending.Length]
        : BuiltFile.IsCalledSo(path) ? Path.GetFileName(path)[..^BuiltFile.Ending.Length] : Path.GetFileNameWithoutExtension(path);

    /// <summary>Reads a board file and every file of its shelf.</summary>
    /// <param name="path">The file, as the user wrote it.</param>
    public static LoadedBoard Read(string path) => Read(path, FileTree.OnDisk);

    /// <summary>Reads a board file with another shelf than the one it names.</summary>
    /// <param name="path">The file, as the user wrote it.</param>
    /// <param name="shelfFolder">The folder of the shelf, as the user wrote it.</param>
    public static LoadedBoard Read(string path, string shelfFolder) => Read(path, FileTree.OnDisk, shelfFolder);

    /// <summary>Reads a board from a text that is not saved yet, as if it stood in a file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">The file it would be saved in; its shelf is looked for from there.</param>
    /// <param name="files">Where its shelf is; the disk where not given.</param>
    public static LoadedBoard ReadText(string text, string path, FileTree? files = null)
    {
        var complaints = new Complaints();
        var shown = Shown(path);
        return Read(NodeReader.Read(text.StartsWith('\uFEFF') ? text[1..] : text, shown, WhenEmpty, complaints), path,
            files ?? FileTree.OnDisk, complaints);
    }

    /// <summary>Reads a board file and every file of its shelf.</summary>
    /// <param name="path">The file, as the user wrote it.</param>
    /// <param name="files">Where the files are.</param>
    public static LoadedBoard Read(string path, FileTree files) => Read(path, files, null);

    static LoadedBoard Read(string path, FileTree files, string? shelfFolder)
    {
        var complaints = new Complaints();
        var shown = Shown(path);
        return Read(files.ReadNodes(path, shown, WhenEmpty, complaints), path, files, complaints, shelfFolder);
    }

    static LoadedBoard Read(Node? root, string path, FileTree files, Complaints complaints, string? shelfFolder = null)
    {
        var shown = Shown(path);
        var shelf = new ShelfReader(files, complaints);
        if (root is not MapNode map)
        {
            if (root is not (null or SpoiledNode))
                complaints.Add(root.At, "", $"{(root is SequenceNode ? "A list" : ValueReader.Shown(root))} stands where a board file wants its sections.", root is SequenceNode ? "Name a board file; a list of parts is a shelf file." : "Begin the file with boardwright: 1, then name: and the sections of the board.");
            return Refused(complaints, shown);
        }

        if (!HasOurVersion(map, shown, complaints))
            return Refused(complaints, shown);
        var sheets = new SheetReader(shelf, complaints);
        var values = new ValueReader(complaints);
        var draft = new SheetDraft(typeof(Board), map.At);
        var shelfEntry = Entry.ListEntries(typeof(Board)).Single(static entry => entry.Key == ShelfKey);
        if (map.Find(ShelfKey) is { } node && values.Read(shelfEntry, node, ShelfKey) is Known<Texts> { IsKnown: true } named)
        {
            draft.Set(shelfEntry, named, node.At);
            var folder = Path.GetDirectoryName(path) ?? "";
            foreach (var (i, name) in shelfFolder is null ? named.Value.Items.Index() : [])
            {
                var at = node is SequenceNode list ? list.Items[i].At : node.At;
                shelf.AddFolder(Path.Combine(folder, name), Shown(Path.Combine(folder, name)), at, ShelfKey);
            }
        }

        if (shelfFolder is not null)
            shelf.AddFolder(shelfFolder, Shown(shelfFolder), map.At, ShelfKey);
        var parts = shelf.ReadAll();
        // The shelf was read above, with its complaints.
        sheets.Fill(draft, typeof(Board), map, "", "a board file", [VersionKey, ShelfKey]);
        if (complaints.Count > 0)
            return Refused(complaints, shown);

        var places = new Dictionary<string, SourceLocation>(StringComparer.Ordinal);
        draft.AddPlaces("", places);
        var read = new Shelf([.. parts.Select(part => new ShelfPart(part.Id, part.Kind, (Part)part.Draft.Build(), part.Draft.At))]);
        var plugs = PlugsOf(parts, places, complaints);
        var board = ((Board)draft.Build() with { Plugs = plugs }).WithNames();
        Currencies.Check(board, places, complaints);
        return complaints.Count > 0 ? Refused(complaints, shown) : new(board, read, [], places);
    }

    /// <summary>The plugs of the shelf under their ids and names.</summary>
    static Dictionary<string, Plug> PlugsOf(
        IEnumerable<(string Id, string Kind, SheetDraft Draft)> parts, Dictionary<string, SourceLocation> places, Complaints complaints)
    {
        var plugs = new Dictionary<string, Plug>(TradeName.Comparer);
        foreach (var (id, _, draft) in parts.Where(static part => PartKinds.OnShelf[part.Kind] == typeof(Plug)))
        {
            var plug = (Plug)draft.Build();
            foreach (var name in new[] { id, plug.Name.Or(id) })
            {
                if (plugs.TryAdd(name, plug))
                    draft.AddPlaces($"plug {name}", places);
                else if (plugs[name].Id != id)
                    complaints.Add(draft.At, id, $"The plug {plugs[name].Id} is called {QuantityText.Quote(name)} too, so that name would mean two plugs.", "Give one of the two another name.");
            }
        }

        return plugs;
    }

    internal static bool HasOurVersion(MapNode map, string file, Complaints complaints)
    {
        var write = FormattableString.Invariant($"Write {VersionKey}: {Board.Version} in the first line.");
        switch (map.Find(VersionKey))
        {
            case null:
                complaints.Add(new(file, 1, 1), VersionKey, "The file does not say in which version of the format it is written.", write);
                return true;
            case SpoiledNode:
                return true;
            case ScalarNode scalar when int.TryParse(scalar.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var version)
                && version > 0:
                if (version == Board.Version)
                    return true;
                // What a later format holds cannot be judged here, so nothing else is said.
                complaints.Add(scalar.At, VersionKey, FormattableString.Invariant($"The file is written in version {version} of the format, and this program reads version {Board.Version}."), "Use a newer Boardwright for this file.");
                return false;
            case { } wrong:
                complaints.Add(wrong.At, VersionKey, $"{ValueReader.Shown(wrong)} is not a version of the format.", write);
                return true;
        }
    }

    static LoadedBoard Refused(Complaints complaints, string file) =>
        new(null, Shelf.Empty, complaints.Sorted(file), new Dictionary<string, SourceLocation>(StringComparer.Ordinal));

    internal static string Shown(string path) => path.Replace('\\', '/');
}
