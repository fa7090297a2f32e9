using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Motors;

/// <summary>What the speed constant of a three-phase magnet motor says about its torque, driven with sinusoidal phase currents.</summary>
/// <param name="Kv">
/// Speed constant: r/min for each volt of bus at no load and full modulation, which is r/min for each peak volt between two leads.
/// </param>
/// <param name="PolePairs">Pole pairs, at least 1.</param>
/// <remarks>
/// A phase current here is the amplitude of the sine, all of it in the torque axis (i_d = 0). A torque constant quoted for
/// direct current, <see cref="NewtonMetresPerDcAmpere"/>, taken for it overstates the torque by 15.5 %.
/// </remarks>
/// <validity>Sinusoidal back-EMF, no reluctance torque (L_d = L_q), magnets at the temperature of the speed constant, no
/// saturation.</validity>
/// <error>As good as the speed constant: measured 1 %, catalogue 5 % to 10 %.</error>
/// <source cref="Sources.Pmsm"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct MotorConstants(SpeedConstant Kv, int PolePairs)
{
    static readonly double RootThree = Sqrt(3);

    /// <summary>Peak volts between two leads for each rad/s, and N m for each ampere of the direct-current equivalent: 60/(2π
    /// KV).</summary>
    public double NewtonMetresPerDcAmpere => 1 / Kv.RadiansPerSecondPerVolt;
    /// <summary>Flux linkage of one phase, peak, in webers: λ = 60/(√3 · 2π · KV · pp).</summary>
    public double FluxLinkageWebers => 1 / (RootThree * Kv.RadiansPerSecondPerVolt * PolePairs);
    /// <summary>Torque for each ampere of phase-current amplitude: Kt = (3/2) pp λ = (√3/2) · 60/(2π KV), N m/A.</summary>
    public double NewtonMetresPerPeakAmpere => RootThree / 2 / Kv.RadiansPerSecondPerVolt;
    /// <summary>Torque for each root-mean-square ampere of phase current: √2 times that of the amplitude, N m/A.</summary>
    public double NewtonMetresPerRmsAmpere => Sqrt(2) * NewtonMetresPerPeakAmpere;

    /// <summary>Torque in the air gap of a phase current: Kt i_q. The shaft has this less the drag.</summary>
    /// <param name="phase">Amplitude of the phase current.</param>
    public Torque Torque(Current phase) => Units.Torque.FromNewtonMetres(NewtonMetresPerPeakAmpere * phase.Amperes);

    /// <summary>Amplitude of the phase current that a torque in the air gap asks for: T/Kt.</summary>
    public Current PhaseCurrent(Torque torque) => Current.FromAmperes(torque.NewtonMetres / NewtonMetresPerPeakAmpere);
    /// <summary>Speed without load or drag on a bus of a voltage, at full modulation: KV V.</summary>
    public AngularSpeed IdealNoLoad(Voltage bus) => AngularSpeed.FromRadiansPerSecond(Kv.RadiansPerSecondPerVolt * bus.Volts);
    /// <summary>Electrical speed: pp ω, rad/s.</summary>
    public AngularSpeed Electrical(AngularSpeed shaft) => AngularSpeed.FromRadiansPerSecond(PolePairs * shaft.RadiansPerSecond);
    /// <summary>Phase current with the same torque as a direct current through two leads: i_q = (2/√3) I.</summary>
    public static Current EqualTorque(Current direct) => direct * (2 / RootThree);
    /// <summary>Speed constant of the same coils connected in delta instead of star: √3 times.</summary>
    public static SpeedConstant StarToDelta(SpeedConstant star) =>
        SpeedConstant.FromRadiansPerSecondPerVolt(RootThree * star.RadiansPerSecondPerVolt);
    /// <summary>Resistance between two leads of the same coils connected in delta instead of star: a third.</summary>
    public static Resistance StarToDelta(Resistance betweenLeads) => betweenLeads / 3;
}

