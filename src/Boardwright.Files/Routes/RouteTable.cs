using System.Globalization;
using System.Text;
using Boardwright.Road;

namespace Boardwright.Files.Routes;

/// <summary>One reading of a route written as a table with a header row.</summary>
sealed class RouteTable(string file)
{
    const double LeastSpeed = 1, MostSpeed = 150, MostStop = 86_400, MostGrade = 40;
    const string Known = "The columns are distance_m, grade_percent or elevation_m, speed_kmh, stop_s.";

    static readonly string[] Columns = ["distance_m", "grade_percent", "elevation_m", "speed_kmh", "stop_s"];

    readonly List<Complaint> _complaints = [];
    readonly List<TableRow> _rows = [];
    TableDialect _dialect;

    sealed record TableRow(int Line, double Distance, double? Grade, double? Elevation, double? Speed, double? Stop);

    readonly record struct TableCell(string Text, int Column);

    /// <summary>Reads the file.</summary>
    public RouteReading Read(Stream content)
    {
        string text;
        try
        {
            using var reader = new StreamReader(
                content, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true));
            text = reader.ReadToEnd();
        }
        catch (DecoderFallbackException)
        {
            text = "\0";
        }

        if (text.Contains('\0', StringComparison.Ordinal))
            return RouteFile.Refused(new Complaint(new(file, 1, 1), "", "The file is neither GPX nor text.", "Export the route as GPX 1.1, or save the table as comma-separated values in UTF-8."));
        string[]? header = null;
        var line = 0;
        for (ReadOnlySpan<byte> rest = Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n")); !rest.IsEmpty;)
        {
            line++;
            var each = TableDialect.NextLine(ref rest);
            if (each.Trim(" \t"u8) is [] or [(byte)'#', ..])
                continue;
            if (header is null)
            {
                _dialect = new(TableDialect.FindDelimiter(each, rest) ?? ',');
                header = Header(line, Cells(each));
                _dialect = _dialect.WithDecimalMark(rest, line, static _ => true, out var objection);
                if (header is not null && objection is var (where, says))
                    header = Complain(where ?? line, 1, "", says, TableDialect.OneMark);
            }
            else
                Read(line, header, Cells(each));
            if (header is null || _complaints.Count >= RouteFile.MostComplaints)
                return RouteFile.Refused(_complaints);
        }

        if (header is null)
            return RouteFile.Refused(new Complaint(new(file, 1, 1), "", "The file is empty.", "Begin the table with a header row, as distance_m,grade_percent,speed_kmh,stop_s."));
        if (_complaints.Count == 0 && _rows.Count < 2)
            Complain(line, 0, "distance_m", "The table has fewer than two rows.", "Write a row for the start at 0 m and one for the end.");
        // The last row ends the route: no road follows it, so it needs no grade.
        if (_complaints.Count == 0 && header.Contains("grade_percent", StringComparer.Ordinal))
        {
            foreach (var row in _rows.SkipLast(1).Where(r => r.Grade is null).Take(RouteFile.MostComplaints))
                Complain(row.Line, 0, "grade_percent", "The cell grade_percent is empty.", "Write the grade of the road up to the next row; 0 for a level one.");
        }

        return _complaints.Count > 0 ? RouteFile.Refused(_complaints) : Assembled(header);
    }

    List<TableCell> Cells(ReadOnlySpan<byte> line)
    {
        List<TableCell> cells = [];
        for (var fields = _dialect.FieldsOf(line); fields.Next(out var field);)
            cells.Add(new(Encoding.UTF8.GetString(field).Trim(), Encoding.UTF8.GetCharCount(line[..fields.Start]) + 1));
        return cells;
    }

    bool TryNumber(string text, out double value) => _dialect.TryNumber(Encoding.UTF8.GetBytes(text), out value);

    string[]? Header(int line, List<TableCell> cells)
    {
        foreach (var (cell, i) in cells.Select((c, i) => (c, i)))
        {
            if (TryNumber(cell.Text, out _))
                return Complain(line, cell.Column, "", "The table begins with a number instead of a header row.", Known);
            if (!Columns.Contains(cell.Text, StringComparer.Ordinal))
                Complain(line, cell.Column, cell.Text.Length > 40 ? "" : cell.Text, $"{RouteFile.Quoted(cell.Text)} is not a known column.", Meant(cell.Text) is { } meant ? $"Write {meant}, its values in that unit." : Known);
            else if (cells.FindIndex(c => string.Equals(c.Text, cell.Text, StringComparison.Ordinal)) < i)
                Complain(line, cell.Column, cell.Text, $"The column {cell.Text} occurs twice.", "Keep one of them.");
        }

        string[] header = [.. cells.Select(c => c.Text)];
        if (_complaints.Count == 0 && !header.Contains("distance_m", StringComparer.Ordinal))
            Complain(line, 1, "distance_m", "There is no column distance_m.", "Give the distance from the start of the route, in metres, in each row.");
        if (header.Contains("grade_percent", StringComparer.Ordinal) && header.Contains("elevation_m", StringComparer.Ordinal))
            Complain(line, 1, "grade_percent", "The table gives grade and elevation, which may contradict each other.", "Keep grade_percent or elevation_m.");
        return _complaints.Count > 0 ? null : header;
    }

    // The quantity is recognised by what stands before its unit: distance_km, elevation, Speed (mph).
    static string? Meant(string name) => Array.Find(Columns, c => name.StartsWith(c[..c.IndexOf('_')], StringComparison.OrdinalIgnoreCase));

