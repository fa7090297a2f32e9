using System.Globalization;
using System.Text;
using Boardwright.Files;
using Boardwright.Files.Routes;
using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Files;

public sealed class RouteFileTests
{
    const string One = "http://www.topografix.com/GPX/1/0";
    const string OneOne = "http://www.topografix.com/GPX/1/1";

    // Points on the equator; 0.001 degrees are 111.194927 m by check 85.
    const string Hill = """
        <?xml version="1.0" encoding="UTF-8"?>
        <gpx version="VERSION" creator="hand" xmlns="NAMESPACE" xmlns:x="urn:other">
          <!-- a comment -->
          <wpt lat="5" lon="5"><ele>-3</ele><name>not the route</name></wpt>
          <trk>
            <name>Hill</name>
            <extensions><x:trkseg><x:trkpt lat="99" lon="0"/></x:trkseg></extensions>
            <trkseg>
              <trkpt lat="0" lon="0.000"><ele>100</ele><time>2024-05-01T10:00:00Z</time></trkpt>
              <trkpt lat="0" lon="0.001"><ele>1<!-- split -->06</ele><time>2024-05-01T10:00:20.5Z</time></trkpt>
              <trkpt lat="0" lon="0.002"><ele><![CDATA[102]]></ele><time>2024-05-01T12:00:40+02:00</time><x:ele>999</x:ele></trkpt>
            </trkseg>
            <trkseg/>
            <trkseg>
              <trkpt lat="0" lon="0.012"><ele>110</ele><time>2024-05-01T10:10:00Z</time></trkpt>
              <trkpt lat="0" lon="0.013"><ele>107</ele><time>2024-05-01T10:10:30Z</time></trkpt>
            </trkseg>
          </trk>
        </gpx>
        """;

    [Fact]
    public void A_route_is_read_from_texts_that_are_kept_elsewhere_and_one_that_is_not_there_is_complained_about()
    {
        var files = FileTree.FromTexts(new Dictionary<string, string>(StringComparer.Ordinal) { ["boards/quay.csv"] = "distance_m,elevation_m\n0,2\n1000,4\n" });

        Assert.Equal(1000, RouteFile.Load("boards/quay.csv", files).Route!.Distance.Metres);
        Assert.Equal("There is no such file.", Assert.Single(RouteFile.Load("boards/pier.csv", files).Complaints).Says);
    }

    [Theory]
    [InlineData("1.0", One)]
    [InlineData("1.1", OneOne)]
    public void Both_versions_of_gpx_are_read_the_same(string version, string space)
    {
        var reading = Read(Hill.Replace("VERSION", version, StringComparison.Ordinal).Replace("NAMESPACE", space, StringComparison.Ordinal));
        var route = reading.Route!;

        Assert.Empty(reading.Complaints);
        Assert.Equal(("Hill", 3, 5), (route.Name, reading.SegmentCount, reading.PointCount));
        Assert.Equal([222.390, 111.195], route.Segments.Select(s => Math.Round(s.Distance.Metres, 3)));
        Assert.Equal((6.0, 7.0), (route.RawAscent.Up.Metres, route.RawAscent.Down.Metres));
        Assert.Equal((6.0, 0.0), (route.FiveMetreAscent.Up.Metres, route.FiveMetreAscent.Down.Metres));
        Assert.Equal((100.0, 110.0), (route.Lowest.Metres, route.Highest.Metres));
        Assert.Equal(70, reading.Recorded!.Value.Seconds, 1e-9);
        Assert.Equal(
            ["1 segment is without distance left out.", "The route has 2 segments; the gaps between them are not bridged."],
            reading.Notes.Select(n => n.Says), StringComparer.Ordinal);
    }

    [Fact]
    public void A_planned_route_is_read_when_there_is_no_track()
    {
        var reading = Read(Gpx("""<rte><name>Plan</name><rtept lat="0" lon="0"><ele>0</ele></rtept><rtept lat="0" lon="0.01"><ele>40</ele></rtept></rte>"""));

        Assert.Equal("Plan", reading.Route!.Name);
        Assert.Equal(1111.949, reading.Route.Distance.Metres, 0.001);
        Assert.Equal(40, reading.Route.Climb.Metres, 1e-6);
        Assert.Equal(["The route is planned with a point every 1112 m, joined by straight lines; the road itself is longer, and hills between the points are not seen."], reading.Notes.Select(n => n.Says), StringComparer.Ordinal);
    }

