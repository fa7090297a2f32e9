using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Templates;

/// <summary>What marks of a template are for: a layer of its own in every medium.</summary>
/// <param name="Name">Its name in files: letters and hyphens.</param>
/// <param name="Width">Width of its lines on paper, mm.</param>
/// <param name="Colour">Number of its colour in DXF.</param>
/// <param name="Dash">Pattern of its lines on paper.</param>
sealed record TemplateLayer(string Name, double Width, int Colour, Dash Dash = Dash.Solid)
{
    /// <summary>Edges of parts.</summary>
    public static TemplateLayer Outline { get; } = new("OUTLINE", 0.25, 7);
    /// <summary>Holes in the deck.</summary>
    public static TemplateLayer Deck { get; } = new("DECK-HOLES", 0.3, 1);
    /// <summary>Clearance holes in the box's flange.</summary>
    public static TemplateLayer Box { get; } = new("BOX-HOLES", 0.15, 5, Dash.Fine);
    /// <summary>Openings in the box's walls.</summary>
    public static TemplateLayer Opening { get; } = new("OPENINGS", 0.3, 3);
    /// <summary>Centre lines.</summary>
    public static TemplateLayer Centre { get; } = new("CENTRE-LINES", 0.15, 8, Dash.Chain);
    /// <summary>Crosses at the centres of holes, to be pricked through.</summary>
    public static TemplateLayer Cross { get; } = new("CENTRE-MARKS", 0.15, 7);
    /// <summary>Lines to check the print by.</summary>
    public static TemplateLayer Check { get; } = new("CHECK-LINES", 0.25, 6);
    /// <summary>Words and arrows.</summary>
    public static TemplateLayer Note { get; } = new("NOTES", 0.15, 7);
    /// <summary>Every layer, the lowest first.</summary>
    public static IReadOnlyList<TemplateLayer> All { get; } = [Outline, Deck, Box, Opening, Centre, Cross, Check, Note];
    /// <summary>With what its lines are drawn.</summary>
    public Pen Pen => new(Ink.Black, Width, Dash);
    /// <summary>The layer as a drawing has it.</summary>
    public DrawingGroup Group(IEnumerable<Shape> shapes) => new("layer", Name, "", [.. shapes]);
}
