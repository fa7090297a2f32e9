using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Parts;

namespace Boardwright.Traction;

/// <summary>What pulls on a belt, and what it is rated for.</summary>
/// <param name="PeakPull">Effective pull at the driving phase current limit.</param>
/// <param name="BrakePull">Effective pull at the braking phase current limit.</param>
/// <param name="Rating">Continuous working tension by width and teeth in mesh; <c>null</c> below two teeth in mesh or for a profile without
/// a rating.</param>
/// <param name="StaticTension">Tension of each span to set.</param>
/// <param name="Frequency">Note of the free span at that tension.</param>
/// <param name="ShaftLoad">Load on the motor shaft at rest.</param>
/// <source cref="Sources.OptibeltManual"/>
public sealed record BeltLoad(Force PeakPull, Force BrakePull, Force? Rating, Force StaticTension, Frequency Frequency, Force ShaftLoad)
{
    /// <summary>What is left in the looser span when braking at the limit; below zero it goes slack and may jump teeth.</summary>
    public Force SlackWhenBraking => StaticTension - BrakePull / 2;

    /// <summary>Of a board.</summary>
    public static Answer<BeltLoad> Compute(
        Board board, Answer<BeltDrive> belt, Answer<MotorConstantsOfBoard> motor, Answer<CurrentLimits> phase,
        Answer<CurrentLimits> brake) =>
        Answer<BeltLoad>.Ask("", needs =>
        {
            var drive = needs.Read(belt);
            var constants = needs.Read(motor);
            var (driving, braking) = (needs.Read(phase), needs.Read(brake));
            var width = needs.Read(board.Parts.Belt.Width);
            if (needs.Unmet)
                return null;
            var pulley = drive.Path.Driving;
            Force Pull(Current current) => BeltTension.EffectivePull(new MotorConstants(constants.Kv, 1).Torque(current), pulley);
            var (peak, stop) = (Pull(driving.Enforced.Current), Pull(braking.Enforced.Current));
            var (installed, floor) = (BeltTension.Installation(peak), BeltTension.ReversingFloor(stop));
            var tension = installed > floor ? installed : floor;
            var isRated = drive.Profile.TensionPerInch.Si > 0;
            return new BeltLoad(
                peak, stop,
                isRated ? new BeltStrength(drive.Profile, width).AllowedPull(drive.Path) : null,
                tension,
                BeltTension.SpanFrequency(tension, drive.Profile.KilogramsPerMetre(width), drive.Path.Span),
                BeltTension.ShaftLoad(tension, tension, drive.Path.Small == pulley ? drive.Path.SmallWrap : drive.Path.LargeWrap));
        });
}
