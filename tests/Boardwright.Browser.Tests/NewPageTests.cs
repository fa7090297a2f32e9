using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class NewPageTests(Workshop workshop) : PageTests(workshop)
{
    [Fact]
    public async Task A_board_is_begun_from_answers_by_keyboard_alone()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await PageAsync(program, "new", 390, 900, ColorScheme.Dark);
        await Expect(page.Locator("h1")).ToHaveTextAsync("A new board");
        await PageAssertions.HoldAsync(page);

        await page.GetByLabel("What is it called?").FocusAsync();
        await page.Keyboard.TypeAsync("Stork");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.TypeAsync("heavy");
        await page.Keyboard.PressAsync("Tab");
        await Expect(page.Locator("[role=alert]")).ToContainTextAsync("'heavy' does not begin with a number");
        await page.GetByLabel("How heavy is the rider?").FillAsync("95");
        await page.GetByLabel("How far on one charge?").FillAsync("35 km");
        await page.GetByLabel("How far on one charge?").PressAsync("Tab");
        await Expect(page.GetByLabel("How many cells?")).ToHaveValueAsync("12S4P");
        await Expect(page.Locator("[role=alert]")).ToHaveCountAsync(0);
        await page.GetByLabel("Which wheels?").FillAsync("97 mm");
        await page.GetByLabel("Which wheels?").PressAsync("Enter");

        await Expect(page).ToHaveURLAsync(program.Address + "board");
        await Expect(page.Locator(".title-block")).ToContainTextAsync("the shop, revision 1");
        await page.GotoAsync(program.Address + "brief");
        await ReadyAsync(page);
        await Expect(page.GetByLabel("rider mass", new() { Exact = true })).ToHaveValueAsync("95 kg");
        await Expect(page.Locator(".title-block")).ToContainTextAsync("Stork");
        Assert.Empty(Troubles);
    }

    [Fact]
    public async Task A_board_without_a_name_is_not_begun()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "new");

        await page.GetByRole(AriaRole.Button, new() { Name = "Begin the board" }).ClickAsync();
        await Expect(page.Locator("[role=alert]")).ToHaveTextAsync("Give the board a name.");
        await PageAssertions.HoldAsync(page);
    }
}
