using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Boardwright.App.Commands;
using Boardwright.Builds;
using Boardwright.Parts;
using Boardwright.Rules;

namespace Boardwright.Tests.House;

/// <summary>What the documentation names is there: rules, figures, entries of the files, and the places that its links lead to.</summary>
public sealed partial class DocsTests
{
    const int Patience = 60_000;

    // The last three are what a search leaves out by itself, without a rule.
    static readonly HashSet<string> Ids =
    [
        .. Rulebook.All.Select(static rule => rule.Id), .. ExplainCommand.Figures.Select(static kind => kind.Id),
        "search.stock", "search.unknown", "search.dearer",
    ];

    static IEnumerable<string> Pages =>
        Directory.EnumerateFiles(Repository.At("docs"), "*.md", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(Repository.Root, "*.md")).Append(Repository.At("examples", "README.md"));

    [Fact]
    public void Every_rule_figure_and_entry_that_a_page_shows_exists()
    {
        var unknown = new List<string>();
        foreach (var page in Pages)
        {
            var text = File.ReadAllText(page);
            var shown = InBackticks().Matches(text).Concat(Output().Matches(text).SelectMany(block => InOutput().Matches(block.Value)));
            unknown.AddRange(shown.Select(static match => match.Groups["id"].Value).Where(static id => !Exists(id))
                .Select(id => $"{Path.GetRelativePath(Repository.Root, page)}: {id}"));
        }

        Assert.Empty(unknown);
    }

    [Fact]
    public void Every_link_leads_to_a_file_and_to_a_heading_in_it()
    {
        var missing = new List<string>();
        foreach (var page in Pages)
        {
            foreach (Match link in Links().Matches(File.ReadAllText(page)))
            {
                var (target, anchor) = (link.Groups["target"].Value, link.Groups["anchor"].Value);
                var file = target.Length == 0 ? page : Path.Combine(Path.GetDirectoryName(page)!, target);
                if (!Path.Exists(file) || (anchor.Length > 0 && !Anchors(File.ReadAllText(file)).Contains(anchor)))
                    missing.Add($"{Path.GetRelativePath(Repository.Root, page)} -> {link.Groups["link"].Value}");
            }
        }

        Assert.Empty(missing);
    }

    [Fact]
    public void The_document_that_the_guide_shows_is_part_of_what_the_example_gives()
    {
        var guide = File.ReadAllText(Repository.At("docs", "guide", "command-line.md"));
        var shown = JsonNode.Parse(Output().Match(guide).Value.Replace("```json", "").Replace("```", ""));
        var real = JsonNode.Parse(File.ReadAllText(Repository.At("examples", "tern", "tern.result.json")));

        Assert.True(IsPartOf(shown, real), "docs/guide/command-line.md shows a document that is not Tern's.");
    }

    // … stands for what is left out: the end of a text, or further items.
    static bool IsPartOf(JsonNode? shown, JsonNode? real) => (shown, real) switch
    {
        (JsonObject some, JsonObject all) => some.All(member => member.Key == "…" || IsPartOf(member.Value, all[member.Key])),
        (JsonArray some, JsonArray all) => some.All(item => all.Any(other => IsPartOf(item, other))),
        (JsonValue some, JsonValue all) when some.ToString() is [.. var start, '…'] =>
            all.ToString().StartsWith(start, StringComparison.Ordinal),
        (JsonValue some, JsonValue all) => some.ToString() == all.ToString(),
        _ => false,
    };

    static bool Exists(string id) =>
        Ids.Contains(id) || FileName().IsMatch(id)
        || ((Type[])[typeof(Board), typeof(Fitted), typeof(BuiltBoard)]).Any(sheet => IsEntry(sheet, id.Split('.')));

    static bool IsEntry(Type sheet, ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
        {
            if (Entry.ListEntries(sheet).FirstOrDefault(entry => entry.Key == key) is not { } entry)
                return false;
            sheet = entry.ValueType;
        }

        return true;
    }

    // Anchors written by hand, and those that a reader of Markdown makes from a heading.
    static HashSet<string> Anchors(string text) =>
    [
        .. ByHand().Matches(text).Select(static match => match.Groups["id"].Value),
        .. Headings().Matches(text).Select(static match => match.Groups["text"].Value.ToLowerInvariant())
            .Select(static heading => NotInAnchor().Replace(heading, "").Replace(' ', '-')),
    ];

    [GeneratedRegex(@"`(?<id>[a-z][a-z0-9_]*(\.[a-z][a-z0-9_]*)+)`", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Patience)]
    private static partial Regex InBackticks();

    [GeneratedRegex(
        @"^```(text|json)\n.*?^```",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline | RegexOptions.Singleline, matchTimeoutMilliseconds: Patience)]
    private static partial Regex Output();

    // The entries of a plug are named by the plug that has them.
    [GeneratedRegex(
        @"(?<![\w./-]|plug )(?<id>[a-z][a-z0-9_]*(\.[a-z][a-z0-9_]*)+)(?![\w/-])",
        RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Patience)]
    private static partial Regex InOutput();

    [GeneratedRegex(@"\.(cs|css|csv|db|js|json|jsonl|md|svg|txt|yaml)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Patience)]
    private static partial Regex FileName();

    [GeneratedRegex(
        @"(\]\(|\b(src|href)="")(?<link>(?<target>[^)#:""\s]*)(#(?<anchor>[^)""\s]*))?)[)""]",
        RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Patience)]
    private static partial Regex Links();

    [GeneratedRegex(@"<a id=""(?<id>[^""]+)""></a>", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Patience)]
    private static partial Regex ByHand();

    [GeneratedRegex(
        @"^#+ (<a [^>]*></a>)?(?<text>.+)$",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline, matchTimeoutMilliseconds: Patience)]
    private static partial Regex Headings();

    [GeneratedRegex(@"[^\w -]", RegexOptions.None, matchTimeoutMilliseconds: Patience)]
    private static partial Regex NotInAnchor();
}
