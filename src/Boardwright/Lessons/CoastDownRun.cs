using Boardwright.Findings;
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
