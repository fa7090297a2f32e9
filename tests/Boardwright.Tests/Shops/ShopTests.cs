using System.Text;
using Boardwright.Builds;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Files.Logs;
using Boardwright.Shops;
using Boardwright.Shops.Merging;
using Boardwright.Tests.App;
using Moment = Boardwright.Units.Moment;

namespace Boardwright.Tests.Shops;

/// <summary>What every shop does, wherever it is kept.</summary>
public abstract class ShopTests : IDisposable
{
    protected const string Tern = """
        # Tern, for the way to work.
        boardwright: 1
        name: Tern
        brief:
          rider_mass: 80 kg     # with shoes
          cruise_speed: 25 km/h
        parts:
          wheels: { use: cobble-100, count: 4 }   # soft ones
          motor: m6374-170
          pack:
            series: 12
            parallel: 4
        """;

    protected const string Motors = """
        # Motors. Phase values are line to neutral.

        - id: m6374-170
          kind: motor
          name: Larkmere 63x74, 170
          price: 92 EUR        # list of spring
          supplier: Dunlin Stores
          stock: 4

        # The small one.
        - id: m5065-200
          kind: motor
          name: Larkmere 50x65, 200
          price: 61 EUR
          supplier: Windlass Parts
          stock: 2
        """;

    internal Folder Here { get; } = new();

    protected static Signature Ada(string why = "a try") => new("Ada", why);

    protected static Signature Bo(string why = "another try") => new("Bo", why);

    protected static FileSet Board(string text) => FileSet.FromText("tern.board.yaml", text);

    protected abstract Task<ShopLocation> NewPlaceAsync(string name = "shop");

    protected async Task<Shop> NewShopAsync(string name = "shop") => await Shop.OpenAsync(await NewPlaceAsync(name), new Clock(), Cancel);

    protected static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task People_may_sign_in_under_one_name_each_until_they_are_sent_away()
    {
        await using var shop = await NewShopAsync();
        var people = new People(shop);
        await people.AddAsync("Ada", "a few words in a row");
        await people.ChangePasswordAsync("ada", "some other words in a row");

        Assert.Equal(["Ada"], await people.ListAsync());
        Assert.Equal(ShopError.Refused, (await Assert.ThrowsAsync<ShopException>(() => people.AddAsync("ADA", "a few words in a row"))).Kind);
        await people.RemoveAsync("Ada");
        Assert.Empty(await people.ListAsync());
    }

    [Fact]
    public async Task A_board_comes_back_byte_for_byte_whatever_its_bytes_are()
    {
        await using var shop = await NewShopAsync();
        var files = new FileSet("boards/tern.board.yaml",
        [
            new("boards/tern.board.yaml", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("boardwright: 1\r\nname: Käuzchen  \r\n\r\n# no line break at the end")]),
            new("shelf/Ärmel.yaml", "- id: a\n\tnot: in order"u8.ToArray()),
            new("routes/hill.gpx", [0, 1, 2, 0xFF, 0xFE, 13, 10, 13]),
            new("routes/empty.csv", []),
        ]);
        var item = await shop.AddAsync(ItemKind.Board, "Käuzchen", files, Ada(), Cancel);

        var opened = await shop.ReadAsync(item.Id, cancel: Cancel);

