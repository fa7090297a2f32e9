using System.Text;
using System.Text.RegularExpressions;
using Boardwright.Analyses;
using Boardwright.Findings;

namespace Boardwright.App.Docs;

/// <summary>The pages of the documentation that are written from the catalogue and the rulebook, so that they cannot disagree with the program.</summary>
static partial class GeneratedPages
{
    /// <summary>Stands at the head of every written page.</summary>
    public const string Mark = "<!-- Written by `boardwright pages`; change the program, not this page. -->";

    /// <summary>Every page by its path in the folder of documents.</summary>
    public static IReadOnlyDictionary<string, string> Create(IReadOnlyList<FigureKind> figures, IReadOnlyList<Rule<BoardAnalysis>> rules)
    {
        var pages = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["results.md"] = Results(figures),
            ["findings/index.md"] = Index(rules),
        };
        foreach (var rule in rules)
            pages[$"findings/{rule.Id}.md"] = Page(rule);
        return pages;
    }

    /// <summary>A text whose reports, each between <c>&lt;!-- report:NAME --&gt;</c> and <c>&lt;!-- /report --&gt;</c>, are written anew.</summary>
    /// <param name="text">The text.</param>
    /// <param name="report">The report on the example of a name; <c>null</c> leaves what stands there.</param>
    public static string Refilled(string text, Func<string, string?> report) => ReportSection().Replace(text, section =>
        report(section.Groups["name"].Value) is { } lines
            ? $"<!-- report:{section.Groups["name"].Value} -->\n```text\n{lines.TrimEnd()}\n```\n<!-- /report -->"
            : section.Value);

    static string Results(IReadOnlyList<FigureKind> figures)
    {
        var text = new StringBuilder();
        text.Append(Mark).Append("\n# Figures\n\n");
        text.Append("Every figure that a check or a ride can give, by its id in the result document; those of a ride begin with `ride.`. A figure is given only when the board has what it is about; ");
        text.Append("when a value it needs is missing, the document says which. Sentences on a rule are in [findings](findings/index.md).\n");
        foreach (var topic in figures.GroupBy(f => Topic(f.Id), StringComparer.Ordinal))
        {
            text.Append($"\n## {topic.Key}\n");
            foreach (var figure in topic)
            {
                text.Append($"\n### `{figure.Id}`\n\n{Plain(figure.Title)}, {(figure.Unit.Length > 0 ? $"in {Plain(figure.Unit)}" : "a plain number")}. {Plain(figure.Meaning)}\n\n");
                text.Append($"- Equation: `{figure.Equation.Replace('`', '\'')}`\n- Source: {Plain(figure.Source.Text)}\n");
            }
        }

        return text.ToString();
    }

    static string Index(IReadOnlyList<Rule<BoardAnalysis>> rules)
    {
        var text = new StringBuilder();
        text.Append(Mark).Append("\n# Rules\n\n");
        text.Append("Every rule that a board is checked against. What is not in this list is not checked.\n");
        foreach (var topic in rules.GroupBy(r => Topic(r.Id), StringComparer.Ordinal))
        {
            text.Append($"\n## {topic.Key}\n\n| rule | should be true |\n| --- | --- |\n");
            foreach (var rule in topic)
                text.Append($"| [`{rule.Id}`]({rule.Id}.md) | {Plain(rule.Claim).Replace("|", "\\|", StringComparison.Ordinal)} |\n");
        }

        return text.ToString();
    }

    static string Page(Rule<BoardAnalysis> rule) =>
        $"""
        {Mark}
        # `{rule.Id}`

        **{Plain(rule.Claim)}**

        {Plain(rule.Why)}

        - About: `{rule.Where}`
        - Source: {Plain(rule.Source.Text)}

        [All rules](index.md)

        """;

    static string Topic(string id) => id.Split('.')[0];

    // Signs that would start emphasis or a tag in Markdown.
    static string Plain(string text) => text.Replace("<", "&lt;", StringComparison.Ordinal).Replace("*", "\\*", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal);

    [GeneratedRegex("<!-- report:(?<name>[a-z0-9-]+) -->.*?<!-- /report -->", RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex ReportSection();
}
