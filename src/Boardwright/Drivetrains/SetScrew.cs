using Boardwright.Findings;
using Boardwright.Numerics;

namespace Boardwright.Drivetrains;

/// <summary>What a cup-point set screw holds on a hardened shaft.</summary>
/// <remarks>A flat or dog point holds 0.92, an oval point 0.90, a cone point 1.07 of it. The screw should be about half the shaft's
/// diameter.</remarks>
/// <validity>Screws of 1.5 to 25 mm, seated with the full torque, until the collar has moved 0.25 mm.</validity>
/// <error>Only the three smallest sizes are read from a chart; the larger ones are from memory, and one trade page prints 2.5 times less
/// for 6.35 mm. Vibration and reversal take three quarters and more.</error>
/// <source cref="Sources.SetScrewChart"/>
/// <source cref="Sources.SetScrewsFromMemory"/>
/// <source cref="Sources.Unbrako"/>
public static class SetScrew
{
    /// <summary>Smallest divisor of the static holding torque for a load that changes or reverses.</summary>
    public const double LeastDynamicFactor = 4;
    /// <summary>Largest divisor of the static holding torque for a load that changes or reverses.</summary>
    public const double GreatestDynamicFactor = 8;

    // Inches and pounds-force: #0 to #6, #8, #10, 1/4 to 5/8, 3/4, 7/8, 1.
    static readonly Polyline HoldingForces = new(
        [0.060, 0.073, 0.086, 0.099, 0.112, 0.125, 0.138, 0.164, 0.190, 0.250, 0.3125, 0.375, 0.4375, 0.500, 0.5625, 0.625, 0.750, 0.875,
        1.000],
        [50, 65, 85, 120, 160, 200, 250, 385, 540, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 5000, 6000, 7000]);

    /// <summary>Force against sliding along the shaft that one screw holds; straight between the inch sizes.</summary>
    /// <returns>The force, or <c>null</c> outside of the table.</returns>
    public static Force? HoldingForce(Length screwDiameter) =>
        HoldingForces.Covers(screwDiameter.Inches) ? Force.FromPoundsForce(HoldingForces.At(screwDiameter.Inches)) : null;

    /// <summary>Torque that a screw holds at rest: F d / 2.</summary>
    /// <param name="holdingForce">Holding force F.</param>
    /// <param name="shaftDiameter">Diameter d of the shaft.</param>
    public static Torque HoldingTorque(Force holdingForce, Length shaftDiameter) =>
        Torque.FromNewtonMetres(holdingForce.Newtons * shaftDiameter.Metres / 2);

    /// <summary>Torque that a screw holds under a load that changes or reverses, between F d / 2 divided by 8 and by 4.</summary>
    /// <param name="holdingForce">Holding force F.</param>
    /// <param name="shaftDiameter">Diameter d of the shaft.</param>
    public static (Torque Least, Torque Greatest) DynamicTorque(Force holdingForce, Length shaftDiameter)
    {
        var atRest = HoldingTorque(holdingForce, shaftDiameter);
        return (atRest / GreatestDynamicFactor, atRest / LeastDynamicFactor);
    }

    /// <summary>Torque to seat a metric set screw with.</summary>
    /// <param name="screwDiameter">Nominal diameter of the screw.</param>
    /// <param name="isStainless">Whether it is of stainless steel instead of alloy steel.</param>
    /// <returns>The torque, or <c>null</c> when the chart has no such screw.</returns>
    /// <source cref="Sources.Ruland"/>
    public static Torque? SeatingTorque(Length screwDiameter, bool isStainless = false)
    {
        double? torque = (Math.Round(screwDiameter.Millimetres, 3), isStainless) switch
        {
            (3, false) => 0.92,
            (4, false) => 2.2,
            (5, false) => 4.0,
            (6, false) => 7.2,
            (8, false) => 17,
            (3, true) => 0.73,
            (4, true) => 1.76,
            (5, true) => 3.2,
            (6, true) => 5.76,
            _ => null,
        };
        return torque is { } newtonMetres ? Torque.FromNewtonMetres(newtonMetres) : null;
    }
}
