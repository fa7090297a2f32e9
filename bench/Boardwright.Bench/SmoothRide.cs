using Boardwright.Rides;
using Boardwright.Road;

namespace Boardwright.Bench;

/// <summary>A ride whose speed plan and road are smooth, so that a solver of any order may show what it can.</summary>
/// <remarks>
/// Square of the speed over the place, S(x) = V² (1 − exp(−2 a x/V²)) (1 + b sin(2πx/p)), and grade g sin(2πx/q):
/// from rest with the acceleration a, then swelling about V, over hills.
/// </remarks>
/// <param name="Name">What it is called.</param>
/// <param name="Swell">How much the square of the speed swells, b.</param>
/// <param name="SwellMetres">How far from swell to swell, p.</param>
/// <param name="Grade">Steepest grade, g.</param>
/// <param name="HillMetres">How far from hill to hill, q.</param>
sealed record SmoothRide(string Name, double Swell, double SwellMetres, double Grade, double HillMetres)
{
    /// <summary>Length of the ride, m; about an hour.</summary>
    public const double Metres = 25_000;
    /// <summary>Acceleration from rest, m/s².</summary>
    public const double Accelerating = 0.8;
    /// <summary>Speed about which it swells, m/s.</summary>
    public const double Cruise = 7;
    /// <summary>State of charge at the start.</summary>
    public const double StartCharge = 0.9;
    /// <summary>The motors pull all the way: no kink anywhere.</summary>
    public static SmoothRide Gentle { get; } = new("gentle", 0.2, 900, 0.01, 1700);
    /// <summary>The electric brake comes and goes: kinks of the drive itself, which a ride over hills cannot avoid.</summary>
    public static SmoothRide Hills { get; } = new("hills", 0.4, 500, 0.04, 1100);

    /// <summary>Square of the speed at a place, m²/s².</summary>
    public double SquareAt(double place) =>
        Cruise * Cruise * -double.ExpM1(-2 * Accelerating * place / (Cruise * Cruise))
        * (1 + Swell * Math.Sin(2 * Math.PI * place / SwellMetres));

    /// <summary>The ride cut into pieces of a length, shorter near the start, where the plan bends most.</summary>
    public RideCourse Cut(RiderPace pace, double pieceMetres)
    {
        List<RoadPoint> points = [];
        for (var at = 0.0; at < Metres - pieceMetres / 2; at += pieceMetres * Math.Min(1, 0.1 + at / 150))
            points.Add(PointAt(at));
        points.Add(PointAt(Metres));
        return RideCourse.Create(new Route(Name, [Segment.Stated(points)]), pace, SquareAt);
    }

    RoadPoint PointAt(double at) => new(
        Length.FromMetres(at), Length.FromMetres(Grade * HillMetres / (2 * Math.PI) * (1 - Math.Cos(2 * Math.PI * at / HillMetres))));
}
