using System.Text;
using Boardwright.Boxes;
using Boardwright.Documents.Templates;
using Boardwright.Findings;
using Boardwright.Parts;

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

    /// <summary>The board.</summary>
    public Board Board => Examination.Board;

    /// <summary>Name of the board.</summary>
    public string Name => Board.Name.Or("Board without a name");

    /// <summary>The bolts of its box.</summary>
    public Answer<BoltPattern> Pattern => BoltPattern.Of(Board);

    /// <summary>Address of the board's page, where the shop gives its boards other addresses than its own with the board's name behind it.</summary>
    public Uri? PageAddress { get; init; }

    /// <summary>Address of the board's page in the shop.</summary>
    public Uri? BoardAddress => PageAddress ?? (ShopAddress is null ? null : new Uri(ShopAddress.AbsoluteUri.TrimEnd('/') + "/" + Slug(Name)));

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
        Folio("build-sheet", "Build sheet", "steps in order, with what to tick and to write down", BuildSheet.Of),
        Folio("parts-list", "Parts and purchase list", "what the board takes, what lies in stock, what to buy", Lists.Parts),
        Folio("cut-list", "Cut list", "wires, gasket and bolts, cut to length", Lists.Cut),
        new("drill-template", "Drill template", "holes of deck and box at full size: pages for a printer, one sheet for a plotter, SVG and DXF, from both sides", Template),
        Folio("limits-sheet", "Limits sheet", "what to set in the controller, and why", LimitsSheet.Of),
        Folio("bench-list", "First-power and bench list", "what to measure, and between which values it passes", BenchList.Of),
        Folio("spec-sheet", "Spec sheet", "what may be promised to a customer, and what not", SpecSheet.Of),
        Folio("price-sheet", "Price sheet", "from parts to price", Lists.Price),
        Folio("carrier-sheet", "Carrier sheet", "what a carrier asks about the pack, and what is still to be proved", CarrierSheet.Of),
        Folio("owners-page", "Owner's page", "care, charging, cautions, local law", OwnersPage.Of),
        new("label", "Label", "for the board's box: name, pack, code", Label),
    ];

    static PaperKind Folio(string id, string title, string shows, Func<Gathering, IReadOnlyList<Block>> blocks) => new(id, title, shows, order =>
    {
        var gathering = new Gathering(order);
        var folio = new Folio(title, order.Name, order.Revision, blocks(gathering));
        return new([new($"{id}.pdf", FolioPdf.Write(folio, order.Size)), new($"{id}.html", Encoding.UTF8.GetBytes(FolioHtml.Write(folio)))], gathering.Missing, []);
    })
    { NeedsIntervals = true };

    static WrittenPaper Label(PaperOrder order)
    {
        var gathering = new Gathering(order);
        return new([new("label.pdf", BoardLabel.Write(gathering))], gathering.Missing, []);
    }

    static WrittenPaper Template(PaperOrder order)
    {
        var pattern = order.Pattern;
        if (!pattern.IsKnown)
            return new([], pattern.Missing, pattern.IsBeside ? ["this board has no box."] : []);
        var proposal = Openings.Of(order.Board);
        // Where the box's inside is laid out, the openings follow it.
        var layout = order.Examination.Layout is { IsKnown: true, Value.IsComplete: true } laid ? laid.Value : null;
        var openings = order.Openings ?? layout?.Openings ?? (proposal.IsKnown ? proposal.Value.Holes : []);
        var isProposal = order.Openings is null && layout?.Things.All(t => t.Wall is null || t.IsStated) != true;
        List<FormattableString> objections = [.. pattern.Value.Objections];
        if (order.Openings is null && layout is null && proposal.IsKnown)
            objections.AddRange(proposal.Value.Objections);
        var files = new List<PaperFile>();
        foreach (var view in Enum.GetValues<View>())
        {
            var template = DrillTemplate.Of(order.Name, pattern.Value, openings, view, isProposal);
            var side = view == View.Outside ? "outside" : "inside";
            files.Add(new($"drill-template.{side}.{order.Size.Name.ToLowerInvariant()}.pdf", TemplatePdf.Tile(template, order.Size)));
            files.Add(new($"drill-template.{side}.plotter.pdf", TemplatePdf.Plot(template)));
            files.Add(new($"drill-template.{side}.svg", Encoding.UTF8.GetBytes(TemplateSvg.Write(template))));
            files.Add(new($"drill-template.{side}.dxf", Encoding.ASCII.GetBytes(TemplateDxf.Write(template))));
        }

        return new(files, proposal.IsKnown ? proposal.Value.Unsized : [], [.. objections.Select(o => o.ToString(System.Globalization.CultureInfo.InvariantCulture))]);
    }
}
