using Boardwright.App.ShopWork;
using Boardwright.App.Workbench.Frame;
using Boardwright.Files;
using Boardwright.Shops;

namespace Boardwright.App.Workbench.BoardPages;

/// <summary>A board in the shop's memory.</summary>
/// <param name="shop">The shop.</param>
/// <param name="opened">The revision that is open.</param>
/// <param name="who">Who saves.</param>
sealed class ShopBoard(Shop shop, Opened opened, CurrentUser who) : BoardSource
{
    Opened opened = opened;

    /// <summary>The item in the shop.</summary>
    public Guid Item => opened.Item.Id;

    /// <inheritdoc/>
    public override string Name => opened.Item.Name;

    /// <inheritdoc/>
    public override string Path => opened.Files.Main.Path;

    /// <inheritdoc/>
    public override FileTree Files { get; } = FileTree.FromTexts(
        opened.Files.Files.ToDictionary(file => file.Path, file => file.Text, StringComparer.Ordinal));

    /// <inheritdoc/>
    public override string Place => FormattableString.Invariant($"the shop, revision {opened.Revision.Number}");

    /// <inheritdoc/>
    public override Task<string> ReadAsync(CancellationToken cancellation) => Task.FromResult(opened.Files.Main.Text);

    /// <inheritdoc/>
    public override async Task<SaveOutcome> KeepAsync(string text, string before, string why, CancellationToken cancellation)
    {
        try
        {
            var files = opened.Files.With(Path, text);
            return await shop.SaveAsync(Item, opened.Revision.Number, files, who.Sign(why), cancellation) switch
            {
                Saved { TakenOver.Count: 0 } saved => await ReopenAsync(FormattableString.Invariant($"Saved as revision {saved.Revision.Number}."), cancellation),
                Saved merged => await ReopenAsync(FormattableString.Invariant($"Saved as revision {merged.Revision.Number}, together with what others changed: {string.Join(", ", merged.TakenOver.Take(4).Select(c => c.Key))}."), cancellation),
                Unchanged same => await ReopenAsync(FormattableString.Invariant($"Revision {same.Revision.Number} says the same already."), cancellation),
                Conflict conflict => new(false, FormattableString.Invariant($"{conflict.Theirs.Revision.Who} changed the same in revision {conflict.Theirs.Revision.Number} ({conflict.Theirs.Revision.Why}). Nothing was saved; choose below.")) { Conflict = conflict },
                _ => throw new NotSupportedException("A save has no other outcome."),
            };
        }
        catch (ShopException trouble)
        {
            return new(false, trouble.Message + " What was saved last is as it was.");
        }
    }

    /// <summary>Saves what was chosen where two people changed the same.</summary>
    public async Task<SaveOutcome> SettleAsync(
        Conflict conflict, Func<Shops.Merging.Choice, Shops.Merging.MergeSide> pick, string why, CancellationToken cancellation)
    {
        try
        {
            var settled = conflict.Resolve(pick);
            var result = await shop.SaveAsync(Item, conflict.Theirs.Revision.Number, settled, who.Sign(why), cancellation);
            return result is Conflict again
                ? new(false, "Somebody saved once more meanwhile; choose again.") { Conflict = again }
                : await ReopenAsync("Saved as chosen.", cancellation);
        }
        catch (ShopException trouble)
        {
            return new(false, trouble.Message);
        }
    }

    async Task<SaveOutcome> ReopenAsync(string says, CancellationToken cancellation)
    {
        opened = await shop.ReadAsync(Item, null, cancellation);
        return new(true, says) { Text = opened.Files.Main.Text };
    }
}

/// <summary>The boards that the workbench can open, and the shop they are kept in.</summary>
/// <param name="start">How the workbench was started.</param>
sealed class OpenBoards(WorkbenchStart start) : IAsyncDisposable
{
    readonly SemaphoreSlim gate = new(1);
    Shop? shop;

