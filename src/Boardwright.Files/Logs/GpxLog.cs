using System.Globalization;
using System.Xml;
using Boardwright.Files.Routes;
using Boardwright.Logs;

namespace Boardwright.Files.Logs;

/// <summary>One reading of a GPX file as a ride: its points with their times. What is wrong with it as a route is complained about by <see cref="RouteFile"/>.</summary>
sealed class GpxLog(string shown)
{
    // Earlier than any receiver that writes GPX; clocks that were never set give dates before it.
    static readonly DateTimeOffset FirstBelievable = new(1990, 1, 1, 0, 0, 0, TimeSpan.Zero);

    readonly List<double> seconds = [];
    readonly List<double> north = [];
    readonly List<double> east = [];
    readonly List<double> heights = [];
    readonly List<int> breaks = [];
    readonly List<BadRow> bad = [];
    int badCount;
    int points;
    int unbelievable;
    DateTimeOffset? begun;

    public RideLogReading Read(ReadOnlyMemory<byte> bytes)
    {
        using var stream = new MemoryStream(bytes.ToArray(), writable: false);
        var route = RouteFile.Read(shown, stream);
        if (route.Complaints.Count > 0)
            return new() { Complaints = route.Complaints };
        stream.Position = 0;
        // The first pass has found it well formed and without a document type.
        using var reader = XmlReader.Create(stream, new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreComments = true, IgnoreWhitespace = true });
        while (reader.Read())
        {
            if (reader.NodeType != XmlNodeType.Element) continue;
            if (reader.LocalName is "trkseg") breaks.Add(seconds.Count);
            else if (reader.LocalName is "trkpt") Point(reader);
        }

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
        return reading with { Log = new(RouteFile.Title(shown), seconds.ToArray(), channels, [.. breaks.Where(b => b > 0 && b < seconds.Count).Distinct()], begun) };
    }

    void Point(XmlReader reader)
    {
        points++;
        var line = ((IXmlLineInfo)reader).LineNumber;
        var radians = Math.PI / 180;
        var (latitude, longitude) = (Number(reader.GetAttribute("lat")) * radians, Number(reader.GetAttribute("lon")) * radians);
        var (height, stamp) = (double.NaN, (DateTimeOffset?)null);
        if (!reader.IsEmptyElement)
        {
            var depth = reader.Depth;
            while (reader.Read() && reader.Depth > depth)
            {
                if (reader.NodeType != XmlNodeType.Element || reader.Depth != depth + 1) continue;
                var name = reader.LocalName;
                if (name is not ("ele" or "time") || reader.IsEmptyElement || !reader.Read() || reader.NodeType != XmlNodeType.Text) continue;
                if (name == "ele") height = Number(reader.Value);
                else if (DateTimeOffset.TryParse(reader.Value, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var read)) stamp = read;
            }
        }

        if (stamp is not { } at)
            Bad(line, "the point has no time that can be read");
        else if (at < FirstBelievable)
        {
            unbelievable++;
            Bad(line, "the point has a time before 1990");
        }
        else
        {
            begun ??= at;
            var time = (at - begun.Value).TotalSeconds;
            if (seconds.Count > 0 && time <= seconds[^1])
            {
                Bad(line, "the point has no later time than the one before");
                return;
            }

            seconds.Add(time);
            north.Add(latitude);
            east.Add(longitude);
            heights.Add(height is < -500 or > 9000 ? double.NaN : height);
        }
    }

    void Bad(int line, string says)
    {
        badCount++;
        if (bad.Count < RideLogFile.MostBadRows) bad.Add(new(line, says));
    }

    static double Number(string? text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : double.NaN;
}
