using Boardwright.Analyses;
using Boardwright.Heat;
using Boardwright.Traction;

namespace Boardwright.Rules;

/// <summary>What happens where more current flows than a part is made for.</summary>
static class CurrentConsequences
{
    /// <summary>In a sentence.</summary>
    public static FormattableString Beyond(BoardAnalysis e, CurrentRating part, Current flows) => part.Bearer switch
    {
        Bearer.Cells when part.Rated.Key == e.Board.Parts.Cell.ChargeCurrent.Key =>
            $"Braking charges the cells faster than their maker allows, which ages them and can short them inside.",
        Bearer.Cells => InCells(e, flows),
        Bearer.Protection => $"Above it the protection opens, and drive and electric brake are gone at once.",
        Bearer.Fuse => $"After a while the fuse opens, and drive and electric brake are gone at once.",
        Bearer.Controller => $"They hold themselves to that.",
        _ => InContact(flows, part.Rated.Current),
    };

    /// <summary>Where a part takes none at all.</summary>
    public static FormattableString OfNone(BoardAnalysis e, CurrentRating part) => part.Bearer switch
    {
        Bearer.Protection => $"the protection lets no braking current through: the brake is only what the copper turns into heat.",
        Bearer.Cells when CurrentRatings.ForbiddenBy(e.Board) is { IsKnown: true } end =>
            $"the cells may not be charged at the brief's {e.Board.Brief.Temperature.Value:0 °C} ({end.Value:0 °C} is the end): it ages them and can short them inside. No controller knows how warm they are, so the brake figures are computed with that current all the same.",
        _ => $"{part.Rated.Says} is none.",
    };

    /// <summary>What to do where a part takes none at all.</summary>
    public static FormattableString MendOfNone(CurrentRating part) => part.Bearer switch
    {
        Bearer.Protection => $"Fit a protection that lets braking current through, or ride and brake as if there were no electric brake.",
        Bearer.Cells => $"Bring the pack to a temperature at which its cells may be charged before riding, or set no braking current and brake as if there were no electric brake.",
        _ => $"Take a part that takes braking current, or ride and brake as if there were no electric brake.",
    };

    /// <summary>A winding under a phase current, before any heat leaves it.</summary>
    public static FormattableString InWinding(BoardAnalysis e, Current phase) =>
        e.Motor.IsKnown && WindingWarming.KelvinsPerSecond(e.Board.Parts.Motor, e.Motor.Value, phase) is { } rate
            ? $"Under {phase:0 A} the winding warms by {rate:0.0} K each second at first, and the magnets may be weakened."
            : (FormattableString)$"The winding overheats sooner, and the magnets may be weakened.";

    /// <summary>A contact, whose heat grows with the square.</summary>
    public static FormattableString InContact(Current flows, Current rating)
    {
        var times = flows / rating;
        return $"Its contacts get {times * times:0.0} times the heat that they are made for.";
    }

    static FormattableString InCells(BoardAnalysis e, Current flows)
    {
        if (!e.Pack.IsKnown)
            return $"The cells get hotter and age sooner.";
        var heat = e.Pack.Value.HeatInCellUnder(flows);
        var capacity = e.Board.Parts.Cell.HeatCapacity;
        return capacity.IsKnown
            ? $"Each cell then turns {heat:0.0 W} into heat, which warms it by {60 * heat.Watts / capacity.Value.JoulesPerKelvin:0.0} K a minute before any leaves it."
            : (FormattableString)$"Each cell then turns {heat:0.0 W} into heat.";
    }
}
