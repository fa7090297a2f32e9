using Microsoft.JSInterop;

namespace Boardwright.App.Workbench;

/// <summary>What a page does on a key that was pressed outside any field.</summary>
sealed class Keys
{
    /// <summary>A key was pressed; the name is the browser's own, such as <c>u</c> or <c>ArrowLeft</c>.</summary>
    public event Func<string, Task>? Pressed;

    /// <summary>Takes a key from the browser.</summary>
    [JSInvokable]
    public Task Press(string key) => Pressed?.Invoke(key) ?? Task.CompletedTask;
}
