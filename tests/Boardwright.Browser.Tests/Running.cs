using System.Collections.Concurrent;
using System.Diagnostics;

namespace Boardwright.Browser.Tests;

/// <summary>The program as its own process, with a folder of its own for what it keeps.</summary>
public sealed class Running : IAsyncDisposable
{
    Process process;

    Running(Process process, string folder, string address) => (this.process, Folder, Address) = (process, folder, address);

    /// <summary>Where it answers, with a slash at the end.</summary>
    public string Address { get; private set; }

    /// <summary>A folder with the examples, and what the program keeps.</summary>
    public string Folder { get; }

    /// <summary>What the browser complained about.</summary>
    public ConcurrentBag<string> Troubles { get; } = [];

    /// <summary>Every address that the browser asked.</summary>
    public ConcurrentBag<string> Requests { get; } = [];

    /// <summary>Starts it.</summary>
    /// <param name="file">A board file of the examples to open, such as <c>tern/tern.board.yaml</c>; <c>null</c> for none.</param>
    public static async Task<Running> StartAsync(string? file = null)
    {
        var folder = Directory.CreateTempSubdirectory("boardwright-").FullName;
        foreach (var path in Directory.EnumerateFiles(Workshop.Examples, "*.yaml", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(folder, Path.GetRelativePath(Workshop.Examples, path));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(path, copy);
        }

        var (process, address) = await StartAsync(folder, file, 0);
        return new Running(process, folder, address);
    }

    /// <summary>Ends it at once, without a word to it.</summary>
    public async Task KillAsync()
    {
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
    }

    /// <summary>Starts it again under the same address.</summary>
    public async Task RestartAsync(string? file = null) => (process, Address) = await StartAsync(Folder, file, new Uri(Address).Port);

    public async ValueTask DisposeAsync()
    {
        await KillAsync();
        process.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    static async Task<(Process Process, string Address)> StartAsync(string folder, string? file, int port)
    {
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder };
        foreach (var word in (string[])[Workshop.Program, "open", .. file is null ? Array.Empty<string>() : [Path.Combine(folder, file)], "--no-browser", "--port", FormattableString.Invariant($"{port}")])
            start.ArgumentList.Add(word);
        start.Environment["BOARDWRIGHT_SHOP"] = Path.Combine(folder, "shop.db");
        var started = Process.Start(start)!;
        while (await started.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.IndexOf("http://", StringComparison.Ordinal) is >= 0 and var at)
                return (started, line[at..].Split(' ')[0].TrimEnd('/') + "/");
        }

        throw new InvalidOperationException("The program did not start: " + await started.StandardError.ReadToEndAsync());
    }
}
