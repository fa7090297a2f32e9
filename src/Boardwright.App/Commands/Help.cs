using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Boardwright.App.Reports;

namespace Boardwright.App.Commands;

/// <summary>Shows what a command does, what it takes, and an example.</summary>
/// <param name="terminal">Where to write.</param>
/// <param name="isAskedFor">Whether somebody asked for help, so that it does not matter what else is missing or wrong.</param>
sealed class Help(Terminal terminal, bool isAskedFor) : SynchronousCommandLineAction
{
    readonly TerminalText paper = new(terminal);

    /// <inheritdoc/>
    public override bool ClearsParseErrors => isAskedFor;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        var command = parseResult.CommandResult.Command;
        paper.Write(0, command.Description ?? "");
        paper.Gap();
        paper.Write(2, Usage(command), TerminalStyle.Plain);
        Section("Commands", command.Subcommands.Select(c => (c.Name, (string?)FirstSentence(c.Description))));
        Section("Takes", command.Arguments.Select(a => (a.HelpName ?? a.Name, a.Description)));
        Section("Options", OptionsOf(command).Select(o => (NameOf(o), o.Description)).Append(("--help, -h", "Shows this help.")));
        if (command is Verb { Examples.Count: > 0 } verb)
        {
            paper.Gap();
            paper.Write(0, verb.Examples.Count == 1 ? "Example" : "Examples", TerminalStyle.Heading);
            foreach (var example in verb.Examples)
                paper.Write(2, example);
        }
        else if (command is RootCommand)
        {
            paper.Gap();
            paper.Write(0, "Example", TerminalStyle.Heading);
            paper.Write(2, "boardwright check examples/tern/tern.board.yaml");
        }

        return Exit.Holds;
    }

    static string Usage(Command command)
    {
        string[] words =
        [
            "boardwright",
            command is RootCommand ? "COMMAND" : NameOf(command),
            command is not RootCommand && command.Subcommands.Count > 0 ? "COMMAND" : "",
            .. command.Arguments.Select(a => a.Arity.MinimumNumberOfValues == 0 ? $"[{a.HelpName ?? a.Name}]" : a.HelpName ?? a.Name),
            OptionsOf(command).Any() ? "[options]" : "",
        ];
        return string.Join(' ', words.Where(w => w.Length > 0));
    }

    /// <summary>The command's name behind those of the commands it belongs to.</summary>
    static string NameOf(Command command) =>
        command.Parents.OfType<Command>().FirstOrDefault() is { } parent and not RootCommand ? $"{NameOf(parent)} {command.Name}" : command.Name;

    static IEnumerable<Option> OptionsOf(Command command) =>
        command.Options.Concat(command.Parents.OfType<Command>()
        .SelectMany(static parent => parent.Options.Where(static option => option.Recursive)))
        .Where(static option => option is not HelpOption);

    static string NameOf(Option option) => option.HelpName is { } value ? $"{option.Name} {value}" : option.Name;

    static string FirstSentence(string? text) => text?.Split(". ")[0].TrimEnd('.') + ".";

    void Section(string heading, IEnumerable<(string Name, string? Says)> entries)
    {
        var list = entries.ToList();
        if (list.Count == 0)
            return;
        paper.Gap();
        paper.Write(0, heading, TerminalStyle.Heading);
        var indent = Math.Min(30, list.Max(e => e.Name.Length) + 4);
        foreach (var (name, says) in list)
            paper.Write(indent, says ?? "", TerminalStyle.Plain, name, TerminalStyle.Plain, 2);
    }
}
