using System.CommandLine;
using Boardwright.Files;

namespace Boardwright.App.Commands;

/// <summary><c>pages</c>: writes the pages of the documentation that come from the program itself.</summary>
static class WritePages
{
    /// <summary>The command.</summary>
    public static Command Of(Terminal terminal)
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
        var pages = Pages.Of(Catalogue.All, Rulebook.All);
        Directory.CreateDirectory(Path.Combine(place, "findings"));
        foreach (var (name, text) in pages)
            File.WriteAllText(Path.Combine(place, name), text);
        foreach (var old in Directory.EnumerateFiles(Path.Combine(place, "findings"), "*.md"))
        {
            // A rule that is gone leaves no page; pages that people wrote are left alone.
            if (!pages.ContainsKey("findings/" + Path.GetFileName(old)) && File.ReadAllText(old).StartsWith(Pages.Mark, StringComparison.Ordinal))
                File.Delete(old);
        }

        var readme = Path.Combine(place, "..", "README.md");
        if (File.Exists(readme))
            File.WriteAllText(readme, Pages.Refilled(File.ReadAllText(readme), name => Example(Path.Combine(place, ".."), name)));
        terminal.Out.WriteLine(FormattableString.Invariant($"Wrote {pages.Count} pages in {folder}"));
        return Exit.Holds;
    }

    /// <summary>The report on an example, as a pipe gets it.</summary>
    /// <returns>The report, or <c>null</c> when there is no such example.</returns>
    internal static string? Example(string root, string name)
    {
        var file = Path.Combine(root, "examples", name, name + ".board.yaml");
        if (!File.Exists(file) || BoardFile.Read(file).Board is not { } board)
            return null;
        using var text = new StringWriter { NewLine = "\n" };
        Report.Write(new Paper(text, 80, isStyled: false), Outcome.Of(Examination.Of(board), Program.Spread?.Invoke(board)), UnitSystem.Metric, showsAll: false);
        return text.ToString();
    }
}
