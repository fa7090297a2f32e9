using Boardwright.Files.Boards;
using Boardwright.Findings;
using Boardwright.Packs;
using Boardwright.Parts;

namespace Boardwright.Files.Cells;

/// <summary>What came of a piece of work on a cell.</summary>
/// <param name="Report">What to show; empty when there are complaints.</param>
/// <param name="Shelf">A shelf file with the fitted cell, where one was made.</param>
/// <param name="Fit">The fit, where one was made.</param>
/// <param name="Replays">The replays, where some were made.</param>
/// <param name="Complaints">Everything that is wrong in the files.</param>
public sealed record CellOutcome(
    string Report, string? Shelf, CellFit? Fit, IReadOnlyList<CellReplay> Replays, IReadOnlyList<Complaint> Complaints);

/// <summary>Fits cells to measured files, and tries them on others.</summary>
public static class CellBench
{
    /// <summary>Fits a cell to files of pulses and constant current; files of charges among them give the tail of a charge.</summary>
    /// <param name="paths">The files.</param>
    /// <param name="id">Id of the shelf part.</param>
    /// <param name="temperature">Temperature of the cell for files that have none.</param>
    public static CellOutcome Fit(IReadOnlyList<string> paths, string id, Temperature? temperature = null)
    {
        var (measurements, complaints) = CellMeasurements.Read(paths, temperature);
        if (complaints.Count > 0) return Refused(complaints);
        var wrong = new Complaints();
        foreach (var (path, measurement) in paths.Zip(measurements))
        {
            if (measurement.Kind == CellRecordKind.Means)
                wrong.Add(Start(path), "", "The file has no counter_Ah or discharged_Ah, so its rows are taken as means over time, and a resistance cannot be told from them.", "Fit to pulses and discharges at constant current, and keep this file for boardwright cell replay.");
        }

        if (wrong.Count == 0 && !measurements.Any(m => m.CanTeach))
            wrong.Add(Start(paths.Count > 0 ? paths[0] : ""), "", "There are no pulses and no discharge at constant current.", "Add a file with counter_Ah or discharged_Ah.");
        if (wrong.Count == 0 && measurements.Where(m => m.CanTeach).Max(m => m.Stretches.Max(s => s.CoulombsAfter))
            < CellFit.LeastCapacity.Coulombs)
            wrong.Add(Start(paths[0]), "", "Hardly any charge is taken out of the cell.", "Check the sign of the current and of the count: both are positive in a discharge.");
        if (wrong.Count > 0) return Refused(wrong.Sorted(""));
        var fit = CellFit.Fit(id, measurements);
        return new CellOutcome(CellText.Report(fit), CellText.Shelf(fit), fit, fit.Replays, []);
    }

    /// <summary>Sends the measured currents of files through a cell of a shelf file.</summary>
    /// <param name="shelfFile">The shelf file.</param>
    /// <param name="id">Id of the cell; may be left out where the file has one cell only.</param>
    /// <param name="paths">The files.</param>
    /// <param name="temperature">Temperature of the cell for files that have none.</param>
    public static CellOutcome Replay(string shelfFile, string? id, IReadOnlyList<string> paths, Temperature? temperature = null)
    {
        var wrong = new Complaints();
        var (measurements, complaints) = CellMeasurements.Read(paths, temperature);
        var shown = shelfFile.Replace('\\', '/');
        var reader = new ShelfReader(FileTree.OnDisk, wrong);
        reader.AddFile(shelfFile, shown);
        var cells = reader.ReadAll().Where(p => p.Kind == PartKinds.WordOf(typeof(Cell))).ToArray();
        if (wrong.Count > 0 || complaints.Count > 0) return Refused([.. wrong.Sorted(shown), .. complaints]);
        var chosen = cells.Where(c => id is null || string.Equals(c.Id, id, StringComparison.Ordinal)).ToArray();
        if (chosen.Length != 1)
        {
            var ids = string.Join(", ", cells.Select(c => c.Id));
            wrong.Add(Start(shelfFile), "", cells.Length == 0 ? "There is no cell in this file." : id is null ? $"There are several cells in this file: {ids}." : $"There is no cell {QuantityText.Quote(id)} in this file, but {ids}.", cells.Length == 0 ? "Name a shelf file with a part of kind: cell." : "Say which with --id.");
            return Refused(wrong.Sorted(shown));
        }

        var cell = (Cell)chosen[0].Draft.Build();
        var answer = CellModel.Compute(cell);
        if (!answer.IsKnown)
            wrong.Add(chosen[0].Draft.At, cell.Id, "The cell cannot be modelled.", "It needs capacity, rest_voltage and resistance; and with polarisation, R1 and tau1 both, and R2 and tau2 both or neither.");
        foreach (var (path, measurement) in paths.Zip(measurements))
        {
            if (measurement.Kind == CellRecordKind.Charge)
                wrong.Add(Start(path), "", "The file is of a charge, which begins at an unknown state of charge.", "Replay discharges, pulses and drives from the full cell.");
        }

        if (wrong.Count > 0) return Refused(wrong.Sorted(shown));
        var replays = measurements.Select(m => CellReplay.Replay(answer.Value, m)).ToArray();
        return new CellOutcome(replays.Length > 0 ? CellText.Report(cell.Id, replays) : "", null, null, replays, []);
    }

    static SourceLocation Start(string path) => new(path.Replace('\\', '/'), 1, 1);

    static CellOutcome Refused(IReadOnlyList<Complaint> complaints) => new("", null, null, [], complaints);
}
