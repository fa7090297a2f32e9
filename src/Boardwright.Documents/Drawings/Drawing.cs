using System.Runtime.InteropServices;

namespace Boardwright.Documents.Drawings;

/// <summary>Lines, patches and words on a sheet, for any medium: what a chart comes to once it is laid out.</summary>
/// <remarks>Units are CSS pixels, 96 to the inch, from the upper left corner; a medium in millimetres takes 25.4/96 mm for each.
/// At full size they are millimetres.</remarks>
/// <param name="Width">Width of the sheet.</param>
/// <param name="Height">Height of the sheet.</param>
/// <param name="Name">A word that tells it from others on the same page; letters, digits and hyphens.</param>
/// <param name="Title">What it shows, in a few words.</param>
/// <param name="Says">The same in sentences, for those who do not see it.</param>
/// <param name="Shapes">What is drawn, the lowest first.</param>
public sealed record Drawing(double Width, double Height, string Name, string Title, string Says, IReadOnlyList<Shape> Shapes)
{
    /// <summary>Millimetres in one unit.</summary>
    public const double Millimetre = 25.4 / 96;
    /// <summary>Where it is drawn to scale: units of the sheet for one millimetre of the thing itself.</summary>
    public double? UnitsPerMillimetre { get; init; }
    /// <summary>Whether a unit is a millimetre of the thing itself, as on a template.</summary>
    public bool IsFullSize { get; init; }
}

/// <summary>A place on the sheet.</summary>
/// <param name="X">From the left edge.</param>
/// <param name="Y">From the upper edge.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Point(double X, double Y);

/// <summary>One thing that is drawn.</summary>
public abstract record Shape;

/// <summary>Shapes that belong together and have a name: a part, a finding's pin, a dimension.</summary>
/// <param name="Kind">What it is, one word in small letters, such as <c>part</c>.</param>
/// <param name="Key">Which one it is, such as <c>parts.motor</c>; several groups may share a key.</param>
/// <param name="Title">Its name for people; empty where it needs none.</param>
/// <param name="Shapes">What belongs to it, the lowest first.</param>
sealed record DrawingGroup(string Kind, string Key, string Title, IReadOnlyList<Shape> Shapes) : Shape
{
    /// <summary>A word that tells it from others of its kind, such as a finding's level; empty for none.</summary>
    public string Mark { get; init; } = "";

    /// <summary>Every shape of a list, those in groups instead of the groups.</summary>
    public static IEnumerable<Shape> Flat(IReadOnlyList<Shape> shapes) =>
        shapes.SelectMany(s => s is DrawingGroup group ? Flat(group.Shapes) : [s]);
}

/// <summary>A line from spot to spot.</summary>
/// <param name="Path">Its corners.</param>
/// <param name="Pen">With what it is drawn.</param>
sealed record Stroke(ReadOnlyMemory<Point> Path, Pen Pen) : Shape
{
    /// <summary>A straight line.</summary>
    public static Stroke Between(double x1, double y1, double x2, double y2, Pen pen) => new(new Point[] { new(x1, y1), new(x2, y2) }, pen);
}

/// <summary>A filled outline.</summary>
/// <param name="Outline">Its corners.</param>
/// <param name="Ink">What fills it.</param>
sealed record Patch(ReadOnlyMemory<Point> Outline, Ink Ink) : Shape
{
    /// <summary>An upright rectangle.</summary>
    public static Patch Rectangle(double left, double top, double right, double bottom, Ink ink) =>
        new(new Point[] { new(left, top), new(right, top), new(right, bottom), new(left, bottom) }, ink);
}

/// <summary>A circle.</summary>
/// <param name="Centre">Its middle.</param>
/// <param name="Radius">Its radius.</param>
/// <param name="Ink">What fills it; <c>null</c> for a ring.</param>
/// <param name="Rim">With what its rim is drawn.</param>
sealed record Circle(Point Centre, double Radius, Ink? Ink, Pen Rim) : Shape
{
    /// <summary>A round mark.</summary>
    public static Circle Mark(Point centre, double radius, Ink ink, Ink rim) => new(centre, radius, ink, new(rim, 1.4));
}

/// <summary>A line of text.</summary>
/// <param name="At">Where its baseline begins, is centred or ends.</param>
/// <param name="Text">The text.</param>
/// <param name="Size">Size of the letters.</param>
/// <param name="Ink">Ink of the letters.</param>
public sealed record Words(Point At, string Text, double Size, Ink Ink) : Shape
{
    /// <summary>Which end is at the spot.</summary>
    public Anchor Anchor { get; init; }
    /// <summary>Whether the letters are bold.</summary>
    public bool IsBold { get; init; }
    /// <summary>Whether a rim of paper keeps what lies beneath away from the letters.</summary>
    public bool HasHalo { get; init; }
}

/// <summary>Which part of a text stands at its spot.</summary>
public enum Anchor
{
    /// <summary>Its beginning.</summary>
    Start,
    /// <summary>Its middle.</summary>
    Middle,
    /// <summary>Its end.</summary>
    End,
}

/// <summary>What a line is drawn with.</summary>
/// <param name="Ink">The ink.</param>
/// <param name="Width">The width.</param>
/// <param name="Dash">The pattern.</param>
[StructLayout(LayoutKind.Auto)]
readonly record struct Pen(Ink Ink, double Width, Dash Dash = Dash.Solid)
{
    /// <summary>The pen of a series by its place in the panel: six hues, each with a pattern of its own, so that the lines can be told
    /// apart without colour.</summary>
    public static Pen Create(int place, double width) => new(Inks.Hue(place), width, (Dash)(place % 6));
}

/// <summary>Pattern of a line.</summary>
enum Dash
{
    /// <summary>Without gaps.</summary>
    Solid,
    /// <summary>Dashes.</summary>
    Dashed,
    /// <summary>Dots.</summary>
    Dotted,
    /// <summary>Dash and dot in turn.</summary>
    DashDot,
    /// <summary>Long dashes.</summary>
    Long,
    /// <summary>A dash and two dots in turn.</summary>
    DashDotDot,
    /// <summary>Centre lines at full size, mm.</summary>
    Chain,
    /// <summary>Short dashes at full size, mm.</summary>
    Fine,
}

/// <summary>The patterns as lengths.</summary>
static class Dashes
{
    static readonly double[][] Patterns =
        [[], [7, 3.5], [1.8, 2.8], [9, 3, 2, 3], [15, 4], [9, 3, 2, 3, 2, 3], [6, 1.2, 1.2, 1.2], [1.2, 0.8]];

    /// <summary>Lengths of line and gap in turn; none for a line without gaps.</summary>
    public static IReadOnlyList<double> LengthsOf(Dash dash) => Patterns[(int)dash];
}
