using Boardwright.Findings;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Spreads;

/// <summary>A quantity that was predicted and measured, on one ride of one board.</summary>
/// <param name="Board">Which board.</param>
/// <param name="Ride">Which ride.</param>
/// <param name="Difference">What came out.</param>
/// <source cref="Sources.RandomEffects"/>
public sealed record RideEvidence(string Board, string Ride, RideDifference Difference);

/// <summary>How far the model can be trusted in one quantity, by the rides that were held against it.</summary>
/// <param name="Kind">The quantity.</param>
/// <param name="Evidence">The rides, in their order; those that say nothing are left out.</param>
/// <param name="Boards">How many boards they are of.</param>
/// <param name="Bias">Measured over predicted, as a rule; above the air for temperatures.</param>
/// <param name="Spread">The model's own scatter about that, as a part of the prediction: what the boards' spreads do not explain. Standard
/// deviation.</param>
/// <param name="Give">Standard deviation of measured over predicted for the next ride of a board, its entries' own spreads left aside;
/// wider for few rides. Not a number for one ride.</param>
/// <param name="Cautions">What to be wary of, in sentences.</param>
/// <source cref="Sources.RandomEffects"/>
public sealed record QuantityCredibility(
    FigureKind Kind, IReadOnlyList<RideEvidence> Evidence, int Boards, Estimate<Number> Bias, Estimate<Number> Spread, double Give,
    IReadOnlyList<string> Cautions)
{
    /// <summary>Whether the bias may be taken as it is: not one, nine times out of ten.</summary>
    public bool IsBiased => !Bias.Covers(Number.FromValue(1)) && !double.IsNaN(Bias.Low.Value);
    /// <summary>What is compared, in words.</summary>
    public string Title => Kind.Unit == "°C" ? $"{Kind.Title}, above the air" : Kind.Title;

    /// <summary>What it comes to, in a sentence.</summary>
    public string Says
    {
        get
        {
            var rides = Invariant($"{Evidence.Count} {(Evidence.Count == 1 ? "ride" : "rides")} of {Boards} {(Boards == 1 ? "board" : "boards")}");
            if (double.IsNaN(Give))
                return Invariant($"{Title}: {Bias.Value.Value:0.000} times as predicted on {rides}. One ride tells no spread.");
            var lean = IsBiased ? Invariant($"the model is {(Bias.Value.Value > 1 ? "too low" : "too high")} by {100 * Abs(Bias.Value.Value - 1):0.0} %") : "no lean to either side can be told";
            return Invariant($"{Title}: {Bias.Value.Value:0.000} times as predicted ({Bias.Low.Value:0.000} to {Bias.High.Value:0.000}) on {rides}, {lean}; its own spread is {100 * Spread.Value.Value:0.0} % ({100 * Spread.Low.Value:0.0} to {100 * Spread.High.Value:0.0} %).");
        }
    }
}

/// <summary>
/// Bias and spread of the model over all rides. With y = ln(measured/predicted) and u the spread of each prediction by its own
/// board: y = β + (what the model gets wrong, deviation τ) + (what is not known of the board, deviation u).
/// </summary>
/// <remarks>
/// τ² by the method of moments, max(0, (Q − (k − 1))/(Σw − Σw²/Σw)) with w = 1/u² and Q = Σ w (y − ȳ)²; then β is the mean of y
/// weighted by 1/(u² + τ²). Its range is Student's, with the scatter of the weighted y: of boards where there are several,
/// since rides of one board share what is not known of it, else of rides. The range of τ is where Q(τ²) meets the quantiles of χ².
/// </remarks>
/// <validity>Rides that were not used to fit the boards' own entries: a value that was fitted to a ride agrees with it.</validity>
/// <error>Of five rides τ is known to a factor of two at best; its range says so.</error>
/// <source cref="Sources.RandomEffects"/>
public static class Credibility
{
    // A temperature that rose less tells little of how well heat is predicted.
    const double LeastRise = 3;

    /// <summary>Weighs rides.</summary>
    /// <param name="evidence">Everything that was predicted and measured.</param>
    /// <returns>Each quantity that any ride tells of, in the order of <see cref="RideComparison.All"/>.</returns>
    public static IReadOnlyList<QuantityCredibility> Compute(IEnumerable<RideEvidence> evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var all = evidence.ToArray();
        return [.. RideComparison.All.Select(
            kind => Compute(kind, [.. all.Where(e => e.Difference.Kind.Id == kind.Id && IsComparable(e.Difference))]))
            .OfType<QuantityCredibility>()];
    }

    static bool IsComparable(RideDifference d) =>
        d.Ratio > 0 && double.IsFinite(d.Ratio) && d.Predicted - d.Base >= (d.Kind.Unit == "°C" ? LeastRise : 1e-9)
        && d.RelativeSpread is >= 0 and < 3;

