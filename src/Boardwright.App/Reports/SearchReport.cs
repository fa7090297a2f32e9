using System.Globalization;
using System.Numerics;
using Boardwright.Findings;
using Boardwright.Searches;

namespace Boardwright.App.Reports;

/// <summary>The report on a search that a person reads.</summary>
static class SearchReport
{
    static readonly int[] Columns = [4, 15, 11, 9, 12, 11, 8];
    internal static readonly string[] Headings = ["no", "price", "range", "climb", "top speed", "mass", "spare"];

    /// <summary>Writes a report.</summary>
    /// <param name="paper">Where to.</param>
    /// <param name="result">What was found.</param>
    /// <param name="chosen">The boards to show.</param>
    /// <param name="misses">Where there is none, the boards that come nearest.</param>
    /// <param name="units">The reader's units.</param>
    public static void Write(
        TerminalText paper, SearchResult result, IReadOnlyList<FoundBoard> chosen, IReadOnlyList<NearMiss> misses, UnitSystem units)
    {
        paper.Write(0, result.Request.Board.Name.Or("A brief without a name"), TerminalStyle.Heading);
        if (!result.IsComplete)
            paper.Write(0, "The search was stopped: there may be more boards, and better ones.", TerminalStyle.Fix);
        foreach (var assumption in result.Assumptions)
            paper.Write(2, $"{assumption.Key} is not in the brief; {assumption.Text} was taken.", TerminalStyle.Quiet);
        if (result.Missing.Count > 0)
        {
            paper.Write(0, "Nothing can be looked for without:");
            foreach (var key in result.Missing)
                paper.Write(2, $"{key}: {MeasureAdvice.For(key)}");
            return;
        }

        foreach (var slot in result.Empty)
            paper.Write(0, $"The shelf has nothing for {SlotKeys.KeyOf(slot)}.", TerminalStyle.Stop);
        Counts(paper, result);
        if (result.Boards.Count == 0)
        {
            paper.Gap();
            paper.Write(0, result.IsComplete ? "No board of this shelf meets the brief." : "No board that meets the brief was found yet.", TerminalStyle.Heading);
            foreach (var miss in misses)
                Missed(paper, miss, units);
            return;
        }

        paper.Gap();
        paper.Write(0, result.Boards.Count == chosen.Count
            ? "No other board beats these in everything"
            : $"{Count(result.Boards.Count)} boards are beaten by no other in everything; these {chosen.Count} differ most (--json and --csv give all)", TerminalStyle.Heading);
        Row(paper, Headings, TerminalStyle.Quiet);
        foreach (var board in chosen)
            Row(paper, Cells(Number(result, board), board, units), TerminalStyle.Plain);
        foreach (var board in chosen)
        {
            paper.Gap();
            paper.Write(0, $"{Number(result, board)}  {string.Join(", ", board.Parts.Where(p => p.Slot != Slot.Gearbox || p.Name.Length > 0).Select(p => p.Name))}");
            foreach (var criterion in new[] { Criterion.Range, Criterion.Climb, Criterion.Speed, Criterion.Price, Criterion.Spare })
            {
                if (board.HeldBackBy(criterion) is { Length: > 0 } why)
                    paper.Write(5, $"{Name(criterion)} is held by {why}", TerminalStyle.Quiet);
            }

            if (board.Fixes.Count > 0)
                paper.Write(5, $"to be mended or set, as check says: {string.Join(", ", board.Fixes.Distinct(StringComparer.Ordinal))}", TerminalStyle.Fix);
        }

        paper.Gap();
        foreach (var caution in Cautions.All)
            paper.Write(0, caution, TerminalStyle.Quiet);
    }

