using System.Globalization;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pdf;

namespace Boardwright.Documents.Templates;

/// <summary>A size of paper for a printer.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Width">The shorter side, mm.</param>
/// <param name="Height">The longer side, mm.</param>
public sealed record PaperSize(string Name, double Width, double Height)
{
    /// <summary>210 mm by 297 mm.</summary>
    public static PaperSize A4 { get; } = new("A4", 210, 297);
    /// <summary>8.5 in by 11 in.</summary>
    public static PaperSize Letter { get; } = new("Letter", 215.9, 279.4);
}

/// <summary>How a template is cut into sheets of paper: columns and rows that overlap, so that their marks can be laid upon one
/// another.</summary>
/// <param name="PageWidth">Width of a page, mm.</param>
/// <param name="PageHeight">Height of a page, mm.</param>
/// <param name="Columns">Columns of pages.</param>
/// <param name="Rows">Rows of pages.</param>
sealed record Tiling(double PageWidth, double PageHeight, int Columns, int Rows)
{
    /// <summary>Edge of the page on which printers do not print.</summary>
    public const double Edge = 10;
    /// <summary>Strip that two pages share.</summary>
    public const double Overlap = 10;
    /// <summary>Foot of a page, for the check lines and the map.</summary>
    public const double Foot = 22;
    /// <summary>Width of the template on one page.</summary>
    public double Across => PageWidth - 2 * Edge;
    /// <summary>Height of the template on one page.</summary>
    public double Along => PageHeight - 2 * Edge - Foot;
    /// <summary>Left edge on the template of a column's window.</summary>
    public double Left(int column) => column * (Across - Overlap);
    /// <summary>Upper edge on the template of a row's window, from the template's upper edge.</summary>
    public double Top(int row) => row * (Along - Overlap);

    /// <summary>The tiling of a template with the fewest pages: upright or lying.</summary>
    public static Tiling Compute(Drawing template, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(template);
        ArgumentNullException.ThrowIfNull(paper);
        var upright = Cut(template, paper.Width, paper.Height);
        var lying = Cut(template, paper.Height, paper.Width);
        return lying.Columns * lying.Rows <= upright.Columns * upright.Rows ? lying : upright;
    }

    static Tiling Cut(Drawing template, double width, double height)
    {
        var page = new Tiling(width, height, 1, 1);
        return page with { Columns = Count(template.Width, page.Across), Rows = Count(template.Height, page.Along) };
    }

    static int Count(double whole, double window) => Math.Max(1, (int)Math.Ceiling((whole - Overlap) / (window - Overlap) - 1e-9));
}

/// <summary>Writes templates as PDF at full size: on one sheet for a plotter, or in pages for a printer.</summary>
static class TemplatePdf
{
    const double Tick = 4, MapWidth = 24;

    /// <summary>One sheet as large as the template.</summary>
    public static byte[] Plot(Drawing template)
    {
        ArgumentNullException.ThrowIfNull(template);
        using var book = new PdfBook(template.Title);
        DrawingPdf.Draw(book.Add(template.Width, template.Height), template, 0, 0, 1);
        return book.Save();
    }

    /// <summary>Pages with join marks, check lines and a map of how they lie.</summary>
    public static byte[] Tile(Drawing template, PaperSize paper)
    {
        var tiling = Tiling.Compute(template, paper);
        using var book = new PdfBook($"{template.Title}, {paper.Name}");
        for (var row = 0; row < tiling.Rows; row++)
        {
            for (var column = 0; column < tiling.Columns; column++)
                Page(book.Add(tiling.PageWidth, tiling.PageHeight), template, tiling, column, row);
        }

        return book.Save();
    }

    static void Page(PdfSheet sheet, Drawing template, Tiling tiling, int column, int row)
    {
        var (left, top) = (tiling.Left(column), tiling.Top(row));
        using (sheet.Within(Tiling.Edge, Tiling.Edge, tiling.Across, tiling.Along))
            DrawingPdf.Draw(sheet, template, Tiling.Edge - left, Tiling.Edge - top, 1);
        sheet.Frame(Tiling.Edge, Tiling.Edge, tiling.Across, tiling.Along, 0.1, "#808080");
        Joins(sheet, tiling, column, row);
        Foot(sheet, template, tiling, column, row);
    }

