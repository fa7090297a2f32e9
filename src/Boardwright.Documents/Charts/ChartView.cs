using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Charts;

/// <summary>How a chart is looked at: how wide, in which units, and which part of it.</summary>
/// <param name="Width">Width of the sheet, CSS pixels, at least 240.</param>
public sealed record ChartView(double Width)
{
    /// <summary>Least width that leaves room for a chart.</summary>
    public const double LeastWidth = 240;
    /// <summary>Units of axes and labels.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Metric;
    /// <summary>Height of a panel with a share of 1; <c>null</c> for what suits the width.</summary>
    public double? PanelHeight { get; init; }
    /// <summary>Start of the part to be seen on the axis across, SI; <c>null</c> for its beginning.</summary>
    public double? From { get; init; }
    /// <summary>End of the part to be seen; <c>null</c> for its end.</summary>
    public double? To { get; init; }
}

/// <summary>A chart laid out.</summary>
/// <param name="Drawing">What is drawn.</param>
/// <param name="Frames">Where its line panels are, from the top down, for a pointer that reads values.</param>
public sealed record PlacedChart(Drawing Drawing, IReadOnlyList<Frame> Frames);

/// <summary>Where a line panel's field is on the sheet, and which values its edges have.</summary>
/// <param name="Panel">Number of the panel in the chart.</param>
/// <param name="Left">Left edge.</param>
/// <param name="Top">Upper edge.</param>
/// <param name="Right">Right edge.</param>
/// <param name="Bottom">Lower edge.</param>
/// <param name="From">Value at the left edge, SI.</param>
/// <param name="To">Value at the right edge, SI.</param>
/// <param name="Low">Value at the lower edge, SI.</param>
/// <param name="High">Value at the upper edge, SI.</param>
public sealed record Frame(int Panel, double Left, double Top, double Right, double Bottom, double From, double To, double Low, double High)
{
    /// <summary>Where a value on the axis across is on the sheet.</summary>
    public double Across(double value) => Left + (value - From) / (To - From) * (Right - Left);
    /// <summary>Where a value on the axis upwards is on the sheet.</summary>
    public double Up(double value) => Bottom - (value - Low) / (High - Low) * (Bottom - Top);
    /// <summary>Which value on the axis across is at a place on the sheet.</summary>
    public double ValueAt(double x) => From + (x - Left) / (Right - Left) * (To - From);
}

/// <summary>What a line reads at one place of the axis across.</summary>
/// <param name="Panel">Number of the panel.</param>
/// <param name="Name">Name of the line.</param>
/// <param name="Value">Its value, SI; of a band the middle.</param>
/// <param name="Text">The value with its unit; of a band both ends.</param>
public sealed record Reading(int Panel, string Name, double Value, string Text)
{
    /// <summary>What all lines of a chart read at a place; lines that do not reach it are left out.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="x">The place on the axis across, SI.</param>
    /// <param name="units">Units of the text.</param>
    public static IReadOnlyList<Reading> At(Chart chart, double x, UnitSystem units)
    {
        var readings = new List<Reading>();
        for (var i = 0; i < chart.Panels.Count; i++)
        {
            if (chart.Panels[i] is not LinePanel panel)
                continue;
            var unit = panel.Up.UnitIn(units);
            foreach (var series in panel.Series)
            {
                if (series is Line line && Between(line.X.Span, line.Y.Span, x) is { } value && double.IsFinite(value))
                    readings.Add(new Reading(i, line.Name, value, With(unit, Figures(value))));
                else if (series is Band band && Between(band.X.Span, band.Low.Span, x) is { } low
                    && Between(band.X.Span, band.High.Span, x) is { } high && double.IsFinite(low + high))
                    readings.Add(new Reading(
                        i, band.Name, (low + high) / 2, With(unit, Figures(low) == Figures(high) ? Figures(low) : $"{Figures(low)} to {Figures(high)}")));
            }

            string Figures(double si) => Dimension.Figures(unit.FromSi(si));
        }

        return readings;

        static string With(Unit unit, string number) => $"{number} {Axis.SymbolOf(unit)}".TrimEnd();
    }

    internal static double? Between(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double at)
    {
        if (x.Length == 0 || !(at >= x[0]) || !(at <= x[^1]))
            return null;
        var found = x.BinarySearch(at);
        if (found >= 0)
            return y[found];
        var next = ~found;
        return y[next - 1] + (y[next] - y[next - 1]) * (at - x[next - 1]) / (x[next] - x[next - 1]);
    }
}
