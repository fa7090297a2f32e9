using Boardwright.Files.Yaml;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>Reads sheets from maps, and parts from ids, maps and maps with <c>use:</c>.</summary>
/// <param name="shelf">The shelf that ids are looked up on.</param>
/// <param name="complaints">Takes what is wrong.</param>
sealed class SheetReader(ShelfReader shelf, Complaints complaints)
{
    /// <summary>Takes another part from the shelf and changes some of its entries.</summary>
    public const string Use = "use";
    /// <summary>Says the kind of a part.</summary>
    public const string Kind = "kind";
    /// <summary>Names a part on its shelf.</summary>
    public const string Id = "id";

    static readonly Lazy<IReadOnlyList<(string Section, string Key)>> Elsewhere = new(static () =>
    [
        .. Entry.ListEntries(typeof(Board)).Where(static entry => entry.Form == EntryForm.Sheet)
            .SelectMany(static entry => Entry.ListEntries(entry.ValueType).Select(inner => (entry.Key, inner.Key))),
    ]);

    readonly ValueReader values = new(complaints);

    /// <summary>Fills a draft from a map.</summary>
    /// <param name="draft">The draft to fill.</param>
    /// <param name="type">Type of its sheet.</param>
    /// <param name="map">The map.</param>
    /// <param name="prefix">Dotted key of the sheet, empty for the board and for its parts.</param>
    /// <param name="title">What the sheet is called in a complaint.</param>
    /// <param name="also">Keys that are read elsewhere.</param>
    public void Fill(SheetDraft draft, Type type, MapNode map, string prefix, string title, IReadOnlyList<string> also)
    {
        var entries = Entry.ListEntries(type);
        // What stands by itself goes before what several entries share, wherever it is written.
        foreach (var (word, value) in map.Pairs)
        {
            if (JoinedEntry.Find(type, word.Text) is { } joined)
                joined.Fill(draft, value, Under(prefix, word), values, complaints);
        }

        foreach (var (at, (word, value)) in map.Pairs.Index())
        {
            if (also.Contains(word.Text, StringComparer.Ordinal) || JoinedEntry.Find(type, word.Text) is not null)
                continue;
            var key = Under(prefix, word);
            if (entries.FirstOrDefault(entry => string.Equals(entry.Key, word.Text, StringComparison.Ordinal)) is { } entry)
            {
                if (!IsHalfOfComma(map, at + 1))
                    Fill(draft, type, entry, value, key);
            }
            else if (at > 0 && IsHalfOfWords(map, at, entries))
            {
                var (name, half) = map.Pairs[at - 1];
                var words = $"{((ScalarNode)half).Text}, {word.Text.TrimStart()}";
                complaints.Add(half.At, prefix.Length == 0 ? name.Text : $"{prefix}.{name.Text}", $"'{words}' has a comma, which ends a value inside braces.", $"Put it in quotes: \"{words}\".");
            }
            else if (IsHalfOfComma(map, at))
            {
                var before = map.Pairs[at - 1];
                complaints.Add(before.Value.At, prefix.Length == 0 ? before.Key.Text : $"{prefix}.{before.Key.Text}", $"'{((ScalarNode)before.Value).Text},{word.Text}' has a comma, which ends a value inside braces.", $"Write {((ScalarNode)before.Value).Text}.{word.Text.TrimStart()}, with a point.");
            }
            else
            {
                var joined = JoinedEntry.Within(type).Select(static joined => joined.Key);
                Unknown(word, key, title, [.. entries.Select(static entry => entry.Key), .. joined, .. also], type);
            }
        }
    }

    static string Under(string prefix, ScalarNode word) => prefix.Length == 0 ? word.Text : $"{prefix}.{word.Text}";

    /// <summary>Reads the part for a place of the board.</summary>
    /// <returns>The part, or <c>null</c> when nothing was chosen or it was complained about.</returns>
    public SheetDraft? Slot(Type type, Node node, string key)
    {
        switch (node)
        {
            case SpoiledNode or ScalarNode { IsEmpty: true }:
                return null;
            case ScalarNode scalar when type == typeof(Pack) && JoinedEntry.Find(type, "cells") is { } cells
                && cells.Split((ValueReader.Unmarked(scalar) ?? scalar).Text) is not null:
                var counted = new SheetDraft(type, scalar.At);
                cells.Fill(counted, scalar, key, values, complaints);
                return counted;
            case ScalarNode scalar when type != typeof(Pack):
                return shelf.Take(scalar.Text, type, scalar.At, key)?.Copy(scalar.Text, scalar.At);
            case MapNode map:
                return Part(type, map, key, "", [Kind, .. type == typeof(Pack) ? Array.Empty<string>() : [Use]]);
            default:
                complaints.Add(
                    node.At,
                    key,
                    $"{ValueReader.Shown(node)} stands where {key} wants a part.",
                    type == typeof(Pack) ? "Write how the pack is made, as in 12S4P or { series: 12, parallel: 4 }." : $"Write the id of a {PartKinds.WordOf(type)} on the shelf, or its entries in braces.");
                return null;
        }
    }

