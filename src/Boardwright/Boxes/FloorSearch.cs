using Boardwright.Findings;

namespace Boardwright.Boxes;

/// <summary>What came of a search.</summary>
/// <param name="Places">Where each piece lies; <c>null</c> for one without a place.</param>
/// <param name="Cost">Cost of the whole, where every piece has a place.</param>
/// <param name="Rounds">How often the floor was laid anew until every piece had a place.</param>
/// <source cref="Sources.Geometry"/>
sealed record FloorFound(IReadOnlyList<FloorPlace?> Places, double Cost, int Rounds)
{
    /// <summary>Whether every piece has a place.</summary>
    public bool IsComplete => Places.All(p => p is not null);
}

/// <summary>What places cost; lower is better.</summary>
interface IFloorCost
{
    /// <summary>Cost of a piece at a place, beside those that lie already.</summary>
    double Compute(int piece, FloorPlace at, ReadOnlySpan<FloorPlace?> places);

    /// <summary>Cost of all that lies.</summary>
    double Compute(ReadOnlySpan<FloorPlace?> places);
}

/// <summary>Lays pieces on a floor: the hard ones first, each in a corner of what lies there already; what found no place goes earlier in
/// the next round. Once all lie, pieces are taken up and laid again as long as that costs less.</summary>
/// <remarks>Same task, same answer: the numbers that vary the rounds come from a generator of its own with a fixed beginning.</remarks>
/// <validity>A heuristic: where it finds no place there may still be one. <see cref="FloorPlan.IsCertainlyTooSmall"/> says when there is
/// none.</validity>
/// <source cref="Sources.CornerPlacement"/>
sealed class FloorSearch
{
    readonly FloorPlan plan;
    readonly int count;
    readonly FloorPlace?[] places;
    readonly FloorRectangle[] outlines;
    readonly FloorRectangle[][] rooms;
    readonly FloorRectangle[][][] roomsOfForms;
    readonly FloorRectangle[] obstacles;
    readonly double[] priority;
    readonly List<int> xs = [], ys = [];
    readonly List<FloorPlace> corners = [];
    ulong state;

    FloorSearch(FloorPlan plan, ulong seed)
    {
        this.plan = plan;
        count = plan.Pieces.Count;
        (places, outlines, rooms, priority) =
            (new FloorPlace?[count], new FloorRectangle[count], new FloorRectangle[count][], new double[count]);
        roomsOfForms = [.. plan.Pieces.Select(p => p.Forms.Select(f => f.Rooms.ToArray()).ToArray())];
        obstacles = [.. plan.Obstacles];
        state = 0x9E3779B97F4A7C15 ^ (seed * 0xBF58476D1CE4E5B9);
    }

    /// <summary>Searches.</summary>
    /// <param name="plan">The task.</param>
    /// <param name="rounds">How often the floor is laid anew before the search gives up.</param>
    /// <param name="seed">Another number varies the rounds in another way.</param>
    /// <param name="cancellation">Gives up.</param>
    public static FloorFound Fit(FloorPlan plan, int rounds = 2000, int seed = 0, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new FloorSearch(plan, (ulong)seed).Run(rounds, cancellation);
    }

    /// <summary>Searches, and then for a cheaper way.</summary>
    /// <param name="plan">The task.</param>
    /// <param name="cost">What places cost.</param>
    /// <param name="rounds">As for <see cref="Fit"/>.</param>
    /// <param name="starts">How often the floor is laid from the beginning with an eye on the cost.</param>
    /// <param name="trials">How often pieces of the cheapest of those are then taken up and laid again.</param>
    /// <param name="cancellation">Gives up.</param>
    public static FloorFound Cheapest(
        FloorPlan plan, IFloorCost cost, int rounds, int starts, int trials, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(cost);
        var search = new FloorSearch(plan, 0);
        var found = search.Run(rounds, cancellation);
        return found.IsComplete ? search.Improve(search.Started(found, cost, starts), cost, trials, cancellation) : found;
    }

    FloorFound Run(int rounds, CancellationToken cancellation)
    {
        FloorPlace?[] best = new FloorPlace?[count];
        var (bestArea, order) = (-1L, new int[count]);
        // Where every form of a piece has few places it goes first, then by size.
        for (var i = 0; i < count; i++)
        {
            var piece = plan.Pieces[i];
            priority[i] = piece.IsFixed ? 1e12
                : Math.Sqrt(piece.Area) + (piece.Forms.Count == 0 ? 0 : piece.Forms.Max(f => Math.Max(f.Along, f.Across))) / 2.0;
        }

        var mean = priority.Where(p => p < 1e11).DefaultIfEmpty(1).Average();
        for (var round = 0; round < rounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            Clear();
            var noise = round == 0 ? 0 : mean * (0.1 + 0.5 * (round % 5) / 4);
            var drawn = new double[count];
            for (var i = 0; i < count; i++)
            {
                order[i] = i;
                drawn[i] = -(priority[i] + noise * Next());
            }

            Array.Sort(drawn, order);
            var (area, failed) = (0L, false);
            foreach (var i in order)
            {
                if (Place(i, (Manner)(round % 4)))
                {
                    area += plan.Pieces[i].Area;
                }
                else
                {
                    failed = true;
                    // What found no place is harder than it looks.
                    priority[i] += mean * 0.15;
                }
            }

            if (!failed)
                return new([.. places], 0, round + 1);
            if (area > bestArea)
            {
                bestArea = area;
                places.CopyTo(best, 0);
            }
        }

        return new(best, double.PositiveInfinity, rounds);
    }

