using System.Runtime.InteropServices;
using static System.Math;

namespace Boardwright.Documents.Views;

/// <summary>A point of a view, mm: u to the right, v up.</summary>
[StructLayout(LayoutKind.Auto)]
readonly record struct ViewPoint(double U, double V)
{
    public static ViewPoint operator +(ViewPoint a, ViewPoint b) => new(a.U + b.U, a.V + b.V);

    public static ViewPoint operator -(ViewPoint a, ViewPoint b) => new(a.U - b.U, a.V - b.V);

    public static ViewPoint operator *(ViewPoint a, double by) => new(a.U * by, a.V * by);

    public double Length => Sqrt(U * U + V * V);

    /// <summary>From a middle, so far in a direction.</summary>
    public static ViewPoint Polar(ViewPoint middle, double radius, double angle) =>
        new(middle.U + radius * Cos(angle), middle.V + radius * Sin(angle));
}

/// <summary>Outlines of parts in a view, as closed rows of points, anticlockwise.</summary>
static class Outlines
{
    /// <summary>An upright rectangle with rounded corners.</summary>
    public static ViewPoint[] Rectangle(double left, double bottom, double right, double top, double round = 0)
    {
        round = Min(round, Min(right - left, top - bottom) / 2);
        if (round <= 0)
            return [new(left, bottom), new(right, bottom), new(right, top), new(left, top)];
        var steps = round > 6 ? 8 : 4;
        return
        [
            .. Arc(new(right - round, bottom + round), round, -PI / 2, 0, steps),
            .. Arc(new(right - round, top - round), round, 0, PI / 2, steps),
            .. Arc(new(left + round, top - round), round, PI / 2, PI, steps),
            .. Arc(new(left + round, bottom + round), round, PI, 3 * PI / 2, steps),
        ];
    }

    /// <summary>A whole circle.</summary>
    public static ViewPoint[] Circle(ViewPoint middle, double radius, int steps = 72) =>
        Arc(middle, radius, 0, 2 * PI * (steps - 1) / steps, steps - 1);

    /// <summary>The belt line around two circles: arcs and the straight spans that touch both; the greater circle alone where it holds the
    /// other.</summary>
    public static ViewPoint[] Around(ViewPoint a, double radiusA, ViewPoint b, double radiusB)
    {
        var apart = (b - a).Length;
        if (apart <= Abs(radiusA - radiusB))
            return radiusA > radiusB ? Circle(a, radiusA) : Circle(b, radiusB);
        var along = Atan2(b.V - a.V, b.U - a.U);
        // Where the spans leave both circles, seen from the line of centres.
        var off = Acos(Clamp((radiusA - radiusB) / apart, -1, 1));
        return [.. Arc(b, radiusB, along - off, along + off, 20), .. Arc(a, radiusA, along + off, along + 2 * PI - off, 28)];
    }

    /// <summary>A part of a circle.</summary>
    public static ViewPoint[] Arc(ViewPoint middle, double radius, double from, double to, int steps) =>
        [.. Enumerable.Range(0, steps + 1).Select(i => ViewPoint.Polar(middle, radius, from + (to - from) * i / steps))];

    /// <summary>A toothed rim.</summary>
    public static ViewPoint[] Teeth(ViewPoint middle, double outer, double inner, int teeth, double phase)
    {
        var points = new ViewPoint[teeth * 4];
        for (var i = 0; i < teeth; i++)
        {
            for (var k = 0; k < 4; k++)
                points[i * 4 + k] = ViewPoint.Polar(
                    middle, k is 1 or 2 ? outer : inner,
                    phase + 2 * PI * (i + k switch { 0 => 0.2, 1 => 0.28, 2 => 0.72, _ => 0.8 }) / teeth);
        }

        return points;
    }

    /// <summary>A deck from above: straight sides and rounded ends.</summary>
    public static ViewPoint[] Deck(double back, double front, double halfWidth, double endBack, double endFront)
    {
        const int steps = 14;
        var points = new List<ViewPoint>();
        for (var i = 0; i <= 2 * steps; i++)
        {
            var angle = -PI / 2 + PI * i / (2 * steps);
            points.Add(new(front - endFront + endFront * Rounded(Cos(angle)), halfWidth * Rounded(Sin(angle))));
        }

        for (var i = 0; i <= 2 * steps; i++)
        {
            var angle = PI / 2 + PI * i / (2 * steps);
            points.Add(new(back + endBack + endBack * Rounded(Cos(angle)), halfWidth * Rounded(Sin(angle))));
        }

        return [.. points];
    }

    // Fuller than a half ellipse, and still convex.
    static double Rounded(double part) => Sign(part) * Pow(Abs(part), 0.8);

    /// <summary>The runs of a closed outline that lie inside (hidden) or outside of a convex cover.</summary>
    public static IEnumerable<(bool IsHidden, List<ViewPoint> Run)> Split(IReadOnlyList<ViewPoint> closed, IReadOnlyList<ViewPoint>? cover)
    {
        if (cover is null)
        {
            yield return (false, [.. closed, closed[0]]);
            yield break;
        }

        List<ViewPoint>? run = null;
        var hidden = false;
        var (left, right, low, high) = (cover.Min(p => p.U), cover.Max(p => p.U), cover.Min(p => p.V), cover.Max(p => p.V));
        for (var i = 0; i < closed.Count; i++)
        {
            var (a, b) = (closed[i], closed[(i + 1) % closed.Count]);
            var isBeside = Max(a.U, b.U) < left || Min(a.U, b.U) > right || Max(a.V, b.V) < low || Min(a.V, b.V) > high;
            var (enter, leave) = isBeside ? (1, 0) : Inside(a, b, cover);
            foreach (var (from, to, isHidden) in enter < leave ? new[] { (0.0, enter, false), (enter, leave, true), (leave, 1.0, false) }
                : [(0.0, 1.0, false)])
            {
                if (to - from < 1e-9)
                    continue;
                if (run is not null && isHidden != hidden)
                {
                    yield return (hidden, run);
                    run = null;
                }

                hidden = isHidden;
                run ??= [a + (b - a) * from];
                run.Add(a + (b - a) * to);
            }
        }

        if (run is not null)
            yield return (hidden, run);
    }

    // The part of a line within a convex outline whose corners go round anticlockwise.
    static (double Enter, double Leave) Inside(ViewPoint a, ViewPoint b, IReadOnlyList<ViewPoint> cover)
    {
        var (enter, leave, d) = (0.0, 1.0, b - a);
        for (var i = 0; i < cover.Count; i++)
        {
            var p = cover[i];
            var edge = cover[(i + 1) % cover.Count] - p;
            var side = edge.U * (a.V - p.V) - edge.V * (a.U - p.U);
            var turn = edge.U * d.V - edge.V * d.U;
            if (Abs(turn) < 1e-12)
            {
                if (side < 0)
                    return (1, 0);
                continue;
            }

            var at = -side / turn;
            if (turn > 0)
                enter = Max(enter, at);
            else
                leave = Min(leave, at);
        }

        return (enter, leave);
    }
}
