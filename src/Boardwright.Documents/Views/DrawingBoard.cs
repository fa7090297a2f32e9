using System.Runtime.InteropServices;
using Boardwright.Documents.Drawings;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Documents.Views;

/// <summary>A sheet on which a view is drawn to scale: parts in millimetres, then dimensions and pins where there is room.</summary>
sealed class DrawingBoard
{
    const double Visible = 1.6, Thin = 0.8, Margin = 14, TextSize = 12, PinRadius = 10, HeadLength = 8, HeadHalf = 2.4, Title = 16;
    static readonly double[] Steps = [1, 2, 5], Reaches = [10, 18, 28, 42, 60, 80, 110, 140];

    readonly ViewWishes wishes;
    readonly double left, top, scale;
    readonly List<Shape> shapes = [];
    readonly List<Shape> above = [];
    readonly List<Room> taken = [];
    readonly List<Drawn> parts = [];
    readonly List<Room> lines = [];
    readonly Dictionary<string, Point> places = [];
    List<Shape> open;
    double bottom;

    /// <summary>Lays out a sheet.</summary>
    /// <param name="wishes">How the view is wanted.</param>
    /// <param name="extent">What is to be drawn, mm.</param>
    /// <param name="around">Room for dimensions: left, above, right, below, sheet units.</param>
    public DrawingBoard(ViewWishes wishes, (double Left, double Bottom, double Right, double Top) extent,
        (double Left, double Top, double Right, double Bottom) around)
    {
        this.wishes = wishes;
        var (width, height) = (Max(1, extent.Right - extent.Left), Max(1, extent.Top - extent.Bottom));
        var room = Max(60, wishes.Width - around.Left - around.Right - 2 * Margin);
        Reduction = wishes.HasRoundScale ? ReductionFor(width * Unit / room) : width * Unit / room;
        scale = Unit / Reduction;
        left = Margin + around.Left + (room - width * scale) / 2 - extent.Left * scale;
        top = Margin + Title + around.Top + extent.Top * scale;
        bottom = Margin + Title + around.Top + height * scale + around.Bottom;
        open = shapes;
    }

    // Sheet units for a millimetre on paper.
    static double Unit => 1 / Drawing.Millimetre;

    /// <summary>How many times smaller than the thing it is drawn: 1, 2, 5, 10 and so on, as ISO 5455 recommends.</summary>
    public double Reduction { get; }
    /// <summary>Where the next lines below the drawing go.</summary>
    public double Bottom => bottom;
    /// <summary>A place on the sheet.</summary>
    public Point At(ViewPoint p) => new(left + p.U * scale, top - p.V * scale);
    /// <summary>A length on the sheet.</summary>
    public double Long(double millimetres) => millimetres * scale;
    /// <summary>A number with its unit, as the reader wants it.</summary>
    public string Say(FormattableString text) =>
        new Phrase(text).In(wishes.Units).Replace(" deg", "°", StringComparison.Ordinal).Replace('-', '\u2212');
    /// <summary>Whether dimensions of a kind are wanted.</summary>
    public bool Wants(Dimensioned what) => (wishes.Dimensions & what) != Dimensioned.Nothing;
    /// <summary>Draws a part as a group of its own.</summary>
    public void Part(string slot, string title, Action draw) => Within(new DrawingGroup("part", $"parts.{slot}", title, []), draw);
    /// <summary>Draws a thing inside a part as a group of its own.</summary>
    public void Thing(string key, string title, string mark, Action draw) =>
        Within(new DrawingGroup("part", key, title, []) { Mark = mark }, draw);

    /// <summary>The name of a thing within it, or its number where it is too small for that, on top of all that lies there.</summary>
    public void DrawName(ViewPoint middle, double width, string name, string number, bool isBold)
    {
        var at = At(middle);
        var text = Long(width) > Lettering.WidthOf(name, TextSize, isBold) + 6 ? name : number;
        open.Add(new Words(new(at.X, at.Y + TextSize * 0.36), text, TextSize, Ink.Text)
        {
            Anchor = Anchor.Middle,
            IsBold = isBold,
            HasHalo = true
        });
    }

