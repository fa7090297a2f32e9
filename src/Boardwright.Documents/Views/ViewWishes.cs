namespace Boardwright.Documents.Views;

/// <summary>Dimensions that can be asked for on a view, by what they are about.</summary>
[Flags]
public enum Dimensioned
{
    /// <summary>None.</summary>
    Nothing = 0,
    /// <summary>Overall length and width.</summary>
    Overall = 1,
    /// <summary>Wheelbase, hanger and track.</summary>
    Axles = 2,
    /// <summary>The box and its clearance.</summary>
    Box = 4,
    /// <summary>Shafts' distance and mount angle.</summary>
    Drive = 8,
    /// <summary>Clearances.</summary>
    Clearances = 16,
    /// <summary>All of them.</summary>
    Everything = Overall | Axles | Box | Drive | Clearances,
}

/// <summary>How a view is wanted.</summary>
public sealed record ViewWishes
{
    /// <summary>Everything, as it hangs on the wall.</summary>
    public static ViewWishes Usual { get; } = new();
    /// <summary>Width of the sheet, CSS pixels, at least 240.</summary>
    public double Width { get; init; } = 1000;
    /// <summary>Whether it is drawn 1:1, 1:2, 1:5, 1:10 and so on, so that a ruler serves on paper, or as large as the sheet is
    /// wide.</summary>
    public bool HasRoundScale { get; init; } = true;
    /// <summary>Which dimensions are drawn.</summary>
    public Dimensioned Dimensions { get; init; } = Dimensioned.Everything;
    /// <summary>Whether findings are pinned where they belong.</summary>
    public bool HasPins { get; init; } = true;
    /// <summary>Units of dimensions.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Metric;
}
