using System.Text;

namespace Boardwright.Documents.Pdf;

/// <summary>How much room a text takes in the faces of the papers, and where it is cut.</summary>
static class Typeset
{
    const int Stand = 0x25A1;

    // Signs of units that stay on the line of their number.
    static readonly HashSet<string> Units = new(
        ["mm", "m", "km", "km/h", "m/s", "%", "°C", "K", "V", "A", "mA", "Ah", "W", "Wh", "Wh/km", "Hz", "N", "N·m", "kg", "g", "h", "min", "s", "Ω", "mΩ", "kΩ", "MΩ", "rpm", "rpm/V", "mV", "mm²", "EUR", "J",
        "in"], StringComparer.Ordinal);

    /// <summary>Width of a text in the unit of its size.</summary>
    public static double WidthOf(string text, double size, bool isBold = false) => FaceOf(isBold).WidthOf(Shown(text), size);

    /// <summary>A text with a small square for each sign that the faces lack.</summary>
    public static string Shown(string text)
    {
        var plain = true;
        foreach (var c in text)
            plain &= c is >= ' ' and <= '~';
        if (plain)
            return text;
        var shown = new StringBuilder(text.Length);
        foreach (var rune in text.Normalize(NormalizationForm.FormC).EnumerateRunes())
        {
            if (Has(rune))
                shown.Append(rune);
            else if (IsSeen(rune))
                shown.Append((char)Stand);
        }

        return shown.ToString();
    }

    /// <summary>The signs of a text that the faces lack.</summary>
    public static IEnumerable<Rune> Lacking(string text) =>
        text.Normalize(NormalizationForm.FormC).EnumerateRunes().Where(rune => !Has(rune) && IsSeen(rune));

    static bool Has(Rune rune) => FontFile.Regular.Has(rune.Value) && FontFile.Bold.Has(rune.Value);

    static bool IsSeen(Rune rune) =>
        Rune.GetUnicodeCategory(rune) is not (System.Globalization.UnicodeCategory.Format or System.Globalization.UnicodeCategory.Control);

    /// <summary>A text cut at its blanks into lines no wider than a width; a word that is wider is cut anywhere.</summary>
    public static IReadOnlyList<string> Wrapped(string text, double width, double size, bool isBold = false)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.Split('\n'))
        {
            var line = "";
            foreach (var word in Words(paragraph))
            {
                var rest = word;
                if (line.Length > 0 && WidthOf($"{line} {rest}", size, isBold) > width)
                {
                    lines.Add(line);
                    line = "";
                }

                while (line.Length == 0 && WidthOf(rest, size, isBold) > width && Fitting(rest, width, size, isBold) is var taken
                    && taken < rest.Length)
                {
                    lines.Add(rest[..taken]);
                    rest = rest[taken..];
                }

                line = line.Length == 0 ? rest : $"{line} {rest}";
            }

            lines.Add(line);
        }

        return lines;
    }

    /// <summary>A text cut at its end where it is wider than a width.</summary>
    public static string Shortened(string text, double width, double size, bool isBold = false)
    {
        if (WidthOf(text, size, isBold) <= width)
            return text;
        var length = text.Length;
        while (length > 0 && WidthOf(text[..length] + "…", size, isBold) > width)
            length--;
        return text[..length] + "…";
    }

    // Between which a line may be cut: a number keeps its unit.
    static IEnumerable<string> Words(string text)
    {
        var held = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (held.Length > 0 && char.IsAsciiDigit(held[^1]) && Units.Contains(word.TrimEnd('.', ',', ';', ':', ')')))
            {
                held = $"{held} {word}";
                continue;
            }

            if (held.Length > 0)
                yield return held;
            held = word;
        }

        if (held.Length > 0)
            yield return held;
    }

    // How much of a word fits, at least one sign.
    static int Fitting(string word, double width, double size, bool isBold)
    {
        var taken = 0;
        var used = 0.0;
        foreach (var rune in word.EnumerateRunes())
        {
            used += WidthOf(rune.ToString(), size, isBold);
            if (used > width && taken > 0)
                break;
            taken += rune.Utf16SequenceLength;
        }

        return taken;
    }

    static FontFile FaceOf(bool isBold) => isBold ? FontFile.Bold : FontFile.Regular;
}
