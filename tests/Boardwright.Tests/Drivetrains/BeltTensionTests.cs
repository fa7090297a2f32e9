using Boardwright.Drivetrains;
using CsCheck;

namespace Boardwright.Tests.Drivetrains;

public sealed class BeltTensionTests
{
    // Optibelt, Technical Manual Rubber Timing Belt Drives, pp. 43-45: 8M, 36 teeth, 18.5 kW at 2850 r/min, span 414.44 mm, 0.174 kg/m.
    [Fact]
    public void Tension_matches_Optibelt_page_44()
    {
        var small = new PulleyGeometry(36, ToothProfile.Htd8M);
        var speed = BeltTension.BeltSpeed(small, AngularSpeed.FromRpm(2850));
        Printed.Matches("13.68", speed.MetresPerSecond);
        Printed.Matches("1352", BeltTension.EffectivePull(Power.FromKilowatts(18.5), speed).Newtons);

        var pull = Force.FromNewtons(1352);
        Printed.Matches("743.6", BeltTension.Installation(pull).Newtons);
        Printed.Matches("1487.2", BeltTension.EstimatedShaftLoad(pull).Newtons);
        var (push, deflection) = BeltTension.DeflectionTest(pull, Length.FromMillimetres(414.44));
        Printed.Matches("67.6", push.Newtons);
        Printed.Matches("8.29", deflection.Millimetres);
        Printed.Matches("78.9", BeltTension.SpanFrequency(Force.FromNewtons(743.6), 0.174, Length.FromMillimetres(414.44)).Hertz);
    }

    [Fact]
    public void Pull_from_torque_and_from_power_agree() =>
        Gen.Select(Gen.Double[0.1, 20], Gen.Int[10, 40], Gen.Double[100, 20_000]).Sample((torque, teeth, rpm) =>
        {
            var (pulley, speed) = (new PulleyGeometry(teeth, ToothProfile.Htd5M), AngularSpeed.FromRpm(rpm));
            var byTorque = BeltTension.EffectivePull(Torque.FromNewtonMetres(torque), pulley);
            var byPower = BeltTension.EffectivePull(
                Gearing.PowerOf(Torque.FromNewtonMetres(torque), speed), BeltTension.BeltSpeed(pulley, speed));
            return Math.Abs(byTorque / byPower - 1) < 1e-12
                && Math.Abs(BeltStrength.TorqueOf(byTorque, pulley).NewtonMetres / torque - 1) < 1e-12;
        });

    [Fact]
    public void Tension_of_a_frequency_undoes_frequency_of_a_tension_and_the_meters_formula_is_the_same() =>
        Gen.Select(Gen.Double[1, 500], Gen.Double[2, 8], Gen.Double[6, 30], Gen.Double[30, 500]).Sample((newtons, mass, width, span) =>
        {
            var (w, t) = (Length.FromMillimetres(width), Length.FromMillimetres(span));
            var frequency = BeltTension.SpanFrequency(Force.FromNewtons(newtons), mass * w.Metres, t);
            return Math.Abs(BeltTension.OfFrequency(frequency, mass * w.Metres, t).Newtons / newtons - 1) < 1e-12
                && Math.Abs(BeltTension.OfMeter(mass, w, t, frequency).Newtons / newtons - 1) < 1e-12;
        });

    // A second method: a string of 400 beads, its lowest mode by counting sign changes of a three-term recursion.
    [Fact]
    public void The_span_sounds_as_a_string_of_beads_does()
    {
        var (tension, mass, span) = (115.19, 0.0525, 0.064514);
        const int beads = 400;
        var step = span / beads;
        double Tip(double omega)
        {
            var (before, here) = (0.0, 1.0);
            for (var i = 1; i < beads; i++)
                (before, here) = (here, 2 * here - before - omega * omega * mass * step * step / tension * here);
            return here;
        }

        var (low, high) = (1.0, 3000.0);
        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Tip(middle) > 0 ? (middle, high) : (low, middle);
        }

