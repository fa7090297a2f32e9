using System.Globalization;
using Boardwright.Boxes;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>What a layout's entries cannot say by themselves: names of things, quarter turns, and a place on the floor or in a wall but not
/// both.</summary>
static class Layouts
{
    /// <summary>Complains about a spot that cannot be meant as it is written.</summary>
    /// <param name="name">Name of the thing.</param>
    /// <param name="spot">Where it lies.</param>
    /// <param name="key">Dotted key of the spot.</param>
    /// <param name="at">Where it is written.</param>
    /// <param name="complaints">Takes what is wrong.</param>
    public static void Check(string name, BoxPosition spot, string key, SourceLocation at, Complaints complaints)
    {
        if (!IsName(name))
        {
            complaints.Add(at, key, $"{QuantityText.Quote(name)} is nothing that lies in a box.",
                Nearest.To(name.TrimEnd(' ', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9'), BoxThing.Words) is { } near
                ? $"Write {near} instead, if that is meant."
                : $"The names are {string.Join(", ", BoxThing.Words)}; from the second on with its number, as in controller 2, and glands from the first on, as in gland 1.");
        }

        if (spot.Turn is { IsKnown: true } turn && Math.Abs(turn.Value.Degrees / 90 - Math.Round(turn.Value.Degrees / 90)) > 1e-6)
            complaints.Add(at, $"{key}.turn", "Things lie along the box or across it.", "Write 0 deg, 90 deg, 180 deg or 270 deg.");
        if ((spot.Wall.IsKnown || spot.Along.IsKnown) && (spot.X.IsKnown || spot.Y.IsKnown || spot.Turn.IsKnown))
            complaints.Add(at, key, "A fitting's place in a wall and a place on the floor are both given.", "Write wall and along for a fitting, x, y and turn for everything else.");
    }

    /// <summary>Whether a thing in a box can be called so: a word of its kind, and a number where there are several.</summary>
    static bool IsName(string name) => BoxThing.Words.Any(word => name == word
        || (name.StartsWith(word + " ", StringComparison.Ordinal)
        && int.TryParse(name.AsSpan(word.Length + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number is >= 1 and <= 64));
}
