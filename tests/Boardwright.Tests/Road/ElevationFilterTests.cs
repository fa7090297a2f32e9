using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Road;

public sealed class ElevationFilterTests
{
    // A recording: steps of 1 to 60 m and heights that wander, jump and repeat.
    static readonly Gen<RoadPoint[]> Recordings = Gen.Select(Gen.Double[1, 60], Gen.Double[-8, 8]).Array[3, 80].Select(steps =>
    {
        List<RoadPoint> points = [new(default, Length.FromMetres(200))];
        foreach (var (along, up) in steps)
            points.Add(new(points[^1].Distance + Length.FromMetres(along), points[^1].Elevation + Length.FromMetres(up)));
        return points.ToArray();
    });

    [Fact]
    public void A_constant_grade_passes_unchanged_up_to_the_ends() =>
        Gen.Select(Gen.Double[-0.39, 0.39], Gen.Double[3, 3000], Gen.Int[2, 200]).Sample((grade, length, count) =>
        {
            var segment = Segment.Recorded(
                [.. Enumerable.Range(0, count + 1).Select(i => At(length * i / count, 300 + grade * length * i / count))]);
            return Enumerable.Range(0, 50).All(i =>
            {
                var at = Math.Min(length * i / 49, segment.Distance.Metres);
                return Math.Abs(segment.ElevationAt(Length.FromMetres(at)).Metres - 300 - grade * at)
                    < 1e-7 // hundreds of metres, weighted and divided
                    && Math.Abs(segment.GradeAt(Length.FromMetres(at)).Value - grade) < 1e-7;
            });
        });

    // The bound that the documentation of the filter states.
    [Fact]
    public void Each_end_moves_by_at_most_one_and_a_half_times_the_range_near_it() =>
        Recordings.Sample(points =>
        {
            var segment = Segment.Recorded(points);
            return Holds(points, segment, near: 0) && Holds(points, segment, near: segment.Distance.Metres);
        });

    [Fact]
    public void A_middle_height_stays_within_the_recorded_range() =>
        Recordings.Where(p => p[^1].Distance.Metres > 400).Sample(points =>
        {
            var segment = Segment.Recorded(points);
            var (low, high) = (points.Min(p => p.Elevation.Metres), points.Max(p => p.Elevation.Metres));
            // Weights are all positive only where the window lies within the segment.
            return Enumerable.Range(0, 40).Select(i => 60 + i * (segment.Distance.Metres - 120) / 39)
                .All(x => segment.ElevationAt(Length.FromMetres(x)).Metres is var z && z > low - 1e-9 && z < high + 1e-9);
        });

    // The figures in the documentation of the filter, by its own formula sinc²(W/2L), W 100 m.
    [Theory]
    [InlineData(500, 0.97)]
    [InlineData(200, 0.81)]
    [InlineData(100, 0.41)]
    public void A_wave_keeps_the_stated_part_of_its_height(double wavelength, double part)
    {
        var segment = Segment.Recorded([.. Enumerable.Range(0, 4001).Select(i => At(i, 10 * Math.Cos(2 * Math.PI * i / wavelength)))]);

        Assert.Equal(10 * part, segment.ElevationAt(Length.FromMetres(2000)).Metres, 0.1); // the stated digits, and steps of 5 m
    }

    [Fact]
    public void A_finer_recording_of_the_same_road_climbs_nearly_the_same()
    {
        double[] climbs = [.. new[] { 20.0, 10, 5, 2, 1 }.Select(step => Noisy(step, noise: 0).Ascent.Up.Metres)];

        Assert.All(climbs, c => Assert.InRange(
            c, climbs[^1] * 0.99, climbs[^1] * 1.01)); // chords of 20 m cut the crests of 800 m hills by less than 1 %
    }

    // Three hills of 15 m over 2400 m and noise of 1 m (uniform), one point a metre: the raw sum explodes, the filtered one does not.
    [Fact]
    public void Noise_inflates_the_raw_ascent_and_hardly_the_climb()
    {
        var (clean, noisy) = (Noisy(1, noise: 0), Noisy(1, noise: 1));

        Assert.True(noisy.RawAscent.Up.Metres > 10 * clean.RawAscent.Up.Metres);
        Assert.Equal(clean.Ascent.Up.Metres, noisy.Ascent.Up.Metres, 0.05 * clean.Ascent.Up.Metres);
    }

