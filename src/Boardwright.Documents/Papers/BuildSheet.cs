using Boardwright.Boxes;
using Boardwright.Builds;
using Boardwright.Drivetrains;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;
using Boardwright.Wiring;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>The build sheet: how this board goes together, step by step, with what to tick and to write down.</summary>
static class BuildSheet
{
    public static IReadOnlyList<Block> Compose(PaperContext gathering)
    {
        List<Block> blocks = [];
        if (gathering.Order.BoardAddress is { } address)
            blocks.Add(new CodeBlock(address, "The board's page: its figures, revisions and papers."));
        else
            blocks.Add(new ParagraphBlock("No code is printed, since no shop address was given.", IsQuiet: true));
        blocks.AddRange(Open(gathering));
        blocks.AddRange(DeckAndBox(gathering));
        blocks.AddRange(Rolling(gathering));
        blocks.AddRange(Drive(gathering));
        blocks.AddRange(Pack(gathering));
        blocks.AddRange(Wires(gathering));
        blocks.AddRange(Closing(gathering));
        return blocks;
    }

    static IEnumerable<Block> Open(PaperContext gathering)
    {
        var open = gathering.Examination.Findings.Where(f => f.Level is Level.Stop or Level.Fix).ToList();
        yield return new HeadingBlock("Before anything is drilled");
        if (open.Count > 0)
        {
            yield return new CautionBlock(Invariant($"{Count(open.Count, "finding")} {(open.Count == 1 ? "is" : "are")} open on this board. Mend the board file and print this sheet again, or write down beside each why it is built all the same."));
            yield return new TableBlock(
                [new("Level", 1.2), new("What was found", 6), new("Remedy", 6), new("Why it stays", 3)],
                [.. open.Select(f => (IReadOnlyList<string?>)[f.Level == Level.Stop ? "STOP" : "fix", f.Says.In(gathering.Order.Units),
                f.Remedy.In(gathering.Order.Units), null])]);
        }

        yield return new ChecksBlock(
        [
            new("Parts list and cut list are ticked: everything lies ready.") { Id = "parts.ready" },
            new("Motor, shaft, pulley bore, key, belt and hanger were measured and agree with the board file.") { Id = "parts.measured" },
            new("Drill template printed at 100 %, its lines measured on every page.", "100 mm within 0.5 mm", "mm") { Id = "template.scale", Range = PassRange.In("mm", 99.5, 100.5) },
        ]);
    }

    static IEnumerable<Block> DeckAndBox(PaperContext gathering)
    {
        if (gathering.Order.Pattern is { IsBeside: true })
            yield break;
        yield return new HeadingBlock("Deck and box");
        var pattern = gathering.Order.Pattern;
        if (!pattern.IsKnown)
        {
            gathering.Format(pattern, _ => null);
            yield return new ParagraphBlock("The bolt pattern cannot be said yet; the drill template waits for " + JoinWords(pattern.Missing) + ".");
            yield break;
        }

        var p = pattern.Value;
        var into = p.IsWoodScrew ? "pilot holes" : "holes for the inserts";
        List<CheckLine> checks =
        [
            new(Invariant($"Tape the sheet SEEN FROM OUTSIDE to the deck's underside, its long centre line on the deck's, nose to nose. Prick every cross through.")) { Id = "deck.template" },
            new(Invariant($"Drill {p.Places.Count} {into} Ø {p.DeckHole.Millimetres:0.0} mm through the deck, square to it, scrap wood behind; seal the bare wood.{(p.IsDeckHoleUsual ? " This size is a usual one: measure the insert first." : "")}"), "B1 to its neighbours as in the table", "mm") { Id = "deck.holes" },
            new(Invariant($"Drill {p.Places.Count} clearance holes Ø {p.BoxHole.Millimetres:0.0} mm into the flange, {p.Inset.Millimetres:0.0} mm from its edge.")) { Id = "box.holes" },
        ];
        if (!p.IsWoodScrew)
            checks.Add(new(Invariant($"Press the {p.Thread.Name} inserts in from the deck's upper side, flange flush, so that the bolt pulls it into the wood.")) { Id = "deck.inserts" });
        checks.Add(new("Cut the openings in the walls; deburr; try every gland, socket and switch dry.") { Id = "box.openings" });
        yield return new ChecksBlock(checks);
        yield return new TableBlock(
            [new("Hole", 1), new("Towards the nose, mm", 2, true), new("Towards the right-hand side, mm", 2, true), new("Measured", 2)],
            [.. p.Places.Select(b => (IReadOnlyList<string?>)[b.Name, Invariant($"{b.X.Millimetres:0.0}"), Invariant($"{b.Y.Millimetres:0.0}"), null])]);
        yield return new ParagraphBlock("From the middle of the box; facing the nose, the right-hand side counts up.", IsQuiet: true);
        foreach (var finding in PaperSet.BoltFindings(gathering.Examination))
            yield return new ParagraphBlock("To consider: " + gathering.Words(finding));
    }

