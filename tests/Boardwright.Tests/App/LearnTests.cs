using System.Globalization;
using System.Text;
using Boardwright.Rides;
using Boardwright.Tests.Rides;

namespace Boardwright.Tests.App;

public sealed class LearnTests
{
    static string Table(RolledRide ride)
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
}
