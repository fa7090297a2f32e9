using System.Collections;
using System.Globalization;
using Boardwright.Parts;

namespace Boardwright.App.Workbench.BoardPages;

/// <summary>Values as a person would write them into the board file.</summary>
static class EntryText
{
    /// <summary>The value of an entry; empty where it is not known. A table is named by how many points it has.</summary>
    public static string Format(Entry entry, IKnown known) => known.Content switch
    {
        null => "",
        IQuantity quantity => QuantityText.Write(quantity.Si, entry.Dimension!),
        bool yes => yes ? "yes" : "no",
        Enum word => Entry.Word(word),
        string text => text,
        IFormattable number when entry.Form is EntryForm.Count => number.ToString(null, CultureInfo.InvariantCulture),
        var other when entry.Form is EntryForm.Curve or EntryForm.ResistanceTable or EntryForm.RollingTable =>
            $"a table{(other is ICollection { Count: > 0 and var many } ? $" of {many.ToString(CultureInfo.InvariantCulture)} points" : "")}",
        var other => other.ToString() ?? "",
    };

    /// <summary>Whether the entry's value is more than one line of text can say.</summary>
    public static bool IsTable(Entry entry) => entry.Form is EntryForm.Curve or EntryForm.ResistanceTable or EntryForm.RollingTable;

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
