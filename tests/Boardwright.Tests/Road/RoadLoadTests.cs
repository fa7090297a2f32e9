using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Road;

public sealed class RoadLoadTests
{
    // A rider of the checks: 90 kg, Crr 0.015, CdA 0.55 m2, air of 1.2 kg/m3.
    static readonly RoadLoad Rider = new(Mass.FromKilograms(90), Number.FromValue(0.015), Area.FromSquareMetres(0.55), 1.2);

    static readonly Gen<RoadLoad> Riders = Gen.Select(
        Gen.Double[40, 150], Gen.Double[0.003, 0.05], Gen.Double[0.1, 1], Gen.Double[0.8, 1.4])
        .Select((kilograms, crr, area, density) =>
        new RoadLoad(Mass.FromKilograms(kilograms), Number.FromValue(crr), Area.FromSquareMetres(area), density));

    // Recomputed by hand from F = m g Crr + rho CdA v2/2.
    [Theory]
    [InlineData(20, 23.424, 130.13, 6.507)]
    [InlineData(25, 29.153, 202.45, 8.098)]
    [InlineData(30, 36.156, 301.30, 10.043)]
    [InlineData(40, 53.980, 599.77, 14.994)]
    public void Level_road_matches_the_hand_calculation(double kilometresPerHour, double newtons, double watts, double consumption)
    {
        var speed = Speed.FromKilometresPerHour(kilometresPerHour);

        Assert.Equal(newtons, Rider.ForceAt(speed).Newtons, 0.0005);
        Assert.Equal(watts, Rider.PowerAt(speed).Watts, 0.005);
        Assert.Equal(consumption, Rider.ConsumptionAt(speed).WattHoursPerKilometre, 0.0005);
    }

    [Fact]
    public void A_grade_adds_the_sine_of_its_angle()
    {
        var (speed, grade) = (Speed.FromKilometresPerHour(20), Fraction.FromPercent(5));

        Assert.Equal(67.4825, Rider.ForceAt(speed, grade).Newtons, 0.00005);
        Assert.Equal(374.903, Rider.PowerAt(speed, grade).Watts, 0.0005);
    }

    [Theory]
    [InlineData(3, 45.8733)]
    [InlineData(-3, 18.3733)]
    [InlineData(-8, 12.8713)]
    public void A_wind_faster_than_the_board_pushes_it(double headwind, double newtons) =>
        Assert.Equal(newtons, Rider.ForceAt(Speed.FromKilometresPerHour(25), default, Speed.FromMetresPerSecond(headwind)).Newtons,
        0.00005);

    [Theory]
    [InlineData(300, 8.31749)]
    [InlineData(600, 11.11277)]
    [InlineData(1000, 13.54812)]
    [InlineData(2000, 17.49913)]
    public void Cardano_gives_the_speed_at_a_power(double watts, double speed) =>
        Assert.Equal(speed, Rider.SpeedAt(Power.FromWatts(watts))!.Value.MetresPerSecond, 0.000005);

    [Fact]
    public void Air_holds_back_as_much_as_rolling_at_23_kilometres_per_hour() =>
        Assert.Equal(6.3339, Rider.SpeedWhereDragEqualsRolling()!.Value.MetresPerSecond, 0.00005);

    [Theory]
    [InlineData(100, 9.8854)]
    [InlineData(150, 15.7035)]
    [InlineData(200, 21.6871)]
    [InlineData(300, 34.4511)]
    public void The_steepest_grade_is_exact(double newtons, double percent) =>
        Assert.Equal(percent, Rider.SteepestGrade(Force.FromNewtons(newtons))!.Value.Percent, 0.00005);

    [Fact]
    public void The_steepest_grade_takes_the_whole_force() =>
        Gen.Select(Riders, Gen.Double[-200, 400], Gen.Double[0, 15], Gen.Double[-10, 10]).Sample((rider, newtons, speed, wind) =>
        {
            var (v, w) = (Speed.FromMetresPerSecond(speed), Speed.FromMetresPerSecond(wind));
            return rider.SteepestGrade(Force.FromNewtons(newtons), v, w) is not { } grade
                || Math.Abs(rider.ForceAt(v, grade, w).Newtons - newtons) < 1e-8;
        });

    [Fact]
    public void A_force_above_the_weight_climbs_anything() =>
        Assert.Null(Rider.SteepestGrade(Rider.Weight * 1.1));

    [Fact]
    public void The_speed_at_a_power_takes_that_power_uphill_and_down() =>
        Gen.Select(Riders, Gen.Double[0, 5000], Gen.Double[-0.3, 0.3]).Sample((rider, watts, percent) =>
        {
            var grade = Fraction.FromValue(percent);
            var speed = rider.SpeedAt(Power.FromWatts(watts), grade)!.Value;
            return speed.MetresPerSecond >= 0
                && Math.Abs(rider.PowerAt(speed, grade).Watts - watts) < 1e-7 * (1 + watts + speed.MetresPerSecond * rider.Weight.Newtons);
        });

    [Fact]
    public void More_of_anything_asks_for_more_force() =>
        Gen.Select(Riders, Gen.Double[0, 15], Gen.Double[0.001, 1]).Sample((rider, speed, more) =>
        {
            var v = Speed.FromMetresPerSecond(speed);
            var force = rider.ForceAt(v);
            return rider.ForceAt(Speed.FromMetresPerSecond(speed + more)) > force
                && rider.ForceAt(v, Fraction.FromValue(more)) > force
                && rider.ForceAt(v, default, Speed.FromMetresPerSecond(more)) > force
                && (rider with { Mass = rider.Mass * (1 + more) }).ForceAt(v) > force;
        });

    // Martin's model with the inputs of table 1 of doi 10.1007/s12283-021-00345-2; watts recomputed by hand with g = 9.81 m/s2,
    // so the mass is scaled by 9.81/9.80665 here.
    [Fact]
    public void A_climbing_cyclist_takes_the_watts_of_the_model()
    {
        var cyclist = new RoadLoad(
            Mass.FromKilograms(72 * 9.81 / RoadLoad.Gravity), Number.FromValue(0.0032), Area.FromSquareMetres(0.473 + 0.0044), 1.225);
        var speed = Speed.FromMetresPerSecond(6);
        var grade = Fraction.FromPercent(7.5);

        Assert.Equal(63.160, cyclist.Drag(speed).Newtons * 6, 0.0005);
        Assert.Equal(401.67, cyclist.PowerAt(speed, grade).Watts / 0.98, 0.005);
    }

    [Fact]
    public void Turning_parts_match_the_hand_calculation()
    {
        var wheel = RotatingMass.Annulus(Mass.FromGrams(250), Length.FromMillimetres(45), Length.FromMillimetres(27.5));
        var rotor = Inertia.FromKilogramSquareMetres(2.0e-4);
        var radius = Length.FromMillimetres(45);

        Assert.Equal(3.4766e-4, wheel.KilogramSquareMetres, 0.00005e-4);
        Assert.Equal(0.68673, 4 * RotatingMass.Equivalent(wheel, radius).Kilograms, 0.000005);
        Assert.Equal(0.61728, RotatingMass.Equivalent(rotor, radius, 2.5).Kilograms, 0.000005);
    }

    [Fact]
    public void A_solid_disc_adds_half_its_mass() =>
        Assert.Equal(0.5, RotatingMass.Equivalent(RotatingMass.Disc(Mass.FromKilograms(1), Length.FromMetres(0.1)), Length.FromMetres(0.1))
        .Kilograms, 1e-15);
}
