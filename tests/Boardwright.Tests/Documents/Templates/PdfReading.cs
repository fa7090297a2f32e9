using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Boardwright.Tests.Documents.Templates;

/// <summary>What another library reads in a PDF file, in millimetres from a page's lower left corner.</summary>
static class PdfReading
{
    const double Millimetre = 25.4 / 72;

    public sealed record PdfRectangle(double Left, double Low, double Width, double Height)
    {
        public double X => Left + Width / 2;

        public double Y => Low + Height / 2;
    }

    public static T Of<T>(byte[] file, Func<PdfDocument, T> read)
    {
        using var document = PdfDocument.Open(file);
        return read(document);
    }

    /// <summary>Boxes around all that is drawn on a page.</summary>
    public static IReadOnlyList<PdfRectangle> Paths(Page page) =>
        [.. page.Paths.Select(p => p.GetBoundingRectangle()).Where(r => r is not null).Select(r => new PdfRectangle(
            r!.Value.Left * Millimetre, r.Value.Bottom * Millimetre, r.Value.Width * Millimetre, r.Value.Height * Millimetre))];

    public static IReadOnlyList<PdfRectangle> Paths(byte[] file, int page) => Of(file, d => Paths(d.GetPage(page)));

    public static string Text(byte[] file) => Of(file, d => string.Join('\n', d.GetPages().Select(p => p.Text)));
}
