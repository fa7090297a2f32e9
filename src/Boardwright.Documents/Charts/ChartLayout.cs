using Boardwright.Documents.Drawings;
using static System.Math;

namespace Boardwright.Documents.Charts;

/// <summary>Lays a chart out: where axes, ticks, lines and labels go at a given width.</summary>
/// <remarks>
/// Series are named where they end; a name that finds no room stands in a key above the panel, with a piece of its line.
/// The same chart and view give the same drawing.
/// </remarks>
public sealed partial class ChartLayout
{
    const double Margin = 12, Size = 12, Half = 7.5, TitleSize = 15, NoteLine = 16, HeadingLine = 25, KeyLine = 18, BarLine = 24,
        TickRoom = 20, Gap = 14;
    const double LabelShift = 4.2;

    // A column of names wider than this leaves too little room for what they name.
    const double WidestNames = 0.24;

    readonly Chart chart;
    readonly ChartView view;
    readonly List<Shape> shapes = [];
    readonly List<Frame> frames = [];
    readonly HashSet<(int Panel, string Name)> keyed = [];
    readonly Unit across;
    readonly double from, to;
    double left, right;

    ChartLayout(Chart chart, ChartView view)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(view.Width, ChartView.LeastWidth, nameof(view));
        (this.chart, this.view) = (chart, view);
        across = chart.Across.UnitIn(view.Units);
        (from, to) = Reach();
    }

    /// <summary>Lays a chart out.</summary>
    public static PlacedChart Compute(Chart chart, ChartView view)
    {
        var layout = new ChartLayout(chart, view);
        Drawing drawing;
        int before;
        do
        {
            // A name without room goes to the key, which moves everything below it: once more from the top.
            before = layout.keyed.Count;
            drawing = layout.Draw();
        }
        while (layout.keyed.Count > before);
        return new PlacedChart(drawing, layout.frames);
    }

    Drawing Draw()
    {
        shapes.Clear();
        frames.Clear();
        var plans = chart.Panels.Select((panel, i) => PanelPlan.Create(this, panel, i)).ToList();
        left = Margin + plans.Max(p => p.LeftRoom);
        var names = plans.Max(p => p.NamesRoom);
        right = view.Width - Margin - (names > 0 ? names + 10 : 10);
        var y = Margin;
        foreach (var line in Lettering.Wrapped(chart.Title, view.Width - 2 * Margin, TitleSize, isBold: true))
        {
            y += TitleSize + 3;
            shapes.Add(new Words(new(Margin, y - 3), line, TitleSize, Ink.Text) { IsBold = true });
        }

        y += 8;
        var (ticks, step) = AcrossTicks();
        for (var i = 0; i < plans.Count; i++)
        {
            var isLast = i == plans.Count - 1;
            y = plans[i].Panel switch
            {
                LinePanel panel => LineField(plans[i], panel, i, y, ticks),
                BarPanel panel => BarField(plans[i], panel, y, ticks),
                _ => y,
            };
            if (!isLast)
                y += Gap;
        }

        y += TickRoom - 4;
        foreach (var tick in ticks)
            shapes.Add(new Words(new(X(across.ToSi(tick)), y), Ticks.Write(tick, step), Size, Ink.Quiet) { Anchor = Anchor.Middle });
        y += NoteLine + 2;
        shapes.Add(new Words(new((left + right) / 2, y), chart.Across.HeadingIn(view.Units), Size, Ink.Quiet) { Anchor = Anchor.Middle });
        var says = chart.Says.IsEmpty ? "" : chart.Says.In(view.Units);
        if (says.Length > 0)
            y += 8;
        // Long lines are hard to follow, however wide the sheet is.
        foreach (var line in Lettering.Wrapped(says, Min(view.Width - 2 * Margin, 720), Size))
        {
            y += NoteLine;
            shapes.Add(new Words(new(Margin, y), line, Size, Ink.Quiet));
        }

        return new Drawing(view.Width, Ceiling(y + Margin), chart.Name, chart.Title, says.Length > 0 ? says : chart.Title, [.. shapes]);
    }

    (IReadOnlyList<double> Ticks, double Step) AcrossTicks()
    {
        var (low, high) = (across.FromSi(from), across.FromSi(to));
        var most = (int)Clamp((right - left) / 64, 2, 12);
        var step = Ticks.Step(high - low, most, across.Symbol is "min" or "s");
        return (Ticks.Between(low, high, step), step);
    }

    double X(double value) => left + (value - from) / (to - from) * (right - left);

    double LineField(PanelPlan plan, LinePanel panel, int number, double y, IReadOnlyList<double> ticks)
    {
        var baseline = y + Size;
        shapes.Add(new Words(new(Margin, baseline), panel.Up.HeadingIn(view.Units), Size, Ink.Quiet));
        y += HeadingLine;
        y = Key(plan, y);
        var frame = new Frame(number, left, y, right, y + plan.Height, from, to, plan.Low, plan.High);
        frames.Add(frame);
        foreach (var tick in ticks)
            shapes.Add(Stroke.Between(X(across.ToSi(tick)), frame.Top, X(across.ToSi(tick)), frame.Bottom + 4, new(Ink.Grid, 1)));
        foreach (var tick in plan.Ticks)
        {
            var at = frame.Up(plan.Unit.ToSi(tick));
            shapes.Add(Stroke.Between(frame.Left, at, frame.Right, at, new(tick == 0 && plan.Low < 0 ? Ink.Frame : Ink.Grid, 1)));
            shapes.Add(new Words(new(frame.Left - 6, at + LabelShift), Ticks.Write(tick, plan.Step), Size,
                Ink.Quiet)
            { Anchor = Anchor.End });
        }

        new PlotArea(this, plan, panel, frame).Fill();
        shapes.Add(Stroke.Between(frame.Left, frame.Bottom, frame.Right, frame.Bottom, new(Ink.Frame, 1)));
        return frame.Bottom;
    }

    double Key(PanelPlan plan, double y)
    {
        const double Sample = 26, Before = 5, After = 16;
        var x = Margin;
        var isEmpty = true;
        foreach (var name in plan.Names.Where(n => keyed.Contains((plan.Number, n.Text))))
        {
            var width = Sample + Before + Lettering.WidthOf(name.Text, Size);
            if (x > Margin && x + width > view.Width - Margin)
            {
                x = Margin;
                y += KeyLine;
            }

            isEmpty = false;
            var middle = y + Size / 2;
            if (name.Fill is { } fill)
                shapes.Add(Patch.Rectangle(x, middle - 5, x + Sample, middle + 5, fill));
            shapes.Add(Stroke.Between(
                x, name.Fill is null ? middle : middle - 5, x + Sample, name.Fill is null ? middle : middle - 5, name.Pen));
            shapes.Add(new Words(new(x + Sample + Before, middle + LabelShift), name.Text, Size, Ink.Text));
            x += width + After;
        }

        return isEmpty ? y : y + KeyLine + 2;
    }

    double BarField(PanelPlan plan, BarPanel panel, double y, IReadOnlyList<double> ticks)
    {
        y += 4;
        var bottom = y + panel.Bars.Count * BarLine + 6;
        foreach (var tick in ticks)
            shapes.Add(Stroke.Between(X(across.ToSi(tick)), y, X(across.ToSi(tick)), bottom + 4, new(tick == 0 ? Ink.Frame : Ink.Grid, 1)));
        foreach (var guide in chart.Guides.Where(g => g.At >= from && g.At <= to))
            shapes.Add(Stroke.Between(X(guide.At), y, X(guide.At), bottom, new(Ink.Quiet, 1.2, Dash.Dashed)));
        for (var i = 0; i < panel.Bars.Count; i++)
        {
            var bar = panel.Bars[i];
            var (top, middle) = (y + i * BarLine + 5, y + i * BarLine + 5 + BarLine / 2 - 3);
            var (start, end) = (X(Min(bar.From, bar.To)), X(Max(bar.From, bar.To)));
            var low = top + BarLine - 6;
            shapes.Add(new Words(new(left - 8, middle + LabelShift), bar.Name, Size, Ink.Text) { Anchor = Anchor.End, IsBold = bar.IsSum });
            shapes.Add(Patch.Rectangle(start, top, end, low, bar.IsSum ? Ink.Grid : Inks.Wash(bar.Kind)));
            var rim = new Pen(bar.IsSum ? Ink.Frame : Inks.Hue(bar.Kind), 1.2);
            shapes.Add(new Stroke(new Point[] { new(start, top), new(end, top), new(end, low), new(start, low), new(start, top) }, rim));
            // From the end of this bar to the beginning of the next, so that the eye adds them up.
            if (i + 1 < panel.Bars.Count)
                shapes.Add(Stroke.Between(X(bar.To), low, X(bar.To), low + 6, new(Ink.Frame, 1)));
            var amount = bar.Amount.In(view.Units);
            var width = Lettering.WidthOf(amount, Size, bar.IsSum) + 8;
            var (x, anchor) = plan.HasAmountsApart ? (view.Width - Margin, Anchor.End)
                : end + width <= right + 8 ? (end + 6, Anchor.Start)
                : start - width >= left ? (start - 6, Anchor.End)
                : (end - 6, Anchor.End);
            shapes.Add(new Words(new(x, middle + LabelShift), amount, Size, Ink.Text)
            {
                Anchor = anchor,
                IsBold = bar.IsSum,
                HasHalo = !bar.IsSum
            });
        }

        shapes.Add(Stroke.Between(left, bottom, right, bottom, new(Ink.Frame, 1)));
        return bottom;
    }

    (double From, double To) Reach()
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        void Meet(double? value)
        {
            if (value is { } v && double.IsFinite(v))
                (low, high) = (Min(low, v), Max(high, v));
        }

        foreach (var panel in chart.Panels)
        {
            if (panel is BarPanel bars)
            {
                foreach (var bar in bars.Bars)
                {
                    Meet(bar.From);
                    Meet(bar.To);
                }
            }

            foreach (var series in (panel as LinePanel)?.Series ?? [])
            {
                if (series.X.Length > 0)
                {
                    Meet(series.X.Span[0]);
                    Meet(series.X.Span[^1]);
                }
            }

            foreach (var mark in (panel as LinePanel)?.Marks ?? [])
                Meet(mark.X);
        }

        foreach (var guide in chart.Guides)
            Meet(guide.At);
        Meet(chart.Across.From);
        Meet(chart.Across.To);
        (low, high) = (view.From ?? low, view.To ?? high);
        if (!double.IsFinite(low) || !double.IsFinite(high))
            return (0, 1);
        return high > low ? (low, high) : (low - 0.5, low + 0.5);
    }
}
