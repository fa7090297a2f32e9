using Boardwright.Findings;

namespace Boardwright.Rides;

/// <summary>How a ride is computed and when it ends.</summary>
/// <source cref="Sources.CommonPractice"/>
public sealed record RideOptions
{
    /// <summary>Longest step allowed, s.</summary>
    public const double LongestStepSeconds = 5;
    /// <summary>Greatest length of a step; half of it leaves a quarter of the error. With the usual one neither twice nor half of it
    /// changes distance, energy or a temperature's rise by a thousandth.</summary>
    public Duration Step { get; init; } = Duration.FromSeconds(0.1);
    /// <summary>How often a moment is kept for the trace, which also has the last one; <c>null</c> for no trace.</summary>
    public Duration? TraceEvery { get; init; }
    /// <summary>Whether the route is ridden again and again until the reserve is reached; each round begins and ends at rest.</summary>
    public bool Repeats { get; init; }
    /// <summary>State of charge at the start, 0 to 1.</summary>
    public Fraction StartCharge { get; init; } = Fraction.FromPercent(100);
    /// <summary>Time after which a ride is broken off.</summary>
    public Duration Longest { get; init; } = Duration.FromHours(48);
}
