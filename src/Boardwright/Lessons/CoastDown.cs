using System.Globalization;
using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Numerics;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Lessons;

/// <summary>How coast-downs are told from the rest of a ride.</summary>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownSearch
{
    /// <summary>A run that is worth most begins at this speed or above; slower ones are taken as far as they go.</summary>
    public Speed From { get; init; } = Speed.FromKilometresPerHour(25);
    /// <summary>A run is followed down to this speed at least, where it goes so far.</summary>
    public Speed To { get; init; } = Speed.FromKilometresPerHour(5);
    /// <summary>Below this speed sensors and feet are not to be trusted, and a run ends.</summary>
    public Speed Slowest { get; init; } = Speed.FromKilometresPerHour(3);
    /// <summary>The least that the speed falls in a run.</summary>
    public Speed LeastFall { get; init; } = Speed.FromKilometresPerHour(8);
    /// <summary>The shortest run.</summary>
    public Duration Shortest { get; init; } = Duration.FromSeconds(8);
    /// <summary>Pack current up to which the motor is taken not to pull, averaged over a second.</summary>
    public Current PackQuiet { get; init; } = Current.FromAmperes(1);
    /// <summary>Phase current up to which the motor is taken not to pull, averaged over a second.</summary>
    public Current PhaseQuiet { get; init; } = Current.FromAmperes(2);
    /// <summary>Slowing beyond which somebody brakes.</summary>
    public Acceleration HardestSlowing { get; init; } = Acceleration.FromMetresPerSecondSquared(1);
    /// <summary>The longest gap that a run may have inside; the board is taken to roll freely through it when it does on both
    /// sides.</summary>
    public Duration LongestGap { get; init; } = Duration.FromSeconds(5);
    /// <summary>Left out at either end of a run, where the motor lets go and the sensor catches up.</summary>
    public Duration Margin { get; init; } = Duration.FromSeconds(0.5);
}

/// <summary>One run that rolls out freely.</summary>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed class CoastDownRun
{
    readonly double[] seconds;
    readonly double[] speeds;

    /// <summary>States a run.</summary>
    /// <param name="log">Name of its log.</param>
    /// <param name="begins">Time in its log when it begins.</param>
    /// <param name="seconds">Times since it began, rising, at least four.</param>
    /// <param name="speeds">Speeds as the sensor gave them, in m/s.</param>
    /// <param name="heading">Where it goes, from north over east; <c>null</c> without positions.</param>
    /// <exception cref="ArgumentException">The lengths differ, or there are fewer than four readings.</exception>
    public CoastDownRun(string log, Duration begins, ReadOnlySpan<double> seconds, ReadOnlySpan<double> speeds, Angle? heading = null)
    {
        if (seconds.Length != speeds.Length || seconds.Length < 4)
            throw new ArgumentException("A run has at least four readings of time and speed.", nameof(speeds));
        (Log, Begins, this.seconds, this.speeds, Heading) = (log, begins, seconds.ToArray(), speeds.ToArray(), heading);
    }

    /// <summary>Name of its log.</summary>
    public string Log { get; }
    /// <summary>Time in its log when it begins.</summary>
    public Duration Begins { get; }
    /// <summary>Where it goes, from north over east; <c>null</c> without positions.</summary>
    public Angle? Heading { get; }
    /// <summary>How long it lasts.</summary>
    public Duration Lasting => Duration.FromSeconds(seconds[^1] - seconds[0]);
    /// <summary>Speed at its start, by the sensor.</summary>
    public Speed From => Speed.FromMetresPerSecond(Mean(speeds.AsSpan(0, Min(3, speeds.Length))));
    /// <summary>Speed at its end, by the sensor.</summary>
    public Speed To => Speed.FromMetresPerSecond(Mean(speeds.AsSpan(Max(0, speeds.Length - 3))));
    /// <summary>Times since it began.</summary>
    public ReadOnlySpan<double> Seconds => seconds;
    /// <summary>Speeds by the sensor, m/s.</summary>
    public ReadOnlySpan<double> Speeds => speeds;

    static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values) sum += value;
        return sum / values.Length;
    }
}

