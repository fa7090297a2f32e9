using Boardwright.App.Docs;

namespace Boardwright.Tests.App;

public sealed class GeneratedPagesTests
{
    static readonly IReadOnlyDictionary<string, string> Written = GeneratedPages.Create(Heron.Kinds, Heron.Rules);

    [Fact]
    public void There_is_a_page_for_each_rule_one_for_all_and_one_for_the_figures() =>
        Assert.Equal([.. Heron.Rules.Select(r => $"findings/{r.Id}.md").Append("findings/index.md").Append("results.md").Order(StringComparer.Ordinal)], Written.Keys);

    [Theory]
    [InlineData("results.md")]
    [InlineData("findings/index.md")]
    [InlineData("findings/fits.cover_depth.md")]
    public void A_page_reads_as_approved(string page) => Approved.Matches($"App/pages/{Path.GetFileName(page)}", Written[page]);

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
