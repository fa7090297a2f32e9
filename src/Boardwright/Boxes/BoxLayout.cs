using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Boxes;

/// <summary>A rectangle on the floor of a box, from the middle of the box, its sides along the board and across it.</summary>
/// <param name="Back">Its side towards the tail.</param>
/// <param name="Front">Its side towards the nose.</param>
/// <param name="Left">Its left side.</param>
/// <param name="Right">Its right side; right is positive.</param>
/// <source cref="Sources.Geometry"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PlanRectangle(Length Back, Length Front, Length Left, Length Right)
{
    /// <summary>Extent along the board.</summary>
    public Length Along => Front - Back;
    /// <summary>Extent across the board.</summary>
    public Length Across => Right - Left;
    /// <summary>Its middle, towards the nose.</summary>
    public Length X => (Back + Front) / 2;
    /// <summary>Its middle, towards the right-hand side.</summary>
    public Length Y => (Left + Right) / 2;
    /// <summary>Wider by a margin on all sides.</summary>
    public PlanRectangle Grown(Length by) => new(Back - by, Front + by, Left - by, Right + by);

    /// <summary>The least way by which one of the two must move for them not to overlap; 0 or less where they do not.</summary>
    public Length Overlap(PlanRectangle other)
    {
        var along = Least(Front - other.Back, other.Front - Back);
        var across = Least(Right - other.Left, other.Right - Left);
        return Least(along, across);
    }

    static Length Least(Length a, Length b) => a < b ? a : b;
}

/// <summary>A thing at its place in a box.</summary>
/// <param name="Thing">The thing.</param>
/// <param name="X">Its middle, from the middle of the box towards the nose; of a fitting the middle of what stands behind its wall.</param>
/// <param name="Y">Its middle, towards the right-hand side, facing the nose.</param>
/// <param name="Turn">How far it is turned, clockwise seen from above: 0, 90, 180 or 270 degrees.</param>
/// <param name="Wall">The wall that a fitting sits in; <c>null</c> for a thing that lies on the floor.</param>
/// <param name="IsStated">Whether the board file says its place; a proposal where not.</param>
/// <source cref="Sources.Geometry"/>
public sealed record PlacedThing(BoxThing Thing, Length X, Length Y, int Turn, BoxWall? Wall, bool IsStated)
{
    /// <summary>Its stable name.</summary>
    public string Name => Thing.Name;
    /// <summary>What it is.</summary>
    public ThingKind Kind => Thing.Kind;
    /// <summary>From the middle of a fitting's wall: towards the nose in a side wall, towards the right-hand side in the front or rear
    /// wall.</summary>
    public Length Along => Wall is BoxWall.Left or BoxWall.Right ? X : Y;
    /// <summary>Its outline on the floor.</summary>
    public PlanRectangle Body => Turned(-Thing.Length / 2, Thing.Length / 2, -Thing.Width / 2, Thing.Width / 2);
    /// <summary>Its outline with the foam around it, into which nothing may reach.</summary>
    public PlanRectangle Solid => Body.Grown(Thing.Foam);

    /// <summary>Where its wires leave, from the middle of the box.</summary>
    public IReadOnlyList<Lead> Leads =>
    [
        .. Thing.Leads.Select(lead =>
        {
            var (x, y) = Moved(lead.X, lead.Y);
            return lead with { X = x, Y = y, Towards = After(lead.Towards, Turn) };
        }),
    ];

    /// <summary>Room that its wires need, lead by lead: other wires may share it, things may not.</summary>
    public IReadOnlyList<PlanRectangle> Rooms =>
    [
        .. Thing.Leads.Select(lead =>
        {
            var half = lead.Across / 2;
            return lead.Towards == BoxWall.Front
                ? Turned(lead.X, lead.X + lead.Room, lead.Y - half, lead.Y + half)
                : Turned(lead.X - lead.Room, lead.X, lead.Y - half, lead.Y + half);
        }),
    ];