/// <summary>What must be known of board, rider and day before forces can be told from speeds.</summary>
/// <param name="Mass">Mass of rider, gear and board m, above 0.</param>
/// <param name="RotatingMass">What turning wheels and rotors add to the mass when it slows down, 0 or more.</param>
/// <param name="AirDensityKilogramsPerCubicMetre">Density of the air ρ, above 0.</param>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownConditions(Mass Mass, Mass RotatingMass, double AirDensityKilogramsPerCubicMetre)
{
    /// <summary>Speed by the sensor over true speed; 1 where the wheel's diameter is right.</summary>
    public double SpeedScale { get; init; } = 1;
    /// <summary>Standard deviation of <see cref="SpeedScale"/>; 0.01 where nobody has measured it over a known distance.</summary>
    public double SpeedScaleSpread { get; init; } = 0.01;
    /// <summary>Standard deviation of the mass, as a part of it.</summary>
    public double MassSpread { get; init; }
    /// <summary>Standard deviation of the air's density, as a part of it.</summary>
    public double AirSpread { get; init; }
    /// <summary>Wind against the first run's way, where it is known; runs of one direction only cannot do without.</summary>
    public Speed? Headwind { get; init; }
    /// <summary>Rise of the road in the first run's way, where it is known; level for runs of one direction only where it is not
    /// stated.</summary>
    public Fraction? Slope { get; init; }
    /// <summary>By how much the slope swings along the road about its mean, as an amplitude; 0 for a road of one slope. It widens the
    /// ranges, since nothing in the speeds tells it from drag.</summary>
    public Fraction SlopeSwing { get; init; }
    /// <summary>Whether each run goes the first one's way, in their order; empty to tell it by the headings, or without those as there and
    /// back in turn.</summary>
    public IReadOnlyList<bool> GoesThere { get; init; } = [];
}

/// <summary>One run as the fit sees it.</summary>
/// <param name="Run">The run.</param>
/// <param name="IsThere">Whether it goes the first run's way.</param>
/// <param name="Left">Root mean square of what the fit leaves of its speeds; not a number where it was not fitted.</param>
/// <param name="LeftOut">Why it was left out; empty where it was not.</param>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownPart(CoastDownRun Run, bool IsThere, Speed Left, string LeftOut);

/// <summary>What coast-downs tell.</summary>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownFit
{
    /// <summary>Rolling coefficient, with the drag of bearings, belts and motors that turn along in it.</summary>
    public required Estimate<Number> RollingResistance { get; init; }
    /// <summary>Drag area.</summary>
    public required Estimate<Area> DragArea { get; init; }
    /// <summary>Rise of the road in the first run's way.</summary>
    public required Estimate<Fraction> Slope { get; init; }
    /// <summary>Wind against the first run's way.</summary>
    public required Estimate<Speed> Headwind { get; init; }
    /// <summary>Correlation of rolling coefficient and drag area, −1 to 1; near −1 as a rule.</summary>
    public required double Correlation { get; init; }
    /// <summary>What readings scatter about the fit.</summary>
    public required Speed Left { get; init; }
    /// <summary>Standard deviations of rolling coefficient and drag area (m²) by the scatter of readings.</summary>
    public required (double Rolling, double DragArea) ByReadings { get; init; }
    /// <summary>The same by the scatter from run to run; <c>null</c> for fewer runs than it takes.</summary>
    public required (double Rolling, double DragArea)? ByRuns { get; init; }
    /// <summary>How hard the unknowns are to tell apart; see <see cref="NonlinearFit.Condition"/>.</summary>
    public required double Condition { get; init; }
    /// <summary>Every run, also those left out.</summary>
    public required IReadOnlyList<CoastDownPart> Parts { get; init; }
    /// <summary>What to be wary of, in sentences.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>The border of the region in which both values lie nine times out of ten: an ellipse, as points.</summary>
    /// <param name="count">How many points, at least 3.</param>
    public IReadOnlyList<(Number Rolling, Area DragArea)> Ellipse(int count = 48)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        // 4.605 is the 90 % quantile of χ² with two degrees of freedom.
        var reach = Sqrt(4.605170185988091);
        var (a, b) = (RollingResistance.Deviation, DragArea.Deviation);
        var points = new (Number, Area)[count];
        for (var i = 0; i < count; i++)
        {
            var (u, v) = (Cos(2 * PI * i / count), Sin(2 * PI * i / count));
            points[i] = (
                Number.FromSi(RollingResistance.Value.Si + reach * a * u),
                Area.FromSi(DragArea.Value.Si + reach * b * (Correlation * u + Sqrt(Max(0, 1 - Correlation * Correlation)) * v)));
        }

        return points;
    }
}

/// <summary>A fit, or the reason why there is none.</summary>
/// <param name="Fit">The fit, or <c>null</c>.</param>
/// <param name="Refusal">Why there is none and what to do about it; empty where there is one.</param>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownAnswer(CoastDownFit? Fit, string Refusal);

