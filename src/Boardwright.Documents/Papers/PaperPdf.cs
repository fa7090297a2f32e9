using System.Globalization;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pdf;
using Boardwright.Documents.Templates;

namespace Boardwright.Documents.Papers;

/// <summary>Sets papers on pages: black on white, head and foot on each page, tables with their heads repeated.</summary>
static class PaperPdf
{
    /// <summary>The paper as a PDF file.</summary>
    public static byte[] Write(PaperDocument paper, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(paper);
        ArgumentNullException.ThrowIfNull(size);
        var setting = new Setting(size);
        setting.Title(paper);
        foreach (var (i, block) in paper.Blocks.Index())
            setting.Set(block, paper.Blocks.ElementAtOrDefault(i + 1));
        using var book = new PdfBook($"{paper.Board}: {paper.Title}");
        for (var i = 0; i < setting.Pages.Count; i++)
        {
            var sheet = book.Add(size.Width, size.Height);
            Edges(sheet, paper, size, i + 1, setting.Pages.Count);
            foreach (var draw in setting.Pages[i])
                draw(sheet);
        }

        return book.Save();
    }

    static void Edges(PdfSheet sheet, PaperDocument paper, PaperSize size, int page, int pages)
    {
        const double Small = 2.8;
        var (left, right) = (Setting.Side, size.Width - Setting.Side);
        var head = paper.Revision.Length > 0 ? $"revision {paper.Revision}" : "";
        var room = right - left - Typeset.WidthOf(head, Small) - 6;
        sheet.Write(left, 11, Typeset.Shortened($"{paper.Board}: {paper.Title}", room, Small), Small, ink: "#303030");
        sheet.Write(right, 11, head, Small, anchor: Anchor.End, ink: "#303030");
        sheet.Line(left, 13, right, 13, 0.2);
        var foot = size.Height - 10;
        sheet.Line(left, foot - 4, right, foot - 4, 0.2);
        sheet.Write(left, foot, "Computed from the board file by Boardwright; what is not ticked or measured has not been checked.", Small, ink: "#303030");
        sheet.Write(right, foot, string.Create(CultureInfo.InvariantCulture, $"page {page} of {pages}"), Small, anchor: Anchor.End, ink: "#303030");
    }

    sealed class Setting(PaperSize size)
    {
        public const double Side = 18;
        const double Top = 20, Bottom = 18, Body = 3.4, Leading = 1.38, Cell = 3.0, Pad = 1.3, Whole = 70;

        double y = Top;

        public List<List<Action<PdfSheet>>> Pages { get; } = [[]];

        double Width => size.Width - 2 * Side;

        double Low => size.Height - Bottom;

        double Room => Low - y;

        List<Action<PdfSheet>> Page => Pages[^1];

        public void Title(PaperDocument paper)
        {
            foreach (var line in Typeset.Wrapped(paper.Board, Width, 7, isBold: true))
                Line(line, 7, isBold: true);
            foreach (var line in Typeset.Wrapped(paper.Title, Width, 5))
                Line(line, 5);
            y += 2;
        }

        public void Set(Block block, Block? next)
        {
            switch (block)
            {
                case HeadingBlock heading:
                    // Never alone at the foot of a page, nor above what would not be parted.
                    Need(12 + Math.Max(12, Insists(next)));
                    y += 3.5;
                    foreach (var line in Typeset.Wrapped(heading.Text, Width, 4.4, isBold: true))
                        Line(line, 4.4, isBold: true);
                    y += 0.8;
                    break;
                case ParagraphBlock paragraph:
                    foreach (var line in Typeset.Wrapped(paragraph.Text, Width, paragraph.IsQuiet ? 3.0 : Body))
                        Line(line, paragraph.IsQuiet ? 3.0 : Body, ink: paragraph.IsQuiet ? "#404040" : "#000000");
                    y += 1.6;
                    break;
                case PointsBlock points:
                    foreach (var item in points.Items)
                        Point(item);
                    y += 1;
                    break;
                case CautionBlock caution:
                    Framed(caution.Text);
                    break;
                case TableBlock table:
                    Grid(table);
                    break;
                case ChecksBlock checks:
                    Ticked(checks);
                    break;
                case PictureBlock picture:
                    Pictured(picture.Drawing);
                    break;
                case CodeBlock code:
                    Coded(code);
                    break;
                case SignaturesBlock signatures:
                    Signed(signatures);
                    break;
            }
        }