    /// <summary>Says where a finding about a part is pinned; the first place said for it holds.</summary>
    public void Place(string slot, ViewPoint at) => places.TryAdd(slot, At(at));

    /// <summary>Fills an outline and draws its edge, dashed where a cover hides it or where it is guessed.</summary>
    public void Body(IReadOnlyList<ViewPoint> outline, Ink fill = Ink.Paper, IReadOnlyList<ViewPoint>? cover = null, bool isGuess = false,
        double width = Visible)
    {
        open.Add(new Patch(outline.Select(At).ToArray(), fill));
        Edge(outline, cover, isGuess, width);
    }

    /// <summary>Fills an outline without an edge.</summary>
    public void Fill(IReadOnlyList<ViewPoint> outline) => open.Add(new Patch(outline.Select(At).ToArray(), Ink.Paper));

    /// <summary>Draws an edge alone.</summary>
    public void Edge(IReadOnlyList<ViewPoint> outline, IReadOnlyList<ViewPoint>? cover = null, bool isGuess = false, double width = Visible)
    {
        Notice(outline);
        // Begun in the middle of a side, so that every corner is joined.
        ViewPoint[] begun = [(outline[^1] + outline[0]) * 0.5, .. outline];
        foreach (var (isHidden, run) in Outlines.Split(begun, cover))
            open.Add(new Stroke(run.Select(At).ToArray(), isHidden ? Hidden : new(Ink.Text, width, isGuess ? Dash.Long : Dash.Solid)));
    }

    /// <summary>Draws an edge that lies wholly behind another part.</summary>
    public void HiddenEdge(IReadOnlyList<ViewPoint> outline)
    {
        open.Add(new Stroke(outline.Append(outline[0]).Select(At).ToArray(), Hidden));
        Notice(outline);
    }

    /// <summary>Draws what a cover hides of an edge, and nothing of the rest.</summary>
    public void HiddenPart(IReadOnlyList<ViewPoint> outline, IReadOnlyList<ViewPoint> cover)
    {
        foreach (var (isHidden, run) in Outlines.Split(outline, cover))
        {
            if (isHidden)
                open.Add(new Stroke(run.Select(At).ToArray(), Hidden));
        }
    }

    /// <summary>A thin line within a part, left out where a cover hides it.</summary>
    public void Detail(ViewPoint a, ViewPoint b, IReadOnlyList<ViewPoint>? cover = null)
    {
        foreach (var (isHidden, run) in Outlines.Split([a, b], cover).Take(2))
        {
            if (!isHidden)
                open.Add(new Stroke(run.Select(At).ToArray(), new(Ink.Frame, 0.7)));
        }
    }

    /// <summary>A chain-dashed circle on which teeth meet.</summary>
    public void PitchCircle(IReadOnlyList<ViewPoint> circle) =>
        open.Add(new Stroke(circle.Append(circle[0]).Select(At).ToArray(), new(Ink.Quiet, Thin, Dash.DashDot)));
    /// <summary>Teeth, lightly.</summary>
    public void Toothed(IReadOnlyList<ViewPoint> rim) => open.Add(new Stroke(rim.Append(rim[0]).Select(At).ToArray(), new(Ink.Frame, 0.6)));

    /// <summary>A circle that is filled.</summary>
    public void Disc(ViewPoint middle, double radius, Ink fill = Ink.Paper, double width = Visible)
    {
        open.Add(new Circle(At(middle), Long(radius), fill, new(Ink.Text, width)));
        Notice(Outlines.Circle(middle, radius, 12));
    }

