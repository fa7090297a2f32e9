using Boardwright.Documents.Pictures;
using Boardwright.Examinations;
using Boardwright.Parts;
using Boardwright.Rules;
using Boardwright.Wiring;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>The wiring sheet: the diagram, what every run does under current, fuse and first moment; and the lists of wire for other
/// papers.</summary>
static class WiringSheet
{
    public static IReadOnlyList<Block> Compose(PaperContext gathering)
    {
        var harness = gathering.Order.Harness;
        Lacking(gathering);
        List<Block> blocks =
        [
            new CautionBlock(PaperCautions.Wiring),
            new PictureBlock(WiringPicture.Draw(gathering.Board, harness)),
            new ParagraphBlock("Phases are told apart by rings of dark tape at both ends, one to three; which phase goes to which only decides which way a motor turns. Colours are words here, and letters on the cut list (IEC 60757, from memory); measure the polarity of every plug before it is mated, whatever its colour.", IsQuiet: true),
            new HeadingBlock("Under current"),
            Loads(harness),
            new ParagraphBlock(Invariant($"In each wire, root of the mean square; lasting {harness.Duty.Says}. The copper's temperature is that of the bundle in free air, were the current to last; in a closed box or under foam it gets hotter. Drop is there and back for a pair and in one wire for a phase; loss is of all wires and contacts of the run."), IsQuiet: true),
        ];
        blocks.AddRange(FuseAndPrecharge(gathering));
        return blocks;
    }

    static void Lacking(PaperContext gathering)
    {
        foreach (var run in gathering.Board.Wiring)
        {
            gathering.Format(run.Gauge, _ => $"");
            gathering.Format(run.Length, _ => $"");
        }
    }

    static TableBlock Loads(Harness harness)
    {
        var runs = harness.Runs.Where(r => r.Duty is not null).ToList();
        return new TableBlock(
            [new("Run", 3.4), new("Lasting", 1.2, true), new("Drop", 1.2, true), new("Loss", 1.2, true), new("Copper", 1.2, true), new("Peak", 1.2, true),
            new("Drop", 1.2, true), new("Loss", 1.2, true), new("Copper", 1.3, true), new("For ever at most", 1.5, true)],
            [.. runs.Select(run =>
            {
                var (lasting, peak) = (run.Under(run.Duty!.Lasting), run.Under(run.Duty.Peak));
                return (IReadOnlyList<string?>)[$"{run.Mark} {run.Name}", .. Of(lasting, run.Duty.Lasting), .. Of(peak, run.Duty.Peak),
                    run.LargestCurrent is { } most ? Invariant($"{most.Amperes:0} A") : null];
            })]);

        static IEnumerable<string?> Of(RunLoad? load, Current current) =>
        [
            Invariant($"{current.Amperes:0.0} A"),
            load?.Drop is { } drop ? Invariant($"{drop.Volts * 1000:0} mV") : null,
            load?.Loss is { } loss ? Invariant($"{loss.Watts:0.0} W") : null,
            load is null ? null : load.Copper is { } copper ? Invariant($"{copper.Celsius:0} °C") : "no end",
        ];
    }

