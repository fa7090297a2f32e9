using System.CommandLine;
using System.Diagnostics;
using System.Security.Cryptography;
using Boardwright.App.Workbench;

namespace Boardwright.App.Commands;

/// <summary><c>open</c>: starts the workbench on this machine and opens it in the browser.</summary>
static class Open
{
    /// <summary>The command.</summary>
    public static Command Of(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Description = "The board file to open, NAME.board.yaml; the one saved last, or the example Tern, where not given.", Arity = ArgumentArity.ZeroOrOne };
        file.CompletionSources.Add(context => Completion.BoardFiles(context.WordToComplete));
        var port = new Option<int>("--port") { Description = "Port on this machine; any that is free where not given.", HelpName = "PORT" };
        port.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 0 or > 65535)
                result.AddError("--port is from 1 to 65535.");
        });
        var shop = new Option<string?>("--shop") { Description = "The shop to keep boards in: a file, or the connection string of a PostgreSQL database; as for boardwright shop where not given.", HelpName = "PLACE" };
        var stay = new Option<bool>("--no-browser") { Description = "Does not open the browser; the address is printed." };
        var phones = new Option<bool>("--phones") { Description = "Lets phones and other machines of this network in, by an address with a word in it that is printed. Whoever has the address can change what the shop holds, and what is sent is not encrypted: only in a network of your own." };
        var command = new Verb(
            "open", "Starts the workbench on this machine and opens it in the browser. It is reachable from this machine only, unless phones are let in. Ctrl+C ends it.",
            "boardwright open", "boardwright open tern.board.yaml", "boardwright open tern.board.yaml --port 8123 --no-browser", "boardwright open --phones")
        { file, port, shop, stay, phones };
        command.SetAction((parsed, cancellation) => RunAsync(terminal, new WorkbenchStart(parsed.GetValue(file)) { Port = parsed.GetValue(port), Shop = parsed.GetValue(shop), Key = parsed.GetValue(phones) ? RandomNumberGenerator.GetHexString(12, lowercase: true) : null }, !parsed.GetValue(stay), cancellation));
        return command;
    }

    static async Task<int> RunAsync(Terminal terminal, WorkbenchStart start, bool opensBrowser, CancellationToken cancellation)
    {
        if (start.File is { } file && !File.Exists(file))
        {
            terminal.Error.WriteLine($"{file}: There is no such file. Check the name and the folder, or begin a board with boardwright new.");
            return Exit.Unread;
        }

        var app = WorkbenchHost.Build(start);
        await using (app)
        {
            try
            {
                await app.StartAsync(cancellation);
            }
            catch (IOException)
            {
                terminal.Error.WriteLine(FormattableString.Invariant($"Port {start.Port} is taken by another program. Give another one with --port, or none for any that is free."));
                return Exit.Unread;
            }

            WorkbenchHost.WarmUp(app);
            var address = WorkbenchHost.AddressesOf(app)[0].Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal);
            terminal.Out.WriteLine($"The workbench is at {address} on this machine{(start.Key is null ? " only" : "")}. Ctrl+C ends it.");
            if (start.Key is { } key)
            {
                terminal.Out.WriteLine("Phones in this network reach it at one of these; whoever has the address can change what the shop holds:");
                foreach (var other in WorkbenchHost.NetworkAddressesOf(app, key))
                    terminal.Out.WriteLine($"  {other}");
            }

            if (opensBrowser)
                Show(address);
            await app.WaitForShutdownAsync(cancellation);
        }

        return Exit.Holds;
    }

    // A machine without a browser still has the address in the terminal.
    static void Show(string address)
    {
        try
        {
            using var browser = Process.Start(new ProcessStartInfo(address) { UseShellExecute = true });
        }
        catch (Exception fault) when (fault is System.ComponentModel.Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            // Nothing opened; the address was printed.
        }
    }
}
