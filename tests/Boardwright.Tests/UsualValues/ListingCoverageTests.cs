using System.Text;
using Boardwright.Examinations;
using Boardwright.Spreads;
using static System.FormattableString;

namespace Boardwright.Tests.UsualValues;

/// <summary>Two hundred boards stripped to what listings print: is every figure told, and does the truth lie in its range?</summary>
public sealed class ListingCoverageTests
{
    const int Boards = 200;
    const int Points = 256;

    static readonly string[] Headline =
    [
        "speed.top_full", "climb.grade_at_climb_speed", "cruise.range", "cruise.consumption", "charge.time_full", "mass.board",
    ];

    [Fact]
    public void Every_headline_figure_is_told_and_the_truth_lies_in_its_range_as_often_as_it_says()
    {
        var drawn = new Random(20261129);
        var boards = Enumerable.Range(0, Boards).Select(_ => ListingBoards.Draw(drawn)).ToArray();
        var told = new int[Headline.Length];
        var inside = new int[Headline.Length];
        var (low, high) = (new int[Headline.Length], new int[Headline.Length]);
        var widths = new List<double>[Headline.Length];
        for (var f = 0; f < Headline.Length; f++)
            widths[f] = [];
        foreach (var board in boards)
        {
            var truth = Examination.FiguresOf(board.Real).ToDictionary(f => f.Kind.Id, f => f.Value);
            var listed = Examination.Examine(board.Listed);
            var spread = Spread.Sample(listed, Points, cancellation: TestContext.Current.CancellationToken);
            for (var f = 0; f < Headline.Length; f++)
            {
                var id = Headline[f];
                if (truth[id] is not { } real)
                    Assert.Fail($"{id} of a complete board is not told.");
                else if (listed.Figures.First(k => k.Kind.Id == id).Value is { } value
                    && spread.Intervals.TryGetValue(id, out var interval))
                {
                    told[f]++;
                    widths[f].Add((interval.High - interval.Low) / 2 / value);
                    inside[f] += real >= interval.Low && real <= interval.High ? 1 : 0;
                    low[f] += real < interval.Low ? 1 : 0;
                    high[f] += real > interval.High ? 1 : 0;
                }
            }
        }

        var table = new StringBuilder("figure                        told  inside  below  above  half width\n");
        for (var f = 0; f < Headline.Length; f++)
            table.Append(Invariant($"{Headline[f],-28} {told[f],5} {100.0 * inside[f] / Boards,6:0.0}% {low[f],6} {high[f],6} {100 * widths[f].Order().ElementAt(widths[f].Count / 2),9:0.0} %\n"));

        Approved.Matches("UsualValues/listing-coverage.txt", table.ToString());
        Assert.All(told, count => Assert.Equal(Boards, count));
    }
}
