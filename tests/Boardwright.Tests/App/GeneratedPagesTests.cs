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
    public void A_report_in_a_text_is_replaced_and_the_rest_is_kept()
    {
        const string Text = "before\n<!-- report:heron -->\nold\n<!-- /report -->\nafter\n";

        Assert.Equal("before\n<!-- report:heron -->\n```text\nnew\n```\n<!-- /report -->\nafter\n", GeneratedPages.Refilled(Text, name => name == "heron" ? "new\n" : null));
        Assert.Equal(Text, GeneratedPages.Refilled(Text, _ => null));
    }
}
