using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Boardwright.Files.Routes;
using Boardwright.Logs;

namespace Boardwright.Files.Logs;

/// <summary>One reading of a log written as a table with a row of names.</summary>
sealed class LogTable(ReadOnlyMemory<byte> content, string shown, LogWishes wishes)
{
    const int Preamble = 40;

    readonly List<string> notes = [];
    TableDialect dialect;
    TimeForm time;

    /// <summary>Reads the table.</summary>
    public RideLogReading Read()
    {
        var span = content.Span;
        if (!FindHeader(span, out var header, out var headerLine, out var rest))
            return RideLogFile.Refused(shown, 1, "", "No row of names with a column of time was found at the beginning.", "Begin the file with a row such as time_s,speed_kmh,pack_voltage_V,pack_current_A.");
        var names = Fields(header);
        var columns = Propose(names);
        Sample(rest, columns);
        if (Wrong(columns, headerLine) is { } wrong)
            return wrong;
        if (FindMark(rest, columns, headerLine) is { } ambiguous)
            return ambiguous with { Mapping = Map(columns) };
        if (FindTime(rest, columns, headerLine) is { } unclear)
            return unclear with { Mapping = Map(columns) };
        return Rows(rest, headerLine, columns);
    }

    LogMapping Map(List<LogColumn> columns) => new(dialect.Delimiter, dialect.DecimalMark, time, columns);

    bool FindHeader(ReadOnlySpan<byte> span, out ReadOnlySpan<byte> header, out int line, out ReadOnlySpan<byte> rest)
    {
        header = [];
        line = 0;
        rest = span;
        for (var tried = 1; tried <= Preamble && !rest.IsEmpty; tried++)
        {
            var row = TableDialect.NextLine(ref rest);
            if (row.IsEmpty || row[0] == (byte)'#' || !row.ContainsAnyInRange((byte)'A', (byte)'z')) continue;
            var found = wishes.Delimiter is not { } stated ? TableDialect.FindDelimiter(row, rest) : row.Contains((byte)stated) ? stated
                : null;
            if (found is not { } mark) continue;
            dialect = new(mark);
            if (!Fields(row).Exists(f => MeaningOf(f).IsTime)) continue;
            header = row;
            line = tried;
            return true;
        }

        return false;
    }

    LogHeader.Meaning MeaningOf(string name)
    {
        if (!wishes.Columns.TryGetValue(name.Trim(), out var wish))
            return LogHeader.Read(name);
        var words = wish.Trim().Split(' ', 2, StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0 || words[0] is "none")
            return new(false, null, null, 0, "passed over, as stated");
        if (words[0] is "time")
            return new(true, null, null, 9, "stated");
        return ChannelNamed(words[0]) is { } channel
            ? new(false, channel, words.Length > 1 ? UnitNamed(channel, words[1]) : null, 9, "stated")
            : new(false, null, null, -1, $"{RouteFile.Quoted(words[0])} is not a channel");
    }

    static Unit? UnitNamed(Channel channel, string text) => text is "share" ? LogHeader.Plain : LogHeader.Find(channel, text);

    /// <summary>A channel by its name in small letters joined by hyphens, such as <c>pack-voltage</c>.</summary>
    internal static Channel? ChannelNamed(string name)
    {
        foreach (var channel in RideLog.Recordable)
        {
            if (NameOf(channel).Equals(name.Replace('_', '-'), StringComparison.OrdinalIgnoreCase)) return channel;
        }

        return null;
    }

