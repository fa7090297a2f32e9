namespace Boardwright.Findings;

/// <summary>What a rule found at one place of a board.</summary>
public sealed record Finding
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }
    /// <summary>How bad it is.</summary>
    public required Level Level { get; init; }
    /// <summary>The entry or place it is about, by its dotted key.</summary>
    public required string Where { get; init; }
    /// <summary>What was found, and by how much it holds or fails.</summary>
    public required Phrase Says { get; init; }
    /// <summary>The value that was judged.</summary>
    public Amount? Value { get; init; }
    /// <summary>The limit it was judged against, in the same unit.</summary>
    public Amount? Limit { get; init; }
    /// <summary>What to change; never empty for <see cref="Level.Stop"/> and <see cref="Level.Fix"/>.</summary>
    public Phrase Remedy { get; init; }
    /// <summary>A change of one entry that mends it, where there is one.</summary>
    public Change? Mend { get; init; }
    /// <summary>Entries that must be known before anything can be said.</summary>
    public IReadOnlyList<string> Needs { get; init; } = [];
    /// <summary>Entries and ids of figures that it rests on.</summary>
    public IReadOnlyList<string> From { get; init; } = [];
}

/// <summary>A number and its unit, as the result document writes them.</summary>
/// <param name="Value">The number.</param>
/// <param name="Unit">Symbol of the unit; empty for a plain number.</param>
public readonly record struct Amount(double Value, string Unit)
{
    /// <summary>A quantity in one of its units.</summary>
    public static Amount Create<T>(T quantity, string unit)
        where T : struct, IQuantity<T> =>
        new((T.Dimension.Find(unit) ?? throw new ArgumentException($"'{unit}' is not a unit of {T.Dimension.Name}.", nameof(unit))).FromSi(quantity.Si), unit);

    /// <summary>A plain number.</summary>
    public static Amount Plain(double value) => new(value, "");
}

/// <summary>A new value for one entry of the board file.</summary>
/// <param name="Key">Dotted key of the entry.</param>
/// <param name="Text">The value as it would be written in the file.</param>
public sealed record Change(string Key, string Text);
