using System.Globalization;
using Boardwright.Files.Logs;
using Boardwright.Logs;
using Boardwright.Tests.Lessons;

namespace Boardwright.Tests.Files;

/// <summary>
/// Real trips of the Dublin e-scooter and e-bike data sets (SFIEssential/DualEMobilityData-datasets, MIT) and tracks of
/// gpxpy (Apache-2.0). The statistics were computed by another program from the same files, with R = 6371000 m.
/// </summary>
public sealed class RideLogTripsTests
{
    // Printed with one decimal; the haversine and the trapezoidal rule are exact, so half a digit is allowed.
    const double Tenth = 0.051;

    static RideLogReading Read(params string[] names)
    {
        var reading = RideLogFile.Read(RideFolder.At(names));
        Assert.True(reading.Complaints.Count == 0, string.Join("; ", reading.Complaints));
        Assert.NotNull(reading.Log);
        return reading;
    }

    [Theory]
    [InlineData(1, 93, 286, 1097.6, 1124.3, 22.59, 97, 91)]
    [InlineData(4, 199, 654, 2427.9, 2255.4, 24.27, 87, 76)]
    [InlineData(8, 103, 373, 1267.4, 1202.0, 23.00, 76, 70)]
    [InlineData(9, 138, 473, 1677.1, 1666.6, 22.54, 69, 63)]
    [InlineData(15, 196, 564, 2360.5, 2329.8, 23.64, 68, 40)]
    [InlineData(16, 166, 621, 1970.9, 1887.5, 23.17, 41, 28)]
    [InlineData(22, 109, 392, 1284.1, 1266.5, 21.56, 89, 83)]
    [InlineData(27, 159, 407, 1942.6, 1936.9, 25.62, 73, 68)]
    [InlineData(29, 135, 338, 1757.3, 1492.2, 24.84, 48, 32)]
    [InlineData(30, 150, 592, 1853.9, 1773.3, 25.31, 32, 23)]
    public void Trips_of_the_scooters_have_the_statistics_of_the_other_program(
        int trip, int rows, double seconds, double path, double bySpeed, double fastest, double from, double to)
    {
        var reading = Read("e-scooter-dublin", $"trip_{trip}.csv");
        var log = reading.Log!;

        Assert.Equal(rows, reading.RowCount);
        Assert.Equal(rows, log.Count + reading.BadRowCount);
        Assert.Equal(0, reading.BadRowCount);
        Assert.Equal(seconds, log.Lasting.Seconds);
        Assert.Equal(path, log.WayByPositions!.Value.Metres, Tenth);
        Assert.Equal(bySpeed, log.WayBySpeeds!.Value.Metres, Tenth);
        Assert.Equal(fastest, log.Speeds.Greatest!.Value.KilometresPerHour, 0.0051);
        Assert.Equal(from, log.ChargesLeft.First!.Value.Percent, 1e-9);
        Assert.Equal(to, log.ChargesLeft.Last!.Value.Percent, 1e-9);
        // The names give no unit; the way by the positions shows which it is.
        var speed = Assert.Single(reading.Mapping!.Columns, c => c.Channel == Channel.Speed);
        Assert.Equal("km/h", speed.Unit!.Symbol);
        Assert.False(speed.IsAssumed);
        Assert.DoesNotContain(reading.Mapping.Columns, c => c.Header.StartsWith("Wind", StringComparison.Ordinal) && c.Channel is not null);
    }

    // Handbook check 88: a pack of 446 Wh loses 22.30 Wh over trip 27.
    [Fact]
    public void Trip_27_takes_the_energy_of_the_handbook()
    {
        var charges = Read("e-scooter-dublin", "trip_27.csv").Log!.ChargesLeft;

        Assert.Equal(22.30, 446 * (charges.First!.Value.Value - charges.Last!.Value.Value), 1e-3);
    }

