using Boardwright.Motors;
using CsCheck;

namespace Boardwright.Tests.Motors;

public sealed class MotorConstantsTests
{
    static readonly MotorConstants Kv190 = new(SpeedConstant.FromRpmPerVolt(190), 7);
    static readonly Winding Motor = new(Kv190, Resistance.FromMilliohms(30), Inductance.FromMicrohenries(30));

    [Fact]
    public void Kv_190_with_seven_pole_pairs_has_these_constants()
    {
        Assert.Equal(0.050259, Kv190.NewtonMetresPerDcAmpere, 0.0000005);
        Assert.Equal(4.1453e-3, Kv190.FluxLinkageWebers, 0.00005e-3);
        Assert.Equal(0.043526, Kv190.NewtonMetresPerPeakAmpere, 0.0000005);
        Assert.Equal(0.866025, Kv190.NewtonMetresPerPeakAmpere / Kv190.NewtonMetresPerDcAmpere, 0.0000005);
        Assert.Equal(0.061555, Kv190.NewtonMetresPerRmsAmpere, 0.0000005);
    }

    // Makers' sheets of three brushed motors: 23.4, 53.8 and 123 mN m/A at 407, 178 and 77.8 r/min/V, each within 0.5 %.
    [Theory]
    [InlineData(407, 23.4)]
    [InlineData(178, 53.8)]
    [InlineData(77.8, 123)]
    public void Torque_constant_matches_makers_sheets(double kv, double milli) =>
        Assert.Equal(milli, 1000 * new MotorConstants(SpeedConstant.FromRpmPerVolt(kv), 1).NewtonMetresPerDcAmpere, 0.005 * milli);

    [Fact]
    public void Torque_constant_is_one_and_a_half_pole_pairs_times_flux() =>
        Gen.Select(Gen.Double[20, 3000], Gen.Int[1, 20]).Sample((kv, pairs) =>
        {
            var motor = new MotorConstants(SpeedConstant.FromRpmPerVolt(kv), pairs);
            return Math.Abs(motor.NewtonMetresPerPeakAmpere / (1.5 * pairs * motor.FluxLinkageWebers) - 1) < 1e-13;
        });

    [Fact]
    public void Delta_turns_faster_and_has_a_third_of_the_resistance()
    {
        Assert.Equal(1.7320508 * 190, MotorConstants.StarToDelta(Kv190.Kv).RpmPerVolt, 0.00005);
        Assert.Equal(0.02, MotorConstants.StarToDelta(Resistance.FromOhms(0.06)).Ohms, 1e-15);
    }

    [Fact]
    public void Equal_torque_has_equal_copper_loss()
    {
        var phase = MotorConstants.EqualTorque(Current.FromAmperes(40));

        Assert.Equal(46.188, phase.Amperes, 0.0005);
        Assert.Equal(96.0, Motor.At(phase, default).CopperLoss.Watts, 1e-9);
        Assert.Equal(96.0, 40 * 40 * 0.06, 1e-9);
    }

    [Fact]
    public void Greatest_phase_voltages()
    {
        var bus = Voltage.FromVolts(50.4);

        Assert.Equal(29.0985, Winding.GreatestPhaseVoltage(bus).Volts, 0.00005);
        Assert.Equal(25.2, Winding.GreatestWithSine(bus).Volts, 1e-12);
        Assert.Equal(32.0856, Winding.GreatestInSixStep(bus).Volts, 0.00005);
    }

    [Fact]
    public void Fifty_amperes_at_6000_rpm_match_the_hand_calculation()
    {
        var point = Motor.At(Current.FromAmperes(50), AngularSpeed.FromRpm(6000));
        var bus = Voltage.FromVolts(50.4);

        Assert.Equal(-6.5973, point.Direct.Volts, 0.00005);
        Assert.Equal(19.7321, point.Quadrature.Volts, 0.00005);
        Assert.Equal(20.8058, point.PhaseVoltage.Volts, 0.00005);
        Assert.Equal(2.17630, point.Torque.NewtonMetres, 0.000005);
        Assert.Equal(1367.41, point.Mechanical.Watts, 0.005);
        Assert.Equal(112.50, point.CopperLoss.Watts, 0.005);
        Assert.Equal(1479.91, point.Input.Watts, 0.005);
        Assert.Equal(29.363, point.BusCurrent(bus).Amperes, 0.0005);
        Assert.Equal(0.71501, point.Modulation(bus), 0.000005);
    }

    [Fact]
    public void Base_speed_and_ideal_no_load()
    {
        var bus = Voltage.FromVolts(50.4);

        Assert.Equal(8566.74, Motor.BaseSpeed(Current.FromAmperes(50), Winding.GreatestPhaseVoltage(bus))!.Value.Rpm, 0.005);
        Assert.Equal(9576, Kv190.IdealNoLoad(bus).Rpm, 0.0005);
        Assert.Equal(9576, Motor.BaseSpeed(default, Winding.GreatestPhaseVoltage(bus))!.Value.Rpm, 0.0005);
    }