    /// <summary>A direction after a turn, clockwise seen from above.</summary>
    public static BoxWall After(BoxWall direction, int turn)
    {
        BoxWall[] clockwise = [BoxWall.Front, BoxWall.Right, BoxWall.Rear, BoxWall.Left];
        return clockwise[(Array.IndexOf(clockwise, direction) + turn / 90 % 4 + 4) % 4];
    }

    (Length X, Length Y) Moved(Length x, Length y) => Turn switch
    {
        90 => (X - y, Y + x),
        180 => (X - x, Y - y),
        270 => (X + y, Y - x),
        _ => (X + x, Y + y),
    };

    PlanRectangle Turned(Length back, Length front, Length left, Length right)
    {
        var (a, b) = (Moved(back, left), Moved(front, right));
        return new(Least(a.X, b.X), Most(a.X, b.X), Least(a.Y, b.Y), Most(a.Y, b.Y));
    }

    static Length Least(Length a, Length b) => a < b ? a : b;

    static Length Most(Length a, Length b) => a > b ? a : b;
}

/// <summary>What can be wrong with a place in a box.</summary>
public enum LayoutFaultKind
{
    /// <summary>Two things lie in the same place.</summary>
    Overlap,
    /// <summary>It reaches through a wall.</summary>
    Outside,
    /// <summary>It lies where a bolt is.</summary>
    Bolt,
    /// <summary>It is too high under the loaded deck.</summary>
    High,
    /// <summary>Wires have no room to bend, or a hand to plug them in.</summary>
    Bend,
    /// <summary>A controller lies too near to the pack.</summary>
    Heat,
}

/// <summary>Something wrong with a place in a box.</summary>
/// <param name="Kind">What.</param>
/// <param name="Name">The thing it is about.</param>
/// <param name="Other">The other thing; empty where it is a wall, a bolt or the deck.</param>
/// <param name="By">How far it would have to move, at least.</param>
/// <param name="Lead">The lead that has no room; empty for all else.</param>
/// <source cref="Sources.Geometry"/>
public sealed record LayoutFault(LayoutFaultKind Kind, string Name, string Other, Length By, string Lead = "")
{
    /// <summary>Whether it cannot be put together so; else it can, and a limit is passed.</summary>
    public bool IsImpossible => Kind is LayoutFaultKind.Overlap or LayoutFaultKind.Outside or LayoutFaultKind.Bolt;

    /// <summary>What is wrong, in a sentence.</summary>
    public FormattableString Says => (Kind, Other.Length > 0) switch
    {
        (LayoutFaultKind.Overlap, _) => $"The {Name} and the {Other} lie in the same place, by {By:0.0 mm}.",
        (LayoutFaultKind.Outside, _) => $"The {Name} reaches {By:0.0 mm} through the wall.",
        (LayoutFaultKind.Bolt, _) => $"The {Name} lies {By:0.0 mm} where a bolt goes through.",
        (LayoutFaultKind.High, _) => $"The {Name} is {By:0.0 mm} too high under the loaded deck.",
        (LayoutFaultKind.Heat, _) => $"The {Name} lies {By:0.0 mm} too near to the {Other}.",
        (_, true) => $"The {Other} lies {By:0.0 mm} in the room that the {Name}'s lead '{Lead}' needs.",
        _ => $"The {Name}'s lead '{Lead}' has {By:0.0 mm} too little room before the wall.",
    };

