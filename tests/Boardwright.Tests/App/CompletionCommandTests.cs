using Boardwright.App;
using Boardwright.App.Commands;
using Boardwright.App.Reports;

namespace Boardwright.Tests.App;

public sealed class CompletionCommandTests
{
    static readonly IReadOnlyList<string> Shells = ["bash", "zsh", "fish", "pwsh"];

    [Fact]
    public void Every_script_knows_every_command_and_asks_the_program_for_the_rest()
    {
        var commands = Program.Root(new Terminal(TextWriter.Null, TextWriter.Null)).Subcommands.Select(c => c.Name).ToList();
        foreach (var shell in Shells)
        {
            var (code, script, _) = Ran.With("completion", shell);

            Assert.Equal(0, code);
            Assert.Contains(string.Join(' ', commands), script, StringComparison.Ordinal);
            Assert.Contains("[suggest:", script, StringComparison.Ordinal);
            Assert.DoesNotContain("COMMANDS", script, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Another_shell_is_refused_with_those_there_are()
    {
        var (code, _, error) = Ran.With("completion", "tcl");

        Assert.Equal(2, code);
        Assert.All(Shells, shell => Assert.Contains(shell, error, StringComparison.Ordinal));
    }

    [Fact]
    public void The_program_suggests_its_commands_and_options()
    {
        Assert.Contains("explain", Suggested("ex"));
        Assert.Contains("--json", Suggested("check --js"));
        Assert.Contains("imperial", Suggested("check --units "));
    }

    [Fact]
    public void Board_files_and_folders_on_the_way_to_them_are_suggested()
    {
        using var folder = new Folder();
        folder.Write("heron.board.yaml", "");
        folder.Write("notes.txt", "");
        folder.Write("boards/egret.board.yaml", "");
        folder.Write(".hidden/egret.board.yaml", "");

        Assert.Equal([$"{folder.Path}/boards/", $"{folder.Path}/heron.board.yaml"], CompletionCommand.BoardFiles(folder.Path + "/"));
        Assert.Equal([$"{folder.Path}/heron.board.yaml"], CompletionCommand.BoardFiles(folder.Path + "/he"));
        Assert.Equal([$"{folder.Path}/boards/egret.board.yaml"], CompletionCommand.BoardFiles(folder.Path + "/boards/"));
        Assert.Empty(CompletionCommand.BoardFiles(folder.Path + "/nowhere/"));
        Assert.Contains($"{folder.Path}/heron.board.yaml", Suggested($"check {folder.Path}/her"));
    }

    static string[] Suggested(string line) => Ran.With($"[suggest:{line.Length}]", line).Out.Split('\n', StringSplitOptions.TrimEntries);
}
