using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Packs;

/// <summary>What a carrier asks about a pack.</summary>
/// <param name="Cells">Number of cells.</param>
/// <param name="CellEnergy">Nominal energy of one cell.</param>
/// <param name="Energy">Nominal energy of the pack.</param>
/// <param name="Nominal">Nominal voltage of the pack.</param>
/// <param name="Mass">Mass of the pack, its protection included; <c>null</c> when a part of it is not weighed.</param>
/// <param name="RestAtLimit">Rest voltage of the pack at the state of charge that air carriers allow; <c>null</c> when the cell's table is
/// not known.</param>
/// <param name="CellRestAtLimit">The same of one cell.</param>
/// <source cref="Sources.CircuitTheory"/>
public sealed record Shipment(
    int Cells, Energy CellEnergy, Energy Energy, Voltage Nominal, Mass? Mass, Voltage? RestAtLimit, Voltage? CellRestAtLimit)
{
    /// <summary>State of charge that air carriers allow at most.</summary>
    /// <source cref="Sources.AirCharge"/>
    public static Fraction ChargeLimit { get; } = Fraction.FromPercent(30);

    /// <summary>Energy above which a vehicle's battery is held to that limit.</summary>
    /// <source cref="Sources.AirCharge"/>
    public static Energy VehicleThreshold { get; } = Energy.FromWattHours(100);

    /// <summary>Of a board's pack.</summary>
    public static Answer<Shipment> Compute(Board board) => Answer<Shipment>.Ask("", needs =>
    {
        var (cell, pack) = (board.Parts.Cell, board.Parts.Pack);
        var (series, parallel) = (needs.Read(pack.Series), needs.Read(pack.Parallel));
        var (capacity, nominal) = (needs.Read(cell.Capacity), needs.Read(cell.VoltageNominal));
        if (needs.Unmet)
            return null;
        var each = Energy.FromWattHours(capacity.AmpereHours * nominal.Volts);
        var cells = series * parallel;
        Voltage? rest = cell.RestVoltage.IsKnown ? needs.Read(cell.RestVoltage).At(ChargeLimit) : null;
        return new Shipment(cells, each, each * cells, nominal * series, MassOf(board, cells), rest * series, rest);
    });

    static Mass? MassOf(Board board, int cells)
    {
        var (cell, pack) = (board.Parts.Cell, board.Parts.Pack);
        if (pack.Mass.IsKnown)
            return pack.Mass.Value;
        if (!cell.Mass.IsKnown || !pack.MassExtra.IsKnown || (pack.Protection.IsChosen && !pack.Protection.Mass.IsKnown))
            return null;
        return cell.Mass.Value * cells + pack.MassExtra.Value + pack.Protection.Mass.Or(default);
    }
}
