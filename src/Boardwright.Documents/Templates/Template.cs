using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Templates;

/// <summary>What a mark of a template is for; a layer of its own in every medium.</summary>
public enum TemplateLayer
{
    /// <summary>Edges of parts.</summary>
    Outline,

    /// <summary>Holes in the deck.</summary>
    Deck,

    /// <summary>Clearance holes in the box's flange.</summary>
    Box,

    /// <summary>Openings in the box's walls.</summary>
    Opening,

    /// <summary>Centre lines.</summary>
    Centre,

    /// <summary>Crosses at the centres of holes, to be pricked through.</summary>
    Cross,

    /// <summary>Lines to check the print by.</summary>
    Check,

    /// <summary>Words and arrows.</summary>
    Note,
}

/// <summary>A drawing at full size: millimetres from its lower left corner, Y upwards.</summary>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
/// <param name="Title">What it is.</param>
/// <param name="Says">The same in sentences, for those who do not see it.</param>
/// <param name="Marks">What is drawn.</param>
public sealed record Template(double Width, double Height, string Title, string Says, IReadOnlyList<TemplateMark> Marks);

/// <summary>Something drawn on a template.</summary>
/// <param name="Layer">What it is for.</param>
public abstract record TemplateMark(TemplateLayer Layer)
{
    /// <summary>Left edge, lower edge, right edge and upper edge of the room it takes.</summary>
    public abstract (double Left, double Low, double Right, double High) Bounds { get; }
}

/// <summary>A straight line.</summary>
public sealed record TemplateLine(TemplateLayer Layer, double X1, double Y1, double X2, double Y2) : TemplateMark(Layer)
{
    /// <inheritdoc/>
    public override (double Left, double Low, double Right, double High) Bounds => (Math.Min(X1, X2), Math.Min(Y1, Y2), Math.Max(X1, X2), Math.Max(Y1, Y2));
}

/// <summary>A circle.</summary>
public sealed record Ring(TemplateLayer Layer, double X, double Y, double Radius) : TemplateMark(Layer)
{
    /// <inheritdoc/>
    public override (double Left, double Low, double Right, double High) Bounds => (X - Radius, Y - Radius, X + Radius, Y + Radius);
}

/// <summary>A part of a circle, from one angle to another against the clock, degrees from the right.</summary>
public sealed record Bow(TemplateLayer Layer, double X, double Y, double Radius, double From, double To) : TemplateMark(Layer)
{
    /// <inheritdoc/>
    public override (double Left, double Low, double Right, double High) Bounds => (X - Radius, Y - Radius, X + Radius, Y + Radius);
}

/// <summary>A line of text.</summary>
/// <param name="Layer">What it is for.</param>
/// <param name="X">Where it begins, is centred or ends.</param>
/// <param name="Y">Its baseline.</param>
/// <param name="Text">The text.</param>
/// <param name="Size">Size of the letters, mm.</param>
public sealed record Label(TemplateLayer Layer, double X, double Y, string Text, double Size) : TemplateMark(Layer)
{
    /// <summary>Which part of the text stands at X.</summary>
    public Anchor Anchor { get; init; }

    /// <summary>Whether the letters are bold.</summary>
    public bool IsBold { get; init; }

    /// <inheritdoc/>
    public override (double Left, double Low, double Right, double High) Bounds
    {
        get
        {
            var width = Lettering.WidthOf(Text, Size, IsBold);
            var left = Anchor switch
            {
                Anchor.Start => X,
                Anchor.Middle => X - width / 2,
                _ => X - width,
            };
            return (left, Y - Size * 0.25, left + width, Y + Size);
        }
    }
}

/// <summary>How layers are named and drawn.</summary>
public static class Layers
{
    /// <summary>Every layer, the lowest first.</summary>
    public static IReadOnlyList<TemplateLayer> All { get; } = Enum.GetValues<TemplateLayer>();

    /// <summary>Name of a layer in files: letters and hyphens.</summary>
    public static string Name(TemplateLayer layer) => layer switch
    {
        TemplateLayer.Outline => "OUTLINE",
        TemplateLayer.Deck => "DECK-HOLES",
        TemplateLayer.Box => "BOX-HOLES",
        TemplateLayer.Opening => "OPENINGS",
        TemplateLayer.Centre => "CENTRE-LINES",
        TemplateLayer.Cross => "CENTRE-MARKS",
        TemplateLayer.Check => "CHECK-LINES",
        _ => "NOTES",
    };

    /// <summary>Width of a layer's lines on paper, mm.</summary>
    public static double Pen(TemplateLayer layer) => layer switch
    {
        TemplateLayer.Deck or TemplateLayer.Opening => 0.3,
        TemplateLayer.Outline or TemplateLayer.Check => 0.25,
        _ => 0.15,
    };

    /// <summary>Dashes of a layer's lines, mm; none for a line without gaps.</summary>
    public static IReadOnlyList<double> DashOf(TemplateLayer layer) => layer switch
    {
        TemplateLayer.Centre => [6, 1.2, 1.2, 1.2],
        TemplateLayer.Box => [1.2, 0.8],
        _ => [],
    };
}
