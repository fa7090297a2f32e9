using Boardwright.Findings;

namespace Boardwright.Drivetrains;

/// <summary>How far bolt holes in metal must keep from edges and from each other.</summary>
/// <validity>Metal plates. In wood and laminates two to three diameters are common practice.</validity>
/// <error>Least distances of a building code; for the plate to bear its full load, 2 d₀ to the end and 1.5 d₀ to the side are good
/// practice.</error>
/// <source cref="Sources.En1993"/>
public static class HoleEdges
{
    /// <summary>Least distance from a hole's centre to an edge: 1.2 d₀.</summary>
    public static Length EdgeDistance(Length hole) => 1.2 * hole;
    /// <summary>Least distance from a slot's end radius centre to an edge: 1.5 d₀.</summary>
    public static Length SlotEdgeDistance(Length width) => 1.5 * width;
    /// <summary>Least distance between holes along the load: 2.2 d₀.</summary>
    public static Length PitchAlong(Length hole) => 2.2 * hole;
    /// <summary>Least distance between holes across the load: 2.4 d₀.</summary>
    public static Length PitchAcross(Length hole) => 2.4 * hole;
}