        Assert.True(opened.Files.IsSameAs(files));
        Assert.Equal(files.Files.Select(file => file.Bytes), opened.Files.Files.Select(file => file.Bytes));
        Assert.Equal("boards/tern.board.yaml", opened.Files.Main.Path);
    }

    [Fact]
    public async Task Every_save_is_a_revision_that_says_who_when_and_why()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada("begun"), Cancel);
        var saved = Assert.IsType<Saved>(
            await shop.SaveAsync(item.Id, 1, Board(Tern.Replace("80 kg", "85 kg", StringComparison.Ordinal)), Bo("Jo is heavier"), Cancel));

        Assert.Empty(saved.TakenOver);
        var history = await shop.HistoryAsync(item.Id, Cancel);
        Assert.Equal([(2, "Bo", "Jo is heavier", Act.Saved), (1, "Ada", "begun", Act.Saved)],
            history.Select(revision => (revision.Number, revision.Who, revision.Why, revision.Act)));
        Assert.All(history, revision => Assert.True(revision.When > Clock.Start && revision.When.Offset == TimeSpan.Zero));
        Assert.True(history[0].When > history[1].When);
        Assert.Equal(history[0], Assert.Single(await shop.ListAsync(ItemKind.Board, cancel: Cancel)).Latest);
        Assert.Equal(Tern, (await shop.ReadAsync(item.Id, 1, Cancel)).Files.Main.Text);
        Assert.Empty(await shop.ListAsync(ItemKind.Shelf, cancel: Cancel));
    }

    [Fact]
    public async Task Saving_what_is_there_already_makes_no_revision()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);

        Assert.Equal(1, Assert.IsType<Unchanged>(await shop.SaveAsync(item.Id, 1, Board(Tern), Bo(), Cancel)).Revision.Number);
        Assert.Single(await shop.HistoryAsync(item.Id, Cancel));
    }

    [Fact]
    public async Task A_revision_without_a_person_or_a_reason_is_refused()
    {
        await using var shop = await NewShopAsync();

        Assert.Equal(ShopError.Refused,
            (await Assert.ThrowsAsync<ShopException>(() => shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), new(" ", "x"), Cancel))).Kind);
        Assert.Equal(ShopError.Refused,
            (await Assert.ThrowsAsync<ShopException>(() => shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), new("Ada", ""), Cancel))).Kind);
        Assert.Empty(await shop.ListAsync(ItemKind.Board, withDeleted: true, Cancel));
    }

    [Fact]
    public async Task Two_people_who_change_different_keys_both_get_their_way_and_comments_stay()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        // The two lines are neighbours, and the wheels are one line for both.
        await shop.SaveAsync(item.Id, 1, Board(Tern.Replace("80 kg", "85 kg", StringComparison.Ordinal).Replace("use: cobble-100", "use: cobble-107", StringComparison.Ordinal)),
            Ada(), Cancel);

        var saved = Assert.IsType<Saved>(
            await shop.SaveAsync(item.Id, 1,
            Board(Tern.Replace("25 km/h", "28 km/h", StringComparison.Ordinal).Replace("count: 4", "count: 8", StringComparison.Ordinal)
            .Replace("# soft ones", "# very soft ones", StringComparison.Ordinal)), Bo(), Cancel));

        Assert.Equal((3, Act.Merged, 2), (saved.Revision.Number, saved.Revision.Act, saved.Revision.Of));
        Assert.Equal(["brief.rider_mass", "wheels.use"], saved.TakenOver.Select(change => change.Key));
        Assert.Equal(
            Tern.Replace("80 kg", "85 kg", StringComparison.Ordinal).Replace("25 km/h", "28 km/h", StringComparison.Ordinal)
            .Replace("cobble-100, count: 4", "cobble-107, count: 8", StringComparison.Ordinal).Replace("# soft", "# very soft", StringComparison.Ordinal),
            (await shop.ReadAsync(item.Id, cancel: Cancel)).Files.Main.Text);
    }

    [Fact]
    public async Task Two_people_who_change_the_same_key_get_a_choice_for_that_key_alone()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        await shop.SaveAsync(item.Id, 1, Board(Tern.Replace("80 kg", "85 kg", StringComparison.Ordinal).Replace("series: 12", "series: 10", StringComparison.Ordinal)),
            Ada(), Cancel);
        var mine = Board(Tern.Replace("80 kg", "90 kg", StringComparison.Ordinal).Replace("parallel: 4", "parallel: 5", StringComparison.Ordinal));

        var conflict = Assert.IsType<Conflict>(await shop.SaveAsync(item.Id, 1, mine, Bo(), Cancel));

        Assert.Equal([new Choice("tern.board.yaml", "brief.rider_mass", "80 kg", "90 kg", "85 kg")], conflict.Choices);
        Assert.Equal((1, 2, "Ada"), (conflict.Base.Revision.Number, conflict.Theirs.Revision.Number, conflict.Theirs.Revision.Who));
        Assert.Equal(2, (await shop.HistoryAsync(item.Id, Cancel)).Count);
        foreach (var (side, mass) in new[] { (MergeSide.Mine, "90 kg"), (MergeSide.Theirs, "85 kg") })
            Assert.Equal(Tern.Replace("80 kg", mass, StringComparison.Ordinal).Replace("series: 12", "series: 10", StringComparison.Ordinal)
            .Replace("parallel: 4", "parallel: 5", StringComparison.Ordinal), conflict.Resolve(_ => side).Main.Text);

        var saved = Assert.IsType<Saved>(
            await shop.SaveAsync(item.Id, conflict.Theirs.Revision.Number, conflict.Resolve(_ => MergeSide.Mine), Bo(), Cancel));
        Assert.Equal((3, Act.Saved), (saved.Revision.Number, saved.Revision.Act));
    }

    [Fact]
    public async Task Many_people_who_save_at_once_lose_nothing()
    {
        await using var shop = await NewShopAsync();
        string[] keys = ["gear_mass: 5 kg", "range_wanted: 30 km", "altitude: 20 m", "headwind: 0 m/s", "temperature: 18 °C", "reserve: 15 %"];
        var spaced = Tern.Replace("brief:\n", "brief:\n" + string.Concat(keys.Select((_, at) => $"  # room {at}\n")));
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(spaced), Ada(), Cancel);

        var results = await Task.WhenAll(
            keys.Select((key, at) => Task.Run(
            () => shop.SaveAsync(item.Id, 1, Board(spaced.Replace($"  # room {at}\n", $"  # room {at}\n  {key}\n", StringComparison.Ordinal)), new($"person {at}", key), Cancel), Cancel)));

        Assert.All(results, result => Assert.IsType<Saved>(result));
        Assert.Equal(Enumerable.Range(2, keys.Length), results.Cast<Saved>().Select(saved => saved.Revision.Number).Order());
        var text = (await shop.ReadAsync(item.Id, cancel: Cancel)).Files.Main.Text;
        Assert.All(keys, key => Assert.Contains($"  {key}\n", text, StringComparison.Ordinal));
        Assert.All(keys.Select((_, at) => $"# room {at}\n"), comment => Assert.Contains(comment, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Any_revision_is_restored_as_a_new_one_that_says_so()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        await shop.SaveAsync(item.Id, 1, Board("name: spoilt\n"), Bo(), Cancel);

        var restored = await shop.RestoreAsync(item.Id, 1, Ada("it was better"), Cancel);

        Assert.Equal((3, Act.Restored, 1, "it was better"), (restored.Number, restored.Act, restored.Of, restored.Why));
        Assert.Equal(Tern, (await shop.ReadAsync(item.Id, cancel: Cancel)).Files.Main.Text);
        Assert.Equal("name: spoilt\n", (await shop.ReadAsync(item.Id, 2, Cancel)).Files.Main.Text);
        Assert.Equal(ShopError.NotThere,
            (await Assert.ThrowsAsync<ShopException>(() => shop.RestoreAsync(item.Id, 9, Ada(), Cancel))).Kind);
    }

    [Fact]
    public async Task What_differs_between_two_revisions_is_told_by_key_and_by_line()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        await shop.SaveAsync(item.Id, 1, Board(Tern.Replace("80 kg     # with shoes", "85 kg     # Jo", StringComparison.Ordinal).Replace("    parallel: 4", "    parallel: 4\n    bms: bms-12s", StringComparison.Ordinal)),
            Ada(), Cancel);

        var difference = await shop.DifferenceAsync(item.Id, 1, 2, Cancel);

        Assert.Equal(
            [("brief.rider_mass", "80 kg", "85 kg"), ("comment beside brief.rider_mass", "# with shoes", "# Jo"), ("pack.bms", null, "bms-12s")],
            difference.Keys.Select(change => (change.Key, change.Old, change.New)));
        Assert.Equal([('-', 5), ('+', 5), ('-', 12), ('+', 12), ('+', 13)],
            difference.Lines["tern.board.yaml"].Where(line => line.Sign != ' ').Select(line => (line.Sign, line.Number)));
        Assert.Empty((await shop.DifferenceAsync(item.Id, 2, 2, Cancel)).Keys);
    }

    [Fact]
    public async Task A_branch_knows_where_it_came_from_and_a_copy_does_not()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        await shop.SaveAsync(item.Id, 1, Board(Tern + "\n# later"), Ada(), Cancel);

        var branch = await shop.BranchAsync(item.Id, "Tern for Jo", Bo(), 1, Cancel);
        var copy = await shop.DuplicateAsync(item.Id, "Plover", Bo(), cancel: Cancel);

        Assert.Equal(new BranchOrigin(item.Id, 1), branch.From);
        Assert.Equal(Act.Branched, branch.Latest.Act);
        Assert.Equal(Tern, (await shop.ReadAsync(branch.Id, cancel: Cancel)).Files.Main.Text);
        Assert.Null(copy.From);
        Assert.Equal(Tern + "\n# later", (await shop.ReadAsync(copy.Id, cancel: Cancel)).Files.Main.Text);
        await shop.SaveAsync(branch.Id, 1, Board("name: Jo\n"), Bo(), Cancel);
        Assert.Equal(2, (await shop.ReadAsync(item.Id, cancel: Cancel)).Revision.Number);
        Assert.Equal(["Plover", "Tern", "Tern for Jo"], (await shop.ListAsync(ItemKind.Board, cancel: Cancel)).Select(one => one.Name));
    }

    [Fact]
    public async Task A_deleted_board_is_off_the_list_and_can_be_brought_back_with_its_history()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        await shop.DeleteAsync(item.Id, Bo("sold"), Cancel);

        Assert.Empty(await shop.ListAsync(ItemKind.Board, cancel: Cancel));
        Assert.True(Assert.Single(await shop.ListAsync(ItemKind.Board, withDeleted: true, Cancel)).IsDeleted);
        Assert.Equal(Tern, (await shop.ReadAsync(item.Id, cancel: Cancel)).Files.Main.Text);
        Assert.Equal(ShopError.Refused,
            (await Assert.ThrowsAsync<ShopException>(() => shop.SaveAsync(item.Id, 2, Board("name: x\n"), Ada(), Cancel))).Kind);

        // Its name is free again, until it wants it back.
        var second = await shop.AddAsync(ItemKind.Board, "tern", Board("name: second\n"), Ada(), Cancel);
        Assert.Equal(ShopError.Refused, (await Assert.ThrowsAsync<ShopException>(() => shop.BringBackAsync(item.Id, Ada(), Cancel))).Kind);
        await shop.RenameAsync(second.Id, "Plover", Ada(), Cancel);

        Assert.Equal((3, Act.BroughtBack),
            await shop.BringBackAsync(item.Id, Ada(), Cancel) is var back ? (back.Number, back.Act) : default);
        Assert.Equal(["Plover", "Tern"], (await shop.ListAsync(ItemKind.Board, cancel: Cancel)).Select(one => one.Name));
    }

    [Fact]
    public async Task A_name_is_given_once_and_found_whatever_its_capitals()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        var other = await shop.AddAsync(ItemKind.Board, "Plover", Board(Tern), Ada(), Cancel);

        Assert.Equal(item.Id, (await shop.FindAsync(ItemKind.Board, "tERN", Cancel))?.Id);
        Assert.Null(await shop.FindAsync(ItemKind.Shelf, "Tern", Cancel));
        foreach (var taken in new Func<Task>[] { () => shop.AddAsync(ItemKind.Board, "TERN", Board(Tern), Ada(), Cancel),
            () => shop.RenameAsync(other.Id, "tern", Ada(), Cancel), () => shop.BranchAsync(other.Id, "tern ", Ada(), cancel: Cancel) })
            Assert.Equal("The name", (await Assert.ThrowsAsync<ShopException>(taken)).Says[..8]);
        Assert.Equal((2, "TERN", Act.Renamed),
            await shop.RenameAsync(item.Id, "TERN", Ada(), Cancel) is var renamed ? (renamed.Number, renamed.Name, renamed.Act) : default);
        Assert.Equal(ShopError.NotThere, (await Assert.ThrowsAsync<ShopException>(() => shop.ReadAsync(Guid.Empty, cancel: Cancel))).Kind);
    }

    [Fact]
    public async Task Of_many_who_take_one_name_at_once_one_gets_it()
    {
        await using var shop = await NewShopAsync();

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 6).Select(at => Task.Run(async () =>
        {
            try
            {
                await shop.AddAsync(ItemKind.Board, "Tern", Board($"name: {at}\n"), Ada(), Cancel);
                return ShopError.NotThere;
            }
            catch (ShopException trouble)
            {
                return trouble.Kind;
            }
        }, Cancel)));

        Assert.Single(outcomes, ShopError.NotThere);
        Assert.Equal(5, outcomes.Count(kind => kind == ShopError.Refused));
        Assert.Single(await shop.ListAsync(ItemKind.Board, cancel: Cancel));
    }

    [Fact]
    public async Task The_shelf_is_searched_by_all_words_and_shows_price_and_stock()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Shelf, "motors", FileSet.FromText("motors.yaml", Motors), Ada(), Cancel);
        await shop.AddAsync(ItemKind.Shelf, "odd", FileSet.FromText("odd.yaml", "- id: 100%_round\n  kind: wheel\n  use: nothing\n- not a part\n"), Ada(), Cancel);

        Assert.Equal(new StockedPart(item.Id, "m6374-170", "motor", "Larkmere 63x74, 170", "Dunlin Stores", "92 EUR", 4), Assert.Single(await shop.FindPartsAsync("MOTOR dunlin", Cancel)));
        Assert.Equal(["m5065-200", "m6374-170", "100%_round"], (await shop.FindPartsAsync("", Cancel)).Select(part => part.Id));
        Assert.Equal("100%_round", Assert.Single(await shop.FindPartsAsync("%_", Cancel)).Id);
        Assert.Empty(await shop.FindPartsAsync("motor nowhere", Cancel));
        await shop.DeleteAsync(item.Id, Ada(), Cancel);
        Assert.Empty(await shop.FindPartsAsync("motor", Cancel));
    }

    [Fact]
    public async Task A_changed_price_or_stock_is_a_revision_and_leaves_the_rest_as_it_was_written()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Shelf, "motors", FileSet.FromText("motors.yaml", Motors), Ada(), Cancel);
        var part = Assert.Single(await shop.FindPartsAsync("m6374-170", Cancel));

        await shop.ChangePartAsync(part, "stock", "3", Ada("one used"), Cancel);
        await shop.ChangePartAsync(part, "price", "95 EUR", Ada("new list"), Cancel);
        await shop.ChangePartAsync(part, "note", "quiet", Ada(), Cancel);

        Assert.Equal(
            Motors.Replace("stock: 4\n", "stock: 3\n  note: quiet\n", StringComparison.Ordinal).Replace("92 EUR", "95 EUR", StringComparison.Ordinal),
            (await shop.ReadAsync(item.Id, cancel: Cancel)).Files.Main.Text);
        Assert.Equal(("95 EUR", 3),
            Assert.Single(await shop.FindPartsAsync("m6374-170", Cancel)) is var changed ? (changed.Price, changed.Stock) : default);
        Assert.IsType<Unchanged>(await shop.ChangePartAsync(part, "stock", "3", Ada(), Cancel));
        await shop.RestoreAsync(item.Id, 1, Ada(), Cancel);
        Assert.Equal(4, Assert.Single(await shop.FindPartsAsync("m6374-170", Cancel)).Stock);
        Assert.Equal(ShopError.NotThere,
            (await Assert.ThrowsAsync<ShopException>(() => shop.ChangePartAsync(part with { Id = "gone" }, "stock", "1", Ada(), Cancel))).Kind);
    }

    [Fact]
    public async Task An_exported_shop_is_read_into_an_empty_one_and_exports_the_same_bytes()
    {
        await using var shop = await NewShopAsync();
        await Fill(shop);
        await shop.ExportAsync(Here.At("first"), cancel: Cancel);

        await using var second = await NewShopAsync("second");
        await second.ImportAsync(Here.At("first"), Cancel);
        await second.ExportAsync(Here.At("again"), cancel: Cancel);

        Assert.Equal(Content(Here.At("first")), Content(Here.At("again")));
        Assert.Equal(await shop.ListAsync(ItemKind.Board, withDeleted: true, Cancel),
            await second.ListAsync(ItemKind.Board, withDeleted: true, Cancel));
        Assert.Equal(await shop.FindPartsAsync("", Cancel), await second.FindPartsAsync("", Cancel));
        Assert.Equal(ShopError.Refused, (await Assert.ThrowsAsync<ShopException>(() => second.ImportAsync(Here.At("first"), Cancel))).Kind);
        Assert.Equal(ShopError.Refused,
            (await Assert.ThrowsAsync<ShopException>(() => second.ExportAsync(Here.At("first"), cancel: Cancel))).Kind);
    }

    [Fact]
    public async Task A_built_board_knows_its_design_by_identity_and_keeps_photos_and_logs_byte_for_byte()
    {
        await using var shop = await NewShopAsync();
        var built = await BuiltAsync(shop);
        byte[] photo = [0xFF, 0xD8, 0xFF, 0, 1, 2, 13, 10, 13];
        var added = await built.ChangeAsync(
            new AttachedFile("photos/lead.jpg", photo), (text, path) => BuiltText.Add(text, "notes", new Note { Says = "lead of motor 2", File = path }), Ada("a photo"), Cancel);
        // Other bytes under the same name lie beside it; the same bytes once.
        await built.ChangeAsync(new AttachedFile("photos/lead.jpg", [1]), (text, path) => BuiltText.Add(text, "notes", new Note { File = path }), Ada("another"),
            Cancel);
        await built.ChangeAsync(new AttachedFile("photos/lead.jpg", photo), (text, path) => BuiltText.Add(text, "notes", new Note { File = path }), Ada("the same"),
            Cancel);
        await shop.RenameAsync((await shop.FindAsync(ItemKind.Board, "Tern", Cancel))!.Id, "Sandpiper", Bo(), Cancel);
        await shop.SaveAsync((await shop.FindAsync(ItemKind.Board, "Sandpiper", Cancel))!.Id, 2, Board("boardwright: 1\nname: Sandpiper\n"), Bo("later"), Cancel);

        Assert.Null(added.Refusal);
        var now = (await built.ReadAsync(Cancel)).Loaded.Built!;
        Assert.Equal(["photos/lead.jpg", "photos/lead-2.jpg", "photos/lead.jpg"], now.Notes.Select(note => note.File.Value));
        Assert.Equal(photo, await built.FileAsync("photos/lead.jpg", Cancel));
        Assert.Equal([1], await built.FileAsync("photos/lead-2.jpg", Cancel));
        Assert.Null(await built.FileAsync("photos/none.jpg", Cancel));
        var design = await built.DesignAsync(now, Cancel);
        Assert.Equal("Sandpiper, revision 1", design.Name);
        Assert.Equal(("Tern", 1), (now.Board.Value, now.Revision.Value));
        Assert.Equal(ShopError.Refused,
            (await Assert.ThrowsAsync<ShopException>(() => BuiltInShop.BeginAsync(shop, "tern-0001", "Sandpiper", null, Now, Ada(), Cancel))).Kind);
        Assert.Equal(ShopError.NotThere,
            (await Assert.ThrowsAsync<ShopException>(() => BuiltInShop.BeginAsync(shop, "TERN-0002", "Plover", null, Now, Ada(), Cancel))).Kind);
        Assert.Equal(ShopError.Refused,
            (await Assert.ThrowsAsync<ShopException>(() => BuiltInShop.BeginAsync(shop, "../x", "Sandpiper", null, Now, Ada(), Cancel))).Kind);
    }

    [Fact]
    public async Task Many_hands_on_one_built_board_lose_nothing()
    {
        await using var shop = await NewShopAsync();
        await BuiltAsync(shop);

        await Task.WhenAll(Enumerable.Range(1, 6).Select(hand => Task.Run(async () =>
        {
            var built = (await BuiltInShop.FindAsync(shop, "tern-0001", Cancel))!;
            await built.ChangeAsync(text =>
                BuiltText.Add(text, "steps",
                new DoneStep { Step = FormattableString.Invariant($"step-{hand}"), When = Now, Who = FormattableString.Invariant($"hand {hand}") }),
                new(FormattableString.Invariant($"hand {hand}"), "a step"), Cancel);
        }, Cancel)));

        var (_, opened) = Assert.Single(await BuiltInShop.ListAsync(shop, Cancel));
        Assert.Equal(Enumerable.Range(1, 6).Select(hand => FormattableString.Invariant($"step-{hand}")),
            opened.Loaded.Built!.Steps.Select(step => step.Step.Value).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Built_boards_and_loggers_are_exported_and_read_again_to_the_byte()
    {
        await using var shop = await NewShopAsync();
        var built = await BuiltAsync(shop);
        await built.ChangeAsync(new AttachedFile("rides/harbour.csv", [.. "t_s,v\r\n0,1\r\n"u8, 0xFF, 0]),
            (text, path) => BuiltText.Add(text, "rides", new LoggedRide { File = path }), Ada("a ride"), Cancel);
        await built.RememberAsync(Mapping("speed km/h"), Ada(), Cancel);
        await shop.ExportAsync(Here.At("first"), cancel: Cancel);

        await using var second = await NewShopAsync("second");
        await second.ImportAsync(Here.At("first"), Cancel);
        await second.ExportAsync(Here.At("again"), cancel: Cancel);

        Assert.Equal(Content(Here.At("first")), Content(Here.At("again")));
        Assert.True(File.Exists(Here.At("first/built/tern-0001/0002/rides/harbour.csv")));
        var there = (await BuiltInShop.FindAsync(second, "TERN-0001", Cancel))!;
        Assert.Equal(await built.FileAsync("rides/harbour.csv", Cancel), await there.FileAsync("rides/harbour.csv", Cancel));
        Assert.Equal("Tern, revision 1", (await there.DesignAsync((await there.ReadAsync(Cancel)).Loaded.Built!, Cancel)).Name);
        Assert.Equal("speed km/h", (await there.RecallAsync(Mapping("none"), Cancel))!.Columns["v"]);
    }

    [Fact]
    public async Task How_a_logger_is_read_is_remembered_under_its_row_of_names_and_can_be_corrected()
    {
        await using var shop = await NewShopAsync();
        var built = await BuiltAsync(shop);

        Assert.Null(await built.RecallAsync(Mapping("none"), Cancel));
        await built.RememberAsync(Mapping("speed m/s"), Ada(), Cancel);
        await built.RememberAsync(Mapping("speed km/h"), Bo("it was km/h"), Cancel);

        Assert.Equal("speed km/h", (await built.RecallAsync(Mapping("none"), Cancel))!.Columns["v"]);
        Assert.Null(await built.RecallAsync(Mapping("none", extra: true), Cancel));
        Assert.Equal(2, Assert.Single(await shop.ListAsync(ItemKind.Logger, cancel: Cancel)).Latest.Number);
    }

    static Moment Now { get; } = Moment.Read("2026-05-04 18:00")!.Value;

    static async Task<BuiltInShop> BuiltAsync(Shop shop)
    {
        await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        return await BuiltInShop.BeginAsync(shop, "TERN-0001", "tern", null, Now, Ada("begun"), Cancel);
    }

    static LogMapping Mapping(string meaning, bool extra = false) =>
        RideLogFile.Read(System.Text.Encoding.UTF8.GetBytes($"t_s,v,pack_voltage_V{(extra ? ",more" : "")}\n0,1,40{(extra ? ",1" : "")}\n1,2,40{(extra ? ",1" : "")}\n"), "a.csv",
        new() { Columns = new Dictionary<string, string> { ["v"] = meaning } }).Mapping!;

    [Fact]
    public async Task A_damaged_folder_is_refused_and_nothing_of_it_is_read()
    {
        await using (var shop = await NewShopAsync())
        {
            await Fill(shop);
            await shop.ExportAsync(Here.At("export"), cancel: Cancel);
        }

        await using var second = await NewShopAsync("second");
        foreach (var (file, spoil) in new (string, Func<string, string?>)[]
        {
            ("shelf/motors/0002/motors.yaml", static text => text + "\n"),
            ("shelf/motors/0002/motors.yaml", static _ => null),
            ("shelf/motors/history.json", static text => text.Replace("\"number\": 2", "\"number\": 7", StringComparison.Ordinal)),
            ("shelf/motors/history.json", static text => text.Replace("motors.yaml", "../motors.yaml", StringComparison.Ordinal)),
            ("shelf/motors/history.json", static text => text[..^20]),
            ("shop.json", static text => text.Replace("\"boardwright_shop\": 1", "\"boardwright_shop\": 9", StringComparison.Ordinal)),
            ("shop.json", static _ => null),
        })
        {
            var path = Here.At("export/" + file);
            var text = await File.ReadAllTextAsync(path, Cancel);
            if (spoil(text) is { } spoilt)
                await File.WriteAllTextAsync(path, spoilt, Cancel);
            else
                File.Delete(path);

            await Assert.ThrowsAsync<ShopException>(() => second.ImportAsync(Here.At("export"), Cancel));
            Assert.Empty(await second.ListAsync(ItemKind.Board, withDeleted: true, Cancel));
            await File.WriteAllTextAsync(path, text, Cancel);
        }

        await second.ImportAsync(Here.At("export"), Cancel);
        Assert.Equal(3, (await second.ListAsync(ItemKind.Board, withDeleted: true, Cancel)).Count);
    }

    [Fact]
    public async Task A_shop_is_replaced_by_an_exported_one_after_a_backup()
    {
        await using var shop = await NewShopAsync();
        await Fill(shop);
        await shop.ExportAsync(Here.At("good"), cancel: Cancel);
        var tern = await shop.FindAsync(ItemKind.Board, "Tern", Cancel);
        await shop.SaveAsync(tern!.Id, tern.Latest.Number, Board("name: spoilt\n"), Bo(), Cancel);

        var backup = await shop.ReplaceAsync(Here.At("good"), Cancel);
        await shop.ExportAsync(Here.At("again"), cancel: Cancel);

        Assert.Equal(Content(Here.At("good")), Content(Here.At("again")));
        Assert.True(Path.Exists(backup));
    }

    [Fact]
    public async Task What_is_cancelled_changes_nothing()
    {
        await using var shop = await NewShopAsync();
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), stop.Token));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => shop.ExportAsync(Here.At("export"), cancel: stop.Token));
        Assert.Empty(await shop.ListAsync(ItemKind.Board, cancel: Cancel));
        Assert.Empty(Directory.EnumerateFileSystemEntries(Here.Path, "export*"));
    }

    public void Dispose()
    {
        Here.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <summary>A shop with a bit of everything.</summary>
    protected static async Task Fill(Shop shop)
    {
        ArgumentNullException.ThrowIfNull(shop);
        var tern = await shop.AddAsync(
            ItemKind.Board, "Tern", new FileSet("tern/tern.board.yaml", [KeptFile.FromText("tern/tern.board.yaml", Tern), KeptFile.FromText("shelf/motors.yaml", Motors), new("routes/hill.gpx", [1, 0, 13, 10])]),
            Ada("begun: \"first\" <try> ä"), Cancel);
        await shop.SaveAsync(tern.Id, 1,
            (await shop.ReadAsync(tern.Id, cancel: Cancel)).Files.With("tern/tern.board.yaml", "\uFEFF" + Tern.Replace("\n", "\r\n", StringComparison.Ordinal)), Bo(),
            Cancel);
        await shop.RestoreAsync(tern.Id, 1, Ada(), Cancel);
        var branch = await shop.BranchAsync(tern.Id, "Tern für Jo", Ada(), 2, Cancel);
        await shop.RenameAsync(branch.Id, "tern!", Ada(), Cancel);
        var gone = await shop.DuplicateAsync(tern.Id, "Gone", Ada(), cancel: Cancel);
        await shop.DeleteAsync(gone.Id, Ada(), Cancel);
        var motors = await shop.AddAsync(ItemKind.Shelf, "motors", FileSet.FromText("motors.yaml", Motors), Ada(), Cancel);
        await shop.ChangePartAsync((await shop.FindPartsAsync("m5065", Cancel))[0], "stock", "7", Ada(), Cancel);
        Assert.Equal(2, (await shop.HistoryAsync(motors.Id, Cancel)).Count);
    }

    /// <summary>Every file of a folder with its bytes.</summary>
    protected static IReadOnlyDictionary<string, string> Content(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .Order(StringComparer.Ordinal)
        .ToDictionary(file => Path.GetRelativePath(folder, file), file => Convert.ToHexString(File.ReadAllBytes(file)));
}
