using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.UsualValues;

/// <summary>Usual values of controllers, cells, packs and chargers.</summary>
static class ElectricValues
{
    const double ThinnestTail = 0.1;

    // Rest voltage over charge of three 4.2 V cells, and of a lithium iron phosphate cell.
    static readonly (double Charge, double Volts)[] NickelCobalt =
    [
        (0, 2.75), (0.02, 2.99), (0.05, 3.17), (0.1, 3.30), (0.2, 3.45), (0.3, 3.57), (0.4, 3.65), (0.5, 3.73), (0.6, 3.82), (0.7, 3.92),
        (0.8, 4.02), (0.9, 4.09), (1, 4.18),
    ];

    static readonly (double Charge, double Volts)[] IronPhosphate =
        [(0, 2.6), (0.1, 3.20), (0.2, 3.25), (0.4, 3.29), (0.6, 3.31), (0.8, 3.33), (0.95, 3.35), (1, 3.40)];

    // Resistance over that at half charge, and over that at 25 °C.
    static readonly (double Charge, double Times)[] OverCharge =
        [(0.03, 1.55), (0.1, 1.22), (0.2, 1.03), (0.5, 1), (0.9, 1.05), (1, 1.19)];

    static readonly (double Celsius, double Times)[] OverTemperature = [(-10, 2.5), (0, 1.75), (10, 1.27), (25, 1), (45, 0.92)];

