using System.Text;
using Boardwright.Files.Routes;
using Boardwright.Logs;

namespace Boardwright.Files.Logs;

/// <summary>The rows of a log, read one after the other: what can be used is kept by column, the rest is counted and listed.</summary>
sealed class LogRows(TableDialect dialect, TimeForm time, List<LogColumn> columns)
{
    const double Day = 86_400;

    readonly int timeAt = columns.FindIndex(static column => column.IsTime);
    readonly double[] row = new double[columns.Count];
    readonly List<int> lines = [];
    double day;
    double lastOfDay = double.NaN;

    /// <summary>The time of each row that is kept.</summary>
    public List<double> Seconds { get; } = [];
    /// <summary>The values of each column that holds a channel, as they are written.</summary>
    public List<double>?[] Values { get; } = [.. columns.Select(static column => column.Channel is null ? null : new List<double>())];
    /// <summary>The first time, where the rows give the date.</summary>
    public DateTimeOffset? Begun { get; private set; }

    public int Count { get; private set; }

    public int EmptyCount { get; private set; }

    /// <summary>How many have more fields than are named.</summary>
    public int WideCount { get; private set; }
    /// <summary>How many have the time of the row above.</summary>
    public int EqualCount { get; private set; }

    public int BadCount { get; private set; }

    public List<BadRow> Bad { get; } = [];

    /// <summary>Reads all rows.</summary>
    /// <param name="rest">The text behind the row of names.</param>
    /// <param name="line">The line of the row of names.</param>
    public void Read(ReadOnlySpan<byte> rest, int line)
    {
        while (!rest.IsEmpty)
        {
            line++;
            var text = TableDialect.NextLine(ref rest);
            if (text.IsEmpty || text[0] == (byte)'#') continue;
            if (text.IndexOfAnyExcept((byte)dialect.Delimiter, (byte)' ', (byte)'"') < 0)
            {
                EmptyCount++;
                continue;
            }

            Count++;
            if ((ReadFields(text, out var stamp) ?? JudgeOrder(stamp)) is { } fault)
                Refuse(line, fault);
            else
                Keep(line, stamp);
        }
    }

    /// <summary>Rows of one time: parted evenly where the clock is coarser than the rows, left out where they are few.</summary>
    /// <returns>What there is to say about it, or <c>null</c>.</returns>
    public string? PartEqualTimes()
    {
        if (EqualCount * 4 < Seconds.Count)
        {
            for (var i = Seconds.Count - 1; i > 0; i--)
            {
                if (Seconds[i] == Seconds[i - 1]) TakeOut(i, "it has the time of the row above");
            }

            return null;
        }

        var gaps = Seconds.Zip(Seconds.Skip(1), static (a, b) => b - a).Where(static gap => gap > 0).Order().ToList();
        var usual = gaps.Count > 0 ? gaps[gaps.Count / 2] : 1;
        for (var from = 0; from < Seconds.Count;)
        {
            var to = from + 1;
            while (to < Seconds.Count && Seconds[to] == Seconds[from]) to++;
            var (start, reach) = (Seconds[from], to < Seconds.Count ? Math.Min(usual, Seconds[to] - Seconds[from]) : usual);
            for (var i = from; i < to; i++) Seconds[i] = start + reach * (i - from) / (to - from);
            from = to;
        }

        return FormattableString.Invariant($"The clock is coarser than the rows: {EqualCount} have the time of the row above, ")
            + "and rows of one time are parted evenly.";
    }

    // What is wrong with the row, or null.
    string? ReadFields(ReadOnlySpan<byte> text, out double stamp)
    {
        var (column, fault) = (0, (string?)null);
        stamp = double.NaN;
        for (var fields = dialect.FieldsOf(text); fields.Next(out var field); column++)
        {
            if (column >= columns.Count)
            {
                // A delimiter at the end of each row is no field.
                if (field.IsEmpty && fields.IsRestEmpty) column--;
            }
            else if (column == timeAt)
            {
                if (!ReadTime(field, out stamp)) fault = field.IsEmpty ? "it has no time" : $"its time, {Shown(field)}, cannot be read";
            }
            else if (Values[column] is not null)
            {
                row[column] = double.NaN;
                if (IsMissing(field) || dialect.TryNumber(field, out row[column])) continue;
                row[column] = double.NaN;
                fault = $"{columns[column].Header} is {Shown(field)}, which is no number";
            }
        }

        if (column > columns.Count) WideCount++;
        return column == columns.Count ? fault : FormattableString.Invariant($"it has {column} fields, and {columns.Count} are named");
    }

    string? JudgeOrder(double stamp)
    {
        if (Seconds.Count == 0 || !(stamp < Seconds[^1])) return null;
        // One clock far ahead of both its neighbours is itself the fault, not all that follow.
        if (Seconds.Count == 1 || stamp <= Seconds[^2] || Seconds[^1] - Seconds[^2] <= 3600)
            return "its time lies before that of the row above";
        TakeOut(Seconds.Count - 1, "its time lies more than an hour ahead of the rows about it");
        return null;
    }

    void Keep(int line, double stamp)
    {
        if (Seconds.Count > 0 && stamp == Seconds[^1]) EqualCount++;
        Seconds.Add(stamp);
        lines.Add(line);
        for (var i = 0; i < Values.Length; i++) Values[i]?.Add(row[i]);
    }

    void TakeOut(int index, string says)
    {
        Refuse(lines[index], says);
        Seconds.RemoveAt(index);
        lines.RemoveAt(index);
        foreach (var values in Values) values?.RemoveAt(index);
    }

    void Refuse(int line, string says)
    {
        BadCount++;
        if (Bad.Count < RideLogFile.MostBadRows) Bad.Add(new(line, says));
    }

    bool ReadTime(ReadOnlySpan<byte> field, out double seconds)
    {
        seconds = double.NaN;
        if (time != TimeForm.Clock)
        {
            if (!dialect.TryNumber(field, out var number)) return false;
            seconds = time == TimeForm.Seconds ? number : number / 1000;
            return true;
        }

        if (!LogNumber.TryClock(field, out seconds, out var hasDate)) return false;
        if (hasDate)
        {
            Begun ??= new DateTimeOffset(DateTime.MinValue.AddSeconds(seconds), TimeSpan.Zero);
            return true;
        }

        // Past midnight a clock without date begins anew.
        if (lastOfDay - seconds > Day / 2) day += Day;
        lastOfDay = seconds;
        seconds += day;
        return true;
    }

    static bool IsMissing(ReadOnlySpan<byte> field) => field.Length switch
    {
        0 => true,
        1 => field[0] == (byte)'-',
        2 => field.SequenceEqual("--"u8) || Is(field, "na"u8),
        3 => Is(field, "nan"u8) || Is(field, "n/a"u8),
        4 => Is(field, "null"u8) || Is(field, "none"u8),
        _ => false,
    };

    static bool Is(ReadOnlySpan<byte> field, ReadOnlySpan<byte> word) => Ascii.EqualsIgnoreCase(field, word);

    static string Shown(ReadOnlySpan<byte> field) => RouteFile.Quoted(Encoding.UTF8.GetString(field[..Math.Min(field.Length, 60)]));
}
