using Boardwright.Findings;

namespace Boardwright.Drivetrains;

/// <summary>The circles of a toothed pulley.</summary>
/// <remarks>Any number of teeth has a pitch circle; whether such a pulley is made or rated is for <see cref="ToothProfile.LeastTeeth"/> to
/// say.</remarks>
/// <error>Exact by definition. A pulley up to 25.4 mm is made 0 to +0.05 mm on its outside diameter, up to 50.8 mm 0 to +0.08 mm, up to
/// 101.6 mm 0 to +0.10 mm.</error>
/// <source cref="Sources.SdpSiTimingBelts"/>
/// <source cref="Sources.OptibeltManual"/>
/// <source cref="Sources.YorkPulleys"/>
public sealed record PulleyGeometry
{
    /// <summary>Describes a pulley.</summary>
    /// <param name="teeth">Number of teeth z, at least 1.</param>
    /// <param name="profile">The tooth profile.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no tooth.</exception>
    public PulleyGeometry(int teeth, ToothProfile profile)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(teeth, 1);
        ArgumentNullException.ThrowIfNull(profile);
        (Teeth, Profile) = (teeth, profile);
    }

    /// <summary>Number of teeth z.</summary>
    public int Teeth { get; }
    /// <summary>The tooth profile.</summary>
    public ToothProfile Profile { get; }
    /// <summary>Pitch diameter: z p / π.</summary>
    public Length PitchDiameter => Teeth / Math.PI * Profile.Pitch;
    /// <summary>Outside diameter over the teeth, without flanges: z p / π − 2 a.</summary>
    public Length OutsideDiameter => PitchDiameter - 2 * Profile.PitchLineDifferential;
    /// <summary>Whether it has at least the teeth for which makers rate the belt.</summary>
    public bool IsRated => Teeth >= Profile.LeastTeeth;
}
