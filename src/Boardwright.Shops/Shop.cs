using Boardwright.Files.Yaml;
using Boardwright.Shops.Merging;
using Microsoft.EntityFrameworkCore;

namespace Boardwright.Shops;

/// <summary>The shop's memory: every board and shelf file with all its revisions.</summary>
/// <remarks>
/// Nothing is ever overwritten: each change, a deletion included, is a new revision on top of the others. The text of a
/// file is the truth and is kept byte for byte, in order or not. Each call is one transaction of its own connection, so a
/// shop may be used from several threads. Every expected failure is a <see cref="ShopException"/>.
/// </remarks>
public sealed class Shop : IAsyncDisposable
{
    const int MostAttempts = 20;
    readonly TimeProvider time;

    Shop(ShopLocation place, TimeProvider time) => (Place, this.time) = (place, time);

    /// <summary>Where it is kept.</summary>
    public ShopLocation Place { get; }

    /// <summary>Opens a shop, and begins one where there is none. Tables of an older program are brought up to date after a
    /// backup.</summary>
    /// <param name="place">Where it is kept.</param>
    /// <param name="time">The clock for revisions and for the names of backups.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ShopException">The database is damaged, locked, out of reach or not a shop.</exception>
    public static async Task<Shop> OpenAsync(ShopLocation place, TimeProvider time, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(place);
        var shop = new Shop(place, time);
        if (await shop.Explained(() => place.PrepareAsync(time, cancel)))
            await shop.IndexAsync(cancel);
        return shop;
    }

    /// <summary>Items of a kind by name.</summary>
    /// <param name="kind">Boards or shelf files.</param>
    /// <param name="withDeleted">Whether those taken off the list are listed too.</param>
    /// <param name="cancel">Stops it.</param>
    public Task<IReadOnlyList<Item>> ListAsync(ItemKind kind, bool withDeleted = false, CancellationToken cancel = default) =>
        Ask<IReadOnlyList<Item>>(async context =>
    {
        var rows = await (from item in context.Items.AsNoTracking()
                          join revision in context.Revisions.AsNoTracking() on new
                          {
                              item.Id,
                              Number = item.Latest
                          } equals new { Id = revision.ItemId, revision.Number }
                          where item.Kind == kind && (withDeleted || item.Folded != null)
                          select new { item, revision }).ToListAsync(cancel);
        return [.. rows.Select(static row => Shown(row.item, row.revision))
            .OrderBy(static item => item.Name, StringComparer.OrdinalIgnoreCase).ThenBy(static item => item.Id)];
    }, cancel);

    /// <summary>An item by its name, capitals aside; a deleted one only when no other has the name.</summary>
    /// <returns>The item, or <c>null</c> when there is none.</returns>
    public async Task<Item?> FindAsync(ItemKind kind, string name, CancellationToken cancel = default)
    {
        var folded = Fold(name);
        var all = await ListAsync(kind, withDeleted: true, cancel);
        return all.Where(item => Fold(item.Name) == folded).OrderBy(static item => item.IsDeleted)
            .ThenByDescending(static item => item.Latest.When).FirstOrDefault();
    }

    /// <summary>Opens a revision with its files.</summary>
    /// <param name="item">The item.</param>
    /// <param name="number">The revision; the newest where not given.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ShopException">There is no such item or revision.</exception>
    public Task<Opened> ReadAsync(Guid item, int? number = null, CancellationToken cancel = default) =>
        Ask(async context => await Open(context, await ItemOf(context, item, cancel), number, cancel), cancel);

    /// <summary>Opens one file of a revision, without the others, of which some may be large.</summary>
    /// <param name="item">The item.</param>
    /// <param name="path">Path of the file inside the item; <c>null</c> for the one that the item is about.</param>
    /// <param name="number">The revision; the newest where not given.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>The file, or <c>null</c> when the revision has none of that path.</returns>
    /// <exception cref="ShopException">There is no such item or revision, or the file is not what was saved.</exception>
    public Task<(Item Item, Revision Revision, KeptFile? File)> ReadFileAsync(
        Guid item, string? path = null, int? number = null, CancellationToken cancel = default) => Ask(async context =>
    {
        var row = await ItemOf(context, item, cancel);
        var (latest, revision) = await Revisions(context, row, number, cancel);
        var wanted = path ?? revision.Main;
        var found = await (from file in context.Files.AsNoTracking()
                           join content in context.Contents.AsNoTracking() on file.Hash equals content.Hash
                           where file.ItemId == item && file.Number == revision.Number && file.Path == wanted
                           select new { file.Hash, content.Bytes }).FirstOrDefaultAsync(cancel);
        return (Shown(row, latest), Shown(revision),
            found is null ? null : Sound(row, revision.Number, new KeptFile(wanted, found.Bytes), found.Hash));
    }, cancel);

