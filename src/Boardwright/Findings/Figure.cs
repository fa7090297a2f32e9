namespace Boardwright.Findings;

/// <summary>A figure that an examination computes: its stable id, unit, meaning, equation and source.</summary>
/// <param name="Id">Stable id, dotted by trade topic.</param>
/// <param name="Unit">Unit of the value in the result document; empty for a plain number.</param>
/// <param name="Title">A few words, as a label.</param>
/// <param name="Meaning">What it is, and for which state of the board.</param>
/// <param name="Equation">How it is computed, in plain symbols.</param>
/// <param name="Source">Where the equation comes from.</param>
public sealed record FigureKind(string Id, string Unit, string Title, string Meaning, string Equation, Source Source);

/// <summary>A figure of one board.</summary>
public sealed record Figure
{
    /// <summary>What it is.</summary>
    public required FigureKind Kind { get; init; }
    /// <summary>The value in the kind's unit; <c>null</c> when entries are missing.</summary>
    public double? Value { get; init; }
    /// <summary>Words instead of a value, for a figure that is a note.</summary>
    public string? Text { get; init; }
    /// <summary>Unit of the value: the kind's, or the currency for money.</summary>
    public required string Unit { get; init; }
    /// <summary>Entries and ids it rests on.</summary>
    public IReadOnlyList<string> From { get; init; } = [];
    /// <summary>Entries that must be known before it can be said.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];
    /// <summary>A warning that belongs to the value, such as that it is a lower bound.</summary>
    public string? Caution { get; init; }
}

/// <summary>How well a figure is known: the values between which it lies nine times out of ten when the inputs vary by their
/// spreads.</summary>
/// <param name="Low">5 % quantile.</param>
/// <param name="High">95 % quantile.</param>
/// <param name="MattersMost">The entries whose spread moves it most, at most two.</param>
public sealed record Interval(double Low, double High, IReadOnlyList<string> MattersMost);
