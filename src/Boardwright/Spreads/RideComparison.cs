using System.Globalization;
using Boardwright.Findings;
using Boardwright.Lessons;
using Boardwright.Logs;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.UsualValues;
using static System.Math;

namespace Boardwright.Spreads;

/// <summary>A quantity of a ride, predicted and measured.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Measured">As the log has it, in the kind's unit.</param>
/// <param name="Predicted">As the model of the board has it.</param>
/// <param name="Low">5 % quantile of the prediction.</param>
/// <param name="High">95 % quantile of the prediction.</param>
/// <param name="Cause">The entry whose spread moves the prediction most; empty where none stands out.</param>
/// <param name="How">How that entry is measured.</param>
/// <param name="Base">What a ratio is taken above, in the kind's unit: the air's temperature for temperatures, else 0.</param>
/// <validity>As <see cref="Sampling"/> and <see cref="Replay"/>; the logger's own error is not in the range.</validity>
/// <error>As <see cref="Sampling"/>.</error>
/// <source cref="Sources.QuasiMonteCarlo"/>
public sealed record RideDifference(
    FigureKind Kind, double Measured, double Predicted, double Low, double High, string Cause, string How, double Base)
{
    /// <summary>Whether the measurement lies in the prediction's own range.</summary>
    public bool IsWithin => Measured >= Low && Measured <= High;
    /// <summary>Measured over predicted, above the base.</summary>
    public double Ratio => (Measured - Base) / (Predicted - Base);
    /// <summary>Standard deviation of the prediction as a part of it, by its range.</summary>
    public double RelativeSpread => (High - Low) / (2 * Normal.Quantile(0.95)) / Abs(Predicted - Base);

    /// <summary>The difference in a plain sentence.</summary>
    public string Says
    {
        get
        {
            var (more, subject) = Kind.Id switch
            {
                "measured.energy" => (Measured > Predicted ? "more" : "less", "It used"),
                "measured.sag" => (Measured > Predicted ? "more" : "less", "The pack sagged"),
                "measured.winding" => (Measured > Predicted ? "hotter" : "cooler", "The motor got"),
                "measured.controller" => (Measured > Predicted ? "hotter" : "cooler", "The controller got"),
                _ => (Measured > Predicted ? "hotter" : "cooler", "The cells got"),
            };
            // Written alike to the last digit is as predicted.
            var form = Kind.Unit == "V" ? "0.00" : "0.0";
            string Figure(double value) => value.ToString(form, CultureInfo.InvariantCulture);
            var amount = Kind.Unit == "°C" ? Invariant($"{Abs(Measured - Predicted):0.0} K {more} than") : Invariant($"{100 * Abs(Ratio - 1):0.#} % {more} than");
            if (Figure(Measured) == Figure(Predicted)) amount = "as";
            var against = $"{subject} {amount} predicted ({Figure(Measured)} against {Figure(Predicted)} {Kind.Unit}): ";
            var range = $"the prediction's own 90 % range, {Figure(Low)} to {Figure(High)} {Kind.Unit}";
            if (IsWithin)
                return $"{against}inside {range}.";
            var cause = Cause.Length > 0 ? Invariant($" The likeliest cause is {Cause}: measure it ({char.ToLowerInvariant(How[0])}{How[1..].TrimEnd('.')}).") : " No single entry stands out as its cause.";
            return $"{against}outside {range}.{cause}";
        }
    }
}

/// <summary>A ride as it was measured beside the same ride as the model of its board predicts it.</summary>
/// <param name="Replay">The prediction along the ride.</param>
/// <param name="Differences">What can be compared, each with the prediction's range.</param>
/// <param name="Missing">Channels that would be needed for the rest, in words.</param>
/// <validity>As <see cref="Replay"/>.</validity>
/// <error>As <see cref="Sampling"/>; a temperature that rests on guessed heat capacities or cooling is as wide as their band.</error>
/// <source cref="Sources.QuasiMonteCarlo"/>
public sealed record RideComparison(Replay Replay, IReadOnlyList<RideDifference> Differences, IReadOnlyList<string> Missing)
{
    /// <summary>Default number of points.</summary>
    public const int DefaultPoints = 64;

    const double SagWindow = 30;