    /// <summary>Every revision of an item, the newest first.</summary>
    public Task<IReadOnlyList<Revision>> HistoryAsync(Guid item, CancellationToken cancel = default) =>
        Ask<IReadOnlyList<Revision>>(async context =>
    {
        await ItemOf(context, item, cancel);
        var rows = await context.Revisions.AsNoTracking().Where(row => row.ItemId == item).OrderByDescending(static row => row.Number)
            .ToListAsync(cancel);
        return [.. rows.Select(Shown)];
    }, cancel);

    /// <summary>What differs between two revisions of an item.</summary>
    public async Task<FileDifference> DifferenceAsync(Guid item, int from, int to, CancellationToken cancel = default) =>
        FileDifference.Compute((await ReadAsync(item, from, cancel)).Files, (await ReadAsync(item, to, cancel)).Files);

    /// <summary>Begins an item.</summary>
    /// <exception cref="ShopException">The name is taken or empty.</exception>
    public Task<Item> AddAsync(ItemKind kind, string name, FileSet files, Signature by, CancellationToken cancel = default) =>
        AddAsync(kind, name, files, null, by, cancel);

    /// <summary>Begins an item that comes from a revision of another one, such as a board that was built from it.</summary>
    /// <exception cref="ShopException">The name is taken or empty.</exception>
    public Task<Item> AddAsync(
        ItemKind kind, string name, FileSet files, BranchOrigin? from, Signature by, CancellationToken cancel = default) =>
        Begin(kind, name, files, by, Act.Saved, from, cancel);

    /// <summary>Saves new files of an item on top of the revision they were made from.</summary>
    /// <param name="item">The item.</param>
    /// <param name="expected">Number of the revision that the files were made from.</param>
    /// <param name="files">The files.</param>
    /// <param name="by">Who saves, and why.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>
    /// The new revision. When someone else saved in the meantime, both changes are in it where they touch different keys
    /// or lines; where they touch the same ones nothing is saved and the conflict says what to choose.
    /// </returns>
    public Task<SaveResult> SaveAsync(Guid item, int expected, FileSet files, Signature by, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(files);
        return Change<SaveResult>(async context =>
        {
            var row = await ItemOf(context, item, cancel);
            var latest = await Open(context, row, null, cancel);
            if (latest.Item.IsDeleted)
                throw new ShopException(ShopError.Refused, $"{row.Name} was deleted by {latest.Revision.Who}; nothing was saved.", "Bring it back, or save under another name.");
            if (latest.Files.IsSameAs(files))
                return new Unchanged(latest.Revision);
            if (expected == row.Latest)
                return new Saved(await Append(context, row, files, by, Act.Saved, null, cancel), []);
            var start = await Open(context, row, expected, cancel);
            var merge = FileMerge.Compute(start.Files, files, latest.Files);
            if (merge.Choices.Count > 0)
                return new Conflict(start, files, latest, merge.Choices);
            var merged = merge.Resolve(static _ => MergeSide.Mine);
            if (merged.IsSameAs(latest.Files))
                return new Unchanged(latest.Revision);
            var alone = start.Files.IsSameAs(latest.Files);
            return new Saved(await Append(
                context, row, merged, by, alone ? Act.Saved : Act.Merged, alone ? null : latest.Revision.Number, cancel), merge.TakenOver);
        }, cancel);
    }

    /// <summary>Makes an earlier revision the newest. Those in between stay.</summary>
    public Task<Revision> RestoreAsync(Guid item, int number, Signature by, CancellationToken cancel = default) => Change(async context =>
    {
        var row = await ItemOf(context, item, cancel);
        var old = await Open(context, row, number, cancel);
        await Free(context, row, row.Name, cancel);
        return await Append(context, row, old.Files, by, Act.Restored, number, cancel);
    }, cancel);