    /// <summary>A thin line.</summary>
    public void Line(ViewPoint a, ViewPoint b, Ink ink = Ink.Text, double width = Thin, Dash dash = Dash.Solid) =>
        open.Add(new Stroke(new[] { At(a), At(b) }, new(ink, width, dash)));
    /// <summary>A chain-dashed centre line.</summary>
    public void CentreLine(ViewPoint a, ViewPoint b) => Line(a, b, Ink.Frame, Thin, Dash.DashDot);

    /// <summary>A cross of centre lines.</summary>
    public void CentreCross(ViewPoint middle, double reach)
    {
        CentreLine(new(middle.U - reach, middle.V), new(middle.U + reach, middle.V));
        CentreLine(new(middle.U, middle.V - reach), new(middle.U, middle.V + reach));
    }

    /// <summary>The road, hatched below.</summary>
    public void Road(double v, double fromU, double toU)
    {
        var (a, b) = (At(new(fromU, v)), At(new(toU, v)));
        open.Add(Stroke.Between(a.X, a.Y, b.X, b.Y, new(Ink.Text, Visible)));
        lines.Add(new(a.X, a.Y - 2, b.X, a.Y + 8));
        for (var x = a.X + 10; x <= b.X; x += 14)
            open.Add(Stroke.Between(x, a.Y, x - 7, a.Y + 7, new(Ink.Frame, Thin)));
    }

    /// <summary>Slanted lines within a convex outline.</summary>
    public void Hatch(IReadOnlyList<ViewPoint> outline, double spacing)
    {
        var (low, high) = (outline.Min(p => p.V - p.U), outline.Max(p => p.V - p.U));
        var step = Max(spacing / scale * Sqrt2, (high - low) / 400);
        if (!(step > 0))
            return;
        for (var c = low + step / 2; c < high; c += step)
        {
            var ends = new List<ViewPoint>();
            for (var i = 0; i < outline.Count; i++)
            {
                var (a, b) = (outline[i], outline[(i + 1) % outline.Count]);
                var (da, db) = (a.V - a.U - c, b.V - b.U - c);
                if (da < 0 != db < 0)
                    ends.Add(a + (b - a) * (da / (da - db)));
            }

            if (ends.Count == 2)
                Line(ends[0], ends[1], Ink.Frame, 0.7);
        }
    }

    /// <summary>A level dimension above or below what it measures.</summary>
    /// <param name="key">What is measured.</param>
    /// <param name="a">One end, mm.</param>
    /// <param name="b">The other.</param>
    /// <param name="offset">From the sheet's drawing field: positive below its lower edge, negative above its upper edge, sheet
    /// units.</param>
    /// <param name="edge">The v from which the offset counts.</param>
    /// <param name="text">What is written.</param>
    public void Level(string key, ViewPoint a, ViewPoint b, double edge, double offset, string text)
    {
        var (from, to) = (At(a), At(b));
        var y = At(new(0, edge)).Y + offset;
        Within(new DrawingGroup("dimension", key, "", []), () =>
        {
            var tail = offset > 0 ? 4 : -4;
            foreach (var end in new[] { from, to })
                Extension(new(end.X, end.Y + tail), new(end.X, y + tail));
            Arrowed(new(from.X, y), new(to.X, y), new(Ink.Quiet, Thin));
            Write(new((from.X + to.X) / 2, y - 4), text, Anchor.Middle, Ink.Text);
        });
    }

    /// <summary>An upright dimension beside what it measures.</summary>
    public void Upright(string key, ViewPoint a, ViewPoint b, double edge, double offset, string text)
    {
        var (from, to) = (At(a), At(b));
        var x = At(new(edge, 0)).X + offset;
        Within(new DrawingGroup("dimension", key, "", []), () =>
        {
            var tail = offset > 0 ? 4 : -4;
            foreach (var end in new[] { from, to })
                Extension(new(end.X + tail, end.Y), new(x + tail, end.Y));
            Arrowed(new(x, from.Y), new(x, to.Y), new(Ink.Quiet, Thin));
            Write(new(x + Sign(offset) * 7, (from.Y + to.Y) / 2 + TextSize * 0.36), text, offset > 0 ? Anchor.Start : Anchor.End, Ink.Text);
        });
    }

