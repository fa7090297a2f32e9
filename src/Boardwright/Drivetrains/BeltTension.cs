using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Drivetrains;

/// <summary>A maker's rule for the tension that a belt is installed with, as a part of the effective pull.</summary>
/// <param name="Name">The name.</param>
/// <param name="PartOfPull">Tension of each span at rest over the effective pull.</param>
/// <param name="Source">Where it comes from.</param>
/// <source cref="Sources.OptibeltManual"/>
sealed record TensionRule(string Name, double PartOfPull, Source Source)
{
    /// <summary>0.55 of the effective pull, so that the static shaft load is 1.1 of it: the default.</summary>
    public static TensionRule Default { get; } = new("half of a shaft load of 1.1", 0.55, Sources.OptibeltManual);
    /// <summary>0.406 of the effective pull, for drives that transmit power; from memory, without its small term for speed.</summary>
    public static TensionRule Power { get; } = new("power drive", 0.406, Sources.TensionFactorsFromMemory);
    /// <summary>0.525 of the effective pull, for drives that must keep register; from memory, without its small term for speed.</summary>
    public static TensionRule Registration { get; } = new("registration drive", 0.525, Sources.TensionFactorsFromMemory);
    /// <summary>0.6 of the effective pull, so that the slack span keeps a tenth of it.</summary>
    public static TensionRule TenthSlack { get; } = new("slack span keeps 10 %", 0.6, Sources.InventorHandbook);
    /// <summary>0.8 of the effective pull, so that the slack span keeps three tenths of it.</summary>
    public static TensionRule ThreeTenthsSlack { get; } = new("slack span keeps 30 %", 0.8, Sources.InventorHandbook);
    /// <summary>Every rule, the default first.</summary>
    public static IReadOnlyList<TensionRule> All { get; } = [Default, Power, Registration, TenthSlack, ThreeTenthsSlack];
    /// <summary>The tension of each span at rest: a part of the effective pull.</summary>
    public Force Tension(Force effectivePull) => PartOfPull * effectivePull;
}

/// <summary>How tight a toothed belt must be, and how to tell.</summary>
/// <remarks>Tension is that of each span at rest, unless a span is named.</remarks>
/// <validity>Two pulleys, both spans free. A span that is short against its thickness is stiff and sounds higher than the string formula
/// says.</validity>
/// <error>A tension read from a frequency is as uncertain as the belt's mass: ±15 % without the maker's own.</error>
/// <source cref="Sources.OptibeltManual"/>
/// <source cref="Sources.Gates508C"/>
public static class BeltTension
{
    /// <summary>Effective pull of a torque on a pulley: Fu = 2 T / d.</summary>
    public static Force EffectivePull(Torque torque, PulleyGeometry pulley)
    {
        ArgumentNullException.ThrowIfNull(pulley);
        return Force.FromNewtons(2 * torque.NewtonMetres / pulley.PitchDiameter.Metres);
    }

    /// <summary>Effective pull of a power at a belt speed: Fu = P / v.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not above 0.</exception>
    public static Force EffectivePull(Power power, Speed beltSpeed) =>
        Force.FromNewtons(power.Watts / Require.AboveZero(beltSpeed).MetresPerSecond);

    /// <summary>Installation tension: 0.55 Fu.</summary>
    public static Force Installation(Force effectivePull) => TensionRule.Default.Tension(effectivePull);

    /// <summary>Least tension of a drive that also brakes: 0.5 Fu at the peak pull of braking, below which one span goes slack and the belt
    /// may jump.</summary>
    /// <remarks>Follows from the two spans stretching alike: the slack one keeps T₀ − Fu / 2. An inference of ours; no maker prints
    /// it.</remarks>
    public static Force ReversingFloor(Force peakPull) => peakPull / 2;

    /// <summary>Tensions under load: tight T₀ + Fu / 2, slack T₀ − Fu / 2, which is not below 0 (the tight span then carries
    /// all).</summary>
    public static (Force Tight, Force Slack) Spans(Force installed, Force effectivePull) =>
        installed >= effectivePull / 2
            ? (installed + effectivePull / 2, installed - effectivePull / 2)
            : (effectivePull, Force.FromNewtons(0));

    /// <summary>One maker's fixed installation tension of 5 mm curvilinear belts: 8.233 N/mm · w − 27.4 N, for widths of 10 to 40
    /// mm.</summary>
    /// <error>Within 0.5 N of the six printed values.</error>
    /// <source cref="Sources.GatesUnittaU550"/>
    public static Force FixedByWidth(Length width) => Force.FromNewtons(8.233 * width.Millimetres - 27.4);

