using System.Globalization;
using System.Text;
using Boardwright.Files.Yaml;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>A text after a change, or why it was not changed.</summary>
/// <param name="Text">The text; the old one where the change was refused.</param>
/// <param name="Refusal">Why it was not changed, or <c>null</c>.</param>
public sealed record Changed(string Text, Refusal? Refusal);

/// <summary>A value as a person enters it, with where it comes from and how well it is known.</summary>
/// <param name="Value">The value as it would be written, such as <c>50 A</c>.</param>
/// <param name="Give">One standard deviation, such as <c>5 %</c>; <c>null</c> for the default.</param>
/// <param name="From"><c>measured</c>, <c>maker</c> or <c>guess</c>; <c>null</c> where nothing is said.</param>
public sealed record Entered(string Value, string? Give = null, string? From = null)
{
    /// <summary>Whether the value stands alone, with the default spread of its kind.</summary>
    public bool IsPlain => Give is null && From is null;
}

/// <summary>Changes single values in the text of a board file, and leaves everything else as the person wrote it: comments, order and
/// layout.</summary>
public static class BoardText
{
    const string PartsKey = "parts";

    /// <summary>Changes one value, or adds it where it is missing. The mark of a guess goes with the value that was guessed. A place that
    /// holds a shelf id alone becomes <c>{ use: ID, key: value
    /// }</c>.</summary>
    /// <param name="text">Text of a board file.</param>
    /// <param name="key">Dotted key as the board names it, such as <c>limits.pack_current</c>, <c>motor.kv</c> or <c>wiring[1].length</c>;
    /// a place for a part, such as <c>motor</c>, takes an id.</param>
    /// <param name="newValue">The value as it would be written, such as <c>50 A</c>.</param>
    public static Changed Change(string text, string key, string newValue) =>
        Edited(text, key, newValue, (editor, map, steps) => editor.Apply(map, steps, newValue));

    /// <summary>Changes one value together with its origin and spread; what the file said of those before is replaced.</summary>
    /// <param name="text">Text of a board file.</param>
    /// <param name="key">Dotted key as for <see cref="Change(string, string, string)"/>.</param>
    /// <param name="entered">The value.</param>
    public static Changed Change(string text, string key, Entered entered) =>
        Edited(text, key, entered.Value, (editor, map, steps) => editor.State(map, steps, entered));

    /// <summary>Says where a thing lies in the box: the entries of <c>layout.NAME</c>, in one line where the file has none of it yet.
    /// Entries of it that are not among these are taken out.</summary>
    /// <param name="text">Text of a board file.</param>
    /// <param name="name">Name of the thing, such as <c>gland 1</c>.</param>
    /// <param name="entries">Keys and values as they would be written, such as <c>x</c> and <c>-80 mm</c>; at least one.</param>
    public static Changed Place(string text, string name, IReadOnlyList<(string Key, string Value)> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var key = $"layout.{name}";
        if (!Holds(text, key))
            return Edited(text, $"{key}.{entries[0].Key}", entries[0].Value, (editor, map, steps) => editor.Place(map, steps, entries));
        // Entry by entry, so that comments between them stay. What goes is taken out last: a sheet is never left empty.
        var changed = new Changed(text, null);
        foreach (var (entry, value) in entries)
        {
            if (changed.Refusal is null && Read(changed.Text, $"{key}.{entry}")?.Value != value)
                changed = Change(changed.Text, $"{key}.{entry}", new Entered(value));
        }

        foreach (var entry in Entry.ListEntries(typeof(BoxPosition)).Where(e => entries.All(kept => kept.Key != e.Key)))
        {
            if (changed.Refusal is null)
                changed = Remove(changed.Text, $"{key}.{entry.Key}");
        }

        return changed.Refusal is null ? changed : changed with { Text = text };
    }

