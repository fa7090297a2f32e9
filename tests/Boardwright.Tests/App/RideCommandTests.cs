using System.Globalization;
using System.Text.Json;

namespace Boardwright.Tests.App;

public sealed class RideCommandTests
{
    static readonly string Tern = Boards.PathOf("tern");

    const string Short = "distance_m,grade_percent,speed_kmh,stop_s\n0,0,20,\n600,4,,10\n1000,-3,,\n1500,,,\n";

    [Fact]
    public void A_cruise_is_reported_with_its_totals_and_where_the_energy_went()
    {
        var (code, text, error) = Ran.With("ride", Tern, "--loop", "cruise", "--samples", "8");

        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.Contains("until the reserve was reached", text, StringComparison.Ordinal);
        foreach (var heading in new[] { "The ride", "Where the energy went", "Hottest" })
            Assert.Contains($"\n{heading}\n", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public void A_route_is_ridden_to_its_end_and_the_same_twice()
    {
        using var folder = new Folder();
        var route = folder.Write("short.csv", Short);
        var (code, text, error) = Ran.With("ride", Tern, "--route", route, "--samples", "16", "--json");

        Assert.Equal((0, ""), (code, error));
        using var json = JsonDocument.Parse(text);
        Assert.Equal("end-of-route", json.RootElement.GetProperty("end").GetString());
        var distance = json.RootElement.GetProperty("results").EnumerateArray().Single(r => r.GetProperty("id").GetString() == "ride.distance");
        Assert.Equal(1.5, distance.GetProperty("value").GetDouble(), 1e-6);
        var energy = json.RootElement.GetProperty("energy_Wh");
        var used = energy.EnumerateObject().Where(e => e.Name is not ("from_cells" or "unaccounted")).Sum(e => e.Value.GetDouble());
        Assert.Equal(energy.GetProperty("from_cells").GetDouble(), used, 1e-6);
        Assert.Equal(text, Ran.With("ride", Tern, "--route", route, "--samples", "16", "--json").Out);
    }

    [Fact]
    public void The_trace_is_a_table_of_numbers_with_a_point()
    {
        using var folder = new Folder();
        var (code, text, _) = Ran.With("ride", Tern, "--route", folder.Write("short.csv", Short), "--csv", "--every", "5");
        var lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var columns = lines[0].Split(',').Length;

        Assert.Equal(0, code);
        Assert.InRange(lines.Length, 40, 100);
        Assert.All(lines.Skip(1),
            line => Assert.All(line.Split(',')[..(columns - 1)],
            number => Assert.True(double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out _))));
        Assert.All(lines, line => Assert.Equal(columns, line.Split(',').Length));
    }

    [Fact]
    public void Pictures_of_the_ride_are_written_where_they_were_asked_for()
    {
        using var folder = new Folder();
        var place = Path.Combine(folder.Path, "pictures");
        var (code, text, _) = Ran.With("ride", Tern, "--route", folder.Write("short.csv", Short), "--samples", "0", "--plot", place);

        Assert.Equal(0, code);
        Assert.Equal(["tern.ride-distance.svg", "tern.ride-energy.svg", "tern.ride-time.svg"], Directory.EnumerateFiles(place).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));
        Assert.All(Directory.EnumerateFiles(place), f => Assert.Contains($"Wrote {f}", text, StringComparison.Ordinal));
        Assert.All(Directory.EnumerateFiles(place), f => Assert.EndsWith("</svg>\n", File.ReadAllText(f), StringComparison.Ordinal));
    }

    [Fact]
    public void A_board_that_never_moved_has_no_picture_and_that_is_said()
    {
        using var folder = new Folder();
        var (code, _, error) = Ran.With("ride", Tern, "--route", folder.Write("wall.csv", "distance_m,grade_percent\n0,38\n400,\n"), "--samples", "0", "--plot", folder.Path);

        Assert.Equal(1, code);
        Assert.Contains("No picture was written", error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(folder.Path, "*.svg"));
    }

    [Fact]
    public void Pictures_add_nothing_to_a_document_for_other_programs()
    {
        using var folder = new Folder();
        var route = folder.Write("short.csv", Short);
        var alone = Ran.With("ride", Tern, "--route", route, "--samples", "0", "--json");

        Assert.Equal(alone, Ran.With("ride", Tern, "--route", route, "--samples", "0", "--json", "--plot", folder.Path));
    }

    [Fact]
    public void A_hill_that_is_too_steep_is_said_and_told_by_the_exit_code()
    {
        using var folder = new Folder();
        var (code, text, _) = Ran.With("ride", Tern, "--route", folder.Write("wall.csv", "distance_m,grade_percent\n0,0\n100,38\n400,\n"), "--samples", "0");

        Assert.Equal(1, code);
        Assert.Contains("cannot go on", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_route_is_asked_for_where_there_is_none()
    {
        var (code, text, error) = Ran.With("ride", Tern);

        Assert.Equal((2, ""), (code, text));
        Assert.Contains("--loop cruise", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_route_that_cannot_be_read_is_refused_with_its_place()
    {
        using var folder = new Folder();
        var (code, text, error) = Ran.With("ride", Tern, "--route", folder.Write("bad.csv", "distance_m,grade_percent\n0,steep\n"));

        Assert.Equal((2, ""), (code, text));
        Assert.Contains("bad.csv:2", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_route_is_repeated_until_the_reserve()
    {
        using var folder = new Folder();
        var (code, text, _) = Ran.With("ride", Tern, "--route", folder.Write("short.csv", Short), "--repeat-until-reserve", "--samples", "0", "--units", "imperial");

        Assert.Equal(0, code);
        Assert.Matches("[0-9]+ times and a part of it", text);
        Assert.Contains(" mi", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--samples", "5")]
    [InlineData("--every", "0")]
    [InlineData("--loop", "figure-eight")]
    public void Nonsense_is_refused(string option, string value) => Assert.Equal(2, Ran.With("ride", Tern, option, value).Code);

    [Fact]
    public void Options_that_exclude_one_another_are_refused()
    {
        Assert.Equal(2, Ran.With("ride", Tern, "--json", "--csv", "--loop", "cruise").Code);
        Assert.Equal(2, Ran.With("ride", Tern, "--route", "a.gpx", "--loop", "cruise").Code);
    }

    [Fact]
    public void The_help_of_a_ride_reads_as_approved() => Approved.Matches("App/help-ride.txt", Ran.With("ride", "--help").Out);
}
