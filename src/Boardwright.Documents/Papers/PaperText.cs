using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Papers;

/// <summary>Every text that a paper prints.</summary>
static class PaperText
{
    public static IEnumerable<string> Lines(PaperDocument folio) =>
        [folio.Title, folio.Board, folio.Revision, .. folio.Blocks.SelectMany(Lines)];

    static IEnumerable<string> Lines(Block block) => block switch
    {
        HeadingBlock heading => [heading.Text],
        ParagraphBlock paragraph => [paragraph.Text],
        CautionBlock caution => [caution.Text],
        PointsBlock points => points.Items,
        TableBlock table => [.. table.Columns.Select(c => c.Title), .. table.Rows.SelectMany(r => r).OfType<string>()],
        ChecksBlock checks => checks.Items.SelectMany(i => new[] { i.Text, i.Pass, i.Write ?? "" }),
        PictureBlock picture => DrawingGroup.Flat(picture.Drawing.Shapes).OfType<Words>().Select(w => w.Text),
        CodeBlock code => [code.Says, code.Address.ToString()],
        SignaturesBlock signatures => signatures.Titles,
        _ => [],
    };
}
