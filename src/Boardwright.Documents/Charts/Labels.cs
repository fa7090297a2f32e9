using System.Runtime.InteropServices;
using Boardwright.Documents.Drawings;
using static System.Math;

namespace Boardwright.Documents.Charts;

/// <summary>A rectangle on the sheet.</summary>
[StructLayout(LayoutKind.Auto)]
readonly record struct LabelBox(double Left, double Top, double Right, double Bottom)
{
    public Point Middle => new((Left + Right) / 2, (Top + Bottom) / 2);

    public bool Overlaps(in LabelBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool Holds(in LabelBox other) => other.Left >= Left && other.Right <= Right && other.Top >= Top && other.Bottom <= Bottom;

    public Point NearestTo(Point spot) => new(Clamp(spot.X, Left, Right), Clamp(spot.Y, Top, Bottom));

    /// <summary>Whether a straight line touches the rectangle.</summary>
    public bool Touches(Point a, Point b)
    {
        if (Max(a.X, b.X) < Left || Min(a.X, b.X) > Right || Max(a.Y, b.Y) < Top || Min(a.Y, b.Y) > Bottom)
            return false;
        // The line leaves the rectangle on one side when all four corners lie on the same side of it.
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        double Side(double x, double y) => dx * (y - a.Y) - dy * (x - a.X);
        var (p, q, r, s) = (Side(Left, Top), Side(Right, Top), Side(Left, Bottom), Side(Right, Bottom));
        return !((p > 0 && q > 0 && r > 0 && s > 0) || (p < 0 && q < 0 && r < 0 && s < 0));
    }
}

/// <summary>Finds room for labels in a field among its lines and the labels that are there.</summary>
sealed class Labels(LabelBox field)
{
    /// <summary>How far a label may be from its spot without a line that leads to it.</summary>
    public const double WithoutLeader = 13;

    static readonly double[] Distances = [5, 9, 14, 22, 32, 44, 58];
    static readonly (int X, int Y)[] Directions = [(1, 0), (1, -1), (0, -1), (1, 1), (0, 1), (-1, -1), (-1, 0), (-1, 1)];

    readonly List<ReadOnlyMemory<Point>> lines = [];
    readonly List<LabelBox> taken = [];

    /// <summary>Adds a line that labels keep clear of.</summary>
    public void Avoid(ReadOnlyMemory<Point> line) => lines.Add(line);
    /// <summary>Adds a place that is taken.</summary>
    public void Take(in LabelBox box) => taken.Add(box);

    /// <summary>The nearest free room around one of several spots, the first of them preferred; it is then taken.</summary>
    /// <param name="spots">The spots.</param>
    /// <param name="width">Width of the label.</param>
    /// <param name="height">Height of the label.</param>
    /// <param name="farthest">How far from its spot it may be.</param>
    /// <returns>The room and the spot that it is near, or <c>null</c> when there is none.</returns>
    public (LabelBox Room, Point Spot)? Near(IReadOnlyList<Point> spots, double width, double height, double farthest)
    {
        foreach (var distance in Distances.Where(d => d <= farthest))
        {
            foreach (var spot in spots)
            {
                foreach (var (x, y) in Directions)
                {
                    var reach = x != 0 && y != 0 ? distance * 0.75 : distance;
                    var left = spot.X + (x > 0 ? reach : x < 0 ? -reach - width : -width / 2);
                    var top = spot.Y + (y > 0 ? reach : y < 0 ? -reach - height : -height / 2);
                    var box = new LabelBox(left, top, left + width, top + height);
                    if (IsFree(box) && Crossings(box, 1) == 0 && (distance <= WithoutLeader || LeadsClear(spot, box)))
                    {
                        Take(box);
                        return (box, spot);
                    }
                }
            }
        }

        return null;
    }

    /// <summary>The first of the given places that is free, or else the one that the fewest lines cross; it is then taken.</summary>
    /// <returns>The place, or <c>null</c> when every one is taken or leaves the field.</returns>
    public LabelBox? Best(IEnumerable<LabelBox> places)
    {
        LabelBox? best = null;
        var fewest = int.MaxValue;
        foreach (var box in places)
        {
            if (!IsFree(box))
                continue;
            var crossings = Crossings(box, fewest);
            if (crossings >= fewest)
                continue;
            (best, fewest) = (box, crossings);
            if (fewest == 0)
                break;
        }

        if (best is { } found)
            Take(found);
        return best;
    }

    // A leader that crosses another line would seem to come from that one.
    bool LeadsClear(Point spot, in LabelBox box)
    {
        const double Start = 4, Step = 2, Half = 0.5;
        var end = box.NearestTo(spot);
        var length = double.Hypot(end.X - spot.X, end.Y - spot.Y);
        for (var way = Start; way < length; way += Step)
        {
            var (x, y) = (spot.X + (end.X - spot.X) * way / length, spot.Y + (end.Y - spot.Y) * way / length);
            if (Crossings(new LabelBox(x - Half, y - Half, x + Half, y + Half), 1) > 0)
                return false;
        }

        return true;
    }

    bool IsFree(in LabelBox box)
    {
        if (!field.Holds(box))
            return false;
        foreach (var other in taken)
        {
            if (box.Overlaps(other))
                return false;
        }

        return true;
    }

    int Crossings(in LabelBox box, int enough)
    {
        var count = 0;
        foreach (var line in lines)
        {
            var path = line.Span;
            for (var i = 1; i < path.Length && count < enough; i++)
            {
                if (box.Touches(path[i - 1], path[i]))
                    count++;
            }
        }

        return count;
    }
}
