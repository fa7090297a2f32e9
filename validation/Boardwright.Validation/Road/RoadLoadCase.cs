using Boardwright.Findings;
using Boardwright.Road;
using Boardwright.Units;

namespace Boardwright.Validation.Road;

/// <summary>Force, power, climbing and top speed.</summary>
public sealed class RoadLoadCase : Case
{
    static readonly RoadLoad Rider = new(Mass.FromKilograms(90), Number.FromValue(0.015), Area.FromSquareMetres(0.55), 1.2);
    static readonly Mass Effective = Mass.FromKilograms(91.5);
    const string Board = "90 kg, Crr 0.015, CdA 0.55 m², 1.2 kg/m³";

    /// <inheritdoc/>
    public override string Room => "Road";

    /// <inheritdoc/>
    public override string Topic => "Road load";

    /// <inheritdoc/>
    public override string About =>
        "Force and power on level and steep roads, with wind from both sides, the speed at a power, the steepest grade, and what turning parts add. Nobody has published such figures for a board: they were worked out by hand; the cyclist's inputs and the skiers' drag are published.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare() => [.. Level(), .. Slope(), .. Others()];

    static IEnumerable<Check> Level()
    {
        foreach (var (speed, newtons, watts, consumption) in new[]
        {
            (20, "23.424", "130.13", "6.507"), (25, "29.153", "202.45", "8.098"), (30, "36.156", "301.30", "10.043"), (40, "53.980", "599.77", "14.994"),
        })
        {
            var v = Speed.FromKilometresPerHour(speed);
            var given = $"{Board}, {speed} km/h";
            yield return Computed("Force", given, newtons, "N", Rider.ForceAt(v).Newtons);
            yield return Computed("Power at the wheels", given, watts, "W", Rider.PowerAt(v).Watts);
            yield return Computed("Consumption at the wheels", given, consumption, "Wh/km", Rider.ConsumptionAt(v).WattHoursPerKilometre);
        }

        foreach (var (wind, newtons) in new[] { (3, "45.8733"), (-3, "18.3733"), (-8, "12.8713") })
            yield return Computed("Force", $"{Board}, 25 km/h, headwind {wind} m/s", newtons, "N",
            Rider.ForceAt(Speed.FromKilometresPerHour(25), default, Speed.FromMetresPerSecond(wind)).Newtons);
        foreach (var (watts, speed) in new[] { (300, "8.31749"), (600, "11.11277"), (1000, "13.54812"), (2000, "17.49913") })
            yield return Computed("Speed at a power", $"{Board}, {watts} W", speed, "m/s", Rider.SpeedAt(Power.FromWatts(watts))?.MetresPerSecond ?? double.NaN);
        yield return Computed("Speed where air equals rolling", Board, "6.3339", "m/s", Rider.SpeedWhereDragEqualsRolling()?.MetresPerSecond ?? double.NaN);
    }

    static IEnumerable<Check> Slope()
    {
        var (speed, five) = (Speed.FromKilometresPerHour(20), Fraction.FromPercent(5));
        yield return Computed("Force", $"{Board}, 20 km/h, 5 %", "67.4825", "N", Rider.ForceAt(speed, five).Newtons);
        yield return Computed("Power at the wheels", $"{Board}, 20 km/h, 5 %", "374.903", "W", Rider.PowerAt(speed, five).Watts);
        foreach (var (newtons, percent) in new[] { (100, "9.8854"), (150, "15.7035"), (200, "21.6871"), (300, "34.4511") })
            yield return Computed("Steepest grade", $"{Board}, {newtons} N", percent, "%", Rider.SteepestGrade(Force.FromNewtons(newtons))?.Percent ?? double.NaN);

        var driven = Rider.Driven(Effective, Force.FromNewtons(180));
        var thirty = Speed.FromKilometresPerHour(30);
        const string run = Board + ", 91.5 kg effective, 180 N";
        yield return Computed("Time to 30 km/h", run, "4.80103", "s", driven.TimeBetween(default, thirty)?.Seconds ?? double.NaN);
        yield return Computed("Way to 30 km/h", run, "20.4946", "m", driven.DistanceBetween(default, thirty)?.Metres ?? double.NaN);
        yield return Computed("Terminal speed", run, "22.4797", "m/s", driven.TerminalSpeed?.MetresPerSecond ?? double.NaN);

        // 2000 m level, 500 m up and 500 m down at 20 km/h; drive 0.80, braking 0.60.
        var level = 2 * Rider.ConsumptionAt(speed).WattHoursPerKilometre / 0.80;
        var up = 0.5 * Rider.ConsumptionAt(speed, Fraction.FromPercent(6)).WattHoursPerKilometre / 0.80;
        var down = 0.5 * Rider.ConsumptionAt(speed, Fraction.FromPercent(-6)).WattHoursPerKilometre * 0.60;
        const string route = Board + ", 20 km/h; drive 0.80, regeneration 0.60";
        yield return Computed("Energy of 2000 m on the level", route, "16.267", "Wh", level);
        yield return Computed("Energy of 500 m up 6 %", route, "13.240", "Wh", up);
        yield return Computed("Energy of 500 m down 6 %", route, "-2.455", "Wh", down);
        yield return Computed("Energy of the route", route, "27.0515", "Wh", level + up + down);
        yield return Computed("Braking power", $"{Board}, 25 km/h down 8 %", "286.6", "W", -Rider.PowerAt(Speed.FromKilometresPerHour(25), Fraction.FromPercent(-8)).Watts);
    }

