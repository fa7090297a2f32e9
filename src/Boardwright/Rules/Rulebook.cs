using Boardwright.Analyses;
using Boardwright.Findings;

namespace Boardwright.Rules;

/// <summary>Every rule by its id.</summary>
public static class Rulebook
{
    /// <summary>Every rule, those first that can hurt someone.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [.. PerformanceRules.All, .. InterfaceRules.All, .. StackRules.All, .. GeometryRules.All, .. LayoutRules.All, .. BoltRules.All,
        .. BeltRules.All, .. ElectricalRules.All, .. HarnessRules.All, .. HarnessPathRules.All, .. PackRules.All, .. NameRules.All,
        .. PriceRules.All];
}
