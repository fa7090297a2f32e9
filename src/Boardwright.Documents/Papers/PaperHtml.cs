using System.Globalization;
using System.Security;
using System.Text;
using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Papers;

/// <summary>Writes papers as pages of HTML that stand alone: their style is inside, they need no script and print as they are.</summary>
static class PaperHtml
{
    const string Style = """
        :root{color-scheme:light}
        body{font:16px/1.5 system-ui,"Segoe UI",Roboto,"Liberation Sans",Arial,sans-serif;color:#111;background:#fff;max-width:52rem;margin:0 auto;padding:1.5rem 1rem 3rem;overflow-wrap:break-word}
        .wide{overflow-x:auto}
        header p{margin:.1rem 0;color:#444}
        h1{font-size:1.8rem;line-height:1.2;margin:0}
        h2{font-size:1.2rem;margin:1.8rem 0 .5rem;break-after:avoid}
        .note{color:#444;font-size:.9rem}
        .caution{border:1px solid #000;border-left:.6rem solid #000;padding:.6rem .8rem;font-weight:bold;margin:1rem 0;break-inside:avoid}
        table{border-collapse:collapse;width:100%;margin:.8rem 0;font-size:.92rem}
        th{background:#e6e6e6;text-align:left;vertical-align:bottom}
        th[scope=row]{background:none;font-weight:normal;vertical-align:top;width:35%}
        th,td{padding:.3rem .5rem;border-bottom:1px solid #777;vertical-align:top}
        .n{text-align:right;font-variant-numeric:tabular-nums}
        tr{break-inside:avoid}
        thead{display:table-header-group}
        tr.total td{font-weight:bold;border-top:2px solid #000}
        .blank{display:inline-block;min-width:5rem;border-bottom:1px solid #000;height:1.1em}
        ul.checks{list-style:none;padding:0}
        ul.checks li{display:grid;grid-template-columns:1.6rem 1fr auto;gap:.2rem .3rem;padding:.25rem 0;break-inside:avoid}
        ul.checks .box{width:.95rem;height:.95rem;border:1.5px solid #000;margin-top:.3rem}
        ul.checks .pass{grid-column:2;color:#333;font-size:.9rem}
        ul.checks .write{grid-column:3;grid-row:1;white-space:nowrap}
        .code{display:flex;gap:1rem;align-items:center;break-inside:avoid;margin:1rem 0}
        .code svg{width:9rem;height:9rem;flex:none}
        .sign{display:flex;gap:1.5rem;margin-top:3rem;break-inside:avoid}
        .sign div{flex:1;border-top:1px solid #000;padding-top:.3rem;font-size:.9rem}
        figure{margin:1rem 0;break-inside:avoid}
        figure svg{max-width:100%;height:auto}
        footer{margin-top:2rem;border-top:1px solid #777;padding-top:.4rem;color:#444;font-size:.85rem}
        @page{margin:16mm}
        @media print{body{max-width:none;padding:0;font-size:10.5pt}}
        """;

    /// <summary>The paper as a page of HTML.</summary>
    public static string Write(PaperDocument folio)
    {
        ArgumentNullException.ThrowIfNull(folio);
        var text = new StringBuilder(16 * 1024);
        text.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
        text.Append(CultureInfo.InvariantCulture, $"<title>{Safe(folio.Board)}: {Safe(folio.Title)}</title>\n<style>\n{Style}\n</style>\n</head>\n<body>\n");
        text.Append(CultureInfo.InvariantCulture, $"<header>\n<h1>{Safe(folio.Board)}</h1>\n<p>{Safe(folio.Title)}{(folio.Revision.Length > 0 ? ", revision " + Safe(folio.Revision) : "")}</p>\n</header>\n<main>\n");
        foreach (var block in folio.Blocks)
            Set(text, block);
        return text.Append("</main>\n<footer>Computed from the board file by Boardwright; what is not ticked or measured has not been checked.</footer>\n</body>\n</html>\n").ToString();
    }

