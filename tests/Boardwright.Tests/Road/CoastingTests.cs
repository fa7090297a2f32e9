using Boardwright.Numerics;
using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Road;

public sealed class CoastingTests
{
    static readonly RoadLoad Rider = new(Mass.FromKilograms(90), Number.FromValue(0.015), Area.FromSquareMetres(0.55), 1.2);
    static readonly Mass Effective = Mass.FromKilograms(91.5);
    static readonly Coasting Level = Rider.Coasting(Effective);

    static Speed Kmh(double value) => Speed.FromKilometresPerHour(value);

    static Speed Mps(double value) => Speed.FromMetresPerSecond(value);

    [Theory]
    [InlineData(30, 0, 40.3127, 139.2835, 0.00005)]
    [InlineData(30, 20, 8.79271, 60.1772, 0.00005)]
    [InlineData(20, 10, 13.42740, 54.7185, 0.00005)]
    [InlineData(10, 0, 18.09258, 24.3878, 0.00005)]
    public void Coasting_down_takes_the_time_and_way_of_the_closed_form(
        double from, double to, double seconds, double metres, double tolerance)
    {
        Assert.Equal(seconds, Level.TimeBetween(Kmh(from), Kmh(to))!.Value.Seconds, tolerance);
        Assert.Equal(metres, Level.DistanceBetween(Kmh(from), Kmh(to))!.Value.Metres, tolerance);
    }

    [Fact]
    public void Speed_after_ten_seconds() =>
        Assert.Equal(5.253711, Level.SpeedAfter(Kmh(30), Duration.FromSeconds(10)).MetresPerSecond, 0.0000005);

    [Fact]
    public void Three_terms_of_force_have_a_closed_form_too() =>
        Assert.Equal(24.30854, new Coasting(Effective, Force.FromNewtons(13), 0.33, 0.4).TimeBetween(Mps(8), Mps(2))!.Value.Seconds,
        0.000005);

    [Fact]
    public void A_constant_force_runs_the_board_up()
    {
        var driven = Rider.Driven(Effective, Force.FromNewtons(180));

        Assert.Equal(4.80103, driven.TimeBetween(default, Kmh(30))!.Value.Seconds, 0.000005);
        Assert.Equal(20.4946, driven.DistanceBetween(default, Kmh(30))!.Value.Metres, 0.00005);
        Assert.Equal(22.4797, driven.TerminalSpeed!.Value.MetresPerSecond, 0.00005);
        Assert.Null(driven.TimeBetween(default, Mps(22.5)));
    }

    [Fact]
    public void Downhill_the_board_nears_its_terminal_speed()
    {
        var down = Rider.Coasting(Effective, Fraction.FromPercent(-3));

        Assert.Equal(6.33246, down.TerminalSpeed!.Value.MetresPerSecond, 0.000005);
        Assert.Equal(3.76692, down.SpeedAfter(default, Duration.FromSeconds(30)).MetresPerSecond, 0.000005);
        Assert.Equal(60.5471, down.DistanceAfter(default, Duration.FromSeconds(30)).Metres, 0.00005);
    }

    [Fact]
    public void Constant_power_without_resistance() =>
        Assert.Equal(9.3505, Coasting.SpeedAtConstantPower(Effective, Power.FromWatts(1000), default, Duration.FromSeconds(4))
        .MetresPerSecond, 0.00005);

    [Theory]
    [InlineData(1, 0.015000, 0.55000)]
    [InlineData(1.01, 0.015178, 0.53414)]
    public void Two_times_give_rolling_and_drag(double factor, double crr, double area)
    {
        var found = Coasting.FromTwoTimes(
            Effective, Kmh(30), Kmh(20), Kmh(10), Duration.FromSeconds(8.79271 * factor), Duration.FromSeconds(13.42740))!.Value;

        // The times have six digits; what they say of the air has four.
        Assert.Equal(crr, found.Constant.Newtons / Rider.Weight.Newtons, 0.0000015);
        Assert.Equal(area, 2 * found.DragKilogramsPerMetre / 1.2, 0.00002);
    }

