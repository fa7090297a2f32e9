using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.App.ShopWork;
using Boardwright.Builds;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Shops;

namespace Boardwright.App.Commands;

/// <summary><c>built</c>: keeps count of boards that were built: parts, steps, measurements, faults, rides, and whether they may be
/// ridden.</summary>
sealed class BuiltCommands(Terminal terminal, Func<Examination, IReadOnlyDictionary<string, Interval>> intervals) : ShopVerbs(terminal)
{
    static readonly string[] States = [.. Enum.GetValues<BoardState>().Select(static state => Entry.Word(state).Replace(' ', '-'))];
    readonly BuiltJudge judge = new(intervals);

    /// <summary>The command with its parts.</summary>
    public static Verb Create(Terminal terminal, Func<Examination, IReadOnlyDictionary<string, Interval>> intervals) =>
        new BuiltCommands(terminal, intervals).All();

    Verb All() => new Verb(
        "built", "Keeps count of the boards that you built: what is in them, who did which step when, what was measured, faults, rides, and whether they may be ridden.",
        "boardwright built begin TERN-0001 tern", "boardwright built show TERN-0001 --open", "boardwright built measure TERN-0001 pack.rest \"41.3 V\"", "boardwright built ready TERN-0001")
    {
        Where, Begin(), List(), Show(), Step(), Measure(), Fit(), Note(), Fault(), Repair(), Ride(), Set(), Mark(), Ready(),
    };

    Verb Begin()
    {
        var serial = new Argument<string>("SERIAL") { Description = "The serial number that stands on the board, such as TERN-0001." };
        var design = new Argument<string>("BOARD") { Description = "What it is built from: the name of a board in the shop, or a board file; then the built board is kept as a file beside it." };
        design.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var revision = new Option<int?>("--revision") { Description = "Which revision of the board in the shop; the newest where not given.", HelpName = "NUMBER" };
        var (on, by) = (On(), Who());
        var command = new Verb("begin", "Begins a board that is built from a design.", "boardwright built begin TERN-0001 tern", "boardwright built begin TERN-0002 tern --revision 3 --by Ada", "boardwright built begin TERN-0003 tern.board.yaml") { serial, design, revision, on, by };
        command.SetAction((parsed, cancel) => Plainly(async () =>
        {
            var (number, board, when, who) =
                (parsed.GetRequiredValue(serial), parsed.GetRequiredValue(design), When(parsed, on), parsed.GetRequiredValue(by));
            if (BoardFile.IsCalledSo(board))
            {
                Terminal.Out.Write($"Wrote {BuiltInFolder.Begin(number, board, when, who).Name}\n");
                return Exit.Holds;
            }

            await using var shop = await ShopLocations.OpenAsync(parsed.GetValue(Where), cancel);
            var place = await BuiltInShop.BeginAsync(shop, number, board, parsed.GetValue(revision), when, new(who, "begun"), cancel);
            Terminal.Out.Write($"{place.Name}: begun from {(await place.DesignAsync((await place.ReadAsync(cancel)).Loaded.Built!, cancel)).Name}\n");
            return Exit.Holds;
        }));
        return command;
    }

    Verb List()
    {
        var command = new Verb("list", "Lists the built boards of the shop with what they are up to. Where one is ridden by a written reason, the reason is listed too.", "boardwright built list");
        return With(command, async (_, shop, cancel) =>
        {
            var all = await BuiltInShop.ListAsync(shop, cancel);
            if (all.Count == 0)
                Terminal.Out.Write("No board is being built yet. Begin one with: boardwright built begin SERIAL BOARD\n");
            var paper = new TerminalText(Terminal);
            foreach (var (place, opened) in all)
            {
                var (judged, complaints) = await judge.OfAsync(place, opened, cancel);
                if (judged is null)
                {
                    paper.Write(2, $"{place.Name}: not in order. {complaints[0]}", TerminalStyle.Stop, leadIndent: 0);
                    continue;
                }

                paper.Write(2, FormattableString.Invariant($"{place.Name}: {judged.Design.Name}; {judged.Built.Ridden.Kilometres:0.0} km. {judged.Readiness.Says}"), leadIndent: 0);
            }

            return Exit.Holds;
        });
    }

