using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Boardwright.App.Commands;
using Boardwright.App.Reports;
using Boardwright.Files;
using Boardwright.Spreads;

namespace Boardwright.App;

/// <summary>The program <c>boardwright</c>.</summary>
public static class Program
{
    const string CompletionName = "completion";

    static readonly (string Name, Func<Terminal, RootCommand, Command> Make)[] Commands =
    [
        ("check", static (terminal, _) => CheckCommand.Create(terminal, static examination => Spread.Sample(examination))),
        ("ride", static (terminal, _) => RideCommand.Create(terminal)),
        ("open", static (terminal, _) => OpenCommand.Create(terminal)),
        ("search", static (terminal, _) => SearchCommand.Create(terminal)),
        ("cell", static (_, _) => CellCommands.Build()),
        ("explain", static (terminal, _) => ExplainCommand.Create(terminal)),
        ("learn", static (terminal, _) => LearnCommand.Create(terminal)),
        ("credibility", static (terminal, _) => CredibilityCommand.Create(terminal)),
        ("plot", static (terminal, _) => PlotCommand.Create(terminal)),
        ("layout", static (terminal, _) => LayoutCommand.Create(terminal)),
        ("papers", static (terminal, _) => PapersCommand.Create(terminal, static examination => Spread.Sample(examination).Intervals)),
        ("new", static (terminal, _) => NewCommand.Create(terminal)),
        ("built", static (terminal, _) => BuiltCommands.Create(terminal, static examination => Spread.Sample(examination).Intervals)),
        ("shop", static (terminal, _) => ShopCommands.Create(terminal)),
        ("schema", static (terminal, _) => SchemaCommand.Create(terminal)),
        ("pages", static (terminal, _) => PagesCommand.Create(terminal)),
        (CompletionName, CompletionCommand.Create),
    ];

    static int Main(string[] args) => Run(args, Terminal.OfProcess());

    /// <summary>Runs a command line.</summary>
    /// <param name="args">The words after the program's name.</param>
    /// <param name="terminal">Where to write.</param>
    /// <returns>0 when all holds, 1 when something has to be changed, 2 when the file or the command could not be read, 3 when the program
    /// failed.</returns>
    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        try
        {
            var parsed = Root(terminal, FindNamed(args)).Parse(args);
            if (parsed.Action is ParseErrorAction)
                return Refuse(parsed, terminal);
            return parsed.Invoke(new InvocationConfiguration
            {
                Output = terminal.Out,
                Error = terminal.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            });
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"boardwright: {OneLine(problem)}");
            return Trace(problem, terminal, Exit.Unread);
        }
        catch (Exception problem)
        {
            terminal.Error.WriteLine($"boardwright: an unexpected problem, which is the program's fault and not the file's: {OneLine(problem)}");
            if (!terminal.ShowsTraces)
                terminal.Error.WriteLine("Run it again with the environment variable BOARDWRIGHT_TRACE=1 for the details to report.");
            return Trace(problem, terminal, Exit.Fault);
        }
    }

    /// <summary>The root of the commands.</summary>
    /// <param name="terminal">Where to write.</param>
    /// <param name="only">The one command that is wanted; <c>null</c> for all of them.</param>
    internal static RootCommand Root(Terminal terminal, string? only = null)
    {
        var root = new RootCommand("Checks the design of a belt-driven electric longboard: a board file goes in, figures and findings come out.");
        foreach (var (name, make) in Commands)
        {
            if (only is null || only == name)
                root.Add(make(terminal, root));
        }

        // One alias for help is enough to offer.
        root.Options.Clear();
        root.Add(new HelpOption("--help", "-h") { Action = new Help(terminal, isAskedFor: true) });
        root.Add(new VersionOption("--version") { Description = "Shows the version.", Action = new Version(terminal) });
        root.Action = new Help(terminal, isAskedFor: false);
        return root;
    }

    // The others are not even made: that would take a tenth of the time of a check. Completion asks for all.
    static string? FindNamed(IReadOnlyList<string> args) =>
        args is [not CompletionName and var first, ..] && Commands.Any(command => command.Name == first) ? first : null;

    static int Refuse(ParseResult parsed, Terminal terminal)
    {
        var paper = new TerminalText(terminal.Error, terminal.Width, isStyled: false);
        foreach (var error in parsed.Errors)
            paper.Write(0, error.Message);
        var command = parsed.CommandResult.Command;
        var known = command.Subcommands.Select(c => c.Name).Concat(command.Options.Select(o => o.Name));
        foreach (var word in parsed.UnmatchedTokens)
        {
            if (Nearest.List(word, known, 1) is [var near])
                paper.Write(0, $"Was '{near}' meant?");
        }

        paper.Write(0, $"boardwright {(command is RootCommand ? "" : command.Name + " ")}--help shows how it is used.");
        return Exit.Unread;
    }

    static string OneLine(Exception problem) => problem.Message.ReplaceLineEndings(" ");

    static int Trace(Exception problem, Terminal terminal, int code)
    {
        if (terminal.ShowsTraces)
            terminal.Error.WriteLine(problem);
        return code;
    }

    sealed class Version(Terminal terminal) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            terminal.Out.WriteLine($"boardwright {typeof(Program).Assembly.GetName().Version?.ToString(3)}");
            return Exit.Holds;
        }
    }
}
