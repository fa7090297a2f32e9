namespace Boardwright.Files.Yaml;

/// <summary>A YAML text into which entries are put and from which they are taken; comments, order and layout stay.</summary>
sealed class YamlText(string text)
{
    /// <summary>How its lines end.</summary>
    public string NewLine { get; } = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    /// <summary>Adds an entry behind the last one of a map.</summary>
    /// <param name="map">The map.</param>
    /// <param name="entry">Key and value as they would be written there: in braces, or on lines of their own.</param>
    /// <returns>The text, or <c>null</c> where the map is one pair without braces in a list.</returns>
    public string? Add(MapNode map, string entry)
    {
        var end = map.Pairs.Count == 0 ? map.End : EndOf(map.Pairs[^1]);
        if (!map.IsFlow)
            return text.Insert(EndOfLine(end), $"{NewLine}{new string(' ', map.Pairs[0].Key.At.Column - 1)}{entry}");
        if (text[map.Start] != '{')
            return null;
        if (map.Pairs.Count == 0)
            return string.Concat(text.AsSpan(0, map.Start), $"{{ {entry} }}", text.AsSpan(end));
        // A comma may follow the last entry already.
        var next = end + text.AsSpan(end).IndexOfAnyExcept(' ', '\r', '\n');
        return text[next] == ',' ? text.Insert(next + 1, " " + entry) : text.Insert(end, ", " + entry);
    }

    /// <summary>Takes an entry out of a map, with its lines where it has lines of its own.</summary>
    /// <returns>The text, or <c>null</c> where the mark of a list's item stands on its line.</returns>
    public string? Remove(MapNode map, int index)
    {
        var word = map.Pairs[index].Key;
        var end = EndOf(map.Pairs[index]);
        if (!map.IsFlow)
        {
            var line = StartOfLine(word.Start);
            return text.AsSpan(line, word.Start - line).IsWhiteSpace() ? Cut(line, Math.Min(text.Length, EndOfLine(end, '\n') + 1)) : null;
        }

        // Its comma goes with it, the one behind it or the one before the last entry; a comment beside the comma stays.
        if (index < map.Pairs.Count - 1)
        {
            var (next, comma) = (map.Pairs[index + 1].Key.Start, end + text.AsSpan(end).IndexOfAnyExcept(' ', '\r', '\n'));
            return Cut(word.Start, IsComma(end, next) ? next : text[comma] == ',' ? comma + 1 : end);
        }

        var before = index > 0 ? EndOf(map.Pairs[index - 1]) : word.Start;
        return IsComma(before, word.Start) ? Cut(before, end) : Cut(word.Start, end);

        string Cut(int from, int to) => text.Remove(from, to - from);
        bool IsComma(int from, int to) => text.AsSpan(from, to - from).Trim() is ",";
    }

    /// <summary>Where an entry ends; the parser's own mark for its end lies where the next thing begins.</summary>
    public int EndOf((ScalarNode Key, Node Value) entry) =>
        entry.Value is ScalarNode { IsEmpty: true } ? AfterColon(entry.Key) : LastOf(entry.Value);

    /// <summary>Where the last value inside a node ends.</summary>
    public int LastOf(Node node) => node switch
    {
        ScalarNode scalar => Trimmed(scalar),
        SequenceNode { IsFlow: true } list => list.End,
        MapNode { IsFlow: true } map => map.End,
        MapNode map => EndOf(map.Pairs[^1]),
        SequenceNode list => LastOf(list.Items[^1]),
        _ => throw new NotSupportedException("A spoiled piece has no end."),
    };

    public int AfterColon(ScalarNode word) => text.IndexOf(':', word.End) + 1;

    /// <summary>The end of a scalar; a text over several lines ends before its last line break.</summary>
    public int Trimmed(ScalarNode scalar) => scalar.Start + text.AsSpan(scalar.Start, scalar.End - scalar.Start).TrimEnd().Length;

    public int StartOfLine(int at) => text.AsSpan(0, at).LastIndexOf('\n') + 1;

    /// <summary>Where the line ends, before the mark of its end; before its line feed where only that is asked for.</summary>
    public int EndOfLine(int from, char orBefore = '\r')
    {
        var end = text.AsSpan(from).IndexOfAny(orBefore, '\n');
        return end < 0 ? text.Length : from + end;
    }
}
