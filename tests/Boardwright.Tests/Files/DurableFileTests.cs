using System.Diagnostics;
using System.Text;
using Boardwright.App;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Tests.App;
using Boardwright.Tests.Packs;

namespace Boardwright.Tests.Files;

public sealed class DurableFileTests : IDisposable
{
    const string Old = "the old file\n";
    const string New = "the new file, which is longer than the old one\n";

    readonly Folder home = new();

    public void Dispose() => home.Dispose();

    [Theory]
    [InlineData(nameof(WriteStep.Create))]
    [InlineData(nameof(WriteStep.Fill))]
    [InlineData(nameof(WriteStep.Settle))]
    [InlineData(nameof(WriteStep.Replace))]
    [InlineData(nameof(WriteStep.SettleFolder))]
    public async Task A_disk_that_fails_at_any_step_leaves_the_old_or_the_new_file_and_nothing_beside_it(string failing)
    {
        foreach (var isWhole in (bool[])[true, false])
        {
            var path = home.Write("board.yaml", Old);
            DurableFile.BeforeStep.Value = step =>
            {
                if (step.ToString() == failing)
                    throw new IOException("The disk is full.");
            };
            if (isWhole)
                Assert.Throws<IOException>(() => DurableFile.Write(path, New));
            else
                await Assert.ThrowsAsync<IOException>(
                    () => DurableFile.WriteAsync(path, static async file => await file.WriteAsync(Encoding.UTF8.GetBytes(New))));
            DurableFile.BeforeStep.Value = null;

            Assert.Equal(failing == nameof(WriteStep.SettleFolder) ? New : Old, File.ReadAllText(path));
            Assert.Equal([path], Directory.GetFiles(home.Path));
        }
    }

    // What lies there before each step is what a program that is killed at that moment leaves behind.
    [Fact]
    public void A_program_that_is_killed_between_any_two_writes_leaves_old_or_new_files_and_never_half_of_one()
    {
        string[] paths = [home.Write("tern.built.yaml", Old), home.At("rides/monday.csv")];
        var seen = new List<string>();
        string Look(string path) => !File.Exists(path) ? "none" : File.ReadAllText(path) switch { Old => "old", New => "new", var half => half };
        DurableFile.BeforeStep.Value = _ => seen.Add(string.Join(" + ", paths.Select(Look)));
        DurableFile.Write(paths.Select(path => (path, Encoding.UTF8.GetBytes(New))));
        DurableFile.BeforeStep.Value = null;

        // Two files are created, filled and settled; the first is replaced when both are on the disk.
        Assert.Equal([.. Enumerable.Repeat("old + none", 7), "new + none", "new + new"], seen);
        Assert.All(paths, path => Assert.Equal(New, File.ReadAllText(path)));
    }

    [Fact]
    public void Files_that_belong_together_are_all_left_where_one_cannot_be_written()
    {
        var there = home.Write("a.txt", Old);
        var folder = Directory.CreateDirectory(home.At("b.txt"));

        Assert.ThrowsAny<Exception>(() => DurableFile.Write([(there, [1]), (Path.Combine(there, "c.txt"), [2])]));
        Assert.Equal(Old, File.ReadAllText(there));
        Assert.Equal([there], Directory.GetFiles(home.Path));
        Assert.Empty(folder.EnumerateFileSystemInfos());
    }

    [Fact]
    public void Permissions_and_links_stay_and_a_read_only_file_is_left_alone()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Permissions and links as Unix has them.");
            return;
        }

        var path = home.Write("real/shelf.yaml", Old);
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite);
        var link = File.CreateSymbolicLink(home.At("shelf.yaml"), path);

        DurableFile.Write(link.FullName, New);

        Assert.Equal(path, File.ResolveLinkTarget(link.FullName, returnFinalTarget: true)!.FullName);
        Assert.Equal(New, File.ReadAllText(path));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite, File.GetUnixFileMode(path));

        File.SetUnixFileMode(path, UnixFileMode.UserRead);
        var refused = Assert.Throws<UnauthorizedAccessException>(() => DurableFile.Write(path, Old));
        Assert.Contains("read-only", refused.Message, StringComparison.Ordinal);
        Assert.Equal(New, File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(home.At("real")));
    }

    [Fact]
    public void A_device_is_written_to_and_not_replaced()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "No device that is always full.");
        DurableFile.Write("/dev/null", New);

        Assert.Throws<IOException>(() => DurableFile.Write("/dev/full", New));
        Assert.False(new FileInfo("/dev/null").Length > 0);
    }

    /// <summary>Commands that write a user's file, and the file that each would replace.</summary>
    public static TheoryData<string, string[]> Writing => new()
    {
        { "shelf.yaml", ["cell", "fit", "one.csv", "--out", "shelf.yaml"] },
        { "tern/tern.board.yaml", ["layout", "tern/tern.board.yaml", "--write"] },
        { "new.board.yaml", ["new", "new"] },
        { "schema/board.schema.json", ["schema", "--out", "schema"] },
        { "tern.traction.svg", ["plot", "tern/tern.board.yaml", "--picture", "traction"] },
        { "tern.label.pdf", ["papers", "tern/tern.board.yaml", "--only", "label"] },
    };

    // A limit on the size of files stands for a disk that fills up in the middle of a file: it needs no rights and no device.
    [Theory]
    [MemberData(nameof(Writing))]
    public async Task A_command_on_a_full_disk_says_so_and_leaves_the_file_as_it_was(string name, string[] words)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The limit on the size of files is one of Unix.");
        foreach (var file in Directory.EnumerateFiles(Repository.At("examples"), "*.yaml", SearchOption.AllDirectories))
            home.Write(Path.GetRelativePath(Repository.At("examples"), file), File.ReadAllText(file));
        if (words[0] == "cell")
            home.Write("one.csv", CellBenchTests.Table(CellFitTests.Discharge(CellModelTests.Invented(), 25, 3)));
        if (!File.Exists(home.At(name)) && words[0] != "new")
            home.Write(name, Old);
        Dictionary<string, string> Contents() =>
            Directory.EnumerateFiles(home.Path, "*", SearchOption.AllDirectories).ToDictionary(static file => file, File.ReadAllText);
        var before = Contents();

        string[] line = ["-c", "trap '' XFSZ; ulimit -f 1; exec dotnet \"$@\"", "sh", typeof(Program).Assembly.Location, .. words];
        var start = new ProcessStartInfo("/bin/sh", line)
        {
            WorkingDirectory = home.Path,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            // The runtime keeps what it compiles in a file of its own, which the limit would stop too.
            Environment = { ["DOTNET_EnableWriteXorExecute"] = "0", ["DOTNET_EnableDiagnostics"] = "0" },
        };
        using var process = Process.Start(start)!;
        var (said, complained) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.True(process.ExitCode == 2, $"{process.ExitCode}: {await said} {await complained}");
        Assert.StartsWith("boardwright: ", await complained, StringComparison.Ordinal);
        Assert.Equal(before, Contents());
    }
}
