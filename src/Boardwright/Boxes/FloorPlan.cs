using System.Runtime.InteropServices;
using Boardwright.Findings;

namespace Boardwright.Boxes;

/// <summary>A rectangle in whole steps of a floor plan; its far sides are not part of it, so that two that touch do not overlap.</summary>
/// <param name="X">Its near side along the floor.</param>
/// <param name="Y">Its near side across.</param>
/// <param name="Along">Extent along the floor.</param>
/// <param name="Across">Extent across.</param>
/// <source cref="Sources.Geometry"/>
[StructLayout(LayoutKind.Auto)]
readonly record struct FloorRectangle(int X, int Y, int Along, int Across)
{
    /// <summary>Its far side along the floor.</summary>
    public int EndX => X + Along;
    /// <summary>Its far side across.</summary>
    public int EndY => Y + Across;
    /// <summary>The same, moved.</summary>
    public FloorRectangle Moved(int x, int y) => new(X + x, Y + y, Along, Across);

    /// <summary>Whether two come nearer to one another than a gap, both along and across.</summary>
    public bool Meets(FloorRectangle other, int gap = 0) =>
        X < other.EndX + gap && other.X < EndX + gap && Y < other.EndY + gap && other.Y < EndY + gap;
}

/// <summary>One way in which a piece can lie: its outline, the room beside it, and where its near corner may be.</summary>
/// <param name="Turn">How far the piece is turned, degrees.</param>
/// <param name="Along">Extent along the floor.</param>
/// <param name="Across">Extent across.</param>
/// <param name="Rooms">Room beside it from its near corner: rooms may share a place with one another, and not with an outline.</param>
/// <param name="X">Least and greatest place of its near corner along the floor.</param>
/// <param name="Y">The same across.</param>
/// <source cref="Sources.Geometry"/>
sealed record FloorForm(int Turn, int Along, int Across, IReadOnlyList<FloorRectangle> Rooms, (int Least, int Greatest) X,
    (int Least, int Greatest) Y)
{
    /// <summary>A form that may lie anywhere on a floor where it and its rooms stay inside.</summary>
    public static FloorForm Anywhere(int turn, int along, int across, IReadOnlyList<FloorRectangle> rooms, int floorAlong, int floorAcross)
    {
        ArgumentNullException.ThrowIfNull(rooms);
        var (left, right, near, far) = (0, along, 0, across);
        foreach (var room in rooms)
            (left, right, near, far) =
                (Math.Min(left, room.X), Math.Max(right, room.EndX), Math.Min(near, room.Y), Math.Max(far, room.EndY));
        return new(turn, along, across, rooms, (-left, floorAlong - right), (-near, floorAcross - far));
    }

    /// <summary>Whether there is any place for it on an empty floor.</summary>
    public bool IsPossible => X.Least <= X.Greatest && Y.Least <= Y.Greatest;
}

/// <summary>A piece to be laid on a floor.</summary>
/// <param name="Forms">The ways in which it can lie; the first of equal ones is preferred.</param>
/// <param name="IsFixed">Whether its only form has one place where it lies whatever else lies there.</param>
/// <source cref="Sources.Geometry"/>
sealed record FloorPiece(IReadOnlyList<FloorForm> Forms, bool IsFixed = false)
{
    /// <summary>Area of its outline; the forms of a piece have the same.</summary>
    public long Area => Forms.Count == 0 ? 0 : (long)Forms[0].Along * Forms[0].Across;
}

/// <summary>Where a piece lies.</summary>
/// <param name="Form">Which of its forms.</param>
/// <param name="X">Its near corner along the floor.</param>
/// <param name="Y">The same across.</param>
/// <source cref="Sources.Geometry"/>
[StructLayout(LayoutKind.Auto)]
readonly record struct FloorPlace(int Form, int X, int Y);

