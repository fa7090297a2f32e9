using Boardwright.Road;

namespace Boardwright.Files.Routes;

/// <summary>The route in a GPX file: its tracks, or its planned routes when it has no track.</summary>
sealed class GpxRoute(string file, GpxScan scan)
{
    const double LongestHopMetres = 10_000;
    const double SparseMetres = 100;
    const double FastestMetresPerSecond = 60;

    /// <summary>The route, or everything that is wrong.</summary>
    public RouteReading Read() => scan.Complaints.Count > 0 ? RouteFile.Refused(scan.Complaints) : Assembled();

    RouteReading Assembled()
    {
        var planned = scan.Tracks.TrueForAll(t => t.Points.Count == 0);
        var recordings = planned ? scan.Plans : scan.Tracks;
        if (recordings.TrueForAll(r => r.Points.Count == 0))
        {
            var says = scan.WaypointCount > 0 ? "The file holds waypoints but no track and no route." : "The file holds no track and no route.";
            return RouteFile.Refused(new Complaint(new(file, 1, 1), "trk", says, "Export the ride as a track (trk), or plan it as a route (rte) with at least two points."));
        }

        if (!planned && scan.Plans.Count > 0)
            scan.Notes.Add(new(scan.Plans[0].Line, "The file holds tracks and planned routes; the tracks are taken, the planned routes are left out."));
        if (!planned && scan.TrackCount > 1)
            scan.Notes.Add(new(0, FormattableString.Invariant($"The file holds {scan.TrackCount} tracks; they are taken one after another.")));
        var (segmentCount, pointCount) = (recordings.Count, recordings.Sum(r => r.Points.Count));
        var believed = Believed(recordings);
        if (!planned)
            recordings = Split(recordings);
        Refuse(recordings);
        var segments = Segments(recordings, planned);
        if (scan.Complaints.Count > 0)
            return RouteFile.Refused(scan.Complaints);
        var route = new Route(scan.Name.Length == 0 ? RouteFile.Title(file) : scan.Name, segments);
        if (route.CutDistance.Metres > 0)
            scan.Notes.Add(new(0, $"Over {route.CutDistance:0 m} the filtered profile is steeper than {ElevationFilter.Usual.Steepest:0 %}; the grade is cut to that, as no public road is steeper."));
        return new RouteReading
        {
            Route = route,
            Notes = scan.Notes,
            PointCount = pointCount,
            SegmentCount = segmentCount,
            Recorded = believed,
        };
    }

    List<GpxSegment> Split(List<GpxSegment> recordings)
    {
        List<GpxSegment> parts = [];
        List<(GpxPoint Point, Length Hop)> gaps = [];
        foreach (var recording in recordings)
        {
            var part = new GpxSegment(recording.Line);
            parts.Add(part);
            foreach (var point in recording.Points)
            {
                if (part.Points.Count > 0 && GreatCircle.Between(part.Points[^1].Position, point.Position) is var hop
                    && hop.Metres > LongestHopMetres)
                {
                    gaps.Add((point, hop));
                    parts.Add(part = new(point.Line));
                }

                part.Points.Add(point);
            }
        }

        if (gaps.Count > 0)
            scan.Notes.Add(new(gaps[0].Point.Line, FormattableString.Invariant($"{Counted(gaps.Count, "gap")} longer than {LongestHopMetres / 1000} km between neighbouring points; a gap is not bridged and contributes no distance. The first, {gaps[0].Hop:0.0 km}, ends here.")));
        return parts;
    }

    void Refuse(List<GpxSegment> recordings)
    {
        var refused = recordings.SelectMany(r => r.Points)
            .Where(p => p.Elevation is < RouteFile.LowestElevation or > RouteFile.HighestElevation).ToArray();
        foreach (var point in refused)
            point.Elevation = null;
        if (refused.Length > 0)
            scan.Notes.Add(new(refused[0].Line, FormattableString.Invariant($"{Counted(refused.Length, "elevation")} outside {RouteFile.LowestElevation} to {RouteFile.HighestElevation} m refused; the first is here.")));
        var points = recordings.SelectMany(r => r.Points).ToArray();
        var missing = Array.FindAll(points, p => p.Elevation is null);
        if (missing.Length == points.Length)
            scan.Notes.Add(new(0, "The file gives no elevation to believe; the route counts as level."));
        else if (missing.Length > 0)
            scan.Notes.Add(new(missing[0].Line, FormattableString.Invariant($"{missing.Length} of {points.Length} points have no elevation; it is taken on straight lines between those that have one. The first is here.")));
    }