    /// <summary>A short distance between two points, its figure beside it wherever there is room.</summary>
    public void Gap(string key, ViewPoint a, ViewPoint b, string text, bool isTightest)
    {
        var (from, to) = (At(a), At(b));
        var ink = isTightest ? Ink.Hue2 : Ink.Quiet;
        Within(new DrawingGroup("dimension", key, "", []) { Mark = isTightest ? "tightest" : "" }, () =>
        {
            Arrowed(from, to, new(ink, isTightest ? 1.4 : Thin));
            Beside(new((from.X + to.X) / 2, (from.Y + to.Y) / 2), text, isTightest ? Ink.Hue2 : Ink.Text, isTightest);
        });
    }

    /// <summary>A text with a line to what it is about, wherever there is room.</summary>
    public void Note(string key, ViewPoint at, string text) =>
        Within(new DrawingGroup("dimension", key, "", []), () => Beside(At(at), text, Ink.Text, false, isOutside: true));

    /// <summary>A plain text at a place of the sheet.</summary>
    public void Text(Point at, string text, Anchor anchor = Anchor.Start, Ink ink = Ink.Quiet, bool isBold = false) =>
        Write(at, text, anchor, ink, isBold);

    /// <summary>The name of a part within it, where it is wide enough for it.</summary>
    public void Label(ViewPoint middle, double width, double down, string text)
    {
        var at = At(middle);
        if (width > Lettering.WidthOf(text, TextSize) + 6)
            Write(new(at.X, at.Y + down), text, Anchor.Middle, Ink.Quiet);
    }

    /// <summary>An arrow to show a direction.</summary>
    public void Arrow(Point from, Point to)
    {
        above.Add(Stroke.Between(from.X, from.Y, to.X, to.Y, new(Ink.Quiet, 1.2)));
        Head(from, to, Ink.Quiet);
    }

    /// <summary>Lines of text below the drawing.</summary>
    public void Below(string text)
    {
        foreach (var line in Lettering.Wrapped(text, wishes.Width - 2 * Margin, TextSize))
        {
            bottom += TextSize * 1.35;
            above.Add(new Words(new(Margin, bottom), line, TextSize, Ink.Quiet));
            taken.Add(RoomOf(new(Margin, bottom), line, Anchor.Start, false));
        }
    }

    /// <summary>A table below the drawing: names and two columns of values.</summary>
    public void Table(IReadOnlyList<(string Name, string First, string Second, bool IsBold)> rows)
    {
        foreach (var (name, first, second, isBold) in rows)
        {
            bottom += TextSize * 1.4;
            above.Add(new Words(new(Margin, bottom), name, TextSize, isBold ? Ink.Text : Ink.Quiet) { IsBold = isBold });
            taken.Add(new(Margin, bottom - TextSize, Margin + 420, bottom + 4));
            above.Add(new Words(new(Margin + 340, bottom), first, TextSize, Ink.Text) { Anchor = Anchor.End, IsBold = isBold });
            above.Add(new Words(new(Margin + 420, bottom), second, TextSize, Ink.Text) { Anchor = Anchor.End, IsBold = isBold });
        }

        bottom += TextSize * 0.4;
    }

    /// <summary>Pins the findings that are about a part which is drawn, then gives the drawing.</summary>
    public Drawing Finish(string name, string title, string says, IEnumerable<Pin> pins)
    {
        if (wishes.HasPins)
        {
            var placed = pins.Where(p => places.ContainsKey(p.Slot)).ToList();
            lines.AddRange(placed.Select(p => places[p.Slot]).Distinct().Select(s => new Room(s.X - 3, s.Y - 3, s.X + 3, s.Y + 3)));
            foreach (var pin in placed)
                Pinned(pin, places[pin.Slot]);
        }

        List<Shape> all = [.. shapes, new Words(new(Margin, Margin + TextSize), title, 14, Ink.Text) { IsBold = true },
            new Words(new(wishes.Width - Margin, Margin + TextSize), FormattableString.Invariant($"1 : {Reduction:0.#}"), TextSize,
                Ink.Quiet) { Anchor = Anchor.End }, .. above];
        return new(wishes.Width, Ceiling(bottom + Margin), name, title, says, all) { UnitsPerMillimetre = scale };
    }

