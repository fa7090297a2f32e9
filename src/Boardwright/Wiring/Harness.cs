using System.Globalization;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Wiring;

/// <summary>What a run of the harness is for.</summary>
public enum RunKind
{
    /// <summary>From the pack to a controller.</summary>
    Pack,
    /// <summary>From a controller to a motor, three phases.</summary>
    Motor,
    /// <summary>A motor's sensor.</summary>
    Sensor,
    /// <summary>From the charge socket to the pack.</summary>
    Charge,
    /// <summary>From the remote's receiver to the controller.</summary>
    Receiver,
    /// <summary>From the pack to the charge gauge.</summary>
    Gauge,
    /// <summary>From a switch to what it switches.</summary>
    Switch,
    /// <summary>Anything else that the board file names.</summary>
    Other,
}

/// <summary>One wire of a run.</summary>
/// <param name="Carries">Its polarity or its part, such as <c>+</c> or <c>phase 1</c>.</param>
/// <param name="Colour">Its colour in a word.</param>
/// <param name="Code">The colour's code of two letters.</param>
/// <param name="Rings">Rings of dark tape at both ends, by which it is told apart without colour; 0 for none.</param>
/// <source cref="Sources.Iec60757"/>
public sealed record HarnessWire(string Carries, string Colour, string Code, int Rings = 0);

/// <summary>What flows through each wire of a run.</summary>
/// <param name="Lasting">Root of the mean square over what lasts: a ride, or a climb without an end.</param>
/// <param name="Peak">Root of the mean square at the greatest load.</param>
/// <source cref="Sources.CircuitTheory"/>
public sealed record WireDuty(Current Lasting, Current Peak);

/// <summary>What flows in a harness, and where that is from.</summary>
/// <param name="Says">Where the currents are from, in a few words.</param>
/// <param name="Pack">Out of the pack, all controllers together; <c>null</c> when not known.</param>
/// <param name="Phase">In each wire of each motor; <c>null</c> when not known.</param>
/// <source cref="Sources.CircuitTheory"/>
public sealed record HarnessDuty(string Says, WireDuty? Pack, WireDuty? Phase);

/// <summary>What a run does under a current.</summary>
/// <param name="Current">In each wire, root of the mean square.</param>
/// <param name="Copper">Temperature that the copper settles at in its bundle; <c>null</c> when it never settles.</param>
/// <param name="Drop">Voltage lost: there and back for a pair, in one wire for a phase; <c>null</c> while the length is not known.</param>
/// <param name="Loss">Power lost in all its wires and contacts; <c>null</c> while the length is not known.</param>
/// <source cref="Sources.CircuitTheory"/>
public sealed record RunLoad(Current Current, Temperature? Copper, Voltage? Drop, Power? Loss);

/// <summary>A run of the harness: wires that lie together from one place to another.</summary>
/// <validity>Wires of one size in free air, their heat leaving together through the circle around them. In a closed box or under foam they
/// get hotter.</validity>
/// <error>As <see cref="WireTemperature"/>, and the inner wires of a bundle are some kelvins hotter.</error>
/// <source cref="Sources.ChurchillChuCylinder"/>
/// <source cref="Sources.CirclesInCircle"/>
public sealed record HarnessRun
{
    /// <summary>Its short name on drawings and lists, such as <c>W1</c>.</summary>
    public required string Mark { get; init; }
    /// <summary>What it is for.</summary>
    public required RunKind Kind { get; init; }
    /// <summary>Where it begins.</summary>
    public required string From { get; init; }
    /// <summary>Where it ends.</summary>
    public required string To { get; init; }
    /// <summary>Its entry in the board file; empty for a run that the file does not name, and that follows from the parts.</summary>
    public string Key { get; init; } = "";
    /// <summary>Its wires.</summary>
    public required IReadOnlyList<HarnessWire> Wires { get; init; }
    /// <summary>Copper of each wire; <c>null</c> when not known.</summary>
    public Area? Section { get; init; }
    /// <summary>Diameter of each over its insulation; <c>null</c> when not known.</summary>
    public Length? OuterDiameter { get; init; }
    /// <summary>Whether that diameter is guessed from the section.</summary>
    public bool IsOuterDiameterGuessed { get; init; }
    /// <summary>Greatest temperature of the conductor.</summary>
    public Temperature Limit { get; init; } = UsualLimit;
    /// <summary>Length that the board file states, one way.</summary>
    public Length? Stated { get; init; }
    /// <summary>Length along the plan of the box, from lead to lead.</summary>
    public Length? Along { get; init; }
    /// <summary>What a wire needs beyond its way, so that it can be taken off and put on again.</summary>
    public Length Loop { get; init; }
    /// <summary>Plug in the run or at its end; empty for none.</summary>
    public string Plug { get; init; } = "";
    /// <summary>Resistance of one mated pair of its plug's contacts.</summary>
    public Resistance Contact { get; init; }
    /// <summary>Fuse in its plus; <c>null</c> for none that is known.</summary>
    public Current? Fuse { get; init; }
    /// <summary>Largest fuse that would suit a thin branch of the pack, where this is one; <c>null</c> elsewhere.</summary>
    public Current? SuitableFuse { get; init; }
    /// <summary>What flows in each wire; <c>null</c> where that is not known, or too little to matter.</summary>
    public WireDuty? Duty { get; init; }
    /// <summary>The air around; <c>null</c> when not known.</summary>
    public Air? Around { get; init; }
    /// <summary>Conductor temperature that holds where the file gives none: the rating row of a single wire.</summary>
    public static Temperature UsualLimit { get; } = Temperature.FromCelsius(105);
    /// <summary>Where it runs.</summary>
    public string Name => $"{From} to {To}";
    /// <summary>Length along the plan with its loop; <c>null</c> where there is no plan.</summary>
    public Length? Needed => Along is { } along ? along + Loop : null;

