using System.Globalization;
using Boardwright.Documents.Drawings;
using Boardwright.Parts;
using Boardwright.Wiring;

namespace Boardwright.Documents.Pictures;

/// <summary>The wiring of a board as blocks and lines: every wire with its polarity and colour in words, every run with its mark, gauge,
/// length, plug and fuse.</summary>
/// <remarks>Lines differ in width and pattern as well as in ink, so that nothing is lost in black and white.</remarks>
public static class WiringPicture
{
    const double Width = 760, Edge = 12, Letters = 11, Small = 10;
    const double PackLeft = Edge, PackRight = 152, ControllerLeft = 384, ControllerRight = 520, MotorLeft = 662, MotorRight = Width - Edge;
    const double BlockHeight = 42, Band = 76, MotorRow = 132, Pitch = 17;

    /// <summary>Of an examined board.</summary>
    /// <param name="board">The board.</param>
    /// <param name="harness">Its harness.</param>
    public static Drawing Draw(Board board, Harness harness)
    {
        ArgumentNullException.ThrowIfNull(board);
        ArgumentNullException.ThrowIfNull(harness);
        return new WiringLayout(board, harness).Draw();
    }

    /// <summary>A run in a sentence.</summary>
    public static string Sentence(HarnessRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var wires = string.Join(", ", run.Wires.Select(w => $"{w.Carries} {w.Colour}"));
        return string.Create(CultureInfo.InvariantCulture, $"{run.Mark}, {run.Name}: {run.Wires.Count} wires {run.Wire ?? "of a gauge not known"}{(run.Cut is { } cut ? string.Create(CultureInfo.InvariantCulture, $", {cut.Metres:0.00} m") : "")}, {wires}{(run.Plug.Length > 0 ? $", plug {run.Plug}" : "")}{FuseOf(run)}.");
    }

    static string FuseOf(HarnessRun run) => run.Fuse is { } fuse ? string.Create(CultureInfo.InvariantCulture, $", fuse {fuse.Amperes:0.#} A in the plus") : "";

    sealed class WiringLayout(Board board, Harness harness)
    {
        readonly List<Shape> lines = [], blocks = [];

        public Drawing Draw()
        {
            var motors = board.Parts.Drive.Motors.Or(1);
            var controllers = Math.Max(1, PartSlot.ControllerCount(board.Parts));
            var each = (motors + controllers - 1) / controllers;
            var middle = Math.Max(controllers * each, 1) * MotorRow + (controllers - 1) * 20;
            var charges = RunsOf(RunKind.Charge);
            var (above, below) = (charges.Count + RunsOf(RunKind.Receiver).Count > 0,
                RunsOf(RunKind.Gauge).Count + RunsOf(RunKind.Switch).Count > 0);
            var top = Edge + (above ? BlockHeight + Band : 0);
            var bottom = top + middle;
            var height = bottom + (below ? Band + BlockHeight : 0) + Edge;

            Block(PackLeft, top, PackRight, bottom, ["PACK", .. PackLines()]);
            var split = (bottom - top) / controllers;
            for (var c = 0; c < controllers; c++)
                Block(ControllerLeft, top + c * split + (c > 0 ? 10 : 0), ControllerRight,
                    top + (c + 1) * split - (c < controllers - 1 ? 10 : 0),
                    [controllers == 1 ? "CONTROLLER" : Invariant($"CONTROLLER {c + 1}"), board.Parts.Controller.IsChosen ? board.Parts.Controller.Title : "not chosen"]);
            Supply(top, split, controllers);
            Motors(top, split, each, motors);
            Upright(charges.FirstOrDefault(), "CHARGE SOCKET", PackLeft, Edge, top, isAbove: true);
            Upright(RunsOf(RunKind.Receiver).FirstOrDefault(), "RECEIVER", ControllerLeft, Edge, top, isAbove: true);
            Upright(RunsOf(RunKind.Gauge).FirstOrDefault(), "CHARGE GAUGE", PackLeft, bottom + Band, bottom, isAbove: false);
            Upright(RunsOf(RunKind.Switch).FirstOrDefault(), "SWITCH", ControllerLeft, bottom + Band, bottom, isAbove: false);
            return new Drawing(Width, height, "wiring", "Wiring", string.Join(' ', harness.Runs.Select(Sentence)), [.. lines, .. blocks]);
        }