    static double Sqrt2 => 1.4142135623730951;

    static Pen Hidden => new(Ink.Quiet, 0.9, Dash.Dashed);

    static double ReductionFor(double least)
    {
        for (var decade = 1.0; ; decade *= 10)
        {
            foreach (var step in Steps)
            {
                if (step * decade >= least)
                    return step * decade;
            }
        }
    }

    // Remembers where edges are, so that words and pins keep off them.
    void Notice(IReadOnlyList<ViewPoint> outline)
    {
        var spots = outline.Select(At).ToArray();
        parts.Add(new(new(spots.Min(s => s.X), spots.Min(s => s.Y), spots.Max(s => s.X), spots.Max(s => s.Y)), spots));
    }

    void Within(DrawingGroup group, Action draw)
    {
        // Dimensions lie above every part; parts in the order in which they are drawn.
        var list = group.Kind == "part" ? open : above;
        var before = list.Count;
        draw();
        var inner = list[before..];
        list.RemoveRange(before, list.Count - before);
        if (inner.Count > 0)
            list.Add(group with { Shapes = inner });
    }

    void Extension(Point a, Point b)
    {
        above.Add(Stroke.Between(a.X, a.Y, b.X, b.Y, new(Ink.Quiet, Thin)));
        lines.Add(new(Min(a.X, b.X) - 2, Min(a.Y, b.Y) - 2, Max(a.X, b.X) + 2, Max(a.Y, b.Y) + 2));
    }

    // Arrow heads inside where there is room for them, or pointing in from outside.
    void Arrowed(Point a, Point b, Pen pen)
    {
        var length = Sqrt((b.X - a.X) * (b.X - a.X) + (b.Y - a.Y) * (b.Y - a.Y));
        lines.Add(new(Min(a.X, b.X) - 3, Min(a.Y, b.Y) - 3, Max(a.X, b.X) + 3, Max(a.Y, b.Y) + 3));
        if (length > 3 * HeadLength)
        {
            above.Add(Stroke.Between(a.X, a.Y, b.X, b.Y, pen));
            Head(b, a, pen.Ink);
            Head(a, b, pen.Ink);
            return;
        }

        var (ux, uy) = length > 0.01 ? ((b.X - a.X) / length, (b.Y - a.Y) / length) : (0, 1);
        Point before = new(a.X - ux * 2 * HeadLength, a.Y - uy * 2 * HeadLength),
            after = new(b.X + ux * 2 * HeadLength, b.Y + uy * 2 * HeadLength);
        above.Add(Stroke.Between(before.X, before.Y, after.X, after.Y, pen));
        Head(before, a, pen.Ink);
        Head(after, b, pen.Ink);
    }

    void Head(Point from, Point tip, Ink ink)
    {
        var (dx, dy) = (tip.X - from.X, tip.Y - from.Y);
        var length = Sqrt(dx * dx + dy * dy);
        if (length < 0.01)
            return;
        (dx, dy) = (dx / length, dy / length);
        Point back = new(tip.X - dx * HeadLength, tip.Y - dy * HeadLength);
        above.Add(new Patch(new[] { tip, new Point(back.X - dy * HeadHalf, back.Y + dx * HeadHalf),
            new Point(back.X + dy * HeadHalf, back.Y - dx * HeadHalf) }, ink));
    }

    void Write(Point at, string text, Anchor anchor, Ink ink, bool isBold = false)
    {
        above.Add(new Words(at, text, TextSize, ink) { Anchor = anchor, HasHalo = true, IsBold = isBold });
        taken.Add(RoomOf(at, text, anchor, isBold));
    }

