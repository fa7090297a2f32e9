using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Units;

namespace Boardwright.Validation.Drivetrains;

/// <summary>Ball bearings: life and loads.</summary>
public sealed class BearingCase : Case
{
    /// <inheritdoc/>
    public override string Room => "Drivetrains";

    /// <inheritdoc/>
    public override string Topic => "Bearings";

    /// <inheritdoc/>
    public override string About =>
        "Basic rating life, equivalent loads and axial limit. The life is that of fatigue; no comparison was found with how long bearings of boards last, which water and side loads decide.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare()
    {
        var examples = Sources.BearingLifeExamples;
        yield return new("Basic rating life", "C 16 kN, P 2 kN", "512", "million turns", BallBearing.MillionTurns(Force.FromKilonewtons(16), Force.FromKilonewtons(2)), examples, "",
            EvidenceLevel.Published);
        var three = BallBearing.MillionTurns(Force.FromKilonewtons(30), Force.FromKilonewtons(3));
        var four = BallBearing.MillionTurns(Force.FromKilonewtons(30), Force.FromKilonewtons(4));
        yield return new("Basic rating life", "C 30 kN, P 3 kN", "1000", "million turns", three, examples, "", EvidenceLevel.Published);
        yield return new("Basic rating life in hours", "the same, 1500 r/min", "11100", "h", BallBearing.Time(three, AngularSpeed.FromRpm(1500)).Hours, examples, "",
            EvidenceLevel.Published)
        { Allowed = Allowance.Create(50, "printed as about 11,100") };
        yield return new("Basic rating life", "C 30 kN, P 4 kN", "422", "million turns", four, examples, "", EvidenceLevel.Published);
        yield return new("Basic rating life in hours", "the same, 1500 r/min", "4700", "h", BallBearing.Time(four, AngularSpeed.FromRpm(1500)).Hours, examples, "",
            EvidenceLevel.Published)
        { Allowed = Allowance.Create(50, "printed to hundreds") };

        var skate = BallBearing.Parse("608")!;
        yield return new("Dynamic rating", "608", "3.45", "kN", skate.DynamicRating.Kilonewtons, Sources.SkfCatalogue, "p. 302", EvidenceLevel.Published);
        yield return new("Static rating", "608", "1.37", "kN", skate.StaticRating.Kilonewtons, Sources.SkfCatalogue, "p. 302", EvidenceLevel.Published);
        yield return new("Axial limit", "608, C₀ / 4", "342.5", "N", skate.AxialLimit.Newtons, Sources.SkfAxialLoad, "", EvidenceLevel.FromMemory);
        var (radial, axial) = (Force.FromNewtons(200), Force.FromNewtons(100));
        var equivalent = skate.EquivalentLoad(radial, axial) ?? Force.FromNewtons(0);
        yield return new("Equivalent load", "608, 200 N radial, 100 N axial", "274.2", "N", equivalent.Newtons, Sources.AxialFactorsFromMemory, "", EvidenceLevel.FromMemory);
        yield return new("Basic rating life", "the same", "1991", "million turns", skate.MillionTurns(equivalent), Sources.AxialFactorsFromMemory, "",
            EvidenceLevel.FromMemory)
        { Allowed = Allowance.Part(0.01, "the cube of a rounded load") };
        yield return new("Static equivalent load", "200 N radial, 100 N axial", "200", "N", BallBearing.StaticLoad(radial, axial).Newtons, Sources.SkfCatalogue, "",
            EvidenceLevel.ComputedFromPublished);

        var load = Force.FromNewtons(100 * 9.80665 / 8);
        var turning = Gearing.WheelSpeed(Speed.FromKilometresPerHour(30), Length.FromMillimetres(90));
        yield return new("Wheel speed", "30 km/h, wheel 90 mm", "1768.4", "r/min", turning.Rpm, Sources.Kinematics, "", EvidenceLevel.ComputedFromPublished);
        yield return new("Basic rating life", "608, 100 kg on 8 bearings", "22293", "million turns", skate.MillionTurns(load), Sources.SkfCatalogue, "rating",
            EvidenceLevel.ComputedFromPublished)
        { Allowed = Allowance.Part(0.001, "by hand from a rounded load") };
        yield return new("Basic rating life in hours", "the same, 30 km/h, wheel 90 mm", "210105", "h", BallBearing.Time(skate.MillionTurns(load), turning).Hours, Sources.SkfCatalogue, "rating",
            EvidenceLevel.ComputedFromPublished)
        { Allowed = Allowance.Part(0.001, "by hand from a rounded load") };
        var worn = skate.MillionTurns(Force.FromNewtons(500));
        yield return new("Basic rating life", "608, 500 N", "328.5", "million turns", worn, Sources.SkfCatalogue, "rating", EvidenceLevel.ComputedFromPublished);
        yield return new("Way rolled in that life", "wheel 90 mm", "92900", "km", BallBearing.Way(worn, Length.FromMillimetres(90)).Kilometres, Sources.SkfCatalogue, "rating",
            EvidenceLevel.ComputedFromPublished)
        { Allowed = Allowance.Create(50, "by hand, to hundreds") };
    }
}
