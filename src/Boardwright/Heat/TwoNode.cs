using System.Globalization;
using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Heat;

/// <summary>The heat made in a motor while its current does not change.</summary>
/// <param name="CopperAt20">Copper loss with the winding at 20 °C, 0 or more: 1.5 R i² for a phase current of amplitude i.</param>
/// <param name="Case">Loss that warms the case, 0 or more: drag of iron and bearings.</param>
/// <source cref="Sources.Iec60028"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct MotorHeat(Power CopperAt20, Power Case)
{
    /// <summary>Part by which copper's resistance at 20 °C rises for each kelvin, 1/K.</summary>
    public const double CopperPerKelvin = 0.00393;
    /// <summary>Copper loss at a winding temperature: P₂₀ (1 + 0.00393 (T_w − 20 °C)).</summary>
    public Power Copper(Temperature winding) => CopperAt20 * CopperFactor(winding);
    /// <summary>How many times its resistance at 20 °C copper has: 1 + 0.00393 (T − 20 °C).</summary>
    public static double CopperFactor(Temperature copper) => 1 + CopperPerKelvin * (copper.Celsius - 20);
}

/// <summary>Temperatures of the two nodes.</summary>
/// <param name="Winding">The winding's.</param>
/// <param name="Case">The case's.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct MotorTemperatures(Temperature Winding, Temperature Case);