    /// <summary>Length that each wire is cut to: what the file states, or what the plan asks where that is more or nothing is
    /// stated.</summary>
    public Length? Cut => (Stated, Needed) switch
    {
        ({ } stated, { } needed) => stated > needed ? stated : needed,
        var (stated, needed) => stated ?? needed,
    };

    /// <summary>All wires together.</summary>
    public Bundle? Bundle => OuterDiameter is { } diameter ? new Bundle(Wires.Count, diameter) : null;
    /// <summary>Name of the wire: its gauge, or its section where it is none; <c>null</c> when not known.</summary>
    public string? Wire => Section is { } section ? WireNames.Describe(section) : null;
    /// <summary>Whether its wires are a pair that the current goes out and comes back through.</summary>
    public bool IsPair => Wires.Count == 2;

    /// <summary>What it does under a current in each wire.</summary>
    /// <returns>The load; <c>null</c> when section, diameter or air are not known.</returns>
    public RunLoad? Under(Current current)
    {
        if (Section is not { } section || Bundle is not { } bundle || Around is not { } air)
            return null;
        var conductor = new Conductor(section);
        // n wires that each make I²R' give off together what one makes with √n times the current.
        var loaded = Sqrt(Wires.Count);
        var copper = new WireTemperature(conductor, bundle.Diameter, air).At(current * loaded);
        var ohms = Cut is { } length ? conductor.Resistance(length, copper ?? Limit) + Contact : (Resistance?)null;
        return new RunLoad(
            current, copper,
            ohms is { } o ? Voltage.FromVolts(current.Amperes * o.Ohms * (IsPair ? 2 : 1)) : null,
            ohms is { } r ? Power.FromWatts(current.Amperes * current.Amperes * r.Ohms * Wires.Count) : null);
    }

    /// <summary>The current in each wire at which the bundle reaches its limit; <c>null</c> when section, diameter or air are not
    /// known.</summary>
    public Current? LargestCurrent => Section is { } section && Bundle is { } bundle && Around is { } air
        ? new WireTemperature(new Conductor(section), bundle.Diameter, air).LargestCurrent(Limit) / Sqrt(Wires.Count) : null;
}

/// <summary>Names of wires.</summary>
/// <source cref="Sources.AstmB258"/>
static class WireNames
{
    /// <summary>A gauge with its section, or the section where it is none.</summary>
    public static string Describe(Area section)
    {
        var millimetres = string.Create(CultureInfo.InvariantCulture, $"{section.SquareMillimetres:0.##} mm²");
        var gauge = WireGauge.Nearest(section);
        return Abs(gauge.Section.SquareMetres / section.SquareMetres - 1) < 0.02 ? $"{gauge.Name} ({millimetres})" : millimetres;
    }
}

/// <summary>All runs of a board: those its file names, and those that follow from its parts.</summary>
/// <param name="Runs">The runs, power first.</param>
/// <param name="Duty">What flows in them.</param>
/// <source cref="Sources.CommonPractice"/>
public sealed record Harness(IReadOnlyList<HarnessRun> Runs, HarnessDuty Duty)
{
    // Leads for signals, where no part says otherwise: common practice.
    static readonly WireGauge Signal = new(24), GaugeLead = new(22);

    static readonly HarnessWire Plus = new("+", "red", "RD"), Minus = new("−", "black", "BK");

    static readonly HarnessWire[] Pair = [Plus, Minus];

    static readonly HarnessWire[] Phases = [new("phase 1", "yellow", "YE", 1), new("phase 2", "blue", "BU", 2), new("phase 3", "grey", "GY", 3)];

