using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>A sheet while it is being put together: what was read for each of its entries, and where it is written.</summary>
/// <param name="type">Type of the sheet.</param>
/// <param name="at">Where it is written.</param>
sealed class SheetDraft(Type type, SourceLocation at)
{
    readonly Dictionary<Entry, (object Value, SourceLocation At)> values = [];
    readonly Dictionary<Entry, SheetDraft> sheets = [];
    readonly Dictionary<Entry, IReadOnlyList<SheetDraft>> lists = [];
    readonly Dictionary<Entry, IReadOnlyList<(string Name, SheetDraft Sheet)>> maps = [];

    /// <summary>Where it is written.</summary>
    public SourceLocation At { get; } = at;
    /// <summary>The shelf id it goes by, for a part that was taken from the shelf.</summary>
    public string Id { get; init; } = "";
    /// <summary>Sets a value.</summary>
    public void Set(Entry entry, object known, SourceLocation place) => values[entry] = (known, place);
    /// <summary>Sets a sheet inside this one.</summary>
    public void Set(Entry entry, SheetDraft sheet) => sheets[entry] = sheet;
    /// <summary>Sets a list of sheets.</summary>
    public void Set(Entry entry, IReadOnlyList<SheetDraft> list) => lists[entry] = list;
    /// <summary>Sets a map from names to sheets.</summary>
    public void Set(Entry entry, IReadOnlyList<(string Name, SheetDraft Sheet)> map) => maps[entry] = map;

    /// <summary>A copy to which other values are added, under another id and from another place.</summary>
    public SheetDraft Copy(string id, SourceLocation place)
    {
        var copy = new SheetDraft(type, place) { Id = id };
        foreach (var (entry, value) in values)
            copy.values[entry] = value;
        foreach (var (entry, sheet) in sheets)
            copy.sheets[entry] = sheet;
        foreach (var (entry, list) in lists)
            copy.lists[entry] = list;
        foreach (var (entry, map) in maps)
            copy.maps[entry] = map;
        return copy;
    }

    /// <summary>The sheet inside this one as it is so far, to which overrides are added.</summary>
    public SheetDraft? Inside(Entry entry) => sheets.GetValueOrDefault(entry);

    /// <summary>The finished sheet.</summary>
    public Sheet Build()
    {
        var empty = (Sheet)Activator.CreateInstance(type)!;
        var sheet = empty.With(
        [
            .. values.Select(pair => (pair.Key, pair.Value.Value)),
            .. sheets.Select(pair => (pair.Key, (object)pair.Value.Build())),
            .. lists.Select(pair => (pair.Key, pair.Key.Known(pair.Value.Select(item => item.Build())))),
            .. maps.Select(pair => (pair.Key,
                pair.Key.Known(pair.Value.Select(item => KeyValuePair.Create(item.Name, item.Sheet.Build()))))),
        ]);
        return sheet is Part part ? part with { Id = Id, IsChosen = true } : sheet;
    }

    /// <summary>Where everything is written, by dotted key as the board names it.</summary>
    public void AddPlaces(string prefix, IDictionary<string, SourceLocation> places)
    {
        if (prefix.Length > 0)
            places[prefix] = At;
        foreach (var (entry, (_, place)) in values)
            places[Under(prefix, entry)] = place;
        foreach (var (entry, sheet) in sheets)
            sheet.AddPlaces(type == typeof(Board) && entry.ValueType == typeof(Fitted) ? "" : Under(prefix, entry), places);
        foreach (var (entry, list) in lists)
        {
            foreach (var (i, item) in list.Index())
                item.AddPlaces(FormattableString.Invariant($"{Under(prefix, entry)}[{i + 1}]"), places);
        }

        foreach (var (entry, map) in maps)
        {
            foreach (var (name, sheet) in map)
                sheet.AddPlaces($"{Under(prefix, entry)}.{name}", places);
        }
    }

    static string Under(string prefix, Entry entry) => prefix.Length == 0 ? entry.Key : $"{prefix}.{entry.Key}";
}
