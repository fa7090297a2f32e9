using System.Globalization;
using System.Text;
using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Templates;

/// <summary>Writes templates as DXF of release 12, in millimetres: lines, circles and texts, on the template's layers.</summary>
/// <remarks>The release states no unit; its numbers are taken as millimetres by whoever opens it.</remarks>
static class TemplateDxf
{
    // Lines without gaps, and the pattern of centre lines, mm.
    const string Solid = "CONTINUOUS", Chain = "CENTRE";

    /// <summary>The template as a whole file.</summary>
    public static string Write(Drawing template)
    {
        ArgumentNullException.ThrowIfNull(template);
        var text = new Codes();
        text.Add(0, "SECTION").Add(2, "HEADER");
        text.Add(9, "$ACADVER").Add(1, "AC1009");
        text.Add(9, "$EXTMIN").Add(10, 0).Add(20, 0).Add(30, 0);
        text.Add(9, "$EXTMAX").Add(10, template.Width).Add(20, template.Height).Add(30, 0);
        text.Add(0, "ENDSEC");
        Tables(text);
        text.Add(0, "SECTION").Add(2, "ENTITIES");
        foreach (var layer in template.Shapes.Cast<DrawingGroup>())
        {
            foreach (var shape in layer.Shapes)
                Entity(text, layer.Key, shape, template.Height);
        }

        text.Add(0, "ENDSEC").Add(0, "EOF");
        return text.ToString();
    }

    static void Tables(Codes text)
    {
        text.Add(0, "SECTION").Add(2, "TABLES");
        text.Add(0, "TABLE").Add(2, "LTYPE").Add(70, 2);
        text.Add(0, "LTYPE").Add(2, Solid).Add(70, 0).Add(3, "Solid line").Add(72, 65).Add(73, 0).Add(40, 0);
        var dash = Dashes.LengthsOf(TemplateLayer.Centre.Dash);
        text.Add(0, "LTYPE").Add(2, Chain).Add(70, 0).Add(3, "Dash and dot").Add(72, 65).Add(73, dash.Count).Add(40, dash.Sum());
        for (var i = 0; i < dash.Count; i++)
            text.Add(49, i % 2 == 0 ? dash[i] : -dash[i]);
        text.Add(0, "ENDTAB");
        text.Add(0, "TABLE").Add(2, "LAYER").Add(70, TemplateLayer.All.Count);
        foreach (var layer in TemplateLayer.All)
            text.Add(0, "LAYER").Add(2, layer.Name).Add(70, 0).Add(62, layer.Colour).Add(6, layer == TemplateLayer.Centre ? Chain : Solid);
        text.Add(0, "ENDTAB");
        text.Add(0, "TABLE").Add(2, "STYLE").Add(70, 1);
        text.Add(0, "STYLE").Add(2, "STANDARD").Add(70, 0).Add(40, 0).Add(41, 1).Add(50, 0).Add(71, 0).Add(42, 2.5).Add(3, "txt").Add(4, "");
        text.Add(0, "ENDTAB").Add(0, "ENDSEC");
    }

    static void Entity(Codes text, string layer, Shape shape, double height)
    {
        switch (shape)
        {
            case Stroke stroke:
                var path = stroke.Path.Span;
                for (var i = 1; i < path.Length; i++)
                    text.Add(0, "LINE").Add(8, layer).Place(10, path[i - 1], height).Place(11, path[i], height);
                break;
            case Circle circle:
                text.Add(0, "CIRCLE").Add(8, layer).Place(10, circle.Centre, height).Add(40, circle.Radius);
                break;
            case Words words:
                text.Add(0, "TEXT").Add(8, layer).Place(10, words.At, height).Add(40, words.Size);
                text.Add(1, Plain(words.Text)).Add(7, "STANDARD");
                if (words.Anchor != Anchor.Start)
                    text.Add(72, words.Anchor == Anchor.Middle ? 1 : 2).Place(11, words.At, height);
                break;
        }
    }

    // Codes of the format stand for signs beyond ASCII.
    static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            _ = c switch
            {
                'Ø' => plain.Append("%%c"),
                '°' => plain.Append("%%d"),
                '±' => plain.Append("%%p"),
                '×' => plain.Append('x'),
                '%' => plain.Append("%%%"),
                >= ' ' and <= '~' => plain.Append(c),
                _ => plain.Append(CultureInfo.InvariantCulture, $"\\U+{(int)c:X4}"),
            };
        }

        return plain.ToString();
    }

    // Pairs of a code and a value, a line each.
    sealed class Codes
    {
        readonly StringBuilder text = new(32 * 1024);

        public Codes Add(int code, string value)
        {
            text.Append(CultureInfo.InvariantCulture, $"{code,3}\r\n{value}\r\n");
            return this;
        }

        public Codes Add(int code, int value) => Add(code, value.ToString(CultureInfo.InvariantCulture));

        public Codes Add(int code, double value) => Add(code, Math.Round(value, 6).ToString("0.0#####", CultureInfo.InvariantCulture));

        /// <summary>A place, which the format counts from the lower edge.</summary>
        public Codes Place(int code, Point at, double height) => Add(code, at.X).Add(code + 10, height - at.Y).Add(code + 20, 0);

        public override string ToString() => text.ToString();
    }
}
