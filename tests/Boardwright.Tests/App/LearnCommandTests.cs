using System.Globalization;
using System.Text;
using Boardwright.Logs;
using Boardwright.Tests.Lessons;

namespace Boardwright.Tests.App;

public sealed class LearnCommandTests
{
    internal static string Table(RolledRide ride)
    {
        var log = ride.Ridden();
        var text = new StringBuilder("time_s,speed_mps,pack_current_A,phase_current_A\n");
        for (var i = 0; i < log.Count; i++)
            text.Append(CultureInfo.InvariantCulture, $"{log.Seconds[i]},{log.Si(Channel.Speed)[i]:0.000},{log.Si(Channel.PackCurrent)[i]:0.00},{log.Si(Channel.PhaseCurrent)[i]:0.0}\n");
        return text.ToString();
    }

    [Fact]
    public void A_ride_of_coast_downs_tells_rolling_and_drag_with_their_ranges()
    {
        using var folder = new Folder();
        var ride = new RolledRide { Pairs = 3, Seed = 8, Wind = 1 };
        var (code, text, error) = Ran.With("learn", folder.Write("ride.csv", Table(ride)), "--mass", "90 kg");

        Assert.Equal("", error);
        Assert.Equal(0, code);
        Assert.Contains("Rolling coefficient Crr: 0.01", text, StringComparison.Ordinal);
        Assert.Contains("Drag area CdA: 0.5", text, StringComparison.Ordinal);
        Assert.Contains("6 of 6 coast-downs", text, StringComparison.Ordinal);
        Assert.Contains("2 speed_mps: speed, m/s; the name and its unit.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_positions_the_directions_are_taken_in_turn_and_that_is_said()
    {
        using var folder = new Folder();
        var (code, text, _) = Ran.With("learn", folder.Write("ride.csv", Table(new RolledRide { Pairs = 1 })), "--mass", "90 kg", "--column", "pack_current_A=none");

        Assert.Contains("there and back in turn", text.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(0, code);
    }

    [Fact]
    public void Without_a_mass_it_is_asked_for()
    {
        using var folder = new Folder();
        var (code, text, _) = Ran.With("learn", folder.Write("ride.csv", Table(new RolledRide { Pairs = 1 })));

        Assert.Equal(1, code);
        Assert.Contains("--mass", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("time;pack_voltage_V\n0;1,234\n1;1,235\n", "may mean")]
    [InlineData("hello\n", "No row of names")]
    public void A_log_that_cannot_be_read_is_said_with_its_place(string content, string says)
    {
        using var folder = new Folder();
        var (code, _, error) = Ran.With("learn", folder.Write("ride.csv", content));

        Assert.Equal(2, code);
        Assert.Contains("ride.csv:", error, StringComparison.Ordinal);
        Assert.Contains(says, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--mass", "92")]
    [InlineData("--speed-scale", "7")]
    [InlineData("--column", "speed")]
    public void A_statement_that_cannot_be_read_is_refused(string option, string value) =>
        Assert.Equal(2, Ran.With("learn", "ride.csv", option, value).Code);

    internal static string Copied(Folder folder)
    {
        foreach (var file in Directory.EnumerateFiles(Repository.At("examples", "shelf")))
            folder.Write("shelf/" + Path.GetFileName(file), File.ReadAllText(file));
        return folder.Write("tern/tern.board.yaml", File.ReadAllText(Boards.PathOf("tern")).Replace("routes/", "../nowhere/", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_learnt_is_taken_into_the_board_as_measured_and_everything_else_stays()
    {
        using var folder = new Folder();
        var board = Copied(folder);
        var before = File.ReadAllText(board);
        var log = folder.Write("evening.csv", Table(new RolledRide { Pairs = 4, Seed = 8, Rolling = 0.024, Mass = 98, Rotating = 2 }));
        var (code, text, error) = Ran.With("learn", log, "--board", board, "--grade", "0 %", "--take", "rolling", "--take", "drag-area");

        Assert.Equal("", error);
        Assert.Equal(0, code);
        Assert.Contains("To be written:", text, StringComparison.Ordinal);
        var after = File.ReadAllText(board);
        Assert.Matches(@"wheels: \{ use: cobble-100, count: 4, rolling_resistance: \{ value: 0\.0\d+, give: [\d.]+ %, from: measured \} \}", after);
        Assert.Matches(@"drag_area: \{ value: 0\.\d+ m2, give: [\d.]+ %, from: measured \}", after);
        Assert.Equal(before.Split('\n').Length + 1, after.Split('\n').Length);
        Assert.Contains("# clothes, shoes, bag with a laptop", after, StringComparison.Ordinal);
        var (again, checkedText, _) = Ran.With("check", board);
        Assert.True(again is 0 or 1, checkedText);
    }

    [Fact]
    public void What_was_learnt_is_taken_into_the_shelf_for_every_board()
    {
        using var folder = new Folder();
        var board = Copied(folder);
        var before = File.ReadAllText(board);
        var log = folder.Write("evening.csv", Table(new RolledRide { Pairs = 4, Seed = 8, Rolling = 0.024, Mass = 98, Rotating = 2 }));
        var (code, text, error) = Ran.With("learn", log, "--board", board, "--take", "rolling", "--into", "shelf");

        Assert.Equal("", error);
        Assert.Equal(0, code);
        Assert.Equal(before, File.ReadAllText(board));
        Assert.Contains("for every board that uses cobble-100", text.ReplaceLineEndings(" ").Replace("     ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Matches(@"  rolling_resistance: \{ value: 0\.0\d+, give: [\d.]+ %, from: measured \}\n  durometer: 76A", File.ReadAllText(folder.At("shelf/wheels.yaml")));
    }

    [Fact]
    public void In_the_shop_a_revision_names_the_ride()
    {
        using var folder = new Folder();
        var board = Copied(folder);
        var shop = folder.At("shop.db");
        Assert.Equal(0, Ran.With("shop", "save", board, "--why", "first", "--shop", shop).Code);
        var log = folder.Write("evening.csv", Table(new RolledRide { Pairs = 4, Seed = 8, Rolling = 0.024, Mass = 98, Rotating = 2 }));
        var (code, text, error) = Ran.With("learn", log, "--kept", "tern", "--shop", shop, "--take", "rolling");

        Assert.Equal("", error);
        Assert.Equal(0, code);
        Assert.Contains("revision 2", text, StringComparison.Ordinal);
        Assert.Contains("wheels.rolling_resistance measured on evening.csv", Ran.With("shop", "log", "tern", "--shop", shop).Out, StringComparison.Ordinal);
        Assert.Contains("from: measured", Ran.With("shop", "show", "tern", "--shop", shop).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_learnt_is_not_taken_and_that_is_said()
    {
        using var folder = new Folder();
        var board = Copied(folder);
        var before = File.ReadAllText(board);
        var (code, _, error) = Ran.With("learn", folder.Write("ride.csv", Table(new RolledRide { Pairs = 1 })), "--board", board, "--take", "motor-heat");

        Assert.Equal(1, code);
        Assert.Contains("motor-heat was not learnt", error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(board));
        Assert.Equal(2, Ran.With("learn", "ride.csv", "--take", "rolling").Code);
    }
}
