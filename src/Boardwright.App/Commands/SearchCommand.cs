using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using Boardwright.App.Reports;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pictures;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Results;
using Boardwright.Parts;
using Boardwright.Searches;

namespace Boardwright.App.Commands;

/// <summary><c>search</c>: from a brief and a shelf to boards worth building.</summary>
static class SearchCommand
{
    const double PictureWidth = 760;

    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("BRIEF") { Description = "A board file of which only the brief need be filled in; parts that it names stand." };
        file.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var shelf = new Option<string>("--shelf") { Description = "Folder of the shelf; the one that the file names where not given.", HelpName = "DIR" };
        var fix = new Option<string[]>("--fix") { Description = "Holds a place to one part of the shelf, as in wheels=cobble-100; may be given more than once.", HelpName = "PLACE=ID", DefaultValueFactory = _ => [] };
        var anyStock = new Option<bool>("--any-stock") { Description = "Takes parts as if there were enough of each." };
        var most = new Option<int>("--show") { Description = "How many boards the report shows; those that differ most are chosen.", HelpName = "N", DefaultValueFactory = _ => 8 };
        var asJson = new Option<bool>("--json") { Description = "Prints every board for other programs, always metric." };
        var asTable = new Option<bool>("--csv") { Description = "Prints every board as comma-separated values, always metric." };
        var plot = new Option<string>("--plot") { Description = "Writes a picture of all boards by two things.", HelpName = "FILE.svg" };
        var trade = new Option<string>("--trade") { Description = $"The two things of the picture, of {string.Join(", ", TradePicture.Words)}; price,range where not given.", HelpName = "A,B", DefaultValueFactory = _ => "price,range" };
        var write = new Option<string[]>(
            "--write")
        { Description = "Writes the board of that number as a board file, as in --write 3 heron.board.yaml.", HelpName = "N FILE", Arity = new ArgumentArity(2, 2), AllowMultipleArgumentsPerToken = true };
        var progress = new Option<string>("--progress") { Description = "Keeps where the search stands in a file when it is stopped, and takes it up from there when the file is there.", HelpName = "FILE" };
        var units = new Option<string>("--units") { Description = "Units of report and picture: metric or imperial.", HelpName = "UNITS", DefaultValueFactory = _ => "metric" };
        units.AcceptOnlyFromAmong("metric", "imperial");
        var plain = new Option<bool>("--plain") { Description = "No colour and no dim text, 80 columns." };
        most.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 1 or > 100)
                result.AddError("--show is from 1 to 100.");
        });
        var command = new Verb(
            "search", "Finds the boards that meet a brief and can be built from a shelf, none of them beaten by another in range, climb, speed, mass, price and spare together. Exit code 0 when there is one, 1 when there is none or the search was stopped, 2 when a file could not be read.",
            "boardwright search customer.board.yaml --shelf shelf", "boardwright search customer.board.yaml --fix wheels=cobble-100 --plot trade.svg --trade price,range", "boardwright search customer.board.yaml --write 2 heron.board.yaml")
        { file, shelf, fix, anyStock, most, asJson, asTable, plot, trade, write, progress, units, plain };
        command.Validators.Add(result =>
        {
            if (result.GetValue(asJson) && result.GetValue(asTable))
                result.AddError("--json and --csv exclude one another.");
            if (result.GetValue(trade) is { } two && Traded(two) is null)
                result.AddError($"--trade is two of {string.Join(", ", TradePicture.Words)} with a comma between, as in price,range.");
            if (result.GetValue(write) is { Length: > 0 } pair
                && (!int.TryParse(pair[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < 1))
                result.AddError("--write wants the number of a board and a file, as in --write 3 heron.board.yaml.");
        });
        command.SetAction(parsed => Run(
            parsed.GetValue(plain) ? terminal with { IsStyled = false, Width = 80 } : terminal,
            new SearchOptions(parsed.GetRequiredValue(file), parsed.GetValue(shelf), parsed.GetValue(fix) ?? [], parsed.GetValue(anyStock))
            {
                Most = parsed.GetValue(most),
                AsJson = parsed.GetValue(asJson),
                AsTable = parsed.GetValue(asTable),
                Picture = parsed.GetValue(plot),
                Trade = Traded(parsed.GetValue(trade)!)!.Value,
                Write = parsed.GetValue(write) is { Length: 2 } pair ? (int.Parse(pair[0], CultureInfo.InvariantCulture), pair[1]) : null,
                Progress = parsed.GetValue(progress),
                Units = parsed.GetValue(units) == "imperial" ? UnitSystem.Imperial : UnitSystem.Metric,
            }));
        return command;
    }

    static int Run(Terminal terminal, SearchOptions asking)
    {
        var loaded = asking.Shelf is { } folder ? BoardFile.Read(asking.File, folder) : BoardFile.Read(asking.File);
        if (loaded.Board is not { } board)
        {
            if (asking.AsJson)
                terminal.Out.Write(ResultDocument.WriteErrors(loaded.Complaints));
            CheckCommand.Complain(terminal, loaded.Complaints);
            return Exit.Unread;
        }

        if (Fixed(terminal, asking, loaded.Shelf) is not { } places)
            return Exit.Unread;
        using var stopping = new CancellationTokenSource();
        void Stop(object? sender, ConsoleCancelEventArgs pressed)
        {
            pressed.Cancel = true;
            stopping.Cancel();
        }

        Console.CancelKeyPress += Stop;
        try
        {
            var search = Search.Over(
                new SearchRequest(board, [.. loaded.Shelf.Parts.Select(p => p.Part)]) { Fixed = places, IgnoresStock = asking.AnyStock });
            return TakenUp(terminal, asking, search) ? Finish(terminal, asking, search, Watched(terminal, asking, search, stopping.Token))
                : Exit.Unread;
        }
        finally
        {
            Console.CancelKeyPress -= Stop;
        }
    }

    /// <summary>Runs the search; on a screen one sees from the first second on what it has found so far.</summary>
    static SearchResult Watched(Terminal terminal, SearchOptions asking, Search search, CancellationToken stopping)
    {
        var since = Stopwatch.StartNew();
        var shown = TimeSpan.Zero;
        while (!stopping.IsCancellationRequested && search.Step())
        {
            if (!terminal.IsStyled || since.Elapsed - shown < TimeSpan.FromMilliseconds(shown == TimeSpan.Zero ? 300 : 1000))
                continue;
            shown = since.Elapsed;
            terminal.Error.Write("\r"
                + TerminalText.Padded(SearchReport.Line(search.Progress, search.Glimpse(), asking.Units), terminal.Width - 1));
        }

        if (shown > TimeSpan.Zero)
            terminal.Error.Write("\r" + new string(' ', terminal.Width - 1) + "\r");
        return search.Found(stopping);
    }

    static bool TakenUp(Terminal terminal, SearchOptions asking, Search search)
    {
        if (asking.Progress is not { } path || !File.Exists(path))
            return true;
        if (SearchStateFile.Read(File.ReadAllText(path)) is { } state && search.Resume(state))
            return true;
        terminal.Error.WriteLine($"{path} belongs to another brief or shelf, or is no search that was stopped: take it away, or name another file.");
        return false;
    }

    static int Finish(Terminal terminal, SearchOptions asking, Search search, SearchResult result)
    {
        var chosen = result.Chosen(asking.Most);
        var misses = result.Boards.Count == 0 && result.IsComplete && result.Missing.Count == 0 && result.Empty.Count == 0 ? search.WhyNot()
            : [];
        if (asking.AsTable)
            terminal.Out.Write(SearchDocument.WriteTable(result));
        else if (asking.AsJson)
            terminal.Out.Write(SearchDocument.Write(result, misses));
        else
            SearchReport.Write(new TerminalText(terminal), result, chosen, misses, asking.Units);
        if (asking.Progress is { } place)
        {
            if (result.IsComplete)
                File.Delete(place);
            else
                DurableFile.Write(place, SearchStateFile.Write(search.Save()));
        }

        if (asking.Picture is { } picture && TradePicture.Draw(result, asking.Trade.Across, asking.Trade.Up, chosen) is { } chart)
        {
            PlotCommand.Write(picture, ChartLayout.Compute(chart, new ChartView(PictureWidth) { Units = asking.Units }).Drawing);
            terminal.Error.WriteLine($"Wrote {picture}.");
        }

        if (asking.Write is var (number, path) && !WriteBoard(terminal, asking, result, number, path))
            return Exit.Unread;
        return result.Boards.Count > 0 && result.IsComplete ? Exit.Holds : Exit.Wanting;
    }

    static bool WriteBoard(Terminal terminal, SearchOptions asking, SearchResult result, int number, string path)
    {
        if (number > result.Boards.Count)
        {
            terminal.Error.WriteLine(FormattableString.Invariant($"There is no board {number}: {result.Boards.Count} were found. Nothing was written."));
            return false;
        }

        if (File.Exists(path))
        {
            terminal.Error.WriteLine($"{path} is there already and was left as it is.");
            return false;
        }

        var found = result.Boards[number - 1];
        var name = FormattableString.Invariant($"{result.Request.Board.Name.Or("Board")} {number}");
        var changed = FoundBoardText.Write(File.ReadAllText(asking.File), found, name, ShelfFrom(asking, path, result.Request.Board));
        if (changed.Refusal is { } refusal)
        {
            terminal.Error.WriteLine($"{refusal.Says} {refusal.Remedy} Nothing was written.");
            return false;
        }

        DurableFile.Write(path, changed.Text);
        terminal.Error.WriteLine($"Wrote {path}: boardwright check {path} says the same of it.");
        return true;
    }

    /// <summary>The shelf as it is reached from the new file, where that is another place than the brief's.</summary>
    static string? ShelfFrom(SearchOptions asking, string path, Board board)
    {
        static string FolderOf(string file) => Path.GetDirectoryName(Path.GetFullPath(file)) ?? "/";
        var (from, to) = (FolderOf(asking.File), FolderOf(path));
        string Reached(string folder) => Path.GetRelativePath(to, folder).Replace('\\', '/').TrimEnd('/') + "/";
        return asking.Shelf is { } shelf ? Reached(Path.GetFullPath(shelf))
            : from != to && board.Shelf is { IsKnown: true, Value.Items: [var only] } ? Reached(Path.GetFullPath(Path.Combine(from, only)))
            : null;
    }

    static Dictionary<Slot, string>? Fixed(Terminal terminal, SearchOptions asking, Shelf shelf)
    {
        var places = new Dictionary<Slot, string>();
        var wrong = false;
        foreach (var one in asking.Fix)
        {
            var (key, id) = one.Split('=', 2) is [var k, var i] ? (k.Trim(), i.Trim()) : (one, "");
            if (SlotKeys.SlotOf(key) is not { } slot)
                terminal.Error.WriteLine($"--fix {one}: {(key.Length == 0 ? "nothing" : key)} is no place for a part; the places are {string.Join(", ", Enum.GetValues<Slot>().Where(s => SlotKeys.SlotOf(SlotKeys.KeyOf(s)) is not null).Select(SlotKeys.KeyOf))}.");
            else if (shelf.Find(id) is not { } part)
                terminal.Error.WriteLine($"--fix {one}: the shelf has no '{id}'{(Nearest.List(id, shelf.Parts.Select(p => p.Id), 1) is [var near] ? $"; was '{near}' meant?" : ".")}");
            else if (!Goes(part.Kind, slot))
                terminal.Error.WriteLine($"--fix {one}: '{id}' is a {part.Kind}, which does not go there.");
            else
            {
                places[slot] = id;
                continue;
            }

            wrong = true;
        }

        return wrong ? null : places;
    }

    static bool Goes(string kind, Slot slot) => kind == slot switch
    {
        Slot.Trucks => "truck",
        Slot.Wheels => "wheel",
        Slot.MotorPulley or Slot.WheelPulley => "pulley",
        _ => Entry.Snake(slot.ToString()),
    };

    static (Criterion Across, Criterion Up)? Traded(string text)
    {
        static Criterion? Named(string word) =>
            Enum.GetValues<Criterion>().Where(c => Entry.Word(c) == word.Trim()).Select(c => (Criterion?)c).FirstOrDefault();
        return text.Split(',') is [var a, var b] && Named(a) is { } across && Named(b) is { } up && across != up ? (across, up) : null;
    }

    sealed record SearchOptions(string File, string? Shelf, string[] Fix, bool AnyStock)
    {
        public required int Most { get; init; }

        public required bool AsJson { get; init; }

        public required bool AsTable { get; init; }

        public required string? Picture { get; init; }

        public required (Criterion Across, Criterion Up) Trade { get; init; }

        public required (int Number, string File)? Write { get; init; }

        public required string? Progress { get; init; }

        public required UnitSystem Units { get; init; }
    }
}
