namespace Boardwright.App.Reports;

/// <summary>What every report says whatever was found.</summary>
static class Cautions
{
    /// <summary>The cautions, a sentence or two each.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "Lithium cells burn when shorted, crushed or overcharged, and a charger is on the mains: have both looked at by someone qualified.",
        "Brakes fade and can fail: try them walking, then slowly. Where and how fast you may ride is for local law to say.",
    ];
}
