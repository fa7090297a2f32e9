using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class BoxPageTests(Workshop workshop) : PageTests(workshop)
{
    [Fact]
    public async Task A_thing_is_moved_by_keys_and_by_the_pointer_and_everything_is_saved_with_the_comments_kept()
    {
        await using var program = await ProgramUnderTest.StartAsync("tern/tern.board.yaml");
        var page = await PageAsync(program, "box");
        var now = page.Locator("#box-now");
        var path = Path.Combine(program.Folder, "tern/tern.board.yaml");
        var before = await File.ReadAllTextAsync(path);
        await Expect(now).ToContainTextAsync("pack: 150.5 mm to the nose");
        await Expect(page.Locator(".box-field [data-part^='layout.']")).ToHaveCountAsync(9);

        await page.Locator("[data-box]").FocusAsync();
        await page.Keyboard.PressAsync(".");
        await Expect(now).ToContainTextAsync("controller: -180.0 mm to the nose, 17.0 mm to the right, turned 0°");
        // Held until the intervals have arrived, which leave it where it is.
        await page.Keyboard.DownAsync("ArrowRight");
        await Expect(now).ToContainTextAsync("controller: -179.0 mm");
        await Expect(page.Locator("main")).ToHaveAttributeAsync("data-edits", "2");
        await page.Keyboard.UpAsync("ArrowRight");
        await page.Keyboard.PressAsync("Shift+ArrowLeft");
        await Expect(now).ToContainTextAsync("controller: -189.0 mm");
        await page.Keyboard.PressAsync("q");
        await Expect(now).ToContainTextAsync("turned 90°");

        // Onto the pack: said and shown while it is held, and after it was let go.
        var controller = (await page.Locator("[data-part='layout.controller']").BoundingBoxAsync())!;
        var pack = (await page.Locator("[data-part='layout.pack']").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(controller.X + controller.Width / 2, controller.Y + controller.Height / 2);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(pack.X + pack.Width / 2, pack.Y + pack.Height / 2, new() { Steps = 6 });
        await Expect(now).ToContainTextAsync(
            new System.Text.RegularExpressions.Regex("clashes with .*pack", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromMinutes(1)));
        await Expect(page.Locator(".box-field .bw-clash")).Not.ToHaveCountAsync(0);
        await page.Mouse.UpAsync();
        await Expect(page.Locator(".finding.stop", new() { HasText = "The pack and the controller" })).ToContainTextAsync("lie in the same place");

        // Each let-go is one step back.
        await page.Keyboard.PressAsync("u");
        await Expect(now).ToContainTextAsync("controller: -189.0 mm");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("Saved in the file");
        var after = await File.ReadAllTextAsync(path);
        Assert.StartsWith(before.TrimEnd(), after, StringComparison.Ordinal);
        Assert.Contains("  controller: { x: -189 mm, y: 17 mm, turn: 90 deg }", after, StringComparison.Ordinal);
        Assert.Contains("  gland 1: { wall: rear, along: ", after, StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Button, new() { Name = "Propose anew" }).ClickAsync();
        await Expect(now).ToContainTextAsync("controller: -180.0 mm");
        // Without the places the text is what it was when the page was opened.
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take all back" })).ToBeDisabledAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Turn by a quarter, clockwise" }).ClickAsync();
        await Expect(now).ToContainTextAsync("turned 90°");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take all back" }).ClickAsync();
        await Expect(page.Locator(".picks")).Not.ToContainTextAsync("stated");
        Assert.Empty(Troubles);
    }

    [Fact]
    public async Task A_fitting_stays_in_a_wall_wherever_it_is_dragged()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "box");
        var now = page.Locator("#box-now");

        var gauge = (await page.Locator("[data-part='layout.gauge']").BoundingBoxAsync())!;
        var box = (await page.Locator("[data-part='parts.box']").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(gauge.X + gauge.Width / 2, gauge.Y + gauge.Height / 2);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + box.Width / 4, box.Y + 20, new() { Steps = 6 });
        await page.Mouse.UpAsync();
        await Expect(now).ToContainTextAsync("along the left wall");
        await Expect(page.Locator(".picks tr", new() { HasText = "gauge" })).ToContainTextAsync("in the left wall");
    }

    [Theory]
    [MemberData(nameof(Screens.OnAPhoneInTheDark), MemberType = typeof(Screens))]
    public async Task The_page_holds_on_a_telephone_and_on_a_large_screen(int width, ColorScheme scheme)
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "box", width, scheme: scheme);
        await page.GetByRole(AriaRole.Button, new() { Name = "8 switch" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "To the nose by 1 mm" }).ClickAsync();
        await Expect(page.Locator("#box-now")).ToContainTextAsync("switch: ");

        await PageAssertions.HoldAsync(page);
    }
}
