using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Pictures;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Results;
using Boardwright.Files.Routes;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.Spreads;
using Route = Boardwright.Road.Route;

namespace Boardwright.App.Commands;

/// <summary><c>ride</c>: rides a board over a route, minute by minute.</summary>
static class RideCommand
{
    const string Cruise = "cruise";

    // An hour's ride with all of it is then shown within a second.
    const int UsualSamples = 64;

    // Starts and stops take some seconds, and would look broken with fewer moments.
    const double PictureEvery = 0.5;

    /// <summary>The command.</summary>
    /// <param name="terminal">Where to write.</param>
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The board file, NAME.board.yaml." };
        file.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var route = new Option<string>("--route") { Description = "The route to ride, GPX or CSV; the brief's own where not given.", HelpName = "FILE" };
        var loop = new Option<string>("--loop") { Description = "Instead of a route: 'cruise' rides a level road at the brief's cruise speed until the reserve is reached.", HelpName = "KIND" };
        loop.AcceptOnlyFromAmong(Cruise);
        var repeat = new Option<bool>("--repeat-until-reserve") { Description = "Rides the route again and again until the reserve is reached, halting after each round." };
        var asJson = new Option<bool>("--json") { Description = "Prints the ride for other programs, always metric; with --every also its trace." };
        var asTable = new Option<bool>("--csv") { Description = "Prints the trace as comma-separated values, always metric." };
        var every = new Option<double?>("--every") { Description = "Seconds between two moments of the trace; where not given 1, and for pictures alone 0.5.", HelpName = "SECONDS" };
        var samples = new Option<int>("--samples") { Description = "How many boards are ridden to say how well the figures are known; 64 where not given, 256 and more for steadier ends, 0 leaves that out.", HelpName = "N", DefaultValueFactory = _ => UsualSamples };
        var plot = new Option<string>("--plot") { Description = "Also writes pictures of the ride into a folder: over distance, over time, and where its energy went.", HelpName = "DIR" };
        var units = new Option<string>("--units") { Description = "Units of the report and the pictures: metric or imperial.", HelpName = "UNITS", DefaultValueFactory = _ => "metric" };
        units.AcceptOnlyFromAmong("metric", "imperial");
        var plain = new Option<bool>("--plain") { Description = "No colour and no dim text, 80 columns." };
        samples.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is not (0 or >= 8 and <= 1_000_000))
                result.AddError("--samples is 0, or from 8 to 1000000.");
        });
        every.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<double?>() is { } seconds && !(seconds > 0 && seconds <= 3600))
                result.AddError("--every is above 0 and at most 3600 seconds.");
        });
        var command = new Verb(
            "ride", "Rides a board over a route: how far and how long, on what energy, how hot, and how sure that is. Exit code 0 when the ride ends as planned and nothing gets too hot, 1 when not or when values are missing, 2 when a file could not be read.",
            "boardwright ride tern.board.yaml --loop cruise", "boardwright ride tern.board.yaml --route hill.gpx --repeat-until-reserve", "boardwright ride tern.board.yaml --route hill.gpx --plot pictures", "boardwright ride tern.board.yaml --route hill.csv --csv > hill-ride.csv")
        { file, route, loop, repeat, asJson, asTable, every, plot, samples, units, plain };
        command.Validators.Add(result =>
        {
            if (result.GetValue(loop) is not null && result.GetValue(route) is not null)
                result.AddError("--loop and --route exclude one another.");
            if (result.GetValue(asJson) && result.GetValue(asTable))
                result.AddError("--json and --csv exclude one another.");
        });
        command.SetAction(parsed =>
        {
            var (json, table, seconds, pictures) =
                (parsed.GetValue(asJson), parsed.GetValue(asTable), parsed.GetValue(every), parsed.GetValue(plot));
            var traced = table || pictures is not null || (json && seconds is not null);
            return Run(
                parsed.GetValue(plain) ? terminal with { IsStyled = false, Width = 80 } : terminal,
                new RideRequest(parsed.GetRequiredValue(file), parsed.GetValue(route), parsed.GetValue(loop) == Cruise, json, table,
                table ? 0 : parsed.GetValue(samples))
                {
                    Options = new RideOptions
                    {
                        Repeats = parsed.GetValue(repeat),
                        TraceEvery = traced ? Duration.FromSeconds(seconds ?? (table || json ? 1 : PictureEvery)) : null
                    },
                    Pictures = pictures,
                    ShowsTrace = table || seconds is not null,
                    Units = parsed.GetValue(units) == "imperial" ? UnitSystem.Imperial : UnitSystem.Metric,
                });
        });
        return command;
    }

    static int Run(Terminal terminal, RideRequest request)
    {
        var loaded = BoardFile.Read(request.File);
        if (loaded.Board is not { } board)
            return Refuse(terminal, request, loaded.Complaints);
        RouteReading? reading = null;
        if (!request.Cruises)
        {
            var path = request.Route ?? (board.Brief.Route.IsKnown
                ? Path.Combine(Path.GetDirectoryName(request.File) ?? "", board.Brief.Route.Value) : null);
            if (path is null)
            {
                terminal.Error.WriteLine("No route is given: add --route FILE or --loop cruise, or name one as brief.route in the board file.");
                return Exit.Unread;
            }

            reading = RouteFile.Load(path);
            if (reading.Route is null)
                return Refuse(terminal, request, reading.Complaints);
        }

        return reading?.Route is { } route
            ? Show(terminal, request, board, route, Rides.Ride.Simulate(board, route, request.Options), reading.Notes)
            : Show(terminal, request, board, null, Rides.Ride.Cruising(board, request.Options), []);
    }

    static int Show(Terminal terminal, RideRequest request, Board board, Route? route, Answer<Rides.Ride> answer,
        IReadOnlyList<RouteNote> notes)
    {
        if (!answer.IsKnown)
        {
            var paper = new TerminalText(terminal.Error, terminal.Width, isStyled: false);
            paper.Write(0, "The ride cannot be computed without:");
            foreach (var key in answer.Missing)
                paper.Write(2, $"{key}: {MeasureAdvice.For(key)}");
            return Exit.Wanting;
        }

        var ride = answer.Value;
        var spread = request.Samples == 0 ? null
            : RideSpread.Sample(board, route, request.Options, request.Samples, progress: Shown(terminal, request.Samples)).Value;
        if (request.AsTable)
            terminal.Out.Write(RideDocument.WriteTable(ride));
        else if (request.AsJson)
            terminal.Out.Write(RideDocument.Write(board, request.ShowsTrace ? ride : ride with { Trace = [] }, spread));
        else
            RideReport.Write(new TerminalText(terminal), board, ride, spread, notes, request.Units);
        if (request.Pictures is { } folder)
            Draw(terminal, request, folder, RidePictures.Draw(board, ride, route));
        return IsAsPlanned(ride, request, route) ? Exit.Holds : Exit.Wanting;
    }

    static void Draw(Terminal terminal, RideRequest request, string folder, IReadOnlyList<Chart> charts)
    {
        if (charts.Count == 0)
        {
            terminal.Error.WriteLine("No picture was written: the board never moved.");
            return;
        }

        // What goes to another program is nothing but the document.
        var isQuiet = request.AsJson || request.AsTable;
        if (!isQuiet)
            terminal.Out.WriteLine();
        foreach (var chart in charts)
        {
            var path = PlotCommand.PathOf(folder, request.File, chart.Name);
            PlotCommand.Write(path, PlotCommand.DrawingOf(chart, request.Units));
            if (!isQuiet)
                terminal.Out.WriteLine($"Wrote {path}: {chart.Title}.");
        }
    }

    static bool IsAsPlanned(Rides.Ride ride, RideRequest request, Route? route)
    {
        var planned = route is null || request.Options.Repeats ? RideEnd.Reserve : RideEnd.EndOfRoute;
        return ride.End == planned && !ride.IsTooHot;
    }

    static int Refuse(Terminal terminal, RideRequest request, IReadOnlyList<Complaint> complaints)
    {
        if (request.AsJson)
            terminal.Out.Write(ResultDocument.WriteErrors(complaints));
        CheckCommand.Complain(terminal, complaints);
        return Exit.Unread;
    }

    // Thousands of rides take a while; on a screen one likes to see that they go on.
    static RideCounter? Shown(Terminal terminal, int samples) => terminal.IsStyled && samples >= 2000 ? new(terminal.Error, samples) : null;

    sealed class RideCounter(TextWriter writer, int whole) : IProgress<int>
    {
        readonly Lock gate = new();

        public void Report(int value)
        {
            lock (gate)
                writer.Write(value == whole ? "\r                    \r" : FormattableString.Invariant($"\r{100 * (long)value / whole} % ridden"));
        }
    }

    sealed record RideRequest(string File, string? Route, bool Cruises, bool AsJson, bool AsTable, int Samples)
    {
        public required RideOptions Options { get; init; }

        public required UnitSystem Units { get; init; }

        /// <summary>Folder for pictures; <c>null</c> for none.</summary>
        public required string? Pictures { get; init; }
        /// <summary>Whether the trace was asked for, and not only needed for pictures.</summary>
        public required bool ShowsTrace { get; init; }
    }
}