/// <summary>
/// Rolling coefficient and drag area from a board that rolls out: m_e dv/dt = −m g (Crr cos θ ± sin θ) − ½ ρ CdA (v ± w)|v ± w|,
/// solved in closed form in the speed through the air u = v ± w, and fitted to v(t) of all runs at once.
/// </summary>
/// <remarks>Crr, CdA, slope and wind are shared by all runs, each of which has a speed of its own at its start. Runs both ways tell slope
/// and wind from rolling and drag.</remarks>
/// <validity>
/// The same road, rider, stance and steady wind along the road for all runs; wheels warm. The drag of motors and belts that
/// turn along is part of Crr. A road of one slope: where it swings along the way by 0.05 %, the drag area is off by 4 % as a
/// rule, by 0.15 % by 12 %, and the range holds that only where the swing is stated: a slope that changes looks like drag in both
/// directions.
/// </validity>
/// <error>
/// Of eight runs each way at 5 Hz with 0.1 m/s of noise: about 1 % in Crr and 2 % in CdA, and what the speed sensor's scale is
/// off by in either, in opposite senses. A wheel 1 % larger than stated: Crr 1 % low, CdA 1 % high.
/// </error>
/// <source cref="Sources.TwoWayCoastDown"/>
public static class CoastDown
{
    const int Shared = 4;
    const int Rolling = 0;
    const int Drag = 1;
    const int Grade = 2;
    const int Wind = 3;
    const double Reach90 = 1.6448536269514722;

    /// <summary>Finds the runs of a log.</summary>
    /// <param name="log">The log; with speeds, and best with currents.</param>
    /// <param name="search">How they are told from the rest.</param>
    /// <returns>The runs in order of time; none without speeds.</returns>
    public static IReadOnlyList<CoastDownRun> Find(RideLog log, CoastDownSearch? search = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        search ??= new();
        var runs = new List<CoastDownRun>();
        if (!log.Speeds.IsThere) return runs;
        var speeds = log.Si(Channel.Speed);
        var places = new List<int>();
        foreach (var (from, to) in log.Stretches(search.LongestGap))
        {
            places.Clear();
            for (var i = from; i < to; i++)
            {
                if (!double.IsNaN(speeds[i])) places.Add(i);
            }

            if (places.Count >= 8)
                FindIn(log, CollectionsMarshal.AsSpan(places), search, runs);
        }

        return runs;
    }

    /// <summary>Fits the runs.</summary>
    /// <param name="runs">The runs, of one road and one rider.</param>
    /// <param name="conditions">What is known of board, rider and day.</param>
    /// <returns>The fit, or why there is none.</returns>
    /// <exception cref="ArgumentException">The directions stated are not as many as the runs.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Mass, density or scale is not above 0.</exception>
    public static CoastDownAnswer Fit(IReadOnlyList<CoastDownRun> runs, CoastDownConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(runs);
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(conditions.Mass.Kilograms, nameof(conditions));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(conditions.AirDensityKilogramsPerCubicMetre, nameof(conditions));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(conditions.SpeedScale, nameof(conditions));
        if (conditions.GoesThere.Count > 0 && conditions.GoesThere.Count != runs.Count)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{conditions.GoesThere.Count} directions stated for {runs.Count} runs."), nameof(conditions));
        if (runs.Count == 0)
            return new(null, "No coast-down was found. Roll out freely from 25 km/h or more to walking pace, at least 8 s long, throttle and brake untouched, three times or more each way.");
        var cautions = new List<string>();
        var parts = Directed(runs, conditions, cautions);
        var used = parts.Where(p => p.LeftOut.Length == 0).ToList();
        if (Refusal(used, conditions) is { } refusal)
            return new(null, refusal);
        NonlinearFit fit, plain;
        try
        {
            plain = Solve(used, conditions);
            fit = plain;
            var kept = DropOutliers(used, fit);
            if (kept.Count < used.Count && Refusal(kept, conditions) is null)
            {
                parts = [.. parts.Select(p => used.Contains(p) && !kept.Contains(p) ? p with { LeftOut = "it does not follow the same law as the others: somebody braked, pushed or stood up" } : p)];
                used = kept;
                plain = Solve(used, conditions);
            }

            fit = Weighed(used, conditions, plain);
        }
        catch (NonConvergenceException)
        {
            return new(null, "The runs follow no common law of rolling and drag. Check that they are of one road, one rider and one stance, and that nobody braked.");
        }

        return new(Summarize(fit, plain, used, parts, conditions, cautions), "");
    }

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

