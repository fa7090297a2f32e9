using Boardwright.Findings;
using Boardwright.Road;
using Boardwright.Units;

namespace Boardwright.Validation.Road;

/// <summary>Density, viscosity and conductivity of the air.</summary>
public sealed class AirCase : Case
{
    static readonly Source Atmosphere = Sources.StandardAtmosphere;

    /// <inheritdoc/>
    public override string Room => "Road";

    /// <inheritdoc/>
    public override string Topic => "Air";

    /// <inheritdoc/>
    public override string About =>
        "The standard atmosphere up to 3000 m, its viscosity and conductivity, warm days and humid air. The formula for humid air is from memory; the metrologists' formula stands beside it and is not what the program uses.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare()
    {
        foreach (var (metres, kelvins, pascals, density) in new (int, string, string, string)[]
        {
            (0, "288.15", "101325.0", "1.22500"), (500, "284.90", "95460.8", "1.16727"), (1000, "281.65", "89874.6", "1.11164"),
            (1500, "278.40", "84556.0", "1.05807"), (2000, "275.15", "79495.2", "1.00649"), (3000, "268.65", "70108.5", "0.90912"),
        })
        {
            var air = Air.Standard(Length.FromMetres(metres));
            var given = $"geopotential altitude {metres} m";
            yield return new("Temperature", given, kelvins, "K", air.Temperature.Kelvins, Atmosphere, "definition", EvidenceLevel.ComputedFromPublished);
            yield return new("Pressure", given, pascals, "Pa", air.Pressure.Pascals, Atmosphere, "definition", EvidenceLevel.ComputedFromPublished);
            yield return new("Density", given, density, "kg/m³", air.DensityKilogramsPerCubicMetre, Atmosphere, "definition",
                EvidenceLevel.ComputedFromPublished);
        }

        var altitude = Air.Geopotential(Length.FromMetres(2000));
        var up = Air.Standard(altitude);
        yield return new("Geopotential altitude", "height 2000 m", "1999.371", "m", altitude.Metres, Atmosphere, "eq. 18", EvidenceLevel.ComputedFromPublished);
        yield return new("Temperature", "height 2000 m", "275.154", "K", up.Temperature.Kelvins, Atmosphere, "table I", EvidenceLevel.Published);
        yield return new("Pressure", "height 2000 m", "79501", "Pa", up.Pressure.Pascals, Atmosphere, "table I", EvidenceLevel.Published);
        yield return new("Density", "height 2000 m", "1.0066", "kg/m³", up.DensityKilogramsPerCubicMetre, Atmosphere, "table I", EvidenceLevel.Published);
        yield return new("Density", "height −2000 m", "1.4782", "kg/m³", Air.Standard(Air.Geopotential(Length.FromMetres(-2000))).DensityKilogramsPerCubicMetre, Atmosphere,
            "table I", EvidenceLevel.Published);
        yield return new("Viscosity", "sea level", "1.7894e-5", "Pa s", Air.SeaLevel.ViscosityPascalSeconds, Atmosphere, "table III", EvidenceLevel.Published);
        yield return new("Viscosity", "height 2000 m", "1.726e-5", "Pa s", up.ViscosityPascalSeconds, Atmosphere, "table III", EvidenceLevel.Published);
        yield return new("Conductivity", "281.651 K", "0.024813", "W/(m K)", Air.SeaLevel.WarmedTo(Temperature.FromKelvins(281.651)).ConductivityWattsPerMetreKelvin,
            Atmosphere, "eq. 53", EvidenceLevel.Published);
        yield return new("Density", "1000 m, 20 K warmer than standard", "1.03794", "kg/m³", Air.At(Length.FromMetres(1000), Temperature.FromKelvins(301.65)).DensityKilogramsPerCubicMetre,
            Atmosphere, "definition", EvidenceLevel.ComputedFromPublished);

        var room = Air.At(Temperature.FromCelsius(20), Pressure.FromPascals(101325));
        foreach (var (percent, simple, metrologists) in new[] { (0, "1.20410", "1.20456"), (50, "1.19886", "1.19931"), (100, "1.19362", "1.19409") })
        {
            var density = room.HumidDensityKilogramsPerCubicMetre(Fraction.FromPercent(percent));
            var given = $"20 °C, 101325 Pa, {percent} % humidity";
            yield return new("Density of humid air, its own formula", given, simple, "kg/m³", density, Sources.Magnus, "", EvidenceLevel.FromMemory);
            yield return new("Density of humid air, CIPM-2007", given, metrologists, "kg/m³", density, Sources.Magnus, "", EvidenceLevel.FromMemory)
            {
                Allowed = Allowance.Part(1e-3, "a simpler formula: ideal gas and Magnus"),
            };
        }

        yield return new("Density of humid air, its own formula", "35 °C, 95000 Pa, 50 % humidity", "1.06199", "kg/m³",
            Air.At(Temperature.FromCelsius(35), Pressure.FromPascals(95000)).HumidDensityKilogramsPerCubicMetre(Fraction.FromPercent(50)),
            Sources.Magnus, "", EvidenceLevel.FromMemory);
        yield return new("Density of the road testers' reference day", "20 °C, 98.21 kPa, dry", "1.17", "kg/m³", Air.At(Temperature.FromCelsius(20), Pressure.FromPascals(98210)).DensityKilogramsPerCubicMetre,
            Sources.RoadTestDay, "", EvidenceLevel.Published);
    }
}
