using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Fits;

/// <summary>What stands out of a motor mount's plate under the belt cover.</summary>
/// <param name="Shaft">Length of the motor shaft beyond its mounting face.</param>
/// <param name="Plate">Thickness of the plate.</param>
/// <param name="Pulley">Length of the motor pulley.</param>
/// <param name="Room">Inner depth of the cover and its standoffs, from the plate.</param>
/// <source cref="Findings.Sources.Geometry"/>
public sealed record CoverRoom(Length Shaft, Length Plate, Length Pulley, Length Room)
{
    /// <summary>Gap that must stay to the cover; common practice, no source.</summary>
    public static Length Gap { get; } = Length.FromMillimetres(1);
    /// <summary>Part of the pulley that must be on the shaft; common practice, no source.</summary>
    public const double LeastSeat = 0.8;

    /// <summary>Under the cover of a board's mounts.</summary>
    public static Answer<CoverRoom> Compute(Board board) =>
        !board.Parts.Drive.IsBelt ? Answer<CoverRoom>.Beside : Answer<CoverRoom>.Ask("", needs =>
    {
        var mount = board.Parts.Mount;
        var shaft = needs.Read(board.Parts.Motor.ShaftLength);
        var plate = needs.Read(mount.PlateThickness);
        var pulley = needs.Read(board.Parts.MotorPulley.Length);
        var room = needs.Read(mount.CoverDepth) + needs.Read(mount.CoverStandoff);
        return needs.Unmet ? null : new CoverRoom(shaft, plate, pulley, room);
    });

    /// <summary>Shaft beyond the plate.</summary>
    public Length Beyond => Shaft - Plate;
    /// <summary>Part of the pulley's length that is on the shaft, at most 1.</summary>
    public double Seat => Clamp(Beyond / Pulley, 0, 1);
    /// <summary>How far the further of shaft and pulley reaches.</summary>
    public Length Reach => Beyond > Pulley ? Beyond : Pulley;
    /// <summary>What is left between the further of the two and the cover; negative when they meet.</summary>
    public Length Clearance => Room - Reach;
    /// <summary>How much of the shaft must be cut off so that the gap stays, in steps of half a millimetre; zero when none.</summary>
    public Length Cut => Length.FromMillimetres(Ceiling(Max(0, (Beyond + Gap - Room).Millimetres) * 2 - 1e-6) / 2);
    /// <summary>Whether cutting alone mends it: the pulley itself clears and stays seated on the shorter shaft.</summary>
    public bool CutMends => Room - Pulley >= Gap && (Beyond - Cut) / Pulley >= LeastSeat;
    /// <summary>Washers of a thickness that must go under each cover screw so that the gap stays.</summary>
    public int Washers(Length thickness) => (int)Ceiling(Max(0, (Gap - Clearance) / thickness) - 1e-9);
}
