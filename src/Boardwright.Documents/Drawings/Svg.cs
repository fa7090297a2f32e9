using System.Globalization;
using System.Security;
using System.Text;

namespace Boardwright.Documents.Drawings;

/// <summary>Writes drawings as SVG: text stays text, colours follow a dark screen, and paper is always white.</summary>
public static class Svg
{
    const int Piece = 200;
    const string Face = "Arial, 'Liberation Sans', Helvetica, sans-serif";

    /// <summary>A drawing as an SVG element with line feeds as line ends, the same bytes each time.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="isInMillimetres">Whether its size is stated in millimetres, for paper, and not in pixels.</param>
    public static string Write(Drawing drawing, bool isInMillimetres = false)
    {
        var text = new StringBuilder(16 * 1024);
        var (scale, unit) = isInMillimetres ? (Drawing.Millimetre, "mm") : (1, "");
        text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ");
        Number(text, drawing.Width);
        text.Append(' ');
        Number(text, drawing.Height);
        text.Append("\" width=\"");
        Number(text, drawing.Width * scale);
        text.Append(unit).Append("\" height=\"");
        Number(text, drawing.Height * scale);
        text.Append(unit);
        if (drawing.UnitsPerMillimetre is { } units)
            text.Append(CultureInfo.InvariantCulture, $"\" data-units-per-mm=\"{Math.Round(units, 6)}");
        // What lies within an image is out of reach for those who do not see it; groups with names are not to be.
        var role = drawing.Shapes.Any(s => s is DrawingGroup) ? "group" : "img";
        text.Append(CultureInfo.InvariantCulture, $"\" role=\"{role}\" aria-labelledby=\"{drawing.Name}-title {drawing.Name}-desc\">\n");
        text.Append(CultureInfo.InvariantCulture, $"<title id=\"{drawing.Name}-title\">{Escape(drawing.Title)}</title>\n");
        text.Append(CultureInfo.InvariantCulture, $"<desc id=\"{drawing.Name}-desc\">{Escape(drawing.Says)}</desc>\n");
        Style(text, drawing);
        text.Append("<rect class=\"bw-fill-paper\" width=\"");
        Number(text, drawing.Width);
        text.Append("\" height=\"");
        Number(text, drawing.Height);
        text.Append("\"/>\n");
        foreach (var shape in drawing.Shapes)
            Shape(text, shape);
        return text.Append("</svg>\n").ToString();
    }

    static void Shape(StringBuilder text, Shape shape)
    {
        switch (shape)
        {
            case Stroke stroke:
                Line(text, stroke);
                break;
            case Patch patch:
                text.Append(CultureInfo.InvariantCulture, $"<path class=\"bw-fill-{Word(patch.Ink)}\" d=\"");
                Path(text, patch.Outline.Span);
                text.Append("z\"/>\n");
                break;
            case Dot dot:
                text.Append(CultureInfo.InvariantCulture, $"<circle class=\"bw-fill-{Word(dot.Ink)} bw-line-{Word(dot.Rim)}\" stroke-width=\"");
                Number(text, dot.RimWidth);
                text.Append("\" cx=\"");
                Number(text, dot.Centre.X);
                text.Append("\" cy=\"");
                Number(text, dot.Centre.Y);
                text.Append("\" r=\"");
                Number(text, dot.Radius);
                text.Append("\"/>\n");
                break;
            case Words words:
                AppendWords(text, words);
                break;
            case DrawingGroup group:
                text.Append(CultureInfo.InvariantCulture, $"<g class=\"bw-{group.Kind}{(group.Mark.Length > 0 ? $" bw-{group.Mark}" : "")}\" data-{group.Kind}=\"{Escape(group.Key)}\">\n");
                if (group.Title.Length > 0)
                    text.Append(CultureInfo.InvariantCulture, $"<title>{Escape(group.Title)}</title>\n");
                foreach (var inner in group.Shapes)
                    Shape(text, inner);
                text.Append("</g>\n");
                break;
        }
    }

    // A browser paints a line of thousands of corners several times as fast in pieces, and without rounding each corner off.
    static void Line(StringBuilder text, Stroke stroke)
    {
        var spots = stroke.Path.Span;
        if (!IsLong(stroke))
        {
            Line(text, stroke.Pen, spots, "bw-line", 0);
            return;
        }

        var passed = 0.0;
        for (var start = 0; start < spots.Length - 1; start += Piece)
        {
            var piece = spots.Slice(start, Math.Min(Piece + 1, spots.Length - start));
            Line(text, stroke.Pen, piece, "bw-line bw-long", passed);
            for (var i = 1; i < piece.Length; i++)
                passed += double.Hypot(piece[i].X - piece[i - 1].X, piece[i].Y - piece[i - 1].Y);
        }
    }

