using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Fits;

/// <summary>A pulley along its shaft.</summary>
/// <param name="Length">Its length.</param>
/// <param name="Face">Width of its toothed face.</param>
/// <param name="Offset">From its inner end to the teeth's inner edge.</param>
public sealed record PulleyAlong(DimensionChain Length, DimensionChain Face, DimensionChain Offset)
{
    /// <summary>Thickness of a flange; common practice, no source.</summary>
    public static Units.Length Flange { get; } = Units.Length.FromMillimetres(1);

    /// <summary>A pulley of a board. Where its teeth sit is taken as anywhere between its ends, flanges left out, when the file does not
    /// say.</summary>
    public static PulleyAlong Read(Needs needs, Pulley pulley)
    {
        ArgumentNullException.ThrowIfNull(needs);
        ArgumentNullException.ThrowIfNull(pulley);
        return new(DimensionChain.Read(needs, pulley.Length, typeof(Pulley)), DimensionChain.Read(needs, pulley.FaceWidth, typeof(Pulley)),
            OffsetOf(needs, pulley));
    }

    /// <summary>From a pulley's inner end to its teeth's inner edge.</summary>
    internal static DimensionChain OffsetOf(Needs needs, Pulley pulley)
    {
        if (pulley.FaceOffset.IsKnown)
            return DimensionChain.Read(needs, pulley.FaceOffset, typeof(Pulley));
        var spare = needs.Read(pulley.Length) - needs.Read(pulley.FaceWidth);
        var flange = pulley.FlangeDiameter.IsKnown ? Flange : default;
        var least = spare < flange * 2 ? spare / 2 : flange;
        return DimensionChain.Between(pulley.FaceOffset.Key, least, spare - least);
    }

    /// <summary>From its inner end to the middle of its teeth.</summary>
    public DimensionChain Middle => Offset.Plus(Face.Times(0.5));
    /// <summary>The same pulley, turned around on its shaft; the offset is then measured again, and as well as before.</summary>
    public PulleyAlong Turned => this with { Offset = Offset.WithNominal(Length.Nominal - Face.Nominal - Offset.Nominal) };
}

