using System.CommandLine;
using System.Globalization;
using Boardwright.App.Reports;
using Boardwright.App.ShopWork;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Logs;
using Boardwright.Findings;
using Boardwright.Lessons;
using Boardwright.Logs;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Road;
using Boardwright.Shops;
using Boardwright.Spreads;

namespace Boardwright.App.Commands;

/// <summary><c>learn</c>: tells from logged rides what rolls, drags, sags and warms, each with the range it is known to.</summary>
static class LearnCommand
{
    const int BadRowsShown = 5;

    /// <summary>What is known beside the logs.</summary>
    sealed record LogSettings(
        Examination? Board, Mass? Mass, Speed? Wind, Fraction? Slope, Fraction Swing, double Scale, double ScaleSpread, LogWishes Wishes,
        ReplayConditions Replay)
    {
        /// <summary>What can be taken into the board, as far as it was learnt.</summary>
        public List<Lesson> Lessons { get; } = [];

        /// <summary>Adds a lesson; of two on the same the better known one stays.</summary>
        public void Learn(Lesson lesson)
        {
            var at = Lessons.FindIndex(l => l.Name == lesson.Name);
            if (at < 0) Lessons.Add(lesson);
            else if (lesson.CanBeTaken
                && (!Lessons[at].CanBeTaken || lesson.Entries[0].Spread < Lessons[at].Entries[0].Spread)) Lessons[at] = lesson;
        }
    }

    /// <summary>What is taken, and where to.</summary>
    sealed record LessonTarget(string? BoardFile, string? Kept, string? Shop, string[] Names, bool IntoShelf);

