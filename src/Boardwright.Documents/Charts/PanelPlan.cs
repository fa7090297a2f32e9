using Boardwright.Documents.Drawings;
using static System.Math;

namespace Boardwright.Documents.Charts;

/// <content>What a panel needs before anything is placed.</content>
public sealed partial class ChartLayout
{
    /// <summary>A name that a panel shows, with what it names.</summary>
    /// <param name="Text">The name.</param>
    /// <param name="Pen">Pen of its line.</param>
    /// <param name="Fill">Fill of its area.</param>
    /// <param name="IsAtEdge">Whether what it names reaches the right edge.</param>
    sealed record Name(string Text, Pen Pen, Ink? Fill, bool IsAtEdge);

    /// <summary>Room and range of a panel.</summary>
    sealed class PanelPlan
    {
        const double ThinWidth = 1.2, MainWidth = 1.9;
        const double NearEdge = 0.1, Headroom = 0.3;

        PanelPlan(Panel panel, int number) => (Panel, Number) = (panel, number);

        public Panel Panel { get; }

        public int Number { get; }

        public double LeftRoom { get; private set; }

        public double NamesRoom { get; private set; }

        /// <summary>Whether the amounts of bars stand in a column of their own, since one of them finds no room beside its bar.</summary>
        public bool HasAmountsApart { get; private set; }

        public double Height { get; private set; }

        public double Low { get; private set; }

        public double High { get; private set; } = 1;

        public Unit Unit { get; private set; } = new("", 1);

        public double Step { get; private set; } = 1;

        public IReadOnlyList<double> Ticks { get; private set; } = [];

        public IReadOnlyList<Name> Names { get; private set; } = [];

        public static PanelPlan Create(ChartLayout layout, Panel panel, int number)
        {
            var plan = new PanelPlan(panel, number);
            if (panel is BarPanel bars)
                plan.Read(layout, bars);
            else if (panel is LinePanel lines)
                plan.Read(layout, lines);
            return plan;
        }

        void Read(ChartLayout layout, BarPanel panel)
        {
            LeftRoom = panel.Bars.Select(b => Lettering.WidthOf(b.Name, Size, b.IsSum)).DefaultIfEmpty(0).Max() + 8;
            var room = layout.view.Width - 2 * Margin - 10 - LeftRoom;
            var widest = 0.0;
            foreach (var bar in panel.Bars)
            {
                double At(double value) => (value - layout.from) / (layout.to - layout.from) * room;
                var width = Lettering.WidthOf(bar.Amount.In(layout.view.Units), Size, bar.IsSum) + 8;
                widest = Max(widest, width);
                HasAmountsApart |= !bar.IsSum && At(Max(bar.From, bar.To)) + width > room + 8 && At(Min(bar.From, bar.To)) < width;
            }

            NamesRoom = HasAmountsApart ? widest : 0;
        }

        void Read(ChartLayout layout, LinePanel panel)
        {
            var width = layout.view.Width;
            var usual = layout.chart.Panels.Count == 1 ? Clamp(0.5 * width, 220, 360) : Clamp(0.2 * width, 92, 140);
            Height = Round((layout.view.PanelHeight ?? usual) * panel.Share);
            Unit = panel.Up.UnitIn(layout.view.Units);
            Range(layout, panel);
            LeftRoom = Ticks.Max(t => Lettering.WidthOf(Charts.Ticks.Write(t, Step), Size)) + 8;
            Names = [.. NamesOf(layout, panel)];
            var widest = Names.Where(n => n.IsAtEdge).Select(n => Lettering.WidthOf(n.Text, Size)).DefaultIfEmpty(0).Max();
            var edge = Names.Where(n => n.IsAtEdge).ToList();
            if (widest > WidestNames * width || edge.Count * 2 * Half > Height)
            {
                foreach (var name in edge)
                    layout.keyed.Add((Number, name.Text));
            }

            NamesRoom = edge.Where(n => !layout.keyed.Contains((Number, n.Text))).Select(n => Lettering.WidthOf(n.Text, Size))
                .DefaultIfEmpty(0).Max();
        }

