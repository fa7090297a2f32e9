using System.Numerics;

namespace Boardwright.Searches;

/// <summary>How many boards each reason left out.</summary>
sealed class RejectionCounts
{
    readonly Dictionary<string, BigInteger> counts = new(StringComparer.Ordinal);

    /// <summary>Adds boards to a reason.</summary>
    public void Add(string reason, BigInteger boards)
    {
        if (!boards.IsZero)
            counts[reason] = counts.GetValueOrDefault(reason) + boards;
    }

    /// <summary>Adds another tally.</summary>
    public void Add(RejectionCounts other)
    {
        foreach (var (reason, boards) in other.counts)
            Add(reason, boards);
    }

    /// <summary>All boards left out.</summary>
    public BigInteger Sum => counts.Values.Aggregate(BigInteger.Zero, (a, b) => a + b);

    /// <summary>Reasons and boards, the most boards first.</summary>
    public IReadOnlyList<(string Reason, BigInteger Boards)> Sorted =>
        [.. counts.OrderByDescending(c => c.Value).ThenBy(c => c.Key, StringComparer.Ordinal).Select(c => (c.Key, c.Value))];
}
