using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Lessons;

/// <content>How the runs are found in a log.</content>
public static partial class CoastDown
{
    static void FindIn(RideLog log, ReadOnlySpan<int> places, CoastDownSearch search, List<CoastDownRun> runs)
    {
        var count = places.Length;
        var (t, v) = (new double[count], new double[count]);
        for (var k = 0; k < count; k++) (t[k], v[k]) = (log.Seconds[places[k]], log.Si(Channel.Speed)[places[k]]);
        var smooth = Averaged(t, v, 0.8);
        var isFree = new bool[count];
        var (pack, phase) = (Averages(Channel.PackCurrent, places), Averages(Channel.PhaseCurrent, places));
        for (var k = 0; k < count; k++)
        {
            isFree[k] = smooth[k] >= search.Slowest.Si
                && !(Abs(pack[k]) > search.PackQuiet.Amperes) && !(Abs(phase[k]) > search.PhaseQuiet.Amperes);
        }

        // Somebody brakes where the speed falls too fast over two seconds.
        for (int k = 0, m = 0; k < count; k++)
        {
            while (m < count - 1 && t[m] - t[k] < 2) m++;
            if (t[m] - t[k] is >= 1 and < 4 && (smooth[k] - smooth[m]) / (t[m] - t[k]) > search.HardestSlowing.Si)
            {
                for (var j = k; j <= m; j++) isFree[j] = false;
            }
        }

        for (var start = 0; start < count;)
        {
            if (!isFree[start])
            {
                start++;
                continue;
            }

            var end = start;
            while (end < count && isFree[end]) end++;
            Falls(log, places, t, v, smooth, start, end, search, runs);
            start = end;
        }

        // Not a number, which no limit refuses, where the log does not say.
        double[] Averages(Channel channel, ReadOnlySpan<int> at)
        {
            var own = new double[count];
            own.AsSpan().Fill(double.NaN);
            var values = log.Si(channel);
            for (var k = 0; k < count && !values.IsEmpty; k++) own[k] = values[at[k]];
            return Averaged(t, own, 0.8);
        }
    }

    /// <summary>The falling pieces between two readings: from a crest down to where the speed rises again by half a metre per
    /// second.</summary>
    static void Falls(RideLog log, ReadOnlySpan<int> places, double[] t, double[] v, double[] smooth, int start, int end,
        CoastDownSearch search, List<CoastDownRun> runs)
    {
        const double Rise = 0.5;
        var (crest, trough, isFalling) = (start, start, false);
        for (var k = start; k <= end; k++)
        {
            if (k < end && !isFalling)
            {
                if (smooth[k] >= smooth[crest]) crest = k;
                if (smooth[k] < smooth[crest] - Rise) (isFalling, trough) = (true, k);
                continue;
            }

            if (k < end && smooth[k] <= smooth[trough]) trough = k;
            if (k < end && smooth[k] <= smooth[trough] + Rise) continue;
            if (isFalling)
                Keep(log, places, t, v, smooth, crest, trough + 1, search, runs);
            if (k < end) (crest, isFalling) = (k, false);
        }
    }

    static void Keep(RideLog log, ReadOnlySpan<int> places, double[] t, double[] v, double[] smooth, int from, int to,
        CoastDownSearch search, List<CoastDownRun> runs)
    {
        var (begins, ends) = (t[from] + search.Margin.Seconds, t[to - 1] - search.Margin.Seconds);
        while (from < to && t[from] < begins) from++;
        while (to > from && t[to - 1] > ends) to--;
        if (to - from < 12 || t[to - 1] - t[from] < search.Shortest.Seconds || smooth[from] - smooth[to - 1] < search.LeastFall.Si)
            return;
        var seconds = new double[to - from];
        for (var k = 0; k < seconds.Length; k++) seconds[k] = t[from + k] - t[from];
        runs.Add(new(log.Name, Duration.FromSeconds(t[from]), seconds, v.AsSpan(from, to - from),
            Heading(log, places[from], places[to - 1])));
    }

    static Angle? Heading(RideLog log, int from, int to)
    {
        if (log.PositionAt(from) is not { } a || log.PositionAt(to) is not { } b || GreatCircle.Between(a, b).Metres < 5) return null;
        var east = (b.Longitude - a.Longitude).Radians * Cos(a.Latitude.Radians);
        return Angle.FromRadians(Atan2(east, (b.Latitude - a.Latitude).Radians));
    }

    /// <summary>The mean over a time to either side, as far as readings go.</summary>
    static double[] Averaged(double[] t, ReadOnlySpan<double> values, double reach)
    {
        var mean = new double[t.Length];
        var (low, high, sum, known) = (0, 0, 0.0, 0);
        for (var k = 0; k < t.Length; k++)
        {
            for (; high < t.Length && t[high] <= t[k] + reach; high++)
            {
                if (double.IsNaN(values[high])) continue;
                sum += values[high];
                known++;
            }

            for (; t[low] < t[k] - reach; low++)
            {
                if (double.IsNaN(values[low])) continue;
                sum -= values[low];
                known--;
            }

            mean[k] = known > 0 ? sum / known : double.NaN;
        }

        return mean;
    }
}
