using Boardwright.Documents.Charts;
using Boardwright.Findings;
using Boardwright.Spreads;

namespace Boardwright.Documents.Pictures;

/// <summary>Measured over predicted, ride by ride, on the line on which both are the same.</summary>
public static class CredibilityPicture
{
    const int MostNamed = 16;

    /// <summary>The picture of one quantity.</summary>
    /// <param name="credibility">What the rides say of it.</param>
    public static Chart Draw(QuantityCredibility credibility)
    {
        ArgumentNullException.ThrowIfNull(credibility);
        var kind = credibility.Kind;
        var axis = kind.Unit switch { "Wh" => Axis.For<Energy>("", "Wh"), "V" => Axis.For<Voltage>("", "V"), _ => Axis.For<Temperature>("", "°C") };
        double Si(double value) => axis.Dimension.Find(axis.Unit)!.ToSi(value);
        var differences = credibility.Evidence.Select(e => e.Difference).ToArray();
        var ground = differences.Average(d => d.Base);
        var most = 1.08 * (differences.Max(d => Math.Max(d.Predicted, d.Measured)) - ground);
        double[] ends = [Si(ground), Si(ground + most)];
        var series = new List<ChartSeries>();
        if (!double.IsNaN(credibility.Give))
        {
            var (bias, reach) = (credibility.Bias.Value.Value, 1.645 * credibility.Give);
            double[] Edge(double factor) => [Si(ground), Si(ground + most * Math.Max(0, factor))];
            series.Add(new Band("nine rides in ten", ends, Edge(bias * Math.Exp(-reach)), Edge(Math.Min(bias * Math.Exp(reach), 2))) { Pen = 1 });
        }

        series.Add(new Line("as predicted", ends, ends) { Pen = 0 });
        string[] boards = [.. credibility.Evidence.Select(e => e.Board).Distinct(StringComparer.Ordinal)];
        var marks = credibility.Evidence.Select((e, i) => new ChartMark(
            Si(e.Difference.Predicted), Si(e.Difference.Measured),
            // Names tell boards apart without colour; where there are many rides the first of each board is named.
            credibility.Evidence.Count <= MostNamed || credibility.Evidence.Take(i).All(earlier => earlier.Board != e.Board)
            ? new Phrase($"{e.Board}") : default,
            2 + Array.IndexOf(boards, e.Board) % 4));
        return new Chart
        {
            Name = $"credibility-{kind.Id.Split('.')[1]}",
            Title = $"{kind.Title}: measured against predicted",
            Says = new Phrase($"{credibility.Says}"),
            Across = axis with { Says = "predicted" },
            Panels = [new LinePanel(axis with { Says = "measured" }) { Series = series, Marks = [.. marks] }],
        };
    }
}
