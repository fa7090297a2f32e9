using System.Numerics;
using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Numerics;

namespace Boardwright.Searches;

/// <summary>How far a search has come.</summary>
/// <param name="Done">Boards screened or left out so far, of those whose parts go together on either side.</param>
/// <param name="Whole">All of them.</param>
/// <param name="Kept">Boards that none so far beats.</param>
public sealed record SearchProgress(long Done, long Whole, int Kept)
{
    /// <summary>Part of the work that is done, 0 to 1.</summary>
    public double Share => Whole == 0 ? 1 : (double)Done / Whole;
}

/// <summary>From a brief and a shelf to the boards that meet the one and can be built from the other, none of them beaten by another in
/// everything that boards are compared by.</summary>
/// <remarks>
/// Parts that do not go together are left out as soon as a rule of the examination says so. What is left is screened by numbers alone; what
/// no other board beats for certain is
/// examined, and compared again by the figures of its examination. A search advances in steps, can be asked for what it has found between
/// two of them, saved, and taken up again;
/// the same request gives the same boards however it was run.
/// </remarks>
public sealed class Search
{
    const int UsualBlock = 1 << 17;
    const int BlocksOfStep = 8;

    readonly CandidateParts offers;
    readonly BriefTargets asked;
    readonly List<SearchSpace> fields = [];
    readonly List<FilterTables> numbers = [];
    readonly List<(int Field, int From, int To)> blocks = [];
    readonly RejectionCounts rejected = new();
    readonly HashSet<Candidate> misjudged = [];
    readonly Dictionary<Candidate, FoundBoard> examined = [];
    Front front = new();
    RejectionCounts apart = new();
    long[] missed = new long[(int)Miss.Stop + 1];
    long screened;
    int next;

    Search(SearchRequest request, int boardsOfBlock, CancellationToken cancellation)
    {
        Request = request;
        offers = new CandidateParts(request);
        var answer = BriefTargets.Read(offers.Brief);
        Missing = answer.Missing;
        Empty = [.. Enum.GetValues<Slot>().Where(s => offers.SizeOf(s) == 0)];
        if (!answer.IsKnown)
            return;
        asked = answer.Value.Wanted;
        for (var drive = 0; drive < offers.Drives.Length; drive++)
        {
            cancellation.ThrowIfCancellationRequested();
            var field = new SearchSpace(offers, drive, rejected);
            fields.Add(field);
            numbers.Add(new FilterTables(offers, field, asked));
            var each = Math.Max(1, boardsOfBlock / Math.Max(1, field.Feedings.Count));
            for (var from = 0; from < field.Rollings.Count && field.Feedings.Count > 0; from += each)
                blocks.Add((drive, from, Math.Min(from + each, field.Rollings.Count)));
        }

        // Where nothing feeds the board, what turns goes with nothing; those were counted with the feedings that were left out.
        Whole = fields.Sum(f => (long)f.Rollings.Count * f.Feedings.Count);
    }

    /// <summary>What is looked for.</summary>
    public SearchRequest Request { get; }
    /// <summary>Entries of the brief that must be filled in before anything can be looked for.</summary>
    public IReadOnlyList<string> Missing { get; }
    /// <summary>Places for which the shelf has nothing.</summary>
    public IReadOnlyList<Slot> Empty { get; }
    /// <summary>What was taken for entries that the brief leaves open.</summary>
    public IReadOnlyList<Assumption> Assumptions => offers.Assumptions;
    /// <summary>Every combination of what may go in the places, whether it goes together or not.</summary>
    public BigInteger Raw => Enum.GetValues<Slot>().Aggregate(BigInteger.One, (product, slot) => product * offers.SizeOf(slot));
    /// <summary>Whether every board has been screened.</summary>
    public bool IsComplete => next >= blocks.Count;
    /// <summary>How far it has come.</summary>
    public SearchProgress Progress =>
        new(blocks.Take(next).Sum(b => (long)(b.To - b.From) * fields[b.Field].Feedings.Count), Whole, front.Count);

