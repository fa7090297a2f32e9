using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Boardwright.App.Commands;
using Boardwright.Spreads;

namespace Boardwright.App;

/// <summary>The program <c>boardwright</c>.</summary>
public static class Program
{
    static int Main(string[] args) => Run(args, Terminal.OfProcess());

    /// <summary>Runs a command line.</summary>
    /// <param name="args">The words after the program's name.</param>
    /// <param name="terminal">Where to write.</param>
    /// <returns>0 when all holds, 1 when something has to be changed, 2 when the file or the command could not be read, 3 when the program failed.</returns>
    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        try
        {
            var parsed = Root(terminal).Parse(args);
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

    /// <summary>Every command.</summary>
    internal static RootCommand Root(Terminal terminal)
    {
        var root = new RootCommand("Checks the design of a belt-driven electric longboard: a board file goes in, figures and findings come out.");
        root.Add(Check.Of(terminal, static examination => Spread.Of(examination)));
        root.Add(Ride.Of(terminal));
        root.Add(Open.Of(terminal));
        root.Add(SearchCommand.Of(terminal));
        root.Add(CellCommands.Build());
        root.Add(Explain.Of(terminal));
        root.Add(Learn.Of(terminal));
        root.Add(CredibilityCommand.Of(terminal));
        root.Add(Plot.Of(terminal));
        root.Add(Layout.Of(terminal));
        root.Add(Papers.Of(terminal, static examination => Spread.Of(examination).Intervals));
        root.Add(New.Of(terminal));
        root.Add(BuiltCommands.Of(terminal, static examination => Spread.Of(examination).Intervals));
        root.Add(ShopCommands.Of(terminal));
        root.Add(Schema.Of(terminal));
        root.Add(WritePages.Of(terminal));
        root.Add(Completion.Of(terminal, root));
        // One alias for help is enough to offer.
        root.Options.Clear();
        root.Add(new HelpOption("--help", "-h") { Action = new Help(terminal, isAskedFor: true) });
        root.Add(new VersionOption("--version") { Description = "Shows the version.", Action = new Version(terminal) });
        root.Action = new Help(terminal, isAskedFor: false);
        return root;
    }

    static int Refuse(ParseResult parsed, Terminal terminal)
    {
        var paper = new Paper(terminal.Error, terminal.Width, isStyled: false);
        foreach (var error in parsed.Errors)
            paper.Write(0, error.Message);
        var command = parsed.CommandResult.Command;
        var known = command.Subcommands.Select(c => c.Name).Concat(command.Options.Select(o => o.Name));
        foreach (var word in parsed.UnmatchedTokens)
        {
            if (Closeness.Nearest(word, known, 1) is [var near])
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