    Verb Show()
    {
        var serial = Serial();
        var open = new Option<bool>("--open") { Description = "Leaves out the steps and checks that passed." };
        var command = new Verb("show", "Shows a built board: its state, every step and check with who and when, parts, faults, rides and notes. Exit code 0 when it may be ridden or nothing stands against it, 1 when something does.", "boardwright built show TERN-0001", "boardwright built show TERN-0001 --open", "boardwright built show tern-0003.built.yaml") { serial, open };
        return OnJudged(command, serial, (parsed, judged, _) =>
        {
            BuiltReport.Write(new TerminalText(Terminal), judged, parsed.GetValue(open));
            return Task.FromResult(judged.Readiness.Unanswered.Count == 0 ? Exit.Holds : Exit.Wanting);
        });
    }

    Verb Step()
    {
        var (serial, on, by) = (Serial(), On(), Who());
        var ids = new Argument<string[]>("STEP") { Description = "Ids of steps of the build sheet, as show lists them.", Arity = ArgumentArity.OneOrMore };
        var value = new Option<string[]>("--value") { Description = "What was measured, with its unit; may be given more than once.", HelpName = "VALUE" };
        var failed = new Option<bool>("--failed") { Description = "It was tried and did not pass." };
        var remark = Remark();
        var command = new Verb("step", "Ticks steps of the build sheet as done. A step with a range is judged by it; exit code 1 when it fails.", "boardwright built step TERN-0001 deck.template deck.holes", "boardwright built step TERN-0001 belt-1.note --value \"61 Hz\" --by Ada") { serial, ids, value, failed, remark, on, by };
        return OnJudged(command, serial, async (parsed, judged, cancel) =>
        {
            var code = Exit.Holds;
            foreach (var id in parsed.GetRequiredValue(ids))
                code = Math.Max(code, await DoneAsync(
                    judged, StepList.Building, id, parsed.GetValue(value) ?? [], parsed.GetValue(failed) ? false : null,
                    parsed.GetValue(remark), When(parsed, on), parsed.GetRequiredValue(by), cancel));
            return code;
        });
    }

    Verb Measure()
    {
        var (serial, on, by) = (Serial(), On(), Who());
        var id = new Argument<string>("CHECK") { Description = "Id of a line of the bench list, as show lists it." };
        var values = new Argument<string[]>("VALUE") { Description = "What was measured, with its unit; several values where it was measured several times.", Arity = ArgumentArity.ZeroOrMore };
        var passed = new Option<string?>("--passed") { Description = "Whether it passed, where no range decides that: yes or no.", HelpName = "WORD" };
        passed.AcceptOnlyFromAmong("yes", "no");
        var remark = Remark();
        var command = new Verb("measure", "Writes down a line of the bench list, and judges it by the range that follows from the design. Exit code 1 when it fails.", "boardwright built measure TERN-0001 pack.rest \"41.3 V\"", "boardwright built measure TERN-0001 motor-1.resistance \"56 mohm\" \"57 mohm\" \"56.5 mohm\"", "boardwright built measure TERN-0001 wheels.brake --passed yes") { serial, id, values, passed, remark, on, by };
        return OnJudged(command, serial, (parsed, judged, cancel) =>
            DoneAsync(judged, StepList.Bench, parsed.GetRequiredValue(id), parsed.GetValue(values) ?? [],
            parsed.GetValue(passed) switch { "yes" => true, "no" => false, _ => null }, parsed.GetValue(remark), When(parsed, on),
            parsed.GetRequiredValue(by), cancel));
    }

