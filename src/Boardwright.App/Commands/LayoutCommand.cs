using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Boardwright.App.Reports;
using Boardwright.Boxes;
using Boardwright.Documents.Views;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Findings;

namespace Boardwright.App.Commands;

/// <summary><c>layout</c>: says where everything lies in the box, and proposes a place for what the board file does not state.</summary>
static class LayoutCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The board file, NAME.board.yaml." };
        file.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var svg = new Option<string>("--svg") { Description = "Also draw the box from above into this file.", HelpName = "OUT" };
        var json = new Option<bool>("--json") { Description = "Print the places as JSON." };
        var write = new Option<bool>("--write") { Description = "Write the proposed places into the board file; its comments stay." };
        var command = new Verb(
            "layout", "Proposes where everything lies in the box and prints the table of places, in millimetres from the middle of the box. Exit code 0 when everything has a place and nothing is wrong with it, 1 when not.",
            "boardwright layout tern.board.yaml", "boardwright layout tern.board.yaml --svg box.svg", "boardwright layout tern.board.yaml --write")
        { file, svg, json, write };
        command.SetAction(parsed =>
            Run(terminal, parsed.GetRequiredValue(file), parsed.GetValue(svg), parsed.GetValue(json), parsed.GetValue(write)));
        return command;
    }

    static int Run(Terminal terminal, string file, string? svg, bool isJson, bool isWritten)
    {
        var loaded = BoardFile.Read(file);
        if (loaded.Board is not { } board)
        {
            CheckCommand.Complain(terminal, loaded.Complaints);
            return Exit.Unread;
        }

        var examination = Examination.Examine(board);
        if (!examination.Layout.IsKnown)
        {
            terminal.Error.WriteLine(examination.Layout.IsBeside ? "This board has no box." : $"Nothing can be laid out until {string.Join(", ", examination.Layout.Missing)} is known.");
            return Exit.Wanting;
        }

        var layout = examination.Layout.Value;
        Finding[] wanting = [.. examination.Findings.Where(f => f.Rule.StartsWith("box.layout.", StringComparison.Ordinal) && f.Level != Level.Fine)];
        if (isJson)
            terminal.Out.Write(Json(layout, wanting));
        else
            Print(terminal, board.Name.Or("Board"), layout, wanting);
        var says = isJson ? terminal.Error : terminal.Out;
        if (svg is not null)
        {
            PlotCommand.Write(svg, BoardViews.Box(examination));
            says.WriteLine($"Wrote {svg}.");
        }

        if (isWritten && !Write(terminal, says, file, layout))
            return Exit.Unread;
        return wanting.Length == 0 ? Exit.Holds : Exit.Wanting;
    }

    static bool Write(Terminal terminal, TextWriter says, string file, BoxLayout layout)
    {
        PlacedThing[] proposed = [.. layout.Things.Where(t => !t.IsStated)];
        if (proposed.Length == 0)
        {
            says.WriteLine($"{file} states every place already.");
            return true;
        }

        var changed = LayoutText.Write(File.ReadAllText(file), proposed);
        if (changed.Refusal is { } refusal)
        {
            terminal.Error.WriteLine($"{refusal.Says} {refusal.Remedy}");
            return false;
        }

        DurableFile.Write(file, changed.Text);
        says.WriteLine($"Wrote {proposed.Length.ToString(CultureInfo.InvariantCulture)} places into {file}.");
        return true;
    }

    static void Print(Terminal terminal, string name, BoxLayout layout, Finding[] wanting)
    {
        var paper = new TerminalText(terminal.Out, terminal.Width, isStyled: false);
        terminal.Out.WriteLine($"{name}: what lies where in the box, {Mm(layout.RoomLength)} by {Mm(layout.RoomWidth)} mm inside, seen from above; mm from its middle.");
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"{"",-16}{"to the nose",12}{"to the right",14}  turned or wall");
        foreach (var thing in layout.Things)
        {
            var lies = thing.Wall is { } wall ? $"in the {Parts.Entry.Word(wall)} wall, {Mm(thing.Along)} along it"
                : $"{thing.Turn.ToString(CultureInfo.InvariantCulture)} deg";
            terminal.Out.WriteLine($"{thing.Name,-16}{Mm(thing.X),12}{Mm(thing.Y),14}  {lies}{(thing.IsStated ? "" : ", proposed")}");
        }

        terminal.Out.WriteLine();
        foreach (var finding in wanting)
        {
            paper.Write(0, $"{finding.Level.ToString().ToLowerInvariant()}: {finding.Says.In(UnitSystem.Metric)}");
            paper.Write(2, finding.Remedy.In(UnitSystem.Metric));
        }

        if (wanting.Length == 0)
            terminal.Out.WriteLine("Everything has a place. Only overlap, walls, bolts, height, room for wires and hands, and the distance of controller and pack were checked.");
    }

    static string Json(BoxLayout layout, Finding[] wanting)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new() { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("boardwright", 1);
            json.WriteNumber("length_mm", Rounded(layout.RoomLength));
            json.WriteNumber("width_mm", Rounded(layout.RoomWidth));
            json.WriteStartArray("things");
            foreach (var thing in layout.Things)
            {
                json.WriteStartObject();
                json.WriteString("name", thing.Name);
                json.WriteNumber("x_mm", Rounded(thing.X));
                json.WriteNumber("y_mm", Rounded(thing.Y));
                json.WriteNumber("turn_deg", thing.Turn);
                if (thing.Wall is { } wall)
                {
                    json.WriteString("wall", Parts.Entry.Word(wall));
                    json.WriteNumber("along_mm", Rounded(thing.Along));
                }

                json.WriteBoolean("stated", thing.IsStated);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("unplaced");
            foreach (var thing in layout.Unplaced)
                json.WriteStringValue(thing.Name);
            json.WriteEndArray();
            json.WriteStartArray("findings");
            foreach (var finding in wanting)
            {
                json.WriteStartObject();
                json.WriteString("id", finding.Rule);
                json.WriteString("level", finding.Level.ToString().ToLowerInvariant());
                json.WriteString("where", finding.Where);
                json.WriteString("says", finding.Says.In(UnitSystem.Metric));
                json.WriteString("remedy", finding.Remedy.In(UnitSystem.Metric));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    static double Rounded(Length value) => Math.Round(value.Millimetres, 2) + 0.0;

    static string Mm(Length value) => Rounded(value).ToString("0.#", CultureInfo.InvariantCulture);
}
