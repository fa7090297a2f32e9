using System.Globalization;
using System.Text;
using Boardwright.Findings;
using static System.FormattableString;

namespace Boardwright.Validation;

/// <summary>Writes the pages of the validation: an index, and a page with every check and a drawing for each topic.</summary>
public static class ValidationPages
{
    /// <summary>The pages by their name in the folder <c>docs/validation</c>; lines end with a line feed everywhere.</summary>
    public static IReadOnlyDictionary<string, string> Write(IReadOnlyList<Case> cases)
    {
        ArgumentNullException.ThrowIfNull(cases);
        var pages = new SortedDictionary<string, string>(StringComparer.Ordinal) { ["index.md"] = Index(cases) };
        foreach (var topic in cases)
        {
            pages.Add(topic.Slug + ".md", Page(topic));
            pages.Add(topic.Slug + ".svg", RatioPlot.Svg(topic));
        }

        return pages;
    }

    static string Index(IReadOnlyList<Case> cases)
    {
        var page = new StringBuilder();
        var checks = cases.SelectMany(static c => c.Checks).ToList();
        var measured = checks.Count(static c => c.Level >= 2);
        page.Append(Invariant($"""
            # Validation

            Every value on these pages is computed by the program that you use and compared with a value somebody published, or one worked out
            by hand from a published definition. `dotnet run --project validation/Boardwright.Validation` writes them; a test fails when
            one is stale. Nothing is tuned to pass: a **miss** stays, with its explanation.

            {checks.Count} checks, {checks.Count(static c => c.IsMiss)} misses.

            ## How far it can be trusted

            | level | what it means | passed |
            | --- | --- | ---: |
            | E0 | follows from stated parameters and definitions; the number next to ours was worked out by hand, is common practice or is from memory | {checks.Count(static c => !c.IsMiss && c.Level == 0)} |
            | E1 | agrees with values and worked examples that were published | {checks.Count(static c => !c.IsMiss && c.Level == 1)} |
            | E2 | agrees with measured totals or end values that set no parameter | {checks.Count(static c => !c.IsMiss && c.Level == 2)} |
            | E3 | agrees with measured series in time that set no parameter | {checks.Count(static c => !c.IsMiss && c.Level == 3)} |

            E0 and E1 show that the equations are written down and solved right. They do not show that the equations describe your board: only E2 and E3 can.

            """).ReplaceLineEndings("\n"));
        page.Append(measured == 0
            ? "**Nothing has been compared with measurements yet.** No topic is above E1.\n"
            : Invariant($"Topics without a measured comparison: {string.Join(", ", cases.Where(static c => c.Checks.All(static k => k.Level < 2)).Select(static c => c.Topic))}.\n"));
        page.Append("""

            Words in the column *evidence*: **published** – a source prints the value and the program's method is the source's; **computed** – worked out from a
            published definition; **practice** – common practice, no source; **memory** – not confirmed in any text read; **measured** – someone measured it.
            The allowed difference is half of the last printed digit unless a reason is given.

            ## Topics

            The columns E0 to E3 count the checks that pass. *Worst* is the largest difference as a part of the published value, *bias* the mean of these differences with their signs.

            | room | topic | checks | E0 | E1 | E2 | E3 | worst | bias | misses |
            | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |

            """.ReplaceLineEndings("\n"));
        foreach (var topic in cases)
        {
            var relative = topic.Checks.Select(static c => c.RelativeDifference).OfType<double>().ToList();
            page.Append(Invariant($"| {topic.Room} | [{topic.Topic}]({topic.Slug}.md) | {topic.Checks.Count} | {Count(topic, 0)} | {Count(topic, 1)} | {Count(topic, 2)} | {Count(topic, 3)} | "));
            page.Append(Invariant($"{(relative.Count == 0 ? "" : Percent(relative.MaxBy(Math.Abs)))} | {(relative.Count == 0 ? "" : Percent(relative.Average()))} | {topic.Checks.Count(static c => c.IsMiss)} |\n"));
        }

        page.Append("\n## Misses\n\n");
        var missed = cases.SelectMany(static topic => topic.Checks.Select((check, i) => (topic, check, Number: i + 1)))
            .Where(static m => m.check.IsMiss).ToList();
        if (missed.Count == 0)
            page.Append("None.\n");
        foreach (var (topic, check, number) in missed)
        {
            page.Append(Invariant($"- **[{topic.Topic}]({topic.Slug}.md) {number}**, {check.Quantity} ({check.Given}): published {check.Printed} {check.Unit}, ours {Value(check)}"));
            page.Append(Invariant($" – {check.MissBecause ?? "not explained yet."}\n"));
        }

        return page.ToString();
    }

