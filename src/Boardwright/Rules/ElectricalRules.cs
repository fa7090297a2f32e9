using Boardwright.Analyses;
using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Traction;
using Boardwright.Wiring;

namespace Boardwright.Rules;

/// <summary>What voltage and current ask of every electrical part.</summary>
public static class ElectricalRules
{
    static readonly Energy FusedFrom = Energy.FromWattHours(100);

    /// <summary>The controller lives within its voltages.</summary>
    public static Rule<BoardAnalysis> ControllerVoltage { get; } = new(
        "voltage.controller", "controller.voltage_max", "The pack stays inside the controller's supply voltages, full and empty.",
        "S · full voltage against voltage_max, S · least voltage (or the taper's end) against voltage_min. Braking at full charge comes on top, so the margin matters.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var controller = e.Board.Parts.Controller;
            var window = needs.Read(e.Window);
            var (most, least) = (needs.Read(controller.VoltageMax), needs.Read(controller.VoltageMin));
            if (needs.Unmet)
                return null;
            var cut = e.Board.Limits.TaperEnd.IsKnown ? e.Board.Limits.TaperEnd.Value * window.Series : window.Empty;
            if (window.Full > most)
                return [ControllerVoltage!.Found(Level.Stop, $"A full pack has {window.Full:0.0 V}, the controller takes {most:0.0 V}.", $"Take a controller for at least {window.Full:0.0 V}, or at most {(int)(most / (window.Full / window.Series))} cells in series.", Amount.Create(window.Full, "V"), Amount.Create(most, "V"))];
            return cut < least
                ? [ControllerVoltage!.Found(Level.Fix, $"At the end of the charge the pack has {cut:0.0 V}; below {least:0.0 V} the controller switches off.", $"Set taper_end to at least {least / window.Series:0.00 V} per cell.", Amount.Create(cut, "V"), Amount.Create(least, "V"), "controller.voltage_min", new Change("limits.taper_end", $"{Math.Ceiling(100 * least.Volts / window.Series) / 100:0.00} V"))]
                : [ControllerVoltage!.Found(Level.Fine, $"{cut:0.0 V} to {window.Full:0.0 V} in {least:0.0 V} to {most:0.0 V}; {most - window.Full:0.0 V} are left for braking.", value: Amount.Create(window.Full, "V"), limit: Amount.Create(most, "V"))];
        });

    /// <summary>Fuse and plugs can stand the pack's voltage.</summary>
    public static Rule<BoardAnalysis> PartsStandVoltage { get; } = new(
        "voltage.parts", "pack.plug", "Fuse and plugs are rated for the pack's full voltage.",
        "A fuse for car voltages goes on burning as an arc at the voltage of a board.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var window = needs.Read(e.Window);
            if (needs.Unmet)
                return null;
            var found = new List<Finding>();
            if (e.Board.Parts.Fuse.IsChosen)
                Judge("fuse", e.Board.Parts.Fuse.Voltage, "The fuse");
            foreach (var (key, name) in PlugsInUse(e.Board).DistinctBy(p => p.Name, TradeName.Comparer))
            {
                if (e.Board.KnowsPlug(name))
                {
                    var plug = e.Board.PlugCalled(name);
                    Judge(key, plug.Voltage, $"The plug {plug.Title}");
                }
                else
                    found.Add(NameRules.Unknown(PartsStandVoltage!, key, name, "plug", NameRules.PlugsOf(e.Board)));
            }

            return found;

            void Judge(string where, Known<Voltage> rated, string what)
            {
                var volts = needs.Read(rated);
                if (!rated.IsKnown)
                    return;
                found.Add(volts >= window.Full
                    ? PartsStandVoltage!.Found(
                    Level.Fine, $"{what} is rated {volts:0 V}; a full pack has {window.Full:0.0 V}.", value: Amount.Create(window.Full, "V"), limit: Amount.Create(volts, "V"), where: where)
                    : PartsStandVoltage!.Found(Level.Stop, $"{what} is rated {volts:0 V}; a full pack has {window.Full:0.0 V}.", $"Take one rated at least {window.Full:0.0 V} DC.", Amount.Create(window.Full, "V"), Amount.Create(volts, "V"), where));
            }
        });

    /// <summary>The builder's phase current is within motor and controller.</summary>
    public static Rule<BoardAnalysis> PhaseCurrentCarried { get; } = new(
        "current.phase", "limits.phase_current", "Motor, controller and the plugs between them carry the phase current that the board holds.",
        "What is set, or else the controller's own peak, against the peak phase currents of motor and controller and what the plugs between them carry for a short time (their rating times √2); the weakest is named. What they carry for ever is said beside it.",
        Sources.MakersSheet,
        (e, needs) => Phase(PhaseCurrentCarried!, e, needs, e.PhaseLimits, e.Board.Limits.PhaseCurrent, "limits.phase_current"));

    /// <summary>The builder's braking phase current is within motor and controller.</summary>
    public static Rule<BoardAnalysis> BrakePhaseCurrentCarried { get; } = new(
        "current.brake_phase", "limits.brake_phase_current", "Motor, controller and the plugs between them carry the braking phase current that the board holds.",
        "What is set, or else the controller's own peak, against the peak phase currents of motor and controller and what the plugs between them carry for a short time (their rating times √2); the weakest is named.",
        Sources.MakersSheet,
        (e, needs) => Phase(BrakePhaseCurrentCarried!, e, needs, e.BrakePhaseLimits, e.Board.Limits.BrakePhaseCurrent, "limits.brake_phase_current"));

    /// <summary>Every part between cells and controller carries the pack current.</summary>
    public static Rule<BoardAnalysis> PackCurrentCarried { get; } = new(
        "current.pack", "limits.pack_current", "Cells, protection, plugs, fuse and controller carry the pack current that the board holds.",
        "What is set, or the controllers' own maximum where that is less, against what each part carries for ever: cells · parallel, protection, the pack's plug and those of its wires, fuse; what is set also against the controllers. That the protection opens excuses no part. Every part that is too weak is named, the weakest first, with what then happens: I² R in a cell and in a contact. Beyond twice what the cells carry it is a stop.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var limits = needs.Read(e.PackLimits);
            if (needs.Unmet)
                return null;
            var parts = CurrentRatings.Pack(needs, e.Board).ToList();
            foreach (var run in e.Board.Wiring.Where(WiringRuns.IsPackRun))
            {
                if (run.Plug.IsKnown && e.Board.PlugCalled(run.Plug.Value).CurrentContinuous is { IsKnown: true } rated
                    && !(e.Board.Parts.Pack.Plug.IsKnown && Rules.InterfaceRules.Same(e.Board.Parts.Pack.Plug.Value, run.Plug.Value)))
                {
                    parts.Add(new(Bearer.Plug, new(run.Plug.Key, $"the continuous current of the plug {run.Plug.Value} in the wire", rated.Value)));
                }
            }

            AskRatings(needs, e.Board, e.Board.Parts.Cell.DischargeCurrent, e.Board.Parts.Pack.Protection.DischargeCurrent);
            return Carried(PackCurrentCarried!, e, needs, limits, parts, "pack current", "carries");
        });

    /// <summary>Every part takes the braking current back.</summary>
    public static Rule<BoardAnalysis> RegenCurrentCarried { get; } = new(
        "current.regen", "limits.regen_current", "Cells, protection, plug, fuse and controller take the braking pack current that the board holds.",
        "What is set, or the controllers' own maximum where that is less, against cells · parallel charge current, the protection's, and what plug and fuse carry; what is set also against the controllers. That the protection opens excuses no part. No controller knows how warm the cells are: where they may not be charged at the brief's temperature, or beyond twice their charge current, it is a stop, and the brake is computed with what is set all the same. Where the protection lets nothing through the brake is only what the copper turns into heat.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var limits = needs.Read(e.RegenLimits);
            if (needs.Unmet)
                return null;
            var parts = CurrentRatings.Regen(needs, e.Board).ToList();
            // Nothing comes back through a protection that lets nothing through, whatever it is rated for.
            AskRatings(needs, e.Board,
                CurrentRatings.ForbiddenBy(e.Board).IsKnown ? null : e.Board.Parts.Cell.ChargeCurrent,
                e.Board.Parts.Pack.Protection.RegenThrough.Or(true) ? e.Board.Parts.Pack.Protection.ChargeCurrent : null);
            return Carried(RegenCurrentCarried!, e, needs, limits, parts, "braking pack current", "takes");
        });

    /// <summary>Plugs mate along each line.</summary>
    public static Rule<BoardAnalysis> PlugsMate { get; } = new(
        "plug.mates", "pack.plug", "Plugs mate from the pack over its wire to the controller, and from the controller to the motors.",
        "Names are compared; a plug mates with its like or with those it lists.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var (board, parts) = (e.Board, e.Board.Parts);
            var found = new List<Finding>();
            // Runs to several controllers or motors lie side by side, so each is a line of its own.
            foreach (var plug in board.Wiring.Where(WiringRuns.IsPackRun).Select(r => r.Plug).DefaultIfEmpty())
                Chain([parts.Pack.Plug, plug, parts.Controller.PackPlug]);
            foreach (var plug in board.Wiring.Where(WiringRuns.IsMotorRun).Select(r => r.Plug).DefaultIfEmpty())
                Chain([parts.Controller.MotorPlug, plug, parts.Motor.LeadPlug]);
            return found;

            void Chain(Known<string>[] plugs)
            {
                if (!plugs[0].IsKnown || !plugs[^1].IsKnown)
                {
                    _ = needs.Read(plugs[0]);
                    _ = needs.Read(plugs[^1]);
                    return;
                }

                var known = plugs.Where(p => p.IsKnown).ToArray();
                for (var i = 1; i < known.Length; i++)
                {
                    var (a, b) = (known[i - 1], known[i]);
                    found.Add(Mate(board, a.Value, b.Value)
                        ? PlugsMate!.Found(Level.Fine, $"{a.Value} at {a.Key} mates with {b.Value} at {b.Key}.", where: b.Key)
                        : PlugsMate!.Found(Level.Stop, $"{a.Value} at {a.Key} does not mate with {b.Value} at {b.Key}.", $"Put {a.Value} on {b.Key}, or {b.Value} on {a.Key}; an adapter is one more thing that can come loose.", where: b.Key));
                }
            }
        });

    /// <summary>Wires stay within their insulation's temperature.</summary>
    public static Rule<BoardAnalysis> WiresStayCool { get; } = new(
        "wire.temperature", "wiring", "Wires stay below their conductor's temperature limit in free air.",
        "I² R'(T) = π D (h_conv + h_rad)(T − T_air): pack wires at the pack current limit, motor wires at the climb's phase current over √2. In a closed box, in a bundle or under foam they get hotter.",
        Sources.ChurchillChuCylinder,
        (e, needs) =>
        {
            var wires = needs.Read(e.Wires);
            return needs.Unmet ? null : new[] { wires.Pack, wires.Motor }.OfType<WarmRun>().Select(run =>
            {
                var value = run.Temperature is { } t ? Amount.Create(t, "°C") : (Amount?)null;
                var limit = Amount.Create(run.Limit, "°C");
                return run.Temperature is { } settles && settles <= run.Limit
                    ? WiresStayCool!.Found(Level.Fine, $"{run.Gauge} settles at {settles:0 °C} under {run.Current:0 A}; {run.Limit:0 °C} would take {run.LargestCurrent:0 A}.", value: value, limit: limit, where: run.Key)
                    : WiresStayCool!.Found(Level.Fix,
                        run.Temperature is { } hot ? (FormattableString)$"{run.Gauge} settles at {hot:0 °C} under {run.Current:0 A}; {run.Limit:0 °C} is its limit." : $"{run.Gauge} finds no steady temperature under {run.Current:0 A}.",
                        $"Take {Thicker(run, e.Air.Value)}, or keep the current to {run.LargestCurrent:0 A}.", value, limit, run.Key);
            });
        });

    /// <summary>The motors do not outrun the controller.</summary>
    public static Rule<BoardAnalysis> ElectricalSpeedFits { get; } = new(
        "speed.electrical", "controller.electrical_speed_limit", "The motors' electrical speed stays below the controller's with the wheels in the air.",
        "Motor r/min · pole pairs with the wheels in the air at full charge.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var limit = needs.Read(e.Board.Parts.Controller.ElectricalSpeedLimit);
            var kv = needs.Read(e.MotorConstants);
            var window = needs.Read(e.Window);
            if (needs.Unmet)
                return null;
            if (kv.PolePairs == 0)
            {
                needs.Lack(e.Board.Parts.Motor.PolePairs.Key);
                return null;
            }

            // The figure itself already obeys the limit, so the rule asks what KV and a full pack would make of it.
            var free = AngularSpeed.FromRadiansPerSecond(
                kv.PolePairs * kv.Kv.RadiansPerSecondPerVolt * window.Full.Volts * Propulsion.Modulation);
            var (value, most) = (Amount.Create(free, "rpm"), Amount.Create(limit, "rpm"));
            return free <= limit
                ? [ElectricalSpeedFits!.Found(Level.Fine, $"At most {free:0 rpm} of {limit:0 rpm}.", value: value, limit: most)]
                : [ElectricalSpeedFits!.Found(Level.Fix, $"With the wheels in the air the motors would reach {free:0 rpm} electrical; the controller follows {limit:0 rpm}.", $"A motor of at most {(int)(kv.Kv.RpmPerVolt * (limit.Si / free.Si))} rpm/V, fewer pole pairs, or a lower pack voltage.", value, most)];
        });

    /// <summary>The controller has an output for every motor.</summary>
    public static Rule<BoardAnalysis> EveryMotorDriven { get; } = new(
        "current.outputs", "controller.motors", "There is a controller output for every motor.",
        "Outputs of a controller · controllers against motors.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var outputs = needs.Read(e.Board.Parts.Controller.Motors) * PartSlot.ControllerCount(e.Board.Parts);
            var motors = needs.Read(e.Board.Parts.Drive.Motors);
            if (needs.Unmet)
                return null;
            return outputs >= motors
                ? [EveryMotorDriven!.Found(Level.Fine, $"{outputs} outputs for {motors} motors.", value: Amount.Plain(outputs), limit: Amount.Plain(motors))]
                : [EveryMotorDriven!.Found(Level.Stop, $"The controllers drive {outputs} motors, the board has {motors}.", $"Take {(motors + e.Board.Parts.Controller.Motors.Value - 1) / e.Board.Parts.Controller.Motors.Value} of them, or one with {motors} outputs.", Amount.Plain(outputs), Amount.Plain(motors))];
        });

    /// <summary>The fuse protects the wire.</summary>
    public static Rule<BoardAnalysis> FuseProtectsWire { get; } = new(
        "fuse.wire", "fuse.rating", "A main fuse is there, and blows before the pack wire passes its limit.",
        "Rating of the fuse against the current at which the pack wire reaches its limit in free air. That a pack of 100 Wh and more has a main fuse is common practice, no source.",
        Sources.ChurchillChuCylinder,
        (e, needs) =>
        {
            if (!e.Board.Parts.Fuse.IsChosen)
            {
                var isLarge = e.Energy.IsKnown && e.Energy.Value.Energy >= FusedFrom;
                var energy = isLarge ? Amount.Create(e.Energy.Value.Energy, "Wh") : (Amount?)null;
                return
                [
                    FuseProtectsWire!.Found(isLarge ? Level.Fix : Level.Measure, $"The file names no main fuse. A short behind the protection is stopped by nothing else when its switches fail closed.",
                        $"Put a fuse rated for the pack's voltage and current at the pack, ask a qualified person, and name it as parts.fuse.", energy, isLarge ? Amount.Create(FusedFrom, "Wh") : null),
                ];
            }

            var rating = needs.Read(e.Board.Parts.Fuse.Rating);
            var wires = needs.Read(e.Wires);
            WiringRuns.AskEnds(needs, e.Board);
            if (!e.Board.Wiring.Any(WiringRuns.IsPackRun))
                needs.Lack("wiring");
            if (needs.Unmet || wires.Pack is not { } run)
                return null;
            var (value, limit) = (Amount.Create(rating, "A"), Amount.Create(run.LargestCurrent, "A"));
            return rating <= run.LargestCurrent
                ? [FuseProtectsWire!.Found(Level.Fine, $"A fuse of {rating:0 A} before {run.Gauge}, which takes {run.LargestCurrent:0 A}.", value: value, limit: limit)]
                : [FuseProtectsWire!.Found(Level.Fix, $"The fuse of {rating:0 A} lets more through than {run.Gauge} takes ({run.LargestCurrent:0 A}).", $"Take a fuse of at most {run.LargestCurrent:0 A}, or {Thicker(run with { Current = rating }, e.Air.Value)}.", value, limit)];
        });

    /// <summary>Every rule about voltages, currents, plugs and wires.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [ControllerVoltage, PartsStandVoltage, EveryMotorDriven, PhaseCurrentCarried, BrakePhaseCurrentCarried, PackCurrentCarried,
        RegenCurrentCarried, PlugsMate, WiresStayCool, FuseProtectsWire, ElectricalSpeedFits];

    /// <summary>Asks for what the parts on the pack's side are rated for: nothing is fine as long as one of them is not known.</summary>
    static void AskRatings(Needs needs, Board board, Known<Current>? cell, Known<Current>? protection)
    {
        var parts = board.Parts;
        if (cell is { } rated)
        {
            needs.Read(rated);
            needs.Read(parts.Pack.Parallel);
        }

        if (parts.Pack.Protection.IsChosen && protection is { } opens)
            needs.Read(opens);
        if (needs.Read(parts.Pack.Plug) is { } plug)
            needs.Read(board.PlugCalled(plug).CurrentContinuous);
        if (parts.Fuse.IsChosen)
            needs.Read(parts.Fuse.Rating);
    }

    static Finding[] Carried(
        Rule<BoardAnalysis> rule, BoardAnalysis e, Needs needs, CurrentLimits limits, IReadOnlyList<CurrentRating> parts, string what,
        string carries)
    {
        // A trip is a last resort: no part may lean on it.
        var flows = limits.BeforeTrip;
        var most = limits.Set ?? flows;
        FormattableString held = flows.IsSet ? (FormattableString)$"{flows.Current:0 A} are set" : $"The board holds {flows.Current:0 A} ({flows.Says})";
        var none = limits.Set is null ? " Nothing is set." : "";
        var rated = parts.OrderBy(p => p.Rated.Current).ToArray();
        // What no device holds is judged by what can flow; what one does, by what it was told to.
        Current Judged(CurrentRating part) => part.IsEnforced ? most.Current : flows.Current;
        var weak = rated.Where(p => p.Rated.Current < Judged(p)).ToArray();
        if (weak.Length == 0)
        {
            if (needs.Unmet)
                return [];
            return rated.Where(p => p.Rated.Key != flows.Key).Take(1).Select(next => rule.Found(
                Level.Fine, $"{(Phrase)held}; the weakest part, {next.Rated.Says}, {carries} {next.Rated.Current:0 A}.{none}",
                value: Amount.Create(flows.Current, "A"), limit: Amount.Create(next.Rated.Current, "A")))
                .DefaultIfEmpty(rule.Found(Level.Fine, $"{(Phrase)held}.{none}", value: Amount.Create(flows.Current, "A"))).ToArray();
        }

        return [.. weak.Select(w =>
        {
            var (judged, rating) = (Judged(w), w.Rated.Current);
            var (value, limit) = (Amount.Create(judged, "A"), Amount.Create(rating, "A"));
            FormattableString flow = w.IsEnforced && most.IsSet ? (FormattableString)$"{judged:0 A} are set" : held;
            // What the file does not say may still be set right.
            var stop = limits.Set is null ? Level.Fix : Level.Stop;
            if (rating.Si == 0)
                return rule.Found(stop, $"{(Phrase)flow}{(flow == held && !flows.IsSet ? "" : " as braking current")}, but {(Phrase)CurrentConsequences.OfNone(e, w)}", CurrentConsequences.MendOfNone(w), value, limit, w.Rated.Key);
            return rule.Found(w.Bearer == Bearer.Cells && judged > rating * 2 ? stop : Level.Fix,
                $"{(Phrase)flow}; {w.Rated.Says} is {rating:0 A}: {judged - rating:0 A} too little. {(Phrase)CurrentConsequences.Beyond(e, w, judged)}",
                $"Set the {what} to {weak[0].Rated.Current:0 A}, or take a stronger part.", value, limit, w.Rated.Key, new Change(rule.Where, Setting(weak[0].Rated.Current)));
        })];
    }

    static Finding[]? Phase(
        Rule<BoardAnalysis> rule, BoardAnalysis e, Needs needs, Answer<CurrentLimits> answer, Known<Current> setting, string key)
    {
        var limits = needs.Read(answer);
        var (motor, controller) = (e.Board.Parts.Motor, e.Board.Parts.Controller);
        var peaks = (Motor: needs.Read(motor.PhaseCurrentPeak), Controller: needs.Read(controller.PhaseCurrentPeak));
        if (needs.Unmet)
            return null;
        var set = setting.IsKnown ? needs.Read(setting) : limits.Enforced.Current;
        FormattableString held = setting.IsKnown ? (FormattableString)$"{set:0 A} are set" : $"Nothing is set, and the controller holds {set:0 A}";
        var weakest = peaks.Motor < peaks.Controller ? (Name: "motor", Current: peaks.Motor) : (Name: "controller", Current: peaks.Controller);
        // A plug is rated by the root of the mean square, a phase current by its amplitude.
        foreach (var plug in e.Board.Wiring.Where(WiringRuns.IsMotorRun).Where(r => r.Plug.IsKnown)
            .Select(r => e.Board.PlugCalled(r.Plug.Value)))
        {
            var rated = plug.CurrentPeak.IsKnown ? plug.CurrentPeak : plug.CurrentContinuous;
            if (rated.IsKnown && rated.Value * Math.Sqrt(2) < weakest.Current)
                weakest = ($"motor plug {plug.Title}", needs.Read(rated) * Math.Sqrt(2));
        }

        var (value, limit) = (Amount.Create(set, "A"), Amount.Create(weakest.Current, "A"));
        var forEver = new[] { motor.PhaseCurrentContinuous, controller.PhaseCurrentContinuous }.Where(c => c.IsKnown).Select(c => c.Value)
            .OrderBy(c => c).Cast<Current?>().FirstOrDefault();
        var beside = forEver is { } c && c < set ? (FormattableString)$" For ever they carry {c:0 A}; the heat decides how long the rest lasts." : $"";
        if (set <= weakest.Current)
            return [rule.Found(Level.Fine, $"{(Phrase)held}; the {weakest.Name}, the weakest, takes {weakest.Current:0 A} for a short time.{beside}", value: value, limit: limit)];
        var then = weakest.Name switch
        {
            "motor" => (FormattableString)$" {(Phrase)CurrentConsequences.InWinding(e, limits.Enforced.Current)}",
            "controller" => (FormattableString)$" It holds itself to that.",
            _ => (FormattableString)$" {(Phrase)CurrentConsequences.InContact(limits.Enforced.Current, weakest.Current)}",
        };
        return [rule.Found(Level.Fix, $"{(Phrase)held}; the {weakest.Name} takes {weakest.Current:0 A}: {set - weakest.Current:0 A} too little.{(Phrase)then}", $"Set {weakest.Current:0 A}.", value, limit, mend: new Change(key, Setting(weakest.Current)))];
    }

    /// <summary>A current as a setting that is no larger, in whole amperes where that leaves anything.</summary>
    static string Setting(Current most) => FormattableString.Invariant($"{(most.Amperes >= 1 ? Math.Floor(most.Amperes) : most.Amperes):0.###} A");

    static bool Mate(Board board, string a, string b)
    {
        if (Rules.InterfaceRules.Same(a, b))
            return true;
        bool Lists(string one, string other) =>
            board.PlugCalled(one).MatesWith is { IsKnown: true } with && with.Value.Items.Any(m => Rules.InterfaceRules.Same(m, other));
        return Lists(a, b) || Lists(b, a);
    }

    /// <summary>Every plug that the board names, by its entry.</summary>
    internal static IEnumerable<(string Key, string Name)> PlugsInUse(Board board)
    {
        var parts = board.Parts;
        return new[] { parts.Pack.Plug }.Concat(board.Wiring.Select(run => run.Plug))
            .Concat([parts.Controller.PackPlug, parts.Controller.MotorPlug, parts.Motor.LeadPlug, parts.Charger.Plug])
            .Where(plug => plug.IsKnown).Select(plug => (plug.Key, plug.Value));
    }

    static string Thicker(WarmRun run, Road.Air air)
    {
        for (var number = 14; number >= 2; number -= 2)
        {
            var gauge = new WireGauge(number);
            var conductor = new Conductor(gauge.Section);
            if (new WireTemperature(conductor, conductor.GuessedOuterDiameter, air).LargestCurrent(run.Limit) >= run.Current)
                return gauge.Name;
        }

        return "two wires side by side";
    }
}