    Verb Fit()
    {
        var (serial, on, by, remark) = (Serial(), On(), Who(), Remark());
        var part = new Argument<string>("PART") { Description = "Its place on the board, as in the board file, such as motor." };
        var number = new Option<int?>("--number") { Description = "Which of several, from 1.", HelpName = "NUMBER" };
        var what = new Option<string?>("--is") { Description = "What it is: its id on the shelf, or its name.", HelpName = "NAME" };
        var batch = new Option<string?>("--batch") { Description = "The maker's batch number.", HelpName = "TEXT" };
        var maker = new Option<string?>("--maker-serial") { Description = "The maker's serial number.", HelpName = "TEXT" };
        var command = new Verb("fit", "Writes down what was fitted, with the maker's batch and serial numbers.", "boardwright built fit TERN-0001 motor --number 1 --is m6374-170 --batch B2604-117 --maker-serial 00213", "boardwright built fit TERN-0001 cell --is c21700-50 --batch 2601C") { serial, part, number, what, batch, maker, remark, on, by };
        return OnPlace(command, serial, by, (parsed, who) => text => BuiltText.Add(text, "fitted", new FittedPart
        {
            Part = parsed.GetRequiredValue(part),
            Number = parsed.GetValue(number) is { } n ? n : default(Known<int>),
            Is = KnownText(parsed.GetValue(what)),
            Batch = KnownText(parsed.GetValue(batch)),
            Serial = KnownText(parsed.GetValue(maker)),
            When = When(parsed, on),
            Who = who,
            Remark = KnownText(parsed.GetValue(remark)),
        }), parsed => $"fitted {parsed.GetRequiredValue(part)}");
    }

    Verb Note()
    {
        var (serial, on, by) = (Serial(), On(), Who());
        var says = new Argument<string>("TEXT") { Description = "What there is to say." };
        var file = new Option<string?>("--file") { Description = "A photo or another file to keep with it, as it is.", HelpName = "FILE" };
        var about = new Option<string?>("--about") { Description = "Id of the step, check or part it belongs to.", HelpName = "ID" };
        var command = new Verb("note", "Keeps a note, with a photo or another file where there is one.", "boardwright built note TERN-0001 \"leads sleeved again\"", "boardwright built note TERN-0001 \"lead of motor 2\" --file lead.jpg --about wires.joints") { serial, says, file, about, on, by };
        return OnOpened(command, serial, async (parsed, place, cancel) =>
        {
            var who = parsed.GetRequiredValue(by);
            var note = new Note
            {
                Says = parsed.GetRequiredValue(says),
                About = KnownText(parsed.GetValue(about)),
                When = When(parsed, on),
                Who = who
            };
            var attached = parsed.GetValue(file) is { } source
                ? new AttachedFile(BuiltFileNames.Photo(source), ReadBytes(source, BuiltStore.MostNoteBytes)) : null;
            return Report(place, await place.ChangeAsync(
                attached, (text, path) => BuiltText.Add(text, "notes", attached is null ? note : note with { File = path }),
                new(who, "note: " + Short(note.Says.Value)), cancel), attached is null ? "noted" : "noted, file kept");
        });
    }

    Verb Fault()
    {
        var (serial, on, by) = (Serial(), On(), Who());
        var says = new Argument<string>("TEXT") { Description = "What is wrong." };
        var command = new Verb("fault", "Writes down a fault. While it is open the board may not be ridden without a written reason.", "boardwright built fault TERN-0001 \"belt 2 jumps under hard braking\" --by Jo") { serial, says, on, by };
        return OnPlace(command, serial, by,
            (parsed, who) => text => BuiltText.Add(
            text, "faults", new BoardFault { Says = parsed.GetRequiredValue(says), Found = When(parsed, on), Who = who }),
            parsed => "fault: " + Short(parsed.GetRequiredValue(says)));
    }

    Verb Repair()
    {
        var (serial, on, by) = (Serial(), On(), Who());
        var number = new Argument<int>("NUMBER") { Description = "Number of the fault, as show lists it." };
        var how = new Argument<string>("TEXT") { Description = "How it was mended, and with what." };
        var command = new Verb("repair", "Writes down how a fault was mended, and closes it. Measure again what the repair touched.", "boardwright built repair TERN-0001 1 \"mount had slid: two new bolts, medium thread lock\" --by Ada") { serial, number, how, on, by };
        return OnOpened(command, serial, async (parsed, place, cancel) =>
        {
            var (which, who) = (parsed.GetValue(number), parsed.GetRequiredValue(by));
            var changed = await place.ChangeAsync(
                text => BuiltText.Mend(text, which, parsed.GetRequiredValue(how), who, When(parsed, on)), new(who, Invariant($"mended fault {which}")), cancel);
            return Report(place, changed, Invariant($"fault {which} is mended"));
        });
    }

