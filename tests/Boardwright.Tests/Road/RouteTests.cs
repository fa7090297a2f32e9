using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Road;

public sealed class RouteTests
{
    static readonly Gen<Route> Routes = Gen.Select(Gen.Double[1, 400], Gen.Double[-0.3, 0.3], Gen.Int[0, 3]).Array[1, 12].Select(parts =>
        Route.Create("made up", [.. parts.Select(p => new RouteStretch(
            Length.FromMetres(p.Item1),
            Fraction.FromValue(p.Item2),
            p.Item3 == 1 ? Speed.FromKilometresPerHour(15) : null,
            Duration.FromSeconds(p.Item3 == 2 ? 10 : 0)))]));

    // The route of handbook check 20: 2000 m flat, 500 m at +6 %, 500 m at -6 %.
    static readonly Route Check20 = Route.Create(
        "check 20",
        new RouteStretch(Length.FromMetres(2000), default),
        new RouteStretch(Length.FromMetres(500), Fraction.FromPercent(6), Speed.FromKilometresPerHour(12)),
        new RouteStretch(Length.FromMetres(500), Fraction.FromPercent(-6), null, Duration.FromSeconds(30)));

    [Fact]
    public void Stated_stretches_give_the_route_of_check_20()
    {
        Assert.Equal(3000, Check20.Distance.Metres);
        Assert.Equal(30, Check20.Climb.Metres, 1e-9);
        Assert.Equal(30, Check20.Descent.Metres, 1e-9);
        Assert.Equal(6, Check20.GradeAt(Length.FromMetres(2000)).Percent, 1e-9);
        Assert.Equal(-6, Check20.GradeAt(Length.FromMetres(3000)).Percent, 1e-9);
        Assert.Equal(15, Check20.ElevationAt(Length.FromMetres(2250)).Metres, 1e-9);
        Assert.Equal(12, Check20.WishAt(Length.FromMetres(2500))!.Value.KilometresPerHour, 1e-9);
        Assert.Null(Check20.WishAt(Length.FromMetres(2501)));
        Assert.Equal([new Stop(Length.FromMetres(3000), Duration.FromSeconds(30))], Check20.Stops);
    }

    // Check 20: B90 at a constant 20 km/h, drive 0.80, regeneration 0.60 -> 16.267 + 13.240 - 2.455 = 27.0515 Wh, 1e-4.
    // F = 13.23898 cos + 90 g sin + 0.33 v²; the point here is that the stretches carry length and grade unharmed.
    [Fact]
    public void The_stretches_of_check_20_cost_what_it_prints()
    {
        var v = 20 / 3.6;
        var joules = Check20.Stretches().Sum(s =>
        {
            var slope = Math.Atan(s.Grade.Value);
            var work = s.Length.Metres * (90 * 9.80665 * (0.015 * Math.Cos(slope) + Math.Sin(slope)) + 0.33 * v * v);
            return work > 0 ? work / 0.80 : work * 0.60;
        });

        Assert.Equal(27.0515, joules / 3600, 0.0027);
    }

    [Fact]
    public void Stretches_read_back_as_they_were_stated() =>
        Routes.Sample(route =>
        {
            var again = Route.Create(route.Name, [.. route.Stretches()]);
            return Math.Abs((again.Distance - route.Distance).Metres) < 1e-6
                && Math.Abs((again.Climb - route.Climb).Metres) < 1e-6
                && again.Stops.Count == route.Stops.Count;
        });

    [Fact]
    public void The_other_way_exchanges_climb_and_descent() =>
        Routes.Sample(route =>
        {
            var back = route.Reversed();
            return Math.Abs((back.Climb - route.Descent).Metres) < 1e-9 && Math.Abs((back.Descent - route.Climb).Metres) < 1e-9
                && Math.Abs((back.RawAscent.Up - route.RawAscent.Down).Metres) < 1e-9;
        });

    [Fact]
    public void The_other_way_has_the_opposite_grade_and_the_same_wishes() =>
        Gen.Select(Routes, Gen.Double[0.001, 0.999]).Sample((route, part) =>
        {
            var (at, back) = (route.Distance * part, route.Reversed());
            var mirrored = route.Distance - at;
            // Right at a corner of the profile the two directions see different roads ahead.
            return route.Segments[0].Places.Any(p => Math.Abs(p - at.Metres) < 1e-6)
                || (Math.Abs(back.GradeAt(mirrored).Value + route.GradeAt(at).Value) < 1e-9
                    && back.WishAt(mirrored) == route.WishAt(at)
                    && Math.Abs((back.ElevationAt(mirrored) - route.ElevationAt(at)).Metres) < 1e-9);
        });

    [Fact]
    public void A_recorded_route_climbs_the_other_way_what_it_descends() =>
        Gen.Double[-5, 5].Array[5, 60].Sample(steps =>
        {
            var route = new Route("recorded", [Recorded(steps), Recorded([.. steps.Reverse(), 3])]);
            var back = route.Reversed();
            return Math.Abs((back.Climb - route.Descent).Metres) < 1e-6 && Math.Abs((back.Descent - route.Climb).Metres) < 1e-6;
        });

    [Fact]
    public void The_grade_integrates_to_the_elevation() =>
        Routes.Sample(route => Math.Abs(
            route.Stretches().Sum(s => s.Length.Metres * s.Grade.Value)
            - (route.ElevationAt(route.Distance) - route.ElevationAt(default)).Metres) < 1e-6);

