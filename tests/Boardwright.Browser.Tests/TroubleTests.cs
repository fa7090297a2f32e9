using Boardwright.Tests.Shops;
using Microsoft.Data.Sqlite;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

/// <summary>What a builder sees when the machine lets the workbench down: words, what was saved last, and the edits still there.</summary>
public sealed class TroubleTests(Workshop workshop, PostgresServer server) : PageTests(workshop), IClassFixture<PostgresServer>
{
    [Fact]
    public async Task A_browser_that_knew_an_earlier_start_is_no_trouble_to_the_next()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await PageAsync(program);

        await program.KillAsync();
        await program.RestartAsync();
        await page.ReloadAsync();
        await Expect(page.Locator("[data-ready=yes]")).ToHaveCountAsync(1);

        Assert.Empty(await program.KillAsync());
    }

    [Fact]
    public async Task A_full_disk_leaves_the_file_as_it_was_and_the_edit_on_the_desk()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The limit on the size of a running program's files is one of Linux.");
        await using var program = await ProgramUnderTest.StartAsync("tern/tern.board.yaml");
        var file = Path.Combine(program.Folder, "tern", "tern.board.yaml");
        var before = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        await program.LimitFilesAsync("100");
        var page = await PageAsync(program, "brief");

        await ChangeAsync(page, "91 kg");

        await Expect(page.Locator(".title-block")).ToContainTextAsync("could not be written");
        await Expect(page.Locator(".title-block")).ToContainTextAsync("What was saved last is as it was.");
        Assert.Equal(before, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        await program.LimitFilesAsync("unlimited");
        await SaveAsync(page);
        await Expect(page.Locator(".title-block")).ToContainTextAsync("Saved in");
        Assert.Contains("rider_mass: 91 kg", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_shop_that_another_program_holds_is_said_so_and_the_save_succeeds_later()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await KeptAsync(program);
        await using (var other = new SqliteConnection($"Data Source={Path.Combine(program.Folder, "shop.db")};Pooling=false"))
        {
            await other.OpenAsync(TestContext.Current.CancellationToken);
            await ExecuteAsync(other, "BEGIN IMMEDIATE");
            await ChangeAsync(page, "91 kg");
            await Expect(page.Locator(".title-block")).ToContainTextAsync("Another program is writing");
            await ExecuteAsync(other, "ROLLBACK");
        }

        await SaveAsync(page);
        await Expect(page.Locator(".title-block")).ToContainTextAsync("Saved as revision 2.");
    }

    [Fact]
    public async Task A_damaged_shop_is_said_so_with_what_to_do_and_the_board_can_still_be_worked_on()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        await program.KillAsync();
        await File.WriteAllTextAsync(Path.Combine(program.Folder, "shop.db"), new string('x', 10_000), TestContext.Current.CancellationToken);
        await program.RestartAsync();

        var page = await PageAsync(program, "shop");

        await Expect(page.Locator(".offer.wrong")).ToContainTextAsync("is damaged or is not a database");
        await page.Locator("nav a", new() { HasText = "Board" }).ClickAsync();
        await Expect(page.Locator("#figure-cruise\\.range")).ToBeVisibleAsync();
        Assert.Equal(new string('x', 10_000),
            await File.ReadAllTextAsync(Path.Combine(program.Folder, "shop.db"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_lost_connection_to_the_server_keeps_the_edit_until_the_server_is_back()
    {
        await using var program = await ProgramUnderTest.StartAsync(shop: await server.NewDatabaseAsync());
        var page = await KeptAsync(program);
        await server.StopAsync();
        try
        {
            await ChangeAsync(page, "91 kg");
            await Expect(page.Locator(".title-block")).ToContainTextAsync("does not answer");
            await Expect(page.Locator(".title-block")).ToContainTextAsync("with changes not saved");
        }
        finally
        {
            await server.StartAsync();
        }

        await SaveAsync(page);
        await Expect(page.Locator(".title-block")).ToContainTextAsync("Saved as revision 2.");
    }

    async Task<IPage> KeptAsync(ProgramUnderTest program)
    {
        var page = await PageAsync(program, "shop");
        await page.Locator(".told-side input").First.FillAsync("Heron");
        await page.GetByText("Keep in the shop under this name").ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("the shop, revision 1");
        await page.Locator("nav a", new() { HasText = "Brief" }).ClickAsync();
        return page;
    }

    static async Task ChangeAsync(IPage page, string mass)
    {
        var field = page.GetByLabel("rider mass", new() { Exact = true });
        await field.FillAsync(mass);
        await field.PressAsync("Enter");
        await Expect(page.Locator(".title-block")).ToContainTextAsync("with changes not saved");
        await SaveAsync(page);
    }

    static Task SaveAsync(IPage page) => page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();

    static async Task ExecuteAsync(SqliteConnection connection, string sql)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }
}
