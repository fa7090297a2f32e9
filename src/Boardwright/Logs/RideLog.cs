using System.Globalization;
using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Road;

namespace Boardwright.Logs;

/// <summary>What goes along a ride, be it written down by a logger or computed.</summary>
public enum Channel
{
    /// <summary>Speed over the ground, m/s.</summary>
    Speed,
    /// <summary>Distance covered since the start, m.</summary>
    Distance,
    /// <summary>Voltage at the pack, V; of a computed ride, what reaches the controllers.</summary>
    PackVoltage,
    /// <summary>Current out of the pack, A; negative when it is charged.</summary>
    PackCurrent,
    /// <summary>Current in the motor's phases, A; negative when it brakes.</summary>
    PhaseCurrent,
    /// <summary>Share of the pack's voltage that the controller puts on the motor, 0 to 1.</summary>
    Duty,
    /// <summary>Temperature of the motor, K; of a computed ride, of its windings.</summary>
    MotorTemperature,
    /// <summary>Temperature of the controller, K.</summary>
    ControllerTemperature,
    /// <summary>Temperature of the pack, K.</summary>
    PackTemperature,
    /// <summary>Temperature of the air, K.</summary>
    AirTemperature,
    /// <summary>Charge left, 0 to 1, as the logger counts or guesses it.</summary>
    ChargeLeft,
    /// <summary>Height above the sea, m.</summary>
    Elevation,
    /// <summary>Latitude, rad, north positive.</summary>
    Latitude,
    /// <summary>Longitude, rad, east positive.</summary>
    Longitude,
    /// <summary>Time since the start, s; never falls.</summary>
    Time,
    /// <summary>Grade, rise over run.</summary>
    Grade,
    /// <summary>Power at the wheels, W; negative when braking.</summary>
    WheelPower,
    /// <summary>Power that the pack feeds the controllers, W; negative when it is fed back.</summary>
    PackPower,
    /// <summary>Temperature of the motors' cases, K.</summary>
    CaseTemperature,
}

/// <summary>One channel of a log: a value, or none, at each of its times.</summary>
/// <typeparam name="T">Quantity of the channel.</typeparam>
[StructLayout(LayoutKind.Auto)]
public readonly struct LogSeries<T>
    where T : struct, IQuantity<T>
{
    readonly double[]? values;

    internal LogSeries(double[]? values) => this.values = values;

    /// <summary>Whether the log has the channel.</summary>
    public bool IsThere => values is not null;
    /// <summary>How many times there are; 0 where the log has not the channel.</summary>
    public int Count => values?.Length ?? 0;
    /// <summary>The value at a time, or <c>null</c> where none was written down.</summary>
    public T? this[int index] => values is { } there && !double.IsNaN(there[index]) ? T.FromSi(there[index]) : null;
    /// <summary>The values in SI units, not a number where none was written down; empty where the log has not the channel.</summary>
    public ReadOnlySpan<double> Si => values;
    /// <summary>The first value that was written down.</summary>
    public T? First => Find(values, fromEnd: false);
    /// <summary>The last value that was written down.</summary>
    public T? Last => Find(values, fromEnd: true);

    /// <summary>The greatest value that was written down.</summary>
    public T? Greatest
    {
        get
        {
            var most = double.NaN;
            foreach (var value in Si)
            {
                if (!(value <= most) && !double.IsNaN(value)) most = value;
            }

            return double.IsNaN(most) ? null : T.FromSi(most);
        }
    }

    static T? Find(double[]? values, bool fromEnd)
    {
        for (var i = 0; i < values?.Length; i++)
        {
            var value = values[fromEnd ? values.Length - 1 - i : i];
            if (!double.IsNaN(value)) return T.FromSi(value);
        }

        return null;
    }
}

/// <summary>A ride as a logger wrote it down: times, and at each of them a value, or none, of each channel.</summary>
/// <remarks>Times rise. A gap is where nothing was written for long, or where the recording was broken off; nothing is ever joined across
/// it.</remarks>
/// <validity>Values are the logger's own; nothing is smoothed or filled in.</validity>
/// <error>The logger's: a speed from satellites lags about a second, one from the wheels is off by as much as their diameter.</error>
/// <source cref="Sources.RideRecord"/>
public sealed class RideLog
{
    readonly double[] seconds;
    readonly Dictionary<Channel, double[]> channels;
    readonly int[] breaks;