    static Room RoomOf(Point at, string text, Anchor anchor, bool isBold)
    {
        var width = Lettering.WidthOf(text, TextSize, isBold);
        var from = at.X - (anchor == Anchor.Start ? 0 : anchor == Anchor.Middle ? width / 2 : width);
        return new(from - 2, at.Y - 0.8 * TextSize - 1, from + width + 2, at.Y + 0.25 * TextSize + 1);
    }

    // The first of the places around a spot that is free, nearest first.
    void Beside(Point spot, string text, Ink ink, bool isBold, bool isOutside = false)
    {
        var (best, least) = (new Point(spot.X + 14, spot.Y), double.PositiveInfinity);
        var anchorOfBest = Anchor.Start;
        foreach (var reach in Reaches)
        {
            if (reach >= least)
                break;
            for (var k = 0; k < 12; k++)
            {
                var angle = PI / 6 * k;
                var (dx, dy) = (Cos(angle), Sin(angle));
                var anchor = dx > 0.3 ? Anchor.Start : dx < -0.3 ? Anchor.End : Anchor.Middle;
                Point at = new(spot.X + dx * reach, spot.Y + dy * reach + TextSize * 0.36);
                var room = RoomOf(at, text, anchor, isBold);
                if (!room.IsOn(wishes.Width, bottom) || taken.Exists(room.Meets))
                    continue;
                var cost = reach + Crowded(room, 25, isOutside ? 12 : 0, 40);
                if (cost < least)
                    (best, anchorOfBest, least) = (at, anchor, cost);
            }
        }

        if (Sqrt((best.X - spot.X) * (best.X - spot.X) + (best.Y - spot.Y) * (best.Y - spot.Y)) > 24)
        {
            var to = RoomOf(best, text, anchorOfBest, isBold);
            above.Add(Stroke.Between(
                spot.X, spot.Y, Clamp(spot.X, to.Left, to.Right), Clamp(spot.Y, to.Top, to.Bottom), new(Ink.Frame, Thin)));
        }

        Write(best, text, anchorOfBest, ink, isBold);
    }

    // How much a room is in the way: of edges, of whole parts, of lines.
    double Crowded(Room room, double edge, double part, double line)
    {
        var cost = 0.0;
        foreach (var drawn in parts)
        {
            if (room.Meets(drawn.Around))
                cost += part + (drawn.HasEdgeIn(room) ? edge : 0);
        }

        foreach (var other in lines)
            cost += room.Meets(other) ? line : 0;
        return cost;
    }

