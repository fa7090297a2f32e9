namespace Boardwright.Logs;

/// <summary>How times are written in a log.</summary>
public enum TimeForm
{
    /// <summary>Seconds since some beginning.</summary>
    Seconds,
    /// <summary>Milliseconds since some beginning.</summary>
    Milliseconds,
    /// <summary>A time of day, with or without its date.</summary>
    Clock,
}
