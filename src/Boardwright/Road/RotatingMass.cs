using Boardwright.Findings;

namespace Boardwright.Road;

/// <summary>Moments of inertia of what turns, and the mass that they add to a rolling board.</summary>
/// <validity>Bodies of even density that roll without slip.</validity>
/// <error>Exact for the stated shape; a wheel's core is lighter or heavier than its tyre.</error>
/// <source cref="Sources.Mechanics"/>
public static class RotatingMass
{
    /// <summary>A solid disc: J = ½ m r².</summary>
    public static Inertia Disc(Mass mass, Length radius) => Annulus(mass, radius, default);

    /// <summary>A ring: J = ½ m (r_o² + r_i²).</summary>
    public static Inertia Annulus(Mass mass, Length outerRadius, Length innerRadius) =>
        Inertia.FromKilogramSquareMetres(
            0.5 * mass.Kilograms * (outerRadius.Metres * outerRadius.Metres + innerRadius.Metres * innerRadius.Metres));

    /// <summary>The mass that a turning part adds: J (n/r)².</summary>
    /// <param name="inertia">Moment of inertia J of the part about its own shaft.</param>
    /// <param name="rollingRadius">Rolling radius r of the wheel, above 0.</param>
    /// <param name="turnsPerWheelTurn">Turns n of the part for each turn of the wheel; the ratio G for a rotor.</param>
    public static Mass Equivalent(Inertia inertia, Length rollingRadius, double turnsPerWheelTurn = 1)
    {
        var perMetre = turnsPerWheelTurn / rollingRadius.Metres;
        return Mass.FromKilograms(inertia.KilogramSquareMetres * perMetre * perMetre);
    }
}
