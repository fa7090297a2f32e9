using Boardwright.App.Docs;

namespace Boardwright.Tests.App;

public sealed class GeneratedPagesTests
{
    static readonly IReadOnlyDictionary<string, string> Written = GeneratedPages.Create(Heron.Kinds, Heron.Rules);

    [Theory]
    [InlineData("results.md")]
    [InlineData("findings.md")]
    public void A_page_reads_as_approved(string page) => Approved.Matches($"App/pages/{page}", Written[page]);

    [Fact]
    public void Every_rule_and_every_figure_has_an_anchor_of_its_own()
    {
        Assert.All(Heron.Rules, rule => Assert.Contains($"<a id=\"{rule.Id}\"></a>", Written["findings.md"], StringComparison.Ordinal));
        Assert.All(Heron.Kinds, kind => Assert.Contains($"<a id=\"{kind.Id}\"></a>", Written["results.md"], StringComparison.Ordinal));
    }

    [Fact]
    public void Every_page_says_that_it_is_written_by_the_program() =>
        Assert.All(Written.Values, text => Assert.StartsWith(GeneratedPages.Mark, text, StringComparison.Ordinal));

    [Fact]
    public void The_excerpt_of_a_report_in_a_text_is_written_again_and_the_rest_is_kept()
    {
        const string Text = "before\n<!-- report:heron -->\nold\n<!-- /report -->\nafter\n";
        const string Report = "Heron\n\nIt\n\nweighs\n\nWhat was found\n\nfix 1\n\nfix 2\n\nfix 3\n\n0 stop, 3 fix\n\nLithium\n";
        const string Excerpt = "Heron\n\n…\n\nWhat was found\n\nfix 1\n\nfix 2\n\n…\n\n0 stop, 3 fix\n\n…\n";

        Assert.Equal(
            $"before\n<!-- report:heron -->\n```text\n{Excerpt}```\n<!-- /report -->\nafter\n",
            GeneratedPages.Refilled(Text, static name => name == "heron" ? Report : null));
        Assert.Equal(Text, GeneratedPages.Refilled(Text, _ => null));
    }
}
