using Boardwright.Documents.Drawings;
using static System.Math;

namespace Boardwright.Documents.Charts;

/// <content>What is drawn inside a line panel.</content>
public sealed partial class ChartLayout
{
    /// <summary>The field of a line panel: its lines first, then room for their names.</summary>
    sealed class PlotArea
    {
        const double FarthestMark = 58, FarthestName = 32, FarthestStretch = 14;

        readonly ChartLayout layout;
        readonly PanelPlan plan;
        readonly LinePanel panel;
        readonly Frame frame;
        readonly Labels labels;
        readonly List<Shape> shapes;
        readonly List<(Name Name, double Y)> atEdge = [];
        readonly List<(Name Name, Line? Line, IReadOnlyList<Point> At)> inside = [];
        readonly List<(IReadOnlyList<Point> At, string Text)> stretches = [];
        int next;

        public PlotArea(ChartLayout layout, PanelPlan plan, LinePanel panel, Frame frame)
        {
            (this.layout, this.plan, this.panel, this.frame, shapes) = (layout, plan, panel, frame, layout.shapes);
            labels = new Labels(new LabelBox(frame.Left + 1, frame.Top - 4, frame.Right + 1, frame.Bottom - 1));
        }

        public void Fill()
        {
            foreach (var series in panel.Series)
            {
                switch (series)
                {
                    case Band band:
                        Area(band.X, band.Low, band.High, plan.Names[next++], hasEdges: true);
                        break;
                    case LayeredPanel stack:
                        ReadOnlyMemory<double> below = new double[stack.X.Length];
                        foreach (var edge in Heaped(stack))
                        {
                            Area(stack.X, below, edge, plan.Names[next++], hasEdges: false);
                            below = edge;
                        }

                        break;
                    default:
                        next++;
                        break;
                }
            }

            Guides();
            next = 0;
            foreach (var series in panel.Series)
            {
                if (series is Line line)
                    Curve(line, plan.Names[next]);
                next += series is LayeredPanel stack ? stack.Layers.Count : 1;
            }

            Dots();
            EdgeNames();
            InnerNames();
        }

        void Area(ReadOnlyMemory<double> x, ReadOnlyMemory<double> low, ReadOnlyMemory<double> high, Name name, bool hasEdges)
        {
            var (lower, upper) = (Runs(x.Span, low.Span), Runs(x.Span, high.Span));
            for (var i = 0; i < Min(lower.Count, upper.Count); i++)
            {
                var outline = new List<Point>(upper[i]);
                outline.AddRange(lower[i].AsEnumerable().Reverse());
                shapes.Add(new Patch(outline.ToArray(), name.Fill ?? Ink.Grid));
                shapes.Add(new Stroke(upper[i], name.Pen));
                labels.Avoid(upper[i]);
                if (!hasEdges)
                    continue;
                shapes.Add(new Stroke(lower[i], name.Pen));
                labels.Avoid(lower[i]);
            }

            if (upper.Count == 0 || lower.Count == 0)
                return;
            var (top, foot) = (upper[^1][^1], lower[^1][^1]);
            DrawName(name, null, [new(top.X, (top.Y + foot.Y) / 2)]);
        }

        void Curve(Line line, Name name)
        {
            var runs = Runs(line.X.Span, line.Y.Span);
            foreach (var run in runs)
            {
                if (run.Length == 1)
                    shapes.Add(Circle.Mark(run[0], 1.2, name.Pen.Ink, name.Pen.Ink));
                else
                    shapes.Add(new Stroke(run, name.Pen));
                labels.Avoid(run);
            }

            if (runs.Count == 0)
                return;
            var places = new List<Point>();
            if (line.LabelAt is { } at && at >= frame.From && at <= frame.To && Reading.Between(line.X.Span, line.Y.Span, at) is { } value
                && double.IsFinite(value))
                places.Add(new(frame.Across(at), frame.Up(value)));
            places.Add(runs[^1][^1]);
            places.AddRange(Along(line, Max(line.X.Span[0], frame.From), Min(line.X.Span[^1], frame.To), 0.5, 0.35, 0.65, 0.2, 0.8));
            DrawName(name, line, name.IsAtEdge ? [runs[^1][^1]] : places);
            foreach (var stretch in line.Stretches)
                Stretched(line, stretch, name);
        }

