using System.Text;
using System.Xml.Linq;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Papers;
using Boardwright.Documents.Templates;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;
using Boardwright.Tests.Documents.Templates;

namespace Boardwright.Tests.Documents.Papers;

public sealed class PaperSetTests
{
    const string Scripts = "Ελικοειδής Χαλκοκουρούνα, Ёлочка Щёголеватая, Żółćgęślą, Þórðargerði, Ñandú, Übergrößenträger, ὁ ἥρως";
    const string Long = "Supercalifragilisticexpialidociouslongboardwithoutanyblankatallinitsverylongnamethatgoesonandonandonandonandonandonandon";

    public static TheoryData<string> Papers => [.. PaperSet.All.Select(p => p.Id)];

    [Theory]
    [MemberData(nameof(Papers))]
    public void Every_paper_is_written_for_every_example(string id)
    {
        foreach (var name in Boards.Names)
        {
            var written = Written(id, Order(name));
            Assert.NotEmpty(written.Files);
            Assert.All(written.Files, f => Assert.NotEmpty(f.Bytes));
            foreach (var pdf in Pdfs(written))
                Assert.Contains(Boards.Read(name).Name.Value, PdfReading.Text(pdf.Bytes), StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Every_paper_bears_a_board_of_which_hardly_anything_is_known(string id)
    {
        Board[] boards =
        [
            new Board().WithNames(),
            (new Board { Name = "Nothing" } with { Parts = new Fitted { Box = new Box { IsChosen = true } } }).WithNames(),
            Boards.Tern.With(("motor.kv", ""), ("pack.series", ""), ("fixings.box.bolt", "")),
            Boards.Tern.With(("drive.kind", "")),
            Boards.Tern.With(("cell.rest_voltage", ""), ("charger.voltage", ""), ("box.flange_width", "")),
        ];
        foreach (var board in boards)
        {
            var written = Written(id, new PaperOrder(Examination.Examine(board)));
            Assert.True(written.Files.Count > 0 || written.Missing.Count + written.Objections.Count > 0);
            foreach (var pdf in Pdfs(written))
                Assert.True(PdfReading.Of(pdf.Bytes, d => d.NumberOfPages) >= 1);
        }
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void What_is_missing_is_named_and_left_blank(string id)
    {
        var written = Written(id,
            new PaperOrder(Examination.Examine(
            Boards.Tern.With(("drive.motors", ""), ("pack.series", ""), ("cell.voltage_nominal", ""), ("limits.phase_current", ""), ("motor.phase_current_peak", ""), ("controller.phase_current_peak", ""), ("wheels.mass", ""), ("fixings.box.count", "")))));

        if (id != "cut-list" && id != "drill-template")
            Assert.NotEmpty(written.Missing);
        Assert.Equal(written.Missing.Distinct(StringComparer.Ordinal), written.Missing);
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Two_runs_write_the_same_bytes(string id)
    {
        var (first, second) = (Written(id, Order("tern")), Written(id, Order("tern")));

        Assert.Equal(first.Files.Select(f => f.Name), second.Files.Select(f => f.Name));
        Assert.All(first.Files.Zip(second.Files), p => Assert.Equal(p.First.Bytes, p.Second.Bytes));
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Greek_Cyrillic_and_accented_letters_come_through(string id)
    {
        var board = Boards.Tern with { Name = Scripts };
        foreach (var file in Written(id, new PaperOrder(Examination.Examine(board))).Files)
        {
            if (file.Name.EndsWith(".html", StringComparison.Ordinal))
                Assert.Contains(Scripts, Encoding.UTF8.GetString(file.Bytes), StringComparison.Ordinal);
            else if (file.Name.EndsWith(".pdf", StringComparison.Ordinal))
            {
                var text = PdfReading.Text(file.Bytes).Normalize();
                foreach (var word in (id is "label" ? Scripts.Split(' ').Take(1) : Scripts.Split(' ')).Select(w => w.Normalize()))
                    Assert.Contains(word, text, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Nothing_runs_over_the_edge_of_a_page_however_long_a_name_is(string id)
    {
        if (id == "drill-template")
            return;
        var board = Boards.Tern with
        {
            Name = Long,
            Parts = Boards.Tern.Parts with
            {
                Motor = Boards.Tern.Parts.Motor with { Name = Long },
                Cell = Boards.Tern.Parts.Cell with { Name = Long },
                Charger = Boards.Tern.Parts.Charger with { Name = Long + " " + Long }
            }
        };
        foreach (var pdf in Pdfs(Written(id, new PaperOrder(Examination.Examine(board)) { ShopAddress = new Uri("https://shop.example/" + Long) })))
        {
            PdfReading.Of(pdf.Bytes, document =>
            {
                Assert.All(document.GetPages().SelectMany(p => p.Letters.Select(l => (Page: p, Letter: l))), at =>
                {
                    Assert.InRange(at.Letter.BoundingBox.Left, 3, at.Page.Width - 3);
                    Assert.InRange(at.Letter.BoundingBox.Right, 3, at.Page.Width - 3);
                    Assert.InRange(at.Letter.BoundingBox.Bottom, 3, at.Page.Height - 3);
                });
                return 0;
            });
        }
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Paper_and_page_say_the_same(string id)
    {
        var files = Written(id, Order("tern")).Files;
        if (files.FirstOrDefault(f => f.Name.EndsWith(".html", StringComparison.Ordinal)) is not { } page)
            return;
        var html = Html(page);
        var pdf = Squeezed(PdfReading.Text(files.Single(f => f.Name.EndsWith(".pdf", StringComparison.Ordinal)).Bytes));
        var said = html.Descendants().Where(e => e.Name.LocalName is "h1" or "h2" or "td" or "li")
            .Select(e => string.Concat(e.Nodes().OfType<XText>().Select(t => t.Value))).Where(t => t.Length > 0).ToList();

        Assert.True(said.Count > 3);
        Assert.All(said, words => Assert.Contains(Squeezed(words), pdf, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void Pages_of_Tern_are_as_approved(string id)
    {
        foreach (var file in Written(id, Order("tern"))
            .Files.Where(f => !f.Name.EndsWith(".pdf", StringComparison.Ordinal) && !f.Name.Contains("inside", StringComparison.Ordinal)))
            Approved.Matches($"../../examples/tern/papers/tern.{file.Name}", Encoding.UTF8.GetString(file.Bytes));
    }

    [Fact]
    public void No_paper_says_of_anything_that_it_is_safe()
    {
        foreach (var file in Boards.Names.SelectMany(n => PaperSet.All.SelectMany(p => Written(p.Id, Order(n)).Files))
            .Where(f => f.Name.EndsWith(".html", StringComparison.Ordinal)))
            Assert.DoesNotMatch(@"(?i)\bsafe(ly)?\b", Encoding.UTF8.GetString(file.Bytes));
    }

    [Fact]
    public void A_head_is_repeated_where_a_table_goes_on()
    {
        var table = new TableBlock([new("Head of the table", 1)], [.. Enumerable.Range(1, 120).Select(i => (IReadOnlyList<string?>)[$"row {i}"])]);
        var file = PaperPdf.Write(new PaperDocument("Long table", "Tern", "1", [table]), PaperSize.A4);

        PdfReading.Of(file, document =>
        {
            Assert.True(document.NumberOfPages > 1);
            Assert.All(document.GetPages(), p => Assert.Contains("Head of the table", p.Text, StringComparison.Ordinal));
            Assert.All(document.GetPages(), p => Assert.Contains($"page {p.Number} of {document.NumberOfPages}", p.Text, StringComparison.Ordinal));
            return 0;
        });
    }

    [Fact]
    public void A_row_higher_than_a_page_goes_on_over_its_edge()
    {
        var words = string.Join(' ', Enumerable.Range(1, 4000).Select(i => $"w{i}"));
        var file = PaperPdf.Write(new PaperDocument("High row", "Tern", "1", [new TableBlock([new("Column", 1)], [[words]])]), PaperSize.A4);
        var text = PdfReading.Text(file);

        Assert.Contains("w1 ", text, StringComparison.Ordinal);
        Assert.Contains("w4000", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_build_sheet_and_the_label_open_the_boards_page()
    {
        var order = Order("tern") with { ShopAddress = new Uri("https://shop.example/boards/") };

        Assert.Equal("https://shop.example/boards/tern", order.BoardAddress!.AbsoluteUri);
        Assert.Contains("https://shop.example/boards/tern", PdfReading.Text(Written("build-sheet", order).Files[0].Bytes), StringComparison.Ordinal);
        Assert.True(PdfReading.Paths(Written("label", order).Files[0].Bytes, 1).Count > 100);
        Assert.Equal("https://shop.example/b/7", (order with { PageAddress = new Uri("https://shop.example/b/7") }).BoardAddress!.AbsoluteUri);
    }

    [Theory]
    [InlineData("Tern", "tern")]
    [InlineData("  Tern / No. 5! ", "tern-no-5")]
    [InlineData("Ёлочка 2", "ёлочка-2")]
    [InlineData("???", "board")]
    [InlineData("A name of a board that goes on for ever", "a-name-of-a-board-that-g")]
    public void Addresses_hold_the_boards_name(string name, string slug) => Assert.Equal(slug, PaperOrder.Slug(name));

    [Fact]
    public void A_sign_that_the_faces_lack_is_shown_as_a_square()
    {
        var file = PaperPdf.Write(new PaperDocument("Signs", "雨 Tern", "", []), PaperSize.A4);

        Assert.Contains("□ Tern", PdfReading.Text(file), StringComparison.Ordinal);
    }

    [Fact]
    public void Papers_speak_imperial_when_asked_and_the_template_keeps_its_millimetres()
    {
        var order = Order("tern") with { Units = Boardwright.Units.UnitSystem.Imperial };
        var (spec, owner) = (Encoding.UTF8.GetString(Written("spec-sheet", order).Files[1].Bytes),
            Encoding.UTF8.GetString(Written("owners-page", order).Files[1].Bytes));

        foreach (var unit in new[] { " mph", " mi", " lb", " in long", " °F" })
            Assert.Contains(unit, spec, StringComparison.Ordinal);
        foreach (var unit in new[] { "km/h", " km<", " kg", "°C" })
            Assert.DoesNotContain(unit, spec.Split("<figure>")[0], StringComparison.Ordinal);
        Assert.Contains(" lb", owner, StringComparison.Ordinal);
        var template = PdfReading.Text(Written("drill-template", order).Files.First(f => f.Name.EndsWith("plotter.pdf", StringComparison.Ordinal)).Bytes);
        Assert.Contains("619 × 181 mm (24.37 × 7.13 in)", template, StringComparison.Ordinal);
    }

    // What is promised in other units is never more than what is promised in the figure's own: 1 mile is 1.609344 km.
    [Fact]
    public void A_promise_in_miles_is_no_more_than_one_in_kilometres()
    {
        foreach (var low in Enumerable.Range(1, 400).Select(i => i * 0.37))
        {
            var claim = new Claim
            {
                Kind = Catalogue.Range,
                Conditions = default,
                IsAtLeast = true,
                Value = low,
                Interval = new(low, low + 5, [])
            };
            var miles = double.Parse(
                claim.WordsIn(Boardwright.Units.UnitSystem.Imperial)!.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture);
            Assert.True(miles * 1.609344 <= low + 1e-9, claim.WordsIn(Boardwright.Units.UnitSystem.Imperial));
        }
    }

    [Theory]
    [InlineData("build-sheet")]
    [InlineData("label")]
    [InlineData("drill-template")]
    public void A_paper_names_the_signs_that_it_cannot_print(string id)
    {
        var order = new PaperOrder(Examination.Examine(Boards.Tern with { Name = "Tern 海鳥" }));

        Assert.Contains(Written(id, order).Objections, o => o.Contains("海 (U+6D77), 鳥 (U+9CE5)", StringComparison.Ordinal));
        Assert.DoesNotContain(Written(id, new PaperOrder(Examination.Examine(Boards.Tern with { Name = Scripts }))).Objections,
            o => o.Contains("U+", StringComparison.Ordinal));
    }

    [Fact]
    public void The_template_quotes_the_findings_about_its_bolts()
    {
        var order = Order("tern");
        var finding = order.Examination.Findings.Single(f => f.Rule == "box.gasket_pitch");

        Assert.Contains(Written("drill-template", order).Objections, o => o.StartsWith(finding.Says.In(UnitSystem.Metric), StringComparison.Ordinal));
    }

    [Fact]
    public void The_diagram_names_every_run_with_its_gauge_and_every_power_wire_with_its_colour()
    {
        foreach (var name in Boards.Names)
        {
            var order = Order(name);
            var drawing = Boardwright.Documents.Pictures.WiringPicture.Draw(order.Board, order.Harness);
            var words = string.Join(' ',
                Boardwright.Documents.Drawings.DrawingGroup.Flat(drawing.Shapes).OfType<Boardwright.Documents.Drawings.Words>()
                .Select(w => w.Text));

            Assert.All(order.Harness.Runs, run => Assert.Contains(run.Mark, words, StringComparison.Ordinal));
            Assert.All(order.Harness.Runs.Where(r => r.Kind is Boardwright.Wiring.RunKind.Pack or Boardwright.Wiring.RunKind.Motor), run =>
            {
                Assert.Contains(run.Wire!, words, StringComparison.Ordinal);
                Assert.All(run.Wires, w => Assert.Contains(w.Colour, words, StringComparison.Ordinal));
            });
            Assert.All(Boardwright.Documents.Drawings.DrawingGroup.Flat(drawing.Shapes).OfType<Boardwright.Documents.Drawings.Words>(), w =>
            {
                var width = Boardwright.Documents.Drawings.Lettering.WidthOf(w.Text, w.Size, w.IsBold);
                var left = w.At.X - (w.Anchor == Boardwright.Documents.Drawings.Anchor.Middle ? width / 2 : 0);
                Assert.InRange(left, 0, drawing.Width);
                Assert.InRange(left + width, 0, drawing.Width);
            });
        }
    }

    // Intervals take longer than all papers together.
    static readonly Dictionary<string, Lazy<PaperOrder>> Orders = Boards.Names.ToDictionary(n => n, n => new Lazy<PaperOrder>(() =>
    {
        var examination = Examination.Examine(Boards.Read(n));
        return new PaperOrder(examination) { Intervals = Spread.Sample(examination).Intervals, Revision = "example", ShopAddress = new Uri("https://shop.example/board/of") };
    }), StringComparer.Ordinal);

    [Fact]
    public void The_spec_sheet_says_which_promises_rest_on_measurement()
    {
        static string Said(Board board)
        {
            var examination = Examination.Examine(board);
            return Encoding.UTF8.GetString(
                Written("spec-sheet", new PaperOrder(examination) { Intervals = Spread.Sample(examination, 64).Intervals })
                .Files.Single(f => f.Name.EndsWith(".html", StringComparison.Ordinal)).Bytes);
        }

        var tern = Boards.Tern;
        var measured = tern with
        {
            Brief = tern.Brief with { DragArea = new Known<Area>(Area.FromSquareMetres(0.6), 0.05, Origin.Measured, "brief.drag_area") },
            Parts = tern.Parts with
            {
                Wheels =
                tern.Parts.Wheels with
                {
                    RollingResistance = new Known<RollingTable>(
                new(Number.FromValue(0.014), new Dictionary<Surface, Number>()), 0.1, Origin.Measured, "wheels.rolling_resistance")
                }
            },
        };

        Assert.Contains("rests on no measurement: ", Said(tern), StringComparison.Ordinal);
        Assert.DoesNotContain("rests on measurement: ", Said(tern), StringComparison.Ordinal);
        Assert.Contains("rests on measurement: ", Said(measured), StringComparison.Ordinal);
        Assert.Contains("brief.drag_area (measured)", Said(measured), StringComparison.Ordinal);
    }

    static PaperOrder Order(string name) => Orders[name].Value;

    static WrittenPaper Written(string id, PaperOrder order) => PaperSet.All.Single(p => p.Id == id).Write(order);

    static IEnumerable<PaperFile> Pdfs(WrittenPaper written) => written.Files.Where(f => f.Name.EndsWith(".pdf", StringComparison.Ordinal));

    static XElement Html(PaperFile file) => XDocument.Parse(Encoding.UTF8.GetString(file.Bytes)).Root!;

    // Lines are cut elsewhere on paper, and a code needs no blank.
    static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
