using Boardwright.Parts;

namespace Boardwright.Files.Yaml;

/// <summary>A value or a comment of a file, with its place in the text.</summary>
/// <param name="Key">Dotted key as complaints name it; a comment goes by the key it stands beside, or by what it says.</param>
/// <param name="Written">The value as it is written.</param>
/// <param name="Start">Where it begins, in characters.</param>
/// <param name="End">Where it ends.</param>
sealed record Leaf(string Key, string Written, int Start, int End);

/// <summary>A YAML text as keys with values, so that texts can be compared and changed by key while everything else stays as it is
/// written.</summary>
sealed class KeyedText
{
    const string PartsKey = "parts";
    const string CommentKey = "comment ";
    readonly string text;
    readonly YamlText yaml;
    readonly List<Leaf> leaves = [];
    readonly Dictionary<string, MapNode> maps = new(StringComparer.Ordinal);
    readonly Dictionary<string, (MapNode Map, int Index)> words = new(StringComparer.Ordinal);
    readonly List<(int Start, int End, string Key)> spans = [];

    KeyedText(string text) => (this.text, yaml) = (text, new(text));

    /// <summary>Every value and comment by its key.</summary>
    public IReadOnlyDictionary<string, Leaf> Leaves { get; private set; } = new Dictionary<string, Leaf>(StringComparer.Ordinal);
    /// <summary>The keys with what is written, in the order of the text.</summary>
    public IEnumerable<(string Key, string Written)> Entries => leaves.Select(static leaf => (leaf.Key, leaf.Written));

    /// <summary>Reads a text.</summary>
    /// <returns>The keys, or <c>null</c> when the text is not in order, so that nothing can be said by key.</returns>
    public static KeyedText? Read(string text)
    {
        // The reader's places count from after a byte order mark.
        if (text.StartsWith('\uFEFF'))
            return Read(text[1..]);
        var complaints = new Complaints();
        var root = NodeReader.Read(text, "", "", complaints);
        if (root is null || complaints.Count > 0)
            return null;
        var keyed = new KeyedText(text);
        keyed.Walk(root, "");
        keyed.leaves.Sort(static (a, b) => a.Start.CompareTo(b.Start));
        keyed.AddComments();
        var byKey = new Dictionary<string, Leaf>(StringComparer.Ordinal);
        foreach (var leaf in keyed.leaves)
        {
            if (!byKey.TryAdd(leaf.Key, leaf))
                return null;
        }

        keyed.Leaves = byKey;
        return keyed;
    }

    /// <summary>Changes a text until its values and comments are the wanted ones.</summary>
    /// <returns>The text, or <c>null</c> when it cannot be changed into that.</returns>
    public static string? Fitted(string text, IReadOnlyDictionary<string, string> wanted)
    {
        if (text.StartsWith('\uFEFF'))
            return Fitted(text[1..], wanted) is { } rest ? text[0] + rest : null;
        // Each round mends at least one key or ends.
        for (var left = wanted.Count + 100; left > 0; left--)
        {
            if (Read(text) is not { } keyed)
                return null;
            var wrong = keyed.leaves.Where(leaf => wanted.TryGetValue(leaf.Key, out var written) && written != leaf.Written).ToList();
            if (wrong.Count > 0)
            {
                for (var i = wrong.Count - 1; i >= 0; i--)
                    text = string.Concat(text.AsSpan(0, wrong[i].Start), wanted[wrong[i].Key], text.AsSpan(wrong[i].End));
                continue;
            }

            string? next;
            if (keyed.leaves.FirstOrDefault(leaf => !wanted.ContainsKey(leaf.Key)) is { } extra)
                next = keyed.Without(extra.Key);
            else if (wanted.FirstOrDefault(pair => !keyed.Leaves.ContainsKey(pair.Key)) is { Key: not null } missing)
                next = keyed.WithAdded(missing.Key, missing.Value);
            else
                return text;
            if (next is null)
                return null;
            text = next;
        }

        return null;
    }

