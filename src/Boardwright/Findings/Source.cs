namespace Boardwright.Findings;

/// <summary>Where a figure, an equation or a limit comes from.</summary>
/// <param name="Text">The citation, or <c>common practice, no source</c>, or <c>from memory</c> and what is remembered.</param>
public sealed record Source(string Text)
{
    /// <inheritdoc/>
    public override string ToString() => Text;
}
