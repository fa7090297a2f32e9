using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Road;

public sealed class GreatCircleTests
{
    // Handbook of the project, check 85: one degree of longitude on the equator, R 6 371 000 m -> 111194.927 m, 1e-6.
    [Fact]
    public void A_degree_on_the_equator_is_as_in_check_85() =>
        Assert.Equal(111194.927, GreatCircle.Between(Position.FromDegrees(0, 0), Position.FromDegrees(0, 1)).Metres, 0.111);

    // Check 85: (53.383796, -6.258746) to (53.3839, -6.258741) -> 11.569 m, 1e-3.
    [Fact]
    public void Two_neighbouring_points_in_Dublin_are_as_in_check_85() =>
        Assert.Equal(11.569, GreatCircle.Between(Position.FromDegrees(53.383796, -6.258746), Position.FromDegrees(53.3839, -6.258741))
        .Metres, 0.0116);

    [Fact]
    public void Opposite_places_are_half_the_circumference_apart() =>
        Assert.Equal(Math.PI * 6_371_000, GreatCircle.Between(Position.FromDegrees(30, 40), Position.FromDegrees(-30, -140)).Metres,
        0.1); // asin near 1 keeps half the digits

    // A second method: the chord between the two points in space, 2 R sin(angle / 2).
    [Fact]
    public void The_arc_belongs_to_the_chord_through_the_earth() =>
        Gen.Select(Gen.Double[-89, 89], Gen.Double[-180, 180], Gen.Double[-89, 89], Gen.Double[-180, 180]).Sample((a, b, c, d) =>
        {
            var (from, to) = (Position.FromDegrees(a, b), Position.FromDegrees(c, d));
            var chord = Math.Sqrt(OnSphere(from).Zip(OnSphere(to), (p, q) => (p - q) * (p - q)).Sum());
            var angle = GreatCircle.Between(from, to) / GreatCircle.Radius;
            return Math.Abs(2 * Math.Sin(angle / 2) - chord) < 1e-9;
        });

    static double[] OnSphere(Position p)
    {
        var (f, l) = (p.Latitude.Radians, p.Longitude.Radians);
        return [Math.Cos(f) * Math.Cos(l), Math.Cos(f) * Math.Sin(l), Math.Sin(f)];
    }
}
