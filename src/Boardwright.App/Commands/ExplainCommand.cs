using System.CommandLine;
using Boardwright.Analyses;
using Boardwright.App.Reports;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Findings;
using Boardwright.Rides;
using Boardwright.Rules;

namespace Boardwright.App.Commands;

/// <summary><c>explain</c>: what a figure or a rule is, how it is computed and where that comes from.</summary>
sealed class ExplainCommand(IReadOnlyList<FigureKind> figures, IReadOnlyList<Rule<BoardAnalysis>> rules)
{
    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var id = new Argument<string?>("ID")
        {
            Description = "Id of a figure or of a rule, or how ids begin. Without it all ids are listed.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        id.CompletionSources.Add(_ => Figures.Select(k => k.Id).Concat(Rulebook.All.Select(r => r.Id)));
        var command = new Verb(
            "explain", "Says what a figure or a rule means, by which equation and from which source.",
            "boardwright explain cruise.range", "boardwright explain drive")
        { id };
        command.SetAction(parsed => new ExplainCommand(Figures, Rulebook.All).Run(terminal, parsed.GetValue(id)));
        return command;
    }

    /// <summary>Every figure that the program can give, of a check and then of a ride.</summary>
    internal static IReadOnlyList<FigureKind> Figures { get; } = [.. Catalogue.All, .. RideFigures.All];

    /// <summary>Explains one id, lists those that begin alike, or offers what is near.</summary>
    public int Run(Terminal terminal, string? id)
    {
        var paper = new TerminalText(terminal);
        if (figures.FirstOrDefault(k => k.Id == id) is { } figure)
        {
            About(paper, figure);
            return Exit.Holds;
        }

        if (rules.FirstOrDefault(r => r.Id == id) is { } rule)
        {
            About(paper, rule);
            return Exit.Holds;
        }

        var isFirst = true;
        var found = List(paper, "Figures", figures.Where(k => Begins(k.Id, id)).Select(k => (k.Id, k.Unit.Length > 0 ? $"{k.Title}, {k.Unit}" : k.Title)),
            ref isFirst)
            | List(paper, "Rules", rules.Where(r => Begins(r.Id, id)).Select(r => (r.Id, r.Claim)), ref isFirst);
        if (found || string.IsNullOrEmpty(id))
            return Exit.Holds;

        var errors = new TerminalText(terminal.Error, terminal.Width, isStyled: false);
        errors.Write(0, $"No figure and no rule is called '{id}'.");
        var near = Nearest.List(id, figures.Select(k => k.Id).Concat(rules.Select(r => r.Id)));
        errors.Write(0, near.Count > 0 ? $"Was one of these meant: {string.Join(", ", near)}?" : "boardwright explain lists all ids.");
        return Exit.Unread;
    }

    static bool Begins(string id, string? start) =>
        string.IsNullOrEmpty(start) || id.StartsWith(start.TrimEnd('.') + ".", StringComparison.OrdinalIgnoreCase);

    static bool List(TerminalText paper, string heading, IEnumerable<(string Id, string Says)> entries, ref bool isFirst)
    {
        var list = entries.ToList();
        if (list.Count == 0)
            return false;
        if (!isFirst)
            paper.Gap();
        isFirst = false;
        paper.Write(0, heading, TerminalStyle.Heading);
        var indent = Math.Min(paper.Width / 2, list.Max(e => e.Id.Length) + 4);
        foreach (var (id, says) in list)
            paper.Write(indent, says, TerminalStyle.Plain, id, TerminalStyle.Plain, 2);
        return true;
    }

    static void About(TerminalText paper, FigureKind figure)
    {
        paper.Write(0, figure.Id, TerminalStyle.Heading);
        paper.Write(0, figure.Unit.Length > 0 ? $"{figure.Title}, in {figure.Unit}." : $"{figure.Title}, a plain number.");
        paper.Gap();
        paper.Write(10, figure.Meaning, TerminalStyle.Plain, "Meaning");
        paper.Write(10, figure.Equation, TerminalStyle.Plain, "Equation");
        paper.Write(10, figure.Source.Text, TerminalStyle.Plain, "Source");
    }

    static void About(TerminalText paper, Rule<BoardAnalysis> rule)
    {
        paper.Write(0, rule.Id, TerminalStyle.Heading);
        paper.Write(0, rule.Claim);
        paper.Gap();
        paper.Write(10, rule.Why, TerminalStyle.Plain, "Why");
        paper.Write(10, rule.Where, TerminalStyle.Plain, "Where");
        paper.Write(10, rule.Source.Text, TerminalStyle.Plain, "Source");
    }
}
