using Boardwright.Analyses;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Wiring;

namespace Boardwright.Rules;

/// <summary>What the harness must satisfy: bundles, glands, fuses in a fault, the first moment under power.</summary>
public static class HarnessRules
{
    // A fuse that takes less than this many times its rating takes seconds, in which the wire loses heat as well; common practice.
    const double QuickTimes = 4;

    // Part of its melting integral that a pulse may use again and again.
    const double PulseShare = 0.2;

    static readonly Duration Patience = Duration.FromSeconds(5);

    /// <summary>Wires stay within their limit in their bundles.</summary>
    public static Rule<BoardAnalysis> BundlesStayCool { get; } = new(
        "wire.bundle", "wiring", "In their bundles the wires stay below their conductor's temperature limit, for ever at the current of the climb.",
        "The heat of all wires of a run leaves through the circle around them: n I² R'(T) = π D (h_conv + h_rad)(T − T_air), in free air. In a closed box or under foam they get hotter. The peak is judged by what it would come to if it lasted.",
        Sources.ChurchillChuCylinder,
        (e, needs) =>
        {
            needs.Read(e.Air);
            WiringRuns.AskEnds(needs, e.Board);
            if (needs.Unmet)
                return null;
            var harness = e.Harness;
            var found = new List<Finding>();
            // A run without a duty waits for the climb that sets it, one without a section for its gauge.
            var power = harness.Runs.Where(r => r is { Kind: RunKind.Pack or RunKind.Motor, Key.Length: > 0 }).ToList();
            if (power.Any(r => r.Duty is null))
                needs.Read(e.Climb);
            AskGauges(needs, power);
            foreach (var run in harness.Runs.Where(r => r is { Duty: not null, LargestCurrent: not null, Key.Length: > 0 })
                .DistinctBy(r => r.Key, StringComparer.Ordinal))
            {
                var (lasting, most) = (run.Under(run.Duty!.Lasting)!, run.LargestCurrent!.Value);
                var (value, limit) = (lasting.Copper is { } t ? Amount.Create(t, "°C") : (Amount?)null, Amount.Create(run.Limit, "°C"));
                var where = run.Key + ".gauge";
                if (lasting.Copper is { } copper && copper <= run.Limit)
                {
                    var peak = run.Duty.Peak <= most
                        ? (FormattableString)$"Its peak of {run.Duty.Peak:0 A} could last as well."
                        : $"Its peak of {run.Duty.Peak:0 A} may not last: {run.Limit:0 °C} is reached at {most:0 A}.";
                    found.Add(BundlesStayCool!.Found(Level.Fine, $"{run.Mark}, {run.Name}: {copper:0 °C} under {run.Duty.Lasting:0.0 A} in each of {run.Wires.Count} wires, {harness.Duty.Says}. {(Phrase)peak}", value: value, limit: limit, where: where));
                }
                else
                {
                    found.Add(BundlesStayCool!.Found(
                        Level.Fix, $"{run.Mark}, {run.Name}: {run.Duty.Lasting:0.0 A} in each of {run.Wires.Count} wires, {harness.Duty.Says}, is more than the bundle takes for ever: {most:0 A} at {run.Limit:0 °C}.",
                        $"Take thicker wires, or lay them apart, in moving air.", value, limit, where));
                }
            }

            return found;
        });

