using System.Buffers;
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
    const double Day = 86_400;

    readonly List<string> notes = [];
    readonly List<BadRow> bad = [];
    int badCount;
    char delimiter;
    char mark = '.';
    bool mayGroup;
    TimeForm time;

    /// <summary>A channel as it fills.</summary>
    sealed class Filling(Channel channel)
    {
        public Channel Channel { get; } = channel;
        public List<double> Values { get; } = [];
    }

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
            return ambiguous with { Mapping = new(delimiter, mark, time, columns) };
        if (FindTime(rest, columns, headerLine) is { } unclear)
            return unclear with { Mapping = new(delimiter, mark, time, columns) };
        return Rows(rest, headerLine, columns, names.Count);
    }

    bool FindHeader(ReadOnlySpan<byte> span, out ReadOnlySpan<byte> header, out int line, out ReadOnlySpan<byte> rest)
    {
        header = [];
        line = 0;
        rest = span;
        for (var tried = 1; tried <= Preamble && !rest.IsEmpty; tried++)
        {
            var row = Line(ref rest);
            if (row.IsEmpty || row[0] == (byte)'#' || !row.ContainsAnyInRange((byte)'A', (byte)'z')) continue;
            if (FindDelimiter(row, rest) is not { } found) continue;
            delimiter = found;
            if (!Fields(row).Exists(f => MeaningOf(f).IsTime)) continue;
            header = row;
            line = tried;
            return true;
        }

        return false;
    }

    /// <summary>The mark that parts the names, and the following rows into as many fields.</summary>
    char? FindDelimiter(ReadOnlySpan<byte> header, ReadOnlySpan<byte> rest)
    {
        if (wishes.Delimiter is { } stated)
            return header.IndexOf((byte)stated) >= 0 ? stated : null;
        (char Mark, double Share)? best = null;
        foreach (var candidate in "\t;|,")
        {
            var count = Count(header, (byte)candidate);
            if (count == 0) continue;
            var (rows, alike) = (0, 0);
            var left = rest;
            while (rows < 50 && !left.IsEmpty)
            {
                var row = Line(ref left);
                if (row.IsEmpty) continue;
                rows++;
                if (Count(row, (byte)candidate) == count) alike++;
            }

            var share = rows == 0 ? 1 : (double)alike / rows;
            if (best is null || share > best.Value.Share) best = (candidate, share);
        }

        return best?.Mark;
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
            var row = Line(ref rest);
            if (!row.IsEmpty && row[0] != (byte)'#' && row.IndexOfAnyExcept((byte)delimiter, (byte)' ', (byte)'"') >= 0)
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
            : RideLogFile.Refused(shown, line, "", $"None of the columns is one of a ride: {string.Join(", ", columns.Select(c => RouteFile.Quoted(c.Header)))}.", "Name a column by quantity and unit, such as speed_kmh, or say what a column holds with --column \"NAME=speed km/h\".") with { Mapping = new(delimiter, mark, time, columns) };
    }

    /// <summary>Point or comma, by what the numbers themselves prove.</summary>
    RideLogReading? FindMark(ReadOnlySpan<byte> rest, List<LogColumn> columns, int headerLine)
    {
        if (wishes.DecimalMark is { } stated)
        {
            (mark, mayGroup) = (stated, true);
            return null;
        }

        // Without a comma inside a field a point can only be a decimal point.
        if (delimiter == ',' ? rest.IndexOf((byte)'"') < 0 : rest.IndexOf((byte)',') < 0)
            return null;
        var (comma, point, line) = (0, 0, headerLine);
        (int Line, string Text)? doubtful = null;
        while (!rest.IsEmpty)
        {
            line++;
            var row = Line(ref rest);
            if (row.IsEmpty || row[0] == (byte)'#') continue;
            var column = 0;
            for (var left = row; column < columns.Count; column++)
            {
                if (!Next(ref left, out var field)) break;
                if (columns[column] is not { Channel: not null } || field.IndexOfAny((byte)',', (byte)'.') < 0) continue;
                var sign = Evidence(field);
                if (sign == Proof.Comma) comma++;
                else if (sign == Proof.Point) point++;
                else if (sign == Proof.Doubt) doubtful ??= (line, Encoding.UTF8.GetString(field));
            }
        }

        if (comma > 0 && point > 0)
            return RideLogFile.Refused(shown, headerLine, "", FormattableString.Invariant($"{comma} numbers have a decimal comma and {point} a decimal point."), "Export the log with one decimal mark, or state it with --decimal point or --decimal comma.");
        if (comma == 0 && point == 0 && doubtful is { } doubt)
            return RideLogFile.Refused(shown, doubt.Line, "", $"{RouteFile.Quoted(doubt.Text)} may mean {doubt.Text.Replace(',', '.')} or {doubt.Text.Replace(",", "", StringComparison.Ordinal)}, and no number of the file tells which.", "State it with --decimal comma or --decimal point.");
        if (comma > 0) mark = ',';
        mayGroup = true;
        return null;
    }

    enum Proof
    {
        None,
        Comma,
        Point,
        Doubt,
    }

    static readonly SearchValues<byte> Figures = SearchValues.Create("0123456789.,"u8);

    static Proof Evidence(ReadOnlySpan<byte> field)
    {
        if (field[0] is (byte)'-' or (byte)'+') field = field[1..];
        if (field.IndexOfAnyExcept(Figures) >= 0) return Proof.None;
        var (commas, points) = (field.Count((byte)','), field.Count((byte)'.'));
        if (commas > 0 && points > 0)
            return field.LastIndexOf((byte)',') > field.LastIndexOf((byte)'.') ? Proof.Comma : Proof.Point;
        if (commas + points > 1)
            return commas > 0 ? Proof.Point : Proof.Comma;
        var at = field.IndexOfAny((byte)',', (byte)'.');
        // Three digits after the mark, and one to three before it of which the first is no zero: it may part thousands.
        var mayPart = field.Length - at - 1 == 3 && at is >= 1 and <= 3 && field[0] != (byte)'0';
        if (mayPart) return commas > 0 ? Proof.Doubt : Proof.None;
        return commas > 0 ? Proof.Comma : Proof.Point;
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
            var row = Line(ref rest);
            if (row.IsEmpty || FieldAt(row, at) is not { IsEmpty: false } field) continue;
            if (field.Contains((byte)':'))
            {
                time = TimeForm.Clock;
                columns[at] = columns[at] with { Why = columns[at].Why + "; a time of day" };
                return null;
            }

            if (LogNumber.TryRead(field, (byte)mark, mayGroup, out var value)) values.Add(value);
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

        columns[at] = columns[at] with { IsAssumed = true, Why = columns[at].Why + FormattableString.Invariant($"; it gives no unit, and steps of {middle} are taken as {(time == TimeForm.Seconds ? "seconds" : "milliseconds")}") };
        return null;
    }

    RideLogReading Rows(ReadOnlySpan<byte> rest, int headerLine, List<LogColumn> columns, int width)
    {
        var timeAt = columns.FindIndex(c => c.IsTime);
        var fillings = new Filling?[columns.Count];
        for (var i = 0; i < columns.Count; i++)
        {
            if (columns[i].Channel is { } channel) fillings[i] = new(channel);
        }

        var (seconds, lines) = (new List<double>(), new List<int>());
        var row = new double[columns.Count];
        var (line, rows, empty, equal, wide) = (headerLine, 0, 0, 0, 0);
        var (day, lastOfDay) = (0.0, double.NaN);
        DateTimeOffset? begun = null;
        while (!rest.IsEmpty)
        {
            line++;
            var text = Line(ref rest);
            if (text.IsEmpty || text[0] == (byte)'#') continue;
            if (text.IndexOfAnyExcept((byte)delimiter, (byte)' ', (byte)'"') < 0)
            {
                empty++;
                continue;
            }

            rows++;
            var left = text;
            var (column, stamp, fault) = (0, double.NaN, "");
            while (Next(ref left, out var field))
            {
                if (column >= width)
                {
                    // A delimiter at the end of each row is no field.
                    if (field.IsEmpty && left.IsEmpty) continue;
                    column++;
                    continue;
                }

                if (column == timeAt)
                {
                    if (!ReadTime(field, ref day, ref lastOfDay, ref begun, out stamp))
                        fault = field.IsEmpty ? "it has no time" : $"its time, {Text(field)}, cannot be read";
                }
                else if (fillings[column] is not null)
                {
                    row[column] = double.NaN;
                    if (!IsMissing(field) && !LogNumber.TryRead(field, (byte)mark, mayGroup, out row[column]))
                    {
                        row[column] = double.NaN;
                        fault = $"{columns[column].Header} is {Text(field)}, which is no number";
                    }
                }

                column++;
            }

            if (column != width)
            {
                if (column > width) wide++;
                fault = FormattableString.Invariant($"it has {column} fields, and {width} are named");
            }

            if (fault.Length == 0 && seconds.Count > 0 && stamp < seconds[^1])
            {
                // One clock far ahead of both its neighbours is itself the fault, not all that follow.
                if (seconds.Count > 1 && stamp > seconds[^2] && seconds[^1] - seconds[^2] > 3600)
                {
                    Bad(lines[^1], "its time lies more than an hour ahead of the rows about it");
                    TakeOut(seconds.Count - 1, seconds, lines, fillings);
                }
                else
                    fault = "its time lies before that of the row above";
            }

            if (fault.Length > 0)
            {
                Bad(line, fault);
                continue;
            }

            if (seconds.Count > 0 && stamp == seconds[^1]) equal++;
            seconds.Add(stamp);
            lines.Add(line);
            for (var i = 0; i < fillings.Length; i++) fillings[i]?.Values.Add(row[i]);
        }

        if (rows > 0 && wide > rows / 2)
        {
            return RideLogFile.Refused(shown, headerLine, "", FormattableString.Invariant($"{wide} of {rows} rows have more fields than the {width} that are named."), delimiter == ',' ? "If its numbers have a decimal comma, export the log with semicolons between fields; otherwise name every column." : "Name every column.")
                with
            { Mapping = new(delimiter, mark, time, columns), RowCount = rows, BadRowCount = badCount, BadRows = bad };
        }

        if (equal > 0) Part(equal, seconds, lines, fillings);
        if (seconds.Count < 2)
        {
            return RideLogFile.Refused(shown, headerLine, "", "There are fewer than two rows that can be read.", bad.Count > 0 ? $"The first bad one is line {bad[0].Line.ToString(CultureInfo.InvariantCulture)}: {bad[0].Says}." : "Check that it is the right file.")
                with
            { Mapping = new(delimiter, mark, time, columns), RowCount = rows, EmptyRowCount = empty, BadRowCount = badCount, BadRows = bad };
        }

        var log = Log(seconds, columns, fillings, begun);
        if (empty > 0) notes.Add(FormattableString.Invariant($"{empty} rows are empty from end to end."));
        return new()
        {
            Log = log,
            Mapping = new(delimiter, mark, time, columns),
            Notes = notes,
            RowCount = rows,
            EmptyRowCount = empty,
            BadRowCount = badCount,
            BadRows = [.. bad.OrderBy(b => b.Line)],
        };
    }

    /// <summary>Rows of one time: parted evenly where the clock is coarser than the rows, left out where they are few.</summary>
    void Part(int equal, List<double> seconds, List<int> lines, Filling?[] fillings)
    {
        if (equal * 4 < seconds.Count)
        {
            for (var i = seconds.Count - 1; i > 0; i--)
            {
                if (seconds[i] != seconds[i - 1]) continue;
                Bad(lines[i], "it has the time of the row above");
                TakeOut(i, seconds, lines, fillings);
            }

            return;
        }

        var gaps = new List<double>();
        for (var i = 1; i < seconds.Count; i++)
        {
            if (seconds[i] > seconds[i - 1]) gaps.Add(seconds[i] - seconds[i - 1]);
        }

        gaps.Sort();
        var usual = gaps.Count > 0 ? gaps[gaps.Count / 2] : 1;
        for (var from = 0; from < seconds.Count;)
        {
            var to = from + 1;
            while (to < seconds.Count && seconds[to] == seconds[from]) to++;
            var (start, reach) = (seconds[from], to < seconds.Count ? Math.Min(usual, seconds[to] - seconds[from]) : usual);
            for (var i = from; i < to; i++) seconds[i] = start + reach * (i - from) / (to - from);
            from = to;
        }

        notes.Add(FormattableString.Invariant($"The clock is coarser than the rows: {equal} have the time of the row above, and rows of one time are parted evenly."));
    }

    static void TakeOut(int index, List<double> seconds, List<int> lines, Filling?[] fillings)
    {
        seconds.RemoveAt(index);
        lines.RemoveAt(index);
        foreach (var filling in fillings) filling?.Values.RemoveAt(index);
    }

    RideLog Log(List<double> seconds, List<LogColumn> columns, Filling?[] fillings, DateTimeOffset? begun)
    {
        var channels = new Dictionary<Channel, double[]>();
        var (first, times) = (seconds[0], new double[seconds.Count]);
        for (var i = 0; i < times.Length; i++) times[i] = seconds[i] - first;
        for (var i = 0; i < fillings.Length; i++)
        {
            if (fillings[i] is { } filling && columns[i].Channel is Channel.Latitude or Channel.Longitude)
                channels[columns[i].Channel!.Value] = Converted(filling.Values, LogHeader.UsualUnit(columns[i].Channel!.Value));
        }

        NoPlace(channels);
        for (var i = 0; i < fillings.Length; i++)
        {
            if (fillings[i] is not { } filling) continue;
            if (columns[i].Unit is null) columns[i] = Guessed(columns[i], filling, times, channels);
            if (!channels.ContainsKey(filling.Channel)) channels[filling.Channel] = Converted(filling.Values, columns[i].Unit!);
        }

        return new(RouteFile.Title(shown), times, channels, begun: begun);
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
    static LogColumn Guessed(LogColumn column, Filling filling, double[] times, Dictionary<Channel, double[]> channels)
    {
        var channel = filling.Channel;
        var usual = LogHeader.UsualUnit(channel);
        if (channel is Channel.Duty or Channel.ChargeLeft)
        {
            var most = filling.Values.Where(v => !double.IsNaN(v)).Select(Math.Abs).DefaultIfEmpty(0).Max();
            return most <= 1
                ? column with { Unit = LogHeader.Plain, Why = FormattableString.Invariant($"{column.Why}; no value is above {most}, so they are shares of 1") }
                : column with { Unit = usual, Why = FormattableString.Invariant($"{column.Why}; values go up to {most}, so they are per cent") };
        }

        if (channel is Channel.Speed or Channel.Distance && channels.ContainsKey(Channel.Latitude) && channels.ContainsKey(Channel.Longitude)
            && new RideLog("", times, channels.Where(c => c.Key is Channel.Latitude or Channel.Longitude).ToDictionary()).WayByPositions is { Metres: > 100 } way)
        {
            var written = channel == Channel.Speed ? Way(times, filling.Values) : filling.Values.Where(v => !double.IsNaN(v)).DefaultIfEmpty(0).Max();
            string[] units = channel == Channel.Speed ? ["km/h", "m/s", "mph"] : ["m", "km", "mi"];
            var (unit, ratio) = units.Select(u => LogHeader.Find(channel, u)!).Select(u => (u, u.Factor * written / way.Metres)).MinBy(p => Math.Abs(Math.Log(Math.Max(1e-9, p.Item2))));
            if (ratio is > 0.75 and < 1.3)
                return column with { Unit = unit, Why = FormattableString.Invariant($"{column.Why}; as {unit.Symbol} it gives {ratio * 100:0} % of the way by the positions") };
        }

        var isPlain = channel is Channel.Latitude or Channel.Longitude or Channel.PackVoltage or Channel.PackCurrent or Channel.PhaseCurrent;
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

    bool ReadTime(ReadOnlySpan<byte> field, ref double day, ref double lastOfDay, ref DateTimeOffset? begun, out double seconds)
    {
        seconds = double.NaN;
        if (time != TimeForm.Clock)
        {
            if (!LogNumber.TryRead(field, (byte)mark, mayGroup, out var number)) return false;
            seconds = time == TimeForm.Seconds ? number : number / 1000;
            return true;
        }

        if (!LogNumber.TryClock(field, out seconds, out var hasDate)) return false;
        if (hasDate)
        {
            begun ??= new DateTimeOffset(DateTime.MinValue.AddSeconds(seconds), TimeSpan.Zero);
            return true;
        }

        // Past midnight a clock without date begins anew.
        if (lastOfDay - seconds > Day / 2) day += Day;
        lastOfDay = seconds;
        seconds += day;
        return true;
    }

    void Bad(int line, string says)
    {
        badCount++;
        if (bad.Count < RideLogFile.MostBadRows) bad.Add(new(line, says));
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

    static string Text(ReadOnlySpan<byte> field) => RouteFile.Quoted(Encoding.UTF8.GetString(field[..Math.Min(field.Length, 60)]));

    static ReadOnlySpan<byte> Line(scoped ref ReadOnlySpan<byte> rest)
    {
        var end = rest.IndexOf((byte)'\n');
        var line = end < 0 ? rest : rest[..end];
        rest = end < 0 ? [] : rest[(end + 1)..];
        return line.Length > 0 && line[^1] == (byte)'\r' ? line[..^1] : line;
    }

    bool isLast;

    /// <summary>The next field of a row, without its quotes and the blanks about it.</summary>
    bool Next(scoped ref ReadOnlySpan<byte> row, out ReadOnlySpan<byte> field)
    {
        if (row.IsEmpty && !isLast)
        {
            field = [];
            return false;
        }

        isLast = false;
        int end;
        if (!row.IsEmpty && row[0] == (byte)'"' && row[1..].IndexOf((byte)'"') is >= 0 and var close)
        {
            field = row.Slice(1, close);
            var after = row[(close + 2)..].IndexOf((byte)delimiter);
            end = after < 0 ? -1 : close + 2 + after;
        }
        else
        {
            end = row.IndexOf((byte)delimiter);
            field = end < 0 ? row : row[..end];
        }

        // A delimiter at the very end has one more, empty, field behind it.
        isLast = end >= 0 && end == row.Length - 1;
        row = end < 0 ? [] : row[(end + 1)..];
        if (!field.IsEmpty && (field[0] <= (byte)' ' || field[^1] <= (byte)' ')) field = field.Trim(" \t"u8);
        return true;
    }

    ReadOnlySpan<byte> FieldAt(ReadOnlySpan<byte> row, int column)
    {
        isLast = false;
        for (var i = 0; Next(ref row, out var field); i++)
        {
            if (i == column)
            {
                isLast = false;
                return field;
            }
        }

        return [];
    }

    List<string> Fields(ReadOnlySpan<byte> row)
    {
        var fields = new List<string>();
        isLast = false;
        while (Next(ref row, out var field))
            fields.Add(System.Text.Unicode.Utf8.IsValid(field) ? Encoding.UTF8.GetString(field) : Encoding.Latin1.GetString(field));
        return fields;
    }

    static int Count(ReadOnlySpan<byte> row, byte candidate)
    {
        var (count, isQuoted) = (0, false);
        foreach (var c in row)
        {
            if (c == (byte)'"') isQuoted = !isQuoted;
            else if (c == candidate && !isQuoted) count++;
        }

        return count;
    }
}
