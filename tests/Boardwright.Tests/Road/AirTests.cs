using Boardwright.Road;
using CsCheck;

namespace Boardwright.Tests.Road;

public sealed class AirTests
{
    // ISO 2533 / ICAO Doc 7488 / USSA 1976, geopotential altitude, recomputed from the standard's formula:
    // five digits of pressure and density, two decimals of temperature.
    [Theory]
    [InlineData(0, 288.15, 101325.0, 1.22500)]
    [InlineData(500, 284.90, 95460.8, 1.16727)]
    [InlineData(1000, 281.65, 89874.6, 1.11164)]
    [InlineData(1500, 278.40, 84556.0, 1.05807)]
    [InlineData(2000, 275.15, 79495.2, 1.00649)]
    [InlineData(3000, 268.65, 70108.5, 0.90912)]
    public void Standard_atmosphere_matches_its_table(double metres, double kelvins, double pascals, double density)
    {
        var air = Air.Standard(Length.FromMetres(metres));

        Assert.Equal(kelvins, air.Temperature.Kelvins, 0.005);
        Assert.Equal(pascals, air.Pressure.Pascals, 0.05);
        Assert.Equal(density, air.DensityKilogramsPerCubicMetre, 0.000005);
    }

    // U.S. Standard Atmosphere 1976, table I, geometric altitude 2000 m: H 1999 m, T 275.154 K, p 79501 Pa, rho 1.0066 kg/m3.
    [Fact]
    public void Geometric_2000_metres_matches_the_1976_table()
    {
        var altitude = Air.Geopotential(Length.FromMetres(2000));
        var air = Air.Standard(altitude);

        Assert.Equal(1999.371, altitude.Metres, 0.0005);
        Assert.Equal(275.154, air.Temperature.Kelvins, 0.0005);
        Assert.Equal(79501, air.Pressure.Pascals, 0.5);
        Assert.Equal(1.0066, air.DensityKilogramsPerCubicMetre, 0.00005);
        Assert.Equal(1.726e-5, air.ViscosityPascalSeconds, 0.0005e-5);
    }

    // U.S. Standard Atmosphere 1976, table III: -2000 m geometric, rho 1.4782 kg/m3.
    [Fact]
    public void Below_the_sea_matches_the_1976_table() =>
        Assert.Equal(1.4782, Air.Standard(Air.Geopotential(Length.FromMetres(-2000))).DensityKilogramsPerCubicMetre, 0.00005);

    // U.S. Standard Atmosphere 1976, table III: viscosity at sea level 1.7894e-5 Pa s, conductivity at 1000 m 0.02481 W/(m K).
    [Fact]
    public void Viscosity_and_conductivity_match_the_1976_table()
    {
        Assert.Equal(1.7894e-5, Air.Standard(default).ViscosityPascalSeconds, 0.00005e-5);
        Assert.Equal(0.024813, Air.At(Temperature.FromKelvins(281.651), Pressure.FromPascals(101325)).ConductivityWattsPerMetreKelvin,
            0.0000005);
    }

    [Fact]
    public void A_warm_day_at_1000_metres_has_the_standard_pressure_and_its_own_temperature()
    {
        var air = Air.At(Length.FromMetres(1000), Temperature.FromKelvins(281.65 + 20));

        Assert.Equal(1.03794, air.DensityKilogramsPerCubicMetre, 0.000005);
    }

    // The formula's own values, and CIPM-2007 beside them: 1.20456, 1.19931, 1.19409 kg/m3.
    [Theory]
    [InlineData(0, 1.20410, 1.20456)]
    [InlineData(0.5, 1.19886, 1.19931)]
    [InlineData(1, 1.19362, 1.19409)]
    public void Humid_air_matches_its_formula_and_the_metrologists_to_a_thousandth(double humidity, double simple, double cipm)
    {
        var density = Air.At(Temperature.FromCelsius(20), Pressure.FromPascals(101325))
            .HumidDensityKilogramsPerCubicMetre(Fraction.FromValue(humidity));

        Assert.Equal(simple, density, 0.000005);
        Assert.Equal(cipm, density, 0.001 * cipm);
    }

    // SAE J2263's reference day, 20 °C and 98.21 kPa; 40 CFR 1066.310 rounds its density to 1.17 kg/m3.
    [Fact]
    public void The_road_testers_reference_day_has_its_density() =>
        Assert.Equal(1.17, Air.At(Temperature.FromCelsius(20), Pressure.FromPascals(98210)).DensityKilogramsPerCubicMetre, 0.005);

    [Fact]
    public void Prandtl_number_stays_near_the_textbooks() =>
        Gen.Double[230, 400].Sample(
        kelvins => Air.At(Temperature.FromKelvins(kelvins), Pressure.FromPascals(1e5)).Prandtl is > 0.68 and < 0.73);

    // dp/dH = -rho g, the law behind the standard's formula, by a central difference.
    [Fact]
    public void Pressure_falls_as_the_weight_of_the_air_says() =>
        Gen.Double[-4900, 10900].Sample(metres =>
        {
            var step = Length.FromMetres(1);
            var here = Length.FromMetres(metres);
            var slope = (Air.StandardPressure(here + step) - Air.StandardPressure(here - step)).Pascals / 2;
            return Math.Abs(slope / (-9.80665 * Air.Standard(here).DensityKilogramsPerCubicMetre) - 1) < 1e-5;
        });

    [Theory]
    [InlineData(-5001)]
    [InlineData(11001)]
    public void Outside_the_troposphere_there_is_no_answer(double metres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.Standard(Length.FromMetres(metres)));
}