    void Pinned(Pin pin, Point place)
    {
        var (best, least) = (place, double.PositiveInfinity);
        for (var reach = 30.0; reach < 700 && reach < least; reach += 14)
        {
            for (var k = 0; k < 16; k++)
            {
                var angle = PI / 8 * k - PI / 2;
                Point at = new(place.X + Cos(angle) * reach, place.Y + Sin(angle) * reach);
                var room = new Room(at.X - PinRadius - 2, at.Y - PinRadius - 2, at.X + PinRadius + 2, at.Y + PinRadius + 2);
                if (!room.IsOn(wishes.Width, bottom) || taken.Exists(room.Meets))
                    continue;
                if (reach >= least)
                    continue;
                var cost = reach + Crowded(room, 20, 6, 60);
                if (cost >= least)
                    continue;
                foreach (var other in taken)
                    cost += other.IsCrossedBy(place, at) ? 90 : 0;
                if (cost < least)
                    (best, least) = (at, cost);
            }
        }

        if (double.IsPositiveInfinity(least))
        {
            // A sheet full of pins grows by a row.
            bottom += 2 * PinRadius + 4;
            best = new(Clamp(place.X, 2 * PinRadius, wishes.Width - 2 * PinRadius), bottom - PinRadius);
        }

        taken.Add(new(best.X - PinRadius - 2, best.Y - PinRadius - 2, best.X + PinRadius + 2, best.Y + PinRadius + 2));
        var ink = pin.Level switch { Findings.Level.Stop => Ink.Hue2, Findings.Level.Fix => Ink.Hue6, _ => Ink.Hue1 };
        var corners = pin.Level switch { Findings.Level.Stop => 8, Findings.Level.Fix => 3, _ => 4 };
        var (radius, turn) = corners switch { 8 => (PinRadius, PI / 8), 3 => (PinRadius * 1.3, -PI / 2), _ => (PinRadius * 1.15, -PI / 2) };
        // A triangle's middle of area lies a little below the middle of its height.
        Point middle = corners == 3 ? new(best.X, best.Y + 2) : best;
        var outline = Enumerable.Range(0, corners)
            .Select(i => new Point(middle.X + radius * Cos(turn + 2 * PI * i / corners),
            middle.Y + radius * Sin(turn + 2 * PI * i / corners))).ToArray();
        var isFilled = pin.Level == Findings.Level.Stop;
        above.Add(new DrawingGroup("finding", pin.Rule, pin.Title,
        [
            Stroke.Between(place.X, place.Y, best.X, best.Y, new(ink, 1)),
            new Circle(place, 2.2, ink, new(ink, 0.5)),
            new Patch(outline, isFilled ? ink : Ink.Paper),
            new Stroke(outline.Append(outline[0]).Append(outline[1]).ToArray(), new(ink, 1.6)),
            new Words(new(middle.X, middle.Y + 3.8), pin.Label,
                corners switch { 8 => 11, 3 => pin.Label.Length > 1 ? 9 : 11, _ => pin.Label.Length > 2 ? 9 : 11 },
                isFilled ? Ink.Paper : ink) { Anchor = Anchor.Middle, IsBold = true },
        ])
        { Mark = pin.Level.ToString().ToLowerInvariant() });
    }

    /// <summary>An edge that was drawn, with the room around it.</summary>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct Drawn(Room Around, Point[] Edge)
    {
        public bool HasEdgeIn(Room room)
        {
            for (var i = 0; i < Edge.Length; i++)
            {
                if (room.IsCrossedBy(Edge[i], Edge[(i + 1) % Edge.Length]))
                    return true;
            }

            return false;
        }
    }

    /// <summary>An upright rectangle of the sheet.</summary>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct Room(double Left, double Top, double Right, double Bottom)
    {
        public bool Meets(Room other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

        public bool IsCrossedBy(Point a, Point b)
        {
            if (Max(a.X, b.X) < Left || Min(a.X, b.X) > Right || Max(a.Y, b.Y) < Top || Min(a.Y, b.Y) > Bottom)
                return false;
            // The line passes between the corners, or all of them lie on one side of it.
            var (dx, dy) = (b.X - a.X, b.Y - a.Y);
            double Off(double x, double y) => dx * (y - a.Y) - dy * (x - a.X);
            var (one, two, three, four) = (Off(Left, Top), Off(Right, Top), Off(Right, Bottom), Off(Left, Bottom));
            return !((one > 0 && two > 0 && three > 0 && four > 0) || (one < 0 && two < 0 && three < 0 && four < 0));
        }

        public bool IsOn(double width, double bottom) => Left > 4 && Right < width - 4 && Top > 4 + Title + Margin && Bottom < bottom;
    }
}

/// <summary>A finding to be pinned, or several that only wait for values of the same part.</summary>
/// <param name="Label">Its number among those that do not hold; with a plus where others are behind it.</param>
/// <param name="Rule">Id of its rule, or several ids with blanks between.</param>
/// <param name="Level">How bad it is.</param>
/// <param name="Slot">Key of the part it is about.</param>
/// <param name="Title">What it says.</param>
sealed record Pin(string Label, string Rule, Level Level, string Slot, string Title);
