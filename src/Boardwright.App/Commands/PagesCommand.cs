using System.CommandLine;
using Boardwright.App.Docs;
using Boardwright.App.Reports;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Results;
using Boardwright.Parts;
using Boardwright.Rules;
using Boardwright.Spreads;
using Boardwright.UsualValues;

namespace Boardwright.App.Commands;

/// <summary><c>pages</c>: writes the pages of the documentation that come from the program itself.</summary>
static class PagesCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var folder = new Option<string>("--out") { Description = "Folder of the documents; docs where not given.", HelpName = "DIR" };
        var command = new Verb(
            "pages", "Writes the pages on every figure and every rule, and the reports shown in the README beside the folder. For those who work on the program.",
            "boardwright pages --out docs")
        { folder };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder) ?? "docs"));
        return command;
    }

    static int Run(Terminal terminal, string folder)
    {
        var place = Path.GetFullPath(folder);
        var pages = GeneratedPages.Create(ExplainCommand.Figures, Rulebook.All);
        foreach (var (name, text) in pages)
            DurableFile.Write(Path.Combine(place, name), text);

        var root = Path.GetFullPath(Path.Combine(place, ".."));
        if (NeedsPage(root) is { } needs)
            DurableFile.Write(Path.Combine(place, NeedsPath), needs);
        if (Directory.Exists(Path.Combine(root, "examples")))
        {
            foreach (var (path, text) in Examples(root))
                DurableFile.Write(Path.Combine(root, path), text);
        }

        var readme = Path.Combine(place, "..", "README.md");
        if (File.Exists(readme))
            DurableFile.Write(readme, GeneratedPages.Refilled(File.ReadAllText(readme), name => Example(Path.Combine(place, ".."), name)));
        terminal.Out.WriteLine(FormattableString.Invariant($"Wrote {pages.Count} pages in {folder}"));
        return Exit.Holds;
    }

    /// <summary>Where the page on the needs of figures stands in the folder of documents.</summary>
    internal const string NeedsPath = "guide/needs.md";

    /// <summary>The page on which entries each figure needs, by the example that has them all.</summary>
    /// <returns>The page, or <c>null</c> where the example is not there.</returns>
    internal static string? NeedsPage(string root)
    {
        var file = Path.Combine(root, "examples", "tern", "tern.board.yaml");
        return File.Exists(file) && BoardFile.Read(file).Board is { } board
            ? GeneratedPages.Needs(FigureNeeds.List(UsualTable.Complete(board)), static key => UsualTable.Find(key) is not null) : null;
    }

    /// <summary>The report on an example, as a pipe gets it.</summary>
    /// <returns>The report, or <c>null</c> when there is no such example.</returns>
    internal static string? Example(string root, string name)
    {
        var file = Path.Combine(root, "examples", name, name + ".board.yaml");
        if (!File.Exists(file) || BoardFile.Read(file).Board is not { } board)
            return null;
        return ReportOn(OutcomeOf(board));
    }

    /// <summary>What stands beside each example: its report and its result document, by their paths from the root.</summary>
    internal static IReadOnlyDictionary<string, string> Examples(string root)
    {
        var texts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in Directory.EnumerateFiles(Path.Combine(root, "examples"), "*.board.yaml", SearchOption.AllDirectories))
        {
            if (BoardFile.Read(file).Board is not { } board)
                continue;
            var outcome = OutcomeOf(board);
            var beside = Path.GetRelativePath(root, file)[..^".board.yaml".Length];
            texts[beside + ".report.txt"] = ReportOn(outcome);
            texts[beside + ".result.json"] = ResultDocument.Write(outcome);
        }

        return texts;
    }

    static CheckOutcome OutcomeOf(Board board)
    {
        var examination = Examination.Examine(board);
        return CheckOutcome.Create(examination, Spread.Sample(examination));
    }

    static string ReportOn(CheckOutcome outcome)
    {
        using var text = new StringWriter { NewLine = "\n" };
        Report.Write(new TerminalText(text, 80, isStyled: false), outcome, UnitSystem.Metric, showsAll: false);
        return text.ToString();
    }
}