    void Read(int line, string[] header, List<TableCell> cells)
    {
        if (cells.Count != header.Length)
        {
            Complain(line, cells[^1].Column, "", FormattableString.Invariant($"The row has {cells.Count} cells, the header {header.Length}."), "Give one cell for each column, an empty one where nothing is to be said; write numbers with a point, as 12.5.");
            return;
        }

        var before = _complaints.Count;
        var distance = Value("distance_m", 0, RouteFile.MostKilometres * 1000, required: true);
        var grade = Value("grade_percent", -MostGrade, MostGrade, required: false);
        var elevation = Value("elevation_m", RouteFile.LowestElevation, RouteFile.HighestElevation, required: false);
        var speed = Value("speed_kmh", LeastSpeed, MostSpeed, required: false);
        var stop = Value("stop_s", 0, MostStop, required: false);
        if (distance is { } at && _rows.Count == 0 && before == 0 && at != 0)
            Complain(line, ColumnOf("distance_m"), "distance_m", FormattableString.Invariant($"The route starts at {at} m."), "Count the distance from the start: the first row is at 0.");
        if (distance is { } further && _rows.Count > 0 && further <= _rows[^1].Distance)
            Complain(line, ColumnOf("distance_m"), "distance_m", FormattableString.Invariant($"{further} m does not lie beyond the {_rows[^1].Distance} m of the row before."), "Put the rows in order of distance, one for each distance.");
        if (_complaints.Count == before)
            _rows.Add(new(line, distance!.Value, grade, elevation, speed, stop));

        int ColumnOf(string column) => cells[Array.IndexOf(header, column)].Column;

        double? Value(string column, double least, double most, bool required)
        {
            var index = Array.IndexOf(header, column);
            if (index < 0)
                return null;
            var (text, place) = (cells[index].Text, cells[index].Column);
            if (text.Length == 0)
            {
                if (required)
                    Complain(line, place, column, $"The cell {column} is empty.", "Write a plain number, as 12.5.");
                return null;
            }

            if (!TryNumber(text, out var value))
                Complain(line, place, column, $"{RouteFile.Quoted(text)} is not a number.", char.IsLetter(text[^1]) || text[^1] == '%' ? "Write the number without a unit; the unit stands in the header." : RouteFile.NumberRemedy(text));
            else if (value < least || value > most)
                Complain(line, place, column, FormattableString.Invariant($"{value} is outside {least} to {most}."), "Check the value and the unit in the header.");
            else
                return value;
            return null;
        }
    }

    RouteReading Assembled(string[] header)
    {
        List<RouteNote> notes = [];
        var graded = header.Contains("grade_percent", StringComparer.Ordinal);
        var known = _rows.FindAll(r => r.Elevation is not null);
        if (!graded && known.Count == 0)
            notes.Add(new(0, "The table gives neither grade nor elevation; the route counts as level."));
        if (known.Count > 0 && known.Count < _rows.Count)
            notes.Add(new(_rows.Find(r => r.Elevation is null)!.Line, FormattableString.Invariant($"{_rows.Count - known.Count} of {_rows.Count} rows have no elevation; it is taken on straight lines between those that have one. The first is here.")));
        var segment = known.Count > 0 ? Segment.Recorded(Points(known)) : Segment.Stated(Points());
        List<SpeedWish> wishes = [];
        List<Stop> stops = [];
        for (var i = 0; i < _rows.Count; i++)
        {
            var at = Length.FromMetres(_rows[i].Distance);
            if (i + 1 < _rows.Count && _rows[i].Speed is { } speed)
                wishes.Add(new(at, Length.FromMetres(_rows[i + 1].Distance), Speed.FromKilometresPerHour(speed)));
            if (_rows[i].Stop is { } wait and > 0)
                stops.Add(new(at, Duration.FromSeconds(wait)));
        }

        var route = new Route(RouteFile.Title(file), [segment], wishes, stops);
        if (route.CutDistance.Metres > 0)
            notes.Add(new(0, $"Over {route.CutDistance:0 m} the filtered profile is steeper than {ElevationFilter.Usual.Steepest:0 %}; the grade is cut to that, as no public road is steeper."));
        return new RouteReading { Route = route, Notes = notes, PointCount = _rows.Count, SegmentCount = 1 };
    }

    // Heights known at some rows only: level before the first and after the last of them.
    RoadPoint[] Points(List<TableRow> known)
    {
        List<RoadPoint> points = [.. known.Select(r => Point(r.Distance, r.Elevation!.Value))];
        if (known[0].Distance > 0)
            points.Insert(0, Point(0, known[0].Elevation!.Value));
        if (known[^1].Distance < _rows[^1].Distance)
            points.Add(Point(_rows[^1].Distance, known[^1].Elevation!.Value));
        return [.. points];
    }

    RoadPoint[] Points()
    {
        var points = new RoadPoint[_rows.Count];
        var height = 0.0;
        for (var i = 0; i < points.Length; i++)
        {
            if (i > 0)
                height += (_rows[i].Distance - _rows[i - 1].Distance) * (_rows[i - 1].Grade ?? 0) / 100;
            points[i] = Point(_rows[i].Distance, height);
        }

        return points;
    }

    static RoadPoint Point(double distance, double height) => new(Length.FromMetres(distance), Length.FromMetres(height));

    string[]? Complain(int line, int column, string key, string says, string remedy)
    {
        _complaints.Add(new(new(file, line, Math.Max(1, column)), key, says, remedy));
        return null;
    }
}