    /// <summary>A number that is the same for the same request, and hardly ever for another.</summary>
    public ulong Fingerprint
    {
        get
        {
            var hash = 14695981039346656037UL;
            void Mix(ulong value) => hash = (hash ^ value) * 1099511628211UL;
            foreach (var slot in Enum.GetValues<Slot>())
            {
                for (var i = 0; i < offers.SizeOf(slot); i++)
                {
                    foreach (var c in offers.NameOf(slot, i))
                        Mix(c);
                    Mix('|');
                }
            }

            foreach (var cell in numbers.SelectMany(n => n.Cells))
                Mix(BitConverter.DoubleToUInt64Bits(cell));
            foreach (var (at, some) in fields.Index())
            {
                for (var r = 0; some.Feedings.Count > 0 && r < some.Rollings.Count; r++)
                {
                    foreach (var value in numbers[at].TurningOf(r).Values)
                        Mix(BitConverter.DoubleToUInt64Bits(value));
                }
            }

            foreach (var value in (double[])[asked.RiderMass, asked.GearMass, asked.Cruise, asked.ClimbSpeed, asked.Climb, asked.TopSpeed,
                asked.Worth.Speed, asked.Range, asked.Reserve, asked.Headwind, asked.Drag, asked.PartsBudget])
                Mix(BitConverter.DoubleToUInt64Bits(value));
            return hash;
        }
    }

    long Whole { get; }

    /// <summary>Begins a search: reads the shelf, and finds which parts go together.</summary>
    /// <param name="request">What is looked for.</param>
    /// <param name="cancellation">Stops the beginning; afterwards a search is stopped by not going on.</param>
    public static Search Over(SearchRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        return new(request, UsualBlock, cancellation);
    }

    /// <summary>The same in pieces of another size, so that a small search takes several steps too.</summary>
    internal static Search InPieces(SearchRequest request, int boardsOfBlock) => new(request, boardsOfBlock, default);

    /// <summary>Screens a number of boards more.</summary>
    /// <returns>Whether there are more to come.</returns>
    public bool Step()
    {
        if (IsComplete)
            return false;
        var to = Math.Min(next + BlocksOfStep, blocks.Count);
        var sifted = new FilteredBoards[to - next];
        Parallel.For(next, to, block => sifted[block - next] = Sift(block));
        foreach (var one in sifted)
        {
            front.Take(one.Front);
            apart.Add(one.Apart);
            screened += one.Screened;
            for (var i = 0; i < missed.Length; i++)
                missed[i] += one.Missed[i];
        }

        next = to;
        return !IsComplete;
    }

    /// <summary>Runs to the end, or until it is stopped.</summary>
    /// <param name="progress">Told after every step.</param>
    /// <param name="cancellation">Stops it between two steps; what was found so far is then returned as an incomplete result.</param>
    public SearchResult Run(IProgress<SearchProgress>? progress = null, CancellationToken cancellation = default)
    {
        while (!cancellation.IsCancellationRequested && Step())
            progress?.Report(Progress);
        progress?.Report(Progress);
        return Found(cancellation);
    }

    /// <summary>The best so far in each thing that boards are compared by, examined; quick enough to be asked for again and
    /// again.</summary>
    public IReadOnlyList<FoundBoard> Glimpse()
    {
        var best = new List<FoundBoard>();
        foreach (var criterion in Enum.GetValues<Criterion>())
        {
            var places = Enumerable.Range(0, front.Count).Where(front.IsSure).ToList();
            if (places.Count == 0)
                break;
            var candidate = places.Select(i => (Merit: front.LowOf(i)[(int)criterion], Candidate: front[i]))
                .OrderByDescending(c => c.Merit).ThenBy(c => c.Candidate.Field).ThenBy(c => c.Candidate.Rolling)
                .ThenBy(c => c.Candidate.Feeding).First().Candidate;
            if (ExaminedOf(candidate) is { MeetsBrief: true } board && !best.Contains(board))
                best.Add(board);
        }

        return best;
    }

