using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Wiring;

/// <summary>A pack switched onto empty capacitors: source, resistance, inductance and capacitance in series.</summary>
/// <param name="Supply">Voltage of the pack V, above 0.</param>
/// <param name="Capacitance">Capacitance of the controllers C, above 0.</param>
/// <param name="Resistance">Resistance of pack, wiring and capacitors together R, above 0; or of the pre-charge resistor.</param>
/// <param name="Inductance">Inductance of the wiring L, 0 or more; 0 leaves it out.</param>
/// <validity>Linear parts, capacitor empty at the start.</validity>
/// <error>As good as R and L, which for wiring are known to a factor of 1.5.</error>
/// <source cref="Sources.CircuitTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Inrush(Voltage Supply, Capacitance Capacitance, Resistance Resistance, Inductance Inductance = default)
{
    /// <summary>Time constant R C.</summary>
    public Duration TimeConstant => Duration.FromSeconds(Resistance.Ohms * Capacitance.Farads);
    /// <summary>Energy that the resistance takes while the capacitor fills, whatever the resistance: ½ C V².</summary>
    public Energy Energy => Energy.FromJoules(0.5 * Capacitance.Farads * Supply.Volts * Supply.Volts);

    /// <summary>Damping ratio ζ = (R/2) √(C/L); below 1 the current swings back.</summary>
    /// <returns>The ratio, or <c>null</c> without inductance.</returns>
    public double? DampingRatio => Inductance.Henries == 0 ? null : Resistance.Ohms / 2 * Sqrt(Capacitance.Farads / Inductance.Henries);

    /// <summary>Time of the greatest current: at once without inductance, else atan(ω_d/α)/ω_d, α = R/2L, ω_d = √(1/LC − α²), or the same
    /// with artanh when over-damped.</summary>
    public Duration PeakTime
    {
        get
        {
            if (Inductance.Henries == 0)
                return Duration.FromSeconds(0);
            var (decay, square) = Roots();
            var turn = Sqrt(Abs(square));
            // Near critical damping both forms have the limit 1/α.
            return Duration.FromSeconds(
                turn < 1e-6 * decay ? 1 / decay : square > 0 ? Atan(turn / decay) / turn
                : Log((decay + turn) / Slow(decay, turn)) / (2 * turn));
        }
    }

    /// <summary>The greatest current: V/R without inductance, else that of <see cref="After"/> at <see cref="PeakTime"/>.</summary>
    public Current PeakCurrent => After(PeakTime);
    /// <summary>The greatest power that the resistance takes.</summary>
    public Power PeakPower => Power.FromWatts(PeakCurrent.Amperes * PeakCurrent.Amperes * Resistance.Ohms);

    /// <summary>The current at a time: V/R e^(−t/RC) without inductance, else V/(ω_d L) e^(−αt) sin ω_d t, with sinh when
    /// over-damped.</summary>
    /// <param name="time">Time since it was switched on, 0 or more.</param>
    public Current After(Duration time)
    {
        var (volts, seconds) = (Supply.Volts, time.Seconds);
        if (Inductance.Henries == 0)
            return Current.FromAmperes(volts / Resistance.Ohms * Exp(-seconds / TimeConstant.Seconds));
        var (decay, square) = Roots();
        var turn = Sqrt(Abs(square));
        var early = volts / Inductance.Henries;
        if (turn < 1e-6 * decay)
            return Current.FromAmperes(early * seconds * Exp(-decay * seconds));
        return Current.FromAmperes(square > 0
            ? early / turn * Exp(-decay * seconds) * Sin(turn * seconds)
            // As two decaying shares, for sinh overflows long before the product does.
            : early / (2 * turn) * (Exp(-Slow(decay, turn) * seconds) - Exp(-(turn + decay) * seconds)));
    }

    // α − ω without the digits that the difference would lose when the two are nearly the same: (1/LC)/(α + ω).
    double Slow(double decay, double turn) => 1 / (Inductance.Henries * Capacitance.Farads) / (decay + turn);

    /// <summary>Part of the supply's voltage that the capacitor has after a time, without inductance: 1 − e^(−t/RC).</summary>
    /// <param name="time">Time since it was switched on, 0 or more.</param>
    public double Filled(Duration time) => 1 - Exp(-time.Seconds / TimeConstant.Seconds);

    /// <summary>Time until a voltage is left between supply and capacitor, without inductance: R C ln(V/ΔV). The pre-charge resistor may
    /// then be bridged.</summary>
    /// <param name="left">Voltage left ΔV, above 0, at most the supply's.</param>
    /// <exception cref="ArgumentOutOfRangeException">The voltage left is not above 0, or above the supply's.</exception>
    public Duration TimeUntil(Voltage left)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(left.Volts, nameof(left));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(left, Supply);
        return TimeConstant * Log(Supply / left);
    }

    (double Decay, double Square) Roots()
    {
        var decay = Resistance.Ohms / (2 * Inductance.Henries);
        return (decay, 1 / (Inductance.Henries * Capacitance.Farads) - decay * decay);
    }
}