    [Fact]
    public void Power_in_is_power_out_and_copper_loss() =>
        Gen.Select(Gen.Double[-80, 80], Gen.Double[0, 1000]).Sample((amperes, speed) =>
        {
            var point = Motor.At(Current.FromAmperes(amperes), AngularSpeed.FromRadiansPerSecond(speed));
            return Math.Abs(point.Input.Watts - point.Mechanical.Watts - point.CopperLoss.Watts) < 1e-9;
        });

    [Fact]
    public void At_base_speed_the_largest_current_is_that_current() =>
        Gen.Select(Gen.Double[0.01, 200], Gen.Double[6, 60]).Sample((amperes, volts) =>
        {
            var voltage = Winding.GreatestPhaseVoltage(Voltage.FromVolts(volts), 0.95);
            if (Motor.BaseSpeed(Current.FromAmperes(amperes), voltage) is not { } speed)
                return 0.030 * amperes > voltage.Volts;
            return Math.Abs(Motor.LargestCurrent(voltage, speed)!.Value.Amperes - amperes) < 1e-6
                && Math.Abs(Motor.At(Current.FromAmperes(amperes), speed).PhaseVoltage.Volts - voltage.Volts) < 1e-9;
        });

    [Fact]
    public void Above_ideal_no_load_no_current_drives() =>
        Assert.Null(Motor.LargestCurrent(Winding.GreatestPhaseVoltage(Voltage.FromVolts(50.4)), AngularSpeed.FromRpm(9577)));

    [Fact]
    public void Braking_gives_energy_above_this_speed()
    {
        var phase = MotorConstants.EqualTorque(Current.FromAmperes(20));
        var least = Motor.LeastSpeedThatGives(phase);

        Assert.Equal(23.876, least.RadiansPerSecond, 0.0005);
        Assert.Equal(0, Motor.At(-phase, least).Input.Watts, 1e-9);
    }
}

public sealed class MotorDragTests
{
    static readonly SpeedConstant Kv = SpeedConstant.FromRpmPerVolt(190);

    static (Voltage, Current) Test(double volts, double amperes) => (Voltage.FromVolts(volts), Current.FromAmperes(amperes));

    [Fact]
    public void One_test_gives_back_its_own_power()
    {
        var drag = MotorDrag.FromTest(Kv, Voltage.FromVolts(24), Current.FromAmperes(1.4));
        var speed = AngularSpeed.FromRpm(190 * 24);

        Assert.Equal(33.6, drag.PowerAt(speed).Watts, 1e-9);
        Assert.Equal(33.6 / speed.RadiansPerSecond / 2, drag.At(default).NewtonMetres, 1e-12);
    }

    [Fact]
    public void Two_tests_are_met_exactly()
    {
        var drag = MotorDrag.FromTests(Kv, [Test(12, 1.1), Test(36, 1.7)]);

        Assert.Equal(12 * 1.1, drag.PowerAt(AngularSpeed.FromRpm(190 * 12)).Watts, 1e-9);
        Assert.Equal(36 * 1.7, drag.PowerAt(AngularSpeed.FromRpm(190 * 36)).Watts, 1e-9);
    }

    [Fact]
    public void Several_tests_on_one_line_are_met_exactly_and_moving_off_it_is_worse() =>
        Gen.Select(Gen.Double[0.3, 3], Gen.Double[0.001, 0.05], Gen.Double[-0.1, 0.1]).Sample((constant, slope, move) =>
        {
            (Voltage Supply, Current Current)[] tests =
                [Test(10, constant + 10 * slope), Test(20, constant + 20 * slope + move), Test(40, constant + 40 * slope),
                Test(50, constant + 50 * slope)];
            var drag = MotorDrag.FromTests(Kv, tests);
            double Squares(MotorDrag d) => tests.Sum(t =>
            {
                var off = d.At(new MotorConstants(Kv, 1).IdealNoLoad(t.Supply)).NewtonMetres - t.Current.Amperes
                    / Kv.RadiansPerSecondPerVolt;
                return off * off;
            });
            var best = Squares(drag);
            return drag.Constant.NewtonMetres < 1e-9
                || (best <= Squares(drag with { Constant = drag.Constant * 1.001 }) + 1e-18
                    && best <= Squares(drag with { NewtonMetreSecondsPerRadian = drag.NewtonMetreSecondsPerRadian * 1.001 }) + 1e-18);
        });

    [Fact]
    public void Tests_at_one_voltage_count_as_one() =>
        Assert.Equal(
            MotorDrag.FromTest(Kv, Voltage.FromVolts(24), Current.FromAmperes(1.4)).Constant.NewtonMetres,
            MotorDrag.FromTests(Kv, [Test(24, 1.3), Test(24, 1.5)]).Constant.NewtonMetres, 1e-12);

    [Fact]
    public void Neither_term_is_ever_below_zero()
    {
        var falling = MotorDrag.FromTests(Kv, [Test(12, 2), Test(36, 1)]);
        var steep = MotorDrag.FromTests(Kv, [Test(12, 0.1), Test(36, 1)]);

        Assert.Equal(0, falling.NewtonMetreSecondsPerRadian);
        Assert.Equal(0, steep.Constant.NewtonMetres);
    }
}
