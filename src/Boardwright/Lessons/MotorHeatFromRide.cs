using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Lessons;

/// <summary>
/// A motor as one body that its copper warms and the air cools, from its temperature on a ride and after it:
/// C dT/dt = ¾ R(T) I² − (T − T_air)/R_th, R(T) = R₂₀ (1 + 0.00393 (T − 20 °C)), I the amplitude of the phase current.
/// </summary>
/// <source cref="Sources.LumpedHeat"/>
public sealed record MotorHeatFromRide
{
    const double Reach90 = 1.6448536269514722;

    /// <summary>Heat that warms the motor by a kelvin.</summary>
    public required Estimate<HeatCapacity> Capacity { get; init; }
    /// <summary>Warming over the air for each watt while the board rides.</summary>
    public required Estimate<ThermalResistance> Riding { get; init; }
    /// <summary>The same while it stands; <c>null</c> where the log has no cooling tail of two minutes.</summary>
    public required Estimate<ThermalResistance>? Standing { get; init; }
    /// <summary>What readings scatter about the fit.</summary>
    public required TemperatureDifference Left { get; init; }
    /// <summary>What to be wary of, in sentences.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
    /// <summary>Time constant of the cooling while riding: C R_th.</summary>
    public Duration TimeConstant => Duration.FromSeconds(Capacity.Value.JoulesPerKelvin * Riding.Value.KelvinsPerWatt);

    /// <summary>Fits a ride.</summary>
    /// <param name="log">The log, with motor temperature and phase current.</param>
    /// <param name="betweenLeads">Resistance between two leads of the motor at 20 °C.</param>
    /// <param name="air">Temperature of the air; where the log has it, that is taken.</param>
    /// <returns>The fit; <c>null</c> where temperature or current is missing, the ride is shorter than five minutes, or the motor warms by
    /// less than 5 K.</returns>
    /// <validity>Copper is most of the loss, the sensor shows the whole motor; iron loss at high speed passes for copper's.</validity>
    /// <error>10 % or so: the winding runs ahead of where the sensor sits.</error>
    /// <source cref="Sources.LumpedHeat"/>
    public static MotorHeatFromRide? Fit(RideLog log, Resistance betweenLeads, Temperature? air = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (!log.MotorTemperatures.IsThere || !log.PhaseCurrents.IsThere || log.Lasting.Seconds < 300) return null;
        if ((air ?? log.AirTemperatures.First) is not { } ambient) return null;
        var step = Max(1, log.Lasting.Seconds / 6000);
        var even = log.Resampled(Duration.FromSeconds(step), Duration.FromSeconds(Max(30, 3 * step)));
        var (kelvins, amperes, speeds, t) =
            (even.Si(Channel.MotorTemperature).ToArray(), Heating(log, even, step), even.Si(Channel.Speed).ToArray(),
            even.Seconds.ToArray());
        var rows = Enumerable.Range(0, even.Count).Where(i => !double.IsNaN(kelvins[i])).ToArray();
        if (rows.Length < 60 || rows.Max(i => kelvins[i]) - rows.Min(i => kelvins[i]) < 5) return null;
        var isStanding = t.Select((_, i) => speeds.Length > 0 && speeds[i] < 0.5).ToArray();
        var hasTail = isStanding.Count(s => s) * step >= 120;
        var airs = even.Si(Channel.AirTemperature).ToArray();
        var copper = 0.75 * betweenLeads.Ohms;
        var fit = NonlinearLeastSquares.Solve(
            new(rows.Length, (x, left) =>
            {
                // Unknowns: temperature at the start, ln C, ln of the conductances riding and standing.
                var (temperature, capacity) = (x[0], Exp(x[1]));
                var next = 0;
                for (var i = 0; i < t.Length && next < rows.Length; i++)
                {
                    if (rows[next] == i) left[next++] = temperature - kelvins[i];
                    if (i + 1 == t.Length) break;
                    var conductance = Exp(x[hasTail && isStanding[i] ? 3 : 2]);
                    var around = airs.Length > 0 && air is null && !double.IsNaN(airs[i]) ? airs[i] : ambient.Kelvins;
                    var current = double.IsNaN(amperes[i]) ? 0 : amperes[i];
                    // Copper that warms gives off more: straight in T, so the step is exact.
                    var gain = copper * current * 0.00393;
                    var rate = (conductance - gain) / capacity;
                    var target = (copper * current * (1 - 0.00393 * 293.15) + conductance * around) / (conductance - gain);
                    var dt = t[i + 1] - t[i];
                    temperature = Abs(rate * dt) < 1e-9 ? temperature + rate * (target - temperature) * dt
                        : target + (temperature - target) * Exp(-rate * dt);
                }
            }),
            [kelvins[rows[0]], Log(400), Log(0.5), .. hasTail ? new[] { Log(0.3) } : []]);
        return Summarize(fit, rows.Select(i => (int)((t[i] - t[0]) / 60)).ToArray(), hasTail);
    }

    /// <summary>Mean square of the current over each step, as it is the square that heats.</summary>
    static double[] Heating(RideLog log, RideLog even, double step)
    {
        var amperes = log.Si(Channel.PhaseCurrent);
        var t = log.Seconds;
        var squares = new double[even.Count];
        var at = 0;
        for (var k = 0; k < squares.Length; k++)
        {
            var (sum, count) = (0.0, 0);
            while (at < t.Length && t[at] < even.Seconds[k]) at++;
            for (var i = at; i < t.Length && t[i] < even.Seconds[k] + step; i++)
            {
                if (double.IsNaN(amperes[i])) continue;
                sum += amperes[i] * amperes[i];
                count++;
            }

            squares[k] = count > 0 ? sum / count : k > 0 ? squares[k - 1] : 0;
        }

        return squares;
    }

    static MotorHeatFromRide Summarize(NonlinearFit fit, int[] groups, bool hasTail)
    {
        int[] asked = [.. Enumerable.Range(0, fit.Values.Count)];
        var scatter = fit.ScatterOf(groups, asked);
        double Deviation(int j) => Sqrt(Max(fit.Covariance(j, j), scatter?[j, j] ?? 0));
        var reach = scatter is null ? Reach90 : StudentT.Quantile(0.95, Max(1, groups[^1] + 1 - asked.Length));
        var cautions = new List<string> { "The sensor's place is taken for the whole motor; its winding is hotter during a pull." };
        if (!hasTail)
            cautions.Add("There is no cooling tail of two minutes at rest, so only the cooling while riding is told.");
        return new()
        {
            Capacity = Of<HeatCapacity>(1, 1, hasTail ? "Longer hard pulls." : "Leave the logger on for twenty minutes after a hard ride."),
            Riding = Of<ThermalResistance>(2, -1, "A ride long enough for the temperature to level off: three time constants."),
            Standing = hasTail ? Of<ThermalResistance>(3, -1, "Leave the logger on until the motor is near the air's temperature.") : null,
            Left = TemperatureDifference.FromKelvins(fit.ResidualDeviation),
            Cautions = cautions,
        };

        // The unknowns are logarithms, so the ranges are ratios and never reach zero.
        Estimate<T> Of<T>(int j, int sign, string narrowing)
            where T : struct, IQuantity<T>
        {
            var (value, spread) = (Exp(sign * fit.Values[j]), Deviation(j));
            return new(T.FromSi(value), T.FromSi(value * Exp(-reach * spread)), T.FromSi(value * Exp(reach * spread)), value * spread,
                narrowing);
        }
    }
}
