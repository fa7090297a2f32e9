using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace Boardwright.Browser.Tests;

/// <summary>Tests of pages, each in a browser window with nothing remembered, which is closed behind it.</summary>
public abstract class PageTests(Workshop workshop) : IAsyncDisposable
{
    readonly List<IBrowserContext> contexts = [];

    /// <summary>What the browser complained about.</summary>
    protected ConcurrentBag<string> Troubles { get; } = [];

    /// <summary>Every address that the browser asked.</summary>
    protected ConcurrentBag<string> Requests { get; } = [];

    /// <summary>The program that opens Tern and in which no test saves anything.</summary>
    protected Task<ProgramUnderTest> SharedAsync() => workshop.SharedAsync();

    /// <summary>A window with nothing remembered.</summary>
    /// <param name="options">Its size and colours; <c>null</c> for the browser's own.</param>
    protected async Task<IBrowserContext> ContextAsync(BrowserNewContextOptions? options = null)
    {
        Assert.SkipWhen(workshop.Browser is null, "No browser: install Debian's chromium-headless-shell, or name one in CHROMIUM_PATH.");
        var context = await workshop.Browser!.NewContextAsync(options);
        context.SetDefaultTimeout(Workshop.Patience);
        contexts.Add(context);
        return context;
    }

    /// <summary>Opens a page and waits until it answers.</summary>
    /// <param name="program">The program.</param>
    /// <param name="place">The page.</param>
    /// <param name="width">Width of the window, px.</param>
    /// <param name="height">Height of the window, px.</param>
    /// <param name="scheme">Light or dark.</param>
    /// <param name="isFirstTime">Whether this browser never saw the workbench before, so that the tour begins by itself.</param>
    protected async Task<IPage> PageAsync(
        ProgramUnderTest program, string place = "board", int width = 1400, int height = 1000, ColorScheme scheme = ColorScheme.Light,
        bool isFirstTime = false)
    {
        var context = await ContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = scheme });
        if (!isFirstTime)
            await context.AddInitScriptAsync("localStorage.setItem('boardwright.toured', 'yes')");
        var page = await context.NewPageAsync();
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                Troubles.Add(message.Text);
        };
        page.PageError += (_, message) => Troubles.Add(message);
        page.Request += (_, request) => Requests.Add(request.Url);
        await page.GotoAsync(program.Address + place);
        await ReadyAsync(page);
        return page;
    }

    /// <summary>Waits until a page answers.</summary>
    protected static Task ReadyAsync(IPage page) => page.Locator("[data-ready=yes]").WaitForAsync();

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (var context in contexts)
            await context.CloseAsync();
        GC.SuppressFinalize(this);
    }
}
