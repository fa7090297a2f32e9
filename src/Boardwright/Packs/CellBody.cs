using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>A round cell as one warm body.</summary>
/// <param name="Diameter">Diameter D, above 0.</param>
/// <param name="Length">Length L, above 0.</param>
/// <param name="Capacity">Heat capacity C, above 0.</param>
/// <validity>One temperature in the whole cell; the core of a hard-driven cell is several kelvins hotter than its case.</validity>
/// <error>A factor of 1.6 either way when the heat transfer is guessed.</error>
/// <source cref="Sources.Geometry"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CellBody(Length Diameter, Length Length, HeatCapacity Capacity)
{
    /// <summary>Surface with both ends: π D L + π D²/2.</summary>
    public Area Surface => Area.FromSquareMetres(PI * Diameter.Metres * (Length.Metres + Diameter.Metres / 2));
    /// <summary>Volume π D² L/4, in litres.</summary>
    public double Litres => PI / 4 * Diameter.Metres * Diameter.Metres * Length.Metres * 1000;

    /// <summary>How fast it warms when no heat leaves it: P/C, K/s.</summary>
    /// <param name="heat">Heat made P.</param>
    public double AdiabaticKelvinsPerSecond(Power heat) => heat.Watts / Capacity.JoulesPerKelvin;

    /// <summary>Thermal resistance of its whole surface: 1/(h A).</summary>
    /// <param name="wattsPerSquareMetreKelvin">Heat transfer coefficient h, above 0.</param>
    public ThermalResistance ToAir(double wattsPerSquareMetreKelvin) =>
        ThermalResistance.FromKelvinsPerWatt(1 / (wattsPerSquareMetreKelvin * Surface.SquareMetres));

    /// <summary>Time constant of its warming: C R.</summary>
    /// <param name="toAir">Thermal resistance to the air R.</param>
    public Duration TimeConstant(ThermalResistance toAir) => Duration.FromSeconds(Capacity.JoulesPerKelvin * toAir.KelvinsPerWatt);

    /// <summary>Rise over the air after a time of constant heat from a cold start: P R (1 − e^(−t/CR)).</summary>
    /// <param name="heat">Heat made P.</param>
    /// <param name="toAir">Thermal resistance to the air R.</param>
    /// <param name="time">Time t, 0 or more.</param>
    public TemperatureDifference Rise(Power heat, ThermalResistance toAir, Duration time) => TemperatureDifference.FromKelvins(
        heat.Watts * toAir.KelvinsPerWatt * (1 - Exp(-time.Seconds / TimeConstant(toAir).Seconds)));

    /// <summary>Heat capacity of a mass: m c.</summary>
    /// <param name="mass">Mass m.</param>
    /// <param name="joulesPerKilogramKelvin">Specific heat c; about 960 J/(kg K) for lithium-ion cells.</param>
    public static HeatCapacity HeatCapacityOf(Mass mass, double joulesPerKilogramKelvin) =>
        HeatCapacity.FromJoulesPerKelvin(mass.Kilograms * joulesPerKilogramKelvin);
}

/// <summary>A flat strip that links cells.</summary>
/// <param name="Thickness">Thickness, above 0.</param>
/// <param name="Width">Width, above 0.</param>
/// <param name="Length">Length between two cells, above 0.</param>
/// <param name="ResistivityOhmMetres">Resistivity, Ω m; 6.99e-8 for pure nickel at 20 °C (from memory).</param>
/// <validity>Strip at 20 °C, both faces in free air for the rise.</validity>
/// <error>Nickel-plated steel has several times the resistance of nickel.</error>
/// <source cref="Sources.CircuitTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Strip(Length Thickness, Length Width, Length Length, double ResistivityOhmMetres)
{
    /// <summary>Resistance from end to end: ρ L/(w t).</summary>
    public Resistance Resistance => Resistance.FromOhms(ResistivityOhmMetres * Length.Metres / (Thickness.Metres * Width.Metres));
    /// <summary>Heat under a current: I² R.</summary>
    public Power Heat(Current current) => Power.FromWatts(current.Amperes * current.Amperes * Resistance.Ohms);

    /// <summary>Rise over the air when both faces give off heat: P/(2 h w L).</summary>
    /// <param name="current">Current.</param>
    /// <param name="wattsPerSquareMetreKelvin">Heat transfer coefficient h, above 0.</param>
    public TemperatureDifference Rise(Current current, double wattsPerSquareMetreKelvin) => TemperatureDifference.FromKelvins(
        Heat(current).Watts / (2 * wattsPerSquareMetreKelvin * Width.Metres * Length.Metres));
}
