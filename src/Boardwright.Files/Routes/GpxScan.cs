using System.Globalization;
using System.Text;
using System.Xml;
using Boardwright.Road;

namespace Boardwright.Files.Routes;

/// <summary>A point of a recording or a plan.</summary>
/// <param name="Line">Where it stands in the file.</param>
/// <param name="Position">Where on earth it lies.</param>
sealed record GpxPoint(int Line, Position Position)
{
    // Earlier than any receiver that writes GPX; clocks that were never set give dates before it.
    static readonly DateTimeOffset FirstBelievable = new(1990, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Its height, m, as far as it is given.</summary>
    public double? Elevation { get; set; }
    /// <summary>Its time as it is written.</summary>
    public string? Stamp { get; set; }

    /// <summary>Its time; <c>null</c> where none can be read. A date of which nothing tells day from month is none.</summary>
    public DateTimeOffset? Time =>
        Stamp is { Length: > 10 } text && text[4] == '-'
        && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var time) ? time : null;

    /// <summary>Whether a receiver can have meant a time.</summary>
    public static bool IsBelievable(DateTimeOffset time) => time >= FirstBelievable;
}

/// <summary>Points in their order, with no gap known between them.</summary>
sealed record GpxSegment(int Line)
{
    public List<GpxPoint> Points { get; } = [];
}

/// <summary>What a GPX file holds, version 1.0 or 1.1: every point of its tracks and planned routes, and what is wrong in it.</summary>
sealed class GpxScan
{
    const int MostDepth = 64;
    const int LongestName = 200;

    static readonly string[] Namespaces = ["http://www.topografix.com/GPX/1/0", "http://www.topografix.com/GPX/1/1"];

    readonly string file;

    /// <summary>Reads a file.</summary>
    public GpxScan(string file, Stream content)
    {
        this.file = file;
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
    }

    public List<Complaint> Complaints { get; } = [];

    public List<RouteNote> Notes { get; } = [];

    /// <summary>Segments of tracks.</summary>
    public List<GpxSegment> Tracks { get; } = [];
    /// <summary>Planned routes.</summary>
    public List<GpxSegment> Plans { get; } = [];

    public int TrackCount { get; private set; }

    public int WaypointCount { get; private set; }

    /// <summary>The name that the file gives itself; may be empty.</summary>
    public string Name { get; private set; } = "";

    void Scan(XmlReader reader, IXmlLineInfo place)
    {
        var path = new string[MostDepth + 1];
        var text = new StringBuilder();
        GpxPoint? point = null;
        var (textLine, textColumn) = (0, 0);
        var recording = new GpxSegment(0);
        while (Complaints.Count < RouteFile.MostComplaints && reader.Read())
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
                    path[depth] = reader.NamespaceURI.Length == 0 || Namespaces.Contains(reader.NamespaceURI, StringComparer.Ordinal)
                        ? reader.LocalName : "";
                    text.Clear();
                    switch (Path(depth))
                    {
                        case "gpx/trk":
                            TrackCount++;
                            break;
                        case "gpx/wpt":
                            WaypointCount++;
                            break;
                        case "gpx/trk/trkseg":
                            Tracks.Add(recording = new(place.LineNumber));
                            break;
                        case "gpx/rte":
                            Plans.Add(recording = new(place.LineNumber));
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
            Notes.Add(new(place.LineNumber, "The file does not say which version of GPX it is; it is read as GPX 1.1."));
            return true;
        }

        if (Namespaces.Contains(reader.NamespaceURI, StringComparer.Ordinal))
            return true;
        Complain(place.LineNumber, place.LinePosition, "gpx", $"The namespace {RouteFile.Quoted(reader.NamespaceURI)} is neither that of GPX 1.0 nor of 1.1.", $"Write xmlns=\"{Namespaces[1]}\", or export the route as GPX 1.1.");
        return false;
    }

    GpxPoint? ReadPoint(XmlReader reader, IXmlLineInfo place)
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

    void End(string path, string text, GpxPoint? point, int line, int column)
    {
        switch (path)
        {
            case "gpx/trk/name" or "gpx/rte/name" or "gpx/metadata/name" or "gpx/name" when Name.Length == 0:
                Name = string.Concat(text.Take(LongestName).Where(c => !char.IsControl(c)));
                break;
            case "gpx/trk/trkseg/trkpt/ele" or "gpx/rte/rtept/ele" when point is not null && text.Length > 0:
                if (RouteFile.TryNumber(text, out var metres))
                    point.Elevation = metres;
                else if (!string.Equals(text, "NaN", StringComparison.OrdinalIgnoreCase))
                    Complain(line, column, "ele", $"{RouteFile.Quoted(text)} is not an elevation in metres.", RouteFile.NumberRemedy(text));
                break;
            case "gpx/trk/trkseg/trkpt/time" or "gpx/rte/rtept/time" when point is not null:
                point.Stamp = text;
                break;
        }
    }

    public void Complain(int line, int column, string key, string says, string remedy) =>
        Complaints.Add(new(new(file, Math.Max(1, line), Math.Max(1, column)), key, says, remedy));
}
