using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Papers;

/// <summary>Every text that a paper prints.</summary>
static class FolioText
{
    public static IEnumerable<string> Of(Folio folio) => [folio.Title, folio.Board, folio.Revision, .. folio.Blocks.SelectMany(Of)];

    static IEnumerable<string> Of(Block block) => block switch
    {
        Heading heading => [heading.Text],
        Paragraph paragraph => [paragraph.Text],
        Caution caution => [caution.Text],
        Points points => points.Items,
        Table table => [.. table.Columns.Select(c => c.Title), .. table.Rows.SelectMany(r => r).OfType<string>()],
        Checks checks => checks.Items.SelectMany(i => new[] { i.Text, i.Pass, i.Write ?? "" }),
        Picture picture => Group.Flat(picture.Drawing.Shapes).OfType<Words>().Select(w => w.Text),
        Code code => [code.Says, code.Address.ToString()],
        Signatures signatures => signatures.Titles,
        _ => [],
    };
}