    static List<CoastDownPart> Directed(IReadOnlyList<CoastDownRun> runs, CoastDownConditions conditions, List<string> cautions)
    {
        var none = Speed.FromMetresPerSecond(double.NaN);
        if (conditions.GoesThere.Count > 0)
            return [.. runs.Select((r, i) => new CoastDownPart(r, conditions.GoesThere[i] == conditions.GoesThere[0], none, ""))];
        if (runs.All(r => r.Heading is not null))
        {
            return [.. runs.Select(r =>
            {
                var along = Cos((r.Heading!.Value - runs[0].Heading!.Value).Radians);
                return new CoastDownPart(r, along > 0, none, Abs(along) < 0.8 ? "it goes another way than the first one" : "");
            })];
        }

        if (runs.Count > 1)
            cautions.Add("The log has no positions, so the runs are taken to go there and back in turn; state the directions where that is not so.");
        return [.. runs.Select((r, i) => new CoastDownPart(r, i % 2 == 0, none, ""))];
    }

    static string? Refusal(List<CoastDownPart> used, CoastDownConditions conditions)
    {
        if (used.Count == 0)
            return "No run goes the first one's way or back.";
        if (conditions.Headwind is null && used.TrueForAll(p => p.IsThere == used[0].IsThere))
            return "All runs go the same way, and a wind of 1.5 m/s along the road would make the drag area a third larger or smaller. Ride the road both ways, or state the wind.";
        return null;
    }

    /// <summary>Runs whose readings scatter no more than twice as much as those of the middle run.</summary>
    static List<CoastDownPart> DropOutliers(List<CoastDownPart> used, NonlinearFit fit)
    {
        if (used.Count < 4) return used;
        var rms = Rms(used, fit);
        var middle = rms.Order().ElementAt(used.Count / 2);
        return [.. used.Where((_, i) => rms[i] <= 2 * middle)];
    }

    static double[] Rms(List<CoastDownPart> used, NonlinearFit fit)
    {
        var rms = new double[used.Count];
        for (int i = 0, row = 0; i < used.Count; i++)
        {
            var count = used[i].Run.Seconds.Length;
            for (var k = 0; k < count; k++, row++) rms[i] += fit.Left[row] * fit.Left[row] / count;
            rms[i] = Sqrt(rms[i]);
        }

        return rms;
    }

    static NonlinearFit Solve(List<CoastDownPart> used, CoastDownConditions conditions)
    {
        var model = new Model(used, conditions, null);
        return NonlinearLeastSquares.Solve(model.Problem, model.Start);
    }

    /// <summary>The fit once more with readings weighed by what gusts leave in them, where they leave anything.</summary>
    static NonlinearFit Weighed(List<CoastDownPart> used, CoastDownConditions conditions, NonlinearFit plain)
    {
        // No sensor is so good that what is left tells of gusts and not of the last digit of its times.
        const double LastDigit = 0.01;
        var fit = plain;
        var left = plain.Left;
        if (plain.ResidualDeviation < LastDigit) return plain;
        // What a fit leaves is smoother than what gusts did, by what the fit took out; a second look comes near enough.
        for (var round = 0; round < 2; round++)
        {
            if (Drift.Estimate(used, left) is not { } drift) return fit;
            var model = new Model(used, conditions, drift);
            fit = NonlinearLeastSquares.Solve(model.Problem, [.. fit.Values]);
            left = model.Plain([.. fit.Values]);
        }

        return fit;
    }