    /// <summary>Gives an item another name.</summary>
    public Task<Revision> RenameAsync(Guid item, string name, Signature by, CancellationToken cancel = default) => Change(async context =>
    {
        var row = await ItemOf(context, item, cancel);
        var latest = await Open(context, row, null, cancel);
        if (latest.Item.IsDeleted)
            throw new ShopException(ShopError.Refused, $"{row.Name} was deleted, so it was not renamed.", "Bring it back first.");
        await Free(context, row, QuoteName(name), cancel);
        row.Name = QuoteName(name);
        return await Append(context, row, latest.Files, by, Act.Renamed, null, cancel);
    }, cancel);

    /// <summary>Takes an item off the list. All its revisions stay, and it can be brought back.</summary>
    public Task<Revision> DeleteAsync(Guid item, Signature by, CancellationToken cancel = default) => Change(async context =>
    {
        var row = await ItemOf(context, item, cancel);
        var latest = await Open(context, row, null, cancel);
        return latest.Item.IsDeleted ? latest.Revision : await Append(context, row, latest.Files, by, Act.Deleted, null, cancel);
    }, cancel);

    /// <summary>Puts a deleted item back on the list.</summary>
    /// <exception cref="ShopException">Another item has its name by now.</exception>
    public Task<Revision> BringBackAsync(Guid item, Signature by, CancellationToken cancel = default) => Change(async context =>
    {
        var row = await ItemOf(context, item, cancel);
        var latest = await Open(context, row, null, cancel);
        if (!latest.Item.IsDeleted)
            return latest.Revision;
        await Free(context, row, row.Name, cancel);
        return await Append(context, row, latest.Files, by, Act.BroughtBack, null, cancel);
    }, cancel);

    /// <summary>Begins an item as a copy of another one; from then on the two have nothing to do with one another.</summary>
    public async Task<Item> DuplicateAsync(Guid item, string name, Signature by, int? number = null, CancellationToken cancel = default)
    {
        var source = await ReadAsync(item, number, cancel);
        return await Begin(source.Item.Kind, name, source.Files, by, Act.Duplicated, null, cancel);
    }

    /// <summary>Begins an item as a branch of another one; it knows from which revision.</summary>
    public async Task<Item> BranchAsync(Guid item, string name, Signature by, int? number = null, CancellationToken cancel = default)
    {
        var source = await ReadAsync(item, number, cancel);
        return await Begin(source.Item.Kind, name, source.Files, by, Act.Branched, new(item, source.Revision.Number), cancel);
    }

    /// <summary>Searches the shop's shelf.</summary>
    /// <param name="words">Words that a part's id, kind, name or supplier must all contain, capitals aside; none lists everything.</param>
    /// <param name="cancel">Stops it.</param>
    public Task<IReadOnlyList<StockedPart>> FindPartsAsync(string words, CancellationToken cancel = default) =>
        Ask<IReadOnlyList<StockedPart>>(async context =>
    {
        var found = from part in context.Parts.AsNoTracking()
                    join item in context.Items.AsNoTracking() on part.ItemId equals item.Id
                    where item.Folded != null
                    select part;
        foreach (var word in Fold(words).Split(' ', StringSplitOptions.RemoveEmptyEntries))
            found = found.Where(part => part.Words.Contains(word));
        var rows = await found.ToListAsync(cancel);
        return [.. rows.OrderBy(static row => row.Kind, StringComparer.Ordinal).ThenBy(static row => row.PartId, StringComparer.Ordinal)
            .Select(static row => new StockedPart(row.ItemId, row.PartId, row.Kind, row.Name, row.Supplier, row.Price, row.Stock))];
    }, cancel);