    [Fact]
    public void Times_that_no_board_has_give_nothing() =>
        Assert.Null(Coasting.FromTwoTimes(Effective, Kmh(30), Kmh(20), Kmh(10), Duration.FromSeconds(20), Duration.FromSeconds(5)));

    [Fact]
    public void Steps_of_Runge_and_Kutta_follow_the_same_course() =>
        Gen.Select(Gen.Double[-150, 60], Gen.Double[0.1, 0.6], Gen.Double[0, 12], Gen.Double[0.5, 20])
        .Sample((newtons, drag, start, seconds) =>
        {
            var coasting = new Coasting(Effective, Force.FromNewtons(newtons), drag);
            if (newtons > 0 && coasting.TimeBetween(Mps(start), default)!.Value.Seconds < seconds)
                return true;
            Span<double> state = [start, 0];
            RungeKutta.Advance(new Newton(coasting), 0, state, seconds, 400);
            var time = Duration.FromSeconds(seconds);
            return Math.Abs(coasting.SpeedAfter(Mps(start), time).MetresPerSecond - state[0]) < 1e-6
                && Math.Abs(coasting.DistanceAfter(Mps(start), time).Metres - state[1]) < 1e-5;
        });

    [Fact]
    public void Time_way_and_speed_agree_with_each_other() =>
        Gen.Select(Gen.Double[-150, 60], Gen.Double[0.1, 0.6], Gen.Double[0, 12], Gen.Double[0.5, 20])
        .Sample((newtons, drag, start, seconds) =>
        {
            var coasting = new Coasting(Effective, Force.FromNewtons(newtons), drag);
            var end = coasting.SpeedAfter(Mps(start), Duration.FromSeconds(seconds));
            // Stopped, or so near the terminal speed that the time is lost in rounding.
            if (end.MetresPerSecond == 0 || Math.Abs(newtons + drag * end.MetresPerSecond * end.MetresPerSecond) < 1e-3)
                return true;
            return Math.Abs(coasting.TimeBetween(Mps(start), end)!.Value.Seconds - seconds) < 1e-6 * seconds
                && Math.Abs(coasting.DistanceBetween(Mps(start), end)!.Value.Metres
                - coasting.DistanceAfter(Mps(start), Duration.FromSeconds(seconds)).Metres) < 1e-5;
        });

    // Work of the forces = loss of kinetic energy, the force integrated over the closed form's own way.
    [Fact]
    public void The_energy_lost_is_the_work_of_the_forces()
    {
        var watts = (double t) =>
        {
            var speed = Level.SpeedAfter(Kmh(30), Duration.FromSeconds(t));
            return Rider.PowerAt(speed).Watts;
        };
        var end = Level.SpeedAfter(Kmh(30), Duration.FromSeconds(35)).MetresPerSecond;
        var lost = 0.5 * 91.5 * (Kmh(30).MetresPerSecond * Kmh(30).MetresPerSecond - end * end);

        Assert.Equal(lost, Quadrature.Integrate(watts, 0, 35, 8), 1e-6 * lost);
    }

    [Fact]
    public void A_board_that_has_stopped_stays()
    {
        Assert.Equal(0, Level.SpeedAfter(Kmh(30), Duration.FromSeconds(60)).MetresPerSecond);
        Assert.Equal(139.2835, Level.DistanceAfter(Kmh(30), Duration.FromSeconds(60)).Metres, 0.00005);
    }

    readonly struct Newton(Coasting coasting) : IDerivative
    {
        public void At(double time, ReadOnlySpan<double> state, Span<double> rates)
        {
            rates[0] = -(coasting.Constant.Newtons + coasting.DragKilogramsPerMetre * state[0] * state[0])
                / coasting.EffectiveMass.Kilograms;
            rates[1] = state[0];
        }
    }
}