    static IEnumerable<Check> Others()
    {
        // The source takes g as 9.81 m/s²: the mass is scaled so that the weight is the same.
        var cyclist = new RoadLoad(
            Mass.FromKilograms(72 * 9.81 / RoadLoad.Gravity), Number.FromValue(0.0032), Area.FromSquareMetres(0.473 + 0.0044), 1.225);
        var six = Speed.FromMetresPerSecond(6);
        const string climb = "72 kg, g 9.81 m/s², Crr 0.0032, CdA 0.4774 m², 6 m/s up 7.5 %";
        yield return new("Air, cyclist", climb, "63.160", "W", cyclist.Drag(six).Newtons * 6, Sources.Martin1998, "inputs of doi 10.1007/s12283-021-00345-2, table 1", EvidenceLevel.ComputedFromPublished);
        yield return new("Rolling and gravity, cyclist", climb, "330.477", "W", cyclist.RollingAndGrade(Fraction.FromPercent(7.5)).Newtons * 6, Sources.Martin1998, "inputs of doi 10.1007/s12283-021-00345-2, table 1",
            EvidenceLevel.ComputedFromPublished);
        yield return new("Whole, cyclist", climb + ", chain 0.98", "401.67", "W", cyclist.PowerAt(six, Fraction.FromPercent(7.5)).Watts / 0.98, Sources.Martin1998, "inputs of doi 10.1007/s12283-021-00345-2, table 1",
            EvidenceLevel.ComputedFromPublished);

        foreach (var (area, speed, newtons) in new[] { (0.1960, 10, "11.76"), (0.4746, 30, "256.27") })
        {
            var skier = new RoadLoad(Mass.FromKilograms(80), Number.FromValue(0), Area.FromSquareMetres(area), 1.2);
            yield return new("Drag of a skier", $"CdA {area} m², {speed} m/s, 1.2 kg/m³", newtons, "N", skier.Drag(Speed.FromMetresPerSecond(speed)).Newtons, Sources.SkierDrag, "abstract; the area worked out from it",
                EvidenceLevel.Published)
            {
                Allowed = Allowance.Part(1e-3, "the area has four digits"),
            };
        }

        var wheel = RotatingMass.Annulus(Mass.FromGrams(250), Length.FromMillimetres(45), Length.FromMillimetres(27.5));
        var radius = Length.FromMillimetres(45);
        yield return new("Inertia of a wheel", "250 g, radii 45 and 27.5 mm", "3.4766e-4", "kg m²", wheel.KilogramSquareMetres, Sources.Mechanics, "", EvidenceLevel.ComputedFromPublished);
        yield return new("Mass that four wheels add", "250 g, radii 45 and 27.5 mm", "0.68673", "kg", 4 * RotatingMass.Equivalent(wheel, radius).Kilograms, Sources.Mechanics, "",
            EvidenceLevel.ComputedFromPublished);
        yield return new("Mass that a rotor adds", "2.0e-4 kg m², ratio 2.5, radius 45 mm", "0.61728", "kg", RotatingMass.Equivalent(Inertia.FromKilogramSquareMetres(2.0e-4), radius, 2.5).Kilograms,
            Sources.Mechanics, "", EvidenceLevel.ComputedFromPublished);
        yield return new("Speed at constant power", "1000 W, 91.5 kg, 4 s, no resistance", "9.3505", "m/s",
            Coasting.SpeedAtConstantPower(Effective, Power.FromWatts(1000), default, Duration.FromSeconds(4)).MetresPerSecond,
            Sources.Mechanics, "", EvidenceLevel.ComputedFromPublished);
    }

    static Check Computed(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.Martin1998, "definition", EvidenceLevel.ComputedFromPublished);
}
