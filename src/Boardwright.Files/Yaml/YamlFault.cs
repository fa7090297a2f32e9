using YamlDotNet.Core;

namespace Boardwright.Files.Yaml;

/// <summary>Says in a builder's words what the YAML parser stumbled over.</summary>
static class YamlFault
{
    const string NotYaml = "The text is not YAML from here on.";
    const string Compare = "Compare the line with its neighbours: key, colon, space, value, and the same indent for keys that belong together.";

    static readonly (string Part, string Says, string Remedy)[] Known =
    [
        ("quoted scalar, found unknown escape", "A backslash inside quotation marks is followed by a letter that means nothing there.", "Write two backslashes, or use single quotation marks."),
        ("quoted scalar", "A quotation mark is opened here and not closed.", "Close it, or leave the quotation marks out."),
        ("invalid mapping", "A value holds a colon, or the line before has no space after its colon.", "Write key, colon, space, value; put a text that holds a colon into quotation marks."),
        ("mapping values are not allowed", "A second colon stands in this line, or the line is indented like a value.", "Put a text that holds a colon into quotation marks, or start the key in the column of its neighbours."),
        ("did not find expected '-' indicator", "A line is indented unlike the list that it stands in.", "Start every item of the list with a dash in the same column."),
        ("block sequence entries are not allowed", "A dash that begins a list item stands where no list can begin.", "Put the dash in a line of its own below the key."),
        ("did not find expected key", "A line is indented unlike its neighbours, or its key is missing.", "Start the keys that belong together in the same column, each followed by a colon and a space."),
        ("could not find expected ':'", "A line has a key and no colon after it.", "Write a colon and a space between key and value, as in length: 960 mm."),
        ("directive", "A line that begins with a percent sign is a YAML directive, and board files have none.", "Take the line out."),
        ("anchor", "An ampersand or an asterisk begins a value here, and YAML takes that for a mark of its own.", "Put the value into quotation marks."),
        ("tag", "An exclamation mark begins a value here, and YAML takes that for a tag.", "Put the value into quotation marks."),
        ("block scalar", "The sign | or > begins a text of several lines, and what follows is not indented as one.", "Put the value into quotation marks."),
    ];

    /// <summary>What is wrong, where, and how to mend it.</summary>
    /// <param name="fault">What the parser threw.</param>
    /// <param name="reached">How far it had read.</param>
    /// <param name="text">The whole text.</param>
    /// <param name="open">Where the innermost open brace or bracket stands, if any.</param>
    public static (Mark At, string Says, string Remedy) Explain(Exception fault, Mark reached, string text, (Mark At, bool IsMap)? open)
    {
        var at = fault is YamlException { Start.Line: > 0 } yaml ? yaml.Start : reached;
        if (Tab(text, fault.Message.Contains("tab", StringComparison.OrdinalIgnoreCase) ? null : at.Line) is { } tab)
            return (tab, "A tab indents this line, and YAML allows spaces only.", "Replace the tab by spaces.");
        if (fault.Message.Contains("cannot start any token", StringComparison.OrdinalIgnoreCase) && at.Index < text.Length)
            return (at, $"The character {QuantityText.Quote(text[(int)at.Index].ToString())} cannot begin a value.", "Put the value into quotation marks.");
        if (open is { } bracket && (fault is not YamlException || fault.Message.Contains("expected ','", StringComparison.Ordinal)))
        {
            return bracket.IsMap
                ? (bracket.At, "The brace that opens here is not closed, or a comma is missing between its entries.", "Write { key: value, key: value }, and close every brace.")
                : (bracket.At, "The bracket that opens here is not closed, or a comma is missing between its items.", "Write [value, value], and close every bracket.");
        }

        if (fault.Message.Contains("<document start>", StringComparison.Ordinal))
        {
            return text.TrimStart().StartsWith('%')
                ? (at, "The file begins with a YAML directive, a line with a percent sign, and board files have none.", "Take that line out.")
                : (at, "What stands before this line is complete, and something follows it.", "Check the indent of this line, and the brackets and braces before it.");
        }

        foreach (var (part, says, remedy) in Known)
        {
            if (fault.Message.Contains(part, StringComparison.OrdinalIgnoreCase))
                return (at, says, remedy);
        }

        return (at, NotYaml, Compare);
    }

    /// <summary>The first tab that indents a line, or that indents the one line in question.</summary>
    static Mark? Tab(string text, long? only)
    {
        var reader = new StringReader(text);
        for (var number = 1; reader.ReadLine() is { } line; number++)
        {
            var tab = line.IndexOf('\t', StringComparison.Ordinal);
            if (tab >= 0 && (only is null || only == number) && line[..tab].All(static c => c == ' '))
                return new Mark(0, number, tab + 1);
        }

        return null;
    }
}
