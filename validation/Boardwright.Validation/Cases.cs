using Boardwright.Validation.Drivetrains;

namespace Boardwright.Validation;

/// <summary>Every case.</summary>
public static class Cases
{
    /// <summary>Every case, in the order of the page: room by room.</summary>
    public static IReadOnlyList<Case> All { get; } =
    [
        new BeltGeometryCase(),
    ];
}