    static readonly HarnessWire[] Hall = [Plus, Minus, new("sensor 1", "yellow", "YE", 1), new("sensor 2", "blue", "BU", 2), new("sensor 3", "grey", "GY", 3)];

    static readonly HarnessWire[] Encoder = [Plus, Minus, new("signal 1", "yellow", "YE", 1), new("signal 2", "blue", "BU", 2)];

    static readonly HarnessWire[] Receiver = [Plus, Minus, new("signal", "white", "WH")];

    static readonly HarnessWire[] Contacts = [new("out", "violet", "VT"), new("back", "violet", "VT")];

    // Ratings that small fuses are sold in, A: common practice.
    static readonly double[] SmallFuses = [1, 2, 3, 5, 7.5, 10, 15, 20];

    /// <summary>What a run needs beyond its way: 40 mm so that a power plug can be pulled by hand, 60 mm for leads that are opened with the
    /// box, 100 mm to a motor, whose truck turns.</summary>
    /// <source cref="Sources.CommonPractice"/>
    public static Length LoopOf(RunKind kind) => Length.FromMillimetres(kind switch
    {
        RunKind.Pack => 40,
        RunKind.Motor or RunKind.Sensor => 100,
        _ => 60,
    });

    /// <summary>Of a board.</summary>
    /// <param name="board">The board.</param>
    /// <param name="air">Air of the brief; <c>null</c> when not known.</param>
    /// <param name="duty">What flows.</param>
    public static Harness Compute(Board board, Air? air, HarnessDuty duty)
    {
        ArgumentNullException.ThrowIfNull(board);
        ArgumentNullException.ThrowIfNull(duty);
        return new Harness(
            [.. ListRuns(board, duty).OrderBy(r => r.Kind)
            .Select((run, i) => run with { Mark = string.Create(CultureInfo.InvariantCulture, $"W{i + 1}"), Around = air,
            Loop = LoopOf(run.Kind) })],
            duty);
    }

    /// <summary>The same with lengths along a plan of the box.</summary>
    /// <param name="along">Length of a run from lead to lead; <c>null</c> where the plan does not say.</param>
    public Harness Laid(Func<HarnessRun, Length?> along) => this with { Runs = [.. Runs.Select(run => run with { Along = along(run) })] };

    static IEnumerable<HarnessRun> ListRuns(Board board, HarnessDuty duty)
    {
        var parts = board.Parts;
        var motors = parts.Drive.Motors.Or(1);
        var packRuns = board.Wiring.Count(WiringRuns.IsPackRun);
        var motorRuns = board.Wiring.Where(WiringRuns.IsMotorRun).ToList();
        // One line for several motors is laid once for each; as many lines as motors are one each.
        var each = motorRuns.Count >= motors ? 1 : motors;
        var motor = 0;
        foreach (var run in board.Wiring)
        {
            switch (KindOf(run))
            {
                case RunKind.Pack:
                    yield return Stated(board, run, RunKind.Pack, Pair) with
                    {
                        Fuse = parts.Fuse.IsChosen && parts.Fuse.Rating.IsKnown ? parts.Fuse.Rating.Value : null,
                        Duty = duty.Pack is { } pack ? new WireDuty(pack.Lasting / packRuns, pack.Peak / packRuns) : null,
                    };
                    break;
                case RunKind.Motor:
                    for (var i = 0; i < each; i++)
                    {
                        motor++;
                        yield return Stated(board, run, RunKind.Motor,
                            Phases) with
                        { To = motors == 1 ? "motor" : string.Create(CultureInfo.InvariantCulture, $"motor {motor}"), Duty = duty.Phase };
                    }

                    break;
                case RunKind.Charge:
                    var current = parts.Charger.IsChosen && parts.Charger.Current.IsKnown ? parts.Charger.Current.Value : (Current?)null;
                    yield return Stated(board, run, RunKind.Charge, Pair) with
                    {
                        From = "charge socket",
                        To = "pack",
                        Duty = current is { } amperes ? new WireDuty(amperes, amperes) : null,
                        Fuse = run.Fuse.IsKnown ? run.Fuse.Value : null,
                        SuitableFuse = current is { } charge ? Above(1.25 * charge.Amperes) : null,
                    };
                    break;
                case var kind:
                    yield return Stated(board, run, kind,
                        kind == RunKind.Receiver ? Receiver : kind == RunKind.Switch ? Contacts : Pair) with
                    {
                        Fuse = run.Fuse.IsKnown
                        ? run.Fuse.Value : null,
                        SuitableFuse = kind == RunKind.Gauge ? Above(1) : null
                    };
                    break;
            }
        }

        foreach (var run in Following(board, motors, motorRuns))
            yield return run;
    }

