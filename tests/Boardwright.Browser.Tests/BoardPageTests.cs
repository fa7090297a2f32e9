using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class BoardPageTests(Workshop workshop) : PageTests(workshop)
{
    [Fact]
    public async Task The_first_start_shows_Tern_with_its_figures_findings_and_parts()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "");

        await Expect(page.Locator(".title-block")).ToContainTextAsync("Tern");
        await Expect(page.Locator("#figure-cruise\\.range")).ToContainTextAsync("64.5 km");
        await Expect(page.Locator("#figure-cruise\\.range small")).ToContainTextAsync(" to ");
        await Expect(page.Locator(".finding.fix").First).ToBeVisibleAsync();
        await Expect(page.Locator(".parts")).ToContainTextAsync("Larkmere 63x74, 170");
        await Expect(page.Locator(".drawn svg")).ToHaveCountAsync(3);
        Assert.Empty(Troubles);
        Assert.All(Requests, url =>
            Assert.StartsWith(program.Address, url.Replace("ws://", "http://", StringComparison.Ordinal), StringComparison.Ordinal));

        // The README's picture of the workbench.
        if (Environment.GetEnvironmentVariable("BOARDWRIGHT_BLESS") == "1")
            await page.ScreenshotAsync(new() { Path = Path.Combine(Workshop.Examples, "..", "docs", "workbench.png") });
    }

    [Fact]
    public async Task The_first_start_offers_a_tour_that_can_be_walked_and_left_and_does_not_come_back()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, isFirstTime: true);
        var tour = page.Locator(".tour");

        await Expect(tour).ToContainTextAsync("Tern, drawn to scale");
        await PageAssertions.HoldAsync(page);
        await page.Keyboard.PressAsync("n");
        await Expect(tour).ToContainTextAsync("What was found");
        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-tour", "findings");
        await page.Keyboard.PressAsync("b");
        await Expect(tour).ToContainTextAsync("1 of");
        for (var i = 0; i < 5; i++)
            await tour.GetByText("Next").ClickAsync();
        await Expect(page).ToHaveURLAsync(program.Address + "brief");
        await page.Keyboard.PressAsync("q");
        await Expect(tour).ToHaveCountAsync(0);

        await page.GotoAsync(program.Address + "board");
        await ReadyAsync(page);
        await Expect(tour).ToHaveCountAsync(0);
        await page.Keyboard.PressAsync("?");
        await page.GetByText("A tour of two minutes").ClickAsync();
        await Expect(tour).ToContainTextAsync("1 of");
        Assert.Empty(Troubles);
    }

    [Fact]
    public async Task A_remedy_is_tried_with_a_key_and_taken_back_with_a_key()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program);
        var fixes = page.Locator(".finding.fix");
        await Expect(fixes.First).ToBeVisibleAsync();
        var told = (await fixes.AllInnerTextsAsync()).ToList();
        var plug = told.FindIndex(text => text.Contains("the pack plug's continuous current", StringComparison.Ordinal));

        foreach (var key in Enumerable.Repeat("j", plug + 1).Append("y"))
            await page.Keyboard.PressAsync(key);
        await Expect(fixes).ToHaveCountAsync(told.Count - 1);
        await Expect(page.Locator(".tried")).ToContainTextAsync("limits.pack_current: 45 A");
        await page.Keyboard.PressAsync("u");
        await Expect(fixes).ToHaveCountAsync(told.Count);
        await page.Keyboard.PressAsync("r");
        await Expect(fixes).ToHaveCountAsync(told.Count - 1);
    }

    [Fact]
    public async Task A_value_is_entered_in_any_unit_and_everything_follows()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "brief");
        var mass = page.GetByLabel("rider mass", new() { Exact = true });

        await mass.FillAsync("220 lb");
        await mass.PressAsync("Enter");

        await Expect(page.Locator("#figure-mass\\.rolling")).ToContainTextAsync("115 kg");
        await mass.FillAsync("heavy");
        await mass.PressAsync("Enter");
        await Expect(page.Locator(".refusal")).ToBeVisibleAsync();
        await Expect(page.Locator("#figure-mass\\.rolling")).ToContainTextAsync("115 kg");
    }

    [Fact]
    public async Task The_text_is_a_key_away_and_edits_both_ways_with_its_comments_kept()
    {
        await using var program = await ProgramUnderTest.StartAsync("tern/tern.board.yaml");
        var page = await PageAsync(program);

        await page.Keyboard.PressAsync("t");
        var text = page.Locator("#board-text");
        await Expect(text).ToBeVisibleAsync();
        var before = await text.InputValueAsync();
        Assert.Contains("# clothes, shoes, bag with a laptop", before, StringComparison.Ordinal);
        await text.FillAsync(before.Replace("rider_mass: 80 kg", "rider_mass: 95 kg", StringComparison.Ordinal));
        await text.BlurAsync();
        await Expect(page.Locator("#figure-mass\\.rolling")).ToContainTextAsync("111 kg");

        await text.FillAsync(before.Replace("rider_mass: 80 kg", "rider_mas: 95 kg", StringComparison.Ordinal));
        await text.BlurAsync();
        await Expect(page.Locator(".complaints")).ToContainTextAsync("rider_mass");
        await Expect(page.Locator("#figure-mass\\.rolling")).ToContainTextAsync("111 kg");
        await text.FillAsync(before.Replace("rider_mass: 80 kg", "rider_mass: 96 kg", StringComparison.Ordinal));
        await text.BlurAsync();
        await Expect(page.Locator(".complaints")).ToHaveCountAsync(0);

        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("Saved in the file tern.board.yaml");
        Assert.Equal(before.Replace("rider_mass: 80 kg", "rider_mass: 96 kg", StringComparison.Ordinal), await File.ReadAllTextAsync(Path.Combine(program.Folder, "tern/tern.board.yaml")));
    }

    [Fact]
    public async Task The_deck_leans_by_key_and_by_dragging_and_the_clearances_follow()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program);
        var behind = page.Locator(".view-behind svg > title");
        await Expect(behind).ToContainTextAsync("level");

        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(behind).ToContainTextAsync("to the right");
        await page.Keyboard.PressAsync("0");
        await Expect(behind).ToContainTextAsync("level");

        var box = (await page.Locator(".view-behind svg").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + 20);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + box.Width / 4, box.Y + 20, new() { Steps = 5 });
        await page.Mouse.UpAsync();
        await Expect(behind).ToContainTextAsync("to the left");
    }

    [Fact]
    public async Task A_part_and_a_finding_are_looked_at_by_clicking_the_drawing()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program);

        await page.Locator(".view-side [data-part='parts.deck']").First.ClickAsync();
        await Expect(page.Locator(".card h2")).ToContainTextAsync("deck");
        await page.Locator(".view-behind [data-finding]").First.ClickAsync();
        await Expect(page.Locator(".finding.picked")).ToHaveCountAsync(1);
        await Expect(page.Locator(".card h2")).ToContainTextAsync("motor");
    }

    [Fact]
    public async Task The_mount_angle_is_turned_beside_the_drawing()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program);
        await Expect(page.Locator(".turn", new() { HasText = "mount angle" })).ToContainTextAsync("15 deg");

        await page.GetByRole(AriaRole.Button, new() { Name = "mount angle, the next" }).ClickAsync();

        await Expect(page.Locator(".turn", new() { HasText = "mount angle" })).ToContainTextAsync("0 deg");
        await Expect(page.Locator(".title-block .notice")).ToContainTextAsync("drive.mount_angle: 0 deg");
    }

    [Fact]
    public async Task The_picker_says_what_a_part_would_change_before_it_is_taken()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program);

        await page.Locator(".parts button", new() { HasText = "wheels" }).ClickAsync();
        await page.GetByText("Another wheel from the shelf").ClickAsync();
        var picks = page.Locator(".picks tbody tr");
        await Expect(picks.First).ToBeVisibleAsync();
        var fitted = page.Locator(".picks .fitted");
        await Expect(fitted).ToContainTextAsync("fitted");
        var other = picks.Filter(new() { HasNot = page.Locator("text=fitted") }).First;
        var id = await other.Locator("th small").InnerTextAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "Take" }).ClickAsync();
        await Expect(page.Locator(".title-block .notice")).ToContainTextAsync($"wheels: {id}");
        await Expect(fitted.Locator("th small")).ToHaveTextAsync(id);
    }

    [Fact]
    public async Task Work_that_was_not_saved_survives_the_program_and_is_offered_back()
    {
        await using var program = await ProgramUnderTest.StartAsync("tern/tern.board.yaml");
        var page = await PageAsync(program, "brief");
        var mass = page.GetByLabel("rider mass", new() { Exact = true });
        await mass.FillAsync("91 kg");
        await mass.PressAsync("Enter");
        await Expect(page.Locator("#figure-mass\\.rolling")).ToContainTextAsync("107 kg");

        await program.KillAsync();
        await Expect(page.Locator("#components-reconnect-modal")).ToBeVisibleAsync();
        await program.RestartAsync("tern/tern.board.yaml");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take them back" }).ClickAsync();
        await Expect(page.Locator("#figure-mass\\.rolling")).ToContainTextAsync("107 kg");
        Assert.Contains("rider_mass: 80 kg", await File.ReadAllTextAsync(Path.Combine(program.Folder, "tern/tern.board.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_somebody_else_changed_is_not_written_over()
    {
        await using var program = await ProgramUnderTest.StartAsync("tern/tern.board.yaml");
        var page = await PageAsync(program, "brief");
        var file = Path.Combine(program.Folder, "tern/tern.board.yaml");
        await File.AppendAllTextAsync(file, "# theirs\n");
        var mass = page.GetByLabel("rider mass", new() { Exact = true });
        await mass.FillAsync("91 kg");
        await mass.PressAsync("Enter");

        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();

        await Expect(page.Locator(".title-block")).ToContainTextAsync("changed by somebody else");
        Assert.EndsWith("# theirs\n", await File.ReadAllTextAsync(file), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("board", 1400, ColorScheme.Light)]
    [InlineData("board", 390, ColorScheme.Dark)]
    [InlineData("brief", 390, ColorScheme.Light)]
    public async Task A_page_has_no_violation_that_axe_knows_and_nothing_sticks_out(string place, int width, ColorScheme scheme)
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, place, width, 900, scheme);
        await Expect(page.Locator("#figure-cruise\\.range small")).ToBeVisibleAsync();
        if (place == "board")
        {
            await page.Locator(".parts button", new() { HasText = "motor" }).First.ClickAsync();
            await Expect(page.Locator(".card")).ToBeVisibleAsync();
        }

        await PageAssertions.HoldAsync(page);
    }
}
