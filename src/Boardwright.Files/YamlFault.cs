using YamlDotNet.Core;

namespace Boardwright.Files;

/// <summary>Says in a builder's words what the YAML parser stumbled over.</summary>
static class YamlFault
{
    static readonly (string Part, string Says, string Remedy)[] Known =
    [
        ("quoted scalar", "A quotation mark is opened here and not closed.", "Close it, or leave the quotation marks out."),
        ("found unknown escape", "A backslash inside quotation marks is followed by a letter that means nothing.", "Write two backslashes, or use single quotation marks."),
        ("mapping values are not allowed", "A second colon stands in this line, or the line is indented like a value.", "Put a text that holds a colon into quotation marks, or start the key in the column of its neighbours."),
        ("did not find expected ',' or '}'", "A brace is opened and not closed, or a comma is missing between its entries.", "Write { key: value, key: value } and check that every brace is closed."),
        ("did not find expected ',' or ']'", "A bracket is opened and not closed, or a comma is missing between its items.", "Write [value, value] and check that every bracket is closed."),
        ("did not find expected '-' indicator", "A line is indented unlike the list that it stands in.", "Start every item of the list with a dash in the same column."),
        ("block sequence entries are not allowed", "A dash that begins a list item stands where no list can begin.", "Put the dash in a line of its own below the key."),
        ("did not find expected key", "A line is indented unlike its neighbours, or its key is missing.", "Start the keys that belong together in the same column, each followed by a colon and a space."),
        ("could not find expected ':'", "A line has a key and no colon after it.", "Write a colon and a space between key and value, as in length: 960 mm."),
        ("cannot start any token", "A character that YAML keeps for itself begins a value here.", "Put the value into quotation marks."),
        ("directive", "A line that begins with a percent sign is a YAML directive, and board files have none.", "Take the line out."),
        ("anchor", "An ampersand or an asterisk begins a value here, and YAML takes that for a mark of its own.", "Put the value into quotation marks."),
        ("tag", "An exclamation mark begins a value here, and YAML takes that for a tag.", "Put the value into quotation marks."),
        ("block scalar", "The sign | or > begins a text of several lines, and what follows is not indented as one.", "Put the value into quotation marks."),
    ];

    /// <summary>What is wrong, and how to mend it.</summary>
    public static (string Says, string Remedy) Explain(YamlException fault, string text)
    {
        var line = LineOf(text, (int)fault.Start.Line);
        if (line[..^line.TrimStart().Length].Contains('\t') || LineOf(text, (int)fault.End.Line) is var last && last[..^last.TrimStart().Length].Contains('\t'))
            return ("A tab indents this line, and YAML allows spaces only.", "Replace the tab by spaces.");
        foreach (var (part, says, remedy) in Known)
        {
            if (fault.Message.Contains(part, StringComparison.OrdinalIgnoreCase))
                return (says, remedy);
        }

        return ("The text is not YAML from here on.", "Compare the line with its neighbours: key, colon, space, value, and the same indent for keys that belong together.");
    }

    static string LineOf(string text, int number)
    {
        var reader = new StringReader(text);
        var line = reader.ReadLine();
        for (var at = 1; at < number && line is not null; at++)
            line = reader.ReadLine();
        return line ?? "";
    }
}