    /// <summary>measured.energy.</summary>
    public static FigureKind Energy { get; } = new("measured.energy", "Wh", "Energy", "Energy out of the pack, what the brakes returned taken off, where the log has volts and amperes.", "∫ V I dt", Sources.CircuitTheory);
    /// <summary>measured.sag.</summary>
    public static FigureKind Sag { get; } = new("measured.sag", "V", "Sag", "Volts that the hardest twentieth of the measured currents takes within half a minute.", "−Σ ΔV ΔI/Σ ΔI² · I, Δ from the mean of half a minute", Sources.CircuitTheory);
    /// <summary>measured.winding.</summary>
    public static FigureKind Winding { get; } = new("measured.winding", "°C", "Hottest winding", "Greatest temperature of the motor, its sensor taken to sit in the windings.", "two nodes in time: winding – case – air", Sources.TwoNodeMotor);
    /// <summary>measured.controller.</summary>
    public static FigureKind Controller { get; } = new("measured.controller", "°C", "Hottest controller", "Greatest temperature of the controller.", "C dT/dt = losses − (T − T_air)/R", Sources.CircuitTheory);
    /// <summary>measured.cells.</summary>
    public static FigureKind Cells { get; } = new("measured.cells", "°C", "Hottest cells", "Greatest temperature of the pack.", "C dT/dt = I² R − UA (T − T_air)", Sources.CircuitTheory);
    /// <summary>Every kind, in the order of a report.</summary>
    public static IReadOnlyList<FigureKind> All { get; } = [Energy, Sag, Winding, Controller, Cells];

    /// <summary>Replays a ride on the board and on many boards like it.</summary>
    /// <param name="board">The board as it stands, its entries named.</param>
    /// <param name="log">The ride.</param>
    /// <param name="conditions">What is known beside it.</param>
    /// <param name="points">Number of boards, 8 or more; a power of two spreads them best.</param>
    /// <param name="seed">Seed of the scrambling.</param>
    /// <param name="progress">Told how many boards are done, now and then.</param>
    /// <param name="cancellation">Stops the work between two boards.</param>
    /// <returns>The comparison; where it cannot be made, what is missing.</returns>
    public static Answer<RideComparison> Compare(
        Board board, RideLog log, ReplayConditions? conditions = null, int points = DefaultPoints, ulong seed = 1,
        IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(board);
        conditions ??= new();
        board = Replay.Conditioned(UsualTable.Complete(board), log, conditions);
        var road = RiddenRoad.FromLog(log, conditions);
        return Answer<RideComparison>.Ask("", needs =>
        {
            var ridden = needs.Read(road);
            if (Replay.Run(board, ridden, conditions, needs) is not { } replay)
                return null;
            var measured = new Ridden(replay);
            var values = measured.Values(replay);
            var sampling = new Sampling(board, replay.From, All.Count, Row, points, seed, progress, cancellation);
            var next = sampling.MeasureNext([.. All.Select((k, i) => (i, k.Id)).Where(k => measured.Truths[k.i] is not null)]);
            var bands = BandsOf(board, ridden!, conditions, replay, measured);
            var differences = new List<RideDifference>();
            for (var i = 0; i < All.Count; i++)
            {
                if (measured.Truths[i] is not { } truth || values[i] is not { } value) continue;
                var interval = sampling.IntervalOf(i, value);
                var cause = interval.MattersMost.Count > 0 ? interval.MattersMost[0] : "";
                var how = next.FirstOrDefault(m => m.Key == cause)?.How ?? "";
                var isTemperature = All[i].Unit == "°C";
                differences.Add(new(
                    All[i], truth, value, Min(interval.Low, bands.Cool[i] ?? value), Max(interval.High, bands.Hot[i] ?? value),
                    how.Length > 0 ? cause : "", how, isTemperature ? board.Brief.Temperature.Or(default).Celsius : 0));
            }

            return new(replay, differences, measured.Missing);

            IReadOnlyList<double?> Row(Board moved) =>
                Replay.Run(moved, ridden, conditions, new()) is { } one ? measured.Values(one) : new double?[All.Count];
        });
    }

