using System.Diagnostics;
using System.Reflection;
using System.Runtime.InteropServices;

namespace Boardwright.PageBench;

/// <summary>The published program, started on a board in a folder of its own.</summary>
sealed class Workbench : IAsyncDisposable
{
    static readonly string Root = Path.GetFullPath(
        typeof(Workbench).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "Root").Value!);
    readonly Process running;
    readonly string place;

    Workbench(Process running, string place, string address) => (this.running, this.place, Address) = (running, place, address);

    /// <summary>Where it answers.</summary>
    public string Address { get; }

    /// <summary>Publishes the program as it is shipped, everything compiled ahead.</summary>
    /// <returns>The program.</returns>
    public static string Publish()
    {
        var target = Path.Combine(Root, "artifacts", "page-bench");
        using var publishing = Process.Start(new ProcessStartInfo("dotnet",
        [
            "publish", Path.Combine(Root, "src", "Boardwright.App"), "-c", "Release", "-r", RuntimeInformation.RuntimeIdentifier, "--self-contained", "true",
            "-p:PublishReadyToRunComposite=true", "-p:RunAnalyzers=false", "-v", "q", "-o", target,
        ]))!;
        publishing.WaitForExit();
        if (publishing.ExitCode != 0)
            throw new InvalidOperationException("The program could not be published.");
        return Path.Combine(target, OperatingSystem.IsWindows() ? "Boardwright.App.exe" : "Boardwright.App");
    }

    /// <summary>Starts it.</summary>
    /// <param name="program">The published program.</param>
    /// <param name="board">A board file of the examples.</param>
    /// <param name="change">What is changed in its text before.</param>
    public static async Task<Workbench> StartAsync(string program, string? board = null, Func<string, string>? change = null)
    {
        var folder = Directory.CreateTempSubdirectory("boardwright-page-").FullName;
        var examples = Path.Combine(Root, "examples");
        foreach (var path in Directory.EnumerateFiles(examples, "*.yaml", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(folder, Path.GetRelativePath(examples, path));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            await File.WriteAllTextAsync(copy, (change ?? (static text => text))(await File.ReadAllTextAsync(path)));
        }

        var start = new ProcessStartInfo(
            program, ["open", "--no-browser", .. board is null ? Array.Empty<string>() : [Path.Combine(folder, board)]])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            WorkingDirectory = folder
        };
        start.Environment["BOARDWRIGHT_SHOP"] = Path.Combine(folder, "shop.db");
        var process = Process.Start(start)!;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.IndexOf("http://", StringComparison.Ordinal) is >= 0 and var at)
                return new Workbench(process, folder, line[at..].Split(' ')[0].TrimEnd('/') + "/");
        }

        throw new InvalidOperationException("The program did not start.");
    }

    public async ValueTask DisposeAsync()
    {
        running.Kill(entireProcessTree: true);
        await running.WaitForExitAsync();
        running.Dispose();
        Directory.Delete(place, recursive: true);
    }
}
