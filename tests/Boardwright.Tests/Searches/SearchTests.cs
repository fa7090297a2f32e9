using Boardwright.Files;
using Boardwright.Parts;
using Boardwright.Searches;

namespace Boardwright.Tests.Searches;

public sealed class SearchTests : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("boardwright-search-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    SearchRequest Request(int seed, Stocked? stocked = null, string? brief = null)
    {
        var place = Path.Combine(folder, $"{seed}-{Directory.GetDirectories(folder).Length}");
        var loaded = BoardFile.Read(MadeUpShelf.Write(place, seed, stocked ?? new Stocked(), brief ?? MadeUpShelf.Brief()));
        Assert.Empty(loaded.Complaints);
        return new SearchRequest(loaded.Board!, [.. loaded.Shelf.Parts.Select(p => p.Part)]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void The_front_of_a_small_shelf_is_that_of_every_board_examined(int seed)
    {
        var request = Request(seed);
        var every = Every(request);
        var front = FoundBoard.Unbeaten([.. every.Where(b => b.MeetsBrief)]);

        var result = Search.Over(request).Run();

        Assert.Equal(front.Select(Named).Order(StringComparer.Ordinal), result.Boards.Select(Named).Order(StringComparer.Ordinal));
        Assert.Equal(every.Count, (int)result.Counts.Raw);
        Console.WriteLine($"{seed}: raw {result.Counts.Raw} screened {result.Counts.Screened} met {result.Counts.Met} front {front.Count}; {string.Join(' ', result.Counts.LeftOut.Select(l => $"{l.Reason}:{l.Boards}"))} {string.Join(' ', result.Counts.Missed.Select(l => $"{l.Rule}:{l.Boards}"))}");
    }

    /// <summary>Every combination of what may go in the places, each examined by itself.</summary>
    internal static IReadOnlyList<FoundBoard> Every(SearchRequest request)
    {
        var offers = new Offers(request);
        var picks = new List<int[]> { new int[Offers.Slots] };
        foreach (var slot in Enum.GetValues<Slot>())
        {
            picks = [.. picks.SelectMany(p => Enumerable.Range(0, offers.SizeOf(slot)).Select(i =>
            {
                var copy = (int[])p.Clone();
                copy[(int)slot] = i;
                return copy;
            }))];
        }

        var boards = new FoundBoard[picks.Count];
        Parallel.For(0, boards.Length, i => boards[i] = FoundBoard.Of(offers, picks[i]));
        return boards;
    }

    internal static string Named(FoundBoard board) => string.Join(' ', board.Parts.Select(p => p.Name));
}
