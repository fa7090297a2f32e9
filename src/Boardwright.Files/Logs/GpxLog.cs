using Boardwright.Files.Routes;
using Boardwright.Logs;

namespace Boardwright.Files.Logs;

/// <summary>A GPX file read as a ride: the points of its tracks with their times. What is wrong with it as a route comes first.</summary>
sealed class GpxLog(string shown)
{
    readonly List<double> seconds = [];
    readonly List<double> north = [];
    readonly List<double> east = [];
    readonly List<double> heights = [];
    readonly List<int> breaks = [];
    readonly List<BadRow> bad = [];
    int badCount;
    int unbelievable;
    DateTimeOffset? begun;

    public RideLogReading Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > RouteFile.MostBytes)
            return new() { Complaints = RouteFile.TooLong(shown).Complaints };
        using var stream = new MemoryStream(bytes.ToArray(), writable: false);
        var scan = new GpxScan(shown, stream);
        foreach (var segment in scan.Tracks)
        {
            breaks.Add(seconds.Count);
            segment.Points.ForEach(Add);
        }

        // Only now, as a route leaves out what it cannot use of the points.
        var route = new GpxRoute(shown, scan).Read();
        if (route.Complaints.Count > 0)
            return new() { Complaints = route.Complaints };
        var points = scan.Tracks.Sum(segment => segment.Points.Count);
        var notes = route.Notes.Select(n => n.Line > 0 ? FormattableString.Invariant($"Line {n.Line}: {n.Says}") : n.Says).ToList();
        var reading = new RideLogReading { Profile = route.Route, RowCount = points, BadRowCount = badCount, BadRows = bad, Notes = notes };
        if (unbelievable > 0 && seconds.Count < 2)
        {
            return reading with { Complaints = [new(new(shown, 1, 1), "time", FormattableString.Invariant($"{unbelievable} of {points} points have a time before 1990, which no receiver can have meant, so speeds cannot be told from them."), "Its road profile can still be used as a route; record the ride again with the receiver's clock set.")] };
        }

        if (seconds.Count < 2)
            return reading with { Complaints = [new(new(shown, 1, 1), "time", "Fewer than two points of a track have a time, so this is a way and no ride.", "Export the recording itself, with times; a way alone can be used as a route.")] };
        var channels = new Dictionary<Channel, double[]> { [Channel.Latitude] = [.. north], [Channel.Longitude] = [.. east] };
        if (heights.Exists(h => !double.IsNaN(h))) channels[Channel.Elevation] = [.. heights];
        return reading with
        {
            Log = new(
            RouteFile.Title(shown), seconds.ToArray(), channels, [.. breaks.Where(b => b > 0 && b < seconds.Count).Distinct()], begun)
        };
    }

    void Add(GpxPoint point)
    {
        if (point.Time is not { } at)
            Bad(point.Line, "the point has no time that can be read");
        else if (!GpxPoint.IsBelievable(at))
        {
            unbelievable++;
            Bad(point.Line, "the point has a time before 1990");
        }
        else
        {
            begun ??= at;
            var time = (at - begun.Value).TotalSeconds;
            if (seconds.Count > 0 && time <= seconds[^1])
            {
                Bad(point.Line, "the point has no later time than the one before");
                return;
            }

            seconds.Add(time);
            north.Add(point.Position.Latitude.Radians);
            east.Add(point.Position.Longitude.Radians);
            heights.Add(point.Elevation is >= RouteFile.LowestElevation and <= RouteFile.HighestElevation and var height ? height
                : double.NaN);
        }
    }

    void Bad(int line, string says)
    {
        badCount++;
        if (bad.Count < RideLogFile.MostBadRows) bad.Add(new(line, says));
    }
}