    [Fact]
    public void Tracks_go_before_planned_routes()
    {
        var reading = Read(Gpx(
            """<rte><rtept lat="0" lon="0"/><rtept lat="0" lon="1"/></rte>""" + Track((0, "5", null), (0.001, "6", null)) + Track((0.002, "7", null), (0.003, "7", null))));

        Assert.Equal(222.390, reading.Route!.Distance.Metres, 0.001);
        Assert.Equal("ride", reading.Route.Name);
        Assert.Equal(
            [
                "The file holds tracks and planned routes; the tracks are taken, the planned routes are left out.",
                "The file holds 2 tracks; they are taken one after another.",
                "The route has 2 segments; the gaps between them are not bridged.",
            ],
            reading.Notes.Select(n => n.Says), StringComparer.Ordinal);
    }

    [Fact]
    public void A_track_without_elevation_is_level_and_says_so()
    {
        var reading = Read(Gpx(Track((0, null, null), (0.001, "", null), (0.002, "NaN", null))));

        Assert.Equal((0.0, 0.0), (reading.Route!.Climb.Metres, reading.Route.GradeAt(default).Value));
        Assert.Equal([new RouteNote(0, "The file gives no elevation to believe; the route counts as level.")], reading.Notes);
    }

    [Fact]
    public void Missing_and_extreme_elevations_are_bridged_and_told()
    {
        var reading = Read(Gpx(Track((0, null, null), (0.001, "100", null), (0.002, "9001", null), (0.003, "106", null), (0.004, "-501", null))));

        Assert.Equal((6.0, 0.0), (reading.Route!.RawAscent.Up.Metres, reading.Route.RawAscent.Down.Metres));
        Assert.Equal((100.0, 106.0), (reading.Route.Lowest.Metres, reading.Route.Highest.Metres));
        Assert.Equal(
            [
                new RouteNote(4, "2 elevations are outside -500 to 9000 m refused; the first is here."),
                new RouteNote(2, "3 of 5 points have no elevation; it is taken on straight lines between those that have one. The first is here."),
            ],
            reading.Notes);
    }

    [Theory]
    [InlineData("1901-12-13T20:45:52.2073437Z", "1901-12-13T20:45:52.2073437Z", "the year 1901 is earlier than any recording")]
    [InlineData("2024-05-01T10:00:00Z", "2024-05-01T10:00:00Z", "no time passes")]
    [InlineData("2024-05-01T10:00:00Z", "2024-05-01T10:00:01Z", "the mean speed would be 400 km/h")]
    [InlineData("2024-05-01T10:00:00Z", "2024-05-01T09:59:59Z", "time goes backwards here")]
    [InlineData("2024-05-01T10:00:00Z", "yesterday", "'yesterday' is not a time")]
    [InlineData("2024-05-01T10:00:00Z", "05/01/2024 10:01", "'05/01/2024 10:01' is not a time")]
    [InlineData("2024-05-01T10:00:00Z", null, "1 of 2 points have none, the first here")]
    public void Times_that_cannot_be_true_are_refused_and_the_profile_is_kept(string first, string? second, string why)
    {
        var reading = Read(Gpx(Track((0, "1", first), (0.001, "2", second))));

        Assert.Equal(111.195, reading.Route!.Distance.Metres, 0.001);
        Assert.Null(reading.Recorded);
        Assert.Equal([$"The times are refused, and with them recorded speeds: {why}. The profile is kept."], reading.Notes.Select(n => n.Says), StringComparer.Ordinal);
    }

    [Fact]
    public void A_gap_of_many_kilometres_within_a_segment_is_not_bridged()
    {
        var reading = Read(Gpx(Track((0, "1", null), (0.001, "1", null), (50, "1", null), (0.002, "1", null), (0.003, "1", null))));

        Assert.Equal(222.390, reading.Route!.Distance.Metres, 0.001);
        Assert.Equal(
            [
                new RouteNote(4, "2 gaps are longer than 10 km between neighbouring points; a gap is not bridged and contributes no distance. The first, 5559.6 km, ends here."),
                new RouteNote(0, "1 segment is without distance left out."),
                new RouteNote(0, "The route has 2 segments; the gaps between them are not bridged."),
            ],
            reading.Notes);
    }

