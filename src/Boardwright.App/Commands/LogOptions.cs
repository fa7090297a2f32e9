using System.CommandLine;
using Boardwright.Files.Logs;
using Boardwright.Logs;

namespace Boardwright.App.Commands;

/// <summary>What the user says about a log where its own names and numbers do not tell.</summary>
sealed class LogOptions
{
    readonly Option<string> time = new("--time") { Description = "How times are written, where the log does not tell: s, ms or clock.", HelpName = "FORM" };
    readonly Option<string> mark = new("--decimal") { Description = "The decimal mark, where the log does not tell: point or comma.", HelpName = "MARK" };
    readonly Option<string[]> columns = new("--column") { Description = "What a column holds, where its name does not tell: \"NAME=speed km/h\", \"NAME=time\" or \"NAME=none\".", HelpName = "NAME=WHAT" };

    /// <summary>The options.</summary>
    public LogOptions()
    {
        time.AcceptOnlyFromAmong("s", "ms", "clock");
        mark.AcceptOnlyFromAmong("point", "comma");
        columns.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string[]>() is { } given && Array.Exists(given, g => !g.Contains('=', StringComparison.Ordinal)))
                result.AddError("--column wants the name of a column, =, and what it holds, such as \"Speed=speed km/h\".");
        });
    }

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Verb command)
    {
        command.Add(time);
        command.Add(mark);
        command.Add(columns);
    }

    /// <summary>What was said.</summary>
    public LogWishes Read(ParseResult parsed) => new()
    {
        Time = parsed.GetValue(time) switch { "s" => TimeForm.Seconds, "ms" => TimeForm.Milliseconds, "clock" => TimeForm.Clock, _ => null },
        DecimalMark = parsed.GetValue(mark) switch { "point" => '.', "comma" => ',', _ => null },
        Columns = (parsed.GetValue(columns) ?? []).Select(c => c.Split('=', 2)).GroupBy(c => c[0].Trim(), StringComparer.OrdinalIgnoreCase)
            .ToDictionary(g => g.Key, g => g.Last()[1].Trim(), StringComparer.OrdinalIgnoreCase),
    };
}