    /// <summary>The values at the cool and hot ends of what is guessed; the values themselves where nothing is.</summary>
    static (IReadOnlyList<double?> Cool, IReadOnlyList<double?> Hot) BandsOf(
        Board board, RiddenRoad road, ReplayConditions conditions, Replay replay, Ridden measured)
    {
        var model = RideModel.Compute(board).Value;
        if (model.Heat.Guessed == HeatGuess.None)
            return (measured.Values(replay), measured.Values(replay));
        IReadOnlyList<double?> At(double factor) =>
            measured.Values(Replay.On(
            model with { Heat = model.Heat.WithGuesses(factor, factor) }, road, replay.StartCharge.Value, conditions));
        return (At(RideHeat.GuessFactor), At(1 / RideHeat.GuessFactor));
    }

    /// <summary>The log's readings on the times of a replay, as means of its steps.</summary>
    sealed class Ridden
    {
        readonly double[] seconds;
        readonly bool[] isThere;
        readonly double[] amperes;
        readonly Dictionary<Channel, bool[]> warm = [];
        readonly double hard;

        public Ridden(Replay replay)
        {
            var log = replay.Log;
            var count = replay.Seconds.Count;
            (seconds, isThere, amperes) = (new double[count], new bool[count], new double[count]);
            var missing = new List<string>();
            foreach (var (channel, says) in new[]
            {
                (Channel.PackVoltage, "pack voltage"), (Channel.PackCurrent, "pack current"), (Channel.MotorTemperature, "motor temperature"),
                (Channel.ControllerTemperature, "controller temperature"), (Channel.PackTemperature, "pack temperature"),
            })
            {
                if (!log.Has(channel)) missing.Add(says);
            }

            Missing = missing;
            Truths = new double?[All.Count];
            if (log.PackVoltages.IsThere && log.PackCurrents.IsThere) Electric(replay, out hard);
            Truths[2] = Hottest(replay, Channel.MotorTemperature);
            Truths[3] = Hottest(replay, Channel.ControllerTemperature);
            Truths[4] = Hottest(replay, Channel.PackTemperature);
        }

        /// <summary>What was measured, in the order of the kinds.</summary>
        public double?[] Truths { get; }

        public IReadOnlyList<string> Missing { get; }

        /// <summary>The same of a prediction.</summary>
        public double?[] Values(Replay replay)
        {
            var values = new double?[All.Count];
            if (Truths[0] is not null)
            {
                var joules = 0.0;
                for (var i = 0; i < seconds.Length; i++)
                {
                    if (isThere[i]) joules += replay.PackVolts[i] * replay.PackAmperes[i] * seconds[i];
                }

                values[0] = joules / 3600;
            }

            if (Truths[1] is not null) values[1] = SagOf(replay.Seconds, replay.PackVolts, replay.PackAmperes) * hard;
            values[2] = HottestOf(replay.Windings, Channel.MotorTemperature);
            values[3] = HottestOf(replay.Controllers, Channel.ControllerTemperature);
            values[4] = HottestOf(replay.Cells, Channel.PackTemperature);
            return values;
        }

        void Electric(Replay replay, out double reference)
        {
            var log = replay.Log;
            var (ofWatts, ofVolts, ofAmperes) = (new Sum(log, (v, i) => v * i), new Sum(log, (v, _) => v), new Sum(log, (_, i) => i));
            var (joules, volts) = (0.0, new double[seconds.Length]);
            for (var k = 0; k < seconds.Length; k++)
            {
                // A gap has one time of its own, at which the replay knows nothing.
                if (double.IsNaN(replay.PackAmperes[k])) continue;
                seconds[k] = replay.Step.Seconds;
                var (from, to) = (replay.Seconds[k] - seconds[k], replay.Seconds[k]);
                if (ofWatts.Between(from, to) is not { } energy) continue;
                isThere[k] = true;
                joules += energy;
                (volts[k], amperes[k]) = (ofVolts.Between(from, to)!.Value / seconds[k], ofAmperes.Between(from, to)!.Value / seconds[k]);
            }

            var there = amperes.Where((_, k) => isThere[k]).Order().ToArray();
            reference = there.Length > 0 ? Quantile.OfSorted(there, 0.95) : 0;
            if (there.Length < 10) return;
            Truths[0] = joules / 3600;
            if (there[^1] - there[0] > 3 && SagOf(replay.Seconds, volts, amperes) is { } ohms) Truths[1] = ohms * reference;
        }

