using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pictures;
using Boardwright.Documents.Views;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Findings;

namespace Boardwright.App.Commands;

/// <summary><c>plot</c>: writes pictures of a board.</summary>
static class PlotCommand
{
    const string PictureEnding = ".svg";
    const double Width = 760;

    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The board file, NAME.board.yaml." };
        file.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        string[] names = [.. BoardPictures.All.Select(p => p.Id), .. BoardViews.All.Select(v => v.Id)];
        var picture = new Option<string[]>("--picture") { Description = $"Which picture: {string.Join(", ", names)}. All of them where not given; may be given more than once.", HelpName = "PICTURE", DefaultValueFactory = _ => [] };
        picture.AcceptOnlyFromAmong(names);
        var place = new Option<string>("--out") { Description = "Folder for the pictures, or a file ending in .svg for one picture; this folder where not given.", HelpName = "DIR|FILE" };
        var units = new Option<string>("--units") { Description = "Units of axes and labels: metric or imperial.", HelpName = "UNITS", DefaultValueFactory = _ => "metric" };
        units.AcceptOnlyFromAmong("metric", "imperial");
        var command = new Verb(
            "plot", "Writes pictures of a board, and the board drawn to scale, as SVG, NAME.PICTURE.svg. Exit code 0 when every picture was written, 1 when one waits for values that are not known.",
            "boardwright plot tern.board.yaml", "boardwright plot tern.board.yaml --picture traction --out traction.svg", "boardwright plot tern.board.yaml --picture above --picture side --picture behind", "boardwright plot tern.board.yaml --out pictures --units imperial")
        { file, picture, place, units };
        command.SetAction(parsed => Run(
            terminal,
            parsed.GetRequiredValue(file),
            parsed.GetValue(picture) ?? [],
            parsed.GetValue(place) ?? ".",
            parsed.GetValue(units) == "imperial" ? UnitSystem.Imperial : UnitSystem.Metric));
        return command;
    }

    static int Run(Terminal terminal, string file, string[] asked, string place, UnitSystem units)
    {
        var pictures = BoardPictures.All.Where(p => asked.Length == 0 || asked.Contains(p.Id, StringComparer.Ordinal)).ToList();
        var views = BoardViews.All.Where(v => asked.Length == 0 || asked.Contains(v.Id, StringComparer.Ordinal)).ToList();
        var isFile = place.EndsWith(PictureEnding, StringComparison.OrdinalIgnoreCase);
        if (isFile && pictures.Count + views.Count != 1)
        {
            terminal.Error.WriteLine($"{place} is one file: say with --picture which one to write there, or give a folder.");
            return Exit.Unread;
        }

        var loaded = BoardFile.Read(file);
        if (loaded.Board is not { } board)
        {
            CheckCommand.Complain(terminal, loaded.Complaints);
            return Exit.Unread;
        }

        var examination = Examination.Examine(board);
        var errors = new TerminalText(terminal.Error, terminal.Width, isStyled: false);
        var code = Exit.Holds;
        foreach (var picture in pictures)
        {
            var answer = picture.Of(examination);
            if (answer.IsKnown)
            {
                Draw(picture.Id, picture.Shows, DrawingOf(answer.Value, units));
                continue;
            }

            // A picture that this board has no use for is only missed by those who asked for it.
            if (answer.IsBeside && asked.Length == 0)
                continue;
            errors.Write(0, $"{picture.Id} was not written: {WhyNot(answer.IsBeside, answer.Missing)}");
            code = Exit.Wanting;
        }

        foreach (var view in views)
            Draw(view.Id, view.Shows, view.Of(examination, new ViewWishes { Units = units }));
        return code;

        void Draw(string id, string shows, Drawing drawing)
        {
            var path = isFile ? place : PathOf(place, file, id);
            Write(path, drawing);
            terminal.Out.WriteLine($"Wrote {path}: {shows}.");
        }
    }

    static string WhyNot(bool isBeside, IReadOnlyList<string> missing) =>
        isBeside ? "this board has no part that it would show."
        : missing.Count > 0 ? $"it waits for {string.Join(", ", missing)}."
        : "the question has no answer on this board; boardwright check says why.";

    /// <summary>A chart as wide as a page.</summary>
    internal static Drawing DrawingOf(Chart chart, UnitSystem units) =>
        ChartLayout.Compute(chart, new ChartView(Width) { Units = units }).Drawing;
    /// <summary>Writes a drawing as SVG.</summary>
    internal static void Write(string path, Drawing drawing) => DurableFile.Write(path, Svg.Write(drawing));
    /// <summary>Path of a picture of a board in a folder.</summary>
    internal static string PathOf(string folder, string file, string picture) => Path.Combine(folder == "." ? "" : folder, $"{BoardFile.NameOf(file)}.{picture}{PictureEnding}");
}