    /// <summary>Motor bundles pass their glands.</summary>
    public static Rule<BoardAnalysis> BundlesPassGlands { get; } = new(
        "wire.gland", "fittings", "The wires of each motor, its sensor's with them, pass a gland that seals around them.",
        "Diameter of the circle around the three wires, and around those of the sensor, against the cables that the glands seal; glands against cables. Where there is no gland for the sensor's cable it goes with the three: their areas together over the three wires' share of their circle. A plug is wider than its wire and passes no gland.",
        Sources.CirclesInCircle,
        (e, needs) =>
        {
            var harness = e.Harness;
            var glands = e.Board.Parts.Fittings
                .Where(f => f.CableMin.IsKnown || f.CableMax.IsKnown || f.Role is { IsKnown: true, Value: FittingRole.Gland }).ToList();
            foreach (var gland in glands)
            {
                needs.Read(gland.CableMin);
                needs.Read(gland.CableMax);
            }

            if (glands.Count == 0)
                return null;
            WiringRuns.AskEnds(needs, e.Board);
            AskGauges(needs, harness.Runs.Where(r => r.Kind == RunKind.Motor));
            var motors = harness.Runs.Where(r => r is { Kind: RunKind.Motor, Bundle: not null }).ToList();
            if (needs.Unmet || motors.Count == 0)
                return null;
            var widest = motors.MaxBy(r => r.Bundle!.Diameter.Si)!.Bundle!;
            var sensors = harness.Runs.Where(r => r is { Kind: RunKind.Sensor, Bundle: not null }).ToList();
            var sensor = sensors.MaxBy(r => r.Bundle!.Diameter.Si)?.Bundle;
            var forSensors = sensor is null ? 0 : Count(Holding(sensor.Diameter).Except(Holding(widest.Diameter)));
            var apart = sensor is null || forSensors >= sensors.Count;
            var through = apart ? widest.Diameter : Together(widest, sensor!);
            var holding = Holding(through);
            var near = glands.MinBy(g => Math.Abs(g.CableMax.Value.Si - through.Si))!;
            var (value, limit) = (Amount.Create(through, "mm"), Amount.Create(near.CableMax.Value, "mm"));
            var instead = apart ? "or bring each wire through one of its own" : "or one more gland for the sensor's cable";
            var what = apart ? (FormattableString)$"Three motor wires make a bundle of {through:0.0 mm}" : $"Three motor wires and the {sensor!.Wires} of the sensor make a bundle of about {through:0.0 mm}";
            if (holding.Count == 0)
            {
                return
                [
                    BundlesPassGlands!.Found(
                        Level.Fix, $"{(Phrase)what}; {near.Title} seals {near.CableMin.Value:0.0 mm} to {near.CableMax.Value:0.0 mm}.",
                        $"Take a gland for cables of {through:0.0 mm}, {instead}.", value, limit, near.CableMax.Key),
                ];
            }

            var count = Count(holding);
            return count < motors.Count
                ? [BundlesPassGlands!.Found(Level.Fix, $"There are {count} glands for the wires of {motors.Count} motors.", $"Put in {motors.Count - count} more.", Amount.Plain(count), Amount.Plain(motors.Count), holding[0].CableMax.Key)]
                : [BundlesPassGlands!.Found(
                Level.Fine, $"{(Phrase)what}; {holding[0].Title} seals {holding[0].CableMin.Value:0.0 mm} to {holding[0].CableMax.Value:0.0 mm}. Wires side by side are not round: seal between them too. Put the plugs on after the wires are through: none of them passes the gland.", value: value, limit: Amount.Create(holding[0].CableMax.Value, "mm"), where: holding[0].CableMax.Key)];

            List<Fitting> Holding(Length diameter) => [.. glands.Where(g => g.CableMin.Value <= diameter && diameter <= g.CableMax.Value)];
            static int Count(IEnumerable<Fitting> glands) => glands.Sum(g => g.Count.Or(1));
        });

    /// <summary>Diameter over two bundles that lie in one, by area.</summary>
    static Length Together(Bundle phases, Bundle sensor)
    {
        static double Copper(Bundle bundle) => bundle.Wires * Math.Pow(bundle.OuterDiameter.Millimetres, 2);
        return phases.Diameter * Math.Sqrt(1 + Copper(sensor) / Copper(phases));
    }

