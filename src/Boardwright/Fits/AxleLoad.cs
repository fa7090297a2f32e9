using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Fits;

/// <summary>What an axle has to carry outside its hanger, from the hanger's end to the end of the nut.</summary>
/// <remarks>Two speed washers, the part of a wheel pulley that stands out of the wheel, two bearings with a spacer between, and the
/// nut.</remarks>
/// <param name="Pulley">Part of the wheel pulley inside of the wheel's inner bearing; zero on a wheel that is not driven.</param>
/// <param name="Bearing">Width of one bearing.</param>
/// <param name="Nut">Height of the nut.</param>
/// <source cref="Findings.Sources.CommonPractice"/>
public sealed record AxleLoad(Length Pulley, Length Bearing, Length Nut)
{
    /// <summary>Spacer between the bearings of a wheel; common practice, no source.</summary>
    public static Length Spacer { get; } = Length.FromMillimetres(10);
    /// <summary>Two speed washers; common practice, no source.</summary>
    public static Length Washers { get; } = Length.FromMillimetres(2);

    /// <summary>On the driven axle of a board.</summary>
    public static Answer<AxleLoad> Compute(Board board) => Answer<AxleLoad>.Ask("", needs =>
    {
        var parts = board.Parts;
        var bearing = needs.Read(parts.Wheels.Bearing);
        var nut = needs.Read(DrivenAxle.TruckOf(parts).AxleDiameter);
        var pulley = parts.Drive.IsBelt ? needs.Read(parts.WheelPulley.Length) - needs.Read(parts.Wheels.SeatOffset) : default;
        if (needs.Unmet)
            return null;
        if (BallBearing.Parse(bearing) is not { } known)
        {
            needs.Lack(parts.Wheels.Bearing.Key);
            return null;
        }

        return new AxleLoad(pulley.Si > 0 ? pulley : default, known.Width, nut);
    });

    /// <summary>Axle length needed outside the hanger.</summary>
    public Length Needed => Washers + Pulley + Bearing * 2 + Spacer + Nut;
}
