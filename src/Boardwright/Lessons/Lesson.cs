using System.Globalization;
using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Traction;
using Boardwright.UsualValues;
using static System.Math;

namespace Boardwright.Lessons;

/// <summary>A value that goes into a board file.</summary>
/// <param name="Key">Dotted key, such as <c>wheels.rolling_resistance</c>.</param>
/// <param name="Value">As it is written, such as <c>0.0161</c>.</param>
/// <param name="Give">Its standard deviation as it is written, such as <c>2.3 %</c>.</param>
/// <param name="Spread">The same as a part of the value.</param>
public sealed record LessonEntry(string Key, string Value, string Give, double Spread);

/// <summary>Something that rides taught and a board file can take over as measured, or why it cannot.</summary>
/// <param name="Name">A word to call it by, such as <c>rolling</c>.</param>
/// <param name="Entries">What would be written; nothing where it cannot be taken.</param>
/// <param name="Says">What was done to the fitted value on the way, or why it cannot be taken; in sentences.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record Lesson(string Name, IReadOnlyList<LessonEntry> Entries, string Says)
{
    /// <summary>Whether it can be taken.</summary>
    public bool CanBeTaken => Entries.Count > 0;
}

/// <summary>Turns what was fitted into what the entries of a board mean.</summary>
/// <remarks>
/// A fit sees the whole board: its rolling holds the drag of motors and belts, its pack resistance the links and leads. The
/// board file has entries of their own for those, so their share by the file is taken off before a value goes in; otherwise
/// it would count twice.
/// </remarks>
/// <validity>As the fits; the shares that are taken off are as good as the board file.</validity>
/// <error>That of the fit, and of what was taken off: both are in the spread.</error>
/// <source cref="Sources.Mechanics"/>
public static class LessonSet
{
    /// <summary>Words by which lessons are called.</summary>
    public static IReadOnlyList<string> Names { get; } = ["rolling", "drag-area", "pack-resistance", "capacity", "kv", "motor-heat"];

    /// <summary>Of coast-downs: the rolling coefficient of the wheels, and the drag area.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="board">The board, its entries named.</param>
    /// <param name="conditions">What the fit was made under.</param>
    public static IReadOnlyList<Lesson> From(CoastDownFit fit, Board board, CoastDownConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(board);
        ArgumentNullException.ThrowIfNull(conditions);
        board = UsualTable.Complete(board);
        var drive = SteadyRunningOfBoard.Compute(board).Wheels;
        if (!drive.IsKnown)
        {
            var why = $"The coast-down holds the drag of motors and belts, and the board file does not tell how large that is: {string.Join(", ", drive.Missing)}.";
            return [new("rolling", [], why), new("drag-area", [], why)];
        }

        var (rollingPart, areaPart) = DragOf(fit, drive.Value, conditions);
        var noLoad = board.Parts.Motor.NoLoadCurrent;
        var relative = noLoad.IsKnown && noLoad.Value.Amperes > 0
            ? Entry.ListEntries(typeof(Motor)).First(e => e.Key == "no_load_current").SpreadOf(noLoad) / noLoad.Value.Si : 0.15;
        var (rolling, area) = (fit.RollingResistance.Value.Value - rollingPart, fit.DragArea.Value.SquareMetres - areaPart);
        var rollingSpread = Root(fit.RollingResistance.Deviation, relative * rollingPart);
        var areaSpread = Root(fit.DragArea.Deviation, relative * areaPart);
        return
        [
            rolling > 0
                ? One("rolling", "wheels.rolling_resistance", rolling, rollingSpread, "", Invariant($"Of the fitted {fit.RollingResistance.Value.Value:0.0000}, {rollingPart:0.0000} are the drag of motors and belts by the board file, which has entries of its own; the rest is the wheels'. One number for the road that was ridden; a table by surface on the shelf no longer counts for this board."))
                : new("rolling", [], "The drag of motors and belts by the board file is more than the coast-down found in all: measure motor.no_load_current first."),
            area > 0
                ? One("drag-area", "brief.drag_area", area, areaSpread, "m2", Invariant($"Of the fitted {fit.DragArea.Value.SquareMetres:0.000} m2, {areaPart:0.000} m2 are the part of the motors' drag that grows with speed. It is the rider's in the stance of the ride, not the board's alone."))
                : new("drag-area", [], "The drag of motors and belts by the board file is more than the coast-down found in all: measure motor.no_load_current first."),
        ];
    }

