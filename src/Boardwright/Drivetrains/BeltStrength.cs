using Boardwright.Findings;

namespace Boardwright.Drivetrains;

/// <summary>What a toothed belt carries continuously.</summary>
/// <remarks>
/// The makers' working tension contains a factor of about 15 to the breaking load and is meant for long life. No maker publishes the torque
/// at
/// which a belt of this profile jumps teeth, so none is given.
/// </remarks>
/// <validity>Moulded neoprene belts with glass cord; 9, 15 and 25 mm are the widths sold.</validity>
/// <error>Linear in width is up to 22 % too much for a 9 mm belt. The edge loss of 2.27 mm of 5M is from memory; an 8M belt's, from a
/// printed multiplier, is 2.76 mm.</error>
/// <source cref="Sources.SdpSiTimingBelts"/>
/// <source cref="Sources.ProfilesFromMemory"/>
public sealed record BeltStrength
{
    static readonly Length Inch = Length.FromInches(1);

    /// <summary>Describes a belt.</summary>
    /// <param name="profile">The tooth profile.</param>
    /// <param name="width">Width w of the belt, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is not above 0.</exception>
    public BeltStrength(ToothProfile profile, Length width)
    {
        ArgumentNullException.ThrowIfNull(profile);
        (Profile, Width) = (profile, Require.AboveZero(width));
    }

    /// <summary>The tooth profile.</summary>
    public ToothProfile Profile { get; }
    /// <summary>Width w of the belt.</summary>
    public Length Width { get; }
    /// <summary>Allowable working tension in proportion to the width: Ta = T₁ w / 25.4 mm. Too much for a narrow belt.</summary>
    public Force TensionByWidth => Width / Inch * Profile.TensionPerInch;

    /// <summary>Allowable working tension less the edges that carry nothing: Ta = T₁ (w − e) / (25.4 mm − e), not below 0.</summary>
    public Force WorkingTension =>
        Width > Profile.EdgeLoss ? (Width - Profile.EdgeLoss) / (Inch - Profile.EdgeLoss) * Profile.TensionPerInch : Force.FromNewtons(0);

    /// <summary>Allowed effective pull: k Ta with the edge-derated tension.</summary>
    /// <param name="path">The belt on its pulleys.</param>
    /// <param name="ladder">The mesh factor k; <see cref="MeshLadder.Default"/> where none is given.</param>
    public Force AllowedPull(BeltPath path, MeshLadder? ladder = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        return (ladder ?? MeshLadder.Default).Factor(path.WholeTeethInMesh) * WorkingTension;
    }

    /// <summary>Allowed torque on the driving pulley: k Ta d / 2 with the edge-derated tension.</summary>
    /// <param name="path">The belt on its pulleys.</param>
    /// <param name="ladder">The mesh factor k; <see cref="MeshLadder.Default"/> where none is given.</param>
    public Torque AllowedTorque(BeltPath path, MeshLadder? ladder = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        return TorqueOf(AllowedPull(path, ladder), path.Driving);
    }

    /// <summary>Torque of an effective pull on a pulley: F d / 2.</summary>
    public static Torque TorqueOf(Force pull, PulleyGeometry pulley)
    {
        ArgumentNullException.ThrowIfNull(pulley);
        return Torque.FromNewtonMetres(pull.Newtons * pulley.PitchDiameter.Metres / 2);
    }
}
