using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Numerics;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Wiring;

/// <summary>One insulated wire that lies free in still air: where its own heat and the air's cooling hold each other.</summary>
/// <param name="Conductor">The copper.</param>
/// <param name="OuterDiameter">Diameter over the insulation, above 0.</param>
/// <param name="Air">The air around.</param>
/// <param name="Emissivity">Emissivity of the insulation, 0 to 1; 0.9 is common for silicone and plastics.</param>
/// <remarks>
/// For each metre I² R'(T) = π D (h_conv + h_rad)(T − T_air). The insulation is taken to be as hot as the copper;
/// its own drop is a few kelvins.
/// </remarks>
/// <validity>A single wire, horizontal, far from others, in free air; in a box or a bundle it gets hotter.</validity>
/// <error>About 15 % of the rise.</error>
/// <source cref="Sources.ChurchillChuCylinder"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct WireTemperature(Conductor Conductor, Length OuterDiameter, Air Air, double Emissivity = 0.9)
{
    /// <summary>The temperature that the wire settles at.</summary>
    /// <param name="current">Root-mean-square current.</param>
    /// <returns>
    /// The temperature; <c>null</c> when there is none: the copper's resistance rises faster than heat can leave, or it would melt first.
    /// </returns>
    public Temperature? At(Current current)
    {
        if (current.Amperes == 0)
            return Air.Temperature;
        var balance = new WireBalance(this, current.Amperes * current.Amperes);
        return RootFinding.TryWithin(balance, Air.Temperature.Kelvins, TwoNode.CopperMelts.Kelvins, 1e-9) is { } kelvins
            ? Temperature.FromKelvins(kelvins)
            : null;
    }

    /// <summary>The largest current at which the wire settles at no more than a temperature: √(π D h (T − T_air)/R'(T)).</summary>
    /// <param name="limit">Greatest temperature of the conductor.</param>
    /// <returns>The current; none when the air is as hot as the limit.</returns>
    public Current LargestCurrent(Temperature limit) => limit <= Air.Temperature
        ? Current.FromAmperes(0)
        : Current.FromAmperes(Sqrt(WattsPerMetre(limit) / Conductor.OhmsPerMetre(limit)));

    /// <summary>Coefficient of convection and radiation together at a surface temperature, W/(m² K).</summary>
    /// <param name="surface">Temperature of the surface.</param>
    public double WattsPerSquareMetreKelvin(Temperature surface)
    {
        var film = Convection.Film(Air, surface);
        var rayleigh = Convection.Rayleigh(surface - Air.Temperature, OuterDiameter, film);
        return Convection.WattsPerSquareMetreKelvin(Convection.HorizontalCylinder(rayleigh, film.Prandtl), OuterDiameter, film)
            + Radiation.WattsPerSquareMetreKelvin(Emissivity, surface, Air.Temperature);
    }

    /// <summary>Heat that each metre gives off at a surface temperature: π D h (T − T_air), W/m.</summary>
    /// <param name="surface">Temperature of the surface.</param>
    public double WattsPerMetre(Temperature surface) =>
        PI * OuterDiameter.Metres * WattsPerSquareMetreKelvin(surface) * (surface - Air.Temperature).Kelvins;

    [StructLayout(LayoutKind.Auto)]
    readonly struct WireBalance(WireTemperature wire, double amperesSquared) : IFunction
    {
        public double At(double x)
        {
            var kelvins = Temperature.FromKelvins(x);
            return amperesSquared * wire.Conductor.OhmsPerMetre(kelvins) - wire.WattsPerMetre(kelvins);
        }
    }
}
