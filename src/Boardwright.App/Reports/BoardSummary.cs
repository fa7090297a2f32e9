using Boardwright.Parts;

namespace Boardwright.App.Reports;

/// <summary>What a board is made of, in one line.</summary>
static class BoardSummary
{
    /// <summary>The line; what nobody chose is left out.</summary>
    public static string Describe(Board board)
    {
        var parts = board.Parts;
        string[] pieces =
        [
            DeckOf(parts.Deck),
            DriveOf(parts),
            PackOf(parts),
            // Wheels go by millimetres everywhere.
            parts.Wheels.Diameter.IsKnown ? Invariant($"{parts.Wheels.Diameter.Value.Millimetres:0.#} mm wheels") : "",
        ];
        var line = string.Join("; ", pieces.Where(p => p.Length > 0));
        return line.Length > 0 ? line : "No parts are chosen yet.";
    }

    static string DeckOf(Deck deck) =>
        !deck.IsChosen ? ""
        : deck.Title.EndsWith("deck", StringComparison.OrdinalIgnoreCase) ? deck.Title
        : $"{deck.Title} deck";

    static string DriveOf(Fitted parts)
    {
        var drive = parts.Drive;
        if (!drive.Kind.IsKnown)
            return "";
        var kind = drive.Kind.Value switch
        {
            DriveKind.Belt => "belt drive",
            DriveKind.Gear => "gear drive",
            _ => "hub drive",
        };
        var axle = drive.Driven.Or(Driven.Rear) switch
        {
            Driven.Rear => "the rear axle",
            Driven.Front => "the front axle",
            _ => "both axles",
        };
        return drive.Motors.IsKnown ? Invariant($"{kind} with {drive.Motors.Value} {(drive.Motors.Value == 1 ? "motor" : "motors")} on {axle}") : $"{kind} on {axle}";
    }

    static string PackOf(Fitted parts)
    {
        if (!parts.Pack.Series.IsKnown || !parts.Pack.Parallel.IsKnown)
            return "";
        var pack = Invariant($"{parts.Pack.Series.Value}s{parts.Pack.Parallel.Value}p pack");
        return parts.Cell.Name.IsKnown || parts.Cell.Id.Length > 0 ? $"{pack} of {parts.Cell.Title}" : pack;
    }
}