    static string Page(Case topic)
    {
        var (page, sources) = (new StringBuilder(), new List<Source>());
        page.Append(Invariant($"""
            # {topic.Topic}

            {topic.About}

            Checks: {topic.Checks.Count}; misses: {topic.Checks.Count(static c => c.IsMiss)}.
            [What the words in the table mean](index.md#how-far-it-can-be-trusted).

            ![Computed over published, {topic.Topic}]({topic.Slug}.svg)


            """).ReplaceLineEndings("\n"));
        page.Append("| # | quantity | given | published | ours | difference | allowed | | evidence | source |\n");
        page.Append("| ---: | --- | --- | ---: | ---: | ---: | --- | --- | --- | --- |\n");
        for (var i = 0; i < topic.Checks.Count; i++)
        {
            var check = topic.Checks[i];
            var at = sources.IndexOf(check.Source);
            if (at < 0)
            {
                at = sources.Count;
                sources.Add(check.Source);
            }

            var allowed = check.Allowed switch
            {
                null => Invariant($"{check.Published.HalfLastDigit:G3}"),
                { IsRelative: true } part => Invariant($"{part.Size * 100:G3} %: {part.Why}"),
                var size => Invariant($"{size.Size:G3}: {size.Why}"),
            };
            page.Append(Invariant($"| {i + 1} | {Cell(check.Quantity)} | {Cell(check.Given)} | {check.Printed} {Cell(check.Unit)} | {Value(check)} | {Difference(check)} | {Cell(allowed)} | {(check.IsMiss ? "**miss**" : "pass")} | "));
            page.Append(Invariant($"{Word(check.Evidence)} | [{at + 1}](#sources){(check.Page.Length == 0 ? "" : ", " + Cell(check.Page))} |\n"));
        }

        page.Append("\n## Sources\n\n");
        for (var i = 0; i < sources.Count; i++)
            page.Append(Invariant($"{i + 1}. {sources[i].Text}\n"));
        return page.ToString();
    }

    static int Count(Case topic, int level) => topic.Checks.Count(c => !c.IsMiss && c.Level == level);

    static string Word(EvidenceLevel evidence) => evidence switch
    {
        EvidenceLevel.Published => "published",
        EvidenceLevel.ComputedFromPublished => "computed",
        EvidenceLevel.CommonPractice => "practice",
        EvidenceLevel.FromMemory => "memory",
        _ => "measured",
    };

    static string Value(Check check) =>
        check.Published.HasExponent ? Invariant($"{check.Ours:G5}") : Fixed(check.Ours, check.Published.Decimals + 2);

    static string Difference(Check check)
    {
        if (check.Published.HasExponent)
            return Invariant($"{check.Difference:G3}");
        var text = Fixed(check.Difference, check.Published.Decimals + 2);
        return check.Difference > 0 && text.AsSpan().ContainsAnyInRange('1', '9') ? "+" + text : text;
    }

    // Rounding to the digits shown first keeps a difference of rounding from being written as minus zero.
    static string Fixed(double value, int decimals) =>
        (Math.Round(value, Math.Min(decimals, 15)) + 0.0)
        .ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    static string Percent(double part)
    {
        var rounded = Math.Round(part * 100, 3) + 0.0;
        return Math.Abs(part) < 5e-6 ? "under 0.001 %" : Invariant($"{rounded:+0.###;-0.###} %");
    }

    static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
