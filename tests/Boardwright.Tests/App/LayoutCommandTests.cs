using System.Text.Json;

namespace Boardwright.Tests.App;

public sealed class LayoutCommandTests
{
    static readonly string Tern = Boards.PathOf("tern");

    [Fact]
    public void The_table_of_Terns_places_looks_as_approved()
    {
        var (code, text, error) = Ran.With("layout", Tern);

        Assert.Equal((0, ""), (code, error));
        Approved.Matches("App/tern.layout.txt", text);
    }

    [Fact]
    public void The_places_are_a_document_on_demand()
    {
        var (code, text, _) = Ran.With("layout", Tern, "--json");

        Assert.Equal(0, code);
        using var document = JsonDocument.Parse(text);
        Assert.Equal(9, document.RootElement.GetProperty("things").GetArrayLength());
        Assert.Equal("rear", document.RootElement.GetProperty("things").EnumerateArray().Single(t => t.GetProperty("name").GetString() == "gland 1")
            .GetProperty("wall").GetString());
    }

    [Fact]
    public void The_places_are_written_into_the_file_once_with_its_comments_kept()
    {
        using var folder = new Folder();
        var shelf = Repository.At("examples", "shelf").Replace('\\', '/');
        var before = File.ReadAllText(Tern).Replace("shelf: [../shelf/]", $"shelf: [{shelf}]", StringComparison.Ordinal);
        var file = folder.Write("tern.board.yaml", before);

        Assert.Equal(0, Ran.With("layout", file, "--write", "--svg", folder.At("box.svg")).Code);
        var after = File.ReadAllText(file);
        Assert.StartsWith(before.TrimEnd(), after, StringComparison.Ordinal);
        Assert.Contains("\nlayout:\n  pack: { x: ", after, StringComparison.Ordinal);
        Assert.True(File.Exists(folder.At("box.svg")));

        var (code, text, _) = Ran.With("layout", file, "--write");
        Assert.Equal(0, code);
        Assert.DoesNotContain("proposed", text, StringComparison.Ordinal);
        Assert.Equal(after, File.ReadAllText(file));
    }
}
