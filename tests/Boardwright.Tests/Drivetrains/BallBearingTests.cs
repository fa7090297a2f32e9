using Boardwright.Drivetrains;
using CsCheck;

namespace Boardwright.Tests.Drivetrains;

public sealed class BallBearingTests
{
    // Worked example: C 16 kN, P 2 kN, 512 million turns.
    [Fact]
    public void Life_matches_the_worked_examples()
    {
        Printed.Matches("512", BallBearing.MillionTurns(Force.FromKilonewtons(16), Force.FromKilonewtons(2)));
        Printed.Matches("422", BallBearing.MillionTurns(Force.FromKilonewtons(30), Force.FromKilonewtons(4)));
        Printed.Matches("11111", BallBearing.Time(1000, AngularSpeed.FromRpm(1500)).Hours);
    }

    // SKF General Catalogue, p. 302.
    [Theory]
    [InlineData("608")]
    [InlineData("608-2RS")]
    [InlineData(" 608ZZ")]
    public void A_bearing_is_found_by_its_number_whatever_its_seals(string name)
    {
        var bearing = BallBearing.Parse(name)!;
        Assert.Equal((8.0, 22.0, 7.0),
            (Math.Round(bearing.Bore.Millimetres, 9), Math.Round(bearing.OutsideDiameter.Millimetres, 9),
            Math.Round(bearing.Width.Millimetres, 9)));
        Printed.Matches("3.45", bearing.DynamicRating.Kilonewtons);
    }

    [Fact]
    public void An_unknown_bearing_is_not_guessed()
    {
        Assert.Null(BallBearing.Parse("609"));
        Assert.Null(BallBearing.Parse(""));
        Assert.Null(BallBearing.Parse("skate"));
        Assert.Equal("NTN", BallBearing.Parse("6900")!.Maker);
        Assert.Equal("SKF", BallBearing.Parse("6000")!.Maker);
    }

    // 608, 200 N radial and 100 N axial, by hand from the ISO 281 factors: f₀ Fa / C₀ = 0.876, e = 0.271, Y = 1.622.
    [Fact]
    public void Axial_load_counts_once_it_is_more_than_the_threshold()
    {
        var bearing = BallBearing.Parse("608")!;
        Printed.Matches("274.2", bearing.EquivalentLoad(Force.FromNewtons(200), Force.FromNewtons(100))!.Value.Newtons);
        Assert.Equal(Force.FromNewtons(200), bearing.EquivalentLoad(Force.FromNewtons(200), Force.FromNewtons(30)));
        Assert.Equal(Force.FromNewtons(200), bearing.EquivalentLoad(Force.FromNewtons(200), Force.FromNewtons(0)));
        Assert.Null(BallBearing.Parse("6900")!.EquivalentLoad(Force.FromNewtons(200), Force.FromNewtons(100)));
        Assert.Throws<ArgumentOutOfRangeException>(() => bearing.EquivalentLoad(Force.FromNewtons(-1), Force.FromNewtons(0)));
    }

    [Fact]
    public void Twice_the_load_lasts_an_eighth() =>
        Gen.Double[10, 1000].Sample(newtons =>
        {
            var bearing = BallBearing.Parse("608")!;
            return Math.Abs(bearing.MillionTurns(Force.FromNewtons(newtons)) / bearing.MillionTurns(Force.FromNewtons(2 * newtons)) - 8)
                < 1e-9;
        });

    [Fact]
    public void Life_as_time_and_as_way_agree_at_a_speed()
    {
        var (road, wheel) = (Speed.FromKilometresPerHour(30), Length.FromMillimetres(90));
        var hours = BallBearing.Time(328.5, Gearing.WheelSpeed(road, wheel)).Hours;
        Assert.Equal(BallBearing.Way(328.5, wheel).Kilometres, 30 * hours, 1e-6);
    }

    [Fact]
    public void Static_load_is_never_below_the_radial_one()
    {
        Assert.Equal(Force.FromNewtons(200), BallBearing.StaticLoad(Force.FromNewtons(200), Force.FromNewtons(100)));
        Printed.Matches("320", BallBearing.StaticLoad(Force.FromNewtons(200), Force.FromNewtons(400)).Newtons);
        Printed.Matches("342.5", BallBearing.Parse("608")!.AxialLimit.Newtons);
    }

    [Fact]
    public void A_bearing_without_a_load_has_no_life_to_count() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BallBearing.Parse("608")!.MillionTurns(Force.FromNewtons(0)));
}