    /// <summary>Frequency at which a free span sounds when plucked: f = √(T / (4 k t²)).</summary>
    /// <param name="tension">Tension T, at least 0.</param>
    /// <param name="kilogramsPerMetre">Mass k of a metre of belt, above 0.</param>
    /// <param name="span">Length t of the free span, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of its range.</exception>
    public static Frequency SpanFrequency(Force tension, double kilogramsPerMetre, Length span)
    {
        Require.AtLeast(tension, Force.FromNewtons(0));
        Require.AboveZero(kilogramsPerMetre);
        return Frequency.FromHertz(Sqrt(tension.Newtons / (4 * kilogramsPerMetre)) / Require.AboveZero(span).Metres);
    }

    /// <summary>Tension of a span that sounds at a frequency: T = 4 k t² f².</summary>
    /// <param name="frequency">Frequency f.</param>
    /// <param name="kilogramsPerMetre">Mass k of a metre of belt, above 0.</param>
    /// <param name="span">Length t of the free span, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of its range.</exception>
    public static Force OfFrequency(Frequency frequency, double kilogramsPerMetre, Length span)
    {
        Require.AboveZero(kilogramsPerMetre);
        var wave = 2 * Require.AboveZero(span).Metres * frequency.Hertz;
        return Force.FromNewtons(kilogramsPerMetre * wave * wave);
    }

    /// <summary>The same as the makers of tension meters write it: T = 4 · 10⁻⁹ M W S² f², T in N, W and S in mm, f in Hz.</summary>
    /// <param name="gramsPerMetrePerMillimetre">The meter's constant M: grams for a metre of belt a millimetre wide.</param>
    /// <param name="width">Width W of the belt.</param>
    /// <param name="span">Length S of the free span.</param>
    /// <param name="frequency">Frequency f.</param>
    public static Force OfMeter(double gramsPerMetrePerMillimetre, Length width, Length span, Frequency frequency) =>
        Force.FromNewtons(4 * gramsPerMetrePerMillimetre * width.Millimetres * Pow(span.Millimetres, 2) * Pow(frequency.Hertz, 2) * 1e-9);

    /// <summary>The test with a spring balance: a force of Fu / 20 at the middle of the span must push it in by t / 50.</summary>
    /// <remarks>Fu / 20 and t / 50 were found from the manual's printed numbers, which they give exactly.</remarks>
    /// <validity>Useless on the spans of boards, where it asks for about 1 mm: measure the frequency.</validity>
    public static (Force Push, Length Deflection) DeflectionTest(Force effectivePull, Length span) => (effectivePull / 20, span / 50);

    /// <summary>The other supplier's test: pushed in by t / 64, the force at the middle of the span must lie between (T + Y t / L) / 16 and
    /// (1.1 T + Y t / L) / 16.</summary>
    /// <param name="tension">Tension T.</param>
    /// <param name="stiffness">The supplier's force Y for the belt's width.</param>
    /// <param name="span">Length t of the free span.</param>
    /// <param name="pitchLength">Length L of the belt, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is not above 0.</exception>
    /// <source cref="Sources.SdpSiTension"/>
    public static (Force Least, Force Greatest, Length Deflection) SupplierDeflectionTest(
        Force tension, Force stiffness, Length span, Length pitchLength)
    {
        var part = span / Require.AboveZero(pitchLength) * stiffness;
        return ((tension + part) / 16, (1.1 * tension + part) / 16, span / 64);
    }

    /// <summary>Load on the shaft of a pulley from its two spans: √(T₁² + T₂² − 2 T₁ T₂ cos θ); at rest 2 T sin(θ / 2).</summary>
    /// <param name="tight">Tension T₁ of one span.</param>
    /// <param name="slack">Tension T₂ of the other.</param>
    /// <param name="wrap">Angle θ the belt touches on the pulley.</param>
    /// <source cref="Sources.Geometry"/>
    public static Force ShaftLoad(Force tight, Force slack, Angle wrap) =>
        Force.FromNewtons(Sqrt(Max(
        0, tight.Newtons * tight.Newtons + slack.Newtons * slack.Newtons - 2 * tight.Newtons * slack.Newtons * Cos(wrap.Radians))));

    /// <summary>The maker's estimate of the shaft load at rest: 1.1 Fu.</summary>
    public static Force EstimatedShaftLoad(Force effectivePull) => 1.1 * effectivePull;

    /// <summary>Speed of the belt on its pitch line: v = ω d / 2.</summary>
    /// <source cref="Sources.Kinematics"/>
    public static Speed BeltSpeed(PulleyGeometry pulley, AngularSpeed speed)
    {
        ArgumentNullException.ThrowIfNull(pulley);
        return Speed.FromMetresPerSecond(speed.RadiansPerSecond * pulley.PitchDiameter.Metres / 2);
    }

    /// <summary>Least travel to leave for tensioning: 0.004 C.</summary>
    public static Length TakeUp(Length centreDistance) => 0.004 * centreDistance;
}
