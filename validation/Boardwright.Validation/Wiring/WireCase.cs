using Boardwright.Findings;
using Boardwright.Road;
using Boardwright.Units;
using Boardwright.Wiring;

namespace Boardwright.Validation.Wiring;

/// <summary>Wire, fusing and inrush.</summary>
public sealed class WireCase : Case
{
    static readonly Conductor Twelve = new(new WireGauge(12).Section);
    static readonly Temperature Twenty = Temperature.FromCelsius(20);

    /// <inheritdoc/>
    public override string Room => "Wiring";

    /// <inheritdoc/>
    public override string Topic => "Wire, fusing and inrush";

    /// <inheritdoc/>
    public override string About =>
        "Gauges and resistances against tables, losses, temperature of a free wire, fusing currents, and the surge into a controller's capacitors. No standard table for fine-stranded silicone wire was found; its temperature is computed instead.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare() => [.. Wires(), .. Fuses(), .. Surges()];

    static IEnumerable<Check> Wires()
    {
        var rounded = Allowance.Part(5e-4, "the table rounds the diameter");
        var table = Sources.ElectronicTables;
        yield return new("Diameter", "gauge 12", "2.05232", "mm", new WireGauge(12).Diameter.Millimetres, table, "", EvidenceLevel.Published) { Allowed = rounded };
        foreach (var (gauge, ohms) in new[] { (14, "8.282"), (12, "5.20864"), (10, "3.2764"), (8, "2.0605"), (6, "1.2959") })
            yield return new("Resistance", $"gauge {gauge}, 20 °C", ohms, "Ω/km", 1000 * new Conductor(new WireGauge(gauge).Section).OhmsPerMetre(Twenty), table, "",
            EvidenceLevel.Published)
            { Allowed = rounded };
        yield return By("Diameter", "gauge 12", "2.0525", "mm", new WireGauge(12).Diameter.Millimetres, Sources.AstmB258);
        yield return By("Section", "gauge 12", "3.3088", "mm²", new WireGauge(12).Section.SquareMillimetres, Sources.AstmB258);
        yield return By("Section", "gauge 12", "6529.9", "cmil", new WireGauge(12).CircularMils, Sources.AstmB258);
        foreach (var (gauge, ohms) in new[] { (14, "8.2853"), (12, "5.2107"), (10, "3.2770"), (8, "2.0609"), (6, "1.2961") })
            yield return By("Resistance", $"gauge {gauge}, 20 °C", ohms, "Ω/km", 1000 * new Conductor(new WireGauge(gauge).Section).OhmsPerMetre(Twenty), Sources.Iec60028);

        var (loop, sixty, eighty) = (Length.FromMetres(0.6), Current.FromAmperes(60), Temperature.FromCelsius(80));
        yield return By("Voltage lost", "gauge 12, 0.6 m in all, 60 A, 20 °C", "0.18758", "V", Twelve.Drop(sixty, loop, Twenty).Volts, Sources.Iec60028);
        yield return By("Voltage lost", "gauge 12, 0.6 m in all, 60 A, 80 °C", "0.23182", "V", Twelve.Drop(sixty, loop, eighty).Volts, Sources.Iec60028);
        yield return By("Power lost", "gauge 12, 0.6 m in all, 60 A, 80 °C", "13.909", "W", Twelve.Loss(sixty, loop, eighty).Watts, Sources.Iec60028);
        foreach (var (celsius, factor) in new[] { (30, "0.962"), (50, "0.893"), (80, "0.806"), (100, "0.758") })
            yield return new("Cable factor", $"{celsius} °C", factor, "", Conductor.CableFactor(Temperature.FromCelsius(celsius)), Sources.Iec60228, "temperature table",
            EvidenceLevel.Published);

        // The standard's greatest resistance of 4.95 Ω/km at 4 mm² as a lay factor.
        var fine = new Conductor(Area.FromSquareMillimetres(4), 4.95 * 4 / 17.241);
        yield return By("Voltage lost", "class 5, 4 mm², 4.95 Ω/km, 1 m in all, 60 A, 20 °C", "0.2970", "V", fine.Drop(sixty, Length.FromMetres(1), Twenty).Volts, Sources.Iec60228);

        var kelvin = Allowance.Create(1, "air properties and emissivity of the hand calculation are not stated");
        foreach (var (ambient, amperes, celsius) in new[] { (50, 40, "86.86"), (25, 60, "105.5") })
            yield return By("Temperature of a free wire", $"gauge 12, 4.5 mm over all, {amperes} A in {ambient} °C", celsius, "°C", Free(ambient).At(Current.FromAmperes(amperes))?.Celsius ?? double.NaN,
            Sources.ChurchillChuCylinder) with
            { Allowed = kelvin };
        yield return By("Coefficient of a free wire", "gauge 12, 4.5 mm over all, 86.86 °C in 50 °C", "20.2", "W/(m² K)", Free(50).WattsPerSquareMetreKelvin(Temperature.FromCelsius(86.86)),
            Sources.ChurchillChuCylinder) with
        { Allowed = Allowance.Part(2e-2, "emissivity of the hand calculation is not stated") };
        yield return new("Current of a single wire at 105 °C", "gauge 12, 4.5 mm over all, in 50 °C", "40", "A", Free(50).LargestCurrent(Temperature.FromCelsius(105)).Amperes, Sources.MilW5088, "single wire",
            EvidenceLevel.Published)
        {
            MissBecause = "The military table's basis was not read, so its margin is unknown; the computed wire lies free and alone, and settles at 87 °C with 40 A.",
        };
    }