    /// <summary>States a log.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="seconds">Times since any beginning, each above the one before.</param>
    /// <param name="channels">Values in SI units, one for each time, not a number where there is none.</param>
    /// <param name="breaks">The readings before which the recording was broken off, rising.</param>
    /// <param name="begun">The date and time of the first reading, where the logger had a clock.</param>
    /// <exception cref="ArgumentException">There is no reading, a time does not rise, or a channel has another length.</exception>
    public RideLog(string name, ReadOnlySpan<double> seconds, IReadOnlyDictionary<Channel, double[]> channels,
        IReadOnlyList<int>? breaks = null, DateTimeOffset? begun = null)
    {
        ArgumentNullException.ThrowIfNull(channels);
        if (seconds.Length == 0)
            throw new ArgumentException("A log has at least one reading.", nameof(seconds));
        for (var i = 0; i < seconds.Length; i++)
        {
            if (!double.IsFinite(seconds[i]) || (i > 0 && seconds[i] <= seconds[i - 1]))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Time {i} is {seconds[i]} s, which does not follow the one before."), nameof(seconds));
        }

        foreach (var (channel, values) in channels)
        {
            if (values.Length != seconds.Length)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{values.Length} values of {channel} given for {seconds.Length} times."), nameof(channels));
        }

        (Name, this.seconds, this.channels, this.breaks, Begun) =
            (name, seconds.ToArray(), channels.ToDictionary(), [.. breaks ?? []], begun);
    }

    /// <summary>Its name.</summary>
    public string Name { get; }
    /// <summary>The date and time of the first reading, where the logger had a clock.</summary>
    public DateTimeOffset? Begun { get; }
    /// <summary>How many readings there are.</summary>
    public int Count => seconds.Length;
    /// <summary>The times in seconds, rising.</summary>
    public ReadOnlySpan<double> Seconds => seconds;
    /// <summary>The readings before which the recording was broken off.</summary>
    public IReadOnlyList<int> Breaks => breaks;
    /// <summary>What a logger can write down.</summary>
    public static IReadOnlyList<Channel> Recordable { get; } = [.. Enum.GetValues<Channel>().Where(c => c <= Channel.Longitude)];
    /// <summary>The channels that the log has.</summary>
    public IReadOnlyCollection<Channel> Channels => channels.Keys;
    /// <summary>From the first reading to the last, gaps included.</summary>
    public Duration Lasting => Duration.FromSeconds(seconds[^1] - seconds[0]);

    /// <summary>The middle of the steps between neighbouring times; zero for a single reading.</summary>
    public Duration UsualStep
    {
        get
        {
            if (Count < 2) return default;
            var steps = new double[Count - 1];
            for (var i = 0; i < steps.Length; i++) steps[i] = seconds[i + 1] - seconds[i];
            Array.Sort(steps);
            return Duration.FromSeconds(steps[steps.Length / 2]);
        }
    }

    /// <summary>Speed over the ground.</summary>
    public LogSeries<Speed> Speeds => new(Find(Channel.Speed));
    /// <summary>Distance covered.</summary>
    public LogSeries<Length> Distances => new(Find(Channel.Distance));
    /// <summary>Voltage at the pack.</summary>
    public LogSeries<Voltage> PackVoltages => new(Find(Channel.PackVoltage));
    /// <summary>Current out of the pack.</summary>
    public LogSeries<Current> PackCurrents => new(Find(Channel.PackCurrent));
    /// <summary>Current in the motor's phases.</summary>
    public LogSeries<Current> PhaseCurrents => new(Find(Channel.PhaseCurrent));
    /// <summary>Share of the pack's voltage on the motor.</summary>
    public LogSeries<Fraction> Duties => new(Find(Channel.Duty));
    /// <summary>Temperature of the motor.</summary>
    public LogSeries<Temperature> MotorTemperatures => new(Find(Channel.MotorTemperature));
    /// <summary>Temperature of the controller.</summary>
    public LogSeries<Temperature> ControllerTemperatures => new(Find(Channel.ControllerTemperature));
    /// <summary>Temperature of the pack.</summary>
    public LogSeries<Temperature> PackTemperatures => new(Find(Channel.PackTemperature));
    /// <summary>Temperature of the air.</summary>
    public LogSeries<Temperature> AirTemperatures => new(Find(Channel.AirTemperature));
    /// <summary>Charge left.</summary>
    public LogSeries<Fraction> ChargesLeft => new(Find(Channel.ChargeLeft));
    /// <summary>Height above the sea.</summary>
    public LogSeries<Length> Elevations => new(Find(Channel.Elevation));
    /// <summary>Latitude.</summary>
    public LogSeries<Angle> Latitudes => new(Find(Channel.Latitude));
    /// <summary>Longitude.</summary>
    public LogSeries<Angle> Longitudes => new(Find(Channel.Longitude));
    /// <summary>Whether the log has a channel.</summary>
    public bool Has(Channel channel) => channels.ContainsKey(channel);
    /// <summary>The values of a channel in SI units, not a number where there is none; empty where the log has not the channel.</summary>
    public ReadOnlySpan<double> Si(Channel channel) => Find(channel);

