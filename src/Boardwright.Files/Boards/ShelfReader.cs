using Boardwright.Files.Yaml;

namespace Boardwright.Files.Boards;

/// <summary>Reads the files of a shelf, and hands out its parts.</summary>
sealed class ShelfReader
{
    readonly FileTree files;
    readonly Complaints complaints;
    readonly SheetReader sheets;
    readonly List<Raw> raws = [];
    readonly Dictionary<string, Raw> byId = new(StringComparer.Ordinal);
    readonly List<string> folders = [];
    readonly HashSet<string> seen = new(StringComparer.Ordinal);
    readonly List<Raw> trail = [];
    bool incomplete;

    /// <summary>An empty shelf.</summary>
    public ShelfReader(FileTree files, Complaints complaints)
    {
        (this.files, this.complaints) = (files, complaints);
        sheets = new SheetReader(this, complaints);
    }

    /// <summary>Whether shelf parts are being read, not the board's own.</summary>
    public bool IsReading => trail.Count > 0;

    /// <summary>Reads every shelf file of a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="shown">How complaints name it.</param>
    /// <param name="at">Where the board names it.</param>
    /// <param name="key">The key under which the board names it.</param>
    public void AddFolder(string folder, string shown, SourceLocation at, string key)
    {
        const int mostFiles = 1000;
        folders.Add(shown);
        try
        {
            if (files.HasFile(folder))
            {
                Incomplete(at, key, $"'{shown}' is a file, and a shelf is a folder.", "Name the folder that holds it.");
                return;
            }

            if (!files.HasFolder(folder))
            {
                Incomplete(at, key, $"There is no folder '{shown}'.", "Check the name, which is read from the board file's folder, or make the folder.");
                return;
            }

            if (!seen.Add(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder))))
                return;
            var found = files.FilesIn(folder)
                .Where(BoardFile.IsCalledAsShelf)
                .Take(mostFiles + 1)
                .Order(StringComparer.Ordinal)
                .ToArray();
            if (found.Length > mostFiles)
            {
                Incomplete(at, key, FormattableString.Invariant($"'{shown}' holds more than {mostFiles} files."), "Name the folder that holds the shelf and nothing else.");
                return;
            }

