using Boardwright.Builds;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Files.Logs;
using Boardwright.Units;

namespace Boardwright.Shops;

/// <summary>A built board as it was opened.</summary>
/// <param name="Text">The text of its file.</param>
/// <param name="Loaded">What was read from it, or what is wrong with it.</param>
/// <param name="Revision">The revision; <c>null</c> outside a shop.</param>
public sealed record OpenedBuilt(string Text, LoadedBuilt Loaded, Revision? Revision);

/// <summary>The design that a board was built from.</summary>
/// <param name="Name">What it is called in a sentence, such as <c>Tern, revision 3</c>.</param>
/// <param name="Loaded">The board, or what is wrong with it.</param>
public sealed record BuiltDesign(string Name, LoadedBoard Loaded)
{
    /// <summary>Tells it from every other design for good; <c>null</c> where it may change under the same name.</summary>
    public string? Key { get; init; }
}

/// <summary>A file to be kept with a built board.</summary>
/// <param name="Path">Where it is to lie; a number is put behind its name where that is taken by other bytes.</param>
/// <param name="Bytes">The bytes, which are kept as they are.</param>
public sealed record AttachedFile(string Path, byte[] Bytes);

/// <summary>Where a built board is kept with its photos and rides: in a shop, or in a folder.</summary>
public abstract class BuiltStore
{
    /// <summary>The largest photo or other note that is kept.</summary>
    public const int MostNoteBytes = 25 * 1024 * 1024;
    /// <summary>The largest log of a ride that is kept.</summary>
    public const int MostRideBytes = 256 * 1024 * 1024;
    /// <summary>How it is called.</summary>
    public abstract string Name { get; }
    /// <summary>Reads the board's file.</summary>
    public abstract Task<OpenedBuilt> ReadAsync(CancellationToken cancel = default);

    /// <summary>Reads a photo, a log or another file that belongs to the board.</summary>
    /// <returns>The bytes, or <c>null</c> when there is none.</returns>
    public abstract Task<byte[]?> FileAsync(string path, CancellationToken cancel = default);

    /// <summary>The design that the board was built from.</summary>
    /// <exception cref="ShopException">It is not there.</exception>
    public abstract Task<BuiltDesign> DesignAsync(BuiltBoard built, CancellationToken cancel = default);

    /// <summary>Changes the board's file, as it is at that moment: what others wrote meanwhile is kept.</summary>
    /// <param name="change">Makes the new text from the text that is there; a refusal leaves everything as it is. It may be asked more than
    /// once.</param>
    /// <param name="by">Who, and why.</param>
    /// <param name="cancel">Stops it.</param>
    public Task<Changed> ChangeAsync(Func<string, Changed> change, Signature by, CancellationToken cancel = default) =>
        ChangeAsync(null, (text, _) => change(text), by, cancel);

    /// <summary>Changes the board's file, and keeps another file with it; both or neither.</summary>
    /// <param name="attached">The file, or <c>null</c>.</param>
    /// <param name="change">Makes the new text, knowing the path that the file got.</param>
    /// <param name="by">Who, and why.</param>
    /// <param name="cancel">Stops it.</param>
    public abstract Task<Changed> ChangeAsync(
        AttachedFile? attached, Func<string, string, Changed> change, Signature by, CancellationToken cancel = default);

    /// <summary>What somebody confirmed for logs with the same columns.</summary>
    /// <returns>What the columns are to be read as, or <c>null</c> where such a log was never confirmed.</returns>
    public async Task<LogWishes?> RecallAsync(LogMapping mapping, CancellationToken cancel = default) =>
        await LoggerAsync(LoggerFile.FingerprintOf(mapping), cancel) is { } text && LoggerFile.Read(text, "").Columns is { } columns
        ? LoggerFile.WishesOf(columns) : null;

