using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.App.Workbench.PaperPages;
using Boardwright.Documents.Papers;
using Boardwright.Documents.Templates;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Routes;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;

namespace Boardwright.App.Commands;

/// <summary><c>papers</c>: writes the papers of a board.</summary>
static class PapersCommand
{
    /// <summary>The command.</summary>
    /// <param name="terminal">Where to write.</param>
    /// <param name="spread">Computes how well the figures are known.</param>
    public static Command Create(Terminal terminal, Func<Examination, IReadOnlyDictionary<string, Interval>> spread)
    {
        var file = new Argument<string>("FILE") { Description = "The board file, NAME.board.yaml." };
        file.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var names = PaperSet.All.Select(p => p.Id).ToArray();
        var only = new Option<string[]>("--only") { Description = $"Which paper: {string.Join(", ", names)}. All of them where not given; may be given more than once.", HelpName = "PAPER", DefaultValueFactory = _ => [] };
        only.AcceptOnlyFromAmong(names);
        var folder = new Option<string>("--out") { Description = "Folder for the papers; this folder where not given.", HelpName = "DIR" };
        var paper = new Option<string>("--paper") { Description = "Size of the paper: A4 or Letter.", HelpName = "SIZE", DefaultValueFactory = _ => PaperSize.A4.Name };
        paper.AcceptOnlyFromAmong(PaperSize.A4.Name, PaperSize.Letter.Name);
        var revision = new Option<string>("--revision") { Description = "Which state of the board it is, printed on every page; the first digits of the file's own SHA-256 where not given.", HelpName = "WORD" };
        var shop = new Option<string>("--shop-address") { Description = "Address under which the shop shows its boards; the code on the build sheet opens the board's page there.", HelpName = "URL" };
        shop.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } text
                && !(Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https"))
                result.AddError($"--shop-address is an address such as https://shop.example/board/of, and not '{text}'.");
        });
        var units = new Option<string>("--units") { Description = "Units of the papers: metric or imperial. The drill template keeps its millimetres.", HelpName = "UNITS", DefaultValueFactory = _ => "metric" };
        units.AcceptOnlyFromAmong("metric", "imperial");
        var route = new Option<string>("--route") { Description = "The ride under whose currents the wires are shown, GPX or CSV; the brief's own where not given, and the brief's climb where it names none.", HelpName = "FILE" };
        var command = new Verb(
            "papers", "Writes the papers of a board: drill template, build sheet, lists, limits, bench, spec, price and carrier sheets, owner's page. Exit code 0 when every paper was written in full, 1 when one waits for values or has blanks to fill in.",
            "boardwright papers tern.board.yaml", "boardwright papers tern.board.yaml --out papers --paper Letter", "boardwright papers tern.board.yaml --only drill-template --out template")
        { file, folder, only, paper, units, route, revision, shop };
        command.SetAction(parsed =>
            Run(terminal, new PapersRequest(parsed.GetRequiredValue(file), parsed.GetValue(folder) ?? ".", parsed.GetValue(only) ?? [])
            {
                Size = parsed.GetValue(paper) == PaperSize.Letter.Name ? PaperSize.Letter : PaperSize.A4,
                Revision = parsed.GetValue(revision),
                Units = parsed.GetValue(units) == "imperial" ? UnitSystem.Imperial : UnitSystem.Metric,
                Route = parsed.GetValue(route),
                Shop = parsed.GetValue(shop) is { } address ? new Uri(address) : null,
            }, spread));
        return command;
    }

    static int Run(Terminal terminal, PapersRequest request, Func<Examination, IReadOnlyDictionary<string, Interval>> spread)
    {
        var loaded = BoardFile.Read(request.File);
        if (loaded.Board is not { } board)
        {
            CheckCommand.Complain(terminal, loaded.Complaints);
            return Exit.Unread;
        }

        var kinds = PaperSet.All.Where(p => request.Only.Count == 0 || request.Only.Contains(p.Id, StringComparer.Ordinal)).ToList();
        Rides.Ride? ride = null;
        var path = request.Route ?? (board.Brief.Route.IsKnown
            ? Path.Combine(Path.GetDirectoryName(request.File) ?? "", board.Brief.Route.Value) : null);
        if (path is not null)
        {
            var reading = RouteFile.Load(path);
            if (reading.Route is null)
            {
                CheckCommand.Complain(terminal, reading.Complaints);
                return Exit.Unread;
            }

            // What the ride lacks, the papers lack too, and say so.
            ride = Rides.Ride.Simulate(board, reading.Route, new RideOptions()) is { IsKnown: true } answer ? answer.Value : null;
        }

        var examination = Examination.Examine(board);
        var order = new PaperOrder(examination)
        {
            Intervals = kinds.Exists(k => k.NeedsIntervals) ? spread(examination)
                : new Dictionary<string, Interval>(StringComparer.Ordinal),
            Revision = request.Revision ?? RevisionOf(request.File),
            ShopAddress = request.Shop,
            Size = request.Size,
            Units = request.Units,
            Ride = ride,
        };
        var written = kinds.ConvertAll(kind => (Kind: kind, Paper: kind.Write(order)));
        DurableFile.Write(written.SelectMany(w => w.Paper.Files)
            .Select(f => (Path.Combine(request.Folder, $"{BoardFile.NameOf(request.File)}.{f.Name}"), f.Bytes)));
        return Tell(terminal, board, request, written);
    }

    // Of a part that nobody chose the part alone, not each of its values.
    static string FolderName(Board board, IReadOnlyList<string> missing) =>
        string.Join(", ", missing.Select(key => board.Parts.UnchosenPlaceOf(key) is { } place ? "the " + place.Replace('_', ' ') : key)
        .Distinct(StringComparer.Ordinal));

    static int Tell(Terminal terminal, Board board, PapersRequest request, List<(PaperKind Kind, WrittenPaper Paper)> written)
    {
        var paper = new TerminalText(terminal.Out, terminal.Width, isStyled: false);
        var code = Exit.Holds;
        foreach (var (kind, result) in written)
        {
            foreach (var file in result.Files)
                terminal.Out.WriteLine($"Wrote {Path.Combine(request.Folder == "." ? "" : request.Folder, $"{BoardFile.NameOf(request.File)}.{file.Name}")}");
            var isMissing = result.Missing.Count > 0;
            if (result.Files.Count == 0)
                paper.Write(0, $"{kind.Title} was not written: {(isMissing ? $"it waits for {FolderName(board, result.Missing)}." : string.Join(" ", result.Objections))}");
            else if (isMissing)
                paper.Write(2, $"with blanks to fill in for {FolderName(board, result.Missing)}.");
            // A paper that this board has no use for is only missed by those who asked for it.
            if (isMissing || (result.Files.Count == 0 && request.Only.Count > 0))
                code = Exit.Wanting;
            foreach (var objection in result.Files.Count == 0 ? [] : result.Objections)
                paper.Write(4, objection, lead: "-", leadIndent: 2);
        }

        return code;
    }

    static string RevisionOf(string file) => PaperSession.RevisionOf(File.ReadAllText(file));

    sealed record PapersRequest(string File, string Folder, IReadOnlyList<string> Only)
    {
        public PaperSize Size { get; init; } = PaperSize.A4;

        public string? Revision { get; init; }

        public UnitSystem Units { get; init; } = UnitSystem.Metric;

        public string? Route { get; init; }

        public Uri? Shop { get; init; }
    }
}