    /// <summary>
    /// What a fit leaves of the speeds, as a drift with a memory and the sensor's own noise on top: gusts and a rider who moves
    /// push the speed off its law for some seconds, and readings within that time tell the same thing twice. Each reading then
    /// counts by what it says beyond those before it: the innovations of a Kalman filter.
    /// </summary>
    /// <param name="Memory">Time in which the drift fades, s.</param>
    /// <param name="Share">Variance of the drift over that of the sensor's noise.</param>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct Drift(double Memory, double Share)
    {
        /// <summary>The likeliest drift in what a fit leaves.</summary>
        /// <returns>The drift; <c>null</c> where the sensor's noise alone explains it as well.</returns>
        public static Drift? Estimate(List<CoastDownPart> parts, IReadOnlyList<double> left)
        {
            // Twice the logarithm of the likelihood has to gain this much for two unknowns more, which chance does once in 150 times.
            const double Clearly = 10;
            var values = left.ToArray();
            var (best, likeliest) = (default(Drift?), Unlikeliness(null, parts, values) - Clearly);
            foreach (var memory in (ReadOnlySpan<double>)[1, 2, 4, 8, 16, 32])
            {
                foreach (var share in (ReadOnlySpan<double>)[0.03, 0.1, 0.3, 1, 3, 10, 30, 100])
                {
                    Drift tried = new(memory, share);
                    var unlikely = Unlikeliness(tried, parts, values);
                    if (unlikely < likeliest) (best, likeliest) = (tried, unlikely);
                }
            }

            return best;
        }

        static double Unlikeliness(Drift? drift, List<CoastDownPart> parts, double[] left)
        {
            var (row, squares, logarithms) = (0, 0.0, 0.0);
            foreach (var part in parts)
            {
                var count = part.Run.Seconds.Length;
                var own = left.AsSpan(row, count).ToArray();
                if (drift is { } some) logarithms += some.Whiten(part.Run.Seconds, own, 1);
                foreach (var value in own) squares += value * value;
                row += count;
            }

            return row * Log(squares) + logarithms;
        }

        /// <summary>Turns values at times into innovations of even size.</summary>
        /// <returns>Sum of the logarithms of the innovations' variances.</returns>
        public double Whiten(ReadOnlySpan<double> seconds, Span<double> values, int stride)
        {
            var (state, variance, logarithms) = (0.0, Share, 0.0);
            for (var k = 0; k < seconds.Length; k++)
            {
                if (k > 0)
                {
                    var kept = Exp(-(seconds[k] - seconds[k - 1]) / Memory);
                    (state, variance) = (state * kept, variance * kept * kept + Share * (1 - kept * kept));
                }

                var whole = variance + 1;
                ref var value = ref values[k * stride];
                var news = value - state;
                state += variance / whole * news;
                variance /= whole;
                value = news / Sqrt(whole);
                logarithms += Log(whole);
            }

            return logarithms;
        }
    }

    /// <summary>The speeds of all runs under four shared unknowns and one speed through the air for each run.</summary>
    sealed class Model
    {
        readonly List<CoastDownPart> parts;
        readonly int[] firsts;
        readonly double scale;
        readonly double weight;
        readonly double halfDensity;
        readonly double moved;
        readonly int count;
        readonly Drift? drift;

        public Model(List<CoastDownPart> parts, CoastDownConditions conditions, Drift? drift)
        {
            this.parts = parts;
            this.drift = drift;
            scale = conditions.SpeedScale;
            weight = conditions.Mass.Kilograms * RoadLoad.Gravity;
            halfDensity = conditions.AirDensityKilogramsPerCubicMetre / 2;
            moved = conditions.Mass.Kilograms + conditions.RotatingMass.Kilograms;
            count = Shared + parts.Count;
            firsts = new int[parts.Count + 1];
            for (var i = 0; i < parts.Count; i++) firsts[i + 1] = firsts[i] + parts[i].Run.Seconds.Length;
            var twoWays = parts.Exists(p => p.IsThere) && parts.Exists(p => !p.IsThere);
            var wind = conditions.Headwind?.Si;
            var slope = conditions.Slope?.Value ?? (twoWays ? null : (double?)0);
            var (least, greatest) = (new double[count], new double[count]);
            Start = new double[count];
            Bound(Rolling, 0, 0.3, 0.018);
            Bound(Drag, 0, 3, 0.5);
            Bound(Grade, slope ?? -0.15, slope ?? 0.15, slope ?? 0);
            Bound(Wind, wind ?? -10, wind ?? 10, wind ?? 0);
            for (var i = 0; i < parts.Count; i++)
                Bound(Shared + i, 0, 60, parts[i].Run.Speeds[0] / scale);
            Problem = new(firsts[^1], Left) { Slopes = Slopes, Least = least, Greatest = greatest };

            void Bound(int unknown, double low, double high, double start) =>
                (least[unknown], greatest[unknown], Start[unknown]) = (low, high, start);
        }

        public double[] Start { get; }

        public NonlinearProblem Problem { get; }

        /// <summary>What the unknowns leave of the readings as they are.</summary>
        public double[] Plain(double[] x)
        {
            var left = new double[firsts[^1]];
            for (var i = 0; i < parts.Count; i++) Left(i, x, x[Shared + i], left);
            return left;
        }

        void Left(ReadOnlySpan<double> x, Span<double> left)
        {
            for (var i = 0; i < parts.Count; i++)
            {
                Left(i, x, x[Shared + i], left);
                drift?.Whiten(parts[i].Run.Seconds, left[firsts[i]..], 1);
            }
        }

