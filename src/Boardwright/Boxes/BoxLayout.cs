using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Boxes;

/// <summary>A rectangle on the floor of a box, from the middle of the box, its sides along the board and across it.</summary>
/// <param name="Back">Its side towards the tail.</param>
/// <param name="Front">Its side towards the nose.</param>
/// <param name="Left">Its left side.</param>
/// <param name="Right">Its right side; right is positive.</param>
/// <source cref="Sources.Geometry"/>
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

    /// <summary>From the middle of a fitting's wall: towards the nose in a side wall, towards the right-hand side in the front or rear wall.</summary>
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

/// <summary>What lies where in a board's box: places that the board file states, and a proposal for all else.</summary>
/// <source cref="Sources.Geometry"/>
/// <source cref="Sources.CommonPractice"/>
public sealed record BoxLayout
{
    /// <summary>Length of the box inside.</summary>
    public required Length RoomLength { get; init; }

    /// <summary>Width of the box inside.</summary>
    public required Length RoomWidth { get; init; }

    /// <summary>Depth of the box inside, the deck not bent.</summary>
    public required Length RoomDepth { get; init; }

    /// <summary>Everything that has a place, the large things first.</summary>
    public required IReadOnlyList<PlacedThing> Things { get; init; }

    /// <summary>What has a size and no place, because none was found for it.</summary>
    public IReadOnlyList<BoxThing> Unplaced { get; init; } = [];

    /// <summary>What cannot be placed because entries of it are missing, by name.</summary>
    public IReadOnlyList<(string Name, IReadOnlyList<string> Missing)> Unsized { get; init; } = [];

    /// <summary>The room inside the box.</summary>
    public PlanRectangle Room => new(-RoomLength / 2, RoomLength / 2, -RoomWidth / 2, RoomWidth / 2);

    /// <summary>A thing by its name.</summary>
    /// <returns>The thing, or <c>null</c> where it has no place.</returns>
    public PlacedThing? this[string name] => Things.FirstOrDefault(t => t.Name == name);

    /// <summary>The openings for the fittings, as they are seen from outside with the board turned over.</summary>
    public IReadOnlyList<Opening> Openings =>
    [
        .. Things.Where(t => t is { Wall: not null, Thing.Hole: not null })
            .Select(t => new Opening(t.Thing.Title, t.Wall!.Value, t.Wall is BoxWall.Right or BoxWall.Rear ? -t.Along : t.Along, RoomDepth / 2, t.Thing.Hole!.Value.Width, t.Thing.Hole!.Value.Tall)),
    ];

    /// <summary>The layout of a board: stated places, and a proposal for all else.</summary>
    public static Answer<BoxLayout> Of(Board board) => !board.Parts.Box.IsChosen ? Answer<BoxLayout>.Beside : Answer<BoxLayout>.Ask("", needs =>
    {
        var box = board.Parts.Box;
        var (length, width, depth) = (needs.Of(box.InnerLength), needs.Of(box.InnerWidth), needs.Of(box.InnerDepth));
        if (needs.Unmet)
            return null;
        var (things, unsized) = BoxThing.Of(board);
        var x = length / 2;
        List<PlacedThing> placed = [];
        foreach (var thing in things)
        {
            x -= thing.Length / 2;
            placed.Add(new(thing, x, default, 0, thing.IsFitting ? BoxWall.Rear : null, false));
            x -= thing.Length / 2;
        }

        return new BoxLayout { RoomLength = length, RoomWidth = width, RoomDepth = depth, Things = placed, Unsized = unsized };
    });
}