    static IEnumerable<Block> FuseAndPrecharge(PaperContext gathering)
    {
        var examination = gathering.Examination;
        gathering.Format(examination.Fault, _ => null);
        gathering.Format(examination.Precharge, _ => null);
        yield return new HeadingBlock("Fuse and first moment");
        List<IReadOnlyList<string?>> rows = [["Main fuse", gathering.Parts.Fuse.IsChosen ? Invariant($"{gathering.Parts.Fuse.Title}, {Or(gathering.Format(gathering.Parts.Fuse.Rating, a => $"{a.Amperes:0.#} A"))}, {Or(gathering.Format(gathering.Parts.Fuse.Voltage, v => $"{v.Volts:0} V"))}, as near to the pack's plus as it goes") : "none named in the board file"]];
        if (examination.Fault.IsKnown)
        {
            var fault = examination.Fault.Value;
            rows.Add(["Dead short, full pack", Invariant($"about {fault.Highest.Amperes:0} A: what the fuse has to break")]);
            rows.Add(["Short at the wire's end, half charge", Invariant($"about {fault.Lowest.Amperes:0} A: what has to be enough to blow it")]);
        }

        if (examination.Precharge.IsKnown)
        {
            var (precharge, isStated) = (examination.Precharge.Value, gathering.Parts.Pack.Precharge.IsKnown);
            rows.Add([isStated ? "Pre-charge resistor" : "Pre-charge resistor that would suit; none is named", Invariant($"{precharge.Resistance.Ohms:0.#} Ω, for a pulse of {precharge.Pulse.Joules:0.0} J that begins with {precharge.FirstCurrent.Amperes:0.0} A and {precharge.FirstPower.Watts:0} W")]);
            rows.Add(["Filled to 95 %, to 99 %", Invariant($"{precharge.Mostly.Seconds:0.00} s, {precharge.Full.Seconds:0.00} s")]);
            rows.Add(["Left across it for ever", Invariant($"{precharge.Remains.Volts:0.0} V, which the controllers' own {precharge.Idle.Watts:0.#} W keep up")]);
        }

        yield return new TableBlock([new("", 3), new("", 7)], rows);
        var rules = HarnessRules.All.Append(ElectricalRules.FuseProtectsWire).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var findings = examination.Findings.Where(f => rules.Contains(f.Rule)).ToList();
        if (findings.Count > 0)
            yield return new PointsBlock([.. findings.Select(gathering.Words)]);
        yield return new ParagraphBlock("Hold the pre-charge no longer than it takes: a controller that is switched on, or faulty, keeps the resistor under full voltage, and it burns.", IsQuiet: true);
    }

    /// <summary>Wire as it is cut.</summary>
    public static IEnumerable<Block> CutList(PaperContext gathering)
    {
        var runs = gathering.Order.Harness.Runs;
        Lacking(gathering);
        if (runs.Count == 0)
        {
            yield return new ParagraphBlock("The board file names no runs of wire.");
            yield break;
        }

        yield return new TableBlock(
            [new("Run", 0.9), new("From, to", 2.6), new("Wire", 2.2), new("Pieces and colours", 3), new("Each", 1.3, true), new("Ends", 2.2), new("Cut", 0.8)],
            [.. runs.Select(r => (IReadOnlyList<string?>)[r.Mark, r.Name, r.Wire, Colours(r), r.Cut is { } cut ? Invariant($"{cut.Metres:0.00} m") : null,
            EndsOf(r), null])]);
        var laid = runs.Where(r => r is { Along: not null }).ToList();
        foreach (var run in laid.Where(r => r.Key.Length > 0 && r.Stated is { } s && s < r.Needed!.Value))
            gathering.Object($"{run.Mark}, {run.Name}: the file says {run.Stated!.Value:0 mm}, the {(gathering.Board.Layout.Count == 0 ? "proposed " : "")}layout of the box asks {run.Needed!.Value:0 mm} with its loop; the list has that.");
        if (laid.Count > 0)
        {
            yield return new TableBlock(
                [new("Run", 0.9), new(gathering.Board.Layout.Count == 0 ? "Along the proposed layout" : "Along the layout of the box", 2.6, true), new("Loop", 1.6, true), new("Needs", 1.6, true),
                new("The file says", 2, true), new("", 3)],
                [.. laid.Select(r => (IReadOnlyList<string?>)[r.Mark, Invariant($"{r.Along!.Value.Metres:0.00} m"), Invariant($"{r.Loop.Metres:0.00} m"), Invariant($"{r.Needed!.Value.Metres:0.00} m"),
                r is { Stated: { } stated, Key.Length: > 0 } ? Invariant($"{stated.Metres:0.00} m") : "",
                    r.Key.Length > 0 && r.Stated is { } s && s < r.Needed!.Value ? "too short: cut what it needs" : ""])]);
        }

        yield return new ParagraphBlock("Lengths are one way, from terminal to terminal, with the loop that lets a plug be pulled: try them with string first. Sensor and receiver leads come with their parts.", IsQuiet: true);
        yield return new HeadingBlock("Sleeve and shrink");
        yield return new TableBlock(
            [new("Run", 0.9), new("Over one wire", 1.7, true), new("Over all", 1.6, true), new("Braided sleeve", 2.6, true), new("Shrink at each wire's end", 3), new("Shrink at the sleeve's ends", 3), new("Ready", 1)],
            [.. runs.Where(r => r.Bundle is not null).Select(r =>
            {
                var bundle = r.Bundle!;
                return (IReadOnlyList<string?>)
                [
                    r.Mark, Invariant($"{bundle.OuterDiameter.Millimetres:0.0} mm{(r.IsOuterDiameterGuessed ? " *" : "")}"), Invariant($"{bundle.Diameter.Millimetres:0.0} mm"),
                    bundle.Sleeve is { } sleeve ? Invariant($"{sleeve.Millimetres:0} mm{(r.Cut is { } cut ? Invariant($", {cut.Metres:0.00} m") : "")}") : "open, laced",
                    Shrink(bundle.OuterDiameter, r.Wires.Count * 2, 25), Shrink(bundle.Diameter, 2, 30), null,
                ];
            })]);
        yield return new ParagraphBlock("* guessed from the gauge (common practice, no source): put a caliper on the wire in hand. Shrink tube is cut 15 % longer than what it covers; a terminal wider than the wire asks for the next size.", IsQuiet: true);
        var sums = runs.Where(r => r is { Wire: not null, Cut: not null, Kind: not (RunKind.Sensor or RunKind.Receiver) })
            .SelectMany(r => r.Wires.Select(w => (Wire: r.Wire!, w.Colour, Metres: r.Cut!.Value.Metres))).GroupBy(w => (w.Wire, w.Colour))
            .ToList();
        yield return new TableBlock(
            [new("Wire", 4), new("Colour", 2), new("Together", 2, true), new("Take, with a tenth to spare", 3, true)],
            [.. sums.Select(g => (IReadOnlyList<string?>)[g.Key.Wire, g.Key.Colour, Invariant($"{g.Sum(w => w.Metres):0.00} m"), Invariant($"{Math.Ceiling(g.Sum(w => w.Metres) * 11 - 1e-9) / 10:0.0} m")])]);
    }

    /// <summary>Every run in a line, to be built and checked.</summary>
    public static IEnumerable<CheckLine> Steps(Harness harness) => harness.Runs.Select(run => new CheckLine(
        Invariant($"{run.Mark}, {run.Name}: {run.Wire ?? "________"}, {Colours(run)}, {(run.Cut is { } cut ? Invariant($"{cut.Metres:0.00} m") : "________")}; {EndsOf(run)}. Crimped or soldered, sleeved, pulled."),
        run.IsPair ? "plus and minus measured at both ends" : run.Kind == RunKind.Motor ? "rings 1, 2, 3 alike at both ends" : "")
    { Id = Invariant($"wires.{run.Mark.ToLowerInvariant()}") });

    static string Colours(HarnessRun run) =>
        string.Join(", ", run.Wires.GroupBy(w => (w.Colour, w.Code, w.Carries)).Select(g => Invariant($"{g.Count()} {g.Key.Colour} {g.Key.Code} ({g.Key.Carries})")));

    static string EndsOf(HarnessRun run)
    {
        var fuse = run.Fuse is { } rating ? Invariant($"fuse {rating.Amperes:0.#} A in the plus") : run.SuitableFuse is { } suits ? Invariant($"no fuse named; {suits.Amperes:0.#} A at the pack would suit") : "";
        return string.Join("; ", new[] { run.Plug, fuse }.Where(s => s.Length > 0)) is { Length: > 0 } ends ? ends : "soldered or crimped";
    }

    static string? Shrink(Length over, int pieces, double millimetres) =>
        Bundle.ShrinkOver(over) is { } tube ? Invariant($"{pieces} × {tube.Supplied.Millimetres:0.0} mm, {tube.Ratio}:1, {millimetres * ShrinkTube.Longer:0} mm long") : null;
}