        void Left(int run, ReadOnlySpan<double> x, double startSpeed, Span<double> left)
        {
            var seconds = parts[run].Run.Seconds;
            var speeds = parts[run].Run.Speeds;
            var way = parts[run].IsThere ? 1 : -1;
            var cosine = 1 / Sqrt(1 + x[Grade] * x[Grade]);
            var rolling = weight * cosine * (x[Rolling] + way * x[Grade]);
            var wind = way * x[Wind];
            var rates = new Glide(rolling / moved, halfDensity * x[Drag] / moved);
            for (var k = 0; k < seconds.Length; k++)
                left[firsts[run] + k] = rates.After(startSpeed + wind, seconds[k]) - wind - speeds[k] / scale;
        }

        void Slopes(ReadOnlySpan<double> x, Span<double> slopes)
        {
            double[] steps = [1e-6, 1e-5, 1e-6, 1e-4];
            var (above, below, place) = (new double[firsts[^1]], new double[firsts[^1]], x.ToArray());
            for (var j = 0; j < Shared; j++)
            {
                var (high, low) = (x[j] + steps[j], Max(x[j] - steps[j], j <= Drag ? 0 : double.NegativeInfinity));
                place[j] = high;
                Left(place, above);
                place[j] = low;
                Left(place, below);
                place[j] = x[j];
                for (var row = 0; row < above.Length; row++) slopes[row * count + j] = (above[row] - below[row]) / (high - low);
            }

            const double Step = 1e-4;
            for (var i = 0; i < parts.Count; i++)
            {
                Left(i, x, x[Shared + i] + Step, above);
                Left(i, x, x[Shared + i] - Step, below);
                for (var row = firsts[i]; row < firsts[i + 1]; row++) slopes[row * count + Shared + i] = (above[row] - below[row])
                    / (2 * Step);
                drift?.Whiten(parts[i].Run.Seconds, slopes[(firsts[i] * count + Shared + i)..], count);
            }
        }
    }

    /// <summary>du/dt = −a − b u|u| in closed form, for speeds through the air of either sign.</summary>
    /// <param name="Steady">a, m/s², either sign.</param>
    /// <param name="Drag">b, 1/m, 0 or more.</param>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct Glide(double Steady, double Drag)
    {
        public double After(double start, double seconds)
        {
            // With u → −u and a → −a the law is the same.
            if (start < 0 || (start == 0 && Steady > 0))
                return -new Glide(-Steady, Drag).AfterForward(-start, seconds);
            return AfterForward(start, seconds);
        }

        double AfterForward(double start, double seconds)
        {
            if (Drag < 1e-12)
                return start - Steady * seconds;
            if (Steady == 0)
                return start / (1 + Drag * start * seconds);
            var rate = Sqrt(Abs(Steady) * Drag);
            var balance = Sqrt(Abs(Steady) / Drag);
            if (Steady < 0)
            {
                var growth = Tanh(rate * seconds);
                return balance * (start + balance * growth) / (balance + start * growth);
            }

            var untilStill = Atan(start / balance) / rate;
            if (seconds > untilStill)
                return -new Glide(-Steady, Drag).AfterForward(0, seconds - untilStill);
            var tangent = Tan(rate * seconds);
            return (start - balance * tangent) / (1 + start / balance * tangent);
        }
    }