    /// <summary>Remembers what somebody confirmed for logs with these columns.</summary>
    public Task RememberAsync(LogMapping mapping, Signature by, CancellationToken cancel = default) =>
        KeepLoggerAsync(LoggerFile.FingerprintOf(mapping), LoggerFile.Write(mapping), by, cancel);

    private protected abstract Task<string?> LoggerAsync(string fingerprint, CancellationToken cancel);

    private protected abstract Task KeepLoggerAsync(string fingerprint, string text, Signature by, CancellationToken cancel);

    private protected static string Free(string wanted, byte[] bytes, Func<string, byte[]?> there)
    {
        var (folder, name) = (Path.GetDirectoryName(wanted)!.Replace('\\', '/'), Path.GetFileNameWithoutExtension(wanted));
        var path = wanted;
        for (var i = 2; there(path) is { } old && !old.AsSpan().SequenceEqual(bytes); i++)
            path = FormattableString.Invariant($"{(folder.Length == 0 ? "" : folder + "/")}{name}-{i}{Path.GetExtension(wanted)}");
        return path;
    }
}

/// <summary>A built board in a shop.</summary>
public sealed class BuiltInShop : BuiltStore
{
    const int MostAttempts = 20;
    readonly Shop shop;
    readonly Item item;

    BuiltInShop(Shop shop, Item item) => (this.shop, this.item) = (shop, item);

    /// <summary>The item.</summary>
    public Guid Item => item.Id;

    /// <inheritdoc/>
    public override string Name => item.Name;

    /// <summary>Finds a built board by its serial number.</summary>
    /// <returns>The board, or <c>null</c> when there is none.</returns>
    public static async Task<BuiltInShop?> FindAsync(Shop shop, string serial, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(shop);
        return await shop.FindAsync(ItemKind.Built, serial, cancel) is { IsDeleted: false } item ? new(shop, item) : null;
    }

    /// <summary>Every built board of a shop with its file, by serial number.</summary>
    public static async Task<IReadOnlyList<(BuiltInShop Place, OpenedBuilt Opened)>> ListAsync(
        Shop shop, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(shop);
        var all = new List<(BuiltInShop, OpenedBuilt)>();
        foreach (var found in await shop.ListAsync(ItemKind.Built, cancel: cancel))
        {
            var place = new BuiltInShop(shop, found);
            all.Add((place, await place.ReadAsync(cancel)));
        }

        return all;
    }

    /// <summary>Begins a board that is built from a revision of a board in the shop.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="serial">Its serial number.</param>
    /// <param name="design">Name of the design in the shop.</param>
    /// <param name="revision">Which revision of it; the newest where not given.</param>
    /// <param name="when">When.</param>
    /// <param name="by">Who, and why.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ShopException">There is no such design, or the serial number is taken or is none.</exception>
    public static async Task<BuiltInShop> BeginAsync(
        Shop shop, string serial, string design, int? revision, Moment when, Signature by, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(shop);
        ArgumentNullException.ThrowIfNull(by);
        Proper(serial);
        var board = await shop.FindAsync(ItemKind.Board, design, cancel) is { IsDeleted: false } found ? found
            : throw new ShopException(ShopError.NotThere, $"There is no board {design} in the shop {shop.Place.Shown}.", "Save the board first, or look at what there is with: boardwright shop list");
        var opened = await shop.ReadFileAsync(board.Id, null, revision, cancel);
        var text = BuiltText.Begin(serial, board.Name, opened.Revision.Number, when, by.Who);
        return new(shop, await shop.AddAsync(
            ItemKind.Built, serial, FileSet.FromText(BuiltFile.NameFor(serial), text), new BranchOrigin(board.Id, opened.Revision.Number),
            by, cancel));
    }

    /// <inheritdoc/>
    public override async Task<OpenedBuilt> ReadAsync(CancellationToken cancel = default)
    {
        var (_, revision, file) = await shop.ReadFileAsync(item.Id, cancel: cancel);
        return new(file!.Text, BuiltFile.ReadText(file.Text, file.Path), revision);
    }

