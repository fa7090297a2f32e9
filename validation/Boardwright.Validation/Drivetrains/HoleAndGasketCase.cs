using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Units;

namespace Boardwright.Validation.Drivetrains;

/// <summary>Holes near edges, and gaskets.</summary>
public sealed class HoleAndGasketCase : Case
{
    /// <inheritdoc/>
    public override string Room => "Drivetrains";

    /// <inheritdoc/>
    public override string Topic => "Holes and gaskets";

    /// <inheritdoc/>
    public override string About => "Least distances of holes in metal, and the squeeze of a gasket. Whether a box keeps water out can only be tested.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare()
    {
        foreach (var (hole, edge, pitch) in new[] { (5.5, "6.6", "12.1"), (8.4, "10.08", "18.48") })
        {
            var d = Length.FromMillimetres(hole);
            yield return new("Least edge distance", $"hole {hole} mm", edge, "mm", HoleEdges.EdgeDistance(d).Millimetres, Sources.En1993, "table 3.3",
                EvidenceLevel.ComputedFromPublished);
            yield return new("Least pitch along the load", $"hole {hole} mm", pitch, "mm", HoleEdges.PitchAlong(d).Millimetres, Sources.En1993, "table 3.3",
                EvidenceLevel.ComputedFromPublished);
        }

        yield return new("Squeeze", "5.0 mm pressed to 3.5 mm", "30", "%", GasketSqueeze.Compute(Length.FromMillimetres(5), Length.FromMillimetres(3.5)).Percent,
            Sources.EpdmCompression, "definition", EvidenceLevel.ComputedFromPublished);
        yield return new("Closed height", "6 mm at 40 %", "3.6", "mm", GasketSqueeze.ClosedHeight(Length.FromMillimetres(6), Fraction.FromPercent(40)).Millimetres,
            Sources.EpdmCompression, "definition", EvidenceLevel.ComputedFromPublished);
    }
}
