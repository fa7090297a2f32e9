using Boardwright.Builds;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Wiring;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>The list for first power and bench: what to measure, in order, and between which values it passes.</summary>
static class BenchList
{
    // Through which a controller's capacitors are filled before the plug is mated; common practice.
    const double FillingOhms = 100;

    /// <summary>The heading of what can only be tried by riding.</summary>
    internal const string OnTheRoad = "On the road, in the open, walking pace first";

    public static IReadOnlyList<Block> Compose(PaperContext gathering) =>
    [
        new ParagraphBlock("In this order, each line before the next. Ranges follow from this board's own figures; where a range is wider than a meter is good, the meter is to blame last. What fails is found and mended, and the list begun again from there."),
        new CautionBlock(PaperCautions.Pack),
        new HeadingBlock("Without power"),
        new ChecksBlock([.. Cold(gathering)]),
        new HeadingBlock("First power"),
        new CautionBlock(PaperCautions.Wheels),
        new ChecksBlock([.. First(gathering)]),
        new HeadingBlock("Wheels in the air"),
        new ChecksBlock([.. Air(gathering)]),
        new HeadingBlock("Charging"),
        new CautionBlock(PaperCautions.Charger),
        new ChecksBlock([.. Charging(gathering)]),
        new HeadingBlock(OnTheRoad),
        new CautionBlock(PaperCautions.Brakes),
        new ChecksBlock([.. Road(gathering)]),
        new SignaturesBlock(["Done by", "Date", "Board no."]),
    ];

    static IEnumerable<CheckLine> Cold(PaperContext gathering)
    {
        var parts = gathering.Parts;
        var window = gathering.Examination.Window;
        yield return new("Pack at rest, plus to minus.", Or(gathering.Format(window, w => $"{w.Empty.Volts:0.0} to {w.Full.Volts:0.0} V"), ""), "V")
        {
            Id = "pack.rest",
            Range = window.IsKnown ? PassRange.In("V", window.Value.Empty.Volts, window.Value.Full.Volts) : null
        };
        yield return new("Highest less lowest group of cells.", "20 mV at most at rest (common practice)", "mV") { Id = "pack.groups", Range = AtMost(20, "mV") };
        yield return new("Pack to trucks and motor cans, both poles, and each motor lead to its can.", "above 1 MΩ (common practice)", "MΩ") { Id = "pack.insulation", Range = PassRange.In("MΩ", 1, double.PositiveInfinity) };
        yield return new("Controller's supply leads, pack unplugged: no lasting short.", "rises above 1 kΩ as its capacitors fill (common practice)", "kΩ") { Id = "controller.short", Range = PassRange.In("kΩ", 1, double.PositiveInfinity) };
        var line = Line(gathering);
        for (var m = 1; m <= parts.Drive.Motors.Or(1); m++)
            yield return new(Invariant($"Motor {m}: resistance between each two of its three leads, with four wires, at 20 °C."), line is null ? "" : Invariant($"{line.Value.Low:0.0} to {line.Value.High:0.0} mΩ") + "; the three within 5 % of one another (common practice)", "mΩ")
            {
                Id = Invariant($"motor-{m}.resistance"),
                Range = line is { } between ? PassRange.In("mΩ", between.Low, between.High) with { ApartAtMost = Fraction.FromPercent(5) }
                    : null
            };
        if (gathering.Examination.BeltLoad is { IsKnown: true, Value.Frequency: var note })
            yield return new("Note of every belt.", BuildSheet.NoteRange(note.Hertz), "Hz") { Id = "belts.note", Range = BuildSheet.NoteBetween(note.Hertz) };
        if (!gathering.Examination.IsHub)
            yield return new("Each motor turned by hand: even drag, the same on both motors.") { Id = "motors.drag" };
    }