    /// <summary>Where it stands, so that it can be taken up again.</summary>
    public SearchState Save() => new(
        Fingerprint, next,
        [.. Enumerable.Range(0, front.Count).Select(i => front[i]).OrderBy(c => c.Field).ThenBy(c => c.Rolling).ThenBy(c => c.Feeding)
        .Select(c => new SavedBoard(c.Field, c.Rolling, c.Feeding))],
        screened, missed, [.. apart.Sorted.OrderBy(a => a.Reason, StringComparer.Ordinal).Select(a => new SavedCount(a.Reason, a.Boards))]);

    /// <summary>Takes up a search where another of the same request stood.</summary>
    /// <param name="state">Where it stood.</param>
    /// <returns>Whether it could be taken up; not when it was another request or another shelf.</returns>
    public bool Resume(SearchState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        if (state.Fingerprint != Fingerprint || state.NextBlock < 0 || state.NextBlock > blocks.Count || state.Missed.Count != missed.Length
            || state.Kept.Any(k => k.Field < 0 || k.Field >= fields.Count || k.Rolling < 0 || k.Rolling >= fields[k.Field].Rollings.Count
            || k.Feeding < 0 || k.Feeding >= fields[k.Field].Feedings.Count))
            return false;
        (front, apart, screened, next) = (new Front(), new RejectionCounts(), state.Screened, state.NextBlock);
        missed = [.. state.Missed];
        foreach (var count in state.Apart)
            apart.Add(count.Reason, count.Boards);
        foreach (var same in state.Kept.GroupBy(k => k.Field))
        {
            var (field, table) = (fields[same.Key], numbers[same.Key]);
            var places = table.Feedings.Index().Where(f => f.Item >= 0).ToDictionary(f => f.Item, f => f.Index);
            var screen = new FastFilter<Wide>(asked, table);
            var (margins, ranges) = (new double[FilterTables.Tile + Wide.Width], new double[FilterTables.Tile + Wide.Width]);
            var comparing = new Comparing(table.Columns);
            foreach (var kept in same)
            {
                var (tile, place) = Math.DivRem(places[kept.Feeding], FilterTables.Tile);
                var cells = table.Cells.AsSpan(tile * FilterTables.Tile * table.Columns, FilterTables.Tile * table.Columns);
                var turning = table.TurningOf(kept.Rolling);
                var from = place / Wide.Width * Wide.Width;
                screen.Sift(turning, cells, from, from + Wide.Width, margins, ranges);
                comparing.Add(new Candidate(same.Key, kept.Rolling, kept.Feeding), cells, place, ranges[place],
                    margins[place] > Tolerance.Margin);
                comparing.Flush(screen, turning, front, new Front());
            }
        }

        return true;
    }

    /// <summary>Examines what was found so far.</summary>
    /// <param name="cancellation">Where the search is complete, stops the repeats that a misjudged board would call for.</param>
    public SearchResult Found(CancellationToken cancellation = default)
    {
        while (true)
        {
            var boards = ExaminedFront();
            // What the screening took for good and the examination does not may have beaten others wrongly; they get a second chance
            // without it.
            var wrong = Enumerable.Range(0, front.Count).Where(i => front.IsSure(i) && !examined[front[i]].MeetsBrief).Select(i => front[i])
                .ToList();
            if (wrong.Count == 0 || !IsComplete || cancellation.IsCancellationRequested)
                return ResultOf(FoundBoard.Unbeaten([.. boards.Where(b => b.MeetsBrief)]), wrong.Count == 0);
            misjudged.UnionWith(wrong);
            (front, apart, missed, screened, next) = (new Front(), new RejectionCounts(), new long[missed.Length], 0, 0);
            while (!cancellation.IsCancellationRequested && Step())
            {
            }
        }
    }

