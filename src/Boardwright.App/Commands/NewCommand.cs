using System.Buffers;
using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.Files;
using Boardwright.Files.Boards;

namespace Boardwright.App.Commands;

/// <summary><c>new</c>: writes the beginnings of a board file.</summary>
static class NewCommand
{
    // Some systems refuse these in a file's name, and a board may be taken to one of them.
    static readonly SearchValues<char> Forbidden = SearchValues.Create("/\\:\n\"*?<>|");

    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var name = new Argument<string>("NAME") { Description = "Name of the board; the file is called NAME.board.yaml." };
        var folder = new Option<string>("--out") { Description = "Folder for the file; this one where not given.", HelpName = "DIR" };
        var command = new Verb("new", "Writes the beginnings of a board file, with a comment beside every line that is not plain.", "boardwright new heron", "boardwright new heron --out boards") { name, folder };
        command.SetAction(parsed => Run(terminal, parsed.GetRequiredValue(name), parsed.GetValue(folder) ?? "."));
        return command;
    }

    static int Run(Terminal terminal, string name, string folder)
    {
        var title = name.EndsWith(BoardFile.Ending, StringComparison.OrdinalIgnoreCase) ? name[..^BoardFile.Ending.Length] : name;
        if (string.IsNullOrWhiteSpace(title) || title.StartsWith('.') || title.AsSpan().ContainsAny(Forbidden))
        {
            terminal.Error.WriteLine($"'{name}' cannot be a file's name. Give a plain name, and the folder with --out.");
            return Exit.Unread;
        }

        var file = folder == "." ? title + BoardFile.Ending : Path.Combine(folder, title + BoardFile.Ending);
        if (File.Exists(file))
        {
            terminal.Error.WriteLine($"{file} is there already and was left as it is.");
            return Exit.Unread;
        }

        DurableFile.Write(file, Starter.Text(title));
        terminal.Out.WriteLine($"Wrote {file}. Fill in what is known, then: boardwright check {(file.Contains(' ', StringComparison.Ordinal) ? $"\"{file}\"" : file)}");
        return Exit.Holds;
    }
}