    /// <summary>Takes the place of a thing out of the layout, so that one is proposed; the whole section goes with the last of
    /// them.</summary>
    /// <param name="text">Text of a board file.</param>
    /// <param name="name">Name of the thing; <c>null</c> for all of them.</param>
    public static Changed Unplace(string text, string? name = null)
    {
        if (NodeReader.Read(text.StartsWith('\uFEFF') ? text[1..] : text, "", "", new Complaints()) is not MapNode root
            || root.Find("layout") is not MapNode { Pairs: var spots } || (name is not null && spots.All(s => s.Key.Text != name)))
            return new(text, null);
        return Edited(text, "layout.pack.x", "-",
            (editor, map, _) => editor.Remove(map, name is null || spots.Count == 1 ? [("layout", 0)] : [("layout", 0), (name, 0)]));
    }

    static bool Holds(string text, string key)
    {
        Node? node = NodeReader.Read(text.StartsWith('\uFEFF') ? text[1..] : text, "", "", new Complaints());
        foreach (var word in key.Split('.'))
            node = (node as MapNode)?.Find(word);
        return node is MapNode { Pairs.Count: > 0 };
    }

    /// <summary>Changes one value of a part in the text of a shelf file together with its origin and spread.</summary>
    /// <param name="text">Text of a shelf file: a list of parts.</param>
    /// <param name="id">Id of the part.</param>
    /// <param name="key">Key of the part, such as <c>kv</c> or <c>polarisation.R1</c>.</param>
    /// <param name="entered">The value.</param>
    /// <returns>The text after the change; <c>null</c> when the file has no such part.</returns>
    public static Changed? ChangePart(string text, string id, string key, Entered entered)
    {
        if (text.StartsWith('\uFEFF'))
            return ChangePart(text[1..], id, key, entered) is { } rest ? rest with { Text = text[0] + rest.Text } : null;
        var complaints = new Complaints();
        if (NodeReader.Read(text, "", "", complaints) is not SequenceNode list || complaints.Count > 0)
            return null;
        var part = list.Items.OfType<MapNode>().FirstOrDefault(item => item.Find("id") is ScalarNode named && named.Text == id);
        return part is null ? null : new Editor(text, key).State(part, [.. key.Split('.').Select(word => (word, 0))], entered);
    }

    /// <summary>Takes one value out of the file, with the line it stands on where it has one of its own.</summary>
    /// <param name="text">Text of a board file.</param>
    /// <param name="key">Dotted key as for <see cref="Change(string, string, string)"/>.</param>
    public static Changed Remove(string text, string key) => Edited(text, key, "-", (editor, map, steps) => editor.Remove(map, steps));

    /// <summary>What a board file says under a key.</summary>
    /// <returns>The value as it is written; <c>null</c> when the file does not give it itself, or gives more than one value
    /// there.</returns>
    public static Entered? Read(string text, string key) => Reader(text)(key);

    /// <summary>Parses a board file once, to say under many keys what <see cref="Read"/> says under one.</summary>
    public static Func<string, Entered?> Reader(string text)
    {
        var root = NodeReader.Read(text.StartsWith('\uFEFF') ? text[1..] : text, "", "", new Complaints());
        return key => Under(root, key);
    }

    /// <summary>Changes one value of another kind of file that is made of sheets, as <see cref="Change(string, string, string)"/> does for
    /// a board.</summary>
    internal static Changed ChangeIn(Type root, string text, string key, string newValue) =>
        Edited(text, key, newValue, (editor, map, steps) => editor.Apply(map, steps, newValue), root);

    /// <summary>Adds an item to a list of sheets, behind the last one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="list">Key of the list, in the first column.</param>
    /// <param name="item">The item as it would be written, in braces.</param>
    internal static Changed Append(string text, string list, string item)
    {
        if (text.StartsWith('\uFEFF'))
            return Append(text[1..], list, item) is var rest ? rest with { Text = text[0] + rest.Text } : rest;
        var complaints = new Complaints();
        return NodeReader.Read(text, "", "", complaints) is MapNode map && complaints.Count == 0 ? new Editor(text, list).Append(map, item)
            : NotInOrder(text);
    }

