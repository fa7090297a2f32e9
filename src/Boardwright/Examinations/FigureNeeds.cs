using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Examinations;

/// <summary>The entries of a board that a figure rests on.</summary>
/// <param name="Kind">The figure.</param>
/// <param name="Needed">Entries without which there is no figure.</param>
/// <param name="Spared">Entries that it uses and can do without: they have a usual value, another stands in for them, or it is then a lower
/// bound.</param>
public sealed record FigureNeeds(FigureKind Kind, IReadOnlyList<string> Needed, IReadOnlyList<string> Spared)
{
    /// <summary>For every figure that a board has; each of its entries is taken away in turn.</summary>
    /// <param name="board">A board of which everything is known that matters.</param>
    public static IReadOnlyList<FigureNeeds> List(Board board)
    {
        ArgumentNullException.ThrowIfNull(board);
        var whole = Examination.FiguresOf(board);
        var keys = board.KnownKeys().ToList();
        var still = keys.ToDictionary(key => key, key => IdsOf(Examination.FiguresOf(board.Without(key))), StringComparer.Ordinal);
        return [.. whole.Select(figure =>
        {
            var named = EntriesOf(whole, figure.Kind.Id);
            var used = keys.Where(named.Contains).ToLookup(key => still[key].Contains(figure.Kind.Id));
            return new FigureNeeds(figure.Kind, [.. used[false]], [.. used[true]]);
        })];
    }

    static HashSet<string> IdsOf(IReadOnlyList<Figure> figures) =>
        figures.Where(f => f.Missing.Count == 0).Select(f => f.Kind.Id).ToHashSet(StringComparer.Ordinal);

    /// <summary>Every entry that a figure rests on, those of the figures it quotes included.</summary>
    public static IReadOnlySet<string> EntriesOf(IReadOnlyList<Figure> figures, string id)
    {
        ArgumentNullException.ThrowIfNull(figures);
        return Follow(figures, figures.FirstOrDefault(f => f.Kind.Id == id)?.From ?? []).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>Keys and ids with all that the figures among them rest on, each once, in the order in which they are met.</summary>
    internal static IReadOnlyList<string> Follow(IReadOnlyList<Figure> figures, IEnumerable<string> from)
    {
        HashSet<string> seen = new(StringComparer.Ordinal);
        List<string> met = [];
        Add(from);
        return met;

        void Add(IEnumerable<string> keys)
        {
            foreach (var key in keys.Where(seen.Add))
            {
                met.Add(key);
                // A limit has the name of the entry that sets it.
                Add(figures.FirstOrDefault(f => f.Kind.Id == key)?.From ?? []);
            }
        }
    }
}