        /// <summary>Volts lost for each ampere within half a minute.</summary>
        double? SagOf(IReadOnlyList<double> times, IReadOnlyList<double> volts, IReadOnlyList<double> currents)
        {
            var (cross, square) = (0.0, 0.0);
            for (var from = 0; from < times.Count;)
            {
                var to = from;
                var (n, v, i, vi, ii) = (0, 0.0, 0.0, 0.0, 0.0);
                for (; to < times.Count && times[to] - times[from] < SagWindow; to++)
                {
                    if (!isThere[to]) continue;
                    n++;
                    v += volts[to];
                    i += currents[to];
                    vi += volts[to] * currents[to];
                    ii += currents[to] * currents[to];
                }

                if (n > 1)
                {
                    cross += vi - v * i / n;
                    square += ii - i * i / n;
                }

                from = to;
            }

            return square > 0 ? -cross / square : null;
        }

        double? Hottest(Replay replay, Channel channel)
        {
            var log = replay.Log;
            if (!log.Has(channel)) return null;
            var values = log.Si(channel).ToArray();
            var (known, most, at) = (new bool[seconds.Length], double.NegativeInfinity, 0);
            for (var k = 0; k < seconds.Length; k++)
            {
                if (double.IsNaN(replay.Windings[k])) continue;
                while (at < log.Count - 1 && log.Seconds[at + 1] <= replay.Seconds[k]) at++;
                // Loggers write temperatures less often than currents.
                for (var j = at; j >= 0 && log.Seconds[j] > replay.Seconds[k] - 10; j--)
                {
                    if (double.IsNaN(values[j])) continue;
                    (known[k], most) = (true, Max(most, values[j]));
                    break;
                }
            }

            if (double.IsNegativeInfinity(most)) return null;
            warm[channel] = known;
            return Temperature.FromKelvins(most).Celsius;
        }

        double? HottestOf(IReadOnlyList<double> kelvins, Channel channel)
        {
            if (!warm.TryGetValue(channel, out var known)) return null;
            var most = double.NegativeInfinity;
            for (var k = 0; k < known.Length; k++)
            {
                if (known[k]) most = Max(most, kelvins[k]);
            }

            return Temperature.FromKelvins(most).Celsius;
        }
    }

    /// <summary>The trapezoidal sum of a product of readings, to be asked between any two times.</summary>
    sealed class Sum
    {
        readonly List<double> times = [];
        readonly List<double> sums = [];
        readonly List<int> gaps = [];

        public Sum(RideLog log, Func<double, double, double> of)
        {
            var volts = log.Si(Channel.PackVoltage);
            var amperes = log.Si(Channel.PackCurrent);
            var longest = Max(2.5, 3 * log.UsualStep.Seconds);
            var (sum, before, gap) = (0.0, double.NaN, 0);
            var breaks = log.Breaks.ToHashSet();
            for (var i = 0; i < log.Count; i++)
            {
                if (breaks.Contains(i)) gap++;
                if (double.IsNaN(volts[i]) || double.IsNaN(amperes[i])) continue;
                var (time, value) = (log.Seconds[i], of(volts[i], amperes[i]));
                if (times.Count > 0)
                {
                    if (time - times[^1] > longest) gap++;
                    if (gap == gaps[^1]) sum += (value + before) / 2 * (time - times[^1]);
                }

                before = value;
                times.Add(time);
                sums.Add(sum);
                gaps.Add(gap);
            }
        }

        /// <summary>The sum between two times; <c>null</c> where a gap lies between, or it reaches beyond the readings.</summary>
        public double? Between(double from, double to) =>
            At(from) is var (a, i) && At(to) is var (b, j) && i == j ? b - a : null;

        (double Sum, int Gap)? At(double time)
        {
            const double Touching = 1e-6;
            var at = times.BinarySearch(time);
            if (at >= 0) return (sums[at], gaps[at]);
            at = ~at;
            if (at == 0) return times.Count > 0 && times[0] - time < Touching ? (sums[0], gaps[0]) : null;
            if (at == times.Count) return time - times[^1] < Touching ? (sums[^1], gaps[^1]) : null;
            if (gaps[at] != gaps[at - 1]) return time - times[at - 1] < Touching ? (sums[at - 1], gaps[at - 1])
                : times[at] - time < Touching ? (sums[at], gaps[at]) : null;
            return (sums[at - 1] + (sums[at] - sums[at - 1]) * (time - times[at - 1]) / (times[at] - times[at - 1]), gaps[at]);
        }
    }
}
