using System.Reflection;
using Microsoft.Playwright;

namespace Boardwright.Browser.Tests;

/// <summary>A browser, shared by all tests, and a program, shared by those that save nothing; each test opens a page of its own.</summary>
public sealed class Workshop : IAsyncLifetime
{
    // Far longer than anything takes: a test waits for what happens, and a busy machine only makes it wait.
    const float Patience = 180_000;

    readonly List<IBrowserContext> contexts = [];
    IPlaywright? playwright;
    Running? shared;

    public static string Program { get; } = Metadata("Program");

    public static string Examples { get; } = Path.GetFullPath(Metadata("Examples"));

    static string BrowserPath => Environment.GetEnvironmentVariable("CHROMIUM_PATH") ?? "/usr/bin/chromium";

    public IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(BrowserPath))
            return;
        Assertions.SetDefaultExpectTimeout(Patience);
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = BrowserPath,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (shared is not null)
            await shared.DisposeAsync();
        if (Browser is not null)
            await Browser.DisposeAsync();
        playwright?.Dispose();
    }

    /// <summary>The program that opens Tern and that no test saves anything in.</summary>
    public async Task<Running> SharedAsync()
    {
        shared ??= await Running.StartAsync();
        shared.Troubles.Clear();
        shared.Requests.Clear();
        return shared;
    }

    /// <summary>A window with nothing remembered, closed when the test is over.</summary>
    /// <param name="options">Its size and colours; <c>null</c> for the browser's own.</param>
    public async Task<IBrowserContext> ContextAsync(BrowserNewContextOptions? options = null)
    {
        Assert.SkipWhen(Browser is null, $"No browser at {BrowserPath}; install Debian's chromium or name one in CHROMIUM_PATH.");
        var context = await Browser.NewContextAsync(options);
        context.SetDefaultTimeout(Patience);
        contexts.Add(context);
        return context;
    }

    /// <summary>Closes the windows of a test, so that their pages take no time from the next one.</summary>
    public async Task CloseAsync()
    {
        foreach (var context in contexts)
            await context.CloseAsync();
        contexts.Clear();
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
        var context = await ContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = scheme });
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

/// <summary>Tests of pages; each closes its windows behind it.</summary>
[Collection(nameof(Workshop))]
public abstract class PageTests(Workshop workshop) : IAsyncDisposable
{
    /// <summary>The browser and the shared program.</summary>
    protected Workshop Workshop { get; } = workshop;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Workshop.CloseAsync();
        GC.SuppressFinalize(this);
    }
}

[CollectionDefinition(nameof(Workshop))]
public sealed class AroundOneBrowser : ICollectionFixture<Workshop>;