        List<HarnessRun> RunsOf(RunKind kind) => [.. harness.Runs.Where(r => r.Kind == kind)];

        IEnumerable<string> PackLines()
        {
            var (pack, cell) = (board.Parts.Pack, board.Parts.Cell);
            if (pack.Series.IsKnown && pack.Parallel.IsKnown)
                yield return Invariant($"{pack.Series.Value}s{pack.Parallel.Value}p");
            if (pack.Series.IsKnown && cell.VoltageFull.IsKnown)
                yield return Invariant($"{pack.Series.Value * cell.VoltageFull.Value.Volts:0.0} V full");
            if (pack.Protection.IsChosen)
                yield return "with " + pack.Protection.Title;
        }

        // From the pack over its fuse and plug to every controller; several of them hang on one pair of bars.
        void Supply(double top, double split, int controllers)
        {
            var runs = RunsOf(RunKind.Pack);
            if (runs.Count == 0)
                return;
            var run = runs[0];
            var (plus, minus) = (top + 52, top + 52 + 34);
            var (plusBar, minusBar) = (364.0, 350.0);
            var isSplit = controllers > 1;
            Wire(run.Wires[0], PackRight, plus, isSplit ? plusBar : ControllerLeft, plus);
            Wire(run.Wires[1], PackRight, minus, isSplit ? minusBar : ControllerLeft, minus);
            for (var c = 0; isSplit && c < controllers; c++)
            {
                var y = top + c * split + 52;
                Joint(run.Wires[0], plusBar, y);
                Joint(run.Wires[1], minusBar, y + 34);
                Wire(run.Wires[0], plusBar, y, ControllerLeft, y);
                Wire(run.Wires[1], minusBar, y + 34, ControllerLeft, y + 34);
                Sign("+", ControllerLeft - 9, y - 5);
                Sign("−", ControllerLeft - 9, y + 34 + 13);
            }

            if (isSplit)
            {
                Wire(run.Wires[0], plusBar, plus, plusBar, top + (controllers - 1) * split + 52);
                Wire(run.Wires[1], minusBar, minus, minusBar, top + (controllers - 1) * split + 86);
            }
            else
            {
                Sign("+", ControllerLeft - 9, plus - 5);
                Sign("−", ControllerLeft - 9, minus + 13);
            }

            Sign("+", PackRight + 8, plus - 5);
            Sign("−", PackRight + 8, minus + 13);
            Say(run.Wires[0].Colour, PackRight + 16, plus - 5);
            Say(run.Wires[1].Colour, PackRight + 16, minus + 13);
            Fuse(run, plus);
            if (run.Plug.Length > 0)
                Plug(run.Plug, 300, plus, minus);
            var at = minus + 32;
            foreach (var line in (string[])[Invariant($"{(runs.Count > 1 ? $"{run.Mark} to {runs[^1].Mark}" : run.Mark)}: {run.Wire ?? "gauge not known"}"), Ends(run)])
                Say(line, PackRight + 16, at += 13);
            if (board.Parts.Pack.Precharge.IsKnown)
                Say(Invariant($"pre-charge {board.Parts.Pack.Precharge.Value.Ohms:0.#} Ω beside the contact"), PackRight + 16, at + 13);
        }

        void Fuse(HarnessRun run, double y)
        {
            const double Left = 222, Right = 276;
            var says = run.Fuse is { } fuse ? Invariant($"{fuse.Amperes:0.#} A") : board.Parts.Fuse.IsChosen ? "fuse" : "";
            if (says.Length == 0)
            {
                Say("no main fuse named", Left - 12, y - 22);
                return;
            }

            blocks.Add(Patch.Rectangle(Left, y - 9, Right, y + 9, Ink.Paper));
            Frame(Left, y - 9, Right, y + 9, 1.4);
            blocks.Add(Stroke.Between(Left, y, Left + 7, y, new Pen(Ink.Text, 1.2)));
            blocks.Add(Stroke.Between(Right - 7, y, Right, y, new Pen(Ink.Text, 1.2)));
            blocks.Add(new Words(new((Left + Right) / 2, y + 3.6), says, Small, Ink.Text) { Anchor = Anchor.Middle, IsBold = true });
            blocks.Add(new Words(new((Left + Right) / 2, y - 13), "MAIN FUSE", Small, Ink.Text) { Anchor = Anchor.Middle });
        }

