using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Boardwright.Tests.Shops;

/// <summary>A real PostgreSQL server in a folder of its own, from Debian's packages (apt-get install postgresql), gone when the tests are
/// over.</summary>
public sealed class PostgresServer : IAsyncLifetime
{
    readonly string folder = Directory.CreateTempSubdirectory("boardwright-postgres-").FullName;
    string bin = "";
    int port;

    /// <summary>Why there is none, or <c>null</c>.</summary>
    public string? Missing { get; private set; }

    public async ValueTask InitializeAsync()
    {
        bin = Directory.Exists("/usr/lib/postgresql")
            ? Directory.EnumerateDirectories("/usr/lib/postgresql").Select(version => Path.Combine(version, "bin"))
            .Where(place => File.Exists(Path.Combine(place, "initdb"))).Order(StringComparer.Ordinal).LastOrDefault("")
            : "";
        if (bin.Length == 0)
        {
            Missing = "PostgreSQL is not installed: apt-get install postgresql";
            return;
        }

        // The server runs as another user when the tests run as root, which it refuses.
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder,
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.GroupRead | UnixFileMode.GroupWrite
                | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute);
        await Run("initdb", "-D", Cluster, "-A", "trust", "-U", "postgres", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync");
        using (var listener = new TcpListener(IPAddress.Loopback, 0))
        {
            listener.Start();
            port = ((IPEndPoint)listener.LocalEndpoint).Port;
        }

        await StartAsync();
    }

    /// <summary>Makes a new, empty database.</summary>
    /// <returns>Its connection string.</returns>
    public async Task<string> NewDatabaseAsync()
    {
        Assert.SkipWhen(Missing is not null, Missing ?? "");
        var name = $"shop_{Guid.NewGuid():N}";
        await Run("createdb", "-h", "127.0.0.1", "-p", FormattableString.Invariant($"{port}"), "-U", "postgres", name);
        return Words(name);
    }

    public Task StartAsync() => Run("pg_ctl", "-D", Cluster, "-w", "-t", "300", "-o", FormattableString.Invariant($"-p {port} -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c fsync=off"), "-l", Path.Combine(folder, "log"), "start");

    public Task StopAsync() => Run("pg_ctl", "-D", Cluster, "-w", "-t", "300", "-m", "immediate", "stop");

    public async ValueTask DisposeAsync()
    {
        if (Missing is null)
        {
            await StopAsync();
            await Start(Environment.UserName == "root" ? ["runuser", "-u", "postgres", "--", "rm", "-rf", Cluster] : ["rm", "-rf", Cluster]);
        }

        Directory.Delete(folder, recursive: true);
    }

    /// <summary>The connection string of a database.</summary>
    public string Words(string database) => FormattableString.Invariant($"Host=127.0.0.1;Port={port};Database={database};Username=postgres;Timeout=300;Command Timeout=300");

    string Cluster => Path.Combine(folder, "cluster");

    Task Run(string program, params string[] words)
    {
        string[] line = [Path.Combine(bin, program), .. words];
        return Start(Environment.UserName == "root" ? ["runuser", "-u", "postgres", "--", .. line] : line);
    }

    async Task Start(string[] line)
    {
        using var process = Process.Start(
            new ProcessStartInfo(line[0], line[1..])
            {
                WorkingDirectory = folder,
                RedirectStandardOutput = true,
                UseShellExecute = false
            })!;
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{string.Join(' ', line)} ended with {process.ExitCode}: {(File.Exists(Path.Combine(folder, "log")) ? await File.ReadAllTextAsync(Path.Combine(folder, "log")) : "")}");
    }
}
