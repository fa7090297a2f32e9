using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Traction;
using static System.Math;

namespace Boardwright.Lessons;

/// <summary>
/// A ridden ride put through the model of its board: the thrust that its speeds and grades ask for, F = m_e dv/dt + F_road,
/// gives motor currents, these the controllers' power, and that what the pack gives and how warm everything gets.
/// </summary>
/// <remarks>
/// The rider's limits are not asked: what was ridden was ridden, and <see cref="Beyond"/> says for how long the model could
/// not have done it. The motors brake as far as the board's limits let them, the foot does the rest. After a gap the speeds,
/// and temperatures where the log has them, begin anew with the log; the charge goes on as if nothing had been drawn.
/// Times are those of the log; every channel has one value for each time, the mean of the step that ends there for volts and amperes.
/// </remarks>
/// <validity>As <see cref="RideModel"/> and <see cref="RiddenRoad"/>. A push by foot passes for a pull of the motors.</validity>
/// <error>That of the inputs, above all the wind and the road; see the intervals of a comparison.</error>
/// <source cref="Sources.Mechanics"/>
public sealed record Replay
{
    // Over a longer gap than this what is warm cools, and what sagged recovers, by who knows how much.
    const double LongGap = 30;

    /// <summary>The log that was replayed.</summary>
    public required RideLog Log { get; init; }
    /// <summary>Times in the log; where a gap is, one time stands for it at which nothing is known.</summary>
    public required IReadOnlyList<double> Seconds { get; init; }
    /// <summary>Length of every step.</summary>
    public required Duration Step { get; init; }
    /// <summary>Speed as followed, m/s.</summary>
    public required IReadOnlyList<double> Speeds { get; init; }
    /// <summary>Current out of the pack, A.</summary>
    public required IReadOnlyList<double> PackAmperes { get; init; }
    /// <summary>Voltage at the controllers, V.</summary>
    public required IReadOnlyList<double> PackVolts { get; init; }
    /// <summary>Temperature of the windings, K.</summary>
    public required IReadOnlyList<double> Windings { get; init; }
    /// <summary>Temperature of the controllers, K.</summary>
    public required IReadOnlyList<double> Controllers { get; init; }
    /// <summary>Temperature of the cells, K.</summary>
    public required IReadOnlyList<double> Cells { get; init; }
    /// <summary>State of charge, 0 to 1.</summary>
    public required IReadOnlyList<double> Charges { get; init; }
    /// <summary>State of charge at the start.</summary>
    public required Fraction StartCharge { get; init; }
    /// <summary>Time for which the ride asked more than the model's limits allow.</summary>
    public required Duration Beyond { get; init; }
    /// <summary>Energy out of the pack at the controllers, over all that was followed.</summary>
    public required Energy Energy { get; init; }
    /// <summary>Entries all this rests on.</summary>
    public required IReadOnlyList<string> From { get; init; }
    /// <summary>What to be wary of, in sentences.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>A channel of the log at the times of the replay: straight between readings, nothing in a gap.</summary>
    /// <param name="channel">The channel.</param>
    /// <returns>One value for each time, SI; empty where the log has not the channel.</returns>
    public double[] Measured(Channel channel)
    {
        var values = Log.Si(channel);
        var times = Log.Seconds;
        if (values.IsEmpty) return [];
        var on = new double[Seconds.Count];
        for (int k = 0, at = 0; k < on.Length; k++)
        {
            while (at + 1 < times.Length - 1 && times[at + 1] <= Seconds[k]) at++;
            var next = Min(at + 1, times.Length - 1);
            var share = next == at ? 0 : Clamp((Seconds[k] - times[at]) / (times[next] - times[at]), 0, 1);
            on[k] = double.IsNaN(PackAmperes[k]) ? double.NaN
                : share <= 0 ? values[at] : share >= 1 ? values[next] : values[at] + share * (values[next] - values[at]);
        }

        return on;
    }