    /// <inheritdoc/>
    public override async Task<byte[]?> FileAsync(string path, CancellationToken cancel = default) =>
        (await shop.ReadFileAsync(item.Id, path, cancel: cancel)).File?.Bytes;

    /// <inheritdoc/>
    public override async Task<BuiltDesign> DesignAsync(BuiltBoard built, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(built);
        // The design is known by its identity, so that no new name of it matters.
        var design = item.From?.Item ?? (await shop.FindAsync(ItemKind.Board, NameOf(built), cancel))?.Id
            ?? throw new ShopException(ShopError.NotThere, $"There is no board {NameOf(built)} in the shop, from which {Name} was built.", "Save it under that name, or write the right name into board:.");
        var opened = await shop.ReadAsync(design, built.Revision.IsKnown ? built.Revision.Value : item.From?.Number, cancel);
        var files = FileTree.FromTexts(
            opened.Files.Files.ToDictionary(static file => file.Path, static file => file.Text, StringComparer.Ordinal));
        return new(FormattableString.Invariant($"{opened.Item.Name}, revision {opened.Revision.Number}"),
            BoardFile.Read(opened.Files.Main.Path, files))
        { Key = FormattableString.Invariant($"{design}/{opened.Revision.Number}") };
    }

    /// <inheritdoc/>
    public override async Task<Changed> ChangeAsync(
        AttachedFile? attached, Func<string, string, Changed> change, Signature by, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(change);
        for (var attempt = 1; ; attempt++)
        {
            var opened = await shop.ReadAsync(item.Id, null, cancel);
            var path = attached is null ? ""
                : Free(attached.Path, attached.Bytes,
                wanted => opened.Files.Files.FirstOrDefault(
                file => string.Equals(file.Path, wanted, StringComparison.OrdinalIgnoreCase))?.Bytes);
            var changed = change(opened.Files.Main.Text, path);
            if (changed.Refusal is not null)
                return changed;
            var files = opened.Files.With(opened.Files.Main.Path, changed.Text);
            if (attached is not null)
                files = files.With(new KeptFile(path, attached.Bytes));
            // Somebody who added to the same list a moment ago is no conflict: the change is made anew on top of theirs.
            if (await shop.SaveAsync(item.Id, opened.Revision.Number, files, by, cancel) is not Conflict)
                return changed;
            if (attempt == MostAttempts)
                throw new ShopException(ShopError.Busy, "Others were quicker again and again; nothing was changed.", "Try again.");
        }
    }

    private protected override async Task<string?> LoggerAsync(string fingerprint, CancellationToken cancel) =>
        await shop.FindAsync(ItemKind.Logger, fingerprint, cancel) is { IsDeleted: false } logger
        ? (await shop.ReadFileAsync(logger.Id, cancel: cancel)).File!.Text : null;

    private protected override async Task KeepLoggerAsync(string fingerprint, string text, Signature by, CancellationToken cancel)
    {
        var files = FileSet.FromText(fingerprint + LoggerFile.Ending, text);
        if (await shop.FindAsync(ItemKind.Logger, fingerprint, cancel) is not { IsDeleted: false } logger)
            await shop.AddAsync(ItemKind.Logger, fingerprint, files, by, cancel);
        else
            await shop.SaveAsync(logger.Id, logger.Latest.Number, files, by, cancel);
    }

    // A built board that began in a folder names the board file.
    static string NameOf(BuiltBoard built) => built.Board.Or("") is var name && BoardFile.IsCalledSo(name) ? BoardFile.NameOf(name) : name;

    internal static void Proper(string serial)
    {
        if (BuiltFile.Objection(serial) is { } objection)
            throw new ShopException(ShopError.Refused, objection.Says, objection.Remedy);
    }
}

/// <summary>A built board in a folder of the disk.</summary>
/// <param name="path">Its file, as the user wrote it.</param>
public sealed class BuiltInFolder(string path) : BuiltStore
{
    const string Loggers = "loggers";

