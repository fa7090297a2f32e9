using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>The slow part of a cell's answer to a current: a resistor and a capacitor side by side, dv/dt = (I R − v)/τ.</summary>
/// <param name="Resistance">Resistance of the branch R, 0 or more.</param>
/// <param name="TimeConstant">Time constant of the branch τ, above 0.</param>
/// <validity>Resistance and time constant the same over the step.</validity>
/// <error>Exact for a constant current over the step, whatever its length.</error>
/// <source cref="Sources.CircuitTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PolarisationBranch(Resistance Resistance, Duration TimeConstant)
{
    /// <summary>Voltage over the branch after a step of constant current: u + (v − u) e^(−t/τ), u = I R.</summary>
    /// <param name="before">Voltage v at the start of the step.</param>
    /// <param name="current">Current I, positive on discharge.</param>
    /// <param name="step">Length of the step t, 0 or more.</param>
    public Voltage After(Voltage before, Current current, Duration step)
    {
        var settled = Voltage.FromVolts(current.Amperes * Resistance.Ohms);
        return settled + (before - settled) * Exp(-step.Seconds / TimeConstant.Seconds);
    }
}

/// <summary>How far an energy goes at a steady consumption.</summary>
/// <validity>The same consumption all the way.</validity>
/// <error>As good as the consumption.</error>
/// <source cref="Sources.Mechanics"/>
public static class PackRange
{
    /// <summary>Range: usable part times energy over consumption.</summary>
    /// <param name="energy">Energy of the full pack.</param>
    /// <param name="usable">Part of it that may be used.</param>
    /// <param name="consumption">Energy taken from the pack for each length, above 0.</param>
    public static Length Compute(Energy energy, Fraction usable, EnergyPerDistance consumption) =>
        Length.FromMetres(energy.Joules * usable.Value / consumption.JoulesPerMetre);
}
