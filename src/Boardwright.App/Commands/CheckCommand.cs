using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Results;
using Boardwright.Spreads;

namespace Boardwright.App.Commands;

/// <summary><c>check</c>: examines a board and reports what it does, and what stops it or has to be changed.</summary>
static class CheckCommand
{
    /// <summary>The command.</summary>
    /// <param name="terminal">Where to write.</param>
    /// <param name="spread">Computes how well the figures are known, and what to measure next; <c>null</c> where that is never
    /// shown.</param>
    public static Command Create(Terminal terminal, Func<Examination, Spread>? spread)
    {
        var file = new Argument<string>("FILE") { Description = "The board file, NAME.board.yaml." };
        file.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var asJson = new Option<bool>("--json") { Description = "Prints the result document for other programs, always metric." };
        var all = new Option<bool>("--all") { Description = "Lists every figure, every missing value, and what is fine too." };
        var units = new Option<string>("--units") { Description = "Units of the report: metric or imperial.", HelpName = "UNITS", DefaultValueFactory = _ => "metric" };
        units.AcceptOnlyFromAmong("metric", "imperial");
        var noSpread = new Option<bool>("--no-spread") { Description = "Leaves out how well the figures are known, which takes most of the time." };
        var plain = new Option<bool>("--plain") { Description = "No colour and no dim text, 80 columns." };
        var command = new Verb(
            "check", "Examines a board: what it does, weighs and costs, and what stops it or has to be changed. Exit code 0 when nothing does, 1 when something does or when too little is known to say what it does, 2 when the file could not be read.",
            "boardwright check tern.board.yaml", "boardwright check tern.board.yaml --all --units imperial", "boardwright check tern.board.yaml --json > tern.json")
        { file, asJson, all, units, noSpread, plain };
        command.SetAction(parsed => Run(
            parsed.GetValue(plain) ? terminal with { IsStyled = false, Width = 80 } : terminal,
            parsed.GetRequiredValue(file),
            parsed.GetValue(asJson),
            parsed.GetValue(all),
            parsed.GetValue(units) == "imperial" ? UnitSystem.Imperial : UnitSystem.Metric,
            parsed.GetValue(noSpread) ? null : spread));
        return command;
    }

    static int Run(Terminal terminal, string file, bool asJson, bool all, UnitSystem units, Func<Examination, Spread>? spread)
    {
        var loaded = BoardFile.Read(file);
        if (loaded.Board is not { } board)
        {
            if (asJson)
                terminal.Out.Write(ResultDocument.WriteErrors(loaded.Complaints));
            Complain(terminal, loaded.Complaints);
            return Exit.Unread;
        }

        var examination = Examination.Examine(board);
        var outcome = CheckOutcome.Create(examination, spread?.Invoke(examination));
        if (asJson)
            terminal.Out.Write(ResultDocument.Write(outcome));
        else
            Report.Write(new TerminalText(terminal), outcome, units, all);
        return outcome.IsWanting || outcome.IsTooLittleKnown ? Exit.Wanting : Exit.Holds;
    }

    /// <summary>Writes what is wrong in the files, in the form that editors can follow to the place.</summary>
    internal static void Complain(Terminal terminal, IReadOnlyList<Complaint> complaints)
    {
        var paper = new TerminalText(terminal.Error, terminal.Width, isStyled: false);
        foreach (var complaint in complaints)
        {
            // Never wrapped: editors look for the place at the beginning of a line.
            terminal.Error.Write(complaint.Key.Length > 0 ? $"{complaint.At}  {complaint.Key}\n" : $"{complaint.At}\n");
            paper.Write(2, complaint.Says);
            paper.Write(2, complaint.Remedy);
        }

        paper.Write(0, complaints.Count == 1 ? "One thing to mend; nothing was examined." : FormattableString.Invariant($"{complaints.Count} things to mend; nothing was examined."));
    }
}