    /// <summary>Reads a part from a map, on top of the part that it uses.</summary>
    /// <param name="type">Type of the part.</param>
    /// <param name="map">The map.</param>
    /// <param name="key">Its dotted key, or its id on the shelf.</param>
    /// <param name="id">Its id, empty on the board.</param>
    /// <param name="also">Keys beside the part's entries.</param>
    public SheetDraft? Part(Type type, MapNode map, string key, string id, IReadOnlyList<string> also)
    {
        if (id.Length == 0 && map.Find(Kind) is { } kind and not SpoiledNode && (kind as ScalarNode)?.Text != PartKinds.WordOf(type))
            complaints.Add(kind.At, $"{key}.{Kind}", $"{ValueReader.Shown(kind)} is not the kind of part that goes here.", $"Write kind: {PartKinds.WordOf(type)}, or leave it out.");
        if (id.Length == 0 && map.Find(Id) is { } named)
        {
            complaints.Add(named.At, $"{key}.{Id}", "A part that is written into the board has no id.", "Take the id out, or put the part on the shelf and write its id here; use: takes a shelf part and changes it.");
            also = [.. also, Id];
        }

        SheetDraft? draft;
        if (also.Contains(Use, StringComparer.Ordinal) && map.Find(Use) is { } use)
        {
            if (use is not ScalarNode { IsEmpty: false } scalar)
            {
                if (use is not SpoiledNode)
                    complaints.Add(use.At, $"{key}.{Use}", $"{ValueReader.Shown(use)} stands where the id of a shelf part belongs.", $"Write the id of a {PartKinds.WordOf(type)}, as in use: ID.");
                draft = null;
            }
            else
            {
                draft = shelf.Take(scalar.Text, type, scalar.At, $"{key}.{Use}")?.Copy(id.Length > 0 ? id : scalar.Text, map.At);
            }

            // The overrides are read even when the part is not there, so that all complaints come at once.
            Fill(draft ?? new SheetDraft(type, map.At), type, map, key, key, also);
            return draft;
        }

        draft = new SheetDraft(type, map.At) { Id = id };
        Fill(draft, type, map, key, key, also);
        return draft;
    }

    void Fill(SheetDraft draft, Type type, Entry entry, Node value, string key)
    {
        switch (entry.Form)
        {
            case EntryForm.Sheet when entry.ValueType.IsSubclassOf(typeof(Part)):
                if (Slot(entry.ValueType, value, key) is { } part)
                    draft.Set(entry, part);
                break;
            case EntryForm.Sheet:
                var isParts = entry.ValueType == typeof(Fitted);
                if (value is MapNode map)
                {
                    var inner = draft.Inside(entry)?.Copy("", map.At) ?? new SheetDraft(entry.ValueType, map.At);
                    Fill(inner, entry.ValueType, map, isParts ? "" : key, key, []);
                    draft.Set(entry, inner);
                }
                else if (value is not (SpoiledNode or ScalarNode { IsEmpty: true }))
                {
                    complaints.Add(value.At, key, $"{ValueReader.Shown(value)} stands where {key} wants entries of its own.", $"Write the entries of {key} below it, indented, one in a line, as in {FirstOf(entry.ValueType)}.");
                }

                break;
            case EntryForm.Sheets:
                List(draft, entry, value, key);
                break;
            case EntryForm.NamedSheets:
                ByName(draft, entry, value, key);
                break;
            default:
                if (shelf.IsReading && type.IsSubclassOf(typeof(Part)) && entry.Key == "count")
                    complaints.Add(value.At, key, "How many are fitted is said on the board, not on the shelf.", "Take count out here; write { use: ID, count: … } on the board, or stock: for what lies on the shelf.");
                else if (values.Read(entry, value, key) is { } known)
                    draft.Set(entry, known, value.At);
                break;
        }
    }

