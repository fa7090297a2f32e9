using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Road;

public sealed class BrakingTests
{
    static Acceleration Of(double value) => Acceleration.FromMetresPerSecondSquared(value);

    static Duration Seconds(double value) => Duration.FromSeconds(value);

    static Speed Kmh(double value) => Speed.FromKilometresPerHour(value);

    // UK Highway Code, rule 126, braking parts of the stopping distances in metres; v²/2s worked out by hand, 1 % for the rounding of the
    // metres.
    [Theory]
    [InlineData(20, 6, 6.66)]
    [InlineData(30, 14, 6.42)]
    [InlineData(40, 24, 6.66)]
    [InlineData(50, 38, 6.57)]
    [InlineData(60, 55, 6.54)]
    [InlineData(70, 75, 6.53)]
    public void The_highway_code_brakes_at_two_thirds_of_gravity(double mph, double metres, double needed) =>
        Assert.Equal(needed, Braking.Needed(Speed.FromMilesPerHour(mph), Length.FromMetres(metres)).MetresPerSecondSquared, 0.01 * needed);

    // AASHTO, Guide for the Development of Bicycle Facilities: 20 mi/h on the level, 127 ft or 38.7 m.
    [Fact]
    public void Sight_distance_matches_Aashto()
    {
        var speed = Speed.FromMilesPerHour(20);

        Assert.Equal("127", Braking.SightDistanceInFeet(speed, 0.25)!.Value.Feet.ToString(
            "F0", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(38.7, Braking.SightDistanceInFeet(speed, 0.25)!.Value.Metres, 0.003 * 38.7);
        Assert.Equal(35.007, Braking.SightDistance(Kmh(30), 0.25, Seconds(2.5))!.Value.Metres, 0.0005);
        Assert.Equal(38.55, Braking.SightDistance(Kmh(30), 0.25, Seconds(2.5), Fraction.FromPercent(-5))!.Value.Metres, 0.005);
    }

    [Theory]
    [InlineData(25, 2.0, 0, 19.0008)]
    [InlineData(25, 3.5, 0, 13.8338)]
    [InlineData(40, 2.5, 0, 35.8025)]
    [InlineData(25, 2.0, -6, 24.0134)]
    public void Stopping_distance_matches_the_hand_calculation(double speed, double braking, double percent, double metres) =>
        Assert.Equal(metres, Braking.StoppingDistance(Kmh(speed), Seconds(1), Of(braking), Fraction.FromPercent(percent))!.Value.Metres,
        0.00005);

    [Fact]
    public void A_ramp_adds_two_metres()
    {
        Assert.Equal(11.7745, Braking.StoppingDistance(Kmh(25), default, Of(2.5), 4.0)!.Value.Metres, 0.00005);
        Assert.Equal(9.6451, Braking.StoppingDistance(Kmh(25), default, Of(2.5))!.Value.Metres, 0.00005);
    }

    [Fact]
    public void A_ramp_follows_Newton_step_by_step() =>
        Gen.Select(Gen.Double[0.5, 14], Gen.Double[1, 6], Gen.Double[0.5, 20], Gen.Double[-0.08, 0.08]).Sample(
            (speed, braking, jerk, percent) =>
            {
                var way = Braking.StoppingDistance(
                    Speed.FromMetresPerSecond(speed), default, Of(braking), jerk, Fraction.FromValue(percent))!.Value.Metres;
                var slope = RoadLoad.Gravity * percent / Math.Sqrt(1 + percent * percent);
                var (v, s, t) = (speed, 0.0, 0.0);
                const double step = 1e-4;
                while (v > 0)
                {
                    v -= step * (Math.Min(jerk * (t + step / 2), braking) + slope);
                    s += step * Math.Max(0, v + step / 2 * (Math.Min(jerk * t, braking) + slope));
                    t += step;
                }

                return Math.Abs(way - s) < 0.005;
            },
            iter: 50);

    [Fact]
    public void A_very_quick_ramp_is_no_ramp() =>
        Assert.Equal(
            Braking.StoppingDistance(Kmh(30), Seconds(1), Of(3))!.Value.Metres,
            Braking.StoppingDistance(Kmh(30), Seconds(1), Of(3), 1e7)!.Value.Metres, 1e-5);

    [Fact]
    public void A_brake_weaker_than_the_slope_does_not_stop()
    {
        Assert.Null(Braking.StoppingDistance(Kmh(20), Seconds(1), Of(1), Fraction.FromPercent(-20)));
        Assert.Null(Braking.StoppingDistance(Kmh(20), Seconds(1), Of(1), 4, Fraction.FromPercent(-20)));
    }

    [Theory]
    [InlineData(0.375, 1.05, 1.7335)]
    [InlineData(0.45, 0.85, 2.2967)]
    public void Rear_wheels_alone_brake_little(double behindFront, double height, double limit) =>
        Assert.Equal(limit, new GripLimits(Length.FromMetres(0.75), Length.FromMetres(behindFront), Length.FromMetres(height))
        .RearBraking(0.7).MetresPerSecondSquared, 0.00005);

    [Fact]
    public void A_standing_rider_falls_at_a_quarter_of_gravity() =>
        Assert.Equal(2.5807, GripLimits.StandingRider(Length.FromMetres(0.25), Length.FromMetres(0.95)).MetresPerSecondSquared, 0.00005);

    // Moments about the front contact: N_r L = m (g l_f − a h), and a = mu N_r/m.
    [Fact]
    public void Rear_braking_keeps_the_balance_of_moments() =>
        Gen.Select(Gen.Double[0.5, 1], Gen.Double[0.1, 0.4], Gen.Double[0.5, 1.2], Gen.Double[0.1, 1])
        .Sample((wheelbase, front, height, grip) =>
        {
            var a = new GripLimits(Length.FromMetres(wheelbase), Length.FromMetres(front), Length.FromMetres(height)).RearBraking(grip)
                .MetresPerSecondSquared;
            return Math.Abs(grip * (RoadLoad.Gravity * front - a * height) / wheelbase - a) < 1e-12;
        });

    [Fact]
    public void Front_braking_never_tips_the_board() =>
        Gen.Select(Gen.Double[0.5, 1], Gen.Double[0.1, 0.4], Gen.Double[0.5, 1.2], Gen.Double[0.1, 1])
        .Sample((wheelbase, front, height, grip) =>
        {
            var limits = new GripLimits(Length.FromMetres(wheelbase), Length.FromMetres(front), Length.FromMetres(height));
            return limits.FrontBraking(grip) <= limits.TippingForward && limits.AllWheelBraking(grip) <= limits.TippingForward
                && limits.RearBraking(grip) <= limits.TippingForward;
        });

    // Energy: braking power on a descent is the work of gravity less rolling and air; check the magnitude once by hand.
    [Fact]
    public void A_descent_of_8_percent_takes_287_watts_of_braking()
    {
        var rider = new RoadLoad(Mass.FromKilograms(90), Number.FromValue(0.015), Area.FromSquareMetres(0.55), 1.2);

        Assert.Equal(-286.6, rider.PowerAt(Kmh(25), Fraction.FromPercent(-8)).Watts, 0.05);
    }
}