    // What the parts ask for and the file does not name.
    static IEnumerable<HarnessRun> Following(Board board, int motors, List<Run> motorRuns)
    {
        var parts = board.Parts;
        var kinds = board.Wiring.Select(KindOf).ToHashSet();
        if (parts.Motor.Sensor is { IsKnown: true, Value: Sensor.Hall or Sensor.Encoder } sensor && !kinds.Contains(RunKind.Sensor))
        {
            for (var m = 1; m <= motors; m++)
            {
                yield return Thin(RunKind.Sensor, motors == 1 ? "motor" : string.Create(CultureInfo.InvariantCulture, $"motor {m}"), "controller",
                    sensor.Value == Sensor.Hall ? Hall : Encoder, new WireGauge(26))
                    with
                {
                    Stated = motorRuns is [{ Length.IsKnown: true }, ..]
                ? motorRuns[Min(m, motorRuns.Count) - 1].Length is { IsKnown: true } l ? l.Value : null : null
                };
            }
        }

        if (parts.Remote.IsChosen && !kinds.Contains(RunKind.Receiver))
            yield return Thin(RunKind.Receiver, "receiver", "controller", Receiver, Signal) with { Plug = parts.Remote.Port.Or("") };
        foreach (var fitting in parts.Fittings)
        {
            if (Says(fitting, "gauge") && !kinds.Contains(RunKind.Gauge))
                yield return Thin(RunKind.Gauge, "pack", "charge gauge", Pair, GaugeLead) with { SuitableFuse = Above(1) };
            else if ((Says(fitting, "switch") || Says(fitting, "button")) && !kinds.Contains(RunKind.Switch))
                yield return Thin(RunKind.Switch, "switch", "controller", Contacts, Signal);
        }
    }

    static HarnessRun Stated(Board board, Run run, RunKind kind, IReadOnlyList<HarnessWire> wires) => new()
    {
        Mark = "",
        Kind = kind,
        From = run.From.Or("?"),
        To = run.To.Or("?"),
        Key = KeyOf(run),
        Wires = wires,
        Section = run.Gauge.IsKnown ? run.Gauge.Value : null,
        OuterDiameter = run.OuterDiameter.IsKnown ? run.OuterDiameter.Value : run.Gauge.IsKnown
            ? new Conductor(run.Gauge.Value).GuessedOuterDiameter : null,
        IsOuterDiameterGuessed = !run.OuterDiameter.IsKnown,
        Limit = run.InsulationLimit.Or(HarnessRun.UsualLimit),
        Stated = run.Length.IsKnown ? run.Length.Value : null,
        Plug = run.Plug.Or(""),
        Contact = run.Plug.IsKnown ? board.PlugCalled(run.Plug.Value).ContactResistance.Or(default) : default,
    };

    static HarnessRun Thin(RunKind kind, string from, string to, IReadOnlyList<HarnessWire> wires, WireGauge gauge) => new()
    {
        Mark = "",
        Kind = kind,
        From = from,
        To = to,
        Wires = wires,
        Section = gauge.Section,
        // Thin leads have thin walls: twice the copper's diameter and 0.4 mm, common practice.
        OuterDiameter = gauge.Diameter * 2 + Length.FromMillimetres(0.4),
        IsOuterDiameterGuessed = true,
    };

    static RunKind KindOf(Run run) =>
        WiringRuns.IsPackRun(run) ? RunKind.Pack
        : WiringRuns.IsMotorRun(run) ? RunKind.Motor
        : Names(run, "charg") && !Names(run, "gauge") ? RunKind.Charge
        : Names(run, "sensor") ? RunKind.Sensor
        : Names(run, "receiver") || Names(run, "remote") ? RunKind.Receiver
        : Names(run, "gauge") ? RunKind.Gauge
        : Names(run, "switch") || Names(run, "button") ? RunKind.Switch
        : RunKind.Other;

    static bool Names(Run run, string word) =>
        run.From.Or("").Contains(word, StringComparison.OrdinalIgnoreCase)
        || run.To.Or("").Contains(word, StringComparison.OrdinalIgnoreCase);

    static bool Says(Fitting fitting, string word) =>
        fitting.Title.Contains(word, StringComparison.OrdinalIgnoreCase) || fitting.Id.Contains(word, StringComparison.OrdinalIgnoreCase);

    static string KeyOf(Run run) => run.Gauge.Key.LastIndexOf('.') is > 0 and var dot ? run.Gauge.Key[..dot] : run.Gauge.Key;

    static Current? Above(double amperes) =>
        SmallFuses.Cast<double?>().FirstOrDefault(f => f >= amperes - 1e-9) is { } some ? Current.FromAmperes(some) : null;
}
