using System.Text.RegularExpressions;
using Boardwright.Parts;

namespace Boardwright.App.Reports;

/// <summary>How a missing value is come by, in the words of the entry itself.</summary>
static partial class MeasureAdvice
{
    /// <summary>What the entry with a dotted key is and how to measure it; a plain request where the key is none of an entry.</summary>
    public static string For(string key)
    {
        if (EntryOf(key) is not { } entry)
            return "measure it or look it up.";
        return entry.About.Measure is { } measure ? $"{entry.About.Says} {measure}" : entry.About.Says;
    }

    static Entry? EntryOf(string key)
    {
        var names = Places().Replace(key, "").Split('.');
        return Within(typeof(Fitted), names) ?? Within(typeof(Board), names);
    }

    static Entry? Within(Type sheet, ReadOnlySpan<string> names)
    {
        var name = names[0];
        if (Entry.ListEntries(sheet).FirstOrDefault(e => e.Key == name) is not { } entry)
            return null;
        return names.Length == 1 ? entry
            : entry.Form == EntryForm.NamedSheets && names.Length > 2 ? Within(entry.ValueType, names[2..])
            : entry.Form is EntryForm.Sheet or EntryForm.Sheets ? Within(entry.ValueType, names[1..])
            : null;
    }

    [GeneratedRegex(@"\[\d+\]", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Places();
}
