using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Road;

/// <summary>Where a rider's reflex begins to feed the weave of a board instead of damping it.</summary>
/// <param name="Low">For a slow rider with quiet ankles: delay 0.25 s, ankle stiffness 0.9 m g h.</param>
/// <param name="High">For a quick rider with soft ankles: delay 0.15 s, ankle stiffness 0.15 m g h.</param>
/// <remarks>
/// Straight run, small angles, wheels that roll without slip, board without mass, bushings without damping; the rider one rigid body
/// whose centre of mass lies 1 m above the road (J = 0.15 m h²), an ankle of stiffness K and a reflex with delay and the muscle's lag of
/// 0.03 s.
/// </remarks>
/// <validity>Trucks with one kingpin. Not in it: play, damping, tyres, wind, braking, and what knees, hips and arms do.</validity>
/// <error>An order of magnitude in the speed; its trends with angles, stiffness and wheelbase are fairly sure in sign.</error>
/// <source cref="Sources.SkateboardStability"/>
public sealed record StraightRunning(Speed Low, Speed High)
{
    const double Gravity = 9.80665;
    const double InertiaShare = 0.15;
    const double MuscleLag = 0.03;

    /// <summary>Of a board with its rider.</summary>
    public static Answer<StraightRunning> Compute(Board board) => Answer<StraightRunning>.Ask("", needs =>
    {
        var (front, rear) = (board.Parts.FrontTruck, board.Parts.RearTruck);
        var (steepFront, steepRear) = (needs.Read(front.PivotAngle), needs.Read(rear.PivotAngle));
        var stiffness = needs.Read(front.LeanStiffness).Si + needs.Read(rear.LeanStiffness).Si;
        var wheelbase = needs.Read(board.Parts.Deck.Wheelbase);
        var mass = board.Brief.LoadOnDeck(needs).Kilograms;
        if (needs.Unmet)
            return null;
        var steer = (Tan(steepFront.Radians) + Tan(steepRear.Radians)) / wheelbase.Items[0].Metres;
        return new StraightRunning(
            LateFrom(mass, 1, stiffness, steer, 0.25, 0.9), LateFrom(mass, 1, stiffness, steer, 0.15, 0.15));
    });

    /// <summary>The speed from which on a reflex comes too late: V² = ((I ω*² + W)/(κ K) − k)/(m h S), zero where even a stand is too
    /// fast.</summary>
    /// <param name="mass">Mass of the rider, kg.</param>
    /// <param name="height">Height of the centre of mass, m.</param>
    /// <param name="stiffness">Stiffness of both trucks together, N·m/rad.</param>
    /// <param name="steer">Curvature for each radian of lean S, 1/(m rad).</param>
    /// <param name="delay">The rider's whole delay, s, above the muscle's lag.</param>
    /// <param name="ankle">Stiffness of the ankles over m g h.</param>
    public static Speed LateFrom(double mass, double height, double stiffness, double steer, double delay, double ankle)
    {
        var weight = mass * Gravity * height;
        var inertia = (1 + InertiaShare) * mass * height * height;
        var quarter = QuarterTurn(delay);
        var held = ankle * weight / (stiffness + ankle * weight);
        var square = ((inertia * quarter * quarter + weight) / held - stiffness) / (mass * height * steer);
        return Speed.FromMetresPerSecond(Sqrt(Max(0, square)));
    }

    // The frequency at which delay and lag together are a quarter turn, rad/s.
    static double QuarterTurn(double delay) =>
        Numerics.RootFinding.Within(w => w * (delay - MuscleLag) + Atan(w * MuscleLag) - PI / 2, 0, PI / (2 * (delay - MuscleLag)), 1e-9);
}
