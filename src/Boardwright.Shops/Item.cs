using Boardwright.Shops.Merging;

namespace Boardwright.Shops;

/// <summary>What an item of the shop is.</summary>
public enum ItemKind
{
    /// <summary>A board: its file, the shelf files it names and its route.</summary>
    Board,
    /// <summary>A file of the shop's own shelf.</summary>
    Shelf,
    /// <summary>A board that was built: its file, photos and ride logs.</summary>
    Built,
    /// <summary>How the logs of a logger are read.</summary>
    Logger,
}

/// <summary>What made a revision.</summary>
public enum Act
{
    /// <summary>Somebody saved it.</summary>
    Saved,
    /// <summary>Somebody saved it while someone else had saved too, and both changes were put together.</summary>
    Merged,
    /// <summary>An earlier revision was made the newest.</summary>
    Restored,
    /// <summary>It began as a copy of another item, and goes its own way.</summary>
    Duplicated,
    /// <summary>It began as a branch of another item, and knows from which revision.</summary>
    Branched,
    /// <summary>It was given another name.</summary>
    Renamed,
    /// <summary>It was taken off the list. All its revisions stay.</summary>
    Deleted,
    /// <summary>It was put back on the list.</summary>
    BroughtBack,
}

/// <summary>Who does something, and why: written beside every revision.</summary>
/// <param name="Who">Name of the person.</param>
/// <param name="Why">The reason, in a few words.</param>
public sealed record Signature(string Who, string Why);

/// <summary>One revision of an item.</summary>
/// <param name="Item">The item.</param>
/// <param name="Number">Number of the revision, from 1.</param>
/// <param name="When">When it was saved, UTC, to the millisecond.</param>
/// <param name="Who">Who saved it.</param>
/// <param name="Why">Why.</param>
/// <param name="Act">What made it.</param>
/// <param name="Of">The revision that was restored, or that was saved by someone else in the meantime and merged; <c>null</c>
/// otherwise.</param>
/// <param name="Name">Name of the item from this revision on.</param>
public sealed record Revision(Guid Item, int Number, DateTimeOffset When, string Who, string Why, Act Act, int? Of, string Name);

/// <summary>Where a branch left its origin, or what a board was built from.</summary>
/// <param name="Item">The item it came from.</param>
/// <param name="Number">The revision.</param>
public sealed record BranchOrigin(Guid Item, int Number);

/// <summary>An item of the shop with its newest revision.</summary>
/// <param name="Id">Identity that no change of name touches.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Latest">The newest revision.</param>
/// <param name="From">Where it branched off, or what it was built from; <c>null</c> where it is neither.</param>
public sealed record Item(Guid Id, ItemKind Kind, Revision Latest, BranchOrigin? From)
{
    /// <summary>The name.</summary>
    public string Name => Latest.Name;
    /// <summary>Whether it was taken off the list.</summary>
    public bool IsDeleted => Latest.Act == Act.Deleted;
}

/// <summary>A revision with its files.</summary>
/// <param name="Item">The item.</param>
/// <param name="Revision">The revision, which need not be the newest.</param>
/// <param name="Files">Its files.</param>
public sealed record Opened(Item Item, Revision Revision, FileSet Files);

/// <summary>What came of a save: one of <see cref="Saved"/>, <see cref="Unchanged"/> and <see cref="Conflict"/>.</summary>
public abstract record SaveResult;

/// <summary>It is a new revision.</summary>
/// <param name="Revision">The revision.</param>
/// <param name="TakenOver">What others had saved in the meantime and is in it too; empty where nobody had.</param>
public sealed record Saved(Revision Revision, IReadOnlyList<KeyChange> TakenOver) : SaveResult;

/// <summary>The newest revision holds the same already, so there is no new one.</summary>
/// <param name="Revision">The newest revision.</param>
public sealed record Unchanged(Revision Revision) : SaveResult;

/// <summary>Two people changed the same thing. Nothing was saved; <see cref="Resolve"/> puts both together as chosen.</summary>
/// <param name="Base">What both began with.</param>
/// <param name="Mine">What was to be saved.</param>
/// <param name="Theirs">What the other saved; its number is what the next save is based on.</param>
/// <param name="Choices">What has to be chosen, all of it.</param>
public sealed record Conflict(Opened Base, FileSet Mine, Opened Theirs, IReadOnlyList<Choice> Choices) : SaveResult
{
    /// <summary>The files with everything that only one of the two changed, and with what was chosen where both did.</summary>
    /// <param name="pick">Picks a side for each choice.</param>
    /// <returns>The files, to be saved on top of <see cref="Theirs"/>.</returns>
    /// <exception cref="ShopException">The two cannot be put together so; a whole file has to be taken from one side.</exception>
    public FileSet Resolve(Func<Choice, MergeSide> pick) => FileMerge.Compute(Base.Files, Mine, Theirs.Files).Resolve(pick);
}

/// <summary>A part on the shop's shelf.</summary>
/// <param name="File">The shelf file that it is written in.</param>
/// <param name="Id">Its id.</param>
/// <param name="Kind">Its kind as the file says it, such as <c>motor</c>.</param>
/// <param name="Name">Its name; empty where it has none.</param>
/// <param name="Supplier">Who sells it; empty where that is not said.</param>
/// <param name="Price">Its price as the file says it; empty where that is not said.</param>
/// <param name="Stock">How many there are, or <c>null</c> where that is not said.</param>
public sealed record StockedPart(Guid File, string Id, string Kind, string Name, string Supplier, string Price, int? Stock);
