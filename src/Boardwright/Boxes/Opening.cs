using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Boxes;

/// <summary>An opening in a wall of a box, as it is seen from outside with the board turned over, the flange below and the floor
/// above.</summary>
/// <param name="Name">What goes through it.</param>
/// <param name="Wall">The wall.</param>
/// <param name="Along">From the middle of the wall, to the right as seen from outside.</param>
/// <param name="Height">From the plane of the flange up to its centre.</param>
/// <param name="Width">Diameter, or width of a window.</param>
/// <param name="Tall">Height of a window; <c>null</c> for a round hole.</param>
/// <source cref="Sources.Geometry"/>
public sealed record Opening(string Name, BoxWall Wall, Length Along, Length Height, Length Width, Length? Tall)
{
    /// <summary>Length of the wall, seen from outside.</summary>
    public static Length LengthOf(BoxWall wall, Flange flange)
    {
        ArgumentNullException.ThrowIfNull(flange);
        return 2 * flange.Wall + (wall is BoxWall.Front or BoxWall.Rear ? flange.InnerWidth : flange.InnerLength);
    }
}

/// <summary>The openings of a box: where a plan of its inside has placed them, or, before there is one, spread over two walls: cable glands
/// towards the driven axle, everything else on the right-hand side.</summary>
/// <validity>Until the inside is planned the places are a proposal: what lies behind a wall is not looked at.</validity>
/// <error>Exact for the stated dimensions.</error>
/// <source cref="Sources.CommonPractice"/>
public sealed record Openings(IReadOnlyList<Opening> Holes, IReadOnlyList<string> Unsized, IReadOnlyList<FormattableString> Objections)
{
    // From the rim of a hole to the next rim or to a wall's end: half a nut of its own size, common practice.
    const double Rim = 0.5;

    /// <summary>The proposal for a board.</summary>
    public static Answer<Openings> Compute(Board board) =>
        !board.Parts.Box.IsChosen ? Answer<Openings>.Beside : Answer<Openings>.Ask("", needs =>
    {
        var box = board.Parts.Box;
        var flange = Flange.FromBox(needs, box);
        var depth = needs.Read(box.InnerDepth);
        if (needs.Unmet || flange is null)
            return null;
        var rear = board.Parts.Drive.Driven.Or(Driven.Rear) != Driven.Front ? BoxWall.Rear : BoxWall.Front;
        var each = board.Parts.Fittings.SelectMany(f => Enumerable.Repeat(f, Math.Clamp(f.Count.Or(1), 1, 64))).ToList();
        var sized = each.Where(f => Sized(f) is not null).ToList();
        List<Opening> holes = [];
        List<FormattableString> objections = [];
        foreach (var wall in new[] { rear, BoxWall.Right })
            Spread([.. sized.Where(f => wall == BoxWall.Right != IsGland(f))], wall, flange, depth, holes, objections);
        return new Openings(holes, [.. each.Except(sized).Select(f => f.Title)], objections);
    });

    static bool IsGland(Fitting fitting) => fitting.CableMax.IsKnown || fitting.CableMin.IsKnown;

    static (Length Width, Length? Tall)? Sized(Fitting fitting) =>
        fitting.HoleDiameter.IsKnown ? (fitting.HoleDiameter.Value, null)
        : fitting.Window is { IsKnown: true, Value.Items: [var width, var tall, ..] } ? (width, tall)
        : null;

    static void Spread(IReadOnlyList<Fitting> fittings, BoxWall wall, Flange flange, Length depth, List<Opening> holes,
        List<FormattableString> objections)
    {
        if (fittings.Count == 0)
            return;
        var length = Opening.LengthOf(wall, flange);
        // A side wall is long: its openings keep within reach of one another, a hand's width apart.
        var reach = wall is BoxWall.Left or BoxWall.Right ? Math.Min(length.Millimetres, 80.0 * fittings.Count) : length.Millimetres;
        var step = Length.FromMillimetres(reach / fittings.Count);
        for (var i = 0; i < fittings.Count; i++)
        {
            var (width, tall) = Sized(fittings[i])!.Value;
            holes.Add(new Opening(fittings[i].Title, wall, step * (i - (fittings.Count - 1) / 2.0), depth / 2, width, tall));
            if (width * (1 + 2 * Rim) > step)
                objections.Add($"{fittings[i].Title}: an opening {width.Millimetres:0.#} mm wide needs {(width * (1 + 2 * Rim)).Millimetres:0.#} mm of the {Name(wall)} wall, and has {step.Millimetres:0.#} mm.");
            var high = tall ?? width;
            if (high * (1 + Rim) > depth)
                objections.Add($"{fittings[i].Title}: an opening {high.Millimetres:0.#} mm high leaves too little of a wall {depth.Millimetres:0.#} mm deep for its nut.");
        }
    }

    static string Name(BoxWall wall) => wall switch
    {
        BoxWall.Front => "front",
        BoxWall.Rear => "rear",
        BoxWall.Left => "left",
        _ => "right",
    };
}
