using System.Text.RegularExpressions;
using Boardwright.App;
using Boardwright.App.Commands;
using Boardwright.App.Docs;
using Boardwright.App.Reports;
using Boardwright.Rules;

namespace Boardwright.Tests.House;

/// <summary>The project's papers agree with the program.</summary>
public sealed partial class TerminalTextTests
{
    static readonly IReadOnlyList<string> Papers = ["README.md", "CONTRIBUTING.md", "docs/guide/board-file.md", "docs/guide/command-line.md", "docs/guide/shop.md", "docs/guide/built.md"];

    [Fact]
    public void The_written_pages_are_current()
    {
        var pages = GeneratedPages.Create(ExplainCommand.Figures, Rulebook.All);
        foreach (var (path, text) in pages)
            Assert.True(File.ReadAllText(Repository.At("docs", path)) == text, $"docs/{path} is stale: dotnet run --project src/Boardwright.App -- pages");
    }

    [Fact]
    public void The_page_on_the_needs_of_figures_is_current() =>
        Assert.Equal(PagesCommand.NeedsPage(Repository.Root), File.ReadAllText(Repository.At("docs", PagesCommand.NeedsPath)));

    [Fact]
    public void The_report_in_the_readme_is_current()
    {
        var readme = File.ReadAllText(Repository.At("README.md"));

        Assert.Contains("<!-- report:tern -->", readme, StringComparison.Ordinal);
        Assert.Equal(GeneratedPages.Refilled(readme, name => PagesCommand.Example(Repository.Root, name)), readme);
    }

    [Fact]
    public void Every_example_has_its_approved_report_and_result_beside_it()
    {
        var texts = PagesCommand.Examples(Repository.Root);

        Assert.Equal(6, texts.Count);
        foreach (var (path, text) in texts)
            Assert.True(File.Exists(Repository.At(path)) && File.ReadAllText(Repository.At(path)) == text, $"{path} is stale: dotnet run --project src/Boardwright.App -- pages, then read the difference.");
    }

    [Fact]
    public void Commands_in_the_papers_are_commands_of_the_program()
    {
        using var nowhere = new StringWriter();
        var known = Program.Root(new Terminal(nowhere, nowhere)).Subcommands.Select(c => c.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var paper in Papers)
        {
            var used = Uses().Matches(File.ReadAllText(Repository.At(paper))).Select(m => m.Groups["command"].Value).ToList();
            Assert.True(used.TrueForAll(known.Contains), $"{paper}: {string.Join(", ", used.Where(u => !known.Contains(u)))}");
        }
    }

    [Fact]
    public void Boards_that_the_readme_checks_are_there()
    {
        Assert.SkipUnless(Directory.Exists(Repository.At("examples")), "The examples are not in this tree.");
        var boards = Boards().Matches(File.ReadAllText(Repository.At("README.md"))).Select(m => m.Value).ToList();

        Assert.NotEmpty(boards);
        Assert.All(boards, board => Assert.True(File.Exists(Repository.At(board)), board));
    }

    [Fact]
    public void Nothing_is_left_to_do_in_the_sources()
    {
        var left = Directory.EnumerateFiles(Repository.At("src"), "*.cs", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(Repository.At("tests"), "*.cs", SearchOption.AllDirectories))
            .Concat(Directory.EnumerateFiles(Repository.At("validation"), "*.cs", SearchOption.AllDirectories))
            .Where(file => LeftToDo().IsMatch(File.ReadAllText(file)));

        Assert.Empty(left.Select(file => Path.GetRelativePath(Repository.Root, file)));
    }

    [Fact]
    public void Every_package_is_in_the_list_of_dependencies()
    {
        var list = File.ReadAllText(Repository.At("docs", "dependencies.md"));
        var packages = Packages().Matches(File.ReadAllText(Repository.At("Directory.Packages.props")))
            .Select(m => (Name: m.Groups["name"].Value, Version: m.Groups["version"].Value));

        Assert.All(packages, p => Assert.Contains($"| {p.Name} | {p.Version} |", list, StringComparison.Ordinal));
    }

    [GeneratedRegex(@"(?:^|`|-- )(?:boardwright )(?<command>[a-z]+)|Boardwright\.App -- (?<command>[a-z]+)", RegexOptions.ExplicitCapture | RegexOptions.Multiline, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Uses();

    [GeneratedRegex(@"examples/\S+\.board\.yaml", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Boards();

    [GeneratedRegex("\\bTO" + "DO\\b|\\bFIX" + "ME\\b", RegexOptions.None, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex LeftToDo();

    [GeneratedRegex("PackageVersion Include=\"(?<name>[^\"]+)\" Version=\"(?<version>[^\"]+)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Packages();
}
