namespace Boardwright.Tests.Shops;

/// <summary>A clock that goes on by one minute whenever it is looked at.</summary>
sealed class Clock : TimeProvider
{
    long minutes;

    public static DateTimeOffset Start { get; } = new(2026, 5, 4, 10, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Start.AddMinutes(Interlocked.Increment(ref minutes));
}
