using System.CommandLine;
using System.Globalization;
using Boardwright.App.Reports;
using Boardwright.App.ShopWork;
using Boardwright.Shops;

namespace Boardwright.App.Commands;

/// <summary>What the commands that work with a shop have in common.</summary>
/// <param name="terminal">Where to write.</param>
/// <param name="where">The option of the command above that names the shop; <c>null</c> for one of its own.</param>
abstract class ShopVerbs(Terminal terminal, Option<string?>? where = null)
{
    /// <summary>Where to write.</summary>
    protected Terminal Terminal { get; } = terminal;

    /// <summary>The shop that is meant.</summary>
    protected Option<string?> Where { get; } = where ?? new("--shop")
    {
        Description = "The shop: a file, or the connection string of a PostgreSQL database. Without it the variable BOARDWRIGHT_SHOP counts, and without that a file in your own data folder.",
        HelpName = "PLACE",
        Recursive = true,
    };

    /// <summary>Gives a command an action that works with the opened shop; trouble is told in two sentences.</summary>
    protected Verb With(Verb command, Func<ParseResult, Shop, CancellationToken, Task<int>> action)
    {
        command.SetAction((parsed, cancel) => Plainly(async () =>
        {
            await using var shop = await ShopLocations.OpenAsync(parsed.GetValue(Where), cancel);
            return await action(parsed, shop, cancel);
        }));
        return command;
    }

    /// <summary>Runs an action; trouble is told in two sentences.</summary>
    protected async Task<int> Plainly(Func<Task<int>> action)
    {
        try
        {
            return await action();
        }
        catch (ShopException trouble)
        {
            var paper = new TerminalText(Terminal.Error, Terminal.Width, isStyled: false);
            paper.Write(0, trouble.Says);
            paper.Write(0, trouble.Remedy);
            if (Terminal.ShowsTraces)
                Terminal.Error.WriteLine(trouble);
            return Exit.Unread;
        }
    }

    /// <summary>Rows in columns.</summary>
    protected void Table(IReadOnlyList<string[]> rows)
    {
        if (rows.Count == 0)
            return;
        var widths = Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => TerminalText.Cells(row[column]))).ToList();
        foreach (var row in rows)
            Terminal.Out.Write(string.Join("  ", row.Select((cell, column) => TerminalText.Padded(cell, widths[column]))).TrimEnd() + "\n");
    }

    /// <summary>Options that say who does something, and why.</summary>
    protected static (Option<string> Why, Option<string> By) Signed(string? reason = null)
    {
        var why = new Option<string>("--why") { Description = "Why, in a few words.", HelpName = "TEXT", Required = reason is null };
        if (reason is not null)
            why.DefaultValueFactory = _ => reason;
        return (why, new("--by") { Description = "Who; the name of this user where not given.", HelpName = "WHO", DefaultValueFactory = static _ => Environment.UserName });
    }

    /// <summary>Who does it, and why.</summary>
    protected static Signature By(ParseResult parsed, Option<string> why, Option<string> by) =>
        new(parsed.GetRequiredValue(by), parsed.GetRequiredValue(why));
    /// <summary>A number as text.</summary>
    protected static string Numbered(int number) => number.ToString(CultureInfo.InvariantCulture);
}
