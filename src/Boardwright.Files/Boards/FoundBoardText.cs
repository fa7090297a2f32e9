using System.Text.RegularExpressions;
using Boardwright.Searches;

namespace Boardwright.Files.Boards;

/// <summary>Writes a board that a search found into the text of the brief it was found for; what the person wrote stays as it is.</summary>
public static partial class FoundBoardText
{
    /// <summary>The brief with the board's parts, pack, wires and limits.</summary>
    /// <param name="brief">Text of the brief.</param>
    /// <param name="found">The board.</param>
    /// <param name="name">Name of the new board.</param>
    /// <param name="shelf">The shelf as it is named from the new file's folder; <c>null</c> where the brief's own holds.</param>
    public static Changed Write(string brief, FoundBoard found, string name, string? shelf = null)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(found);
        var text = brief.EndsWith('\n') ? brief : brief + "\n";
        foreach (var (key, value) in found.Entries.Prepend(("name", name)))
        {
            var changed = BoardText.Change(text, key, value);
            if (changed.Refusal is not null)
                return changed with { Text = brief };
            text = changed.Text;
        }

        if (shelf is not null)
            text = ShelfLines().Replace(text, "") + $"shelf: [{BoardText.Quote(shelf, inFlow: true)}]\n";
        if (found.Wires.Count > 0)
            text = WiringLine().Replace(text, "") + $"wiring:\n{string.Concat(found.Wires.Select(wire => $"  - {wire}\n"))}";
        return new(text, null);
    }

    [GeneratedRegex(@"^shelf:[^\n]*\n(?:[ \t]+[^\n]*\n|-[^\n]*\n)*", RegexOptions.Multiline | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex ShelfLines();

    [GeneratedRegex(@"^wiring:[ \t]*(?:\[[ \t]*\][ \t]*)?(?:#[^\n]*)?\r?\n", RegexOptions.Multiline | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex WiringLine();
}