    static void Missed(TerminalText paper, NearMiss miss, UnitSystem units)
    {
        paper.Gap();
        paper.Write(0, $"Near to it: {string.Join(", ", miss.Board.Parts.Select(p => p.Name))}");
        foreach (var finding in miss.Against)
            paper.Write(5, $"{finding.Says.In(units)} {finding.Remedy.In(units)}", TerminalStyle.Plain, finding.Level == Findings.Level.Stop ? "stop" : "fix",
                finding.Level == Findings.Level.Stop ? TerminalStyle.Stop : TerminalStyle.Fix);
        foreach (var purchase in miss.Purchases)
            paper.Write(5, $"This would meet the brief with {purchase.Says}.", TerminalStyle.Fine);
        if (miss.Purchases.Count == 0)
            paper.Write(5, "No single part that was tried would make it meet the brief.", TerminalStyle.Quiet);
    }

    /// <summary>One line on a search that is under way.</summary>
    public static string Line(SearchProgress progress, IReadOnlyList<FoundBoard> best, UnitSystem units)
    {
        var cheapest = best.MaxBy(b => b.Merit(Criterion.Price));
        var furthest = best.MaxBy(b => b.Merit(Criterion.Range));
        var so = cheapest is null ? "nothing found yet" : $"{Count(progress.Kept)} boards so far, from {cheapest.Price}, up to {Length.FromMetres(furthest!.Range ?? 0).ToString("0.0 km", units)}";
        return string.Create(CultureInfo.InvariantCulture, $"{100 * progress.Share:0} % screened: {so}");
    }

    static void Counts(TerminalText paper, SearchResult result)
    {
        var counts = result.Counts;
        paper.Write(0, $"{Count(counts.Raw)} combinations of parts; {Count(counts.Screened)} go together; {Count(counts.Met)} of those meet the brief.");
        foreach (var left in counts.LeftOut.Take(6))
            paper.Write(4, $"{Count(left.Boards)} left out by {left.Reason}: not so that {char.ToLowerInvariant(left.Says[0])}{left.Says[1..]}", TerminalStyle.Quiet);
        if (counts.LeftOut.Count > 6)
            paper.Write(4, $"and {counts.LeftOut.Count - 6} reasons more; --json gives all.", TerminalStyle.Quiet);
        foreach (var missed in counts.Missed)
            paper.Write(4, $"{Count(missed.Boards)} miss {missed.Rule}", TerminalStyle.Quiet);
    }

    internal static string[] Cells(string number, FoundBoard b, UnitSystem units) =>
    [
        number,
        $"{b.Price}{(b.IsPriced ? "" : "+")}",
        Length.FromMetres(b.Range ?? 0).ToString("0.0 km", units),
        Fraction.FromValue(b.Climb ?? 0).ToString("0.0 %", units),
        Speed.FromMetresPerSecond(b.TopSpeed ?? 0).ToString("0.0 km/h", units),
        Mass.FromKilograms(b.Mass ?? 0).ToString("0.00 kg", units),
        Fraction.FromValue(b.Spare ?? 0).ToString("0 %", units),
    ];

    /// <summary>A line of the table; the last cell is text, those before it stand as its lead, whose blanks are kept.</summary>
    static void Row(TerminalText paper, string[] cells, TerminalStyle ink)
    {
        var lead = string.Concat(cells.Take(cells.Length - 1).Select((c, i) => i == 0 ? c.PadRight(Columns[0]) : c.PadLeft(Columns[i])));
        paper.Write(Columns.Sum() - cells[^1].Length, cells[^1], ink, lead, ink);
    }

    static string Number(SearchResult result, FoundBoard board) =>
        (result.Boards.Index().First(b => ReferenceEquals(b.Item, board)).Index + 1).ToString(CultureInfo.InvariantCulture);

    internal static string Name(Criterion criterion) => criterion == Criterion.Speed ? "top speed" : Parts.Entry.Word(criterion);

    // Thin spaces between thousands would not survive every terminal.
    internal static string Count(BigInteger number) => number.ToString("#,0", CultureInfo.InvariantCulture);
}
