using System.Globalization;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;
using static System.FormattableString;

namespace Boardwright.App.Reports;

/// <summary>The report on a board that a person reads: what was asked and what the board does, what it weighs and costs, what was
/// found.</summary>
sealed class Report
{
    const int MostExplained = 10;
    const int MostMeasurementsShown = 5;
    readonly CheckOutcome outcome;
    readonly TerminalText paper;
    readonly UnitSystem units;
    readonly bool showsAll;

    Report(TerminalText paper, CheckOutcome outcome, UnitSystem units, bool showsAll) =>
        (this.paper, this.outcome, this.units, this.showsAll) = (paper, outcome, units, showsAll);

    /// <summary>Writes a report.</summary>
    /// <param name="paper">Where to.</param>
    /// <param name="outcome">What was computed and found.</param>
    /// <param name="units">The reader's units.</param>
    /// <param name="showsAll">Whether every figure is listed, and what is fine too.</param>
    public static void Write(TerminalText paper, CheckOutcome outcome, UnitSystem units, bool showsAll) =>
        new Report(paper, outcome, units, showsAll).Write();

    void Write()
    {
        paper.Write(0, outcome.Name.Length > 0 ? outcome.Name : "A board without a name", TerminalStyle.Heading);
        paper.Write(0, BoardSummary.Describe(outcome.Board));
        if (outcome.IsTooLittleKnown && !showsAll)
        {
            WriteLeast();
            WriteOpen(f => f.Level is Level.Stop or Level.Fix);
        }
        else
        {
            WriteFigures();
            WriteFindings();
            WriteMeasurements(paper, outcome.MeasureNext, Catalogue.All);
        }

        paper.Gap();
        WriteCounts();
        paper.Gap();
        foreach (var caution in Cautions.All)
            paper.Write(0, caution, TerminalStyle.Quiet);
    }

    void WriteFigures()
    {
        var left = outcome.Figures.ToList();
        foreach (var (heading, ids) in FigureText.Chapters)
        {
            var chosen = ids.Select(id => left.Find(f => f.Kind.Id == id)).OfType<Figure>().ToList();
            left.RemoveAll(chosen.Contains);
            WriteChapter(heading, chosen);
        }

        if (showsAll)
            WriteChapter("Everything else that was computed", left);
        if (outcome.Spread.Count > 0 && outcome.Figures.Count > 0)
        {
            paper.Gap();
            paper.Write(0, "A range in brackets holds nine times out of ten when the values of the file are as uncertain as they are said to be.", TerminalStyle.Quiet);
        }

        WriteUsual();
    }

