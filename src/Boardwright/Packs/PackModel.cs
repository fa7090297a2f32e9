using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Packs;

/// <summary>A pack of equal cells: rest voltage and steady resistance over state of charge, at the brief's temperature.</summary>
/// <remarks>
/// Voltage S · E(charge); resistance (S/P) · (R0 + R1 + R2)(charge, temperature) + links, the branches as far as the cell has them:
/// what a current has met once it has flowed for longer than their time constants. The weakest group of a real pack sets its end; here all
/// are equal.
/// </remarks>
/// <validity>Cells at one temperature; currents that last for minutes. A short pull sags less where the cell has branches, and a cell
/// without any has the one resistance for all.</validity>
/// <error>Voltage within some 3 % for a named cell with a resistance table, from the spread of its resistance.</error>
/// <source cref="Sources.CircuitTheory"/>
public sealed record PackModel
{
    readonly Cell cell;
    readonly double kelvins;

    PackModel(Board board, Temperature temperature, Resistance links)
    {
        cell = board.Parts.Cell;
        (Series, Parallel) = (board.Parts.Pack.Series.Value, board.Parts.Pack.Parallel.Value);
        (Temperature, kelvins, Links) = (temperature, temperature.Kelvins, links);
    }

    /// <summary>Cells in series.</summary>
    public int Series { get; }
    /// <summary>Cells in parallel.</summary>
    public int Parallel { get; }
    /// <summary>Temperature of the cells.</summary>
    public Temperature Temperature { get; }
    /// <summary>Resistance of links and leads inside the pack.</summary>
    public Resistance Links { get; }
    /// <summary>Capacity of the pack; whoever asks for it reads the cell's first, as voltage and resistance do without.</summary>
    public Charge Capacity => cell.Capacity.Value * Parallel;
    /// <summary>Rest voltage at a state of charge (0 to 1), in volts.</summary>
    public double RestVoltsAt(double charge) => Series * cell.RestVoltage.Value.At(charge);

    /// <summary>Steady resistance of the cells alone at a state of charge (0 to 1), in ohm.</summary>
    public double CellOhmsAt(double charge)
    {
        double Branch(Known<ResistanceTable> slow) => slow.IsKnown ? slow.Value.At(charge, kelvins) : 0;
        return (double)Series / Parallel
            * (cell.Resistance.Value.At(charge, kelvins) + Branch(cell.Polarisation.R1) + Branch(cell.Polarisation.R2));
    }

    /// <summary>Steady resistance of the whole pack at a state of charge (0 to 1), in ohm.</summary>
    public double OhmsAt(double charge) => CellOhmsAt(charge) + Links.Ohms;

    /// <summary>Heat in each cell under a steady current out of the pack at half charge: (I/P)² R.</summary>
    public Power HeatInCellUnder(Current pack)
    {
        var each = pack.Amperes / Parallel;
        return Power.FromWatts(each * each * CellOhmsAt(0.5) * Parallel / Series);
    }

    /// <summary>Builds the model.</summary>
    public static Answer<PackModel> Compute(Board board) => Answer<PackModel>.Ask("pack.resistance", needs =>
    {
        var (cell, pack) = (board.Parts.Cell, board.Parts.Pack);
        needs.Read(pack.Series);
        needs.Read(pack.Parallel);
        needs.Read(cell.RestVoltage);
        needs.Read(cell.Resistance);
        if (cell.Polarisation.R1.IsKnown)
            needs.Read(cell.Polarisation.R1);
        if (cell.Polarisation.R2.IsKnown)
            needs.Read(cell.Polarisation.R2);
        var links = needs.Read(pack.Links);
        var temperature = needs.Read(board.Brief.Temperature);
        return needs.Unmet ? null : new PackModel(board, temperature, links);
    });

    /// <summary>Capacity of a pack: P · capacity of a cell.</summary>
    public static Answer<Charge> CapacityOf(Board board) => Answer<Charge>.Ask("", needs =>
        needs.Read(board.Parts.Cell.Capacity) * needs.Read(board.Parts.Pack.Parallel));

    /// <summary>Energy of a pack: S · P · capacity · nominal voltage.</summary>
    public static Answer<PackEnergy> EnergyOf(Board board) => Answer<PackEnergy>.Ask("pack.energy", needs =>
    {
        var cells = needs.Read(board.Parts.Pack.Series) * needs.Read(board.Parts.Pack.Parallel);
        var capacity = needs.Read(board.Parts.Cell.Capacity);
        var nominal = needs.Read(board.Parts.Cell.VoltageNominal);
        return needs.Unmet ? null : new PackEnergy(cells, Energy.FromWattHours(cells * capacity.AmpereHours * nominal.Volts));
    });

    /// <summary>Voltage of a pack at the cells' full, and at their least, voltage.</summary>
    public static Answer<VoltageWindow> WindowOf(Board board) => Answer<VoltageWindow>.Ask("pack.voltage_full", needs =>
    {
        var series = needs.Read(board.Parts.Pack.Series);
        var full = needs.Read(board.Parts.Cell.VoltageFull);
        var empty = needs.Read(board.Parts.Cell.VoltageEmpty);
        return needs.Unmet ? null : new VoltageWindow(series, full * series, empty * series);
    });
}

/// <summary>Cells and energy of a pack.</summary>
/// <param name="Cells">Number of cells.</param>
/// <param name="Energy">Nominal energy.</param>
public sealed record PackEnergy(int Cells, Energy Energy);

/// <summary>Between which voltages a pack works.</summary>
/// <param name="Series">Cells in series.</param>
/// <param name="Full">At the cells' full voltage.</param>
/// <param name="Empty">At the cells' least voltage.</param>
public sealed record VoltageWindow(int Series, Voltage Full, Voltage Empty);