    List<Segment> Segments(List<GpxSegment> recordings, bool planned)
    {
        List<Segment> segments = [];
        var (total, leftOut) = (0.0, 0);
        // A segment without any elevation lies level at the last height known before it, or the first known at all.
        var last = recordings.SelectMany(r => r.Points).Select(p => p.Elevation).FirstOrDefault(e => e is not null) ?? 0;
        foreach (var recording in recordings)
        {
            var distances = Distances(recording.Points);
            if (distances.Length == 0 || distances[^1] == 0)
            {
                leftOut++;
                continue;
            }

            total += distances[^1];
            if (total > RouteFile.MostKilometres * 1000)
            {
                scan.Complain(recording.Line, 0, "", FormattableString.Invariant($"The route is longer than {RouteFile.MostKilometres} km."), "Check its points, or cut it to the part that is ridden.");
                return [];
            }

            var heights = Heights(recording.Points, distances, last);
            last = heights[^1];
            segments.Add(Segment.Recorded(
                [.. distances.Zip(heights, (d, h) => new RoadPoint(Length.FromMetres(d), Length.FromMetres(h)))]));
        }

        if (segments.Count == 0)
        {
            scan.Complain(0, 0, "trkpt", "All points lie at one place: there is no distance.", "Give the route at least two points apart.");
            return [];
        }

        if (leftOut > 0)
            scan.Notes.Add(new(0, FormattableString.Invariant($"{Counted(leftOut, "segment")} without distance left out.")));
        var hops = segments.Sum(s => s.PointCount - 1);
        if (planned && total / hops > SparseMetres)
            scan.Notes.Add(new(0, FormattableString.Invariant($"The route is planned with a point every {total / hops:0} m, joined by straight lines; the road itself is longer, and hills between the points are not seen.")));
        if (segments.Count > 1)
            scan.Notes.Add(new(0, FormattableString.Invariant($"The route has {segments.Count} segments; the gaps between them are not bridged.")));
        return segments;
    }

    static double[] Distances(List<GpxPoint> points)
    {
        var distances = new double[points.Count];
        for (var i = 1; i < points.Count; i++)
            distances[i] = distances[i - 1] + GreatCircle.Between(points[i - 1].Position, points[i].Position).Metres;
        return distances;
    }

    static double[] Heights(List<GpxPoint> points, double[] distances, double otherwise)
    {
        var known = Enumerable.Range(0, points.Count).Where(i => points[i].Elevation is not null).ToArray();
        var heights = new double[points.Count];
        var next = 0;
        for (var i = 0; i < heights.Length; i++)
        {
            while (next < known.Length && known[next] < i)
                next++;
            var (before, after) = (next > 0 ? known[next - 1] : -1, next < known.Length ? known[next] : -1);
            heights[i] = (before, after) switch
            {
                (-1, -1) => otherwise,
                (-1, _) => points[after].Elevation!.Value,
                (_, -1) => points[before].Elevation!.Value,
                _ when after == i || distances[after] == distances[before] => points[after].Elevation!.Value,
                _ => double.Lerp(points[before].Elevation!.Value, points[after].Elevation!.Value,
                    (distances[i] - distances[before]) / (distances[after] - distances[before])),
            };
        }

        return heights;
    }

    /// <summary>The recorded time, if all times are there and can be true; otherwise a note says why not.</summary>
    Duration? Believed(List<GpxSegment> recordings)
    {
        var points = recordings.SelectMany(r => r.Points).ToArray();
        var timed = points.Count(p => p.Stamp is not null);
        if (timed == 0)
            return null;
        if (timed < points.Length)
            return RefuseTimes(Array.Find(points, p => p.Stamp is null)!, FormattableString.Invariant($"{points.Length - timed} of {points.Length} points have none, the first here"));
        var (total, distance) = (0.0, 0.0);
        DateTimeOffset? before = null;
        foreach (var recording in recordings)
        {
            GpxPoint? previous = null;
            foreach (var point in recording.Points)
            {
                if (point.Time is not { } time)
                    return RefuseTimes(point, $"{RouteFile.Quoted(point.Stamp!)} is not a time");
                if (!GpxPoint.IsBelievable(time))
                    return RefuseTimes(point, FormattableString.Invariant($"the year {time.Year} is earlier than any recording"));
                if (before > time)
                    return RefuseTimes(point, "time goes backwards here");
                if (previous is not null)
                {
                    total += (time - before!.Value).TotalSeconds;
                    distance += GreatCircle.Between(previous.Position, point.Position).Metres;
                }

                (before, previous) = (time, point);
            }
        }

        if (total == 0)
            return RefuseTimes(points[0], "no time passes");
        // A single wild fix is common and harmless here; a whole recording at such a mean is none.
        return distance / total > FastestMetresPerSecond
            ? RefuseTimes(points[0], FormattableString.Invariant($"the mean speed would be {distance / total * 3.6:0} km/h"))
            : Duration.FromSeconds(total);
    }

    Duration? RefuseTimes(GpxPoint point, string why)
    {
        scan.Notes.Add(new(point.Line, $"The times are refused, and with them recorded speeds: {why}. The profile is kept."));
        return null;
    }

    static string Counted(int count, string thing) => FormattableString.Invariant($"{count} {thing}{(count == 1 ? " is" : "s are")}");
}
