using System.Runtime.InteropServices;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Fits;

/// <summary>Where a motor sits beside its axle: distance of the shafts and angle above the horizontal.</summary>
/// <param name="Centre">Distance between motor shaft and axle.</param>
/// <param name="Tilt">Angle above the horizontal; negative below the axle.</param>
/// <param name="CanDiameter">Diameter of the can.</param>
/// <source cref="Findings.Sources.Geometry"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct MotorPlace(Length Centre, Angle Tilt, Length CanDiameter)
{
    /// <summary>Of a board.</summary>
    public static Answer<MotorPlace> Compute(Board board, Answer<Length> centre, Answer<Angle> mountAngle) =>
        board.Parts.Drive.IsHub || !board.Parts.Mount.IsChosen ? Answer<MotorPlace>.Beside : Answer<MotorPlace>.Ask("", needs =>
            new MotorPlace(needs.Read(centre), needs.Read(mountAngle), needs.Read(board.Parts.Motor.CanDiameter)));

    /// <summary>Distance between motor shaft and axle: the taut belt's, or the mount's own for gears.</summary>
    public static Answer<Length> CentreOf(Board board, Answer<BeltDrive> belt) =>
        board.Parts.Drive.IsHub ? Answer<Length>.Beside : Answer<Length>.Ask("", needs =>
    {
        if (!board.Parts.Drive.IsBelt)
            return needs.Read(board.Parts.Mount.CentreMin);
        if (needs.Read(belt) is { } laid)
            return laid.Path.CentreDistance;
        if (!needs.Unmet)
            needs.Lack("belt.teeth");
        return default;
    });

    /// <summary>Mount angle that is meant: the chosen one, or the mount's first.</summary>
    public static Answer<Angle> MountAngleOf(Board board) => Answer<Angle>.Ask("", needs =>
    {
        var chosen = board.Parts.Drive.MountAngle;
        if (chosen.IsKnown)
            return needs.Read(chosen);
        var angles = needs.Read(board.Parts.Mount.Angles);
        return needs.Unmet ? default : angles.Items[0];
    });

    /// <summary>Height of the motor's shaft above the axle.</summary>
    public Length Height => Centre * Sin(Tilt.Radians);
    /// <summary>How far the can reaches from the axle, along the board.</summary>
    public Length Reach => Centre * Cos(Tilt.Radians) + CanDiameter / 2;
    /// <summary>How near the can comes to the axle, along the board.</summary>
    public Length Near => Centre * Cos(Tilt.Radians) - CanDiameter / 2;

    /// <summary>Clearance of the can under a deck that is leaned: z − |y| tan φ − (C sin α + can/2).</summary>
    /// <param name="deck">Height of the deck's underside above the axle.</param>
    /// <param name="sideways">How far from the board's middle the can's outer end lies.</param>
    /// <param name="lean">Lean of the deck.</param>
    public Length UnderDeck(Length deck, Length sideways, Angle lean) => deck - sideways * Tan(lean.Radians) - Height - CanDiameter / 2;

    /// <summary>Clearance of the can above the road: r + C sin α − can/2.</summary>
    public Length AboveRoad(Length wheelRadius) => wheelRadius + Height - CanDiameter / 2;
}