    // A cross with a letter in the middle of each shared strip: pages are laid so that the crosses of one name meet.
    static void Joins(PdfSheet sheet, Tiling tiling, int column, int row)
    {
        var (low, right) = (Tiling.Edge + tiling.Along, Tiling.Edge + tiling.Across);
        foreach (var share in new[] { 0.25, 0.75 })
        {
            var (x, y) = (Tiling.Edge + share * tiling.Across, Tiling.Edge + share * tiling.Along);
            if (column > 0)
                Join(sheet, tiling, Tiling.Edge + Tiling.Overlap / 2, y, JoinName(column - 1, row, 'V', share));
            if (column < tiling.Columns - 1)
                Join(sheet, tiling, right - Tiling.Overlap / 2, y, JoinName(column, row, 'V', share));
            if (row > 0)
                Join(sheet, tiling, x, Tiling.Edge + Tiling.Overlap / 2, JoinName(column, row - 1, 'H', share));
            if (row < tiling.Rows - 1)
                Join(sheet, tiling, x, low - Tiling.Overlap / 2, JoinName(column, row, 'H', share));
        }
    }

    static string JoinName(int column, int row, char kind, double share) =>
        string.Create(CultureInfo.InvariantCulture, $"{kind}{column + 1}{row + 1}{(share < 0.5 ? 'a' : 'b')}");

    static void Join(PdfSheet sheet, Tiling tiling, double x, double y, string name)
    {
        sheet.Line(x - Tick, y, x + Tick, y, 0.1);
        sheet.Line(x, y - Tick, x, y + Tick, 0.1);
        sheet.Circle(x, y, 2, 0.1);
        var isLast = x > tiling.PageWidth - Tiling.Edge - Tiling.Overlap;
        sheet.Write(isLast ? x - 2.4 : x + 2.4, y - 1, name, 2.2, anchor: isLast ? Anchor.End : Anchor.Start);
    }

    static void Foot(PdfSheet sheet, Drawing template, Tiling tiling, int column, int row)
    {
        var y = Tiling.Edge + tiling.Along + 8;
        CheckLine(sheet, Tiling.Edge, y, 100, "100 mm");
        CheckLine(sheet, Tiling.Edge, y + 9, 101.6, "4 in");
        var number = row * tiling.Columns + column + 1;
        var (x, room) = (Tiling.Edge + 107, tiling.Across - 107 - MapWidth - 3);
        var says = string.Create(CultureInfo.InvariantCulture, $"Page {number} of {tiling.Columns * tiling.Rows}. Print at 100 %; if a line is off by more than 0.5 mm, switch off scaling and print again. Cut along one frame, lay crosses of one name upon one another, tape.");
        var line = y - 4;
        sheet.Write(x, line, Typeset.Shortened(template.Title, room, 2.5, isBold: true), 2.5, isBold: true);
        foreach (var words in Typeset.Wrapped(says, room, 2.3))
            sheet.Write(x, line += 3.1, words, 2.3);
        Map(sheet, tiling, column, row, Tiling.Edge + tiling.Across, y - 6);
    }

    static void Map(PdfSheet sheet, Tiling tiling, int column, int row, double right, double top)
    {
        var cell = Math.Min(MapWidth / tiling.Columns, 20.0 / tiling.Rows);
        var (w, h) = (cell, cell * 0.75);
        for (var r = 0; r < tiling.Rows; r++)
        {
            for (var c = 0; c < tiling.Columns; c++)
            {
                var (x, y) = (right - (tiling.Columns - c) * w, top + r * h);
                if (c == column && r == row)
                    sheet.Fill(x, y, w, h, "#202020");
                sheet.Frame(x, y, w, h, 0.15);
                sheet.Write(x + w / 2, y + h * 0.68, (r * tiling.Columns + c + 1).ToString(CultureInfo.InvariantCulture), h * 0.5,
                    anchor: Anchor.Middle, ink: c == column && r == row ? "#ffffff" : "#000000");
            }
        }
    }

    static void CheckLine(PdfSheet sheet, double x, double y, double length, string says)
    {
        sheet.Line(x, y, x + length, y, 0.2);
        sheet.Line(x, y - 2, x, y + 2, 0.2);
        sheet.Line(x + length, y - 2, x + length, y + 2, 0.2);
        sheet.Write(x + length / 2, y - 1.2, says, 2.6, anchor: Anchor.Middle);
    }
}