    [Fact]
    public void A_gap_contributes_neither_distance_nor_climb()
    {
        var route = new Route("two", [Flat(300, 100), Flat(200, 900)]);

        Assert.Equal(500, route.Distance.Metres);
        Assert.Equal(0, route.Climb.Metres + route.RawAscent.Up.Metres + route.FiveMetreAscent.Up.Metres);
        Assert.Equal((100.0, 900.0),
            (route.ElevationAt(Length.FromMetres(299.9)).Metres, route.ElevationAt(Length.FromMetres(300)).Metres));
        Assert.Equal(0, route.SteepestClimb(Length.FromMetres(100))!.Value.Value);
        Assert.All(route.Stretches(), s => Assert.Equal(0, s.Grade.Value));
    }

    [Fact]
    public void The_steepest_grade_depends_on_the_window()
    {
        Assert.Equal(6, Check20.SteepestClimb(Length.FromMetres(500))!.Value.Percent, 1e-9);
        Assert.Equal(3, Check20.SteepestClimb(Length.FromMetres(1000))!.Value.Percent, 1e-9);
        Assert.Equal(-6, Check20.SteepestDescent(Length.FromMetres(100))!.Value.Percent, 1e-9);
        Assert.Null(Check20.SteepestClimb(Length.FromMetres(3001)));
    }

    // A second method: the window slid along in small steps can only find less, and not much less.
    [Fact]
    public void Sliding_the_window_along_finds_the_same_steepest_grade() =>
        Gen.Select(Routes, Gen.Double[0.05, 0.9]).Sample((route, part) =>
        {
            var window = route.Distance * part;
            var slid = Enumerable.Range(0, 2001).Max(i =>
            {
                var start = (route.Distance - window) * (i / 2000.0);
                return (route.ElevationAt(start + window) - route.ElevationAt(start)) / window;
            });
            var found = route.SteepestClimb(window)!.Value.Value;
            return found >= slid - 1e-9 && found - slid <= 0.6 * ((route.Distance - window) / window) / 2000 + 1e-9;
        });

    [Fact]
    public void A_level_route_has_nothing_but_distance()
    {
        var route = Route.Level(Length.FromKilometres(12), Length.FromMetres(40));

        Assert.Equal((12.0, 0.0, 0.0, 40.0),
            (route.Distance.Kilometres, route.Climb.Metres, route.GradeAt(Length.FromKilometres(5)).Value,
            route.ElevationAt(route.Distance).Metres));
    }

    // By the formula in its documentation: three hills of 20 m over 6 km, steepest grade 3 pi 20 / 6000.
    [Fact]
    public void A_loop_climbs_its_hills_and_comes_back()
    {
        var route = Route.Loop(Length.FromKilometres(6), Length.FromMetres(20), hills: 3);

        Assert.Equal(60, route.Climb.Metres, 1e-9);
        Assert.Equal(60, route.Descent.Metres, 1e-9);
        Assert.Equal(0, route.ElevationAt(route.Distance).Metres, 1e-9);
        Assert.Equal(3 * Math.PI * 20 / 6000, route.SteepestClimb(Length.FromMetres(10))!.Value.Value,
            1e-5); // chords of 8 m on the steepest place
    }

    [Fact]
    public void The_lowest_of_several_wishes_holds()
    {
        var route = new Route("wishes", [Flat(100, 0)], [Wish(0, 60, 30), Wish(40, 80, 20)]);

        Assert.Equal([30.0, 20, 20, 20],
            new[] { 10.0, 40, 60, 80 }.Select(x => Math.Round(route.WishAt(Length.FromMetres(x))!.Value.KilometresPerHour, 9)));
        Assert.Null(route.WishAt(Length.FromMetres(90)));
    }

    [Fact]
    public void What_lies_outside_the_route_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new Route("none", []));
        Assert.Throws<ArgumentException>(() => new Route("wish", [Flat(100, 0)], [Wish(0, 101, 20)]));
        Assert.Throws<ArgumentException>(() => new Route("wish", [Flat(100, 0)], [Wish(0, 100, 0)]));
        Assert.Throws<ArgumentException>(() => new Route("stop", [Flat(100, 0)], null, [new(Length.FromMetres(101), default)]));
        Assert.Throws<ArgumentException>(() => new Route("stop", [Flat(100, 0)], null, [new(Length.FromMetres(1), Duration.FromSeconds(-1))]));
        Assert.Throws<ArgumentException>(() => Route.Level(default));
        Assert.Throws<ArgumentException>(() => Route.Create("steep", new RouteStretch(Length.FromMetres(10), Fraction.FromPercent(41))));
        Assert.Throws<ArgumentException>(() => Route.Loop(Length.FromMetres(100), Length.FromMetres(50)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Route.Level(Length.FromMetres(9)).SteepestClimb(default));
    }

    [Fact]
    public void A_stop_splits_the_stretch_it_lies_in()
    {
        var route = new Route("stop", [Flat(100, 0)], null, [new(Length.FromMetres(30), Duration.FromSeconds(5))]);

        Assert.Equal([(30.0, 5.0), (70.0, 0.0)], route.Stretches().Select(s => (s.Length.Metres, s.Wait.Seconds)));
    }

    static SpeedWish Wish(double from, double to, double kilometresPerHour) =>
        new(Length.FromMetres(from), Length.FromMetres(to), Speed.FromKilometresPerHour(kilometresPerHour));

    static Segment Flat(double length, double elevation) =>
        Segment.Stated([new(default, Length.FromMetres(elevation)), new(Length.FromMetres(length), Length.FromMetres(elevation))]);

    static Segment Recorded(double[] steps)
    {
        var height = 100.0;
        return Segment.Recorded([.. steps.Select((s, i) => new RoadPoint(Length.FromMetres(13 * i), Length.FromMetres(height += s)))]);
    }
}
