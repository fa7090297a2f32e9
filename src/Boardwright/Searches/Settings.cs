using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Parts;
using Boardwright.Road;
using Boardwright.Traction;
using Boardwright.Wiring;
using static System.Math;

namespace Boardwright.Searches;

/// <summary>What a builder adds to a choice of parts where the brief says nothing: size of the pack, its plug, wires, and
/// the controller's limits.</summary>
/// <remarks>
/// Limits are what the weakest part carries, in whole amperes: of the phase current motor, controller, the plug between them and the belt;
/// of the pack current
/// cells, protection, plug, fuse and controllers. Power is cut at the cells' least voltage, 0.1 V above the protection's and where the
/// controller switches off,
/// whichever comes first, and fades over the 0.3 V before. Every value can be written in a file and read back as the same number.
/// </remarks>
/// <source cref="Sources.CommonPractice"/>
static class Settings
{
    static readonly int[] Gauges = [16, 14, 12, 10, 8, 6, 4, 2];
    static readonly Length PackWire = Millimetres(250);
    static readonly Length MotorWire = Millimetres(600);

    /// <summary>The board with everything added.</summary>
    /// <param name="board">A board with all parts chosen.</param>
    /// <param name="layout">How the pack lies; <c>null</c> where the board says it, or nothing goes in.</param>
    public static Board Applied(Board board, PackLayout? layout)
    {
        board = WithPack(board, layout);
        board = WithWiring(board);
        return WithLimits(board);
    }

    /// <summary>Wires, where the board has none; those to the motors wait for the limits.</summary>
    public static Board WithWiring(Board board)
    {
        var parts = board.Parts;
        if (!parts.Pack.Plug.IsKnown && parts.Controller.PackPlug.IsKnown)
            board = board with
            {
                Parts = parts =
                parts with { Pack = parts.Pack with { Plug = new Known<string>(parts.Controller.PackPlug.Value, key: "pack.plug") } }
            };
        if (board.Wiring.Count > 0)
            return board;
        var air = SteadyRunningAnalysis.AirOf(board);
        var wires = new List<Run>
        {
            RunOf(1, "pack", "controller", GaugeFor(air, PackSide(board)), PackWire, parts.Controller.PackPlug),
            RunOf(2, "controller", "motors", GaugeFor(air, Min(MotorSide(board), ControllerSide(board)) / Sqrt(2)), MotorWire, parts.Controller.MotorPlug),
        };
        return board with { Wiring = wires };
    }

    /// <summary>Phase current that motor and belt allow, A; infinity where neither says.</summary>
    public static double MotorSide(Board board)
    {
        var motor = board.Parts.Motor.PhaseCurrentPeak;
        var least = motor.IsKnown ? motor.Value.Amperes : double.PositiveInfinity;
        return Min(least, BeltSide(board));
    }

    /// <summary>Phase current that the controller and the plug on its motor side allow, A; infinity where neither says.</summary>
    public static double ControllerSide(Board board)
    {
        var controller = board.Parts.Controller;
        var least = controller.PhaseCurrentPeak.IsKnown ? controller.PhaseCurrentPeak.Value.Amperes : double.PositiveInfinity;
        var plugs = board.Wiring.Count > 0
            ? board.Wiring.Where(WiringRuns.IsMotorRun).Where(r => r.Plug.IsKnown).Select(r => r.Plug.Value)
            : controller.MotorPlug.IsKnown ? [controller.MotorPlug.Value] : [];
        foreach (var plug in plugs.Select(board.PlugCalled))
        {
            var rated = plug.CurrentPeak.IsKnown ? plug.CurrentPeak : plug.CurrentContinuous;
            if (rated.IsKnown)
                least = Min(least, (rated.Value * Sqrt(2)).Amperes);
        }

        return least;
    }

    /// <summary>Current out of the pack that every part carries, A; infinity where none says.</summary>
    public static double PackSide(Board board)
    {
        var least = double.PositiveInfinity;
        foreach (var part in CurrentRatings.Pack(new Needs(), board))
            least = Min(least, part.Rated.Current.Amperes);
        foreach (var run in board.Wiring.Where(WiringRuns.IsPackRun))
        {
            if (run.Plug.IsKnown && board.PlugCalled(run.Plug.Value).CurrentContinuous is { IsKnown: true } rated)
                least = Min(least, rated.Value.Amperes);
        }

        return least;
    }

    /// <summary>Current into the pack that every part takes, A; infinity where none says.</summary>
    public static double RegenSide(Board board)
    {
        var least = double.PositiveInfinity;
        foreach (var part in CurrentRatings.Regen(new Needs(), board))
            least = Min(least, part.Rated.Current.Amperes);
        return least;
    }

