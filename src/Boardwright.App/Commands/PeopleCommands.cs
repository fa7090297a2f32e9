using System.CommandLine;
using Boardwright.App.Reports;
using Boardwright.Shops;
using Spectre.Console;

namespace Boardwright.App.Commands;

/// <summary><c>shop people</c>: who may sign in where the workbench is reached over a network.</summary>
sealed class PeopleCommands(Terminal terminal, Option<string?> where) : ShopVerbs(terminal, where)
{
    /// <summary>The command with its parts.</summary>
    /// <param name="terminal">Where to write.</param>
    /// <param name="where">The option of <c>shop</c> that names the shop.</param>
    public static Verb Create(Terminal terminal, Option<string?> where) => new PeopleCommands(terminal, where).All();

    Verb All() => new("people", "Who may sign in where the workbench is reached over a network.", "boardwright shop people add ada", "boardwright shop people list")
    {
        List(), Add(), Password(), Remove(),
    };

    Verb List()
    {
        var command = new Verb("list", "Lists them.", "boardwright shop people list");
        return With(command, async (_, shop, _) =>
        {
            var names = await new People(shop).ListAsync();
            Terminal.Out.Write(names.Count == 0 ? "Nobody yet. Add yourself with: boardwright shop people add NAME\n" : string.Concat(names.Select(static name => name + "\n")));
            return Exit.Holds;
        });
    }

    Verb Add()
    {
        var (name, from) = (PersonName(), PasswordSource());
        var command = new Verb("add", "Lets someone sign in. The password is asked for and not shown.", "boardwright shop people add ada", "boardwright shop people add ada --password-from word.txt") { name, from };
        return With(command, async (parsed, shop, cancel) =>
        {
            await new People(shop).AddAsync(parsed.GetRequiredValue(name), await PasswordAsync(parsed.GetValue(from), cancel));
            Terminal.Out.Write($"{parsed.GetRequiredValue(name)} may sign in.\n");
            return Exit.Holds;
        });
    }

    Verb Password()
    {
        var (name, from) = (PersonName(), PasswordSource());
        var command = new Verb("password", "Gives someone another password; whoever is signed in with the old one is signed out within a minute.", "boardwright shop people password ada") { name, from };
        return With(command, async (parsed, shop, cancel) =>
        {
            await new People(shop).ChangePasswordAsync(parsed.GetRequiredValue(name), await PasswordAsync(parsed.GetValue(from), cancel));
            Terminal.Out.Write($"{parsed.GetRequiredValue(name)} has another password.\n");
            return Exit.Holds;
        });
    }

    Verb Remove()
    {
        var name = PersonName();
        var command = new Verb("remove", "Lets someone sign in no more. What they saved stays, with their name.", "boardwright shop people remove ada") { name };
        return With(command, async (parsed, shop, _) =>
        {
            await new People(shop).RemoveAsync(parsed.GetRequiredValue(name));
            Terminal.Out.Write($"{parsed.GetRequiredValue(name)} can sign in no more.\n");
            return Exit.Holds;
        });
    }

    async Task<string> PasswordAsync(FileInfo? from, CancellationToken cancel)
    {
        if (from is not null)
        {
            try
            {
                return (await File.ReadAllLinesAsync(from.FullName, cancel)).FirstOrDefault() ?? "";
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw new ShopException(ShopError.NotThere, $"{from} cannot be read: {fault.Message}", "Name a file whose first line is the password.", fault);
            }
        }

        if (!Terminal.IsInteractive)
            throw new ShopException(ShopError.Refused, "There is nobody at this terminal to type a password.", "Give it in the first line of a file with --password-from FILE.");
        return AnsiConsole.Prompt(new TextPrompt<string>("password:").Secret(null));
    }

    static Argument<string> PersonName() => new("NAME") { Description = "The name, as it stands beside what they save." };

    static Option<FileInfo?> PasswordSource() => new("--password-from") { Description = "A file whose first line is the password, instead of asking for it.", HelpName = "FILE" };
}
