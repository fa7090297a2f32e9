namespace Boardwright.Parts;

/// <summary>Something a builder buys or makes, lying on a shelf or fitted to a board.</summary>
public abstract record Part : Sheet
{
    /// <summary>The part's id on its shelf; empty for a part written into the board itself.</summary>
    public string Id { get; init; } = "";
    /// <summary>Whether anything was chosen for this place of the board.</summary>
    public bool IsChosen { get; init; }
    /// <summary>Name for people.</summary>
    [Entry("Name for people.")]
    public Known<string> Name { get; init; }
    /// <summary>Mass of one.</summary>
    [Entry("Mass of one part.", Measure = "Weigh it on a kitchen scale.", Example = "540 g")]
    public Known<Mass> Mass { get; init; }
    /// <summary>Price of one.</summary>
    [Entry("Price of one part, without tax.", Example = "42 EUR")]
    public Known<Money> Price { get; init; }
    /// <summary>Who sells it.</summary>
    [Entry("Who sells it.")]
    public Known<string> Supplier { get; init; }
    /// <summary>How many lie on the shelf.</summary>
    [Entry("How many lie on the shelf.", Example = "4")]
    public Known<int> Stock { get; init; }
    /// <summary>A note.</summary>
    [Entry("A note for the builder.")]
    public Known<string> Note { get; init; }
    /// <summary>Where the figures come from.</summary>
    [Entry("Where the figures come from.")]
    public Known<string> Source { get; init; }
    /// <summary>How many are fitted; what the drive and the axles need where not given.</summary>
    [Entry("How many are fitted; what the drive and the axles need where not given. Said on the board, not on the shelf.", Example = "4", Least = 1, Greatest = 64)]
    public Known<int> Count { get; init; }
    /// <summary>The name, or the id, or the kind where there is neither.</summary>
    public string Title => Name.IsKnown ? Name.Value : Id.Length > 0 ? Id : Entry.Snake(GetType().Name).Replace('_', ' ');
}
