using Boardwright.Motors;
using CsCheck;

namespace Boardwright.Tests.Motors;

public sealed class BridgeTests
{
    static readonly Bridge Bridge = new(Resistance.FromMilliohms(1.5), Duration.FromNanoseconds(120), Frequency.FromKilohertz(20));
    static readonly Current Eighty = Current.FromAmperes(80);

    [Fact]
    public void Eighty_amperes_lose_this_much()
    {
        Assert.Equal(14.40, Bridge.Conduction(Eighty).Watts, 1e-12);
        Assert.Equal(9.2407, Bridge.Switching(Eighty, Voltage.FromVolts(50.4)).Watts, 0.00005);
        Assert.Equal(2.4446, Bridge.DeadTime(Eighty, Voltage.FromVolts(0.8), Duration.FromNanoseconds(500)).Watts, 0.00005);
    }

    [Theory]
    [InlineData(0.8, 0, 34.993, 48.0)]
    [InlineData(0.6, 30, 33.839, 31.177)]
    [InlineData(1.0, 20, 28.618, 56.382)]
    public void Ripple_matches_the_hand_calculation(double modulation, double degrees, double ripple, double supply)
    {
        Assert.Equal(ripple, Bridge.Ripple(Eighty, modulation, Angle.FromDegrees(degrees)).Amperes, 0.0005);
        Assert.Equal(supply, Bridge.SupplyCurrent(Eighty, modulation, Angle.FromDegrees(degrees)).Amperes, 0.0005);
    }

    // The bridge's input current, built switch by switch from the duty cycles of plain sine modulation over one turn.
    [Fact]
    public void Ripple_matches_the_bridge_switched_step_by_step() =>
        Gen.Select(Gen.Double[0.1, 1], Gen.Double[-80, 80]).Sample(
            (modulation, degrees) =>
            {
                var (squares, mean) = (0.0, 0.0);
                const int places = 720;
                Span<double> duty = stackalloc double[3], current = stackalloc double[3];
                for (var i = 0; i < places; i++)
                {
                    for (var phase = 0; phase < 3; phase++)
                    {
                        var angle = 2 * Math.PI * ((i + 0.5) / places - phase / 3.0);
                        duty[phase] = (1 + modulation * Math.Cos(angle)) / 2;
                        current[phase] = 80 * Math.Cos(angle - degrees * Math.PI / 180);
                    }

                    // Centred pulses nest: the longest is on alone first, then two, then all three, whose currents cancel.
                    duty.Sort(current);
                    var (one, two) = (current[2], current[2] + current[1]);
                    squares += ((duty[2] - duty[1]) * one * one + (duty[1] - duty[0]) * two * two) / places;
                    mean += ((duty[2] - duty[1]) * one + (duty[1] - duty[0]) * two) / places;
                }

                var ripple = Bridge.Ripple(Eighty, modulation, Angle.FromDegrees(degrees)).Amperes;
                return Math.Abs(Math.Sqrt(squares - mean * mean) - ripple) < 1e-3 * ripple;
            },
            iter: 50);
}

public sealed class DirectCurrentMotorTests
{
    // Maker's sheet of motor 118743: 12 V, 2.18 ohm, 407 r/min/V; stall 5.5 A and 129 mN m, no load 4860 r/min, 38 r/min/(mN m), 87 %.
    [Fact]
    public void A_small_motor_matches_its_sheet()
    {
        var motor = new DirectCurrentMotor(SpeedConstant.FromRpmPerVolt(407), Resistance.FromOhms(2.18), Current.FromMilliamperes(26.3));
        var supply = Voltage.FromVolts(12);

        Assert.Equal(5.5, motor.StallCurrent(supply).Amperes, 0.05);
        Assert.Equal(129, motor.StallTorque(supply).NewtonMetres * 1000, 0.5);
        Assert.Equal(4860, motor.NoLoadSpeed(supply).Rpm, 5.0);
        Assert.Equal(37.7, motor.SpeedLossPerNewtonMetre * 30 / Math.PI / 1000, 0.015 * 37.7);
        Assert.Equal(0.87, motor.BestEfficiency(supply), 0.005);
        Assert.Equal(0.3805, motor.BestCurrent(supply).Amperes, 0.00005);
    }

    [Fact]
    public void The_best_current_has_the_best_efficiency() =>
        Gen.Select(Gen.Double[50, 500], Gen.Double[0.02, 3], Gen.Double[0.01, 2], Gen.Double[6, 60]).Sample((kv, ohms, idle, volts) =>
        {
            var motor = new DirectCurrentMotor(SpeedConstant.FromRpmPerVolt(kv), Resistance.FromOhms(ohms), Current.FromAmperes(idle));
            var supply = Voltage.FromVolts(volts);
            var best = motor.BestCurrent(supply);
            return Math.Abs(motor.Efficiency(supply, best) - motor.BestEfficiency(supply)) < 1e-9
                && motor.Efficiency(supply, best * 1.01) <= motor.BestEfficiency(supply)
                && motor.Efficiency(supply, best * 0.99) <= motor.BestEfficiency(supply);
        });

    // A servo motor's sheet 500400167, 120 V, whose curve leaves out the voltage that the no-load current loses (0.8 %): 165 oz-in at 3.4
    // A, 2685 r/min, 327.70 W; 330 oz-in at 6.2 A, 2580 r/min, 629.62 W.
    [Theory]
    [InlineData(165, 3.4, 2685, 327.70, 0.81097)]
    [InlineData(330, 6.2, 2580, 629.62, 0.84563)]
    public void A_servo_motor_matches_its_curve(double ounceInches, double amperes, double rpm, double watts, double efficiency)
    {
        // 43 V at 1000 r/min.
        var motor = new DirectCurrentMotor(SpeedConstant.FromRpmPerVolt(1000 / 43.0), Resistance.FromOhms(1.6), Current.FromAmperes(0.53));
        var supply = Voltage.FromVolts(120);
        var current = motor.CurrentAt(Torque.FromPoundForceInches(ounceInches / 16));

        Assert.Equal(amperes, current.Amperes, 0.05);
        Assert.Equal(rpm, motor.Speed(supply, current).Rpm, 0.01 * rpm);
        Assert.Equal(watts, motor.ShaftPower(supply, current).Watts, 0.01 * watts);
        Assert.Equal(efficiency, motor.Efficiency(supply, current), 0.01);
    }
}
