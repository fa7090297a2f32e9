using Boardwright.Parts;

namespace Boardwright.Searches;

/// <summary>How much of each thing counts: what goes beyond is not worth a heavier or dearer board to the customer of the brief.</summary>
/// <remarks>Half again of the range and of the climb that are asked; the speed limit, or the top speed that is asked and a tenth; a third
/// to spare. Without a wish there is no bound.</remarks>
/// <param name="Range">m.</param>
/// <param name="Climb">Rise over run.</param>
/// <param name="Speed">m/s.</param>
/// <param name="Spare">Part of the limits.</param>
/// <source cref="Findings.Sources.CommonPractice"/>
sealed record Merits(double Range, double Climb, double Speed, double Spare)
{
    /// <summary>For a brief.</summary>
    public static Merits FromBrief(Brief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        var limit = brief.SpeedLimit.IsKnown ? brief.SpeedLimit.Value.MetresPerSecond : double.PositiveInfinity;
        return new(
            brief.RangeWanted is { IsKnown: true, Value.Si: > 0 } range ? 1.5 * range.Value.Metres : double.PositiveInfinity,
            brief.ClimbWanted is { IsKnown: true, Value.Si: > 0 } climb ? 1.5 * climb.Value.Value : double.PositiveInfinity,
            brief.TopSpeedWanted.IsKnown ? Math.Min(limit, 1.1 * brief.TopSpeedWanted.Value.MetresPerSecond) : limit,
            1.0 / 3);
    }
}
