using System.Globalization;

namespace Boardwright.Parts;

/// <summary>Values as a person would write them into the board file.</summary>
public static class ValueText
{
    /// <summary>The value of an entry; empty where it is not known. A table is named by how many points it has.</summary>
    public static string Format(Entry entry, IKnown known)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(known);
        return known.Content switch
        {
            null => "",
            IQuantity quantity => QuantityText.Write(quantity.Si, entry.Dimension!),
            bool yes => yes ? "yes" : "no",
            Enum word => Entry.Word(word),
            string text => text,
            IFormattable number when entry.Form is EntryForm.Count => number.ToString(null, CultureInfo.InvariantCulture),
            _ when IsTable(entry) => "a table",
            var other => other.ToString() ?? "",
        };
    }

    /// <summary>The value of an entry to three digits, in the unit of the entry's example; as <see cref="Format"/> where that has none.</summary>
    public static string Rounded(Entry entry, IKnown known)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(known);
        if (known.Content is not IQuantity quantity || entry.Dimension is not { } dimension)
            return Format(entry, known);
        var words = entry.Example.Split(' ', 2);
        return words.Length == 2 && dimension.Find(words[1]) is { } unit ? $"{Dimension.Figures(unit.FromSi(quantity.Si))} {words[1]}"
            : words.Length == 1 ? Dimension.Figures(quantity.Si) : Format(entry, known);
    }

    /// <summary>Whether the entry's value is more than one line of text can say.</summary>
    public static bool IsTable(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Form is EntryForm.Curve or EntryForm.ResistanceTable or EntryForm.RollingTable;
    }
}