    Verb Ride()
    {
        var (serial, on, by, remark) = (Serial(), On(), Who(), Remark());
        var file = new Argument<string>("LOG") { Description = "Log of a ride: a table of any logger (CSV) or GPX. It is kept byte for byte." };
        var load = LearnCommand.Quantity("--load", "Mass of rider and gear, where it was not that of the board file, such as \"92 kg\".", "MASS", Mass.Dimension);
        var confirmed = new Option<bool>("--confirm") { Description = "The columns are read rightly: keep the ride, and remember the columns for the next log of this logger." };
        var log = new LogOptions();
        var command = new Verb("ride", "Adds the log of a ride. Its columns are shown first, and the ride is kept once they are confirmed; the next log with the same columns is read alike without asking. Exit code 1 when it waits for that.", "boardwright built ride TERN-0001 harbour.csv", "boardwright built ride TERN-0001 harbour.csv --column \"v=speed km/h\" --confirm", "boardwright built ride TERN-0001 harbour.csv --on \"2026-05-03 17:10\" --by Jo") { serial, file, confirmed, load, remark, on, by };
        log.AddTo(command);
        return OnOpened(command, serial, async (parsed, place, cancel) =>
        {
            var (path, who) = (parsed.GetRequiredValue(file), parsed.GetRequiredValue(by));
            var arrived = await UploadedRide.OfAsync(
                place, BuiltFileNames.Ride(path), ReadBytes(path, BuiltStore.MostRideBytes), log.Read(parsed), cancel);
            var paper = new TerminalText(Terminal);
            if (arrived.Reading.Mapping is { } mapping)
                LearnCommand.Show(paper, mapping);
            if (arrived.Reading.Log is not { } read)
            {
                CheckCommand.Complain(Terminal, arrived.Reading.Complaints);
                return Exit.Unread;
            }

            LearnCommand.Tell(paper, read, arrived.Reading);
            if (!parsed.GetValue(confirmed) && !arrived.IsRecalled)
            {
                paper.Write(0, "Nothing was kept yet. Look the columns over; say --confirm when they are right, or what a column holds with --column.");
                return Exit.Wanting;
            }

            var ride = arrived.Ride(parsed.GetResult(on) is { Implicit: false } ? When(parsed, on) : null,
                who) with
            {
                Load = LearnCommand.Stated<Mass>(parsed.GetValue(load)) is { } mass ? mass : default(Known<Mass>),
                Remark = KnownText(parsed.GetValue(remark))
            };
            return Report(place, await arrived.KeepAsync(place, ride, new(who, "ride " + Path.GetFileName(path)), cancel),
                arrived.IsRecalled ? "ride kept; columns as confirmed before" : "ride kept, columns remembered");
        });
    }

    Verb Set()
    {
        var (serial, by) = (Serial(), Who());
        var key = new Argument<string>("KEY") { Description = "Dotted key, such as warranty.until, unlogged.distance, for or revision." };
        var value = new Argument<string>("VALUE") { Description = "The value as the file writes it." };
        var command = new Verb("set", "Writes one value into the board's file, and leaves everything else as it stands: warranty, riding beside the logs, whom it is for.", "boardwright built set TERN-0001 warranty.until 2028-05-09", "boardwright built set TERN-0001 unlogged.distance \"120 km\"") { serial, key, value, by };
        return OnPlace(command, serial, by,
            (parsed, _) => text => BuiltText.Change(text, parsed.GetRequiredValue(key), parsed.GetRequiredValue(value)), parsed => $"{parsed.GetRequiredValue(key)}: {parsed.GetRequiredValue(value)}");
    }

    Verb Mark()
    {
        var (serial, on, by, why) = (Serial(), On(), Who(), Why());
        var state = new Argument<string>("STATE") { Description = "What it is up to: " + string.Join(", ", States) + "." };
        state.AcceptOnlyFromAmong(States);
        var command = new Verb("mark", "Puts a board into a state. To be ridden (on trial, ready to ride, handed over) nothing may be open, or a written reason is due. Exit code 1 when it is refused.", "boardwright built mark TERN-0001 on-trial", "boardwright built mark TERN-0001 in-repair --why \"new motor mount\"") { serial, state, why, on, by };
        return OnJudged(command, serial,
            (parsed, judged, cancel) =>
            MarkAsync(judged, Enum.GetValues<BoardState>()[Array.IndexOf(States, parsed.GetRequiredValue(state))], parsed.GetValue(why),
            When(parsed, on), parsed.GetRequiredValue(by), cancel));
    }