    List<FoundBoard> ExaminedFront()
    {
        var candidates = Enumerable.Range(0, front.Count).Select(i => front[i]).OrderBy(c => c.Field).ThenBy(c => c.Rolling)
            .ThenBy(c => c.Feeding).ToArray();
        var fresh = candidates.Where(c => !examined.ContainsKey(c)).ToArray();
        var boards = new FoundBoard[fresh.Length];
        Parallel.For(0, fresh.Length,
            i => boards[i] = FoundBoard.Create(offers, fields[fresh[i].Field].PickOf(fresh[i].Rolling, fresh[i].Feeding)));
        for (var i = 0; i < fresh.Length; i++)
            examined[fresh[i]] = boards[i];
        return [.. candidates.Select(c => examined[c])];
    }

    /// <summary>Where no board meets the brief: those that come nearest, and the single purchases with which they would.</summary>
    /// <param name="most">How many boards at most.</param>
    /// <param name="cancellation">Stops it between two pieces of work; it then answers with what it has.</param>
    public IReadOnlyList<NearMiss> WhyNot(int most = 3, CancellationToken cancellation = default)
    {
        var picks = Whole > 0 ? Nearest(cancellation) : [];
        if (picks.Count == 0)
            picks = Almost(cancellation);
        // Boards that differ in nothing that counts are one miss.
        return [.. picks.Select(p => NearMiss.Create(offers, p)).DistinctBy(n => (n.Shortfall, n.Board.Mass, n.Board.Price))
            .OrderBy(n => n.Shortfall).ThenByDescending(n => n.Board.Merit(Criterion.Price)).Take(most)
            .Select(n => n.WithPurchases(offers))];
    }

    /// <summary>The boards that fall short by the least, as the screening sees it.</summary>
    List<int[]> Nearest(CancellationToken cancellation)
    {
        const int Kept = 48;
        var best = new PriorityQueue<Candidate, (double Shortfall, int, int, int)>(
            Comparer<(double Shortfall, int, int, int)>.Create(static (a, b) => b.CompareTo(a)));
        for (var from = 0; from < blocks.Count && !cancellation.IsCancellationRequested; from += BlocksOfStep)
        {
            var found = new List<(double Shortfall, Candidate Candidate)>[Math.Min(BlocksOfStep, blocks.Count - from)];
            Parallel.For(0, found.Length, i => found[i] = ShortfallsOf(from + i, Kept));
            foreach (var (shortfall, candidate) in found.SelectMany(f => f))
            {
                best.Enqueue(candidate, (shortfall, candidate.Field, candidate.Rolling, candidate.Feeding));
                if (best.Count > Kept)
                    best.Dequeue();
            }
        }

        return [.. best.UnorderedItems.OrderBy(b => b.Priority)
            .Select(b => fields[b.Element.Field].PickOf(b.Element.Rolling, b.Element.Feeding))];
    }

    List<(double Shortfall, Candidate Candidate)> ShortfallsOf(int block, int most)
    {
        var (at, from, to) = blocks[block];
        var (field, table) = (fields[at], numbers[at]);
        var screen = new FastFilter<Wide>(asked, table);
        var (margins, ranges, shortfalls) =
            (new double[FilterTables.Tile + Wide.Width], new double[FilterTables.Tile + Wide.Width],
            new double[FilterTables.Tile + Wide.Width]);
        var found = new List<(double Shortfall, Candidate Candidate)>();
        for (var r = from; r < to; r++)
        {
            var turning = table.TurningOf(r);
            bool[] goes;
            lock (field)
                goes = [.. field.Groups.Select(g => field.Apart(field.Rollings[r], g) is null)];
            foreach (var (group, begin, end) in table.Pieces.Where(p => goes[p.Group]))
            {
                var tile = begin / FilterTables.Tile;
                var (first, last) = (begin - tile * FilterTables.Tile, end - tile * FilterTables.Tile);
                screen.Sift(turning, table.Cells.AsSpan(tile * FilterTables.Tile * table.Columns, FilterTables.Tile * table.Columns), first,
                    last, margins, ranges, shortfalls);
                for (var i = first; i < last; i++)
                    found.Add((shortfalls[i], new Candidate(at, r, table.Feedings[tile * FilterTables.Tile + i])));
            }

            if (found.Count > 4096)
                Trim();
        }

        Trim();
        return found;

        void Trim() => found = [.. found.OrderBy(f => f.Shortfall).ThenBy(f => f.Candidate.Rolling).ThenBy(f => f.Candidate.Feeding)
            .Take(most)];
    }