    static void Line(StringBuilder text, Pen pen, ReadOnlySpan<Point> spots, string kind, double passed)
    {
        text.Append(CultureInfo.InvariantCulture, $"<path class=\"{kind} bw-line-{Word(pen.Ink)}\" stroke-width=\"");
        Number(text, pen.Width);
        if (Dashes.LengthsOf(pen.Dash) is { Count: > 0 } lengths)
        {
            text.Append(CultureInfo.InvariantCulture, $"\" stroke-dasharray=\"{string.Join(' ', lengths.Select(l => l.ToString(CultureInfo.InvariantCulture)))}");
            if (passed > 0)
            {
                text.Append("\" stroke-dashoffset=\"");
                Number(text, passed % lengths.Sum());
            }
        }

        text.Append("\" d=\"");
        Path(text, spots);
        text.Append("\"/>\n");
    }

    static bool IsLong(Stroke stroke) => stroke.Path.Length > 4 * Piece;

    static void AppendWords(StringBuilder text, Words words)
    {
        text.Append(CultureInfo.InvariantCulture, $"<text class=\"bw-words bw-fill-{Word(words.Ink)}{(words.HasHalo ? " bw-halo" : "")}\" x=\"");
        Number(text, words.At.X);
        text.Append("\" y=\"");
        Number(text, words.At.Y);
        text.Append("\" font-size=\"");
        Number(text, words.Size);
        if (words.IsBold)
            text.Append("\" font-weight=\"bold");
        if (words.Anchor != Anchor.Start)
            text.Append("\" text-anchor=\"").Append(words.Anchor == Anchor.Middle ? "middle" : "end");
        text.Append(CultureInfo.InvariantCulture, $"\">{Escape(words.Text)}</text>\n");
    }

    // From spot to spot, which takes half the room of places on the sheet; the steps are whole hundredths, so that no error gathers.
    static void Path(StringBuilder text, ReadOnlySpan<Point> spots)
    {
        var (x, y) = (0L, 0L);
        for (var i = 0; i < spots.Length; i++)
        {
            var (nextX, nextY) = (Hundredths(spots[i].X), Hundredths(spots[i].Y));
            if (i < 2)
                text.Append(i == 0 ? 'M' : 'l');
            else if (nextX >= x)
                text.Append(' ');
            Number(text, nextX - x);
            if (nextY >= y)
                text.Append(' ');
            Number(text, nextY - y);
            (x, y) = (nextX, nextY);
        }
    }

    // Colours as rules of their own, not as variables: many programs that place pictures on paper know no variables.
    static void Style(StringBuilder text, Drawing drawing)
    {
        var fills = new SortedSet<Ink> { Ink.Paper };
        var lines = new SortedSet<Ink>();
        var hasLong = false;
        foreach (var shape in DrawingGroup.Flat(drawing.Shapes))
        {
            switch (shape)
            {
                case Stroke stroke:
                    lines.Add(stroke.Pen.Ink);
                    hasLong |= IsLong(stroke);
                    break;
                case Patch patch:
                    fills.Add(patch.Ink);
                    break;
                case Dot dot:
                    fills.Add(dot.Ink);
                    lines.Add(dot.Rim);
                    break;
                case Words words:
                    fills.Add(words.Ink);
                    break;
            }
        }

        text.Append("<style>\n");
        text.Append(CultureInfo.InvariantCulture, $".bw-words {{ font-family: {Face}; }}\n");
        text.Append(".bw-line { fill: none; stroke-linejoin: round; }\n");
        if (hasLong)
            text.Append(".bw-long { stroke-linejoin: bevel; }\n");
        text.Append(".bw-halo { paint-order: stroke; stroke-width: 3.5px; stroke-linejoin: round; }\n");
        Colours(Palette.Light, "");
        // Only on a screen: a page that is printed from a dark one stays black on white.
        text.Append("@media screen and (prefers-color-scheme: dark) {\n");
        Colours(Palette.Dark, "  ");
        text.Append("}\n</style>\n");

        void Colours(Palette palette, string indent)
        {
            text.Append(CultureInfo.InvariantCulture, $"{indent}.bw-halo {{ stroke: {palette[Ink.Paper]}; }}\n");
            foreach (var ink in fills)
                text.Append(CultureInfo.InvariantCulture, $"{indent}.bw-fill-{Word(ink)} {{ fill: {palette[ink]}; }}\n");
            foreach (var ink in lines)
                text.Append(CultureInfo.InvariantCulture, $"{indent}.bw-line-{Word(ink)} {{ stroke: {palette[ink]}; }}\n");
        }
    }

    static readonly string[] InkWords = [.. Enum.GetNames<Ink>().Select(n => n.ToLowerInvariant())];

    static string Word(Ink ink) => InkWords[(int)ink];

    static string Escape(string text) => SecurityElement.Escape(text);

    static long Hundredths(double value) => double.IsFinite(value)
        ? (long)Math.Round(value * 100, MidpointRounding.AwayFromZero)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "Only finite places can be drawn.");

    static void Number(StringBuilder text, double value) => Number(text, Hundredths(value));

    // Without trailing zeros and without a negative zero.
    static void Number(StringBuilder text, long hundredths)
    {
        if (hundredths < 0)
        {
            text.Append('-');
            hundredths = -hundredths;
        }

        var (whole, part) = Math.DivRem(hundredths, 100);
        text.Append(whole);
        if (part == 0)
            return;
        text.Append('.').Append((char)('0' + part / 10));
        if (part % 10 != 0)
            text.Append((char)('0' + part % 10));
    }
}
