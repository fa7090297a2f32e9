using Boardwright.Drivetrains;
using CsCheck;

namespace Boardwright.Tests.Drivetrains;

public sealed class ParallelKeyTests
{
    // DIN 6885-1, table: a shaft on the boundary belongs to the thinner step.
    [Theory]
    [InlineData(8, 2, "9.0", "6.8")]
    [InlineData(8.001, 3, "9.4", "6.2")]
    [InlineData(10, 3, "11.4", "8.2")]
    [InlineData(12, 4, "13.8", "9.5")]
    [InlineData(15, 5, "17.3", "12.0")]
    [InlineData(17, 5, "19.3", "14.0")]
    public void The_standard_key_of_a_shaft_is_that_of_DIN_6885(double shaft, double side, string hubDimension, string shaftDimension)
    {
        var d = Length.FromMillimetres(shaft);
        var size = KeySize.ForShaft(d)!;
        Assert.Equal(side, size.Width.Millimetres, 1e-9);
        Assert.Equal(side, size.Height.Millimetres, 1e-9);
        Printed.Matches(hubDimension, size.HubDimension(d).Millimetres);
        Printed.Matches(shaftDimension, size.ShaftDimension(d).Millimetres);
        Assert.True(size.Shortest < size.Longest);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(6)]
    [InlineData(22.1)]
    [InlineData(double.NaN)]
    public void A_shaft_outside_of_the_table_has_no_standard_key(double shaft) =>
        Assert.Null(KeySize.ForShaft(Length.FromMillimetres(shaft)));

    [Fact]
    public void Both_parts_of_a_standard_keyway_leave_the_key_a_little_room() =>
        Assert.All(KeySize.All, static size => Assert.InRange((size.ShaftDepth + size.HubDepth - size.Height).Millimetres, 0.05, 0.35));

    [Fact]
    public void Stress_matches_the_hand_calculation()
    {
        var (torque, d) = (Torque.FromNewtonMetres(3), Length.FromMillimetres(8));
        var key = KeySize.ForShaft(d)!.Key(Length.FromMillimetres(10));
        Assert.Equal(750, ParallelKey.Load(torque, d).Newtons, 1e-9);
        Assert.Equal(37.5, key.Shear(torque, d).Megapascals, 1e-9);
        Assert.Equal(93.75, key.HubBearing(torque, d).Megapascals, 1e-9);
        Assert.Equal(75, key.HalfHeightBearing(torque, d).Megapascals, 1e-9);
    }

    [Fact]
    public void A_key_of_the_needed_length_is_stressed_just_as_allowed() =>
        Gen.Select(Gen.Double[0.5, 20], Gen.Double[6.1, 22], Gen.Double[50, 400]).Sample((newtonMetres, shaft, allowable) =>
        {
            var (torque, d, stress) =
                (Torque.FromNewtonMetres(newtonMetres), Length.FromMillimetres(shaft), Pressure.FromMegapascals(allowable));
            var size = KeySize.ForShaft(d)!;
            var load = ParallelKey.Load(torque, d);
            return Math.Abs(size.Key(ParallelKey.LengthFor(load, size.Width, stress)).Shear(torque, d) / stress - 1) < 1e-12
                && Math.Abs(size.Key(ParallelKey.LengthFor(load, size.Height - size.ShaftDepth, stress)).HubBearing(torque, d) / stress - 1)
                < 1e-12
                && Math.Abs(size.Key(ParallelKey.LengthFor(load, size.Height / 2, stress)).HalfHeightBearing(torque, d) / stress - 1)
                < 1e-12;
        });

    [Fact]
    public void Allowable_stress_falls_with_safety()
    {
        var yield = Pressure.FromMegapascals(300);
        Assert.Equal(75, ParallelKey.AllowableShear(yield, 2).Megapascals, 1e-9);
        Assert.Equal(86.55, ParallelKey.AllowableShearByDistortion(yield, 2).Megapascals, 1e-9);
        Assert.Equal(150, ParallelKey.AllowableBearing(yield, 2).Megapascals, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => ParallelKey.AllowableBearing(yield, 0));
    }

    [Fact]
    public void Impossible_keys_are_refused()
    {
        var (two, one, ten) = (Length.FromMillimetres(2), Length.FromMillimetres(1), Length.FromMillimetres(10));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ParallelKey(two, one, one, ten));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ParallelKey(two, two, one, Length.FromMetres(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ParallelKey.Load(Torque.FromNewtonMetres(1), Length.FromMetres(0)));
    }

    // SPS set screw chart: #0, 50 lbf, shaft 1/8 in, 3.1 lbf·in.
    [Fact]
    public void A_set_screw_holds_what_the_chart_says_and_far_less_when_shaken()
    {
        Printed.Matches("3.1", SetScrew.HoldingTorque(SetScrew.HoldingForce(Length.FromInches(0.060))!.Value, Length.FromInches(0.125))
            .PoundForceInches);
        var (least, greatest) = SetScrew.DynamicTorque(Force.FromNewtons(1713), Length.FromMillimetres(8));
        Printed.Matches("0.86", least.NewtonMetres);
        Printed.Matches("1.71", greatest.NewtonMetres);
    }

    [Fact]
    public void A_thicker_set_screw_holds_more_and_one_outside_of_the_table_is_not_guessed()
    {
        Gen.Select(Gen.Double[1.6, 25], Gen.Double[0.01, 0.3]).Sample((d, more) =>
            SetScrew.HoldingForce(Length.FromMillimetres(d))!.Value < SetScrew.HoldingForce(Length.FromMillimetres(d + more))!.Value);
        Assert.Null(SetScrew.HoldingForce(Length.FromMillimetres(1)));
        Assert.Null(SetScrew.HoldingForce(Length.FromMillimetres(30)));
    }

    // Ruland, metric hardware torque chart.
    [Fact]
    public void Seating_torque_is_the_charts()
    {
        Assert.Equal(2.2, SetScrew.SeatingTorque(Length.FromMillimetres(4))!.Value.NewtonMetres);
        Assert.Equal(1.76, SetScrew.SeatingTorque(Length.FromMillimetres(4), isStainless: true)!.Value.NewtonMetres);
        Assert.Null(SetScrew.SeatingTorque(Length.FromMillimetres(4.2)));
        Assert.Null(SetScrew.SeatingTorque(Length.FromMillimetres(8), isStainless: true));
    }

    // ISO 286 for 8 mm: H7 +15/0, h6 0/-9, m6 +15/+6.
    [Fact]
    public void Fits_are_those_of_ISO_286()
    {
        var eight = Length.FromMillimetres(8);
        var fit = new CylindricalFit(ToleranceZone.Parse("H7", eight)!, ToleranceZone.Parse("m6", eight)!);
        Assert.Equal(-15, fit.LeastClearance.Micrometres, 1e-9);
        Assert.Equal(9, fit.GreatestClearance.Micrometres, 1e-9);
        Assert.Equal(ToleranceZone.Parse("h6", eight), ToleranceZone.Parse("h6", Length.FromMillimetres(10)));
        Assert.NotEqual(ToleranceZone.Parse("h6", eight), ToleranceZone.Parse("h6", Length.FromMillimetres(10.1)));
        Assert.Null(ToleranceZone.Parse("h6", Length.FromMillimetres(6)));
        Assert.Null(ToleranceZone.Parse("h7", Length.FromMillimetres(12)));
        Assert.Null(ToleranceZone.Parse("z9", eight));
    }
}
