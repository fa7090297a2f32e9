using Boardwright.Builds;
using Boardwright.Documents.Papers;
using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Files.Logs;
using Boardwright.Logs;
using Boardwright.Parts;

namespace Boardwright.Tests.Examples;

public sealed class ExampleBoardsReadTests
{
    static string Folder { get; } = FolderOfExamples();

    public static TheoryData<string> Boards =>
        [.. Directory.EnumerateFiles(Folder, "*.board.yaml", SearchOption.AllDirectories)
        .Select(path => Path.GetRelativePath(Folder, path).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    [Fact]
    public void There_are_three_example_boards() =>
        Assert.Equal("curlew/curlew.board.yaml puffin/puffin.board.yaml tern/tern.board.yaml", string.Join(' ', Boards.Select(row => row.Data)));

    [Theory]
    [MemberData(nameof(Boards))]
    public void An_example_board_reads_without_complaint(string board)
    {
        var loaded = BoardFile.Read(Path.Combine(Folder, board));

        Assert.Equal("", string.Join('\n', loaded.Complaints));
        Assert.NotNull(loaded.Board);
    }

    [Fact]
    public void The_example_of_a_built_board_reads_without_complaint_and_names_only_steps_and_files_that_there_are()
    {
        var loaded = BuiltFile.Read(Path.Combine(Folder, "tern", "tern-0001.built.yaml"));
        var steps = BuildSteps.Collect(new(Examination.Examine(BoardFile.Read(Path.Combine(Folder, "tern", "tern.board.yaml")).Board!)))
            .Select(step => step.Id).ToHashSet(StringComparer.Ordinal);

        Assert.Equal("", string.Join('\n', loaded.Complaints));
        Assert.All(loaded.Built!.Steps.Concat(loaded.Built.Bench), done => Assert.Contains(done.Step.Value, steps));
        var ride = Assert.Single(loaded.Built.Rides);
        var log = RideLogFile.Read(Path.Combine(Folder, "tern", ride.File.Value), LoggerFile.WishesOf(ride.Columns)).Log!;
        Assert.Equal(ride.Rows.Value, log.Count);
        Assert.Equal(ride.Distance.Value.Metres, log.WayBySpeeds!.Value.Metres, 5.0);
    }

    [Fact]
    public void The_shelf_holds_parts_of_every_kind_and_each_says_what_it_weighs_and_costs_and_where_that_is_from()
    {
        var shelf = BoardFile.Read(Path.Combine(Folder, "tern", "tern.board.yaml")).Shelf;

        Assert.True(shelf.Parts.Count >= 48);
        // A pack is made for one board and does not lie on a shelf.
        Assert.Equal(
            typeof(Part).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Part)) && type != typeof(Pack))
            .Select(type => type.Name).Order(StringComparer.Ordinal),
            shelf.Parts.Select(part => part.Part.GetType().Name).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
        Assert.All(shelf.Parts, part => Assert.True(
            part.Part is
            {
                Name.IsKnown: true, Mass.IsKnown: true, Price.IsKnown: true, Supplier.IsKnown: true, Stock.IsKnown: true,
                Source.IsKnown: true
            }, part.Id));
    }

    static string FolderOfExamples()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Boardwright.slnx")))
                return Path.Combine(folder.FullName, "examples");
        }

        throw new DirectoryNotFoundException("The tests do not run inside the repository.");
    }
}