    // From the entry that is known, with its own spread; a maker may state either resistance.
    static (double Low, double High)? Line(PaperContext gathering)
    {
        var motor = gathering.Parts.Motor;
        var isLine = motor.LineResistance.IsKnown && !motor.PhaseResistance.IsKnown;
        if (!isLine && gathering.Format(motor.PhaseResistance, _ => $"") is null)
            return null;
        var (low, high) = Nine(motor, isLine ? "line_resistance" : "phase_resistance");
        var times = isLine ? 1000 : 2000;
        return (low * times, high * times);
    }

    static IEnumerable<CheckLine> First(PaperContext gathering)
    {
        var parts = gathering.Parts;
        var controllers = PartSlot.ControllerCount(parts);
        if (gathering.Examination.Window.IsKnown && parts.Controller.BusCapacitance.IsKnown)
        {
            var inrush = new Inrush(gathering.Examination.Window.Value.Full,
                Capacitance.FromFarads(parts.Controller.BusCapacitance.Value.Farads * controllers), Resistance.FromOhms(FillingOhms));
            yield return new(Invariant($"Fill the controller's capacitors through {FillingOhms:0} Ω, 10 W, before the plug is mated: {inrush.Energy.Joules:0.0} J go in. Measure across the controller."), Invariant($"within 2 V of the pack after {Math.Max(1, Math.Ceiling(5 * inrush.TimeConstant.Seconds)):0} s"), "V") { Id = "controller.filling" };
        }
        else
        {
            gathering.Format(parts.Controller.BusCapacitance, _ => $"");
            yield return new("Fill the controller's capacitors through 100 Ω, 10 W, before the plug is mated.", "", "V") { Id = "controller.filling" };
        }

        yield return new("First connection through a lamp or a current-limited supply where there is one.", "the lamp goes out again") { Id = "controller.first" };
        (double Low, double High)? idle = null;
        var idleWords = "";
        if (gathering.Format(parts.Controller.IdlePower, _ => $"") is not null && gathering.Examination.Window.IsKnown)
        {
            var (watts, window) = (parts.Controller.IdlePower.Value.Watts * controllers, gathering.Examination.Window.Value);
            idle = (watts * 0.5 / window.Full.Volts * 1000, watts * 2 / window.Empty.Volts * 1000);
            idleWords = Invariant($"{idle.Value.Low:0} to {idle.Value.High:0} mA (half to twice the maker's {watts:0.#} W)");
        }

        yield return new("Current from the pack, switched on, at rest.", idleWords, "mA")
        {
            Id = "controller.idle",
            Range = idle is { } between ? PassRange.In("mA", between.Low, between.High, decimals: 0) : null
        };
        yield return new("Nothing warms within five minutes: plugs, fuse, protection, controller.", "hand-warm at most") { Id = "controller.warmth" };
        yield return new("Limits sheet set, read back, written down.") { Id = "controller.limits-set" };
    }

