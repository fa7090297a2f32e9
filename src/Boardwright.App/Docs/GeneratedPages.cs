using System.Text;
using System.Text.RegularExpressions;
using Boardwright.Analyses;
using Boardwright.Examinations;
using Boardwright.Findings;

namespace Boardwright.App.Docs;

/// <summary>The pages of the documentation that are written from the catalogue and the rulebook, so that they cannot disagree with the
/// program.</summary>
static partial class GeneratedPages
{
    /// <summary>Stands at the head of every written page.</summary>
    public const string Mark = "<!-- Written by `boardwright pages`; change the program, not this page. -->";

    /// <summary>Every page by its path in the folder of documents.</summary>
    public static IReadOnlyDictionary<string, string> Create(IReadOnlyList<FigureKind> figures, IReadOnlyList<Rule<BoardAnalysis>> rules) =>
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["results.md"] = Results(figures),
            ["findings.md"] = Findings(rules),
            ["guide/usual-values.md"] = UsualValuesPage.Write(),
        };

    /// <summary>The page on which entries each figure needs.</summary>
    /// <param name="needs">What the figures of a belt-driven board need of which everything is known that matters.</param>
    /// <param name="canBeUsual">Whether an entry can be taken as usual where nobody states it.</param>
    public static string Needs(IReadOnlyList<FigureNeeds> needs, Func<string, bool> canBeUsual)
    {
        var text = new StringBuilder($$"""
            {{Mark}}
            # What each figure needs

            For a board driven by belts: the entries without which a figure is not given, those that can be [taken as usual](usual-values.md), and those
            that it uses and can do without, because they have a default, another entry stands in for them, a lower limit is known, or
            the figure is then a lower bound. The entries are those of the example Tern; a part of another kind may need another. What
            each figure is stands on [its own page](../results.md).

            | figure | needs | can be taken as usual | can do without |
            | --- | --- | --- | --- |

            """);
        foreach (var figure in needs)
        {
            var (needed, spared) = (figure.Needed.ToLookup(canBeUsual), figure.Spared.ToLookup(canBeUsual));
            text.Append($"| [{figure.Kind.Id}](../results.md#{figure.Kind.Id}) | {Entries(needed[false])} | {Entries([.. needed[true], .. spared[true]])} | {Entries(spared[false])} |\n");
        }

        return text.ToString();

        static string Entries(IEnumerable<string> keys) => string.Join(", ", keys.Select(key => $"`{key}`")) is { Length: > 0 } list ? list : "–";
    }

    /// <summary>
    /// A text with excerpts of reports, each between <c>&lt;!-- report:NAME --&gt;</c> and <c>&lt;!-- /report --&gt;</c>, written again.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="report">The report on the example of a name; <c>null</c> leaves the excerpt as it is.</param>
    public static string Refilled(string text, Func<string, string?> report) => ReportSection().Replace(text, section =>
        report(section.Groups["name"].Value) is { } lines
            ? $"<!-- report:{section.Groups["name"].Value} -->\n```text\n{Excerpt(lines.TrimEnd())}\n```\n<!-- /report -->"
            : section.Value);

    // What one reads first: the board, what it does, what was found and the count; … stands for each stretch that is left out.
    static string Excerpt(string report)
    {
        var kept = new List<string>();
        var findings = 0;
        foreach (var paragraph in report.Split("\n\n"))
        {
            var isShown = kept.Count == 0 || FirstRead().IsMatch(paragraph) || (Wrong().IsMatch(paragraph) && findings++ < 2);
            if (isShown || kept[^1] != "…")
                kept.Add(isShown ? paragraph : "…");
        }

        return string.Join("\n\n", kept);
    }

    static string Results(IReadOnlyList<FigureKind> figures) => Page(
        "Figures",
        """
        Every figure that a check or a ride can give, by its id in the result document; those of a ride begin with `ride.`.
        A figure is given only when the board has what it is about; when a value it needs is missing, the document says which.
        Rules have [their own page](findings.md).
        """,
        figures,
        static figure => figure.Id,
        static figure => $"""
            {Plain(figure.Title)}, {(figure.Unit.Length > 0 ? $"in {Plain(figure.Unit)}" : "a plain number")}. {Plain(figure.Meaning)}

            - Equation: `{figure.Equation.Replace('`', '\'')}`
            - Source: {Plain(figure.Source.Text)}
            """);

    static string Findings(IReadOnlyList<Rule<BoardAnalysis>> rules) => Page(
        "Rules",
        """
        Every rule that a board is checked against: the sentence that should be true, why and how it is checked, the entry it is about,
        and its source. What is not in this list is not checked. A finding has one of four levels: **stop** (someone could be hurt, or it
        cannot be put together), **fix** (it fits, but exceeds a limit), **measure** (a value is missing) or **fine** (it holds).
        Figures have [their own page](results.md).
        """,
        rules,
        static rule => rule.Id,
        static rule => $"""
            **{Plain(rule.Claim)}**

            {Plain(rule.Why)}

            - About: `{rule.Where}`
            - Source: {Plain(rule.Source.Text)}
            """);

    // A page with one section for each topic, which is how the ids begin, and an anchor for each id.
    static string Page<T>(string title, string about, IReadOnlyList<T> items, Func<T, string> idOf, Func<T, string> describe)
    {
        var text = new StringBuilder($"{Mark}\n# {title}\n\n{about}\n\n");
        var topics = items.GroupBy(item => idOf(item).Split('.')[0], StringComparer.Ordinal).ToList();
        foreach (var topic in topics)
        {
            var links = topic.Select(idOf).Select(id => $"[{id[(topic.Key.Length + 1)..]}](#{id})");
            text.Append($"- [{topic.Key}](#{topic.Key}): {string.Join(", ", links)}\n");
        }

        foreach (var topic in topics)
        {
            text.Append($"\n## {topic.Key}\n");
            foreach (var item in topic)
                text.Append($"\n### <a id=\"{idOf(item)}\"></a>`{idOf(item)}`\n\n{describe(item)}\n");
        }

        return text.ToString();
    }

    // Signs that would start emphasis or a tag in Markdown.
    static string Plain(string text) => text.Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace("*", "\\*", StringComparison.Ordinal).Replace("_", "\\_", StringComparison.Ordinal);

    [GeneratedRegex(@"^(What it does|What was found|\d+ stop, )", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex FirstRead();

    [GeneratedRegex("^(stop|fix) ", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Wrong();

    [GeneratedRegex("<!-- report:(?<name>[a-z0-9-]+) -->.*?<!-- /report -->", RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex ReportSection();
}
