using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Boardwright.Boxes;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Templates;
using Boardwright.Parts;

namespace Boardwright.Tests.Documents.Templates;

public sealed partial class DrillTemplateTests
{
    // What the papers promise, mm.
    const double Promise = 0.05;

    public static TheoryData<string, TemplateSide> Every =>
        new(Boards.Names.SelectMany(n => Enum.GetValues<TemplateSide>().Select(v => (n, v))));

    [Theory]
    [MemberData(nameof(Every))]
    public void A_hundred_millimetres_are_a_hundred_on_the_plotters_sheet(string board, TemplateSide view)
    {
        var lines = PdfReading.Paths(TemplatePdf.Plot(Of(board, view)), 1).Where(b => b.Height < 0.1).ToList();

        Assert.Contains(lines, l => Math.Abs(l.Width - 100) < Promise);
        Assert.Contains(lines, l => Math.Abs(l.Width - 101.6) < Promise);
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void A_hundred_millimetres_are_a_hundred_on_every_page(string board, TemplateSide view)
    {
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var file = TemplatePdf.Tile(Of(board, view), paper);
            PdfReading.Of(file, document =>
            {
                Assert.All(document.GetPages(), page =>
                {
                    var lines = PdfReading.Paths(page).Where(b => b.Height < 0.1).ToList();
                    Assert.Contains(lines, l => Math.Abs(l.Width - 100) < Promise);
                    Assert.Contains(lines, l => Math.Abs(l.Width - 101.6) < Promise);
                });
                return 0;
            });
        }
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Every_hole_is_where_the_pattern_has_it_on_the_plotters_sheet(string board, TemplateSide view)
    {
        var template = Of(board, view);
        var boxes = PdfReading.Paths(TemplatePdf.Plot(template), 1);

        Assert.All(Rings(template), ring => Assert.Contains(boxes, b => IsThere(b, ring.X, ring.Y, ring.Radius)));
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Every_hole_lies_whole_on_a_page_or_is_drawn_on_all_that_share_it(string board, TemplateSide view)
    {
        var template = Of(board, view);
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var tiling = Tiling.Compute(template, paper);
            var pages = PdfReading.Of(TemplatePdf.Tile(template, paper), d => d.GetPages().Select(PdfReading.Paths).ToList());
            Assert.Equal(tiling.Columns * tiling.Rows, pages.Count);
            foreach (var ring in Rings(template))
            {
                var found = 0;
                for (var page = 0; page < pages.Count; page++)
                {
                    // Where the template's lower left corner would lie, seen from the page's.
                    var x = Tiling.Edge - tiling.Left(page % tiling.Columns) + ring.X;
                    var y = tiling.PageHeight - Tiling.Edge + tiling.Top(page / tiling.Columns) - template.Height + ring.Y;
                    var isInside = x > Tiling.Edge && x < Tiling.Edge + tiling.Across && y < tiling.PageHeight - Tiling.Edge
                        && y > tiling.PageHeight - Tiling.Edge - tiling.Along;
                    if (!isInside)
                        continue;
                    found++;
                    Assert.Contains(pages[page], b => IsThere(b, x, y, ring.Radius));
                }

                Assert.True(found >= 1, $"The hole at {ring.X:0.0}, {ring.Y:0.0} is on no page.");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Pages_overlap_and_reach_to_the_templates_ends(string board, TemplateSide view)
    {
        var template = Of(board, view);
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var tiling = Tiling.Compute(template, paper);
            Assert.True(tiling.Left(tiling.Columns - 1) + tiling.Across >= template.Width);
            Assert.True(tiling.Top(tiling.Rows - 1) + tiling.Along >= template.Height);
            Assert.True(tiling.Columns == 1 || tiling.Left(tiling.Columns - 2) + tiling.Across < template.Width, "The last column would not be needed.");
            Assert.Equal(Tiling.Overlap, tiling.Left(0) + tiling.Across - tiling.Left(1), 1e-9);
            Assert.Equal(Tiling.Overlap, tiling.Top(0) + tiling.Along - tiling.Top(1), 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Svg_has_every_hole_in_millimetres(string board, TemplateSide view)
    {
        var template = Of(board, view);
        var svg = XDocument.Parse(Svg.Write(template)).Root!;
        var circles = svg.Descendants().Where(e => e.Name.LocalName == "circle")
            .Select(e => (X: Value(e, "cx"), Y: Value(e, "cy"), Radius: Value(e, "r"))).ToList();

        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"{template.Width}mm"), svg.Attribute("width")!.Value);
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"0 0 {template.Width} {template.Height}"), svg.Attribute("viewBox")!.Value);
        Assert.All(Rings(template),
            ring => Assert.Contains(circles, c => Near(c.X, ring.X) && Near(c.Y, template.Height - ring.Y) && Near(c.Radius, ring.Radius)));
        Assert.Contains(svg.Descendants(), e => ((string?)e.Attribute("d"))?.EndsWith("l100 0", StringComparison.Ordinal) == true);
        Assert.Equal(
            ["OUTLINE", "DECK-HOLES", "BOX-HOLES", "OPENINGS", "CENTRE-LINES", "CENTRE-MARKS", "CHECK-LINES", "NOTES"],
            svg.Elements().Where(e => e.Name.LocalName == "g").Select(e => e.Attribute("id")!.Value));
        Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName is "style" or "rect" || e.Attribute("class") is not null);
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Dxf_has_every_hole_on_its_layer(string board, TemplateSide view)
    {
        var template = Of(board, view);
        var circles = DxfPairs(TemplateDxf.Write(template));

        Assert.All(Rings(template),
            ring => Assert.Contains(circles,
            c => c.Layer == ring.Layer && Near(c.X, ring.X) && Near(c.Y, ring.Y) && Near(c.Radius, ring.Radius)));
    }

    // The reader of Debian's python3-ezdxf, which knows nothing of this program.
    [Theory]
    [MemberData(nameof(Every))]
    public void Dxf_opens_in_another_reader(string board, TemplateSide view)
    {
        Assert.SkipUnless(File.Exists("/usr/lib/python3/dist-packages/ezdxf/__init__.py"), "Needs the package python3-ezdxf.");
        var template = Of(board, view);
        var file = Path.Combine(Path.GetTempPath(), $"boardwright-{Guid.NewGuid():N}.dxf");
        try
        {
            File.WriteAllText(file, TemplateDxf.Write(template));
            var read = Python($"import ezdxf;d=ezdxf.readfile('{file}');print(d.dxfversion,len(d.audit().errors));[print(c.dxf.layer,c.dxf.center[0],c.dxf.center[1],c.dxf.radius) for c in d.modelspace().query('CIRCLE')]");
            var circles = read.Skip(1).Select(l => l.Split(' '))
                .Select(w => (Layer: w[0], X: Number(w[1]), Y: Number(w[2]), Radius: Number(w[3]))).ToList();

            Assert.Equal("AC1009 0", read[0]);
            Assert.Equal(Rings(template).Count, circles.Count);
            Assert.All(Rings(template),
                ring => Assert.Contains(circles,
                c => c.Layer == ring.Layer && Near(c.X, ring.X) && Near(c.Y, ring.Y) && Near(c.Radius, ring.Radius)));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Inside_is_the_mirror_image_of_outside()
    {
        var pattern = BoltPattern.Compute(Boards.Curlew).Value;
        var (outside, inside) = (Of("curlew", TemplateSide.Outside), Of("curlew", TemplateSide.Inside));
        var middle = 14 + pattern.Flange.OuterLength.Millimetres / 2;
        var rings = Rings(inside);

        Assert.All(Rings(outside),
            ring => Assert.Contains(rings,
            r => r.Layer == ring.Layer && Near(r.X - middle, middle - ring.X) && Near(r.Y, ring.Y) && Near(r.Radius, ring.Radius)));
        Assert.Contains(WordsOn(outside), l => l.Text.StartsWith("SEEN FROM OUTSIDE", StringComparison.Ordinal));
        Assert.Contains(WordsOn(inside), l => l.Text.StartsWith("SEEN FROM INSIDE", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Two_runs_write_the_same_bytes(string board, TemplateSide view)
    {
        Assert.Equal(TemplatePdf.Tile(Of(board, view), PaperSize.A4), TemplatePdf.Tile(Of(board, view), PaperSize.A4));
        Assert.Equal(TemplatePdf.Plot(Of(board, view)), TemplatePdf.Plot(Of(board, view)));
        Assert.Equal(TemplateDxf.Write(Of(board, view)), TemplateDxf.Write(Of(board, view)));
        Assert.Equal(Svg.Write(Of(board, view)), Svg.Write(Of(board, view)));
    }

    static Drawing Of(string board, TemplateSide view)
    {
        var read = Boards.Read(board);
        return DrillTemplate.Draw(
            read.Name.Value, BoltPattern.Compute(read).Value, Openings.Compute(read).Value.Holes, view, isProposal: true);
    }

    // From the lower left corner.
    static List<(string Layer, double X, double Y, double Radius)> Rings(Drawing template)
    {
        var rings = template.Shapes.Cast<DrawingGroup>()
            .SelectMany(g => g.Shapes.OfType<Circle>().Select(c => (g.Key, c.Centre.X, template.Height - c.Centre.Y, c.Radius))).ToList();
        Assert.NotEmpty(rings);
        return rings;
    }

    static IEnumerable<Words> WordsOn(Drawing template) => DrawingGroup.Flat(template.Shapes).OfType<Words>();

    static bool IsThere(PdfReading.PdfRectangle box, double x, double y, double radius) =>
        Near(box.X, x) && Near(box.Y, y) && Near(box.Width / 2, radius) && Near(box.Height / 2, radius);

    static bool Near(double a, double b) => Math.Abs(a - b) < Promise;

    static double Value(XElement element, string name) => Number(element.Attribute(name)!.Value);

    static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    static List<(string Layer, double X, double Y, double Radius)> DxfPairs(string file) =>
        [.. Circles().Matches(file)
        .Select(m => (m.Groups["layer"].Value, Number(m.Groups["x"].Value), Number(m.Groups["y"].Value), Number(m.Groups["r"].Value)))];

    static string[] Python(string code)
    {
        using var process = Process.Start(
            new ProcessStartInfo("/usr/bin/python3") { ArgumentList = { "-c", code }, RedirectStandardOutput = true, UseShellExecute = false })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    [GeneratedRegex(@"  0\r\nCIRCLE\r\n  8\r\n(?<layer>\S+)\r\n 10\r\n(?<x>\S+)\r\n 20\r\n(?<y>\S+)\r\n 30\r\n\S+\r\n 40\r\n(?<r>\S+)\r\n", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Circles();
}
