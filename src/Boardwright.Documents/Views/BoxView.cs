using Boardwright.Boxes;
using Boardwright.Documents.Drawings;
using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Documents.Views;

/// <summary>The inside of the box from above, the deck taken off: u is forward, v to the left.</summary>
/// <remarks>Every thing is a group of the kind <c>part</c>, keyed <c>layout.</c> and its name, and marked <c>clash</c> where something is
/// wrong with its place; its number is its place in the layout.</remarks>
static class BoxView
{
    public static Drawing Draw(ViewedBoard seen, ViewWishes wishes, BoxLayout? shown)
    {
        var answer = seen.Examination.Layout;
        if (shown is null && answer.IsKnown)
            shown = answer.Value;
        return shown is null ? Empty(seen, wishes, answer) : Filled(seen, wishes, shown);
    }

    static Drawing Empty(ViewedBoard seen, ViewWishes wishes, Answer<BoxLayout> answer)
    {
        var board = new DrawingBoard(wishes, (0, 0, 1, 1), (0, 0, 0, 0));
        board.Below(answer.IsBeside || !seen.Examination.Board.Parts.Box.IsChosen ? "This board has no box." : $"Nothing can be drawn until {string.Join(", ", answer.Missing)} is known.");
        return board.Finish("box", seen.Title("the box from above"), "There is no box to be drawn.", []);
    }

    static Drawing Filled(ViewedBoard seen, ViewWishes wishes, BoxLayout layout)
    {
        var box = seen.Examination.Board.Parts.Box;
        var (halfLong, halfWide) = (layout.RoomLength.Millimetres / 2, layout.RoomWidth.Millimetres / 2);
        var (wall, flange) = (box.Wall.Or(Length.FromMillimetres(3)).Millimetres, box.FlangeWidth.Or(default).Millimetres);
        var (outX, outY) = (halfLong + wall + flange, halfWide + wall + flange);
        var hasDimensions = wishes.Dimensions != Dimensioned.Nothing;
        var board = new DrawingBoard(wishes, (-outX, -outY, outX, outY), hasDimensions ? (40, 34, 62, 30) : (8, 8, 60, 8));
        board.Part("box", seen.Name("box"), () =>
        {
            board.Body(Outlines.Rectangle(-outX, -outY, outX, outY, 8), Ink.Grid);
            board.Body(Outlines.Rectangle(-halfLong, -halfWide, halfLong, halfWide, 3));
            foreach (var bolt in BoltsOf(seen))
                board.Disc(bolt.At, bolt.Radius, width: 1);
            board.CentreLine(new(-outX - 6 / board.Long(1), 0), new(outX + 6 / board.Long(1), 0));
            board.CentreLine(new(0, -outY - 6 / board.Long(1)), new(0, outY + 6 / board.Long(1)));
        });
        board.Place("box", new(-halfLong, halfWide + wall / 2));
        var clashing = layout.Faults.SelectMany(f => new[] { f.Name, f.Other }).ToHashSet(StringComparer.Ordinal);
        // Rooms beneath all things, since they may share a place.
        foreach (var room in layout.Things.SelectMany(t => t.Rooms))
        {
            var (a, b, c, d) = Corners(room);
            ViewPoint[] outline = [a, b, c, d];
            for (var i = 0; i < outline.Length; i++)
                board.Line(outline[i], outline[(i + 1) % outline.Length], Ink.Frame, 0.8, Dash.Dotted);
        }

        foreach (var (i, thing) in layout.Things.Index())
            Thing(board, thing, i + 1, clashing.Contains(thing.Name));
        if (hasDimensions)
        {
            board.Level("box.inner_length", new(-halfLong, outY), new(halfLong, outY), outY, -12, board.Say($"{layout.RoomLength:0 mm}"));
            board.Upright("box.inner_width", new(outX, halfWide), new(outX, -halfWide), outX, 14, board.Say($"{layout.RoomWidth:0 mm}"));
        }

        var nose = board.At(new(outX, -outY));
        board.Arrow(new(nose.X - 40, nose.Y + 14), new(nose.X - 8, nose.Y + 14));
        board.Text(new(nose.X - 46, nose.Y + 18), "nose", Anchor.End);
        Tell(board, layout);
        return board.Finish("box", seen.Title("the box from above, without the deck"), Describe(layout), seen.Pins());
    }

