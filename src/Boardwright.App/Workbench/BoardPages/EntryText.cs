using Boardwright.Parts;

namespace Boardwright.App.Workbench.BoardPages;

/// <summary>How uncertain a value is, as a person would write it into the board file.</summary>
static class EntryText
{
    /// <summary>One standard deviation that counts while nothing is said, as a builder would write it.</summary>
    public static string SpreadOf(Entry entry, IKnown known)
    {
        var spread = entry.SpreadOf(known);
        if (spread == 0)
            return "exact";
        return known.Content is IQuantity { Si: not 0 } quantity && entry.Dimension != Length.Dimension
            && entry.Dimension != Temperature.Dimension
            ? $"{Dimension.Figures(100 * spread / Math.Abs(quantity.Si))} %"
            : entry.Dimension is { } dimension ? QuantityText.Write(spread, dimension) : $"{Dimension.Figures(100 * spread)} %";
    }
}