        void Need(double height)
        {
            if (Room < height && y > Top)
            {
                Pages.Add([]);
                y = Top;
            }
        }

        void Line(string text, double letters, bool isBold = false, double indent = 0, string ink = "#000000")
        {
            Need(letters * Leading);
            var at = y + letters;
            Page.Add(sheet => sheet.Write(Side + indent, at, text, letters, isBold, ink: ink));
            y += letters * Leading;
        }

        void Point(string text)
        {
            var lines = Typeset.Wrapped(text, Width - 5, Body);
            Need(Body * Leading);
            var at = y + Body * 0.68;
            Page.Add(sheet => sheet.Disc(Side + 1.6, at, 0.6, "#000000"));
            foreach (var line in lines)
                Line(line, Body, indent: 5);
            y += 0.6;
        }

        // A thick bar and the word, so that it stands out without colour.
        void Framed(string text)
        {
            const double Inset = 6;
            var lines = Typeset.Wrapped("CAUTION: " + text, Width - Inset - 3, Body, isBold: true);
            var height = lines.Count * Body * Leading + 4;
            Need(Math.Min(height, Low - Top));
            var top = y;
            Page.Add(sheet =>
            {
                sheet.Frame(Side, top, Width, height, 0.3);
                sheet.Fill(Side, top, 2.4, height, "#000000");
            });
            for (var i = 0; i < lines.Count; i++)
            {
                var (line, at) = (lines[i], top + 2 + i * Body * Leading + Body);
                Page.Add(sheet => sheet.Write(Side + Inset, at, line, Body, isBold: true));
            }

            y += height + 2.5;
        }

        // Height that a block wants on one page; a short table stays whole.
        double Insists(Block? block)
        {
            switch (block)
            {
                case TableBlock table:
                    var widths = WidthsOf(table);
                    var rough = table.Rows.Sum(
                        r => Height(r.Select((text, c) => text is null ? 1 : Typeset.Wrapped(text, widths[c] - 2 * Pad, Cell).Count)
                        .Append(1).Max()));
                    return rough < Whole ? rough + 8 : 22;
                case PictureBlock picture:
                    return Math.Min(picture.Drawing.Height * ScaleOf(picture.Drawing) + 3, Low - Top - 20);
                default:
                    return 0;
            }
        }

        double ScaleOf(Drawing drawing) => Math.Min(Drawing.Millimetre, Width / drawing.Width);

        double[] WidthsOf(TableBlock table)
        {
            var whole = table.Columns.Sum(c => c.Share);
            return [.. table.Columns.Select(c => c.Share / whole * Width)];
        }

        static double Height(int lines) => lines * Cell * Leading + 2 * Pad - 0.6;

        void Grid(TableBlock table)
        {
            var widths = WidthsOf(table);
            Need(Insists(table));
            Head(table, widths);
            for (var r = 0; r < table.Rows.Count; r++)
            {
                var isTotal = table.HasTotal && r == table.Rows.Count - 1;
                var cells = table.Rows[r].Select(
                    (text, c) => text is null ? null : Typeset.Wrapped(text, widths[c] - 2 * Pad, Cell, isTotal)).ToArray();
                var all = Math.Max(1, cells.Max(c => c?.Count ?? 1));
                // A row higher than a page goes on over its edge.
                for (var from = 0; from < all;)
                {
                    if (Room < Height(Math.Min(all - from, 40)) && y > Top + 12)
                    {
                        Need(double.MaxValue);
                        Head(table, widths);
                    }

                    var take = Math.Min(all - from, Math.Max(1, (int)((Room - 2 * Pad) / (Cell * Leading))));
                    Row(table.Columns, widths, cells.Select(c => c?.Skip(from).Take(take).ToArray()).ToArray(), Height(take), isTotal);
                    from += take;
                }
            }

            y += 3;
        }

        void Head(TableBlock table, double[] widths)
        {
            if (!table.HasHead)
                return;
            var titles = table.Columns.Select((c, i) => Typeset.Wrapped(c.Title, widths[i] - 2 * Pad, Cell, isBold: true)).ToArray();
            var height = Height(titles.Max(t => t.Count));
            var top = y;
            Page.Add(sheet => sheet.Fill(Side, top, Width, height, "#e6e6e6"));
            Row(table.Columns, widths, [.. titles.Select(t => (string[]?)[.. t])], height, isBold: true);
        }