    static CoastDownFit Summarize(
        NonlinearFit fit, NonlinearFit plain, List<CoastDownPart> used, List<CoastDownPart> parts, CoastDownConditions conditions,
        List<string> cautions)
    {
        var groups = new int[fit.Readings];
        for (int i = 0, row = 0; i < used.Count; i++)
        {
            for (var k = 0; k < used[i].Run.Seconds.Length; k++) groups[row++] = i;
        }

        int[] shared = [.. Enumerable.Range(0, Shared).Where(j => !fit.Held.Contains(j))];
        var byRuns = fit.ScatterOf(groups, shared);
        double ByRuns(int a, int b)
        {
            var (i, j) = (Array.IndexOf(shared, a), Array.IndexOf(shared, b));
            return i < 0 || j < 0 ? 0 : byRuns![i, j];
        }

        double Variance(int j) => byRuns is null ? fit.Covariance(j, j) : Max(fit.Covariance(j, j), ByRuns(j, j));
        bool IsByRuns(int j) => byRuns is not null && ByRuns(j, j) > fit.Covariance(j, j);
        // Where the runs scatter clearly more than the readings explain, it is they that are counted.
        var freedom = used.Count - shared.Length;
        double ReachOf(int j) => IsByRuns(j) && ByRuns(j, j) > fit.Covariance(j, j) * Excess(freedom) ? StudentT.Quantile(0.95, freedom)
            : Reach90;
        var (crr, area, slope, wind) = (fit.Values[Rolling], fit.Values[Drag], fit.Values[Grade], fit.Values[Wind]);
        var (ofScale, ofMass, ofAir) = (conditions.SpeedScaleSpread / conditions.SpeedScale, conditions.MassSpread, conditions.AirSpread);
        var (swingRolling, swingArea, swingTogether) = OfSwing(used, conditions, plain);
        var crrVariance = Variance(Rolling) + Square(crr * ofScale) + swingRolling;
        var areaVariance = Variance(Drag) + swingArea + Square(area) * (Square(ofScale) + Square(ofMass) + Square(ofAir));
        var together = (IsByRuns(Rolling) && IsByRuns(Drag) ? ByRuns(Rolling, Drag)
            : fit.Covariance(Rolling, Drag)
            * Sqrt(Variance(Rolling) * Variance(Drag) / Max(double.Epsilon, fit.Covariance(Rolling, Rolling) * fit.Covariance(Drag, Drag))))
            - crr * area * Square(ofScale) + swingTogether;
        var pairs = Min(used.Count(p => p.IsThere), used.Count(p => !p.IsThere));
        Warn(fit, used, conditions, pairs, cautions);
        var rms = Rms(used, plain);
        return new()
        {
            RollingResistance = Estimate<Number>.Create(
                crr, Sqrt(crrVariance), Blend(Rolling, crrVariance), Narrows(Variance(Rolling), Square(crr * ofScale), 0, pairs)),
            DragArea = Estimate<Area>.Create(
                area, Sqrt(areaVariance), Blend(Drag, areaVariance),
                Narrows(Variance(Drag), Square(area * ofScale), Square(area) * (Square(ofMass) + Square(ofAir)), pairs)),
            Slope = Estimate<Fraction>.Create(slope, Sqrt(Variance(Grade)), ReachOf(Grade), "More runs each way."),
            Headwind = Estimate<Speed>.Create(wind, Sqrt(Variance(Wind)), ReachOf(Wind), "More runs each way, on a day with less wind."),
            Correlation = Clamp(together / Sqrt(crrVariance * areaVariance), -1, 1),
            Left = Speed.FromMetresPerSecond(plain.ResidualDeviation),
            ByReadings = (fit.Deviation(Rolling), fit.Deviation(Drag)),
            ByRuns = byRuns is null ? null : (Sqrt(ByRuns(Rolling, Rolling)), Sqrt(ByRuns(Drag, Drag))),
            Condition = fit.Condition,
            Parts = [.. parts.Select(
                p => used.FindIndex(u => ReferenceEquals(u.Run, p.Run)) is var i and >= 0
                ? p with { Left = Speed.FromMetresPerSecond(rms[i]) } : p)],
            Cautions = cautions,
        };

        // What is added to the scatter is stated, not estimated, and has the reach of a normal distribution.
        double Blend(int j, double total)
        {
            var share = total > 0 ? Variance(j) / total : 1;
            return Sqrt(share * Square(ReachOf(j)) + (1 - share) * Square(Reach90));
        }
    }

    /// <summary>
    /// What a slope that swings does to rolling and drag: a deviation δs of the slope shifts the speed by −g m/m_e f ∫ δs/f dt, f the
    /// slowing by the fit; the runs so shifted are fitted once more, for waves of 100 to 400 m in two phases, there and back over the same
    /// road.
    /// </summary>
    /// <returns>Mean squares and product of the shifts, of the wave that shifts most.</returns>
    static (double Rolling, double DragArea, double Together) OfSwing(
        List<CoastDownPart> used, CoastDownConditions conditions, NonlinearFit plain)
    {
        var (swing, rolling, area, together) = (conditions.SlopeSwing.Value, 0.0, 0.0, 0.0);
        if (swing == 0) return (0, 0, 0);
        double[] waves = [100, 200, 400];
        foreach (var wave in waves)
        {
            var (rr, aa, ra) = (0.0, 0.0, 0.0);
            foreach (var phase in (ReadOnlySpan<double>)[0, PI / 2])
            {
                var fit = Solve([.. used.Select(
                    part => part with { Run = Swung(part, plain, conditions, swing, wave, phase, used[0].Run) })], conditions);
                var (r, a) = (fit.Values[Rolling] - plain.Values[Rolling], fit.Values[Drag] - plain.Values[Drag]);
                (rr, aa, ra) = (rr + r * r / 2, aa + a * a / 2, ra + r * a / 2);
            }

            // How long the waves are nobody knows, so the length that shifts most counts.
            rolling = Max(rolling, rr);
            if (aa > area) (area, together) = (aa, ra);
        }

        return (rolling, area, together);
    }