        void Motors(double top, double split, int each, int motors)
        {
            var (runs, sensors) = (RunsOf(RunKind.Motor), RunsOf(RunKind.Sensor));
            for (var m = 0; m < motors; m++)
            {
                var y = top + m / each * split + m % each * MotorRow + 8;
                Block(MotorLeft, y, MotorRight, y + MotorRow - 16,
                    [motors == 1 ? "MOTOR" : Invariant($"MOTOR {m + 1}"), board.Parts.Motor.IsChosen ? board.Parts.Motor.Title : "not chosen"]);
                if (m >= runs.Count)
                    continue;
                var run = runs[m];
                for (var p = 0; p < run.Wires.Count; p++)
                {
                    var at = y + 14 + p * Pitch;
                    Wire(run.Wires[p], ControllerRight, at, MotorLeft, at);
                    blocks.Add(new Words(new(ControllerRight + 20, at - 3), Invariant($"{p + 1} {run.Wires[p].Colour}"), Small, Ink.Text) { HasHalo = true });
                    for (var ring = 0; ring < run.Wires[p].Rings; ring++)
                    {
                        foreach (var x in (double[])[ControllerRight + 5 + ring * 4.5, MotorLeft - 5 - ring * 4.5])
                            blocks.Add(Stroke.Between(x, at - 4.5, x, at + 4.5, new Pen(Ink.Text, 1.8)));
                    }
                }

                if (run.Plug.Length > 0)
                    Plug("", 632, y + 14, y + 14 + (run.Wires.Count - 1) * Pitch);
                var below = y + 14 + (run.Wires.Count - 1) * Pitch + 11;
                foreach (var line in (string[])[$"{run.Mark}: {run.Wire ?? "gauge not known"}", Ends(run)])
                    Say(line, ControllerRight + 6, below += 12);
                if (m < sensors.Count)
                {
                    var at = below + 9;
                    lines.Add(Stroke.Between(ControllerRight, at, MotorLeft, at, new Pen(Ink.Quiet, 1.6, Dash.Dashed)));
                    Say($"{sensors[m].Mark}: {sensors[m].Wires.Count} sensor leads", ControllerRight + 6, at + 12);
                }
            }
        }

        // A run that leaves a block upwards or downwards.
        void Upright(HarnessRun? run, string name, double left, double y, double from, bool isAbove)
        {
            if (run is null)
                return;
            var right = left + 136;
            Block(left, y, right, y + BlockHeight,
                [name, run.Plug.Length > 0 && run.Kind is RunKind.Charge or RunKind.Receiver ? run.Plug : ""]);
            var (a, b) = isAbove ? (y + BlockHeight, from) : (from, y);
            for (var w = 0; w < run.Wires.Count; w++)
            {
                var x = left + 14 + w * 13;
                Wire(run.Wires[w], x, a, x, b, isThin: true);
                if (run.Wires[w].Carries is "+" or "−")
                    Sign(run.Wires[w].Carries, x + (w == 0 ? -6 : 7), a + 13);
            }

            // In words on the lower line, since the wires stand too close for one each.
            var at = (a + b) / 2 - 15;
            var x0 = left + 22 + run.Wires.Count * 13 - 4;
            foreach (var line in (string[])[$"{run.Mark}: {run.Wire ?? "gauge not known"}", run.Cut is { } cut ? Invariant($"{cut.Metres:0.00} m") : "length as it lies",
                string.Join(", ", run.Wires.Select(w => $"{w.Carries} {w.Colour}").Distinct(StringComparer.Ordinal)),
                    run.Fuse is { } fuse ? Invariant($"fuse {fuse.Amperes:0.#} A at the pack") : run.SuitableFuse is { } suits ? Invariant($"no fuse named; {suits.Amperes:0.#} A would suit") : ""])
                Say(line, x0, at += 12);
        }

