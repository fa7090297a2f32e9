using System.Reflection;
using Microsoft.Playwright;

namespace Boardwright.Browser.Tests;

/// <summary>A browser, shared by all tests; each test opens the program and a page of its own.</summary>
public sealed class Workshop : IAsyncLifetime
{
    IPlaywright? playwright;

    public static string Program { get; } = Metadata("Program");

    public static string Examples { get; } = Path.GetFullPath(Metadata("Examples"));

    static string BrowserPath => Environment.GetEnvironmentVariable("CHROMIUM_PATH") ?? "/usr/bin/chromium";

    public IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(BrowserPath))
            return;
        // A machine that builds at the same time needs longer; a test that passes waits no longer for it.
        Assertions.SetDefaultExpectTimeout(30_000);
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = BrowserPath,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
            await Browser.DisposeAsync();
        playwright?.Dispose();
    }

    /// <summary>Opens a page and waits until it answers.</summary>
    /// <param name="program">The program.</param>
    /// <param name="place">The page.</param>
    /// <param name="width">Width of the window, px.</param>
    /// <param name="height">Height of the window, px.</param>
    /// <param name="scheme">Light or dark.</param>
    /// <param name="isFirstTime">Whether this browser never saw the workbench before, so that the tour begins by itself.</param>
    public async Task<IPage> PageAsync(Running program, string place = "board", int width = 1400, int height = 1000, ColorScheme scheme = ColorScheme.Light, bool isFirstTime = false)
    {
        Assert.SkipWhen(Browser is null, $"No browser at {BrowserPath}; install Debian's chromium or name one in CHROMIUM_PATH.");
        var context = await Browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = scheme });
        if (!isFirstTime)
            await context.AddInitScriptAsync("localStorage.setItem('boardwright.toured', 'yes')");
        var page = await context.NewPageAsync();
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                program.Troubles.Add(message.Text);
        };
        page.PageError += (_, message) => program.Troubles.Add(message);
        page.Request += (_, request) => program.Requests.Add(request.Url);
        await page.GotoAsync(program.Address + place);
        await ReadyAsync(page);
        return page;
    }

    public static Task ReadyAsync(IPage page) => page.Locator("[data-ready=yes]").WaitForAsync();

    static string Metadata(string key) => typeof(Workshop).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == key).Value!;
}

[CollectionDefinition(nameof(Workshop))]
public sealed class AroundOneBrowser : ICollectionFixture<Workshop>;
