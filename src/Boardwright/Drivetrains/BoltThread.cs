using System.Globalization;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Drivetrains;

/// <summary>The strength of a bolt's steel.</summary>
/// <param name="Name">The marking, such as <c>8.8</c>.</param>
/// <param name="ProofStress">Stress Sp that leaves no lasting stretch.</param>
/// <param name="TensileStrength">Least stress at which it breaks.</param>
/// <param name="Source">Where the figures come from.</param>
/// <validity>8.8 up to M16.</validity>
/// <error>Standard minima. For A2-70 the 0.2 % proof stress stands for the proof stress and is from memory.</error>
/// <source cref="Sources.Iso898"/>
/// <source cref="Sources.StainlessFromMemory"/>
public sealed record PropertyClass(string Name, Pressure ProofStress, Pressure TensileStrength, Source Source)
{
    /// <summary>Class 8.8.</summary>
    public static PropertyClass Steel88 { get; } = new("8.8", Pressure.FromMegapascals(580), Pressure.FromMegapascals(800), Sources.Iso898);
    /// <summary>Class 10.9.</summary>
    public static PropertyClass Steel109 { get; } = new("10.9", Pressure.FromMegapascals(830), Pressure.FromMegapascals(1040), Sources.Iso898);
    /// <summary>Class 12.9.</summary>
    public static PropertyClass Steel129 { get; } = new("12.9", Pressure.FromMegapascals(970), Pressure.FromMegapascals(1220), Sources.Iso898);
    /// <summary>Stainless A2-70.</summary>
    public static PropertyClass StainlessA270 { get; } = new(
        "A2-70", Pressure.FromMegapascals(450), Pressure.FromMegapascals(700), Sources.StainlessFromMemory);
    /// <summary>Every class.</summary>
    public static IReadOnlyList<PropertyClass> All { get; } = [Steel88, Steel109, Steel129, StainlessA270];

    /// <summary>Finds a class by its marking.</summary>
    /// <returns>The class, or <c>null</c> when it is not one of these.</returns>
    public static PropertyClass? Parse(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return All.FirstOrDefault(c => TradeName.Same(c.Name, name));
    }
}

/// <summary>A plain washer.</summary>
/// <param name="InnerDiameter">Diameter of the hole.</param>
/// <param name="OuterDiameter">Outer diameter.</param>
/// <param name="Thickness">Thickness.</param>
/// <error>Nominal sizes; the thickness varies by 0.05 to 0.2 mm.</error>
/// <source cref="Sources.Iso7089"/>
public sealed record Washer(Length InnerDiameter, Length OuterDiameter, Length Thickness);

/// <summary>A metric coarse thread with the washer and nuts that go with it.</summary>
/// <validity>M3 to M10, coarse.</validity>
/// <error>
/// Preload from torque is uncertain by ±35 %, as the torque coefficient is. With K = 0.2 and three quarters of the proof load, torques are
/// within 5 % of
/// a printed table for a friction of 0.14. Nut heights are common practice.
/// </error>
/// <source cref="Sources.Iso898"/>
/// <source cref="Sources.NutFactors"/>
/// <source cref="Sources.ShigleyPreload"/>
public sealed record BoltThread
{
    /// <summary>Part of the proof load to tighten a joint to that is taken apart again.</summary>
    public const double ReusedPreload = 0.75;
    /// <summary>Part of the proof load to tighten a permanent joint to; from memory.</summary>
    public const double PermanentPreload = 0.90;
    /// <summary>Torque coefficient K of a bolt of unknown finish, and of zinc plate (others give 0.295 for dry zinc).</summary>
    public const double UnknownFinish = 0.20;
    /// <summary>Torque coefficient K of a black bolt.</summary>
    public const double BlackFinish = 0.30;
    /// <summary>Torque coefficient K of a lubricated bolt.</summary>
    public const double Lubricated = 0.18;
    /// <summary>Torque coefficient K of a bolt with anti-seize paste.</summary>
    public const double AntiSeize = 0.12;

    // Written as tan 30° in the source.
    const double FlankSlope = 0.57735;

    // No pitch of these threads is larger, and no bolt shorter.
    const double LongestPitch = 2;

    BoltThread(double diameter, double pitch, double washerHole, double washerOuter, double washerThickness, double nut, double lockNut)
    {
        Diameter = Length.FromMillimetres(diameter);
        Pitch = Length.FromMillimetres(pitch);
        Washer = new(Length.FromMillimetres(washerHole), Length.FromMillimetres(washerOuter), Length.FromMillimetres(washerThickness));
        (NutHeight, LockNutHeight) = (Length.FromMillimetres(nut), Length.FromMillimetres(lockNut));
    }

