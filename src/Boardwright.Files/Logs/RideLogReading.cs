using Boardwright.Logs;
using Boardwright.Road;

namespace Boardwright.Files.Logs;

/// <summary>What one column of a log was taken for.</summary>
/// <param name="Column">Which column, counted from 1.</param>
/// <param name="Header">Its name in the file.</param>
/// <param name="IsTime">Whether it holds the times.</param>
/// <param name="Channel">What it holds; <c>null</c> for times and for columns that are passed over.</param>
/// <param name="Unit">The unit its numbers are in; <c>null</c> for times and for columns that are passed over.</param>
/// <param name="Why">What speaks for it, in words, above all where a unit is assumed.</param>
public sealed record LogColumn(int Column, string Header, bool IsTime, Channel? Channel, Unit? Unit, string Why)
{
    /// <summary>Whether the unit was neither written nor found in the values, but is only the usual one.</summary>
    public bool IsAssumed { get; init; }
    /// <summary>What stands in it in the first rows, as it is written.</summary>
    public IReadOnlyList<string> Samples { get; init; } = [];
}

/// <summary>How a log is read: its marks, and what each column was taken for. A proposal until the user confirms it.</summary>
/// <param name="Delimiter">What stands between fields.</param>
/// <param name="DecimalMark">Point or comma.</param>
/// <param name="Time">How times are written.</param>
/// <param name="Columns">Every column, in order.</param>
public sealed record LogMapping(char Delimiter, char DecimalMark, TimeForm Time, IReadOnlyList<LogColumn> Columns);

/// <summary>What the user says about a log where the program's own proposal will not do.</summary>
public sealed record LogWishes
{
    /// <summary>What stands between fields; <c>null</c> to find it.</summary>
    public char? Delimiter { get; init; }
    /// <summary>Point or comma; <c>null</c> to find it.</summary>
    public char? DecimalMark { get; init; }
    /// <summary>How times are written; <c>null</c> to find it.</summary>
    public TimeForm? Time { get; init; }
    /// <summary>By the name of a column: <c>time</c>, <c>none</c>, or a channel with or without a unit, such as <c>speed
    /// km/h</c>.</summary>
    public IReadOnlyDictionary<string, string> Columns { get; init; } = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
}

/// <summary>A row that could not be used.</summary>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Says">Why.</param>
public sealed record BadRow(int Line, string Says);

/// <summary>What came out of a log file: a log, or complaints; and in either case how it was read.</summary>
public sealed record RideLogReading
{
    /// <summary>The log; <c>null</c> when there are complaints.</summary>
    public RideLog? Log { get; init; }
    /// <summary>How it was read; <c>null</c> for GPX and where the file is no table.</summary>
    public LogMapping? Mapping { get; init; }
    /// <summary>The road profile of a GPX file, also where its times are refused.</summary>
    public Route? Profile { get; init; }
    /// <summary>Why there is no log.</summary>
    public IReadOnlyList<Complaint> Complaints { get; init; } = [];
    /// <summary>What the reader should know though the log was read, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
    /// <summary>Rows with fields in them, the row of names left out.</summary>
    public int RowCount { get; init; }
    /// <summary>Rows that are empty from end to end.</summary>
    public int EmptyRowCount { get; init; }
    /// <summary>Rows that could not be used, all counted.</summary>
    public int BadRowCount { get; init; }
    /// <summary>Those rows, the first <see cref="RideLogFile.MostBadRows"/> of them.</summary>
    public IReadOnlyList<BadRow> BadRows { get; init; } = [];
}