    /// <summary>The name of a channel in small letters joined by hyphens.</summary>
    internal static string NameOf(Channel channel) =>
        string.Concat($"{channel}".Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : $"{c}"));

    List<LogColumn> Propose(List<string> names)
    {
        var meanings = names.ConvertAll(MeaningOf);
        var times = Best(m => m.IsTime);
        var columns = new List<LogColumn>();
        foreach (var (i, meaning) in meanings.Index())
        {
            var name = names[i].Trim();
            if (meaning.IsTime)
                columns.Add(new(i + 1, name, i == times, null, null, i == times ? meaning.Why : "passed over: another column of time is clearer"));
            else if (meaning.Channel is { } channel && i != Best(m => m.Channel == channel))
                columns.Add(new(i + 1, name, false, null, null, $"passed over: column {Best(m => m.Channel == channel) + 1} already gives the {NameOf(channel)}"));
            else
                columns.Add(new(i + 1, name, false, meaning.Channel, meaning.Unit, meaning.Why));
        }

        return columns;

        int Best(Predicate<LogHeader.Meaning> asked)
        {
            var best = -1;
            for (var i = 0; i < meanings.Count; i++)
            {
                if (asked(meanings[i]) && (best < 0 || meanings[i].Worth > meanings[best].Worth)) best = i;
            }

            return best;
        }
    }

    void Sample(ReadOnlySpan<byte> rest, List<LogColumn> columns)
    {
        const int Samples = 3;
        const int Tried = 20;
        var rows = new List<List<string>>();
        for (var tried = 0; tried < Tried && rows.Count < Samples && !rest.IsEmpty; tried++)
        {
            var row = TableDialect.NextLine(ref rest);
            if (!row.IsEmpty && row[0] != (byte)'#' && row.IndexOfAnyExcept((byte)dialect.Delimiter, (byte)' ', (byte)'"') >= 0)
                rows.Add(Fields(row));
        }

        for (var i = 0; i < columns.Count; i++)
            columns[i] = columns[i] with { Samples = [.. rows.Where(row => row.Count > i).Select(row => row[i].Trim())] };
    }

    RideLogReading? Wrong(List<LogColumn> columns, int line)
    {
        foreach (var (name, wish) in wishes.Columns)
        {
            var column = columns.Find(c => c.Header.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
            if (column is null)
                return RideLogFile.Refused(shown, line, name, $"There is no column named {RouteFile.Quoted(name)}.", $"The columns are {string.Join(", ", columns.Select(c => c.Header))}.");
            var words = wish.Trim().Split(' ', 2, StringSplitOptions.RemoveEmptyEntries);
            if (words.Length > 0 && words[0] is not ("time" or "none") && ChannelNamed(words[0]) is not { })
                return RideLogFile.Refused(shown, line, name, $"{RouteFile.Quoted(words[0])} is not a channel.", $"The channels are {string.Join(", ", RideLog.Recordable.Select(NameOf))}, and time and none.");
            if (words.Length > 1 && words[0] is not ("time" or "none") && UnitNamed(ChannelNamed(words[0])!.Value, words[1]) is null)
                return RideLogFile.Refused(shown, line, name, $"{RouteFile.Quoted(words[1])} is not a unit of {NameOf(ChannelNamed(words[0])!.Value)}.", "Write it as in \"speed km/h\"; a share from 0 to 1 is \"share\".");
        }

        return columns.Exists(c => c.Channel is not null) ? null
            : RideLogFile.Refused(shown, line, "", $"None of the columns is one of a ride: {string.Join(", ", columns.Select(c => RouteFile.Quoted(c.Header)))}.", "Name a column by quantity and unit, such as speed_kmh, or say what a column holds with --column \"NAME=speed km/h\".") with { Mapping = Map(columns) };
    }

    /// <summary>Point or comma, by what the numbers themselves prove.</summary>
    RideLogReading? FindMark(ReadOnlySpan<byte> rest, List<LogColumn> columns, int headerLine)
    {
        if (wishes.DecimalMark is { } stated)
        {
            dialect = dialect with { DecimalMark = stated, MayGroup = true };
            return null;
        }

        dialect = dialect.WithDecimalMark(rest, headerLine, i => i < columns.Count && columns[i].Channel is not null, out var objection);
        return objection is var (line, says)
            ? RideLogFile.Refused(shown, line ?? headerLine, "", says, line is not null ? "State it with --decimal comma or --decimal point."
                : "Export the log with one decimal mark, or state it with --decimal point or --decimal comma.")
            : null;
    }

    /// <summary>How times are written: stated, by the unit of the name, or by the values where they leave no doubt.</summary>
    RideLogReading? FindTime(ReadOnlySpan<byte> rest, List<LogColumn> columns, int headerLine)
    {
        var at = columns.FindIndex(c => c.IsTime);
        if (wishes.Time is { } stated)
        {
            time = stated;
            return null;
        }

        var values = new List<double>();
        while (!rest.IsEmpty && values.Count < 400)
        {
            var row = TableDialect.NextLine(ref rest);
            if (row.IsEmpty || FieldAt(row, at) is not { IsEmpty: false } field) continue;
            if (field.Contains((byte)':'))
            {
                time = TimeForm.Clock;
                columns[at] = columns[at] with { Why = columns[at].Why + "; a time of day" };
                return null;
            }

            if (dialect.TryNumber(field, out var value)) values.Add(value);
        }

        if (LogHeader.TimeUnit(columns[at].Header) is { } named)
        {
            time = named;
            columns[at] = columns[at] with { Why = columns[at].Why + (named == TimeForm.Seconds ? ", in seconds by its unit" : ", in milliseconds by its unit") };
            return null;
        }

        var steps = values.Zip(values.Skip(1), (a, b) => b - a).Where(s => s > 0).Order().ToList();
        var middle = steps.Count > 0 ? steps[steps.Count / 2] : double.NaN;
        var isWhole = values.TrueForAll(v => v == Math.Floor(v));
        // Seconds since 1970 of this century have ten digits, milliseconds thirteen.
        if (values.Count > 0 && values[0] is > 9e8 and < 5e9) time = TimeForm.Seconds;
        else if (values.Count > 0 && values[0] is > 9e11 and < 5e12) time = TimeForm.Milliseconds;
        else if (middle <= 2 && (!isWhole || middle == 1)) time = TimeForm.Seconds;
        else if (middle >= 20) time = TimeForm.Milliseconds;
        else
        {
            return RideLogFile.Refused(shown, headerLine, columns[at].Header, FormattableString.Invariant($"The times do not say whether they are seconds or milliseconds; they step by {middle}."), "Give the name a unit, such as time_s or time_ms, or state it with --time s or --time ms.");
        }

        columns[at] = columns[at] with
        {
            IsAssumed = true,
            Why = columns[at].Why + FormattableString.Invariant($"; it gives no unit, and steps of {middle} are taken as {(time == TimeForm.Seconds ? "seconds" : "milliseconds")}")
        };
        return null;
    }

    RideLogReading Rows(ReadOnlySpan<byte> rest, int headerLine, List<LogColumn> columns)
    {
        var rows = new LogRows(dialect, time, columns);
        rows.Read(rest, headerLine);
        if (rows.WideCount > rows.Count / 2)
        {
            var says = FormattableString.Invariant($"{rows.WideCount} of {rows.Count} rows have more fields than the {columns.Count} that are named.");
            return Counted(RideLogFile.Refused(shown, headerLine, "", says, dialect.Delimiter != ',' ? "Name every column."
                : "If its numbers have a decimal comma, export the log with semicolons between fields; otherwise name every column."));
        }

        if (rows.EqualCount > 0 && rows.PartEqualTimes() is { } parted)
            notes.Add(parted);
        if (rows.Seconds.Count < 2)
        {
            return Counted(RideLogFile.Refused(shown, headerLine, "", "There are fewer than two rows that can be read.", rows.Bad is [var first, ..]
                ? FormattableString.Invariant($"The first bad one is line {first.Line}: {first.Says}.") : "Check that it is the right file."));
        }

        var log = Log(rows, columns);
        if (rows.EmptyCount > 0) notes.Add(FormattableString.Invariant($"{rows.EmptyCount} rows are empty from end to end."));
        return Counted(new() { Log = log, Notes = notes });

        RideLogReading Counted(RideLogReading reading) => reading with
        {
            Mapping = Map(columns),
            RowCount = rows.Count,
            EmptyRowCount = rows.EmptyCount,
            BadRowCount = rows.BadCount,
            BadRows = [.. rows.Bad.OrderBy(b => b.Line)],
        };
    }

    RideLog Log(LogRows rows, List<LogColumn> columns)
    {
        var channels = new Dictionary<Channel, double[]>();
        var times = rows.Seconds.Select(second => second - rows.Seconds[0]).ToArray();
        foreach (var (column, values) in columns.Zip(rows.Values))
        {
            if (column.Channel is Channel.Latitude or Channel.Longitude)
                channels[column.Channel.Value] = Converted(values!, LogHeader.UsualUnit(column.Channel.Value));
        }

        NoPlace(channels);
        for (var i = 0; i < columns.Count; i++)
        {
            if (rows.Values[i] is not { } values || columns[i].Channel is not { } channel) continue;
            if (columns[i].Unit is null) columns[i] = Guessed(columns[i], channel, values, times, channels);
            if (!channels.ContainsKey(channel)) channels[channel] = Converted(values, columns[i].Unit!);
        }

        return new(RouteFile.Title(shown), times, channels, begun: rows.Begun);
    }

    /// <summary>Receivers without a fix write zeros, which is a place in the sea.</summary>
    void NoPlace(Dictionary<Channel, double[]> channels)
    {
        if (!channels.TryGetValue(Channel.Latitude, out var north) || !channels.TryGetValue(Channel.Longitude, out var east)) return;
        var refused = 0;
        for (var i = 0; i < north.Length; i++)
        {
            if ((north[i] != 0 || east[i] != 0) && !(Math.Abs(north[i]) > Math.PI / 2) && !(Math.Abs(east[i]) > Math.PI)) continue;
            (north[i], east[i]) = (double.NaN, double.NaN);
            refused++;
        }

        if (refused > 0) notes.Add(FormattableString.Invariant($"{refused} positions are none on earth, or zero as receivers without a fix write it; those rows are taken to have no position."));
    }

    /// <summary>A unit that the name does not give: by the values where they tell, else the usual one, and that is said.</summary>
    static LogColumn Guessed(LogColumn column, Channel channel, List<double> values, double[] times, Dictionary<Channel, double[]> channels)
    {
        var usual = LogHeader.UsualUnit(channel);
        if (channel is Channel.Duty or Channel.ChargeLeft)
        {
            var most = values.Where(v => !double.IsNaN(v)).Select(Math.Abs).DefaultIfEmpty(0).Max();
            return most <= 1
                ? column with { Unit = LogHeader.Plain, Why = FormattableString.Invariant($"{column.Why}; no value is above {most}, so they are shares of 1") }
                : column with { Unit = usual, Why = FormattableString.Invariant($"{column.Why}; values go up to {most}, so they are per cent") };
        }

        if (channel is Channel.Speed or Channel.Distance && channels.ContainsKey(Channel.Latitude)
            && channels.ContainsKey(Channel.Longitude)
            && new RideLog("", times, channels.Where(c => c.Key is Channel.Latitude or Channel.Longitude).ToDictionary())
            .WayByPositions is { Metres: > 100 } way)
        {
            var written = channel == Channel.Speed ? Way(times, values) : values.Where(v => !double.IsNaN(v)).DefaultIfEmpty(0).Max();
            string[] units = channel == Channel.Speed ? ["km/h", "m/s", "mph"] : ["m", "km", "mi"];
            var (unit, ratio) = units.Select(u => LogHeader.Find(channel, u)!).Select(u => (u, u.Factor * written / way.Metres))
                .MinBy(p => Math.Abs(Math.Log(Math.Max(1e-9, p.Item2))));
            if (ratio is > 0.75 and < 1.3)
                return column with { Unit = unit, Why = FormattableString.Invariant($"{column.Why}; as {unit.Symbol} it gives {ratio * 100:0} % of the way by the positions") };
        }

        var isPlain = channel is Channel.Latitude or Channel.Longitude or Channel.PackVoltage or Channel.PackCurrent
            or Channel.PhaseCurrent;
        return column with { Unit = usual, IsAssumed = !isPlain, Why = $"{column.Why}; taken as {usual.Symbol}, as is usual" };
    }

    static double Way(double[] times, List<double> speeds)
    {
        var (way, last) = (0.0, -1);
        for (var i = 0; i < times.Length; i++)
        {
            if (double.IsNaN(speeds[i])) continue;
            if (last >= 0) way += (speeds[last] + speeds[i]) / 2 * (times[i] - times[last]);
            last = i;
        }

        return way;
    }

    static double[] Converted(List<double> values, Unit unit)
    {
        var si = new double[values.Count];
        var span = CollectionsMarshal.AsSpan(values);
        for (var i = 0; i < si.Length; i++) si[i] = unit.ToSi(span[i]);
        return si;
    }

    ReadOnlySpan<byte> FieldAt(ReadOnlySpan<byte> row, int column)
    {
        var fields = dialect.FieldsOf(row);
        for (var i = 0; fields.Next(out var field); i++)
        {
            if (i == column) return field;
        }

        return [];
    }

    List<string> Fields(ReadOnlySpan<byte> row)
    {
        var texts = new List<string>();
        for (var fields = dialect.FieldsOf(row); fields.Next(out var field);)
            texts.Add(System.Text.Unicode.Utf8.IsValid(field) ? Encoding.UTF8.GetString(field) : Encoding.Latin1.GetString(field));
        return texts;
    }
}