/// <summary>A floor with pieces to be laid on it so that no outline meets another or a room of another.</summary>
/// <source cref="Sources.Geometry"/>
sealed class FloorPlan
{
    /// <summary>States the task.</summary>
    /// <param name="along">Extent of the floor along.</param>
    /// <param name="across">Extent of the floor across.</param>
    /// <param name="pieces">The pieces.</param>
    /// <param name="obstacles">Places where neither outlines nor rooms may be.</param>
    /// <param name="gap">Least distance between the outlines of two pieces; 0 everywhere where not given.</param>
    public FloorPlan(int along, int across, IReadOnlyList<FloorPiece> pieces, IReadOnlyList<FloorRectangle>? obstacles = null,
        Func<int, int, int>? gap = null)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        (Along, Across, Pieces, Obstacles) = (along, across, pieces, obstacles ?? []);
        Gaps = new int[pieces.Count, pieces.Count];
        for (var i = 0; i < pieces.Count; i++)
        {
            for (var j = 0; j < pieces.Count; j++)
                Gaps[i, j] = i == j || gap is null ? 0 : Math.Max(gap(i, j), gap(j, i));
        }
    }

    /// <summary>Extent of the floor along.</summary>
    public int Along { get; }
    /// <summary>Extent of the floor across.</summary>
    public int Across { get; }
    /// <summary>The pieces.</summary>
    public IReadOnlyList<FloorPiece> Pieces { get; }
    /// <summary>Places where nothing may be.</summary>
    public IReadOnlyList<FloorRectangle> Obstacles { get; }

    internal int[,] Gaps { get; }

    /// <summary>Least distance between the outlines of two pieces.</summary>
    public int GapBetween(int piece, int other) => Gaps[piece, other];

    /// <summary>Whether two places get along.</summary>
    public bool AgreeAt(int piece, FloorPlace at, int other, FloorPlace there)
    {
        var (form, second) = (Pieces[piece].Forms[at.Form], Pieces[other].Forms[there.Form]);
        var (outline, beside) = (new FloorRectangle(at.X, at.Y, form.Along, form.Across),
            new FloorRectangle(there.X, there.Y, second.Along, second.Across));
        return !outline.Meets(beside, Gaps[piece, other])
            && second.Rooms.All(room => !outline.Meets(room.Moved(there.X, there.Y)))
            && form.Rooms.All(room => !beside.Meets(room.Moved(at.X, at.Y)));
    }

    /// <summary>Whether every piece has a place, inside the floor and clear of all others.</summary>
    public bool IsSolvedBy(IReadOnlyList<FloorPlace?> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        for (var i = 0; i < Pieces.Count; i++)
        {
            if (places[i] is not { } at)
                return false;
            var form = Pieces[i].Forms[at.Form];
            if (at.X < form.X.Least || at.X > form.X.Greatest || at.Y < form.Y.Least || at.Y > form.Y.Greatest)
                return false;
            if (!Pieces[i].IsFixed && Obstacles.Any(
                o => o.Meets(new(at.X, at.Y, form.Along, form.Across)) || form.Rooms.Any(room => o.Meets(room.Moved(at.X, at.Y)))))
                return false;
            for (var j = 0; j < i; j++)
            {
                if (!(Pieces[i].IsFixed && Pieces[j].IsFixed) && !AgreeAt(i, at, j, places[j]!.Value))
                    return false;
            }
        }

        return true;
    }

    /// <summary>Whether it is certain that not all pieces go on the floor: by one piece alone, or by areas after lengths are rounded with
    /// dual-feasible functions, the smallest over each piece's forms.</summary>
    /// <remarks>Only outlines count, so a <c>false</c> says nothing, and a <c>true</c> holds whatever the rooms are.</remarks>
    /// <source cref="Sources.DualFeasible"/>
    public bool IsCertainlyTooSmall
    {
        get
        {
            if (Pieces.Any(p => !p.IsFixed && !p.Forms.Any(f => f.IsPossible)))
                return true;
            var loose = Pieces.Where(p => !p.IsFixed).ToArray();
            int[] lengths = [.. loose.SelectMany(p => p.Forms).Select(f => f.Along).Distinct()];
            int[] widths = [.. loose.SelectMany(p => p.Forms).Select(f => f.Across).Distinct()];
            Func<int, double>[] alongs = [.. Rounded(Along, lengths)];
            Func<int, double>[] acrosses = [.. Rounded(Across, widths)];
            foreach (var along in alongs)
            {
                foreach (var across in acrosses)
                {
                    if (loose.Sum(p => p.Forms.Where(f => f.IsPossible).Min(f => along(f.Along) * across(f.Across))) > 1 + 1e-9)
                        return true;
                }
            }

            return false;
        }
    }

    // Each answers a part of the whole for a length, such that lengths that go into the whole together never make more than 1.
    static IEnumerable<Func<int, double>> Rounded(int whole, int[] lengths)
    {
        yield return x => (double)x / whole;
        // What is longer than the whole less a small length leaves no room for that small length.
        foreach (var small in lengths.Where(l => 2 * l <= whole).Append(whole / 2).Distinct())
            yield return x => x > whole - small ? 1 : x < small ? 0 : (double)x / whole;
        // A k-th part and more counts as the next smaller number of k-th parts.
        foreach (var k in new[] { 1, 2, 3, 4 })
        {
            yield return x => (long)(k + 1) * x % whole == 0 ? (double)x / whole : Math.Floor((double)(k + 1) * x / whole) / k;
        }
    }
}
