using System.Globalization;

namespace Boardwright.Units;

/// <summary>When something was done, as a person writes it: a day, with or without the time of day, by the clock on the wall.</summary>
/// <remarks>It has no time zone, because what is written at a bench has none.</remarks>
public readonly record struct Moment : IComparable<Moment>
{
    /// <summary>How it is written, for help texts.</summary>
    public const string Example = "2026-05-03 14:20";

    readonly DateTime time;

    Moment(DateTime time, bool hasClock) => (this.time, HasClock) = (time, hasClock);

    /// <summary>The day.</summary>
    public DateOnly Day => DateOnly.FromDateTime(time);
    /// <summary>Whether the time of day is said.</summary>
    public bool HasClock { get; }
    /// <summary>A day without the time.</summary>
    public static Moment On(DateOnly day) => new(day.ToDateTime(TimeOnly.MinValue), hasClock: false);
    /// <summary>A time by the clock on the wall, to the minute; its zone is dropped.</summary>
    public static Moment At(DateTimeOffset time) =>
        new(new(time.Year, time.Month, time.Day, time.Hour, time.Minute, 0, DateTimeKind.Unspecified), hasClock: true);

    /// <summary>Reads <c>2026-05-03</c> or <c>2026-05-03 14:20</c>.</summary>
    /// <returns>The moment, or <c>null</c> when the text is none.</returns>
    public static Moment? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var plain = text.Trim();
        if (DateOnly.TryParseExact(plain, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            return On(day);
        return DateTime.TryParseExact(plain, ["yyyy-MM-dd HH:mm", "yyyy-MM-dd'T'HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
            ? new(time, hasClock: true) : null;
    }

    /// <inheritdoc/>
    public int CompareTo(Moment other) => time.CompareTo(other.time);

    /// <summary>Whether the first is earlier; a day without a time begins at midnight.</summary>
    public static bool operator <(Moment a, Moment b) => a.time < b.time;
    /// <summary>Whether the first is later.</summary>
    public static bool operator >(Moment a, Moment b) => a.time > b.time;
    /// <summary>Whether the first is not later.</summary>
    public static bool operator <=(Moment a, Moment b) => a.time <= b.time;
    /// <summary>Whether the first is not earlier.</summary>
    public static bool operator >=(Moment a, Moment b) => a.time >= b.time;
    /// <summary>As it is written in files.</summary>
    public override string ToString() => time.ToString(HasClock ? "yyyy-MM-dd HH:mm" : "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
