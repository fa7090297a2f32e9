using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Tests.Files;

/// <summary>Answers over the whole range that a builder may give, and what a sheet never prints, filled in.</summary>
static class StartGrid
{
    static readonly double[] Riders = [50, 80, 110];
    static readonly CellCount[] Packs = [new(6, 2), new(10, 3), new(12, 4), new(14, 6)];
    static readonly int[] Motors = [1, 2];

    static readonly (int, WheelKind)[] Wheels =
        [(83, WheelKind.Urethane), (107, WheelKind.Urethane), (150, WheelKind.Rubber), (175, WheelKind.Air)];

    public static IEnumerable<StartAnswers> Answers() =>
        from rider in Riders
        from pack in Packs
        from motors in Motors
        from wheels in Wheels
        select new StartAnswers
        {
            Rider = Mass.FromKilograms(rider),
            Pack = pack,
            Motors = motors,
            Diameter = Length.FromMillimetres(wheels.Item1),
            Wheels = wheels.Item2,
            Range = Length.FromKilometres(pack.Series * pack.Parallel / 5.0),
            Climb = Fraction.FromPercent(4),
        };

    /// <summary>Entries that no listing prints and that no finger depends on, with what is usual for them.</summary>
    public static IReadOnlyDictionary<string, string> Usual { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["motor.phase_inductance"] = "14 uH",
        ["motor.no_load_current"] = "1.3 A",
        ["motor.no_load_voltage"] = "24 V",
        ["motor.rotor_inertia"] = "0.0002 kg m2",
        ["motor.winding_capacity"] = "49 J/K",
        ["motor.case_capacity"] = "280 J/K",
        ["motor.winding_to_case"] = "0.9 K/W",
        ["motor.winding_limit"] = "120 °C",
        ["controller.bridge_resistance"] = "1.7 mohm",
        ["controller.switching_time"] = "100 ns",
        ["controller.switching_frequency"] = "20 kHz",
        ["controller.idle_power"] = "2.5 W",
        ["controller.bus_capacitance"] = "2000 uF",
        ["cell.charge_tail"] = "1080 s",
        ["pack.links"] = "5 mohm",
        ["pack.mass_extra"] = "0.4 kg",
        ["deck.bend_per_kg"] = "0.18 mm/kg",
        ["mount.mass"] = "170 g",
        ["motor_pulley.mass"] = "70 g",
        ["wheel_pulley.mass"] = "110 g",
        ["belt.mass"] = "15 g",
        ["pack.protection.mass"] = "60 g",
        ["remote.mass"] = "120 g",
        ["box.mass"] = "550 g",
        ["fuse.mass"] = "20 g",
    };

    static readonly ResistanceTable CellResistance = new(Resistance.FromOhms(0.0185));

    static readonly Curve<Fraction, Voltage> Rest = new(
    [
        (0, 2.75), (0.05, 3.17), (0.1, 3.30), (0.2, 3.45), (0.3, 3.57), (0.4, 3.65), (0.5, 3.73), (0.6, 3.82), (0.7, 3.92), (0.8, 4.02),
        (0.9, 4.09), (1, 4.18),
    ]);

    /// <summary>The board with what is usual where the file says nothing.</summary>
    public static Board Filled(Board board)
    {
        var filled = board.With([.. Usual.Where(pair => Lacks(board, pair.Key)).Select(pair => (pair.Key, pair.Value))]);
        var (cell, wheels) = (filled.Parts.Cell, filled.Parts.Wheels);
        return filled with
        {
            Parts = filled.Parts with
            {
                Cell = cell with
                {
                    Resistance = cell.Resistance.IsKnown ? cell.Resistance : new Known<ResistanceTable>(CellResistance, key: "cell.resistance"),
                    RestVoltage = cell.RestVoltage.IsKnown ? cell.RestVoltage : new Known<Curve<Fraction, Voltage>>(Rest, key: "cell.rest_voltage"),
                },
                Wheels = wheels.RollingResistance.IsKnown ? wheels : wheels with
                {
                    RollingResistance = new Known<RollingTable>(new(Number.FromValue(0.016), new Dictionary<Surface, Number>()), key: "wheels.rolling_resistance"),
                },
            },
        };
    }

    static bool Lacks(Board board, string key)
    {
        object sheet = board.Parts;
        foreach (var word in key.Split('.'))
            sheet = Entry.ListEntries(sheet.GetType()).Single(entry => entry.Key == word).Read((Sheet)sheet);
        return sheet is IKnown { IsKnown: false };
    }
}