    static IEnumerable<Check> Fuses()
    {
        foreach (var (inches, amperes) in new[] { (0.0288, "50"), (0.0457, "100"), (0.0725, "200"), (0.095, "300") })
            yield return new("Fusing current, Preece", $"{inches} in", amperes, "A", Fusing.Preece(Length.FromInches(inches)).Amperes, Sources.Preece, "fuse-wire table",
            EvidenceLevel.Published)
            { Allowed = Allowance.Part(2e-3, "the table rounds the diameter") };
        var start = Temperature.FromCelsius(25);
        static Area CircularMils(double count) => Area.FromSquareInches(Math.PI / 4 * count * 1e-6);
        yield return By("Fusing current, Onderdonk", "2581 cmil, 5 s, 25 °C", "168.86", "A", Fusing.Onderdonk(CircularMils(2581), Duration.FromSeconds(5), start).Amperes, Sources.Onderdonk);
        yield return By("Fusing time, Onderdonk", "4110 cmil, 400 A, 25 °C", "2.260", "s", Fusing.OnderdonkTime(CircularMils(4110), Current.FromAmperes(400), start).Seconds,
            Sources.Onderdonk);
        var second = Duration.FromSeconds(1);
        var integral = Fusing.Adiabatic(Twelve.Section, start, Temperature.FromCelsius(200));
        yield return Memory("I²t without loss", "gauge 12, 25 to 200 °C", "2.8822e5", "A² s", integral.AmpereSquaredSeconds);
        yield return Memory("Current of one second", "gauge 12, 25 to 200 °C", "536.9", "A", Fusing.CurrentFor(integral, second).Amperes);
        yield return Memory("Current of one second", "gauge 12, 25 to 1083 °C", "953.2", "A",
            Fusing.CurrentFor(Fusing.Adiabatic(Twelve.Section, start, Temperature.FromCelsius(1083)), second).Amperes);
        yield return By("Fusing current, Onderdonk", "gauge 12, 1 s, 25 °C", "955.3", "A", Fusing.Onderdonk(Twelve.Section, second, start).Amperes, Sources.Onderdonk);
    }

    static IEnumerable<Check> Surges()
    {
        var plain = new Inrush(Voltage.FromVolts(50.4), Capacitance.FromMillifarads(2.04), Resistance.FromMilliohms(25));
        var ringing = plain with { Inductance = Inductance.FromMicrohenries(0.5) };
        const string given = "50.4 V, 2.04 mF, 25 mΩ";
        var circuit = Sources.CircuitTheory;
        yield return By("Greatest current", given, "2016", "A", plain.PeakCurrent.Amperes, circuit);
        yield return By("Energy in the resistance", given, "2.5910", "J", plain.Energy.Joules, circuit);
        yield return By("Damping ratio", given + ", 0.5 µH", "0.7984", "", ringing.DampingRatio ?? double.NaN, circuit);
        yield return By("Greatest current", given + ", 0.5 µH", "1366.6", "A", ringing.PeakCurrent.Amperes, circuit);
        yield return By("Time of the greatest current", given + ", 0.5 µH", "34.3", "µs", ringing.PeakTime.Microseconds, circuit);
        var slow = plain with { Resistance = Resistance.FromOhms(100) };
        const string resistor = "50.4 V, 2.04 mF, 100 Ω";
        yield return By("Time constant of pre-charge", resistor, "0.204", "s", slow.TimeConstant.Seconds, circuit);
        yield return By("Filled after five time constants", resistor, "99.326", "%", 100 * slow.Filled(5 * slow.TimeConstant), circuit);
        yield return By("Greatest current of pre-charge", resistor, "0.504", "A", slow.PeakCurrent.Amperes, circuit);
        yield return By("Greatest power of pre-charge", resistor, "25.4", "W", slow.PeakPower.Watts, circuit);
        yield return By("Time until 2 V are left", resistor, "0.65828", "s", slow.TimeUntil(Voltage.FromVolts(2)).Seconds, circuit);
    }

    static WireTemperature Free(double ambient) =>
        new(Twelve, Length.FromMillimetres(4.5), Air.At(default, Temperature.FromCelsius(ambient)));

    static Check By(string quantity, string given, string printed, string unit, double ours, Source source) =>
        new(quantity, given, printed, unit, ours, source, "formula", EvidenceLevel.ComputedFromPublished);

    static Check Memory(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.Iec60949, "", EvidenceLevel.FromMemory);
}
