using System.Text.Json;
using Boardwright.App;
using Boardwright.App.Reports;

namespace Boardwright.Tests.App;

public sealed class ProgramTests
{
    [Fact]
    public void A_command_is_made_by_itself_under_its_own_name()
    {
        var terminal = new Terminal(TextWriter.Null, TextWriter.Null);

        foreach (var command in Program.Root(terminal).Subcommands)
            Assert.Equal(command.Name, Assert.Single(Program.Root(terminal, command.Name).Subcommands).Name);
    }

    [Fact]
    public void Every_command_shows_an_example_in_its_help()
    {
        foreach (var command in Program.Root(new Terminal(TextWriter.Null, TextWriter.Null)).Subcommands)
        {
            var (code, help, error) = Ran.With(command.Name, "--help");

            Assert.Equal(0, code);
            Assert.Empty(error);
            Assert.Contains($"\n  boardwright {command.Name}", help, StringComparison.Ordinal);
            Assert.Matches($"\nExamples?\n  (eval \"\\$\\()?boardwright {command.Name}", help);
        }
    }

    [Fact]
    public void The_help_reads_as_approved() => Approved.Matches("App/help.txt", Ran.With("--help").Out);

    [Fact]
    public void The_help_of_a_check_reads_as_approved() => Approved.Matches("App/help-check.txt", Ran.With("check", "--help").Out);

    [Fact]
    public void Without_a_command_the_help_is_shown() => Assert.Equal(Ran.With("--help"), Ran.With());

    [Fact]
    public void The_version_is_one_line() => Assert.Matches(@"^boardwright \d+\.\d+\.\d+\n$", Ran.With("--version").Out);

