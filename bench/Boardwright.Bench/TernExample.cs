using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Bench;

/// <summary>The board that is measured: the example Tern.</summary>
static class TernExample
{
    /// <summary>Path of its file, found upwards from the program.</summary>
    public static string Path
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "Boardwright.slnx")))
                folder = folder.Parent;
            return System.IO.Path.Combine(folder?.FullName ?? ".", "examples", "tern", "tern.board.yaml");
        }
    }

    /// <summary>The board as its file says.</summary>
    public static Board Read() => BoardFile.Read(Path).Board ?? throw new InvalidOperationException($"{Path} does not read.");

    /// <summary>The board with cells that have a second, slower branch, so that a ride moves every state there is.</summary>
    public static Board WithTwoBranches()
    {
        var board = Read();
        var cell = board.Parts.Cell;
        return board with
        {
            Parts = board.Parts with
            {
                Cell = cell with
                {
                    Polarisation = cell.Polarisation with
                    {
                        R2 = new Known<ResistanceTable>(new ResistanceTable(Resistance.FromOhms(0.006))),
                        Tau2 = new Known<Duration>(Duration.FromSeconds(400)),
                    },
                },
            },
        };
    }
}
