namespace Boardwright.Shops;

/// <summary>Why a shop could not do what was asked.</summary>
public enum ShopError
{
    /// <summary>There is no such board, shelf file, part, revision or file.</summary>
    NotThere,
    /// <summary>What was asked for makes no sense or is not allowed: a name that is taken, an empty reason, a path out of the
    /// folder.</summary>
    Refused,
    /// <summary>Another program or person holds the database.</summary>
    Busy,
    /// <summary>The disk is full.</summary>
    Full,
    /// <summary>The database, a backup or an exported folder is damaged.</summary>
    Damaged,
    /// <summary>The database cannot be reached or opened.</summary>
    Unreachable,
    /// <summary>The database is not a shop, or that of a newer program.</summary>
    NotOurs,
}

/// <summary>Something that a person has to know or to do; what was saved before is as it was.</summary>
/// <param name="kind">Which of the few kinds.</param>
/// <param name="says">What is wrong, in one sentence.</param>
/// <param name="remedy">What to do, in one sentence.</param>
/// <param name="cause">What it came from.</param>
#pragma warning disable CA1710 // It is thrown and caught as what it is: trouble in the shop.
public sealed class ShopException(ShopError kind, string says, string remedy, Exception? cause = null) : Exception($"{says} {remedy}", cause)
#pragma warning restore CA1710
{
    /// <summary>Which of the few kinds.</summary>
    public ShopError Kind { get; } = kind;
    /// <summary>What is wrong, in one sentence.</summary>
    public string Says { get; } = says;
    /// <summary>What to do, in one sentence.</summary>
    public string Remedy { get; } = remedy;
}
