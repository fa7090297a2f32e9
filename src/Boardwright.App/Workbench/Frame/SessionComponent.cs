using Boardwright.App.Workbench.BoardPages;
using Boardwright.Shops;
using Microsoft.AspNetCore.Components;

namespace Boardwright.App.Workbench.Frame;

/// <summary>What pages show and draw anew when it says so.</summary>
interface IFollowed
{
    /// <summary>Something has changed; may be raised from any thread.</summary>
    event Action? Changed;
}

/// <summary>A page, or a part of one, that is drawn anew whenever what it follows has changed.</summary>
public abstract class SessionComponent : ComponentBase, IDisposable
{
    [Inject]
    private protected EditSession EditSession { get; set; } = null!;

    /// <summary>What is followed: the open board, where nothing else is said.</summary>
    private protected virtual IEnumerable<IFollowed> Followed => [EditSession];

    private protected string BoardName => EditSession.Outcome?.Name ?? "Board";

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        foreach (var session in Followed)
            session.Changed += Follow;
    }

    /// <summary>What is done, on the page's own thread, when something has changed.</summary>
    protected virtual Task OnSessionChangedAsync()
    {
        StateHasChanged();
        return Task.CompletedTask;
    }

    void Follow() => _ = InvokeAsync(OnSessionChangedAsync);

    /// <inheritdoc/>
    public virtual void Dispose()
    {
        foreach (var session in Followed)
            session.Changed -= Follow;
        GC.SuppressFinalize(this);
    }
}

/// <summary>Such a part that has keys of its own.</summary>
public abstract class ShortcutComponent : SessionComponent
{
    [Inject]
    private protected KeyboardShortcuts KeyboardShortcuts { get; set; } = null!;

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        KeyboardShortcuts.Pressed += PressAsync;
    }

    /// <summary>What a key does.</summary>
    /// <param name="key">The browser's name of it.</param>
    protected abstract Task PressAsync(string key);

    /// <inheritdoc/>
    public override void Dispose()
    {
        KeyboardShortcuts.Pressed -= PressAsync;
        base.Dispose();
        GC.SuppressFinalize(this);
    }
}

/// <summary>Such a page that asks the shop.</summary>
public abstract class ShopComponent : SessionComponent
{
    [Inject]
    private protected OpenBoards Boards { get; set; } = null!;

    [Inject]
    private protected CurrentUser CurrentUser { get; set; } = null!;

    /// <summary>What the shop refused last, in its own words; <c>null</c> for nothing.</summary>
    protected string? Trouble { get; private set; }

    /// <summary>Does something in the shop; nothing on the page is lost by what it refuses.</summary>
    protected async Task TryAsync(Func<Task> what)
    {
        try
        {
            Trouble = null;
            await what();
        }
        catch (ShopException fault)
        {
            Trouble = fault.Message;
        }
    }
}