    /// <summary>The fuse blows before the pack's wire is spoilt.</summary>
    public static Rule<BoardAnalysis> FuseBlowsFirst { get; } = new(
        "fuse.fault", "fuse.melting_i2t", "In a short at the far end of the pack's wire the fuse blows before the wire is spoilt.",
        "Lowest fault current: rest voltage at half charge over the steady resistance of pack and wire. Three times the fuse's melting I²t against what heats the wire from its limit to 160 °C without loss; the current at least four times the rating, so that it is quick.",
        Sources.Iec60949,
        (e, needs) =>
        {
            if (!e.Board.Parts.Fuse.IsChosen)
                return null;
            var (rating, melting) = (needs.Read(e.Board.Parts.Fuse.Rating), needs.Read(e.Board.Parts.Fuse.MeltingI2t));
            var fault = needs.Read(e.Fault);
            WiringRuns.AskEnds(needs, e.Board);
            if (!e.Board.Wiring.Any(WiringRuns.IsPackRun))
                needs.Lack("wiring");
            if (needs.Unmet)
                return null;
            return e.Harness.Runs.Where(r => r is { Kind: RunKind.Pack, Section: not null }).Select(run =>
            {
                var blown = FuseInFault.Compute(rating, melting, fault.Lowest, run.Section!.Value, run.Limit);
                var (value, limit) = (Amount.Create(blown.LetThrough, "A2s"), Amount.Create(blown.WireBears, "A2s"));
                var where = e.Board.Parts.Fuse.MeltingI2t.Key;
                return blown.Times < QuickTimes
                    ? FuseBlowsFirst!.Found(Level.Fix, $"A short at the end of {run.Mark} draws only {fault.Lowest:0 A}, {blown.Times:0.0} times the fuse's {rating:0 A}: it may take seconds, while wire and cells heat up.", $"Take a fuse of at most {fault.Lowest / QuickTimes:0 A} if that still carries the pack current, and ask a qualified person.", Amount.Create(fault.Lowest, "A"), Amount.Create(rating * QuickTimes, "A"),
                    where)
                    : blown.Protects
                        ? FuseBlowsFirst!.Found(Level.Fine, $"A short at the end of {run.Mark} draws {fault.Lowest:0 A}: the fuse melts after {blown.Melts:0.0 ms} and lets at most {blown.LetThrough:0 A2s} through; {run.Wire} bears {blown.WireBears:0 A2s}.", value: value, limit: limit, where: where)
                        : FuseBlowsFirst!.Found(Level.Fix, $"The fuse lets up to {blown.LetThrough:0 A2s} through in a short; {run.Wire} bears {blown.WireBears:0 A2s} from {run.Limit:0 °C} to 160 °C.", $"Take a thicker wire, or a fuse that melts at {blown.WireBears.AmpereSquaredSeconds / 3:0} A²s or less.", value, limit, where);
            });
        });

    /// <summary>The fuse can break the pack's fault current.</summary>
    public static Rule<BoardAnalysis> FuseBreaksFault { get; } = new(
        "fuse.breaking", "fuse.breaking_current", "The fuse can break what a full pack drives through a dead short.",
        "Full voltage over the least resistance that a fault meets, against the current that the fuse's maker states it breaks at the pack's voltage: the cells alone, warm, in the first milliseconds (1/2.6 of their value after a second); links, wires and plugs do not help. Beyond it a fuse bursts, or its arc goes on.",
        Sources.CellAtOnce,
        (e, needs) =>
        {
            if (!e.Board.Parts.Fuse.IsChosen)
                return null;
            var breaks = needs.Read(e.Board.Parts.Fuse.BreakingCurrent);
            var fault = needs.Read(e.Fault);
            if (needs.Unmet)
                return null;
            var (value, limit) = (Amount.Create(fault.Highest, "A"), Amount.Create(breaks, "A"));
            return fault.Highest <= breaks
                ? [FuseBreaksFault!.Found(Level.Fine, $"A dead short of the full pack draws about {fault.Highest:0 A} in its first milliseconds; the fuse breaks {breaks:0 A}.", value: value, limit: limit)]
                : [FuseBreaksFault!.Found(Level.Stop, $"A dead short of the full pack draws about {fault.Highest:0 A} in its first milliseconds; the fuse breaks no more than {breaks:0 A}.", $"Take a fuse that breaks at least {fault.Highest:0 A} DC at the pack's voltage.", value, limit)];
        });