    /// <summary>The place at a reading, or <c>null</c> where it was not written down.</summary>
    public Position? PositionAt(int index) =>
        Latitudes[index] is { } latitude && Longitudes[index] is { } longitude ? new Position(latitude, longitude) : null;

    /// <summary>The readings in stretches without a gap: no step longer than stated, and no break inside.</summary>
    /// <param name="longestStep">Longest step that is not a gap, above 0.</param>
    /// <returns>First and one past the last reading of each stretch.</returns>
    public IReadOnlyList<(int From, int To)> Stretches(Duration longestStep)
    {
        var stretches = new List<(int From, int To)>();
        var (from, next) = (0, 0);
        for (var i = 1; i < Count; i++)
        {
            var isBroken = next < breaks.Length && breaks[next] <= i;
            while (next < breaks.Length && breaks[next] <= i) next++;
            if (!isBroken && seconds[i] - seconds[i - 1] <= longestStep.Seconds) continue;
            stretches.Add((from, i));
            from = i;
        }

        stretches.Add((from, Count));
        return stretches;
    }

    /// <summary>The log at equal steps: straight between neighbouring readings, and nothing inside a gap.</summary>
    /// <param name="step">Length of a step, above 0.</param>
    /// <param name="longestStep">Longest step between readings that is not a gap.</param>
    /// <returns>A log whose times are whole steps after the first; where a gap is, times are missing, and the reading after it is a
    /// break.</returns>
    public RideLog Resampled(Duration step, Duration longestStep)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step.Seconds, nameof(step));
        var (times, ends) = (new List<double>(), new List<int>());
        var (below, share) = (new List<int>(), new List<double>());
        foreach (var (from, to) in Stretches(longestStep))
        {
            var first = (long)Math.Ceiling((seconds[from] - seconds[0]) / step.Seconds - 1e-9);
            var last = (long)Math.Floor((seconds[to - 1] - seconds[0]) / step.Seconds + 1e-9);
            if (times.Count > 0 && last >= first) ends.Add(times.Count);
            var i = from;
            for (var k = first; k <= last; k++)
            {
                var time = seconds[0] + k * step.Seconds;
                while (i + 1 < to - 1 && seconds[i + 1] <= time) i++;
                times.Add(time);
                below.Add(i);
                share.Add(i + 1 < to ? Math.Clamp((time - seconds[i]) / (seconds[i + 1] - seconds[i]), 0, 1) : 0);
            }
        }

        if (times.Count == 0)
            throw new ArgumentException("No stretch is as long as a step.", nameof(step));
        var resampled = new Dictionary<Channel, double[]>();
        foreach (var (channel, values) in channels)
        {
            var on = new double[times.Count];
            for (var k = 0; k < on.Length; k++)
            {
                // A reading that is met exactly needs no neighbour.
                on[k] = share[k] == 0 ? values[below[k]]
                    : share[k] == 1 ? values[below[k] + 1]
                    : values[below[k]] + share[k] * (values[below[k] + 1] - values[below[k]]);
            }

            resampled[channel] = on;
        }

        return new(Name, CollectionsMarshal.AsSpan(times), resampled, ends, Begun);
    }

    /// <summary>Way by the positions, each on the great circle from the last known one; breaks are not joined.</summary>
    /// <returns>The way, or <c>null</c> without positions.</returns>
    public Length? WayByPositions
    {
        get
        {
            if (!Latitudes.IsThere || !Longitudes.IsThere) return null;
            var way = default(Length);
            Position? last = null;
            var next = 0;
            for (var i = 0; i < Count; i++)
            {
                while (next < breaks.Length && breaks[next] <= i)
                {
                    last = null;
                    next++;
                }

                if (PositionAt(i) is not { } here) continue;
                if (last is { } before) way += GreatCircle.Between(before, here);
                last = here;
            }

            return way;
        }
    }

    /// <summary>Way by the speeds: Σ (v_i + v_i+1)/2 Δt between neighbouring readings, breaks not joined.</summary>
    /// <returns>The way, or <c>null</c> without speeds.</returns>
    /// <error>With readings seconds apart, 15 % too short or too long: speeds between them are not known.</error>
    public Length? WayBySpeeds
    {
        get
        {
            if (Find(Channel.Speed) is not { } speeds) return null;
            var (way, last) = (0.0, -1);
            var next = 0;
            for (var i = 0; i < Count; i++)
            {
                while (next < breaks.Length && breaks[next] <= i)
                {
                    last = -1;
                    next++;
                }

                if (double.IsNaN(speeds[i])) continue;
                if (last >= 0) way += (speeds[last] + speeds[i]) / 2 * (seconds[i] - seconds[last]);
                last = i;
            }

            return Length.FromMetres(way);
        }
    }

    double[]? Find(Channel channel) => channels.GetValueOrDefault(channel);
}
