using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Boardwright.Documents.Drawings;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Boardwright.Documents.Pdf;

/// <summary>A PDF file in the making: sheets in millimetres, the same bytes each time.</summary>
sealed partial class PdfBook : IDisposable
{
    const string FaceName = "Inter";

    readonly PdfDocument document = new();
    readonly Dictionary<(double Size, bool IsBold), XFont> fonts = [];
    readonly List<PdfSheet> sheets = [];

    // The library asks for faces in one place for the whole program; what is put there never changes.
    static PdfBook() => GlobalFontSettings.FontResolver ??= new Faces();

    /// <summary>Begins a book.</summary>
    /// <param name="title">Its title.</param>
    public PdfBook(string title)
    {
        document.Info.Title = title;
        document.Info.Creator = "Boardwright";
        // A file says when it was written; one that depends on its board alone cannot.
        document.Info.CreationDate = document.Info.ModificationDate = new DateTime(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        document.ViewerPreferences.Elements.SetName("/PrintScaling", "None");
        document.Language = "en";
    }

    /// <summary>Adds a sheet.</summary>
    /// <param name="width">Its width, mm.</param>
    /// <param name="height">Its height, mm.</param>
    public PdfSheet Add(double width, double height)
    {
        var page = document.AddPage();
        page.Width = XUnit.FromMillimeter(width);
        page.Height = XUnit.FromMillimeter(height);
        var sheet = new PdfSheet(XGraphics.FromPdfPage(page, XGraphicsUnit.Millimeter), FontOf);
        sheets.Add(sheet);
        return sheet;
    }

    /// <summary>The file.</summary>
    public byte[] Save()
    {
        foreach (var sheet in sheets)
            sheet.Dispose();
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        // Names of font subsets and the file's ids are drawn by chance; others of the same length keep every offset.
        var text = Encoding.Latin1.GetString(stream.GetBuffer(), 0, (int)stream.Length);
        var tags = new Dictionary<string, string>(StringComparer.Ordinal);
        text = SubsetTags().Replace(text, m => tags.TryGetValue(m.Value, out var tag) ? tag : tags[m.Value] = Tag(tags.Count));
        text = DocumentIds().Replace(
            text, m => new string('0', m.Length).Remove(8, 1).Insert(8, "-").Remove(13, 1).Insert(13, "-").Remove(18, 1).Insert(18, "-")
            .Remove(23, 1).Insert(23, "-"));
        text = FileIds().Replace(text, m => Regex.Replace(m.Value, "[0-9A-F]", "0", RegexOptions.None, TimeSpan.FromSeconds(1)));
        return Encoding.Latin1.GetBytes(text);
    }

    /// <inheritdoc/>
    public void Dispose() => document.Dispose();

    XFont FontOf(double size, bool isBold) =>
        fonts.TryGetValue((size, isBold), out var font) ? font
        : fonts[(size, isBold)] = new XFont(
        FaceName, size, isBold ? XFontStyleEx.Bold : XFontStyleEx.Regular, XPdfFontOptions.UnicodeDefault);

    static string Tag(int number) => string.Create(CultureInfo.InvariantCulture, $"AAAA{(char)('A' + number / 26)}{(char)('A' + number % 26)}");

    [GeneratedRegex("(?<=/(?:BaseFont|FontName)/)[A-Z]{6}(?=\\+)", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex SubsetTags();

    [GeneratedRegex("(?<=uuid:)[0-9a-f-]{36}", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex DocumentIds();

    [GeneratedRegex("(?<=/ID\\[<)[0-9A-F]{32}><[0-9A-F]{32}", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex FileIds();

    sealed class Faces : IFontResolver
    {
        public byte[] GetFont(string faceName) => (faceName == "Inter-Bold" ? FontFile.Bold : FontFile.Regular).Bytes;

        public FontResolverInfo ResolveTypeface(string familyName, bool bold, bool italic) => new(bold ? "Inter-Bold" : "Inter-Regular");
    }
}

/// <summary>A sheet of a PDF file: millimetres from its upper left corner.</summary>
sealed class PdfSheet(XGraphics graphics, Func<double, bool, XFont> fonts) : IDisposable
{
    /// <summary>Draws a line.</summary>
    public void Line(double x1, double y1, double x2, double y2, double width = 0.2, string ink = "#000000") =>
        graphics.DrawLine(PenOf(width, ink, null), x1, y1, x2, y2);

    /// <summary>Draws a line through points.</summary>
    public void Path(ReadOnlySpan<Point> spots, double width, string ink, IReadOnlyList<double>? dash = null) =>
        graphics.DrawLines(PenOf(width, ink, dash), Points(spots));

    /// <summary>Draws a circle.</summary>
    public void Circle(double x, double y, double radius, double width = 0.2, string ink = "#000000", IReadOnlyList<double>? dash = null) =>
        graphics.DrawEllipse(PenOf(width, ink, dash), x - radius, y - radius, 2 * radius, 2 * radius);

    /// <summary>Fills a circle.</summary>
    public void Disc(double x, double y, double radius, string ink) =>
        graphics.DrawEllipse(new XSolidBrush(ColourOf(ink)), x - radius, y - radius, 2 * radius, 2 * radius);

    /// <summary>Fills a rectangle.</summary>
    public void Fill(double x, double y, double width, double height, string ink) =>
        graphics.DrawRectangle(new XSolidBrush(ColourOf(ink)), x, y, width, height);

    /// <summary>Fills an outline.</summary>
    public void Fill(ReadOnlySpan<Point> outline, string ink) =>
        graphics.DrawPolygon(new XSolidBrush(ColourOf(ink)), Points(outline), XFillMode.Winding);

    /// <summary>Draws a rectangle.</summary>
    public void Frame(double x, double y, double width, double height, double pen = 0.2, string ink = "#000000") =>
        graphics.DrawRectangle(PenOf(pen, ink, null), x, y, width, height);

    /// <summary>Writes a line of text.</summary>
    /// <param name="x">Where its beginning, middle or end is.</param>
    /// <param name="y">Where its baseline is.</param>
    /// <param name="text">The text.</param>
    /// <param name="size">Size of the letters, mm.</param>
    /// <param name="isBold">Whether they are bold.</param>
    /// <param name="anchor">Which part stands at x.</param>
    /// <param name="ink">Their colour.</param>
    public void Write(double x, double y, string text, double size, bool isBold = false, Anchor anchor = Anchor.Start, string ink = "#000000")
    {
        text = Typeset.Shown(text);
        if (text.Length == 0)
            return;
        var width = anchor == Anchor.Start ? 0 : Typeset.WidthOf(text, size, isBold);
        var start = x - (anchor == Anchor.Middle ? width / 2 : width);
        graphics.DrawString(text, fonts(size, isBold), new XSolidBrush(ColourOf(ink)), start, y, XStringFormats.BaseLineLeft);
    }

    /// <summary>Keeps what follows inside a rectangle, until the returned thing is disposed of.</summary>
    public IDisposable Within(double x, double y, double width, double height)
    {
        var state = graphics.Save();
        graphics.IntersectClip(new XRect(x, y, width, height));
        return new Released(graphics, state);
    }

    /// <inheritdoc/>
    public void Dispose() => graphics.Dispose();

    static XPoint[] Points(ReadOnlySpan<Point> spots)
    {
        var points = new XPoint[spots.Length];
        for (var i = 0; i < spots.Length; i++)
            points[i] = new XPoint(spots[i].X, spots[i].Y);
        return points;
    }

    static XPen PenOf(double width, string ink, IReadOnlyList<double>? dash)
    {
        var pen = new XPen(ColourOf(ink), width) { LineCap = XLineCap.Flat, LineJoin = XLineJoin.Round };
        if (dash is { Count: > 0 })
        {
            // Dashes go by the width of the pen.
            pen.DashPattern = [.. dash.Select(d => d / width)];
        }

        return pen;
    }

    static XColor ColourOf(string ink) => XColor.FromArgb(
        Convert.ToInt32(ink[1..3], 16), Convert.ToInt32(ink[3..5], 16), Convert.ToInt32(ink[5..7], 16));

    sealed class Released(XGraphics graphics, XGraphicsState state) : IDisposable
    {
        public void Dispose() => graphics.Restore(state);
    }
}
