using Boardwright.Findings;
using Boardwright.Packs;
using Boardwright.Units;

namespace Boardwright.Validation.Packs;

/// <summary>Arithmetic of packs and charging.</summary>
public sealed class PackArithmeticCase : Case
{
    /// <inheritdoc/>
    public override string Room => "Packs";

    /// <inheritdoc/>
    public override string Topic => "Pack arithmetic and charge time";

    /// <inheritdoc/>
    public override string About =>
        "Series and parallel, power drawn from a resistance, polarisation, charge time, and a cell's and a strip's warming. The time constant of the charge was read from the same cell's charges, so its agreement is no test against measurement.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare()
    {
        var group = new CellGroup(12, 4);
        var capacity = Charge.FromAmpereHours(2.95);
        const string cells = "12 in series, 4 side by side; 3.6 V, 4.2 V, 2.95 Ah, 48 g, 15 A";
        yield return By("Nominal voltage", cells, "43.2", "V", group.Voltage(Voltage.FromVolts(3.6)).Volts);
        yield return By("Full voltage", cells, "50.4", "V", group.Voltage(Voltage.FromVolts(4.2)).Volts);
        yield return By("Capacity", cells, "11.8", "Ah", group.Capacity(capacity).AmpereHours);
        yield return By("Energy", cells, "509.8", "Wh", group.Energy(capacity, Voltage.FromVolts(3.6)).WattHours);
        yield return By("Mass of the cells", cells, "2.304", "kg", group.Mass(Mass.FromGrams(48)).Kilograms);
        yield return By("Current", cells, "60", "A", group.Current(Current.FromAmperes(15)).Amperes);

        var (ten, forty) = (new CellGroup(10, 3), Current.FromAmperes(40));
        var pack = new LoadedPack(Voltage.FromVolts(36), ten.Resistance(Resistance.FromMilliohms(30)));
        const string sagging = "10 in series, 3 side by side, 30 mΩ, 40 A";
        yield return By("Resistance", sagging, "0.100", "Ω", pack.Resistance.Ohms);
        yield return By("Sag", sagging, "4.00", "V", pack.Sag(forty).Volts);
        yield return By("Heat", sagging, "160", "W", pack.Heat(forty).Watts);
        yield return By("Heat of a cell", sagging, "5.33", "W", pack.Heat(forty).Watts / ten.Cells);

        var load = new LoadedPack(Voltage.FromVolts(40), Resistance.FromOhms(0.1));
        var power = Power.FromWatts(1200);
        yield return By("Current of a power", "40 V, 0.1 Ω, 1200 W", "32.668", "A", load.CurrentAt(power)?.Amperes ?? double.NaN);
        yield return By("Voltage under a power", "40 V, 0.1 Ω, 1200 W", "36.733", "V", load.VoltageAt(power)?.Volts ?? double.NaN);
        yield return By("Greatest power", "40 V, 0.1 Ω", "4000", "W", load.GreatestPower.Watts);
        yield return By("Current of the greatest power", "40 V, 0.1 Ω", "200", "A", load.CurrentAt(load.GreatestPower)?.Amperes ?? double.NaN);

        foreach (var (seconds, drop) in new[] { (0, "150.000"), (1, "161.890"), (10, "203.891"), (60, "239.347"), (600, "299.326") })
        {
            yield return By("Voltage lost to polarisation, one step", $"10 A, 15 mΩ, 5 mΩ with 4 s, 10 mΩ with 120 s, after {seconds} s", drop, "mV", Drop(seconds, 1));
            if (seconds > 0)
                yield return By("Voltage lost to polarisation, steps of 0.1 s", $"10 A, 15 mΩ, 5 mΩ with 4 s, 10 mΩ with 120 s, after {seconds} s", drop, "mV", Drop(seconds, 10 * seconds));
        }

        var charge = new ChargeTail(
            Charge.FromAmpereHours(2.732), Current.FromAmperes(3), Current.FromMilliamperes(50), Duration.FromSeconds(635.3));
        const string given = "2.732 Ah, 3 A to 50 mA, τ 635.3 s";
        yield return Charged("Charge time", given, "87.58", "min", charge.Total?.Minutes ?? double.NaN, "closed form");
        yield return Charged("Charge time", given, "87.6", "min", charge.Total?.Minutes ?? double.NaN, "charge 2 at 25 °C, as measured; τ read from it");
        yield return Charged("Time at constant current", given, "44.23", "min", charge.ConstantCurrent?.Minutes ?? double.NaN, "closed form");
        yield return Charged("Time at constant voltage", given, "43.35", "min", charge.ConstantVoltage.Minutes, "closed form");
        yield return Charged("Charge at constant voltage", given, "0.521", "Ah", charge.AtConstantVoltage.AmpereHours, "closed form");

        var small = Cell(18.4, 65.2, 48);
        var large = Cell(21.2, 70.2, 68);
        yield return By("Surface of a cell", "18.4 by 65.2 mm", "43.0", "cm²", small.Surface.SquareCentimetres);
        yield return By("Volume of a cell", "18.4 by 65.2 mm", "17.3", "cm³", 1000 * small.Litres);
        yield return By("Surface of a cell", "21.2 by 70.2 mm", "53.8", "cm²", large.Surface.SquareCentimetres);
        yield return By("Volume of a cell", "21.2 by 70.2 mm", "24.8", "cm³", 1000 * large.Litres);
        yield return By("Heat capacity of a cell", "48 g, 960 J/(kg K)", "46.1", "J/K", small.Capacity.JoulesPerKelvin);
        yield return By("Warming without loss", "48 g, 12 A, 35 mΩ", "0.109", "K/s", small.AdiabaticKelvinsPerSecond(Power.FromWatts(12 * 12 * 0.035)));
        var half = Allowance.Part(5e-3, "surface rounded by hand");
        yield return By("Resistance of a cell to the air", "18.4 by 65.2 mm, 10 W/(m² K)", "23.25", "K/W", small.ToAir(10).KelvinsPerWatt) with { Allowed = half };
        yield return By("Time constant of a cell", "18.4 by 65.2 mm, 48 g, 10 W/(m² K)", "1071", "s", small.TimeConstant(small.ToAir(10)).Seconds) with { Allowed = half };
        yield return By("Resistance of a cell to the air", "21.2 by 70.2 mm, 10 W/(m² K)", "18.58", "K/W", large.ToAir(10).KelvinsPerWatt) with { Allowed = half };
        yield return By("Time constant of a cell", "21.2 by 70.2 mm, 68 g, 10 W/(m² K)", "1213", "s", large.TimeConstant(large.ToAir(10)).Seconds) with { Allowed = half };
        yield return By("Rise of a cell", "18.4 by 65.2 mm, 3 W, 600 s", "29.9", "K",
            small.Rise(Power.FromWatts(3), small.ToAir(10), Duration.FromSeconds(600)).Kelvins) with
        { Allowed = half };
        yield return By("Final rise of a cell", "18.4 by 65.2 mm, 3 W", "69.8", "K",
            small.Rise(Power.FromWatts(3), small.ToAir(10), Duration.FromHours(1000)).Kelvins) with
        { Allowed = half };

        var strip = new Strip(Length.FromMillimetres(0.15), Length.FromMillimetres(8), Length.FromMillimetres(20), 6.99e-8);
        const string nickel = "nickel, 0.15 by 8 by 20 mm, 6.99e-8 Ω m";
        yield return Memory("Resistance of a strip", nickel, "1.165", "mΩ", strip.Resistance.Milliohms);
        foreach (var (amperes, heat, rise) in new[] { (5, "29", "6"), (7, "57", "12"), (10, "117", "24") })
        {
            yield return Memory("Heat of a strip", $"{nickel}, {amperes} A", heat, "mW", strip.Heat(Current.FromAmperes(amperes)).Milliwatts);
            yield return Memory("Rise of a strip", $"{nickel}, {amperes} A, 15 W/(m² K)", rise, "K", strip.Rise(Current.FromAmperes(amperes), 15).Kelvins);
        }

        yield return By("Range", "500 Wh, 90 % usable, 15 Wh/km", "30.0", "km",
            PackRange.Compute(Energy.FromWattHours(500), Fraction.FromPercent(90), EnergyPerDistance.FromWattHoursPerKilometre(15))
            .Kilometres);
    }

    static double Drop(double seconds, int steps)
    {
        var quick = new PolarisationBranch(Resistance.FromMilliohms(5), Duration.FromSeconds(4));
        var slow = new PolarisationBranch(Resistance.FromMilliohms(10), Duration.FromSeconds(120));
        var (current, step) = (Current.FromAmperes(10), Duration.FromSeconds(seconds / steps));
        var (first, second) = (Voltage.FromVolts(0), Voltage.FromVolts(0));
        for (var i = 0; i < steps; i++)
            (first, second) = (quick.After(first, current, step), slow.After(second, current, step));
        return 150 + (first + second).Millivolts;
    }

    static CellBody Cell(double diameter, double length, double grams) =>
        new(Length.FromMillimetres(diameter), Length.FromMillimetres(length), CellBody.HeatCapacityOf(Mass.FromGrams(grams), 960));

    static Check By(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.CircuitTheory, "definition", EvidenceLevel.ComputedFromPublished);

    static Check Charged(string quantity, string given, string printed, string unit, double ours, string page) =>
        new(quantity, given, printed, unit, ours, Sources.LgHg2Kollmeyer, page, EvidenceLevel.ComputedFromPublished);

    static Check Memory(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.NickelResistivity, "", EvidenceLevel.FromMemory);
}