    static void Thing(DrawingBoard board, PlacedThing thing, int number, bool isClashing)
    {
        var (low, high) = (Corners(thing.Body).A, Corners(thing.Body).C);
        board.Thing($"layout.{thing.Name}", $"{number}: {thing.Name}, {thing.Thing.Title}", isClashing ? "clash" : thing.IsStated ? "stated" : "", () =>
        {
            if (thing.Thing.Foam.Si > 0)
            {
                var (foamLow, foamHigh) = (Corners(thing.Solid).A, Corners(thing.Solid).C);
                board.Body(Outlines.Rectangle(foamLow.U, foamLow.V, foamHigh.U, foamHigh.V, 4), Ink.Grid, width: 0.8);
            }

            var outline = Outlines.Rectangle(low.U, low.V, high.U, high.V, thing.Wall is null ? 2 : 0);
            board.Body(outline, width: isClashing ? 3 : 1.6);
            if (isClashing)
                board.Hatch([low, new(high.U, low.V), high, new(low.U, high.V)], 6);
            foreach (var lead in thing.Leads)
                board.Disc(new(lead.X.Millimetres, -lead.Y.Millimetres), 1.6, Ink.Text, 0.8);
            board.DrawName(new((low.U + high.U) / 2, (low.V + high.V) / 2), high.U - low.U, thing.Name, FormattableString.Invariant($"{number}"),
                isClashing);
        });
    }

    static void Tell(DrawingBoard board, BoxLayout layout)
    {
        board.Below("Dots are leads, dotted the room that their wires or a hand need, grey the foam. Small numbers: " + string.Join(", ", layout.Things.Select((t, i) => $"{i + 1}\u00a0{t.Name.Replace(' ', '\u00a0')}")) + ".");
        if (layout.Unplaced.Count > 0)
            board.Below($"No place was found for {string.Join(", ", layout.Unplaced.Select(t => t.Name))}.");
        if (layout.Unsized.Count > 0)
            board.Below($"Left out until measured: {string.Join(", ", layout.Unsized.Select(u => $"{u.Name} ({string.Join(", ", u.Missing)})"))}.");
        if (layout.Things.Any(t => !t.IsStated))
            board.Below("Proposed, not stated in the board file: "
                + (layout.Things.All(t => !t.IsStated) ? "everything" : string.Join(", ", layout.Things.Where(t => !t.IsStated).Select(t => t.Name)))
                + ".");
    }

    static string Describe(BoxLayout layout) =>
        $"The inside of the box from above, its nose end to the right, to scale, with {string.Join(", ", layout.Things.Select(t => t.Name))}.{(layout.Faults.Count > 0 ? " Things that clash are hatched and have thick edges." : "")}";

    static IEnumerable<(ViewPoint At, double Radius)> BoltsOf(ViewedBoard seen)
    {
        var pattern = seen.Examination.Bolts;
        return pattern.IsKnown ? pattern.Value.Places.Select(
            p => (new ViewPoint(p.X.Millimetres, -p.Y.Millimetres), Max(0.5, pattern.Value.BoxHole.Millimetres / 2))) : [];
    }

    static (ViewPoint A, ViewPoint B, ViewPoint C, ViewPoint D) Corners(PlanRectangle r)
    {
        var (back, front, right, left) = (r.Back.Millimetres, r.Front.Millimetres, -r.Right.Millimetres, -r.Left.Millimetres);
        return (new(back, right), new(front, right), new(front, left), new(back, left));
    }
}