    /// <summary>Changes one value of a part on the shelf; everything else in its file stays as it is written.</summary>
    /// <param name="part">The part as it was found.</param>
    /// <param name="key">The key, such as <c>stock</c>.</param>
    /// <param name="value">The value as it would be written, such as <c>4</c>; <c>null</c> takes the line out.</param>
    /// <param name="by">Who changes it, and why.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>The new revision of the shelf file, or that nothing changed.</returns>
    public Task<SaveResult> ChangePartAsync(StockedPart part, string key, string? value, Signature by, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(part);
        return Change<SaveResult>(async context =>
        {
            var row = await ItemOf(context, part.File, cancel);
            var latest = await Open(context, row, null, cancel);
            var file = latest.Files.Main;
            var full = $"{part.Id}.{key}";
            if (KeyedText.Read(file.Text) is not { } keyed)
                throw new ShopException(ShopError.Refused, $"{file.Path} is not in order, so nothing was changed in it.", "Mend the file first.");
            var wanted = keyed.Leaves.ToDictionary(static pair => pair.Key, static pair => pair.Value.Written, StringComparer.Ordinal);
            if (!wanted.ContainsKey($"{part.Id}.id"))
                throw new ShopException(ShopError.NotThere, $"There is no part {part.Id} in {file.Path} any more.", "Search for it again.");
            if (value is null)
                wanted.Remove(full);
            else
                wanted[full] = value;
            if (KeyedText.Fitted(file.Text, wanted) is not { } text)
                throw new ShopException(ShopError.Refused, $"{full} cannot be written as {value ?? "nothing"}; nothing was changed.", "Write a plain value, or change it in the file itself.");
            return text == file.Text ? new Unchanged(latest.Revision)
                : new Saved(await Append(context, row, latest.Files.With(file.Path, text), by, Act.Saved, null, cancel), []);
        }, cancel);
    }

    /// <summary>Writes the whole shop as a folder of plain files: every item with every revision. Two shops with the same content give the
    /// same bytes.</summary>
    /// <param name="folder">A folder that is not there yet or is empty.</param>
    /// <param name="progress">Is told after each item.</param>
    /// <param name="cancel">Stops it; no half-written folder is left.</param>
    public Task ExportAsync(string folder, IProgress<int>? progress = null, CancellationToken cancel = default) => Ask(async context =>
    {
        // One snapshot: what is saved in the meantime is in it wholly or not at all.
        await using var transaction = await Place.BeginReadingAsync(context, cancel);
        await context.Database.UseTransactionAsync(transaction, cancel);
        await ShopFolder.WriteAsync(context, folder, progress, cancel);
        return true;
    }, cancel);

    /// <summary>Reads a folder that <see cref="ExportAsync"/> wrote into this shop, which must be empty. All of it is read or
    /// nothing.</summary>
    public Task ImportAsync(string folder, CancellationToken cancel = default) => Replace(folder, mayHoldItems: false, cancel);

    /// <summary>Writes a backup.</summary>
    /// <param name="target">Where to; a dated name in the place's own folder for backups where not given.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>Where it is.</returns>
    public Task<string> BackUpAsync(string? target = null, CancellationToken cancel = default) =>
        Explained(() => Place.BackUpAsync(this, target, time, cancel));

    /// <summary>Makes this shop what an exported folder holds. What it held before is backed up first.</summary>
    /// <returns>Where the backup is.</returns>
    public async Task<string> ReplaceAsync(string folder, CancellationToken cancel = default)
    {
        var backup = await BackUpAsync(null, cancel);
        await Replace(folder, mayHoldItems: true, cancel);
        return backup;
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        Place.Close();
        return ValueTask.CompletedTask;
    }

    internal static string Fold(string name) => name.Trim().ToLowerInvariant();

    /// <summary>Makes the index of the shelf anew from its texts.</summary>
    Task<bool> IndexAsync(CancellationToken cancel) => Change(async context =>
    {
        context.Parts.RemoveRange(await context.Parts.ToListAsync(cancel));
        foreach (var item in await context.Items.AsNoTracking().Where(static row => row.Kind == ItemKind.Shelf).ToListAsync(cancel))
            context.Parts.AddRange(ShelfIndex.Create(item.Id, (await Open(context, item, null, cancel)).Files.Main));
        return true;
    }, cancel);