    static QuantityCredibility? Compute(FigureKind kind, RideEvidence[] evidence)
    {
        if (evidence.Length == 0) return null;
        double[] y = [.. evidence.Select(e => Log(e.Difference.Ratio))];
        // A prediction without any spread would count for everything.
        double[] u = [.. evidence.Select(e => Max(e.Difference.RelativeSpread, 1e-3))];
        var boards = evidence.Select(e => e.Board).Distinct(StringComparer.Ordinal).ToArray();
        var cautions = new List<string>();
        if (evidence.Length == 1)
        {
            var nan = double.NaN;
            return new(kind, evidence, 1,
                new(Number.FromValue(evidence[0].Difference.Ratio), Number.FromValue(nan), Number.FromValue(nan), nan, "More rides."),
                new(Number.FromValue(0), Number.FromValue(0), Number.FromValue(nan), nan, "More rides."), nan, cautions);
        }

        var squared = Moments(y, u);
        var (mean, error) = Mean(y, u, squared);
        if (boards.Length > 1 && boards.Length < evidence.Length)
            error = Max(error, Clustered(y, u, squared, mean, [.. evidence.Select(e => Array.IndexOf(boards, e.Board))], boards.Length));
        if (boards.Length == 1)
            cautions.Add("All rides are of one board: what its own parts have of errors counts for the model's.");
        if (evidence.Length < 5)
            cautions.Add("Fewer than five rides: the ranges are wide, and an odd ride turns everything.");
        var reach = StudentT.Quantile(0.95, boards.Length > 1 ? boards.Length - 1 : evidence.Length - 1);
        var (low, high) = Profile(y, u);
        var bias = Exp(mean);
        var narrowing = boards.Length < 3 ? "Rides of more boards." : "More rides.";
        return new(
            kind, evidence, boards.Length,
            new(Number.FromValue(bias), Number.FromValue(Exp(mean - reach * error)), Number.FromValue(Exp(mean + reach * error)),
            bias * error, narrowing),
            new(Number.FromValue(Sqrt(squared)), Number.FromValue(low), Number.FromValue(high), double.NaN, narrowing),
            reach / Normal.Quantile(0.95) * Sqrt(squared + error * error), cautions);
    }

    /// <summary>Variance of what the values differ by beyond their own deviations.</summary>
    internal static double Moments(double[] y, double[] u)
    {
        var (w, w2, wy) = (0.0, 0.0, 0.0);
        for (var i = 0; i < y.Length; i++)
        {
            var weight = 1 / (u[i] * u[i]);
            (w, w2, wy) = (w + weight, w2 + weight * weight, wy + weight * y[i]);
        }

        return Max(0, (Heterogeneity(y, u, 0) - (y.Length - 1)) / (w - w2 / w));
    }

    /// <summary>Weighted mean and its deviation by the scatter of the values, never less than by their own deviations.</summary>
    internal static (double Mean, double Error) Mean(double[] y, double[] u, double squared)
    {
        var (w, wy) = (0.0, 0.0);
        for (var i = 0; i < y.Length; i++)
        {
            var weight = 1 / (u[i] * u[i] + squared);
            (w, wy) = (w + weight, wy + weight * y[i]);
        }

        return (wy / w, Sqrt(Max(1, Heterogeneity(y, u, squared) / (y.Length - 1)) / w));
    }

    static double Clustered(double[] y, double[] u, double squared, double mean, int[] board, int boards)
    {
        var (sums, w) = (new double[boards], 0.0);
        for (var i = 0; i < y.Length; i++)
        {
            var weight = 1 / (u[i] * u[i] + squared);
            sums[board[i]] += weight * (y[i] - mean);
            w += weight;
        }

        return Sqrt(sums.Sum(s => s * s) * boards / (boards - 1)) / w;
    }

    static double Heterogeneity(double[] y, double[] u, double squared)
    {
        var (w, wy, q) = (0.0, 0.0, 0.0);
        for (var i = 0; i < y.Length; i++)
        {
            var weight = 1 / (u[i] * u[i] + squared);
            (w, wy) = (w + weight, wy + weight * y[i]);
        }

        for (var i = 0; i < y.Length; i++) q += Pow(y[i] - wy / w, 2) / (u[i] * u[i] + squared);
        return q;
    }

    /// <summary>The deviations between which the model's own lies nine times out of ten.</summary>
    static (double Low, double High) Profile(double[] y, double[] u)
    {
        double At(double share)
        {
            const double Most = 9;
            var aim = ChiSquared.Quantile(share, y.Length - 1);
            double Beyond(double squared) => Heterogeneity(y, u, squared) - aim;
            return Beyond(0) <= 0 ? 0 : Beyond(Most) >= 0 ? Sqrt(Most) : Sqrt(RootFinding.Within(Beyond, 0, Most, 1e-10));
        }

        return (At(0.95), At(0.05));
    }
}
