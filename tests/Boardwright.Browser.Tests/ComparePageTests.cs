using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class ComparePageTests(Workshop workshop) : PageTests(workshop)
{
    [Fact]
    public async Task Variants_are_set_side_by_side_and_only_clear_differences_are_marked()
    {
        var program = await SharedAsync();
        var page = await ComparedAsync(program);

        var marked = page.Locator("#beside-cruise\\.range td").Nth(1);
        await Expect(marked).ToHaveClassAsync("differs");
        await Expect(marked).ToContainTextAsync("▼");
        await Expect(marked).ToContainTextAsync("less");
        await Expect(page.Locator("#beside-mass\\.board td").Nth(1)).ToContainTextAsync("the same");
        await Expect(page.Locator("#beside-mass\\.board .differs")).ToHaveCountAsync(0);
        await Expect(page.Locator("#compare-range-title")).ToBeAttachedAsync();
        Assert.Empty(Troubles);
    }

    [Fact]
    public async Task A_part_of_the_shelf_is_tried_beside_the_board_and_taken_onto_the_desk()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "compare");

        await page.GetByLabel("another", new() { Exact = true }).SelectOptionAsync("wheels");
        await page.GetByLabel("from the shelf").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Set beside" }).First.ClickAsync();
        await Expect(page.GetByLabel("Name of variant 2"))
            .ToHaveValueAsync(new System.Text.RegularExpressions.Regex(
            "^with ", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromMinutes(1)));
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it" }).ClickAsync();

        await Expect(page.Locator(".title-block .notice")).ToContainTextAsync("variant taken: with ");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take it" })).ToBeDisabledAsync();
    }

    [Fact]
    public async Task Another_board_of_the_shop_is_set_beside_and_opened()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await PageAsync(program, "shop");
        await page.Locator(".told-side input").First.FillAsync("Heron");
        await page.GetByText("Keep in the shop under this name").ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("the shop, revision 1");
        await page.Locator(".told-side input").First.FillAsync("Egret");
        await page.GetByText("Duplicate").ClickAsync();
        await Expect(page.Locator(".picks tbody tr")).ToHaveCountAsync(2);

        await page.Locator("nav a", new() { HasText = "Compare" }).ClickAsync();
        await page.GetByLabel("another board of the shop").SelectOptionAsync("Heron");
        await page.Locator("form", new() { HasText = "another board of the shop" }).GetByRole(AriaRole.Button).ClickAsync();
        await Expect(page.GetByLabel("Name of variant 2")).ToHaveValueAsync("Heron");
        await Expect(page.Locator("#beside-mass\\.board td").Nth(1)).ToContainTextAsync("the same");
        await page.GetByText("Open it").ClickAsync();
        await Expect(page.GetByLabel("another board of the shop").Locator("option", new() { HasText = "Egret" })).ToHaveCountAsync(1);
        await Expect(page.GetByLabel("Name of variant 2")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_value_that_cannot_be_is_refused_with_a_reason()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "compare");

        await page.GetByLabel("another value of").FillAsync("brief.cruise_speed");
        await page.GetByLabel("namely").FillAsync("quick");
        await page.GetByLabel("namely").PressAsync("Enter");

        await Expect(page.Locator(".refusal")).ToBeVisibleAsync();
        await Expect(page.GetByLabel("Name of variant 2")).ToHaveCountAsync(0);
    }

    [Theory]
    [MemberData(nameof(Screens.OnADeskInTheLight), MemberType = typeof(Screens))]
    public async Task The_page_has_no_violation_that_axe_knows_and_nothing_sticks_out(int width, ColorScheme scheme)
    {
        var program = await SharedAsync();
        var page = await ComparedAsync(program, width, scheme);

        await PageAssertions.HoldAsync(page);
    }

    async Task<IPage> ComparedAsync(ProgramUnderTest program, int width = 1400, ColorScheme scheme = ColorScheme.Light)
    {
        var page = await PageAsync(program, "compare", width, 1000, scheme);
        await page.GetByLabel("another value of").FillAsync("brief.cruise_speed");
        await page.GetByLabel("namely").FillAsync("32 km/h");
        await page.GetByLabel("namely").PressAsync("Enter");
        await page.Locator("[data-sampled=yes]").WaitForAsync();
        return page;
    }
}
