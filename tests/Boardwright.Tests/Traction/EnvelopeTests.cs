using Boardwright.Examinations;
using Boardwright.Traction;

namespace Boardwright.Tests.Traction;

public sealed class EnvelopeTests
{
    static readonly MovingRunning Tern = Examination.Examine(Boards.Tern).Moving.Value;

    static readonly Envelope Known = Envelope.Compute(Boards.Tern, Examination.Examine(Boards.Tern).Moving).Value;

    [Fact]
    public void Forces_are_the_largest_forces_and_end_at_zero()
    {
        foreach (var line in new[] { Known.Full, Known.Half, Known.Reserve })
        {
            var supply = Tern.SupplyAt(line.Charge);
            Assert.All(line.Speeds.Zip(line.Forces).SkipLast(1), p => Assert.Equal(Tern.LargestForce(p.First, supply), p.Second, 1e-9));
            Assert.Equal(0, line.Forces[^1], 0.01);
            Assert.All(line.Speeds.Zip(line.Speeds.Skip(1)), p => Assert.True(p.First <= p.Second));
        }
    }

    // A second way: what a stretch names is at its limit there, and the others are not.
    [Fact]
    public void What_a_stretch_names_is_at_its_limit()
    {
        var drive = Tern.Drive;
        foreach (var line in new[] { Known.Full, Known.Half, Known.Reserve })
        {
            var supply = Tern.SupplyAt(line.Charge);
            foreach (var stretch in line.Stretches)
            {
                var speed = (stretch.From + stretch.To) / 2;
                var current = drive.LargestCurrent(speed, supply)!.Value;
                var bus = drive.BusAt(current, speed, supply)!.Value;
                var electrical = drive.PolePairs * drive.MotorSpeed(speed);
                var volts = double.Hypot(
                    electrical * drive.PhaseInductance * current, drive.PhaseResistance * current + electrical * drive.FluxLinkage);

                Assert.Equal(stretch.Limit == ForceLimit.PhaseCurrent, current >= drive.PhaseLimit);
                Assert.Equal(stretch.Limit is ForceLimit.PackCurrent or ForceLimit.Taper,
                    Math.Abs(bus.Amperes - drive.PackLimit * supply.Fade(bus.Volts)) < 1e-6);
                Assert.Equal(stretch.Limit == ForceLimit.Taper,
                    supply.Fade(bus.Volts) < 1 && stretch.Limit != ForceLimit.Voltage && stretch.Limit != ForceLimit.PhaseCurrent);
                Assert.Equal(stretch.Limit == ForceLimit.Voltage,
                    Math.Abs(volts - Propulsion.Modulation * bus.Volts / Math.Sqrt(3)) < 1e-6);
            }
        }
    }

    [Fact]
    public void Stretches_follow_one_another_from_rest_to_the_end()
    {
        foreach (var line in new[] { Known.Full, Known.Half, Known.Reserve })
        {
            Assert.Equal(0, line.Stretches[0].From);
            Assert.Equal(line.Speeds[^1], line.Stretches[^1].To);
            Assert.All(line.Stretches.Zip(line.Stretches.Skip(1)), p => Assert.Equal(p.First.To, p.Second.From));
            Assert.All(line.Stretches.Zip(line.Stretches.Skip(1)), p => Assert.NotEqual(p.First.Limit, p.Second.Limit));
        }
    }

    [Fact]
    public void A_low_electrical_speed_ends_the_line_upright()
    {
        var slow = Tern with { Drive = Tern.Drive with { ElectricalSpeedLimit = Tern.Drive.PolePairs * Tern.Drive.MotorSpeed(5) } };
        var line = Envelope.LineOf(slow, 1);

        Assert.Equal(5, line.Speeds[^1], 1e-6);
        Assert.Equal((line.Speeds[^2], 0.0), (line.Speeds[^1], line.Forces[^1]));
        Assert.True(line.Forces[^2] > 100);
        Assert.Equal(ForceLimit.ElectricalSpeed, line.Stretches[^1].Limit);
    }

    [Fact]
    public void Little_grip_is_what_limits_at_rest()
    {
        var line = Envelope.LineOf(Tern with { Tyres = Tern.Tyres with { Coefficient = 0.1 } }, 1);

        Assert.Equal(ForceLimit.Grip, line.Stretches[0].Limit);
        Assert.Equal(ForceLimit.Voltage, line.Stretches[^1].Limit);
    }

    [Fact]
    public void A_board_without_force_has_an_empty_line()
    {
        var line = Envelope.LineOf(Tern with { TaperStart = 100, TaperEnd = 90 }, 0.5);

        Assert.Empty(line.Speeds);
        Assert.Empty(line.Stretches);
    }

    [Theory]
    [InlineData(3, 0)]
    [InlineData(7, 0)]
    [InlineData(4, 0.06)]
    [InlineData(8, -0.01)]
    public void The_parts_of_the_power_add_up_to_what_leaves_the_charge(double speed, double grade)
    {
        var at = Tern.Holding(speed, grade, 0.5)!;
        var split = PowerSplit.Compute(Tern, at, grade, 0.5);

        Assert.Equal(Tern.Pack.RestVoltsAt(0.5) * at.Bus.Amperes, split.Sum, 1e-9);
        Assert.Equal(at.CellWatts, split.AtTerminals, 1e-9);
        Assert.Equal(at.Force * speed, split.Air + split.Rolling + split.Grade, 1e-9);
    }
}
