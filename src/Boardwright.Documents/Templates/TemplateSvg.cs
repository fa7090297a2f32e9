using System.Globalization;
using System.Security;
using System.Text;
using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Templates;

/// <summary>Writes templates as SVG in millimetres, a group for each layer.</summary>
public static class TemplateSvg
{
    /// <summary>The template as a whole file; one unit is a millimetre.</summary>
    public static string Write(Template template)
    {
        ArgumentNullException.ThrowIfNull(template);
        var text = new StringBuilder(16 * 1024);
        text.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{template.Width}mm\" height=\"{template.Height}mm\" viewBox=\"0 0 {template.Width} {template.Height}\" role=\"img\" aria-labelledby=\"t d\">\n");
        text.Append(CultureInfo.InvariantCulture, $"<title id=\"t\">{SecurityElement.Escape(template.Title)}</title>\n<desc id=\"d\">{SecurityElement.Escape(template.Says)}</desc>\n");
        foreach (var layer in Layers.All)
        {
            var dash = Layers.DashOf(layer);
            var dashes = dash.Count == 0 ? "" : $" stroke-dasharray=\"{string.Join(' ', dash.Select(Number))}\"";
            text.Append(CultureInfo.InvariantCulture, $"<g id=\"{Layers.Name(layer)}\" fill=\"none\" stroke=\"#000\" stroke-width=\"{Number(Layers.Pen(layer))}\"{dashes}>\n");
            foreach (var mark in template.Marks.Where(m => m.Layer == layer))
                Mark(text, mark, template.Height);
            text.Append("</g>\n");
        }

        return text.Append("</svg>\n").ToString();
    }

    static void Mark(StringBuilder text, TemplateMark mark, double height)
    {
        switch (mark)
        {
            case TemplateLine line:
                text.Append(CultureInfo.InvariantCulture, $"<line x1=\"{Number(line.X1)}\" y1=\"{Number(height - line.Y1)}\" x2=\"{Number(line.X2)}\" y2=\"{Number(height - line.Y2)}\"/>\n");
                break;
            case Ring ring:
                text.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{Number(ring.X)}\" cy=\"{Number(height - ring.Y)}\" r=\"{Number(ring.Radius)}\"/>\n");
                break;
            case Bow bow:
                var (x1, y1) = At(bow, bow.From);
                var (x2, y2) = At(bow, bow.To);
                var isLarge = ((bow.To - bow.From) % 360 + 360) % 360 > 180;
                text.Append(CultureInfo.InvariantCulture, $"<path d=\"M{Number(x1)} {Number(height - y1)}A{Number(bow.Radius)} {Number(bow.Radius)} 0 {(isLarge ? 1 : 0)} 0 {Number(x2)} {Number(height - y2)}\"/>\n");
                break;
            case Label label:
                var anchor = label.Anchor switch
                {
                    Anchor.Middle => " text-anchor=\"middle\"",
                    Anchor.End => " text-anchor=\"end\"",
                    _ => "",
                };
                text.Append(CultureInfo.InvariantCulture, $"<text x=\"{Number(label.X)}\" y=\"{Number(height - label.Y)}\" font-family=\"sans-serif\" font-size=\"{Number(label.Size)}\"{(label.IsBold ? " font-weight=\"bold\"" : "")}{anchor} fill=\"#000\" stroke=\"none\">{SecurityElement.Escape(label.Text)}</text>\n");
                break;
        }
    }

    static (double X, double Y) At(Bow bow, double degrees)
    {
        var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
        return (bow.X + bow.Radius * cosine, bow.Y + bow.Radius * sine);
    }

    static string Number(double value) => Math.Round(value, 4).ToString("0.####", CultureInfo.InvariantCulture);
}
