using Boardwright.Tests.Searches;

namespace Boardwright.Tests.App;

public sealed class SearchCommandTests : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("boardwright-search-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    string Brief(string text, int seed = 3) => MadeUpShelf.Write(folder, seed, new Stocked(), text);

    [Fact]
    public void The_report_on_a_search_is_as_approved()
    {
        var ran = Ran.With("search", Brief(MadeUpShelf.Brief()), "--show", "3");

        Assert.Equal(0, ran.Code);
        Approved.Matches("App/search.txt", ran.Out);
    }

    [Fact]
    public void The_report_on_a_brief_that_nothing_meets_is_as_approved()
    {
        var ran = Ran.With("search", Brief(MadeUpShelf.Brief(75)));

        Assert.Equal(1, ran.Code);
        Approved.Matches("App/search-misses.txt", ran.Out);
    }

    [Fact]
    public void A_board_a_picture_and_a_table_are_written()
    {
        var (board, picture) = (Path.Combine(folder, "boards", "one.board.yaml"), Path.Combine(folder, "trade.svg"));

        var ran = Ran.With("search", Brief(MadeUpShelf.Brief()), "--csv", "--plot", picture, "--trade", "mass,climb", "--write", "1", board);

        Assert.Equal(0, ran.Code);
        Assert.StartsWith("number,price,range_km,", ran.Out, StringComparison.Ordinal);
        Assert.Contains("<svg", File.ReadAllText(picture), StringComparison.Ordinal);
        var check = Ran.With("check", board, "--no-spread");
        Assert.NotEqual(2, check.Code);
        Assert.Contains("Made up 1", check.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--fix", "wings=wheel-0", "is no place for a part")]
    [InlineData("--fix", "wheels=wheel-9", "the shelf has no 'wheel-9'")]
    [InlineData("--fix", "wheels=deck-0", "does not go there")]
    [InlineData("--trade", "price,price", "--trade is two of")]
    public void What_cannot_be_asked_is_refused(string option, string value, string says)
    {
        var ran = Ran.With("search", Brief(MadeUpShelf.Brief()), option, value);

        Assert.Equal(2, ran.Code);
        Assert.Contains(says, ran.Error.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }
}