/// <summary>Belt drive along the driven axle, as one sum from the hanger's end outward. The wheel pulley sets the belt's plane; the motor
/// pulley slides on its shaft until the middle of its teeth is in that plane, or until it meets the plate.</summary>
/// <validity>Shaft and axle are parallel; belt and pulleys have no play of their own. The belt lies between the pulleys' ends.</validity>
/// <source cref="Sources.Geometry"/>
/// <param name="Plate">Outer face of the mount's plate; inboard of the hanger's end it is negative.</param>
/// <param name="ShaftEnd">End of the motor's shaft.</param>
/// <param name="Plane">Middle of the wheel pulley's teeth.</param>
/// <param name="Pulley">The motor pulley.</param>
/// <param name="BeltWidth">Width of the belt; that of the narrower face where the file does not say.</param>
/// <param name="IsOffsetKnown">Whether the file says where the teeth sit on the motor pulley.</param>
public sealed record AxialStackUp(
    DimensionChain Plate, DimensionChain ShaftEnd, DimensionChain Plane, PulleyAlong Pulley, DimensionChain BeltWidth, bool IsOffsetKnown)
{
    /// <summary>One speed washer; common practice, no source.</summary>
    public static Length Washer { get; } = Length.FromMillimetres(1);
    /// <summary>Part of pulley and belt that must be over the shaft; common practice, no source.</summary>
    public const double LeastSeat = 0.8;
    /// <summary>Greatest angle between the pulleys' planes, offset and tilt together.</summary>
    /// <source cref="Sources.SdpSiAlignment"/>
    public static Angle GreatestMisalignment { get; } = Angle.FromDegrees(0.25);
    /// <summary>How far two pulleys may be out of line at a distance of shaft and axle.</summary>
    public static Length Allowed(Length centre) => centre * Math.Tan(GreatestMisalignment.Radians);

    /// <summary>Along the driven axle of a board.</summary>
    public static Answer<AxialStackUp> Compute(Board board) =>
        !board.Parts.Drive.IsBelt ? Answer<AxialStackUp>.Beside : Answer<AxialStackUp>.Ask("", needs => Read(needs, board.Parts));

    /// <summary>The same of parts, whatever drives them.</summary>
    /// <returns>The stack; <c>null</c> where something is missing.</returns>
    internal static AxialStackUp? Read(Needs needs, Fitted parts)
    {
        var plate = DimensionChain.Read(needs, parts.Mount.PlateFromWheel, typeof(Mount)).Times(-1);
        var beyond = ShaftBeyondPlate(needs, parts);
        var wheel = DimensionChain.Read(needs, parts.WheelPulley.FaceWidth, typeof(Pulley));
        var plane = FromHanger(needs, parts).Plus(PulleyAlong.OffsetOf(needs, parts.WheelPulley)).Plus(wheel.Times(0.5));
        var pulley = PulleyAlong.Read(needs, parts.MotorPulley);
        if (needs.Unmet)
            return null;
        var belt = parts.Belt.Width.IsKnown ? DimensionChain.Read(needs, parts.Belt.Width, typeof(Belt))
            : pulley.Face.Nominal < wheel.Nominal ? pulley.Face : wheel;
        return new(plate, plate.Plus(beyond), plane, pulley, belt, parts.MotorPulley.FaceOffset.IsKnown);
    }

    /// <summary>From the hanger's end to the wheel pulley's inner end: one washer where the file does not say.</summary>
    internal static DimensionChain FromHanger(Needs needs, Fitted parts) => parts.Drive.PulleyFromHanger.IsKnown
        ? DimensionChain.Read(needs, parts.Drive.PulleyFromHanger, typeof(Drive)) : DimensionChain.Exact(Washer);

    /// <summary>Shaft that stands out of the plate.</summary>
    internal static DimensionChain ShaftBeyondPlate(Needs needs, Fitted parts) =>
        DimensionChain.Read(needs, parts.Motor.ShaftLength, typeof(Motor))
            .Minus(DimensionChain.Read(needs, parts.Mount.PlateThickness, typeof(Mount)));

    /// <summary>Room under the cover, from the plate.</summary>
    internal static DimensionChain CoverRoom(Needs needs, Fitted parts) =>
        DimensionChain.Read(needs, parts.Mount.CoverDepth, typeof(Mount))
            .Plus(DimensionChain.Read(needs, parts.Mount.CoverStandoff, typeof(Mount)));

    /// <summary>What stays between the plate and a pulley with its teeth in the belt's plane; negative where it cannot get there.</summary>
    public DimensionChain FromPlate => Plane.Minus(Pulley.Middle).Minus(Plate);
    /// <summary>Whether the plate is in the pulley's way to the belt's plane, wherever its teeth sit.</summary>
    public bool IsHeldByPlate => FromPlate.Possible.Millimetres < -1e-9;
    /// <summary>How far the middle of the motor pulley's teeth stays out of the belt's plane; zero where it gets there.</summary>
    public Length Misalignment => IsHeldByPlate ? -FromPlate.Nominal : default;
    /// <summary>Inner end of the motor pulley.</summary>
    public DimensionChain PulleyInner => IsHeldByPlate ? Plate : Plane.Minus(Pulley.Middle);
    /// <summary>Outer end of the motor pulley.</summary>
    public DimensionChain PulleyOuter => PulleyInner.Plus(Pulley.Length);
    /// <summary>Shaft from the pulley's inner end to its own end; negative where it ends before the pulley.</summary>
    public DimensionChain SeatLength => ShaftEnd.Minus(PulleyInner);
    /// <summary>Part of the pulley's length that is on the shaft.</summary>
    public double Seat => Math.Clamp(SeatLength.Nominal / Pulley.Length.Nominal, 0, 1);
    /// <summary>Shaft that is left when the pulley has what it must have of it.</summary>
    public DimensionChain SeatSpare => SeatLength.Minus(Pulley.Length.Times(LeastSeat));
    /// <summary>Outer edge of the belt.</summary>
    public DimensionChain BeltOuter => Plane.Plus(BeltWidth.Times(0.5));
    /// <summary>Shaft that is left when the belt has what it must have under it.</summary>
    public DimensionChain BeltSpare => ShaftEnd.Minus(BeltOuter).Plus(BeltWidth.Times(1 - LeastSeat));
    /// <summary>What stays between the shaft's end and a cover with this much room.</summary>
    public DimensionChain ShaftUnder(DimensionChain room) => Plate.Plus(room).Minus(ShaftEnd);
    /// <summary>What stays between the pulley's outer end and a cover with this much room.</summary>
    public DimensionChain PulleyUnder(DimensionChain room) => Plate.Plus(room).Minus(PulleyOuter);
    /// <summary>The same with the motor pulley turned around.</summary>
    public AxialStackUp Turned => this with { Pulley = Pulley.Turned };
}

