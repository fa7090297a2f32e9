using System.Globalization;
using System.Text;
using System.Xml;
using Boardwright.Road;

namespace Boardwright.Files.Routes;

/// <summary>One reading of a GPX file, version 1.0 or 1.1: its tracks, or its planned routes when it has no track.</summary>
sealed class GpxRoute(string file)
{
    const int MostDepth = 64;
    const int LongestName = 200;
    const double LongestHopMetres = 10_000;
    const double SparseMetres = 100;
    const double FastestMetresPerSecond = 60;

    // Earlier than any receiver that writes GPX; clocks that were never set give dates before it.
    static readonly DateTimeOffset FirstBelievable = new(1990, 1, 1, 0, 0, 0, TimeSpan.Zero);

    static readonly string[] Namespaces = ["http://www.topografix.com/GPX/1/0", "http://www.topografix.com/GPX/1/1"];
    static readonly string[] TimeForms = ["yyyy-MM-ddTHH:mm:ss.FFFFFFFK", "yyyy-MM-ddTHH:mm:ssK"];

    readonly List<Complaint> _complaints = [];
    readonly List<RouteNote> _notes = [];
    readonly List<Recording> _tracks = [];
    readonly List<Recording> _plans = [];
    int _trackCount;
    int _waypointCount;
    string _name = "";

    sealed record TrackPoint(int Line, Position Position)
    {
        public double? Elevation { get; set; }

        public string? Time { get; set; }
    }

    sealed record Recording(int Line)
    {
        public List<TrackPoint> Points { get; } = [];
    }

    /// <summary>Reads the file.</summary>
    public RouteReading Read(Stream content)
    {
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
            IgnoreWhitespace = true,
            MaxCharactersInDocument = RouteFile.MostBytes,
        };
        using var reader = XmlReader.Create(content, settings);
        try
        {
            Scan(reader, (IXmlLineInfo)reader);
        }
        catch (XmlException error)
        {
            // The reader names the DTD in its message and nowhere else.
            var (says, remedy) = error.Message.Contains("DTD", StringComparison.Ordinal)
                ? ("The file declares a document type (DTD), which is refused.", "Remove the <!DOCTYPE …> declaration and every &entity; it defines.")
                : ("The file is not well-formed XML from here on.", "Export the file again; if it was cut off or edited, mend the tag or character at this place.");
            Complain(error.LineNumber, error.LinePosition, "", says, remedy);
        }

