using Boardwright.Tests;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class BuiltPageTests(Workshop workshop) : PageTests(workshop)
{
    // The smallest picture there is: one pixel.
    static readonly byte[] Photo = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");

    [Fact]
    public async Task A_board_is_begun_ticked_measured_photographed_ridden_and_let_through_the_gate_by_a_reason()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await BegunAsync(program);

        // A step is one touch, and says who and when.
        var step = page.Locator("[id='step-parts.ready']");
        await step.GetByRole(AriaRole.Button, new() { Name = "Tick as done" }).ClickAsync();
        await Expect(page.Locator("[id='step-parts.ready'].passed")).ToBeVisibleAsync();
        await Expect(step.Locator(".step-done")).ToContainTextAsync("Ada");

        // A measurement is judged while it is typed, in any unit.
        await SectionAsync(page, "Bench");
        var rest = page.Locator("[id='step-pack.rest']");
        var field = rest.Locator(".step-value input");
        await field.FillAsync("9000 mV");
        await Expect(rest.Locator(".step-verdict")).ToContainTextAsync("Fails: 9 V is 21 V less than the least of 30 V.");
        await field.FillAsync("41 A");
        await Expect(rest.Locator(".step-verdict")).ToContainTextAsync("wants a voltage");
        await field.FillAsync("41.3");
        await Expect(rest.Locator(".step-verdict")).ToContainTextAsync("Passes: 41.3 V");
        await field.PressAsync("Enter");
        await Expect(page.Locator("[id='step-pack.rest'].passed")).ToBeVisibleAsync();
        await Expect(rest.Locator(".step-done")).ToContainTextAsync("41.3 V");
        await page.Locator("[id='step-wheels.brake']").GetByRole(AriaRole.Button, new() { Name = "Failed" }).ClickAsync();
        await Expect(page.Locator("[id='step-wheels.brake'].failed")).ToBeVisibleAsync();

        // A photo is shown, anything else is only handed out to be saved.
        await SectionAsync(page, "Notes");
        await page.Locator(".bench-form textarea").FillAsync("lead of motor 2");
        await page.Locator("#note-photo").SetInputFilesAsync(new FilePayload { Name = "lead 2.png", MimeType = "image/png", Buffer = Photo });
        await Expect(page.Locator(".bench-form")).ToContainTextAsync("lead-2.png");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Expect(page.GetByAltText("lead of motor 2")).ToBeVisibleAsync();
        await page.WaitForFunctionAsync("document.querySelector('.notes img').naturalWidth === 1");
        await page.Locator("#note-file").SetInputFilesAsync(new FilePayload { Name = "page.html", MimeType = "text/html", Buffer = "<script>alert(1)</script>"u8.ToArray() });
        await Expect(page.Locator(".bench-form")).ToContainTextAsync("page.html");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Expect(page.Locator(".notes a[download]")).ToHaveTextAsync("page.html");
        var answer = await page.APIRequest.GetAsync(
            new Uri(new Uri(program.Address), await page.Locator(".notes a[download]").GetAttributeAsync("href")).ToString());
        Assert.Equal(("application/octet-stream", "nosniff"), (answer.Headers["content-type"], answer.Headers["x-content-type-options"]));
        Assert.StartsWith("attachment", answer.Headers["content-disposition"], StringComparison.Ordinal);
        Assert.Equal("image/png",
            (await page.APIRequest.GetAsync(new Uri(new Uri(program.Address), await page.Locator(".notes img").GetAttributeAsync("src")).ToString()))
            .Headers["content-type"]);

        // How a log is read is shown, changed, and remembered for the next one.
        await SectionAsync(page, "Rides");
        await LogAsync(page, "harbour.csv");
        await Expect(page.Locator(".columns li", new() { HasText = "20.0" })).ToContainTextAsync("passed over");
        await page.GetByLabel("v is", new() { Exact = true }).SelectOptionAsync("speed");
        await page.GetByLabel("unit of v", new() { Exact = true }).SelectOptionAsync("km/h");
        await Expect(page.Locator(".arrived")).ToContainTextAsync("at most 20.0 km/h");
        await Expect(page.Locator(".arrived")).ToContainTextAsync("1 rows could not be used");
        await page.GetByRole(AriaRole.Button, new() { Name = "Read rightly: keep this ride" }).ClickAsync();
        await Expect(page.Locator(".bench-notice")).ToContainTextAsync("remembered");
        await LogAsync(page, "hill.csv");
        await Expect(page.Locator(".arrived")).ToContainTextAsync("confirmed before");
        await Expect(page.GetByLabel("v is", new() { Exact = true })).ToHaveValueAsync("speed");
        await page.GetByRole(AriaRole.Button, new() { Name = "Read rightly: keep this ride" }).ClickAsync();
        await Expect(page.Locator(".picks tbody tr")).ToHaveCountAsync(2);

        // Nobody passes the gate without a word.
        await SectionAsync(page, "State");
        await page.Locator(".states label", new() { HasText = "ready to ride" }).Locator("input").CheckAsync();
        await Expect(page.Locator(".gate")).ToContainTextAsync("failed wheels.brake");
        var mark = page.GetByRole(AriaRole.Button, new() { Name = "Mark as ready to ride" });
        await Expect(mark).ToBeDisabledAsync();
        await page.GetByLabel("reason, which is due").FillAsync("shown at the fair, not ridden");
        await mark.ClickAsync();
        await Expect(page.Locator(".state-now")).ToContainTextAsync("by a written reason: shown at the fair, not ridden");
        await page.Locator("nav a", new() { HasText = "Built" }).ClickAsync();
        await Expect(page.Locator(".built-list")).ToContainTextAsync("by a written reason: shown at the fair, not ridden");

        // What comes up later is not answered for.
        await page.GotoAsync(program.Address + "built/TERN-0001/faults");
        await ReadyAsync(page);
        await page.Locator(".bench-form textarea").FillAsync("belt 2 jumps");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write the fault down" }).ClickAsync();
        await Expect(page.Locator(".state-now")).ToContainTextAsync("may not be ridden: fault 1");
        await page.GetByLabel("how it was mended, and with what").FillAsync("two new bolts");
        await page.GetByRole(AriaRole.Button, new() { Name = "Mended" }).ClickAsync();
        await Expect(page.Locator(".state-now")).ToContainTextAsync("by a written reason");
        Assert.Empty(Troubles);
    }

    [Fact]
    public async Task No_section_has_a_violation_that_axe_knows_and_nothing_sticks_out_of_a_phone()
    {
        await using var program = await ProgramUnderTest.StartAsync();
        var page = await BegunAsync(program, ColorScheme.Dark);
        // Between them these three have all that the others show.
        foreach (var section in Thorough.IsAsked ? (string[])["Steps", "Bench", "Parts", "Notes", "Faults", "Rides", "State"] : ["Bench", "Rides", "State"])
        {
            await SectionAsync(page, section);
            await Expect(page.Locator(".bench-nav a.active")).ToContainTextAsync(section);
            if (section == "Rides")
                await LogAsync(page, "harbour.csv");
            if (section == "State")
                await page.Locator(".states input").Nth(3).CheckAsync();
            await PageAssertions.HoldAsync(page);
        }

        await page.Locator("nav a", new() { HasText = "Built" }).ClickAsync();
        await Expect(page.Locator(".built-list")).ToContainTextAsync("In building");
        await PageAssertions.HoldAsync(page);
    }

    async Task<IPage> BegunAsync(ProgramUnderTest program, ColorScheme scheme = ColorScheme.Light)
    {
        var page = await PageAsync(program, "shop", 390, 900, scheme);
        await page.Locator(".told-side input").First.FillAsync("Tern");
        await page.GetByText("Keep in the shop under this name").ClickAsync();
        await Expect(page.Locator(".title-block")).ToContainTextAsync("the shop, revision 1");
        await page.GotoAsync(program.Address + "built");
        await ReadyAsync(page);
        await page.GetByLabel("who").FillAsync("Ada");
        await page.GetByLabel("who").PressAsync("Tab");
        await page.GetByLabel("serial number").FillAsync("TERN-0001");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await Expect(page.Locator("h1")).ToHaveTextAsync("TERN-0001");
        return page;
    }

    static Task SectionAsync(IPage page, string title) => page.Locator(".bench-nav a", new() { HasText = title }).ClickAsync();

    static async Task LogAsync(IPage page, string name)
    {
        var rows = string.Concat(Enumerable.Range(0, 300).Select(i => FormattableString.Invariant($"{0.2 * i:0.0},20.0,{48 - 0.01 * i:0.00},8.0\n")));
        await page.Locator("#ride-log")
            .SetInputFilesAsync(new FilePayload { Name = name, MimeType = "text/csv", Buffer = System.Text.Encoding.UTF8.GetBytes($"t_s,v,pack_voltage_V,pack_current_A\n{rows}broken,1,2\n") });
        await Expect(page.Locator(".arrived")).ToContainTextAsync(name);
    }
}