/// <summary>Torque that a motor's iron and bearings hold back: T₀ + c ω.</summary>
/// <param name="Constant">The part at any speed T₀, 0 or more.</param>
/// <param name="NewtonMetreSecondsPerRadian">The part that grows with speed c, N m s/rad, 0 or more.</param>
/// <validity>Speeds of 0 or more, up to those of the test; eddy losses above it grow faster.</validity>
/// <error>From one test 20 % away from its speed, from several 5 %.</error>
/// <source cref="Sources.MotorTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct MotorDrag(Torque Constant, double NewtonMetreSecondsPerRadian)
{
    /// <summary>Drag torque at a speed of 0 or more.</summary>
    public Torque At(AngularSpeed shaft) =>
        Torque.FromNewtonMetres(Constant.NewtonMetres + NewtonMetreSecondsPerRadian * shaft.RadiansPerSecond);

    /// <summary>Power that the drag takes at a speed of 0 or more: T_drag ω.</summary>
    public Power PowerAt(AngularSpeed shaft) => Power.FromWatts(At(shaft).NewtonMetres * shaft.RadiansPerSecond);

    /// <summary>
    /// From one no-load test: T_drag = (P₀/ω₀)(½ + ½ ω/ω₀), P₀ = I₀ V₀, ω₀ = KV V₀. That half of it grows with speed is a guess.
    /// </summary>
    /// <param name="kv">Speed constant.</param>
    /// <param name="supply">Voltage of the test V₀, above 0.</param>
    /// <param name="current">Current from the supply I₀, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is not above 0, or the current below 0.</exception>
    public static MotorDrag FromTest(SpeedConstant kv, Voltage supply, Current current)
    {
        var (speed, torque) = Point(kv, supply, current);
        return new(Torque.FromNewtonMetres(torque / 2), torque / 2 / speed);
    }

    /// <summary>
    /// From several no-load tests: the line of least squares through P₀/ω₀ over ω₀, neither of its two terms below 0.
    /// </summary>
    /// <param name="kv">Speed constant.</param>
    /// <param name="tests">Voltage and current of each test, at least one.</param>
    /// <returns>The line; with all tests at one voltage their mean is taken for one test.</returns>
    /// <exception cref="ArgumentException">There is no test.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A voltage is not above 0, or a current below 0.</exception>
    public static MotorDrag FromTests(SpeedConstant kv, IReadOnlyList<(Voltage Supply, Current Current)> tests)
    {
        ArgumentNullException.ThrowIfNull(tests);
        if (tests.Count == 0)
            throw new ArgumentException("At least one no-load test is needed.", nameof(tests));
        var (sum, sumOfTorques, squares, products) = (0.0, 0.0, 0.0, 0.0);
        foreach (var (supply, current) in tests)
        {
            var (speed, torque) = Point(kv, supply, current);
            sum += speed;
            sumOfTorques += torque;
            squares += speed * speed;
            products += speed * torque;
        }

        var (meanSpeed, meanTorque) = (sum / tests.Count, sumOfTorques / tests.Count);
        var spread = squares - sum * meanSpeed;
        if (spread <= 1e-9 * squares)
            return new(Torque.FromNewtonMetres(meanTorque / 2), meanTorque / 2 / meanSpeed);
        var slope = (products - sum * meanTorque) / spread;
        var constant = meanTorque - slope * meanSpeed;
        if (slope < 0)
            return new(Torque.FromNewtonMetres(meanTorque), 0);
        return constant < 0
            ? new(Torque.FromNewtonMetres(0), products / squares)
            : new(Torque.FromNewtonMetres(constant), slope);
    }

    static (double Speed, double Torque) Point(SpeedConstant kv, Voltage supply, Current current)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(supply.Volts, nameof(supply));
        ArgumentOutOfRangeException.ThrowIfNegative(current.Amperes, nameof(current));
        var speed = kv.RadiansPerSecondPerVolt * supply.Volts;
        return (speed, supply.Volts * current.Amperes / speed);
    }
}
