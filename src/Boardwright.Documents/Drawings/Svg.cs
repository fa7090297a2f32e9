using System.Globalization;
using System.Security;
using System.Text;

namespace Boardwright.Documents.Drawings;

/// <summary>Writes drawings as SVG: text stays text, colours follow a dark screen, and paper is always white.</summary>
/// <remarks>A drawing at full size has no style sheet, which cutters do not know, and no paper, which they would cut out.</remarks>
public static class Svg
{
    /// <summary>A drawing as an SVG element with line feeds as line ends, the same bytes each time.</summary>
    public static string Write(Drawing drawing) => new SvgText(drawing).Write();
}

sealed class SvgText(Drawing drawing)
{
    const int Piece = 200;
    const string Face = "Arial, 'Liberation Sans', Helvetica, sans-serif";

    readonly StringBuilder text = new(16 * 1024);

    bool IsFullSize => drawing.IsFullSize;

    public string Write()
    {
        var (width, height, unit) = (Number(drawing.Width), Number(drawing.Height), IsFullSize ? "mm" : "");
        text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\"");
        text.Append($" viewBox=\"0 0 {width} {height}\" width=\"{width}{unit}\" height=\"{height}{unit}\"");
        if (drawing.UnitsPerMillimetre is { } units)
            text.Append(CultureInfo.InvariantCulture, $" data-units-per-mm=\"{Math.Round(units, 6)}\"");
        // What lies within an image is out of reach for those who do not see it; groups with names are not to be.
        var role = drawing.Shapes.Any(s => s is DrawingGroup) ? "group" : "img";
        text.Append($" role=\"{role}\" aria-labelledby=\"{drawing.Name}-title {drawing.Name}-desc\">\n");
        text.Append($"<title id=\"{drawing.Name}-title\">{Escape(drawing.Title)}</title>\n");
        text.Append($"<desc id=\"{drawing.Name}-desc\">{Escape(drawing.Says)}</desc>\n");
        if (!IsFullSize)
        {
            Style();
            text.Append($"<rect class=\"bw-fill-paper\" width=\"{width}\" height=\"{height}\"/>\n");
        }