    /// <summary>What to do about it.</summary>
    public FormattableString Remedy => (Kind, Other.Length > 0) switch
    {
        (LayoutFaultKind.Overlap, _) => $"Move the {Name} or the {Other} by {By:0.0 mm}, or take one of the two out of the layout: a place is then proposed.",
        (LayoutFaultKind.Outside, _) => $"Move the {Name} {By:0.0 mm} inwards, turn it, or take it out of the layout: a place is then proposed.",
        (LayoutFaultKind.Bolt, _) => $"Move the {Name} by {By:0.0 mm}, or take it out of the layout: a place is then proposed.",
        (LayoutFaultKind.High, _) => $"Take a box {By:0.0 mm} deeper, or more bolts, between which the deck bends less.",
        (LayoutFaultKind.Heat, _) => $"Move the {Name} {By:0.0 mm} away from the {Other}.",
        (_, true) => $"Move the {Name} or the {Other} by {By:0.0 mm}, or turn the {Name}.",
        _ => $"Move the {Name} by {By:0.0 mm}, or turn it.",
    };
}

/// <summary>What would let everything go into a box; each by itself, <c>null</c> where even much of it would not do.</summary>
/// <param name="IsCertain">Whether it is proved that there is no way; else the search found none.</param>
/// <param name="Longer">How much longer the box would have to be.</param>
/// <param name="Wider">How much wider.</param>
/// <param name="Shorter">Pack, or controllers all alike, that would do if they were shorter, and by how much.</param>
/// <param name="Freed">Things whose stated place stands in the way: without it, all goes in.</param>
/// <param name="Without">Things without which the rest goes in.</param>
/// <source cref="Sources.Geometry"/>
public sealed record Shortfall(
    bool IsCertain, Length? Longer, Length? Wider, IReadOnlyList<(string Name, Length By)> Shorter, IReadOnlyList<string> Freed,
    IReadOnlyList<string> Without);

/// <summary>What lies where in a board's box: places that the board file states, and a proposal for all else.</summary>
/// <remarks>Nothing stands on anything else: all things lie on the box's floor, and fittings keep the room behind them down to
/// it.</remarks>
/// <source cref="Sources.Geometry"/>
/// <source cref="Sources.CommonPractice"/>
public sealed class BoxLayout
{
    // Less than this is the file's own rounding.
    static readonly Length Touch = Length.FromMillimetres(0.05);

    readonly Lazy<IReadOnlyList<PlacedThing>> things;
    readonly Lazy<IReadOnlyList<LayoutFault>> faults;
    readonly Lazy<Shortfall?> shortfall;

    BoxLayout(BoxTask task, Func<IReadOnlyList<PlacedThing>> things, IReadOnlyList<PlacedThing>? judged = null)
    {
        Task = task;
        this.things = new(things);
        shortfall = new(ShortfallOf);
        // A proposal keeps clear of what is stated and of itself, so that only stated places are looked at.
        faults = new(() => [.. FaultsOf(judged ?? [.. task.Things.Select(task.StatedPlaceOf).OfType<PlacedThing>()])]);
    }

