using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Files.Results;
using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Searches;

namespace Boardwright.Tests.Searches;

/// <summary>Searches of made-up shelves. The wide kernel, the order of the work and where it was broken off must not show in the
/// result.</summary>
public sealed class SearchTests : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("boardwright-search-").FullName;
    int places;

    public static TheoryData<int, double, double> Small { get; } = new() { { 1, 14, 8 }, { 3, 30, 14 }, { 5, 22, 12 }, { 6, 25, 16 } };

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [MemberData(nameof(Small))]
    public void The_front_of_a_small_shelf_is_that_of_every_board_examined(int seed, double range, double climb)
    {
        var (request, _) = Request(seed, MadeUpShelf.Brief(range, climb));
        var every = Every(request);
        var front = FoundBoard.Unbeaten([.. every.Where(b => b.MeetsBrief)]);

        var result = Search.Over(request).Run();

        Assert.True(result.IsComplete);
        Assert.Equal(front.Select(Named).Order(StringComparer.Ordinal), result.Boards.Select(Named).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_front_of_thousands_of_combinations_is_that_of_every_board_examined()
    {
        var request = Enumerable.Range(1, 6).SelectMany(motors => Enumerable.Range(1, 6).Select(belts => (motors, belts)))
            .Select(s => Request(1, MadeUpShelf.Brief(14, 8), new Stocked(Motors: s.motors, Belts: s.belts)).Item1)
            .Where(r => Search.Over(r).Raw <= Thorough.Cases(20_000))
            .MaxBy(r => Search.Over(r).Raw)!;
        Assert.True(Search.Over(request).Raw > Thorough.Cases(10_000), $"{Search.Over(request).Raw}");

        var front = FoundBoard.Unbeaten([.. Every(request).Where(b => b.MeetsBrief)]);
        var result = Search.Over(request).Run();

        Assert.NotEmpty(front);
        Assert.Equal(front.Select(Named).Order(StringComparer.Ordinal), result.Boards.Select(Named).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Small))]
    public void Every_combination_is_left_out_for_a_reason_or_screened(int seed, double range, double climb)
    {
        var (request, _) = Request(
            seed, MadeUpShelf.Brief(range, climb, "  drive: { placement: behind }\n"), new Stocked(Decks: 3, Motors: 4, Belts: 4, Boxes: 2, Cells: 2, Fuses: 2));

        var counts = Search.Over(request).Run().Counts;

        Assert.Equal(counts.Raw, counts.LeftOut.Aggregate(
            new System.Numerics.BigInteger(counts.Screened), (sum, left) => sum + left.Boards));
        Assert.True(counts.Raw > 1_000_000);
        Assert.True(counts.Met >= 0);
    }

    [Fact]
    public void A_screened_figure_lies_within_its_tolerance_of_the_examined_one()
    {
        var compared = 0;
        foreach (var seed in Enumerable.Range(1, 5))
        {
            // Nothing but the climb is asked, so that nearly everything that goes together can be compared.
            var (request, _) = Request(seed, MadeUpShelf.Brief(0, 2, "  drive: { motors: 2, placement: behind }\n"), new Stocked(Motors: 4, MotorPulleys: 3, Belts: 4, Cells: 3));
            var offers = new CandidateParts(request);
            var asked = BriefTargets.Read(offers.Brief).Value.Wanted;
            var field = new SearchSpace(offers, 0, new RejectionCounts());
            var numbers = new FilterTables(offers, field, asked);
            var screen = new FastFilter<Narrow>(asked, numbers);
            var (margins, ranges) = (new double[FilterTables.Tile], new double[FilterTables.Tile]);
            var (low, high) = (new double[Front.Criteria], new double[Front.Criteria]);
            var column = new double[numbers.Columns];
            var step = Math.Max(1, (long)field.Rollings.Count * numbers.Feedings.Length / 150);
            for (var at = 0L; at < (long)field.Rollings.Count * numbers.Feedings.Length; at += step)
            {
                var (rolling, place) = ((int)(at / numbers.Feedings.Length), (int)(at % numbers.Feedings.Length));
                if (numbers.Feedings[place] < 0)
                    continue;
                var tile = numbers.Cells.AsSpan(
                    place / FilterTables.Tile * FilterTables.Tile * numbers.Columns, FilterTables.Tile * numbers.Columns).ToArray();
                var turning = numbers.TurningOf(rolling);
                screen.Sift(turning, tile, place % FilterTables.Tile, place % FilterTables.Tile + 1, margins, ranges);
                for (var c = 0; c < column.Length; c++)
                    column[c] = tile[c * FilterTables.Tile + place % FilterTables.Tile];
                var found = FoundBoard.Create(offers, field.PickOf(rolling, numbers.Feedings[place]));
                var isSure = margins[place % FilterTables.Tile] > Tolerance.Margin;
                if (field.Groups.Any(g => field.Apart(field.Rollings[rolling], g) is not null))
                    continue;
                Assert.Equal(isSure, found.MeetsBrief);
                if (!isSure)
                    continue;
                screen.Compare(turning, column, ranges.AsSpan(place % FilterTables.Tile), low, high);
                foreach (var criterion in Enum.GetValues<Criterion>().Where(c => c != Criterion.Price))
                    Assert.InRange(found.Merit(criterion), low[(int)criterion], high[(int)criterion]);
                Assert.Equal(-found.Merit(Criterion.Price) * 10000, -low[(int)Criterion.Price], 1e-6);
                compared++;
            }
        }

        Assert.True(compared > 50, $"only {compared} boards could be compared");
    }

    [Fact]
    public void One_number_at_a_time_and_many_screen_alike()
    {
        var (request, _) = Request(2, MadeUpShelf.Brief(20, 10, "  drive: { motors: 2, placement: behind }\n"), new Stocked(Motors: 3, Cells: 2));
        var offers = new CandidateParts(request);
        var asked = BriefTargets.Read(offers.Brief).Value.Wanted;
        var field = new SearchSpace(offers, 0, new RejectionCounts());
        var numbers = new FilterTables(offers, field, asked);
        var (one, many) = (new FastFilter<Narrow>(asked, numbers), new FastFilter<Wide>(asked, numbers));
        foreach (var rolling in Enumerable.Range(0, field.Rollings.Count))
        {
            var turning = numbers.TurningOf(rolling);
            foreach (var (_, from, to) in numbers.Pieces)
            {
                var tile = from / FilterTables.Tile;
                var cells = numbers.Cells.AsSpan(tile * FilterTables.Tile * numbers.Columns, FilterTables.Tile * numbers.Columns);
                var (a, b) = (new double[2 * FilterTables.Tile], new double[2 * FilterTables.Tile]);
                one.Sift(turning, cells, from - tile * FilterTables.Tile, to - tile * FilterTables.Tile, a,
                    new double[2 * FilterTables.Tile], new double[2 * FilterTables.Tile]);
                many.Sift(turning, cells, from - tile * FilterTables.Tile, to - tile * FilterTables.Tile, b,
                    new double[2 * FilterTables.Tile], new double[2 * FilterTables.Tile]);
                Assert.Equal(a.AsSpan(from - tile * FilterTables.Tile, to - from), b.AsSpan(from - tile * FilterTables.Tile, to - from));
            }
        }

        Assert.Equal(one.Missed, many.Missed);
        Assert.True(one.Screened > 0);
    }

    [Fact]
    public void A_search_that_was_broken_off_and_taken_up_finds_the_same_bytes()
    {
        var (request, _) = Request(3, MadeUpShelf.Brief(16, 9, "  drive: { motors: 2, placement: behind }\n"), new Stocked(Decks: 2, Motors: 4, Belts: 3));
        var whole = SearchDocument.Write(Search.InPieces(request, 1).Run());
        var first = Search.InPieces(request, 1);
        Assert.True(first.Step());

        var second = Search.InPieces(request, 1);
        Assert.True(second.Resume(SearchStateFile.Read(SearchStateFile.Write(first.Save()))!));

        Assert.Equal(first.Progress, second.Progress);
        Assert.Equal(whole, SearchDocument.Write(second.Run()));
        Assert.Equal(whole, SearchDocument.Write(Search.Over(request).Run()));
    }

    [Fact]
    public void A_stand_of_another_search_is_refused()
    {
        var (request, _) = Request(3, MadeUpShelf.Brief());
        var (other, _) = Request(4, MadeUpShelf.Brief());

        Assert.False(Search.Over(request).Resume(Search.Over(other).Save()));
        Assert.Null(SearchStateFile.Read("{ \"boardwright\": 1 }"));
    }

    [Fact]
    public void A_search_that_is_stopped_says_so_and_every_board_it_has_found_meets_the_brief()
    {
        var (request, _) = Request(3, MadeUpShelf.Brief(16, 9, "  drive: { motors: 2, placement: behind }\n"), new Stocked(Decks: 2, Motors: 4, Belts: 3));
        var search = Search.InPieces(request, 1);
        using var stopping = new CancellationTokenSource();

        var result = search.Run(new AfterOneStep(stopping), stopping.Token);

        Assert.False(result.IsComplete);
        Assert.All(result.Boards, b => Assert.True(b.MeetsBrief));
    }

    [Theory]
    [MemberData(nameof(Small))]
    public void A_board_that_is_written_and_read_gives_the_same_figures_to_the_last_bit(int seed, double range, double climb)
    {
        var (request, path) = Request(seed, MadeUpShelf.Brief(range, climb));
        foreach (var found in Search.Over(request).Run().Boards.Take(3))
        {
            var text = FoundBoardText.Write(File.ReadAllText(path), found, "Written");
            Assert.Null(text.Refusal);
            var read = BoardFile.ReadText(text.Text, path);
            Assert.Empty(read.Complaints);
            var (before, after) = (Examination.Examine(found.Board), Examination.Examine(read.Board!));
            Assert.Equal(before.Figures.Select(f => (f.Kind.Id, f.Value)), after.Figures.Select(f => (f.Kind.Id, f.Value)));
            Assert.Equal(before.Findings.Select(f => (f.Rule, f.Level, f.Where)), after.Findings.Select(f => (f.Rule, f.Level, f.Where)));
        }
    }

    [Fact]
    public void A_brief_that_no_board_meets_is_told_what_comes_near_and_which_part_would_do()
    {
        var (request, _) = Request(1, MadeUpShelf.Brief(75, 8));
        var search = Search.Over(request);
        Assert.False(search.Run().Boards.Any(), "a board meets it");

        var misses = search.WhyNot();

        Assert.NotEmpty(misses);
        Assert.All(misses, m => Assert.Contains(m.Against, f => f.Rule == "cruise.range_wanted" && f.Level == Level.Fix));
        Assert.Contains(misses, m => m.Purchases.Any(p => p.Slot == Slot.Cell));
        Assert.Equal(misses.Select(m => m.Shortfall).Order(), misses.Select(m => m.Shortfall));
    }

    [Fact]
    public void Where_nothing_goes_together_the_rule_that_alone_stands_against_it_is_named()
    {
        var (request, _) = Request(1, MadeUpShelf.Brief(parts: "  pack: { parallel: 3 }\n  drive: { motors: 2, placement: behind }\n  box: { inner_length: 200 mm, inner_width: 150 mm, inner_depth: 50 mm, wall: 2 mm, flange_width: 10 mm, mass: 400 g, price: 40 EUR }\n"));
        var search = Search.Over(request);
        Assert.Equal(0, search.Run().Counts.Screened);

        Assert.Contains(search.WhyNot(), m => m.Board.Stops.Contains("fit.box_contents"));
    }

    [Fact]
    public void What_the_shelf_lacks_and_the_brief_leaves_open_is_said()
    {
        var (request, _) = Request(1, "boardwright: 1\nbrief: { range_wanted: 10 km }\nshelf: [shelf/]\n", new Stocked(Motors: 0));

        var result = Search.Over(request).Run();

        Assert.Equal(["brief.rider_mass", "brief.drag_area"], result.Missing);
        Assert.Equal([Slot.Motor], result.Empty);
        Assert.Contains(result.Assumptions, a => a is { Key: "brief.cruise_speed", Text: "20 km/h" });
    }

    [Fact]
    public void A_price_beyond_the_budget_is_found_by_check_as_well()
    {
        var board = Boards.Tern with
        {
            Brief =
            Boards.Tern.Brief with { Budget = new Boardwright.Units.Known<Boardwright.Units.Money>(new(1800m, "EUR"), key: "brief.budget") }
        };

        var finding = Assert.Single(Examination.Examine(board).Findings, f => f.Rule == "price.budget");

        Assert.Equal(Level.Fix, finding.Level);
        Assert.Equal(1800, finding.Limit!.Value.Value);
    }

    /// <summary>Every combination of what may go in the places, each examined by itself.</summary>
    static FoundBoard[] Every(SearchRequest request)
    {
        var offers = new CandidateParts(request);
        IEnumerable<int[]> picks = [new int[CandidateParts.Slots]];
        foreach (var slot in Enum.GetValues<Slot>())
            picks = picks.SelectMany(
                p => Enumerable.Range(0, offers.SizeOf(slot)).Select(i => p.Select((n, s) => s == (int)slot ? i : n).ToArray()));
        var all = picks.ToArray();
        var boards = new FoundBoard[all.Length];
        Parallel.For(0, boards.Length, i => boards[i] = FoundBoard.Create(offers, all[i]));
        return boards;
    }

    static string Named(FoundBoard board) => string.Join(' ', board.Parts.Select(p => p.Name));

    (SearchRequest Request, string Path) Request(int seed, string brief, Stocked? stocked = null)
    {
        var path = MadeUpShelf.Write(Path.Combine(folder, $"{places++}"), seed, stocked ?? new Stocked(MotorPulleys: 1, WheelPulleys: 1), brief);
        var loaded = BoardFile.Read(path);
        Assert.Empty(loaded.Complaints);
        return (new SearchRequest(loaded.Board!, [.. loaded.Shelf.Parts.Select(p => p.Part)]), path);
    }

    sealed class AfterOneStep(CancellationTokenSource stopping) : IProgress<SearchProgress>
    {
        public void Report(SearchProgress value) => stopping.Cancel();
    }
}
