using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Spreads;
using Boardwright.Units;

namespace Boardwright.Tests.Spreads;

public sealed class CheckOutcomeTests
{
    [Theory]
    [InlineData("brief.top_speed_wanted", "51 km/h", "speed.wanted", true)]
    [InlineData("brief.top_speed_wanted", "80 km/h", "speed.wanted", false)]
    [InlineData("brief.range_wanted", "66 km", "cruise.range_wanted", true)]
    public void What_is_missed_by_less_than_is_known_is_said_to_be_in_doubt(string key, string wanted, string rule, bool isInDoubt)
    {
        var examination = Examination.Examine(Boards.Tern.With((key, wanted)));
        var outcome = CheckOutcome.Create(examination, Spread.Sample(examination, 64));
        var says = outcome.Findings.Single(f => f.Rule == rule && f.Level == Level.Fix).Says.In(UnitSystem.Metric);

        Assert.Equal(isInDoubt, says.Contains("within what is known of the board", StringComparison.Ordinal));
    }

    [Fact]
    public void A_range_that_is_missed_is_not_mended_by_another_brief() =>
        Assert.All(Examination.Examine(Boards.Tern.With(("brief.range_wanted", "90 km"))).Findings.Where(f => f.Rule == "cruise.range_wanted"),
            f => Assert.Null(f.Mend));
}