    static IEnumerable<CheckLine> Air(PaperContext gathering)
    {
        var (motor, examination) = (gathering.Parts.Motor, gathering.Examination);
        if (Alone(gathering) is { } alone)
        {
            yield return new(Invariant($"Each motor alone, belt or gears off, at {alone.Volts:0.#} V: current from the supply, full speed."), Invariant($"{alone.Low:0.00} to {alone.High:0.00} A"), "A") { Id = "motors.no-load", Range = PassRange.In("A", alone.Low, alone.High, decimals: 2) };
            if (motor.Kv.IsKnown)
                yield return new(Invariant($"The same: motor speed ({motor.Kv.Value.RpmPerVolt:0} rpm/V)."), Invariant($"{motor.Kv.Value.RpmPerVolt * alone.Volts * 0.85:0} to {motor.Kv.Value.RpmPerVolt * alone.Volts * 1.05:0} rpm (a controller uses some 95 % of the supply; KV good to a tenth)"), "rpm")
                {
                    Id = "motors.speed",
                    Range = PassRange.In("rpm", motor.Kv.Value.RpmPerVolt * alone.Volts * 0.85, motor.Kv.Value.RpmPerVolt * alone.Volts * 1.05,
                        decimals: 0)
                };
        }

        var unloaded = gathering.Figure(Catalogue.UnloadedFull);
        yield return new(Invariant($"Wheels in the air, full charge, full throttle, no speed limit set; computed {Or(unloaded)}. With a speed limit set: the limit."), gathering.Between(Catalogue.UnloadedFull) ?? "", "km/h")
        {
            Id = "wheels.top",
            Range = gathering.Board.Brief.SpeedLimit.IsKnown ? null : gathering.RangeOf(Catalogue.UnloadedFull)
        };
        yield return new("All driven wheels turn forward, start together and stop together.") { Id = "wheels.together" };
        yield return new("Brake from half speed: both sides stop alike; no belt jumps.") { Id = "wheels.brake" };
        yield return gathering.Parts.Remote.Failsafe is { IsKnown: true, Value: var failsafe }
            ? new("Remote switched off at half throttle, and again carried out of reach.", failsafe switch
            {
                Failsafe.Coast => "the wheels coast within 1 s and do not start again by themselves",
                Failsafe.Brake => "the wheels are braked softly within 1 s and do not start again by themselves",
                _ => "this receiver goes on with its last command: DO NOT RIDE, change it",
            }, "s")
            { Id = "remote.failsafe", Range = failsafe == Failsafe.None ? null : AtMost(1, "s") }
            : new("Remote switched off at half throttle.", Or(gathering.Format(gathering.Parts.Remote.Failsafe, _ => $""), "drive ends within 1 s"), "s") { Id = "remote.failsafe" };
        yield return new("Battery of the remote empty or taken out: the same.") { Id = "remote.battery" };
        if (examination.IsBelt)
            yield return new("Belts after five minutes: they run in the middle, no dust, the note is still in its range.", "", "Hz") { Id = "belts.after-run", Range = NoteOf(examination) };
    }

    static PassRange? NoteOf(Examination examination) =>
        examination.BeltLoad is { IsKnown: true, Value.Frequency: var note } ? BuildSheet.NoteBetween(note.Hertz) : null;

    // What one motor takes without a load: from its single test, or from the last of several.
    static (double Volts, double Low, double High)? Alone(PaperContext gathering)
    {
        const double Fifth = 0.2;
        var motor = gathering.Parts.Motor;
        if (!motor.NoLoadCurrent.IsKnown && motor.NoLoadTests.IsKnown)
        {
            var (volts, amperes) = motor.NoLoadTests.Value.Points[^1];
            return (volts.Volts, amperes.Amperes * (1 - Fifth), amperes.Amperes * (1 + Fifth));
        }

        if (gathering.Format(motor.NoLoadCurrent, _ => $"") is null || gathering.Format(motor.NoLoadVoltage, _ => $"") is null)
            return null;
        var (low, high) = Nine(motor, "no_load_current");
        return (motor.NoLoadVoltage.Value.Volts, low, high);
    }

