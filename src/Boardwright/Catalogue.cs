using Boardwright.Findings;

namespace Boardwright;

/// <summary>Every figure that an examination can compute, by its id.</summary>
public static class Catalogue
{
    /// <summary>Every kind of figure, in the order of a report.</summary>
    public static IReadOnlyList<FigureKind> All { get; } = [];
}
