using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Lessons;

/// <summary>Energy for the distance at one range of speed and grade.</summary>
/// <param name="FromSpeed">Lower end of the speeds.</param>
/// <param name="ToSpeed">Upper end of the speeds.</param>
/// <param name="FromGrade">Lower end of the grades; <c>null</c> where heights are not known.</param>
/// <param name="ToGrade">Upper end of the grades.</param>
/// <param name="Distance">Distance ridden in this range.</param>
/// <param name="Consumption">Energy out of the pack for the distance, by the scatter from piece to piece; <c>null</c> for fewer than three
/// pieces of road.</param>
/// <source cref="Sources.RideRecord"/>
public sealed record EnergyBin(
    Speed FromSpeed, Speed ToSpeed, Fraction? FromGrade, Fraction? ToGrade, Length Distance, Estimate<EnergyPerDistance>? Consumption);

/// <summary>Energy for the distance of a ride, whole and by speed and grade: ∫ V I dt / ∫ v dt.</summary>
/// <param name="Distance">Distance with readings of speed, voltage and current.</param>
/// <param name="Energy">Energy out of the pack over it, what came back taken off.</param>
/// <param name="Bins">By speed, then grade; ranges with nothing in them are left out.</param>
/// <validity>Pieces of road of 50 m, each counted where its mean speed and grade lie; energy that goes into speed in one piece and comes
/// back in the next scatters between them.</validity>
/// <error>That of the logger's currents and speeds, one to one.</error>
/// <source cref="Sources.RideRecord"/>
public sealed record EnergyFromRide(Length Distance, Energy Energy, IReadOnlyList<EnergyBin> Bins)
{
    const double Piece = 50;
    const double SpeedStep = 5 / 3.6;
    const double GradeStep = 0.02;

    /// <summary>Energy for the distance over all.</summary>
    public EnergyPerDistance Consumption => EnergyPerDistance.FromJoulesPerMetre(Energy.Joules / Distance.Metres);

    /// <summary>Adds up a log.</summary>
    /// <param name="log">The log.</param>
    /// <returns>The energies; <c>null</c> where speed, pack voltage or pack current is missing, or the board did not get on by 50
    /// m.</returns>
    public static EnergyFromRide? Fit(RideLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (!log.Speeds.IsThere || !log.PackVoltages.IsThere || !log.PackCurrents.IsThere) return null;
        var (v, volts, amperes, heights, t) =
            (log.Si(Channel.Speed).ToArray(), log.Si(Channel.PackVoltage).ToArray(), log.Si(Channel.PackCurrent).ToArray(),
            log.Si(Channel.Elevation).ToArray(), log.Seconds.ToArray());
        var pieces = new List<(double Way, double Seconds, double Joules, double Rise)>();
        var (all, joules) = (0.0, 0.0);
        foreach (var (from, to) in log.Stretches(Duration.FromSeconds(Max(5, 5 * log.UsualStep.Seconds))))
        {
            var (way, time, energy, height) = (0.0, 0.0, 0.0, double.NaN);
            for (var i = from + 1; i < to; i++)
            {
                var dt = t[i] - t[i - 1];
                var (step, part) = ((v[i] + v[i - 1]) / 2 * dt, (volts[i] * amperes[i] + volts[i - 1] * amperes[i - 1]) / 2 * dt);
                if (double.IsNaN(step) || double.IsNaN(part)) continue;
                if (double.IsNaN(height) && heights.Length > 0) height = heights[i - 1];
                (way, time, energy) = (way + step, time + dt, energy + part);
                (all, joules) = (all + step, joules + part);
                if (way < Piece) continue;
                pieces.Add((way, time, energy, heights.Length > 0 ? heights[i] - height : double.NaN));
                (way, time, energy, height) = (0, 0, 0, double.NaN);
            }
        }

        if (all < Piece) return null;
        var bins = pieces.GroupBy(
            p => (Speed: (int)Floor(p.Way / p.Seconds / SpeedStep),
            Grade: double.IsNaN(p.Rise) ? (int?)null : (int)Floor(p.Rise / p.Way / GradeStep + 0.5)))
            .OrderBy(g => g.Key.Speed).ThenBy(g => g.Key.Grade)
            .Select(g => new EnergyBin(
                Speed.FromMetresPerSecond(g.Key.Speed * SpeedStep), Speed.FromMetresPerSecond((g.Key.Speed + 1) * SpeedStep),
                g.Key.Grade is { } low ? Fraction.FromValue((low - 0.5) * GradeStep) : null,
                g.Key.Grade is { } high ? Fraction.FromValue((high + 0.5) * GradeStep) : null,
                Length.FromMetres(g.Sum(p => p.Way)), Spread([.. g.Select(p => (p.Way, p.Joules))])));
        return new(Length.FromMetres(all), Energy.FromJoules(joules), [.. bins]);
    }

    /// <summary>Ratio of sums, with the deviation of a ratio: √(Σ (E_i − q d_i)² · n/(n − 1)) / Σ d.</summary>
    static Estimate<EnergyPerDistance>? Spread(List<(double Way, double Joules)> pieces)
    {
        if (pieces.Count < 3) return null;
        var way = pieces.Sum(p => p.Way);
        var ratio = pieces.Sum(p => p.Joules) / way;
        var squares = pieces.Sum(p => Pow(p.Joules - ratio * p.Way, 2)) * pieces.Count / (pieces.Count - 1);
        return Estimate<EnergyPerDistance>.Create(ratio, Sqrt(squares) / way, StudentT.Quantile(0.95, pieces.Count - 1), "More road at this speed and grade, held steady.");
    }
}