    Task<bool> Replace(string folder, bool mayHoldItems, CancellationToken cancel) => Change(async context =>
    {
        if (!mayHoldItems && await context.Items.AnyAsync(cancel))
            throw new ShopException(ShopError.Refused, "This shop holds something already; nothing was read into it.", "Name a new shop with --shop, or replace this one with recover.");
        await using var transaction = await context.Database.BeginTransactionAsync(cancel);
        await context.Parts.ExecuteDeleteAsync(cancel);
        await context.Files.ExecuteDeleteAsync(cancel);
        await context.Revisions.ExecuteDeleteAsync(cancel);
        await context.Items.ExecuteDeleteAsync(cancel);
        await context.Contents.ExecuteDeleteAsync(cancel);
        await ShopFolder.ReadAsync(context, folder, cancel);
        await transaction.CommitAsync(cancel);
        return true;
    }, cancel);

    Task<Item> Begin(ItemKind kind, string name, FileSet files, Signature by, Act act, BranchOrigin? from, CancellationToken cancel)
    {
        var id = Guid.CreateVersion7(time.GetUtcNow());
        return Change(async context =>
        {
            var row = new ItemRow
            {
                Id = id,
                Kind = kind,
                Name = QuoteName(name),
                Folded = Fold(name),
                Latest = 0,
                FromItem = from?.Item,
                FromNumber = from?.Number
            };
            await Free(context, row, row.Name, cancel);
            context.Items.Add(row);
            var revision = await Append(context, row, files, by, act, null, cancel);
            return new Item(id, kind, revision, from);
        }, cancel);
    }

    /// <summary>Puts a revision on top of an item.</summary>
    async Task<Revision> Append(ShopContext context, ItemRow item, FileSet files, Signature by, Act act, int? of, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(by);
        if (string.IsNullOrWhiteSpace(by.Who) || string.IsNullOrWhiteSpace(by.Why)
            || (by.Who + by.Why).Contains('\0', StringComparison.Ordinal))
            throw new ShopException(ShopError.Refused, "A revision wants to know who made it and why.", "Say both in a few words.");
        item.Latest++;
        item.Folded = act == Act.Deleted ? null : Fold(item.Name);
        var row = new RevisionRow
        {
            ItemId = item.Id,
            Number = item.Latest,
            Milliseconds = time.GetUtcNow().ToUnixTimeMilliseconds(),
            Who = by.Who.Trim(),
            Why = by.Why.Trim(),
            Act = act,
            Of = of,
            Name = item.Name,
            Main = files.Main.Path,
        };
        context.Revisions.Add(row);
        var hashes = files.Files.Select(static file => file.Hash).Distinct(StringComparer.Ordinal).ToList();
        var known = await context.Contents.AsNoTracking().Where(content => hashes.Contains(content.Hash))
            .Select(static content => content.Hash).ToListAsync(cancel);
        foreach (var file in files.Files.DistinctBy(static file => file.Hash, StringComparer.Ordinal)
            .ExceptBy(known, static file => file.Hash, StringComparer.Ordinal))
            context.Contents.Add(new() { Hash = file.Hash, Bytes = file.Bytes });
        foreach (var file in files.Files)
            context.Files.Add(new() { ItemId = item.Id, Number = row.Number, Path = file.Path, Hash = file.Hash });
        if (item.Kind == ItemKind.Shelf)
        {
            context.Parts.RemoveRange(await context.Parts.Where(part => part.ItemId == item.Id).ToListAsync(cancel));
            context.Parts.AddRange(ShelfIndex.Create(item.Id, files.Main));
        }

        return Shown(row);
    }

    static async Task Free(ShopContext context, ItemRow item, string name, CancellationToken cancel)
    {
        var folded = Fold(name);
        if (await context.Items.AsNoTracking()
            .AnyAsync(other => other.Kind == item.Kind && other.Folded == folded && other.Id != item.Id, cancel))
            throw new ShopException(ShopError.Refused, $"The name {name} is taken.", "Choose another name.");
    }

    static string QuoteName(string name) =>
        string.IsNullOrWhiteSpace(name) || name.Any(char.IsControl) || name.Length > 200
            ? throw new ShopException(ShopError.Refused, "A name of one to 200 printable characters is wanted.", "Give it a plain name.")
            : name.Trim();

    static async Task<ItemRow> ItemOf(ShopContext context, Guid item, CancellationToken cancel) =>
        await context.Items.FirstOrDefaultAsync(row => row.Id == item, cancel)
        ?? throw new ShopException(ShopError.NotThere, "There is no such item in the shop.", "List what there is.");