    static Entered? Under(Node? root, string key)
    {
        if (Steps(key, typeof(Board)) is not { } steps)
            return null;
        var type = typeof(Board);
        foreach (var (name, item) in steps)
        {
            root = (root as MapNode)?.Find(name) ?? Joined(root, type, name);
            type = Entry.ListEntries(type).FirstOrDefault(entry => entry.Key == name)?.ValueType ?? type;
            if (item > 0)
                root = root is SequenceNode list && list.Items.Count >= item ? list.Items[item - 1] : null;
        }

        return root switch
        {
            ScalarNode scalar when ValueReader.Unmarked(scalar) is { } guess => new(guess.Text, From: Entry.Word(Origin.Guess)),
            ScalarNode { IsEmpty: false } scalar => new(scalar.Text),
            MapNode frame when frame.Find("value") is ScalarNode { IsEmpty: false } value =>
                new(value.Text, (frame.Find("give") as ScalarNode)?.Text, (frame.Find("from") as ScalarNode)?.Text),
            MapNode part when part.Find(SheetReader.Use) is ScalarNode { IsEmpty: false } id => new(id.Text),
            _ => null,
        };
    }

    /// <summary>The value of an entry that is written together with others.</summary>
    static ScalarNode? Joined(Node? sheet, Type type, string key)
    {
        foreach (var joined in JoinedEntry.Within(type))
        {
            var written = sheet is MapNode map ? map.Find(joined.Key) as ScalarNode : joined.IsCells ? sheet as ScalarNode : null;
            if (written is not null && joined.PieceOf((ValueReader.Unmarked(written) ?? written).Text, key) is { } piece)
                return written with { Text = ValueReader.Unmarked(written) is null ? piece : piece + ValueReader.GuessMark };
        }

        return null;
    }

    static Changed NotInOrder(string text) => new(text, new("The file is not in order, so nothing was changed in it.", "Mend the file first."));

    static Changed Edited(string text, string key, string newValue, Func<Editor, MapNode, List<(string Key, int Item)>, Changed> edit,
        Type? of = null)
    {
        if (text.StartsWith('\uFEFF'))
        {
            var rest = Edited(text[1..], key, newValue, edit, of);
            return rest with { Text = text[0] + rest.Text };
        }

        var complaints = new Complaints();
        var root = NodeReader.Read(text, "", "", complaints);
        if (root is not MapNode map || complaints.Count > 0)
            return NotInOrder(text);
        if (string.IsNullOrWhiteSpace(newValue))
            return new(text, new($"Nothing is written for {key}.", "Write a value, or take the entry out."));
        if (newValue.EnumerateRunes().Any(static rune => rune == Rune.ReplacementChar || (Rune.IsControl(rune) && rune.Value != '\n')))
            return new(text, new($"{QuantityText.Quote(newValue)} holds a character that cannot be printed.", "Write it again with letters, digits and signs only."));
        if (Steps(key, of ?? typeof(Board)) is not { } steps)
            return new(text, new($"{QuantityText.Quote(key)} is not a key of a board.", "Check the key."));
        return edit(new Editor(text, key, IsText(of ?? typeof(Board), steps)), map, steps);
    }

