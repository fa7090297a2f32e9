using System.Runtime.InteropServices;
using Boardwright.Findings;

namespace Boardwright.Road;

/// <summary>How far a profile goes up and how far it goes down, both 0 or more.</summary>
/// <param name="Up">Sum of the rises.</param>
/// <param name="Down">Sum of the falls.</param>
/// <error>
/// An ascent depends on the ruler: every rule counts other wiggles. The raw sum adds up noise and grows without bound as
/// recordings get finer; a threshold leaves out hills lower than itself.
/// </error>
/// <source cref="Sources.CommonPractice"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Ascent(Length Up, Length Down)
{
    /// <summary>Two profiles after one another, the jump between them not counted.</summary>
    public static Ascent operator +(Ascent a, Ascent b) => new(a.Up + b.Up, a.Down + b.Down);

    /// <summary>Every rise and every fall between neighbours, noise included.</summary>
    /// <param name="heights">Heights in m, in order.</param>
    public static Ascent Raw(ReadOnlySpan<double> heights)
    {
        var (up, down) = (0.0, 0.0);
        for (var i = 1; i < heights.Length; i++)
        {
            up += Math.Max(0, heights[i] - heights[i - 1]);
            down += Math.Max(0, heights[i - 1] - heights[i]);
        }

        return Metres(up, down);
    }

    /// <summary>
    /// The rule of many bicycle computers: a reference height follows the profile only when that has left it by more
    /// than the threshold, and those steps are summed.
    /// </summary>
    /// <remarks>The two directions of one road may differ by up to a threshold for each hill.</remarks>
    /// <param name="heights">Heights in m, in order.</param>
    /// <param name="threshold">Height to leave, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The threshold is below 0 or not a number.</exception>
    public static Ascent WithHysteresis(ReadOnlySpan<double> heights, Length threshold)
    {
        RequireThreshold(threshold);
        if (heights.IsEmpty)
            return default;
        var (up, down, reference) = (0.0, 0.0, heights[0]);
        foreach (var height in heights)
        {
            if (height > reference + threshold.Metres)
                up += height - reference;
            else if (height < reference - threshold.Metres)
                down += reference - height;
            else
                continue;
            reference = height;
        }

        return Metres(up, down);
    }

    /// <summary>
    /// From turn to turn: a high or low point counts as a turn when the profile goes back from it by the threshold or more;
    /// the first and the last height count always. Up less down is therefore the difference of the ends, and the same
    /// road the other way has up and down exchanged.
    /// </summary>
    /// <param name="heights">Heights in m, in order.</param>
    /// <param name="threshold">Least height between a turn and the next, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The threshold is below 0 or not a number.</exception>
    public static Ascent BetweenTurns(ReadOnlySpan<double> heights, Length threshold)
    {
        RequireThreshold(threshold);
        if (heights.IsEmpty)
            return default;
        var least = threshold.Metres;
        var (up, down, turn) = (0.0, 0.0, heights[0]);
        var (low, high) = (turn, turn);
        var rising = 0;
        foreach (var height in heights)
        {
            (low, high) = (Math.Min(low, height), Math.Max(high, height));
            if (rising <= 0 && height - low >= least && height > low)
            {
                GoTo(low);
                (rising, high) = (1, height);
            }
            else if (rising >= 0 && high - height >= least && height < high)
            {
                GoTo(high);
                (rising, low) = (-1, height);
            }
        }

        if (rising != 0)
            GoTo(rising > 0 ? high : low);
        GoTo(heights[^1]);
        return Metres(up, down);

        void GoTo(double height)
        {
            up += Math.Max(0, height - turn);
            down += Math.Max(0, turn - height);
            turn = height;
        }
    }

    static Ascent Metres(double up, double down) => new(Length.FromMetres(up), Length.FromMetres(down));

    static void RequireThreshold(Length threshold)
    {
        if (!(threshold.Metres >= 0))
            throw new ArgumentOutOfRangeException(nameof(threshold), threshold, "A threshold is 0 or more.");
    }
}
