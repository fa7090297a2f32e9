using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Tests.Files;

public sealed class StarterTests
{
    [Theory]
    [InlineData("Tern")]
    [InlineData("Tern: the \"second\" # one")]
    [InlineData("yes")]
    [InlineData("海鸥 😀")]
    [InlineData("- a")]
    public void A_starter_board_reads_without_complaint(string name)
    {
        var loaded = BoardFile.ReadText(Starter.Text(name), "new.board.yaml");

        Assert.Empty(loaded.Complaints);
        Assert.Equal(name, loaded.Board!.Name.Value);
    }

    [Fact]
    public void A_starter_board_has_every_section_and_every_part_of_a_belt_drive()
    {
        var board = BoardFile.ReadText(Starter.Text("Tern"), "new.board.yaml").Board!;

        // What rides say of the model is written by the program, once there are rides.
        foreach (var entry in Entry.ListEntries(typeof(Board)).Where(e => e.Key != "model"))
            Assert.Contains($"\n{entry.Key}:", Starter.Text("Tern"), StringComparison.Ordinal);
        foreach (var entry in Entry.ListEntries(typeof(Fitted)))
        {
            if (entry.Read(board.Parts) is Part part and not Gearbox)
                Assert.True(part.IsChosen, entry.Key);
        }

        Assert.Equal("wheels.diameter", board.Parts.Wheels.Diameter.Key);
    }
}