    Verb Ready()
    {
        var (serial, on, by, why) = (Serial(), On(), Who(), Why());
        var command = new Verb("ready", "Marks a board as ready to ride. While a stop finding of its design, a step, a check or a fault is open, it takes a written reason, which is shown wherever its state is shown. Exit code 1 when it is refused.", "boardwright built ready TERN-0001", "boardwright built ready TERN-0001 --why \"the ramp is wet: walked it, ridden by Ada only until it is dry\"") { serial, why, on, by };
        return OnJudged(command, serial,
            (parsed, judged, cancel) =>
            MarkAsync(judged, BoardState.ReadyToRide, parsed.GetValue(why), When(parsed, on), parsed.GetRequiredValue(by), cancel));
    }

    async Task<int> MarkAsync(JudgedBuilt judged, BoardState state, string? why, Moment when, string who, CancellationToken cancel)
    {
        var changed = await judged.Place.ChangeAsync(
            text => BuiltText.Mark(text, judged.Steps.Steps, judged.Steps.Examined, state, who, when, why), new(who, $"{Entry.Word(state)}{(string.IsNullOrWhiteSpace(why) ? "" : ": " + Short(why))}"), cancel);
        if (changed.Refusal is { } refusal)
        {
            var paper = new TerminalText(Terminal.Error, Terminal.Width, isStyled: false);
            paper.Write(0, refusal.Says);
            var open = judged.Readiness.Against(state).ToLookup(static one => one.Id.StartsWith("undone ", StringComparison.Ordinal));
            foreach (var one in open[false])
                paper.Write(2, $"{one.Id}: {one.Says}");
            if (open[true].Any())
                paper.Write(2, "Undone: " + string.Join(", ", open[true].Select(static one => one.Id[7..])) + ".");
            paper.Write(0, refusal.Remedy);
            return Exit.Wanting;
        }

        new TerminalText(Terminal).Write(0, $"{judged.Place.Name}: {(await judge.OfAsync(judged.Place, cancel)).Judged?.Readiness.Says}");
        return Exit.Holds;
    }

    async Task<int> DoneAsync(
        JudgedBuilt judged, StepList list, string id, string[] values, bool? passed, string? remark, Moment when, string who,
        CancellationToken cancel)
    {
        var ids = judged.Steps.Steps.Where(step => step.List == list).ToList();
        if (ids.Find(step => step.Id == id) is not { } step)
        {
            var other = judged.Find(id) is null ? Nearest.List(id, ids.Select(static one => one.Id), 1) is [var near] ? $"Was {near} meant?" : $"See what there is with: boardwright built show {judged.Place.Name}"
                : list == StepList.Building ? "It is a line of the bench list: use measure." : "It is a step of the build sheet: use step.";
            throw new ShopException(ShopError.NotThere, $"{id} is not on the {(list == StepList.Building ? "build sheet" : "bench list")} of this board.", other);
        }

        foreach (var value in values)
        {
            if (step.Dimension is null)
                throw new ShopException(ShopError.Refused, $"Nothing is measured at {id}.", "Leave the value out; put words into --remark.");
            if (Benchwork.Read(value, step).Refusal is { } refusal)
                throw new ShopException(ShopError.Refused, refusal.Says, refusal.Remedy);
        }

        var done = new DoneStep
        {
            Step = id,
            When = when,
            Who = who,
            Value = values.Length > 0 ? new Texts(values) : default(Known<Texts>),
            Passed = passed is { } said ? said : default(Known<bool>),
            Remark = KnownText(remark)
        };
        var judgement = Judgement.Judge(step, done);
        var changed = await judged.Place.ChangeAsync(
            text => BuiltText.Add(text, list == StepList.Building ? "steps" : "bench", done), new(who, $"{id}{(values.Length > 0 ? ": " + Short(string.Join(", ", values)) : "")}"), cancel);
        var word = judgement.Result switch { Result.Passed => list == StepList.Building ? "done" : "passed", Result.Failed => "FAILED", _ => "written down, still open" };
        return Math.Max(Report(judged.Place, changed, $"{id} {word}. {judgement.Says}".TrimEnd()), judgement.Result == Result.Passed ? Exit.Holds : Exit.Wanting);
    }