        void Stretched(Line line, AxisRange stretch, Name name)
        {
            foreach (var end in new[] { stretch.From, stretch.To })
            {
                // Neither the beginning of the line nor the edge of what is seen is an end of anything.
                if (end > line.X.Span[0] && end > frame.From && end <= frame.To
                    && Reading.Between(line.X.Span, line.Y.Span, end) is { } value && double.IsFinite(value))
                    shapes.Add(Circle.Mark(new(frame.Across(end), frame.Up(value)), 2.4, Ink.Paper, name.Pen.Ink));
            }

            if (stretch.Says.Length > 0 && stretch.To >= frame.From && stretch.From <= frame.To)
                stretches.Add(([.. Along(line, Max(stretch.From, frame.From), Min(stretch.To, frame.To), 0.5, 0.35, 0.65, 0.2, 0.8)],
                    stretch.Says));
        }

        /// <summary>Spots on the drawn line between two values on the axis across, at parts of the way along it as the eye follows
        /// it.</summary>
        IEnumerable<Point> Along(Line line, double start, double end, params double[] parts)
        {
            const int Steps = 96;
            var spots = new List<Point>();
            for (var i = 0; i <= Steps; i++)
            {
                var x = start + (end - start) * i / Steps;
                if (Reading.Between(line.X.Span, line.Y.Span, x) is { } y && double.IsFinite(y))
                    spots.Add(new(frame.Across(x), frame.Up(y)));
            }

            var way = new double[spots.Count];
            for (var i = 1; i < way.Length; i++)
                way[i] = way[i - 1] + double.Hypot(spots[i].X - spots[i - 1].X, spots[i].Y - spots[i - 1].Y);
            return spots.Count == 0 ? [] : parts.Select(part => spots[Array.FindIndex(way, w => w >= part * way[^1])]);
        }

        void DrawName(Name name, Line? line, List<Point> places)
        {
            if (layout.keyed.Contains((plan.Number, name.Text)))
                return;
            if (name.IsAtEdge)
                atEdge.Add((name, places[0].Y));
            else
                inside.Add((name, line, places));
        }

        void Guides()
        {
            foreach (var level in panel.Levels)
            {
                var y = frame.Up(level.At);
                var line = Stroke.Between(frame.Left, y, frame.Right, y, new(Ink.Quiet, 1.2, Dash.Dashed));
                shapes.Add(line);
                labels.Avoid(line.Path);
            }

            foreach (var guide in layout.chart.Guides.Where(g => g.At >= frame.From && g.At <= frame.To))
            {
                var x = frame.Across(guide.At);
                var line = Stroke.Between(x, frame.Top, x, frame.Bottom, new(Ink.Quiet, 1.2, Dash.Dashed));
                shapes.Add(line);
                labels.Avoid(line.Path);
            }
        }

        void GuideNames()
        {
            if (plan.Number == 0)
            {
                foreach (var guide in layout.chart.Guides.Where(g => g.At >= frame.From && g.At <= frame.To))
                {
                    var (x, text) = (frame.Across(guide.At), guide.Label.In(layout.view.Units));
                    var width = Lettering.WidthOf(text, Size);
                    DrawWords(text, Ink.Quiet,
                        labels.Best(Enumerable.Range(0, (int)((frame.Bottom - frame.Top) / (2 * Half))).SelectMany(row => new[]
                    {
                        At(x + 5, frame.Top - 3 + row * 2 * Half, width),
                        At(x - 5 - width, frame.Top - 3 + row * 2 * Half, width),
                    })));
                }
            }

            foreach (var level in panel.Levels)
            {
                var (y, text) = (frame.Up(level.At), level.Label.In(layout.view.Units));
                var width = Lettering.WidthOf(text, Size);
                var room = frame.Right - frame.Left - width - 8;
                DrawWords(text, Ink.Quiet, labels.Best(new[] { 1.0, 0, 0.5, 0.75, 0.25 }.SelectMany(part => new[]
                {
                    At(frame.Left + 4 + part * room, y - 2 - 2 * Half, width),
                    At(frame.Left + 4 + part * room, y + 2, width),
                })));
            }
        }

        void Dots()
        {
            foreach (var mark in panel.Marks.Where(m => m.X >= frame.From && m.X <= frame.To))
            {
                var spot = new Point(frame.Across(mark.X), frame.Up(mark.Y));
                shapes.Add(Circle.Mark(spot, 3, Ink.Paper, Inks.Hue(mark.Pen)));
                labels.Take(new(spot.X - 4, spot.Y - 4, spot.X + 4, spot.Y + 4));
            }

            GuideNames();
            foreach (var mark in panel.Marks.Where(m => m.X >= frame.From && m.X <= frame.To && !m.Label.IsEmpty))
            {
                var spot = new Point(frame.Across(mark.X), frame.Up(mark.Y));
                var text = mark.Label.In(layout.view.Units);
                Beside([spot], text, Ink.Text, Size, FarthestMark);
            }
        }