    /// <summary>Length of the box inside.</summary>
    public Length RoomLength => Task.Length;
    /// <summary>Width of the box inside.</summary>
    public Length RoomWidth => Task.Width;
    /// <summary>Depth of the box inside, the deck not bent.</summary>
    public required Length RoomDepth { get; init; }
    /// <summary>How far the deck bends into the box between two bolts with the rider on it.</summary>
    public required Answer<Length> Sag { get; init; }
    /// <summary>Everything that has a place, the large things first; the places that are proposed are searched for when this is first asked
    /// for.</summary>
    public IReadOnlyList<PlacedThing> Things => things.Value;
    /// <summary>Whether everything with a size has a place.</summary>
    public bool IsComplete => Unplaced.Count == 0;
    /// <summary>What has a size and no place, because none was found for it.</summary>
    public IReadOnlyList<BoxThing> Unplaced { get; init; } = [];
    /// <summary>What cannot be placed because entries of it are missing, by name.</summary>
    public IReadOnlyList<(string Name, IReadOnlyList<string> Missing)> Unsized { get; init; } = [];
    /// <summary>Names in the board file's layout that no thing on the board has, or that are said to lie where such a thing
    /// cannot.</summary>
    public IReadOnlyList<string> Misplaced { get; init; } = [];
    /// <summary>Places that bolts take inside the box; none where they go through an outer flange.</summary>
    public IReadOnlyList<PlanRectangle> Bosses => Task.Bosses;
    /// <summary>What is wrong, thing by thing.</summary>
    public IReadOnlyList<LayoutFault> Faults => faults.Value;
    /// <summary>What would let everything go in; <c>null</c> where everything has its place. Searched for when it is first asked
    /// for.</summary>
    public Shortfall? Shortfall => shortfall.Value;
    /// <summary>The room inside the box.</summary>
    public PlanRectangle Room => new(-RoomLength / 2, RoomLength / 2, -RoomWidth / 2, RoomWidth / 2);
    /// <summary>Depth that is left under the loaded deck; under the deck at rest where nobody knows how far it bends.</summary>
    public Length Headroom => RoomDepth - (Sag.IsKnown ? Sag.Value : default);
    /// <summary>Part of the floor that outlines take, foam included.</summary>
    public Fraction Filled =>
        Fraction.FromValue(Task.Things.Sum(t => (t.Length + 2 * t.Foam).Metres * (t.Width + 2 * t.Foam).Metres)
        / (RoomLength.Metres * RoomWidth.Metres));
    /// <summary>Whether the board file states the place of anything.</summary>
    public bool IsStated => Task.Things.Any(t => Task.StatedPlaceOf(t) is not null);

    /// <summary>A thing by its name.</summary>
    /// <returns>The thing, or <c>null</c> where it has no place.</returns>
    public PlacedThing? this[string name] => Things.FirstOrDefault(t => t.Name == name);

    /// <summary>The openings for the fittings, as they are seen from outside with the board turned over.</summary>
    public IReadOnlyList<Opening> Openings =>
    [
        .. Things.Where(t => t is { Wall: not null, Thing.Hole: not null })
            .Select(t => new Opening(
            t.Thing.Title, t.Wall!.Value, t.Wall is BoxWall.Right or BoxWall.Rear ? -t.Along : t.Along, RoomDepth / 2,
            t.Thing.Hole!.Value.Width, t.Thing.Hole!.Value.Tall)),
    ];

    BoxTask Task { get; }

    /// <summary>The layout of a board: stated places, and a proposal for all else.</summary>
    /// <param name="board">The board, its entries named.</param>
    /// <param name="bend">How far the deck bends in the middle of the wheelbase under its load.</param>
    /// <param name="wheelbase">The wheelbase.</param>
    /// <param name="pattern">The bolts of the box.</param>
    public static Answer<BoxLayout> Compute(Board board, Answer<Length> bend, Answer<Length> wheelbase, Answer<BoltPattern> pattern) =>
        !board.Parts.Box.IsChosen ? Answer<BoxLayout>.Beside : Answer<BoxLayout>.Ask("", needs =>
    {
        var box = board.Parts.Box;
        var (length, width, depth) = (needs.Read(box.InnerLength), needs.Read(box.InnerWidth), needs.Read(box.InnerDepth));
        if (needs.Unmet)
            return null;
        var (things, unsized) = BoxThing.ListThings(board);
        var byName = things.ToDictionary(t => t.Name, StringComparer.Ordinal);
        string[] misplaced = [.. board.Layout.Where(
            p => byName.TryGetValue(p.Key, out var thing) ? IsMisplaced(thing, p.Value) : unsized.All(u => u.Name != p.Key))
            .Select(p => p.Key)];
        var task = new BoxTask(
            length, width, things,
            board.Layout.Where(p => !misplaced.Contains(p.Key)).ToDictionary(StringComparer.Ordinal),
            pattern.IsKnown ? [.. BossesOf(pattern.Value, length, width)] : [],
            board.Parts.Drive.Driven.Or(Driven.Rear) == Driven.Front ? BoxWall.Front : BoxWall.Rear);
        var (any, step) = BoxProposal.Any(task);
        BoxThing[] unplaced = [.. things.Where((_, i) => any[i] is null)];
        return new BoxLayout(task, () => [.. (unplaced.Length == 0 ? BoxProposal.Propose(task, step) : any).OfType<PlacedThing>()])
        {
            RoomDepth = depth,
            Sag = SagOf(bend, wheelbase, pattern.IsKnown ? pattern.Value.Pitch : length),
            Unplaced = unplaced,
            Unsized = unsized,
            Misplaced = misplaced,
        };
    });

