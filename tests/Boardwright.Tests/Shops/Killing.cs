using System.Diagnostics;
using Boardwright.App;
using Boardwright.Shops;
using Boardwright.Tests.App;

namespace Boardwright.Tests.Shops;

/// <summary>Runs the program in a process of its own and kills it in the middle of its work.</summary>
static class Killing
{
    const int Boards = 60;

    /// <summary>After how many acknowledged saves it is killed.</summary>
    public static TheoryData<int> Points { get; } = Thorough.IsAsked ? [0, 1, 2, 5, 13] : [0, 2, 13];

    /// <summary>Saves one board after the other, and kills the program after some lines of its output.</summary>
    /// <returns>The names that were acknowledged, all those that could still be read included.</returns>
    public static async Task<IReadOnlyList<string>> SavesAsync(Folder folder, string place, int lines, CancellationToken cancel)
    {
        var files = Enumerable.Range(0, Boards)
            .Select(at => folder.Write(FormattableString.Invariant($"board-{at}.board.yaml"), FormattableString.Invariant($"boardwright: 1\nname: board {at}\n{string.Concat(Enumerable.Repeat($"# {at} and some text to write\n", 500))}")))
            .ToList();
        using var process = Process.Start(
            new ProcessStartInfo("dotnet",
            [typeof(Program).Assembly.Location, "shop", "save", .. files, "--why", "to be killed", "--by", "Ada", "--shop", place])
            {
                RedirectStandardOutput = true,
                UseShellExecute = false
            })!;
        var acknowledged = new List<string>();
        while (acknowledged.Count < lines && await process.StandardOutput.ReadLineAsync(cancel) is { } line)
            acknowledged.Add(line.Split(':')[0]);
        process.Kill();
        while (await process.StandardOutput.ReadLineAsync(cancel) is { } line)
        {
            if (line.EndsWith(": revision 1", StringComparison.Ordinal))
                acknowledged.Add(line.Split(':')[0]);
        }

        await process.WaitForExitAsync(cancel);
        return acknowledged;
    }

    public static async Task NothingIsLost(Shop shop, IReadOnlyList<string> acknowledged, CancellationToken cancel)
    {
        var kept = await shop.ListAsync(ItemKind.Board, cancel: cancel);
        Assert.Empty(acknowledged.Except(kept.Select(static item => item.Name), StringComparer.Ordinal));
        // One that was not acknowledged is there as a whole or not at all.
        Assert.InRange(kept.Count, acknowledged.Count, Math.Min(Boards, acknowledged.Count + 1));
        foreach (var item in kept)
            Assert.EndsWith("to write\n", (await shop.ReadAsync(item.Id, cancel: cancel)).Files.Main.Text, StringComparison.Ordinal);
        await shop.AddAsync(ItemKind.Board, "and on", FileSet.FromText("on.board.yaml", "name: on\n"), new("Ada", "on"), cancel);
    }
}