        void Row(IReadOnlyList<TableColumn> columns, double[] widths, string[]?[] cells, double height, bool isBold)
        {
            var (top, x) = (y, Side);
            for (var c = 0; c < cells.Length && c < widths.Length; c++)
            {
                var (left, width, column) = (x, widths[c], columns[c]);
                if (cells[c] is not { } lines)
                    Page.Add(sheet => sheet.Line(left + Pad, top + height - 1.2, left + width - Pad, top + height - 1.2, 0.15, "#606060"));
                else
                {
                    for (var l = 0; l < lines.Length; l++)
                    {
                        var (line, at) = (lines[l], top + Pad + l * Cell * Leading + Cell * 0.95);
                        if (line.Length == 0)
                            continue;
                        Page.Add(column.IsNumber
                            ? sheet => sheet.Write(left + width - Pad, at, line, Cell, isBold, Anchor.End)
                            : sheet => sheet.Write(left + Pad, at, line, Cell, isBold));
                    }
                }

                x += width;
            }

            Page.Add(sheet => sheet.Line(Side, top + height, Side + Width, top + height, 0.12, "#606060"));
            y += height;
        }

        void Ticked(ChecksBlock checks)
        {
            const double Box = 3.6, Gap = 6, Field = 34;
            foreach (var item in checks.Items)
            {
                var room = Width - Gap - (item.Write is null ? 0 : Field + 2);
                var text = Typeset.Wrapped(item.Text, room, Body);
                var pass = item.Pass.Length == 0 ? [] : Typeset.Wrapped("Passes: " + item.Pass, room, Cell);
                var height = text.Count * Body * Leading + pass.Count * Cell * Leading + 1.6;
                Need(Math.Min(height, Low - Top));
                var top = y;
                Page.Add(sheet => sheet.Frame(Side, top + 0.5, Box, Box, 0.3));
                foreach (var line in text)
                    Line(line, Body, indent: Gap);
                foreach (var line in pass)
                    Line(line, Cell, indent: Gap, ink: "#303030");
                if (item.Write is { } unit)
                {
                    var (right, at) = (Side + Width, top + Body * 1.25);
                    var word = Typeset.WidthOf(unit, Cell);
                    Page.Add(sheet =>
                    {
                        sheet.Line(right - Field + 3, at, right - word - 1.5, at, 0.2);
                        sheet.Write(right, at, unit, Cell, anchor: Anchor.End);
                    });
                }

                y += 1.6;
            }

            y += 1;
        }

        void Pictured(Drawing drawing)
        {
            var scale = ScaleOf(drawing);
            Need(drawing.Height * scale + 3);
            var top = y;
            Page.Add(sheet => DrawingPdf.Draw(sheet, drawing, Side, top, scale));
            y += drawing.Height * scale + 3;
        }

        void Coded(CodeBlock code)
        {
            const double Side1 = 30;
            var modules = QrModules.Encode(code.Address);
            var says = Typeset.Wrapped(code.Says, Width - Side1 - 6, Body);
            // As people read it, without the escapes of other scripts.
            var address = Typeset.Wrapped(code.Address.ToString(), Width - Side1 - 6, Cell);
            var height = Math.Max(Side1, 12 + (says.Count * Body + address.Count * Cell) * Leading);
            Need(height + 2);
            var top = y;
            Page.Add(sheet =>
            {
                DrawingPdf.Code(sheet, modules, Side, top, Side1);
                for (var i = 0; i < says.Count; i++)
                    sheet.Write(Side + Side1 + 4, top + 8 + i * Body * Leading, says[i], Body);
                for (var i = 0; i < address.Count; i++)
                    sheet.Write(Side + Side1 + 4, top + 10 + says.Count * Body * Leading + i * Cell * Leading, address[i], Cell);
            });
            y += height + 3;
        }

        void Signed(SignaturesBlock signatures)
        {
            Need(12);
            y += 8;
            var each = Width / signatures.Titles.Count;
            for (var i = 0; i < signatures.Titles.Count; i++)
            {
                var (x, at, title) = (Side + i * each, y, signatures.Titles[i]);
                Page.Add(sheet =>
                {
                    sheet.Line(x, at, x + each - 6, at, 0.2);
                    sheet.Write(x, at + 4, title, Cell);
                });
            }

            y += 8;
        }
    }
}
