using System.Net;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Boardwright.Browser.Tests;

public sealed class SignInTests(Workshop workshop) : PageTests(workshop)
{
    const string Password = "a few words in a row";

    [Fact]
    public async Task A_workbench_that_others_reach_shows_nothing_before_a_sign_in_and_saves_under_that_name()
    {
        await using var program = await ProgramUnderTest.StartAsync(person: ("Ada", Password));
        var page = await (await ContextAsync()).NewPageAsync();
        await page.GotoAsync(program.Address + "ride");
        await Expect(page).ToHaveURLAsync(program.Address + "sign-in?to=%2Fride");
        await PageAssertions.HoldAsync(page);

        await page.GetByLabel("name").FillAsync("ada");
        await page.GetByLabel("password").FillAsync("something else");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToHaveTextAsync("Name and password do not belong together.");

        await page.GetByLabel("password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await ReadyAsync(page);
        await Expect(page).ToHaveURLAsync(program.Address + "ride");

        await page.GotoAsync(program.Address + "shop");
        await ReadyAsync(page);
        await page.GetByLabel("name").FillAsync("Ada's board");
        await page.GetByText("Keep in the shop under this name").ClickAsync();
        await Expect(page.Locator("tr.fitted, tbody tr").First).ToContainTextAsync("Ada");
        await PageAssertions.HoldAsync(page);

        await page.GetByRole(AriaRole.Button, new() { Name = "sign out" }).ClickAsync();
        await Expect(page).ToHaveURLAsync(program.Address + "sign-in");
    }

    [Fact]
    public async Task Without_a_sign_in_neither_pages_nor_their_connection_answer()
    {
        await using var program = await ProgramUnderTest.StartAsync(person: ("Ada", Password));
        using var handler = new HttpClientHandler { AllowAutoRedirect = false };
        using var stranger = new HttpClient(handler) { BaseAddress = new(program.Address) };

        foreach (var place in (string[])["board", "brief", "ride", "shop", ""])
        {
            var answer = await stranger.GetAsync(new Uri(place, UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
            Assert.Equal("/sign-in", answer.Headers.Location!.AbsolutePath);
        }

        Assert.Equal(HttpStatusCode.Unauthorized,
            (await stranger.PostAsync(new Uri("_blazor/negotiate?negotiateVersion=1", UriKind.Relative), null, TestContext.Current.CancellationToken)).StatusCode);
        // A form that was not made here is refused before the password is looked at.
        using var form = new FormUrlEncodedContent([new("name", "Ada"), new("password", Password)]);
        Assert.Equal(HttpStatusCode.BadRequest,
            (await stranger.PostAsync(new Uri("sign-in", UriKind.Relative), form, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task On_this_machine_only_it_answers_to_no_other_name()
    {
        var program = await SharedAsync();
        using var client = new HttpClient();
        using var request = new HttpRequestMessage(HttpMethod.Get, program.Address + "board") { Headers = { Host = "elsewhere.example" } };

        Assert.Equal(HttpStatusCode.BadRequest, (await client.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(HttpStatusCode.OK,
            (await client.GetAsync(new Uri(program.Address + "board"), TestContext.Current.CancellationToken)).StatusCode);
    }
}