    /// <summary>The same box with one thing at another place, all else where it lies; nothing is searched for anew.</summary>
    /// <param name="moved">The thing at its new place.</param>
    public BoxLayout With(PlacedThing moved)
    {
        ArgumentNullException.ThrowIfNull(moved);
        PlacedThing[] then = [.. Things.Select(t => t.Name == moved.Name ? moved : t), .. this[moved.Name] is null ? new[] { moved } : []];
        return new(Task, () => then, then)
        {
            RoomDepth = RoomDepth,
            Sag = Sag,
            Unsized = Unsized,
            Misplaced = Misplaced,
            Unplaced = [.. Unplaced.Where(t => t.Name != moved.Name)]
        };
    }

    /// <summary>A fitting at a place in a wall.</summary>
    public PlacedThing InWall(BoxThing thing, BoxWall wall, Length along) => Task.InWall(thing, wall, along, isStated: true);

    static bool IsMisplaced(BoxThing thing, BoxPosition spot) =>
        thing.IsFitting ? spot.X.IsKnown || spot.Y.IsKnown || spot.Turn.IsKnown : spot.Wall.IsKnown || spot.Along.IsKnown;

    /// <summary>The deck between two bolts, bent by the rider's weight in the middle of the wheelbase: curvature 12 δ/L², over a distance p
    /// it stands κ p²/8 out of the straight.</summary>
    /// <remarks>Box and deck go together at the bolts, so only what is between them counts; a deck whose bend nobody knows is taken as
    /// stiff.</remarks>
    static Answer<Length> SagOf(Answer<Length> bend, Answer<Length> wheelbase, Length between) => Answer<Length>.Ask("", needs =>
    {
        var middle = needs.Read(bend);
        if (needs.Unmet || middle.Si == 0)
            return default;
        var span = needs.Read(wheelbase).Metres;
        return needs.Unmet || span <= 0 ? default
            : Length.FromMetres(Math.Min(middle.Metres, 12 * middle.Metres / (span * span) * between.Metres * between.Metres / 8));
    });

    static IEnumerable<PlanRectangle> BossesOf(BoltPattern pattern, Length length, Length width)
    {
        var radius = pattern.Thread.Washer.OuterDiameter / 2;
        var room = new PlanRectangle(-length / 2, length / 2, -width / 2, width / 2);
        return pattern.Places.Select(p => new PlanRectangle(p.X, p.X, p.Y, p.Y).Grown(radius)).Where(boss => boss.Overlap(room).Si > 0);
    }

