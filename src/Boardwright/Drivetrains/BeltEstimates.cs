using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Drivetrains;

/// <summary>The makers' closed approximations to the belt's path, kept as a check on <see cref="BeltPath"/>; never used for a
/// figure.</summary>
/// <error>Centre distance: 0.01 to 0.02 mm too long at ratios of 2.4 to 2.7 on short centres, 0.13 mm at 20 and 72 teeth on a 450 mm
/// belt.</error>
/// <source cref="Sources.OptibeltManual"/>
public static class BeltEstimates
{
    /// <summary>Belt length: 2C + π (D + d) / 2 + (D − d)² / 4C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not above 0.</exception>
    public static Length PitchLength(Length centreDistance, Length largeDiameter, Length smallDiameter)
    {
        Require.AboveZero(centreDistance);
        var difference = largeDiameter - smallDiameter;
        return 2 * centreDistance + PI / 2 * (largeDiameter + smallDiameter) + difference / (4 * centreDistance) * difference;
    }

    /// <summary>Centre distance: K + √(K² − (D − d)² / 8), K = L / 4 − π (D + d) / 8.</summary>
    /// <returns>The distance, or <c>null</c> when the belt is too short for the formula.</returns>
    public static Length? CentreDistance(Length pitchLength, Length largeDiameter, Length smallDiameter)
    {
        var k = (pitchLength / 4 - PI / 8 * (largeDiameter + smallDiameter)).Metres;
        var difference = (largeDiameter - smallDiameter).Metres;
        var root = k * k - difference * difference / 8;
        return k > 0 && root >= 0 ? Length.FromMetres(k + Sqrt(root)) : null;
    }

    /// <summary>Wrap on the small pulley: 180° − 60° (D − d) / C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not above 0.</exception>
    public static Angle SmallWrap(Length centreDistance, Length largeDiameter, Length smallDiameter) =>
        Angle.FromDegrees(180 - 60 * ((largeDiameter - smallDiameter) / Require.AboveZero(centreDistance)));

    /// <summary>Teeth in mesh on the small pulley: z / 6 · (3 − (D − d) / C).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not above 0.</exception>
    public static double TeethInMesh(int smallTeeth, Length centreDistance, Length largeDiameter, Length smallDiameter) =>
        smallTeeth / 6.0 * (3 - (largeDiameter - smallDiameter) / Require.AboveZero(centreDistance));

    /// <summary>The range of centre distances a maker recommends: 0.5 (D + d) + 15 mm to 2 (D + d).</summary>
    public static (Length Least, Length Greatest) RecommendedCentreDistance(Length largeDiameter, Length smallDiameter)
    {
        var sum = largeDiameter + smallDiameter;
        return (sum / 2 + Length.FromMillimetres(15), 2 * sum);
    }
}
