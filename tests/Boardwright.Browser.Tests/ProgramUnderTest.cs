using System.Diagnostics;
using Boardwright.Tests;

namespace Boardwright.Browser.Tests;

/// <summary>The program as its own process, with a folder of its own for what it keeps.</summary>
public sealed class ProgramUnderTest : IAsyncDisposable
{
    Process process;

    readonly string[] further;
    readonly string? shop;

    ProgramUnderTest(Process process, string folder, string address, string[] further, string? shop) =>
        (this.process, Folder, Address, this.further, this.shop) = (process, folder, address, further, shop);

    /// <summary>Where it answers, with a slash at the end.</summary>
    public string Address { get; private set; }

    /// <summary>A folder with the examples, and what the program keeps.</summary>
    public string Folder { get; }

    /// <summary>Starts it.</summary>
    /// <param name="file">A board file of the examples to open, such as <c>tern/tern.board.yaml</c>; <c>null</c> for none.</param>
    /// <param name="person">Someone who may sign in, which makes it listen beyond this machine; <c>null</c> for nobody.</param>
    /// <param name="shop">The connection string of its shop; <c>null</c> for a file in its folder.</param>
    public static async Task<ProgramUnderTest> StartAsync(
        string? file = null, (string Name, string Password)? person = null, string? shop = null)
    {
        var folder = Directory.CreateTempSubdirectory("boardwright-").FullName;
        foreach (var path in Directory.EnumerateFiles(Workshop.Examples, "*.yaml", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(folder, Path.GetRelativePath(Workshop.Examples, path));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(path, copy);
        }

        var words = Array.Empty<string>();
        if (person is { } who)
        {
            var password = Path.Combine(folder, "password");
            await File.WriteAllTextAsync(password, who.Password);
            using var adding = Process.Start(Words(folder, shop, ["shop", "people", "add", who.Name, "--password-from", password]))!;
            await adding.WaitForExitAsync();
            words = ["--listen", "any"];
        }

        var (process, address) = await StartAsync(folder, shop, file, 0, words);
        return new ProgramUnderTest(process, folder, address, words, shop);
    }

    /// <summary>Ends it at once, without a word to it.</summary>
    /// <returns>What it complained about in the terminal.</returns>
    public async Task<string> KillAsync()
    {
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
        return await process.StandardError.ReadToEndAsync();
    }

    /// <summary>Limits how large a file it may write, as a full disk would.</summary>
    /// <param name="bytes">A number of bytes, or <c>unlimited</c>.</param>
    public async Task LimitFilesAsync(string bytes)
    {
        using var limiting = Process.Start("prlimit", ["--pid", FormattableString.Invariant($"{process.Id}"), $"--fsize={bytes}:"]);
        await limiting.WaitForExitAsync();
    }

    /// <summary>Starts it again under the same address.</summary>
    public async Task RestartAsync(string? file = null) =>
        (process, Address) = await StartAsync(Folder, shop, file, new Uri(Address).Port, further);

    public async ValueTask DisposeAsync()
    {
        await KillAsync();
        process.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    static async Task<(Process Process, string Address)> StartAsync(string folder, string? shop, string? file, int port, string[] words)
    {
        var started = Process.Start(
            Words(folder, shop, ["open", .. file is null ? Array.Empty<string>() : [Path.Combine(folder, file)], "--no-browser", "--samples",
            Thorough.IsAsked ? "256" : "32", "--port", FormattableString.Invariant($"{port}"), .. words]))!;
        while (await started.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.IndexOf("http://", StringComparison.Ordinal) is >= 0 and var at)
                return (started, line[at..].Split(' ')[0].TrimEnd('/') + "/");
        }

        throw new InvalidOperationException("The program did not start: " + await started.StandardError.ReadToEndAsync());
    }

    static ProcessStartInfo Words(string folder, string? shop, IEnumerable<string> words)
    {
        // On Linux it leaves the signal unheeded that would end it, rather than fail its write, at the limit on a file's size.
        string[] line = OperatingSystem.IsLinux() ? ["/bin/sh", "-c", "trap '' XFSZ; exec dotnet \"$@\"", "sh"] : ["dotnet"];
        var start = new ProcessStartInfo(
            line[0], [.. line[1..], Workshop.Program, .. words])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = folder
        };
        start.Environment["BOARDWRIGHT_SHOP"] = shop ?? Path.Combine(folder, "shop.db");
        start.Environment["XDG_DATA_HOME"] = folder;
        return start;
    }
}
