using Boardwright.Findings;

namespace Boardwright.Wiring;

/// <summary>Equal round wires lying close together: the circle around them, and the sleeve and shrink tube that go over it.</summary>
/// <param name="Wires">How many, 1 to 12.</param>
/// <param name="OuterDiameter">Diameter of one over its insulation.</param>
/// <validity>Wires of one size, packed as closely as circles go; soft insulation goes closer, a twist takes more.</validity>
/// <error>Exact for circles; a bundle made by hand is some 10 % thicker.</error>
/// <source cref="Sources.CirclesInCircle"/>
public sealed record Bundle(int Wires, Length OuterDiameter)
{
    // Of the smallest circle around n circles of diameter 1, by n from 1.
    static readonly double[] Around = [1, 2, 2.1547, 2.4142, 2.7013, 3, 3, 3.3048, 3.6131, 3.8130, 3.9238, 4.0296];

    // Sizes that braided sleeve and shrink tube are sold in, mm: common practice.
    static readonly double[] Sleeves = [3, 4, 6, 8, 10, 12, 16, 20, 25, 30, 40];
    static readonly double[] Shrinks = [1.6, 2.4, 3.2, 4.8, 6.4, 9.5, 12.7, 19.1, 25.4, 38.1, 50.8];

    // Room for the hand that pulls it over, and grip once it has shrunk: common practice.
    const double Slip = 1.2, Grip = 0.8;

    /// <summary>Diameter of the circle around them.</summary>
    /// <exception cref="InvalidOperationException">There are fewer than 1 or more than 12.</exception>
    public Length Diameter => Wires >= 1 && Wires <= Around.Length
        ? OuterDiameter * Around[Wires - 1]
        : throw new InvalidOperationException("The circle around so many wires is not tabulated.");

    /// <summary>Nominal bore of the braided sleeve: the least that is no narrower than the bundle; braid gives.</summary>
    /// <returns>The size; <c>null</c> when none is wide enough.</returns>
    /// <source cref="Sources.CommonPractice"/>
    public Length? Sleeve => Least(Sleeves, Diameter.Millimetres) is { } size ? Length.FromMillimetres(size) : null;

    /// <summary>Shrink tube over a diameter: bore as supplied at least 1.2 of it, bore once shrunk at most 0.8 of it.</summary>
    /// <param name="over">Diameter that it goes over.</param>
    /// <returns>The tube; <c>null</c> when none is wide enough.</returns>
    /// <source cref="Sources.CommonPractice"/>
    public static ShrinkTube? ShrinkOver(Length over)
    {
        if (Least(Shrinks, Slip * over.Millimetres) is not { } size)
            return null;
        var ratio = Array.Find([2, 3, 4], r => size / r <= Grip * over.Millimetres);
        return new ShrinkTube(Length.FromMillimetres(size), ratio == 0 ? 4 : ratio);
    }

    static double? Least(double[] sizes, double least) => sizes.Cast<double?>().FirstOrDefault(s => s >= least - 1e-9);
}

/// <summary>A shrink tube.</summary>
/// <param name="Supplied">Bore as supplied.</param>
/// <param name="Ratio">Bore as supplied over bore once shrunk: 2, 3 or 4.</param>
/// <source cref="Sources.CommonPractice"/>
public sealed record ShrinkTube(Length Supplied, int Ratio)
{
    /// <summary>How much longer it is cut than what it has to cover, since it shrinks along as well.</summary>
    public const double Longer = 1.15;
}
