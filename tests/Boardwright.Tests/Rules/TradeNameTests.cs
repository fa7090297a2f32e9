using Boardwright.Parts;

namespace Boardwright.Tests.Rules;

public sealed class TradeNameTests
{
    [Theory]
    [InlineData("XT90", "xt-90")]
    [InlineData("round 3-pin", "Round_3 pin")]
    [InlineData("53.975 × 41.275", "53.975x41.275")]
    [InlineData("six spokes 44", "Six-spokes-44")]
    public void What_makes_no_difference_is_passed_over(string a, string b)
    {
        Assert.True(TradeName.Same(a, b));
        Assert.True(TradeName.Comparer.Equals(a, b));
        Assert.Equal(TradeName.Comparer.GetHashCode(a), TradeName.Comparer.GetHashCode(b));
    }

    [Theory]
    [InlineData("XT90", "XT60")]
    [InlineData("bullet 5.5 mm", "bullet 55 mm")]
    public void What_makes_a_difference_is_not(string a, string b) => Assert.False(TradeName.Same(a, b));

    // The classic pairs of Levenshtein's and Damerau's measures.
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("teeth", "teeth", 0)]
    [InlineData("teeht", "teeth", 1)]
    [InlineData("", "abc", 3)]
    public void Slips_are_counted(string a, string b, int slips) => Assert.Equal(slips, TradeName.Slips(a, b));

    [Fact]
    public void The_nearest_names_come_first()
    {
        Assert.Equal("XT90", TradeName.Near("XT9", UsualPlugs.Names)[0]);
        Assert.Empty(TradeName.Near("something else", UsualPlugs.Names));
    }

    [Theory]
    [InlineData("4 mm bullet", 40)]
    [InlineData("bullet 4mm", 40)]
    [InlineData("xt-60", 30)]
    public void A_board_without_a_shelf_knows_the_usual_plugs(string name, double amperes)
    {
        var plug = new Board().PlugCalled(name);

        Assert.Equal(amperes, plug.CurrentContinuous.Value.Amperes);
        Assert.StartsWith("plug ", plug.CurrentContinuous.Key, StringComparison.Ordinal);
    }

    [Fact]
    public void The_shelf_wins_over_the_usual_plugs_in_any_spelling() =>
        Assert.Equal(60, Boards.Tern.PlugCalled("Bullet_4-MM").CurrentContinuous.Value.Amperes);

    [Fact]
    public void Of_a_plug_that_nobody_describes_nothing_is_known()
    {
        Assert.False(Boards.Tern.KnowsPlug("XT9"));
        Assert.False(Boards.Tern.PlugCalled("XT9").CurrentContinuous.IsKnown);
    }
}