    public static IReadOnlyList<UsualValue> All { get; } =
    [
        Controller(
            "bridge_resistance", "controller.phase_current_peak", "0.17 V / peak phase current", 1.5,
            "one switch, hot; not the controller's own temperature", Sources.CommonPractice,
            c => c.BridgeResistance, (c, v) => c with { BridgeResistance = v },
            b => b.Parts.Controller.PhaseCurrentPeak is { IsKnown: true } peak ? new(Resistance.FromOhms(0.17 / peak.Value.Amperes))
            : null),
        Controller(
            "switching_time", "", "100 ns, rise and fall", 1.7, "", Sources.CommonPractice,
            c => c.SwitchingTime, (c, v) => c with { SwitchingTime = v }, _ => new(Duration.FromSeconds(100e-9))),
        Controller(
            "switching_frequency", "", "20 kHz", 1.3, "often a setting: 15 to 30 kHz", Sources.CommonPractice,
            c => c.SwitchingFrequency, (c, v) => c with { SwitchingFrequency = v }, _ => new(Frequency.FromHertz(20e3))),
        Controller(
            "idle_power", "controller.motors", "1.2 W for each motor and 0.1 W", 1.6,
            "lamps extra; not how fast a stored board runs down", Sources.CommonPractice,
            c => c.IdlePower, (c, v) => c with { IdlePower = v },
            b => new(Power.FromWatts(1.2 * b.Parts.Controller.Motors.Or(1) + 0.1))),
        Controller(
            "bus_capacitance", "controller.phase_current_peak, controller.motors", "20 µF for each ampere of peak phase current of all outputs",
            1.6, "not for choosing the resistor that fills it: measure", Sources.CommonPractice,
            c => c.BusCapacitance, (c, v) => c with { BusCapacitance = v },
            b => b.Parts.Controller.PhaseCurrentPeak is { IsKnown: true } peak
                ? new(Capacitance.FromFarads(20e-6 * peak.Value.Amperes * b.Parts.Controller.Motors.Or(1))) : null),
        Controller(
            "heat_capacity", "controller.mass", "850 J/(kg K) · m", 1.25, "", Sources.MetalsFromMemory,
            c => c.HeatCapacity, (c, v) => c with { HeatCapacity = v },
            b => b.Parts.Controller.Mass is { IsKnown: true } mass
                ? new(HeatCapacity.FromJoulesPerKelvin(850 * mass.Value.Kilograms)) : null),
        Controller(
            "case_to_air", "controller.length, width and height", "1/(10 W/(m² K) · A), A its six faces", 1.6, "in a box under the deck",
            Sources.CommonPractice,
            c => c.CaseToAir, (c, v) => c with { CaseToAir = v },
            b => b.Parts.Controller is { Length: { IsKnown: true, Value.Metres: var l }, Width: { IsKnown: true, Value.Metres: var w },
            Height: { IsKnown: true, Value.Metres: var h } }
                ? new(ThermalResistance.FromKelvinsPerWatt(1 / (10 * 2 * (l * w + l * h + w * h)))) : null),
        UsualValue.Table(
            "cell.rest_voltage", "cell.voltage_full", "a curve over the charge: that of 4.2 V cells with nickel and graphite, or of 3.65 V iron phosphate",
            1.008, "30 mV; not for reading the charge from the voltage, not for silicon-rich cells below 20 %", Sources.CellSets,
            b => b.Parts.Cell.RestVoltage, (b, v) => WithCell(b, c => c with { RestVoltage = v }),
            b => b.Parts.Cell.VoltageFull is { IsKnown: true, Value.Volts: var full }
                ? full is >= 4.15 and <= 4.25 ? new(new Curve<Fraction, Voltage>(NickelCobalt))
                : full is >= 3.55 and <= 3.7 ? new(new Curve<Fraction, Voltage>(IronPhosphate), 1.005) : null
                : null),
        UsualValue.Table(
            "cell.resistance", "cell.capacity, cell.discharge_current",
            "160 mΩ/√(Ah · A) at one second, 25 °C and half charge; × 1.22 at 10 % and 1.19 when full; × 1.27 at 10 °C and 1.75 at 0 °C", 1.35,
            "new 3.6 V round cells; beyond 3.0 to 5.2 Ah ×/÷ 1.5; not iron phosphate, not pouches", Sources.CellSets,
            b => b.Parts.Cell.Resistance, (b, v) => WithCell(b, c => c with { Resistance = v }),
            b => ResistanceOf(b.Parts.Cell)),
        UsualValue.Quantity(
            "cell.charge_tail", "cell.capacity, brief.temperature", "220 s for each Ah at 25 °C, growing to twice that at 0 °C", 1.35,
            "3.6 V round cells; not for stating a charge time", Sources.LgHg2Kollmeyer,
            b => b.Parts.Cell.ChargeTail, (b, v) => WithCell(b, c => c with { ChargeTail = v }),
            b => b.Parts.Cell.Capacity is { IsKnown: true } capacity && IsNickel(b.Parts.Cell)
                ? new(Duration.FromSeconds(220 * capacity.Value.AmpereHours * Slowed(b.Brief.Temperature))) : null),
        UsualValue.Quantity(
            "cell.mass", "cell.format", "46.5 g (18650), 69.5 g (21700)", 1.04, "", Sources.CellHeat,
            b => b.Parts.Cell.Mass, (b, v) => WithCell(b, c => c with { Mass = v }),
            b => MassOfFormat(b.Parts.Cell)),
        UsualValue.Quantity(
            "cell.heat_capacity", "cell.mass", "950 J/(kg K) · m", 1.1, "", Sources.CellHeat,
            b => b.Parts.Cell.HeatCapacity, (b, v) => WithCell(b, c => c with { HeatCapacity = v }),
            b => (b.Parts.Cell.Mass.IsKnown ? b.Parts.Cell.Mass.Value : MassOfFormat(b.Parts.Cell)?.Value) is { } mass
                ? new(HeatCapacity.FromJoulesPerKelvin(950 * mass.Kilograms)) : null),
        UsualValue.Quantity(
            "pack.links", "pack.series, pack.parallel", "S · 1.17 mΩ/P + 1.5 mΩ: a nickel strip for each cell and joint, leads and protection", 1.6,
            "not whether a strip carries the current", Sources.NickelResistivity,
            b => b.Parts.Pack.Links, (b, v) => WithPack(b, p => p with { Links = v }),
            b => b.Parts.Pack is { Series: { IsKnown: true, Value: var series }, Parallel: { IsKnown: true, Value: var parallel } }
                ? new(Resistance.FromOhms(series * 1.17e-3 / parallel + 1.5e-3)) : null),
        UsualValue.Quantity(
            "pack.mass_extra", "pack.series, pack.parallel, cell.mass", "12 % of the cells", 1.4, "", Sources.CommonPractice,
            b => b.Parts.Pack.MassExtra, (b, v) => WithPack(b, p => p with { MassExtra = v }),
            b => b.Parts is { Pack: { Mass.IsKnown: false, Series: { IsKnown: true, Value: var series },
            Parallel: { IsKnown: true, Value: var parallel } }, Cell: var cell }
                && (cell.Mass.IsKnown ? cell.Mass.Value : MassOfFormat(cell)?.Value) is { } mass
                ? new(mass * (0.12 * series * parallel)) : null),
        UsualValue.Quantity(
            "charger.efficiency", "", "0.88", 1.035, "", Sources.CommonPractice,
            b => b.Parts.Charger.Efficiency, (b, v) => WithCharger(b, c => c with { Efficiency = v }),
            b => b.Parts.Charger.IsChosen ? new(Number.FromValue(0.88)) : null),
        UsualValue.Quantity(
            "charger.end_current", "charger.current", "a tenth of its current", 1.5, "", Sources.CommonPractice,
            b => b.Parts.Charger.EndCurrent, (b, v) => WithCharger(b, c => c with { EndCurrent = v }),
            b => b.Parts.Charger.Current is { IsKnown: true } current ? new(current.Value * ThinnestTail) : null),
    ];

