namespace Boardwright.App.Reports;

/// <summary>What it costs not to know a value: what waits for it.</summary>
enum MissingCost
{
    /// <summary>Parts that do not go together, or a hole in the wrong place.</summary>
    Fit,
    /// <summary>A limit that is passed: heat, fire, a brake that does not hold.</summary>
    Limit,
    /// <summary>A figure or a price that is not told.</summary>
    Figure,
}

static class MissingCosts
{
    /// <summary>What waits, in order.</summary>
    public static IReadOnlyList<(MissingCost Cost, string Words)> All { get; } =
    [
        (MissingCost.Fit, "Before parts are bought and holes are drilled also"),
        (MissingCost.Limit, "Before the board is run also"),
        (MissingCost.Figure, "For figures also"),
    ];

    /// <summary>What it costs when a rule cannot speak.</summary>
    public static MissingCost Classify(string ruleId) => ruleId[..ruleId.IndexOf('.', StringComparison.Ordinal)] switch
    {
        "fit" or "bolt" or "box" or "belt" or "key" or "plug" or "hole" => MissingCost.Fit,
        "money" or "price" => MissingCost.Figure,
        _ => MissingCost.Limit,
    };
}
