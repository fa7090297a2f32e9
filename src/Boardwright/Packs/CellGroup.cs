using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>Equal cells, some in series and some side by side: what the pack has of each cell's figure.</summary>
/// <param name="Series">Cells in series S, at least 1.</param>
/// <param name="Parallel">Cells side by side P, at least 1.</param>
/// <validity>Equal cells; the weakest group sets what a real pack gives.</validity>
/// <error>Exact for equal cells; cells of one batch differ by 1 % to 3 %.</error>
/// <source cref="Sources.CircuitTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CellGroup(int Series, int Parallel)
{
    /// <summary>Number of cells: S P.</summary>
    public int Cells => Series * Parallel;
    /// <summary>Voltage of the pack: S times a cell's.</summary>
    public Voltage Voltage(Voltage cell) => cell * Series;
    /// <summary>Capacity of the pack: P times a cell's.</summary>
    public Charge Capacity(Charge cell) => cell * Parallel;
    /// <summary>Current of the pack: P times a cell's.</summary>
    public Current Current(Current cell) => cell * Parallel;
    /// <summary>Current of each cell when the pack gives one: I/P.</summary>
    public Current PerCell(Current pack) => pack / Parallel;
    /// <summary>Mass of the cells.</summary>
    public Mass Mass(Mass cell) => cell * Cells;

    /// <summary>Energy: S P times capacity times voltage of a cell.</summary>
    public Energy Energy(Charge capacity, Voltage nominal) =>
        Units.Energy.FromJoules(Cells * capacity.Coulombs * nominal.Volts);

    /// <summary>Resistance: (S/P) times a cell's, and the links.</summary>
    /// <param name="cell">Resistance of a cell.</param>
    /// <param name="links">Resistance of the links and leads inside the pack.</param>
    public Resistance Resistance(Resistance cell, Resistance links = default) => cell * ((double)Series / Parallel) + links;
}

/// <summary>A source with a rest voltage and a resistance, under a load that asks for power.</summary>
/// <param name="RestVoltage">Rest voltage E, above 0.</param>
/// <param name="Resistance">Resistance of pack and wiring together R, 0 or more.</param>
/// <validity>Steady state.</validity>
/// <error>Exact for the stated circuit.</error>
/// <source cref="Sources.CircuitTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct LoadedPack(Voltage RestVoltage, Resistance Resistance)
{
    /// <summary>The greatest power that can be drawn, at half the rest voltage: E²/(4 R).</summary>
    public Power GreatestPower => Power.FromWatts(RestVoltage.Volts * RestVoltage.Volts / (4 * Resistance.Ohms));

    /// <summary>Voltage under a power: ½ (E + √(E² − 4 P R)).</summary>
    /// <param name="power">Power drawn P, negative when it is fed back.</param>
    /// <returns>The voltage, or <c>null</c> when the power cannot be drawn.</returns>
    public Voltage? VoltageAt(Power power)
    {
        var rest = RestVoltage.Volts;
        var room = rest * rest - 4 * power.Watts * Resistance.Ohms;
        return room < 0 ? null : Voltage.FromVolts((rest + Sqrt(room)) / 2);
    }

    /// <summary>Current under a power: P/V.</summary>
    /// <param name="power">Power drawn P, negative when it is fed back.</param>
    /// <returns>The current, or <c>null</c> when the power cannot be drawn.</returns>
    public Current? CurrentAt(Power power) =>
        VoltageAt(power) is { } voltage ? Current.FromAmperes(power.Watts / voltage.Volts) : null;

    /// <summary>Voltage lost under a current: I R.</summary>
    public Voltage Sag(Current current) => Voltage.FromVolts(current.Amperes * Resistance.Ohms);
    /// <summary>Heat under a current: I² R.</summary>
    public Power Heat(Current current) => Power.FromWatts(current.Amperes * current.Amperes * Resistance.Ohms);
}
