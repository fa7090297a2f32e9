using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class LearnPageTests(Workshop workshop) : PageTests(workshop)
{
    /// <summary>Coast-downs both ways on a level road, with what a logger writes beside the speed; made by small steps of time.</summary>
    internal static string CoastDowns(int pairs = 4)
    {
        var text = new StringBuilder("time_s,speed_kmh,pack_voltage_V,pack_current_A,phase_current_A,motor_temperature_C\n");
        var (time, next, motor) = (0.0, 0.0, 21.0);
        void Step(double speed, double amperes)
        {
            time += 0.02;
            motor += 0.02 * (0.002 * amperes * amperes - 0.001 * (motor - 20));
            if (time < next) return;
            next += 0.2;
            text.Append(CultureInfo.InvariantCulture, $"{time:0.00},{3.6 * speed:0.00},{48 - 0.09 * amperes:0.00},{amperes:0.00},{1.5 * amperes:0.0},{motor:0.0}\n");
        }

        for (var stand = 0; stand < 400; stand++) Step(0, 0.1);
        for (var run = 0; run < 2 * pairs; run++)
        {
            var speed = 0.0;
            for (; speed < 8.6; speed += 0.02) Step(speed, 2 + 2.4 * speed);
            for (; speed > 1; speed -= 0.02 * (0.23 + 0.0036 * speed * speed)) Step(speed, 0.1);
            for (; speed > 0; speed -= 0.02 * 1.2) Step(speed, -3 * speed);
            for (var stand = 0; stand < 300; stand++) Step(0, 0.1);
        }

        return text.ToString();
    }

    static Task BringAsync(IPage page) =>
        page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "evening.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(CoastDowns()) });

    [Fact]
    public async Task A_ride_is_held_against_the_board_and_one_key_takes_what_it_teaches()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "learn");

        await BringAsync(page);
        await Expect(page.Locator("[data-log]")).ToContainTextAsync("evening.csv: ");
        await Expect(page.Locator("#taught-title ~ .ledger")).ToContainTextAsync("Drag area");
        await Expect(page.GetByText("the heights of the road")).ToBeVisibleAsync();
        await page.GetByLabel("the road was level").CheckAsync();
        await Expect(page.Locator(".said")).ToContainTextAsync("predicted (");
        await Expect(page.Locator(".strip[data-reads=yes]")).ToBeVisibleAsync();

        await page.Locator("#sheet").FocusAsync();
        await page.Keyboard.PressAsync("y");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Taken into the board" })).ToBeVisibleAsync();
        await Expect(page.Locator(".notice")).ToContainTextAsync("measured on evening.csv");
        await page.Keyboard.PressAsync("u");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Taken into the board" })).ToHaveCountAsync(0);
        Assert.Empty(Troubles);
    }

    [Fact]
    public async Task A_file_that_is_no_log_says_why()
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "learn");

        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "hello.csv", MimeType = "text/csv", Buffer = "hello\n"u8.ToArray() });
        await Expect(page.Locator(".refusal").First).ToContainTextAsync("hello.csv");
        await page.GetByRole(AriaRole.Button, new() { Name = "Weigh the rides of the shop" }).ClickAsync();
        await Expect(page.GetByText("No ride says anything of the model yet")).ToBeVisibleAsync();
        Assert.Empty(Troubles);
    }

    [Theory]
    [MemberData(nameof(Screens.OnAPhoneInTheDark), MemberType = typeof(Screens))]
    public async Task The_page_is_readable_for_everyone(int width, ColorScheme scheme)
    {
        var program = await SharedAsync();
        var page = await PageAsync(program, "learn", width, 900, scheme);

        await PageAssertions.HoldAsync(page);
        await BringAsync(page);
        await page.GetByLabel("the road was level").CheckAsync();
        await Expect(page.Locator(".said")).ToContainTextAsync("predicted (");
        await PageAssertions.HoldAsync(page);
    }
}
