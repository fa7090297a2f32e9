using Boardwright.Findings;

namespace Boardwright.Rides;

/// <summary>One of the places to which the energy of a ride went, in words for reports and pictures.</summary>
/// <param name="Id">Stable name.</param>
/// <param name="Title">A few words.</param>
/// <param name="Energy">The energy; negative where it came from there.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record EnergyShare(string Id, string Title, Energy Energy)
{
    /// <summary>Where the energy of a ride went, from the road to the cells; the shares add up to what the cells gave up inside.</summary>
    public static IReadOnlyList<EnergyShare> Split(RideEnergy energy) =>
    [
        Share("air", "pushing the air", energy.Air),
        Share("rolling", "rolling", energy.Rolling),
        Share("grade", "height", energy.Grade),
        Share("motion", "still in motion", energy.Motion),
        Share("foot_brake", "foot or slide brake", energy.FootBrake),
        Share("gears", "belts or gears", energy.Gears),
        Share("drag", "drag of the motors", energy.Drag),
        Share("copper", "copper of the motors", energy.Copper),
        Share("conduction", "bridges, conducting", energy.Conduction),
        Share("switching", "bridges, switching", energy.Switching),
        Share("idle", "controllers themselves", energy.Idle),
        Share("wiring", "pack wires", energy.Wiring),
        Share("links", "links of the pack", energy.Links),
        Share("cells", "cells, at once", energy.CellResistance),
        Share("polarisation", "cells, slowly", energy.Polarisation + energy.HeldInPolarisation),
    ];

    static EnergyShare Share(string id, string title, double joules) => new(id, title, Boardwright.Units.Energy.FromJoules(joules));
}