    static IEnumerable<CheckLine> Charging(PaperContext gathering)
    {
        var (charger, window) = (gathering.Parts.Charger, gathering.Examination.Window);
        if (!charger.IsChosen)
        {
            yield return new("No charger is chosen for this board.") { Id = "charger.none" };
            yield break;
        }

        var most = window.IsKnown ? Invariant($", and never above {window.Value.Full.Volts * 1.005:0.0} V") : "";
        yield return new("Charger alone, open, plus and minus as on the socket.", Or(gathering.Format(charger.Voltage, v => $"{v.Volts * 0.995:0.0} to {v.Volts * 1.005:0.0} V{most}"), ""), "V")
        {
            Id = "charger.open",
            Range = charger.Voltage.IsKnown
                ? PassRange.In("V", charger.Voltage.Value.Volts * 0.995,
                Math.Min(charger.Voltage.Value.Volts, window.IsKnown ? window.Value.Full.Volts : double.PositiveInfinity) * 1.005) : null
        };
        yield return new("Charge current, pack half empty.", Or(gathering.Format(charger.Current, a => $"{a.Amperes * 0.9:0.0} to {a.Amperes * 1.1:0.0} A"), ""), "A")
        {
            Id = "charger.current",
            Range = charger.Current.IsKnown ? PassRange.In("A", charger.Current.Value.Amperes * 0.9, charger.Current.Value.Amperes * 1.1)
                : null
        };
        yield return new(Invariant($"Time from empty until it stops; computed {Or(gathering.Figure(Catalogue.ChargeFull, "0.0"))}."), gathering.Between(Catalogue.ChargeFull, "0.0") ?? "", "h")
        {
            Id = "charger.time",
            Range = gathering.RangeOf(Catalogue.ChargeFull)
        };
        yield return new("Each group an hour after the charge.", gathering.Parts.Cell.VoltageFull.IsKnown ? Invariant($"{gathering.Parts.Cell.VoltageFull.Value.Volts - 0.06:0.00} to {gathering.Parts.Cell.VoltageFull.Value.Volts:0.00} V, 20 mV apart at most (common practice)") : "", "V")
        {
            Id = "charger.groups",
            Range = gathering.Parts.Cell.VoltageFull is { IsKnown: true, Value.Volts: var full }
                ? PassRange.In("V", full - 0.06, full, decimals: 2) with { ApartBy = 0.020 } : null
        };
        yield return new("Nothing gets hotter than a hand bears, pack and charger alike.") { Id = "charger.warmth" };
    }

    static IEnumerable<CheckLine> Road(PaperContext gathering)
    {
        var brief = gathering.Board.Brief;
        yield return new("Walking beside it: starts, stops, steers, no noise; then standing, at walking pace.") { Id = "road.walk" };
        var held = gathering.Figure(Catalogue.GradeHeld);
        yield return new(Invariant($"Brake holds walking pace down a ramp, full charge; computed to hold up to {Or(held)}."), gathering.Order.Intervals.TryGetValue(Catalogue.GradeHeld.Id, out var ramp) ? Invariant($"a ramp of less than {ramp.Low:0.0} % is held") : "",
            "%")
        { Id = "brake.ramp" };
        var cruise = brief.CruiseSpeed.IsKnown ? gathering.Say($"{brief.CruiseSpeed.Value:0 km/h}") : "________";
        yield return new(Invariant($"Stop from {cruise}, level, half charge, electric brake alone, from the mark where braking is decided (1 s of reaction counted in); computed {Or(gathering.Figure(Catalogue.BrakeDistance))}. Work up to that speed."),
            gathering.Order.Intervals.TryGetValue(Catalogue.BrakeDistance.Id, out var stop) ? Invariant($"at most {stop.High:0.0} m, on dry ground") : "", "m")
        {
            Id = "brake.stop",
            Range = gathering.Order.Intervals.TryGetValue(Catalogue.BrakeDistance.Id, out var distance) ? AtMost(distance.High, "m")
                : null
        };
        yield return new(Invariant($"Consumption over 5 km at {cruise}; computed {Or(gathering.Figure(Catalogue.Consumption))}."), gathering.Between(Catalogue.Consumption) ?? "", "Wh/km")
        {
            Id = "road.consumption",
            Range = gathering.RangeOf(Catalogue.Consumption)
        };
        yield return new("Motors, controller, pack and plugs right after 10 minutes.", "below the limits sheet's temperatures; pack below 45 °C (common practice)", "°C") { Id = "road.temperatures" };
        yield return new("Bolts, set screws and axle nuts after the first 5 km: all as tight as they were.") { Id = "road.bolts" };
        if (gathering.Examination.IsBelt)
            yield return new("Belt notes after 20 km; set again if one has fallen below its range.", "", "Hz") { Id = "belts.after-20-km", Range = NoteOf(gathering.Examination) };
    }
}
