using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Motors;

/// <summary>One phase of a motor's equivalent star with the constants that its magnets give it: the circuit that a sinusoidal drive
/// sees.</summary>
/// <param name="Constants">Speed constant and pole pairs.</param>
/// <param name="Resistance">Resistance R of one phase, line to neutral, at the winding's temperature.</param>
/// <param name="Inductance">Inductance L of one phase, line to neutral.</param>
/// <validity>Steady speed, L_d = L_q = L, no saturation, i_d = 0.</validity>
/// <error>Exact for the stated circuit; iron loss is not in it.</error>
/// <source cref="Sources.Pmsm"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Winding(MotorConstants Constants, Resistance Resistance, Inductance Inductance)
{
    /// <summary>The greatest phase voltage, peak, that a bus gives with centred space-vector modulation: V/√3.</summary>
    /// <param name="bus">Bus voltage.</param>
    /// <param name="modulation">The part of it that the drive uses, 0 to 1.</param>
    public static Voltage GreatestPhaseVoltage(Voltage bus, double modulation = 1) => bus * (modulation / Sqrt(3));

    /// <summary>The greatest phase voltage, peak, with plain sine modulation: V/2.</summary>
    public static Voltage GreatestWithSine(Voltage bus) => bus / 2;
    /// <summary>The peak of the phase voltage's fundamental in six-step: 2V/π.</summary>
    public static Voltage GreatestInSixStep(Voltage bus) => bus * (2 / PI);

    /// <summary>The state at a phase current and speed: v_d = −ω_e L i_q, v_q = R i_q + ω_e λ.</summary>
    /// <param name="phase">Amplitude of the phase current i_q, negative when braking.</param>
    /// <param name="shaft">Speed of the shaft.</param>
    public DrivePoint At(Current phase, AngularSpeed shaft)
    {
        var electrical = Constants.PolePairs * shaft.RadiansPerSecond;
        return new(
            this, phase, shaft,
            Voltage.FromVolts(-electrical * Inductance.Henries * phase.Amperes),
            Voltage.FromVolts(Resistance.Ohms * phase.Amperes + electrical * Constants.FluxLinkageWebers));
    }

    /// <summary>The largest phase current that a phase voltage can drive at a speed: the larger root of (ω_e L i)² + (R i + ω_e λ)² =
    /// V².</summary>
    /// <param name="phaseVoltage">Greatest peak phase voltage V.</param>
    /// <param name="shaft">Speed of the shaft, 0 or more.</param>
    /// <returns>The current; <c>null</c> when the magnets' voltage is above V, so that no driving current flows.</returns>
    public Current? LargestCurrent(Voltage phaseVoltage, AngularSpeed shaft)
    {
        var electrical = Constants.PolePairs * shaft.RadiansPerSecond;
        var (r, x) = (Resistance.Ohms, electrical * Inductance.Henries);
        var emf = electrical * Constants.FluxLinkageWebers;
        var volts = phaseVoltage.Volts;
        var room = (volts - emf) * (volts + emf);
        if (room < 0)
            return null;
        // The larger root in the form that does not subtract two near numbers.
        var half = r * emf;
        return Current.FromAmperes(room / (half + Sqrt(half * half + (r * r + x * x) * room)));
    }

    /// <summary>Base speed: the highest at which a phase voltage still drives a phase current, from (ω_e L i)² + (R i + ω_e λ)² =
    /// V².</summary>
    /// <param name="phase">Amplitude of the phase current, 0 or more.</param>
    /// <param name="phaseVoltage">Greatest peak phase voltage V.</param>
    /// <returns>The speed; <c>null</c> when the voltage does not drive the current even at rest.</returns>
    public AngularSpeed? BaseSpeed(Current phase, Voltage phaseVoltage)
    {
        var drop = Resistance.Ohms * phase.Amperes;
        var (flux, reaction) = (Constants.FluxLinkageWebers, Inductance.Henries * phase.Amperes);
        var volts = phaseVoltage.Volts;
        var room = (volts - drop) * (volts + drop);
        if (room < 0)
            return null;
        var half = drop * flux;
        var electrical = room / (half + Sqrt(half * half + (flux * flux + reaction * reaction) * room));
        return AngularSpeed.FromRadiansPerSecond(electrical / Constants.PolePairs);
    }

    /// <summary>The speed below which braking takes energy instead of giving it, copper loss being more than what the shaft gives: 1.5 R
    /// i_q/Kt.</summary>
    /// <param name="phase">Amplitude of the braking phase current, 0 or more.</param>
    public AngularSpeed LeastSpeedThatGives(Current phase) =>
        AngularSpeed.FromRadiansPerSecond(1.5 * Resistance.Ohms * phase.Amperes / Constants.NewtonMetresPerPeakAmpere);
}

/// <summary>Voltages, torque and powers of a motor at one phase current and speed.</summary>
/// <param name="Winding">The motor.</param>
/// <param name="Phase">Amplitude of the phase current i_q.</param>
/// <param name="Shaft">Speed of the shaft ω.</param>
/// <param name="Direct">v_d, peak.</param>
/// <param name="Quadrature">v_q, peak.</param>
/// <source cref="Sources.Pmsm"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct DrivePoint(Winding Winding, Current Phase, AngularSpeed Shaft, Voltage Direct, Voltage Quadrature)
{
    /// <summary>Peak phase voltage: √(v_d² + v_q²).</summary>
    public Voltage PhaseVoltage => Voltage.FromVolts(Sqrt(Direct.Volts * Direct.Volts + Quadrature.Volts * Quadrature.Volts));
    /// <summary>Torque in the air gap: Kt i_q.</summary>
    public Torque Torque => Winding.Constants.Torque(Phase);
    /// <summary>Power in the air gap: Kt i_q ω.</summary>
    public Power Mechanical => Power.FromWatts(Torque.NewtonMetres * Shaft.RadiansPerSecond);
    /// <summary>Copper loss: 1.5 R i_q².</summary>
    public Power CopperLoss => Power.FromWatts(1.5 * Winding.Resistance.Ohms * Phase.Amperes * Phase.Amperes);
    /// <summary>Power into the motor: 1.5 v_q i_q = 1.5 R i_q² + Kt i_q ω; negative when it gives.</summary>
    public Power Input => Power.FromWatts(1.5 * Quadrature.Volts * Phase.Amperes);
    /// <summary>Current from a bus of a voltage, without the drive's own losses.</summary>
    public Current BusCurrent(Voltage bus) => Current.FromAmperes(Input.Watts / bus.Volts);
    /// <summary>The part of a bus that the phase voltage uses: √3 |v|/V, 1 at the end of linear modulation.</summary>
    public double Modulation(Voltage bus) => Sqrt(3) * PhaseVoltage.Volts / bus.Volts;
}
