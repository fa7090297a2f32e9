using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Spreads;

namespace Boardwright.Tests.Spreads;

public sealed class ClaimTests
{
    [Theory]
    [InlineData(45, 56.9, 76.7, true, "at least 45 km")]
    [InlineData(56.9, 56.9, 76.7, true, "at least 56.9 km")]
    [InlineData(60, 56.9, 76.7, false, "at least 56 km")]
    [InlineData(15, 11.97, 19.1, false, "at least 11 km")]
    [InlineData(200, 132.4, 160, false, "at least 130 km")]
    public void A_range_is_promised_only_as_far_as_its_lower_end(double asked, double low, double high, bool isSupported, string words)
    {
        var claim = Of(Catalogue.Range, true, asked, low, high);

        Assert.Equal(isSupported, claim.IsSupported);
        Assert.Equal(words, claim.Words);
    }

    [Theory]
    [InlineData(5.5, 4.6, 5.48, true, "at most 5.5 h")]
    [InlineData(5.0, 4.6, 5.48, false, "at most 5.5 h")]
    [InlineData(10.0, 9.1, 10.2, false, "at most 11 h")]
    public void A_charge_is_promised_only_as_short_as_its_upper_end(double asked, double low, double high, bool isSupported, string words)
    {
        var claim = Of(Catalogue.ChargeFull, false, asked, low, high);

        Assert.Equal(isSupported, claim.IsSupported);
        Assert.Equal(words, claim.Words);
    }

    [Fact]
    public void A_figure_without_an_interval_bears_out_nothing()
    {
        var claim = new Claim { Kind = Catalogue.Range, Conditions = default, IsAtLeast = true, Asked = 10, Value = 60 };

        Assert.False(claim.IsSupported);
        Assert.Null(claim.Words);
    }

    [Fact]
    public void What_a_promise_says_never_goes_beyond_the_unfavourable_end()
    {
        for (var end = 0.013; end < 5000; end *= 1.037)
        {
            Assert.True(Of(Catalogue.Range, true, null, end, end * 2).MayPromise <= end);
            Assert.True(Of(Catalogue.ChargeFull, false, null, end / 2, end).MayPromise >= end);
            Assert.InRange(Of(Catalogue.Range, true, null, end, end * 2).MayPromise!.Value, end * 0.9, end);
        }
    }

    [Fact]
    public void The_brief_is_what_is_asked_of_a_board()
    {
        var examination = Examination.Examine(Boards.Tern);
        var claims = Claim.ListClaims(examination, new Dictionary<string, Interval>(StringComparer.Ordinal));

        Assert.Equal(45, claims.Single(c => c.Kind.Id == "cruise.range").Asked!.Value, 1e-9);
        Assert.Equal(40, claims.Single(c => c.Kind.Id == "speed.top_full").Asked!.Value, 1e-9);
        Assert.Equal(8, claims.Single(c => c.Kind.Id == "climb.grade_at_climb_speed").Asked!.Value, 1e-9);
        Assert.All(claims, c => Assert.False(c.Conditions.IsEmpty));
    }

    static Claim Of(FigureKind kind, bool isAtLeast, double? asked, double low, double high) =>
        new()
        {
            Kind = kind,
            Conditions = default,
            IsAtLeast = isAtLeast,
            Asked = asked,
            Value = (low + high) / 2,
            Interval = new Interval(low, high, [])
        };
}
