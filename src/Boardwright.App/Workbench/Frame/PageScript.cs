using Microsoft.JSInterop;

namespace Boardwright.App.Workbench.Frame;

/// <summary>What only the browser can do for the pages, through the script that they have loaded already.</summary>
/// <param name="browser">The browser.</param>
/// <param name="shortcuts">What is told of keys and of the pointer.</param>
sealed class PageScript(IJSRuntime browser, KeyboardShortcuts shortcuts) : IAsyncDisposable
{
    IJSObjectReference? module;
    DotNetObjectReference<KeyboardShortcuts>? reference;

    /// <summary>Whether the browser listens to the pages.</summary>
    public bool IsReady { get; private set; }

    /// <summary>Takes the page over.</summary>
    /// <param name="address">Where the script lies.</param>
    public async Task BeginAsync(string address)
    {
        module ??= await browser.InvokeAsync<IJSObjectReference>("import", "./" + address);
        await module.InvokeVoidAsync("begin", reference ??= DotNetObjectReference.Create(shortcuts));
        IsReady = true;
    }

    /// <summary>What was typed on a board and never saved; <c>null</c> for nothing.</summary>
    public async Task<string?> ReadDraftAsync(string board) => module is null ? null : await module.InvokeAsync<string?>("readDraft", board);
    /// <summary>Keeps what was typed on a board until it is saved.</summary>
    public Task WriteDraftAsync(string board, string text) => DoAsync("writeDraft", board, text);
    /// <summary>Forgets what was typed on a board.</summary>
    public Task DropDraftAsync(string board) => DoAsync("dropDraft", board);
    /// <summary>Whether this browser has never seen the tour.</summary>
    public async Task<bool> IsNewAsync() => module is not null && await module.InvokeAsync<bool>("isNew");
    /// <summary>Shows the place that the tour speaks of; the tour is over at <c>null</c>.</summary>
    public Task PointAtAsync(string? place) => DoAsync("pointAt", place);
    /// <summary>Brings something into view.</summary>
    public Task SeeAsync(string id) => DoAsync("see", id);
    /// <summary>Opens a dialog.</summary>
    public Task OpenAsync(string dialog) => DoAsync("open", dialog);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        reference?.Dispose();
        try
        {
            await DoAsync("end");
            if (module is not null)
                await module.DisposeAsync();
        }
        catch (JSDisconnectedException)
        {
            // The page is gone, and its script with it.
        }
    }

    async Task DoAsync(string what, params object?[] with)
    {
        if (module is not null)
            await module.InvokeVoidAsync(what, with);
    }
}
