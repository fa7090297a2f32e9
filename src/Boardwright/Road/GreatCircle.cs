using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Road;

/// <summary>A place on the earth.</summary>
/// <param name="Latitude">Latitude, −90 to 90 degrees, north positive.</param>
/// <param name="Longitude">Longitude, −180 to 180 degrees, east positive.</param>
/// <source cref="Sources.Haversine"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Position(Angle Latitude, Angle Longitude)
{
    /// <summary>From values in degrees.</summary>
    public static Position FromDegrees(double latitude, double longitude) => new(Angle.FromDegrees(latitude), Angle.FromDegrees(longitude));
}

/// <summary>Distance over a sphere of radius 6 371 000 m.</summary>
/// <validity>Any two places; heights do not enter.</validity>
/// <error>The earth is flattened, so up to 0.56 % against the ellipsoid; rounding matters below a millimetre.</error>
/// <source cref="Sources.Haversine"/>
public static class GreatCircle
{
    /// <summary>Radius of the sphere.</summary>
    public static Length Radius { get; } = Length.FromMetres(6_371_000);

    /// <summary>Shortest way over the sphere: 2 R asin √(sin²(Δφ/2) + cos φ₁ cos φ₂ sin²(Δλ/2)).</summary>
    public static Length Between(Position from, Position to)
    {
        var (north, east) = (
            Sin((to.Latitude - from.Latitude).Radians / 2),
            Sin((to.Longitude - from.Longitude).Radians / 2));
        var h = north * north + Cos(from.Latitude.Radians) * Cos(to.Latitude.Radians) * east * east;
        return 2 * Asin(Sqrt(Min(1, h))) * Radius;
    }
}
