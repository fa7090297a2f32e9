using Boardwright.Builds;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Shops;
using Boardwright.Shops.Sqlite;
using Boardwright.Tests.Lessons;

namespace Boardwright.Tests.App;

public sealed class CredibilityCommandTests
{
    static string Ride(string rolling) => ReplayTests.Table(ReplayTests.Evening(Boards.Tern.With(("wheels.rolling_resistance", rolling))));

    [Fact]
    public void Rides_are_weighed_drawn_and_taken_over_as_the_models_own_spread()
    {
        using var folder = new Folder();
        var board = LearnCommandTests.Copied(folder);
        var (code, text, error) = Ran.With(
            "credibility", board, folder.Write("monday.csv", Ride("0.014")), folder.Write("friday.csv", Ride("0.016")), "--out", folder.At("pictures"), "--into", board);

        Assert.Equal("", error);
        Assert.Equal(0, code);
        Assert.Contains("Energy: 1.0", text, StringComparison.Ordinal);
        Assert.Contains("All rides are of one board", text, StringComparison.Ordinal);
        Assert.Contains("Tern, friday: It used ", text.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.True(File.Exists(folder.At("pictures/credibility-energy.svg")));
        Assert.Matches(@"model:\n  energy: \{ value: 1\.\d+, give: [\d.]+ %, from: measured \}", File.ReadAllText(board));
        Assert.Empty(BoardFile.Read(board).Complaints);
    }

    [Fact]
    public async Task Without_files_the_rides_of_all_built_boards_of_the_shop_count()
    {
        using var folder = new Folder();
        var place = folder.At("shop.db");
        Assert.Equal(0, Ran.With("shop", "save", LearnCommandTests.Copied(folder), "--why", "first", "--shop", place).Code);
        await using (var shop = await Shop.OpenAsync(new SqliteLocation(place), TimeProvider.System, TestContext.Current.CancellationToken))
        {
            var day = Moment.Read("2026-05-01")!.Value;
            foreach (var (serial, rolling) in new[] { ("TERN-0001", "0.014"), ("TERN-0002", "0.015") })
            {
                var built = await BuiltInShop.BeginAsync(shop, serial, "tern", null, day, new("Ada", "begun"), TestContext.Current.CancellationToken);
                await built.ChangeAsync(
                    new AttachedFile("rides/evening.csv", System.Text.Encoding.UTF8.GetBytes(Ride(rolling))),
                    (text, path) => BuiltText.Add(text, "rides", new LoggedRide { File = path, When = day, Who = "Ada" }), new("Ada", "a ride"),
                    TestContext.Current.CancellationToken);
            }
        }

        var (code, text, error) = Ran.With("credibility", "--shop", place);

        Assert.Equal("", error);
        Assert.Equal(0, code);
        Assert.Contains("on 2 rides of 2 boards", text.ReplaceLineEndings(" ").Replace("    ", " ", StringComparison.Ordinal).Replace("  ", " ", StringComparison.Ordinal),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Without_any_ride_the_command_says_what_to_keep()
    {
        using var folder = new Folder();
        var (code, text, _) = Ran.With("credibility", "--shop", folder.At("shop.db"));

        Assert.Equal(1, code);
        Assert.Contains("No ride says anything", text, StringComparison.Ordinal);
        Assert.Equal(2, Ran.With("credibility", "ride.csv").Code);
    }
}