    /// <summary>The controllers' capacitors are filled gently.</summary>
    public static Rule<BoardAnalysis> CapacitorsFilledGently { get; } = new(
        "inrush.precharge", "pack.precharge", "Switching on draws no more than plug and fuse take, or a resistor fills the controllers' capacitors first.",
        "Without a resistor: the current of pack, wires and capacitors in series, against the plug's short-time current, and C V²/(2 R) against a fifth of the fuse's melting I²t. With one: the same, and that it fills to 99 % within 5 s past what the controllers draw themselves.",
        Sources.FuseAgainstPulses,
        (e, needs) =>
        {
            var fault = needs.Read(e.Fault);
            var advice = needs.Read(e.Precharge);
            if (needs.Unmet)
                return null;
            var (pack, fuse) = (e.Board.Parts.Pack, e.Board.Parts.Fuse);
            var plug = pack.Plug.IsKnown ? e.Board.PlugCalled(pack.Plug.Value).CurrentPeak : default;
            var melting = fuse is { IsChosen: true, MeltingI2t.IsKnown: true } ? fuse.MeltingI2t.Value : (FusingIntegral?)null;
            var fill = advice.Filling;
            if (!pack.Precharge.IsKnown)
            {
                var spark = fill with { Resistance = fault.SparkResistance, Inductance = fault.Inductance };
                var through = FusingIntegral.FromAmpereSquaredSeconds(spark.Energy.Joules / spark.Resistance.Ohms);
                var (value, limit) = (Amount.Create(spark.PeakCurrent, "A"), plug.IsKnown ? Amount.Create(plug.Value, "A") : (Amount?)null);
                var strains = melting is { } m && through.AmpereSquaredSeconds > PulseShare * m.AmpereSquaredSeconds;
                var fused = strains ? (FormattableString)$" and {through:0 A2s} through a fuse that melts at {melting!.Value:0 A2s}" : $"";
                return plug.IsKnown && spark.PeakCurrent <= plug.Value && !strains
                    ? [CapacitorsFilledGently!.Found(Level.Fine, $"Plugging in draws up to {spark.PeakCurrent:0 A} for a moment; the plug takes {plug.Value:0 A} for a short time.", value: value, limit: limit)]
                    : [CapacitorsFilledGently!.Found(Level.Measure, $"The file names no pre-charge: plugging in draws a spark of up to {spark.PeakCurrent:0 A}{(Phrase)fused}, which pits the plug's contacts.",
                        $"Fill the capacitors first through {advice.Resistance:0.# ohm} for a pulse of {advice.Pulse:0.0 J}, {advice.Full:0.0 s} to 99 %, and name it as pack.precharge.", value, limit)];
            }

            var sized = Precharge.Sized(fill.Supply, fill.Capacitance, advice.Idle);
            var (said, most) = (Amount.Create(advice.Resistance, "ohm"), Amount.Create(sized.Resistance, "ohm"));
            var wrong =
                !advice.Reaches ? (FormattableString)$"The controllers' own {advice.Idle:0.0 W} leave {advice.Remains:0.0 V} across {advice.Resistance:0.# ohm} for ever: the contact closes on a spark all the same."
                : advice.Full > Patience ? (FormattableString)$"Through {advice.Resistance:0.# ohm} the capacitors take {advice.Full:0.0 s} to 99 %; a hand lets go sooner."
                : plug.IsKnown && advice.FirstCurrent > plug.Value ? (FormattableString)$"Through {advice.Resistance:0.# ohm} the first current is {advice.FirstCurrent:0 A}; the plug takes {plug.Value:0 A}."
                : melting is { } i2t && advice.Through.AmpereSquaredSeconds > PulseShare * i2t.AmpereSquaredSeconds ? (FormattableString)$"The first pulse lets {advice.Through:0 A2s} through; the fuse melts at {i2t:0 A2s} and wears at a fifth of that."
                : null;
            return wrong is null
                ? [CapacitorsFilledGently!.Found(Level.Fine, $"{advice.Resistance:0.# ohm} fill {fill.Capacitance:0 uF} to 95 % in {advice.Mostly:0.00 s} and to 99 % in {advice.Full:0.00 s}, first {advice.FirstCurrent:0.0 A} and {advice.FirstPower:0 W}; the one pulse is {advice.Pulse:0.0 J}, so take a part rated for pulses.", value: said, limit: most)]
                : [CapacitorsFilledGently!.Found(
                Level.Fix, wrong, $"Take {sized.Resistance:0.# ohm}, rated for a pulse of {sized.Pulse:0.0 J}.", said, most, mend: new Change("pack.precharge", FormattableString.Invariant($"{sized.Resistance.Ohms:0.###} ohm")))];
        });