        Assert.Equal(low / (2 * Math.PI), BeltTension.SpanFrequency(Force.FromNewtons(tension), mass, Length.FromMetres(span)).Hertz, 0.01);
    }

    [Fact]
    public void Load_splits_evenly_over_the_spans_until_one_is_slack() =>
        Gen.Select(Gen.Double[0, 300], Gen.Double[0, 500]).Sample((installed, pull) =>
        {
            var (tight, slack) = BeltTension.Spans(Force.FromNewtons(installed), Force.FromNewtons(pull));
            var floor = BeltTension.ReversingFloor(Force.FromNewtons(pull));
            return Math.Abs((tight - slack).Newtons - pull) < 1e-9 && slack.Newtons >= 0
                && (installed < floor.Newtons ? slack.Newtons == 0 : Math.Abs((tight + slack).Newtons - 2 * installed) < 1e-9);
        });

    [Fact]
    public void The_default_rule_keeps_the_slack_span_of_a_drive_tight_and_half_of_the_pull_does_not()
    {
        var pull = Force.FromNewtons(209.44);
        Assert.True(BeltTension.Spans(BeltTension.Installation(pull), pull).Slack > Force.FromNewtons(0));
        Assert.True(BeltTension.Installation(pull) > BeltTension.ReversingFloor(pull));
        Assert.Equal(Force.FromNewtons(0), BeltTension.Spans(TensionRule.Power.Tension(pull), pull).Slack);
        Assert.Equal(TensionRule.Default, TensionRule.All[0]);
    }

    [Fact]
    public void Shaft_load_is_the_sum_of_both_spans_as_arrows() =>
        Gen.Select(Gen.Double[0, 500], Gen.Double[0, 500], Gen.Double[60, 300]).Sample((tight, slack, wrap) =>
        {
            var half = Angle.FromDegrees(wrap / 2).Radians;
            // Both spans pull away from the wrapped side, each tilted by half of what the wrap lacks to a half turn.
            var along = (tight + slack) * Math.Sin(half);
            var across = (tight - slack) * Math.Cos(half);
            var load = BeltTension.ShaftLoad(Force.FromNewtons(tight), Force.FromNewtons(slack), Angle.FromDegrees(wrap)).Newtons;
            return Math.Abs(load - Math.Sqrt(along * along + across * across)) < 1e-6;
        });

    [Fact]
    public void Impossible_inputs_are_refused()
    {
        var (force, span) = (Force.FromNewtons(100), Length.FromMillimetres(90));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltTension.SpanFrequency(force, 0, span));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltTension.SpanFrequency(-force, 0.05, span));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltTension.SpanFrequency(force, 0.05, Length.FromMetres(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltTension.EffectivePull(Power.FromWatts(100), Speed.FromMetresPerSecond(0)));
    }

    [Fact]
    public void Turning_and_rolling_agree_with_each_other()
    {
        var wheel = Gearing.WheelSpeed(AngularSpeed.FromRpm(6000), 2.4);
        Printed.Matches("42.41", Gearing.RoadSpeed(wheel, Length.FromMillimetres(90)).KilometresPerHour);
        Assert.Equal(wheel.Rpm, Gearing.WheelSpeed(Gearing.RoadSpeed(wheel, Length.FromMillimetres(90)), Length.FromMillimetres(90)).Rpm,
            1e-9);
        Printed.Matches("4.56", Gearing.WheelTorque(Torque.FromNewtonMetres(2), 2.4, Fraction.FromValue(0.95)).NewtonMetres);
        Printed.Matches("104", Gearing.TorqueOf(Power.FromKilowatts(31.09), AngularSpeed.FromRpm(2850)).NewtonMetres);
        Assert.Throws<ArgumentOutOfRangeException>(() => Gearing.WheelSpeed(AngularSpeed.FromRpm(6000), 0));
    }
}