    [Theory]
    [InlineData(1, 970, "2023-07-06T09:04:23", "2023-07-06T09:20:54", 4898.47, 25.232)]
    [InlineData(2, 739, "2023-07-07T07:52:03", "2023-07-07T08:04:21", 4207.65, 24.815)]
    [InlineData(4, 559, "2023-07-05T09:00:48", "2023-07-05T09:10:10", 2823.18, 24.372)]
    [InlineData(8, 347, "2023-10-25T09:22:22", "2023-10-25T09:28:08", 1316.92, 18.220)]
    public void Trips_of_the_bikes_have_the_statistics_of_the_other_program(
        int trip, int rows, string begins, string ends, double odometer, double fastest)
    {
        var reading = Read("e-bike-dublin", $"trip_{trip}.csv");
        var log = reading.Log!;

        Assert.Equal(rows, reading.RowCount);
        Assert.Equal(0, reading.BadRowCount);
        Assert.Equal(begins, log.Begun!.Value.ToString("s", CultureInfo.InvariantCulture));
        Assert.Equal(ends, log.Begun!.Value.AddSeconds(log.Lasting.Seconds).ToString("s", CultureInfo.InvariantCulture));
        Assert.Equal(odometer, log.Distances.Last!.Value.Metres, 0.0051);
        Assert.Equal(fastest, log.Speeds.Greatest!.Value.KilometresPerHour, 0.00051);
        // The temperature of the weather is not taken for one of the board.
        Assert.DoesNotContain(log.Channels, c => c is Channel.MotorTemperature or Channel.PackTemperature or Channel.ControllerTemperature);
    }

    // Handbook check 89 and the defects of the data set: of 30 trips 1074.9 Wh over 44.7 km make 24.05 Wh/km, and the printed Wh/km of 10,
    // 22 and 24 do not follow from their own charges.
    [Fact]
    public void The_summary_of_the_scooters_adds_up_and_its_known_defects_are_found()
    {
        var rows = Table(RideFolder.At("e-scooter-dublin", "data_summary.csv"));
        var trips = rows.Where(r => r["trip_id"].Length > 0).ToList();
        double Number(Dictionary<string, string> row, string name) => double.Parse(row[name], CultureInfo.InvariantCulture);
        double Energy(Dictionary<string, string> row) => 446 * (Number(row, "starting_soc") - Number(row, "ending_soc")) / 100;

        Assert.Equal(30, trips.Count);
        Assert.True(rows.Count > trips.Count, "The empty rows at the end are gone.");
        Assert.Equal(1074.9, trips.Sum(Energy), 0.051);
        Assert.Equal(44.7, trips.Sum(r => Number(r, "distance (km)")), 0.051);
        Assert.Equal(24.05, trips.Sum(Energy) / trips.Sum(r => Number(r, "distance (km)")), 0.0051);
        Assert.Equal([10, 22, 24],
            trips.Where(r => Math.Abs(Energy(r) / Number(r, "distance (km)") / Number(r, "wh/km") - 1) > 0.1).Select(r => (int)Number(r, "trip_id")));
        var odd = Assert.Single(trips, r => r["destination_point"].Count(c => c == ',') != 1);
        Assert.Equal(2, Number(odd, "trip_id"));
        var log = Read("e-scooter-dublin", "trip_15.csv").Log!;
        var fifteen = trips.Single(r => Number(r, "trip_id") == 15);
        Assert.Equal(361, Number(fifteen, "duration(s)"));
        Assert.True(log.Lasting.Seconds > 1.5 * Number(fifteen, "duration(s)"));
    }

    // By the data set's README: per trip the median is 19.85 and the range 8.92 to 50.97 Wh/km; columns stand in another order from file to
    // file, and trip 4 has one more.
    [Fact]
    public void Columns_are_found_by_name_in_whatever_order_and_the_spread_of_the_trips_is_as_printed()
    {
        var trips = Table(RideFolder.At("e-scooter-dublin", "data_summary.csv")).Where(r => r["trip_id"].Length > 0)
            .Select(r => 4.46 * (double.Parse(r["starting_soc"], CultureInfo.InvariantCulture) - double.Parse(r["ending_soc"], CultureInfo.InvariantCulture))
            / double.Parse(r["distance (km)"], CultureInfo.InvariantCulture)).Order().ToArray();
        string[] Headers(int trip) => [.. Read("e-scooter-dublin", $"trip_{trip}.csv").Mapping!.Columns.Select(c => c.Header)];

        Assert.Equal(8.92, trips[0], 0.0051);
        Assert.Equal(50.97, trips[^1], 0.0051);
        Assert.Equal(19.85, (trips[14] + trips[15]) / 2, 0.0051);
        Assert.Contains(Headers(4), h => h.Contains("ccuracy", StringComparison.Ordinal));
        int[] all = [1, 4, 8, 9, 15, 16, 22, 27, 29, 30];
        Assert.True(all.Select(trip => string.Join(',', Headers(trip))).Distinct(StringComparer.Ordinal).Count() > 2);
    }

