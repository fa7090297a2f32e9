using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>
/// A charge at constant current, then at constant voltage with a current that decays: I = I_cc e^(−t/τ) down to I_cc k.
/// </summary>
/// <param name="Missing">Charge to put back Q, 0 or more.</param>
/// <param name="Current">Current of the first part I_cc, above 0.</param>
/// <param name="End">Current at which the charger stops, above 0 and at most the first part's.</param>
/// <param name="Decay">Time constant of the second part τ, above 0: of a measured charge, or the pack's slow resistance times its charge
/// per volt near full.</param>
/// <validity>While <see cref="ConstantCurrent"/> is not <c>null</c>; 0 °C to 45 °C, τ doubling towards the cold.</validity>
/// <error>0.3 % with a measured τ, 10 % with one from a data sheet.</error>
/// <source cref="Sources.LgHg2Kollmeyer"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ChargeTail(Charge Missing, Current Current, Current End, Duration Decay)
{
    /// <summary>Time at constant current: Q/I_cc − τ (1 − k), k the end current over the first.</summary>
    /// <returns>The time, or <c>null</c> when so little is missing that the voltage is full from the start and the form does not
    /// hold.</returns>
    public Duration? ConstantCurrent
    {
        get
        {
            var seconds = Missing.Coulombs / Current.Amperes - Decay.Seconds * (1 - End / Current);
            return seconds > 0 ? Duration.FromSeconds(seconds) : null;
        }
    }

    /// <summary>Time at constant voltage: τ ln(1/k).</summary>
    public Duration ConstantVoltage => Decay * Log(Current / End);
    /// <summary>Charge put in at constant voltage: I_cc τ (1 − k).</summary>
    public Charge AtConstantVoltage => Charge.FromCoulombs(Decay.Seconds * (Current - End).Amperes);

    /// <summary>Time altogether: Q/I_cc + τ (ln(1/k) − 1 + k).</summary>
    /// <returns>The time, or <c>null</c> when the form does not hold.</returns>
    public Duration? Total => ConstantCurrent is { } first ? first + ConstantVoltage : null;
}
