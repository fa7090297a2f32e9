using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Motors;

/// <summary>
/// A magnet motor as makers' sheets describe it, with brushes or as its direct-current equal: V = R I + ω/k, torque (I − I₀)/k.
/// </summary>
/// <param name="Kv">Speed constant k, above 0.</param>
/// <param name="Resistance">Resistance between the two leads R, above 0.</param>
/// <param name="NoLoadCurrent">Current that drag takes I₀, 0 or more, taken the same at every speed.</param>
/// <validity>Steady speed, constant drag torque, windings and magnets at the sheet's temperature.</validity>
/// <error>1 % to 3 % against makers' sheets.</error>
/// <source cref="Sources.MotorTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct DirectCurrentMotor(SpeedConstant Kv, Resistance Resistance, Current NoLoadCurrent)
{
    /// <summary>Torque for each ampere 1/k, N m/A.</summary>
    public double NewtonMetresPerAmpere => 1 / Kv.RadiansPerSecondPerVolt;
    /// <summary>Current with the shaft held: V/R.</summary>
    public Current StallCurrent(Voltage supply) => Current.FromAmperes(supply.Volts / Resistance.Ohms);
    /// <summary>Torque with the shaft held, drag not taken off, as sheets print it: V/(R k).</summary>
    public Torque StallTorque(Voltage supply) => Torque.FromNewtonMetres(NewtonMetresPerAmpere * StallCurrent(supply).Amperes);
    /// <summary>Speed without load: k (V − I₀ R).</summary>
    public AngularSpeed NoLoadSpeed(Voltage supply) => Speed(supply, NoLoadCurrent);

    /// <summary>Speed at a current: k (V − I R).</summary>
    public AngularSpeed Speed(Voltage supply, Current current) =>
        AngularSpeed.FromRadiansPerSecond(Kv.RadiansPerSecondPerVolt * (supply.Volts - current.Amperes * Resistance.Ohms));

    /// <summary>Current at a shaft torque: T k + I₀.</summary>
    public Current CurrentAt(Torque shaft) =>
        Current.FromAmperes(shaft.NewtonMetres * Kv.RadiansPerSecondPerVolt) + NoLoadCurrent;

    /// <summary>Power at the shaft: (V − I R)(I − I₀).</summary>
    public Power ShaftPower(Voltage supply, Current current) => Power.FromWatts(
        (supply.Volts - current.Amperes * Resistance.Ohms) * (current.Amperes - NoLoadCurrent.Amperes));

    /// <summary>Efficiency: (V − I R)(I − I₀)/(V I).</summary>
    public double Efficiency(Voltage supply, Current current) => ShaftPower(supply, current).Watts / (supply.Volts * current.Amperes);

    /// <summary>The current of best efficiency: √(I₀ V/R).</summary>
    public Current BestCurrent(Voltage supply) =>
        Current.FromAmperes(Sqrt(NoLoadCurrent.Amperes * supply.Volts / Resistance.Ohms));

    /// <summary>The best efficiency: (1 − √(I₀ R/V))².</summary>
    public double BestEfficiency(Voltage supply)
    {
        var rest = 1 - Sqrt(NoLoadCurrent.Amperes * Resistance.Ohms / supply.Volts);
        return rest * rest;
    }

    /// <summary>Loss of speed for each N m of load: R k², rad/s/(N m).</summary>
    public double SpeedLossPerNewtonMetre => Resistance.Ohms * Kv.RadiansPerSecondPerVolt * Kv.RadiansPerSecondPerVolt;

    /// <summary>Time constant of a start without load: J R k².</summary>
    /// <param name="rotor">Moment of inertia of the rotor J.</param>
    public Duration MechanicalTimeConstant(Inertia rotor) => Duration.FromSeconds(rotor.KilogramSquareMetres * SpeedLossPerNewtonMetre);
}