    /// <inheritdoc/>
    public override string Name => path;

    string Folder => Path.GetDirectoryName(Path.GetFullPath(path))!;

    /// <summary>Begins a board that is built from a board file; its own file lies in the same folder.</summary>
    /// <param name="serial">Its serial number.</param>
    /// <param name="boardFile">The board file, as the user wrote it.</param>
    /// <param name="when">When.</param>
    /// <param name="who">Who begins it.</param>
    /// <exception cref="ShopException">There is no such board file, or the board was begun already.</exception>
    public static BuiltInFolder Begin(string serial, string boardFile, Moment when, string who)
    {
        BuiltInShop.Proper(serial);
        if (!File.Exists(boardFile))
            throw new ShopException(ShopError.NotThere, $"There is no file {boardFile}.", "Check the name and the folder.");
        var path = Path.Combine(Path.GetDirectoryName(boardFile)!, BuiltFile.NameFor(serial));
        if (File.Exists(path))
            throw new ShopException(ShopError.Refused, $"{path} is there already; nothing was written.", "Give this board another serial number.");
        DurableFile.Write(path, BuiltText.Begin(serial, Path.GetFileName(boardFile), null, when, who));
        return new(path);
    }

    /// <inheritdoc/>
    public override async Task<OpenedBuilt> ReadAsync(CancellationToken cancel = default)
    {
        var loaded = BuiltFile.Read(path);
        return new(loaded.Built is null ? "" : await File.ReadAllTextAsync(path, cancel), loaded, null);
    }

    /// <inheritdoc/>
    public override async Task<byte[]?> FileAsync(string path, CancellationToken cancel = default)
    {
        // The path is one that leads nowhere else.
        var full = Path.Combine(Folder, new KeptFile(path, []).Path);
        return File.Exists(full) ? await File.ReadAllBytesAsync(full, cancel) : null;
    }

    /// <inheritdoc/>
    public override Task<BuiltDesign> DesignAsync(BuiltBoard built, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(built);
        var name = built.Board.Or("");
        if (!BoardFile.IsCalledSo(name))
            throw new ShopException(ShopError.NotThere, $"{path} names the board {(name.Length == 0 ? "of no name" : name)}, which is no board file.", $"Write the name of a board file into board:, such as board: tern{BoardFile.Ending}, or keep the built board in the shop.");
        return Task.FromResult(new BuiltDesign(name, BoardFile.Read(Path.Combine(Path.GetDirectoryName(path)!, name))));
    }

    /// <inheritdoc/>
    public override async Task<Changed> ChangeAsync(
        AttachedFile? attached, Func<string, string, Changed> change, Signature by, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(change);
        var text = await File.ReadAllTextAsync(path, cancel);
        var kept = attached is null ? ""
            : Free(attached.Path, attached.Bytes,
            wanted => Path.Combine(Folder, new KeptFile(wanted, []).Path) is var full && File.Exists(full) ? File.ReadAllBytes(full)
            : null);
        var changed = change(text, kept);
        if (changed.Refusal is not null)
            return changed;
        // The log or photo first: a file that nothing names does no harm.
        if (attached is not null)
            DurableFile.Write(Path.Combine(Folder, kept), attached.Bytes);
        DurableFile.Write(path, changed.Text);
        return changed;
    }

    private protected override async Task<string?> LoggerAsync(string fingerprint, CancellationToken cancel) =>
        LoggerPath(fingerprint) is var file && File.Exists(file) ? await File.ReadAllTextAsync(file, cancel) : null;

    private protected override Task KeepLoggerAsync(string fingerprint, string text, Signature by, CancellationToken cancel)
    {
        DurableFile.Write(LoggerPath(fingerprint), text);
        return Task.CompletedTask;
    }

    string LoggerPath(string fingerprint) => Path.Combine(Folder, Loggers, fingerprint + LoggerFile.Ending);
}
