using System.CommandLine;
using System.Globalization;
using Boardwright.App.Reports;
using Boardwright.App.ShopWork;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Shops;
using Boardwright.Shops.Merging;

namespace Boardwright.App.Commands;

/// <summary><c>shop</c>: keeps boards and shelf files with every revision.</summary>
/// <remarks>The database's libraries are loaded only when one of these commands runs.</remarks>
sealed class ShopCommands(Terminal terminal) : ShopVerbs(terminal)
{
    /// <summary>The command with its parts.</summary>
    public static Verb Create(Terminal terminal) => new ShopCommands(terminal).All();

    Verb All() => new Verb(
        "shop", "Keeps boards and shelf files with every revision: who saved, when and why.",
        "boardwright shop save tern.board.yaml --why \"quieter belt\"", "boardwright shop log tern", "boardwright shop backup")
    {
        Where, List(), Save(), Log(), Diff(), Show(), Restore(), Branch(), Duplicate(), Rename(),
        Delete(), BringBack(), Find(), Import(), Export(), Backup(), Recover(), PeopleCommands.Create(Terminal, Where),
    };

    Verb List()
    {
        var all = new Option<bool>("--all") { Description = "Lists deleted ones too." };
        var command = new Verb("list", "Lists the boards and shelf files of the shop.", "boardwright shop list", "boardwright shop list --all --shop shared/shop.db") { all };
        return With(command, async (parsed, shop, cancel) =>
        {
            var items = new List<Item>();
            foreach (var kind in Enum.GetValues<ItemKind>())
                items.AddRange(await shop.ListAsync(kind, parsed.GetValue(all), cancel));
            if (items.Count == 0)
                Terminal.Out.Write($"The shop {shop.Place.Shown} is empty. Keep a board in it with: boardwright shop save FILE --why TEXT\n");
            Table([.. items.Select(item =>
                new[] { item.Name, Word(item.Kind), Numbered(item.Latest.Number), Time(item.Latest), item.Latest.Who,
                item.IsDeleted ? "deleted: " + item.Latest.Why : item.Latest.Why })]);
            return Exit.Holds;
        });
    }

    Verb Save()
    {
        var files = new Argument<string[]>("FILE") { Description = "Board files, each with the shelf and route it names, or shelf files.", Arity = ArgumentArity.OneOrMore };
        files.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var name = new Option<string?>("--as") { Description = "Name in the shop; that of the file where not given.", HelpName = "NAME" };
        var onto = new Option<int?>("--onto") { Description = "Revision that the file was made from; what others saved since is merged, into the file too. The last one of the same person where not given.", HelpName = "NUMBER" };
        var prefer = new Option<string?>("--prefer") { Description = "Where someone else changed the same: mine or theirs.", HelpName = "SIDE" };
        prefer.AcceptOnlyFromAmong("mine", "theirs");
        var (why, by) = Signed();
        var command = new Verb(
            "save", "Keeps files as new revisions. Exit code 1 when someone else changed the same since; then nothing is saved.",
            "boardwright shop save tern.board.yaml --why \"quieter belt\"", "boardwright shop save tern.board.yaml --as \"Tern for Jo\" --why \"longer deck\" --by Ada", "boardwright shop save shelf/motors.yaml --why \"new prices\"")
        { files, name, onto, prefer, why, by };
        command.Validators.Add(result =>
        {
            if (result.GetValue(files) is { Length: > 1 } && (result.GetValue(name) is not null || result.GetValue(onto) is not null))
                result.AddError("--as and --onto go with one file.");
        });
        return With(command, async (parsed, shop, cancel) =>
        {
            var code = Exit.Holds;
            foreach (var file in parsed.GetRequiredValue(files))
            {
                var found = BoardFolder.Gather(file);
                var (title, who) = (parsed.GetValue(name) ?? BoardFile.NameOf(file), By(parsed, why, by));
                foreach (var lost in found.Missing)
                    Terminal.Error.Write($"{file} names {lost}, which is not kept with it: it is not there, or is named by an absolute path.\n");
                if (await shop.FindAsync(found.Kind, title, cancel) is not { IsDeleted: false } item)
                {
                    var begun = await shop.AddAsync(found.Kind, title, found.Files, who, cancel);
                    Terminal.Out.Write($"{begun.Name}: revision 1\n");
                    continue;
                }

                var result = await shop.SaveAsync(
                    item.Id, parsed.GetValue(onto) ?? await Start(shop, item, who.Who, cancel), found.Files, who, cancel);
                if (result is Conflict conflict && parsed.GetValue(prefer) is { } side)
                    result = await shop.SaveAsync(
                        item.Id, conflict.Theirs.Revision.Number, conflict.Resolve(_ => side == "mine" ? MergeSide.Mine : MergeSide.Theirs),
                        who, cancel);
                // Otherwise the next save of this file would seem to take back what others did.
                if (result is not Conflict)
                {
                    foreach (var updated in found.Update((await shop.ReadAsync(item.Id, null, cancel)).Files))
                        Terminal.Out.Write($"{updated} now holds what others saved too\n");
                }

                code = Math.Max(code, Report(item, result));
            }

            return code;
        });
    }

