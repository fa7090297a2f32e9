using System.IO.Compression;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class PapersPageTests(Workshop workshop) : PageTests(workshop)
{
    [Fact]
    public async Task Papers_are_those_of_the_desk_with_what_was_not_saved_opened_and_fetched()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "brief");
        var mass = page.GetByLabel("rider mass", new() { Exact = true });
        await mass.FillAsync("93 kg");
        await mass.PressAsync("Enter");
        await page.Locator("nav a", new() { HasText = "Papers" }).ClickAsync();
        await page.Locator("[data-written=yes]").WaitForAsync();
        await Expect(page.Locator("[data-written]")).ToContainTextAsync("changes that are not saved");

        // The sheet opens in a page of its own and prints what is on the desk.
        var sheet = await page.Context.RunAndWaitForPageAsync(() => page.Locator("#paper-bench-list a").First.ClickAsync());
        await Expect(sheet.Locator("h1")).ToHaveTextAsync("Tern");
        var spec = await page.Context.RunAndWaitForPageAsync(() => page.Locator("#paper-spec-sheet a").First.ClickAsync());
        await Expect(spec.Locator("body")).ToContainTextAsync("rider 98 kg with gear");

        var pdf = await page.RunAndWaitForDownloadAsync(() => page.Locator("#paper-wiring a[download]").ClickAsync());
        Assert.EndsWith(".wiring.pdf", pdf.SuggestedFilename, StringComparison.Ordinal);
        Assert.Equal("%PDF"u8.ToArray(), (await File.ReadAllBytesAsync(await pdf.PathAsync(), TestContext.Current.CancellationToken))[..4]);

        await page.GetByLabel("a plotter, one sheet").CheckAsync();
        await page.GetByLabel("inside", new() { Exact = true }).CheckAsync();
        await Expect(page.Locator("#paper-drill-template a[download]"))
            .ToHaveAttributeAsync("href",
            new System.Text.RegularExpressions.Regex("inside\\.plotter", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromMinutes(1)));
        var template = await page.RunAndWaitForDownloadAsync(() => page.Locator("#paper-drill-template a[download]").ClickAsync());
        Assert.EndsWith(".drill-template.inside.plotter.pdf", template.SuggestedFilename, StringComparison.Ordinal);
        await Expect(page.Locator(".template img")).ToHaveJSPropertyAsync("complete", true);

        var all = await page.RunAndWaitForDownloadAsync(() => page.GetByText("All as one zip").ClickAsync());
        await using var zip = await ZipFile.OpenReadAsync(await all.PathAsync(), TestContext.Current.CancellationToken);
        Assert.Contains(zip.Entries, e => e.Name.EndsWith(".build-sheet.pdf", StringComparison.Ordinal));
        Assert.Contains(zip.Entries, e => e.Name.EndsWith(".drill-template.outside.dxf", StringComparison.Ordinal));
        Assert.Empty(Troubles);
    }

    [Fact]
    public async Task What_is_missing_and_what_speaks_against_a_paper_stands_beside_it()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "papers");
        await page.Locator("[data-written=yes]").WaitForAsync();

        await Expect(page.Locator("#paper-drill-template .objections")).ToContainTextAsync("gasket");
        await Expect(page.Locator("#paper-wiring svg")).ToContainTextAsync("MAIN FUSE");
    }

    [Fact]
    public async Task The_code_on_the_build_sheet_opens_the_board_of_the_shop()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await PageAsync(program, "shop");
        await page.GetByLabel("name", new() { Exact = true }).FillAsync("Heron 2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the shop" }).ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("the shop, revision 1");
        await page.Locator("nav a", new() { HasText = "Papers" }).ClickAsync();
        await page.Locator("[data-written=yes]").WaitForAsync();
        await page.GetByLabel("address of the boards' pages").FillAsync(program.Address + "board/of");
        await page.GetByLabel("address of the boards' pages").PressAsync("Tab");
        await page.Locator("[data-written=yes]").WaitForAsync();

        var sheet = await page.Context.RunAndWaitForPageAsync(() => page.Locator("#paper-build-sheet a").First.ClickAsync());
        var address = await sheet.Locator(".code a").GetAttributeAsync("href");
        Assert.NotNull(address);

        // Another board lies on the desk of whoever points a telephone at the code.
        await page.GotoAsync(program.Address + "shop");
        await ReadyAsync(page);
        await page.GetByLabel("name", new() { Exact = true }).FillAsync("Plover");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the shop" }).ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("revision 1");
        var other = await page.Context.NewPageAsync();
        await other.GotoAsync(address);
        await Expect(other).ToHaveURLAsync(program.Address + "board");
        await ReadyAsync(other);
        await Expect(other.Locator(".title-block")).ToContainTextAsync("the shop, revision 1");

        await other.GotoAsync(program.Address + "board/of/nothing-of-the-kind");
        await Expect(other.Locator("main")).ToContainTextAsync("no board of this name");
    }

    [Theory]
    [MemberData(nameof(Screens.OnADeskInTheLight), MemberType = typeof(Screens))]
    public async Task The_page_holds_on_every_screen(int width, ColorScheme scheme)
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "papers", width, 1000, scheme);
        await page.Locator("[data-written=yes]").WaitForAsync();

        await PageAssertions.HoldAsync(page);
    }
}
