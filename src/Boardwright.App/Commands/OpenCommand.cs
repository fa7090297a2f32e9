using System.CommandLine;
using System.Diagnostics;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Boardwright.App.Reports;
using Boardwright.App.ShopWork;
using Boardwright.App.Workbench.BoardPages;
using Boardwright.App.Workbench.Frame;
using Boardwright.Shops;

namespace Boardwright.App.Commands;

/// <summary><c>open</c>: starts the workbench on this machine and opens it in the browser.</summary>
static class OpenCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Description = "The board file to open, NAME.board.yaml; the one saved last, or the example Tern, where not given.", Arity = ArgumentArity.ZeroOrOne };
        file.CompletionSources.Add(context => CompletionCommand.BoardFiles(context.WordToComplete));
        var port = new Option<int>("--port") { Description = "Port on this machine; any that is free where not given.", HelpName = "PORT" };
        port.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 0 or > 65535)
                result.AddError("--port is from 1 to 65535.");
        });
        var shop = new Option<string?>("--shop") { Description = "The shop to keep boards in: a file, or the connection string of a PostgreSQL database; as for boardwright shop where not given.", HelpName = "PLACE" };
        var stay = new Option<bool>("--no-browser") { Description = "Does not open the browser; the address is printed." };
        var reach = new Option<ListenAddress>("--listen")
        {
            Description = "An address of this machine under which others reach the workbench too, or any for all of them; it then asks for a sign-in. This machine only where not given.",
            HelpName = "ADDRESS",
            DefaultValueFactory = static _ => ListenAddress.ThisMachine,
            CustomParser = static result =>
            {
                if (ListenAddress.Read(result.Tokens[0].Value) is { } read)
                    return read;
                result.AddError($"{result.Tokens[0].Value} is no address. Give one of this machine's, such as 192.168.1.20, or any for all of them.");
                return null;
            },
        };
        var samples = new Option<int>(
            "--samples")
        { Description = "How many boards are examined to say how well the figures are known; 256 where not given, fewer for a slow machine.", HelpName = "N", DefaultValueFactory = static _ => Spreads.Spread.DefaultPoints };
        samples.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is not (>= 8 and <= 65_536))
                result.AddError("--samples is from 8 to 65536.");
        });
        var certificate = new Option<FileInfo?>("--certificate") { Description = "With --listen: a PEM file that holds a certificate and its key, with which the connection is encrypted.", HelpName = "FILE" };
        var command = new Verb(
            "open", "Starts the workbench on this machine and opens it in the browser. It is reachable from this machine only, unless told otherwise. Ctrl+C ends it.",
            "boardwright open", "boardwright open tern.board.yaml", "boardwright open tern.board.yaml --port 8123 --no-browser", "boardwright open --listen any --port 8123 --certificate bench.pem")
        { file, port, shop, stay, samples, reach, certificate };
        command.SetAction((parsed, cancellation) =>
        {
            var start = new WorkbenchStart(
                parsed.GetValue(file))
            {
                Port = parsed.GetValue(port),
                Shop = parsed.GetValue(shop),
                Samples = parsed.GetValue(samples),
                Reach = parsed.GetRequiredValue(reach)
            };
            return RunAsync(terminal, start, parsed.GetValue(certificate), !parsed.GetValue(stay), cancellation);
        });
        return command;
    }

    static async Task<int> RunAsync(
        Terminal terminal, WorkbenchStart start, FileInfo? certificate, bool opensBrowser, CancellationToken cancellation)
    {
        if (start.File is { } file && !File.Exists(file))
        {
            terminal.Error.WriteLine($"{file}: There is no such file. Check the name and the folder, or begin a board with boardwright new.");
            return Exit.Unread;
        }

        try
        {
            if (certificate is not null)
                start = start with { Certificate = X509Certificate2.CreateFromPemFile(certificate.FullName) };
            if (!start.Reach.IsThisMachine && await NobodyMayComeIn(start.Shop, cancellation))
            {
                terminal.Error.WriteLine("Beyond this machine the workbench asks for a sign-in, and nobody could give one yet. Add yourself first: boardwright shop people add NAME");
                return Exit.Unread;
            }
        }
        catch (Exception fault) when (fault is ShopException or IOException or UnauthorizedAccessException or CryptographicException)
        {
            terminal.Error.WriteLine(fault is ShopException ? fault.Message : $"{certificate}: {fault.Message.ReplaceLineEndings(" ")} Give a PEM file with a certificate and its key.");
            return Exit.Unread;
        }

        await using var boards = new OpenBoards(start);
        _ = WorkbenchHost.RehearseAsync(boards);
        var app = WorkbenchHost.Build(start, boards);
        await using (app)
        {
            _ = WorkbenchHost.WarmUpAsync(app);
            try
            {
                await app.StartAsync(cancellation);
            }
            catch (Exception fault) when (fault is IOException or SocketException)
            {
                terminal.Error.WriteLine((fault as SocketException)?.SocketErrorCode == SocketError.AddressNotAvailable
                    ? $"{start.Reach.Address} is no address of this machine. Give one that is, or any for all of them."
                    : FormattableString.Invariant($"Port {start.Port} is taken by another program. Give another one with --port, or none for any that is free."));
                return Exit.Unread;
            }

            var addresses = WorkbenchHost.AddressesOf(app, start);
            Tell(terminal, start, addresses);
            if (opensBrowser)
                Show(addresses[^1]);
            await app.WaitForShutdownAsync(cancellation);
        }

        return Exit.Holds;
    }

    static async Task<bool> NobodyMayComeIn(string? place, CancellationToken cancellation)
    {
        await using var shop = await ShopLocations.OpenAsync(place, cancellation);
        return (await new People(shop).ListAsync()).Count == 0;
    }

    static void Tell(Terminal terminal, WorkbenchStart start, IReadOnlyList<string> addresses)
    {
        if (start.Reach.IsThisMachine)
        {
            terminal.Out.WriteLine($"The workbench is at {addresses[0]} on this machine only. Ctrl+C ends it.");
            return;
        }

        terminal.Out.WriteLine("The workbench can be reached at");
        foreach (var address in addresses)
            terminal.Out.WriteLine($"  {address}");
        terminal.Out.WriteLine("by everyone who reaches this machine, and asks for a sign-in. Ctrl+C ends it.");
        if (start.Certificate is null)
            terminal.Out.WriteLine("Without --certificate nothing is encrypted: others on the same network can read passwords and boards on their way.");
    }

    // A machine without a browser still has the address in the terminal.
    static void Show(string address)
    {
        try
        {
            using var browser = Process.Start(new ProcessStartInfo(address) { UseShellExecute = true });
        }
        catch (Exception fault) when (fault is System.ComponentModel.Win32Exception or InvalidOperationException
            or PlatformNotSupportedException)
        {
            // Nothing opened; the address was printed.
        }
    }
}
