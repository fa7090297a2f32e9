using Boardwright.Findings;
using Boardwright.Road;
using Boardwright.Units;

namespace Boardwright.Validation.Road;

/// <summary>Stopping, and what grip allows.</summary>
public sealed class BrakingCase : Case
{
    /// <inheritdoc/>
    public override string Room => "Road";

    /// <inheritdoc/>
    public override string Topic => "Braking";

    /// <inheritdoc/>
    public override string About =>
        "Stopping distances against the printed ones for cars and bicycles, and the limits of grip of one axle by hand. What a standing rider can bear is not computed.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare()
    {
        foreach (var (mph, metres, needed) in new[] { (20, 6, "6.66"), (30, 14, "6.42"), (40, 24, "6.66"), (50, 38, "6.57"), (60, 55, "6.54"), (70, 75, "6.53") })
        {
            yield return new("Deceleration behind the printed braking distance", $"{mph} mi/h, {metres} m", needed, "m/s²",
                Braking.Needed(Speed.FromMilesPerHour(mph), Length.FromMetres(metres)).MetresPerSecondSquared, Sources.HighwayCode, "rule 126",
                EvidenceLevel.ComputedFromPublished);
            yield return new("Braking distance", $"{mph} mi/h, 6.56 m/s²", $"{metres}", "m",
                Braking.StoppingDistance(Speed.FromMilesPerHour(mph), default, Deceleration(6.56))?.Metres ?? double.NaN,
                Sources.HighwayCode, "rule 126", EvidenceLevel.FromMemory);
        }

        var twenty = Speed.FromMilesPerHour(20);
        yield return new("Stopping sight distance", "20 mi/h, friction 0.25, 2.5 s", "127", "ft", Braking.SightDistanceInFeet(twenty, 0.25)?.Feet ?? double.NaN, Sources.Aashto, "",
            EvidenceLevel.Published);
        yield return new("Stopping sight distance", "20 mi/h, friction 0.25, 2.5 s", "38.7", "m", Braking.SightDistanceInFeet(twenty, 0.25)?.Metres ?? double.NaN, Sources.Aashto, "",
            EvidenceLevel.Published)
        { Allowed = Allowance.Part(3e-3, "127 ft rounded first, then turned into metres") };
        yield return new("Stopping sight distance", "20 mi/h, friction 0.25, 2.5 s", "126.73", "ft", Braking.SightDistanceInFeet(twenty, 0.25)?.Feet ?? double.NaN, Sources.Aashto, "formula",
            EvidenceLevel.ComputedFromPublished);
        var (thirty, reaction) = (Speed.FromKilometresPerHour(30), Duration.FromSeconds(2.5));
        yield return new("Stopping sight distance", "30 km/h, friction 0.25, 2.5 s", "35.007", "m", Braking.SightDistance(thirty, 0.25, reaction)?.Metres ?? double.NaN, Sources.Aashto, "formula",
            EvidenceLevel.ComputedFromPublished);
        yield return new("Stopping sight distance", "30 km/h, friction 0.25, 2.5 s, down 5 %", "38.54", "m", Braking.SightDistance(thirty, 0.25, reaction, Fraction.FromPercent(-5))?.Metres ?? double.NaN,
            Sources.Aashto, "formula", EvidenceLevel.ComputedFromPublished)
        {
            MissBecause = "The hand calculation was cut off, not rounded: 900/50.8 + 30/1.44 is 38.5499.",
        };

        var second = Duration.FromSeconds(1);
        foreach (var (speed, braking, percent, metres) in new[] { (25, 2.0, 0, "19.0008"), (25, 3.5, 0, "13.8338"), (40, 2.5, 0, "35.8025"), (25, 2.0, -6, "24.0134") })
            yield return Computed("Stopping distance", $"{speed} km/h, 1 s, {braking} m/s², grade {percent} %", metres, "m",
            Braking.StoppingDistance(
            Speed.FromKilometresPerHour(speed), second, Deceleration(braking), Fraction.FromPercent(percent))?.Metres ?? double.NaN);
        var twentyFive = Speed.FromKilometresPerHour(25);
        yield return Computed("Stopping distance with a ramp", "25 km/h, 4 m/s³ to 2.5 m/s²", "11.7745", "m", Braking.StoppingDistance(twentyFive, default, Deceleration(2.5), 4.0)?.Metres ?? double.NaN);
        yield return Computed("Stopping distance without it", "25 km/h, 2.5 m/s²", "9.6451", "m", Braking.StoppingDistance(twentyFive, default, Deceleration(2.5))?.Metres ?? double.NaN);

        foreach (var (front, height, limit) in new[] { (0.375, 1.05, "1.7335"), (0.45, 0.85, "2.2967") })
            yield return Computed("Limit of the rear axle alone", $"grip 0.7, wheelbase 0.75 m, centre of mass {front} m behind the front axle and {height} m up", limit, "m/s²",
            new GripLimits(Length.FromMetres(0.75), Length.FromMetres(front), Length.FromMetres(height)).RearBraking(0.7)
            .MetresPerSecondSquared);
        yield return Computed("Limit of a rider who stands fixed", "0.25 m behind the front foot, 0.95 m up", "2.5807", "m/s²",
            GripLimits.StandingRider(Length.FromMetres(0.25), Length.FromMetres(0.95)).MetresPerSecondSquared);
    }

    static Acceleration Deceleration(double value) => Acceleration.FromMetresPerSecondSquared(value);

    static Check Computed(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.Mechanics, "", EvidenceLevel.ComputedFromPublished);
}
