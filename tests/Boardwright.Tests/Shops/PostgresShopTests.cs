using Boardwright.Shops;
using Boardwright.Shops.Postgres;
using Boardwright.Shops.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Boardwright.Tests.Shops;

/// <summary>A shop on a real PostgreSQL server, and what can befall it.</summary>
public sealed class PostgresShopTests(PostgresServer server) : ShopTests, IClassFixture<PostgresServer>
{
    protected override async Task<ShopLocation> NewPlaceAsync(string name = "shop") => await Place();

    async Task<PostgresLocation> Place() => new(await server.NewDatabaseAsync()) { BackupFolder = Here.At("backups") };

    [Fact]
    public async Task A_lost_connection_is_said_in_words_and_the_shop_works_again_when_the_server_does()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        await server.StopAsync();
        try
        {
            var trouble = await Assert.ThrowsAsync<ShopException>(() => shop.SaveAsync(item.Id, 1, Board("name: x\n"), Ada(), Cancel));
            Assert.Equal(ShopError.Unreachable, trouble.Kind);
            Assert.Contains("does not answer", trouble.Says, StringComparison.Ordinal);
        }
        finally
        {
            await server.StartAsync();
        }

        Assert.Equal(Tern, (await shop.ReadAsync(item.Id, cancel: Cancel)).Files.Main.Text);
        Assert.IsType<Saved>(await shop.SaveAsync(item.Id, 1, Board("name: x\n"), Ada(), Cancel));
    }

    [Fact]
    public async Task A_server_that_was_started_anew_between_two_calls_is_not_even_noticed()
    {
        await using var shop = await NewShopAsync();
        var item = await shop.AddAsync(ItemKind.Board, "Tern", Board(Tern), Ada(), Cancel);
        await server.StopAsync();
        await server.StartAsync();

        Assert.Equal(Tern, (await shop.ReadAsync(item.Id, cancel: Cancel)).Files.Main.Text);
    }

    [Fact]
    public async Task A_database_that_is_not_there_is_said_in_words_without_the_password()
    {
        Assert.SkipWhen(server.Missing is not null, server.Missing ?? "");
        var trouble = await Assert.ThrowsAsync<ShopException>(
            () => Shop.OpenAsync(new PostgresLocation(server.Words("nowhere") + ";Password=secret"), new Clock(), Cancel));

        Assert.Equal(ShopError.Unreachable, trouble.Kind);
        Assert.Contains("no database nowhere", trouble.Says, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", trouble.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_shop_moves_from_a_file_to_a_server_and_back_without_a_byte_changed()
    {
        await using var file = await Shop.OpenAsync(new SqliteLocation(Here.At("shop.db")), new Clock(), Cancel);
        await Fill(file);
        await file.ExportAsync(Here.At("first"), cancel: Cancel);
        await using var shop = await NewShopAsync();
        await shop.ImportAsync(Here.At("first"), Cancel);
        await shop.ExportAsync(Here.At("second"), cancel: Cancel);
        await using var back = await Shop.OpenAsync(new SqliteLocation(Here.At("back.db")), new Clock(), Cancel);
        await back.ImportAsync(Here.At("second"), Cancel);
        await back.ExportAsync(Here.At("third"), cancel: Cancel);

        Assert.Equal(Content(Here.At("first")), Content(Here.At("second")));
        Assert.Equal(Content(Here.At("first")), Content(Here.At("third")));
    }

    [Fact]
    public async Task Tables_of_an_older_program_are_backed_up_and_then_brought_up_to_date()
    {
        var place = await Place();
        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
            await Fill(shop);
        LaterMigrations.Install(place);

        await using (var shop = await Shop.OpenAsync(place, new Clock(), Cancel))
            Assert.NotEmpty(await shop.ListAsync(ItemKind.Board, cancel: Cancel));

        var backup = Assert.Single(Directory.GetDirectories(place.BackupFolder));
        Assert.Equal(["README.txt", "__EFMigrationsHistory.csv", "contents.csv", "files.csv", "items.csv", "parts.csv", "people.csv", "people_claims.csv", "people_logins.csv", "people_tokens.csv", "revisions.csv"],
            Directory.GetFiles(backup).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_shop_from_before_the_first_release_is_left_as_it_is_and_one_is_told_how_to_take_it_along()
    {
        var place = await Place();
        await using (await Shop.OpenAsync(place, new Clock(), Cancel))
        {
            await using var context = place.CreateDbContext();
            Assert.False(context.Database.HasPendingModelChanges());
            await context.Database.ExecuteSqlRawAsync("UPDATE \"__EFMigrationsHistory\" SET \"MigrationId\" = '20261125152115_People'", Cancel);
        }

        var trouble = await Assert.ThrowsAsync<ShopException>(() => Shop.OpenAsync(place, new Clock(), Cancel));

        Assert.Equal(ShopError.NotOurs, trouble.Kind);
        Assert.Contains("boardwright shop export FOLDER", trouble.Remedy, StringComparison.Ordinal);
        Assert.False(Directory.Exists(place.BackupFolder));
    }

    [Theory]
    [MemberData(nameof(Killing.Points), MemberType = typeof(Killing))]
    public async Task A_program_that_is_killed_while_it_saves_leaves_everything_that_it_acknowledged(int lines)
    {
        var place = await Place();
        var acknowledged = await Killing.SavesAsync(Here, place.Words, lines, Cancel);

        await using var shop = await Shop.OpenAsync(place, new Clock(), Cancel);
        await Killing.NothingIsLost(shop, acknowledged, Cancel);
    }
}
