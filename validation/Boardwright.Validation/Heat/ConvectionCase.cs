using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Road;
using Boardwright.Units;

namespace Boardwright.Validation.Heat;

/// <summary>Convection and radiation.</summary>
public sealed class ConvectionCase : Case
{
    static readonly Allowance Properties = Allowance.Part(3e-3, "the hand calculation rounds its air properties");

    /// <inheritdoc/>
    public override string Room => "Heat";

    /// <inheritdoc/>
    public override string Topic => "Convection and radiation";

    /// <inheritdoc/>
    public override string About =>
        "The correlations against textbook examples and an open library of them, and a motor can by hand. The correlations themselves are good to 15 % or 20 % against experiments, whatever their digits say.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare() => [.. Correlations(), .. Can()];

    static IEnumerable<Check> Correlations()
    {
        yield return Library("Cylinder across a stream", "Re 6071, Pr 0.7", "40.63709", Convection.CylinderInCrossFlow(6071, 0.7), Sources.ChurchillBernstein);
        yield return new("Cylinder across a stream", "Re 6071, Pr 0.7", "40.6", "", Convection.CylinderInCrossFlow(6071, 0.7), Sources.Incropera, "example 7.3",
            EvidenceLevel.Published)
        { Allowed = Allowance.Part(2e-3, "the example rounds on its way") };
        yield return By("Cylinder across a stream", "Re 1e4, Pr 0.71", "53.6304", Convection.CylinderInCrossFlow(1e4, 0.71), Sources.ChurchillBernstein);
        yield return By("Cylinder across a stream", "Re 1e5, Pr 0.71", "215.346", Convection.CylinderInCrossFlow(1e5, 0.71), Sources.ChurchillBernstein);
        yield return Library("Flat plate, laminar", "Re 1e5, Pr 0.7", "186.4379", Convection.FlatPlate(1e5, 0.7), Sources.Incropera);
        yield return By("Flat plate, turning turbulent", "Re 1e6, Pr 0.71", "1305.64", Convection.FlatPlate(1e6, 0.71), Sources.Incropera);
        yield return Library("Vertical plate", "Gr 2.63e9, Pr 0.69", "147.16185", Convection.VerticalPlate(0.69 * 2.63e9, 0.69), Sources.ChurchillChuPlate);
        yield return new("Vertical plate", "Gr 2.63e9, Pr 0.69", "147", "", Convection.VerticalPlate(0.69 * 2.63e9, 0.69), Sources.Incropera, "example 9.2", EvidenceLevel.Published);
        var height = Length.FromMetres(0.71);
        var coefficient = Convection.VerticalPlate(0.69 * 2.63e9, 0.69) * 0.0338 / height.Metres;
        yield return new("Heat from a fire screen", "1.02 m by 0.71 m, 232 °C in 23 °C, k 0.0338 W/(m K)", "1060", "W", coefficient * 1.02 * 0.71 * (232 - 23), Sources.Incropera, "example 9.2",
            EvidenceLevel.FromMemory)
        { Allowed = Allowance.Part(2e-3, "the example rounds on its way") };
        yield return Library("Horizontal cylinder", "Gr 2.63e9, Pr 0.69", "139.13494", Convection.HorizontalCylinder(0.69 * 2.63e9, 0.69), Sources.ChurchillChuCylinder);
        var nusselt = Convection.HorizontalCylinder(5.071e6, 0.697);
        var (hot, room) = (Temperature.FromCelsius(165), Temperature.FromCelsius(23));
        var radiated = Radiation.WattsPerSquareMetre(0.85, hot, room) * Math.PI * 0.1;
        var total = radiated + nusselt * 0.0313 / 0.1 * Math.PI * 0.1 * (hot - room).Kelvins;
        const string pipe = "pipe of 0.1 m, 165 °C in 23 °C, Ra 5.071e6, Pr 0.697, k 0.0313 W/(m K), emissivity 0.85";
        yield return By("Horizontal cylinder", pipe, "23.09", nusselt, Sources.ChurchillChuCylinder);
        yield return new("Radiation of each metre", pipe, "441.0", "W/m", radiated, Sources.Incropera, "example 9.4",
            EvidenceLevel.FromMemory)
        { Allowed = Allowance.Part(1.5e-2, "inputs from memory") };
        yield return new("Whole heat of each metre", pipe, "766", "W/m", total, Sources.Incropera, "example 9.4", EvidenceLevel.FromMemory) { Allowed = Allowance.Part(1.5e-2, "inputs from memory") };
        yield return By("Plate facing up", "Ra 1e6", "17.076", Convection.PlateFacingUp(1e6), Sources.McAdams);
        yield return By("Plate facing up", "Ra 1e8", "69.624", Convection.PlateFacingUp(1e8), Sources.McAdams);
        yield return By("Plate facing down", "Ra 1e6", "8.538", Convection.PlateFacingDown(1e6), Sources.McAdams);
        yield return Library("Plate facing up", "Pr 5.54, Gr 3.21e8", "181.73121", Convection.PlateFacingUp(5.54 * 3.21e8), Sources.McAdams);
        yield return Library("Plate facing down", "Pr 5.54, Gr 3.21e8", "55.44565", Convection.PlateFacingDown(5.54 * 3.21e8), Sources.McAdams);
        yield return new("Radiation", "emissivity 1, 400 K to nothing", "1451.6", "W/m²", Radiation.WattsPerSquareMetre(1, Temperature.FromKelvins(400), Temperature.FromKelvins(0)),
            Sources.HeatLibrary, "q_rad", EvidenceLevel.Published);
        yield return new("Radiation", "emissivity 0.85, 400 K to 305 K", "816.78", "W/m²", Radiation.WattsPerSquareMetre(0.85, Temperature.FromKelvins(400), Temperature.FromKelvins(305)),
            Sources.HeatLibrary, "q_rad", EvidenceLevel.Published);
    }

