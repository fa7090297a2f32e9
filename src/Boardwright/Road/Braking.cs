using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Road;

/// <summary>How long a board takes to stop.</summary>
/// <validity>Constant braking once it is there, constant grade, no help from air or rolling; during the reaction the speed
/// stays.</validity>
/// <error>Exact for the stated braking.</error>
/// <source cref="Sources.Mechanics"/>
public static class Braking
{
    const double Gravity = RoadLoad.Gravity;
    const double KilometresPerHour = 1 / 3.6;

    /// <summary>Way from the first sight of the danger to rest: v t_r + v²/(2 (a + g sin θ)).</summary>
    /// <param name="speed">Speed v, 0 or more.</param>
    /// <param name="reaction">Time before the brake bites t_r, 0 or more.</param>
    /// <param name="braking">Deceleration of the brake on the level a, 0 or more.</param>
    /// <param name="grade">Rise over run, negative downhill.</param>
    /// <returns>The way, or <c>null</c> when the brake does not slow the board on this grade.</returns>
    public static Length? StoppingDistance(Speed speed, Duration reaction, Acceleration braking, Fraction grade = default)
    {
        var v = speed.MetresPerSecond;
        if (v == 0)
            return Length.FromMetres(0);
        var effective = braking.MetresPerSecondSquared + AlongSlope(grade);
        return effective > 0 ? Length.FromMetres(v * reaction.Seconds + v * v / (2 * effective)) : null;
    }

    /// <summary>
    /// The same with a brake that comes in at a constant rate: from rest of the lever to the full deceleration a in the time a/J.
    /// On the level, and when the full deceleration is reached, this adds v a/(2J) − a³/(24 J²).
    /// </summary>
    /// <param name="speed">Speed v, 0 or more.</param>
    /// <param name="reaction">Time before the brake bites t_r, 0 or more.</param>
    /// <param name="braking">Deceleration of the brake on the level a, 0 or more.</param>
    /// <param name="jerkMetresPerSecondCubed">Rate at which it comes in J, above 0 m/s³.</param>
    /// <param name="grade">Rise over run, negative downhill.</param>
    /// <returns>The way, or <c>null</c> when the brake does not slow the board on this grade.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above 0.</exception>
    public static Length? StoppingDistance(
        Speed speed, Duration reaction, Acceleration braking, double jerkMetresPerSecondCubed, Fraction grade = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(jerkMetresPerSecondCubed);
        var (v, jerk, slope) = (speed.MetresPerSecond, jerkMetresPerSecondCubed, AlongSlope(grade));
        if (v == 0)
            return Length.FromMetres(0);
        var full = braking.MetresPerSecondSquared;
        var ramp = full / jerk;
        // At rest within the ramp: v = slope t + J t²/2.
        var untilRest = (Sqrt(slope * slope + 2 * jerk * v) - slope) / jerk;
        var time = Min(ramp, untilRest);
        var before = v * reaction.Seconds + v * time - slope * time * time / 2 - jerk * time * time * time / 6;
        if (untilRest <= ramp)
            return Length.FromMetres(before);
        var left = v - slope * ramp - jerk * ramp * ramp / 2;
        var effective = full + slope;
        return effective > 0 ? Length.FromMetres(before + left * left / (2 * effective)) : null;
    }

    /// <summary>
    /// The road designers' stopping sight distance for bicycles: V²/(254 (f + G)) + V t_r/3.6, V in km/h, in metres.
    /// </summary>
    /// <param name="speed">Speed V.</param>
    /// <param name="friction">Coefficient of friction f; the designers take 0.25.</param>
    /// <param name="reaction">Reaction time t_r; the designers take 2.5 s.</param>
    /// <param name="grade">Rise over run G, negative downhill.</param>
    /// <returns>The way, or <c>null</c> when friction does not hold the grade.</returns>
    /// <source cref="Sources.Aashto"/>
    public static Length? SightDistance(Speed speed, double friction, Duration reaction, Fraction grade = default)
    {
        var v = speed.MetresPerSecond / KilometresPerHour;
        var hold = friction + grade.Value;
        return hold > 0 ? Length.FromMetres(v * v / (254 * hold) + v * KilometresPerHour * reaction.Seconds) : null;
    }

