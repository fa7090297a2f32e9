using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Numerics;
using Boardwright.Packs;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Lessons;

/// <summary>What a ride tells of its pack.</summary>
/// <source cref="Sources.PackRegression"/>
public sealed record PackFromRide
{
    const double Reach90 = 1.6448536269514722;
    // What one slow part leaves out of a real pack's many, as a part of the resistance; no scatter of the readings shows it.
    const double ModelError = 0.01;
    const int MostRows = 6000;
    const int MostKnots = 16;

    /// <summary>What a short pull meets: volts lost at once for each ampere, leads up to the logger's sense point included.</summary>
    public required Estimate<Resistance> Resistance { get; init; }
    /// <summary>What a pull meets once the slow part has settled; the same as <see cref="Resistance"/> where the ride shows no slow
    /// part.</summary>
    public required Estimate<Resistance> Settled { get; init; }
    /// <summary>Time constant of the slow part; <c>null</c> where the ride shows none.</summary>
    public required Duration? Slow { get; init; }
    /// <summary>Voltage without current at the start.</summary>
    public required Estimate<Voltage> RestAtStart { get; init; }
    /// <summary>Voltage without current at the end; still rising for minutes when the ride was hard.</summary>
    public required Estimate<Voltage> RestAtEnd { get; init; }
    /// <summary>Charge that left the pack, what came back taken off; gaps are left out.</summary>
    public required Charge Drawn { get; init; }
    /// <summary>Energy that left the pack, what came back taken off; gaps are left out.</summary>
    public required Energy Energy { get; init; }
    /// <summary>What readings scatter about the fit.</summary>
    public required Voltage Left { get; init; }
    /// <summary>What to be wary of, in sentences.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>
    /// Fits V = V_rest(q, t) − R I − R₁ I_τ: the rest voltage runs straight between knots of charge drawn q, and drifts with time by a
    /// parabola as the pack warms; I_τ is the current as a slow part of time constant τ sees it.
    /// </summary>
    /// <param name="log">A log with pack voltage and current.</param>
    /// <returns>The fit; <c>null</c> where the log lacks either, is shorter than half a minute, or the current hardly changes.</returns>
    /// <validity>Currents that change within a minute; one pack temperature. The sense point's leads are part of the pack here.</validity>
    /// <error>1 to 3 % for half an hour with starts and stops, of which 1 % is the model's own and part of every deviation; a current
    /// sensor's scale goes in one to one.</error>
    /// <source cref="Sources.PackRegression"/>
    public static PackFromRide? Fit(RideLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (!log.PackVoltages.IsThere || !log.PackCurrents.IsThere) return null;
        var gap = Duration.FromSeconds(Max(5, 10 * log.UsualStep.Seconds));
        var rows = Thinned(log, gap, out var drawn, out var energy);
        if (rows.Count < 30 || rows[^1].Time - rows[0].Time < 30) return null;
        var mean = rows.Average(r => r.Amperes);
        if (Sqrt(rows.Average(r => Pow(r.Amperes - mean, 2))) < 0.3) return null;
        var best = Fit(rows, tau: null);
        double? slow = null;
        foreach (var tau in new[] { 3.0, 6, 12, 24, 48 })
        {
            // A slow part is believed where it explains clearly more than the noise would of itself.
            var tried = Fit(rows, tau);
            if (tried.Values[1] <= 0 || tried.Values[0] <= 0) continue;
            var gain = (best.SumOfSquares - tried.SumOfSquares) / Square(tried.ResidualDeviation);
            if (gain > (slow is null ? 25 : 0)) (best, slow) = (tried, tau);
        }

        // Halfway to the neighbours of the best, then a quarter: the valley over ln τ is one parabola there.
        for (var reach = Sqrt(2); slow is { } middle && reach > 1.05; reach = Sqrt(reach))
        {
            foreach (var tau in new[] { middle / reach, middle * reach })
            {
                var tried = Fit(rows, tau);
                if (tried.Values[1] > 0 && tried.SumOfSquares < best.SumOfSquares) (best, slow) = (tried, tau);
            }
        }

        return Summarize(log, rows, best, slow, drawn, energy);
    }

