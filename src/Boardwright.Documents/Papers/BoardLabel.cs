using Boardwright.Documents.Pdf;
using Boardwright.Examinations;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>The label for the board's box, 70 mm by 40 mm.</summary>
static class BoardLabel
{
    const double Width = 70, Height = 40, Edge = 3, Code = 26;

    public static byte[] Write(PaperContext gathering)
    {
        var order = gathering.Order;
        using var book = new PdfBook($"{order.Name}: label");
        var sheet = book.Add(Width, Height);
        sheet.Frame(0.5, 0.5, Width - 1, Height - 1, 0.2);
        var warning = Typeset.Wrapped("Do not open, crush, wet or overheat. Try brake and remote before each ride.", Width - 2 * Edge, 2.4, isBold: true);
        var low = Height - Edge - warning.Count * 3.1;
        for (var i = 0; i < warning.Count; i++)
            sheet.Write(Edge, low + 2.6 + i * 3.1, warning[i], 2.4, isBold: true);
        var room = Width - 2 * Edge - (order.BoardAddress is null ? 0 : Code + 1);
        // A long name takes smaller letters, and of a very long one the beginning has to do.
        var size = Typeset.Wrapped(order.Name, room, 4.4, isBold: true).Count == 1 ? 4.4 : 3.0;
        var y = Edge + size * 0.9;
        foreach (var line in Typeset.Wrapped(order.Name, room, size, isBold: true).Take(2))
        {
            sheet.Write(Edge, y, line, size, isBold: true);
            y += size * 1.2;
        }

        string[] lines =
        [
            order.Revision.Length > 0 ? $"revision {order.Revision}" : "",
            Invariant($"{Or(gathering.Format(gathering.Parts.Pack.Series, s => $"{s}"), "__")}s{Or(gathering.Format(gathering.Parts.Pack.Parallel, p => $"{p}"), "__")}p lithium ion, {Or(gathering.Figure(Catalogue.PackEnergy, "0"), "____ Wh")}"),
            Invariant($"charge: {Or(gathering.Format(gathering.Parts.Charger.Voltage, v => $"{v.Volts:0.0} V"), "____ V")}, {Or(gathering.Format(gathering.Parts.Charger.Current, a => $"{a.Amperes:0.#} A"), "____ A")} only"),
            "no. ________  date ________",
        ];
        foreach (var line in lines.Where(l => l.Length > 0).SelectMany(l => Typeset.Wrapped(l, room, 2.5)).Where(_ => y < low - 0.5))
        {
            sheet.Write(Edge, y, line, 2.5);
            y += 3.9;
        }

        if (order.BoardAddress is { } address)
            DrawingPdf.Code(sheet, QrModules.Encode(address), Width - Edge - Code + 1, Edge - 1, Code);
        return book.Save();
    }
}