    /// <summary>
    /// The same in feet, V²/(30 (f + G)) + 3.67 V with V in mi/h, for a reaction of 2.5 s: the form that is printed for 20 mi/h as 127 ft.
    /// </summary>
    /// <param name="speed">Speed V.</param>
    /// <param name="friction">Coefficient of friction f; the designers take 0.25.</param>
    /// <param name="grade">Rise over run G, negative downhill.</param>
    /// <returns>The way, or <c>null</c> when friction does not hold the grade.</returns>
    /// <source cref="Sources.Aashto"/>
    public static Length? SightDistanceInFeet(Speed speed, double friction, Fraction grade = default)
    {
        var v = speed.MilesPerHour;
        var hold = friction + grade.Value;
        return hold > 0 ? Length.FromFeet(v * v / (30 * hold) + 3.67 * v) : null;
    }

    /// <summary>Deceleration on the level that a stop from a speed within a way takes: v²/(2 s).</summary>
    /// <param name="speed">Speed v.</param>
    /// <param name="distance">Way of braking s, above 0, without that of the reaction.</param>
    public static Acceleration Needed(Speed speed, Length distance) =>
        Acceleration.FromMetresPerSecondSquared(speed.MetresPerSecond * speed.MetresPerSecond / (2 * distance.Metres));

    static double AlongSlope(Fraction grade) => Gravity * grade.Value / Sqrt(1 + grade.Value * grade.Value);
}

/// <summary>A board and its rider as one stiff body on two axles: what grip and tipping allow on the level.</summary>
/// <param name="Wheelbase">Distance of the axles L, above 0.</param>
/// <param name="BehindFrontAxle">Distance of the centre of mass behind the front axle l_f, 0 to L.</param>
/// <param name="Height">Height of the centre of mass h, above 0.</param>
/// <validity>Level road, stiff rider who does not move, one grip for every wheel.</validity>
/// <error>A rider's centre of mass is known to 10 %; it moves by more than that while braking.</error>
/// <source cref="Sources.Mechanics"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct GripLimits(Length Wheelbase, Length BehindFrontAxle, Length Height)
{
    /// <summary>Deceleration with the rear axle alone: μ g l_f/(L + μ h). Weight leaves the rear axle, so this is little.</summary>
    /// <param name="grip">Coefficient of friction μ, 0 or more.</param>
    public Acceleration RearBraking(double grip) =>
        Deceleration(grip * BehindFrontAxle.Metres / (Wheelbase.Metres + grip * Height.Metres));

    /// <summary>Deceleration with the front axle alone: μ g l_r/(L − μ h), l_r = L − l_f, and never more than tips the board.</summary>
    /// <param name="grip">Coefficient of friction μ, 0 or more.</param>
    public Acceleration FrontBraking(double grip)
    {
        var room = Wheelbase.Metres - grip * Height.Metres;
        var tipping = TippingForward;
        if (room <= 0)
            return tipping;
        var gripped = Deceleration(grip * (Wheelbase.Metres - BehindFrontAxle.Metres) / room);
        return gripped < tipping ? gripped : tipping;
    }

    /// <summary>Deceleration with all wheels: μ g, and never more than tips the board.</summary>
    /// <param name="grip">Coefficient of friction μ, 0 or more.</param>
    public Acceleration AllWheelBraking(double grip)
    {
        var gripped = Deceleration(grip);
        return gripped < TippingForward ? gripped : TippingForward;
    }

    /// <summary>Deceleration at which the rear axle lifts: g l_f/h.</summary>
    public Acceleration TippingForward => Deceleration(BehindFrontAxle.Metres / Height.Metres);

    /// <summary>Deceleration at which a rider falls who stands fixed: g b/h.</summary>
    /// <param name="toFrontFoot">Distance b of the rider's centre of mass behind the leading edge of the front foot.</param>
    /// <param name="height">Height h of the rider's centre of mass above the deck, above 0.</param>
    public static Acceleration StandingRider(Length toFrontFoot, Length height) => Deceleration(toFrontFoot.Metres / height.Metres);

    static Acceleration Deceleration(double partOfGravity) => Acceleration.FromMetresPerSecondSquared(RoadLoad.Gravity * partOfGravity);
}
