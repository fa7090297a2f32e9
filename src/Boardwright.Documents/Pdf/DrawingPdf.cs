using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Pdf;

/// <summary>Puts drawings on sheets of a PDF file.</summary>
static class DrawingPdf
{
    /// <summary>Draws a drawing with its upper left corner at a place.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="drawing">The drawing.</param>
    /// <param name="left">Where its left edge goes, mm.</param>
    /// <param name="top">Where its upper edge goes, mm.</param>
    /// <param name="scale">Millimetres for one of its units.</param>
    public static void Draw(PdfSheet sheet, Drawing drawing, double left, double top, double scale)
    {
        double X(double x) => left + x * scale;
        double Y(double y) => top + y * scale;
        Point[] At(ReadOnlyMemory<Point> spots) => [.. spots.ToArray().Select(s => new Point(X(s.X), Y(s.Y)))];
        double[] Lengths(Pen pen) => [.. Dashes.LengthsOf(pen.Dash).Select(d => d * scale)];
        foreach (var shape in DrawingGroup.Flat(drawing.Shapes))
        {
            switch (shape)
            {
                case Stroke { Path.Length: > 1 } stroke:
                    sheet.Path(At(stroke.Path), stroke.Pen.Width * scale, Palette.Light[stroke.Pen.Ink], Lengths(stroke.Pen));
                    break;
                case Patch { Outline.Length: > 2 } patch:
                    sheet.Fill(At(patch.Outline), Palette.Light[patch.Ink]);
                    break;
                case Circle circle:
                    var (x, y, radius, rim) = (X(circle.Centre.X), Y(circle.Centre.Y), circle.Radius * scale, circle.Rim);
                    if (circle.Ink is { } fill)
                        sheet.Disc(x, y, radius, Palette.Light[fill]);
                    sheet.Circle(x, y, radius, rim.Width * scale, Palette.Light[rim.Ink], Lengths(rim));
                    break;
                case Words words:
                    sheet.Write(X(words.At.X), Y(words.At.Y), words.Text, words.Size * scale, words.IsBold, words.Anchor,
                        Palette.Light[words.Ink]);
                    break;
            }
        }
    }

    /// <summary>Draws a code of dark squares, as wide as given with its quiet edge.</summary>
    public static void Code(PdfSheet sheet, bool[][] modules, double left, double top, double side)
    {
        var step = side / (modules.Length + 2 * Papers.QrModules.Quiet);
        var edge = Papers.QrModules.Quiet * step;
        for (var y = 0; y < modules.Length; y++)
        {
            // Neighbours of a row in one piece, so that no viewer shows a seam.
            for (var x = 0; x < modules.Length; x++)
            {
                if (!modules[y][x])
                    continue;
                var run = 1;
                while (x + run < modules.Length && modules[y][x + run])
                    run++;
                sheet.Fill(left + edge + x * step, top + edge + y * step, run * step, step, "#000000");
                x += run;
            }
        }
    }
}
