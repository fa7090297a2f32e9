using System.Text;
using Boardwright.Files;
using Boardwright.Files.Boards;
using CsCheck;

namespace Boardwright.Tests.Files;

/// <summary>Every file in <c>bad/</c> is refused with the message beside it. Set BOARDWRIGHT_BLESS=1 to write the messages anew, and read
/// each as a builder would.</summary>
public sealed class BadFilesTests
{
    // A reader that hangs ends here; one that works is done in a moment, however busy the machine.
    const int Patience = 600_000;
    const int Thoroughly = 5_000;

    static readonly string Folder = Path.Combine(Repository.Root, "tests/Boardwright.Tests/Files/bad");

    public static TheoryData<string> Names =>
        [.. Directory.EnumerateFiles(Folder, "*.board.yaml").Select(file => Path.GetFileName(file)[..^".board.yaml".Length]).Order(StringComparer.Ordinal)];

    [Theory(Timeout = Patience)]
    [MemberData(nameof(Names))]
    public async Task Is_refused_with_its_message(string name)
    {
        var loaded = await Task.Run(() => BoardFile.Read(Path.Combine(Folder, name + ".board.yaml")), TestContext.Current.CancellationToken);
        var told = string.Concat(
            loaded.Complaints.Select(complaint => complaint.ToString().Replace(Folder + "/", "", StringComparison.Ordinal) + "\n"));
        var expected = Path.Combine(Folder, name + ".expected.txt");
        if (Environment.GetEnvironmentVariable("BOARDWRIGHT_BLESS") == "1")
            await File.WriteAllTextAsync(expected, told, TestContext.Current.CancellationToken);

        Assert.Equal(await File.ReadAllTextAsync(expected, TestContext.Current.CancellationToken), told);
        Assert.Null(loaded.Board);
        Assert.Empty(loaded.Shelf.Parts);
        Assert.Empty(loaded.Places);
        Assert.NotEmpty(loaded.Complaints);
        Assert.All(loaded.Complaints, static complaint =>
        {
            Assert.EndsWith(".", complaint.Says, StringComparison.Ordinal);
            Assert.EndsWith(".", complaint.Remedy, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", complaint.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain("  ", complaint.ToString(), StringComparison.Ordinal);
            Assert.InRange(complaint.ToString().Length, 20, 700);
        });
    }

    [Fact]
    public void There_are_many() => Assert.InRange(Names.Count, 70, 1000);

    [Fact]
    public void No_expected_message_is_left_without_its_file() =>
        Assert.All(Directory.EnumerateFiles(Folder, "*.expected.txt"), static file => Assert.True(File.Exists(file[..^".expected.txt".Length] + ".board.yaml")));

    [Fact(Timeout = Patience)]
    public async Task Nesting_ten_thousand_deep_is_refused()
    {
        await Refused("boardwright: 1\nname: " + new string('[', 10_000), "nested more than 24 deep", TestContext.Current.CancellationToken);
        await Refused("boardwright: 1\nname: " + string.Concat(Enumerable.Repeat("{a: ", 10_000)), "nested more than 24 deep", TestContext.Current.CancellationToken);
        await Refused("boardwright: 1\nname: " + string.Concat(Enumerable.Repeat("- ", 10_000)), "list", TestContext.Current.CancellationToken);
        await Refused(string.Concat(Enumerable.Range(0, 2_000).Select(depth => new string(' ', depth) + "a:\n")), "nested more than 24 deep",
            TestContext.Current.CancellationToken);
    }

    [Fact(Timeout = Patience)]
    public async Task A_file_larger_than_4_MB_is_refused() =>
        await Refused("boardwright: 1\n" + new string('#', 4 * 1024 * 1024), "larger than 4 MB", TestContext.Current.CancellationToken);

    [Fact(Timeout = Patience)]
    public async Task A_file_of_too_many_values_is_refused() =>
        await Refused("boardwright: 1\nname: [" + string.Concat(Enumerable.Repeat("a, ", 1_000_000)) + "]", "more than 100000 values", TestContext.Current.CancellationToken);

    [Fact(Timeout = Patience)]
    public async Task Very_long_lines_are_refused_in_few_words()
    {
        await Refused("boardwright: 1\nname: " + new string('x', 3_000_000), "has 3000000 characters", TestContext.Current.CancellationToken);
        await Refused("boardwright: 1\n" + new string('x', 3_000_000) + ": 1", "", TestContext.Current.CancellationToken);
        await Refused("boardwright: 1\n? " + new string('x', 3_000_000) + "\n: 1", "is not a key", TestContext.Current.CancellationToken);
        await Refused("boardwright: 1\nlimits: { phase_current: " + new string('1', 3_000_000) + " A }", "too long", TestContext.Current.CancellationToken);
        await Refused("boardwright: 1\nwiring: [" + string.Concat(Enumerable.Repeat("{x: 1}, ", 30_000)) + "]", "'x' is not a key", TestContext.Current.CancellationToken);
    }

    [Fact(Timeout = Patience)]
    public async Task A_folder_is_refused()
    {
        using var place = new Workplace().Write("nest.board.yaml/inside.txt", "");
        var loaded = await Task.Run(() => place.Read("nest.board.yaml"), TestContext.Current.CancellationToken);
        Assert.Equal("nest.board.yaml:1:1: This is a folder, and a file is wanted. Name the board file inside it, which ends in .board.yaml.", place.Told(loaded));
    }

    [Theory]
    [InlineData("missing.board.yaml", "missing.board.yaml:1:1: There is no such file. Check the name and the folder.")]
    [InlineData("no/such/folder.board.yaml", "no/such/folder.board.yaml:1:1: There is no such file. Check the name and the folder.")]
    [InlineData("a\0b", "a\0b:1:1: This is not a name that a file can have. Check the name.")]
    public void A_missing_file_is_refused(string name, string told)
    {
        using var place = new Workplace();
        Assert.Equal(told, place.Told(place.Read(name)));
    }

    [Fact]
    public void An_empty_name_is_refused() => Assert.Equal("This is not a name that a file can have.", Assert.Single(BoardFile.Read("").Complaints).Says);

    // Tests may run as a user whom no permission stops, so the disk is played.
    [Fact]
    public void A_file_without_permission_is_refused()
    {
        Assert.Equal("The file may not be read by this user.", Told(static () => new UnauthorizedAccessException("internal words")));
        Assert.StartsWith("The file could not be read", Told(static () => new IOException("internal words")), StringComparison.Ordinal);

        static string Told(Func<Exception> fault) =>
            Assert.Single(BoardFile.Read("tern.board.yaml", FileTree.Opening(_ => throw fault())).Complaints).Says;
    }

    [Fact]
    public void A_shelf_file_without_permission_is_told_once_and_its_parts_are_not_missed()
    {
        using var place = Tern.Place();
        var texts = FileTree.Opening(
            static path => path.EndsWith("chassis.yaml", StringComparison.Ordinal) ? throw new UnauthorizedAccessException() : File.OpenRead(path));
        var loaded = BoardFile.Read(Path.Combine(place.Folder, "tern.board.yaml"), texts);
        Assert.Equal("shelf/chassis.yaml:1:1: The file may not be read by this user. Give yourself the permission to read it.", place.Told(loaded));
    }

    [Fact]
    public void Complaints_come_by_file_and_line()
    {
        using var place = Tern.Place().Write("shelf/a.yaml", "- { id: a, kind: deck, length: 1 }")
            .Write("tern.board.yaml", Tern.Board.Replace("rider_mass: 80 kg", "rider_mass: 80", StringComparison.Ordinal).Replace("overhead: 12 %", "overhead: 12", StringComparison.Ordinal));
        Assert.Equal("tern.board.yaml:4:15 tern.board.yaml:52:13 a.yaml:1:32", string.Join(' ', place.Read().Complaints.Select(complaint => Path.GetFileName(complaint.At.ToString()))));
    }

    [Fact]
    public void Files_are_named_as_the_user_wrote_them()
    {
        using var place = Tern.Place().Write("shelf/a.yaml", "- { id: a, kind: deck, length: 1 }");
        var relative = Path.GetRelativePath(Directory.GetCurrentDirectory(), Path.Combine(place.Folder, "tern.board.yaml"));
        Assert.Equal(relative.Replace("tern.board.yaml", "shelf/a.yaml", StringComparison.Ordinal), Assert.Single(BoardFile.Read(relative).Complaints).File);
    }

    /// <summary>Random damage to a good file never brings the reader down.</summary>
    [Fact(Timeout = Patience)]
    public async Task Damaged_files_are_refused_or_read_and_never_throw() =>
        await Task.Run(static () =>
        {
            var bytes = Encoding.UTF8.GetBytes(Tern.Board);
            Gen.Select(Gen.Int[0, bytes.Length - 1], Gen.Byte, Gen.Int[0, 40]).Sample(
                (at, with, gone) =>
                {
                    byte[] damaged = [.. bytes[..at], with, .. bytes[Math.Min(bytes.Length, at + gone)..]];
                    var loaded = BoardFile.Read("tern.board.yaml", FileTree.Opening(_ => new MemoryStream(damaged)));
                    return loaded.Board is null == loaded.Complaints.Count > 0;
                },
                iter: 300);
        },
        TestContext.Current.CancellationToken);

    /// <summary>Heaps of YAML's own characters find what damage to single bytes does not.</summary>
    [Fact(Timeout = Patience)]
    public async Task Heaps_of_yaml_signs_are_refused_or_read_and_never_throw() =>
        await Task.Run(
            static () => Gen.OneOf("[", "]", "{", "}", ",", ":", ": ", "- ", "? ", "&a", "*a", "!t", "|", ">", "'", "\"", "%", "@", "#", "\n", "  ", "\t", "---", "...", "a", "1 mm",
            "é").Array[1, 14].Sample(
                static signs =>
                {
                    var loaded = BoardFile.ReadText("boardwright: 1\nname: " + string.Concat(signs), "tern.board.yaml");
                    return loaded.Board is null == loaded.Complaints.Count > 0;
                },
                iter: Thoroughly),
            TestContext.Current.CancellationToken);

    static async Task Refused(string text, string says, CancellationToken cancellation)
    {
        using var place = new Workplace().Write("tern.board.yaml", text);
        var loaded = await Task.Run(() => place.Read(), cancellation);
        Assert.Null(loaded.Board);
        Assert.Contains(says, loaded.Complaints[0].Says, StringComparison.Ordinal);
        Assert.All(loaded.Complaints.Take(100), static complaint => Assert.InRange(complaint.ToString().Length, 20, 700));
    }
}
