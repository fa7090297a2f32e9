using System.Text;
using Boardwright.Boxes;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pdf;
using Boardwright.Documents.Templates;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Rules;
using Boardwright.Wiring;

namespace Boardwright.Documents.Papers;

/// <summary>What papers are written for: a board as it was examined, and what a shop adds.</summary>
/// <param name="Examination">The board.</param>
public sealed record PaperOrder(Examination Examination)
{
    /// <summary>How well the figures are known, by their ids; none where nobody computed that.</summary>
    public IReadOnlyDictionary<string, Interval> Intervals { get; init; } = new Dictionary<string, Interval>(StringComparer.Ordinal);
    /// <summary>Which state of the board it is, in a word; printed on every page.</summary>
    public string Revision { get; init; } = "";
    /// <summary>Address under which the shop shows its boards; a board's page is at its end.</summary>
    public Uri? ShopAddress { get; init; }
    /// <summary>What paper it is printed on.</summary>
    public PaperSize Size { get; init; } = PaperSize.A4;
    /// <summary>Openings that a plan of the box's inside has placed; a proposal is made where there are none.</summary>
    public IReadOnlyList<Opening>? Openings { get; init; }
    /// <summary>The board as its maker states it: no paper prints a usual value as a fact.</summary>
    public Board Board => Examination.Stated;
    /// <summary>Name of the board.</summary>
    public string Name => Board.Name.Or("Board without a name");
    /// <summary>The bolts of its box.</summary>
    public Answer<BoltPattern> Pattern => Examination.Bolts;
    /// <summary>A ride, under whose currents the wires are shown; without one they are shown on the brief's climb.</summary>
    public Ride? Ride { get; init; }
    /// <summary>Every run of wire, along the layout of the box.</summary>
    public Harness Harness => Examination.HarnessAlong(Ride is null ? null : RideDuty.Compute(Ride));
    /// <summary>In which units lengths, masses, speeds and temperatures are written.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Metric;
    /// <summary>Address of the board's page, where the shop gives its boards other addresses than its own with the board's name behind
    /// it.</summary>
    public Uri? PageAddress { get; init; }
    /// <summary>Address of the board's page in the shop.</summary>
    public Uri? BoardAddress =>
        PageAddress ?? (ShopAddress is null ? null : new Uri(ShopAddress.AbsoluteUri.TrimEnd('/') + "/" + Slug(Name)));

    /// <summary>A name as it stands in addresses: small letters, digits and hyphens, at most 24; signs of other scripts are kept.</summary>
    public static string Slug(string name)
    {
        // What is longer makes a code that no telephone reads from a label.
        const int Longest = 24;
        ArgumentNullException.ThrowIfNull(name);
        var slug = new StringBuilder(name.Length);
        foreach (var rune in name.Normalize(NormalizationForm.FormC).EnumerateRunes())
        {
            if (slug.Length >= Longest)
                break;
            if (Rune.IsLetterOrDigit(rune))
                slug.Append(Rune.ToLowerInvariant(rune));
            else if (slug.Length > 0 && slug[^1] != '-')
                slug.Append('-');
        }

        return slug.ToString().Trim('-') is { Length: > 0 } some ? some : "board";
    }
}

/// <summary>A file of the papers.</summary>
/// <param name="Name">Its name after the board's, such as <c>build-sheet.pdf</c>.</param>
/// <param name="Bytes">What is in it.</param>
public sealed record PaperFile(string Name, byte[] Bytes);

/// <summary>What came of writing a paper.</summary>
/// <param name="Files">The files; none when it could not be written.</param>
/// <param name="Missing">Entries that are not known, for which it has blanks or for want of which it was not written.</param>
/// <param name="Objections">What speaks against using it as it is.</param>
public sealed record WrittenPaper(IReadOnlyList<PaperFile> Files, IReadOnlyList<string> Missing, IReadOnlyList<string> Objections);

/// <summary>A kind of paper.</summary>
/// <param name="Id">Its name in files and on the command line.</param>
/// <param name="Title">Its title.</param>
/// <param name="Shows">What is on it, in a few words.</param>
/// <param name="Write">Writes it.</param>
public sealed record PaperKind(string Id, string Title, string Shows, Func<PaperOrder, WrittenPaper> Write)
{
    /// <summary>Whether it says how well figures are known.</summary>
    public bool NeedsIntervals { get; init; }
}

