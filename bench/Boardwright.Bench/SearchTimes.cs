using System.Diagnostics;
using System.Globalization;
using Boardwright.Files.Boards;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Searches;
using Boardwright.Tests.Searches;

namespace Boardwright.Bench;

/// <summary>What a search of a made-up shelf of 300 parts takes: the screening one number at a time and many, and a whole search.</summary>
static class SearchTimes
{
    const int Seed = 1;

    // The chassis is chosen; what drives and feeds it is open.
    const string Chosen = "  deck: deck-0\n  front_truck: truck-0\n  rear_truck: truck-0\n  drive: { motors: 2, placement: behind }\n";

    static readonly Dictionary<Slot, string> Held = new()
    {
        [Slot.Wheels] = "wheel-0",
        [Slot.Controller] = "controller-0",
        [Slot.Cell] = "cell-0",
        [Slot.Protection] = "guard-0",
        [Slot.Charger] = "charger-0",
    };

    public static void Print(TextWriter output)
    {
        var folder = Directory.CreateTempSubdirectory("boardwright-bench-").FullName;
        try
        {
            var loaded = BoardFile.Read(MadeUpShelf.Write(folder, Seed, Stocked.Large, MadeUpShelf.Brief(18, 10, Chosen)));
            var board = loaded.Board ?? throw new InvalidOperationException(string.Join('\n', loaded.Complaints.Take(3).Select(c => $"{c.At} {c.Says}")));
            var request = new SearchRequest(board, [.. loaded.Shelf.Parts.Select(p => p.Part)])
            {
                Fixed = new Dictionary<Slot, string> { [Slot.Box] = "box-0", [Slot.Remote] = "remote-0", [Slot.Fuse] = "fuse-0", [Slot.Mount] = "mount-0" },
            };
            Screening(output, request);
            // Some ten million combinations: motor, pulleys, belt and the pack's size are open.
            Whole(output, request with { Fixed = request.Fixed.Concat(Held).ToDictionary(p => p.Key, p => p.Value) });
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    static void Screening(TextWriter output, SearchRequest request)
    {
        var offers = new CandidateParts(request);
        var asked = BriefTargets.Read(offers.Brief).Value.Wanted;
        var field = new SearchSpace(offers, 0, new RejectionCounts());
        var numbers = new FilterTables(offers, field, asked);
        var turnings = Enumerable.Range(0, field.Rollings.Count).Where(r => r % Math.Max(1, field.Rollings.Count / 16) == 0)
            .Select(numbers.TurningOf).ToArray();
        var each = (double)turnings.Length * field.Feedings.Count;
        var one = each / Stint.SecondsOf(() => Sift<Narrow>(asked, numbers, turnings));
        var many = each / Stint.SecondsOf(() => Sift<Wide>(asked, numbers, turnings));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{field.Rollings.Count} rollings, {field.Feedings.Count} feedings; sifting {each:#,0} boards, processor time of one core:"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  one number at a time  {one / 1e6,8:0.00} million boards a second"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {Wide.Width} numbers at a time   {many / 1e6,8:0.00} million boards a second, {many / one:0.0} times as many"));
    }

    static int Sift<T>(in BriefTargets asked, FilterTables numbers, DriveNumbers[] turnings)
        where T : struct, ILanes<T>
    {
        var screen = new FastFilter<T>(asked, numbers);
        var (margins, ranges) = (new double[2 * FilterTables.Tile], new double[2 * FilterTables.Tile]);
        var met = 0;
        foreach (var (_, from, to) in numbers.Pieces)
        {
            var tile = from / FilterTables.Tile;
            var cells = numbers.Cells.AsSpan(tile * FilterTables.Tile * numbers.Columns, FilterTables.Tile * numbers.Columns);
            foreach (var turning in turnings)
                met += screen.Sift(turning, cells, from - tile * FilterTables.Tile, to - tile * FilterTables.Tile, margins, ranges);
        }

        return met;
    }

    static void Whole(TextWriter output, SearchRequest request)
    {
        var (clock, before) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        double Busy() => (Environment.CpuUsage.TotalTime - before).TotalSeconds;
        var search = Search.Over(request);
        var begun = (Clock: clock.Elapsed.TotalSeconds, Busy: Busy());
        search.Step();
        search.Glimpse();
        var first = (Clock: clock.Elapsed.TotalSeconds, Busy: Busy());
        while (search.Step())
        {
        }

        var sifted = (Clock: clock.Elapsed.TotalSeconds, Busy: Busy());
        var result = search.Found();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{result.Counts.Raw:#,0} combinations of {request.Shelf.Count} parts, {result.Counts.Screened:#,0} go together, {result.Counts.Met:#,0} meet the brief, {result.Boards.Count:#,0} unbeaten"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  parts matched   {begun.Clock,7:0.00} s, processor {begun.Busy,7:0.00} s"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  first boards    {first.Clock,7:0.00} s, processor {first.Busy,7:0.00} s"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  all screened    {sifted.Clock,7:0.00} s, processor {sifted.Busy,7:0.00} s"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  front examined  {clock.Elapsed.TotalSeconds,7:0.00} s, processor {Busy(),7:0.00} s"));
    }
}
