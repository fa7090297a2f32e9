using Boardwright.Boxes;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>Places in a box as a board file writes them.</summary>
public static class LayoutText
{
    /// <summary>The entries of a place, for <see cref="BoardText.Place"/>.</summary>
    public static IReadOnlyList<(string Key, string Value)> Entries(PlacedThing thing)
    {
        ArgumentNullException.ThrowIfNull(thing);
        return thing.Wall is { } wall
            ? [("wall", Entry.Word(wall)), ("along", Millimetres(thing.Along))]
            : [("x", Millimetres(thing.X)), ("y", Millimetres(thing.Y)), ("turn", FormattableString.Invariant($"{thing.Turn} deg"))];
    }

    /// <summary>The text of a board file with the places of things written into it.</summary>
    public static Changed Write(string text, IEnumerable<PlacedThing> things)
    {
        ArgumentNullException.ThrowIfNull(things);
        var changed = new Changed(text, null);
        foreach (var thing in things)
        {
            if (changed.Refusal is null)
                changed = BoardText.Place(changed.Text, thing.Name, Entries(thing));
        }

        return changed.Refusal is null ? changed : changed with { Text = text };
    }

    // Tenths, which is as fine as a proposal; never a minus before nothing.
    static string Millimetres(Length value) => FormattableString.Invariant($"{Math.Round(value.Millimetres, 1) + 0.0:0.#} mm");
}
