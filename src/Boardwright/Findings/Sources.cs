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

    /// <summary>Equivalent circuits of lithium cells.</summary>
    public static Source Plett { get; } = new("G. L. Plett, Battery Management Systems, vol. 1: Battery Modeling (2015), ch. 2: rest voltage, series resistance and resistor-capacitor pairs");

    /// <summary>The measured cell that the fit was tried on.</summary>
    public static Source Kollmeyer { get; } = new("P. Kollmeyer, C. Vidal, M. Naguib and M. Skells (2020), LG 18650HG2 Li-ion battery data, Mendeley Data V3, doi:10.17632/cp3473x7xv.3, CC BY 4.0");
}
