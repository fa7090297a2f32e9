using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Drivetrains;

/// <summary>Turns of the motor for one turn of a driven wheel, and the losses between them.</summary>
/// <param name="Ratio">z_wheel / z_motor for a belt, the gearbox's own ratio for gears, 1 for a hub motor.</param>
/// <param name="Efficiency">Efficiency on torque.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record GearRatio(double Ratio, double Efficiency)
{
    /// <summary>The gearing of a board.</summary>
    public static Answer<GearRatio> Compute(Board board) => Answer<GearRatio>.Ask("drive.ratio", needs =>
    {
        var parts = board.Parts;
        switch (needs.Read(parts.Drive.Kind))
        {
            case var _ when needs.Unmet:
                return null;
            case DriveKind.Hub:
                return new GearRatio(1, needs.Read(parts.Drive.Efficiency, Number.FromValue(1)).Value);
            case DriveKind.Gear:
                var ratio = needs.Read(parts.Gearbox.Ratio).Value;
                var efficiency = parts.Gearbox.Efficiency.IsKnown ? parts.Gearbox.Efficiency : parts.Drive.Efficiency;
                var kept = needs.Read(efficiency).Value;
                return needs.Unmet ? null : new GearRatio(ratio, kept);
            default:
                var (wheel, motor) = (needs.Read(parts.WheelPulley.Teeth), needs.Read(parts.MotorPulley.Teeth));
                var belt = needs.Read(parts.Drive.Efficiency).Value;
                return needs.Unmet ? null : new GearRatio((double)wheel / motor, belt);
        }
    });
}

/// <summary>The belt of a board on its two pulleys.</summary>
/// <param name="Profile">Tooth profile.</param>
/// <param name="Teeth">Teeth of the belt.</param>
/// <param name="Path">The belt laid taut around the pulleys.</param>
/// <source cref="Sources.Shigley"/>
public sealed record BeltDrive(ToothProfile Profile, int Teeth, BeltPath Path)
{
    /// <summary>Lays the belt.</summary>
    /// <returns>The belt; an answer without a value and without anything missing when the belt is too short to go around.</returns>
    public static Answer<BeltDrive> Compute(Board board) => Answer<BeltDrive>.Ask("drive.centre_distance", needs =>
    {
        if (Pulleys(needs, board) is not { } pulleys)
            return null;
        var teeth = TeethOf(needs, board.Parts.Belt, pulleys.Motor.Profile);
        return !needs.Unmet && BeltPath.Fitting(teeth, pulleys.Motor, pulleys.Wheel) is { } path
            ? new BeltDrive(pulleys.Motor.Profile, teeth, path)
            : null;
    });

    /// <summary>How far a 5 mm belt's back stands above the pulley's teeth: 3.8 mm thick less 2.1 mm of tooth.</summary>
    static Length BeltBack { get; } = Length.FromMillimetres(1.7);

    /// <summary>Diameter over the belt on the wheel pulley.</summary>
    public static Answer<Length> OverWheelPulleyOf(Board board) =>
        !board.Parts.Drive.IsBelt ? Answer<Length>.Beside : Answer<Length>.Ask("", needs =>
        Pulleys(needs, board) is { } pulleys ? pulleys.Wheel.OutsideDiameter + BeltBack * 2 : default);

    /// <summary>The belt's teeth.</summary>
    public static Answer<BeltTeeth> TeethOf(Board board) => Answer<BeltTeeth>.Ask("drive.belt_teeth", needs =>
    {
        if (board.Parts.Belt.Teeth.IsKnown)
            return new BeltTeeth(needs.Read(board.Parts.Belt.Teeth));
        var profile = ProfileOf(needs, board.Parts.Belt.Profile);
        return profile is null ? null : new BeltTeeth(TeethOf(needs, board.Parts.Belt, profile));
    });

    /// <summary>The two pulleys of a board.</summary>
    /// <returns>The pulleys, or <c>null</c> when something is missing; the collector then knows what.</returns>
    public static (PulleyGeometry Motor, PulleyGeometry Wheel)? Pulleys(Needs needs, Board board)
    {
        var motor = needs.Read(board.Parts.MotorPulley.Teeth);
        var wheel = needs.Read(board.Parts.WheelPulley.Teeth);
        var profile = ProfileOf(needs, board.Parts.MotorPulley.Profile);
        return needs.Unmet || profile is null ? null : (new(motor, profile), new(wheel, profile));
    }

    static ToothProfile? ProfileOf(Needs needs, Known<string> name)
    {
        var written = needs.Read(name);
        if (needs.Unmet)
            return null;
        var profile = ToothProfile.Parse(written);
        if (profile is null)
            needs.Lack(name.Key);
        return profile;
    }

    static int TeethOf(Needs needs, Belt belt, ToothProfile profile) =>
        belt.Teeth.IsKnown || !belt.Length.IsKnown
            ? needs.Read(belt.Teeth)
            : (int)Math.Round(needs.Read(belt.Length) / profile.Pitch);
}

/// <summary>Number of teeth of a belt.</summary>
/// <param name="Teeth">The number.</param>
public sealed record BeltTeeth(int Teeth);

/// <summary>Mass of a belt that nobody weighed.</summary>
static class BeltMass
{
    /// <summary>Length times width times the profile's mass for each area.</summary>
    /// <returns>The mass, not known when the size or the profile is not.</returns>
    /// <source cref="Sources.OptibeltManual"/>
    public static Known<Mass> Compute(Belt belt)
    {
        if (!belt.Profile.IsKnown || !belt.Width.IsKnown || ToothProfile.Parse(belt.Profile.Value) is not { } profile)
            return belt.Mass;
        var length = belt.Length.IsKnown ? belt.Length.Value : belt.Teeth.IsKnown ? profile.Pitch * belt.Teeth.Value : default;
        return length.Si <= 0 ? belt.Mass
            : new Known<Mass>(Mass.FromKilograms(profile.KilogramsPerMetre(belt.Width.Value) * length.Metres), key: belt.Width.Key);
    }
}
