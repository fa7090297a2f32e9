using Boardwright.Findings;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Heat;

/// <summary>Published correlations for the heat that a surface gives to air: Nusselt numbers Nu = h L/k.</summary>
/// <remarks>Take the air at the film temperature, the mean of surface and air, unless a method says otherwise.</remarks>
/// <source cref="Sources.Incropera"/>
public static class Convection
{
    const double Gravity = 9.80665;

    /// <summary>
    /// A cylinder across a stream: Nu = 0.3 + 0.62 Re^½ Pr^⅓/[1 + (0.4/Pr)^⅔]^¼ · [1 + (Re/282000)^⅝]^⅘, on the diameter.
    /// </summary>
    /// <param name="reynolds">Reynolds number on the diameter, 0 or more.</param>
    /// <param name="prandtl">Prandtl number, above 0.</param>
    /// <validity>Re Pr above 0.2, long cylinder, smooth stream.</validity>
    /// <error>About 20 % against experiments.</error>
    /// <source cref="Sources.ChurchillBernstein"/>
    public static double CylinderInCrossFlow(double reynolds, double prandtl)
    {
        var laminar = 0.62 * Sqrt(reynolds) * Cbrt(prandtl) / Sqrt(Sqrt(1 + Square(Cbrt(0.4 / prandtl))));
        return 0.3 + laminar * Pow(1 + Pow(reynolds / 282000, 0.625), 0.8);
    }

    /// <summary>A horizontal cylinder in still air: Nu = {0.60 + 0.387 Ra^⅙/[1 + (0.559/Pr)^(9/16)]^(8/27)}², on the diameter.</summary>
    /// <param name="rayleigh">Rayleigh number on the diameter, 0 or more.</param>
    /// <param name="prandtl">Prandtl number, above 0.</param>
    /// <validity>Ra below 10¹², long cylinder.</validity>
    /// <error>About 15 % against experiments.</error>
    /// <source cref="Sources.ChurchillChuCylinder"/>
    public static double HorizontalCylinder(double rayleigh, double prandtl) => Free(rayleigh, prandtl, 0.60, 0.559);

    /// <summary>A vertical plate in still air: Nu = {0.825 + 0.387 Ra^⅙/[1 + (0.492/Pr)^(9/16)]^(8/27)}², on the height.</summary>
    /// <param name="rayleigh">Rayleigh number on the height, 0 or more.</param>
    /// <param name="prandtl">Prandtl number, above 0.</param>
    /// <validity>Ra below 10¹².</validity>
    /// <error>About 15 % against experiments.</error>
    /// <source cref="Sources.ChurchillChuPlate"/>
    public static double VerticalPlate(double rayleigh, double prandtl) => Free(rayleigh, prandtl, 0.825, 0.492);

    /// <summary>
    /// A flat plate along a stream, the mean over its length: 0.664 Re^½ Pr^⅓ below Re = 5·10⁵, (0.037 Re^⅘ − 871) Pr^⅓ from there on.
    /// </summary>
    /// <param name="reynolds">Reynolds number on the length, 0 to 10⁸.</param>
    /// <param name="prandtl">Prandtl number, 0.6 to 60.</param>
    /// <validity>Sharp leading edge, smooth stream, turning turbulent at Re = 5·10⁵.</validity>
    /// <error>About 15 % against experiments.</error>
    /// <source cref="Sources.Incropera"/>
    public static double FlatPlate(double reynolds, double prandtl) =>
        Cbrt(prandtl) * (reynolds < 5e5 ? 0.664 * Sqrt(reynolds) : 0.037 * Pow(reynolds, 0.8) - 871);

    /// <summary>A hot horizontal plate that faces up: 0.54 Ra^¼ below Ra = 10⁷, 0.15 Ra^⅓ from there on; on area over perimeter.</summary>
    /// <param name="rayleigh">Rayleigh number on area over perimeter, 10⁴ to 10¹¹.</param>
    /// <validity>Hot side up, or cold side down; Ra 10⁴ to 10¹¹.</validity>
    /// <error>About 20 % against experiments; the two laws differ by 15 % where they meet.</error>
    /// <source cref="Sources.McAdams"/>
    public static double PlateFacingUp(double rayleigh) =>
        rayleigh < 1e7 ? 0.54 * Sqrt(Sqrt(rayleigh)) : 0.15 * Cbrt(rayleigh);

    /// <summary>A hot horizontal plate that faces down: 0.27 Ra^¼, on area over perimeter.</summary>
    /// <param name="rayleigh">Rayleigh number on area over perimeter, 10⁵ to 10¹⁰.</param>
    /// <validity>Hot side down, or cold side up; Ra 10⁵ to 10¹⁰.</validity>
    /// <error>About 20 % against experiments.</error>
    /// <source cref="Sources.McAdams"/>
    public static double PlateFacingDown(double rayleigh) => 0.27 * Sqrt(Sqrt(rayleigh));

    /// <summary>Reynolds number v L/ν.</summary>
    /// <param name="speed">Speed of the air along the surface; its direction does not matter.</param>
    /// <param name="length">The length the correlation asks for.</param>
    /// <param name="film">Air at the film temperature.</param>
    public static double Reynolds(Speed speed, Length length, Air film) =>
        Abs(speed.MetresPerSecond) * length.Metres / film.KinematicViscositySquareMetresPerSecond;

    /// <summary>Rayleigh number g β ΔT L³ Pr/ν² with β = 1/T of the film, as for an ideal gas.</summary>
    /// <param name="difference">Surface less air; a colder surface gives the same number.</param>
    /// <param name="length">The length the correlation asks for.</param>
    /// <param name="film">Air at the film temperature.</param>
    public static double Rayleigh(TemperatureDifference difference, Length length, Air film)
    {
        var viscosity = film.KinematicViscositySquareMetresPerSecond;
        var metres = length.Metres;
        return Gravity * Abs(difference.Kelvins) / film.Temperature.Kelvins * metres * metres * metres * film.Prandtl
            / (viscosity * viscosity);
    }

    /// <summary>Heat transfer coefficient h = Nu k/L, W/(m² K).</summary>
    /// <param name="nusselt">Nusselt number.</param>
    /// <param name="length">The length it is built on.</param>
    /// <param name="film">Air at the film temperature.</param>
    public static double WattsPerSquareMetreKelvin(double nusselt, Length length, Air film) =>
        nusselt * film.ConductivityWattsPerMetreKelvin / length.Metres;

    /// <summary>Air half way between a surface's temperature and its own, at the same pressure.</summary>
    public static Air Film(Air air, Temperature surface) =>
        air.WarmedTo(Temperature.FromKelvins((air.Temperature.Kelvins + surface.Kelvins) / 2));

    static double Free(double rayleigh, double prandtl, double still, double weight)
    {
        var ratio = Pow(1 + Pow(weight / prandtl, 9.0 / 16), 8.0 / 27);
        return Square(still + 0.387 * Pow(rayleigh, 1.0 / 6) / ratio);
    }

    static double Square(double value) => value * value;
}