/// <summary>Every paper of a board.</summary>
public static class PaperSet
{
    /// <summary>The papers, in the order of use.</summary>
    public static IReadOnlyList<PaperKind> All { get; } =
    [
        Folio("build-sheet", "Build sheet", "steps in order, with what to tick and to write down", BuildSheet.Compose),
        Folio("parts-list", "Parts and purchase list", "what the board takes, what lies in stock, what to buy", PartsLists.Parts),
        Folio("cut-list", "Cut list", "wires, sleeve, gasket and bolts, cut to length", PartsLists.Cut),
        Folio("wiring", "Wiring", "the diagram, what every wire carries, fuse and pre-charge", WiringSheet.Compose),
        new("drill-template", "Drill template", "holes of deck and box at full size: pages for a printer, one sheet for a plotter, SVG and DXF, from both sides", Template),
        Folio("limits-sheet", "Limits sheet", "what to set in the controller, and why", LimitsSheet.Compose),
        Folio("bench-list", "First-power and bench list", "what to measure, and between which values it passes", BenchList.Compose),
        Folio("spec-sheet", "Spec sheet", "what may be promised to a customer, and what not", SpecSheet.Compose),
        Folio("price-sheet", "Price sheet", "from parts to price", PartsLists.Price),
        Folio("carrier-sheet", "Carrier sheet", "what a carrier asks about the pack, and what is still to be proved", CarrierSheet.Compose),
        Folio("owners-page", "Owner's page", "care, charging, cautions, local law", OwnersPage.Compose),
        new("label", "Label", "for the board's box: name, pack, code", Label),
    ];

    static PaperKind Folio(string id, string title, string shows, Func<PaperContext, IReadOnlyList<Block>> blocks) =>
        new(id, title, shows, order =>
    {
        var gathering = new PaperContext(order);
        var folio = new PaperDocument(title, order.Name, order.Revision, blocks(gathering));
        return new([new($"{id}.pdf", PaperPdf.Write(folio, order.Size)), new($"{id}.html", Encoding.UTF8.GetBytes(PaperHtml.Write(folio)))],
            gathering.Missing, [.. gathering.Objections, .. Unprintable(PaperText.Lines(folio))]);
    })
        { NeedsIntervals = true };

    static WrittenPaper Label(PaperOrder order)
    {
        var gathering = new PaperContext(order);
        return new([new("label.pdf", BoardLabel.Write(gathering))], gathering.Missing, Unprintable([order.Name, order.Revision]));
    }

    static WrittenPaper Template(PaperOrder order)
    {
        var gathering = new PaperContext(order);
        var pattern = order.Pattern;
        if (!pattern.IsKnown)
            return new([], pattern.Missing, pattern.IsBeside ? ["this board has no box."] : []);
        var (openings, isProposal, unsized, against) = OpeningsOf(order);
        List<string> objections =
            [.. BoltFindings(order.Examination).Select(gathering.Words), .. against.Select(Invariant),
            .. Unprintable([order.Name, .. openings.Select(o => o.Name)])];
        var files = new List<PaperFile>();
        foreach (var view in Enum.GetValues<TemplateSide>())
        {
            var template = DrillTemplate.Draw(order.Name, pattern.Value, openings, view, isProposal, order.Units.IsImperial);
            var side = view == TemplateSide.Outside ? "outside" : "inside";
            files.Add(new($"drill-template.{side}.{order.Size.Name.ToLowerInvariant()}.pdf", TemplatePdf.Tile(template, order.Size)));
            files.Add(new($"drill-template.{side}.plotter.pdf", TemplatePdf.Plot(template)));
            files.Add(new($"drill-template.{side}.svg", Encoding.UTF8.GetBytes(Svg.Write(template))));
            files.Add(new($"drill-template.{side}.dxf", Encoding.ASCII.GetBytes(TemplateDxf.Write(template))));
        }

        return new(files, unsized, objections);
    }

    // Where the layout of the box has them; spread over two walls where it found no place for all.
    static (IReadOnlyList<Opening> Holes, bool IsProposal, IReadOnlyList<string> Unsized,
        IReadOnlyList<FormattableString> Objections) OpeningsOf(PaperOrder order)
    {
        if (order.Openings is { } given)
            return (given, false, [], []);
        if (order.Examination.Layout is { IsKnown: true, Value: { Unplaced.Count: 0 } layout })
            return (layout.Openings, layout.Things.Any(t => t is { Wall: not null, IsStated: false }),
                [.. layout.Unsized.SelectMany(u => u.Missing).Distinct(StringComparer.Ordinal)], []);
        var spread = Openings.Compute(order.Board);
        return spread.IsKnown ? (spread.Value.Holes, true, spread.Value.Unsized, spread.Value.Objections) : ([], true, [], []);
    }

    /// <summary>What was found against the bolts of a board's box.</summary>
    internal static IEnumerable<Finding> BoltFindings(Examination examination)
    {
        var rules = BoltRules.All.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        return examination.Findings.Where(f => rules.Contains(f.Rule) && f.Level is Level.Stop or Level.Fix);
    }

    // A square on paper says that a sign is missing, but not which.
    static IReadOnlyList<string> Unprintable(IEnumerable<string> texts)
    {
        var signs = texts.SelectMany(Typeset.Lacking).Distinct().OrderBy(r => r.Value).ToList();
        return signs.Count == 0 ? [] :
        [
            Invariant($"The printed face has no {string.Join(", ", signs.Take(12).Select(r => $"{r} (U+{r.Value:X4})"))}{(signs.Count > 12 ? Invariant($" and {signs.Count - 12} more") : "")}: a square □ stands there in the PDF. The HTML shows what the browser's faces have; write the name in letters of the Latin, Greek or Cyrillic script for print."),
        ];
    }
}
