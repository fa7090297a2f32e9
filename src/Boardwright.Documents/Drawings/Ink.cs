namespace Boardwright.Documents.Drawings;

/// <summary>What an ink is for; a medium gives it its colour.</summary>
public enum Ink
{
    /// <summary>The paper itself.</summary>
    Paper,
    /// <summary>Text that is read first.</summary>
    Text,
    /// <summary>Text that steps back.</summary>
    Quiet,
    /// <summary>Edges and axes.</summary>
    Frame,
    /// <summary>Lines to read values by.</summary>
    Grid,
    /// <summary>Colour of a series.</summary>
    Hue1,

    /// <inheritdoc cref="Hue1"/>
    Hue2,

    /// <inheritdoc cref="Hue1"/>
    Hue3,

    /// <inheritdoc cref="Hue1"/>
    Hue4,

    /// <inheritdoc cref="Hue1"/>
    Hue5,

    /// <inheritdoc cref="Hue1"/>
    Hue6,

    /// <summary>Fill of the series of the same number; in black and white each is a grey of its own.</summary>
    Wash1,

    /// <inheritdoc cref="Wash1"/>
    Wash2,

    /// <inheritdoc cref="Wash1"/>
    Wash3,

    /// <inheritdoc cref="Wash1"/>
    Wash4,

    /// <inheritdoc cref="Wash1"/>
    Wash5,

    /// <inheritdoc cref="Wash1"/>
    Wash6,

    /// <summary>What is cut, drilled or traced by: black everywhere.</summary>
    Black,
}

/// <summary>The inks of series.</summary>
static class Inks
{
    const int Hues = 6;

    /// <summary>Colour of the line with a place in its panel, from 0.</summary>
    public static Ink Hue(int place) => Ink.Hue1 + place % Hues;
    /// <summary>Fill of the area with a place in its panel, from 0.</summary>
    public static Ink Wash(int place) => Ink.Wash1 + place % Hues;
}

/// <summary>The colours of all inks on one kind of paper, as red, green and blue in hexadecimal digits.</summary>
public sealed class Palette
{
    readonly string[] colours;

    Palette(params string[] colours) => this.colours = colours;

    /// <summary>On white paper; text and lines keep a contrast of 4.5 to 1 and more.</summary>
    public static Palette Light { get; } = new(
        "#ffffff", "#1c232e", "#566171", "#8a94a3", "#dde2e8",
        "#17569b", "#a8430f", "#256b35", "#713a92", "#0b6a70", "#785800",
        "#cfe0f3", "#f2d3c3", "#e3efe0", "#d5c6df", "#b9dcdd", "#f0e6c2", "#000000");

    /// <summary>On a dark screen.</summary>
    public static Palette Dark { get; } = new(
        "#12161c", "#e6eaf0", "#a4afbd", "#6a7583", "#2a323c",
        "#86bdf6", "#f3a67f", "#93d3a0", "#d0a8ea", "#74d2d6", "#e0c464",
        "#1e3a5a", "#5c3521", "#1f3d28", "#45315a", "#154a4d", "#4d4113", "#000000");

    /// <summary>The colour of an ink, such as <c>#17569b</c>.</summary>
    public string this[Ink ink] => colours[(int)ink];
}