/// <summary>What the driven axle carries, from the hanger's end to the end of the nut.</summary>
/// <remarks>Washers, the part of the wheel pulley that stands out of the wheel, the wheel as far as its inner bearing, two bearings with
/// a spacer between, a washer and the nut. Without a wheel pulley the inner bearing lies on a washer at the hanger's end.</remarks>
/// <source cref="Sources.Geometry"/>
/// <source cref="Sources.CommonPractice"/>
/// <param name="Wheel">Inner face of the wheel.</param>
/// <param name="Bearing">Inner face of its inner bearing.</param>
/// <param name="Needed">End of a full nut.</param>
/// <param name="Axle">End of the axle.</param>
public sealed record AxleStackUp(DimensionChain Wheel, DimensionChain Bearing, DimensionChain Needed, DimensionChain Axle)
{
    /// <summary>Spacer between the bearings of a wheel; common practice, no source.</summary>
    public static Length Spacer { get; } = Length.FromMillimetres(10);

    /// <summary>Of the driven axle of a board.</summary>
    public static Answer<AxleStackUp> Compute(Board board) =>
        board.Parts.Drive.IsHub ? Answer<AxleStackUp>.Beside : Answer<AxleStackUp>.Ask("", needs =>
    {
        var (parts, truck) = (board.Parts, DrivenAxle.TruckOf(board.Parts));
        var name = needs.Read(parts.Wheels.Bearing);
        var nut = needs.Read(truck.AxleDiameter);
        var axle = DimensionChain.Read(needs, truck.AxleOverhang, typeof(Truck));
        var (wheel, bearing) = parts.Drive.IsBelt ? WheelAndBearing(needs, parts)
            : (DimensionChain.Exact(AxialStackUp.Washer), DimensionChain.Exact(AxialStackUp.Washer));
        if (needs.Unmet)
            return null;
        if (Drivetrains.BallBearing.Parse(name) is not { } known)
        {
            needs.Lack(parts.Wheels.Bearing.Key);
            return null;
        }

        var beyond = known.Width * 2 + Spacer + AxialStackUp.Washer + nut;
        return new(wheel, bearing, bearing.Plus(DimensionChain.Exact(beyond)), axle);
    });

    static (DimensionChain Wheel, DimensionChain Bearing) WheelAndBearing(Needs needs, Fitted parts)
    {
        var seat = DimensionChain.Read(needs, parts.Wheels.SeatOffset, typeof(Wheel));
        var wheel = AxialStackUp.FromHanger(needs, parts).Plus(StandOut(PulleyAlong.Read(needs, parts.WheelPulley), seat));
        return (wheel, wheel.Plus(seat));
    }

    /// <summary>How much of a wheel pulley stays out of its wheel: what the bearing does not let in, and the teeth with their flange in any
    /// case, so that the belt clears the wheel.</summary>
    internal static DimensionChain StandOut(PulleyAlong pulley, DimensionChain seat)
    {
        var teeth = pulley.Offset.Plus(pulley.Face).Plus(DimensionChain.Exact(PulleyAlong.Flange));
        var outside = pulley.Length.Minus(seat);
        if (teeth.Nominal > pulley.Length.Nominal)
            teeth = pulley.Length;
        return outside.Nominal > teeth.Nominal ? outside : teeth;
    }

    /// <summary>Thread that stays beyond a full nut; negative where the nut is not full.</summary>
    public DimensionChain Free => Axle.Minus(Needed);
}