            foreach (var file in found)
                AddFile(file, $"{shown.TrimEnd('/')}/{Path.GetFileName(file)}");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException
            or System.Security.SecurityException)
        {
            Incomplete(at, key, $"The folder '{shown}' could not be read.", "Check its name and that you may read it.");
        }
    }

    /// <summary>Reads one shelf file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="shown">How complaints name it.</param>
    public void AddFile(string path, string shown)
    {
        var before = complaints.Count;
        var root = files.ReadNodes(path, shown, "Write a list of parts into it, or delete it.", complaints);
        incomplete |= complaints.Count > before;
        if (root is null or SpoiledNode)
            return;
        if (root is not SequenceNode list)
        {
            var isBoard = root is MapNode map && map.Find(BoardFile.VersionKey) is not null;
            Incomplete(root.At, "", isBoard ? "This is a board, and a shelf file is a list of parts." : $"{ValueReader.Shown(root)} stands where a shelf file wants a list of parts.", isBoard ? "Give it a name that ends in .board.yaml, or keep it outside the shelf folder." : "Begin each part with a dash, as in - id: marram-96.");
            return;
        }

        foreach (var (i, item) in list.Items.Index())
        {
            if (item is MapNode map)
                AddPart(map, FormattableString.Invariant($"[{i + 1}]"));
            else if (item is not SpoiledNode)
                complaints.Add(item.At, FormattableString.Invariant($"[{i + 1}]"), $"{ValueReader.Shown(item)} stands where a part belongs.", "Write the part's id, kind and entries below the dash.");
        }
    }

    /// <summary>Reads every part that the files hold, used or not.</summary>
    /// <returns>The parts with their drafts, in the order of the files.</returns>
    public IReadOnlyList<(string Id, string Kind, SheetDraft Draft)> ReadAll()
    {
        var parts = new List<(string, string, SheetDraft)>();
        foreach (var raw in raws)
        {
            if (Resolve(raw) is { } draft && raw.Type is { } type && raw.Id.Length > 0)
                parts.Add((raw.Id, PartKinds.WordOf(type), draft));
        }

        return parts;
    }

    /// <summary>A part for a place that wants one of a type.</summary>
    /// <returns>The part, or <c>null</c> when it is not there or of another kind, or wrong in itself; that was then complained
    /// about.</returns>
    public SheetDraft? Take(string id, Type type, SourceLocation at, string key)
    {
        if (!byId.TryGetValue(id, out var raw))
        {
            // What could not be read may well have had it.
            if (!incomplete)
                NotThere(id, type, at, key);
            return null;
        }

        if (raw.Type is { } other && other != type)
        {
            complaints.Add(at, key, $"{QuantityText.Quote(id)} is a {PartKinds.WordOf(other)}, and a {PartKinds.WordOf(type)} is wanted.", Ids(type) is { Count: > 0 } ids && Nearest.To(id, ids) is { } near ? $"Write the id of a {PartKinds.WordOf(type)}, such as {near}." : $"Write the id of a {PartKinds.WordOf(type)}.");
            return null;
        }

        return Resolve(raw);
    }

    void AddPart(MapNode map, string number)
    {
        var id = "";
        switch (map.Find(SheetReader.Id))
        {
            case null:
                complaints.Add(map.At, number, "This part has no id.", "Give it an id of its own, as in id: marram-96.");
                break;
            case ScalarNode scalar when IsId(scalar.Text):
                id = scalar.Text;
                break;
            case SpoiledNode:
                break;
            case { } wrong:
                complaints.Add(wrong.At, $"{number}.id", $"{ValueReader.Shown(wrong)} cannot be an id.", "Write a short word of letters, digits, hyphens, points and underlines, such as marram-96.");
                break;
        }

        var key = id.Length > 0 ? id : number;
        var raw = new Raw(id, key, KindOf(map, key), map);
        raws.Add(raw);
        if (id.Length == 0)
            return;
        // Ids that differ in capitals only would be mistaken for each other.
        if (raws.FirstOrDefault(other => other != raw && string.Equals(other.Id, id, StringComparison.OrdinalIgnoreCase)) is { } first)
            complaints.Add(map.Find(SheetReader.Id)!.At, id, $"The id {QuantityText.Quote(id)} is taken: {first.Map.Find(SheetReader.Id)!.At} has {(first.Id == id ? "it too" : $"{first.Id}, which differs in capitals only")}.", "Give one of the two another id.");
        byId.TryAdd(id, raw);
    }

    Type? KindOf(MapNode map, string key)
    {
        switch (map.Find(SheetReader.Kind))
        {
            case ScalarNode scalar when PartKinds.OnShelf.TryGetValue(scalar.Text, out var type):
                return type;
            case ScalarNode { Text: "pack" } pack:
                complaints.Add(pack.At, $"{key}.kind", "A pack is made for one board and does not lie on the shelf.", "Write it on the board, below parts: pack:.");
                break;
            case SpoiledNode:
                break;
            case { } wrong:
                var near = wrong is ScalarNode word ? Nearest.To(word.Text, PartKinds.OnShelf.Keys) : null;
                complaints.Add(wrong.At, $"{key}.kind", $"{ValueReader.Shown(wrong)} is not a kind of part.", near is null ? $"The kinds are {ValueReader.JoinWords([.. PartKinds.OnShelf.Keys])}." : $"Write kind: {near}, if that is meant.");
                break;
            default:
                complaints.Add(map.At, key, "This part has no kind.", $"Say what it is: kind: {ValueReader.JoinWords([.. PartKinds.OnShelf.Keys])}.");
                break;
        }

        return null;
    }

    SheetDraft? Resolve(Raw raw)
    {
        if (raw.IsDone || raw.Type is null)
            return raw.Draft;
        var start = trail.IndexOf(raw);
        if (start >= 0)
        {
            // Told once, at the part where the ring was entered; every part of the ring is done with.
            var ring = trail.Skip(start).Append(raw).Select(part => part.Id).ToArray();
            complaints.Add(raw.Map.Find(SheetReader.Use)!.At, $"{raw.Key}.use", $"This part is made from itself: {string.Join(" uses ", ring)}.", "Write out the entries of one of them and take its use: out.");
            foreach (var part in trail.Skip(start))
                part.IsDone = true;
            return null;
        }

        trail.Add(raw);
        var draft = sheets.Part(raw.Type, raw.Map, raw.Key, raw.Id.Length > 0 ? raw.Id : raw.Key,
            [SheetReader.Id, SheetReader.Kind, SheetReader.Use]);
        trail.RemoveAt(trail.Count - 1);
        if (!raw.IsDone)
            (raw.Draft, raw.IsDone) = (draft, true);
        return raw.Draft;
    }

    void NotThere(string id, Type type, SourceLocation at, string key)
    {
        var kind = PartKinds.WordOf(type);
        if (folders.Count == 0)
        {
            complaints.Add(at, key, $"{QuantityText.Quote(id)} is an id on the shelf, and the board names no shelf.", "Name the folder, as in shelf: [shelf/], or write the part here in braces.");
            return;
        }

        var where = ValueReader.JoinWords([.. folders]);
        var near = Nearest.To(id, Ids(type)) ?? Nearest.To(id, byId.Keys);
        complaints.Add(
            at,
            key,
            raws.Count == 0 ? $"No part {QuantityText.Quote(id)} is on the shelf: {where} holds no parts." : $"No part {QuantityText.Quote(id)} is on the shelf that was read, {where}.",
            near is not null ? $"Write {near}, if that is meant." : $"Put a {kind} with this id into a file of the shelf, or write the part here in braces.");
    }

    List<string> Ids(Type type) => [.. byId.Values.Where(raw => raw.Type == type).Select(raw => raw.Id)];

    void Incomplete(SourceLocation at, string key, string says, string remedy)
    {
        incomplete = true;
        complaints.Add(at, key, says, remedy);
    }

    static bool IsId(string text) =>
        text.Length is > 0 and <= 80 && char.IsLetterOrDigit(text[0])
        && text.All(static c => char.IsLetterOrDigit(c) || c is '-' or '_' or '.');

    sealed class Raw(string id, string key, Type? type, MapNode map)
    {
        public string Id { get; } = id;

        public string Key { get; } = key;

        public Type? Type { get; } = type;

        public MapNode Map { get; } = map;

        public SheetDraft? Draft { get; set; }

        public bool IsDone { get; set; }
    }
}
