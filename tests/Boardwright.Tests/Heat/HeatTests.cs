using Boardwright.Heat;
using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Heat;

public sealed class ConvectionTests
{
    // Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, Example 7.3: Re 6071, Pr 0.70, Nu 40.6 by Churchill and Bernstein;
    // more digits from the open library `ht`, which computes the same example.
    [Fact]
    public void Cylinder_across_a_stream_matches_Incropera_example_7_3() =>
        Assert.Equal(40.63709, Convection.CylinderInCrossFlow(6071, 0.7), 0.000005);

    [Theory]
    [InlineData(1e4, 53.6304, 0.00005)]
    [InlineData(1e5, 215.346, 0.0005)]
    public void Cylinder_across_a_stream_matches_the_hand_calculation(double reynolds, double nusselt, double tolerance) =>
        Assert.Equal(nusselt, Convection.CylinderInCrossFlow(reynolds, 0.71), tolerance);

    // `ht` library: laminar plate at Re 1e5, Pr 0.7.
    [Fact]
    public void Flat_plate_matches_the_library() =>
        Assert.Equal(186.4379, Convection.FlatPlate(1e5, 0.7), 0.00005);

    [Fact]
    public void Flat_plate_turns_turbulent() =>
        Assert.Equal(1305.64, Convection.FlatPlate(1e6, 0.71), 0.005);

    // Incropera, Example 9.2: Gr 2.63e9, Pr 0.69, Nu 147; digits from `ht`.
    [Fact]
    public void Vertical_plate_matches_Incropera_example_9_2() =>
        Assert.Equal(147.16185, Convection.VerticalPlate(0.69 * 2.63e9, 0.69), 0.000005);

    // `ht` library, same numbers for the horizontal cylinder.
    [Fact]
    public void Horizontal_cylinder_matches_the_library() =>
        Assert.Equal(139.13494, Convection.HorizontalCylinder(0.69 * 2.63e9, 0.69), 0.000005);

    // `ht` library: McAdams' plates at Pr 5.54, Gr 3.21e8.
    [Fact]
    public void Horizontal_plates_match_the_library()
    {
        Assert.Equal(181.73121, Convection.PlateFacingUp(5.54 * 3.21e8), 0.000005);
        Assert.Equal(55.44565, Convection.PlateFacingDown(5.54 * 3.21e8), 0.000005);
    }

    [Theory]
    [InlineData(1e6, 17.076, 0.0005)]
    [InlineData(1e8, 69.624, 0.0005)]
    public void Plates_that_face_up_match_the_hand_calculation(double rayleigh, double nusselt, double tolerance) =>
        Assert.Equal(nusselt, Convection.PlateFacingUp(rayleigh), tolerance);

    // `ht` library: 1451.6 and 816.78 W/m2.
    [Theory]
    [InlineData(1, 0, 1451.6, 0.05)]
    [InlineData(0.85, 305, 816.78, 0.005)]
    public void Radiation_matches_the_library(double emissivity, double surroundings, double watts, double tolerance) =>
        Assert.Equal(watts, Radiation.WattsPerSquareMetre(emissivity, Temperature.FromKelvins(400), Temperature.FromKelvins(surroundings)),
        tolerance);
}

public sealed class CanTests
{
    static readonly Can Can = new(Length.FromMillimetres(63), Length.FromMillimetres(74));
    static readonly Air Air = Air.At(default, Temperature.FromCelsius(25));

