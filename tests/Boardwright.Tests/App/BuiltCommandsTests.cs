using System.CommandLine;
using Boardwright.App.Commands;
using Boardwright.App.Reports;
using Boardwright.Findings;

namespace Boardwright.Tests.App;

/// <summary>Built boards on the command line, in a shop and in a folder of their own.</summary>
public sealed class BuiltCommandsTests : IDisposable
{
    const string Log = "t_s,v,pack_voltage_V,pack_current_A\n";
    readonly Folder folder = new();

    public BuiltCommandsTests()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.At("examples", "shelf"), "*.yaml"))
            folder.Write("shelf/" + Path.GetFileName(file), System.IO.File.ReadAllText(file));
        folder.Write("tern/tern.board.yaml", System.IO.File.ReadAllText(Repository.At("examples", "tern", "tern.board.yaml")));
        folder.Write("harbour.csv", Log + string.Concat(Enumerable.Range(0, 300).Select(i => FormattableString.Invariant($"{0.2 * i:0.0},20.0,{48 - 0.01 * i:0.00},8.0\n"))) + "broken,1\n");
        Assert.Equal(0, Ran.With("shop", "save", File("tern/tern.board.yaml"), "--why", "begun", "--shop", File("shop.db")).Code);
    }

    [Fact]
    public void A_board_is_begun_ticked_measured_and_marked_only_with_a_reason_while_something_is_open()
    {
        Assert.Equal((0, "TERN-0001: begun from tern, revision 1\n", ""), Built("begin", "TERN-0001", "tern", "--by", "Ada", "--on", "2026-04-18 09:00"));
        Assert.Equal((0, "TERN-0001: deck.template done.\nTERN-0001: deck.holes done.\n", ""), Built("step", "TERN-0001", "deck.template", "deck.holes", "--by", "Bo"));
        Assert.Equal((0, "TERN-0001: pack.rest passed. 41.3 V holds the most of 50.4 V by 9.1 V.\n", ""), Built("measure", "TERN-0001", "pack.rest", "41.3 V"));
        Assert.Equal((1, "TERN-0001: pack.groups FAILED. 31 mV is 11 mV more than the most of 20 mV.\n", ""), Built("measure", "TERN-0001", "pack.groups", "0.031 V"));

        var (code, said, error) = Built("ready", "TERN-0001");
        Assert.Equal((1, ""), (code, said));
        Assert.Contains("cannot be marked as ready to ride: failed pack.groups", Flat(error), StringComparison.Ordinal);
        Assert.Equal(1, Built("mark", "TERN-0001", "handed-over", "--why", " ").Code);
        Assert.Equal(1, Built("show", "TERN-0001", "--open").Code);

        var marked = Built("ready", "TERN-0001", "--why", "for the fair, not ridden", "--by", "Ada");
        Assert.Equal(0, marked.Code);
        foreach (var told in new[] { marked.Out, Built("list").Out, Built("show", "TERN-0001").Out })
            Assert.Contains("by a written reason: for the fair, not ridden.", Flat(told), StringComparison.Ordinal);

        Built("fault", "TERN-0001", "belt 2 jumps", "--by", "Jo", "--on", "2026-05-03");
        Assert.Contains("it may not be ridden: fault 1 of 2026-05-03 is open.", Flat(Built("list").Out), StringComparison.Ordinal);
        Assert.Equal((0, "TERN-0001: fault 1 is mended\n", ""), Built("repair", "TERN-0001", "1", "two new bolts", "--by", "Ada"));
        Assert.Contains("by a written reason", Flat(Built("list").Out), StringComparison.Ordinal);
    }

    [Fact]
    public void A_ride_waits_for_its_columns_to_be_confirmed_and_the_next_one_is_read_alike()
    {
        Built("begin", "TERN-0001", "tern");

        var asked = Built("ride", "TERN-0001", File("harbour.csv"));
        Assert.Equal(1, asked.Code);
        Assert.Contains("2 v: -; passed over", asked.Out, StringComparison.Ordinal);
        Assert.Contains("1 bad", asked.Out, StringComparison.Ordinal);
        Assert.Contains("Nothing was kept yet.", asked.Out, StringComparison.Ordinal);
        Assert.Equal(0, Built("ride", "TERN-0001", File("harbour.csv"), "--column", "v=speed km/h", "--confirm", "--on", "2026-05-03 17:10", "--by", "Jo").Code);
        folder.Write("hill.csv", Log + "0,36,48,8\n1,36,48,8\n2,36,48,8\n");
        var next = Built("ride", "TERN-0001", File("hill.csv"));
        Assert.Equal(0, next.Code);
        Assert.Contains("2 v: speed, km/h", next.Out, StringComparison.Ordinal);
        Assert.Contains("columns as confirmed before", next.Out, StringComparison.Ordinal);

        var text = Ran.With("shop", "show", "TERN-0001", "--shop", File("shop.db")).Out;
        Assert.Contains("{ file: rides/harbour.csv, when: 2026-05-03 17:10, who: Jo, distance: 0.33 km, lasting: 1 min, columns: { time: seconds, decimal: point, columns: [t_s=time, v=speed km/h, pack_voltage_V=pack-voltage V, pack_current_A=pack-current A] }, rows: 301, bad_rows: 1 }", text, StringComparison.Ordinal);
        Assert.Equal(0, Ran.With("shop", "show", "TERN-0001", "--out", File("out"), "--shop", File("shop.db")).Code);
        Assert.Equal(System.IO.File.ReadAllBytes(File("harbour.csv")), System.IO.File.ReadAllBytes(File("out/rides/harbour.csv")));
    }

    [Fact]
    public void A_built_board_beside_its_board_file_does_the_same_without_a_shop_and_can_be_taken_into_one()
    {
        Assert.Equal(0, Built("begin", "TERN-0007", File("tern/tern.board.yaml"), "--by", "Ada").Code);
        var file = File("tern/tern-0007.built.yaml");
        System.IO.File.AppendAllText(file, "# burnt in under the nose\n");
        folder.Write("lead.jpg", "no picture, but bytes");

        Assert.Equal(0, Built("note", file, "lead of motor 2", "--file", File("lead.jpg"), "--about", "wires.joints").Code);
        Assert.Equal(0, Built("fit", file, "motor", "--number", "2", "--batch", "B2604-117").Code);
        Assert.Equal(0, Built("set", file, "warranty.until", "2028-05-09").Code);
        Assert.Equal(0, Built("ride", file, File("harbour.csv"), "--column", "v=speed km/h", "--confirm").Code);
        Assert.Equal(1, Built("ready", file).Code);
        var text = System.IO.File.ReadAllText(file);
        Assert.Contains("# burnt in under the nose\n", text, StringComparison.Ordinal);
        Assert.Contains("file: photos/lead.jpg", text, StringComparison.Ordinal);
        Assert.Equal("no picture, but bytes", System.IO.File.ReadAllText(File("tern/photos/lead.jpg")));
        Assert.Single(Directory.EnumerateFiles(File("tern/loggers"), "*.logger.yaml"));

        Assert.Equal((0, "tern-0007: revision 1\n", ""), Ran.With("shop", "save", file, "--why", "into the shop", "--shop", File("shop.db")));
        Assert.Contains("TERN-0007: tern, revision 1", Flat(Built("show", "tern-0007", "--open").Out), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_is_said_in_words_with_a_remedy()
    {
        Built("begin", "TERN-0001", "tern");
        foreach (var (args, word) in new (string[], string)[]
        {
            (["show", "TERN-001"], "Was TERN-0001 meant?"),
            (["begin", "TERN-0002", "turn"], "There is no board turn"),
            (["begin", "TERN-0001", "tern"], "is taken"),
            (["begin", "no good", "tern"], "cannot be a serial number"),
            (["measure", "TERN-0001", "pack.rst", "41 V"], "Was pack.rest meant?"),
            (["measure", "TERN-0001", "deck.holes"], "use step"),
            (["step", "TERN-0001", "pack.rest"], "use measure"),
            (["measure", "TERN-0001", "pack.rest", "41.3"], "has no unit"),
            (["measure", "TERN-0001", "pack.rest", "41 A"], "wants a voltage"),
            (["measure", "TERN-0001", "wheels.brake", "1 m"], "Nothing is measured"),
            (["set", "TERN-0001", "warranty.until", "tomorrow"], "is not a day"),
            (["set", "TERN-0001", "states[1].is", "ready to ride"], "States are not changed"),
            (["repair", "TERN-0001", "4", "x"], "no such item"),
            (["ride", "TERN-0001", File("none.csv")], "cannot be read"),
            (["fault", "TERN-0001", "x", "--on", "03.05.2026"], "--on wants a day"),
        })
        {
            var (code, _, error) = Built(args);
            Assert.True(code == 2, string.Join(' ', args));
            Assert.Contains(word, Flat(error), StringComparison.Ordinal);
        }
    }

    public void Dispose() => folder.Dispose();

    static string Flat(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    string File(string name) => folder.At(name);

    // Without the sampling of the design, which takes seconds and on which only a few ranges rest.
    (int Code, string Out, string Error) Built(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var parsed = new RootCommand { BuiltCommands.Create(
            new Terminal(output, error), static _ => new Dictionary<string, Interval>()) }.Parse(["built", .. args, "--shop", File("shop.db")]);
        return parsed.Errors.Count > 0 ? (2, "", string.Join("\n", parsed.Errors.Select(static one => one.Message)))
            : (parsed.Invoke(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false }),
            output.ToString(), error.ToString());
    }
}