    IEnumerable<LayoutFault> FaultsOf(IReadOnlyList<PlacedThing> judged)
    {
        foreach (var thing in Task.Things)
        {
            var high = thing.Height + 2 * thing.Foam - Headroom;
            if (high > Touch)
                yield return new(LayoutFaultKind.High, thing.Name, "", high);
        }

        foreach (var (i, thing) in judged.Index())
        {
            if (Beyond(thing.Solid) is var beyond && beyond > Touch)
                yield return new(LayoutFaultKind.Outside, thing.Name, "", beyond);
            if (Bosses.Select(thing.Solid.Overlap).DefaultIfEmpty().Max() is var boss && boss > Touch)
                yield return new(LayoutFaultKind.Bolt, thing.Name, "", boss);
            foreach (var (lead, room) in thing.Thing.Leads.Zip(thing.Rooms))
            {
                if (Beyond(room) is var outside && outside > Touch)
                    yield return new(LayoutFaultKind.Bend, thing.Name, "", outside, lead.Name);
                foreach (var other in judged.Where(t => t != thing && room.Overlap(t.Solid) > Touch))
                    yield return new(LayoutFaultKind.Bend, thing.Name, other.Name, room.Overlap(other.Solid), lead.Name);
            }

            foreach (var other in judged.Take(i))
            {
                var shared = thing.Solid.Overlap(other.Solid);
                if (shared > Touch)
                    yield return new(LayoutFaultKind.Overlap, other.Name, thing.Name, shared);
                else if ((thing.Kind, other.Kind) is (ThingKind.Pack, ThingKind.Controller) or (ThingKind.Controller, ThingKind.Pack)
                    && thing.Body.Grown(BoxProposal.HeatGap).Overlap(other.Body) is var near && near > Touch)
                    yield return new(LayoutFaultKind.Heat, thing.Kind == ThingKind.Controller ? thing.Name : other.Name,
                        thing.Kind == ThingKind.Controller ? other.Name : thing.Name, near);
            }
        }
    }

    /// <summary>How far a rectangle reaches out of the room.</summary>
    Length Beyond(PlanRectangle r) => Length.FromMetres(Math.Max(
        Math.Max(Room.Back.Metres - r.Back.Metres, r.Front.Metres - Room.Front.Metres),
        Math.Max(Room.Left.Metres - r.Left.Metres, r.Right.Metres - Room.Right.Metres)));

    Shortfall? ShortfallOf()
    {
        if (Unplaced.Count == 0)
            return null;
        if (Task.Things.Count > BoxProposal.Most)
            return new(false, null, null, [], [], []);
        // Up to 200 mm, which is another box.
        Length? Least(Func<Length, BoxTask> changed)
        {
            const int Most = 200;
            if (!BoxProposal.Fits(changed(Length.FromMillimetres(Most))))
                return null;
            var (no, yes) = (0, Most);
            while (yes - no > 1)
            {
                var middle = (no + yes) / 2;
                if (BoxProposal.Fits(changed(Length.FromMillimetres(middle))))
                    yes = middle;
                else
                    no = middle;
            }

            return Length.FromMillimetres(yes);
        }

        // All controllers together: they are of one kind.
        (string Name, Length By)? Shortened(ThingKind kind)
        {
            if (Task.Things.FirstOrDefault(t => t.Kind == kind) is not { } first)
                return null;
            var half = first.Length / 2;
            var least = Least(by => Task with
            {
                Things =
                [.. Task.Things.Select(t => t.Kind == kind ? Shorter(t, by < half ? by : half) : t)]
            });
            return least is { } enough && enough < half ? (first.Name, enough) : null;
        }

        var stated = Task.Things.Where(t => Task.Spots.ContainsKey(t.Name)).Select(t => t.Name);
        return new(
            BoxProposal.IsCertainlyTooSmall(Task),
            Least(by => Task with { Length = Task.Length + by }),
            Least(by => Task with { Width = Task.Width + by }),
            [.. new[] { Shortened(ThingKind.Pack), Shortened(ThingKind.Controller) }.OfType<(string, Length)>()],
            [.. stated.Where(name => BoxProposal.Fits(
            Task with { Spots = Task.Spots.Where(s => s.Key != name).ToDictionary(StringComparer.Ordinal) }))],
            [.. Unplaced.Select(t => t.Name).Take(4)
            .Where(name => Unplaced.Count == 1 || BoxProposal.Fits(Task with { Things = [.. Task.Things.Where(t => t.Name != name)] }))]);
    }

    static BoxThing Shorter(BoxThing thing, Length by) => thing with
    {
        Length = thing.Length - by,
        Leads = [.. thing.Leads.Select(l => l with { X = l.X.Si > 0 ? l.X - by / 2 : l.X + by / 2 })],
    };
}