    [Fact]
    public void A_finer_step_of_the_profile_changes_the_climb_little() =>
        Recordings.Where(p => p[^1].Distance.Metres > 300).Sample(points =>
        {
            var (coarse, fine) = (Climb(5), Climb(2.5));
            return Math.Abs(coarse - fine) <= 0.05 * fine + 2; // one turn of 2 m may be seen by one and not by the other

            double Climb(double step) =>
                Segment.Recorded(points, new(
                Length.FromMetres(step), Length.FromMetres(100), Length.FromMetres(2), Fraction.FromPercent(40))).Ascent.Up.Metres;
        });

    [Fact]
    public void A_grade_steeper_than_any_road_is_cut_and_told()
    {
        var segment = Segment.Recorded([At(0, 0), At(500, 0), At(501, 200), At(1000, 200)]);

        Assert.Equal(40, segment.GradeAt(Length.FromMetres(500)).Percent, 1e-9);
        Assert.InRange(segment.CutDistance.Metres, 50, 110); // the jump is spread over the smoothing length
        Assert.Equal(200, segment.ElevationAt(segment.Distance).Metres, 1e-6);
    }

    [Fact]
    public void Points_at_one_place_count_as_their_mean()
    {
        var segment = Segment.Recorded([At(0, 10), At(0, 20), At(100, 15), At(200, 15), At(200, 15)]);

        Assert.Equal(15, segment.ElevationAt(default).Metres, 1e-9);
        Assert.Equal(10, segment.RawAscent.Up.Metres, 1e-9);
    }

    [Theory]
    [InlineData(0, 100, 2, 40)]
    [InlineData(5, -1, 2, 40)]
    [InlineData(5, 100, double.NaN, 40)]
    [InlineData(5, 100, 2, 0)]
    [InlineData(5, 100, 2, 101)]
    public void A_filter_outside_its_ranges_is_refused(double step, double smoothing, double turn, double steepest) =>
        Assert.Throws<ArgumentOutOfRangeException>(
        () => new ElevationFilter(
        Length.FromMetres(step), Length.FromMetres(smoothing), Length.FromMetres(turn), Fraction.FromPercent(steepest)));

    static bool Holds(RoadPoint[] points, Segment segment, double near)
    {
        var reach = ElevationFilter.Usual.Smoothing.Metres / 2;
        var raw = near == 0 ? points[0].Elevation.Metres : points[^1].Elevation.Metres;
        // The recorded line may enter the reach between two points, so its heights at the border count too.
        var within = points.Where(p => Math.Abs(p.Distance.Metres - near) <= reach).Select(p => p.Elevation.Metres)
            .Append(OnLine(points, near == 0 ? reach : near - reach)).ToArray();
        return Math.Abs(segment.ElevationAt(Length.FromMetres(near)).Metres - raw) <= 1.5 * (within.Max() - within.Min()) + 1e-9;
    }

    static double OnLine(RoadPoint[] points, double place)
    {
        var clamped = Math.Clamp(place, 0, points[^1].Distance.Metres);
        var after = Math.Max(1, Array.FindIndex(points, p => p.Distance.Metres >= clamped));
        var (a, b) = (points[after - 1], points[after]);
        return double.Lerp(a.Elevation.Metres, b.Elevation.Metres, (clamped - a.Distance.Metres) / (b.Distance - a.Distance).Metres);
    }

    static Segment Noisy(double step, double noise)
    {
        var count = (int)(2400 / step);
        // A fixed sequence that looks random, so that the test says the same each time.
        return Segment.Recorded([.. Enumerable.Range(0, count + 1).Select(i =>
            At(i * step, 7.5 * (1 - Math.Cos(2 * Math.PI * i * step / 800)) + noise
            * (2 * Math.Abs(Math.Sin(i * 12.9898) * 43758.5453 % 1) - 1)))]);
    }

    static RoadPoint At(double distance, double elevation) => new(Length.FromMetres(distance), Length.FromMetres(elevation));
}
