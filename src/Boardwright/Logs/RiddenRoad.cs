using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Logs;

/// <summary>What is known of a ride beside its log.</summary>
/// <source cref="Sources.RideRecord"/>
public sealed record ReplayConditions
{
    /// <summary>Rise of the road all along; <c>null</c> to take it from the log's heights.</summary>
    public Fraction? Grade { get; init; }
    /// <summary>State of charge at the start; <c>null</c> to take it from the log.</summary>
    public Fraction? StartCharge { get; init; }
    /// <summary>Temperature of the air; <c>null</c> to take it from the log, or else from the brief.</summary>
    public Temperature? Air { get; init; }
    /// <summary>Wind against the ride, mean over its way; <c>null</c> where nobody noted it, which is taken for still air known to
    /// <see cref="UnknownWind"/>.</summary>
    public Speed? Headwind { get; init; }
    /// <summary>Logged speed over true speed, above 0.</summary>
    public double SpeedScale { get; init; } = 1;

    /// <summary>Standard deviation of a wind that nobody noted, mean along the way of a ride.</summary>
    /// <source cref="Sources.CommonPractice"/>
    public static Speed UnknownWind { get; } = Speed.FromMetresPerSecond(1);
}

/// <summary>A log's speeds and grades in even steps, the form in which a replay follows them. Gaps stay gaps.</summary>
/// <remarks>
/// The speed at each step is that of a straight line fitted to the readings around it, weighted to nothing a second away, so
/// that a sensor's noise does not pass for thrust and braking. Where the grade comes from heights, they are filtered as those
/// of a route; a stretch too short for that is level.
/// </remarks>
/// <validity>Readings at most a few seconds apart; what the board did between them is not known.</validity>
/// <error>A start or stop is rounded over half a second; kinetic energy from end to end of a stretch is exact.</error>
/// <source cref="Sources.LocalRegression"/>
sealed class RiddenRoad
{
    const double ShortestStep = 0.5;
    const double Reach = 1.0;
    const double ShortestProfile = 30;

    readonly RiddenPiece[] pieces;

    RiddenRoad(RideLog log, Duration step, RiddenPiece[] pieces) => (Log, Step, this.pieces) = (log, step, pieces);

    /// <summary>The log.</summary>
    public RideLog Log { get; }
    /// <summary>Length of every step.</summary>
    public Duration Step { get; }
    /// <summary>How many steps there are.</summary>
    public int Count => pieces.Length;

    internal ReadOnlySpan<RiddenPiece> Pieces => pieces;