    // A can of 63 x 74 mm at 80 °C in air of 25 °C at 25 km/h, recomputed by hand: Re 24134, Nu 88.04, h 39.43; emissivity 0.9: 7.10 W/(m2
    // K);
    // side alone 1.467 K/W, in still air 5.10 K/W.
    [Fact]
    public void A_can_matches_the_hand_calculation()
    {
        var hot = Temperature.FromCelsius(80);
        var speed = Speed.FromKilometresPerHour(25);
        var film = Convection.Film(Air, hot);
        var grey = Can with { Emissivity = 0.9 };
        var (forced, radiated) = (grey.ForcedWattsPerSquareMetreKelvin(speed, hot, Air), grey.RadiationWattsPerSquareMetreKelvin(hot, Air));

        Assert.Equal(24134, Convection.Reynolds(speed, Can.Diameter, film), 0.5);
        Assert.Equal(88.04, Convection.CylinderInCrossFlow(24134, film.Prandtl), 0.003 * 88.04);
        Assert.Equal(39.43, forced, 0.003 * 39.43);
        Assert.Equal(7.10, radiated, 0.005);
        Assert.Equal(1.467, 1 / ((forced + radiated) * Can.Side.SquareMetres), 0.003 * 1.467);
        Assert.Equal(5.10, 1 / ((grey.NaturalWattsPerSquareMetreKelvin(hot, Air) + radiated) * Can.Side.SquareMetres), 0.003 * 5.10);
    }

    [Fact]
    public void The_end_helps_in_proportion_to_its_area()
    {
        var hot = Temperature.FromCelsius(80);
        var speed = Speed.FromKilometresPerHour(25);
        var coefficient = Can.ForcedWattsPerSquareMetreKelvin(speed, hot, Air) + Can.RadiationWattsPerSquareMetreKelvin(hot, Air);

        Assert.Equal(
            1 / (coefficient * Math.PI * 0.063 * (0.074 + 0.063 / 4)), Can.ToAir(speed, hot, Air).KelvinsPerWatt, 1e-12);
    }

    [Fact]
    public void A_faster_wind_never_cools_less() =>
        Gen.Select(Gen.Double[0, 20], Gen.Double[0.01, 5], Gen.Double[25, 150]).Sample((speed, more, celsius) =>
        {
            var hot = Temperature.FromCelsius(celsius);
            return Can.ToAir(Speed.FromMetresPerSecond(speed + more), hot, Air) <= Can.ToAir(Speed.FromMetresPerSecond(speed), hot, Air);
        });

    [Fact]
    public void Still_air_cools_by_itself() =>
        Assert.InRange(Can.ToAir(default, Temperature.FromCelsius(80), Air).KelvinsPerWatt, 3, 6);

    [Fact]
    public void The_can_of_a_riding_board_feels_half_its_speed() =>
        Assert.Equal(Speed.FromMetresPerSecond(3), CanCooling.Riding(Can, Speed.FromMetresPerSecond(6), Air).AirSpeed);
}

public sealed class TwoNodeTests
{
    // 12 V motor 118743: winding to case 3.1 K/W, case to air 14 K/W, winding 12.0 s, motor 612 s.
    static readonly TwoNode Small = new(
        HeatCapacity.FromJoulesPerKelvin(12 / 3.1), HeatCapacity.FromJoulesPerKelvin(612 / 14.0),
        ThermalResistance.FromKelvinsPerWatt(3.1));

    static readonly FixedCooling Room = new(ThermalResistance.FromKelvinsPerWatt(14), Temperature.FromCelsius(20));

    static readonly TwoNode Large = new(
        HeatCapacity.FromJoulesPerKelvin(57.75), HeatCapacity.FromJoulesPerKelvin(276), ThermalResistance.FromKelvinsPerWatt(0.48));
    static readonly CanCooling Wind = CanCooling.Riding(
        new Can(Length.FromMillimetres(63), Length.FromMillimetres(74)), Speed.FromKilometresPerHour(12),
        Air.At(default, Temperature.FromCelsius(25)));

    static MotorHeat Heat(double copper, double drag = 0) => new(Power.FromWatts(copper), Power.FromWatts(drag));

    // Recomputed by hand; at 12 s the hand calculation was rounded to 3.9747 where the closed form gives 3.97464.
    [Theory]
    [InlineData(12, 3.9746, 0.1957)]
    [InlineData(60, 7.6799, 1.9808)]
    [InlineData(600, 22.4048, 16.4170)]
    [InlineData(1e6, 34.2, 28.0)]
    public void Two_watts_warm_the_small_motor_as_in_the_hand_calculation(double seconds, double winding, double body)
    {
        var after = Small.AfterAtConstantLoss(Power.FromWatts(2), default, Room, Duration.FromSeconds(seconds));

        Assert.Equal(winding, (after.Winding - Room.Ambient).Kelvins, 0.00005);
        Assert.Equal(body, (after.Case - Room.Ambient).Kelvins, 0.00005);
    }