    /// <summary>A value as YAML, in quotation marks only where it would be misread without them.</summary>
    internal static string Quote(string value, bool inFlow, bool isText = false)
    {
        // What follows a value decides how it is read: inside braces a comma or the brace itself.
        string[] trials = inFlow ? [$"{{ k: {value}, l: m }}", $"{{ l: m, k: {value} }}"] : [$"k: {value}\nl: m\n"];
        var isMarked = isText && value.EndsWith(ValueReader.GuessMark, StringComparison.Ordinal);
        if (!isMarked && trials.All(trial => ReadsBack(trial, value)))
            return value;
        return $"\"{value.Replace(@"\", @"\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal)}\"";
    }

    static bool ReadsBack(string trial, string value)
    {
        var complaints = new Complaints();
        return NodeReader.Read(trial, "", "", complaints) is MapNode { Pairs.Count: 2 } map && complaints.Count == 0
            && map.Find("k") is ScalarNode { IsPlain: true } alone && alone.Text == value && map.Find("l") is ScalarNode { Text: "m" };
    }

    /// <summary>The keys from the file's root to an entry; a number picks an item of a list.</summary>
    static List<(string Key, int Item)>? Steps(string key, Type root)
    {
        var steps = new List<(string, int)>();
        var type = root;
        var words = key.Split('.');
        if (root == typeof(Board) && Entry.ListEntries(typeof(Fitted)).Any(entry => entry.Key == words[0].Split('[')[0]))
        {
            steps.Add((PartsKey, 0));
            type = typeof(Fitted);
        }

        var isName = false;
        foreach (var (at, word) in words.Index())
        {
            // The names of a map are no entries: whatever stands there is one.
            if (isName)
            {
                if (at == words.Length - 1 || string.IsNullOrWhiteSpace(word))
                    return null;
                steps.Add((word, 0));
                isName = false;
                continue;
            }

            var (name, item) = (word, 0);
            if (word.EndsWith(']') && word.IndexOf('[', StringComparison.Ordinal) is > 0 and var bracket)
            {
                if (!int.TryParse(word[(bracket + 1)..^1], NumberStyles.None, CultureInfo.InvariantCulture, out item) || item < 1)
                    return null;
                name = word[..bracket];
            }

            if (Entry.ListEntries(type).FirstOrDefault(candidate => candidate.Key == name) is not { } entry
                || item > 0 != (entry.Form == EntryForm.Sheets))
                return null;
            steps.Add((name, item));
            isName = entry.Form == EntryForm.NamedSheets;
            var isSheet = isName || entry.Form is EntryForm.Sheet or EntryForm.Sheets;
            if (at == words.Length - 1 ? isSheet && (!entry.ValueType.IsSubclassOf(typeof(Part)) || entry.ValueType == typeof(Pack))
                : !isSheet)
                return null;
            type = entry.ValueType;
        }

        return steps;
    }

    /// <summary>Whether the steps end at an entry that holds words, in which a question mark means itself.</summary>
    static bool IsText(Type sheet, List<(string Key, int Item)> steps)
    {
        foreach (var (name, _) in steps)
        {
            if (Entry.ListEntries(sheet).FirstOrDefault(entry => entry.Key == name) is not { } entry)
                return false;
            if (entry.Form is EntryForm.Text or EntryForm.Texts)
                return true;
            sheet = entry.ValueType;
        }

        return false;
    }

    sealed class Editor(string text, string key, bool isText = false)
    {
        // Set while a value is written with its origin and spread: braces that must not be put in quotation marks.
        string? frame;

        readonly YamlText yaml = new(text);

        string NewLine => yaml.NewLine;

        public Changed State(MapNode map, List<(string Key, int Item)> steps, Entered entered)
        {
            string[] rest =
            [
                $"value: {BoardText.Quote(entered.Value, inFlow: true)}",
                .. entered.Give is { } give ? new[] { $"give: {BoardText.Quote(give, inFlow: true)}" } : [],
                .. entered.From is { } from ? new[] { $"from: {BoardText.Quote(from, inFlow: true)}" } : [],
            ];
            frame = entered.IsPlain ? null : $"{{ {string.Join(", ", rest)} }}";
            // A frame or a table that is there goes as a whole, so that nothing of it outlives what was said anew.
            if (Framed(map, steps) is var (word, old))
                return new(string.Concat(
                    text.AsSpan(0, yaml.AfterColon(word)), " ", Indented(entered.Value, old.IsFlow), text.AsSpan(yaml.LastOf(old))), null);
            return Apply(map, steps, entered.Value);
        }

        public Changed Place(MapNode map, List<(string Key, int Item)> steps, IReadOnlyList<(string Key, string Value)> entries)
        {
            frame = $"{{ {string.Join(", ", entries.Select(e => $"{e.Key}: {BoardText.Quote(e.Value, inFlow: true)}"))} }}";
            return Apply(map, steps[..^1], entries[0].Value);
        }

        public Changed Remove(MapNode map, List<(string Key, int Item)> steps)
        {
            for (var at = 0; ; at++)
            {
                var (name, item) = steps[at];
                var index = map.Pairs.Index().Where(pair => pair.Item.Key.Text == name).Select(pair => pair.Index).FirstOrDefault(-1);
                if (index < 0)
                    return new(text, null);
                var (word, node) = map.Pairs[index];
                if (item > 0 && node is SequenceNode list && list.Items.Count >= item)
                    node = list.Items[item - 1];
                if (at < steps.Count - 1)
                {
                    if (node is not MapNode inside)
                        return new(text, null);
                    map = inside;
                    continue;
                }

                if (map.Pairs.Count == 1)
                    return Refuse($"{key} is the only entry where it stands.", "Take the whole part out in the file itself.");
                return Done(yaml.Remove(map, index), $"{key} stands where an item of a list begins.", "Take it out in the file itself.");
            }
        }

        public Changed Append(MapNode map, string item)
        {
            var (word, node) = map.Pairs.FirstOrDefault(pair => pair.Key.Text == key);
            switch (word is null ? null : node)
            {
                case null:
                    var end = text.EndsWith('\n') || text.Length == 0 ? "" : NewLine;
                    return Insert(text.Length, $"{end}{key}:{NewLine}  - {item}{NewLine}");
                case ScalarNode { IsEmpty: true }:
                    return Insert(yaml.EndOfLine(yaml.AfterColon(word!)), $"{NewLine}  - {item}");
                case SequenceNode { IsFlow: true, Items.Count: 0 } empty:
                    return new(string.Concat(text.AsSpan(0, yaml.AfterColon(word!)), $"{NewLine}  - {item}", text.AsSpan(empty.End)), null);
                case SequenceNode { IsFlow: true } list:
                    return Insert(yaml.LastOf(list.Items[^1]), ", " + item);
                case SequenceNode list:
                    return Insert(yaml.EndOfLine(yaml.LastOf(list)), $"{NewLine}{new string(' ', list.At.Column - 1)}- {item}");
                default:
                    return Refuse($"{key} is not a list in this file.", "Mend the file first.");
            }
        }

        static (ScalarNode Word, MapNode Frame)? Framed(MapNode map, List<(string Key, int Item)> steps)
        {
            foreach (var (at, (name, item)) in steps.Index())
            {
                var (word, node) = map.Pairs.FirstOrDefault(pair => pair.Key.Text == name);
                if (item > 0)
                    node = node is SequenceNode list && list.Items.Count >= item ? list.Items[item - 1] : null;
                if (node is not MapNode inside)
                    return null;
                if (at == steps.Count - 1)
                    return inside.Find(SheetReader.Use) is not null ? null : (word!, inside);
                map = inside;
            }

            return null;
        }

        string Indented(string value, bool inFlow) => frame ?? BoardText.Quote(value, inFlow, isText);

        public Changed Apply(MapNode map, List<(string Key, int Item)> steps, string value)
        {
            // The item of a list is itself a step down.
            var type = typeof(Board);
            for (var at = 0; ; at++)
            {
                var (name, item) = steps[at];
                var isLast = at == steps.Count - 1;
                var (word, node) = map.Pairs.FirstOrDefault(pair => pair.Key.Text == name);
                if (word is null && isLast && Rejoined(map, type, name, value) is { } rejoined)
                    return rejoined;
                type = Entry.ListEntries(type).FirstOrDefault(entry => entry.Key == name)?.ValueType ?? type;
                if (word is null)
                    return item > 0 ? Refuse("There is no such item in the file.", "Add the item to the file first.") : Add(map, [.. steps.Skip(at).Select(step => step.Key)], value);
                if (item > 0)
                {
                    if (node is not SequenceNode list || list.Items.Count < item)
                        return Refuse("There is no such item in the file.", "Add the item to the file first.");
                    node = list.Items[item - 1];
                }

                switch (node)
                {
                    case ScalarNode { IsEmpty: true } when isLast:
                        return Insert(yaml.AfterColon(word), " " + Indented(value, map.IsFlow));
                    case ScalarNode { IsEmpty: true }:
                        return map.IsFlow
                            ? Insert(yaml.AfterColon(word), " " + Flow([.. steps.Skip(at + 1).Select(step => step.Key)], value))
                            : Insert(yaml.EndOfLine(yaml.AfterColon(word)),
                            NewLine + new string(' ', word.At.Column + 1)
                            + Block([.. steps.Skip(at + 1).Select(step => step.Key)], value, word.At.Column + 1));
                    case ScalarNode scalar when isLast:
                        return Replace(scalar, Indented(value, map.IsFlow || item > 0));
                    case ScalarNode cells when name == "pack" && at == steps.Count - 2
                        && Rejoined(cells, JoinedEntry.Find(type, "cells")!, steps[^1].Key, value) is { } recounted:
                        return recounted;
                    case ScalarNode id:
                        return Replace(id, $"{{ {(name == "pack" ? "cells" : SheetReader.Use)}: {BoardText.Quote(id.Text, inFlow: true)}, {Inside([.. steps.Skip(at + 1).Select(step => step.Key)], value)} }}");
                    case MapNode frame when isLast:
                        return frame.Find("value") is ScalarNode { IsEmpty: false } inner ? Replace(inner, Indented(value, frame.IsFlow))
                            : frame.Find(SheetReader.Use) is ScalarNode { IsEmpty: false } use ? Replace(use, Indented(value, frame.IsFlow))
                            : Refuse($"{key} is written out over several entries, and is more than one value.", "Change it in the file itself.");
                    case MapNode inside:
                        map = inside;
                        break;
                    default:
                        return Refuse($"{key} is a list, and is more than one value.", "Change it in the file itself.");
                }
            }
        }

        // What is written together with others stays together.
        Changed? Rejoined(MapNode map, Type type, string name, string value) =>
            JoinedEntry.Within(type).Where(joined => joined.Parts.Contains(name, StringComparer.Ordinal))
                .Select(joined => map.Find(joined.Key) is ScalarNode written ? Rejoined(written, joined, name, value) : null)
                .FirstOrDefault(static changed => changed is not null);

        Changed? Rejoined(ScalarNode written, JoinedEntry joined, string name, string value) =>
            frame is null && joined.Parts.Contains(name, StringComparer.Ordinal)
            && joined.WithPiece((ValueReader.Unmarked(written) ?? written).Text, name, value) is { } text
                ? Replace(written, text) : null;

        Changed Add(MapNode map, string[] keys, string value) =>
            Done(yaml.Add(map, map.IsFlow ? Inside(keys, value) : Block(keys, value, map.Pairs[0].Key.At.Column - 1)), $"What {key} belongs to is written without braces inside a list.", "Put braces around it first.");

        Changed Done(string? changed, string otherwise, string remedy) => changed is null ? Refuse(otherwise, remedy) : new(changed, null);

        string Block(string[] keys, string value, int indent) => keys.Length == 1
            ? $"{keys[0]}: {Indented(value, inFlow: false)}"
            : $"{keys[0]}:{NewLine}{new string(' ', indent + 2)}{Block(keys[1..], value, indent + 2)}";

        string Inside(string[] keys, string value) => keys.Length == 1 ? $"{keys[0]}: {Indented(value, inFlow: true)}" : $"{keys[0]}: {Flow(keys[1..], value)}";

        string Flow(string[] keys, string value) => $"{{ {Inside(keys, value)} }}";

        Changed Insert(int at, string piece) => new(text.Insert(at, piece), null);

        Changed Replace(ScalarNode scalar, string piece) =>
            new(string.Concat(text.AsSpan(0, scalar.Start), piece, text.AsSpan(yaml.Trimmed(scalar))), null);

        Changed Refuse(string says, string remedy) => new(text, new(says, remedy));
    }
}