    // The number of a file is not that of the table: by its distance trip_2.csv is row 7, trip_4.csv row 4; rows 16 to 19 have commas of
    // full width.
    [Theory]
    [InlineData(2, 7)]
    [InlineData(4, 4)]
    public void Trips_of_the_bikes_are_joined_by_distance_and_not_by_number(int file, int row)
    {
        var table = Table(RideFolder.At("e-bike-dublin", "index_table.csv"));
        var log = Read("e-bike-dublin", $"trip_{file}.csv").Log!;
        var nearest = table.MinBy(
            r => Math.Abs(double.Parse(r["Distance(Km)"], CultureInfo.InvariantCulture) - log.Distances.Last!.Value.Kilometres)
            + Math.Abs(double.Parse(r["Duration(S)"], CultureInfo.InvariantCulture) - log.Lasting.Seconds) / 1000)!;

        Assert.Equal(row, int.Parse(nearest["Trip ID"], CultureInfo.InvariantCulture));
        Assert.Equal(["16", "17", "18", "19"], table.Where(r => r["Starting Point"].Contains('，', StringComparison.Ordinal)).Select(r => r["Trip ID"]));
    }

    [Theory]
    [InlineData("e-scooter-dublin", "data_summary.csv")]
    [InlineData("e-bike-dublin", "index_table.csv")]
    public void A_table_of_trips_is_refused_as_a_ride(string folder, string name)
    {
        var reading = RideLogFile.Read(RideFolder.At(folder, name));

        Assert.Null(reading.Log);
        Assert.NotEmpty(reading.Complaints);
    }

    // Handbook checks 86 and 87: segments are not joined, and a track whose times are all of 1901 gives a profile and no speed.
    [Theory]
    [InlineData("around-visnjan-with-car.gpx", 104, 1, 2733.2)]
    [InlineData("cerknicko-jezero.gpx", 296, 8, 4575.0)]
    [InlineData("korita-zbevnica.gpx", 871, 4, 14897.1)]
    public void Tracks_have_the_statistics_of_the_other_program(string name, int points, int segments, double path)
    {
        var reading = RideLogFile.Read(RideFolder.At("gpx", name));

        Assert.Equal(points, reading.RowCount);
        Assert.NotNull(reading.Profile);
        // A segment of one point has no way and is left out of the profile.
        Assert.InRange(reading.Profile.Segments.Count, segments - 1, segments);
        Assert.Equal(path, reading.Profile.Distance.Metres, Tenth);
        if (reading.BadRowCount == 0 && reading.Log is { } log)
            Assert.Equal(path, log.WayByPositions!.Value.Metres, Tenth);
    }

    [Fact]
    public void A_track_of_1901_gives_a_profile_and_no_ride()
    {
        var reading = RideLogFile.Read(RideFolder.At("gpx", "Mojstrovka.gpx"));

        Assert.Null(reading.Log);
        Assert.Contains("before 1990", Assert.Single(reading.Complaints).Says, StringComparison.Ordinal);
        Assert.Equal(2697.6, reading.Profile!.Distance.Metres, Tenth);
    }

    static List<Dictionary<string, string>> Table(string path)
    {
        var lines = File.ReadAllLines(path).Where(l => l.Length > 0).Select(Fields).ToList();
        return [.. lines.Skip(1).Select(fields => lines[0].Zip(fields).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal))];

        static List<string> Fields(string line)
        {
            var (fields, start, isQuoted) = (new List<string>(), 0, false);
            for (var i = 0; i <= line.Length; i++)
            {
                if (i < line.Length && line[i] == '"') isQuoted = !isQuoted;
                if (i < line.Length && (line[i] != ',' || isQuoted)) continue;
                fields.Add(line[start..i].Trim('"'));
                start = i + 1;
            }

            return fields;
        }
    }
}
