using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.Files;
using Boardwright.Files.Boards;

namespace Boardwright.App.Commands;

/// <summary><c>schema</c>: writes the JSON schemas with which editors complete and check board files, shelf files and files of built
/// boards.</summary>
static class SchemaCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var folder = new Option<string>("--out") { Description = "Folder for the three files; this one where not given.", HelpName = "DIR" };
        var command = new Verb("schema", "Writes the JSON schemas of board files, shelf files and files of built boards, for editors that complete and check while one types.", "boardwright schema --out schema") { folder };
        command.SetAction(parsed => Run(terminal, parsed.GetValue(folder) ?? "."));
        return command;
    }

    static int Run(Terminal terminal, string folder)
    {
        foreach (var (name, text) in new[] { ("board.schema.json", Schemas.Board()), ("shelf.schema.json", Schemas.Shelf()), ("built.schema.json", Schemas.Built()) })
        {
            var file = folder == "." ? name : Path.Combine(folder, name);
            DurableFile.Write(file, text);
            terminal.Out.WriteLine($"Wrote {file}");
        }

        return Exit.Holds;
    }
}
