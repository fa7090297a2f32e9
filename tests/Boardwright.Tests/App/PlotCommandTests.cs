namespace Boardwright.Tests.App;

public sealed class PlotCommandTests
{
    static readonly string Tern = Boards.PathOf("tern");

    [Fact]
    public void Every_picture_is_written_under_the_board_s_name()
    {
        using var folder = new Folder();
        var (code, text, error) = Ran.With("plot", Tern, "--out", folder.Path);

        Assert.Equal((0, ""), (code, error));
        Assert.Equal(
            ["tern.above.svg", "tern.behind.svg", "tern.box.svg", "tern.cell.svg", "tern.charge.svg", "tern.energy.svg", "tern.range.svg", "tern.side.svg", "tern.traction.svg"],
            Directory.EnumerateFiles(folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(9, text.Split('\n').Count(l => l.StartsWith("Wrote ", StringComparison.Ordinal)));
    }

    [Fact]
    public void One_picture_goes_to_the_file_that_is_named()
    {
        using var folder = new Folder();

        Assert.Equal(0, Ran.With("plot", Tern, "--picture", "traction", "--out", folder.At("deep/force.svg"), "--units", "imperial").Code);
        Assert.Contains("mph", File.ReadAllText(folder.At("deep/force.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void Several_pictures_do_not_go_to_one_file()
    {
        using var folder = new Folder();
        var (code, _, error) = Ran.With("plot", Tern, "--out", folder.At("all.svg"));

        Assert.Equal(2, code);
        Assert.Contains("--picture", error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(folder.Path));
    }

    [Fact]
    public void What_a_picture_waits_for_is_said()
    {
        using var folder = new Folder();
        var board = folder.Write("heron.board.yaml", "boardwright: 1\nname: Heron\n");
        var (code, _, error) = Ran.With("plot", board, "--picture", "range", "--out", folder.At("pictures"));

        Assert.Equal(1, code);
        Assert.StartsWith("range was not written: it waits for ", error, StringComparison.Ordinal);
        Assert.Contains("brief.cruise_speed", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_that_is_not_there_is_refused_with_those_there_are()
    {
        var (code, _, error) = Ran.With("plot", Tern, "--picture", "portrait");

        Assert.Equal(2, code);
        Assert.Contains("traction", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_cannot_be_read_gives_no_picture()
    {
        using var folder = new Folder();
        var board = folder.Write("heron.board.yaml", "boardwright: 1\nname: Heron\nbrief:\n  rider_mass: 80\n");

        Assert.Equal(2, Ran.With("plot", board, "--out", folder.At("pictures")).Code);
        Assert.False(Directory.Exists(folder.At("pictures")));
    }
}
