using Boardwright.Rides;
using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Rides;

public sealed class RiderPaceTests
{
    // A tenth of a micrometre per second, and of a metre: rounding of squares up to a few hundred.
    const double Rounding = 1e-7;

    static readonly Gen<Route> Routes = Gen.Select(Gen.Double[0.5, 300], Gen.Double[2, 60], Gen.Int[0, 3]).Array[1, 15].Select(parts =>
        Route.Create("made up", [.. parts.Select(p => new RouteStretch(
            Length.FromMetres(p.Item1),
            default,
            p.Item3 > 0 ? Speed.FromKilometresPerHour(p.Item2) : null,
            Duration.FromSeconds(p.Item3 == 3 ? 10 : 0)))]));

    static readonly Gen<SpeedPlan> Plans = Gen.Select(Routes, Gen.Double[10, 45], Gen.Double[0.2, 3], Gen.Double[0.2, 4])
        .Select((route, cruise, start, brake) =>
        new RiderPace(Speed.FromKilometresPerHour(cruise), Acceleration.FromMetresPerSecondSquared(start),
        Acceleration.FromMetresPerSecondSquared(brake)).Over(route));

    [Fact]
    public void Nothing_exceeds_the_wish_or_the_cruise_speed() =>
        Gen.Select(Plans, Gen.Double[0, 1]).Sample((plan, part) =>
        {
            var at = plan.Route.Distance * part;
            var most = Math.Min(plan.Pace.Cruise.Si, plan.Route.WishAt(at)?.Si ?? double.PositiveInfinity);
            return plan.TargetAt(at).Si <= most + Rounding && plan.IdealAt(at).Si <= plan.TargetAt(at).Si + Rounding;
        });