/// <summary>
/// A motor as two bodies: C_w dT_w/dt = P_cu(T_w) − (T_w − T_c)/R_wc and C_c dT_c/dt = P_c + (T_w − T_c)/R_wc − (T_c − T_a)/R_ca.
/// </summary>
/// <param name="WindingCapacity">Heat capacity of the winding C_w, above 0.</param>
/// <param name="CaseCapacity">Heat capacity of everything else C_c, above 0.</param>
/// <param name="WindingToCase">Thermal resistance from winding to case R_wc, above 0.</param>
/// <validity>Each body has one temperature; the current does not change while a question is answered.</validity>
/// <error>Measured constants 10 %; guessed ones 30 % of the rise and a factor 1.5 of the time.</error>
/// <source cref="Sources.TwoNodeMotor"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TwoNode(HeatCapacity WindingCapacity, HeatCapacity CaseCapacity, ThermalResistance WindingToCase)
{
    const double LargestStepCount = 4e6;

    // A limit that is reached at all is reached within some ten slow time constants; more steps than these are needed only
    // where one body's capacity is less than a thousandth of the other's, which no motor's is.
    const int MostStepsToLimit = 20_000;

    /// <summary>Melting point of copper, above which no answer is given.</summary>
    public static Temperature CopperMelts => Temperature.FromKelvins(1357.77);

    /// <summary>The temperatures that a motor settles at with constant current and constant resistance to the air, in closed
    /// form.</summary>
    /// <remarks>P = P₂₀ (1 + α (T_a + P_c R_ca − 20 °C))/(1 − α P₂₀ (R_wc + R_ca)), α = 0.00393 /K.</remarks>
    /// <param name="heat">Heat made.</param>
    /// <param name="cooling">Cooling of the case.</param>
    /// <returns>
    /// The temperatures; <c>null</c> when there are none: the copper's resistance rises faster than heat can leave
    /// (thermal runaway), or the winding would melt first.
    /// </returns>
    public MotorTemperatures? Settled(MotorHeat heat, FixedCooling cooling)
    {
        var (rwc, rca) = (WindingToCase.KelvinsPerWatt, cooling.Resistance.KelvinsPerWatt);
        var growth = MotorHeat.CopperPerKelvin * heat.CopperAt20.Watts;
        var rest = 1 - growth * (rwc + rca);
        if (rest <= 0)
            return null;
        var ambient = cooling.Ambient.Kelvins;
        var withoutCopper = Temperature.FromKelvins(ambient + heat.Case.Watts * rca);
        var copper = heat.CopperAt20.Watts * MotorHeat.CopperFactor(withoutCopper) / rest;
        var winding = withoutCopper.Kelvins + copper * (rwc + rca);
        return winding < CopperMelts.Kelvins
            ? new(Temperature.FromKelvins(winding), Temperature.FromKelvins(withoutCopper.Kelvins + copper * rca))
            : null;
    }

    /// <summary>The temperatures that a motor settles at with constant current, its resistance to the air depending on the case's
    /// temperature.</summary>
    /// <remarks>
    /// The winding follows from the case exactly, so one bracketed root for the case is left. Heat made is linear in its
    /// temperature and heat given off grows faster, so between ambient and the melting point there is one root or none.
    /// </remarks>
    /// <param name="heat">Heat made.</param>
    /// <param name="cooling">Cooling of the case.</param>
    /// <returns>
    /// The temperatures; <c>null</c> when there are none: the copper's resistance rises faster than heat can leave
    /// (thermal runaway), or the winding would melt first.
    /// </returns>
    public MotorTemperatures? Settled<TCooling>(MotorHeat heat, TCooling cooling)
        where TCooling : struct, ICooling
    {
        var balance = new NodeBalance<TCooling>(heat, cooling, WindingToCase.KelvinsPerWatt);
        var ambient = cooling.Ambient.Kelvins;
        var highest = CopperMelts.Kelvins - WindingToCase.KelvinsPerWatt * heat.Copper(CopperMelts).Watts;
        if (!balance.IsStable || highest <= ambient)
            return null;
        // Without heat the motor is as warm as the air.
        if (balance.At(ambient) <= 0)
            return new(cooling.Ambient, cooling.Ambient);
        return RootFinding.TryWithin(balance, ambient, highest, 1e-9) is { } root
            ? new(Temperature.FromKelvins(balance.Winding(root)), Temperature.FromKelvins(root))
            : null;
    }

    /// <summary>The temperatures after a time, by Runge and Kutta's rule in steps of at most a quarter of the fastest time
    /// constant.</summary>
    /// <param name="start">Temperatures at the start.</param>
    /// <param name="heat">Heat made.</param>
    /// <param name="cooling">Cooling of the case.</param>
    /// <param name="time">Time, 0 or more.</param>
    /// <error>Below 10⁻⁴ of the rise.</error>
    /// <exception cref="ArgumentOutOfRangeException">The time is below 0, or more than a million time constants.</exception>
    public MotorTemperatures After<TCooling>(MotorTemperatures start, MotorHeat heat, TCooling cooling, Duration time)
        where TCooling : struct, ICooling
    {
        ArgumentOutOfRangeException.ThrowIfNegative(time.Seconds, nameof(time));
        var steps = Ceiling(time.Seconds / LargestStepSeconds(heat, cooling, start.Case));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(steps, LargestStepCount, nameof(time));
        return After(start, heat, cooling, time, Max(1, (int)steps));
    }

    /// <summary>The temperatures after a time, in a given number of equal steps.</summary>
    /// <param name="start">Temperatures at the start.</param>
    /// <param name="heat">Heat made.</param>
    /// <param name="cooling">Cooling of the case.</param>
    /// <param name="time">Time, 0 or more.</param>
    /// <param name="steps">Number of steps, at least 1; none longer than the fastest time constant.</param>
    /// <error>Falls with the fourth power of the step.</error>
    public MotorTemperatures After<TCooling>(MotorTemperatures start, MotorHeat heat, TCooling cooling, Duration time, int steps)
        where TCooling : struct, ICooling
    {
        Span<double> state = [start.Winding.Kelvins, start.Case.Kelvins];
        RungeKutta.Advance(new Rates<TCooling>(this, heat, cooling), 0, state, time.Seconds, steps);
        return new(Temperature.FromKelvins(state[0]), Temperature.FromKelvins(state[1]));
    }

    /// <summary>Time from a cold start, both bodies as warm as the air, until the winding is as hot as it may be, at constant
    /// current.</summary>
    /// <param name="heat">Heat made.</param>
    /// <param name="cooling">Cooling of the case.</param>
    /// <param name="limit">Greatest temperature of the winding, below copper's melting point.</param>
    /// <returns>The time, 0 when the air is as hot as the limit; <c>null</c> when the limit is never reached.</returns>
    /// <exception cref="NonConvergenceException">Five thousand of the fast time constant do not tell, or no step is short enough: the two
    /// bodies are too unlike.</exception>
    /// <error>Below 10⁻⁴ of the time, for the stated constants.</error>
    public Duration? TimeToLimit<TCooling>(MotorHeat heat, TCooling cooling, Temperature limit)
        where TCooling : struct, ICooling
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(limit, CopperMelts);
        var ambient = cooling.Ambient;
        if (ambient >= limit)
            return Duration.FromSeconds(0);
        if (Settled(heat, cooling) is { } settled && settled.Winding <= limit)
            return null;

        var rates = new Rates<TCooling>(this, heat, cooling);
        var step = LargestStepSeconds(heat, cooling, ambient);
        var tolerance = 1e-6 * step;
        if (!double.IsNormal(tolerance))
            throw new NonConvergenceException("One of the two bodies warms faster than any step can follow.");
        Span<double> state = [ambient.Kelvins, ambient.Kelvins];
        Span<double> before = stackalloc double[2];
        // From a cold start both temperatures only rise, so the first step that ends above the limit holds the answer.
        for (var i = 0; i < MostStepsToLimit; i++)
        {
            state.CopyTo(before);
            RungeKutta.Step(rates, 0, state, step);
            if (state[0] < limit.Kelvins)
                continue;
            var part = new PartOfStep<TCooling>(rates, before[0], before[1], limit.Kelvins);
            return Duration.FromSeconds(i * step + RootFinding.Within(part, 0, step, tolerance));
        }

        throw new NonConvergenceException(string.Create(
            CultureInfo.InvariantCulture, $"After {MostStepsToLimit * step} s the winding has still not reached {limit.Celsius} °C."));
    }

    /// <summary>The two time constants at constant loss: those of the equations' two decaying shares, the faster one first.</summary>
    /// <param name="caseToAir">Thermal resistance from case to air.</param>
    public (Duration Fast, Duration Slow) TimeConstants(ThermalResistance caseToAir)
    {
        var (slow, fast) = Decays(caseToAir);
        return (Duration.FromSeconds(1 / fast), Duration.FromSeconds(1 / slow));
    }

    /// <summary>The temperatures after a time at constant loss, from a cold start, in closed form: the sum of two decaying
    /// shares.</summary>
    /// <remarks>A check on the step-by-step answer, and exact where the copper's own rise is left out.</remarks>
    /// <param name="windingLoss">Loss in the winding, constant.</param>
    /// <param name="caseLoss">Loss in the case, constant.</param>
    /// <param name="cooling">Cooling of the case.</param>
    /// <param name="time">Time, 0 or more.</param>
    /// <error>Exact for the stated equations.</error>
    public MotorTemperatures AfterAtConstantLoss(Power windingLoss, Power caseLoss, FixedCooling cooling, Duration time)
    {
        var (slow, fast) = Decays(cooling.Resistance);
        var (rwc, rca) = (WindingToCase.KelvinsPerWatt, cooling.Resistance.KelvinsPerWatt);
        var caseRise = (windingLoss.Watts + caseLoss.Watts) * rca;
        var windingRise = caseRise + windingLoss.Watts * rwc;
        var windingRate = windingLoss.Watts / WindingCapacity.JoulesPerKelvin;
        var caseRate = caseLoss.Watts / CaseCapacity.JoulesPerKelvin;
        return new(
            cooling.Ambient + Rise(windingRise, windingRate, slow, fast, time.Seconds),
            cooling.Ambient + Rise(caseRise, caseRate, slow, fast, time.Seconds));
    }

    // A share a decays slowly and b fast, a + b the final rise, and a slow + b fast the rate at the start.
    static TemperatureDifference Rise(double final, double rate, double slow, double fast, double seconds)
    {
        var slowShare = (fast * final - rate) / (fast - slow);
        return TemperatureDifference.FromKelvins(
            final - slowShare * Exp(-slow * seconds) - (final - slowShare) * Exp(-fast * seconds));
    }

    (double Slow, double Fast) Decays(ThermalResistance caseToAir)
    {
        var (cw, cc) = (WindingCapacity.JoulesPerKelvin, CaseCapacity.JoulesPerKelvin);
        var (gw, ga) = (1 / WindingToCase.KelvinsPerWatt, 1 / caseToAir.KelvinsPerWatt);
        var trace = gw / cw + (gw + ga) / cc;
        var determinant = gw * ga / (cw * cc);
        var fast = trace / 2 + Sqrt(trace * trace / 4 - determinant);
        return (determinant / fast, fast);
    }

    double LargestStepSeconds<TCooling>(MotorHeat heat, TCooling cooling, Temperature caseTemperature)
        where TCooling : struct, ICooling
    {
        var (cw, cc) = (WindingCapacity.JoulesPerKelvin, CaseCapacity.JoulesPerKelvin);
        var gw = 1 / WindingToCase.KelvinsPerWatt;
        var ga = 1 / cooling.At(caseTemperature).KelvinsPerWatt;
        var growth = MotorHeat.CopperPerKelvin * heat.CopperAt20.Watts;
        return 0.25 / (Max(gw, growth) / cw + (gw + ga) / cc);
    }

    readonly struct Rates<TCooling>(TwoNode motor, MotorHeat heat, TCooling cooling) : IDerivative
        where TCooling : struct, ICooling
    {
        public void At(double time, ReadOnlySpan<double> state, Span<double> rates)
        {
            var (winding, body) = (Temperature.FromKelvins(state[0]), Temperature.FromKelvins(state[1]));
            var through = (winding - body).Kelvins / motor.WindingToCase.KelvinsPerWatt;
            var away = (body - cooling.Ambient).Kelvins / cooling.At(body).KelvinsPerWatt;
            rates[0] = (heat.Copper(winding).Watts - through) / motor.WindingCapacity.JoulesPerKelvin;
            rates[1] = (heat.Case.Watts + through - away) / motor.CaseCapacity.JoulesPerKelvin;
        }
    }

    readonly struct PartOfStep<TCooling>(Rates<TCooling> rates, double winding, double body, double limitKelvins) : IFunction
        where TCooling : struct, ICooling
    {
        public double At(double x)
        {
            Span<double> state = [winding, body];
            RungeKutta.Step(rates, 0, state, x);
            return state[0] - limitKelvins;
        }
    }

    readonly struct NodeBalance<TCooling>(MotorHeat heat, TCooling cooling, double windingToCase) : IFunction
        where TCooling : struct, ICooling
    {
        public bool IsStable => MotorHeat.CopperPerKelvin * heat.CopperAt20.Watts * windingToCase < 1;

        public double Winding(double caseKelvins)
        {
            var copper = heat.Copper(Temperature.FromKelvins(caseKelvins)).Watts;
            var growth = MotorHeat.CopperPerKelvin * heat.CopperAt20.Watts;
            return caseKelvins + copper * windingToCase / (1 - growth * windingToCase);
        }

        public double At(double x)
        {
            var away = (x - cooling.Ambient.Kelvins) / cooling.At(Temperature.FromKelvins(x)).KelvinsPerWatt;
            return heat.Copper(Temperature.FromKelvins(Winding(x))).Watts + heat.Case.Watts - away;
        }
    }
}
