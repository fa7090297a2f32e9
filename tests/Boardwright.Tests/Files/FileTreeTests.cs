using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;

namespace Boardwright.Tests.Files;

public sealed class FileTreeTests
{
    static readonly Dictionary<string, string> Kept = Directory.EnumerateFiles(
        Path.Combine(Repository.Root, "examples"), "*.yaml", SearchOption.AllDirectories)
        .ToDictionary(file => Path.GetRelativePath(Repository.Root, file), File.ReadAllText, StringComparer.Ordinal);

    [Theory]
    [InlineData("tern")]
    [InlineData("puffin")]
    public void A_board_whose_files_are_kept_elsewhere_is_the_board_on_the_disk(string name)
    {
        var kept = BoardFile.Read($"examples/{name}/{name}.board.yaml", FileTree.FromTexts(Kept));

        Assert.Empty(kept.Complaints);
        var figures = Examination.Examine(kept.Board!).Figures;
        Assert.Equal(Examination.Examine(Boards.Read(name)).Figures.Select(f => (f.Kind.Id, f.Value)),
            figures.Select(f => (f.Kind.Id, f.Value)));
    }

    [Fact]
    public void A_file_that_changes_is_read_again()
    {
        var files = FileTree.FromTexts(Kept).Remembering();
        var text = Kept["examples/tern/tern.board.yaml"];
        var first = BoardFile.ReadText(text, "examples/tern/tern.board.yaml", files);
        var second = BoardFile.ReadText(text.Replace("rider_mass: 80 kg", "rider_mass: 95 kg", StringComparison.Ordinal), "examples/tern/tern.board.yaml", files);

        Assert.Equal(80, first.Board!.Brief.RiderMass.Value.Kilograms);
        Assert.Equal(95, second.Board!.Brief.RiderMass.Value.Kilograms);
        Assert.Equal(first.Shelf.Parts.Select(p => p.Id), second.Shelf.Parts.Select(p => p.Id));
    }

    [Fact]
    public void A_shelf_that_is_not_kept_is_missed()
    {
        var loaded = BoardFile.ReadText(Kept["examples/tern/tern.board.yaml"], "tern/tern.board.yaml", FileTree.FromTexts(Kept));

        Assert.Contains("There is no folder", loaded.Complaints[0].Says, StringComparison.Ordinal);
    }
}