    [Fact]
    public void Speed_is_never_lost_faster_than_braking_comfortably() =>
        Gen.Select(Plans, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((plan, a, b) =>
        {
            var (from, to) = Between(plan, a, b);
            var allowed = 2 * plan.Pace.Braking.Si * (to - from).Metres + 1e-5; // squares of speeds
            return Square(plan.TargetAt(from)) - Square(plan.TargetAt(to)) <= allowed
                && Square(plan.IdealAt(from)) - Square(plan.IdealAt(to)) <= allowed;
        });

    [Fact]
    public void Speed_is_never_gained_faster_than_accelerating_comfortably() =>
        Gen.Select(Plans, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((plan, a, b) =>
        {
            var (from, to) = Between(plan, a, b);
            return Square(plan.IdealAt(to)) - Square(plan.IdealAt(from)) <= 2 * plan.Pace.Accelerating.Si * (to - from).Metres + 1e-5;
        });

    [Fact]
    public void Every_stop_is_reached_at_rest_and_left_again() =>
        Plans.Sample(plan => plan.Stops.All(stop =>
        {
            var before = Length.FromMetres(stop.At.Metres * (1 - 1e-12));
            var final = stop.At == plan.Route.Distance;
            return plan.TargetAt(before).Si < 1e-3 && plan.IdealAt(before).Si < 1e-3 && (plan.TargetAt(stop.At).Si > 0) != final
                && plan.IdealAt(stop.At).Si == 0;
        }));

    // The target is the greatest such speed: wherever it is below the wish, it is braking with the full comfortable rate.
    [Fact]
    public void No_slow_down_is_begun_earlier_than_it_must() =>
        Gen.Select(Plans, Gen.Double[0, 0.999]).Sample((plan, part) =>
        {
            var at = plan.Route.Distance * part;
            var most = Math.Min(plan.Pace.Cruise.Si, plan.Route.WishAt(at)?.Si ?? double.PositiveInfinity);
            if (plan.TargetAt(at).Si > most - 1e-6)
                return true;
            var ahead = Length.FromMetres(Math.Min(at.Metres + 1e-3, plan.Route.Distance.Metres));
            return plan.StopAhead(at)!.At <= ahead
                || Math.Abs(Square(plan.TargetAt(at)) - Square(plan.TargetAt(ahead)) - 2 * plan.Pace.Braking.Si * (ahead - at).Metres)
                < 1e-5;
        });

    // By hand: from 10 m/s at 1.25 m/s2 braking takes 100 / 2.5 = 40 m; starting at 1 m/s2 takes 50 m and 10 s.
    // 1000 m with both: 10 + 8 + (1000 - 90) / 10 = 109 s.
    [Fact]
    public void A_level_kilometre_takes_as_long_as_by_hand()
    {
        var plan = new RiderPace(Speed.FromMetresPerSecond(10), null, Acceleration.FromMetresPerSecondSquared(1.25))
            .Over(Route.Level(Length.FromMetres(1000)));

        Assert.Equal(10, plan.TargetAt(Length.FromMetres(960)).Si, 1e-12);
        Assert.Equal(Math.Sqrt(50), plan.TargetAt(Length.FromMetres(980)).Si, 1e-12);
        Assert.Equal(10, plan.TargetAt(default).Si, 1e-12);
        Assert.Equal(Math.Sqrt(50), plan.IdealAt(Length.FromMetres(25)).Si, 1e-12);
        Assert.Equal(109, plan.IdealMoving.Seconds, 1e-9);
    }

    // By hand, too short for cruise speed: a = b = 1, 100 m -> top at 50 m, √100 = 10 m/s, 20 s.
    [Fact]
    public void A_short_road_turns_from_starting_to_braking_in_its_middle()
    {
        var one = Acceleration.FromMetresPerSecondSquared(1);
        var plan = new RiderPace(Speed.FromMetresPerSecond(30), one, one).Over(Route.Level(Length.FromMetres(100)));

        Assert.Equal(10, plan.IdealAt(Length.FromMetres(50)).Si, 1e-12);
        Assert.Equal(20, plan.IdealMoving.Seconds, 1e-9);
    }

    [Fact]
    public void Stops_are_found_ahead_until_the_end()
    {
        var stop = new Stop(Length.FromMetres(40), Duration.FromSeconds(12));
        var route = new Route("stops", Route.Level(Length.FromMetres(100)).Segments, null, [new(default, Duration.FromSeconds(3)), stop]);
        var plan = new RiderPace(Speed.FromKilometresPerHour(25)).Over(route);

        Assert.Equal([stop, new Stop(Length.FromMetres(100), default)], plan.Stops);
        Assert.Equal(stop, plan.StopAhead(default));
        Assert.Equal(100, plan.StopAhead(stop.At)!.At.Metres);
        Assert.Null(plan.StopAhead(route.Distance));
        Assert.Equal((1.0, 1.2), (plan.Pace.Accelerating.MetresPerSecondSquared, plan.Pace.Braking.MetresPerSecondSquared));
    }

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(7, 0, 1)]
    [InlineData(7, 1, -1)]
    [InlineData(double.NaN, 1, 1)]
    [InlineData(7, double.PositiveInfinity, 1)]
    public void A_pace_that_moves_nobody_is_refused(double cruise, double start, double brake) =>
        Assert.Throws<ArgumentOutOfRangeException>(
        () => new RiderPace(Speed.FromSi(cruise), Acceleration.FromSi(start), Acceleration.FromSi(brake)));

    static (Length From, Length To) Between(SpeedPlan plan, double a, double b)
    {
        var (from, to) = (plan.Route.Distance * Math.Min(a, b), plan.Route.Distance * Math.Max(a, b));
        // The target jumps up after a stop, so the two places are taken from one stage between stops.
        return plan.StopAhead(from) is { } stop && stop.At <= to
            ? (from, Length.FromMetres(Math.Max(from.Metres, stop.At.Metres * (1 - 1e-12)))) : (from, to);
    }

    static double Square(Speed speed) => speed.Si * speed.Si;
}
