using Boardwright.Shops;
using Boardwright.Shops.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Boardwright.Tests.Shops;

/// <summary>A shop in a file, and what can befall it.</summary>
public sealed class SqliteShopTests : ShopTests
{
    protected override Task<ShopLocation> NewPlaceAsync(string name = "shop") => Task.FromResult<ShopLocation>(Place(name));

    // A test waits for another writer however long a busy machine takes; the one that wants to be refused says so.
    SqliteLocation Place(string name = "shop", int patienceSeconds = 300) => new(Here.At($"{name}/shop.db"), patienceSeconds);

    [Fact]
    public async Task A_full_disk_is_said_in_words_and_leaves_the_last_saved_state()
    {
        var place = Place();
        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
            await Fill(shop);
        place.Pragmas = "PRAGMA max_page_count=1;";
        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
        {
            var tern = (await shop.FindAsync(ItemKind.Board, "Tern", Cancel))!;
            var big = Board(string.Concat(Enumerable.Range(0, 40_000).Select(static line => FormattableString.Invariant($"# line {line}\n"))));

            var trouble = await Assert.ThrowsAsync<ShopException>(() => shop.SaveAsync(tern.Id, tern.Latest.Number, big, Ada(), Cancel));

            Assert.Equal(ShopError.Full, trouble.Kind);
            Assert.Contains("is full", trouble.Says, StringComparison.Ordinal);
            Assert.Equal(tern, await shop.FindAsync(ItemKind.Board, "Tern", Cancel));
            Assert.Equal(Tern, (await shop.ReadAsync(tern.Id, cancel: Cancel)).Files.Main.Text);
        }

        place.Pragmas = "";
        await using var later = await Shop.OpenAsync(place, new Clock(), Cancel);
        var again = (await later.FindAsync(ItemKind.Board, "Tern", Cancel))!;
        Assert.IsType<Saved>(await later.SaveAsync(again.Id, again.Latest.Number, Board("name: room again\n"), Ada(), Cancel));
    }

    [Fact]
    public async Task A_database_that_another_program_holds_is_said_to_be_busy_and_works_when_it_is_free()
    {
        await using var shop = await Shop.OpenAsync(Place(patienceSeconds: 1), new Clock(), Cancel);
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        await using (var other = new SqliteConnection($"Data Source={Here.At("shop/shop.db")};Pooling=False"))
        {
            await other.OpenAsync(Cancel);
            await using var hold = await other.BeginTransactionAsync(Cancel);

            Assert.Equal(ShopError.Busy,
                (await Assert.ThrowsAsync<ShopException>(() => shop.SaveAsync(item.Id, 1, Board("name: x\n"), Ada(), Cancel))).Kind);
            // Readers are not held up.
            Assert.Equal(Tern, (await shop.ReadAsync(item.Id, cancel: Cancel)).Files.Main.Text);
        }

        Assert.IsType<Saved>(await shop.SaveAsync(item.Id, 1, Board("name: x\n"), Ada(), Cancel));
    }

