using System.Text.RegularExpressions;

namespace Boardwright.App.Workbench.SearchPages;

/// <summary>The brief of a board file, without what was chosen for it.</summary>
static partial class BriefText
{
    /// <summary>The text without its parts, wires, limits and screws, and with some places held.</summary>
    /// <param name="text">Text of a board file.</param>
    /// <param name="held">Parts that stand, by place.</param>
    public static string Compose(string text, IReadOnlyDictionary<string, string> held)
    {
        var newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var brief = Chosen().Replace(text, "").TrimEnd() + newLine;
        return held.Count == 0 ? brief : brief + "parts:" + newLine + string.Concat(held.Select(place => $"  {place.Key}: {place.Value}{newLine}"));
    }

    [GeneratedRegex(@"^(parts|wiring|limits|fixings):[^\n]*\n?(?:[ \t]+[^\n]*\n?|-[^\n]*\n?|\r?\n)*", RegexOptions.Multiline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000)]
    private static partial Regex Chosen();
}