    /// <summary>Prepares a log.</summary>
    /// <param name="log">The log.</param>
    /// <param name="conditions">What is known beside it.</param>
    /// <returns>The road; what is missing where it cannot be told: the log's speeds, or its heights where no grade is stated.</returns>
    public static Answer<RiddenRoad> FromLog(RideLog log, ReplayConditions conditions) => Answer<RiddenRoad>.Ask("", needs =>
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(conditions.SpeedScale, nameof(conditions));
        if (!log.Speeds.IsThere) needs.Lack("log.speed");
        if (conditions.Grade is null && !log.Elevations.IsThere) needs.Lack("log.elevation");
        if (needs.Unmet) return null;
        var t = log.Seconds;
        var speeds = log.Si(Channel.Speed);
        var heights = log.Si(Channel.Elevation);
        var usual = log.UsualStep.Seconds;
        var step = Max(ShortestStep, usual);
        var steps = new List<RiddenPiece>();
        foreach (var (from, to) in log.Stretches(Duration.FromSeconds(LongestStepOf(log))))
        {
            var places = new List<int>();
            for (var i = from; i < to; i++)
            {
                if (!double.IsNaN(speeds[i])) places.Add(i);
            }

            if (places.Count < 3 || t[places[^1]] - t[places[0]] < step) continue;
            var count = (int)((t[places[^1]] - t[places[0]]) / step + 1e-9);
            var (grid, way) = (new double[count + 1], new double[count + 1]);
            for (int k = 0, low = 0; k <= count; k++)
            {
                grid[k] = Max(0, SpeedAt(t, speeds, places, t[places[0]] + k * step, Max(Reach, 2 * usual), ref low))
                    / conditions.SpeedScale;
                if (k > 0) way[k] = way[k - 1] + (grid[k] + grid[k - 1]) / 2 * step;
            }

            var grades = conditions.Grade is { } stated ? [.. Enumerable.Repeat(stated.Value, count)]
                : GradesOf(t, heights, from, to, t[places[0]], step, way);
            for (var k = 0; k < count; k++)
            {
                var cosine = 1 / Sqrt(1 + grades[k] * grades[k]);
                steps.Add(new(t[places[0]] + k * step, t[places[0]] + (k + 1) * step, grid[k], grid[k + 1], grades[k] * cosine, cosine,
                    k == 0));
            }
        }

        if (steps.Count == 0) needs.Lack("log.speed");
        return needs.Unmet ? null : new RiddenRoad(log, Duration.FromSeconds(step), [.. steps]);
    });

    /// <summary>The longest step between readings through which the board is taken to go on evenly, s.</summary>
    static double LongestStepOf(RideLog log) => Max(2.5, 3 * log.UsualStep.Seconds);

    /// <summary>The straight line through the readings around a time, weighted to nothing at a reach from it.</summary>
    static double SpeedAt(ReadOnlySpan<double> t, ReadOnlySpan<double> speeds, List<int> places, double time, double reach, ref int low)
    {
        while (low < places.Count - 1 && t[places[low]] < time - reach) low++;
        var (s0, s1, s2, y0, y1) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (var j = low; j < places.Count && t[places[j]] <= time + reach; j++)
        {
            var away = t[places[j]] - time;
            var weight = 1 - Abs(away) / reach;
            s0 += weight;
            s1 += weight * away;
            s2 += weight * away * away;
            y0 += weight * speeds[places[j]];
            y1 += weight * away * speeds[places[j]];
        }

        var determinant = s0 * s2 - s1 * s1;
        return determinant > 1e-6 * s0 * s0 ? (s2 * y0 - s1 * y1) / determinant : s0 > 0 ? y0 / s0 : speeds[places[low]];
    }

    /// <summary>Mean grade of each step, by the filtered heights over the way.</summary>
    static double[] GradesOf(
        ReadOnlySpan<double> t, ReadOnlySpan<double> heights, int from, int to, double begins, double step, double[] way)
    {
        var grades = new double[way.Length - 1];
        var (places, own) = (new List<double>(), new List<double>());
        for (var i = from; i < to; i++)
        {
            if (double.IsNaN(heights[i])) continue;
            places.Add(At(way, Clamp((t[i] - begins) / step, 0, way.Length - 1)));
            own.Add(heights[i]);
        }

        if (places.Count < 2 || places[^1] - places[0] < ShortestProfile) return grades;
        var (along, filtered) = ElevationFilter.Usual.Apply(CollectionsMarshal.AsSpan(places), CollectionsMarshal.AsSpan(own));
        var (length, steepest) = ((along[^1] - along[0]) / (along.Length - 1), ElevationFilter.Usual.Steepest.Value);
        double HeightAt(double place) => At(filtered, Clamp((place - along[0]) / length, 0, filtered.Length - 1));
        for (var k = 0; k < grades.Length; k++)
        {
            var (low, high) = (way[k], Max(way[k + 1], way[k] + 0.01));
            grades[k] = Clamp((HeightAt(high) - HeightAt(low)) / (high - low), -steepest, steepest);
        }

        return grades;
    }

    static double At(double[] values, double place)
    {
        var i = Min((int)place, values.Length - 2);
        return values[i] + (place - i) * (values[i + 1] - values[i]);
    }

    /// <summary>A piece of the ride.</summary>
    /// <param name="From">Time at its start, s.</param>
    /// <param name="To">Time at its end, s.</param>
    /// <param name="Starts">Speed at its start, m/s.</param>
    /// <param name="Until">Speed at its end, m/s.</param>
    /// <param name="Sine">Sine of the slope.</param>
    /// <param name="Cosine">Cosine of the slope.</param>
    /// <param name="IsFirst">Whether a gap, or the beginning, is before it.</param>
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct RiddenPiece(
        double From, double To, double Starts, double Until, double Sine, double Cosine, bool IsFirst);
}
