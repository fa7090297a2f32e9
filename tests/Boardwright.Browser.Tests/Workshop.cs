using System.Reflection;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Boardwright.Browser.Tests.Workshop))]

namespace Boardwright.Browser.Tests;

/// <summary>A browser, shared by all tests, and a program, shared by those that save nothing.</summary>
public sealed class Workshop : IAsyncLifetime
{
    // Far longer than anything takes: a test waits for what happens, and a busy machine only makes it wait.
    internal const float Patience = 180_000;

    // Chromium without its windows, where Debian's package is installed: half the work for the same pages.
    static readonly string[] Browsers = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium"];

    readonly Lazy<Task<ProgramUnderTest>> shared = new(() => ProgramUnderTest.StartAsync());
    IPlaywright? playwright;

    public static string Program { get; } = Metadata("Program");

    public static string Examples { get; } = Path.GetFullPath(Metadata("Examples"));

    /// <summary>The browser; <c>null</c> where none is installed.</summary>
    public IBrowser? Browser { get; private set; }

    /// <summary>The program that opens Tern and in which no test saves anything.</summary>
    public Task<ProgramUnderTest> SharedAsync() => shared.Value;

    public async ValueTask InitializeAsync()
    {
        var path = Environment.GetEnvironmentVariable("CHROMIUM_PATH") ?? Browsers.FirstOrDefault(File.Exists);
        if (!File.Exists(path))
            return;
        Assertions.SetDefaultExpectTimeout(Patience);
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = path,
            Timeout = Patience,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (shared.IsValueCreated)
            await (await shared.Value).DisposeAsync();
        if (Browser is not null)
            await Browser.DisposeAsync();
        playwright?.Dispose();
    }

    static string Metadata(string key) =>
        typeof(Workshop).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == key).Value!;
}
