using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.App.ShopWork;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Pictures;
using Boardwright.Files.Boards;
using Boardwright.Files.Logs;
using Boardwright.Findings;
using Boardwright.Shops;
using Boardwright.Spreads;

namespace Boardwright.App.Commands;

/// <summary><c>credibility</c>: holds the model against rides, and says its bias and spread in each quantity.</summary>
static class CredibilityCommand
{
    /// <summary>The command.</summary>
    /// <param name="terminal">Where to write.</param>
    public static Command Create(Terminal terminal)
    {
        var files = new Argument<string[]>("FILE") { Description = "Board files, each followed by the logs of its rides. Without any, every ride of every built board in the shop.", Arity = ArgumentArity.ZeroOrMore };
        var shop = new Option<string>("--shop") { Description = "The shop: a file, or the connection string of a PostgreSQL database.", HelpName = "PLACE" };
        var folder = new Option<string>("--out") { Description = "Folder for the pictures of measured against predicted, one for each quantity.", HelpName = "DIR" };
        var into = new Option<string>("--into") { Description = "Board file that takes the bias and spread over, in its section model; its ranges become wider by them.", HelpName = "FILE" };
        var level = new Option<bool>("--level") { Description = "The roads were level; else the heights of the logs count." };
        var log = new LogOptions();
        var command = new Verb(
            "credibility", "Holds the model against rides: measured over predicted in energy, sag and temperatures, its bias and its own spread, each with its range. Exit code 0 when any ride told something, 1 when none did, 2 when a file could not be read.",
            "boardwright credibility", "boardwright credibility tern.board.yaml monday.csv friday.csv puffin.board.yaml hill.csv --out pictures", "boardwright credibility --into tern.board.yaml")
        { files, shop, folder, into, level };
        log.AddTo(command);
        command.Validators.Add(result =>
        {
            if (result.GetValue(files) is { Length: > 0 } given && !BoardFile.IsCalledSo(given[0]))
                result.AddError("Name a board file first, NAME.board.yaml, and after it the logs of its rides.");
        });
        command.SetAction((parsed, cancel) => RunAsync(
            terminal, parsed.GetValue(files) ?? [], parsed.GetValue(shop), parsed.GetValue(folder), parsed.GetValue(into),
            parsed.GetValue(level), log.Read(parsed), cancel));
        return command;
    }

    static async Task<int> RunAsync(
        Terminal terminal, string[] files, string? place, string? folder, string? into, bool isLevel, LogWishes wishes,
        CancellationToken cancel)
    {
        var evidence = new List<RideEvidence>();
        void PassedOver(string why) => terminal.Error.WriteLine(why);
        try
        {
            if (files.Length == 0)
            {
                await using var shop = await ShopLocations.OpenAsync(place, cancel);
                await foreach (var ride in ShopRides.ReadAsync(shop, PassedOver, cancel))
                    evidence.AddRange(ShopRides.CompareRide(ride, PassedOver, cancel));
            }
            else if (!Read(terminal, files, isLevel, wishes, evidence, PassedOver, cancel))
            {
                return Exit.Unread;
            }
        }
        catch (ShopException trouble)
        {
            terminal.Error.WriteLine(trouble.Message);
            return Exit.Unread;
        }

        var all = Credibility.Compute(evidence);
        var paper = new TerminalText(terminal);
        if (all.Count == 0)
        {
            paper.Write(0, "No ride says anything of the model yet: keep the logs of rides with speed, heights, pack volts and amperes with their built boards, or name them here.");
            return Exit.Wanting;
        }

        paper.Write(0, "Measured over predicted", TerminalStyle.Heading);
        foreach (var quantity in all)
        {
            paper.Write(2, quantity.Says);
            foreach (var caution in quantity.Cautions) paper.Write(4, caution, TerminalStyle.Quiet);
        }

        paper.Gap();
        paper.Write(0, "Ride by ride", TerminalStyle.Heading);
        foreach (var one in evidence)
            paper.Write(2, $"{one.Board}, {one.Ride}: {one.Difference.Says}");
        paper.Gap();
        if (folder is not null)
        {
            foreach (var quantity in all)
            {
                var chart = CredibilityPicture.Draw(quantity);
                var path = Path.Combine(folder, $"{chart.Name}.svg");
                PlotCommand.Write(path, PlotCommand.DrawingOf(chart, UnitSystem.Metric));
                terminal.Out.WriteLine($"Wrote {path}: {chart.Title}.");
            }
        }

        return into is null ? Exit.Holds : Take(terminal, paper, into, all);
    }

    static bool Read(Terminal terminal, string[] files, bool isLevel, LogWishes wishes, List<RideEvidence> evidence,
        Action<string> passedOver, CancellationToken cancel)
    {
        var (isRead, board, name) = (true, default(Parts.Board), "");
        foreach (var file in files)
        {
            if (BoardFile.IsCalledSo(file))
            {
                var loaded = BoardFile.Read(file);
                if (loaded.Complaints.Count > 0) CheckCommand.Complain(terminal, loaded.Complaints);
                (board, name) = (loaded.Board, loaded.Board?.Name.Or(BoardFile.NameOf(file)) ?? "");
                isRead &= board is not null;
                continue;
            }

            var reading = RideLogFile.Read(file, wishes);
            if (reading.Complaints.Count > 0) CheckCommand.Complain(terminal, reading.Complaints);
            isRead &= reading.Log is not null;
            if (board is null || reading.Log is not { } log) continue;
            var answer = RideComparison.Compare(board, log, new() { Grade = isLevel ? default(Fraction) : null }, cancellation: cancel);
            if (answer.IsKnown) evidence.AddRange(
                answer.Value.Differences.Select(d => new RideEvidence(name, Path.GetFileNameWithoutExtension(file), d)));
            else passedOver($"{file} cannot be held against the model without {string.Join(", ", answer.Missing)}.");
        }

        return isRead;
    }

    static int Take(Terminal terminal, TerminalText paper, string file, IReadOnlyList<QuantityCredibility> all)
    {
        var gathered = BoardFolder.Gather(file);
        var text = gathered.Files.Main.Text;
        foreach (var quantity in all.Where(q => KeyOf(q) is not null && !double.IsNaN(q.Give)))
        {
            var entered = new Entered(Invariant($"{quantity.Bias.Value.Value:0.000}"), Invariant($"{100 * quantity.Give:0.0} %"), "measured");
            var changed = BoardText.Change(text, KeyOf(quantity)!, entered);
            if (changed.Refusal is { } refusal)
            {
                terminal.Error.WriteLine($"{refusal.Says} {refusal.Remedy}");
                return Exit.Unread;
            }

            text = changed.Text;
            paper.Write(0, $"{file}: {KeyOf(quantity)}: {{ value: {entered.Value}, give: {entered.Give}, from: measured }}");
        }

        foreach (var path in gathered.Update(gathered.Files.With(gathered.Files.Main.Path, text)))
            terminal.Out.WriteLine($"Wrote {path}.");
        return Exit.Holds;
    }

    static string? KeyOf(QuantityCredibility quantity) =>
        quantity.Kind.Id == RideComparison.Energy.Id ? "model.energy" : quantity.Kind.Id == RideComparison.Winding.Id ? "model.winding_rise" : null;
}
