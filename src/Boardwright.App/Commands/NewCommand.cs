using System.Buffers;
using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.Files;
using Boardwright.Files.Boards;

namespace Boardwright.App.Commands;

/// <summary><c>new</c>: asks a few questions and writes the beginnings of a board file.</summary>
static class NewCommand
{
    // Some systems refuse these in a file's name, and a board may be taken to one of them.
    static readonly SearchValues<char> Forbidden = SearchValues.Create("/\\:\n\"*?<>|");

    // What people write behind the name although the program adds it.
    static readonly string[] Endings = [BoardFile.Ending, ".board", ".yaml", ".yml"];

    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var name = new Argument<string>("NAME") { Description = "Name of the board; the file is called NAME.board.yaml." };
        var folder = new Option<string>("--out") { Description = "Folder for the file; this one where not given.", HelpName = "DIR" };
        var yes = new Option<bool>("--yes") { Description = "Asks nothing: what no option answers is guessed." };
        var answers = StartQuestion.All.Select(static question => (Question: question, Option: OptionFor(question))).ToList();
        var command = new Verb(
            "new", "Asks a few questions and writes the beginnings of a board file: your answers, and parts that go with them, each marked as a guess. Asks nothing where nobody is at the terminal.",
            "boardwright new heron", "boardwright new heron --yes", "boardwright new heron --rider \"75 kg\" --range \"20 km\" --cruise \"25 km/h\" --wheels \"107 mm urethane\" --motors 2 --pack 12S4P") { name, folder, yes };
        foreach (var (_, option) in answers)
            command.Add(option);
        command.SetAction(parsed => Run(
            terminal, parsed.GetRequiredValue(name), parsed.GetValue(folder) ?? ".", terminal.IsInteractive && !parsed.GetValue(yes),
            [.. answers.Select(answer => (answer.Question, parsed.GetValue(answer.Option)))]));
        return command;
    }

    /// <summary>The name of a board without what a file's name ends in.</summary>
    internal static string TitleFrom(string name) =>
        Endings.FirstOrDefault(ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase)) is { } ending ? name[..^ending.Length]
        : name;

    /// <summary>Whether a name can be a file's on every system.</summary>
    internal static bool IsFileName(string title) =>
        !string.IsNullOrWhiteSpace(title) && !title.StartsWith('.') && !title.AsSpan().ContainsAny(Forbidden);

    static Option<string?> OptionFor(StartQuestion question)
    {
        var option = new Option<string?>("--" + question.Name)
        {
            Description = $"{question.Asks} {(question.Choices.Count > 0 ? $"One of {string.Join(", ", question.Choices)}" : $"Such as \"{question.Usual(new StartAnswers())}\"")}.",
            HelpName = question.Name.ToUpperInvariant(),
        };
        if (question.Choices.Count > 0)
            option.CompletionSources.Add([.. question.Choices]);
        return option;
    }

    static int Run(Terminal terminal, string name, string folder, bool asks, IReadOnlyList<(StartQuestion Question, string? Answer)> given)
    {
        var title = TitleFrom(name);
        if (!IsFileName(title))
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

        if (Answered(terminal, asks, given) is not { } answers)
            return Exit.Unread;
        DurableFile.Write(file, Starter.Text(title, answers));
        var paper = new TerminalText(terminal);
        paper.Write(0, $"Wrote {file}.");
        paper.Write(0, "Every part in it is a guess and says so with a question mark: write what your listings say, and take the mark away. Then:");
        terminal.Out.Write($"  boardwright check {(file.Contains(' ', StringComparison.Ordinal) ? $"\"{file}\"" : file)}\n");
        return Exit.Holds;
    }

    static StartAnswers? Answered(Terminal terminal, bool asks, IReadOnlyList<(StartQuestion Question, string? Answer)> given)
    {
        var answers = new StartAnswers();
        asks &= given.Any(static one => one.Answer is null);
        if (asks)
            terminal.Out.Write("Enter takes the answer in brackets.\n");
        foreach (var (question, answer) in given)
        {
            if (answer is not null)
            {
                var taken = question.Take(answers, answer);
                if (taken.Refusal is { } refusal)
                {
                    terminal.Error.WriteLine($"--{question.Name}: {refusal.Says} {refusal.Remedy}");
                    return null;
                }

                answers = taken.Answers;
            }
            else if (asks)
            {
                if (Ask(terminal, question, answers) is not { } asked)
                {
                    terminal.Error.WriteLine("\nNothing was written.");
                    return null;
                }

                answers = asked;
            }
        }

        return answers;
    }

    static StartAnswers? Ask(Terminal terminal, StartQuestion question, StartAnswers answers)
    {
        var choices = question.Choices.Count > 0 ? string.Join(" | ", question.Choices) : question.Help;
        while (true)
        {
            terminal.Out.Write($"{question.Asks} ({choices}) [{question.Usual(answers)}] ");
            terminal.Out.Flush();
            if (terminal.In.ReadLine() is not { } line)
                return null;
            var taken = question.Take(answers, line);
            if (taken.Refusal is not { } refusal)
                return taken.Answers;
            terminal.Out.Write($"{refusal.Says} {refusal.Remedy}\n");
        }
    }
}
