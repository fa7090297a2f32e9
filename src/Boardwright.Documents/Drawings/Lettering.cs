namespace Boardwright.Documents.Drawings;

/// <summary>How much room a text takes, as the common sans-serif faces have it, so that a layout needs no font.</summary>
/// <error>Some 8 % between faces, for which every width is a little generous.</error>
static class Lettering
{
    const double Generous = 1.06;
    const double Bold = 1.07;
    const int FirstKnown = ' ';
    const short Other = 600;

    // In thousandths of the size, from the space to the tilde.
    static readonly short[] Widths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
        556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
        667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
        556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    /// <summary>Width of a text.</summary>
    public static double WidthOf(string text, double size, bool isBold = false)
    {
        var sum = 0;
        foreach (var c in text)
            sum += c - FirstKnown is >= 0 and var i && i < Widths.Length ? Widths[i] : Other;
        return sum * size / 1000 * Generous * (isBold ? Bold : 1);
    }

    /// <summary>A text cut at its blanks into lines no wider than a width; a word that is wider has a line for itself.</summary>
    public static IReadOnlyList<string> Wrapped(string text, double width, double size, bool isBold = false)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && WidthOf(longer, size, isBold) > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
            lines.Add(line);
        return lines;
    }
}