    void List(SheetDraft draft, Entry entry, Node value, string key)
    {
        if (value is not SequenceNode list)
        {
            if (value is not (SpoiledNode or ScalarNode { IsEmpty: true }))
                complaints.Add(value.At, key, $"{ValueReader.Shown(value)} stands where {key} wants a list.", $"Begin each item of {key} with a dash in a line of its own.");
            return;
        }

        var items = new List<SheetDraft>();
        foreach (var (i, item) in list.Items.Index())
        {
            var numbered = FormattableString.Invariant($"{key}[{i + 1}]");
            if (entry.ValueType.IsSubclassOf(typeof(Part)))
            {
                if (Slot(entry.ValueType, item, numbered) is { } part)
                    items.Add(part);
            }
            else if (item is MapNode map)
            {
                var draftItem = new SheetDraft(entry.ValueType, map.At);
                Fill(draftItem, entry.ValueType, map, numbered, numbered, []);
                items.Add(draftItem);
            }
            else if (item is not SpoiledNode)
            {
                var first = Entry.ListEntries(entry.ValueType).Take(2).Select(static inner => $"{inner.Key}: {inner.Example}");
                complaints.Add(item.At, numbered, $"{ValueReader.Shown(item)} stands where an item of {key} belongs.", $"Write the item in braces, as in - {{ {string.Join(", ", first)} }}.");
            }
        }

        draft.Set(entry, items);
    }

    void ByName(SheetDraft draft, Entry entry, Node value, string key)
    {
        if (value is not MapNode map)
        {
            if (value is not (SpoiledNode or ScalarNode { IsEmpty: true }))
                complaints.Add(value.At, key, $"{ValueReader.Shown(value)} stands where {key} wants names.", $"Write each name of {key} in a line of its own, indented, as in {entry.Example}.");
            return;
        }

        var items = new List<(string, SheetDraft)>();
        foreach (var (word, inner) in map.Pairs)
        {
            var named = $"{key}.{word.Text}";
            if (inner is MapNode sheet)
            {
                var item = new SheetDraft(entry.ValueType, sheet.At);
                Fill(item, entry.ValueType, sheet, named, named, []);
                if (item.Build() is BoxPosition spot)
                    Layouts.Check(word.Text, spot, named, word.At, complaints);
                items.Add((word.Text, item));
            }
            else if (inner is not (SpoiledNode or ScalarNode { IsEmpty: true }))
            {
                complaints.Add(inner.At, named, $"{ValueReader.Shown(inner)} stands where {named} wants entries of its own.", $"Write them in braces, as in {entry.Example}.");
            }
        }

        draft.Set(entry, items);
    }

    /// <summary>Complains about a key that a sheet does not have.</summary>
    public void Unknown(ScalarNode word, string key, string title, IReadOnlyList<string> known, Type? type)
    {
        var says = $"{QuantityText.Quote(word.Text)} is not a key of {title}.";
        known = [.. known.Distinct(StringComparer.Ordinal)];
        if (type == typeof(Board) && Elsewhere.Value.FirstOrDefault(pair => pair.Key == word.Text) is { Section: { } section })
            complaints.Add(word.At, key, says, $"Indent it below {section}:, where it belongs.");
        else if (type == typeof(Fitted) && Entry.ListEntries(typeof(Board)).Any(entry => entry.Key == word.Text))
            complaints.Add(word.At, key, says, "Write it in the first column, as a section of its own.");
        else if (Nearest.To(word.Text, known) is { } near)
            complaints.Add(word.At, key, says, $"Write {near} instead, if that is meant.");
        else
            complaints.Add(word.At, key, says, known.Count == 1 ? $"The only key here is {known[0]}." : known.Count <= 12 ? $"The keys here are {string.Join(", ", known)}." : $"Take it out, or look the key up among the {known.Count} keys of {title} in the guide.");
    }

    static string FirstOf(Type sheet) => Entry.ListEntries(sheet)[0] is { Form: not EntryForm.Sheet } first ? $"{first.Key}: {first.Example}" : $"{Entry.ListEntries(sheet)[0].Key}: {{ … }}";

    /// <summary>Whether a pair is the second half of words with a comma: inside braces <c>{ material: maple, 8 layers }</c> has a key <c>8
    /// layers</c>.</summary>
    static bool IsHalfOfWords(MapNode map, int at, IReadOnlyList<Entry> entries) =>
        map.IsFlow && map.Pairs[at].Value is ScalarNode { IsEmpty: true }
        && map.Pairs[at - 1].Value is ScalarNode { IsPlain: true, IsEmpty: false }
        && entries.Any(e => e.Key == map.Pairs[at - 1].Key.Text && e.Form is (EntryForm.Text or EntryForm.Texts));

    /// <summary>Whether a pair is the second half of a number with a decimal comma: inside braces <c>{ width: 1,5 mm }</c> has a key <c>5
    /// mm</c>.</summary>
    static bool IsHalfOfComma(MapNode map, int at) =>
        map.IsFlow && at > 0 && at < map.Pairs.Count
        && map.Pairs[at] is ({ IsPlain: true } half, ScalarNode { IsEmpty: true }) && char.IsAsciiDigit(half.Text.FirstOrDefault())
        && map.Pairs[at - 1].Value is ScalarNode { IsPlain: true, Text: var text } && text.Length > 0 && char.IsAsciiDigit(text[^1]);
}