    /// <summary>The cheapest of several beginnings: the first piece in some corner, the next ones where they are cheapest.</summary>
    FloorFound Started(FloorFound found, IFloorCost cost, int starts)
    {
        int[] loose = [.. Enumerable.Range(0, count).Where(i => !plan.Pieces[i].IsFixed).OrderByDescending(i => plan.Pieces[i].Area)];
        found = found with { Cost = cost.Compute([.. found.Places]) };
        for (var start = 0; start < starts && loose.Length > 0; start++)
        {
            Restore(found.Places);
            foreach (var i in loose)
                Take(i);
            var order = start % 2 == 0 ? loose : [.. loose.Index().OrderBy(p => p.Index + 3 * Next()).Select(p => p.Item)];
            var free = Corners(order[0]);
            if (free.Count == 0)
                continue;
            Place(order[0], free[(int)(Next() * free.Count)]);
            if (Array.TrueForAll(order[1..], i => PlaceCheaply(i, cost)) && cost.Compute(places) is var price && price < found.Cost)
                found = found with { Places = [.. places], Cost = price };
        }

        return found;
    }

    FloorFound Improve(FloorFound found, IFloorCost cost, int trials, CancellationToken cancellation)
    {
        int[] loose = [.. Enumerable.Range(0, count).Where(i => !plan.Pieces[i].IsFixed)];
        Restore(found.Places);
        var (now, current) = (cost.Compute(places), (FloorPlace?[])[.. places]);
        var (least, best) = (now, (FloorPlace?[])[.. places]);
        for (var trial = 0; trial < trials && loose.Length > 0; trial++)
        {
            cancellation.ThrowIfCancellationRequested();
            var heat = 0.02 * least * (1 - (double)trial / trials);
            var taken = new List<int>();
            var many = 1 + trial % Math.Min(4, loose.Length);
            while (taken.Count < many)
            {
                var i = loose[(int)(Next() * loose.Length)];
                if (!taken.Contains(i))
                    taken.Add(i);
            }

            foreach (var i in taken)
                Take(i);
            // The large ones first more often than not.
            taken.Sort((a, b) => plan.Pieces[b].Area.CompareTo(plan.Pieces[a].Area));
            if (trial % 3 == 2)
                taken.Reverse();
            var fits = taken.TrueForAll(i => PlaceCheaply(i, cost));
            var then = fits ? cost.Compute(places) : double.PositiveInfinity;
            if (then <= now - heat * Math.Log(Math.Max(1e-12, Next())))
            {
                now = then;
                places.CopyTo(current, 0);
                if (now < least - 1e-9)
                {
                    least = now;
                    places.CopyTo(best, 0);
                }
            }
            else
            {
                Restore(current);
            }
        }

        return found with { Places = best, Cost = least };
    }

    // The ways in which a round chooses among corners.
    enum Manner
    {
        Snug,
        Towards,
        Across,
        Ends,
    }

    bool Place(int piece, Manner manner)
    {
        var (best, most) = ((FloorPlace?)null, double.NegativeInfinity);
        foreach (var at in Corners(piece))
        {
            var form = plan.Pieces[piece].Forms[at.Form];
            var score = manner switch
            {
                Manner.Towards => -at.X - 0.001 * at.Y,
                Manner.Across => -at.Y - 0.001 * at.X,
                Manner.Ends => -Math.Min(at.X, plan.Along - at.X - form.Along) - Math.Min(at.Y, plan.Across - at.Y - form.Across),
                _ => Touching(piece, at, form) / (2.0 * (form.Along + form.Across)) - 1e-4 * Next(),
            };
            if (score > most)
                (best, most) = (at, score);
        }

        if (best is not { } place)
            return false;
        Place(piece, place);
        return true;
    }

    bool PlaceCheaply(int piece, IFloorCost cost)
    {
        var (best, least) = ((FloorPlace?)null, double.PositiveInfinity);
        foreach (var at in Corners(piece))
        {
            var price = cost.Compute(piece, at, places);
            if (price < least)
                (best, least) = (at, price);
        }

        if (best is not { } place)
            return false;
        Place(piece, place);
        return true;
    }

