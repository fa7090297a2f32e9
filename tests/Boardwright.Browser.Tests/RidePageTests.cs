using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class RidePageTests(Workshop workshop) : PageTests(workshop)
{
    [Fact]
    public async Task A_made_up_road_is_ridden_at_once_and_its_figures_get_their_ranges()
    {
        var program = await SharedAsync();
        var page = await RiddenAsync(program);

        await Expect(page.Locator(".verdict")).ToContainTextAsync("harbour round, 7.0 km, to its end");
        await Expect(page.Locator("#figure-ride\\.charge_left small")).ToContainTextAsync(" to ");
        await Expect(page.Locator("#ride-energy-title")).ToContainTextAsync("where the energy went");
        await page.Locator("input[value=hill]").CheckAsync();
        await Expect(page.Locator(".verdict")).ToContainTextAsync("the hill, 5.1 km, to its end");
        Assert.Empty(Troubles);
    }

    [Fact]
    public async Task The_cursor_reads_every_panel_at_one_place_by_keys_and_by_pointer()
    {
        var program = await SharedAsync();
        var page = await RiddenAsync(program);
        var (hand, place) = (page.Locator(".hand"), page.Locator("[data-reads=place]"));

        await hand.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await Expect(place).ToHaveTextAsync("7.00 km");
        await Expect(hand).ToHaveAttributeAsync("aria-valuetext", "7.00 km");
        await Expect(page.Locator("[data-reads=said]")).ToContainTextAsync("charge 91.");
        await page.Keyboard.PressAsync("ArrowLeft");
        await Expect(place).Not.ToHaveTextAsync("7.00 km");
        await page.Keyboard.PressAsync("Home");
        await Expect(place).ToHaveTextAsync("0.00 km");

        await hand.HoverAsync(new() { Position = new() { X = 400, Y = 300 } });
        await Expect(place).Not.ToHaveTextAsync("0.00 km");
        await Expect(page.Locator(".hand .thread").Last).ToBeAttachedAsync();
        await Expect(page.Locator(".slip")).ToContainTextAsync("km/h");
    }

    [Fact]
    public async Task A_part_of_the_ride_is_looked_at_nearer_and_left_again_with_keys()
    {
        var program = await SharedAsync();
        var page = await RiddenAsync(program);
        var whole = page.GetByRole(AriaRole.Button, new() { Name = "whole ride" });
        await Expect(whole).ToBeDisabledAsync();

        await page.Locator(".hand").FocusAsync();
        await page.Keyboard.PressAsync("+");
        await Expect(whole).ToBeEnabledAsync();
        await page.Keyboard.PressAsync("Escape");
        await Expect(whole).ToBeDisabledAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "over time" }).ClickAsync();
        await Expect(page.Locator(".slip-place dt")).ToHaveTextAsync("time");
        await Expect(page.Locator("[data-reads=place]")).ToContainTextAsync("min");
    }

    [Fact]
    public async Task What_the_brief_says_is_changed_here_too_and_can_be_taken_back()
    {
        var program = await SharedAsync();
        var page = await RiddenAsync(program);
        var energy = page.Locator("#figure-ride\\.energy b");
        var before = await energy.InnerTextAsync();
        var wind = page.GetByLabel("headwind", new() { Exact = true });

        await wind.FillAsync("6 m/s");
        await wind.PressAsync("Enter");
        await Expect(energy).Not.ToHaveTextAsync(before);
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(energy).ToHaveTextAsync(before);
    }

    [Fact]
    public async Task A_route_file_is_brought_ridden_and_refused_with_a_reason_when_it_is_none()
    {
        var program = await SharedAsync();
        var page = await RiddenAsync(program);
        var input = page.Locator("input[type=file]");

        await input.SetInputFilesAsync(new FilePayload { Name = "quay.csv", MimeType = "text/csv", Buffer = "distance_m,elevation_m\n0,2\n1000,4\n2500,2\n"u8.ToArray() });
        await Expect(page.Locator(".verdict")).ToContainTextAsync("quay, 2.5 km, to its end");
        await Expect(page.Locator(".road.taken")).ToContainTextAsync("quay");

        await input.SetInputFilesAsync(new FilePayload { Name = "soup.csv", MimeType = "text/csv", Buffer = "leek,potato\n1,2\n"u8.ToArray() });
        await Expect(page.Locator(".refusal")).Not.ToHaveCountAsync(0);
        await Expect(page.Locator(".refusal").First).ToContainTextAsync("soup.csv");
        await Expect(page.Locator(".verdict")).ToContainTextAsync("quay");
    }

    [Theory]
    [MemberData(nameof(Screens.OnAPhoneInTheDark), MemberType = typeof(Screens))]
    public async Task The_page_has_no_violation_that_axe_knows_and_nothing_sticks_out(int width, ColorScheme scheme)
    {
        var program = await SharedAsync();
        var page = await RiddenAsync(program, width, scheme);
        await Expect(page.Locator("#figure-ride\\.charge_left small")).ToBeVisibleAsync();

        await PageAssertions.HoldAsync(page);
    }

    async Task<IPage> RiddenAsync(ProgramUnderTest program, int width = 1400, ColorScheme scheme = ColorScheme.Light)
    {
        var page = await PageAsync(program, "ride", width, 1000, scheme);
        await page.Locator(".strip[data-reads=yes]").WaitForAsync();
        return page;
    }
}
