using Boardwright.Findings;

namespace Boardwright.Heat;

/// <summary>Heat that a grey surface radiates to surroundings much larger than itself.</summary>
/// <validity>Grey, diffuse surface; surroundings at one temperature.</validity>
/// <error>As good as the emissivity: bare aluminium 0.05 to 0.2, anodised or painted 0.8 to 0.95.</error>
/// <source cref="Sources.Codata2018"/>
public static class Radiation
{
    /// <summary>Stefan and Boltzmann's constant σ, W/(m² K⁴).</summary>
    public const double StefanBoltzmann = 5.670374419e-8;

    /// <summary>Heat for each area: ε σ (T⁴ − T_s⁴), W/m².</summary>
    /// <param name="emissivity">Emissivity ε, 0 to 1.</param>
    /// <param name="surface">Temperature of the surface T.</param>
    /// <param name="surroundings">Temperature of the surroundings T_s.</param>
    public static double WattsPerSquareMetre(double emissivity, Temperature surface, Temperature surroundings) =>
        WattsPerSquareMetreKelvin(emissivity, surface, surroundings) * (surface - surroundings).Kelvins;

    /// <summary>The same as a heat transfer coefficient: ε σ (T² + T_s²)(T + T_s), W/(m² K).</summary>
    /// <param name="emissivity">Emissivity ε, 0 to 1.</param>
    /// <param name="surface">Temperature of the surface T.</param>
    /// <param name="surroundings">Temperature of the surroundings T_s.</param>
    public static double WattsPerSquareMetreKelvin(double emissivity, Temperature surface, Temperature surroundings)
    {
        var (hot, cold) = (surface.Kelvins, surroundings.Kelvins);
        return emissivity * StefanBoltzmann * (hot * hot + cold * cold) * (hot + cold);
    }
}
