using Boardwright.Findings;

namespace Boardwright.Drivetrains;

/// <summary>Between which limits a diameter lies, as deviations from nominal.</summary>
/// <param name="Lower">Lower deviation.</param>
/// <param name="Upper">Upper deviation.</param>
/// <validity>Diameters above 6 to 18 mm; a small letter for shafts, a capital for holes.</validity>
/// <error>g6, k6, N9 and P9 are from memory.</error>
/// <source cref="Sources.Iso286"/>
/// <source cref="Sources.FitsFromMemory"/>
public sealed record ToleranceZone(Length Lower, Length Upper)
{
    /// <summary>Bore of a bearing of class Normal, 2.5 to 10 mm: 0 / −8 µm.</summary>
    /// <source cref="Sources.Iso492"/>
    public static ToleranceZone BearingBore { get; } = Microns(-8, 0);

    /// <summary>Finds a zone by its symbol; 10 mm belongs to the step of 6 to 10 mm.</summary>
    /// <param name="symbol">The symbol, such as <c>H7</c> or <c>m6</c>; capitals matter.</param>
    /// <param name="diameter">Nominal diameter.</param>
    /// <returns>The zone, or <c>null</c> when the symbol or the diameter is not in the table.</returns>
    public static ToleranceZone? Parse(string symbol, Length diameter)
    {
        ArgumentNullException.ThrowIfNull(symbol);
        int? step = diameter.Millimetres switch
        {
            > 6 and <= 10 => 0,
            > 10 and <= 18 => 1,
            _ => null,
        };
        return (symbol, step) switch
        {
            ("h6", 0) => Microns(-9, 0),
            ("h7", 0) => Microns(-15, 0),
            ("m6", 0) => Microns(6, 15),
            ("g6", 0) => Microns(-14, -5),
            ("k6", 0) => Microns(1, 10),
            ("H7", 0) => Microns(0, 15),
            ("JS9", 0) => Microns(-18, 18),
            ("N9", 0) => Microns(-36, 0),
            ("P9", 0) => Microns(-51, -15),
            ("h6", 1) => Microns(-11, 0),
            ("m6", 1) => Microns(7, 18),
            ("g6", 1) => Microns(-17, -6),
            ("k6", 1) => Microns(1, 12),
            ("H7", 1) => Microns(0, 18),
            ("JS9", 1) => Microns(-21.5, 21.5),
            _ => null,
        };
    }

    static ToleranceZone Microns(double lower, double upper) => new(Length.FromMicrometres(lower), Length.FromMicrometres(upper));
}

/// <summary>A hole on a shaft of the same nominal diameter.</summary>
/// <param name="Hole">Limits of the hole.</param>
/// <param name="Shaft">Limits of the shaft.</param>
/// <error>Exact for parts within their limits.</error>
/// <source cref="Sources.Iso286"/>
public sealed record CylindricalFit(ToleranceZone Hole, ToleranceZone Shaft)
{
    /// <summary>Clearance of the smallest hole on the largest shaft; negative where they interfere.</summary>
    public Length LeastClearance => Hole.Lower - Shaft.Upper;
    /// <summary>Clearance of the largest hole on the smallest shaft; negative where even they interfere.</summary>
    public Length GreatestClearance => Hole.Upper - Shaft.Lower;
}