    /// <summary>Thin branches of the pack have fuses of their own.</summary>
    public static Rule<BoardAnalysis> BranchesFused { get; } = new(
        "fuse.branch", "wiring", "A thin wire that hangs on the pack has a fuse of its own at the pack's end.",
        "The main fuse lets far more through than a thin wire takes: a fuse of its own no larger than the current at which its bundle reaches its limit, and no smaller than what it carries. A charge lead or a gauge lead that the parts ask for and the file does not name cannot be judged.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            needs.Read(e.Air);
            WiringRuns.AskEnds(needs, e.Board);
            if (needs.Unmet)
                return null;
            var runs = e.Harness.Runs;
            AskGauges(needs, runs.Where(r => r is { Kind: RunKind.Charge or RunKind.Gauge, Key.Length: > 0 }));
            return runs.Where(r => r is { Kind: RunKind.Charge or RunKind.Gauge, Key.Length: > 0, LargestCurrent: not null }).Select(Judge)
                .Concat(Unnamed(e.Board, runs).Select(lead => BranchesFused!.Found(
                    Level.Measure, $"The file names no {lead}, so nobody can say whether its wire has a fuse that suits it.",
                    $"Name the run under wiring, with its gauge, its length and its fuse at the pack's end.")));

            static Finding Judge(HarnessRun run)
            {
                var most = run.LargestCurrent!.Value;
                var where = run.Key + ".fuse";
                if (run.Fuse is not { } fuse)
                {
                    var size = run.SuitableFuse is { } suits && suits <= most ? (FormattableString)$"one of {suits:0.# A}" : $"one of at most {most:0 A}";
                    return BranchesFused!.Found(Level.Fix, $"{run.Mark}, {run.Name}, has no fuse of its own: a short in it is fed by the pack, and it takes {most:0 A}.", $"Put {(Phrase)size} at the pack's end, ask a qualified person, and name it as {where}.", limit: Amount.Create(most, "A"), where: where);
                }

                var (value, limit) = (Amount.Create(fuse, "A"), Amount.Create(most, "A"));
                return fuse > most ? BranchesFused!.Found(Level.Fix, $"The fuse of {fuse:0.# A} in {run.Mark} lets more through than its wire takes ({most:0 A}).", $"Take one of at most {most:0 A}, or a thicker wire.", value, limit, where)
                    : run.Duty is { } duty && fuse < duty.Lasting ? BranchesFused!.Found(Level.Fix, $"{run.Mark} carries {duty.Lasting:0.# A}; its fuse is rated {fuse:0.# A}.", $"Take one of {(run.SuitableFuse ?? duty.Lasting):0.# A}.", value, limit, where)
                    : BranchesFused!.Found(Level.Fine, $"A fuse of {fuse:0.# A} before {run.Wire}, which takes {most:0 A} in its bundle.", value: value, limit: limit, where: where);
            }
        });

    static void AskGauges(Needs needs, IEnumerable<HarnessRun> runs)
    {
        foreach (var run in runs.Where(r => r.Section is null))
            needs.Lack(run.Key + ".gauge");
    }

    // Leads of the pack that a part asks for and the file does not name.
    static IEnumerable<string> Unnamed(Board board, IReadOnlyList<HarnessRun> runs)
    {
        if (board.Parts.Charger.IsChosen && !runs.Any(r => r.Kind == RunKind.Charge))
            yield return "charge lead between charge socket and pack";
        if (runs.Any(r => r is { Kind: RunKind.Gauge, Key.Length: 0 }))
            yield return "lead between pack and charge gauge";
    }

    /// <summary>Every rule of the harness.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [FuseBreaksFault, FuseBlowsFirst, CapacitorsFilledGently, BranchesFused, BundlesStayCool, BundlesPassGlands];
}