    /// <summary>Boards whose parts do not go together for one reason alone.</summary>
    List<int[]> Almost(CancellationToken cancellation)
    {
        var picks = new List<int[]>();
        foreach (var (reason, _) in rejected.Sorted.Where(r => !r.Reason.StartsWith("search.", StringComparison.Ordinal)))
        {
            for (var drive = 0; drive < offers.Drives.Length && !cancellation.IsCancellationRequested; drive++)
            {
                var field = new SearchSpace(offers, drive, new RejectionCounts(), reason);
                var pair = field.Rollings.Index()
                    .SelectMany(r => field.Groups.Where(g => field.Apart(r.Item, g) is null).Select(g => (Rolling: r.Index, g.From)))
                    .Take(1).ToList();
                picks.AddRange(pair.Select(p => field.PickOf(p.Rolling, p.From)));
            }
        }

        return picks;
    }

    FoundBoard ExaminedOf(Candidate candidate)
    {
        if (!examined.TryGetValue(candidate, out var board))
            examined[candidate] = board = FoundBoard.Create(offers, fields[candidate.Field].PickOf(candidate.Rolling, candidate.Feeding));
        return board;
    }

    SearchResult ResultOf(IReadOnlyList<FoundBoard> boards, bool isJudged) => new(
        Request, Missing, Empty, Assumptions,
        [.. boards.OrderByDescending(b => b.Merit(Criterion.Price)).ThenByDescending(b => b.Merit(Criterion.Range))],
        CountsNow(), IsComplete && isJudged);

    SearchCounts CountsNow()
    {
        var left = new RejectionCounts();
        left.Add(rejected);
        left.Add(apart);
        return new(
            Raw, [.. left.Sorted.Select(l => new RejectedBoards(l.Reason, PartFits.Says(l.Reason), l.Boards))], screened,
            [.. missed.Index().Where(m => m.Item > 0).Select(m => new MissedBoards(RuleOf((Miss)m.Index), m.Item))]);
    }

    static string RuleOf(Miss miss) => miss switch
    {
        Miss.Price => "price.budget",
        Miss.Climb => "climb.wanted",
        Miss.TopSpeed => "speed.wanted",
        Miss.CruiseHeld => "cruise.held",
        Miss.Range => "cruise.range_wanted",
        Miss.Descent => "brake.downhill_full",
        _ => "brake.stops",
    };

