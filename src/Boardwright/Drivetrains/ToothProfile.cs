using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Drivetrains;

/// <summary>A length in which a maker keeps a belt.</summary>
/// <param name="PitchLength">Length on the pitch line.</param>
/// <param name="Teeth">Number of teeth.</param>
/// <param name="OlderSeriesOnly">The maker lists it in the older of its two series only.</param>
/// <source cref="Sources.OptibeltManual"/>
public readonly record struct StockLength(Length PitchLength, int Teeth, bool OlderSeriesOnly);

/// <summary>A curvilinear tooth profile of synchronous belts, and what its belts carry and weigh.</summary>
/// <remarks>The tooth's own shape is not described: pulleys are bought or cut with a standard tool.</remarks>
/// <validity>Moulded neoprene belts with glass cord. Profiles of other families with the same pitch (such as the modified curvilinear 5 mm)
/// do not mesh with it and are not found under its name.</validity>
/// <error>
/// Belt mass differs by ±15 % between makers, so enter the maker's own where a tension is read from a frequency.
/// The pitch-line differentials of 3M and 8M, the least teeth of 3M and 8M and the edge losses of 3M and 5M are from memory.
/// </error>
/// <source cref="Sources.SdpSiTimingBelts"/>
/// <source cref="Sources.OptibeltManual"/>
/// <source cref="Sources.ProfilesFromMemory"/>
public sealed record ToothProfile
{
    static readonly int[] OlderSeries = [120, 345];

    // Millimetres. One maker's list as read from the text of its manual; an entry may have been lost in reading.
    static readonly int[] Stock5M =
    [
        120, 180, 225, 255, 265, 270, 275, 280, 295, 300, 305, 325, 330, 340, 345, 350, 360, 365, 370, 375, 385, 400, 415, 420, 425,
        450, 460, 475, 490, 500, 520, 525, 535, 540, 550, 560, 565, 575, 580, 600, 610, 615, 620, 625, 630, 635, 640, 645, 650, 655,
        665, 670, 700, 710, 720, 740, 745, 750, 755, 775, 790, 800, 810, 825, 830, 835, 845, 850, 860, 870, 890, 900, 920, 925, 935,
        940, 950, 960, 965, 975, 980, 985, 1000, 1025, 1035, 1050, 1100, 1125, 1135, 1200, 1270, 1350, 1380, 1400, 1420, 1425, 1500,
        1595, 1690, 1790, 1800, 1870, 1895, 2000, 2110, 2250, 2350, 2525,
    ];

    /// <summary>Describes a profile by its pitch line alone.</summary>
    /// <param name="name">The name.</param>
    /// <param name="pitch">Distance between teeth on the pitch line, above 0.</param>
    /// <param name="pitchLineDifferential">Distance from the pulley's tip circle to the pitch line, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is out of its range.</exception>
    public ToothProfile(string name, Length pitch, Length pitchLineDifferential)
    {
        Name = name;
        Pitch = Require.AboveZero(pitch);
        PitchLineDifferential = Require.AtLeast(pitchLineDifferential, Length.FromMetres(0));
    }

    /// <summary>The name, such as <c>HTD 5M</c>.</summary>
    public string Name { get; }
    /// <summary>Pitch p: distance between teeth on the pitch line.</summary>
    public Length Pitch { get; }
    /// <summary>Pitch-line differential a: distance from the pulley's tip circle out to the pitch line.</summary>
    public Length PitchLineDifferential { get; }
    /// <summary>Mass of a belt for each square metre of its length times width, kg/m²; the same number in g/(m·mm).</summary>
    public double KilogramsPerSquareMetre { get; init; }
    /// <summary>Fewest teeth on a pulley for which the makers rate the belt.</summary>
    public int LeastTeeth { get; init; }
    /// <summary>Allowable working tension of a belt 25.4 mm wide; a continuous value for long life, not a breaking load.</summary>
    public Force TensionPerInch { get; init; }
    /// <summary>Width that carries nothing, because the cords at the edges are not complete loops.</summary>
    public Length EdgeLoss { get; init; }
    /// <summary>Lengths that one maker keeps (Optibelt), rising; empty where no list was read. Other makers keep others, so a length that
    /// is missing here may still be had.</summary>
    public IReadOnlyList<StockLength> StockLengths { get; init; } = [];