    /// <summary>The name, such as <c>M5</c>.</summary>
    public string Name => string.Create(CultureInfo.InvariantCulture, $"M{Diameter.Millimetres:0}");
    /// <summary>Nominal diameter d.</summary>
    public Length Diameter { get; }
    /// <summary>Pitch P.</summary>
    public Length Pitch { get; }
    /// <summary>The plain washer, ISO 7089.</summary>
    public Washer Washer { get; }
    /// <summary>Height of the hexagon nut; common practice.</summary>
    public Length NutHeight { get; }
    /// <summary>Height of the lock nut with a plastic ring; common practice.</summary>
    public Length LockNutHeight { get; }

    /// <summary>Every thread, thinnest first.</summary>
    public static IReadOnlyList<BoltThread> All { get; } =
    [
        new(3, 0.5, 3.2, 7, 0.5, 2.4, 4),
        new(4, 0.7, 4.3, 9, 0.8, 3.2, 5),
        new(5, 0.8, 5.3, 10, 1.0, 4.7, 5),
        new(6, 1.0, 6.4, 12, 1.6, 5.2, 6),
        new(8, 1.25, 8.4, 16, 1.6, 6.8, 8),
        new(10, 1.5, 10.5, 20, 2.0, 8.4, 10),
    ];

    /// <summary>Finds a thread by its name: <c>M5</c>, <c>M5x0.8</c>, or with a length of more than 2 mm, <c>M5x20</c>.</summary>
    /// <returns>The thread, or <c>null</c> when it is not a coarse thread of M3 to M10.</returns>
    public static BoltThread? Parse(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var parts = TradeName.Plain(name).ToUpperInvariant().Split('X');
        var thread = All.FirstOrDefault(t => t.Name == parts[0]);
        return parts.Length == 1 ? thread
            : thread is not null && parts.Length == 2
            && double.TryParse(parts[1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var second)
                && (second > LongestPitch || Math.Abs(second - thread.Pitch.Millimetres) < 1e-6) ? thread
            : null;
    }

    /// <summary>Tensile stress area: As = π / 4 · (d − 0.9382 P)².</summary>
    public Area StressArea
    {
        get
        {
            var core = (Diameter - 0.9382 * Pitch).Metres;
            return Area.FromSquareMetres(Math.PI / 4 * core * core);
        }
    }

    /// <summary>Proof load: Fp = As Sp.</summary>
    public Force ProofLoad(PropertyClass strength)
    {
        ArgumentNullException.ThrowIfNull(strength);
        return Force.FromNewtons(StressArea.SquareMetres * strength.ProofStress.Pascals);
    }

    /// <summary>Least ultimate load: As Rm.</summary>
    public Force UltimateLoad(PropertyClass strength)
    {
        ArgumentNullException.ThrowIfNull(strength);
        return Force.FromNewtons(StressArea.SquareMetres * strength.TensileStrength.Pascals);
    }

    /// <summary>Torque that gives a preload: T = K F d.</summary>
    /// <param name="preload">Preload F.</param>
    /// <param name="coefficient">Torque coefficient K.</param>
    public Torque TighteningTorque(Force preload, double coefficient = UnknownFinish) =>
        Torque.FromNewtonMetres(coefficient * preload.Newtons * Diameter.Metres);

    /// <summary>Torque to tighten a joint with that is taken apart again: K · 0.75 Fp · d.</summary>
    /// <param name="strength">The bolt's strength.</param>
    /// <param name="coefficient">Torque coefficient K.</param>
    public Torque TighteningTorque(PropertyClass strength, double coefficient = UnknownFinish) =>
        TighteningTorque(ReusedPreload * ProofLoad(strength), coefficient);

    /// <summary>Torque coefficient that a torque and a preload imply: K = T / (F d).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The preload is not above 0.</exception>
    public double TorqueCoefficient(Torque torque, Force preload) =>
        torque.NewtonMetres / (Require.AboveZero(preload).Newtons * Diameter.Metres);

    /// <summary>Engagement that keeps the thread in a part from stripping: F / (τ · π / P · Ds (P / 2 + 0.57735 (Ds − En))).</summary>
    /// <param name="load">Axial load F.</param>
    /// <param name="shearStrength">Shear strength τ of the part, above 0.</param>
    /// <param name="leastBoltDiameter">Least outer diameter Ds of the bolt's thread, above 0.</param>
    /// <param name="greatestPartPitchDiameter">Greatest pitch diameter En of the part's thread, at most Ds.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of its range.</exception>
    /// <error>The shop rule of 1 to 1.5 d in steel and 2 d in aluminium lies on the safe side.</error>
    /// <source cref="Sources.ThreadStripping"/>
    public Length Engagement(Force load, Pressure shearStrength, Length leastBoltDiameter, Length greatestPartPitchDiameter)
    {
        Require.AboveZero(leastBoltDiameter);
        Require.AtLeast(leastBoltDiameter, greatestPartPitchDiameter);
        var tooth = Pitch / 2 + FlankSlope * (leastBoltDiameter - greatestPartPitchDiameter);
        var areaPerLength = Math.PI * (tooth / Pitch) * leastBoltDiameter.Metres;
        return Length.FromMetres(load.Newtons / (Require.AboveZero(shearStrength).Pascals * areaPerLength));
    }
}