    /// <summary>Replays a ride.</summary>
    /// <param name="board">The board, its entries named.</param>
    /// <param name="log">The ride.</param>
    /// <param name="conditions">What is known beside it.</param>
    /// <returns>The replay; where something is missing, its key: of the board, or <c>log.</c> and the channel.</returns>
    public static Answer<Replay> Run(Board board, RideLog log, ReplayConditions? conditions = null)
    {
        conditions ??= new();
        var road = RiddenRoad.FromLog(log, conditions);
        return Answer<Replay>.Ask("", needs =>
        {
            var ridden = needs.Read(road);
            return Run(Conditioned(board, log, conditions), ridden, conditions, needs);
        });
    }

    internal static Replay? Run(Board board, RiddenRoad? road, ReplayConditions conditions, Needs needs)
    {
        var model = needs.Read(RideModel.Compute(board));
        if (needs.Unmet) return null;
        // Beyond the model's own list: it is what the charge at the start is read off.
        var rest = needs.Read(board.Parts.Cell.RestVoltage);
        if (ChargeAt(road!.Log, conditions, rest, model.Running.Pack.Series) is not { } charge)
        {
            needs.Lack("log.charge_left");
            return null;
        }

        return On(model, road, charge,
            conditions) with
        { From = [.. model.From.Append(board.Brief.Headwind.Key).Distinct(StringComparer.Ordinal)] };
    }

    /// <summary>The board in the air and wind of the ride.</summary>
    internal static Board Conditioned(Board board, RideLog log, ReplayConditions conditions)
    {
        var brief = board.Brief;
        var air = conditions.Air ?? log.AirTemperatures.First;
        var wind = conditions.Headwind is { } noted
            ? new Known<Speed>(noted, from: Origin.Measured, key: brief.Headwind.Key)
            : new Known<Speed>(default, ReplayConditions.UnknownWind.Si, Origin.Guess, brief.Headwind.Key);
        return board with
        {
            Brief = brief with
            {
                Headwind = wind,
                Temperature = air is { } known ? new Known<Temperature>(known, from: Origin.Measured, key: brief.Temperature.Key)
                    : brief.Temperature,
            },
        };
    }

    /// <summary>A replay on a model that is there already.</summary>
    internal static Replay On(RideModel model, RiddenRoad road, double charge, ReplayConditions conditions)
    {
        var log = road.Log;
        var simulation = new Simulation(model, RideCourse.Level(model.Pace), new() { StartCharge = Fraction.FromValue(charge) });
        var count = road.Count + CountOfGaps(road);
        var columns = new double[8][];
        for (var c = 0; c < columns.Length; c++) columns[c] = new double[count];
        var (row, beyond, joules, last, longest) = (0, 0.0, 0.0, double.NaN, 0.0);
        foreach (ref readonly var step in road.Pieces)
        {
            if (step.IsFirst)
            {
                var gap = double.IsNaN(last) ? double.PositiveInfinity : step.From - last;
                if (double.IsFinite(gap))
                {
                    longest = Max(longest, gap);
                    for (var c = 1; c < columns.Length; c++) columns[c][row] = double.NaN;
                    columns[0][row++] = (last + step.From) / 2;
                }

                var state = simulation.State with { Speed = step.Starts };
                if (gap > LongGap)
                {
                    var winding = ReadingAt(log, Channel.MotorTemperature, step.From);
                    state = state with
                    {
                        Winding = winding ?? state.Winding,
                        Case = winding ?? state.Case,
                        Controller = ReadingAt(log, Channel.ControllerTemperature, step.From) ?? state.Controller,
                        Cells = ReadingAt(log, Channel.PackTemperature, step.From) ?? state.Cells,
                        FirstVolts = 0,
                        SecondVolts = 0,
                    };
                }

                simulation.State = state;
            }

            var seconds = step.To - step.From;
            if (!simulation.Follow(seconds, step.Until, step.Sine, step.Cosine, out var bus)) beyond += seconds;
            joules += bus.Watts * seconds;
            var now = simulation.State;
            (columns[0][row], columns[1][row], columns[2][row], columns[3][row]) = (step.To, step.Until, bus.Amperes, bus.Volts);
            (columns[4][row], columns[5][row], columns[6][row], columns[7][row]) = (now.Winding, now.Controller, now.Cells, now.Charge);
            (row, last) = (row + 1, step.To);
        }

        return new()
        {
            Log = log,
            Seconds = columns[0],
            Step = road.Step,
            Speeds = columns[1],
            PackAmperes = columns[2],
            PackVolts = columns[3],
            Windings = columns[4],
            Controllers = columns[5],
            Cells = columns[6],
            Charges = columns[7],
            StartCharge = Fraction.FromValue(charge),
            Beyond = Duration.FromSeconds(beyond),
            Energy = Energy.FromJoules(joules),
            From = model.From,
            Cautions = CautionsOf(log, conditions, beyond, longest),
        };
    }

