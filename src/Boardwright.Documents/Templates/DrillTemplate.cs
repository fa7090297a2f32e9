using System.Globalization;
using Boardwright.Boxes;
using Boardwright.Documents.Drawings;
using Boardwright.Parts;

namespace Boardwright.Documents.Templates;

/// <summary>From which side a template is seen.</summary>
public enum TemplateSide
{
    /// <summary>From outside: the board turned over, nose to the right.</summary>
    Outside,
    /// <summary>From inside: into the open box, or down on the deck, nose to the left.</summary>
    Inside,
}

/// <summary>The drill template of a board: bolts through deck and flange, and the walls with their openings.</summary>
static class DrillTemplate
{
    const double Margin = 14, Gap = 16, Cross = 7;

    /// <summary>Lays the template out.</summary>
    /// <param name="board">Name of the board.</param>
    /// <param name="pattern">The bolts.</param>
    /// <param name="openings">The openings, placed by a plan of the inside or proposed.</param>
    /// <param name="view">From where it is seen.</param>
    /// <param name="isProposal">Whether nobody has planned the inside yet, so that the openings are only proposed.</param>
    /// <param name="hasInches">Whether sizes are written in inches beside the millimetres.</param>
    public static Drawing Draw(
        string board, BoltPattern pattern, IReadOnlyList<Opening> openings, TemplateSide view, bool isProposal, bool hasInches = false)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(openings);
        var sheet = new TemplateSheet(view, hasInches);
        var flange = pattern.Flange;
        var (length, width) = (flange.OuterLength.Millimetres, flange.OuterWidth.Millimetres);
        // Both walls go on the sheet one above the other, under the plan.
        var walls = openings.GroupBy(o => o.Wall).OrderBy(g => g.Key).ToList();
        var depth = openings.Count == 0 ? 0 : openings.Max(o => o.Height.Millimetres) * 2;
        var y = Margin;
        y = sheet.CheckLines(Margin, y) + Gap;
        foreach (var wall in Enumerable.Reverse(walls))
            y = sheet.Wall(Margin + length / 2, y, wall.Key, wall.ToList(), Opening.LengthOf(wall.Key, flange).Millimetres, depth) + Gap;
        sheet.Plan(Margin + length / 2, y + width / 2, pattern);
        y = sheet.Head(Margin, y + width + 12, board, pattern, isProposal && openings.Count > 0) + Margin;
        var (right, height) = (Math.Ceiling(Math.Max(Margin + length, sheet.Right) + Margin), Math.Ceiling(y));
        return new(
            right, height, "drill-template", $"{board}: drill template 1:1, {sheet.Side}",
            Invariant($"{pattern.Places.Count} holes for {pattern.Thread.Name} around a box {length:0.#} mm by {width:0.#} mm, and {openings.Count} openings in its walls, at full size, {sheet.Side}."),
            sheet.Layers(height))
        { IsFullSize = true };
    }


    // Laid out from the lower edge upwards, since only then is it known how high it is.
    sealed class TemplateSheet(TemplateSide view, bool hasInches)
    {
        readonly List<(TemplateLayer Layer, Func<double, Shape> Under)> marks = [];

        public double Right { get; private set; }

        public string Side => view == TemplateSide.Outside ? "seen from outside" : "seen from inside";

        public IReadOnlyList<Shape> Layers(double height) =>
            [.. TemplateLayer.All.Select(l => l.Group(marks.Where(m => m.Layer == l).Select(m => m.Under(height))))];

        string Inches(double millimetres, string format = "0.00") => hasInches ? $" ({(millimetres / 25.4).ToString(format, CultureInfo.InvariantCulture)} in)" : "";

        // Seen from inside, what was right is left.
        double Turn => view == TemplateSide.Outside ? 1 : -1;

        public void Plan(double cx, double cy, BoltPattern pattern)
        {
            var flange = pattern.Flange;
            var (length, width) = (flange.OuterLength.Millimetres, flange.OuterWidth.Millimetres);
            Rectangle(TemplateLayer.Outline, cx, cy, length, width);
            Rectangle(TemplateLayer.Outline, cx, cy, length - 2 * flange.Width.Millimetres, width - 2 * flange.Width.Millimetres);
            Line(TemplateLayer.Centre, cx - length / 2 - 6, cy, cx + length / 2 + 6, cy);
            Line(TemplateLayer.Centre, cx, cy - width / 2 - 6, cx, cy + width / 2 + 6);
            foreach (var place in pattern.Places)
            {
                var (x, y) = (cx + Turn * place.X.Millimetres, cy + place.Y.Millimetres);
                Hole(x, y, TemplateLayer.Deck, pattern.DeckHole.Millimetres / 2);
                Ring(TemplateLayer.Box, x, y, pattern.BoxHole.Millimetres / 2);
                // The name goes where the box is, so that nothing lies beyond the flange.
                var (dx, dy) = (x < cx - 1 ? 11.0 : x > cx + 1 ? -11.0 : 4, y > cy + 1 ? -17.0 : y < cy - 1 ? 14.5 : 3);
                Write(x + dx, y + dy, place.Name, 3.2, Anchor.Middle);
            }

            var nose = cx + Turn * (length / 2 - 70);
            Arrow(nose - Turn * 22, cy + 12, nose, cy + 12);
            Write(nose - Turn * 11, cy + 15, "NOSE", 4, Anchor.Middle, isBold: true);
            Arrow(cx + 25, cy + width / 2 - 48, cx + 25, cy + width / 2 - 30);
            Write(cx + 28, cy + width / 2 - 40, "RIGHT-HAND SIDE, facing the nose", 3);
            Write(cx - length / 4, cy - 9, Invariant($"flange {length:0.#} × {width:0.#} mm{(hasInches ? Invariant($" ({length / 25.4:0.00} × {width / 25.4:0.00} in)") : "")}, bolts {pattern.Inset.Millimetres:0.0} mm{Inches(pattern.Inset.Millimetres, "0.000")} in from its edge"), 3, Anchor.Middle);
            Write(cx - length / 4, cy - 15, Invariant($"largest pitch {pattern.Pitch.Millimetres:0.0} mm{Inches(pattern.Pitch.Millimetres)}"), 3, Anchor.Middle);
        }

        public double Wall(double cx, double y, BoxWall wall, IReadOnlyList<Opening> openings, double length, double depth)
        {
            var (across, towards) = wall switch
            {
                BoxWall.Right => (-1, "NOSE"),
                BoxWall.Left => (1, "NOSE"),
                BoxWall.Rear => (-1, "RIGHT-HAND SIDE"),
                _ => (1, "RIGHT-HAND SIDE"),
            };
            Rectangle(TemplateLayer.Outline, cx, y + depth / 2, length, depth);
            // Only at the edges, so that it runs through no opening and no word.
            Line(TemplateLayer.Centre, cx, y - 5, cx, y + 2);
            Line(TemplateLayer.Centre, cx, y + depth - 2, cx, y + depth + 5);
            foreach (var opening in openings)
            {
                var (x, h) = (cx + Turn * opening.Along.Millimetres, y + opening.Height.Millimetres);
                var width = opening.Width.Millimetres;
                if (opening.Tall is { } tall)
                {
                    Rectangle(TemplateLayer.Opening, x, h, width, tall.Millimetres);
                    CrossAt(x, h, width / 2 + 3, tall.Millimetres / 2 + 3);
                }
                else
                    Hole(x, h, TemplateLayer.Opening, width / 2);
                var size = Invariant(opening.Tall is { } high ? $"{width:0.#} × {high.Millimetres:0.#}" : (FormattableString)$"Ø {width:0.#}{Inches(width)}");
                Write(x, h + Math.Max(width, opening.Tall?.Millimetres ?? width) / 2 + 5.5, size, 3, Anchor.Middle, isBold: true);
                Write(x, h - (opening.Tall?.Millimetres ?? width) / 2 - 8.5, Short(opening.Name), 2.2, Anchor.Middle);
            }

            var sign = Turn * across;
            var at = cx + sign * (length / 2 - 4);
            var isLong = wall is BoxWall.Left or BoxWall.Right;
            if (isLong)
            {
                Arrow(at - sign * 18, y + depth / 2 + 4, at, y + depth / 2 + 4);
                Write(at, y + depth / 2 + 7, towards, 3, sign > 0 ? Anchor.End : Anchor.Start, isBold: true);
            }
            else
            {
                at = cx + sign * (length / 2 + 22);
                Arrow(at - sign * 18, y + depth / 2 + 4, at, y + depth / 2 + 4);
                Write(cx + sign * (length / 2 + 4), y + depth / 2 + 7, towards, 3, sign > 0 ? Anchor.Start : Anchor.End, isBold: true);
            }

            Write(cx - length / 2 + 2, y + 1.8, "flange and deck", 2.4);
            Write(cx - length / 2 + 2, y + depth - 4, "floor of the box", 2.4);
            Write(cx - length / 2, y + depth + 4.5, $"{wall.ToString().ToUpperInvariant()} WALL, {Side}", 3.4, isBold: true);
            return y + depth + 8;
        }

        public double CheckLines(double x, double y)
        {
            Measure(x, y + 6, 100, "This line is 100 mm long.");
            Measure(x + 125, y + 6, 101.6, "This line is 4 in (101.6 mm) long.");
            return y + 16;
        }

        public double Head(double x, double y, string board, BoltPattern pattern, bool isProposal)
        {
            var deck = pattern.IsWoodScrew ? "pilot hole for the wood screw" : pattern.Insert.Length > 0 ? $"hole for the {pattern.Insert}" : "hole for the insert";
            string[] lines =
            [
                view == TemplateSide.Outside
                    ? "SEEN FROM OUTSIDE: the board turned over, nose to the right. Lay it on the deck's underside, or on the flange from the side of the box."
                    : "SEEN FROM INSIDE: looking into the open box, or down on the deck's upper side, nose to the left. The other sheet is its mirror image.",
                Invariant($"Solid rings: deck, Ø {pattern.DeckHole.Millimetres:0.0} mm{Inches(pattern.DeckHole.Millimetres, "0.000")}, {deck}{(pattern.IsDeckHoleUsual ? " (a usual size: measure yours first)" : "")}. Dashed rings: flange of the box, Ø {pattern.BoxHole.Millimetres:0.0} mm{Inches(pattern.BoxHole.Millimetres, "0.000")}, clearance for {pattern.Thread.Name}."),
                isProposal
                    ? "The openings in the walls are a proposal, since their places are not stated in the board file: look what lies behind before drilling."
                    : "Drill a small hole at each cross first, then open it up; back the far side with scrap wood.",
                "Print at 100 % (\"actual size\"), never \"fit to page\". Measure the check lines on every sheet: if the 100 mm line is off by more than 0.5 mm, do not drill;",
                "switch off every scaling in the print dialogue and print again, or have the one-sheet file plotted. Paper grows when damp: check on the day that you drill.",
            ];
            for (var i = 0; i < lines.Length; i++)
                Write(x, y + (lines.Length - 1 - i) * 5.6, lines[i], 3.4, isBold: i == 0);
            y += lines.Length * 5.6 + 2;
            Write(x, y, $"{board}: drill template, 1:1", 7, isBold: true);
            return y + 8;
        }

        // A name that would run into its neighbours' is cut; the parts list has all of it.
        static string Short(string name) => name.Length <= 22 ? name : name[..21] + "…";

        void Measure(double x, double y, double length, string says)
        {
            Line(TemplateLayer.Check, x, y, x + length, y);
            Line(TemplateLayer.Check, x, y - 3, x, y + 3);
            Line(TemplateLayer.Check, x + length, y - 3, x + length, y + 3);
            Write(x + length / 2, y + 2.2, says, 3, Anchor.Middle);
        }

        void Hole(double x, double y, TemplateLayer layer, double radius)
        {
            Ring(layer, x, y, radius);
            var arm = Math.Max(Cross, radius + 3);
            CrossAt(x, y, arm, arm);
        }

        void CrossAt(double x, double y, double across, double along)
        {
            Line(TemplateLayer.Cross, x - across, y, x + across, y);
            Line(TemplateLayer.Cross, x, y - along, x, y + along);
        }

        void Arrow(double x1, double y1, double x2, double y2)
        {
            var (dx, dy) = (Math.Sign(x2 - x1), Math.Sign(y2 - y1));
            Line(TemplateLayer.Note, x1, y1, x2, y2);
            Line(TemplateLayer.Note, x2, y2, x2 - 3 * dx - 1.2 * dy, y2 - 3 * dy - 1.2 * dx);
            Line(TemplateLayer.Note, x2, y2, x2 - 3 * dx + 1.2 * dy, y2 - 3 * dy + 1.2 * dx);
        }

        void Rectangle(TemplateLayer layer, double cx, double cy, double width, double height)
        {
            var (left, right, low, high) = (cx - width / 2, cx + width / 2, cy - height / 2, cy + height / 2);
            Path(layer, new(left, low), new(right, low), new(right, high), new(left, high), new(left, low));
        }

        void Line(TemplateLayer layer, double x1, double y1, double x2, double y2) => Path(layer, new(x1, y1), new(x2, y2));

        void Path(TemplateLayer layer, params Point[] path) =>
            Add(layer, path.Max(p => p.X), height => new Stroke(path.Select(p => new Point(p.X, height - p.Y)).ToArray(), layer.Pen));

        void Ring(TemplateLayer layer, double x, double y, double radius) =>
            Add(layer, x + radius, height => new Circle(new(x, height - y), radius, null, layer.Pen));

        void Write(double x, double y, string text, double size, Anchor anchor = Anchor.Start, bool isBold = false)
        {
            var beyond = anchor == Anchor.Start ? 1 : anchor == Anchor.Middle ? 0.5 : 0;
            var right = x + beyond * Lettering.WidthOf(text, size, isBold);
            Add(TemplateLayer.Note, right,
                height => new Words(new(x, height - y), text, size, Ink.Black) { Anchor = anchor, IsBold = isBold });
        }

        void Add(TemplateLayer layer, double right, Func<double, Shape> under)
        {
            Right = Math.Max(Right, right);
            marks.Add((layer, under));
        }
    }
}
