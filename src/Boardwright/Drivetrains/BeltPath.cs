using Boardwright.Findings;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Drivetrains;

/// <summary>The path of a toothed belt around two pulleys on parallel shafts, both turning the same way.</summary>
/// <remarks>Measured on the pitch line; spans are straight and the belt does not stretch. Either pulley may be the larger.</remarks>
/// <validity>Two pulleys, no idler. Crossed belts and back-side idlers are not covered.</validity>
/// <error>Exact for the stated geometry; a real belt adds its length tolerance, ±0.23 mm of centre distance for a belt of 250 to 500
/// mm.</error>
/// <source cref="Sources.Shigley"/>
/// <source cref="Sources.OptibeltManual"/>
public sealed record BeltPath
{
    // A belt that is whole to rounding has all its teeth.
    const double Rounding = 1e-9;

    // A belt longer than the large pulley's pitch circle by less than this has no span, whatever rounding says.
    static readonly Length LeastSpare = Length.FromMetres(1e-9);

    /// <summary>Lays a belt around two pulleys a given distance apart.</summary>
    /// <param name="driving">The pulley on the motor.</param>
    /// <param name="driven">The pulley on the wheel.</param>
    /// <param name="centreDistance">Distance C between the shafts' centres, above |D − d| / 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">One pitch circle would lie inside the other.</exception>
    public BeltPath(PulleyGeometry driving, PulleyGeometry driven, Length centreDistance)
    {
        ArgumentNullException.ThrowIfNull(driving);
        ArgumentNullException.ThrowIfNull(driven);
        (Driving, Driven) = (driving, driven);
        CentreDistance = Require.Above(centreDistance, (Large.PitchDiameter - Small.PitchDiameter) / 2);
    }

    /// <summary>The pulley on the motor.</summary>
    public PulleyGeometry Driving { get; }
    /// <summary>The pulley on the wheel.</summary>
    public PulleyGeometry Driven { get; }
    /// <summary>Distance C between the shafts' centres.</summary>
    public Length CentreDistance { get; }
    /// <summary>The pulley with the smaller pitch diameter d, or the driving one if they are equal.</summary>
    public PulleyGeometry Small => Driven.PitchDiameter < Driving.PitchDiameter ? Driven : Driving;
    /// <summary>The other pulley, of pitch diameter D.</summary>
    public PulleyGeometry Large => Driven.PitchDiameter < Driving.PitchDiameter ? Driving : Driven;
    /// <summary>Teeth of the driven pulley over teeth of the driving one: turns of the motor for one turn of the wheel.</summary>
    public double Ratio => (double)Driven.Teeth / Driving.Teeth;
    /// <summary>Angle φ of a span to the line of centres: asin((D − d) / 2C).</summary>
    public Angle Lean => Angle.FromRadians(LeanAt(CentreDistance, Small, Large));
    /// <summary>Angle the belt touches on the small pulley: π − 2φ, at most π.</summary>
    public Angle SmallWrap => Angle.FromRadians(PI - 2 * Lean.Radians);
    /// <summary>Angle the belt touches on the large pulley: π + 2φ, at least π.</summary>
    public Angle LargeWrap => Angle.FromRadians(PI + 2 * Lean.Radians);
    /// <summary>Length of each free span: C cos φ.</summary>
    public Length Span => Cos(Lean.Radians) * CentreDistance;
    /// <summary>Teeth of the small pulley within its wrap, with fractions: z (π − 2φ) / 2π.</summary>
    public double TeethInMesh => Small.Teeth * SmallWrap.Radians / (2 * PI);
    /// <summary>Whole teeth of the small pulley that carry load, as makers count for the rating.</summary>
    public int WholeTeethInMesh => (int)Floor(TeethInMesh + Rounding);
    /// <summary>Belt length on the pitch line: 2 C cos φ + π (D + d) / 2 + φ (D − d).</summary>
    public Length PitchLength => LengthAt(CentreDistance, Small, Large);
    /// <summary>How much longer the belt must be when the shafts move apart: dL/dC = 2 cos φ.</summary>
    public double LengthPerCentreDistance => 2 * Cos(Lean.Radians);
    /// <summary>Free distance between the pulleys' teeth: C less half of both outside diameters; negative where they collide.</summary>
    public Length Gap => CentreDistance - Driving.OutsideDiameter / 2 - Driven.OutsideDiameter / 2;

    /// <summary>Finds the centre distance at which a belt of a given number of teeth is just taut.</summary>
    /// <param name="teeth">Number of teeth of the belt, of the driving pulley's profile.</param>
    /// <param name="driving">The pulley on the motor.</param>
    /// <param name="driven">The pulley on the wheel.</param>
    /// <returns>The path, or <c>null</c> when the belt is too short to go around the large pulley.</returns>
    public static BeltPath? Fitting(int teeth, PulleyGeometry driving, PulleyGeometry driven)
    {
        ArgumentNullException.ThrowIfNull(driving);
        return Fitting(teeth * driving.Profile.Pitch, driving, driven);
    }

    /// <summary>Finds the centre distance at which a belt of a given length is just taut; the pulleys may still collide there, see
    /// <see cref="Gap"/>.</summary>
    /// <param name="pitchLength">Length of the belt on the pitch line.</param>
    /// <param name="driving">The pulley on the motor.</param>
    /// <param name="driven">The pulley on the wheel.</param>
    /// <returns>The path, or <c>null</c> when the belt is too short to go around the large pulley.</returns>
    public static BeltPath? Fitting(Length pitchLength, PulleyGeometry driving, PulleyGeometry driven)
    {
        ArgumentNullException.ThrowIfNull(driving);
        ArgumentNullException.ThrowIfNull(driven);
        var (small, large) = driven.PitchDiameter < driving.PitchDiameter ? (driven, driving) : (driving, driven);
        var nearest = (large.PitchDiameter - small.PitchDiameter) / 2;
        // Length grows with C from π D, where the pitch circles touch inside; and cos φ + φ sin φ ≥ 1, so that C is at most the straight
        // part's half.
        var farthest = (pitchLength - PI / 2 * (large.PitchDiameter + small.PitchDiameter)) / 2 * (1 + Rounding);
        if (!(LengthAt(nearest, small, large) + LeastSpare < pitchLength))
            return null;
        var centreDistance = RootFinding.Within(
            metres => (LengthAt(Length.FromMetres(metres), small, large) - pitchLength).Metres, nearest.Metres, farthest.Metres, 1e-14);
        return new(driving, driven, Length.FromMetres(centreDistance));
    }

    static double LeanAt(Length centreDistance, PulleyGeometry small, PulleyGeometry large)
    {
        var difference = large.PitchDiameter - small.PitchDiameter;
        return difference.Metres == 0 ? 0 : Asin(Min(1, difference / (2 * centreDistance)));
    }

    static Length LengthAt(Length centreDistance, PulleyGeometry small, PulleyGeometry large)
    {
        var lean = LeanAt(centreDistance, small, large);
        return 2 * Cos(lean) * centreDistance
            + PI / 2 * (large.PitchDiameter + small.PitchDiameter)
            + lean * (large.PitchDiameter - small.PitchDiameter);
    }
}