        static string Ends(HarnessRun run) =>
            string.Join(", ", new[] { run.Cut is { } cut ? Invariant($"{cut.Metres:0.00} m") : "length not known", run.Plug }.Where(s => s.Length > 0));

        void Wire(HarnessWire wire, double x1, double y1, double x2, double y2, bool isThin = false) =>
            lines.Add(Stroke.Between(x1, y1, x2, y2, new Pen(InkOf(wire), isThin ? 1.6 : 2.6, DashOf(wire))));

        void Joint(HarnessWire wire, double x, double y) => blocks.Add(Circle.Mark(new(x, y), 3.2, InkOf(wire), InkOf(wire)));

        void Plug(string name, double x, double y1, double y2)
        {
            const double half = 7, rim = 8;
            blocks.Add(Patch.Rectangle(x - half, y1 - rim, x + half, y2 + rim, Ink.Paper));
            Frame(x - half, y1 - rim, x + half, y2 + rim, 1.4);
            blocks.Add(Stroke.Between(x, y1 - rim, x, y2 + rim, new Pen(Ink.Text, 1, Dash.Dashed)));
            if (name.Length > 0)
                blocks.Add(new Words(new(x, y2 + rim + 12), Cut(name, 120, Small), Small, Ink.Text) { Anchor = Anchor.Middle });
        }

        void Block(double left, double y1, double right, double y2, IEnumerable<string> says)
        {
            blocks.Add(Patch.Rectangle(left, y1, right, y2, Ink.Paper));
            Frame(left, y1, right, y2, 1.8);
            var at = y1 + 4;
            var isFirst = true;
            foreach (var line in says.Where(s => s.Length > 0)
                .SelectMany((s, i) => Lettering.Wrapped(s, right - left - 12, i == 0 ? Letters : Small, i == 0)))
            {
                at += 13;
                if (at > y2 - 3)
                    break;
                blocks.Add(new Words(new((left + right) / 2, at), Cut(line, right - left - 12, isFirst ? Letters : Small),
                    isFirst ? Letters : Small, Ink.Text)
                { Anchor = Anchor.Middle, IsBold = isFirst });
                isFirst = false;
            }
        }

        void Frame(double left, double y1, double right, double y2, double width) =>
            blocks.Add(new Stroke(new Drawings.Point[] { new(left, y1), new(right, y1), new(right, y2), new(left, y2), new(left, y1) },
            new Pen(Ink.Text, width)));

        void Sign(string sign, double x, double y) =>
            blocks.Add(new Words(new(x, y), sign, 13, Ink.Text) { Anchor = Anchor.Middle, IsBold = true });

        void Say(string text, double x, double y)
        {
            if (text.Length > 0)
                blocks.Add(new Words(new(x, y), Cut(text, Width - Edge - x, Small), Small, Ink.Text) { HasHalo = true });
        }

        // A name without a blank may be longer than any room.
        static string Cut(string text, double room, double size)
        {
            if (Lettering.WidthOf(text, size, isBold: true) <= room)
                return text;
            var length = text.Length;
            while (length > 1 && Lettering.WidthOf(text[..length] + "…", size, isBold: true) > room)
                length--;
            return text[..length] + "…";
        }

        static Ink InkOf(HarnessWire wire) => wire.Code switch
        {
            "RD" => Ink.Hue2,
            "YE" => Ink.Hue6,
            "BU" => Ink.Hue1,
            "VT" => Ink.Hue4,
            "GY" => Ink.Quiet,
            "WH" => Ink.Frame,
            _ => Ink.Text,
        };

        static Dash DashOf(HarnessWire wire) => wire.Code switch
        {
            "YE" => Dash.Long,
            "BU" => Dash.DashDot,
            "GY" => Dash.Dashed,
            "WH" => Dash.Dotted,
            _ => Dash.Solid,
        };
    }
}
