using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.UsualValues;

namespace Boardwright.Spreads;

/// <summary>How well each figure is known: the inputs' spreads, independent and normal, carried through the whole examination.</summary>
/// <remarks>5 % and 95 % quantiles of each figure, and the inputs whose ranks go most closely with the figure's; see
/// <see cref="Sampling"/>.</remarks>
/// <param name="Intervals">Intervals of all figures that are known, by id.</param>
/// <param name="MeasureNext">What to measure next, in order of how much it would narrow the figures that the brief cares about: range, top
/// speed, climb, and how hot the climb makes the windings. A figure counts when the brief wants something of it; all of them do where it
/// wants nothing.</param>
/// <validity>As <see cref="Sampling"/>.</validity>
/// <error>As <see cref="Sampling"/>.</error>
/// <source cref="Sources.QuasiMonteCarlo"/>
public sealed record Spread(IReadOnlyDictionary<string, Interval> Intervals, IReadOnlyList<Measurement> MeasureNext)
{
    /// <summary>The findings of the board; one that is fine only while a usual value is right asks for that value.</summary>
    /// <remarks>Tried when they are first asked for.</remarks>
    public IReadOnlyList<Finding> Findings => Tried.Value;

    Lazy<IReadOnlyList<Finding>> Tried { get; init; } = new([]);

    /// <summary>Default number of points.</summary>
    public const int DefaultPoints = 256;

    /// <summary>Samples boards like one, once for everything that is said of them.</summary>
    /// <param name="examination">The board as it stands.</param>
    /// <param name="points">Number of points; a power of two spreads them best.</param>
    /// <param name="seed">Seed of the scrambling.</param>
    /// <param name="cancellation">Stops the work between two points.</param>
    public static Spread Sample(
        Examination examination, int points = DefaultPoints, ulong seed = 1, CancellationToken cancellation = default)
    {
        var cared = CaredFor(examination.Board.Brief);
        var (figures, sampling) = Sampled(examination, points, seed, cancellation);
        return new(
            figures.Select((f, i) => (f.Kind.Id,
            Interval: ModelSpread.Over(examination.Board, f.Kind.Id, f.Value!.Value, sampling.IntervalOf(i, f.Value!.Value))))
            .ToDictionary(p => p.Id, p => p.Interval, StringComparer.Ordinal),
            sampling.MeasureNext([.. figures.Select((f, i) => (Index: i, f.Kind.Id))
            .Where(f => cared.Contains(f.Id, StringComparer.Ordinal))]))
        {
            Tried = new(() => UsualTrial.Try(examination, cancellation)),
        };
    }

    /// <summary>Where the value of an entry comes from; a maker where the file does not say; a usual value where it states
    /// none.</summary>
    /// <param name="board">The board, its entries named.</param>
    /// <param name="key">Dotted key of the entry.</param>
    public static Origin OriginOf(Board board, string key)
    {
        ArgumentNullException.ThrowIfNull(board);
        return Find(UsualTable.Complete(board)) ?? Origin.Maker;

        Origin? Find(Sheet sheet)
        {
            foreach (var entry in Entry.ListEntries(sheet.GetType()))
            {
                switch (entry.Read(sheet))
                {
                    case Sheet inner when Find(inner) is { } found:
                        return found;
                    case IEnumerable<Sheet> list when list.Select(Find).FirstOrDefault(f => f is not null) is { } found:
                        return found;
                    case IKnown { IsKnown: true } known when known.Key == key:
                        return known.From ?? Origin.Maker;
                }
            }

            return null;
        }
    }

    static List<string> CaredFor(Brief brief)
    {
        (bool IsWanted, string Id)[] all =
        [
            (brief.RangeWanted.IsKnown, Catalogue.Range.Id),
            (brief.TopSpeedWanted.IsKnown, Catalogue.TopFull.Id),
            (brief.ClimbWanted.IsKnown, Catalogue.Grade.Id),
            (brief.ClimbWanted.IsKnown, Catalogue.Winding.Id),
        ];
        var wanted = all.Where(f => f.IsWanted).Select(f => f.Id).ToList();
        return wanted.Count > 0 ? wanted : [.. all.Select(f => f.Id)];
    }

    static (Figure[] Figures, Sampling Sampling) Sampled(Examination examination, int points, ulong seed, CancellationToken cancellation)
    {
        var board = examination.Board;
        var figures = examination.Figures.Where(f => f.Value is not null).ToArray();
        var order = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var f = 0; f < figures.Length; f++)
            order[figures[f].Kind.Id] = f;
        return (figures, new Sampling(
            board, figures.SelectMany(f => f.From), figures.Length, Row, points, seed, cancellation: cancellation));

        IReadOnlyList<double?> Row(Board moved)
        {
            var row = new double?[figures.Length];
            foreach (var figure in Examination.FiguresOf(moved))
            {
                if (order.TryGetValue(figure.Kind.Id, out var f))
                    row[f] = figure.Value;
            }

            return row;
        }
    }
}
