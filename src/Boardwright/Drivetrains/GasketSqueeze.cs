using Boardwright.Findings;

namespace Boardwright.Drivetrains;

/// <summary>A kind of gasket and the squeeze it wants.</summary>
/// <param name="Name">The name.</param>
/// <param name="Least">Squeeze below which it does not seal.</param>
/// <param name="Greatest">Squeeze above which it is damaged or will not close.</param>
/// <param name="Source">Where it comes from.</param>
/// <error>Makers' advice, not a rating: a box is tight when it has been tested.</error>
/// <source cref="Sources.GasketCompression"/>
/// <source cref="Sources.EpdmCompression"/>
sealed record GasketKind(string Name, Fraction Least, Fraction Greatest, Source Source)
{
    /// <summary>Rubber strip for enclosures, 15 to 50 %, best at 40 %.</summary>
    public static GasketKind EnclosureRubber { get; } = new(
        "enclosure rubber", Fraction.FromPercent(15), Fraction.FromPercent(50), Sources.GasketCompression);
    /// <summary>Solid rubber, 25 to 40 %.</summary>
    public static GasketKind SolidRubber { get; } = new("solid rubber", Fraction.FromPercent(25), Fraction.FromPercent(40), Sources.EpdmCompression);
    /// <summary>Closed-cell foam, 25 to 50 %; common practice.</summary>
    public static GasketKind ClosedCellFoam { get; } = new("closed-cell foam", Fraction.FromPercent(25), Fraction.FromPercent(50), Sources.CommonPractice);
    /// <summary>Every kind.</summary>
    public static IReadOnlyList<GasketKind> All { get; } = [EnclosureRubber, SolidRubber, ClosedCellFoam];
}

/// <summary>How far a gasket is pressed together.</summary>
/// <error>Exact by definition.</error>
/// <source cref="Sources.EpdmCompression"/>
public static class GasketSqueeze
{
    /// <summary>Squeeze: (t₀ − t₁) / t₀.</summary>
    /// <param name="free">Free height t₀, above 0.</param>
    /// <param name="closed">Height t₁ with the lid closed.</param>
    /// <exception cref="ArgumentOutOfRangeException">The free height is not above 0.</exception>
    public static Fraction Compute(Length free, Length closed) => Fraction.FromValue((free - closed) / Require.AboveZero(free));

    /// <summary>Height with the lid closed: t₀ (1 − squeeze).</summary>
    /// <param name="free">Free height t₀.</param>
    /// <param name="squeeze">The squeeze.</param>
    public static Length ClosedHeight(Length free, Fraction squeeze) => (1 - squeeze.Value) * free;
}
