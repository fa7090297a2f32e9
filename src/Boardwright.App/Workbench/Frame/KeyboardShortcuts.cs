using Microsoft.JSInterop;

namespace Boardwright.App.Workbench.Frame;

/// <summary>What a page does on a key that was pressed outside any field, and on what is done to a drawing.</summary>
sealed class KeyboardShortcuts
{
    /// <summary>A key was pressed; the name is the browser's own, such as <c>u</c> or <c>ArrowLeft</c>.</summary>
    public event Func<string, Task>? Pressed;
    /// <summary>Takes a key from the browser.</summary>
    [JSInvokable]
    public Task Press(string key) => Pressed?.Invoke(key) ?? Task.CompletedTask;
    /// <summary>The deck was dragged to a part of its lean, from −1 on the left to 1 on the right.</summary>
    public event Action<double>? Leaned;
    /// <summary>A part or a finding's pin was clicked in a drawing: the part's place such as <c>motor</c>, or the rules of the
    /// pin.</summary>
    public event Action<string, bool>? Pointed;
    /// <summary>Takes a lean from the browser.</summary>
    [JSInvokable]
    public void Lean(double share) => Leaned?.Invoke(share);
    /// <summary>A thing in the box was dragged: its name, how far to the nose and to the right-hand side in millimetres, and whether it was
    /// let go.</summary>
    public event Action<string, double, double, bool>? Dragged;
    /// <summary>A key was pressed in the box's drawing: the browser's name of it, and whether Shift was held; an empty name when it was let
    /// go.</summary>
    public event Action<string, bool>? Nudged;
    /// <summary>Takes a drag from the browser.</summary>
    [JSInvokable]
    public void Drag(string name, double toNose, double toRight, bool isDone) => Dragged?.Invoke(name, toNose, toRight, isDone);
    /// <summary>Takes a key in the box's drawing from the browser.</summary>
    [JSInvokable]
    public void Nudge(string key, bool isLarge) => Nudged?.Invoke(key, isLarge);
    /// <summary>Takes a click in a drawing from the browser.</summary>
    [JSInvokable]
    public void Point(string key, bool isFinding) => Pointed?.Invoke(key, isFinding);
}