    static IEnumerable<Check> Can()
    {
        var can = new Can(Length.FromMillimetres(63), Length.FromMillimetres(74), 0.9);
        var air = Air.At(default, Temperature.FromCelsius(25));
        var (hot, speed) = (Temperature.FromCelsius(80), Speed.FromKilometresPerHour(25));
        var film = Convection.Film(air, hot);
        var reynolds = Convection.Reynolds(speed, can.Diameter, film);
        var (forced, natural, radiated) =
            (can.ForcedWattsPerSquareMetreKelvin(speed, hot, air), can.NaturalWattsPerSquareMetreKelvin(hot, air),
            can.RadiationWattsPerSquareMetreKelvin(hot, air));
        const string given = "can of 63 by 74 mm, 80 °C in 25 °C, 25 km/h";
        yield return By("Reynolds number", given, "24134", reynolds, Sources.StandardAtmosphere);
        yield return By("Cylinder across a stream", given, "88.04", Convection.CylinderInCrossFlow(reynolds, film.Prandtl),
            Sources.ChurchillBernstein) with
        { Allowed = Properties };
        yield return By("Coefficient of forced convection", given, "39.43", forced, Sources.ChurchillBernstein) with { Allowed = Properties, Unit = "W/(m² K)" };
        yield return By("Coefficient of radiation", given + ", emissivity 0.9", "7.10", radiated, Sources.Incropera) with { Unit = "W/(m² K)" };
        yield return By("Resistance of the side to the air", given + ", emissivity 0.9", "1.467", 1 / ((forced + radiated) * can.Side.SquareMetres),
            Sources.ChurchillBernstein) with
        { Allowed = Properties, Unit = "K/W" };
        yield return By("Resistance of the side to still air", "can of 63 by 74 mm, 80 °C in 25 °C, emissivity 0.9", "5.10", 1 / ((natural + radiated) * can.Side.SquareMetres),
            Sources.ChurchillChuCylinder) with
        { Allowed = Properties, Unit = "K/W" };
        var deck = Length.FromMetres(0.30);
        var warm = Convection.Film(air, Temperature.FromCelsius(50));
        var along = Convection.Reynolds(speed, deck, warm);
        const string plate = "plate of 0.30 m, 50 °C in 25 °C, 25 km/h";
        yield return By("Reynolds number", plate, "124857", along, Sources.StandardAtmosphere) with { Allowed = Properties };
        yield return By("Flat plate", plate, "208.8", Convection.FlatPlate(along, warm.Prandtl), Sources.Incropera) with { Allowed = Properties };
        yield return By("Coefficient of the plate", plate, "18.85", Convection.WattsPerSquareMetreKelvin(Convection.FlatPlate(along, warm.Prandtl), deck, warm),
            Sources.Incropera) with
        { Allowed = Properties, Unit = "W/(m² K)" };
    }

    static Check Library(string quantity, string given, string printed, double ours, Source source) =>
        new(quantity, given, printed, "", ours, Sources.HeatLibrary, source.Text.Split(',')[0], EvidenceLevel.Published);

    static Check By(string quantity, string given, string printed, double ours, Source source) =>
        new(quantity, given, printed, "", ours, source, "formula", EvidenceLevel.ComputedFromPublished);
}
