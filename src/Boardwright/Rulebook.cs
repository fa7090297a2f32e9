using Boardwright.Boxes;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Packs;
using Boardwright.Prices;
using Boardwright.Traction;
using Boardwright.Wiring;

namespace Boardwright;

/// <summary>Every rule by its id.</summary>
public static class Rulebook
{
    /// <summary>Every rule, those first that can hurt someone.</summary>
    public static IReadOnlyList<Rule<Examination>> All { get; } =
        [.. PerformanceRules.All, .. InterfaceRules.All, .. GeometryRules.All, .. LayoutRules.All, .. BoltRules.All, .. BeltRules.All, .. ElectricalRules.All, .. HarnessRules.All, .. HarnessPathRules.All, .. PackRules.All, .. PriceRules.All];
}