    /// <summary>The command.</summary>
    /// <param name="terminal">Where to write.</param>
    public static Command Create(Terminal terminal)
    {
        var logs = new Argument<string[]>("LOG") { Description = "Logs of rides: tables of any logger (CSV) or GPX.", Arity = ArgumentArity.OneOrMore };
        var board = new Option<string>("--board") { Description = "The board file, for masses, pack and drive.", HelpName = "FILE" };
        board.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var mass = Quantity("--mass", "Mass of rider, gear and board together, such as \"92 kg\"; else the board file's.", "MASS", Mass.Dimension);
        var wind = Quantity("--wind", "Wind against the first run's way, such as \"0 m/s\"; needed for runs of one direction.", "SPEED", Speed.Dimension);
        var slope = Quantity("--slope", "Rise of the road in the first run's way, such as \"0.2 %\".", "GRADE", Fraction.Dimension);
        var swing = Quantity("--swing", "By how much the slope swings along the road, such as \"0.05 %\"; widens rolling and drag.", "GRADE", Fraction.Dimension);
        var scale = new Option<string>("--speed-scale") { Description = "Logged speed over true speed, and how well it is known, such as 1.02±0.005; 1±0.01 where nobody measured it.", HelpName = "SCALE" };
        scale.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } text && Scale(text) is null)
                result.AddError("--speed-scale wants a number near 1, and after ± how well it is known, such as 1.02±0.005.");
        });
        var log = new LogOptions();
        var grade = Quantity("--grade", "Rise of the road all along, for the prediction, such as \"0 %\" for a level one; else by the log's heights.", "GRADE", Fraction.Dimension);
        var charge = Quantity("--charge", "Charge at the start of the ride, for the prediction, such as \"95 %\"; else by the pack's voltage at rest, or by the logger.", "CHARGE", Fraction.Dimension);
        var kept = new Option<string>("--kept") { Description = "Name of a board in the shop, in place of a board file.", HelpName = "NAME" };
        var shop = new Option<string>("--shop") { Description = "The shop of --kept: a file, or the connection string of a PostgreSQL database.", HelpName = "PLACE" };
        var take = new Option<string[]>("--take") { Description = "Writes what was learnt into the board as measured, with its spread: rolling, drag-area, pack-resistance, capacity, kv or motor-heat. In the shop it becomes a revision that names the ride.", HelpName = "WHAT" };
        take.AcceptOnlyFromAmong([.. LessonSet.Names]);
        var into = new Option<string>("--into") { Description = "Where --take writes: board, for this board alone; or shelf, for every board with the part.", HelpName = "PLACE", DefaultValueFactory = _ => "board" };
        into.AcceptOnlyFromAmong("board", "shelf");
        var command = new Verb(
            "learn", "Tells from logged rides what rolls, drags, sags and warms, each with the range it is known to. Exit code 0 when something was learnt, 1 when nothing was, 2 when a file could not be read.",
            "boardwright learn ride.csv --mass \"92 kg\"", "boardwright learn out.csv back.csv --board tern.board.yaml --speed-scale 1.01±0.003", "boardwright learn ride.csv --board tern.board.yaml --take rolling --take drag-area", "boardwright learn ride.csv --column \"v=speed m/s\" --column \"Temp=motor-temperature C\"")
        { logs, board, kept, shop, take, into, mass, wind, slope, swing, grade, charge, scale };
        log.AddTo(command);
        command.Validators.Add(result =>
        {
            if (result.GetValue(board) is not null && result.GetValue(kept) is not null)
                result.AddError("--board and --kept are one or the other.");
            if (result.GetValue(take) is { Length: > 0 } && result.GetValue(board) is null && result.GetValue(kept) is null)
                result.AddError("--take needs a board to write into: --board FILE or --kept NAME.");
        });
        command.SetAction(parsed =>
        {
            var (factor, spread) = Scale(parsed.GetValue(scale) ?? "1±0.01")!.Value;
            var replay = new ReplayConditions
            {
                Grade = Stated<Fraction>(parsed.GetValue(grade)),
                StartCharge = Stated<Fraction>(parsed.GetValue(charge)),
                SpeedScale = factor
            };
            return RunAsync(
                terminal, parsed.GetRequiredValue(logs),
                new(parsed.GetValue(board), parsed.GetValue(kept), parsed.GetValue(shop), parsed.GetValue(take) ?? [],
                parsed.GetValue(into) == "shelf"),
                new(null, Stated<Mass>(parsed.GetValue(mass)), Stated<Speed>(parsed.GetValue(wind)),
                Stated<Fraction>(parsed.GetValue(slope)), Stated<Fraction>(parsed.GetValue(swing)) ?? default, factor, spread,
                log.Read(parsed), replay)).GetAwaiter().GetResult();
        });
        return command;
    }

    internal static Option<string> Quantity(string name, string description, string helpName, Dimension dimension)
    {
        var option = new Option<string>(name) { Description = description, HelpName = helpName };
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } text && QuantityText.Read(text, dimension).Refusal is { } refusal)
                result.AddError($"{name}: {refusal.Says} {refusal.Remedy}");
        });
        return option;
    }

    internal static T? Stated<T>(string? text)
        where T : struct, IQuantity<T> =>
        text is null ? null : T.FromSi(QuantityText.Read(text, T.Dimension).Si);

    static (double Value, double Spread)? Scale(string text)
    {
        var parts = text.Split('±');
        if (parts.Length > 2 || !double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            || value is not (> 0.5 and < 2)) return null;
        var spread = 0.0;
        return parts.Length == 2 && (!double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out spread)
            || spread is not (>= 0 and < 0.3)) ? null : (value, spread);
    }

    static async Task<int> RunAsync(Terminal terminal, string[] files, LessonTarget wanted, LogSettings known)
    {
        if (wanted.Kept is not { } name)
            return Run(terminal, files, wanted, known, wanted.BoardFile is { } file ? BoardFile.Read(file) : null,
                (taken, _) => Keep(wanted.BoardFile!, taken));
        try
        {
            await using var shop = await ShopLocations.OpenAsync(wanted.Shop, default);
            if (await shop.FindAsync(ItemKind.Board, name) is not { IsDeleted: false } item)
                throw new ShopException(ShopError.NotThere, $"There is no board {name} in the shop {shop.Place.Shown}.", "See what there is with: boardwright shop list.");
            var opened = await shop.ReadAsync(item.Id);
            var loaded = BoardFile.ReadText(
                opened.Files.Main.Text, opened.Files.Main.Path,
                FileTree.FromTexts(opened.Files.Files.ToDictionary(f => f.Path, f => f.Text, StringComparer.Ordinal)));
            return Run(terminal, files, wanted, known, loaded, (taken, why) =>
                shop.SaveAsync(item.Id, opened.Revision.Number, taken, new(Environment.UserName, why)).GetAwaiter()
                .GetResult() is Saved saved
                    ? Invariant($"{name}: revision {saved.Revision.Number}, {why}.") : $"{name}: somebody saved meanwhile; nothing was written. Run it again.", opened.Files);
        }
        catch (ShopException trouble)
        {
            terminal.Error.WriteLine(trouble.Message);
            return Exit.Unread;
        }
    }

    static string Keep(string file, FileSet taken)
    {
        var written = BoardFolder.Gather(file).Update(taken);
        return written.Count == 0 ? "It is written there already." : string.Join('\n', written.Select(path => $"Wrote {path}."));
    }

    static int Run(Terminal terminal, string[] files, LessonTarget wanted, LogSettings known, LoadedBoard? loaded,
        Func<FileSet, string, string> keep, FileSet? set = null)
    {
        var paper = new TerminalText(terminal);
        if (loaded is not null)
        {
            if (loaded.Board is not { } board)
            {
                CheckCommand.Complain(terminal, loaded.Complaints);
                return Exit.Unread;
            }

            known = known with { Board = Examination.Examine(board) };
        }

        var (read, runs, learnt) = (0, new List<CoastDownRun>(), false);
        foreach (var file in files)
        {
            var reading = RideLogFile.Read(file, known.Wishes);
            if (reading.Mapping is { } mapping) Show(paper, mapping);
            if (reading.Log is not { } log)
            {
                CheckCommand.Complain(terminal, reading.Complaints);
                continue;
            }

            read++;
            Tell(paper, log, reading);
            learnt |= Energy(paper, log) | Pack(paper, log, known) | Drive(paper, log, known) | Heat(paper, log, known)
                | Against(paper, log, known);
            runs.AddRange(CoastDown.Find(log));
        }

        if (read == 0) return Exit.Unread;
        learnt |= Rolling(paper, runs, known);
        if (!learnt)
            paper.Write(0, "Nothing was learnt: log speed, pack voltage, pack current and phase current at five rows a second, and roll out freely on a level road both ways.");
        var isTaken = known.Lessons.Count == 0 && wanted.Names.Length == 0 || Take(paper, terminal, files, wanted, known, keep, set);
        return read < files.Length ? Exit.Unread : learnt && isTaken ? Exit.Holds : Exit.Wanting;
    }

    /// <summary>Shows what can be taken into the board, and takes what was asked for.</summary>
    /// <returns>Whether everything asked for was taken.</returns>
    static bool Take(TerminalText paper, Terminal terminal, string[] logs, LessonTarget wanted, LogSettings known,
        Func<FileSet, string, string> keep, FileSet? set)
    {
        var hasPlace = wanted.BoardFile is not null || wanted.Kept is not null;
        var ride = string.Join(", ", logs.Select(Path.GetFileName));
        var isAll = true;
        var all = new List<Lesson>();
        if (known.Lessons.Count > 0)
            paper.Write(0, "What the board can take", TerminalStyle.Heading);
        foreach (var lesson in known.Lessons)
        {
            paper.Write(2, $"{lesson.Name}: {(lesson.CanBeTaken ? string.Join("; ", lesson.Entries.Select(e => $"{e.Key}: {{ value: {e.Value}, give: {e.Give}, from: measured }}")) : "cannot be taken")}. {lesson.Says}");
        }

        if (known.Lessons.Count > 0 && wanted.Names.Length == 0 && hasPlace)
            paper.Write(2, "--take NAME writes one of them.");
        foreach (var name in wanted.Names.Distinct(StringComparer.Ordinal))
        {
            if (known.Lessons.FirstOrDefault(l => l.Name == name) is not { } lesson)
            {
                terminal.Error.WriteLine($"{name} was not learnt from {ride}; nothing was written for it.");
                isAll = false;
                continue;
            }

            set ??= BoardFolder.Gather(wanted.BoardFile!).Files;
            var taken = LessonWriter.Apply(set, lesson, wanted.IntoShelf);
            if (taken.Refusal.Length > 0)
            {
                terminal.Error.WriteLine($"{name}: {taken.Refusal}");
                isAll = false;
                continue;
            }

            if (all.Count == 0) paper.Write(2, "To be written:");
            foreach (var line in taken.Lines) paper.Write(4, line);
            set = taken.Files;
            all.Add(lesson);
        }

        if (all.Count > 0)
            paper.Write(2, keep(set!, LessonWriter.Why(all, ride)));
        return isAll;
    }

    static bool Against(TerminalText paper, RideLog log, LogSettings known)
    {
        if (known.Board is not { } examination) return false;
        var answer = RideComparison.Compare(examination.Board, log, known.Replay);
        paper.Write(0, "Predicted against measured", TerminalStyle.Heading);
        if (!answer.IsKnown)
        {
            paper.Write(2, $"Cannot be said until these are known: {string.Join(", ", answer.Missing.Select(Wording))}.");
            paper.Gap();
            return false;
        }

        foreach (var difference in answer.Value.Differences) paper.Write(2, difference.Says);
        if (answer.Value.Missing.Count > 0) paper.Write(2, $"The log has no {string.Join(", no ", answer.Value.Missing)}, so that cannot be compared.");
        Cautions(paper, answer.Value.Replay.Cautions);
        return answer.Value.Differences.Count > 0;
    }

    /// <summary>What is missing, and how it is supplied where that is not by measuring a part.</summary>
    static string Wording(string key) => key switch
    {
        "log.elevation" => "the heights of the road (log them, or state the grade with --grade \"0 %\")",
        "log.speed" => "the speeds of the ride",
        "log.charge_left" => "the charge at the start (let the board stand for some seconds first, or state it with --charge \"95 %\")",
        _ => key,
    };

    internal static void Show(TerminalText paper, LogMapping mapping)
    {
        paper.Write(0, "Columns", TerminalStyle.Heading);
        foreach (var column in mapping.Columns)
        {
            var meaning = column.IsTime ? $"time ({mapping.Time switch { TimeForm.Seconds => "s", TimeForm.Milliseconds => "ms", _ => "clock" }})"
                : column.Channel is { } channel ? Invariant($"{Words(channel)}, {column.Unit?.Symbol ?? "unit not told yet"}") : "-";
            paper.Write(2, Invariant($"{column.Column}  {column.Header}: {meaning}{(column.IsAssumed ? " (assumed)" : "")}; {column.Why}."));
        }

        if (mapping.Columns.Any(c => c.IsAssumed))
            paper.Write(2, "What is assumed can be stated with --column or --time.");
        paper.Gap();
    }

    static string Words(Channel channel) =>
        string.Concat($"{channel}".Select((c, i) => char.IsUpper(c) ? (i > 0 ? " " : "") + char.ToLowerInvariant(c) : $"{c}"));

    internal static void Tell(TerminalText paper, RideLog log, RideLogReading reading)
    {
        paper.Write(0, log.Name, TerminalStyle.Heading);
        paper.Write(2, Invariant($"{reading.RowCount} rows over {log.Lasting.Minutes:0.0} min, {log.UsualStep.Seconds:0.##} s apart as a rule; {reading.BadRowCount} bad, {reading.EmptyRowCount} empty."));
        foreach (var row in reading.BadRows.Take(BadRowsShown)) paper.Write(4, Invariant($"Line {row.Line}: {row.Says}."));
        if (reading.BadRowCount > BadRowsShown) paper.Write(4, Invariant($"And {reading.BadRowCount - BadRowsShown} more."));
        foreach (var note in reading.Notes) paper.Write(2, note);
        if ((log.WayBySpeeds ?? log.WayByPositions) is { } way) paper.Write(
            2, Invariant($"{way.Kilometres:0.00} km{(log.Speeds.Greatest is { } most ? Invariant($", at most {most.KilometresPerHour:0.0} km/h") : "")}."));
        paper.Gap();
    }

    static bool Energy(TerminalText paper, RideLog log)
    {
        if (EnergyFromRide.Fit(log) is not { } energy) return false;
        paper.Write(0, "Energy for the distance", TerminalStyle.Heading);
        paper.Write(2, Invariant($"{energy.Consumption.WattHoursPerKilometre:0.0} Wh/km over {energy.Distance.Kilometres:0.00} km."));
        foreach (var bin in energy.Bins)
        {
            var grade = bin.FromGrade is { } low && bin.ToGrade is { } high ? Invariant($", {low.Percent:0} to {high.Percent:0} %") : "";
            var value = bin.Consumption is { } c ? Invariant($"{c.Value.WattHoursPerKilometre:0.0} Wh/km ({c.Low.WattHoursPerKilometre:0.0} to {c.High.WattHoursPerKilometre:0.0})") : "too little road to tell";
            paper.Write(4, Invariant($"{bin.FromSpeed.KilometresPerHour:0} to {bin.ToSpeed.KilometresPerHour:0} km/h{grade}: {value}, {bin.Distance.Kilometres:0.00} km."));
        }

        paper.Gap();
        return true;
    }

    static bool Pack(TerminalText paper, RideLog log, LogSettings known)
    {
        if (PackFromRide.Fit(log) is not { } pack) return false;
        paper.Write(0, "Pack", TerminalStyle.Heading);
        Line(paper, "Resistance at once", pack.Resistance, r => r.Milliohms, "mohm");
        if (pack.Slow is { } slow) Line(paper, Invariant($"Resistance after some {slow.Seconds * 3:0} s"), pack.Settled, r => r.Milliohms, "mohm");
        Line(paper, "Rest voltage at the start", pack.RestAtStart, r => r.Volts, "V");
        Line(paper, "Rest voltage at the end", pack.RestAtEnd, r => r.Volts, "V");
        paper.Write(2, Invariant($"Drawn: {pack.Drawn.AmpereHours:0.00} Ah, {pack.Energy.WattHours:0.0} Wh."));
        var parts = known.Board?.Board.Parts;
        if (known.Board is { } whole) known.Learn(LessonSet.From(pack, whole.Board));
        if (parts is { Cell.RestVoltage.IsKnown: true, Pack.Series.IsKnown: true }
            && pack.Capacity(parts.Cell.RestVoltage.Value, parts.Pack.Series.Value) is { } capacity)
        {
            Line(paper, "Capacity by rest voltages", capacity, c => c.AmpereHours, "Ah");
            known.Learn(LessonSet.Capacity(capacity, known.Board!.Board));
        }

        if (pack.CapacityByLogger(log) is { } counted)
            Line(paper, "Capacity by the logger's charge", counted, c => c.AmpereHours, "Ah");
        Cautions(paper, pack.Cautions);
        return true;
    }

    static bool Drive(TerminalText paper, RideLog log, LogSettings known)
    {
        if (KvFromRide.Fit(log) is not { } drive) return false;
        paper.Write(0, "Speed for a volt", TerminalStyle.Heading);
        Line(paper, "Without load", drive.MetresPerSecondPerVolt, v => v.Value * 3.6, "km/h for each volt on the motor");
        var parts = known.Board?.Board.Parts;
        if (parts is { Motor.Kv.IsKnown: true, Wheels.Diameter.IsKnown: true } && known.Board!.Gearing.IsKnown)
        {
            var against = drive.Against(parts.Motor.Kv.Value, known.Board.Gearing.Value.Ratio, parts.Wheels.Diameter.Value);
            Line(paper, "Against KV, ratio and wheel of the board file", against, r => r.Value, "times");
            known.Learn(LessonSet.Kv(against, known.Board.Board));
            paper.Write(2, against.Covers(Number.FromValue(1)) ? "They agree." : "They do not agree: KV, a pulley's teeth or the wheel's diameter is other than stated.");
        }

        Cautions(paper, drive.Cautions);
        return true;
    }

    static bool Heat(TerminalText paper, RideLog log, LogSettings known)
    {
        if (known.Board?.Board.Parts.Motor is not { } motor) return false;
        Resistance? leads = motor.LineResistance.IsKnown ? motor.LineResistance.Value : motor.PhaseResistance.IsKnown
            ? 2 * motor.PhaseResistance.Value : null;
        if (leads is not { } ohms
            || MotorHeatFromRide.Fit(
            log, ohms, log.AirTemperatures.IsThere ? null : known.Board.Board.Brief.Temperature is { IsKnown: true } air ? air.Value
            : null) is not { } heat) return false;
        paper.Write(0, "Heat of the motor", TerminalStyle.Heading);
        Line(paper, "Heat capacity", heat.Capacity, c => c.JoulesPerKelvin, "J/K");
        Line(paper, "To the air while riding", heat.Riding, r => r.KelvinsPerWatt, "K/W");
        known.Learn(LessonSet.From(heat, known.Board.Board));
        if (heat.Standing is { } standing) Line(paper, "To the air while standing", standing, r => r.KelvinsPerWatt, "K/W");
        Cautions(paper, heat.Cautions);
        return true;
    }

    static bool Rolling(TerminalText paper, List<CoastDownRun> runs, LogSettings known)
    {
        paper.Write(0, "Rolling and drag", TerminalStyle.Heading);
        var total = known.Mass ?? (known.Board is { RollingMass.IsKnown: true } board ? board.RollingMass.Value.Mass : null);
        if (total is not { } mass)
        {
            paper.Write(2, Invariant($"{runs.Count} coast-downs were found. State the mass with --mass \"92 kg\" or a board file with --board, so that forces can be told from them."));
            return false;
        }

        // What wheels and rotors add is 1 to 3 % of the mass; half way where the board does not tell.
        var isMassOfBoard = known.Board is { EffectiveMass.IsKnown: true, RollingMass.IsKnown: true };
        var turning = isMassOfBoard ? known.Board!.EffectiveMass.Value.Mass - known.Board.RollingMass.Value.Mass : 0.02 * mass;
        var air = known.Board is { Air.IsKnown: true } there ? there.Air.Value : Air.SeaLevel;
        CoastDownConditions conditions = new(
            mass, turning, air.DensityKilogramsPerCubicMetre)
        {
            Headwind = known.Wind,
            Slope = known.Slope,
            SlopeSwing = known.Swing,
            SpeedScale = known.Scale,
            SpeedScaleSpread = known.ScaleSpread,
            AirSpread = 0.02,
            MassSpread = 0.01
        };
        var answer = CoastDown.Fit(runs, conditions);
        if (answer.Fit is not { } fit)
        {
            paper.Write(2, answer.Refusal);
            return false;
        }

        paper.Write(2, Invariant($"{fit.Parts.Count(p => p.LeftOut.Length == 0)} of {fit.Parts.Count} coast-downs, {mass.Kilograms:0.#} kg and {turning.Kilograms:0.#} kg for what turns, air of {air.DensityKilogramsPerCubicMetre:0.000} kg/m3."));
        foreach (var part in fit.Parts.Where(p => p.LeftOut.Length > 0)) paper.Write(4, Invariant($"Left out, at {part.Run.Begins.Seconds:0} s of {part.Run.Log}: {part.LeftOut}."));
        Line(paper, "Rolling coefficient Crr", fit.RollingResistance, c => c.Value, "");
        Line(paper, "Drag area CdA", fit.DragArea, a => a.SquareMetres, "m2");
        Line(paper, "Rise in the first run's way", fit.Slope, s => s.Percent, "%");
        Line(paper, "Wind against the first run's way", fit.Headwind, w => w.MetresPerSecond, "m/s");
        paper.Write(2, Invariant($"Crr and CdA go together by {fit.Correlation:0.00}: when one is too high the other is too low."));
        if (fit.ByRuns is { } scatter)
            paper.Write(2, Invariant($"By the scatter of readings Crr is known to {fit.ByReadings.Rolling:0.00000} and CdA to {fit.ByReadings.DragArea:0.0000} m2, from run to run to {scatter.Rolling:0.00000} and {scatter.DragArea:0.0000} m2; the larger counts."));
        foreach (var lesson in known.Board is { } whole ? LessonSet.From(fit, whole.Board, conditions) : []) known.Learn(lesson);
        if (!isMassOfBoard) paper.Write(2, "What turns is taken as 2 % of the mass; a board file tells it better.");
        if (known.Board is not { Air.IsKnown: true }) paper.Write(2, "The air is taken as of 15 °C at the sea; a board file tells it better.");
        Cautions(paper, fit.Cautions);
        return true;
    }

    static void Line<T>(TerminalText paper, string title, Estimate<T> estimate, Func<T, double> of, string unit)
        where T : struct, IQuantity<T>
    {
        var (value, low, high) = (of(estimate.Value), of(estimate.Low), of(estimate.High));
        // Two figures of the range are enough.
        var width = Math.Abs(high - low);
        var decimals = width > 0 && double.IsFinite(width) ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(width)), 0, 6) : 3;
        string Figure(double x) => x.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        paper.Write(2, $"{title}: {Figure(value)}{(unit.Length > 0 ? " " : "")}{unit} ({Figure(low)} to {Figure(high)}). Narrower by: {char.ToLowerInvariant(estimate.Narrowing[0])}{estimate.Narrowing[1..]}");
    }

    static void Cautions(TerminalText paper, IReadOnlyList<string> cautions)
    {
        foreach (var caution in cautions) paper.Write(2, caution, TerminalStyle.Quiet);
        paper.Gap();
    }
}
