namespace Boardwright.Findings;

/// <summary>Every work that an equation, a figure or a limit is taken from.</summary>
public static class Sources
{
    /// <summary>A fact of the trade that nobody has published.</summary>
    public static Source CommonPractice { get; } = new("common practice, no source");

    /// <summary>What the builder wrote into the board file.</summary>
    public static Source Brief { get; } = new("the board file's own brief and limits");

    /// <summary>What the parts' makers state.</summary>
    public static Source MakersSheet { get; } = new("the parts' own figures on the shelf");

    /// <summary>Plain geometry.</summary>
    public static Source Geometry { get; } = new("plain geometry of the stated dimensions");

    /// <summary>Plain circuit theory.</summary>
    public static Source CircuitTheory { get; } = new("Ohm's and Kirchhoff's laws on the stated resistances");

    /// <summary>Machine elements.</summary>
    public static Source Shigley { get; } = new(
        "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, McGraw-Hill, ch. 7 and 17, with its Instructor's Solutions Manual");

    /// <summary>A belt maker's manual.</summary>
    public static Source OptibeltManual { get; } = new(
        "Arntz Optibelt Group, Technical Manual Rubber Timing Belt Drives (year not shown in the copy read), pp. 17-45 and 72-79");

    /// <summary>A belt supplier's handbook.</summary>
    public static Source SdpSiTimingBelts { get; } = new(
        "Stock Drive Products/Sterling Instrument, Handbook of Timing Belts and Pulleys, D265 (2002), p. T15 table 3 and p. T16 table 4");

    /// <summary>What is remembered of tooth profiles.</summary>
    public static Source ProfilesFromMemory { get; } = new(
        "from memory: pitch-line differentials 0.015 in (3M) and 0.027 in (8M), least teeth 10 (3M) and 22 (8M), width multipliers 1.00, 1.89 and 3.38 of 9, 15 and 25 mm belts (5M), from which an edge loss of 2.27 mm follows");
}