    Verb OnJudged(Verb command, Argument<string> serial, Func<ParseResult, JudgedBuilt, CancellationToken, Task<int>> action) =>
        OnOpened(command, serial, async (parsed, place, cancel) =>
    {
        var (judged, complaints) = await judge.OfAsync(place, cancel);
        if (judged is not null)
            return await action(parsed, judged, cancel);
        CheckCommand.Complain(Terminal, complaints);
        return Exit.Unread;
    });

    Verb OnPlace(Verb command, Argument<string> serial, Option<string> by, Func<ParseResult, string, Func<string, Changed>> change,
        Func<ParseResult, string> why) => OnOpened(command, serial, async (parsed, place, cancel) =>
    {
        var who = parsed.GetRequiredValue(by);
        return Report(place, await place.ChangeAsync(change(parsed, who), new(who, why(parsed)), cancel), why(parsed));
    });

    Verb OnOpened(Verb command, Argument<string> serial, Func<ParseResult, BuiltStore, CancellationToken, Task<int>> action)
    {
        command.SetAction((parsed, cancel) => Plainly(async () =>
        {
            var name = parsed.GetRequiredValue(serial);
            if (BuiltFile.IsCalledSo(name))
                return await action(parsed, new BuiltInFolder(name), cancel);
            await using var shop = await ShopLocations.OpenAsync(parsed.GetValue(Where), cancel);
            return await action(parsed, await BuiltInShop.FindAsync(shop, name, cancel) ?? throw await NotThere(shop, name, cancel),
                cancel);
        }));
        return command;
    }

    static async Task<ShopException> NotThere(Shop shop, string name, CancellationToken cancel)
    {
        var names = (await shop.ListAsync(ItemKind.Built, cancel: cancel)).Select(static item => item.Name);
        return new(ShopError.NotThere, $"There is no built board {name} in the shop {shop.Place.Shown}.", Nearest.List(name, names, 1) is [var near] ? $"Was {near} meant?" : "See what there is with: boardwright built list");
    }

    int Report(BuiltStore place, Changed changed, string says)
    {
        if (changed.Refusal is { } refusal)
            throw new ShopException(ShopError.Refused, refusal.Says, refusal.Remedy);
        new TerminalText(Terminal).Write(0, $"{place.Name}: {says}");
        return Exit.Holds;
    }

    static byte[] ReadBytes(string path, int most)
    {
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: var length } && length > most)
                throw new ShopException(ShopError.Refused, Invariant($"{path} is larger than {most / 1024 / 1024} MB."), "Keep a smaller one.");
            return File.ReadAllBytes(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new ShopException(ShopError.NotThere, $"{path} cannot be read.", "Check the name, and that you may read the file.", fault);
        }
    }

    static Known<string> KnownText(string? text) => string.IsNullOrWhiteSpace(text) ? default(Known<string>) : text.Trim();

    static string Short(string text) => text.Length <= 60 ? text : text[..59] + "…";

    static Argument<string> Serial() => new("SERIAL") { Description = "Serial number of a built board in the shop, or a file SERIAL.built.yaml." };

    static Option<string?> Remark() => new("--remark") { Description = "Anything else worth knowing.", HelpName = "TEXT" };

    static Option<string?> Why() => new("--why") { Description = "The reason, in a sentence; due where something is open.", HelpName = "TEXT" };

    static Option<string> Who() => new("--by") { Description = "Who; the name of this user where not given.", HelpName = "WHO", DefaultValueFactory = static _ => Environment.UserName };

    static Option<string?> On()
    {
        var on = new Option<string?>("--on") { Description = "When, such as \"2026-05-03 14:20\" or 2026-05-03; now where not given.", HelpName = "WHEN" };
        on.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } text && Moment.Read(text) is null)
                result.AddError($"--on wants a day with or without the time, such as \"{Moment.Example}\".");
        });
        return on;
    }

    static Moment When(ParseResult parsed, Option<string?> on) =>
        parsed.GetValue(on) is { } text ? Moment.Read(text)!.Value : Moment.At(TimeProvider.System.GetLocalNow());
}
