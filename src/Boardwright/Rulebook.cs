using Boardwright.Findings;

namespace Boardwright;

/// <summary>Every rule by its id.</summary>
public static class Rulebook
{
    /// <summary>Every rule, in the order of the rooms.</summary>
    public static IReadOnlyList<Rule<Examination>> All { get; } = [];
}
