using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Boardwright.Searches;

/// <summary>A board that was screened: a rolling and a feeding of a field.</summary>
[StructLayout(LayoutKind.Auto)]
readonly record struct Candidate(int Field, int Rolling, int Feeding);

/// <summary>Boards of which none is beaten by another for certain.</summary>
/// <remarks>
/// A screened figure is known to lie between a low and a high end. One board beats another for certain when its low ends are no less than
/// the other's high ends and one of
/// them is more. This is transitive, so which boards stay does not depend on the order in which they came.
/// </remarks>
sealed class Front
{
    /// <summary>Things that boards are compared by.</summary>
    public const int Criteria = (int)Criterion.Spare + 1;

    const int Stride = 8;

    readonly List<Candidate> candidates = [];
    readonly List<bool> sure = [];
    double[] low = new double[64 * Stride];
    double[] high = new double[64 * Stride];

    /// <summary>Boards in it.</summary>
    public int Count => candidates.Count;
    /// <summary>A board of it.</summary>
    public Candidate this[int at] => candidates[at];
    /// <summary>Whether a board is known to meet the brief, and may beat others.</summary>
    public bool IsSure(int at) => sure[at];
    /// <summary>Low ends of a board's figures.</summary>
    public ReadOnlySpan<double> LowOf(int at) => low.AsSpan(at * Stride, Criteria);
    /// <summary>High ends of a board's figures.</summary>
    public ReadOnlySpan<double> HighOf(int at) => high.AsSpan(at * Stride, Criteria);

    /// <summary>Whether a board of the front beats one of these high ends; brings the one that does nearer to the beginning.</summary>
    public bool Beats(ReadOnlySpan<double> highs)
    {
        var by = FirstThatBeats(highs);
        // What beats one board will beat the next ones like it.
        if (by > 0)
            Swap(by, by / 2);
        return by >= 0;
    }

    /// <summary>Whether a board of the front beats one of these high ends; several may ask at once.</summary>
    public bool BeatsAsItIs(ReadOnlySpan<double> highs) => FirstThatBeats(highs) >= 0;

    int FirstThatBeats(ReadOnlySpan<double> highs)
    {
        Span<double> padded = stackalloc double[Stride];
        highs.CopyTo(padded);
        var (first, second) = (Vector256.Create<double>(padded), Vector256.Create<double>(padded[4..]));
        ref var lows = ref MemoryMarshal.GetArrayDataReference(low);
        for (var i = 0; i < candidates.Count; i++)
        {
            var (a, b) = (Vector256.LoadUnsafe(ref lows, (nuint)(i * Stride)), Vector256.LoadUnsafe(ref lows, (nuint)(i * Stride + 4)));
            if (Vector256.GreaterThanOrEqualAll(a, first) && Vector256.GreaterThanOrEqualAll(b, second) && sure[i]
                && (Vector256.GreaterThanAny(a, first) || Vector256.GreaterThanAny(b, second)))
                return i;
        }

        return -1;
    }

    /// <summary>Takes a board in, unless one of the front beats it, and lets go of those that it beats.</summary>
    public bool Take(Candidate candidate, ReadOnlySpan<double> lows, ReadOnlySpan<double> highs, bool isSure)
    {
        if (Beats(highs))
            return false;
        if (isSure)
            LetGo(lows);
        var at = candidates.Count;
        if ((at + 1) * Stride > low.Length)
        {
            Array.Resize(ref low, low.Length * 2);
            Array.Resize(ref high, high.Length * 2);
        }

        candidates.Add(candidate);
        sure.Add(isSure);
        lows.CopyTo(low.AsSpan(at * Stride));
        highs.CopyTo(high.AsSpan(at * Stride));
        return true;
    }

    /// <summary>Takes in every board of another front.</summary>
    public void Take(Front other)
    {
        for (var i = 0; i < other.Count; i++)
            Take(other[i], other.LowOf(i), other.HighOf(i), other.IsSure(i));
    }

    void LetGo(ReadOnlySpan<double> lows)
    {
        for (var i = candidates.Count - 1; i >= 0; i--)
        {
            var (isBeaten, isMore) = (true, false);
            for (var c = 0; c < Criteria && isBeaten; c++)
            {
                var end = high[i * Stride + c];
                isBeaten = lows[c] >= end;
                isMore |= lows[c] > end;
            }

            if (!isBeaten || !isMore)
                continue;
            var last = candidates.Count - 1;
            Swap(i, last);
            candidates.RemoveAt(last);
            sure.RemoveAt(last);
        }
    }

    void Swap(int i, int j)
    {
        if (i == j)
            return;
        (candidates[i], candidates[j]) = (candidates[j], candidates[i]);
        (sure[i], sure[j]) = (sure[j], sure[i]);
        for (var c = 0; c < Criteria; c++)
        {
            (low[i * Stride + c], low[j * Stride + c]) = (low[j * Stride + c], low[i * Stride + c]);
            (high[i * Stride + c], high[j * Stride + c]) = (high[j * Stride + c], high[i * Stride + c]);
        }
    }
}
