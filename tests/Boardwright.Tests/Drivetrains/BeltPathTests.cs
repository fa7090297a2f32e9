using Boardwright.Drivetrains;
using CsCheck;

namespace Boardwright.Tests.Drivetrains;

public sealed class BeltPathTests
{
    // Budynas & Nisbett, Shigley's Mechanical Engineering Design, solutions manual ch. 17, p. 425, by eqs 17-1 and 17-2.
    // Given: d = 6 in, D = 18 in, C = 96 in. Printed: wraps 3.016 511 rad and 3.266 674 rad, length 230.074 in.
    [Fact]
    public void Path_matches_Shigley_page_425()
    {
        var path = new BeltPath(Wheel(6), Wheel(18), Length.FromInches(96));

        Printed.Matches("3.016511", path.SmallWrap.Radians);
        Printed.Matches("3.266674", path.LargeWrap.Radians);
        Printed.Matches("230.074", path.PitchLength.Inches);
    }

    [Fact]
    public void Fitting_recovers_the_centre_distance_of_Shigley_page_425() =>
        Assert.Equal(96, BeltPath.Fitting(Length.FromInches(230.074), Wheel(6), Wheel(18))!.CentreDistance.Inches, 0.0005);

    // Optibelt, Technical Manual Rubber Timing Belt Drives, pp. 43-44: 8M, 36 and 56 teeth, belt 1200 mm.
    [Fact]
    public void Path_matches_Optibelt_page_43()
    {
        var path = BeltPath.Fitting(150, new(36, ToothProfile.Htd8M), new(56, ToothProfile.Htd8M))!;

        Printed.Matches("415.22", path.CentreDistance.Millimetres);
        Printed.Matches("414.44", path.Span.Millimetres);
        Assert.Equal(17, path.WholeTeethInMesh);
    }

    [Fact]
    public void Fitting_undoes_PitchLength() =>
        Pair.SelectMany(pair => Gen.Double[1.01, 10].Select(reach => (pair.Small, pair.Large, Reach: reach))).Sample(drive =>
        {
            var path = new BeltPath(drive.Small, drive.Large, drive.Reach / 2 * (drive.Small.PitchDiameter + drive.Large.PitchDiameter));
            var back = BeltPath.Fitting(path.PitchLength, drive.Small, drive.Large)!;
            return Math.Abs((back.CentreDistance - path.CentreDistance).Metres) < 1e-12;
        });

    // Near its shortest, dL/dC goes to nothing and the centre distance is known only to the two-thirds power of the length's rounding.
    [Fact]
    public void Fitting_undoes_PitchLength_of_belts_barely_longer_than_the_large_pulley() =>
        Gen.Select(Pair, Gen.Double[-12, 0]).Sample(
            (pair, power) =>
            {
                var nearest = (pair.Large.PitchDiameter - pair.Small.PitchDiameter) / 2;
                var path = new BeltPath(pair.Small, pair.Large, nearest * (1 + Math.Pow(10, power)) + Length.FromMetres(1e-12));
                var back = BeltPath.Fitting(path.PitchLength, pair.Small, pair.Large);
                return back is null ? path.PitchLength <= Math.PI * pair.Large.PitchDiameter + Length.FromMetres(1e-9)
                    : Math.Abs((back.PitchLength - path.PitchLength).Metres) < 1e-13;
            },
            iter: 20_000);

    [Fact]
    public void It_does_not_matter_which_pulley_drives() =>
        Gen.Select(Pair, Gen.Double[1.01, 10]).Sample((pair, reach) =>
        {
            var distance = reach / 2 * (pair.Small.PitchDiameter + pair.Large.PitchDiameter);
            var (down, up) = (new BeltPath(pair.Small, pair.Large, distance), new BeltPath(pair.Large, pair.Small, distance));
            return down.PitchLength == up.PitchLength && down.TeethInMesh.Equals(up.TeethInMesh) && down.Span == up.Span
                && down.Large == up.Large && down.SmallWrap == up.SmallWrap
                && BeltPath.Fitting(down.PitchLength, pair.Large, pair.Small)!.CentreDistance
                == BeltPath.Fitting(down.PitchLength, pair.Small, pair.Large)!.CentreDistance;
        });

    [Fact]
    public void A_belt_one_tooth_longer_moves_the_axle_by_a_little_more_than_half_a_pitch() =>
        Gen.Select(Pair, Gen.Int[4, 60]).Sample((pair, more) =>
        {
            var shortest = (int)Math.Ceiling((Math.PI * pair.Large.PitchDiameter) / pair.Large.Profile.Pitch) + more;
            var (near, far) = (BeltPath.Fitting(shortest, pair.Small, pair.Large)!,
                BeltPath.Fitting(shortest + 1, pair.Small, pair.Large)!);
            var move = (far.CentreDistance - near.CentreDistance).Millimetres;
            // dL/dC falls between both ends from 2 cos of the one lean to 2 cos of the other.
            return move > 2.5 - 1e-9 && move <= 5 / near.LengthPerCentreDistance + 1e-9 && move >= 5 / far.LengthPerCentreDistance - 1e-9;
        });