    /// <summary>The 3 mm curvilinear profile.</summary>
    public static ToothProfile Htd3M { get; } = new("HTD 3M", Length.FromMillimetres(3), Length.FromInches(0.015))
    {
        KilogramsPerSquareMetre = 2.4,
        LeastTeeth = 10,
        TensionPerInch = Force.FromPoundsForce(64),
        EdgeLoss = Length.FromMillimetres(2.27),
    };

    /// <summary>The 5 mm curvilinear profile.</summary>
    public static ToothProfile Htd5M { get; } = new("HTD 5M", Length.FromMillimetres(5), Length.FromInches(0.0225))
    {
        KilogramsPerSquareMetre = 3.5,
        LeastTeeth = 14,
        TensionPerInch = Force.FromPoundsForce(102),
        EdgeLoss = Length.FromMillimetres(2.27),
        StockLengths = [.. Stock5M.Select(static mm => new StockLength(Length.FromMillimetres(mm), mm / 5, OlderSeries.Contains(mm)))],
    };

    /// <summary>The 8 mm curvilinear profile.</summary>
    public static ToothProfile Htd8M { get; } = new("HTD 8M", Length.FromMillimetres(8), Length.FromInches(0.027))
    {
        KilogramsPerSquareMetre = 5.8,
        LeastTeeth = 22,
        TensionPerInch = Force.FromPoundsForce(178),
        EdgeLoss = Length.FromMillimetres(2.76),
    };

    /// <summary>Every profile known by name.</summary>
    public static IReadOnlyList<ToothProfile> All { get; } = [Htd3M, Htd5M, Htd8M];

    /// <summary>Finds a profile by its name in any usual spelling: <c>HTD 5M</c>, <c>htd-5m</c>, <c>HTD5M</c>, <c>5M HTD</c>, <c>H5M</c>,
    /// <c>5M</c>.</summary>
    /// <returns>The profile, or <c>null</c> when the name is not one of these.</returns>
    public static ToothProfile? Parse(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var bare = TradeName.Plain(name).ToUpperInvariant();
        bare = bare switch
        {
            _ when bare.StartsWith("HTD", StringComparison.Ordinal) => bare[3..],
            _ when bare.EndsWith("HTD", StringComparison.Ordinal) => bare[..^3],
            _ when bare.StartsWith('H') => bare[1..],
            _ => bare,
        };
        return bare switch
        {
            "3M" => Htd3M,
            "5M" => Htd5M,
            "8M" => Htd8M,
            _ => null,
        };
    }

    /// <summary>Mass of a metre of belt, kg/m: w · <see cref="KilogramsPerSquareMetre"/>.</summary>
    public double KilogramsPerMetre(Length width) => KilogramsPerSquareMetre * width.Metres;

    /// <summary>How many teeth a belt of a given length has, if it is a whole number of pitches to 0.01 mm.</summary>
    /// <returns>The number of teeth, or <c>null</c> when the length is no whole number of pitches.</returns>
    public int? TeethOf(Length pitchLength)
    {
        var teeth = Math.Round(pitchLength / Pitch);
        return teeth >= 1 && Math.Abs((pitchLength - teeth * Pitch).Millimetres) <= 0.01 ? (int)teeth : null;
    }

    /// <summary>The stock belt of a given length, to 0.01 mm.</summary>
    /// <returns>The stock belt, or <c>null</c> when the one list does not have it.</returns>
    public StockLength? Stock(Length pitchLength)
    {
        foreach (var stock in StockLengths)
        {
            if (Math.Abs((stock.PitchLength - pitchLength).Millimetres) <= 0.01)
                return stock;
        }

        return null;
    }

    /// <summary>The stock belts next to a length: the longest below it and the shortest above it.</summary>
    /// <returns>The neighbours; <c>null</c> where the list ends.</returns>
    public (StockLength? Shorter, StockLength? Longer) StockAround(Length pitchLength)
    {
        StockLength? shorter = null;
        foreach (var stock in StockLengths)
        {
            if (stock.PitchLength > pitchLength)
                return (shorter, stock);
            if (stock.PitchLength < pitchLength)
                shorter = stock;
        }

        return (shorter, null);
    }
}
