using System.Globalization;
using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Numerics;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Lessons;

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
public static partial class CoastDown
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