    /// <summary>Of a pack: the resistance of its cells, and with it their slow part where the board file has no better.</summary>
    /// <param name="pack">The fit.</param>
    /// <param name="board">The board, its entries named.</param>
    public static Lesson From(PackFromRide pack, Board board)
    {
        ArgumentNullException.ThrowIfNull(pack);
        ArgumentNullException.ThrowIfNull(board);
        const string Name = "pack-resistance";
        board = UsualTable.Complete(board);
        var parts = board.Parts;
        if (!parts.Pack.Series.IsKnown || !parts.Pack.Parallel.IsKnown)
            return new(Name, [], "How many cells are in series and in parallel must be known first: pack.series, pack.parallel.");
        var own = SteadyRunningOfBoard.Compute(board);
        var wires = (parts.Pack.Links.IsKnown ? parts.Pack.Links.Value.Ohms : 0)
            + (own.Wiring.IsKnown ? own.Wiring.Value.Resistance.Ohms : 0);
        var cells = (double)parts.Pack.Parallel.Value / parts.Pack.Series.Value;
        var hasBranches = parts.Cell.Polarisation.R1.IsKnown;
        // A board file with one resistance alone means what a pull meets in the end.
        var (fitted, spread) = hasBranches ? (pack.Resistance.Value.Ohms, pack.Resistance.Deviation)
            : (pack.Settled.Value.Ohms, pack.Settled.Deviation);
        var each = (fitted - wires) * cells;
        if (each <= 0)
            return new(Name, [], "Links and wires by the board file take more than the whole pack was found to have: measure pack.links first.");
        var entries = new List<LessonEntry> { Entered("cell.resistance", each * 1000, Root(spread, 0.25 * wires) * cells * 1000, "mohm") };
        var says = Invariant($"Of the {fitted * 1000:0.0} mohm of the pack, {wires * 1000:0.0} are links and wires by the board file. One number at the charge and warmth of the ride: a table over charge and temperature on the shelf no longer counts for this board.");
        if (hasBranches && !parts.Cell.Polarisation.R2.IsKnown && pack.Slow is { } slow)
        {
            entries.Add(Entered("cell.polarisation.R1", (pack.Settled.Value.Ohms - pack.Resistance.Value.Ohms) * cells * 1000,
                Root(pack.Settled.Deviation, pack.Resistance.Deviation) * cells * 1000, "mohm"));
            entries.Add(Entered("cell.polarisation.tau1", slow.Seconds, 0.25 * slow.Seconds, "s"));
        }

        return new(Name, entries, says);
    }

    /// <summary>Of a capacity of the pack: that of a cell.</summary>
    /// <param name="capacity">Capacity of the whole pack.</param>
    /// <param name="board">The board.</param>
    public static Lesson Capacity(Estimate<Charge> capacity, Board board)
    {
        ArgumentNullException.ThrowIfNull(board);
        return board.Parts.Pack.Parallel is { IsKnown: true, Value: > 0 and var parallel }
            ? One("capacity", "cell.capacity", capacity.Value.AmpereHours / parallel, capacity.Deviation / 3600 / parallel, "Ah", "What the ride drew, over the share of the charge that it took by the rest voltages.")
            : new("capacity", [], "How many cells are in parallel must be known first: pack.parallel.");
    }

