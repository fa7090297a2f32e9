using Boardwright.Files.Routes;
using Boardwright.Road;

namespace Boardwright.Tests.Files;

/// <summary>The open recordings that lie beside the project, when they do: tkrajina/gpxpy 017d996, folder test_files, Apache-2.0.</summary>
public sealed class RecordedRouteTests
{
    // Statistics printed in the README beside the files and, for three of them, in the project's handbook, checks 86 and 87: haversine
    // R 6 371 000 m, segments not joined; relative tolerance of the checks 1e-4, here also half a unit of the last printed digit.
    [Theory]
    [InlineData("Mojstrovka.gpx", 1, 184, 2697.6, 1614.68, 2057.37, 482.6, 453.8, 466.7)]
    [InlineData("around-visnjan-with-car.gpx", 1, 104, 2733.2, 195.77, 241.91, 51.4, 51.9, 38.0)]
    [InlineData("cerknicko-jezero.gpx", 8, 296, 4575.0, 506.75, 579.33, 252.8, 118.7, 186.0)]
    [InlineData("korita-zbevnica.gpx", 4, 871, 14897.1, 722.09, 1050.86, 901.2, 907.5, 738.3)]
    [InlineData("track-with-extremes.gpx", 1, 25, 2203.5, 10, 30, 38.0, 26.0, 26.0)]
    public void A_recording_has_the_statistics_printed_beside_it(
        string file, int segments, int points, double distance, double lowest, double highest, double up, double down, double hysteresis)
    {
        var reading = Load(file);
        var route = reading.Route!;

        Assert.Empty(reading.Complaints);
        Assert.Equal((segments, points), (reading.SegmentCount, reading.PointCount));
        Assert.Equal(distance, route.Distance.Metres, Allowed(distance, 0.05));
        Assert.Equal(lowest, route.Lowest.Metres, 0.005 + 1e-9);
        Assert.Equal(highest, route.Highest.Metres, 0.005 + 1e-9);
        Assert.Equal(up, route.RawAscent.Up.Metres, Allowed(up, 0.05));
        Assert.Equal(down, route.RawAscent.Down.Metres, Allowed(down, 0.05));
        Assert.Equal(hysteresis, route.FiveMetreAscent.Up.Metres, Allowed(hysteresis, 0.05));
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
            $"{file}: {reading.SegmentCount} segments, {reading.PointCount} points, {route.Distance.Metres:0.0} m, {route.Lowest.Metres:0.00}..{route.Highest.Metres:0.00}, raw {route.RawAscent.Up.Metres:0.00}/{route.RawAscent.Down.Metres:0.00}, 5 m {route.FiveMetreAscent.Up.Metres:0.00}/{route.FiveMetreAscent.Down.Metres:0.00}, filtered {route.Climb.Metres:0.0}/{route.Descent.Metres:0.0}, steepest 100 m {route.SteepestClimb(Length.FromMetres(100))?.Percent:0.0}/{route.SteepestDescent(Length.FromMetres(100))?.Percent:0.0} %, cut {route.CutDistance.Metres:0} m, recorded {reading.Recorded?.Seconds} s; {string.Join(" | ", reading.Notes.Select(n => n.Says))}"));
    }

    [Fact]
    public void The_times_of_1901_are_refused_and_the_profile_is_kept()
    {
        var reading = Load("Mojstrovka.gpx");

        Assert.Null(reading.Recorded);
        Assert.Contains("The times are refused, and with them recorded speeds: the year 1901 is earlier than any recording. The profile is kept.", reading.Notes.Select(n => n.Says), StringComparer.Ordinal);
    }

    // 06:15:50 to 06:24:24 by the file's own first and last time.
    [Fact]
    public void The_times_of_the_car_ride_are_believed() =>
        Assert.Equal(514, Load("around-visnjan-with-car.gpx").Recorded!.Value.Seconds);

    [Theory]
    [InlineData("Mojstrovka.gpx")]
    [InlineData("around-visnjan-with-car.gpx")]
    [InlineData("cerknicko-jezero.gpx")]
    [InlineData("korita-zbevnica.gpx")]
    [InlineData("track-with-extremes.gpx")]
    public void The_other_way_exchanges_climb_and_descent(string file)
    {
        var route = Load(file).Route!;
        var back = route.Reversed();

        Assert.Equal(route.Climb.Metres, back.Descent.Metres, 1e-6);
        Assert.Equal(route.Descent.Metres, back.Climb.Metres, 1e-6);
        Assert.Equal(route.RawAscent.Up.Metres, back.RawAscent.Down.Metres, 1e-6);
        Assert.True(route.Climb <= route.RawAscent.Up);
    }

    static RouteReading Load(string file)
    {
        var path = Path.Combine("shared", "data", "ride", "gpx", file);
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, path)))
                return RouteFile.Load(Path.Combine(folder.FullName, path));
        }

        Assert.Skip($"The open recording {path} does not lie in or above this folder.");
        return new();
    }

    static double Allowed(double printed, double digit) => Math.Max(1e-4 * printed, digit) + 1e-9;
}