    FilteredBoards Sift(int block)
    {
        var (at, from, to) = blocks[block];
        var (field, table) = (fields[at], numbers[at]);
        var screen = new FastFilter<Wide>(asked, table);
        var (kept, left) = (new Front(), new RejectionCounts());
        var turnings = new DriveNumbers[to - from];
        var goes = new bool[(to - from) * field.Groups.Count];
        lock (field)
        {
            for (var r = from; r < to; r++)
            {
                for (var g = 0; g < field.Groups.Count; g++)
                {
                    var group = field.Groups[g];
                    var reason = field.Apart(field.Rollings[r], group);
                    goes[(r - from) * field.Groups.Count + g] = reason is null;
                    if (reason is not null)
                        left.Add(reason, group.To - group.From);
                }
            }
        }

        for (var r = 0; r < turnings.Length; r++)
        {
            if (goes.AsSpan(r * field.Groups.Count, field.Groups.Count).Contains(true))
                turnings[r] = table.TurningOf(from + r);
        }

        var comparing = new Comparing(table.Columns);
        var (margins, ranges) = (new double[FilterTables.Tile + Wide.Width], new double[FilterTables.Tile + Wide.Width]);
        foreach (var (group, begin, end) in table.Pieces)
        {
            var tile = begin / FilterTables.Tile;
            var cells = table.Cells.AsSpan(tile * FilterTables.Tile * table.Columns, FilterTables.Tile * table.Columns);
            var (first, last) = (begin - tile * FilterTables.Tile, end - tile * FilterTables.Tile);
            for (var r = from; r < to; r++)
            {
                if (!goes[(r - from) * field.Groups.Count + group]
                    || screen.Sift(turnings[r - from], cells, first, last, margins, ranges) == 0)
                    continue;
                for (var i = first; i < last; i++)
                {
                    if (margins[i] < -Tolerance.Margin)
                        continue;
                    var candidate = new Candidate(at, r, table.Feedings[tile * FilterTables.Tile + i]);
                    if (misjudged.Count > 0 && misjudged.Contains(candidate))
                        continue;
                    if (comparing.Add(candidate, cells, i, ranges[i], margins[i] > Tolerance.Margin))
                        comparing.Flush(screen, turnings[r - from], kept, front);
                }

                comparing.Flush(screen, turnings[r - from], kept, front);
            }
        }

        return new(kept, left, screen.Screened, screen.Missed);
    }

    sealed record FilteredBoards(Front Front, RejectionCounts Apart, long Screened, long[] Missed);

    /// <summary>Boards that meet the brief, until there are as many as the processor takes at once.</summary>
    sealed class Comparing(int columns)
    {
        readonly double[] gathered = new double[columns * Wide.Width];
        readonly double[] ranges = new double[Wide.Width];
        readonly double[] lows = new double[Front.Criteria * Wide.Width];
        readonly double[] highs = new double[Front.Criteria * Wide.Width];
        readonly Candidate[] candidates = new Candidate[Wide.Width];
        readonly bool[] sure = new bool[Wide.Width];
        int count;

        public bool Add(Candidate candidate, ReadOnlySpan<double> cells, int place, double range, bool isSure)
        {
            for (var c = 0; c < FilterTables.Nodes; c++)
                gathered[c * Wide.Width + count] = cells[c * FilterTables.Tile + place];
            (candidates[count], ranges[count], sure[count]) = (candidate, range, isSure);
            return ++count == Wide.Width;
        }

        public void Flush(FastFilter<Wide> screen, in DriveNumbers turning, Front kept, Front before)
        {
            if (count == 0)
                return;
            screen.Compare(turning, gathered, ranges, lows, highs);
            Span<double> low = stackalloc double[Front.Criteria];
            Span<double> high = stackalloc double[Front.Criteria];
            for (var i = 0; i < count; i++)
            {
                for (var c = 0; c < Front.Criteria; c++)
                    (low[c], high[c]) = (lows[c * Wide.Width + i], highs[c * Wide.Width + i]);
                if (!kept.Beats(high) && !before.BeatsAsItIs(high))
                    kept.Take(candidates[i], low, high, sure[i]);
            }

            count = 0;
        }
    }
}

/// <summary>A board that a saved search had kept.</summary>
/// <param name="Field">Number of its drive.</param>
/// <param name="Rolling">Number of what turns and carries.</param>
/// <param name="Feeding">Number of what feeds it.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct SavedBoard(int Field, int Rolling, int Feeding);

/// <summary>Boards that a saved search had left out for one reason.</summary>
/// <param name="Reason">The reason.</param>
/// <param name="Boards">How many.</param>
public sealed record SavedCount(string Reason, BigInteger Boards);

