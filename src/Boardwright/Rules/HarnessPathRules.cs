using Boardwright.Analyses;
using Boardwright.Findings;
using Boardwright.Wiring;

namespace Boardwright.Rules;

/// <summary>What the lengths of the harness must satisfy in the box as it is laid out.</summary>
static class HarnessPathRules
{
    /// <summary>Wires reach.</summary>
    public static Rule<BoardAnalysis> WiresReach { get; } = new(
        "wire.length", "wiring", "Every run that the file names is as long as its way in the box and a loop to pull its plug.",
        "The way from lead to lead along the board and across it, in the layout that the file states, and 40 mm to 100 mm of loop. Judged only where the file has a layout.",
        Sources.Geometry,
        (e, _) => e.Board.Layout.Count == 0 ? null
        : e.Harness.Runs.Where(r => r is { Stated: not null, Along: not null, Key.Length: > 0 }).GroupBy(r => r.Key, StringComparer.Ordinal)
        .Select(runs =>
        {
            var run = runs.MaxBy(r => r.Needed!.Value.Si)!;
            var (stated, needed, where) = (run.Stated!.Value, run.Needed!.Value, run.Key + ".length");
            var (value, limit) = (Amount.Create(stated, "mm"), Amount.Create(needed, "mm"));
            var enough = FormattableString.Invariant($"{Math.Ceiling(needed.Metres * 100 - 1e-9) / 100:0.00} m");
            return stated < run.Along!.Value
                ? WiresReach!.Found(Level.Stop, $"{run.Mark}, {run.Name}, is {stated:0 mm} long; its way is {run.Along.Value:0 mm}: it does not reach.", $"Take {needed:0 mm}, or move the two nearer to each other.", value, limit, where, new Change(where, enough))
                : stated < needed
                    ? WiresReach!.Found(Level.Fix, $"{run.Mark}, {run.Name}, is {stated:0 mm} long; its way is {run.Along.Value:0 mm}, which leaves {stated - run.Along.Value:0 mm} of loop instead of {run.Loop:0 mm}.", $"Take {needed:0 mm}.", value, limit, where, new Change(where, enough))
                    : WiresReach!.Found(Level.Fine, $"{run.Mark}, {run.Name}, is {stated:0 mm} long; its way with loop is {needed:0 mm}.", value: value, limit: limit, where: where);
        }));

    /// <summary>Every rule about the lengths of wires.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } = [WiresReach];
}