    [Fact]
    public void The_small_motor_has_these_time_constants()
    {
        var (fast, slow) = Small.TimeConstants(Room.Resistance);

        Assert.Equal(11.007, fast.Seconds, 0.0005);
        Assert.Equal(667.19, slow.Seconds, 0.005);
    }

    [Fact]
    public void The_small_motor_settles_hotter_for_its_copper_s_own_rise()
    {
        var settled = Small.Settled(Heat(1.24 * 1.24 * 2.18), Room)!.Value;

        Assert.Equal(73.985, (settled.Winding - Room.Ambient).Kelvins, 0.0005);
    }

    // Motor 118743, maker's sheet: 1.24 A at 75 K of rise, 2.18 ohm at 20 °C.
    [Fact]
    public void The_current_that_the_small_motor_bears_matches_its_sheet()
    {
        var amperes = Boardwright.Numerics.RootFinding.Within(
            i => (Small.Settled(Heat(i * i * 2.18), Room)!.Value.Winding - Room.Ambient).Kelvins - 75, 0.5, 1.5, 1e-12);

        Assert.Equal(1.2466, amperes, 0.00005);
        Assert.Equal(1.24, amperes, 0.0124);
    }

    [Fact]
    public void A_motor_settles_where_heat_in_is_heat_out() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[0, 40]).Sample((copper, drag) =>
        {
            if (Large.Settled(Heat(copper, drag), Wind) is not { } settled)
                return false;
            var made = Heat(copper, drag).Copper(settled.Winding).Watts;
            var away = (settled.Case - Wind.Ambient).Kelvins / Wind.At(settled.Case).KelvinsPerWatt;
            return Math.Abs(made + drag - away) < 1e-6
                && Math.Abs(made * Large.WindingToCase.KelvinsPerWatt - (settled.Winding - settled.Case).Kelvins) < 1e-6;
        });

    [Fact]
    public void The_root_and_the_closed_form_agree_where_the_resistance_is_constant() =>
        Gen.Select(Gen.Double[0, 200], Gen.Double[0, 40], Gen.Double[0.3, 4]).Sample((copper, drag, resistance) =>
        {
            var cooling = new FixedCooling(ThermalResistance.FromKelvinsPerWatt(resistance), Temperature.FromCelsius(18));
            var (closed, root) = (Large.Settled(Heat(copper, drag), cooling), Large.Settled<FixedCooling>(Heat(copper, drag), cooling));
            return closed is null
                ? root is null
                : root is not null && Math.Abs((closed.Value.Winding - root.Value.Winding).Kelvins) < 1e-5;
        });

    [Fact]
    public void Too_much_current_runs_away()
    {
        // 1 − 0.00393 · 20 W · 17.1 K/W is below 0.
        Assert.Null(Small.Settled(Heat(20), Room));
        Assert.Null(Large.Settled(Heat(600), Wind));
    }

    [Fact]
    public void Steps_follow_the_closed_form_and_converge_at_fourth_order()
    {
        // A hot winding's loss is linear in its temperature, so without copper loss only the case's constant loss is left to follow.
        var time = Duration.FromSeconds(60);
        var exact = Small.AfterAtConstantLoss(default, Power.FromWatts(3), Room, time);
        double Error(int steps) => Math.Abs(
            (Small.After(new(Room.Ambient, Room.Ambient), Heat(0, 3), Room, time, steps).Winding - exact.Winding).Kelvins);

        Assert.InRange(Error(16) / Error(32), 14, 20);
        Assert.InRange(Error(32) / Error(64), 15, 18);
    }

    [Fact]
    public void After_a_long_time_the_motor_has_settled()
    {
        var heat = Heat(40, 8);
        var settled = Large.Settled(heat, Wind)!.Value;
        var after = Large.After(new(Wind.Ambient, Wind.Ambient), heat, Wind, Duration.FromHours(4));

        Assert.Equal(settled.Winding.Kelvins, after.Winding.Kelvins, 1e-3);
        Assert.Equal(settled.Case.Kelvins, after.Case.Kelvins, 1e-3);
    }

    // All the heat made is either in the bodies or gone, each counted by itself with steps of a second.
    [Fact]
    public void Energy_is_kept()
    {
        var heat = Heat(60, 10);
        var state = new MotorTemperatures(Wind.Ambient, Wind.Ambient);
        var net = 0.0;
        for (var second = 0; second < 900; second++)
        {
            var middle = Large.After(state, heat, Wind, Duration.FromSeconds(0.5), 1);
            var end = Large.After(state, heat, Wind, Duration.FromSeconds(1), 1);
            net += (Net(state) + 4 * Net(middle) + Net(end)) / 6;
            state = end;
        }

        var stored = (state.Winding - Wind.Ambient).Kelvins * Large.WindingCapacity.JoulesPerKelvin
            + (state.Case - Wind.Ambient).Kelvins * Large.CaseCapacity.JoulesPerKelvin;
        Assert.Equal(stored, net, 1e-4 * stored);

        double Net(MotorTemperatures at) => heat.Copper(at.Winding).Watts + heat.Case.Watts
            - (at.Case - Wind.Ambient).Kelvins / Wind.At(at.Case).KelvinsPerWatt;
    }

    [Fact]
    public void At_the_time_to_the_limit_the_winding_is_there() =>
        Gen.Select(Gen.Double[20, 300], Gen.Double[0, 40], Gen.Double[60, 160]).Sample(
            (copper, drag, celsius) =>
            {
                var (heat, limit) = (Heat(copper, drag), Temperature.FromCelsius(celsius));
                if (Large.TimeToLimit(heat, Wind, limit) is not { } time)
                    return Large.Settled(heat, Wind)!.Value.Winding <= limit;
                var after = Large.After(new(Wind.Ambient, Wind.Ambient), heat, Wind, time);
                return Math.Abs((after.Winding - limit).Kelvins) < 0.02;
            },
            iter: 300);

    [Fact]
    public void More_current_is_never_longer_to_the_limit() =>
        Gen.Select(Gen.Double[60, 300], Gen.Double[1, 50]).Sample(
            (copper, more) =>
            {
                var limit = Temperature.FromCelsius(130);
                var less = Large.TimeToLimit(Heat(copper), Wind, limit);
                var longer = Large.TimeToLimit(Heat(copper + more), Wind, limit);
                return less is null || longer <= less;
            },
            iter: 300);

    [Fact]
    public void A_limit_below_the_air_is_there_at_once() =>
        Assert.Equal(0, Large.TimeToLimit(Heat(10), Wind, Temperature.FromCelsius(20))!.Value.Seconds);

    // IEC 60028: the resistance at 100 °C is 1.3144 times that at 20 °C.
    [Fact]
    public void Copper_rises_by_a_third_to_100_degrees() =>
        Assert.Equal(1.3144, MotorHeat.CopperFactor(Temperature.FromCelsius(100)), 0.00005);

    // A search asks these thousands of times.
    [Fact]
    public void Cooling_and_settling_allocate_nothing()
    {
        double Once() => Large.Settled(Heat(40, 8), Wind)!.Value.Winding.Kelvins
            + Wind.At(Temperature.FromCelsius(70)).KelvinsPerWatt
            + Large.TimeToLimit(Heat(90, 8), Wind, Temperature.FromCelsius(120))!.Value.Seconds;
        var sum = Once();
        Allocations.AreFewerThanOneIn(1000, () =>
        {
            for (var i = 0; i < 1000; i++)
                sum += Once();
        });
        Assert.True(sum > 0);
    }
}
