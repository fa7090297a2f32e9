using Boardwright.Findings;

namespace Boardwright.Validation;

/// <summary>What stands behind a published value that the program's value is compared with.</summary>
public enum EvidenceLevel
{
    /// <summary>A published value, found again with the published method: E1.</summary>
    Published,
    /// <summary>Worked out by hand from a published definition; nobody printed this very number: E0.</summary>
    ComputedFromPublished,
    /// <summary>Common practice, no source: E0.</summary>
    CommonPractice,
    /// <summary>From memory, not confirmed in any text read: E0.</summary>
    FromMemory,
    /// <summary>A measured total, mean or end value that set no parameter: E2.</summary>
    MeasuredAggregate,
    /// <summary>A measured series in time that set no parameter: E3.</summary>
    MeasuredSeries,
}

/// <summary>How far the program's value may lie from the published one, and why.</summary>
/// <param name="Size">The distance, in the unit of the value, or as a part of the published value.</param>
/// <param name="IsRelative">Whether it is a part of the published value.</param>
/// <param name="Why">The reason, in a few words.</param>
public sealed record Allowance(double Size, bool IsRelative, string Why)
{
    /// <summary>A distance in the unit of the value.</summary>
    public static Allowance Create(double size, string why) => new(size, false, why);
    /// <summary>A part of the published value, 0.01 for 1 %.</summary>
    public static Allowance Part(double part, string why) => new(part, true, why);
}

/// <summary>One published value beside the program's own.</summary>
/// <param name="Quantity">What is compared, in a few words.</param>
/// <param name="Given">The inputs, in words.</param>
/// <param name="Printed">The source's value as printed.</param>
/// <param name="Unit">Its unit; empty for a plain number.</param>
/// <param name="Ours">The program's value in the same unit; not a number where it has none, which is a miss.</param>
/// <param name="Source">The work.</param>
/// <param name="Page">Where in the work: page, table, equation; empty where the citation says it.</param>
/// <param name="Evidence">What stands behind the value.</param>
public sealed record Check(
    string Quantity, string Given, string Printed, string Unit, double Ours, Source Source, string Page, EvidenceLevel Evidence)
{
    /// <summary>How far apart the two may be; half the last printed digit where nothing else is said.</summary>
    public Allowance? Allowed { get; init; }
    /// <summary>For a check that is known to miss: why, in a sentence. It stays on the page as a miss.</summary>
    public string? MissBecause { get; init; }
    /// <summary>The printed value, read.</summary>
    public PrintedNumber Published { get; } = new(Printed);
    /// <summary>The program's value less the published one.</summary>
    public double Difference => Ours - Published.Value;
    /// <summary>The difference as a part of the published value; <c>null</c> where that is zero.</summary>
    public double? RelativeDifference => Published.Value == 0 ? null : Difference / Math.Abs(Published.Value);

    /// <summary>The largest difference that passes, in the unit of the value.</summary>
    public double Limit => Allowed switch
    {
        null => Published.HalfLastDigit,
        { IsRelative: true } part => part.Size * Math.Abs(Published.Value),
        var size => size.Size,
    };

    /// <summary>Whether the difference is more than allowed.</summary>
    public bool IsMiss => !(Math.Abs(Difference) <= Limit * (1 + 1e-9) + 1e-12 * Math.Abs(Published.Value));

    /// <summary>Level of evidence, 0 to 3, that the check gives where it passes.</summary>
    public int Level => Evidence switch
    {
        EvidenceLevel.Published => 1,
        EvidenceLevel.MeasuredAggregate => 2,
        EvidenceLevel.MeasuredSeries => 3,
        _ => 0,
    };
}