    void Walk(Node node, string key)
    {
        switch (node)
        {
            case MapNode { Pairs.Count: > 0 } map:
                maps[key] = map;
                foreach (var (index, (word, value)) in map.Pairs.Index())
                {
                    var inner = Joined(key, word.Text);
                    words[inner] = (map, index);
                    spans.Add((word.Start, word.End, inner));
                    Walk(value, inner);
                }

                break;
            case SequenceNode { IsFlow: true } list when list.Items.All(static item => item is ScalarNode):
                Take(key, list.Start, list.End);
                break;
            case SequenceNode list:
                foreach (var (i, item) in list.Items.Index())
                {
                    // A part of a shelf goes by its id wherever it stands; other items go by their place.
                    var inner = key.Length == 0 && item is MapNode part && part.Find("id") is ScalarNode { IsEmpty: false } id
                        && !maps.ContainsKey(id.Text) ? id.Text : FormattableString.Invariant($"{key}[{i + 1}]");
                    Walk(item, inner);
                }

                break;
            case MapNode { IsFlow: true } empty:
                Take(key, empty.Start, empty.End);
                break;
            case ScalarNode scalar:
                Take(key, scalar.Start, yaml.Trimmed(scalar));
                break;
        }
    }

    // Board files name what is below parts: without that word, and so do complaints.
    static string Joined(string key, string word) => key is "" or PartsKey ? word : $"{key}.{word}";

    void Take(string key, int start, int end)
    {
        leaves.Add(new(key, text[start..end], start, end));
        spans.Add((start, end, key));
    }

    /// <summary>
    /// Comments: one beside a value goes by that value's key, one on a line of its own by what it says. So it may move with
    /// the lines around it, and two people who add one each both have theirs.
    /// </summary>
    void AddComments()
    {
        spans.Sort(static (a, b) => a.Start.CompareTo(b.Start));
        var times = new Dictionary<string, int>(StringComparer.Ordinal);
        var next = 0;
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end;
            var mark = start;
            string? beside = null;
            for (; mark < end; mark++)
            {
                while (next < spans.Count && spans[next].End <= mark)
                    next++;
                if (next < spans.Count && spans[next].Start <= mark)
                    (beside, mark) = (spans[next].Key, Math.Min(spans[next].End, end) - 1);
                else if (text[mark] == '#' && (mark == start || text[mark - 1] is ' ' or '\t'))
                    break;
            }

            if (mark < end)
            {
                var says = text.AsSpan(mark, end - mark).TrimEnd().ToString();
                var time = times[says] = times.GetValueOrDefault(says) + 1;
                var key = beside is not null ? $"{CommentKey}beside {beside}" : time == 1 ? CommentKey + says : FormattableString.Invariant($"{CommentKey}{says} ({time})");
                leaves.Add(new(key, says, mark, mark + says.Length));
            }

            start = end + 1;
        }

        leaves.Sort(static (a, b) => a.Start.CompareTo(b.Start));
    }

    /// <summary>The text without a value; a line that holds nothing else goes with it.</summary>
    string? Without(string key)
    {
        if (!Leaves.TryGetValue(key, out var leaf))
            return null;
        if (words.TryGetValue(key, out var place))
            return yaml.Remove(place.Map, place.Index);
        // A comment that stands on lines of its own, or beside a value.
        var from = yaml.StartOfLine(leaf.Start);
        var before = text.AsSpan(from, leaf.Start - from);
        return before.IsWhiteSpace() ? text.Remove(from, Math.Min(yaml.EndOfLine(leaf.End, '\n') + 1, text.Length) - from)
            : key.StartsWith(CommentKey, StringComparison.Ordinal)
            ? text.Remove(from + before.TrimEnd().Length, leaf.End - from - before.TrimEnd().Length)
            : null;
    }

    /// <summary>The text with a value added at the end of the map that it belongs to.</summary>
    string? WithAdded(string key, string written)
    {
        var dot = key.LastIndexOf('.');
        var (parent, name) = dot < 0 ? ("", key) : (key[..dot], key[(dot + 1)..]);
        if (key.StartsWith(CommentKey, StringComparison.Ordinal) || name.Contains('[', StringComparison.Ordinal)
            || written.Contains('\n', StringComparison.Ordinal))
            return null;
        var home = parent.Length == 0 && IsPart(name) ? PartsKey : parent;
        if (maps.TryGetValue(home, out var map))
            return yaml.Add(map, $"{name}: {written}");
        return home switch
        {
            "" => null,
            PartsKey => maps.TryGetValue("", out var root) ? yaml.Add(root, $"{PartsKey}: {{ {name}: {written} }}") : null,
            _ => WithAdded(home, $"{{ {name}: {written} }}"),
        };
    }

    static bool IsPart(string name) => Entry.ListEntries(typeof(Fitted)).Any(entry => entry.Key == name);
}