    static void Set(StringBuilder text, Block block)
    {
        switch (block)
        {
            case HeadingBlock heading:
                text.Append(CultureInfo.InvariantCulture, $"<h2>{Safe(heading.Text)}</h2>\n");
                break;
            case ParagraphBlock paragraph:
                text.Append(CultureInfo.InvariantCulture, $"<p{(paragraph.IsQuiet ? " class=\"note\"" : "")}>{Safe(paragraph.Text)}</p>\n");
                break;
            case PointsBlock points:
                text.Append("<ul>\n");
                foreach (var item in points.Items)
                    text.Append(CultureInfo.InvariantCulture, $"<li>{Safe(item)}</li>\n");
                text.Append("</ul>\n");
                break;
            case CautionBlock caution:
                text.Append(CultureInfo.InvariantCulture, $"<p class=\"caution\" role=\"note\">CAUTION: {Safe(caution.Text)}</p>\n");
                break;
            case TableBlock table:
                Grid(text, table);
                break;
            case ChecksBlock checks:
                text.Append("<ul class=\"checks\">\n");
                foreach (var item in checks.Items)
                {
                    text.Append(CultureInfo.InvariantCulture, $"<li><span class=\"box\" role=\"img\" aria-label=\"to tick\"></span><span>{Safe(item.Text)}</span>");
                    if (item.Write is { } unit)
                        text.Append(CultureInfo.InvariantCulture, $"<span class=\"write\"><span class=\"blank\" role=\"img\" aria-label=\"to fill in\"></span> {Safe(unit)}</span>");
                    if (item.Pass.Length > 0)
                        text.Append(CultureInfo.InvariantCulture, $"<span class=\"pass\">Passes: {Safe(item.Pass)}</span>");
                    text.Append("</li>\n");
                }

                text.Append("</ul>\n");
                break;
            case PictureBlock picture:
                text.Append(CultureInfo.InvariantCulture, $"<figure>\n{Svg.Write(picture.Drawing)}</figure>\n");
                break;
            case CodeBlock code:
                text.Append(CultureInfo.InvariantCulture, $"<div class=\"code\">\n{QrSvg(code)}<p>{Safe(code.Says)}<br/><a href=\"{Safe(code.Address.AbsoluteUri)}\">{Safe(code.Address.ToString())}</a></p>\n</div>\n");
                break;
            case SignaturesBlock signatures:
                text.Append("<div class=\"sign\">\n");
                foreach (var title in signatures.Titles)
                    text.Append(CultureInfo.InvariantCulture, $"<div>{Safe(title)}</div>\n");
                text.Append("</div>\n");
                break;
        }
    }

    static void Grid(StringBuilder text, TableBlock table)
    {
        text.Append("<div class=\"wide\"><table>\n");
        if (table.HasHead)
        {
            text.Append("<thead><tr>");
            foreach (var column in table.Columns)
                text.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\"{(column.IsNumber ? " class=\"n\"" : "")}>{Safe(column.Title)}</th>");
            text.Append("</tr></thead>\n");
        }

        text.Append("<tbody>\n");
        for (var r = 0; r < table.Rows.Count; r++)
        {
            text.Append(table.HasTotal && r == table.Rows.Count - 1 ? "<tr class=\"total\">" : "<tr>");
            for (var c = 0; c < table.Columns.Count; c++)
            {
                var cell = table.Rows[r].ElementAtOrDefault(c) is { } words ? Safe(words) : "<span class=\"blank\" role=\"img\" aria-label=\"to fill in\"></span>";
                var (tag, scope) = c == 0 && !table.HasHead ? ("th", " scope=\"row\"") : ("td", "");
                text.Append(CultureInfo.InvariantCulture, $"<{tag}{scope}{(table.Columns[c].IsNumber ? " class=\"n\"" : "")}>{cell}</{tag}>");
            }

            text.Append("</tr>\n");
        }

        text.Append("</tbody>\n</table></div>\n");
    }

    static string QrSvg(CodeBlock code)
    {
        var modules = QrModules.Encode(code.Address);
        var side = modules.Length + 2 * QrModules.Quiet;
        var path = new StringBuilder();
        for (var y = 0; y < modules.Length; y++)
        {
            for (var x = 0; x < modules.Length; x++)
            {
                if (modules[y][x])
                    path.Append(CultureInfo.InvariantCulture, $"M{x + QrModules.Quiet} {y + QrModules.Quiet}h1v1h-1z");
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" role=\"img\" aria-label=\"Code with the address beside it\" shape-rendering=\"crispEdges\"><path fill=\"#000\" d=\"{path}\"/></svg>\n");
    }

    static string Safe(string text) => SecurityElement.Escape(text);
}