    static bool IsNickel(Cell cell) => cell.VoltageFull is { IsKnown: true, Value.Volts: > 4.0 and < 4.4 };

    static double Slowed(Known<Temperature> air) =>
        air.IsKnown ? Clamp(1 + (25 - air.Value.Celsius) / 25, 1, 3) : 1;

    static UsualEstimate<ResistanceTable>? ResistanceOf(Cell cell)
    {
        if (!cell.Capacity.IsKnown || !cell.DischargeCurrent.IsKnown || !IsNickel(cell) || cell.DischargeCurrent.Value.Amperes <= 0)
            return null;
        var capacity = cell.Capacity.Value.AmpereHours;
        var half = 0.160 / Sqrt(capacity * cell.DischargeCurrent.Value.Amperes);
        return new(
            new ResistanceTable(
                [.. OverCharge.Select(c => Fraction.FromPercent(100 * c.Charge))],
                [.. OverTemperature.Select(t => Temperature.FromCelsius(t.Celsius))],
                [.. OverCharge.Select(c => (IReadOnlyList<Resistance>)
                    [.. OverTemperature.Select(t => Resistance.FromOhms(half * c.Times * t.Times))])]),
            capacity is >= 3.0 and <= 5.2 ? null : 1.5);
    }

    static UsualEstimate<Mass>? MassOfFormat(Cell cell) => cell.Format.Or("") switch
    {
        "18650" => new(Mass.FromKilograms(0.0465)),
        "21700" => new(Mass.FromKilograms(0.0695)),
        _ => null,
    };

    static UsualValue Controller<T>(
        string key, string inputs, string equation, double factor, string validity, Source source,
        Func<Controller, Known<T>> entry, Func<Controller, Known<T>, Controller> with, Func<Board, UsualEstimate<T>?> estimate)
        where T : struct, IQuantity<T> =>
        UsualValue.Quantity(
            "controller." + key, inputs, equation, factor, validity, source, b => entry(b.Parts.Controller),
            (b, v) => b with { Parts = b.Parts with { Controller = with(b.Parts.Controller, v) } },
            b => b.Parts.Controller.IsChosen ? estimate(b) : null);

    static Board WithCell(Board board, Func<Cell, Cell> change) =>
        board with { Parts = board.Parts with { Cell = change(board.Parts.Cell) } };

    static Board WithPack(Board board, Func<Pack, Pack> change) =>
        board with { Parts = board.Parts with { Pack = change(board.Parts.Pack) } };

    static Board WithCharger(Board board, Func<Charger, Charger> change) =>
        board with { Parts = board.Parts with { Charger = change(board.Parts.Charger) } };
}