/// <summary>Where a search stands.</summary>
/// <param name="Fingerprint">Which request it belongs to.</param>
/// <param name="NextBlock">The piece of work that comes next.</param>
/// <param name="Kept">Boards that none so far beats.</param>
/// <param name="Screened">Boards screened.</param>
/// <param name="Missed">Those that missed the brief, by what they missed first.</param>
/// <param name="Apart">Those that were left out since the search began.</param>
public sealed record SearchState(
    ulong Fingerprint, int NextBlock, IReadOnlyList<SavedBoard> Kept, long Screened, IReadOnlyList<long> Missed,
    IReadOnlyList<SavedCount> Apart);

/// <summary>Boards that were left out for one reason before they were screened.</summary>
/// <param name="Reason">Id of the rule, or of what the search itself asks.</param>
/// <param name="Says">The sentence that is not true of them.</param>
/// <param name="Boards">How many.</param>
public sealed record RejectedBoards(string Reason, string Says, BigInteger Boards);

/// <summary>Boards that go together and miss the brief.</summary>
/// <param name="Rule">The rule that says so first.</param>
/// <param name="Boards">How many.</param>
public sealed record MissedBoards(string Rule, long Boards);

/// <summary>What became of every combination.</summary>
/// <param name="Raw">All combinations.</param>
/// <param name="LeftOut">Those left out because their parts do not go together, by reason.</param>
/// <param name="Screened">Those whose parts go together, as far as the search has come.</param>
/// <param name="Missed">Those of them that miss the brief.</param>
public sealed record SearchCounts(BigInteger Raw, IReadOnlyList<RejectedBoards> LeftOut, long Screened, IReadOnlyList<MissedBoards> Missed)
{
    /// <summary>Those that meet the brief, as the screening judges it.</summary>
    public long Met => Screened - Missed.Sum(m => m.Boards);
}

/// <summary>What a search found.</summary>
/// <param name="Request">What was looked for.</param>
/// <param name="Missing">Entries of the brief without which nothing could be looked for.</param>
/// <param name="Empty">Places for which the shelf has nothing.</param>
/// <param name="Assumptions">What was taken for entries that the brief leaves open.</param>
/// <param name="Boards">The boards that no other beats, the cheapest first, each with the figures of its examination.</param>
/// <param name="Counts">What became of every combination.</param>
/// <param name="IsComplete">Whether every board was screened; otherwise more and better boards may be found.</param>
public sealed record SearchResult(
    SearchRequest Request, IReadOnlyList<string> Missing, IReadOnlyList<Slot> Empty, IReadOnlyList<Assumption> Assumptions,
    IReadOnlyList<FoundBoard> Boards, SearchCounts Counts, bool IsComplete)
{
    /// <summary>A few of the boards that differ most: the best in each thing, then always the one furthest from those chosen.</summary>
    /// <param name="most">How many at most.</param>
    public IReadOnlyList<FoundBoard> Chosen(int most)
    {
        var chosen = new List<FoundBoard>();
        foreach (var criterion in Enum.GetValues<Criterion>())
        {
            if (chosen.Count < most && Boards.Count > 0 && Boards.MaxBy(b => b.Merit(criterion)) is { } best && !chosen.Contains(best))
                chosen.Add(best);
        }

        var spans = Enum.GetValues<Criterion>()
            .Select(c => Boards.Count == 0 ? 1 : Math.Max(1e-12, Boards.Max(b => b.Merit(c)) - Boards.Min(b => b.Merit(c)))).ToArray();
        double Apart(FoundBoard a, FoundBoard b) =>
            Enum.GetValues<Criterion>().Sum(c => Math.Pow((a.Merit(c) - b.Merit(c)) / spans[(int)c], 2));
        while (chosen.Count < Math.Min(most, Boards.Count)
            && Boards.Except(chosen).MaxBy(b => chosen.Min(c => Apart(b, c))) is { } furthest)
            chosen.Add(furthest);
        return [.. Boards.Where(chosen.Contains)];
    }
}
