using Boardwright.Builds;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Files.Logs;
using Boardwright.Logs;
using Boardwright.Shops;

namespace Boardwright.App.ShopWork;

/// <summary>The log of a ride that is to be kept with a built board, as it is read so far.</summary>
/// <param name="File">Where it will lie.</param>
/// <param name="Bytes">The log as the logger wrote it.</param>
/// <param name="Reading">What was read from it.</param>
/// <param name="IsRecalled">Whether its columns are read as somebody confirmed them for an earlier log.</param>
sealed record UploadedRide(string File, byte[] Bytes, RideLogReading Reading, bool IsRecalled)
{
    /// <summary>Reads a log: as was confirmed before for such columns, unless something else is said.</summary>
    public static async Task<UploadedRide> OfAsync(BuiltStore place, string file, byte[] bytes, LogWishes? wishes, CancellationToken cancel)
    {
        var isSaid = wishes is { Time: not null } or { DecimalMark: not null } or { Columns.Count: > 0 };
        var reading = RideLogFile.Read(bytes, Path.GetFileName(file), wishes);
        if (isSaid || reading.Mapping is not { } mapping || await place.RecallAsync(mapping, cancel) is not { } confirmed)
            return new(file, bytes, reading, IsRecalled: false);
        var again = RideLogFile.Read(bytes, Path.GetFileName(file), confirmed);
        // What was confirmed for another log may not fit this one, such as its decimal mark; then it is asked for anew.
        return again.Log is null ? new(file, bytes, reading, IsRecalled: false) : new(file, bytes, again, IsRecalled: true);
    }

    /// <summary>The ride as it is written into the board's file.</summary>
    /// <param name="when">When it was ridden; by the log's own times where not given and there are such.</param>
    /// <param name="who">Who rode.</param>
    public LoggedRide Ride(Moment? when, string who)
    {
        var log = Reading.Log ?? throw new InvalidOperationException("The log could not be read.");
        var ride = new LoggedRide
        {
            Who = who,
            Lasting = Duration.FromSeconds(Math.Round(log.Lasting.Seconds)),
            Rows = Reading.RowCount,
            BadRows = Reading.BadRowCount,
        };
        if ((when ?? (log.Begun is { } begun ? Moment.At(begun) : (Moment?)null)) is { } moment)
            ride = ride with { When = moment };
        if ((log.WayBySpeeds ?? log.WayByPositions) is { } way)
            ride = ride with { Distance = Length.FromMetres(10 * Math.Round(way.Metres / 10)) };
        return Reading.Mapping is { } mapping ? ride with { Columns = LoggerFile.ColumnsOf(mapping) } : ride;
    }

    /// <summary>Keeps the log and the ride, and remembers how its columns are read.</summary>
    public async Task<Changed> KeepAsync(BuiltStore place, LoggedRide ride, Signature by, CancellationToken cancel)
    {
        var changed = await place.ChangeAsync(
            new AttachedFile(File, Bytes), (text, path) => BuiltText.Add(text, "rides", ride with { File = path }), by, cancel);
        if (changed.Refusal is null && !IsRecalled && Reading.Mapping is { } mapping)
            await place.RememberAsync(mapping, by with { Why = "columns of " + Path.GetFileName(File) }, cancel);
        return changed;
    }
}

/// <summary>Names under which files are kept with a built board.</summary>
static class BuiltFileNames
{
    const int Longest = 80;

    /// <summary>Where a photo or another note goes.</summary>
    public static string Photo(string path) => "photos/" + Plain(path);
    /// <summary>Where the log of a ride goes.</summary>
    public static string Ride(string path) => "rides/" + Plain(path);

    // Of letters, digits, points, hyphens and underlines, which every system takes.
    static string Plain(string path)
    {
        var name = path[(path.LastIndexOfAny(['/', '\\']) + 1)..];
        var plain = string.Concat(name.Select(static c => char.IsLetterOrDigit(c) || c is '.' or '-' or '_' ? c : '-')).Trim('.', '-');
        return plain.Length == 0 ? "file" : plain.Length <= Longest ? plain : plain[^Longest..].TrimStart('.', '-');
    }
}