    /// <summary>
    /// Capacity by the charge drawn and the rest voltages at both ends: Q / (s(V_start) − s(V_end)), s the state of charge at which a
    /// cell rests at a voltage.
    /// </summary>
    /// <param name="restVoltage">Rest voltage of a cell over its state of charge.</param>
    /// <param name="series">Cells in series, at least 1.</param>
    /// <param name="curveError">Standard deviation of the curve at a point; 8 mV where nobody knows better.</param>
    /// <returns>The capacity of the whole pack; <c>null</c> where the two ends lie less than a tenth of the charge apart.</returns>
    public Estimate<Charge>? Capacity(Curve<Fraction, Voltage> restVoltage, int series, Voltage? curveError = null)
    {
        ArgumentNullException.ThrowIfNull(restVoltage);
        ArgumentOutOfRangeException.ThrowIfLessThan(series, 1);
        var spread = (curveError ?? Voltage.FromMillivolts(8)).Volts;
        var (start, startSpread) = At(RestAtStart);
        var (end, endSpread) = At(RestAtEnd);
        var share = start - end;
        if (share < 0.1) return null;
        var capacity = Drawn.Coulombs / share;
        var deviation = capacity / share * Sqrt(startSpread * startSpread + endSpread * endSpread);
        return Estimate<Charge>.Create(capacity, deviation, Reach90, share < 0.6 ? "A ride from full to nearly empty, with ten minutes of rest at both ends." : "Ten minutes of rest at both ends, and the cell's own rest-voltage curve.");

        (double Share, double Spread) At(Estimate<Voltage> rest)
        {
            var low = RestVoltage.ChargeAt(restVoltage, rest.Value.Volts / series);
            const double Step = 0.02;
            var slope = (restVoltage.At(Min(1, low + Step)) - restVoltage.At(Max(0, low - Step)))
                / (Min(1, low + Step) - Max(0, low - Step));
            return (low, Sqrt(Square(spread) + Square(rest.Deviation / series)) / Max(slope, 1e-3));
        }
    }

    /// <summary>Capacity by the charge drawn and the charge left that the logger shows at both ends, each rounded to a whole per
    /// cent.</summary>
    /// <param name="log">The same log.</param>
    /// <returns>The capacity; <c>null</c> where the log has no charge left, or it falls by less than five per cent.</returns>
    public Estimate<Charge>? CapacityByLogger(RideLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (log.ChargesLeft.First is not { } first || log.ChargesLeft.Last is not { } last || first.Value - last.Value < 0.05) return null;
        var share = first.Value - last.Value;
        // A step of one per cent has the deviation 1 %/√12 at either end.
        return Estimate<Charge>.Create(Drawn.Coulombs / share, Drawn.Coulombs / (share * share) * 0.01 / Sqrt(6), Reach90, "A longer ride; the logger's own count goes in one to one.");
    }

    [StructLayout(LayoutKind.Auto)]
    readonly record struct PackReading(double Time, double Amperes, double Volts, double Coulombs);

    /// <summary>Readings averaged over equal times where there are many; the model is straight in them, so that nothing is lost but
    /// noise.</summary>
    static List<PackReading> Thinned(RideLog log, Duration gap, out Charge drawn, out Energy energy)
    {
        var (volts, amperes, t) = (log.Si(Channel.PackVoltage).ToArray(), log.Si(Channel.PackCurrent).ToArray(), log.Seconds.ToArray());
        var (rows, coulombs, joules) = (new List<PackReading>(), 0.0, 0.0);
        var width = Max(log.UsualStep.Seconds * 0.5, log.Lasting.Seconds / MostRows);
        foreach (var (from, to) in log.Stretches(gap))
        {
            var (count, time, sumAmperes, sumVolts, sumCoulombs, begin, last) = (0, 0.0, 0.0, 0.0, 0.0, double.NaN, -1);
            for (var i = from; i < to; i++)
            {
                if (double.IsNaN(volts[i]) || double.IsNaN(amperes[i])) continue;
                if (last >= 0)
                {
                    coulombs += (amperes[last] + amperes[i]) / 2 * (t[i] - t[last]);
                    joules += (amperes[last] * volts[last] + amperes[i] * volts[i]) / 2 * (t[i] - t[last]);
                }

                last = i;
                if (count > 0 && t[i] - begin >= width) Flush();
                if (count == 0) begin = t[i];
                count++;
                time += t[i];
                sumAmperes += amperes[i];
                sumVolts += volts[i];
                sumCoulombs += coulombs;
            }

            if (count > 0) Flush();
            void Flush()
            {
                rows.Add(new(time / count, sumAmperes / count, sumVolts / count, sumCoulombs / count));
                (count, time, sumAmperes, sumVolts, sumCoulombs) = (0, 0, 0, 0, 0);
            }
        }

        (drawn, energy) = (Charge.FromCoulombs(coulombs), Energy.FromJoules(joules));
        return rows;
    }

    /// <summary>What the rest voltage is made of at a row: two neighbouring knots of charge, and time with its square about the middle of
    /// the ride.</summary>
    sealed class RestTerms(List<PackReading> rows)
    {
        readonly double least = rows.Min(r => r.Coulombs);
        readonly double span = Max(1e-9, rows.Max(r => r.Coulombs) - rows.Min(r => r.Coulombs));
        readonly double middle = (rows[0].Time + rows[^1].Time) / 2;
        readonly double half = (rows[^1].Time - rows[0].Time) / 2;

        /// <summary>More knots for longer rides: the curve of rest voltage bends within a tenth of the charge.</summary>
        int Knots { get; } = Clamp(2 + (int)((rows[^1].Time - rows[0].Time) / 180), 3, MostKnots);

        public int Count => Knots + 2;