    /// <summary>The shop, opened when it is first asked for.</summary>
    /// <exception cref="ShopException">The shop is damaged, locked or out of reach.</exception>
    public async Task<Shop> ShopAsync(CancellationToken cancellation = default)
    {
        await gate.WaitAsync(cancellation);
        try
        {
            return shop ??= await ShopLocations.OpenAsync(start.Shop, cancellation);
        }
        finally
        {
            gate.Release();
        }
    }

    /// <summary>The board that is opened when no other is asked for: the file that was named, or the one saved last, or Tern.</summary>
    /// <param name="who">Who asks.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<BoardSource> FirstAsync(CurrentUser who, CancellationToken cancellation = default)
    {
        if (start.File is { } file)
            return new BoardOnDisk(file);
        try
        {
            // The first start of all needs no shop, and the database's libraries take longer to be ready than all else.
            if (shop is null && !ShopLocations.Find(start.Shop).MayHoldSomething)
                return new ExampleBoard();
            var opened = await ShopAsync(cancellation);
            var boards = await opened.ListAsync(ItemKind.Board, cancel: cancellation);
            return boards.MaxBy(board => board.Latest.When) is { } last ? await OpenAsync(last.Id, who, cancellation) : new ExampleBoard();
        }
        catch (ShopException)
        {
            // A shop that cannot be opened says so on its own page; the first look does not wait for it.
            return new ExampleBoard();
        }
    }

    /// <summary>The boards of the shop that an address means: that of an id, or all whose names are written so in addresses.</summary>
    public async Task<IReadOnlyList<Item>> CalledAsync(string name, CancellationToken cancellation = default)
    {
        var opened = await ShopAsync(cancellation);
        var boards = await opened.ListAsync(ItemKind.Board, cancel: cancellation);
        var slug = Documents.Papers.PaperOrder.Slug(name);
        return [.. boards.Where(board => Guid.TryParse(name, out var id) ? board.Id == id
            : Documents.Papers.PaperOrder.Slug(board.Name) == slug)];
    }

    /// <summary>Opens a board of the shop.</summary>
    public async Task<BoardSource> OpenAsync(Guid item, CurrentUser who, CancellationToken cancellation = default)
    {
        var opened = await ShopAsync(cancellation);
        return new ShopBoard(opened, await opened.ReadAsync(item, null, cancellation), who);
    }

    /// <summary>Begins a board in the shop from the open one: its text, its shelf and its route.</summary>
    public async Task<BoardSource> BeginAsync(
        EditSession session, CurrentUser who, string name, string why, CancellationToken cancellation = default)
    {
        var opened = await ShopAsync(cancellation);
        var item = await opened.AddAsync(ItemKind.Board, name, FilesOf(session), who.Sign(why), cancellation);
        return await OpenAsync(item.Id, who, cancellation);
    }

    /// <summary>Begins a board in the shop from its text alone.</summary>
    public async Task<BoardSource> CreateAsync(string name, string text, CurrentUser who, CancellationToken cancellation = default)
    {
        var opened = await ShopAsync(cancellation);
        var files = FileSet.FromText(Documents.Papers.PaperOrder.Slug(name) + Files.Boards.BoardFile.Ending, text);
        var item = await opened.AddAsync(ItemKind.Board, name, files, who.Sign("begun from a few answers"), cancellation);
        return await OpenAsync(item.Id, who, cancellation);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        gate.Dispose();
        if (shop is not null)
            await shop.DisposeAsync();
    }

    static FileSet FilesOf(EditSession session) => session.Source switch
    {
        BoardOnDisk file => BoardFolder.Gather(file.Path).Files is var gathered ? gathered.With(gathered.Main.Path, session.Text)
            : throw new NotSupportedException(),
        { } source => new FileSet(
            source.Path, source.Files.Texts.Where(text => text.Key != source.Path).Select(text => KeptFile.FromText(text.Key, text.Value))
            .Append(KeptFile.FromText(source.Path, session.Text))),
        _ => throw new InvalidOperationException("No board is open."),
    };
}