    static int CountOfGaps(RiddenRoad road)
    {
        var gaps = -1;
        foreach (ref readonly var step in road.Pieces)
        {
            if (step.IsFirst) gaps++;
        }

        return Max(0, gaps);
    }

    static List<string> CautionsOf(RideLog log, ReplayConditions conditions, double beyond, double longestGap)
    {
        var cautions = new List<string>();
        if (conditions.Headwind is null)
            cautions.Add("Nobody noted the wind: the air is taken as still, give or take 1 m/s along the way.");
        if (conditions.Grade is { Value: 0 })
            cautions.Add("The road is taken as level all along, as stated.");
        if (log.UsualStep.Seconds > 1)
            cautions.Add(FormattableString.Invariant($"Readings are {log.UsualStep.Seconds:0.#} s apart: what the board did between them is not known."));
        if (longestGap > LongGap)
            cautions.Add(FormattableString.Invariant($"The log has a gap of {longestGap:0} s: nothing is told of it, and after it temperatures begin with the log's own."));
        if (beyond > 1)
            cautions.Add(FormattableString.Invariant($"For {beyond:0} s the ride asked more than the board file's limits allow: a limit is set higher than stated, the grade is off, or somebody pushed."));
        return cautions;
    }

    /// <summary>The first reading from a time on, within a minute.</summary>
    static double? ReadingAt(RideLog log, Channel channel, double time)
    {
        const double Near = 60;
        var values = log.Si(channel);
        var at = log.Seconds.BinarySearch(time);
        for (var i = at < 0 ? ~at : at; i < values.Length && log.Seconds[i] <= time + Near; i++)
        {
            if (!double.IsNaN(values[i])) return values[i];
        }

        return null;
    }

    /// <summary>The charge at the start: as stated, by the voltage of the pack while it rested, or as the logger shows it.</summary>
    static double? ChargeAt(RideLog log, ReplayConditions conditions, Curve<Fraction, Voltage> restVoltage, int series)
    {
        if (conditions.StartCharge is { } stated) return Clamp(stated.Value, 0, 1);
        if (RestingVolts(log) is { } volts)
            return RestVoltage.ChargeAt(restVoltage, volts / series);
        return log.ChargesLeft.First is { } shown ? Clamp(shown.Value, 0, 1) : null;
    }

    /// <summary>Mean voltage of the first seconds, where the board stands and next to nothing is drawn.</summary>
    static double? RestingVolts(RideLog log)
    {
        const double Quiet = 0.5, Long = 10;
        var volts = log.Si(Channel.PackVoltage);
        var amperes = log.Si(Channel.PackCurrent);
        var speeds = log.Si(Channel.Speed);
        var t = log.Seconds;
        if (volts.IsEmpty || amperes.IsEmpty) return null;
        var (sum, count) = (0.0, 0);
        for (var i = 0; i < log.Count && t[i] - t[0] <= Long; i++)
        {
            if (Abs(amperes[i]) > Quiet || speeds[i] > Quiet) break;
            if (double.IsNaN(volts[i]) || double.IsNaN(amperes[i])) continue;
            sum += volts[i];
            count++;
        }

        return count >= 3 ? sum / count : null;
    }
}
