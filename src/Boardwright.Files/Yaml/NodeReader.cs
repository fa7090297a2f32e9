using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Boardwright.Files.Yaml;

/// <summary>Reads a text as one YAML document of plain maps, lists and scalars. Anchors, aliases, tags and further documents have no place
/// in a board file and are refused.</summary>
sealed class NodeReader
{
    const int DeepestNesting = 24;
    const int MostNodes = 100_000;
    const string BrokenOff = "The parser stopped inside a map or a list.";
    readonly string file;
    readonly Complaints complaints;
    readonly Scanner scanner;
    readonly Parser parser;
    readonly Stack<(Mark At, bool IsMap)> open = [];
    int lastRepetition;
    readonly List<string> path = [];
    int nodes;

    NodeReader(string text, string file, Complaints complaints)
    {
        (this.file, this.complaints) = (file, complaints);
        scanner = new Scanner(new StringReader(text), skipComments: true);
        parser = new Parser(scanner);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">How complaints name the file.</param>
    /// <param name="whenEmpty">What to do about an empty file.</param>
    /// <param name="complaints">Takes what is wrong.</param>
    /// <returns>The root, or <c>null</c> when there is none or the text is not such a document; that was then complained about.</returns>
    public static Node? Read(string text, string file, string whenEmpty, Complaints complaints)
    {
        var reader = new NodeReader(text, file, complaints);
        var before = complaints.Count;
        try
        {
            var root = reader.Document();
            if (root is null)
                complaints.Add(new(file, 1, 1), "", "The file is empty.", whenEmpty);
            return root;
        }
        // What went before led the parser astray: its first complaint is the true one.
        catch (YamlException fault) when (fault.Message.Contains(BrokenOff, StringComparison.Ordinal) && complaints.Count > before)
        {
            complaints.Keep(before + 1);
            return null;
        }

        // The scanner loses its footing, and says so with the general exception, where a key breaks off inside braces.
        catch (Exception fault) when (fault is YamlException or InvalidOperationException or ArgumentException)
        {
            var (at, says, remedy) = YamlFault.Explain(
                fault, reader.scanner.CurrentPosition, text, reader.open.TryPeek(out var bracket) ? bracket : null);
            complaints.Add(reader.At(at), "", says, remedy);
            return null;
        }
        catch (TooMuchException fault)
        {
            complaints.Add(fault.At, "", fault.Message, fault.Remedy);
            return null;
        }
    }

    Node? Document()
    {
        Node? root = null;
        while (parser.MoveNext())
        {
            switch (parser.Current)
            {
                case DocumentStart start when root is not null:
                    throw new TooMuchException(At(start.Start), "A second document begins here, and one file holds one board or one shelf list.", "Take the line '---' out, or put what follows into a file of its own.");
                case NodeEvent:
                    root = Next(depth: 0);
                    break;
            }
        }

        return root is ScalarNode { IsEmpty: true } ? null : root;
    }

    Node Next(int depth)
    {
        var current = parser.Current!;
        var at = At(current.Start);
        if (++nodes > MostNodes)
            throw new TooMuchException(at, FormattableString.Invariant($"The file holds more than {MostNodes} values."), "Split it into several shelf files.");
        if (depth > DeepestNesting)
            throw new TooMuchException(at, FormattableString.Invariant($"Maps and lists are nested more than {DeepestNesting} deep here."), "Write the board as in the guide; four levels are all it needs.");
        if (current is AnchorAlias alias)
        {
            Repetition(at, $"{QuantityText.Quote("*" + alias.Value.Value)} repeats another place of the file, and board files do not do that.", "Write the value out, or put the part on the shelf and name it by its id.");
            return new SpoiledNode(at);
        }

        var spoiled = false;
        if (current is NodeEvent { Anchor.IsEmpty: false } anchored)
        {
            Repetition(at, $"{QuantityText.Quote("&" + anchored.Anchor.Value)} marks a place to be repeated, and board files do not do that.", "Take the mark out and write each value where it belongs.");
            spoiled = true;
        }

        if (current is NodeEvent { Tag.IsEmpty: false } tagged
            && (current is not YamlDotNet.Core.Events.Scalar || !tagged.Tag.IsNonSpecific))
        {
            complaints.Add(at, Key, $"{QuantityText.Quote(tagged.Tag.Value)} is a YAML tag, and board files have none.", "Take the tag out; a value is read by the key it stands under.");
            spoiled = true;
        }

        var node = current switch
        {
            YamlDotNet.Core.Events.Scalar scalar => Word(scalar, at),
            SequenceStart sequence => Items(sequence, at, depth),
            MappingStart mapping => Pairs(mapping, at, depth),
            _ => throw new YamlException(current.Start, current.End, BrokenOff),
        };
        return spoiled ? new SpoiledNode(at) : node;
    }

    /// <summary>The next event. The parser can stop without a word where a value is followed by what cannot follow it, as in
    /// <c>[]*a</c>.</summary>
    ParsingEvent Step() => parser.MoveNext() ? parser.Current!
        : throw new YamlException(scanner.CurrentPosition, scanner.CurrentPosition, BrokenOff);

    /// <summary>Complains about a mark or a repetition, once for each line: a file that is made of them says nothing new with
    /// each.</summary>
    void Repetition(SourceLocation at, string says, string remedy)
    {
        if (lastRepetition != at.Line)
            complaints.Add(at, Key, says, remedy);
        lastRepetition = at.Line;
    }

    Node Word(YamlDotNet.Core.Events.Scalar scalar, SourceLocation at)
    {
        foreach (var rune in scalar.Value.EnumerateRunes())
        {
            if (rune == System.Text.Rune.ReplacementChar || (System.Text.Rune.IsControl(rune) && rune.Value is not ('\n' or '\t')))
            {
                complaints.Add(at, Key, $"{QuantityText.Quote(scalar.Value)} holds a character that cannot be printed.", "Write it again with letters, digits and signs only.");
                return new SpoiledNode(at);
            }
        }

        return new ScalarNode(at, scalar.Value, scalar.Style == ScalarStyle.Plain, (int)scalar.Start.Index, (int)scalar.End.Index);
    }

    SequenceNode Items(SequenceStart start, SourceLocation at, int depth)
    {
        var items = new List<Node>();
        if (start.Style == SequenceStyle.Flow)
            open.Push((start.Start, IsMap: false));
        while (Step() is not SequenceEnd)
        {
            path.Add(FormattableString.Invariant($"[{items.Count + 1}]"));
            items.Add(Next(depth + 1));
            path.RemoveAt(path.Count - 1);
        }

        if (start.Style == SequenceStyle.Flow)
            open.Pop();
        return new(at, items, start.Style == SequenceStyle.Flow, (int)start.Start.Index, (int)parser.Current!.End.Index + 1);
    }

    MapNode Pairs(MappingStart start, SourceLocation at, int depth)
    {
        var pairs = new List<(ScalarNode, Node)>();
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        if (start.Style == MappingStyle.Flow)
            open.Push((start.Start, IsMap: true));
        while (Step() is not MappingEnd)
        {
            var key = Next(depth + 1);
            Step();
            if (key is not ScalarNode word)
            {
                if (key is not SpoiledNode)
                    complaints.Add(key.At, Key, "A map or a list stands where a key belongs.", "Write a key, a colon, a space and the value, as in length: 960 mm.");
                Next(depth + 1);
                continue;
            }

            path.Add(word.Text);
            var value = Next(depth + 1);
            if (lines.TryGetValue(word.Text, out var line))
            {
                complaints.Add(word.At, Key, FormattableString.Invariant($"{QuantityText.Quote(word.Text)} is written twice here; the first is in line {line}."), "Keep one of the two.");
            }
            else
            {
                lines.Add(word.Text, word.At.Line);
                pairs.Add((word, value));
            }

            path.RemoveAt(path.Count - 1);
        }

        if (start.Style == MappingStyle.Flow)
            open.Pop();
        return new(at, pairs, start.Style == MappingStyle.Flow, (int)start.Start.Index, (int)parser.Current!.End.Index + 1);
    }

    /// <summary>The dotted key of the node being read, as a board names its entries.</summary>
    string Key => string.Join('.', path.SkipWhile((word, at) => at == 0 && word == "parts")).Replace(".[", "[", StringComparison.Ordinal);

    SourceLocation At(Mark mark) => new(file, (int)Math.Max(1, mark.Line), (int)Math.Max(1, mark.Column));

    sealed class TooMuchException(SourceLocation at, string says, string remedy) : Exception(says)
    {
        public SourceLocation At { get; } = at;

        public string Remedy { get; } = remedy;
    }
}
