using Boardwright.App.Commands;
using Boardwright.App.Reports;

namespace Boardwright.Tests.App;

public sealed class ExplainCommandTests
{
    [Fact]
    public void A_figure_is_explained_with_equation_and_source() => Approved.Matches("App/explain-figure.txt", Asked("cruise.range").Out);

    [Fact]
    public void A_rule_is_explained_with_its_reason_and_source() => Approved.Matches("App/explain-rule.txt", Asked("fits.cover_depth").Out);

    [Fact]
    public void Without_an_id_everything_is_listed() => Approved.Matches("App/explain-all.txt", Asked(null).Out);

    [Theory]
    [InlineData("drive")]
    [InlineData("drive.")]
    public void The_beginning_of_ids_lists_figures_and_rules(string start)
    {
        var (code, text, _) = Asked(start);

        Assert.Equal(0, code);
        Assert.Contains("  drive.ratio", text, StringComparison.Ordinal);
        Assert.Contains("  drive.teeth_in_mesh", text, StringComparison.Ordinal);
        Assert.DoesNotContain("cruise", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cruise.rnage", "cruise.range")]
    [InlineData("drive.teeth_in_mehs", "drive.teeth_in_mesh")]
    [InlineData("range", "cruise.range")]
    public void A_near_miss_is_offered_what_was_meant(string written, string meant)
    {
        var (code, text, error) = Asked(written);

        Assert.Equal(2, code);
        Assert.Empty(text);
        Assert.StartsWith($"No figure and no rule is called '{written}'.\nWas one of these meant: {meant}", error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_near_nothing_is_sent_to_the_list() =>
        Assert.Contains("boardwright explain lists all ids.", Asked("zzzzzzzz").Error, StringComparison.Ordinal);

    static (int Code, string Out, string Error) Asked(string? id)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = new ExplainCommand(Heron.Kinds, Heron.Rules).Run(new Terminal(output, error), id);
        return (code, output.ToString(), error.ToString());
    }
}