    [Fact]
    public void A_command_that_is_not_there_is_answered_with_the_nearest()
    {
        var (code, text, error) = Ran.With("chekc");

        Assert.Equal(2, code);
        Assert.Empty(text);
        Assert.Contains("Was 'check' meant?", error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_option_that_is_not_there_is_answered_with_the_nearest()
    {
        var (code, _, error) = Ran.With("check", "heron.board.yaml", "--jsn");

        Assert.Equal(2, code);
        Assert.Contains("Was '--json' meant?", error, StringComparison.Ordinal);
        Assert.Contains("boardwright check --help", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_is_said_in_a_sentence()
    {
        using var folder = new Folder();
        var (code, text, error) = Ran.With("check", folder.At("heron.board.yaml"));

        Assert.Equal(2, code);
        Assert.Empty(text);
        Assert.Contains("heron.board.yaml", error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Complaints_on_a_file_begin_with_its_place_and_say_how_to_mend_it()
    {
        using var folder = new Folder();
        var file = folder.Write("heron.board.yaml", "boardwright: 1\nname: Heron\nbrief:\n  rider_mass: 80\n  cruise_sped: 25 km/h\n");
        var (code, text, error) = Ran.With("check", file);

        Assert.Equal(2, code);
        Assert.Empty(text);
        Assert.Contains($"{file}:4:15  brief.rider_mass\n  ", error, StringComparison.Ordinal);
        Assert.Contains($"{file}:5:3  brief.cruise_sped\n  ", error, StringComparison.Ordinal);
        Assert.EndsWith("2 things to mend; nothing was examined.\n", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Complaints_are_a_document_too_when_one_is_asked_for()
    {
        using var folder = new Folder();
        var file = folder.Write("heron.board.yaml", "boardwright: 1\nname: Heron\nbrief:\n  rider_mass: 80\n");
        var (code, text, error) = Ran.With("check", file, "--json");

        Assert.Equal(2, code);
        Assert.NotEmpty(error);
        var document = JsonDocument.Parse(text).RootElement;
        Assert.Equal(1, document.GetProperty("boardwright").GetInt32());
        var complaint = Assert.Single(document.GetProperty("errors").EnumerateArray());
        Assert.Equal(["file", "line", "column", "key", "says", "remedy"], complaint.EnumerateObject().Select(p => p.Name));
        Assert.Equal(4, complaint.GetProperty("line").GetInt32());
        Assert.Equal("brief.rider_mass", complaint.GetProperty("key").GetString());
    }

    [Fact]
    public void A_board_is_reported_and_as_a_document_where_that_is_asked_for()
    {
        using var folder = new Folder();
        var file = folder.Write("heron.board.yaml", "boardwright: 1\nname: Heron\n");

        Assert.StartsWith("Heron\nNo parts are chosen yet.\n", Ran.With("check", file).Out, StringComparison.Ordinal);
        Assert.Equal("Heron", JsonDocument.Parse(Ran.With("check", file, "--json").Out).RootElement.GetProperty("board").GetString());
        Assert.Equal(Ran.With("check", file, "--json"), Ran.With("check", file, "--json"));
    }

    [Fact]
    public void The_exit_code_follows_the_worst_finding()
    {
        Assert.True(Heron.Outcome.IsWanting);
        Assert.False((Heron.Outcome with { Findings = [.. Heron.Outcome.Findings.Skip(2)] }).IsWanting);
    }

    [Theory]
    [InlineData("boardwright: 1\nname: Empty\n")]
    [InlineData("boardwright: 1\nname: Nearly\nbrief:\n  rider_mass: 80 kg\nparts:\n  wheels: { diameter: 107 mm }\n")]
    public void An_empty_board_does_not_pass_and_says_the_least_to_fill_in(string text)
    {
        using var folder = new Folder();
        var file = folder.Write("empty.board.yaml", text);
        var (code, report, _) = Ran.With("check", file);

        Assert.Equal(1, code);
        Assert.InRange(report.Split('\n').Length, 8, 24);
        Assert.Contains("Too little is known to say how fast, how steep or how far this board goes.", report, StringComparison.Ordinal);
        Assert.Matches("(?m)^  parts +.*motor", report);
        Assert.DoesNotContain("kv", report, StringComparison.Ordinal);
        Assert.Equal(1, Ran.With("check", file, "--json").Code);
        Assert.True(Ran.With("check", file, "--all").Out.Split('\n').Length > 40);
    }

    [Fact]
    public void A_board_of_which_something_can_be_said_lists_it_as_before()
    {
        using var folder = new Folder();
        var text = File.ReadAllText(Boards.PathOf("tern")).Replace("../shelf/", Repository.At("examples", "shelf"), StringComparison.Ordinal);
        var file = folder.Write("tern.board.yaml", text.Replace("  gear_mass: 5 kg", "  # gear_mass: 5 kg", StringComparison.Ordinal));

        Assert.DoesNotContain("Too little is known", Ran.With("check", file, "--no-spread").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_board_is_written_once_and_can_be_checked()
    {
        using var folder = new Folder();
        var (code, text, _) = Ran.With("new", "heron", "--out", folder.Path);
        Assert.Equal(0, code);
        Assert.Contains("heron.board.yaml", text, StringComparison.Ordinal);
        var written = File.ReadAllText(folder.At("heron.board.yaml"));

        Assert.NotEqual(2, Ran.With("check", folder.At("heron.board.yaml")).Code);
        File.AppendAllText(folder.At("heron.board.yaml"), "# mine\n");
        var again = Ran.With("new", "heron", "--out", folder.Path);

        Assert.Equal(2, again.Code);
        Assert.Contains("left as it is", again.Error, StringComparison.Ordinal);
        Assert.Equal(written + "# mine\n", File.ReadAllText(folder.At("heron.board.yaml")));
    }

    [Theory]
    [InlineData("stork.board")]
    [InlineData("stork.board.yaml")]
    [InlineData("stork.yaml")]
    [InlineData("stork")]
    public void A_new_board_is_called_as_boards_are(string name)
    {
        using var folder = new Folder();

        Assert.Equal(0, Ran.With("new", name, "--out", folder.Path).Code);
        Assert.Equal([folder.At("stork.board.yaml")], Directory.EnumerateFiles(folder.Path));
        Assert.Contains("\nname: stork\n", File.ReadAllText(folder.At("stork.board.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_board_is_asked_for_and_a_bad_answer_is_asked_again()
    {
        using var folder = new Folder();
        var (code, text, error) = Ran.Answering("heavy\n95\n\n30 km\n\n8\n97 mm\n1\n\n", "new", "heron", "--out", folder.Path);

        Assert.Equal((0, ""), (code, error));
        Assert.Equal(2, text.Split("How heavy is the rider?").Length - 1);
        Assert.Contains("'heavy' does not begin with a number", text, StringComparison.Ordinal);
        var written = File.ReadAllText(folder.At("heron.board.yaml"));
        foreach (var line in new[] { "rider_mass: 95 kg\n", "range_wanted: 30 km ", "cruise_speed: 25 km/h\n", "climb_wanted: 8 % ", "diameter: 97 mm ", "motors: 1\n" })
            Assert.Contains(line, written, StringComparison.Ordinal);
    }

    [Fact]
    public void Options_answer_for_scripts_and_what_they_leave_open_is_asked_or_guessed()
    {
        using var folder = new Folder();
        var asked = Ran.Answering("\n\n\n\n\n\n", "new", "asked", "--out", folder.Path, "--rider", "90 kg", "--pack", "10S3P");
        var guessed = Ran.Answering("", "new", "guessed", "--out", folder.Path, "--rider", "90 kg", "--yes");

        Assert.Equal((0, 0), (asked.Code, guessed.Code));
        Assert.DoesNotContain("How heavy", asked.Out, StringComparison.Ordinal);
        Assert.Contains("How far", asked.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("How far", guessed.Out, StringComparison.Ordinal);
        Assert.Contains("rider_mass: 90 kg\n", File.ReadAllText(folder.At("guessed.board.yaml")), StringComparison.Ordinal);
        Assert.Contains("range_wanted: 20 km ?", File.ReadAllText(folder.At("guessed.board.yaml")), StringComparison.Ordinal);
        Assert.Contains("series: 10 ", File.ReadAllText(folder.At("asked.board.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_written_when_an_option_is_wrong_or_the_answers_end()
    {
        using var folder = new Folder();
        var wrong = Ran.With("new", "heron", "--out", folder.Path, "--pack", "twelve");
        var ended = Ran.Answering("80 kg\n", "new", "heron", "--out", folder.Path);

        Assert.Equal((2, 2), (wrong.Code, ended.Code));
        Assert.Contains("--pack: 'twelve' does not say how many cells.", wrong.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Path));
    }

    [Theory]
    [InlineData("../heron")]
    [InlineData("a/b")]
    [InlineData(".heron")]
    [InlineData(" ")]
    public void A_name_that_is_a_path_is_refused(string name)
    {
        using var folder = new Folder();

        Assert.Equal(2, Ran.With("new", name, "--out", folder.Path).Code);
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Path));
    }

    [Fact]
    public void Every_schema_is_written()
    {
        using var folder = new Folder();

        Assert.Equal(0, Ran.With("schema", "--out", folder.At("schema")).Code);
        foreach (var name in new[] { "board.schema.json", "shelf.schema.json", "built.schema.json" })
            Assert.Equal(JsonValueKind.Object, JsonDocument.Parse(File.ReadAllText(folder.At($"schema/{name}"))).RootElement.ValueKind);
    }

    [Fact]
    public void Pages_are_written()
    {
        using var folder = new Folder();

        Assert.Equal(0, Ran.With("pages", "--out", folder.At("docs")).Code);
        Assert.True(File.Exists(folder.At("docs/results.md")));
        Assert.True(File.Exists(folder.At("docs/findings.md")));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_fault_of_the_program_is_one_clear_line_and_the_trace_is_shown_to_those_who_ask(bool asksForTraces)
    {
        using var error = new StringWriter { NewLine = "\n" };
        using var broken = new Broken();
        var code = Program.Run(["--help"], new Terminal(broken, error) { ShowsTraces = asksForTraces });

        Assert.Equal(3, code);
        Assert.StartsWith("boardwright: an unexpected problem, which is the program's fault and not the file's: The writer is broken.\n", error.ToString(), StringComparison.Ordinal);
        Assert.Equal(asksForTraces, error.ToString().Contains("   at ", StringComparison.Ordinal));
        Assert.Equal(!asksForTraces, error.ToString().Contains("BOARDWRIGHT_TRACE=1", StringComparison.Ordinal));
    }

    sealed class Broken : StringWriter
    {
        public override void Write(string? value) => throw new InvalidOperationException("The writer is broken.");

        public override void Write(char value) => throw new InvalidOperationException("The writer is broken.");
    }
}
