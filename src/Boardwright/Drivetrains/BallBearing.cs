using Boardwright.Findings;
using Boardwright.Numerics;

namespace Boardwright.Drivetrains;

/// <summary>A deep groove ball bearing as a maker lists it.</summary>
/// <remarks>In a wheel at a rider's weight the balls outlast everything: water and side loads govern, not fatigue.</remarks>
/// <validity>Single row, normal clearance, steel balls. Sealed, stainless and skate bearings of other makers have other ratings.</validity>
/// <error>Nine of ten bearings reach the basic life. Makers' ratings of one size differ by up to 30 % (dynamic) and 50 % (static). The
/// axial factors are from memory.</error>
/// <source cref="Sources.SkfCatalogue"/>
/// <source cref="Sources.NtnCatalogue"/>
/// <source cref="Sources.AxialFactorsFromMemory"/>
public sealed record BallBearing
{
    const double RadialFactor = 0.56;
    static readonly double[] RelativeLoads = [0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89];
    static readonly Polyline AxialFactors = new(RelativeLoads, [2.30, 1.99, 1.71, 1.55, 1.45, 1.31, 1.15, 1.04, 1.00]);
    static readonly Polyline Thresholds = new(RelativeLoads, [0.19, 0.22, 0.26, 0.28, 0.30, 0.34, 0.38, 0.42, 0.44]);

    BallBearing(string maker, string name, double bore, double outside, double width, double dynamic, double rest, double? load)
    {
        (Maker, Name) = (maker, name);
        (Bore, OutsideDiameter, Width) = (Length.FromMillimetres(bore), Length.FromMillimetres(outside), Length.FromMillimetres(width));
        (DynamicRating, StaticRating, LoadFactor) = (Force.FromKilonewtons(dynamic), Force.FromKilonewtons(rest), load);
    }

    /// <summary>The maker of the ratings.</summary>
    public string Maker { get; }
    /// <summary>The designation, such as <c>608</c>.</summary>
    public string Name { get; }
    /// <summary>Bore d.</summary>
    public Length Bore { get; }
    /// <summary>Outside diameter D.</summary>
    public Length OutsideDiameter { get; }
    /// <summary>Width B.</summary>
    public Length Width { get; }
    /// <summary>Basic dynamic load rating C.</summary>
    public Force DynamicRating { get; }
    /// <summary>Basic static load rating C₀.</summary>
    public Force StaticRating { get; }
    /// <summary>Factor f₀ of the axial load; <c>null</c> where the maker's was not read.</summary>
    public double? LoadFactor { get; }

    /// <summary>Every bearing read; where two makers list one size, the first in the list is used.</summary>
    public static IReadOnlyList<BallBearing> All { get; } =
    [
        new("SKF", "608", 8, 22, 7, 3.45, 1.37, 12),
        new("SKF", "627", 7, 22, 7, 3.45, 1.37, 12),
        new("SKF", "628", 8, 24, 8, 3.9, 1.66, 13),
        new("SKF", "61800", 10, 19, 5, 1.38, 0.585, 9.4),
        new("SKF", "61900", 10, 22, 6, 2.08, 0.85, 9.3),
        new("SKF", "6000", 10, 26, 8, 4.75, 1.96, 12),
        new("SKF", "6200", 10, 30, 9, 5.4, 2.36, 13),
        new("SKF", "61801", 12, 21, 5, 1.43, 0.67, 9.7),
        new("SKF", "61901", 12, 24, 6, 2.25, 0.98, 9.7),
        new("SKF", "6001", 12, 28, 8, 5.4, 2.36, 13),
        new("SKF", "6201", 12, 32, 10, 7.28, 3.1, 12),
        new("SKF", "6003", 17, 35, 10, 6.37, 3.25, 14),
        new("SKF", "61903", 17, 30, 7, 4.62, 2.55, 15),
        new("NTN", "6000", 10, 26, 8, 4.55, 1.96, null),
        new("NTN", "6001", 12, 28, 8, 5.10, 2.39, null),
        new("NTN", "6900", 10, 22, 6, 2.70, 1.27, null),
        new("NTN", "6901", 12, 24, 6, 2.89, 1.46, null),
    ];

    /// <summary>Finds a bearing by its designation; letters for seals and clearance after the number, such as <c>608-2RS</c>, are passed
    /// over.</summary>
    /// <returns>The bearing, or <c>null</c> when none was read.</returns>
    public static BallBearing? Parse(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var number = string.Concat(name.Trim().TakeWhile(char.IsAsciiDigit));
        return All.FirstOrDefault(bearing => bearing.Name == number);
    }

    /// <summary>Basic rating life in millions of turns: (C / P)³.</summary>
    /// <param name="rating">Dynamic load rating C.</param>
    /// <param name="load">Equivalent load P, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The load is not above 0.</exception>
    public static double MillionTurns(Force rating, Force load) => Math.Pow(rating / Require.AboveZero(load), 3);

    /// <summary>Basic rating life in millions of turns: (C / P)³.</summary>
    /// <param name="load">Equivalent load P, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The load is not above 0.</exception>
    public double MillionTurns(Force load) => MillionTurns(DynamicRating, load);

    /// <summary>Time for a life at a speed: 10⁶ L / n.</summary>
    /// <param name="millionTurns">Life L in millions of turns.</param>
    /// <param name="speed">Speed n, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not above 0.</exception>
    public static Duration Time(double millionTurns, AngularSpeed speed) =>
        Duration.FromSi(millionTurns * 1e6 * 2 * Math.PI / Require.AboveZero(speed).RadiansPerSecond);

    /// <summary>Way rolled in a life: 10⁶ L π D.</summary>
    /// <param name="millionTurns">Life L in millions of turns.</param>
    /// <param name="wheelDiameter">Diameter D of the wheel.</param>
    public static Length Way(double millionTurns, Length wheelDiameter) => millionTurns * 1e6 * Math.PI * wheelDiameter;

    /// <summary>
    /// Equivalent load: P = Fr while Fa / Fr is at most e, then 0.56 Fr + Y Fa; e and Y by straight lines over f₀ Fa / C₀, which is held
    /// within the table's 0.172 to 6.89.
    /// </summary>
    /// <param name="radial">Radial load Fr, at least 0.</param>
    /// <param name="axial">Axial load Fa, at least 0.</param>
    /// <returns>The load, or <c>null</c> when the maker's f₀ was not read.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A load is negative.</exception>
    public Force? EquivalentLoad(Force radial, Force axial)
    {
        Require.AtLeast(radial, Force.FromNewtons(0));
        Require.AtLeast(axial, Force.FromNewtons(0));
        if (LoadFactor is not { } factor)
            return null;
        var relative = factor * (axial / StaticRating);
        return axial <= Thresholds.At(relative) * radial ? radial : RadialFactor * radial + AxialFactors.At(relative) * axial;
    }

    /// <summary>Static equivalent load: P₀ = 0.6 Fr + 0.5 Fa, not below Fr.</summary>
    /// <param name="radial">Radial load Fr.</param>
    /// <param name="axial">Axial load Fa.</param>
    public static Force StaticLoad(Force radial, Force axial)
    {
        var both = 0.6 * radial + 0.5 * axial;
        return both > radial ? both : radial;
    }

    /// <summary>Largest purely axial load: C₀ / 4, for bores up to 12 mm and light series.</summary>
    /// <source cref="Sources.SkfAxialLoad"/>
    public Force AxialLimit => StaticRating / 4;
}