    static async Task<Opened> Open(ShopContext context, ItemRow item, int? number, CancellationToken cancel)
    {
        var (latest, revision) = await Revisions(context, item, number, cancel);
        var wanted = revision.Number;
        var files = await (from file in context.Files.AsNoTracking()
                           join content in context.Contents.AsNoTracking() on file.Hash equals content.Hash
                           where file.ItemId == item.Id && file.Number == wanted
                           select new { file.Path, file.Hash, content.Bytes }).ToListAsync(cancel);
        var kept = files.ConvertAll(file => Sound(item, wanted, new KeptFile(file.Path, file.Bytes), file.Hash));
        return new(Shown(item, latest), Shown(revision), new FileSet(revision.Main, kept));
    }

    static async Task<(RevisionRow Latest, RevisionRow Wanted)> Revisions(
        ShopContext context, ItemRow item, int? number, CancellationToken cancel)
    {
        var wanted = number ?? item.Latest;
        var revisions = await context.Revisions.AsNoTracking()
            .Where(row => row.ItemId == item.Id && (row.Number == wanted || row.Number == item.Latest)).ToListAsync(cancel);
        var revision = revisions.Find(row => row.Number == wanted)
            ?? throw new ShopException(ShopError.NotThere, FormattableString.Invariant($"{item.Name} has no revision {wanted}; the newest is {item.Latest}."), "Look at its log.");
        return (revisions.Find(row => row.Number == item.Latest)!, revision);
    }

    static KeptFile Sound(ItemRow item, int number, KeptFile file, string hash) => file.Hash == hash ? file
        : throw new ShopException(ShopError.Damaged, FormattableString.Invariant($"A file of {item.Name}, revision {number}, is not what was saved."), "Recover the shop from a backup.");

    static Item Shown(ItemRow item, RevisionRow latest) =>
        new(item.Id, item.Kind, Shown(latest), item is { FromItem: { } from, FromNumber: { } number } ? new(from, number) : null);

    static Revision Shown(RevisionRow row) =>
        new(row.ItemId, row.Number, DateTimeOffset.FromUnixTimeMilliseconds(row.Milliseconds), row.Who, row.Why, row.Act, row.Of, row.Name);

    Task<T> Ask<T>(Func<ShopContext, Task<T>> question, CancellationToken cancel) => Explained(async () =>
    {
        await using var context = Place.CreateDbContext();
        await Place.ConnectAsync(context, cancel);
        return await question(context);
    });

    /// <summary>Changes something in one transaction. When someone else was quicker, all of it is looked at again.</summary>
    Task<T> Change<T>(Func<ShopContext, Task<T>> change, CancellationToken cancel) => Explained(async () =>
    {
        for (var attempt = 1; ; attempt++)
        {
            await using var context = Place.CreateDbContext();
            await Place.ConnectAsync(context, cancel);
            try
            {
                var result = await change(context);
                await context.SaveChangesAsync(cancel);
                return result;
            }
            catch (Exception fault) when (fault is DbUpdateConcurrencyException || Place.IsDuplicate(fault))
            {
                // The next attempt reads what the other one wrote.
                if (attempt == MostAttempts)
                    throw new ShopException(ShopError.Busy, "Others were quicker again and again; nothing was changed.", "Try again.", fault);
            }
        }
    });

    /// <summary>Does something with the shop's database.</summary>
    /// <exception cref="ShopException">What went wrong with the database, in words for a person.</exception>
    public async Task<T> Explained<T>(Func<Task<T>> action)
    {
        ShopException? trouble = null;
        try
        {
            return await action();
        }
        catch (Exception fault) when (fault is not (ShopException or OperationCanceledException) && (trouble = Meaning(fault)) is not null)
        {
            // Thrown below: the fault is its cause.
        }

        throw trouble;
    }

    ShopException? Meaning(Exception fault)
    {
        for (var cause = fault; cause is not null; cause = cause.InnerException)
        {
            if (Place.Explain(cause) is { } trouble)
                return trouble;
        }

        return fault is IOException or UnauthorizedAccessException
            ? new(ShopError.Unreachable, fault.Message.ReplaceLineEndings(" "), "Check the path, the space on the disk, and that you may write there.", fault) : null;
    }
}