    [Fact]
    public void A_cliff_is_cut_and_told() =>
        Assert.Contains(
            "Over 111 m the filtered profile is steeper than 40 %; the grade is cut to that, as no public road is steeper.",
            Read(Gpx(Track((0, "0", null), (0.001, "80", null)))).Notes.Select(n => n.Says), StringComparer.Ordinal);

    [Fact]
    public void A_file_without_a_namespace_is_read_as_the_newer_version()
    {
        var reading = Read("<gpx>" + Track((0, "1", null), (0.001, "1", null)) + "</gpx>");

        Assert.NotNull(reading.Route);
        Assert.Equal(["The file does not say which version of GPX it is; it is read as GPX 1.1."], reading.Notes.Select(n => n.Says), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    [InlineData("utf-8")]
    public void A_byte_order_mark_is_no_obstacle(string encoding)
    {
        var coding = Encoding.GetEncoding(encoding);
        foreach (var text in new[] { Gpx(Track((0, "1", null), (0.001, "1", null))), "distance_m\n0\n100\n" })
            Assert.Empty(ReadBytes([.. coding.GetPreamble(), .. coding.GetBytes(text)]).Complaints);
    }

    [Fact]
    public void A_table_of_grades_is_taken_as_it_stands()
    {
        var reading = Read("""
            # check 20 with a limit and two stops
            distance_m, grade_percent, speed_kmh, stop_s

            0,0,,
            2000,6,12,
            "2500",-6,,30
            3000,,,5
            """);
        var route = reading.Route!;

        Assert.Empty(reading.Complaints);
        Assert.Empty(reading.Notes);
        Assert.Equal((3000.0, 30.0, 30.0), (route.Distance.Metres, Math.Round(route.Climb.Metres, 9), Math.Round(route.Descent.Metres, 9)));
        Assert.Equal(6, route.GradeAt(Length.FromMetres(2001)).Percent, 1e-9);
        Assert.Equal([(2000.0, 2500.0, 12.0)],
            route.Wishes.Select(w => (w.From.Metres, w.To.Metres, Math.Round(w.AtMost.KilometresPerHour, 9))));
        Assert.Equal([(2500.0, 30.0), (3000.0, 5.0)], route.Stops.Select(s => (s.At.Metres, s.Wait.Seconds)));
    }

    [Theory]
    [InlineData("distance_m,grade_percent,speed_kmh\n0,2.5,\n1000.5,,", ',')]
    [InlineData("distance_m,grade_percent,speed_kmh\n0,\"2,5\",\n\"1000,5\",,", ',')]
    [InlineData("distance_m;grade_percent;speed_kmh\r\n0;2,5;\r\n1000,5;;\r\n", ';')]
    [InlineData("distance_m;\"grade_percent\";speed_kmh\n\"0\"; 2.5;\n1000.5;;", ';')]
    [InlineData("# from a sheet\n\"distance_m\"\tgrade_percent\tspeed_kmh\n0\t2,5\t\n\"1.000,5\"\t\t", '\t')]
    public void A_table_is_read_however_its_columns_and_decimals_are_marked(string text, char delimiter)
    {
        var reading = Read(text);

        Assert.Contains(delimiter, text);
        Assert.Empty(reading.Complaints);
        Assert.Equal((1000.5, 2.5), (reading.Route!.Distance.Metres, Math.Round(reading.Route.GradeAt(Length.FromMetres(500)).Percent, 9)));
    }

    [Fact]
    public void A_table_of_elevations_is_filtered_like_a_recording()
    {
        var reading = Read("stop_s,elevation_m,distance_m\n0,100,0\n0,,500\n0,140,1000\n,140,2000");

        Assert.Equal(40, reading.Route!.Climb.Metres, 0.01);
        Assert.Equal(4, reading.Route.GradeAt(Length.FromMetres(300)).Percent, 1e-9);
        Assert.Empty(reading.Route.Stops);
        Assert.Equal([new RouteNote(3, "1 of 4 rows have no elevation; it is taken on straight lines between those that have one. The first is here.")], reading.Notes);
    }

    [Fact]
    public void A_table_without_heights_is_level_and_says_so() =>
        Assert.Equal([new RouteNote(0, "The table gives neither grade nor elevation; the route counts as level.")], Read("distance_m\n0\n5000").Notes);

    /// <summary>Bad files and everything that is said about each.</summary>
    public static TheoryData<string, string, string[]> Bad => new()
    {
        { "cut off", $"<gpx xmlns=\"{OneOne}\"><trk>\n<trkseg><trkpt lat=\"0\" lon=\"0\">", ["ride.gpx:2:32: The file is not well-formed XML from here on. Export the file again; if it was cut off or edited, mend the tag or character at this place."] },
        { "crossed tags", $"<gpx xmlns=\"{OneOne}\">\n<trk></gpx>", ["ride.gpx:2:8: The file is not well-formed XML from here on. Export the file again; if it was cut off or edited, mend the tag or character at this place."] },
        { "document type", "<?xml version=\"1.0\"?>\n<!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>\n<gpx>&x;</gpx>", ["ride.gpx:1:1: The file declares a document type (DTD), which is refused. Remove the <!DOCTYPE …> declaration and every &entity; it defines."] },
        { "undeclared entity", $"<gpx xmlns=\"{OneOne}\">&x;</gpx>", ["ride.gpx:1:49: The file is not well-formed XML from here on. Export the file again; if it was cut off or edited, mend the tag or character at this place."] },
        { "another root", "<kml/>", ["ride.gpx:1:2: The root is <kml>, not <gpx>. Export the route as GPX 1.1, or write it as a table of comma-separated values."] },
        { "another namespace", "<gpx xmlns=\"urn:gpx:2\"/>", ["ride.gpx:1:2: gpx: The namespace 'urn:gpx:2' is neither that of GPX 1.0 nor of 1.1. Write xmlns=\"http://www.topografix.com/GPX/1/1\", or export the route as GPX 1.1."] },
        { "empty", Gpx(""), ["ride.gpx:1:1: trk: The file holds no track and no route. Export the ride as a track (trk), or plan it as a route (rte) with at least two points."] },
        { "waypoints only", Gpx("<wpt lat=\"0\" lon=\"0\"/>"), ["ride.gpx:1:1: trk: The file holds waypoints but no track and no route. Export the ride as a track (trk), or plan it as a route (rte) with at least two points."] },
        { "one place", Gpx(Track((0, "1", null), (0, "2", null))), ["ride.gpx:1:1: trkpt: All points lie at one place: there is no distance. Give the route at least two points apart."] },
        {
            "bad points",
            Gpx("<trk><trkseg>\n<trkpt lat=\"90.5\" lon=\"-181\"/>\n<trkpt lat=\"53,3\" lon=\"x\"/>\n<trkpt lon=\"1\"/>\n<trkpt lat=\"NaN\" lon=\"1\"><ele>low</ele></trkpt>\n<trkpt lat=\"1\" lon=\"1\"><ele>12,5</ele></trkpt></trkseg></trk>"),
            [
                "ride.gpx:2:8: trkpt.lat: 90.5 is outside −90 to 90 degrees. Check the point; lat and lon may be exchanged.",
                "ride.gpx:2:19: trkpt.lon: -181 is outside −180 to 180 degrees. Check the point; lat and lon may be exchanged.",
                "ride.gpx:3:8: trkpt.lat: '53,3' is not a number of degrees. Write numbers with a point, as 12.5, not with a comma.",
                "ride.gpx:3:19: trkpt.lon: 'x' is not a number of degrees. Write a plain number, as 12.5.",
                "ride.gpx:4:2: trkpt.lat: The point has no lat. Give every point lat and lon in degrees, as <trkpt lat=\"53.3498\" lon=\"-6.2603\">.",
                "ride.gpx:5:8: trkpt.lat: 'NaN' is not a number of degrees. Write a plain number, as 12.5.",
                "ride.gpx:6:29: ele: '12,5' is not an elevation in metres. Write numbers with a point, as 12.5, not with a comma.",
            ]
        },
        { "nested", Gpx(string.Concat(Enumerable.Repeat("<a>", 100)) + string.Concat(Enumerable.Repeat("</a>", 100))), ["ride.gpx:1:255: a: Elements are nested more than 64 deep. Export the file again without extensions."] },
        { "across the earth", Gpx("<rte><rtept lat=\"0\" lon=\"0\"/><rtept lat=\"0\" lon=\"90\"/></rte>"), ["ride.gpx:1:1: The route is longer than 2000 km. Check its points, or cut it to the part that is ridden."] },
        { "nothing", "", ["ride.gpx:1:1: The file is empty. Begin the table with a header row, as distance_m,grade_percent,speed_kmh,stop_s."] },
        { "binary", "PK\u0003\u0004\0\0", ["ride.gpx:1:1: The file is neither GPX nor text. Export the route as GPX 1.1, or save the table as comma-separated values in UTF-8."] },
        { "no header", "0,0\n100,5", ["ride.gpx:1:1: The table begins with a number instead of a header row. The columns are distance_m, grade_percent or elevation_m, speed_kmh, stop_s."] },
        { "two marks", "distance_m;grade_percent\n0;1,5\n10.5;0", ["ride.gpx:1:1: 1 numbers have a decimal comma and 1 a decimal point. Write all numbers with a point, as 12.5, or all with a comma, as 12,5."] },
        { "doubtful mark", "distance_m;grade_percent\n0;1\n1,234;0", ["ride.gpx:3:1: '1,234' may mean 1.234 or 1234, and no number of the file tells which. Write all numbers with a point, as 12.5, or all with a comma, as 12,5."] },
        { "decimal commas between commas", "distance_m,grade_percent\n0,1,5\n10,0", ["ride.gpx:2:5: The row has 3 cells, the header 2. Give one cell for each column, an empty one where nothing is to be said; write numbers with a point, as 12.5."] },
        {
            "unknown columns",
            "distance_km, slope, Speed,stop_s,stop_s",
            [
                "ride.gpx:1:1: distance_km: 'distance_km' is not a known column. Write distance_m, its values in that unit.",
                "ride.gpx:1:14: slope: 'slope' is not a known column. The columns are distance_m, grade_percent or elevation_m, speed_kmh, stop_s.",
                "ride.gpx:1:21: Speed: 'Speed' is not a known column. Write speed_kmh, its values in that unit.",
                "ride.gpx:1:34: stop_s: The column stop_s occurs twice. Keep one of them.",
            ]
        },
        { "no distance", "grade_percent\n5\n6", ["ride.gpx:1:1: distance_m: There is no column distance_m. Give the distance from the start of the route, in metres, in each row."] },
        { "both heights", "distance_m,grade_percent,elevation_m\n0,1,2", ["ride.gpx:1:1: grade_percent: The table gives grade and elevation, which may contradict each other. Keep grade_percent or elevation_m."] },
        { "one row", "distance_m\n0", ["ride.gpx:2:1: distance_m: The table has fewer than two rows. Write a row for the start at 0 m and one for the end."] },
        {
            "bad rows",
            "distance_m,grade_percent,speed_kmh,stop_s\n5,0,,\n0,0,,\n0,0,,\n100,5 %,20 km/h,-1\n200,41,0,x\n,1,,\n300,1,5\n",
            [
                "ride.gpx:2:1: distance_m: The route starts at 5 m. Count the distance from the start: the first row is at 0.",
                "ride.gpx:4:1: distance_m: 0 m does not lie beyond the 0 m of the row before. Put the rows in order of distance, one for each distance.",
                "ride.gpx:5:5: grade_percent: '5 %' is not a number. Write the number without a unit; the unit stands in the header.",
                "ride.gpx:5:9: speed_kmh: '20 km/h' is not a number. Write the number without a unit; the unit stands in the header.",
                "ride.gpx:5:17: stop_s: -1 is outside 0 to 86400. Check the value and the unit in the header.",
                "ride.gpx:6:5: grade_percent: 41 is outside -40 to 40. Check the value and the unit in the header.",
                "ride.gpx:6:8: speed_kmh: 0 is outside 1 to 150. Check the value and the unit in the header.",
                "ride.gpx:6:10: stop_s: 'x' is not a number. Write the number without a unit; the unit stands in the header.",
                "ride.gpx:7:1: distance_m: The cell distance_m is empty. Write a plain number, as 12.5.",
                "ride.gpx:8:7: The row has 3 cells, the header 4. Give one cell for each column, an empty one where nothing is to be said; write numbers with a point, as 12.5.",
            ]
        },
        { "no grade", "distance_m,grade_percent\n0,1\n100,\n200,", ["ride.gpx:3:1: grade_percent: The cell grade_percent is empty. Write the grade of the road up to the next row; 0 for a level one."] },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_bad_file_is_refused_with_every_reason(string name, string content, string[] says)
    {
        var reading = Read(content);

        Assert.Null(reading.Route);
        Assert.True(says.SequenceEqual(reading.Complaints.Select(c => c.ToString()), StringComparer.Ordinal),
            name + ":\n" + string.Join('\n', reading.Complaints));
    }

    [Fact]
    public void Complaints_about_one_file_come_to_an_end()
    {
        var points = string.Concat(Enumerable.Repeat("<trkpt lat=\"91\" lon=\"0\"/>\n", 1000));

        Assert.Equal(RouteFile.MostComplaints, Read(Gpx($"<trk><trkseg>{points}</trkseg></trk>")).Complaints.Count);
        Assert.InRange(Read("distance_m\n" + string.Concat(Enumerable.Repeat("x\n", 1000))).Complaints.Count, 1, RouteFile.MostComplaints);
    }

    [Fact]
    public void An_endless_file_is_refused_before_it_is_kept()
    {
        using var endless = new Endless();

        Assert.Equal(["ride.gpx:1:1: The file is longer than 64 MiB. Cut the recording to the part that is ridden, or thin its points."], RouteFile.Read("ride.gpx", endless).Complaints.Select(c => c.ToString()), StringComparer.Ordinal);
    }

    [Fact]
    public void A_missing_file_is_a_complaint_without_its_folder() =>
        Assert.Equal(
            ["nowhere.gpx:1:1: There is no such file. Check the path, seen from the folder of the board file, and that you may read the file."],
            RouteFile.Load(Path.Combine(AppContext.BaseDirectory, "no", "nowhere.gpx")).Complaints.Select(c => c.ToString()), StringComparer.Ordinal);

    [Fact]
    public void The_culture_changes_nothing()
    {
        string[] files = [Hill.Replace("NAMESPACE", OneOne, StringComparison.Ordinal), .. Bad.Select(b => b.Data.Item2), "distance_m,elevation_m,speed_kmh\n0,1.5,20.5\n500.5,2,\n1000,5,"];
        var here = files.Select(Everything).ToArray();
        var before = CultureInfo.CurrentCulture;
        try
        {
            // The host runs without culture tables, so the comma and the minus are set by hand.
            var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            foreign.NumberFormat.NumberDecimalSeparator = ",";
            foreign.NumberFormat.NegativeSign = "~";
            CultureInfo.CurrentCulture = foreign;
            Assert.Equal(here, files.Select(Everything), StringComparer.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void No_text_makes_the_reader_throw() =>
        Gen.Select(Gen.Bool, Gen.Int[0, 2000], Gen.Int[0, 40], Gen.String[0, 6]).Sample((gpx, at, cut, put) =>
        {
            var text = gpx ? Hill.Replace("NAMESPACE", OneOne, StringComparison.Ordinal) : "distance_m,grade_percent,speed_kmh,stop_s\n0,1,2,3\n100,1,2,3\n";
            var start = at % text.Length;
            var reading = Read(text[..start] + put + text[Math.Min(text.Length, start + cut)..]);
            return (reading.Route is null) == (reading.Complaints.Count > 0);
        });

    static string Everything(string content)
    {
        var reading = Read(content);
        var route = reading.Route is { } r
            ? FormattableString.Invariant($"{r.Name} {r.Distance.Metres:R} {r.Climb.Metres:R} {r.RawAscent.Up.Metres:R} {r.Wishes.Count} {r.GradeAt(r.Distance / 3).Value:R}")
            : "none";
        return string.Join('\n', [route, .. reading.Notes.Select(n => n.Says), .. reading.Complaints.Select(c => c.ToString())]);
    }

    static RouteReading Read(string content) => ReadBytes(Encoding.UTF8.GetBytes(content));

    static RouteReading ReadBytes(byte[] content)
    {
        using var stream = new MemoryStream(content);
        return RouteFile.Read("ride.gpx", stream);
    }

    static string Gpx(string content) => $"<gpx version=\"1.1\" xmlns=\"{OneOne}\">{content}</gpx>";

    // One point a line, on the equator; the first on line 2.
    static string Track(params (double Longitude, string? Elevation, string? Time)[] points) =>
        "<trk><trkseg>" + string.Concat(points.Select(p => FormattableString.Invariant($"\n<trkpt lat=\"0\" lon=\"{p.Longitude}\">")
            + (p.Elevation is null ? "" : $"<ele>{p.Elevation}</ele>") + (p.Time is null ? "" : $"<time>{p.Time}</time>") + "</trkpt>")) + "</trkseg></trk>";

    sealed class Endless : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)' ');
            return count;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
