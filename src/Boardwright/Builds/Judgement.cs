using System.Globalization;

namespace Boardwright.Builds;

/// <summary>What came of a step.</summary>
public enum Result
{
    /// <summary>Nobody did it yet, or what was written says nothing of it.</summary>
    Undone,
    /// <summary>It passed.</summary>
    Passed,
    /// <summary>It failed.</summary>
    Failed,
}

/// <summary>A step with what was written of it, and whether that passes.</summary>
/// <param name="Step">The step.</param>
/// <param name="Done">What was written last; <c>null</c> where nothing was.</param>
/// <param name="Result">What came of it.</param>
/// <param name="Says">By how much it passed or failed, or what is lacking, in a sentence; empty where there is nothing to say.</param>
public sealed record Judgement(Step Step, DoneStep? Done, Result Result, string Says)
{
    /// <summary>Judges a step by what was written of it last.</summary>
    public static Judgement Judge(BuiltBoard built, Step step)
    {
        ArgumentNullException.ThrowIfNull(built);
        return Judge(step, built.Last(step));
    }

    /// <summary>Judges one line.</summary>
    /// <param name="step">The step.</param>
    /// <param name="done">What was written; <c>null</c> where nothing was.</param>
    public static Judgement Judge(Step step, DoneStep? done)
    {
        ArgumentNullException.ThrowIfNull(step);
        if (done is null)
            return new(step, null, Result.Undone, "");
        IReadOnlyList<string> written = done.Value.IsKnown ? done.Value.Value.Items : [];
        var values = new List<double>();
        foreach (var text in step.Dimension is null ? [] : written)
        {
            var read = Benchwork.Read(text, step);
            if (read.Refusal is { } refusal)
                return new(step, done, done.Passed is { IsKnown: true, Value: false } ? Result.Failed : Result.Undone, refusal.Says);
            values.Add(read.Si);
        }

        var (result, says) = step.Range is { } range && values.Count > 0 ? Measured(range, values) : (Result.Passed, "");
        if (done.Passed is { IsKnown: true, Value: false })
            return new(step, done, Result.Failed, says.Length > 0 && result == Result.Passed ? $"Marked as failed by hand, though in range: {says}" : says.Length > 0 ? says : "Marked as failed.");
        if (step.List == StepList.Building && values.Count == 0)
            return new(step, done, Result.Passed, "");
        if (step.Range is not null && values.Count == 0)
            return new(step, done, Result.Undone, "No value is written.");
        if (step.Range is null && step is { List: StepList.Bench, Unit: not null } && !done.Passed.IsKnown)
            return new(step, done, Result.Undone, "No range can be computed for it, so somebody has to say whether it passed.");
        return new(step, done, result, says);
    }

    static (Result Result, string Says) Measured(PassRange range, List<double> values)
    {
        // The rounding of a meter's last digit is not held against what was measured.
        const double Slack = 1e-9;
        var (low, high) = (values.Min(), values.Max());
        var many = values.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $" (the worst of {values.Count})") : "";
        if (low < range.Least - Slack * Math.Abs(range.Least))
            return (Result.Failed, $"{range.Words(low)} is {range.Words(range.Least - low)} less than the least of {range.Words(range.Least)}{many}.");
        if (high > range.Greatest + Slack * Math.Abs(range.Greatest))
            return (Result.Failed, $"{range.Words(high)} is {range.Words(high - range.Greatest)} more than the most of {range.Words(range.Greatest)}{many}.");
        var mean = Math.Abs(values.Average());
        if (range.ApartAtMost is { } part && high - low > part.Value * mean)
            return (Result.Failed, string.Create(CultureInfo.InvariantCulture, $"The values lie {100 * (high - low) / mean:0.#} % apart, and {part.Percent:0.#} % is the most."));
        if (range.ApartBy is { } most && high - low > most * (1 + Slack))
            return (Result.Failed, $"The values lie {range.Words(high - low)} apart, and {range.Words(most)} is the most.");
        var isNearLow = low - range.Least < range.Greatest - high;
        return (Result.Passed, isNearLow
            ? $"{range.Words(low)} holds the least of {range.Words(range.Least)} by {range.Words(low - range.Least)}{many}."
            : $"{range.Words(high)} holds the most of {range.Words(range.Greatest)} by {range.Words(range.Greatest - high)}{many}.");
    }
}
