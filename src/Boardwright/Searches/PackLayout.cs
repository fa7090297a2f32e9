using Boardwright.Parts;

namespace Boardwright.Searches;

/// <summary>How the cells of a pack lie, and how large it becomes.</summary>
/// <remarks>
/// Cells lie across the board in rows beside and layers above one another, or stand upright in rows. Between the cells nothing is added,
/// around them 2 mm of wrap on
/// every face, and the result is rounded up to a whole millimetre. A pack that a builder has drawn has its own size in the file.
/// </remarks>
/// <param name="Length">Along the board, mm.</param>
/// <param name="Width">Across the board, mm.</param>
/// <param name="Height">Upwards, mm.</param>
/// <source cref="Findings.Sources.CommonPractice"/>
[System.Runtime.InteropServices.StructLayout(System.Runtime.InteropServices.LayoutKind.Auto)]
readonly record struct PackLayout(int Length, int Width, int Height)
{
    const double Wrap = 2;
    const int MostLayers = 3;
    const int MostRows = 4;
    const int MostStanding = 10;

    /// <summary>Every way to lay a number of cells, the shortest first, and of equally long ones the lowest.</summary>
    public static IReadOnlyList<PackLayout> All(Cell cell, int cells)
    {
        ArgumentNullException.ThrowIfNull(cell);
        if (!cell.Diameter.IsKnown || !cell.Length.IsKnown || cells < 1)
            return [];
        var (across, along) = (cell.Diameter.Value.Millimetres, cell.Length.Value.Millimetres);
        var ways = new List<PackLayout>();
        for (var layers = 1; layers <= MostLayers; layers++)
        {
            for (var rows = 1; rows <= MostRows; rows++)
                ways.Add(new(Whole(Columns(cells, layers * rows) * across), Whole(rows * along), Whole(layers * across)));
        }

        for (var rows = 1; rows <= MostStanding; rows++)
            ways.Add(new(Whole(Columns(cells, rows) * across), Whole(rows * across), Whole(along)));
        return [.. ways.Distinct().OrderBy(w => w.Length).ThenBy(w => w.Height).ThenBy(w => w.Width)];
    }

    /// <summary>The shortest way that goes into a box together with the controllers, as the rule on the box's contents judges it.</summary>
    /// <returns>The layout, or <c>null</c> when none goes in; where the box's size is not known, the lowest.</returns>
    public static PackLayout? In(Box box, Controller controller, int controllers, IReadOnlyList<PackLayout> ways)
    {
        ArgumentNullException.ThrowIfNull(box);
        ArgumentNullException.ThrowIfNull(controller);
        if (ways.Count == 0)
            return null;
        if (!box.IsChosen || !box.InnerLength.IsKnown || !box.InnerWidth.IsKnown || !box.InnerDepth.IsKnown
            || !controller.Length.IsKnown || !controller.Width.IsKnown || !controller.Height.IsKnown)
            return ways.OrderBy(w => w.Height).First();
        foreach (var way in ways)
        {
            if (Fits.BoxRoom.Compute(
                box, controller, controllers, Units.Length.FromMillimetres(way.Length), Units.Length.FromMillimetres(way.Width),
                Units.Length.FromMillimetres(way.Height)).Holds)
                return way;
        }

        return null;
    }

    static int Columns(int cells, int beside) => (cells + beside - 1) / beside;

    static int Whole(double millimetres) => (int)Math.Ceiling(millimetres + 2 * Wrap - 1e-9);
}