    Verb Log()
    {
        var board = NameArgument();
        var command = new Verb("log", "Lists every revision of a board or shelf file, the newest first.", "boardwright shop log tern") { board };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            Table([.. (await shop.HistoryAsync(item.Id, cancel))
                .Select(revision => new[] { Numbered(revision.Number), Time(revision), revision.Who, Acted(revision), revision.Why })]);
            if (item.From is { } from)
            {
                var origin = await shop.ReadAsync(from.Item, from.Number, cancel);
                Terminal.Out.Write(Invariant($"Branched from revision {from.Number} of {origin.Item.Name}.\n"));
            }

            return Exit.Holds;
        });
    }

    Verb Diff()
    {
        var board = NameArgument();
        var first = new Argument<int?>("A") { Description = "A revision; the one before B where not given.", Arity = ArgumentArity.ZeroOrOne };
        var second = new Argument<int?>("B") { Description = "Another revision; the newest where not given.", Arity = ArgumentArity.ZeroOrOne };
        var lines = new Option<bool>("--lines") { Description = "Shows the lines that differ, not the keys." };
        var command = new Verb("diff", "Shows what differs between two revisions, by key or by line.", "boardwright shop diff tern", "boardwright shop diff tern 2 5", "boardwright shop diff tern 2 --lines") { board, first, second, lines };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            var to = parsed.GetValue(second) ?? item.Latest.Number;
            var from = parsed.GetValue(first) ?? Math.Max(1, to - 1);
            var difference = await shop.DifferenceAsync(item.Id, from, to, cancel);
            Terminal.Out.Write(Invariant($"{item.Name}, revision {from} to {to}{(difference.Lines.Count == 0 ? ": no difference" : "")}\n"));
            if (parsed.GetValue(lines))
            {
                foreach (var (file, changes) in difference.Lines)
                {
                    Terminal.Out.Write($"{file}\n");
                    foreach (var line in changes)
                        Terminal.Out.Write(Invariant($"{line.Number,6} {line.Sign} {line.Text}\n"));
                }
            }
            else
            {
                Changes(Terminal.Out, difference.Keys);
            }

            return Exit.Holds;
        });
    }

    Verb Show()
    {
        var board = NameArgument();
        var revision = new Option<int?>("--revision") { Description = "The revision; the newest where not given.", HelpName = "NUMBER" };
        var folder = new Option<string?>("--out") { Description = "Folder to write all its files into, as they were saved; without it the board file is printed.", HelpName = "DIR" };
        var command = new Verb("show", "Prints the file of a board as it was saved, or writes it with its shelf and route into a folder.", "boardwright shop show tern", "boardwright shop show tern --revision 3 --out tern-3") { board, revision, folder };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            var opened = await shop.ReadAsync(item.Id, parsed.GetValue(revision), cancel);
            if (parsed.GetValue(folder) is { } place)
            {
                BoardFolder.Write(opened.Files, place);
                foreach (var file in opened.Files.Files)
                    Terminal.Out.Write($"{Path.Combine(place, file.Path)}\n");
            }
            else
            {
                Terminal.Out.Write(opened.Files.Main.Text.TrimStart('\uFEFF'));
            }

            return Exit.Holds;
        });
    }

    Verb Restore()
    {
        var board = NameArgument();
        var revision = new Argument<int>("REVISION") { Description = "The revision to make the newest." };
        var (why, by) = Signed("as it was before");
        var command = new Verb("restore", "Makes an earlier revision the newest; those in between stay.", "boardwright shop restore tern 3 --why \"the new belt slipped\"") { board, revision, why, by };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            var restored = await shop.RestoreAsync(item.Id, parsed.GetValue(revision), By(parsed, why, by), cancel);
            Terminal.Out.Write(Invariant($"{item.Name}: revision {restored.Number}, which is revision {restored.Of} again\n"));
            return Exit.Holds;
        });
    }

    Verb Branch()
    {
        var (board, name) = (NameArgument(), NewName());
        var revision = new Option<int?>("--revision") { Description = "The revision to begin with; the newest where not given.", HelpName = "NUMBER" };
        var (why, by) = Signed("a branch");
        var command = new Verb("branch", "Begins a board as a branch of another one; it knows from which revision.", "boardwright shop branch tern \"Tern for Jo\"") { board, name, revision, why, by };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            var branch = await shop.BranchAsync(
                item.Id, parsed.GetRequiredValue(name), By(parsed, why, by), parsed.GetValue(revision), cancel);
            Terminal.Out.Write(Invariant($"{branch.Name}: revision 1, from revision {branch.From!.Number} of {item.Name}\n"));
            return Exit.Holds;
        });
    }

    Verb Duplicate()
    {
        var (board, name) = (NameArgument(), NewName());
        var (why, by) = Signed("a copy");
        var command = new Verb("duplicate", "Begins a board as a copy of another one; the two have nothing to do with one another.", "boardwright shop duplicate tern Plover") { board, name, why, by };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            var copy = await shop.DuplicateAsync(item.Id, parsed.GetRequiredValue(name), By(parsed, why, by), null, cancel);
            Terminal.Out.Write($"{copy.Name}: revision 1\n");
            return Exit.Holds;
        });
    }

    Verb Rename()
    {
        var (board, name) = (NameArgument(), NewName());
        var (why, by) = Signed("a better name");
        var command = new Verb("rename", "Gives a board or shelf file another name; its revisions stay.", "boardwright shop rename tern Plover") { board, name, why, by };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            var renamed = await shop.RenameAsync(item.Id, parsed.GetRequiredValue(name), By(parsed, why, by), cancel);
            Terminal.Out.Write(Invariant($"{renamed.Name}: revision {renamed.Number}, formerly {item.Name}\n"));
            return Exit.Holds;
        });
    }

    Verb Delete()
    {
        var board = NameArgument();
        var (why, by) = Signed();
        var command = new Verb("delete", "Takes a board or shelf file off the list. Its revisions stay, and it can be brought back.", "boardwright shop delete tern --why \"sold the plans\"") { board, why, by };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            await shop.DeleteAsync(item.Id, By(parsed, why, by), cancel);
            Terminal.Out.Write($"{item.Name} is off the list. Bring it back with: boardwright shop bring-back \"{item.Name}\"\n");
            return Exit.Holds;
        });
    }

    Verb BringBack()
    {
        var board = NameArgument();
        var (why, by) = Signed("wanted again");
        var command = new Verb("bring-back", "Puts a deleted board or shelf file back on the list.", "boardwright shop bring-back tern") { board, why, by };
        return With(command, async (parsed, shop, cancel) =>
        {
            var item = await Find(shop, parsed.GetRequiredValue(board), cancel);
            var back = await shop.BringBackAsync(item.Id, By(parsed, why, by), cancel);
            Terminal.Out.Write(Invariant($"{item.Name}: revision {back.Number}\n"));
            return Exit.Holds;
        });
    }

    Verb Find()
    {
        var words = new Argument<string[]>("WORDS") { Description = "Words that id, kind, name or supplier must contain.", Arity = ArgumentArity.ZeroOrMore };
        var stock = new Option<int?>("--stock") { Description = "Writes how many there are of the one part that is found.", HelpName = "COUNT" };
        var price = new Option<string?>("--price") { Description = "Writes the price of the one part that is found.", HelpName = "PRICE" };
        var (why, by) = Signed("counted");
        var command = new Verb("find", "Searches the shop's shelf, with price and stock; writes a new price or stock.", "boardwright shop find motor larkmere", "boardwright shop find m6374-170 --stock 3", "boardwright shop find m6374-170 --price \"95 EUR\" --why \"new list\"") { words, stock, price, why, by };
        return With(command, async (parsed, shop, cancel) =>
        {
            var wanted = string.Join(' ', parsed.GetValue(words) ?? []);
            var found = await shop.FindPartsAsync(wanted, cancel);
            (string Key, string? Value)[] news =
                [("stock", parsed.GetValue(stock)?.ToString(CultureInfo.InvariantCulture)), ("price", parsed.GetValue(price))];
            if (news.All(static entry => entry.Value is null))
            {
                Table([.. found.Select(part =>
                    new[] { part.Id, part.Kind, part.Name, part.Supplier, part.Price, part.Stock is { } count ? Invariant($"{count} there") : "" })]);
                if (found.Count == 0)
                    Terminal.Out.Write("No part on the shop's shelf has these words. Keep a shelf file with: boardwright shop save FILE --why TEXT\n");
                return found.Count == 0 ? Exit.Wanting : Exit.Holds;
            }

            if ((found.Count == 1 ? found[0] : found.SingleOrDefault(part => part.Id == wanted)) is not { } one)
                throw new ShopException(ShopError.Refused, Invariant($"'{wanted}' finds {found.Count} parts, and one is to be changed."), "Write its id.");
            foreach (var (key, value) in news)
            {
                if (value is null)
                    continue;
                var result = await shop.ChangePartAsync(one, key, value, By(parsed, why, by), cancel);
                Terminal.Out.Write($"{one.Id}.{key}: {value}{(result is Saved ? "" : ", as before")}\n");
            }

            return Exit.Holds;
        });
    }

    Verb Import()
    {
        var folder = new Argument<string>("DIR") { Description = "The folder that export wrote." };
        var command = new Verb("import", "Reads a whole exported shop into an empty one.", "boardwright shop import shop-folder --shop new-shop.db") { folder };
        return With(command, async (parsed, shop, cancel) =>
        {
            await shop.ImportAsync(parsed.GetRequiredValue(folder), cancel);
            Terminal.Out.Write($"Read {parsed.GetRequiredValue(folder)} into {shop.Place.Shown}.\n");
            return Exit.Holds;
        });
    }

    Verb Export()
    {
        var folder = new Argument<string>("DIR") { Description = "A new folder." };
        var command = new Verb("export", "Writes the whole shop, every revision of it, as a folder of plain files.", "boardwright shop export shop-folder") { folder };
        return With(command, async (parsed, shop, cancel) =>
        {
            await shop.ExportAsync(parsed.GetRequiredValue(folder), Terminal.IsStyled ? new FileCounter(Terminal.Error) : null, cancel);
            Terminal.Out.Write($"Wrote {shop.Place.Shown} into {parsed.GetRequiredValue(folder)}.\n");
            return Exit.Holds;
        });
    }

    Verb Backup()
    {
        var target = new Argument<string?>("FILE") { Description = "Where to; a dated name in the folder backups beside the shop where not given. For PostgreSQL it is a folder.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Verb("backup", "Writes a backup of the shop while others may go on working.", "boardwright shop backup", "boardwright shop backup /media/stick/shop.db") { target };
        return With(command, async (parsed, shop, cancel) =>
        {
            Terminal.Out.Write($"Backed up as {await shop.BackUpAsync(parsed.GetValue(target), cancel)}\n");
            return Exit.Holds;
        });
    }

    Verb Recover()
    {
        var source = new Argument<string>("FILE") { Description = "The backup: a file, or an exported folder." };
        var command = new Verb("recover", "Brings a backup back. What the shop held is kept beside it.", "boardwright shop recover backups/shop-2026-05-04T101500Z.db", "boardwright shop recover shop-folder") { source };
        command.SetAction((parsed, cancel) => Plainly(async () =>
        {
            var file = parsed.GetRequiredValue(source);
            var before = await ShopLocations.RecoverAsync(parsed.GetValue(Where), file, cancel);
            Terminal.Out.Write(before is null ? $"Recovered from {file}.\n" : $"Recovered from {file}. What was there before is in {before}\n");
            return Exit.Holds;
        }));
        return command;
    }

    int Report(Item item, SaveResult result)
    {
        switch (result)
        {
            case Saved saved:
                Terminal.Out.Write(Invariant($"{item.Name}: revision {saved.Revision.Number}{(saved.Revision.Act == Act.Merged ? ", merged with what others saved" : "")}\n"));
                Changes(Terminal.Out, saved.TakenOver);
                return Exit.Holds;
            case Unchanged same:
                Terminal.Out.Write(Invariant($"{item.Name}: as revision {same.Revision.Number}; nothing to save\n"));
                return Exit.Holds;
            case Conflict conflict:
                Terminal.Error.Write(Invariant($"{item.Name}: nothing was saved, because {conflict.Theirs.Revision.Who} changed the same in revision {conflict.Theirs.Revision.Number} ({conflict.Theirs.Revision.Why}):\n"));
                foreach (var choice in conflict.Choices)
                {
                    Terminal.Error.Write(choice.Key.Length == 0 ? $"  {choice.File} as a whole\n" : $"  {choice.Key}\n    was     {choice.Base ?? "nothing"}\n    mine    {choice.Mine ?? "nothing"}\n    theirs  {choice.Theirs ?? "nothing"}\n");
                }

                Terminal.Error.Write("Save again with --prefer mine or --prefer theirs; all other changes of both are kept.\n");
                return Exit.Wanting;
            default:
                throw new NotSupportedException();
        }
    }

    static void Changes(TextWriter writer, IReadOnlyList<KeyChange> changes)
    {
        foreach (var file in changes.GroupBy(static change => change.File, StringComparer.Ordinal))
        {
            writer.Write($"{file.Key}\n");
            foreach (var change in file)
            {
                writer.Write(change.Key.Length == 0
                    ? $"  {(change.Old is null ? "is new" : change.New is null ? "is gone" : "changed")}\n"
                    : $"  {change.Key}: {Brief(change.Old)} -> {Brief(change.New)}\n");
            }
        }
    }

    static string Brief(string? written) => written is null ? "nothing" : written.ReplaceLineEndings(" ");

    static async Task<Item> Find(Shop shop, string name, CancellationToken cancel) =>
        await shop.FindAsync(ItemKind.Board, name, cancel) ?? await shop.FindAsync(ItemKind.Shelf, name, cancel)
        ?? await shop.FindAsync(ItemKind.Built, name, cancel) ?? await shop.FindAsync(ItemKind.Logger, name, cancel)
        ?? throw new ShopException(ShopError.NotThere, $"There is no {name} in the shop {shop.Place.Shown}.", await Near(shop, name, cancel));

    static async Task<string> Near(Shop shop, string name, CancellationToken cancel)
    {
        var names = new List<string>();
        foreach (var kind in Enum.GetValues<ItemKind>())
            names.AddRange((await shop.ListAsync(kind, withDeleted: true, cancel)).Select(static item => item.Name));
        return Nearest.List(name, names, 1) is [var near] ? $"Was {near} meant?" : "See what there is with: boardwright shop list --all";
    }

    /// <summary>The revision that somebody's file was made from: the last one of theirs, or the newest where they have none.</summary>
    static async Task<int> Start(Shop shop, Item item, string who, CancellationToken cancel) =>
        item.Latest.Who == who ? item.Latest.Number
        : (await shop.HistoryAsync(item.Id, cancel)).FirstOrDefault(revision => revision.Who == who)?.Number ?? item.Latest.Number;

    static Argument<string> NameArgument() => new("BOARD") { Description = "Name of the board or shelf file in the shop." };

    static Argument<string> NewName() => new("NEWNAME") { Description = "The name." };

    static string Acted(Revision revision) => revision.Act switch
    {
        Act.Restored => Invariant($"restored {revision.Of}"),
        Act.Merged => Invariant($"merged with {revision.Of}"),
        Act.Renamed => $"renamed {revision.Name}",
        Act.BroughtBack => "brought back",
        var act => act.ToString().ToLowerInvariant(),
    };

    static string Word(ItemKind kind) => kind.ToString().ToLowerInvariant();

    static string Time(Revision revision) => revision.When.ToString("yyyy-MM-dd HH:mm'Z'", CultureInfo.InvariantCulture);

    sealed class FileCounter(TextWriter writer) : IProgress<int>
    {
        public void Report(int value) => writer.Write(FormattableString.Invariant($"\r{value} written\r"));
    }
}
