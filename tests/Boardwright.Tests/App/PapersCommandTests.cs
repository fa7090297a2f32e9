using Boardwright.Documents.Papers;

namespace Boardwright.Tests.App;

public sealed class PapersCommandTests
{
    [Fact]
    public void Papers_writes_the_one_that_was_asked_for_and_lists_its_files()
    {
        using var folder = new Folder();
        var (code, output, error) = Ran.With("papers", Boards.PathOf("tern"), "--only", "drill-template", "--out", folder.At("papers"));

        Assert.Equal(0, code);
        Assert.Empty(error);
        var files = Directory.GetFiles(folder.At("papers")).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(8, files.Count);
        Assert.All(files, f => Assert.Contains(f!, output, StringComparison.Ordinal));
        Assert.Contains("tern.drill-template.outside.a4.pdf", files);
        Assert.Empty(Directory.GetDirectories(folder.At("papers")));
    }

    [Fact]
    public void Papers_takes_Letter_too_and_prints_the_revision_that_was_given()
    {
        using var folder = new Folder();
        Assert.Equal(0, Ran.With("papers", Boards.PathOf("tern"), "--only", "drill-template", "--only", "label", "--paper", "Letter", "--revision", "B7", "--out", folder.Path).Code);

        Assert.True(File.Exists(folder.At("tern.drill-template.inside.letter.pdf")));
        Assert.Contains("revision B7", Documents.Templates.PdfReading.Text(File.ReadAllBytes(folder.At("tern.label.pdf"))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_paper_with_blanks_says_for_what_and_ends_with_1()
    {
        using var folder = new Folder();
        var board = folder.Write("bare.board.yaml", "boardwright: 1\nname: Bare\n");
        var (code, output, _) = Ran.With("papers", board, "--out", folder.Path);

        Assert.Equal(1, code);
        Assert.Contains("with blanks to fill in for", output, StringComparison.Ordinal);
        Assert.Contains("Drill template was not written: this board has no box.", output, StringComparison.Ordinal);
        Assert.True(File.Exists(folder.At("bare.build-sheet.pdf")));
    }

    [Fact]
    public void A_file_that_cannot_be_read_leaves_nothing_behind()
    {
        using var folder = new Folder();
        var board = folder.Write("bad.board.yaml", "boardwright: 1\nnonsense: 3\n");
        var (code, output, error) = Ran.With("papers", board, "--out", folder.At("papers"));

        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Contains("nonsense", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.At("papers")));
    }

    [Fact]
    public void A_folder_that_is_a_file_is_refused_in_one_line()
    {
        using var folder = new Folder();
        var place = folder.Write("taken", "");
        var (code, _, error) = Ran.With("papers", Boards.PathOf("tern"), "--only", "label", "--out", place);

        Assert.Equal(2, code);
        Assert.Single(error.TrimEnd('\n').Split('\n'));
    }

    [Theory]
    [InlineData("--shop-address", "shop")]
    [InlineData("--only", "poem")]
    [InlineData("--paper", "A5")]
    public void A_wrong_option_is_refused(string option, string value)
    {
        var (code, _, error) = Ran.With("papers", Boards.PathOf("tern"), option, value);

        Assert.Equal(2, code);
        Assert.Contains(value, error, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_paper_has_a_name_of_its_own() =>
        Assert.Equal(PaperSet.All.Count, PaperSet.All.Select(p => p.Id).Distinct(StringComparer.Ordinal).Count());
}