        static IEnumerable<Name> NamesOf(ChartLayout layout, LinePanel panel)
        {
            bool Reaches(ReadOnlyMemory<double> x) => x.Length > 0 && x.Span[^1] >= layout.to - 0.004 * (layout.to - layout.from);
            var place = 0;
            foreach (var series in panel.Series)
            {
                switch (series)
                {
                    case Line line:
                        yield return new(line.Name, PenOf(line, place++), null, Reaches(line.X) && double.IsFinite(line.Y.Span[^1]));
                        break;
                    case Band band:
                        var hue = band.Pen ?? place++;
                        yield return new(band.Name, Pen.Create(hue, ThinWidth), Inks.Wash(hue), Reaches(band.X));
                        break;
                    case LayeredPanel stack:
                        foreach (var layer in stack.Layers)
                        {
                            yield return new(layer.Name, Pen.Create(place, ThinWidth) with { Dash = Dash.Solid }, Inks.Wash(place),
                                Reaches(stack.X));
                            place++;
                        }

                        break;
                }
            }
        }

        static Pen PenOf(Line line, int place) => Pen.Create(line.Pen ?? place, line.IsThin ? ThinWidth : MainWidth);

        void Range(ChartLayout layout, LinePanel panel)
        {
            var (low, high) = Extent(layout, panel);
            if (!(low <= high))
                (low, high) = (Unit.ToSi(0), Unit.ToSi(1));
            var (least, greatest) = (Unit.FromSi(low), Unit.FromSi(high));
            var pad = Max(Abs(least), Abs(greatest)) is var size and > 0 ? 0.02 * size : 0.5;
            if (greatest - least < 1e-9 * pad)
                (least, greatest) = (least - pad, greatest + pad);
            Step = Charts.Ticks.Step(greatest - least, (int)Clamp(Height / 34, 2, 8), Unit.Symbol is "min" or "s");
            // Out to the next round numbers, so that no line runs along the edge of the paper.
            var (bottom, top) = (Step * Floor(least / Step + 1e-6), Step * Ceiling(greatest / Step - 1e-6));
            Ticks = Charts.Ticks.Between(bottom, top, Step);
            if (least - bottom < NearEdge * Step && least != Unit.FromSi(panel.Up.From ?? double.NaN))
                bottom -= Headroom * Step;
            if (top - greatest < NearEdge * Step && greatest != Unit.FromSi(panel.Up.To ?? double.NaN))
                top += Headroom * Step;
            (Low, High) = (Unit.ToSi(bottom), Unit.ToSi(top));
        }

        // The least and the greatest value that has to be seen.
        static (double Low, double High) Extent(ChartLayout layout, LinePanel panel)
        {
            var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
            void Meet(double value)
            {
                if (double.IsFinite(value))
                    (low, high) = (Min(low, value), Max(high, value));
            }

            void MeetAll(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
            {
                for (var i = 0; i < x.Length; i++)
                {
                    if (x[i] >= layout.from && x[i] <= layout.to)
                        Meet(y[i]);
                }

                Meet(Reading.Between(x, y, layout.from) ?? double.NaN);
                Meet(Reading.Between(x, y, layout.to) ?? double.NaN);
            }

            foreach (var series in panel.Series)
            {
                switch (series)
                {
                    case Line line:
                        MeetAll(line.X.Span, line.Y.Span);
                        break;
                    case Band band:
                        MeetAll(band.X.Span, band.Low.Span);
                        MeetAll(band.X.Span, band.High.Span);
                        break;
                    case LayeredPanel stack:
                        Meet(0);
                        MeetAll(stack.X.Span, Heaped(stack)[^1].Span);
                        break;
                }
            }

            foreach (var level in panel.Levels)
                Meet(level.At);
            foreach (var mark in panel.Marks)
                Meet(mark.Y);
            Meet(panel.Up.From ?? double.NaN);
            Meet(panel.Up.To ?? double.NaN);
            return (low, high);
        }
    }

    /// <summary>Upper edges of the layers of a stack, the lowest first.</summary>
    static List<ReadOnlyMemory<double>> Heaped(LayeredPanel stack)
    {
        var edges = new List<ReadOnlyMemory<double>>();
        var below = new double[stack.X.Length];
        foreach (var layer in stack.Layers)
        {
            var edge = new double[stack.X.Length];
            for (var i = 0; i < edge.Length; i++)
                edge[i] = below[i] + layer.Y.Span[i];
            edges.Add(edge);
            below = edge;
        }

        return edges.Count > 0 ? edges : [below];
    }
}
