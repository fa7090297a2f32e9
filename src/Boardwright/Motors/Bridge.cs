using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Motors;

/// <summary>The three half bridges of one motor output: what they lose, and what they ask of the supply's capacitors.</summary>
/// <param name="SwitchResistance">Resistance of one switch, hot, 0 or more.</param>
/// <param name="SwitchingTime">Rise and fall time together, 0 or more.</param>
/// <param name="SwitchingFrequency">Switching frequency, 0 or more.</param>
/// <validity>Sinusoidal phase current, switches that conduct both ways.</validity>
/// <error>Conduction 10 %; switching 30 %, the times being those of a data sheet.</error>
/// <source cref="Sources.CircuitTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Bridge(Resistance SwitchResistance, Duration SwitchingTime, Frequency SwitchingFrequency)
{
    /// <summary>Conduction loss: 1.5 i² R.</summary>
    /// <param name="phase">Amplitude of the phase current i.</param>
    public Power Conduction(Current phase) => Power.FromWatts(1.5 * phase.Amperes * phase.Amperes * SwitchResistance.Ohms);

    /// <summary>Switching loss: (6/π) V |i| · ½ (t_rise + t_fall) f.</summary>
    /// <param name="phase">Amplitude of the phase current i.</param>
    /// <param name="bus">Bus voltage V.</param>
    public Power Switching(Current phase, Voltage bus) =>
        Power.FromWatts(3 / PI * bus.Volts * Abs(phase.Amperes) * SwitchingTime.Seconds * SwitchingFrequency.Hertz);

    /// <summary>Conduction and switching loss together.</summary>
    /// <param name="phase">Amplitude of the phase current i.</param>
    /// <param name="bus">Bus voltage V.</param>
    public Power Loss(Current phase, Voltage bus) => Conduction(phase) + Switching(phase, bus);

    /// <summary>Loss in the diodes while both switches of a half bridge are off: 3 (2 i/π) V_f · 2 t f.</summary>
    /// <param name="phase">Amplitude of the phase current i.</param>
    /// <param name="diode">Forward voltage of the diode V_f.</param>
    /// <param name="deadTime">Time t for which both are off, at each change.</param>
    public Power DeadTime(Current phase, Voltage diode, Duration deadTime) =>
        Power.FromWatts(12 / PI * Abs(phase.Amperes) * diode.Volts * deadTime.Seconds * SwitchingFrequency.Hertz);

    /// <summary>
    /// Root-mean-square ripple current of the supply's capacitors: I √(2M [√3/(4π) + cos²φ (√3/π − 9M/16)]), I the phase's root-mean-square
    /// current.
    /// </summary>
    /// <param name="phase">Amplitude of the phase current.</param>
    /// <param name="modulation">Peak phase voltage over half the bus voltage M, 0 to 2/√3.</param>
    /// <param name="phaseAngle">Angle φ between phase voltage and phase current.</param>
    /// <validity>Switching much faster than the motor turns, direct current from the pack free of ripple.</validity>
    /// <error>Exact under these conditions.</error>
    /// <source cref="Sources.Kolar2006"/>
    public static Current Ripple(Current phase, double modulation, Angle phaseAngle)
    {
        var cosine = Cos(phaseAngle.Radians);
        var bracket = Sqrt(3) / (4 * PI) + cosine * cosine * (Sqrt(3) / PI - 9 * modulation / 16);
        // At full modulation and small angles the bracket may round to just below zero.
        return Current.FromAmperes(Abs(phase.Amperes) / Sqrt(2) * Sqrt(Max(0, 2 * modulation * bracket)));
    }

    /// <summary>Mean current from the supply: 0.75 M i cos φ.</summary>
    /// <param name="phase">Amplitude of the phase current i.</param>
    /// <param name="modulation">Peak phase voltage over half the bus voltage M.</param>
    /// <param name="phaseAngle">Angle φ between phase voltage and phase current.</param>
    /// <source cref="Sources.Kolar2006"/>
    public static Current SupplyCurrent(Current phase, double modulation, Angle phaseAngle) =>
        phase * (0.75 * modulation * Cos(phaseAngle.Radians));
}