        foreach (var shape in drawing.Shapes)
            Shape(shape);
        return text.Append("</svg>\n").ToString();
    }

    void Shape(Shape shape)
    {
        switch (shape)
        {
            case Stroke stroke:
                Line(stroke);
                break;
            case Patch patch:
                text.Append($"<path {Look("", patch.Ink)} d=\"");
                Path(patch.Outline.Span);
                text.Append("z\"/>\n");
                break;
            case Circle circle:
                text.Append($"<circle {Look(circle.Ink is null ? "bw-line" : "", circle.Ink, circle.Rim.Ink)} {Attributes(circle.Rim)}");
                text.Append($" cx=\"{Number(circle.Centre.X)}\" cy=\"{Number(circle.Centre.Y)}\" r=\"{Number(circle.Radius)}\"/>\n");
                break;
            case Words words:
                var look = IsFullSize ? $"font-family=\"{Face}\" {Look("", words.Ink)}" : Look("bw-words", words.Ink, halo: words.HasHalo);
                var anchor = words.Anchor switch
                {
                    Anchor.Start => "",
                    Anchor.Middle => " text-anchor=\"middle\"",
                    _ => " text-anchor=\"end\"",
                };
                text.Append($"<text {look} x=\"{Number(words.At.X)}\" y=\"{Number(words.At.Y)}\" font-size=\"{Number(words.Size)}\"");
                text.Append($"{(words.IsBold ? " font-weight=\"bold\"" : "")}{anchor}>{Escape(words.Text)}</text>\n");
                break;
            case DrawingGroup group:
                // Programs that cut take a group with an id for a layer.
                var (key, mark) = (Escape(group.Key), group.Mark.Length > 0 ? $" bw-{group.Mark}" : "");
                text.Append(IsFullSize ? $"<g id=\"{key}\">\n" : $"<g class=\"bw-{group.Kind}{mark}\" data-{group.Kind}=\"{key}\">\n");
                if (group.Title.Length > 0)
                    text.Append($"<title>{Escape(group.Title)}</title>\n");
                foreach (var inner in group.Shapes)
                    Shape(inner);
                text.Append("</g>\n");
                break;
        }
    }

    // A browser paints a line of thousands of corners several times as fast in pieces, and without rounding each corner off.
    void Line(Stroke stroke)
    {
        var spots = stroke.Path.Span;
        if (!IsLong(stroke))
        {
            Line(stroke.Pen, spots, "bw-line", 0);
            return;
        }

        var passed = 0.0;
        for (var start = 0; start < spots.Length - 1; start += Piece)
        {
            var piece = spots.Slice(start, Math.Min(Piece + 1, spots.Length - start));
            Line(stroke.Pen, piece, "bw-line bw-long", passed);
            for (var i = 1; i < piece.Length; i++)
                passed += double.Hypot(piece[i].X - piece[i - 1].X, piece[i].Y - piece[i - 1].Y);
        }
    }

    void Line(Pen pen, ReadOnlySpan<Point> spots, string kind, double passed)
    {
        text.Append($"<path {Look(kind, null, pen.Ink)} {Attributes(pen, passed)} d=\"");
        Path(spots);
        text.Append("\"/>\n");
    }

    static bool IsLong(Stroke stroke) => stroke.Path.Length > 4 * Piece;

    string Look(string kind, Ink? fill, Ink? line = null, bool halo = false)
    {
        if (IsFullSize)
            return $"fill=\"{(fill is { } full ? Palette.Light[full] : "none")}\"" + (line is { } edge ? $" stroke=\"{Palette.Light[edge]}\"" : "");
        var (inner, rim) = (fill is { } f ? $" bw-fill-{Word(f)}" : "", line is { } l ? $" bw-line-{Word(l)}" : "");
        return $"class=\"{$"{kind}{inner}{rim}".TrimStart()}{(halo ? " bw-halo" : "")}\"";
    }

    static string Attributes(Pen pen, double passed = 0)
    {
        var width = $"stroke-width=\"{Number(pen.Width)}\"";
        if (Dashes.LengthsOf(pen.Dash) is not { Count: > 0 } lengths)
            return width;
        var offset = passed > 0 ? $" stroke-dashoffset=\"{Number(passed % lengths.Sum())}\"" : "";
        return $"{width} stroke-dasharray=\"{string.Join(' ', lengths.Select(l => l.ToString(CultureInfo.InvariantCulture)))}\"{offset}";
    }

    // From spot to spot, which takes half the room of places on the sheet; the steps are whole hundredths, so that no error gathers.
    void Path(ReadOnlySpan<Point> spots)
    {
        var (x, y) = (0L, 0L);
        for (var i = 0; i < spots.Length; i++)
        {
            var (nextX, nextY) = (Hundredths(spots[i].X), Hundredths(spots[i].Y));
            if (i < 2)
                text.Append(i == 0 ? 'M' : 'l');
            else if (nextX >= x)
                text.Append(' ');
            Append(nextX - x);
            if (nextY >= y)
                text.Append(' ');
            Append(nextY - y);
            (x, y) = (nextX, nextY);
        }
    }

    // Colours as rules of their own, not as variables: many programs that place pictures on paper know no variables.
    void Style()
    {
        var shapes = DrawingGroup.Flat(drawing.Shapes).ToList();
        var fills = new SortedSet<Ink>(shapes.Select(FillOf).OfType<Ink>()) { Ink.Paper };
        var lines = new SortedSet<Ink>(shapes.Select(LineOf).OfType<Ink>());
        text.Append("<style>\n");
        text.Append(CultureInfo.InvariantCulture, $".bw-words {{ font-family: {Face}; }}\n");
        text.Append(".bw-line { fill: none; stroke-linejoin: round; }\n");
        if (shapes.Any(s => s is Stroke stroke && IsLong(stroke)))
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

    static Ink? FillOf(Shape shape) => shape switch
    {
        Patch patch => patch.Ink,
        Circle circle => circle.Ink,
        Words words => words.Ink,
        _ => null,
    };

    static Ink? LineOf(Shape shape) => shape switch
    {
        Stroke stroke => stroke.Pen.Ink,
        Circle circle => circle.Rim.Ink,
        _ => null,
    };

    static readonly string[] InkWords = [.. Enum.GetNames<Ink>().Select(n => n.ToLowerInvariant())];

    static string Word(Ink ink) => InkWords[(int)ink];

    static string Escape(string text) => SecurityElement.Escape(text);

    static long Hundredths(double value) => double.IsFinite(value)
        ? (long)Math.Round(value * 100, MidpointRounding.AwayFromZero)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "Only finite places can be drawn.");

    static string Number(double value) => (Hundredths(value) / 100m).ToString("0.##", CultureInfo.InvariantCulture);

    // Without trailing zeros and without a negative zero.
    void Append(long hundredths)
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