    static CoastDownRun Swung(
        CoastDownPart part, NonlinearFit plain, CoastDownConditions conditions, double swing, double wave, double phase, CoastDownRun first)
    {
        var (run, way) = (part.Run, part.IsThere ? 1 : -1);
        var moved = conditions.Mass.Kilograms + conditions.RotatingMass.Kilograms;
        var ratio = conditions.Mass.Kilograms * RoadLoad.Gravity / moved;
        var (steady, drag) = (ratio * (plain.Values[Rolling] + way * plain.Values[Grade]),
            conditions.AirDensityKilogramsPerCubicMetre / 2 * plain.Values[Drag] / moved);
        var (speeds, place, sum, before) = (run.Speeds.ToArray(), part.IsThere ? 0 : WayOf(first), 0.0, 0.0);
        for (var k = 0; k < speeds.Length; k++)
        {
            var through = run.Speeds[k] / conditions.SpeedScale + way * plain.Values[Wind];
            var slowing = Max(0.02, steady + drag * through * Abs(through));
            var dt = k == 0 ? 0 : run.Seconds[k] - run.Seconds[k - 1];
            place += way * run.Speeds[k] / conditions.SpeedScale * dt;
            var now = way * swing * Sin(2 * PI * place / wave + phase) / slowing;
            sum += (now + before) / 2 * dt;
            before = now;
            speeds[k] -= conditions.SpeedScale * ratio * slowing * sum;
        }

        return new(run.Log, run.Begins, run.Seconds, speeds, run.Heading);
    }

    static double WayOf(CoastDownRun run)
    {
        var way = 0.0;
        for (var k = 1; k < run.Seconds.Length; k++) way += (run.Speeds[k] + run.Speeds[k - 1]) / 2 * (run.Seconds[k] - run.Seconds[k - 1]);
        return way;
    }

    /// <summary>The ratio of variances that chance reaches once in twenty, about: 1 + 1.645 √(2/n).</summary>
    static double Excess(int freedom) => 1 + Reach90 * Sqrt(2.0 / Max(1, freedom));

    static double Square(double x) => x * x;

    static string Narrows(double scatter, double scale, double stated, int pairs) =>
        scale > scatter && scale > stated ? "Measure the speed sensor's scale over a known distance."
        : stated > scatter ? "Weigh rider and board, and note the air's temperature and pressure."
        : pairs < 8 ? "More runs each way; eight pairs are good."
        : "More runs each way, in less wind, each from a higher speed to walking pace.";

    static void Warn(NonlinearFit fit, List<CoastDownPart> used, CoastDownConditions conditions, int pairs, List<string> cautions)
    {
        cautions.Add("The rolling coefficient holds the drag of bearings, belts and motors that turn along.");
        if (conditions.SlopeSwing.Value == 0)
            cautions.Add("The road is taken to have one slope. Where it swings by 0.05 % along the way, rolling is off by 2 % and the drag area by 4 % as a rule, and the ranges do not hold that: choose the evenest road.");
        if (pairs == 0)
            cautions.Add($"All runs go one way: the wind is taken as stated, the road as {(conditions.Slope is null ? "level" : "stated")}. A rise of 0.1 % that nobody knows of shifts the rolling coefficient by 0.001.");
        else if (pairs < 3)
            cautions.Add(string.Create(CultureInfo.InvariantCulture, $"Only {pairs} {(pairs == 1 ? "pair" : "pairs")} of runs; three are the least to rely on, eight are good."));
        if (Abs(fit.Values[Wind]) > 2)
            cautions.Add(string.Create(CultureInfo.InvariantCulture, $"A wind of {Abs(fit.Values[Wind]):0.0} m/s along the road is more than 2 m/s: gusts and side wind, which the fit does not know, come with it."));
        if (used.TrueForAll(p => p.Run.From.KilometresPerHour < 20))
            cautions.Add("No run begins above 20 km/h, where the air tells itself from the rolling; the drag area is poorly known.");
        foreach (var (unknown, words) in new[] { (Rolling, "rolling coefficient"), (Drag, "drag area") })
        {
            if (fit.Held.Contains(unknown))
                cautions.Add($"The {words} came out at the edge of what is possible, so the runs do not fit the model.");
        }
    }
}
