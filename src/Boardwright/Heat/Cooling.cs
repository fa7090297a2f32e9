using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Heat;

/// <summary>How a case gives its heat to the air, as a struct so that a loop asks it without a delegate.</summary>
public interface ICooling
{
    /// <summary>Temperature of the air around.</summary>
    Temperature Ambient { get; }

    /// <summary>Thermal resistance from the case to the air when the case has a temperature.</summary>
    ThermalResistance At(Temperature caseTemperature);
}

/// <summary>Cooling by a resistance that does not change.</summary>
/// <param name="Resistance">Thermal resistance from case to air, above 0.</param>
/// <param name="Ambient">Temperature of the air around.</param>
/// <source cref="Sources.MakersSheet"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct FixedCooling(ThermalResistance Resistance, Temperature Ambient) : ICooling
{
    /// <inheritdoc/>
    public ThermalResistance At(Temperature caseTemperature) => Resistance;
}

/// <summary>The outside of a motor's can: a cylinder whose side and one end give heat to the air.</summary>
/// <param name="Diameter">Diameter of the can, above 0.</param>
/// <param name="Length">Length of the can, above 0.</param>
/// <param name="Emissivity">Emissivity of its surface, 0 to 1; 0.8 is a guess for an anodised can.</param>
/// <validity>A can alone in the stream; one that hides behind a truck or a wheel gives off half to two thirds as much.</validity>
/// <error>30 %: 20 % of the correlation, the speed of the air at the can, the emissivity.</error>
/// <source cref="Sources.ChurchillBernstein"/>
/// <source cref="Sources.ChurchillChuCylinder"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Can(Length Diameter, Length Length, double Emissivity = 0.8)
{
    /// <summary>Side of the cylinder: π D L.</summary>
    public Area Side => Area.FromSquareMetres(PI * Diameter.Metres * Length.Metres);
    /// <summary>The free end: π D²/4.</summary>
    public Area End => Area.FromSquareMetres(PI / 4 * Diameter.Metres * Diameter.Metres);

    /// <summary>Coefficient of forced convection over the side, W/(m² K).</summary>
    /// <param name="airSpeed">Speed of the air at the can.</param>
    /// <param name="surface">Temperature of the can.</param>
    /// <param name="air">The air around.</param>
    public double ForcedWattsPerSquareMetreKelvin(Speed airSpeed, Temperature surface, Air air)
    {
        var film = Convection.Film(air, surface);
        return Forced(airSpeed, film);
    }

    /// <summary>Coefficient of natural convection over the side, the can lying, W/(m² K).</summary>
    /// <param name="surface">Temperature of the can.</param>
    /// <param name="air">The air around.</param>
    public double NaturalWattsPerSquareMetreKelvin(Temperature surface, Air air)
    {
        var film = Convection.Film(air, surface);
        return Natural(surface, air, film);
    }

    /// <summary>Coefficient of radiation, W/(m² K), the surroundings as warm as the air.</summary>
    /// <param name="surface">Temperature of the can.</param>
    /// <param name="air">The air around.</param>
    public double RadiationWattsPerSquareMetreKelvin(Temperature surface, Air air) =>
        Radiation.WattsPerSquareMetreKelvin(Emissivity, surface, air.Temperature);

    /// <summary>
    /// Thermal resistance from the can to the air: 1/(h A), h the larger of forced and natural convection, plus radiation;
    /// A the side and the free end, for which the side's h is taken too.
    /// </summary>
    /// <param name="airSpeed">Speed of the air at the can.</param>
    /// <param name="surface">Temperature of the can.</param>
    /// <param name="air">The air around.</param>
    public ThermalResistance ToAir(Speed airSpeed, Temperature surface, Air air)
    {
        var film = Convection.Film(air, surface);
        var convection = Max(Forced(airSpeed, film), Natural(surface, air, film));
        var coefficient = convection + RadiationWattsPerSquareMetreKelvin(surface, air);
        return ThermalResistance.FromKelvinsPerWatt(1 / (coefficient * (Side.SquareMetres + End.SquareMetres)));
    }

    double Forced(Speed airSpeed, Air film) => Convection.WattsPerSquareMetreKelvin(
        Convection.CylinderInCrossFlow(Convection.Reynolds(airSpeed, Diameter, film), film.Prandtl), Diameter, film);

    double Natural(Temperature surface, Air air, Air film) => Convection.WattsPerSquareMetreKelvin(
        Convection.HorizontalCylinder(Convection.Rayleigh(surface - air.Temperature, Diameter, film), film.Prandtl), Diameter, film);
}

/// <summary>A motor's can cooled by the wind of the ride.</summary>
/// <param name="Can">The can.</param>
/// <param name="AirSpeed">Speed of the air at the can.</param>
/// <param name="Air">The air around.</param>
/// <param name="Shielding">How many times the resistance of a can alone in that air, above 0.</param>
/// <validity>As <see cref="Heat.Can"/>.</validity>
/// <error>30 %.</error>
/// <source cref="Sources.ChurchillBernstein"/>
[StructLayout(LayoutKind.Auto)]
readonly record struct CanCooling(Can Can, Speed AirSpeed, Air Air, double Shielding = 1) : ICooling
{
    /// <summary>The part of the board's speed that the air has at the can: half, the truck and the wheel being in the way.</summary>
    /// <source cref="Sources.CommonPractice"/>
    public const double SheltersTo = 0.5;

    /// <inheritdoc/>
    public Temperature Ambient => Air.Temperature;

    /// <inheritdoc/>
    public ThermalResistance At(Temperature caseTemperature) =>
        ThermalResistance.FromKelvinsPerWatt(Shielding * Can.ToAir(AirSpeed, caseTemperature, Air).KelvinsPerWatt);

    /// <summary>A can behind the truck of a board that rides at a speed.</summary>
    /// <param name="can">The can.</param>
    /// <param name="boardSpeed">Speed of the board through the air.</param>
    /// <param name="air">The air around.</param>
    /// <param name="shielding">How many times the resistance of a can alone in half of the board's speed, above 0.</param>
    public static CanCooling Riding(Can can, Speed boardSpeed, Air air, double shielding = 1) =>
        new(can, SheltersTo * boardSpeed, air, shielding);
}
