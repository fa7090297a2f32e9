using System.Text;
using System.Text.RegularExpressions;
using Boardwright.Tests.App;
using Boardwright.Tests.Lessons;

namespace Boardwright.Tests.House;

/// <summary>Every command line that a guide shows does what it says: the fenced blocks of a page marked <c>sh</c> are run as they stand
/// there, in their order and in one folder.</summary>
/// <remarks>Blocks marked <c>sh server</c> or <c>sh browser</c> need a PostgreSQL server or somebody who looks; the README's own are run by
/// <c>.ci/run</c>.</remarks>
[Collection(nameof(OneFolder))]
public sealed partial class GuideTests : IDisposable
{
    const string PlaceOfShop = "BOARDWRIGHT_SHOP";

    static readonly string Guides = Repository.At("docs", "guide");

    readonly Folder home = new();
    readonly string before = Directory.GetCurrentDirectory();
    readonly string? shopBefore = Environment.GetEnvironmentVariable(PlaceOfShop);

    public static TheoryData<string> Pages =>
        [.. Directory.EnumerateFiles(Guides, "*.md").Where(static file => Blocks(file).Any(static block => block.Mark == "sh"))
        .Select(static file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_block_of_commands_is_run_or_says_what_it_needs()
    {
        foreach (var file in Directory.EnumerateFiles(Guides, "*.md"))
        {
            foreach (var (mark, text) in Blocks(file))
                Assert.False(mark.Length == 0 && text.StartsWith("boardwright ", StringComparison.Ordinal), $"{Path.GetFileName(file)}: mark the block as sh, sh server or sh browser:\n{text}");
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Command_lines_of_a_guide_do_what_it_says(string page)
    {
        Furnish();
        Environment.SetEnvironmentVariable(PlaceOfShop, home.At("shop.db"));
        Directory.SetCurrentDirectory(home.At("tern"));
        if (page is "shop.md" or "learning.md")
            SaveFiveRevisions();
        foreach (var line in Blocks(Path.Combine(Guides, page)).Where(static block => block.Mark == "sh")
            .SelectMany(static block => block.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries)))
            Run(page, line);
    }

    public void Dispose()
    {
        Directory.SetCurrentDirectory(before);
        Environment.SetEnvironmentVariable(PlaceOfShop, shopBefore);
        home.Dispose();
    }

    void Run(string page, string line)
    {
        var words = Words(line.Replace("/media/stick", "stick", StringComparison.Ordinal)).ToList();
        Assert.Equal("boardwright", words[0]);
        var into = words.IndexOf(">");
        var (code, said, complained) = Ran.With([.. into < 0 ? words[1..] : words[1..into]]);
        // 1 means that something is open, to be changed or to be chosen, which a guide may well show.
        Assert.True(code is 0 or 1, $"{page}: {line}\nended with {code}: {complained}");
        if (into > 0)
            File.WriteAllText(words[into + 1], said);
    }

    // As a shell takes a line apart, as far as the guides go: quotes, a comment, the home folder, stars.
    IEnumerable<string> Words(string line)
    {
        foreach (Match word in Word().Matches(line))
        {
            if (word.Value.StartsWith('#'))
                yield break;
            var text = word.Groups["quoted"].Success ? word.Groups["quoted"].Value : word.Value.StartsWith("~/", StringComparison.Ordinal)
                ? home.At(word.Value[2..]) : word.Value;
            if (word.Groups["quoted"].Success || !text.Contains('*', StringComparison.Ordinal))
            {
                yield return text;
                continue;
            }

            foreach (var file in Directory.EnumerateFiles(Path.GetDirectoryName(text)!, Path.GetFileName(text))
                .Order(StringComparer.Ordinal))
                yield return file;
        }
    }

    // What the pages speak of: the example, its shelf beside it, a customer's brief with some parts held, a photo, a logged ride.
    void Furnish()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.At("examples"), "*.yaml", SearchOption.AllDirectories))
        {
            home.Write(Path.GetRelativePath(Repository.At("examples"), file), File.ReadAllText(file));
            if (Path.GetFileName(Path.GetDirectoryName(file)) == "shelf")
                home.Write($"tern/shelf/{Path.GetFileName(file)}", File.ReadAllText(file));
        }

        home.Write("tern/customer.board.yaml", Blocks(Path.Combine(Guides, "search.md")).First(static block => block.Mark == "yaml").Text + "parts: { deck: marram-96, motor: m6374-170, controller: twin-60, box: dune-tray-620 }\n");
        foreach (var log in (string[])["evening", "monday", "friday"])
            home.Write($"tern/{log}.csv", LearnCommandTests.Table(new RolledRide { Pairs = 3, Seed = (ulong)log.Length, Mass = 98, Rotating = 2 }));
        home.Write("tern/lead.jpg", "a photo");
        home.Write("tern/harbour.csv", "t_s,speed_kmh,pack_voltage_V,pack_current_A\n" + string.Concat(Enumerable.Range(0, 100).Select(static i => FormattableString.Invariant($"{0.2 * i:0.0},20.0,48.00,8.0\n"))));
        foreach (var place in (string[])[".local/share/bash-completion/completions", ".zfunc", ".config/fish/completions", "tern/stick"])
            Directory.CreateDirectory(home.At(place));
    }

    void SaveFiveRevisions()
    {
        var text = File.ReadAllText(home.At("tern/tern.board.yaml"));
        foreach (var mass in (int[])[70, 72, 74, 76, 78])
        {
            File.WriteAllText("tern.board.yaml", text.Replace("rider_mass: 80 kg", FormattableString.Invariant($"rider_mass: {mass} kg"), StringComparison.Ordinal));
            Assert.Equal(0, Ran.With("shop", "save", "tern.board.yaml", "--why", "another rider").Code);
        }

        File.WriteAllText("tern.board.yaml", text);
    }

    static IEnumerable<(string Mark, string Text)> Blocks(string file) =>
        Fenced().Matches(File.ReadAllText(file)).Select(static m => (m.Groups["mark"].Value, m.Groups["text"].Value));

    [GeneratedRegex(@"^```(?<mark>[^\n]*)\n(?<text>.*?)^```", RegexOptions.ExplicitCapture | RegexOptions.Multiline | RegexOptions.Singleline, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Fenced();

    [GeneratedRegex("\"(?<quoted>[^\"]*)\"|#.*|[^\\s\"]+", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Word();
}

/// <summary>Tests that stand in a folder of their own, which is one for the whole process, run while no others do.</summary>
[CollectionDefinition(nameof(OneFolder), DisableParallelization = true)]
public sealed class OneFolder;