    [Fact]
    public async Task A_damaged_file_is_named_with_the_newest_backup_and_recovered_from_it()
    {
        var place = Place();
        string backup;
        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
        {
            await Fill(shop);
            await shop.BackUpAsync(cancel: Cancel);
            backup = await shop.BackUpAsync(cancel: Cancel);
            await shop.ExportAsync(Here.At("before"), cancel: Cancel);
        }

        var bytes = await File.ReadAllBytesAsync(place.Path, Cancel);
        bytes.AsSpan(4096, bytes.Length - 8192).Fill(0xA5);
        await File.WriteAllBytesAsync(place.Path, bytes, Cancel);

        var trouble = await Assert.ThrowsAsync<ShopException>(() => Shop.OpenAsync(place, new Clock(), Cancel));
        Assert.Equal(ShopError.Damaged, trouble.Kind);
        Assert.Contains(backup, trouble.Remedy, StringComparison.Ordinal);

        var aside = await place.RecoverAsync(backup, new Clock(), Cancel);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(aside!, Cancel));
        await using var recovered = await Shop.OpenAsync(place, new Clock(), Cancel);
        await recovered.ExportAsync(Here.At("after"), cancel: Cancel);
        Assert.Equal(Content(Here.At("before")), Content(Here.At("after")));
    }

    [Fact]
    public async Task A_damaged_backup_is_refused_and_the_shop_stays()
    {
        var place = Place();
        await using var shop = await Shop.OpenAsync(place, new Clock(), Cancel);
        await Fill(shop);
        var backup = await shop.BackUpAsync(Here.At("copy.db"), Cancel);
        var bytes = await File.ReadAllBytesAsync(backup, Cancel);
        bytes.AsSpan(4096, 8192).Fill(0xA5);
        await File.WriteAllBytesAsync(backup, bytes, Cancel);

        Assert.Equal(ShopError.Damaged,
            (await Assert.ThrowsAsync<ShopException>(() => place.RecoverAsync(backup, new Clock(), Cancel))).Kind);
        Assert.Equal(ShopError.NotThere,
            (await Assert.ThrowsAsync<ShopException>(() => place.RecoverAsync(Here.At("nowhere.db"), new Clock(), Cancel))).Kind);
        Assert.Equal(ShopError.Refused, (await Assert.ThrowsAsync<ShopException>(() => shop.BackUpAsync(backup, Cancel))).Kind);
        Assert.Equal(3, (await shop.ListAsync(ItemKind.Board, withDeleted: true, Cancel)).Count);
    }

    [Fact]
    public async Task A_shop_that_another_program_is_writing_into_is_not_replaced()
    {
        var place = Place();
        string backup;
        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
        {
            await Fill(shop);
            backup = await shop.BackUpAsync(cancel: Cancel);
        }

        await using (var other = new SqliteConnection($"Data Source={place.Path};Pooling=False"))
        {
            await other.OpenAsync(Cancel);
            await using var hold = await other.BeginTransactionAsync(Cancel);

            Assert.Equal(ShopError.Busy,
                (await Assert.ThrowsAsync<ShopException>(() => place.RecoverAsync(backup, new Clock(), Cancel))).Kind);
        }

        Assert.NotNull(await place.RecoverAsync(backup, new Clock(), Cancel));
        Assert.Empty(Directory.GetFiles(Path.GetDirectoryName(place.Path)!, "*.recovering*"));
    }

    [Fact]
    public async Task An_exported_folder_recovers_a_file_too()
    {
        var place = Place();
        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
        {
            await Fill(shop);
            await shop.ExportAsync(Here.At("export"), cancel: Cancel);
        }

        await File.WriteAllTextAsync(place.Path, "this is not a database, whatever it is called", Cancel);
        Assert.Equal(ShopError.Damaged, (await Assert.ThrowsAsync<ShopException>(() => Shop.OpenAsync(place, new Clock(), Cancel))).Kind);

        await place.RecoverAsync(Here.At("export"), new Clock(), Cancel);
        await using var recovered = await Shop.OpenAsync(place, new Clock(), Cancel);
        await recovered.ExportAsync(Here.At("again"), cancel: Cancel);
        Assert.Equal(Content(Here.At("export")), Content(Here.At("again")));
    }

    [Fact]
    public async Task Tables_of_an_older_program_are_backed_up_and_then_brought_up_to_date()
    {
        var place = Place();
        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
        {
            await shop.AddAsync(ItemKind.Shelf, "old", FileSet.FromText("motors.yaml", Motors), Ada(), Cancel);
            // An older program would not have listed the parts; what is made from the texts is made anew.
            await Execute(place, "DELETE FROM parts");
        }

        place.Close();
        LaterMigrations.Install(place);

        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
            Assert.Equal(["m5065-200", "m6374-170"], (await shop.FindPartsAsync("motor", Cancel)).Select(part => part.Id));

        var backup = Assert.Single(Directory.GetFiles(place.BackupFolder));
        Assert.Matches(@"/shop-before-update-2026-05-04T\d{6}Z\.db$", backup);
        await using (var old = new SqliteLocation(backup).CreateDbContext())
            Assert.Single(await old.Database.GetAppliedMigrationsAsync(Cancel));
        await using var again = await Shop.OpenAsync(place, new Clock(), Cancel);
        Assert.Single(Directory.GetFiles(place.BackupFolder));
    }

    [Fact]
    public async Task A_program_that_was_killed_while_it_made_the_tables_holds_nobody_up()
    {
        var place = Place();
        Directory.CreateDirectory(Path.GetDirectoryName(place.Path)!);
        await Execute(place, "CREATE TABLE __EFMigrationsLock (Id INTEGER PRIMARY KEY, Timestamp TEXT NOT NULL); INSERT INTO __EFMigrationsLock VALUES (1, '2026-01-01')");

        await using var shop = await Shop.OpenAsync(place, new Clock(), Cancel);
        await Fill(shop);
    }

    [Fact]
    public async Task Many_who_open_a_new_shop_at_once_all_get_it()
    {
        var shops = await Task.WhenAll(
            Enumerable.Range(0, 4).Select(_ => Task.Run(() => Shop.OpenAsync(Place(), new Clock(), Cancel), Cancel)));

        await shops[0].AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        Assert.Single(await shops[^1].ListAsync(ItemKind.Board, cancel: Cancel));
        foreach (var shop in shops)
            await shop.DisposeAsync();
    }

    [Fact]
    public async Task A_database_that_is_no_shop_or_a_newer_one_is_left_alone()
    {
        var place = Place();
        Directory.CreateDirectory(Path.GetDirectoryName(place.Path)!);
        await Execute(place, "CREATE TABLE theirs (x)");
        Assert.Equal(ShopError.NotOurs, (await Assert.ThrowsAsync<ShopException>(() => Shop.OpenAsync(place, new Clock(), Cancel))).Kind);

        var newer = Place("newer");
        await using (await Shop.OpenAsync(newer, new Clock(), Cancel))
            await Execute(newer, "INSERT INTO __EFMigrationsHistory VALUES ('29990101000000_Later', '99')");
        Assert.Equal(ShopError.NotOurs, (await Assert.ThrowsAsync<ShopException>(() => Shop.OpenAsync(newer, new Clock(), Cancel))).Kind);
        Assert.Equal(ShopError.NotOurs,
            (await Assert.ThrowsAsync<ShopException>(() => Shop.OpenAsync(new SqliteLocation(Here.Path), new Clock(), Cancel))).Kind);
    }

    [Fact]
    public async Task A_shop_from_before_the_first_release_is_left_as_it_is_and_one_is_told_how_to_take_it_along()
    {
        var place = Place();
        await using (await Shop.OpenAsync(place, new Clock(), Cancel))
            await Execute(place, "DELETE FROM __EFMigrationsHistory; INSERT INTO __EFMigrationsHistory VALUES ('20261125123157_Items', '10'), ('20261125123251_ShelfIndex', '10'), ('20261125152110_People', '10'); PRAGMA wal_checkpoint(TRUNCATE)");
        place.Close();
        var before = await File.ReadAllBytesAsync(place.Path, Cancel);

        var trouble = await Assert.ThrowsAsync<ShopException>(() => Shop.OpenAsync(place, new Clock(), Cancel));

        Assert.Equal(ShopError.NotOurs, trouble.Kind);
        Assert.Contains("before the first release", trouble.Says, StringComparison.Ordinal);
        Assert.Contains("boardwright shop export FOLDER", trouble.Remedy, StringComparison.Ordinal);
        place.Close();
        Assert.Equal(before, await File.ReadAllBytesAsync(place.Path, Cancel));
        Assert.False(Directory.Exists(place.BackupFolder));
    }

    [Fact]
    public async Task The_migrations_make_the_tables_that_the_program_uses()
    {
        await using var shop = await NewShopAsync();
        await using var context = shop.Place.CreateDbContext();

        Assert.False(context.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task Every_save_is_on_the_disk_when_it_is_acknowledged()
    {
        await using var shop = await NewShopAsync();
        await using var context = shop.Place.CreateDbContext();
        await context.Database.OpenConnectionAsync(Cancel);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        var settings = new List<object?>();
        foreach (var pragma in new[] { "journal_mode", "synchronous", "foreign_keys" })
        {
            command.CommandText = "PRAGMA " + pragma;
            settings.Add(await command.ExecuteScalarAsync(Cancel));
        }

        // 2 is FULL.
        Assert.Equal(["wal", 2L, 1L], settings);
    }

    [Theory]
    [MemberData(nameof(Killing.Points), MemberType = typeof(Killing))]
    public async Task A_program_that_is_killed_while_it_saves_leaves_everything_that_it_acknowledged(int lines)
    {
        var place = Place();
        var acknowledged = await Killing.SavesAsync(Here, place.Path, lines, Cancel);

        await using var shop = await Shop.OpenAsync(place, new Clock(), Cancel);
        await Killing.NothingIsLost(shop, acknowledged, Cancel);
        await using var context = place.CreateDbContext();
        await context.Database.OpenConnectionAsync(Cancel);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = "PRAGMA integrity_check";
        Assert.Equal("ok", await command.ExecuteScalarAsync(Cancel));
    }

    static async Task Execute(SqliteLocation place, string sql)
    {
        await using var connection = new SqliteConnection($"Data Source={place.Path};Pooling=False");
        await connection.OpenAsync(Cancel);
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync(Cancel);
    }
}