    static IEnumerable<Block> Rolling(PaperContext gathering)
    {
        var parts = gathering.Parts;
        yield return new HeadingBlock("Trucks and wheels");
        yield return new ChecksBlock(
        [
            new(Invariant($"Bolt the trucks on ({Or(gathering.Format(parts.Deck.HolePattern))} mm holes), crosswise, until the deck's surface just gives under the washers; common practice, no torque is published for wood."), "", "N·m") { Id = "trucks.bolts" },
            new(gathering.Say($"Wheelbase, axle to axle: {Or(gathering.Format(parts.Deck.Wheelbase, w => $"{w.Items[0]:0 mm}"))}."), "", "mm") { Id = "trucks.wheelbase" },
            new("Bearings with the spacer between them; tighten the axle nuts, then back off until the wheel runs free without play. Lock nuts show a thread beyond their ring.") { Id = "wheels.bearings" },
            new("Kingpin nuts: bushings sit, nothing rattles, the deck comes back to level from both sides.") { Id = "trucks.kingpins" },
            new("Lean the deck to its stop on both sides, loaded: no wheel touches deck, box or belt.") { Id = "trucks.lean" },
        ]);
    }

    static IEnumerable<Block> Drive(PaperContext gathering)
    {
        var (parts, examination) = (gathering.Parts, gathering.Examination);
        yield return new HeadingBlock("Motors and drive");
        List<CheckLine> checks = [];
        if (!examination.IsHub)
        {
            if (parts.Mount.IsChosen)
            {
                var angle = gathering.Format(examination.MountAngle, a => $"{a.Degrees:0}° above the horizontal");
                checks.Add(new(Invariant($"Mounts on the hanger, {Or(angle)}, square to the axle; clamp screws evenly, threads with medium thread lock.")) { Id = "mounts.set" });
            }

            var bolt = gathering.Format(parts.Mount.Bolt);
            checks.Add(new(Invariant($"Motor to mount: {Or(gathering.Format(parts.Mount.BoltCount, n => $"{n}"))} × {Or(bolt)}, crosswise, medium thread lock; the bolt ends before the winding."), bolt is null ? "" : MotorBolts.Compute(parts) is { } bolts ? $"{bolts.TorqueText} ({bolts.Strength.Name}; three quarters of the proof load, K = 0.20, good to 35 %)" : "as the motor's maker states", "N·m") { Id = "motors.bolts" });
        }

        if (examination.IsBelt)
        {
            var mesh = gathering.Figure(Catalogue.TeethInMesh, "0.0");
            var place = gathering.Format(examination.AxialStack, s => $"{s.PulleyInner.Minus(s.Plate).Nominal:0.0 mm}");
            double? line = examination.Centre.IsKnown
                ? Math.Floor(AxialStackUp.Allowed(examination.Centre.Value).Millimetres * 10) / 10 : null;
            checks.AddRange(
            [
                new(Invariant($"Motor pulley ({Or(gathering.Format(parts.MotorPulley.Teeth, t => $"{t} teeth"))}, {Or(gathering.Format(parts.MotorPulley.Fixing, FixingOf))}) on the shaft: {Or(KeyOf(gathering))}. Set screws on a flat or on the key, strong thread lock, {Or(SetScrewTorque(), "")}. Its inner end stands {Or(place)} off the plate.")) { Id = "pulleys.motor" },
                new(Invariant($"Wheel pulley ({Or(gathering.Format(parts.WheelPulley.Teeth, t => $"{t} teeth"))}) on the wheel's core; it runs true."), "less than 0.5 mm of wobble at the rim", "mm") { Id = "pulleys.wheel", Range = AtMost(0.5, "mm") },
                new("Both pulleys in line, a straight edge across their toothed faces.", line is { } off ? Invariant($"at most {off:0.0} mm off, a quarter of a degree") : "at most a quarter of a degree off", "mm") { Id = "pulleys.line", Range = line is { } most ? AtMost(most, "mm") : null },
                new(gathering.Say($"Belt: {Or(gathering.Figure(Catalogue.BeltTeeth, "0"))} teeth, {Or(gathering.Format(parts.Belt.Width, w => $"{w:0.# mm} wide"))}. Shaft to axle when just taut: {Or(gathering.Figure(Catalogue.CentreDistance, "0.0"))}, {Or(mesh)} teeth in mesh."), "", "mm") { Id = "belts.place" },
            ]);
            var (tension, note) = (gathering.Figure(Catalogue.StaticTension, "0"), examination.BeltLoad);
            var noteRange = note.IsKnown ? NoteBetween(note.Value.Frequency.Hertz) : null;
            for (var m = 1; m <= parts.Drive.Motors.Or(1); m++)
                checks.Add(new(Invariant($"Belt {m}: set {Or(tension)} in each span (free span {Or(gathering.Figure(Catalogue.Span, "0.0"))}). Pluck the span and read its note with a telephone."), noteRange is null ? "" : NoteRange(note.Value.Frequency.Hertz),
                    "Hz")
                { Id = Invariant($"belt-{m}.note"), Range = noteRange });
        }
        else if (examination.IsGear)
        {
            checks.Add(new(Invariant($"Gears ({Or(gathering.Figure(Catalogue.Ratio, "0.00"))} to 1): a strip of paper between the teeth sets the play; turn a whole turn by hand, nothing binds."), "a little play at every tooth, without a hard place") { Id = "gears.play" });
            checks.Add(new("Grease or oil as the gearbox's maker states; covers closed against grit.") { Id = "gears.oil" });
        }

        checks.Add(new("Turn every driven wheel by hand, both ways: even drag, no grinding, leads clear of what turns.") { Id = "drive.turns" });
        yield return new ChecksBlock(checks);
        if (examination.IsBelt)
            yield return new ParagraphBlock("The note rests on one maker's belt mass; a tension read from it is good to some 15 %. Check it again after the first 20 km.", IsQuiet: true);
    }

    static string? KeyOf(PaperContext gathering) => gathering.Parts.MotorPulley.Fixing is { IsKnown: true, Value: Fixing.SetScrew } ? "without a key"
        : gathering.Format(gathering.Parts.Motor.KeyWidth, w => $"key {w:0.# mm} wide, pushed home");

    static FormattableString FixingOf(Fixing fixing) => fixing switch
    {
        Fixing.Key => $"held by its key",
        Fixing.SetScrew => $"held by set screws alone",
        _ => $"held by key and set screws",
    };

    static string? SetScrewTorque() =>
        SetScrew.SeatingTorque(Length.FromMillimetres(4)) is { } m4 && SetScrew.SeatingTorque(Length.FromMillimetres(5)) is { } m5
        ? Invariant($"M4 {m4.NewtonMetres:0.0} N·m, M5 {m5.NewtonMetres:0.0} N·m") : null;

    /// <summary>From the computed note up to that of a fifth more tension, into which a new belt settles.</summary>
    internal static string NoteRange(double hertz) => Invariant($"{hertz:0} to {NoteGreatest(hertz):0} Hz");
    /// <summary>The same in numbers.</summary>
    internal static PassRange NoteBetween(double hertz) => PassRange.In("Hz", hertz, NoteGreatest(hertz), decimals: 0);

    static double NoteGreatest(double hertz) => hertz * Math.Sqrt(1.2);

    static IEnumerable<Block> Pack(PaperContext gathering)
    {
        var parts = gathering.Parts;
        yield return new HeadingBlock("Pack");
        yield return new CautionBlock(PaperCautions.Pack);
        var series = parts.Pack.Series.Or(0);
        yield return new ChecksBlock(
        [
            new(Invariant($"{Or(gathering.Format(parts.Pack.Series, s => $"{s}"))}s{Or(gathering.Format(parts.Pack.Parallel, p => $"{p}"))}p of {parts.Cell.Title}: every cell of one kind and one batch, measured at rest before joining."), "all within 10 mV of one another (common practice); sort out what is not", "mV") { Id = "pack.cells", Range = AtMost(10, "mV") },
            new(Invariant($"Protection {(parts.Pack.Protection.IsChosen ? parts.Pack.Protection.Title : "________")}: balance leads in order, each checked against the one below before the plug goes in.")) { Id = "pack.protection" },
            new(Invariant($"Main fuse {Or(parts.Fuse.IsChosen ? gathering.Format(parts.Fuse.Rating, a => $"{a.Amperes:0.#} A") : null, "none chosen")} as near to the pack's plus as it goes.")) { Id = "pack.fuse" },
            new("Pack wrapped, padded against the box, nothing sharp near it; balance leads cannot chafe.") { Id = "pack.wrapped" },
        ]);
        if (series > 0)
        {
            yield return new ParagraphBlock("Rest voltage of each group, an hour after the last current:");
            const int Columns = 4;
            var rows = Enumerable.Range(0, (series + Columns - 1) / Columns).Select(r => (IReadOnlyList<string?>)
                [.. Enumerable.Range(0, Columns)
                .SelectMany(c => r * Columns + c < series ? new string?[] { Invariant($"{r * Columns + c + 1}"), null } : ["", ""])]);
            yield return new TableBlock(
                [.. Enumerable.Range(0, Columns).SelectMany(_ => new TableColumn[] { new("Group", 1), new("V", 2) })], [.. rows]);
            yield return new ChecksBlock([new("Highest less lowest group.", "20 mV at most at rest (common practice)", "mV") { Id = "pack.groups-built", Range = AtMost(20, "mV") }]);
        }
    }

    static IEnumerable<Block> Wires(PaperContext gathering)
    {
        yield return new HeadingBlock("Wires and controller");
        foreach (var run in gathering.Board.Wiring)
        {
            gathering.Format(run.Gauge, _ => $"");
            gathering.Format(run.Length, _ => $"");
        }

        yield return new PictureBlock(Pictures.WiringPicture.Draw(gathering.Board, gathering.Order.Harness));
        yield return new ParagraphBlock("Marks are those of the cut list and the wiring sheet.", IsQuiet: true);
        yield return new ChecksBlock([.. WiringSheet.Steps(gathering.Order.Harness)]);
        if (gathering.Examination.Precharge.IsKnown)
        {
            var precharge = gathering.Examination.Precharge.Value;
            yield return new ChecksBlock([new(Invariant($"Pre-charge: {precharge.Resistance.Ohms:0.#} Ω{(gathering.Parts.Pack.Precharge.IsKnown ? "" : " would suit, none is named in the board file")}, rated for a pulse of {precharge.Pulse.Joules:0.0} J; hold {precharge.Full.Seconds:0.0} s, then close the main contact."), "no spark at the contact", "V left") { Id = "precharge.fill" }]);
        }

        yield return new ChecksBlock(
        [
            new("Every joint crimped with the tool for its terminal or soldered and sleeved; pulled by hand; no strand astray.") { Id = "wires.joints" },
            new("Plus and minus of every plug measured, not judged by colour, before it is mated.", "same sign on both sides") { Id = "wires.polarity" },
            new(Invariant($"Controller ({Count(PartSlot.ControllerCount(gathering.Parts), "piece")}: {gathering.Parts.Controller.Title}) fixed where air or metal takes its heat away; leads strain-relieved.")) { Id = "controller.fixed" },
            new("Values of the limits sheet entered, read back and written down there.") { Id = "controller.limits" },
            new("Bench list done, every line ticked.") { Id = "bench.done" },
        ]);
    }

    static IEnumerable<Block> Closing(PaperContext gathering)
    {
        yield return new HeadingBlock("Closing up");
        var thickness = gathering.Parts.Box.IsChosen ? gathering.Parts.Box.GasketThickness : default;
        if (gathering.Parts.Box.IsChosen)
        {
            gathering.Format(thickness, _ => $"");
            var closed = thickness.IsKnown ? Invariant($" {thickness.Value.Millimetres:0.#} mm strip pressed to {GasketSqueeze.ClosedHeight(thickness.Value, Boxes.BoltPattern.SqueezeAtBolts).Millimetres:0.0} mm (40 %)") : "";
            yield return new ChecksBlock(
            [
                new($"Gasket clean and whole, its joint on a long side. Tighten the box's bolts in turns, from the middle to the corners, until the gasket is squeezed and no further:{closed}.", "the same gap all around, 25 to 50 % squeeze", "mm") { Id = "box.gasket" },
                new("Glands closed on their cables, cables bow down before they enter, caps on sockets. The box has no protection rating unless this one was tested.") { Id = "box.glands" },
            ]);
        }

        yield return new ChecksBlock(
        [
            new(Invariant($"Weigh the board. Computed: {Or(gathering.Figure(Catalogue.BoardMass))}."), gathering.Between(Catalogue.BoardMass) is { } mass ? mass : "", "kg") { Id = "board.mass",
                Range = gathering.RangeOf(Catalogue.BoardMass) },
            new("Label on the board, papers in the customer's hand, owner's page read together.") { Id = "board.papers" },
        ]);
        yield return new CautionBlock(PaperCautions.Brakes);
        yield return new CautionBlock(PaperCautions.Law);
        yield return new SignaturesBlock(["Built by", "Checked by", "Date", "Board no."]);
    }
}
