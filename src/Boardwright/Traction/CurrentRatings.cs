using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Traction;

/// <summary>Which part a rating belongs to.</summary>
public enum Bearer
{
    /// <summary>The cells.</summary>
    Cells,
    /// <summary>The protection.</summary>
    Protection,
    /// <summary>A plug.</summary>
    Plug,
    /// <summary>The main fuse.</summary>
    Fuse,
    /// <summary>The controllers.</summary>
    Controller,
    /// <summary>The motors.</summary>
    Motor,
}

/// <summary>A current that a part is made for.</summary>
/// <param name="Bearer">The part.</param>
/// <param name="Rated">Its entry, what it is, and the current for the whole board (for one motor, when it is a phase current).</param>
public readonly record struct CurrentRating(Bearer Bearer, CurrentLimit Rated)
{
    /// <summary>Whether the part itself keeps the current from rising further: a controller does, and a protection opens.</summary>
    public bool IsEnforced => Bearer is Bearer.Controller or Bearer.Protection;
}

/// <summary>What the parts on a current's way are made for. Most of them keep no current down; they wear, get hot or fail.</summary>
/// <remarks>Figures of the ride are computed with <see cref="CurrentLimits"/>; these are what findings hold the limits against.</remarks>
public static class CurrentRatings
{
    /// <summary>Phase current that motor and controller take for a short time.</summary>
    public static IEnumerable<CurrentRating> Phase(Needs needs, Board board) => Known(
        (Bearer.Motor, CurrentLimits.Limit(needs, board.Parts.Motor.PhaseCurrentPeak, "the motor's peak phase current")),
        (Bearer.Controller, CurrentLimits.Limit(needs, board.Parts.Controller.PhaseCurrentPeak, "the controller's peak phase current")));

    /// <summary>What the parts between cells and controllers carry for ever.</summary>
    public static IEnumerable<CurrentRating> Pack(Needs needs, Board board)
    {
        var parts = board.Parts;
        return
        [
            .. Known(
                (Bearer.Cells, CurrentLimits.Limit(needs, parts.Cell.DischargeCurrent, "the cells' discharge current", parts.Pack.Parallel.Or(0))),
                (Bearer.Protection, CurrentLimits.Limit(needs, parts.Pack.Protection.DischargeCurrent, "the protection's discharge current"))),
            .. Carriers(needs, board),
            .. Known((Bearer.Controller, CurrentLimits.Limit(needs, parts.Controller.PackCurrent, "the controllers' supply current", PartSlot.ControllerCount(parts)))),
        ];
    }

    /// <summary>What the parts take back while braking; nothing where the cells may not be charged at the brief's temperature.</summary>
    public static IEnumerable<CurrentRating> Regen(Needs needs, Board board)
    {
        var (parts, cell) = (board.Parts, board.Parts.Cell);
        return
        [
            .. Known(
                (Bearer.Cells, ForbiddenBy(board) is { IsKnown: true } forbidding
                    ? new CurrentLimit(forbidding.Key, "the cells, which may not be charged at the brief's temperature", default)
                    : CurrentLimits.Limit(needs, cell.ChargeCurrent, "the cells' charge current", parts.Pack.Parallel.Or(0))),
                (Bearer.Protection, CurrentLimits.Back(needs, parts.Pack.Protection)),
                (Bearer.Controller, CurrentLimits.Limit(needs, parts.Controller.RegenCurrent, "the controllers' braking current", PartSlot.ControllerCount(parts)))),
            .. Carriers(needs, board),
        ];
    }

    /// <summary>The end of the cells' range of charging that the brief's temperature is beyond; not known where it is within.</summary>
    public static Known<Temperature> ForbiddenBy(Board board)
    {
        var (around, cell) = (board.Brief.Temperature, board.Parts.Cell);
        return !around.IsKnown ? default
            : cell.ChargeTemperatureMin.IsKnown && around.Value < cell.ChargeTemperatureMin.Value ? cell.ChargeTemperatureMin
            : cell.ChargeTemperatureMax.IsKnown && around.Value > cell.ChargeTemperatureMax.Value ? cell.ChargeTemperatureMax
            : default;
    }

    // Plug and fuse carry the current either way.
    static IEnumerable<CurrentRating> Carriers(Needs needs, Board board) => Known(
        (Bearer.Plug, board.Parts.Pack.Plug.IsKnown
            ? CurrentLimits.Limit(needs, board.PlugCalled(board.Parts.Pack.Plug.Value).CurrentContinuous, "the pack plug's continuous current") : null),
        (Bearer.Fuse, CurrentLimits.Limit(needs, board.Parts.Fuse.Rating, "the fuse's rating")));

    static IEnumerable<CurrentRating> Known(params IEnumerable<(Bearer Bearer, CurrentLimit? Rated)> ratings) =>
        ratings.Where(r => r.Rated is not null).Select(r => new CurrentRating(r.Bearer, r.Rated!.Value));
}
