using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pdf;
using static Boardwright.Documents.Papers.Gathering;

namespace Boardwright.Documents.Papers;

/// <summary>The label for the board's box, 70 mm by 38 mm.</summary>
static class BoardLabel
{
    const double Width = 70, Height = 38, Edge = 3, Code = 27;

    public static byte[] Write(Gathering gathering)
    {
        var order = gathering.Order;
        var book = new PdfBook($"{order.Name}: label");
        var sheet = book.Add(Width, Height);
        sheet.Frame(0.5, 0.5, Width - 1, Height - 1, 0.2);
        var room = Width - 2 * Edge - (order.BoardAddress is null ? 0 : Code + 1);
        var y = Edge + 4.2;
        var name = Typeset.Wrapped(order.Name, room, 4.2, isBold: true);
        foreach (var line in name.Take(2))
        {
            sheet.Write(Edge, y, line, 4.2, isBold: true);
            y += 4.8;
        }

        string[] lines =
        [
            order.Revision.Length > 0 ? $"revision {order.Revision}" : "",
            Text($"{Or(gathering.Of(gathering.Parts.Pack.Series, s => $"{s}"))}s{Or(gathering.Of(gathering.Parts.Pack.Parallel, p => $"{p}"))}p lithium ion, {Or(gathering.Figure(Catalogue.PackEnergy, "0"))}"),
            Text($"charge with {Or(gathering.Of(gathering.Parts.Charger.Voltage, v => $"{v.Volts:0.0} V"))}, {Or(gathering.Of(gathering.Parts.Charger.Current, a => $"{a.Amperes:0.#} A"))} only"),
            "no. ________  date ________",
        ];
        foreach (var line in lines.Where(l => l.Length > 0).SelectMany(l => Typeset.Wrapped(l, room, 2.5)))
        {
            sheet.Write(Edge, y, line, 2.5);
            y += 3.4;
        }

        var warning = Typeset.Wrapped("Do not open, crush, wet or overheat. Try brake and remote before each ride.", room, 2.3, isBold: true);
        for (var i = 0; i < warning.Count; i++)
            sheet.Write(Edge, Height - Edge - (warning.Count - 1 - i) * 3 - 0.6, warning[i], 2.3, isBold: true);
        if (order.BoardAddress is { } address)
        {
            DrawingPdf.Code(sheet, QrModules.Of(address), Width - Edge - Code + 1, Edge, Code);
            sheet.Write(Width - Edge - Code / 2 + 1, Height - Edge - 1, "this board's page", 2.3, anchor: Anchor.Middle);
        }

        return book.Save();
    }
}