    /// <summary>Of speed and duty: KV, the ratio and the wheel taken as the board file has them.</summary>
    /// <param name="against">Measured over stated; see <see cref="KvFromRide.Against"/>.</param>
    /// <param name="board">The board.</param>
    public static Lesson Kv(Estimate<Number> against, Board board)
    {
        ArgumentNullException.ThrowIfNull(board);
        // A wheel wears, and the logger's own wheel size is in the speed.
        const double Wheel = 0.01;
        return board.Parts.Motor.Kv is { IsKnown: true } kv
            ? One("kv", "motor.kv", kv.Value.RpmPerVolt * against.Value.Value,
            kv.Value.RpmPerVolt * Root(against.Deviation, Wheel * against.Value.Value), "rpm/V", "Ratio and wheel are taken as the board file has them: where a pulley or the wheel is other than stated, mend that instead.")
            : new("kv", [], "The board file states no motor.kv to hold it against.");
    }

    /// <summary>Of a warm-up and its cooling: the case's heat capacity, and what lies between it and the air.</summary>
    /// <param name="heat">The fit, of one body.</param>
    /// <param name="board">The board, its entries named.</param>
    public static Lesson From(MotorHeatFromRide heat, Board board)
    {
        ArgumentNullException.ThrowIfNull(heat);
        ArgumentNullException.ThrowIfNull(board);
        const string Name = "motor-heat";
        var own = RideHeat.Compute(board, SteadyRunningAnalysis.AirOf(board));
        if (!own.IsKnown)
            return new(Name, [], $"The share of the windings must be known first: {string.Join(", ", own.Missing)}.");
        var capacity = heat.Capacity.Value.JoulesPerKelvin - own.Value.WindingCapacity;
        var resistance = heat.Riding.Value.KelvinsPerWatt - 1 / own.Value.WindingToCase;
        if (capacity <= 0 || resistance <= 0)
            return new(Name, [], "The windings by the board file take more than the whole motor was found to have: motor.winding_capacity and motor.winding_to_case are off, or the sensor does not sit where the model thinks.");
        return new(
            Name,
            [
                Entered("motor.case_capacity", capacity, heat.Capacity.Deviation, "J/K"),
                Entered("motor.case_to_air", resistance, heat.Riding.Deviation, "K/W"),
            ],
            "The ride sees the motor as one body; the windings' share by the board file is taken off.");
    }

    /// <summary>The drag of motors and belts that turn along, as a part of rolling coefficient and drag area: least squares of 1 and v² to
    /// it over the speeds of the runs.</summary>
    static (double Rolling, double DragArea) DragOf(CoastDownFit fit, WheelDrive drive, CoastDownConditions conditions)
    {
        var (n, s2, s4, f, f2) = (0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var part in fit.Parts.Where(p => p.LeftOut.Length == 0))
        {
            foreach (var logged in part.Run.Speeds)
            {
                var speed = Max(0, logged / conditions.SpeedScale);
                var (square, force) = (speed * speed, drive.BrakeForce(0, speed));
                n++;
                s2 += square;
                s4 += square * square;
                f += force;
                f2 += force * square;
            }
        }

        var determinant = n * s4 - s2 * s2;
        if (determinant <= 0) return (0, 0);
        var (steady, growing) = ((s4 * f - s2 * f2) / determinant, (n * f2 - s2 * f) / determinant);
        return (steady / (conditions.Mass.Kilograms * Road.RoadLoad.Gravity), 2 * growing / conditions.AirDensityKilogramsPerCubicMetre);
    }

    static Lesson One(string name, string key, double value, double spread, string unit, string says) =>
        new(name, [Entered(key, value, spread, unit)], says);

    /// <summary>A value with as many digits as its spread lets it have, and one more.</summary>
    static LessonEntry Entered(string key, double value, double spread, string unit)
    {
        var decimals = spread > 0 ? Clamp(1 - (int)Floor(Log10(spread)), 0, 6) : 4;
        var give = Max(0.1, 100 * spread / value);
        return new(
            key,
            value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            + (unit.Length > 0 ? " " + unit : ""),
            give.ToString(give < 10 ? "0.0" : "0", CultureInfo.InvariantCulture) + " %",
            spread / value);
    }

    static double Root(double a, double b) => Sqrt(a * a + b * b);
}
