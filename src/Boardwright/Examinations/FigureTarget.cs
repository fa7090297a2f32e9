using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Examinations;

/// <summary>What a brief asks of a figure.</summary>
/// <param name="Least">The least value that will do, in the figure's own unit.</param>
/// <param name="Text">It, in the reader's units.</param>
public sealed record FigureTarget(double Least, Func<UnitSystem, string> Text)
{
    /// <summary>What the board's brief asks of a figure; <c>null</c> where it asks nothing.</summary>
    public static FigureTarget? Find(Board board, string figureId)
    {
        var brief = board.Brief;
        return figureId == Catalogue.TopFull.Id ? Create(brief.TopSpeedWanted, v => v.KilometresPerHour, "0.# km/h")
            : figureId == Catalogue.Grade.Id ? Create(brief.ClimbWanted, v => v.Percent, "0.# %")
            : figureId == Catalogue.Range.Id ? Create(brief.RangeWanted, v => v.Kilometres, "0.# km")
            : null;
    }

    /// <summary>The entry of the brief that a figure holds for: a range without its pace says nothing.</summary>
    public static Known<Speed> PaceOf(Board board, string figureId) =>
        AtCruise.Any(kind => kind.Id == figureId) ? board.Brief.CruiseSpeed
        : figureId == Catalogue.Grade.Id ? board.Brief.ClimbSpeed
        : default;

    static IReadOnlyList<FigureKind> AtCruise { get; } =
        [Catalogue.Range, Catalogue.Consumption, Catalogue.CruisePower, Catalogue.BrakeDistance, Catalogue.BrakeDistanceFull];

    static FigureTarget? Create<T>(Known<T> wanted, Func<T, double> value, string format)
        where T : struct, IQuantity<T> =>
        wanted.IsKnown ? new(value(wanted.Value), units => wanted.Value.ToString(format, units)) : null;
}
