using System.Text.RegularExpressions;
using Boardwright.App.Commands;
using Boardwright.Rules;

namespace Boardwright.Tests.House;

public sealed partial class CatalogueTests
{
    [Fact]
    public void Figure_ids_are_dotted_and_each_is_there_once()
    {
        Assert.All(ExplainCommand.Figures, kind => Assert.Matches(Dotted(), kind.Id));
        Assert.Empty(ExplainCommand.Figures.GroupBy(k => k.Id).Where(g => g.Count() > 1).Select(g => g.Key));
    }

    [Fact]
    public void Rule_ids_are_dotted_and_each_is_there_once()
    {
        Assert.All(Rulebook.All, rule => Assert.Matches(Dotted(), rule.Id));
        Assert.Empty(Rulebook.All.GroupBy(r => r.Id).Where(g => g.Count() > 1).Select(g => g.Key));
    }

    [Fact]
    public void No_rule_is_called_like_a_figure() =>
        Assert.Empty(Rulebook.All.Select(r => r.Id).Intersect(ExplainCommand.Figures.Select(k => k.Id)));

    [Fact]
    public void Every_figure_says_what_it_is_and_where_it_comes_from() =>
        Assert.Empty(ExplainCommand.Figures.Where(k => Blank(k.Title) || Blank(k.Meaning) || Blank(k.Equation) || Blank(k.Source.Text))
        .Select(k => k.Id));

    [Fact]
    public void Every_rule_states_claim_reason_place_and_source() =>
        Assert.Empty(Rulebook.All.Where(r => Blank(r.Claim) || Blank(r.Why) || Blank(r.Where) || Blank(r.Source.Text)).Select(r => r.Id));

    static bool Blank(string text) => string.IsNullOrWhiteSpace(text);

    [GeneratedRegex("^[a-z][a-z0-9_]*(\\.[a-z0-9_]+)+$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Dotted();
}