    [Fact]
    public void Length_grows_with_the_distance_at_the_stated_rate() =>
        Gen.Select(Pair, Gen.Double[1.01, 10]).Sample((pair, reach) =>
        {
            var distance = reach / 2 * (pair.Small.PitchDiameter + pair.Large.PitchDiameter);
            var step = Length.FromMicrometres(10);
            var rate = (new BeltPath(pair.Small, pair.Large, distance + step).PitchLength
                - new BeltPath(pair.Small, pair.Large, distance - step).PitchLength) / (2 * step);
            return Math.Abs(rate - new BeltPath(pair.Small, pair.Large, distance).LengthPerCentreDistance) < 1e-6;
        });

    // A second method that knows no formula of the path: the taut belt is the convex hull of both pitch circles, here of 20 000 points on
    // each.
    [Theory]
    [InlineData(15, 36, 66.6436)]
    [InlineData(20, 20, 62.5)]
    [InlineData(12, 72, 90)]
    [InlineData(60, 18, 96.662)]
    public void Length_agrees_with_a_walk_along_the_belt(int driving, int driven, double millimetres)
    {
        var path = new BeltPath(Htd(driving), Htd(driven), Length.FromMillimetres(millimetres));
        const int points = 20_000;
        var (r1, r2, c) = (path.Driving.PitchDiameter.Millimetres / 2, path.Driven.PitchDiameter.Millimetres / 2, millimetres);
        // Walking once around, the belt at heading t lies on the circle that reaches farther in that direction.
        var walked = 0.0;
        var (x, y) = At(0);
        for (var i = 1; i <= points; i++)
        {
            var (nextX, nextY) = At(2 * Math.PI * i / points);
            walked += Math.Sqrt((nextX - x) * (nextX - x) + (nextY - y) * (nextY - y));
            (x, y) = (nextX, nextY);
        }

        Assert.Equal(walked, path.PitchLength.Millimetres, 0.01);

        (double X, double Y) At(double t) => r1 >= c * Math.Cos(t) + r2
            ? (r1 * Math.Cos(t), r1 * Math.Sin(t))
            : (c + r2 * Math.Cos(t), r2 * Math.Sin(t));
    }

    [Fact]
    public void Wraps_make_a_whole_turn_and_the_span_closes_the_triangle() =>
        Gen.Select(Pair, Gen.Double[1.01, 10]).Sample((pair, reach) =>
        {
            var path = new BeltPath(pair.Small, pair.Large, reach / 2 * (pair.Small.PitchDiameter + pair.Large.PitchDiameter));
            var halfDifference = (pair.Large.PitchDiameter - pair.Small.PitchDiameter).Metres / 2;
            return Math.Abs((path.SmallWrap + path.LargeWrap).Radians - 2 * Math.PI) < 1e-12
                && Math.Abs(Math.Sqrt(path.CentreDistance.Metres * path.CentreDistance.Metres - halfDifference * halfDifference)
                - path.Span.Metres) < 1e-12;
        });

    [Fact]
    public void Equal_pulleys_share_the_turn_and_have_half_their_teeth_in_mesh()
    {
        var path = BeltPath.Fitting(45, Htd(20), Htd(20))!;

        Assert.Equal(62.5, path.CentreDistance.Millimetres, 1e-9);
        Assert.Equal(10, path.WholeTeethInMesh);
        Assert.Equal(1, path.Ratio);
    }

    [Fact]
    public void A_belt_too_short_for_the_large_pulley_has_no_path()
    {
        Assert.Null(BeltPath.Fitting(36, Htd(15), Htd(36)));
        Assert.Null(BeltPath.Fitting(36, Htd(36), Htd(15)));
        Assert.Null(BeltPath.Fitting(20, Htd(20), Htd(20)));
        Assert.Null(BeltPath.Fitting(0, Htd(15), Htd(36)));
        Assert.Null(BeltPath.Fitting(Length.FromMetres(double.NaN), Htd(15), Htd(36)));
        Assert.NotNull(BeltPath.Fitting(37, Htd(15), Htd(36)));
    }

    [Fact]
    public void A_belt_that_fits_only_with_colliding_pulleys_shows_a_negative_gap()
    {
        Assert.True(BeltPath.Fitting(37, Htd(15), Htd(36))!.Gap < Length.FromMetres(0));
        Assert.True(BeltPath.Fitting(53, Htd(15), Htd(36))!.Gap > Length.FromMetres(0));
    }

    [Fact]
    public void A_pulley_within_the_other_is_refused()
    {
        var half = (Htd(36).PitchDiameter - Htd(15).PitchDiameter) / 2;
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltPath(Htd(15), Htd(36), half));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltPath(Htd(36), Htd(15), half));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltPath(Htd(20), Htd(20), Length.FromMetres(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltPath(Htd(20), Htd(20), Length.FromMetres(double.NaN)));
    }

    [Fact]
    public void The_makers_approximation_is_not_what_is_used() =>
        Assert.Equal(
            0.135,
            BeltEstimates.CentreDistance(Length.FromMillimetres(450), Htd(72).PitchDiameter, Htd(20).PitchDiameter)!.Value.Millimetres
            - BeltPath.Fitting(90, Htd(20), Htd(72))!.CentreDistance.Millimetres,
            0.0005);

    static Gen<(PulleyGeometry Small, PulleyGeometry Large)> Pair { get; } =
        Gen.Select(Gen.Int[10, 40], Gen.Int[0, 80], static (teeth, more) => (Htd(teeth), Htd(teeth + more)));

    static PulleyGeometry Htd(int teeth) => new(teeth, ToothProfile.Htd5M);

    static PulleyGeometry Wheel(double inches) => new(10, new("flat", Length.FromInches(Math.PI * inches / 10), Length.FromMetres(0)));
}
