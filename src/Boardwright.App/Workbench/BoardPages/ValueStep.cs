using System.Globalization;
using System.Text.RegularExpressions;

namespace Boardwright.App.Workbench.BoardPages;

/// <summary>Turns a written value one step up or down.</summary>
static partial class ValueStep
{
    /// <summary>One of the last digit that is written, more or less: <c>12.5 mm</c> goes to <c>12.6 mm</c>, <c>52</c> to
    /// <c>53</c>.</summary>
    /// <returns>The next value, or <c>null</c> when the text does not begin with a number.</returns>
    public static string? By(string text, int steps)
    {
        var match = Number().Match(text);
        if (!match.Success || !decimal.TryParse(match.Value, NumberStyles.Number, CultureInfo.InvariantCulture, out var value))
            return null;
        var scale = match.Value.IndexOf('.') is >= 0 and var point ? match.Value.Length - point - 1 : 0;
        var step = new decimal(1, 0, 0, false, (byte)scale);
        return (value + steps * step).ToString(CultureInfo.InvariantCulture) + text[match.Length..];
    }

    [GeneratedRegex(@"^-?\d+(\.\d+)?", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Number();
}
