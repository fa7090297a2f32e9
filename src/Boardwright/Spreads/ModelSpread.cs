using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Spreads;

/// <summary>What the rides of a shop say of the model itself, laid upon the range of a figure.</summary>
/// <remarks>
/// Around a value x with the range x − a to x + b by the board's own spreads, and measured over predicted m ± g: the range is
/// m x − √((m a)² + (1.645 g x)²) to m x + √((m b)² + (1.645 g x)²). The value itself stays what was computed.
/// </remarks>
/// <validity>Energy at cruise and on rides, the range, and how far windings warm above the air. Other figures have no measurements to hold
/// against.</validity>
/// <error>Few rides tell the spread poorly; the give in the board file is widened for that when it is written.</error>
/// <source cref="Sources.RandomEffects"/>
static class ModelSpread
{
    static readonly HashSet<string> Energies =
        [Catalogue.Consumption.Id, Catalogue.CruisePower.Id, Rides.RideFigures.Energy.Id, Rides.RideFigures.Consumption.Id];
    static readonly HashSet<string> Windings = [Catalogue.Winding.Id, Rides.RideFigures.Winding.Id];

    /// <summary>The range of a figure with the model's own spread in it.</summary>
    /// <param name="board">The board, with what it says of the model.</param>
    /// <param name="id">Id of the figure.</param>
    /// <param name="value">Its value.</param>
    /// <param name="interval">Its range by the board's spreads.</param>
    /// <returns>The wider range; the same where the board says nothing of the model there.</returns>
    public static Interval Over(Board board, string id, double value, Interval interval)
    {
        ArgumentNullException.ThrowIfNull(board);
        ArgumentNullException.ThrowIfNull(interval);
        var isRange = id == Catalogue.Range.Id;
        var known = isRange || Energies.Contains(id) ? board.Model.Energy : Windings.Contains(id) ? board.Model.WindingRise : default;
        if (!known.IsKnown)
            return interval;
        var (factor, give) = (known.Value.Value, known.Spread ?? 0);
        // Energy that is measured as more takes from the range.
        if (isRange) (factor, give) = (1 / factor, give / (factor * factor));
        var ground = Windings.Contains(id) ? board.Brief.Temperature.Or(default).Celsius : 0;
        var (above, own) = (value - ground, Normal.Quantile(0.95) * give * Abs(value - ground));
        var (low, high) = (factor * (value - interval.Low), factor * (interval.High - value));
        var matters = own > Max(low, high) ? (IReadOnlyList<string>)[known.Key, .. interval.MattersMost.Take(1)] : interval.MattersMost;
        return new(ground + factor * above - Sqrt(low * low + own * own), ground + factor * above + Sqrt(high * high + own * own), matters);
    }
}
