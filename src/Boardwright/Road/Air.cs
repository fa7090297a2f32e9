using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Road;

/// <summary>Still, dry air in one state: what drag and cooling need of it.</summary>
/// <remarks>A value of 24 bytes; viscosity, conductivity and Prandtl number are computed when asked for.</remarks>
/// <validity>Air as an ideal gas, 200 K to 800 K and up to 10 bar; altitudes −5000 m to 11000 m.</validity>
/// <error>Against the published atmosphere the density is right to its printed digits; humid air is up to 1 % lighter than dry air on a
/// ride.</error>
/// <source cref="Sources.StandardAtmosphere"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Air
{
    /// <summary>Gas constant of dry air, J/(kg K).</summary>
    public const double GasConstant = 287.05287;

    const double SeaLevelPascals = 101325;
    const double SeaLevelKelvins = 288.15;
    const double LapseKelvinsPerMetre = 0.0065;
    const double PressureExponent = 5.25588;
    const double EarthRadiusMetres = 6356766;
    const double HeatCapacityRatio = 1.4;

    Air(double kelvins, double pascals)
    {
        Temperature = Temperature.FromKelvins(kelvins);
        Pressure = Pressure.FromPascals(pascals);
        DensityKilogramsPerCubicMetre = pascals / (GasConstant * kelvins);
    }

    /// <summary>Its temperature.</summary>
    public Temperature Temperature { get; }
    /// <summary>Its absolute pressure.</summary>
    public Pressure Pressure { get; }
    /// <summary>Density ρ = p/(287.05287 T), kg/m³.</summary>
    public double DensityKilogramsPerCubicMetre { get; }

    /// <summary>Dynamic viscosity by Sutherland's formula, μ = 1.458·10⁻⁶ T^1.5/(T + 110.4), Pa s.</summary>
    public double ViscosityPascalSeconds
    {
        get
        {
            var kelvins = Temperature.Kelvins;
            return 1.458e-6 * kelvins * Sqrt(kelvins) / (kelvins + 110.4);
        }
    }

    /// <summary>Kinematic viscosity μ/ρ, m²/s.</summary>
    public double KinematicViscositySquareMetresPerSecond => ViscosityPascalSeconds / DensityKilogramsPerCubicMetre;

    /// <summary>Thermal conductivity k = 2.64638·10⁻³ T^1.5/(T + 245.4·10^(−12/T)), W/(m K).</summary>
    public double ConductivityWattsPerMetreKelvin
    {
        get
        {
            var kelvins = Temperature.Kelvins;
            return 2.64638e-3 * kelvins * Sqrt(kelvins) / (kelvins + 245.4 * Pow(10, -12 / kelvins));
        }
    }

    /// <summary>Prandtl number μ c_p/k with c_p = 3.5 · 287.05287 J/(kg K), the standard atmosphere's own.</summary>
    public double Prandtl =>
        ViscosityPascalSeconds * (HeatCapacityRatio / (HeatCapacityRatio - 1) * GasConstant) / ConductivityWattsPerMetreKelvin;

    /// <summary>Air of a temperature and pressure.</summary>
    /// <param name="temperature">Above 0 K.</param>
    /// <param name="pressure">Absolute pressure, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">One of them is not above zero.</exception>
    public static Air At(Temperature temperature, Pressure pressure)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature.Kelvins, nameof(temperature));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pressure.Pascals, nameof(pressure));
        return new(temperature.Kelvins, pressure.Pascals);
    }

    /// <summary>Air at an altitude on a day of a given temperature: the standard atmosphere's pressure there, with the day's own
    /// temperature.</summary>
    /// <param name="altitude">Geopotential altitude, −5000 m to 11000 m; taking the height above the sea for it costs 0.04 % of density at
    /// 3000 m.</param>
    /// <param name="temperature">Air temperature, above 0 K.</param>
    /// <exception cref="ArgumentOutOfRangeException">The altitude lies outside the troposphere, or the temperature is not above 0
    /// K.</exception>
    public static Air At(Length altitude, Temperature temperature) => At(temperature, StandardPressure(altitude));

    /// <summary>The standard atmosphere at sea level: 15 °C, 101325 Pa, 1.225 kg/m³.</summary>
    public static Air SeaLevel => new(SeaLevelKelvins, SeaLevelPascals);

    /// <summary>The standard atmosphere at an altitude: T = 288.15 K − 0.0065 K/m · H.</summary>
    /// <param name="altitude">Geopotential altitude H, −5000 m to 11000 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">The altitude lies outside the troposphere.</exception>
    public static Air Standard(Length altitude) => new(StandardKelvins(altitude), StandardPressure(altitude).Pascals);

    /// <summary>The geopotential altitude of a height above the sea: H = r Z/(r + Z), r = 6356766 m.</summary>
    public static Length Geopotential(Length height) =>
        Length.FromMetres(EarthRadiusMetres * height.Metres / (EarthRadiusMetres + height.Metres));

    /// <summary>Pressure of the standard atmosphere: p = 101325 Pa · (1 − 0.0065 H/288.15)^5.25588.</summary>
    /// <param name="altitude">Geopotential altitude H, −5000 m to 11000 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">The altitude lies outside the troposphere.</exception>
    public static Pressure StandardPressure(Length altitude) =>
        Pressure.FromPascals(SeaLevelPascals * Pow(StandardKelvins(altitude) / SeaLevelKelvins, PressureExponent));

    /// <summary>The same air at another temperature and the same pressure, such as the mean of a hot surface and the air around
    /// it.</summary>
    /// <param name="temperature">Above 0 K.</param>
    public Air WarmedTo(Temperature temperature) => At(temperature, Pressure);

    /// <summary>
    /// Density of humid air, kg/m³: ρ = (p − e)/(287.055 T) + e/(461.495 T), e = RH · 611.2 Pa · exp(17.62 t/(243.12 + t)), t in °C.
    /// </summary>
    /// <param name="humidity">Relative humidity, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The humidity lies outside 0 to 1.</exception>
    /// <error>0.06 % against the metrologists' formula between 0 °C and 35 °C.</error>
    /// <source cref="Sources.Magnus"/>
    public double HumidDensityKilogramsPerCubicMetre(Fraction humidity)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(humidity.Value, nameof(humidity));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(humidity.Value, 1, nameof(humidity));
        var celsius = Temperature.Celsius;
        var vapourPascals = humidity.Value * 611.2 * Exp(17.62 * celsius / (243.12 + celsius));
        return ((Pressure.Pascals - vapourPascals) / 287.055 + vapourPascals / 461.495) / Temperature.Kelvins;
    }

    static double StandardKelvins(Length altitude)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(altitude.Metres, -5000.0, nameof(altitude));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(altitude.Metres, 11000.0, nameof(altitude));
        return SeaLevelKelvins - LapseKelvinsPerMetre * altitude.Metres;
    }
}
