using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Road;

/// <summary>
/// How the noise of recorded heights is taken out. The recorded points are joined by straight lines and read at equal
/// steps along the distance; at each step the height of a straight line, fitted by weighted least squares to the heights
/// around it, is taken. The weight falls linearly from 1 at the step to 0 at half the smoothing length from it.
/// Between the steps the filtered profile is straight.
/// </summary>
/// <remarks>
/// A constant grade passes unchanged, also at the ends, where the line is fitted to one side only. Far from the ends a
/// wave of length L keeps sinc²(W/2L) of its height, sinc(x) = sin(πx)/πx: of 500 m 97 %, of 200 m 81 %, of 100 m 41 % at
/// the usual W = 100 m.
/// </remarks>
/// <validity>Recordings with a point every 1 to 50 m. Bridges, tunnels and map heights across a slope are not recognised.</validity>
/// <error>
/// Each end of the profile moves by at most 1.5 times the range of the heights recorded within half a smoothing length
/// of it: the fitted height weighs no height more than that.
/// </error>
/// <source cref="Sources.LocalRegression"/>
public sealed record ElevationFilter
{
    const double LongestSegment = 1e7;

    /// <summary>States a filter.</summary>
    /// <param name="step">Step of the profile, above 0; shortened so that a whole number fits.</param>
    /// <param name="smoothing">Full smoothing length W, 0 or more; 0 only resamples.</param>
    /// <param name="turn">Least height between turns when the climb is summed, 0 or more.</param>
    /// <param name="steepest">Greatest grade believed, above 0, up to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public ElevationFilter(Length step, Length smoothing, Length turn, Fraction steepest)
    {
        if (!(step.Metres > 0))
            throw new ArgumentOutOfRangeException(nameof(step), step, "A step is above 0.");
        if (!(smoothing.Metres >= 0))
            throw new ArgumentOutOfRangeException(nameof(smoothing), smoothing, "A smoothing length is 0 or more.");
        if (!(turn.Metres >= 0))
            throw new ArgumentOutOfRangeException(nameof(turn), turn, "A height is 0 or more.");
        if (!(steepest.Value is > 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(steepest), steepest, "The greatest grade is above 0 and at most 100 %.");
        (Step, Smoothing, Turn, Steepest) = (step, smoothing, turn, steepest);
    }

    /// <summary>Steps of 5 m, smoothed over 100 m, turns of 2 m, grades up to 40 %: steeper than any public road we know of.</summary>
    public static ElevationFilter Usual { get; } = new(
        Length.FromMetres(5), Length.FromMetres(100), Length.FromMetres(2), Fraction.FromPercent(40));
    /// <summary>Step of the profile.</summary>
    public Length Step { get; }
    /// <summary>Full smoothing length.</summary>
    public Length Smoothing { get; }
    /// <summary>Least height between turns when the climb is summed.</summary>
    public Length Turn { get; }
    /// <summary>Greatest grade believed; steeper ones are cut to it, the elevation stays.</summary>
    public Fraction Steepest { get; }

    /// <summary>The filtered profile.</summary>
    /// <param name="distances">At least two, rising, the last above the first; equal neighbours count as one point of mean height.
    /// m.</param>
    /// <param name="heights">One for each, m.</param>
    internal (double[] Places, double[] Heights) Apply(ReadOnlySpan<double> distances, ReadOnlySpan<double> heights)
    {
        var (start, length) = (distances[0], distances[^1] - distances[0]);
        if (length > LongestSegment)
            throw new ArgumentOutOfRangeException(nameof(distances), length, "A segment is at most 10 000 km long.");
        var count = Max(1, (int)Ceiling(length / Step.Metres));
        var places = new double[count + 1];
        for (var i = 0; i <= count; i++)
            places[i] = i == count ? distances[^1] : start + length * i / count;
        return (places, Smoothed(Resampled(distances, heights, places), length / count));
    }

    static double[] Resampled(ReadOnlySpan<double> distances, ReadOnlySpan<double> heights, double[] places)
    {
        List<double> x = [], y = [];
        for (var i = 0; i < distances.Length;)
        {
            var (first, sum) = (i, 0.0);
            for (; i < distances.Length && distances[i] == distances[first]; i++)
                sum += heights[i];
            x.Add(distances[first]);
            y.Add(sum / (i - first));
        }

        var result = new double[places.Length];
        var at = 0;
        for (var i = 0; i < places.Length; i++)
        {
            while (at < x.Count - 2 && x[at + 1] <= places[i])
                at++;
            var along = Clamp((places[i] - x[at]) / (x[at + 1] - x[at]), 0, 1);
            result[i] = y[at] + along * (y[at + 1] - y[at]);
        }

        return result;
    }

    double[] Smoothed(double[] heights, double step)
    {
        var half = Smoothing.Metres / 2;
        var reach = (int)Min(heights.Length, Ceiling(half / step));
        var result = new double[heights.Length];
        for (var i = 0; i < heights.Length; i++)
        {
            var (s0, s1, s2, t0, t1) = (0.0, 0.0, 0.0, 0.0, 0.0);
            for (var j = Max(0, i - reach); j <= Min(heights.Length - 1, i + reach); j++)
            {
                var away = j - i;
                var weight = away == 0 ? 1 : Max(0, 1 - Abs(away) * step / half);
                // Heights relative to the middle one, so that high plateaus lose no digits.
                var rise = weight * (heights[j] - heights[i]);
                s0 += weight;
                s1 += weight * away;
                s2 += weight * away * away;
                t0 += rise;
                t1 += rise * away;
            }

            var determinant = s0 * s2 - s1 * s1;
            result[i] = heights[i] + (determinant > 1e-9 * s0 * s0 ? (s2 * t0 - s1 * t1) / determinant : t0 / s0);
        }

        return result;
    }
}