    /// <summary>How much of a piece's outline lies against walls and other outlines.</summary>
    double Touching(int piece, FloorPlace at, FloorForm form)
    {
        var (endX, endY) = (at.X + form.Along, at.Y + form.Across);
        double touching = (at.X == 0 ? form.Across : 0) + (endX == plan.Along ? form.Across : 0) + (at.Y == 0 ? form.Along : 0)
            + (endY == plan.Across ? form.Along : 0);
        for (var j = 0; j < count; j++)
        {
            if (places[j] is null)
                continue;
            var other = outlines[j];
            var gap = plan.Gaps[piece, j];
            if (at.X == other.EndX + gap || endX + gap == other.X)
                touching += Math.Max(0, Math.Min(endY, other.EndY) - Math.Max(at.Y, other.Y));
            if (at.Y == other.EndY + gap || endY + gap == other.Y)
                touching += Math.Max(0, Math.Min(endX, other.EndX) - Math.Max(at.X, other.X));
        }

        return touching;
    }

    /// <summary>Every free place of a piece at which it cannot be pushed on: against walls, outlines and rooms, from both sides. The list
    /// is used again by the next call.</summary>
    List<FloorPlace> Corners(int piece)
    {
        corners.Clear();
        var forms = plan.Pieces[piece].Forms;
        for (var f = 0; f < forms.Count; f++)
        {
            var form = forms[f];
            if (!form.IsPossible)
                continue;
            if (plan.Pieces[piece].IsFixed)
            {
                corners.Add(new(f, form.X.Least, form.Y.Least));
                continue;
            }

            var beside = roomsOfForms[piece][f];
            Stops(piece, form, beside);
            foreach (var x in xs)
            {
                foreach (var y in ys)
                {
                    if (IsFree(piece, new(x, y, form.Along, form.Across), beside))
                        corners.Add(new(f, x, y));
                }
            }
        }

        return corners;
    }

    void Stops(int piece, FloorForm form, FloorRectangle[] beside)
    {
        xs.Clear();
        ys.Clear();
        Add(xs, form.X.Least, form.X);
        Add(xs, form.X.Greatest, form.X);
        Add(ys, form.Y.Least, form.Y);
        Add(ys, form.Y.Greatest, form.Y);
        foreach (var obstacle in obstacles)
            AddBeside(form, beside, obstacle, 0);
        for (var j = 0; j < count; j++)
        {
            if (places[j] is null)
                continue;
            AddBeside(form, beside, outlines[j], plan.Gaps[piece, j]);
            foreach (var room in rooms[j])
                AddBeside(form, [], room, 0);
        }
    }

    void AddBeside(FloorForm form, FloorRectangle[] beside, FloorRectangle other, int gap)
    {
        Add(xs, other.EndX + gap, form.X);
        Add(xs, other.X - gap - form.Along, form.X);
        Add(ys, other.EndY + gap, form.Y);
        Add(ys, other.Y - gap - form.Across, form.Y);
        foreach (var room in beside)
        {
            Add(xs, other.EndX - room.X, form.X);
            Add(xs, other.X - room.EndX, form.X);
            Add(ys, other.EndY - room.Y, form.Y);
            Add(ys, other.Y - room.EndY, form.Y);
        }
    }

    static void Add(List<int> stops, int at, (int Least, int Greatest) within)
    {
        if (at >= within.Least && at <= within.Greatest && !stops.Contains(at))
            stops.Add(at);
    }

    bool IsFree(int piece, FloorRectangle outline, FloorRectangle[] beside)
    {
        for (var j = 0; j < count; j++)
        {
            if (places[j] is null)
                continue;
            if (outline.Meets(outlines[j], plan.Gaps[piece, j]))
                return false;
            foreach (var room in rooms[j])
            {
                if (outline.Meets(room))
                    return false;
            }

            foreach (var room in beside)
            {
                if (room.Moved(outline.X, outline.Y).Meets(outlines[j]))
                    return false;
            }
        }

        foreach (var obstacle in obstacles)
        {
            if (outline.Meets(obstacle))
                return false;
            foreach (var room in beside)
            {
                if (room.Moved(outline.X, outline.Y).Meets(obstacle))
                    return false;
            }
        }

        return true;
    }

    void Place(int piece, FloorPlace at)
    {
        var form = plan.Pieces[piece].Forms[at.Form];
        places[piece] = at;
        outlines[piece] = new(at.X, at.Y, form.Along, form.Across);
        var beside = roomsOfForms[piece][at.Form];
        var moved = rooms[piece]?.Length == beside.Length ? rooms[piece] : rooms[piece] = new FloorRectangle[beside.Length];
        for (var r = 0; r < moved.Length; r++)
            moved[r] = beside[r].Moved(at.X, at.Y);
    }

    void Take(int piece) => places[piece] = null;

    void Clear() => Array.Clear(places);

    void Restore(IReadOnlyList<FloorPlace?> to)
    {
        for (var i = 0; i < count; i++)
        {
            if (to[i] is { } at)
                Place(i, at);
            else
                Take(i);
        }
    }

    /// <summary>The next number from 0 to below 1 (Steele, Lea and Flood, SplitMix64).</summary>
    double Next()
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }
}