        public void At(PackReading row, Span<double> parts)
        {
            parts.Clear();
            var place = Min((row.Coulombs - least) / span * (Knots - 1), Knots - 1 - 1e-9);
            var knot = (int)place;
            parts[knot] = 1 - (place - knot);
            parts[knot + 1] = place - knot;
            var time = (row.Time - middle) / half;
            (parts[Knots], parts[Knots + 1]) = (time, time * time - 1.0 / 3);
        }
    }

    static NonlinearFit Fit(List<PackReading> rows, double? tau)
    {
        var rest = new RestTerms(rows);
        var resistances = tau is null ? 1 : 2;
        var n = resistances + rest.Count;
        var table = new double[rows.Count * n];
        var seen = rows[0].Amperes;
        for (var i = 0; i < rows.Count; i++)
        {
            table[i * n] = -rows[i].Amperes;
            if (tau is { } slow)
            {
                if (i > 0)
                {
                    // Straight between readings, so the slow part is known exactly.
                    var dt = rows[i].Time - rows[i - 1].Time;
                    var fade = Exp(-dt / slow);
                    var ramp = (rows[i].Amperes - rows[i - 1].Amperes) / dt;
                    seen = rows[i].Amperes - ramp * slow + (seen - rows[i - 1].Amperes + ramp * slow) * fade;
                }

                table[i * n + 1] = -seen;
            }

            rest.At(rows[i], table.AsSpan(i * n + resistances, rest.Count));
        }

        var start = new double[n];
        start.AsSpan(resistances, rest.Count - 2).Fill(rows[0].Volts);
        return NonlinearLeastSquares.Solve(
            new(rows.Count, (x, left) =>
            {
                for (var i = 0; i < left.Length; i++)
                {
                    var sum = -rows[i].Volts;
                    for (var j = 0; j < n; j++) sum += table[i * n + j] * x[j];
                    left[i] = sum;
                }
            })
            { Slopes = (_, slopes) => table.CopyTo(slopes) },
            start);
    }

    static PackFromRide Summarize(RideLog log, List<PackReading> rows, NonlinearFit fit, double? slow, Charge drawn, Energy energy)
    {
        var shared = slow is null ? 1 : 2;
        // Readings of half a minute go together: what the model leaves out lasts about as long.
        var groups = rows.Select(r => (int)((r.Time - rows[0].Time) / 30)).ToArray();
        int[] asked = [.. Enumerable.Range(0, shared)];
        var scatter = fit.ScatterOf(groups, asked);
        double Covariance(int a, int b) =>
            scatter is null || scatter[a, a] < fit.Covariance(a, a) || scatter[b, b] < fit.Covariance(b, b) ? fit.Covariance(a, b)
            : scatter[a, b];
        var freedom = Max(1, groups[^1] + 1 - shared);
        var reach = scatter is null ? Reach90 : StudentT.Quantile(0.95, freedom);
        var quick = fit.Values[0];
        var settled = slow is null ? quick : quick + fit.Values[1];
        var settledVariance = slow is null ? Covariance(0, 0) : Covariance(0, 0) + 2 * Covariance(0, 1) + Covariance(1, 1);
        var rest = new RestTerms(rows);
        var narrowing = "Hard pulls and full stops in turn, half a minute each, logged five times a second or faster.";
        var cautions = new List<string> { "Leads and plugs between the pack and the place where the voltage is measured are part of the resistance." };
        if (log.UsualStep.Seconds > 1)
            cautions.Add(FormattableString.Invariant($"Readings are {log.UsualStep.Seconds:0.#} s apart: voltage and current of one row may belong to different moments of a pull."));
        if (rows.Max(r => r.Amperes) - rows.Min(r => r.Amperes) < 5)
            cautions.Add("The current changes by less than 5 A, which tells little.");
        return new()
        {
            Resistance = Estimate<Resistance>.Create(quick, Sqrt(Covariance(0, 0) + Square(ModelError * quick)), reach, narrowing),
            Settled = Estimate<Resistance>.Create(settled, Sqrt(Max(0, settledVariance) + Square(ModelError * settled)), reach, narrowing),
            Slow = slow is { } tau ? Duration.FromSeconds(tau) : null,
            RestAtStart = RestAt(rows[0], "A minute of standing still before the start."),
            RestAtEnd = RestAt(rows[^1], "Ten minutes of standing still after the end, logged."),
            Drawn = drawn,
            Energy = energy,
            Left = Voltage.FromVolts(fit.ResidualDeviation),
            Cautions = cautions,
        };

        Estimate<Voltage> RestAt(PackReading row, string by)
        {
            var parts = new double[rest.Count];
            rest.At(row, parts);
            var (value, variance) = (0.0, 0.0);
            for (var a = 0; a < parts.Length; a++)
            {
                value += parts[a] * fit.Values[shared + a];
                for (var b = 0; b < parts.Length; b++) variance += parts[a] * parts[b] * fit.Covariance(shared + a, shared + b);
            }

            return Estimate<Voltage>.Create(value, Sqrt(Max(0, variance)), reach, by);
        }
    }

    static double Square(double x) => x * x;
}