    /// <summary>Where power fades and ends, V per cell.</summary>
    public static (double Start, double End)? TaperOf(Board board)
    {
        var parts = board.Parts;
        if (!parts.Cell.VoltageEmpty.IsKnown)
            return null;
        var end = parts.Cell.VoltageEmpty.Value.Volts;
        if (parts.Pack.Protection.VoltageCut.IsKnown)
            end = Max(end, parts.Pack.Protection.VoltageCut.Value.Volts + 0.1);
        if (parts.Controller.VoltageMin.IsKnown && parts.Pack.Series.IsKnown)
            end = Max(end, parts.Controller.VoltageMin.Value.Volts / parts.Pack.Series.Value);
        var steps = Ceiling(end * 20 - 1e-9);
        return ((steps + 6) / 20, steps / 20);
    }

    /// <summary>A current as a setting that is no larger: whole amperes where that leaves anything.</summary>
    public static double Setting(double amperes) => amperes >= 1 ? Floor(amperes + 1e-9) : Floor(amperes * 1000 + 1e-9) / 1000;

    static double BeltSide(Board board)
    {
        var belt = BeltDrive.Compute(board);
        var constants = MotorModel.ConstantsOf(board);
        if (board.Parts.Drive.Kind.Or(DriveKind.Belt) != DriveKind.Belt || !belt.IsKnown || !constants.IsKnown
            || !board.Parts.Belt.Width.IsKnown || belt.Value.Profile.TensionPerInch.Si <= 0)
            return double.PositiveInfinity;
        var rating = new BeltStrength(belt.Value.Profile, board.Parts.Belt.Width.Value).AllowedPull(belt.Value.Path);
        var each = BeltTension.EffectivePull(
            new MotorConstants(constants.Value.Kv, 1).Torque(Current.FromAmperes(1)), belt.Value.Path.Driving);
        var service = board.Parts.Belt.Service(new Needs()).Value;
        return rating.Si > 0 ? rating / (each * service) : double.PositiveInfinity;
    }

    static Board WithPack(Board board, PackLayout? layout)
    {
        var pack = board.Parts.Pack;
        if (layout is { } lies)
        {
            pack = pack with
            {
                Length = new Known<Length>(Millimetres(lies.Length), key: "pack.length"),
                Width = new Known<Length>(Millimetres(lies.Width), key: "pack.width"),
                Height = new Known<Length>(Millimetres(lies.Height), key: "pack.height"),
            };
        }

        return board with { Parts = board.Parts with { Pack = pack } };
    }

    /// <summary>Limits as the parts carry them, where the board has none.</summary>
    public static Board WithLimits(Board board)
    {
        var limits = board.Limits;
        var phase = Min(MotorSide(board), ControllerSide(board));
        Known<Current> Set(Known<Current> known, double amperes) =>
            known.IsKnown || !double.IsFinite(amperes) ? known : new Known<Current>(Current.FromAmperes(Setting(amperes)), key: known.Key);
        limits = limits with
        {
            PhaseCurrent = Set(limits.PhaseCurrent, phase),
            BrakePhaseCurrent = Set(limits.BrakePhaseCurrent, phase),
            PackCurrent = Set(limits.PackCurrent, PackSide(board)),
            RegenCurrent = Set(limits.RegenCurrent, RegenSide(board)),
        };
        if (!limits.TaperStart.IsKnown && !limits.TaperEnd.IsKnown && TaperOf(board) is var (start, end))
        {
            limits = limits with
            {
                TaperStart = new Known<Voltage>(Voltage.FromVolts(start), key: "limits.taper_start"),
                TaperEnd = new Known<Voltage>(Voltage.FromVolts(end), key: "limits.taper_end"),
            };
        }

        return board with { Limits = limits };
    }

    static Run RunOf(int number, string from, string to, int gauge, Length length, Known<string> plug)
    {
        string Key(string entry) => FormattableString.Invariant($"wiring[{number}].{entry}");
        return (Run)Board.WithNames(new Run(), FormattableString.Invariant($"wiring[{number}]")) with
        {
            From = new Known<string>(from, key: Key("from")),
            To = new Known<string>(to, key: Key("to")),
            Gauge = new Known<Area>(SectionOf(gauge), key: Key("gauge")),
            Length = new Known<Length>(length, key: Key("length")),
            Plug = plug.IsKnown ? new Known<string>(plug.Value, key: Key("plug")) : Known<string>.Unknown(Key("plug")),
        };
    }

    /// <summary>The thinnest wire that stays below its limit in free air.</summary>
    static int GaugeFor(Answer<Air> air, double amperes)
    {
        if (!air.IsKnown)
            return 10;
        foreach (var number in Gauges)
        {
            var conductor = new Conductor(SectionOf(number));
            if (new WireTemperature(conductor, conductor.GuessedOuterDiameter, air.Value).LargestCurrent(HarnessRun.UsualLimit).Amperes
                >= amperes)
                return number;
        }

        return Gauges[^1];
    }

    /// <summary>The section as a file that names the gauge is read.</summary>
    static Area SectionOf(int gauge) => Area.FromSi(QuantityText.Read(new WireGauge(gauge).Name, Area.Dimension).Si);

    static Length Millimetres(double number) => Length.FromSi(Length.Dimension.Find("mm")!.ToSi(number));
}