        void EdgeNames()
        {
            if (atEdge.Count == 0)
                return;
            var names = atEdge.OrderBy(n => n.Y).ToList();
            var (least, greatest) = (frame.Top + 2, frame.Bottom - 2);
            var places = names.Select(n => Clamp(n.Y, least, greatest)).ToArray();
            // Down until each has its room, then up again from the lower edge.
            for (var i = 1; i < places.Length; i++)
                places[i] = Max(places[i], places[i - 1] + 2 * Half);
            places[^1] = Min(places[^1], greatest);
            for (var i = places.Length - 2; i >= 0; i--)
                places[i] = Min(places[i], places[i + 1] - 2 * Half);
            for (var i = 0; i < places.Length; i++)
            {
                var (name, y) = names[i];
                if (Abs(places[i] - y) > 2)
                    shapes.Add(Stroke.Between(frame.Right, y, frame.Right + 7, places[i], new(name.Pen.Ink, 0.8)));
                shapes.Add(new Words(new(frame.Right + 9, places[i] + LabelShift), name.Text, Size, name.Pen.Ink));
            }
        }

        void InnerNames()
        {
            foreach (var (name, line, places) in inside)
            {
                // Where lines run together a name would stand beside all of them.
                var apart = places.Where(p => IsApart(line, p)).ToList();
                if (!Beside(apart.Count > 0 ? apart : places, name.Text, name.Pen.Ink, Size, FarthestName))
                    layout.keyed.Add((plan.Number, name.Text));
            }

            // Those that find no room are told in the sentences below the chart.
            foreach (var (places, text) in stretches)
                Beside(places, text, Ink.Text, Size - 1, FarthestStretch);
        }

        bool IsApart(Line? line, Point spot)
        {
            var x = frame.ValueAt(spot.X);
            return panel.Series.OfType<Line>().All(other => ReferenceEquals(other, line)
                || Reading.Between(other.X.Span, other.Y.Span, x) is not { } y || !(Abs(frame.Up(y) - spot.Y) < Half));
        }

        bool Beside(IReadOnlyList<Point> places, string text, Ink ink, double size, double farthest)
        {
            if (labels.Near(places, Lettering.WidthOf(text, size), 2 * Half, farthest) is not var (room, spot))
                return false;
            var near = room.NearestTo(spot);
            if (double.Hypot(near.X - spot.X, near.Y - spot.Y) > Labels.WithoutLeader)
                shapes.Add(Stroke.Between(spot.X, spot.Y, near.X, near.Y, new(Ink.Frame, 0.8)));
            DrawWords(text, ink, room, size);
            return true;
        }

        static LabelBox At(double x, double y, double width) => new(x, y, x + width, y + 2 * Half);

        void DrawWords(string text, Ink ink, LabelBox? room, double size = Size)
        {
            if (room is { } box)
                shapes.Add(new Words(new(box.Left, box.Middle.Y + LabelShift), text, size, ink) { HasHalo = true });
        }

        /// <summary>A line as it is drawn: cut to what is seen, thinned out, and in pieces where values are missing.</summary>
        List<Point[]> Runs(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
        {
            var runs = new List<Point[]>();
            for (var start = 0; start < x.Length; start++)
            {
                if (!double.IsFinite(y[start]))
                    continue;
                var end = start;
                while (end < x.Length && double.IsFinite(y[end]))
                    end++;
                if (Seen(x[start..end], y[start..end]) is { Length: > 0 } run)
                    runs.Add(run);
                start = end;
            }

            return runs;
        }

        // A tenth of a pixel cannot be seen, and long lines take a quarter less room.
        static Point Tenths(double x, double y) => new(Round(x, 1), Round(y, 1));

        Point[] Seen(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
        {
            if (x[^1] < frame.From || x[0] > frame.To)
                return [];
            var (first, last) = (0, x.Length - 1);
            while (x[first] < frame.From)
                first++;
            while (x[last] > frame.To)
                last--;
            var spots = new List<Point>();
            if (first > 0 && x[first] > frame.From)
                spots.Add(new(frame.Left, frame.Up(Reading.Between(x, y, frame.From)!.Value)));
            var count = Max(0, last + 1 - first);
            var seenX = x.Slice(first, count);
            var seenY = y.Slice(first, count);
            foreach (var i in Decimation.Reduce(seenX, seenY, frame.From, frame.To, (int)Ceiling(frame.Right - frame.Left)))
                spots.Add(Tenths(frame.Across(seenX[i]), frame.Up(seenY[i])));
            if (last < x.Length - 1 && last >= 0 && x[last] < frame.To)
                spots.Add(new(frame.Right, frame.Up(Reading.Between(x, y, frame.To)!.Value)));
            return [.. spots];
        }
    }
}