        return _complaints.Count > 0 ? RouteFile.Refused(_complaints) : Assembled();
    }

    void Scan(XmlReader reader, IXmlLineInfo place)
    {
        var path = new string[MostDepth + 1];
        var text = new StringBuilder();
        TrackPoint? point = null;
        var (textLine, textColumn) = (0, 0);
        var recording = new Recording(0);
        while (_complaints.Count < RouteFile.MostComplaints && reader.Read())
        {
            if (reader.Depth > MostDepth)
            {
                Complain(place.LineNumber, place.LinePosition, reader.Name, FormattableString.Invariant($"Elements are nested more than {MostDepth} deep."), "Export the file again without extensions.");
                return;
            }

            switch (reader.NodeType)
            {
                case XmlNodeType.Element:
                    var depth = reader.Depth;
                    if (depth == 0 && !IsGpx(reader, place))
                        return;
                    path[depth] = reader.NamespaceURI.Length == 0 || Namespaces.Contains(reader.NamespaceURI, StringComparer.Ordinal) ? reader.LocalName : "";
                    text.Clear();
                    switch (Path(depth))
                    {
                        case "gpx/trk":
                            _trackCount++;
                            break;
                        case "gpx/wpt":
                            _waypointCount++;
                            break;
                        case "gpx/trk/trkseg":
                            _tracks.Add(recording = new(place.LineNumber));
                            break;
                        case "gpx/rte":
                            _plans.Add(recording = new(place.LineNumber));
                            break;
                        case "gpx/trk/trkseg/trkpt" or "gpx/rte/rtept":
                            point = ReadPoint(reader, place);
                            if (point is not null)
                                recording.Points.Add(point);
                            break;
                    }

                    break;
                case XmlNodeType.Text or XmlNodeType.CDATA:
                    if (text.Length == 0)
                        (textLine, textColumn) = (place.LineNumber, place.LinePosition);
                    text.Append(reader.Value);
                    break;
                case XmlNodeType.EndElement:
                    End(Path(reader.Depth), text.ToString().Trim(), point, textLine, textColumn);
                    text.Clear();
                    break;
            }
        }

        string Path(int depth) => depth > 4 ? "" : string.Join('/', path[..(depth + 1)]);
    }

    bool IsGpx(XmlReader reader, IXmlLineInfo place)
    {
        if (!string.Equals(reader.LocalName, "gpx", StringComparison.Ordinal))
        {
            Complain(place.LineNumber, place.LinePosition, "", $"The root is <{RouteFile.Quoted(reader.Name).Trim('\'')}>, not <gpx>.", "Export the route as GPX 1.1, or write it as a table of comma-separated values.");
            return false;
        }

        if (reader.NamespaceURI.Length == 0)
        {
            _notes.Add(new(place.LineNumber, "The file does not say which version of GPX it is; it is read as GPX 1.1."));
            return true;
        }

        if (Namespaces.Contains(reader.NamespaceURI, StringComparer.Ordinal))
            return true;
        Complain(place.LineNumber, place.LinePosition, "gpx", $"The namespace {RouteFile.Quoted(reader.NamespaceURI)} is neither that of GPX 1.0 nor of 1.1.", $"Write xmlns=\"{Namespaces[1]}\", or export the route as GPX 1.1.");
        return false;
    }

    TrackPoint? ReadPoint(XmlReader reader, IXmlLineInfo place)
    {
        var (line, column, element) = (place.LineNumber, place.LinePosition, reader.LocalName);
        var latitude = Coordinate("lat", 90);
        var longitude = Coordinate("lon", 180);
        return latitude is { } north && longitude is { } east ? new(line, Position.FromDegrees(north, east)) : null;

        double? Coordinate(string attribute, double most)
        {
            var key = $"{element}.{attribute}";
            if (!reader.MoveToAttribute(attribute))
            {
                Complain(line, column, key, $"The point has no {attribute}.", $"Give every point lat and lon in degrees, as <{element} lat=\"53.3498\" lon=\"-6.2603\">.");
                return null;
            }

            var (value, valueLine, valueColumn) = (reader.Value, place.LineNumber, place.LinePosition);
            reader.MoveToElement();
            if (!RouteFile.TryNumber(value, out var degrees))
                Complain(valueLine, valueColumn, key, $"{RouteFile.Quoted(value)} is not a number of degrees.", RouteFile.NumberRemedy(value));
            else if (Math.Abs(degrees) > most)
                Complain(valueLine, valueColumn, key, FormattableString.Invariant($"{degrees} is outside −{most} to {most} degrees."), "Check the point; lat and lon may be exchanged.");
            else
                return degrees;
            return null;
        }
    }

    void End(string path, string text, TrackPoint? point, int line, int column)
    {
        switch (path)
        {
            case "gpx/trk/name" or "gpx/rte/name" or "gpx/metadata/name" or "gpx/name" when _name.Length == 0:
                _name = string.Concat(text.Take(LongestName).Where(c => !char.IsControl(c)));
                break;
            case "gpx/trk/trkseg/trkpt/ele" or "gpx/rte/rtept/ele" when point is not null && text.Length > 0:
                if (RouteFile.TryNumber(text, out var metres))
                    point.Elevation = metres;
                else if (!string.Equals(text, "NaN", StringComparison.OrdinalIgnoreCase))
                    Complain(line, column, "ele", $"{RouteFile.Quoted(text)} is not an elevation in metres.", RouteFile.NumberRemedy(text));
                break;
            case "gpx/trk/trkseg/trkpt/time" or "gpx/rte/rtept/time" when point is not null:
                point.Time = text;
                break;
        }
    }

    RouteReading Assembled()
    {
        var planned = _tracks.TrueForAll(t => t.Points.Count == 0);
        var recordings = planned ? _plans : _tracks;
        if (recordings.TrueForAll(r => r.Points.Count == 0))
        {
            var says = _waypointCount > 0 ? "The file holds waypoints but no track and no route." : "The file holds no track and no route.";
            return RouteFile.Refused(new Complaint(new(file, 1, 1), "trk", says, "Export the ride as a track (trk), or plan it as a route (rte) with at least two points."));
        }

        if (!planned && _plans.Count > 0)
            _notes.Add(new(_plans[0].Line, "The file holds tracks and planned routes; the tracks are taken, the planned routes are left out."));
        if (!planned && _trackCount > 1)
            _notes.Add(new(0, FormattableString.Invariant($"The file holds {_trackCount} tracks; they are taken one after another.")));
        var (segmentCount, pointCount) = (recordings.Count, recordings.Sum(r => r.Points.Count));
        var believed = Believed(recordings);
        if (!planned)
            recordings = Split(recordings);
        Refuse(recordings);
        var segments = Segments(recordings, planned);
        if (_complaints.Count > 0)
            return RouteFile.Refused(_complaints);
        var route = new Route(_name.Length == 0 ? RouteFile.Title(file) : _name, segments);
        if (route.CutDistance.Metres > 0)
            _notes.Add(new(0, $"Over {route.CutDistance:0 m} the filtered profile is steeper than {ElevationFilter.Usual.Steepest:0 %}; the grade is cut to that, as no public road is steeper."));
        return new RouteReading
        {
            Route = route,
            Notes = _notes,
            PointCount = pointCount,
            SegmentCount = segmentCount,
            Recorded = believed,
        };
    }

    List<Recording> Split(List<Recording> recordings)
    {
        List<Recording> parts = [];
        List<(TrackPoint Point, Length Hop)> gaps = [];
        foreach (var recording in recordings)
        {
            var part = new Recording(recording.Line);
            parts.Add(part);
            foreach (var point in recording.Points)
            {
                if (part.Points.Count > 0 && GreatCircle.Between(part.Points[^1].Position, point.Position) is var hop && hop.Metres > LongestHopMetres)
                {
                    gaps.Add((point, hop));
                    parts.Add(part = new(point.Line));
                }

                part.Points.Add(point);
            }
        }

        if (gaps.Count > 0)
            _notes.Add(new(gaps[0].Point.Line, FormattableString.Invariant($"{Counted(gaps.Count, "gap")} longer than {LongestHopMetres / 1000} km between neighbouring points; a gap is not bridged and contributes no distance. The first, {gaps[0].Hop:0.0 km}, ends here.")));
        return parts;
    }

    void Refuse(List<Recording> recordings)
    {
        var refused = recordings.SelectMany(r => r.Points)
            .Where(p => p.Elevation is < RouteFile.LowestElevation or > RouteFile.HighestElevation).ToArray();
        foreach (var point in refused)
            point.Elevation = null;
        if (refused.Length > 0)
            _notes.Add(new(refused[0].Line, FormattableString.Invariant($"{Counted(refused.Length, "elevation")} outside {RouteFile.LowestElevation} to {RouteFile.HighestElevation} m refused; the first is here.")));
        var points = recordings.SelectMany(r => r.Points).ToArray();
        var missing = Array.FindAll(points, p => p.Elevation is null);
        if (missing.Length == points.Length)
            _notes.Add(new(0, "The file gives no elevation to believe; the route counts as level."));
        else if (missing.Length > 0)
            _notes.Add(new(missing[0].Line, FormattableString.Invariant($"{missing.Length} of {points.Length} points have no elevation; it is taken on straight lines between those that have one. The first is here.")));
    }

    List<Segment> Segments(List<Recording> recordings, bool planned)
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
                Complain(recording.Line, 0, "", FormattableString.Invariant($"The route is longer than {RouteFile.MostKilometres} km."), "Check its points, or cut it to the part that is ridden.");
                return [];
            }

            var heights = Heights(recording.Points, distances, last);
            last = heights[^1];
            segments.Add(Segment.Recorded([.. distances.Zip(heights, (d, h) => new RoadPoint(Length.FromMetres(d), Length.FromMetres(h)))]));
        }

        if (segments.Count == 0)
        {
            Complain(0, 0, "trkpt", "All points lie at one place: there is no distance.", "Give the route at least two points apart.");
            return [];
        }

        if (leftOut > 0)
            _notes.Add(new(0, FormattableString.Invariant($"{Counted(leftOut, "segment")} without distance left out.")));
        var hops = segments.Sum(s => s.PointCount - 1);
        if (planned && total / hops > SparseMetres)
            _notes.Add(new(0, FormattableString.Invariant($"The route is planned with a point every {total / hops:0} m, joined by straight lines; the road itself is longer, and hills between the points are not seen.")));
        if (segments.Count > 1)
            _notes.Add(new(0, FormattableString.Invariant($"The route has {segments.Count} segments; the gaps between them are not bridged.")));
        return segments;
    }

    static double[] Distances(List<TrackPoint> points)
    {
        var distances = new double[points.Count];
        for (var i = 1; i < points.Count; i++)
            distances[i] = distances[i - 1] + GreatCircle.Between(points[i - 1].Position, points[i].Position).Metres;
        return distances;
    }

    static double[] Heights(List<TrackPoint> points, double[] distances, double otherwise)
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
                _ => double.Lerp(points[before].Elevation!.Value, points[after].Elevation!.Value, (distances[i] - distances[before]) / (distances[after] - distances[before])),
            };
        }

        return heights;
    }

    /// <summary>The recorded time, if all times are there and can be true; otherwise a note says why not.</summary>
    Duration? Believed(List<Recording> recordings)
    {
        var points = recordings.SelectMany(r => r.Points).ToArray();
        var timed = points.Count(p => p.Time is not null);
        if (timed == 0)
            return null;
        if (timed < points.Length)
            return RefuseTimes(Array.Find(points, p => p.Time is null)!, FormattableString.Invariant($"{points.Length - timed} of {points.Length} points have none, the first here"));
        var (total, distance) = (0.0, 0.0);
        DateTimeOffset? before = null;
        foreach (var recording in recordings)
        {
            TrackPoint? previous = null;
            foreach (var point in recording.Points)
            {
                if (!DateTimeOffset.TryParseExact(point.Time, TimeForms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var time))
                    return RefuseTimes(point, $"{RouteFile.Quoted(point.Time!)} is not a time");
                if (time < FirstBelievable)
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

    Duration? RefuseTimes(TrackPoint point, string why)
    {
        _notes.Add(new(point.Line, $"The times are refused, and with them recorded speeds: {why}. The profile is kept."));
        return null;
    }

    void Complain(int line, int column, string key, string says, string remedy) => _complaints.Add(new(new(file, Math.Max(1, line), Math.Max(1, column)), key, says, remedy));

    static string Counted(int count, string thing) => FormattableString.Invariant($"{count} {thing}{(count == 1 ? " is" : "s are")}");
}
