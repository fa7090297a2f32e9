using Boardwright.Documents.Charts;
using Boardwright.Searches;

namespace Boardwright.Documents.Pictures;

/// <summary>Boards that a search found, by any two of the things they are compared by: what one costs in the other.</summary>
public static class TradePicture
{
    /// <summary>What can be traded, by the words of the command line.</summary>
    public static IReadOnlyList<string> Words { get; } = [.. Enum.GetValues<Criterion>().Select(c => Parts.Entry.Word(c))];

    /// <summary>Of a result.</summary>
    /// <param name="result">The result.</param>
    /// <param name="across">What grows from left to right.</param>
    /// <param name="up">What grows upwards.</param>
    /// <param name="named">Boards whose numbers stand beside them.</param>
    /// <returns>The chart, or <c>null</c> when nothing was found.</returns>
    public static Chart? Draw(SearchResult result, Criterion across, Criterion up, IReadOnlyList<FoundBoard> named)
    {
        ArgumentNullException.ThrowIfNull(result);
        var boards = result.Boards.Index()
            .Select(b => (Number: b.Index + 1, Board: b.Item, X: ValueOf(b.Item, across), Y: ValueOf(b.Item, up))).OrderBy(b => b.X)
            .ToList();
        if (boards.Count == 0)
            return null;
        // The edge: boards that no other beats in these two things alone.
        var edge = boards.Where(b => !boards.Exists(o => IsBetter(o.Board, b.Board, across, up))).ToList();
        var currency = result.Boards[0].Price?.Currency ?? "";
        return new Chart
        {
            Name = "trade",
            Title = $"{result.Request.Board.Name.Or("Boards")}: {Parts.Entry.Word(up)} against {Parts.Entry.Word(across)}",
            Says = new($"{boards.Count} boards, none of which another beats in everything; along the line none beats another in these two things alone. Numbers are those of the table."),
            Across = AxisOf(across, currency),
            Panels =
            [
                new LinePanel(AxisOf(up, currency))
                {
                    Series = [new Line("best for both", edge.Select(b => b.X).ToArray(), edge.Select(b => b.Y).ToArray())],
                    Marks = [.. boards.Select(
                        b => new ChartMark(b.X, b.Y, named.Contains(b.Board) ? new Phrase($"{b.Number}") : default,
                        named.Contains(b.Board) ? 0 : 3))],
                },
            ],
        };
    }

    /// <summary>A criterion's value as it is shown, SI.</summary>
    public static double ValueOf(FoundBoard board, Criterion criterion)
    {
        ArgumentNullException.ThrowIfNull(board);
        return criterion switch
        {
            Criterion.Range => board.Range ?? 0,
            Criterion.Climb => board.Climb ?? 0,
            Criterion.Speed => board.TopSpeed ?? 0,
            Criterion.Mass => board.Mass ?? 0,
            Criterion.Price => (double)(board.Price?.Amount ?? 0),
            _ => board.Spare ?? 0,
        };
    }

    static Axis AxisOf(Criterion criterion, string currency) => criterion switch
    {
        Criterion.Range => Axis.For<Length>("range", "km"),
        Criterion.Climb => Axis.For<Fraction>("steepest climb", "%"),
        Criterion.Speed => Axis.For<Speed>("top speed", "km/h"),
        Criterion.Mass => Axis.For<Mass>("mass", "kg"),
        Criterion.Price => Axis.For<Number>($"price, {currency}"),
        _ => Axis.For<Fraction>("spare", "%"),
    };

    static bool IsBetter(FoundBoard one, FoundBoard other, Criterion across, Criterion up) =>
        one.Merit(across) >= other.Merit(across) && one.Merit(up) >= other.Merit(up)
        && (one.Merit(across) > other.Merit(across) || one.Merit(up) > other.Merit(up));
}