    void WriteUsual()
    {
        if (outcome.Usual.Count == 0)
            return;
        paper.Gap();
        if (!showsAll)
        {
            paper.Write(0, $"{Count(outcome.Usual.Count, "usual value stands for an entry", "usual values stand for entries")} that the file does not state and {(outcome.Usual.Count == 1 ? "widens" : "widen")} the ranges; --all lists {(outcome.Usual.Count == 1 ? "it" : "them")}.",
                TerminalStyle.Quiet);
            return;
        }

        paper.Write(0, "Usual values, taken for what the file does not state", TerminalStyle.Heading);
        foreach (var usual in outcome.Usual)
            paper.Write(4, Invariant($"{usual.Key}: {usual.Value}{(usual.Factor > 1.0005 ? Invariant($", ×/÷ {usual.Factor:0.0#}") : "")}. {usual.Row.Equation}. Source: {usual.Row.Source.Text}."), TerminalStyle.Plain, "", TerminalStyle.Plain, 2);
    }

    void WriteChapter(string heading, List<Figure> figures)
    {
        if (figures.Count == 0)
            return;
        var rows = figures.Select(RowOf).ToList();
        var label = 2 + rows.Max(r => TerminalText.Cells(r.Label)) + 2;
        var hasAsked = rows.Any(r => r.Asked.Length > 0);
        var asked = hasAsked ? Math.Max("asked".Length, rows.Max(r => TerminalText.Cells(r.Asked))) + 2 : 0;
        var isWide = rows.TrueForAll(r => r.IsMissing || label + asked + TerminalText.Cells(r.Does) <= paper.Width) && paper.Width >= 60;
        paper.Gap();
        if (isWide && hasAsked)
            paper.Write(label + asked, "the board", TerminalStyle.Heading, TerminalText.Padded(heading, label) + "asked", TerminalStyle.Heading);
        else
            paper.Write(0, heading, TerminalStyle.Heading);
        foreach (var row in rows)
        {
            if (isWide)
                paper.Write(label + asked, row.Does, TerminalStyle.Plain, TerminalText.Padded(row.Label, label - 2) + row.Asked,
                    TerminalStyle.Plain, 2);
            else
            {
                paper.Write(2, row.Label);
                paper.Write(4, row.Asked.Length > 0 ? $"asked {row.Asked}; the board {row.Does}" : row.Does);
            }

            foreach (var note in row.Notes)
                paper.Write(4, note, TerminalStyle.Quiet);
        }
    }

    ReportRow RowOf(Figure figure)
    {
        // A figure that has no value although nothing is missing says why in its place.
        if (figure.Value is null && figure.Missing.Count == 0)
            return new(FigureText.Label(outcome.Board, figure, units), FigureText.DescribeTarget(outcome.Board, figure.Kind.Id, units),
                figure.Caution ?? figure.Text ?? "has no answer", true, []);
        List<string> notes = figure.Caution is { } caution ? [caution] : [];
        var interval = outcome.Spread.GetValueOrDefault(figure.Kind.Id);
        var asked = FigureText.DescribeTarget(outcome.Board, figure.Kind.Id, units);
        if (figure.Value is not { } value)
            return new(FigureText.Label(outcome.Board, figure, units), asked, "needs " + JoinKeys([.. Wanted(figure.Missing)], 2), true, notes);
        if (interval is { MattersMost.Count: > 0 } && (showsAll || asked.Length > 0))
            notes.Add($"Turns most on {JoinKeys([.. interval.MattersMost.Select(k => outcome.IsUsual(k) ? k + " (a usual value)" : k)], 2)}.");
        return new(FigureText.Label(outcome.Board, figure, units), asked, FigureText.Format(units, value, figure.Unit, interval), false,
            notes);
    }

    // A list of all that waits would hide the few entries from which everything else follows.
    void WriteLeast()
    {
        paper.Gap();
        paper.Write(0, "Too little is known to say how fast, how steep or how far this board goes.", TerminalStyle.Heading);
        paper.Write(0, "The least to fill in:");
        var sections = outcome.LeastToFillIn.GroupBy(SectionOf, StringComparer.Ordinal).ToList();
        var indent = 2 + sections.Max(section => section.Key.Length) + 2;
        foreach (var section in sections)
        {
            var own = section.Key + ".";
            var keys = section.Select(key => key.StartsWith(own, StringComparison.Ordinal) ? key[own.Length..] : key);
            paper.Write(indent, string.Join(", ", keys), TerminalStyle.Plain, section.Key, TerminalStyle.Measure, 2);
        }

        var begin = outcome.LeastToFillIn.Any(IsPlace) ? "boardwright new NAME writes a board that has all of it, guessed from a few answers; " : "";
        paper.Write(0, begin + "--all lists everything that waits.", TerminalStyle.Quiet);
    }

    static string SectionOf(string key)
    {
        var first = key.Split('.', '[')[0];
        return Entry.ListEntries(typeof(Fitted)).Any(entry => entry.Key == first) ? "parts" : first;
    }

    void WriteFindings()
    {
        WriteOpen(f => f.Level is Level.Stop or Level.Fix || (f.Level == Level.Measure && (showsAll || f.Needs.Count == 0)));
        WriteMissing();
        if (showsAll)
            WriteFine();
    }

    void WriteOpen(Func<Finding, bool> isShown)
    {
        var open = outcome.Findings.Where(isShown).OrderBy(f => f.Level).ToList();
        if (open.Count > 0)
        {
            paper.Gap();
            paper.Write(0, "What was found", TerminalStyle.Heading);
            foreach (var finding in open)
            {
                paper.Gap();
                WriteFinding(finding);
            }
        }
    }

    void WriteFinding(Finding finding)
    {
        const int Indent = 9;
        paper.Write(Indent, $"{finding.Where}  ({finding.Rule})", TerminalStyle.Plain, finding.Level.Word, InkOf(finding.Level));
        paper.Write(Indent, finding.Says.In(units));
        if (!finding.Remedy.IsEmpty)
            paper.Write(Indent, "Remedy: " + finding.Remedy.In(units));
        if (finding.Mend is { } mend)
            paper.Write(Indent, $"In the file: {mend.Key}: {mend.Text}");
        if (outcome.SourceOf(finding) is { Length: > 0 } source)
            paper.Write(Indent, "Source: " + source, TerminalStyle.Quiet);
    }

    // What costs money when it is wrong comes first: fit, before a part is bought or a hole drilled; then limits; then figures.
    void WriteMissing()
    {
        var checks = outcome.Findings.Where(f => f.Level == Level.Measure && f.Needs.Count > 0).ToList();
        var figures = outcome.Figures.Where(f => f.Value is null && f.Missing.Count > 0).ToList();
        var keys = checks.Select(f => (Cost: MissingCosts.Classify(f.Rule), Keys: f.Needs))
            .Concat(figures.Select(f => (Cost: MissingCost.Figure, Keys: f.Missing)))
            .SelectMany(w => Wanted(w.Keys).Select(k => (Key: k, w.Cost)))
            .GroupBy(w => w.Key, w => w.Cost, StringComparer.Ordinal)
            .OrderBy(g => g.Min()).ThenByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).ToList();
        if (keys.Count == 0)
            return;
        paper.Gap();
        paper.Write(
            9,
            $"{(keys.Exists(k => IsPlace(k.Key)) ? Count(keys.Count, "part is", "parts and values are") : Count(keys.Count, "value is", "values are"))} not known; {Count(checks.Count, "check", "checks")} and {Count(figures.Count, "figure", "figures")} wait for {(keys.Count == 1 ? "it" : "them")}:",
            TerminalStyle.Plain, Level.Measure.Word, TerminalStyle.Measure);
        var shown = showsAll ? keys.Count : Math.Min(keys.Count, MostExplained);
        foreach (var key in keys.Take(shown))
            paper.Write(11, $"{key.Key} ({key.Count().ToString(CultureInfo.InvariantCulture)}): {(IsPlace(key.Key) ? "choose one. " : "")}{MeasureAdvice.For(key.Key)}");
        foreach (var (cost, words) in MissingCosts.All)
        {
            var rest = keys.Skip(shown).Where(k => k.Min() == cost).Select(k => k.Key).ToList();
            if (rest.Count > 0)
                paper.Write(11, $"{words}: {string.Join(", ", rest)}.");
        }
    }

    void WriteFine()
    {
        var fine = outcome.Findings.Where(f => f.Level == Level.Fine).ToList();
        if (fine.Count == 0)
            return;
        paper.Gap();
        paper.Write(0, "What was checked and holds", TerminalStyle.Heading);
        foreach (var finding in fine)
        {
            paper.Write(9, $"{finding.Where}  ({finding.Rule})", TerminalStyle.Plain, Level.Fine.Word, TerminalStyle.Fine);
            paper.Write(9, finding.Says.In(units));
            if (outcome.UsualOf(finding) is { Count: > 0 } usual)
                paper.Write(9, $"Rests on {Count(usual.Count, "usual value", "usual values")}: {JoinKeys(usual, 4)}.{(outcome.Spread.Count > 0 ? " Holds two spreads away from each." : "")}", TerminalStyle.Quiet);
            if (outcome.SourceOf(finding) is { Length: > 0 } source)
                paper.Write(9, "Source: " + source, TerminalStyle.Quiet);
        }
    }

    /// <summary>Writes what to measure next, and by how much that would narrow each figure; nothing where nothing would.</summary>
    internal static void WriteMeasurements(TerminalText paper, IReadOnlyList<Measurement> measurements, IReadOnlyList<FigureKind> kinds)
    {
        if (measurements.Count == 0)
            return;
        paper.Gap();
        paper.Write(0, "What to measure next", TerminalStyle.Heading);
        foreach (var measurement in measurements.Take(MostMeasurementsShown))
        {
            var narrows = string.Join("; ", measurement.Narrows.Where(n => n.Part >= 0.01).OrderByDescending(n => n.Part)
                .Select(n => string.Create(CultureInfo.InvariantCulture, $"{Title(n.Figure)} by {100 * n.Part:0} %")));
            paper.Write(4, $"{measurement.Key}: {measurement.How} Narrows {narrows}.", TerminalStyle.Plain, "", TerminalStyle.Plain, 2);
        }

        string Title(string id) => kinds.First(k => k.Id == id).Title.ToLowerInvariant();
    }

    void WriteCounts()
    {
        var counts = Enum.GetValues<Level>()
            .Select(level => (level.Word, Number: outcome.Findings.Count(f => f.Level == level)))
            .Select(c => $"{c.Number.ToString(CultureInfo.InvariantCulture)} {c.Word}");
        var fine = !showsAll && outcome.Findings.Any(f => f.Level == Level.Fine) ? " (--all lists them)" : "";
        paper.Write(0, $"{string.Join(", ", counts)}{fine}. Only what is named here or in the list of rules was checked.");
    }

    // Of a part that was not chosen the part itself is wanted, not each of its values.
    IEnumerable<string> Wanted(IReadOnlyList<string> keys) =>
        keys.Select(k => outcome.Board.Parts.UnchosenPlaceOf(k) ?? k).Distinct(StringComparer.Ordinal);

    bool IsPlace(string key) => outcome.Board.Parts.UnchosenPlaceOf(key) == key;

    static string JoinKeys(IReadOnlyList<string> keys, int most) => keys.Count switch
    {
        0 => "a value that is not known",
        _ when keys.Count > most => $"{string.Join(", ", keys.Take(most))} and {(keys.Count - most).ToString(CultureInfo.InvariantCulture)} more",
        1 => keys[0],
        _ => $"{string.Join(", ", keys.Take(keys.Count - 1))} and {keys[^1]}",
    };

    static string Count(int number, string one, string more) => $"{number.ToString(CultureInfo.InvariantCulture)} {(number == 1 ? one : more)}";

    static TerminalStyle InkOf(Level level) => level switch
    {
        Level.Stop => TerminalStyle.Stop,
        Level.Fix => TerminalStyle.Fix,
        Level.Measure => TerminalStyle.Measure,
        _ => TerminalStyle.Fine,
    };

    sealed record ReportRow(string Label, string Asked, string Does, bool IsMissing, IReadOnlyList<string> Notes);
}
