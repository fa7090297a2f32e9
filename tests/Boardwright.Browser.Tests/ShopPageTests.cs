using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class ShopPageTests(Workshop workshop) : PageTests(workshop)
{
    [Fact]
    public async Task A_board_is_kept_changed_compared_and_brought_back()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await PageAsync(program, "shop");
        await KeepAsync(page, "Heron");

        await page.Locator("nav a", new() { HasText = "Brief" }).ClickAsync();
        var mass = page.GetByLabel("rider mass", new() { Exact = true });
        await mass.FillAsync("91 kg");
        await mass.PressAsync("Enter");
        await page.Locator(".why").FillAsync("a heavier customer");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("Saved as revision 2.");

        await page.Locator("nav a", new() { HasText = "Shop" }).ClickAsync();
        await Expect(page.Locator(".picks tbody tr").First).ToContainTextAsync("a heavier customer");
        await page.GetByRole(AriaRole.Button, new() { Name = "Log" }).ClickAsync();
        await page.GetByText("what changed").First.ClickAsync();
        await Expect(page.Locator(".log table")).ToContainTextAsync("brief.rider_mass");
        await page.GetByText("make it the newest").ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("revision 3");
        await page.Locator("nav a", new() { HasText = "Brief" }).ClickAsync();
        await Expect(page.GetByLabel("rider mass", new() { Exact = true })).ToHaveValueAsync("80 kg");

        // The board that was saved last is there again when the program is.
        await program.KillAsync();
        await program.RestartAsync();
        await page.GotoAsync(program.Address + "shop");
        await ReadyAsync(page);
        await Expect(page.Locator(".title-block")).ToContainTextAsync("the shop, revision 3");
    }

    [Fact]
    public async Task Two_people_who_change_the_same_board_get_a_merge_or_a_choice()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var one = await PageAsync(program, "shop");
        await KeepAsync(one, "Heron");
        var other = await PageAsync(program, "brief");

        await ChangeAsync(other, "gear mass", "7 kg");
        await Expect(other.Locator(".title-block")).ToContainTextAsync("Saved as revision 2.");
        await one.Locator("nav a", new() { HasText = "Brief" }).ClickAsync();
        await ChangeAsync(one, "rider mass", "91 kg");
        await Expect(one.Locator(".title-block")).ToContainTextAsync("together with what others changed");
        await Expect(one.GetByLabel("gear mass", new() { Exact = true })).ToHaveValueAsync("7 kg");

        await ChangeAsync(other, "rider mass", "70 kg");
        await Expect(other.Locator(".offer[role=alertdialog]")).ToContainTextAsync("brief.rider_mass");
        await other.Locator(".offer[role=alertdialog]").GetByText("91 kg").ClickAsync();
        await other.GetByText("Save what is chosen").ClickAsync();
        await Expect(other.Locator(".title-block")).ToContainTextAsync("Saved as chosen.");
        await Expect(other.GetByLabel("rider mass", new() { Exact = true })).ToHaveValueAsync("91 kg");
    }

    [Fact]
    public async Task The_shelf_is_kept_and_a_price_changed()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await PageAsync(program, "shelf");

        await page.GetByText("Keep this shelf in the shop").ClickAsync();
        await page.Locator("input[type=search]").FillAsync("larkmere 63");
        var price = page.GetByLabel("Price of m6374-170");
        await price.FillAsync("99 EUR");
        await price.PressAsync("Enter");
        await Expect(page.Locator(".title-block")).ToContainTextAsync("m6374-170: price 99 EUR");
        await page.ReloadAsync();
        await ReadyAsync(page);
        await page.Locator("input[type=search]").FillAsync("m6374-170");
        await Expect(price).ToHaveValueAsync("99 EUR");
    }

    [Fact]
    public async Task A_search_finds_boards_and_puts_one_on_the_desk()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "search");
        foreach (var place in new[] { "deck", "motor m6374", "wheels", "controller", "box" })
            await page.Locator(".held label", new() { HasText = place }).Locator("input").CheckAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Search", Exact = true }).ClickAsync();
        await Expect(page.Locator("#found-title, #none-title")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "To the desk" }).First.ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("a board that the search found");
        await Expect(page.Locator(".parts")).ToContainTextAsync("Larkmere 63x74, 170");
    }

    [Theory]
    [InlineData("shop")]
    [InlineData("shelf")]
    [InlineData("search")]
    public async Task A_page_has_no_violation_that_axe_knows_and_nothing_sticks_out(string place)
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, place, 390, 900, ColorScheme.Dark);
        await Expect(page.Locator("h1")).ToBeVisibleAsync();

        await PageAssertions.HoldAsync(page);
    }

    static async Task KeepAsync(IPage page, string name)
    {
        await page.Locator(".told-side input").First.FillAsync(name);
        await page.GetByText("Keep in the shop under this name").ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("the shop, revision 1");
    }

    static async Task ChangeAsync(IPage page, string label, string value)
    {
        var field = page.GetByLabel(label, new() { Exact = true });
        await field.FillAsync(value);
        await field.PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
    }
}
