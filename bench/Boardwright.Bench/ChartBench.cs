using BenchmarkDotNet.Attributes;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;

namespace Boardwright.Bench;

/// <summary>Four lines of 20,000 points each, as a long ride has them, from definition to SVG; 50 ms is the most that a page may wait for
/// it.</summary>
[MemoryDiagnoser]
public class ChartBench
{
    const int Lines = 4, Points = 20_000;

    readonly Chart chart = CreateChart();

    /// <summary>Laid out alone.</summary>
    [Benchmark]
    public PlacedChart Layout() => ChartLayout.Compute(chart, new ChartView(900));
    /// <summary>Laid out and written.</summary>
    [Benchmark(Baseline = true)]
    public string LayoutAndSvg() => Svg.Write(ChartLayout.Compute(chart, new ChartView(900)).Drawing);

    static Chart CreateChart()
    {
        var seconds = Enumerable.Range(0, Points).Select(i => i * 0.25).ToArray();
        return new Chart
        {
            Name = "four",
            Title = "Four lines",
            Across = Axis.For<Duration>("time", "min"),
            Panels = [new LinePanel(Axis.For<Power>("power", "W")) { Series =
                [.. Enumerable.Range(0, Lines).Select(k => new Line($"line {k}", seconds, Walk(k)))] }],
        };
    }

    // A walk that is the same each time: the bits of a linear congruence decide up or down.
    static double[] Walk(int line)
    {
        var values = new double[Points];
        var state = (uint)line + 1;
        var value = 1000.0 * line;
        for (var i = 0; i < Points; i++)
        {
            state = unchecked(state * 1664525 + 1013904223);
            value += (state >> 16) / 6553.6 - 5;
            values[i] = value;
        }

        return values;
    }
}
