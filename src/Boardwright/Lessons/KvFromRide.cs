using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Lessons;

/// <summary>How fast the board rolls for each volt on its motors, which is KV, ratio and wheel in one number: d V = v/κ + R I.</summary>
/// <source cref="Sources.SpeedPerVolt"/>
public sealed record KvFromRide
{
    /// <summary>Speed for each volt on the motor without load, κ, in m/s/V.</summary>
    public required Estimate<Number> MetresPerSecondPerVolt { get; init; }
    /// <summary>Volts on the motor for each ampere of phase current; <c>null</c> where the log has no phase current.</summary>
    public required Estimate<Resistance>? Resistance { get; init; }
    /// <summary>Readings used.</summary>
    public required int Readings { get; init; }
    /// <summary>What to be wary of, in sentences.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Fits duty, pack voltage, speed and, where it is there, phase current.</summary>
    /// <param name="log">The log.</param>
    /// <returns>The fit; <c>null</c> where speed, duty or pack voltage is missing, or fewer than 30 readings are of a pull between a tenth
    /// and nine tenths of duty.</returns>
    /// <validity>No field weakening: readings above nine tenths of duty are left out. Wheels that do not slip.</validity>
    /// <error>1 % with phase currents; without them a load that grows with speed passes for a lower KV.</error>
    /// <source cref="Sources.SpeedPerVolt"/>
    public static KvFromRide? Fit(RideLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (!log.Speeds.IsThere || !log.Duties.IsThere || !log.PackVoltages.IsThere) return null;
        var hasAmperes = log.PhaseCurrents.IsThere;
        var (speeds, duties, volts, amperes, t) =
            (log.Si(Channel.Speed).ToArray(), log.Si(Channel.Duty).ToArray(), log.Si(Channel.PackVoltage).ToArray(),
            log.Si(Channel.PhaseCurrent).ToArray(), log.Seconds.ToArray());
        var rows = Enumerable.Range(0, log.Count)
            .Where(i => speeds[i] > 0.8 && Abs(duties[i]) is > 0.1 and < 0.9 && volts[i] > 1 && (!hasAmperes || !double.IsNaN(amperes[i])))
            .ToArray();
        if (rows.Length < 30) return null;
        double[] second = [.. rows.Select(i => hasAmperes ? amperes[i] : 1)];
        var y = rows.Select(i => Abs(duties[i]) * volts[i]).ToArray();
        var fit = NonlinearLeastSquares.Solve(
            new(rows.Length, (x, left) =>
            {
                for (var k = 0; k < left.Length; k++) left[k] = x[0] * speeds[rows[k]] + x[1] * second[k] - y[k];
            })
            {
                Slopes = (_, slopes) =>
                {
                    for (var k = 0; k < rows.Length; k++) (slopes[2 * k], slopes[2 * k + 1]) = (speeds[rows[k]], second[k]);
                },
            },
            [5, 0.05]);
        var groups = rows.Select(i => (int)((t[i] - t[rows[0]]) / 20)).ToArray();
        var scatter = fit.ScatterOf(groups, [0, 1]);
        double Deviation(int j) => Sqrt(Max(fit.Covariance(j, j), scatter?[j, j] ?? 0));
        var reach = StudentT.Quantile(0.95, Max(1, groups[^1] - 1));
        var cautions = new List<string>();
        if (!hasAmperes)
            cautions.Add("Without phase current the volts that the motor's resistance takes are only known as a constant.");
        if (fit.Condition > 30)
            cautions.Add("Speed and current rose and fell together, so their shares are hard to tell apart: hold a speed now and then.");
        return new()
        {
            MetresPerSecondPerVolt = Estimate<Number>.Create(1 / fit.Values[0], Deviation(0) / Square(fit.Values[0]), reach, "Steady stretches at several speeds on level road, and the speed sensor's scale over a known distance."),
            Resistance = hasAmperes ? Estimate<Resistance>.Create(fit.Values[1], Deviation(1), reach, "Hard pulls at low speed.") : null,
            Readings = rows.Length,
            Cautions = cautions,
        };
    }

    /// <summary>
    /// Measured over stated: κ / (KV π D/(60 G)). 1 where KV, ratio and wheel are as stated; 1.07 where, say, the motor pulley has 16 teeth
    /// instead of 15.
    /// </summary>
    /// <param name="kv">Stated speed constant.</param>
    /// <param name="ratio">Motor turns for each turn of the wheel, above 0.</param>
    /// <param name="wheel">Rolling diameter of the wheel, above 0.</param>
    public Estimate<Number> Against(SpeedConstant kv, double ratio, Length wheel)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratio);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wheel.Metres, nameof(wheel));
        var stated = kv.RadiansPerSecondPerVolt / ratio * wheel.Metres / 2;
        var (value, half) = (MetresPerSecondPerVolt.Value.Value / stated,
            (MetresPerSecondPerVolt.High.Value - MetresPerSecondPerVolt.Low.Value) / 2 / stated);
        return new(Number.FromSi(value), Number.FromSi(value - half), Number.FromSi(value + half),
            MetresPerSecondPerVolt.Deviation / stated, MetresPerSecondPerVolt.Narrowing);
    }

    static double Square(double x) => x * x;
}
