using Boardwright.Findings;

namespace Boardwright.Road;

/// <summary>A piece of road of one grade.</summary>
/// <param name="Length">Its length, above 0.</param>
/// <param name="Grade">Rise over distance, −40 % to 40 %.</param>
/// <param name="AtMost">Greatest speed allowed or wished on it; <c>null</c> where nothing is said.</param>
/// <param name="Wait">How long the rider stands at its end; 0 for riding on.</param>
public sealed record RouteStretch(Length Length, Fraction Grade, Speed? AtMost = null, Duration Wait = default);

/// <summary>A speed limit, or a speed wished, on part of a route.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="AtMost">The speed, above 0.</param>
public sealed record SpeedWish(Length From, Length To, Speed AtMost);

/// <summary>A place where the rider comes to rest.</summary>
/// <param name="At">Distance from the start of the route.</param>
/// <param name="Wait">How long the rider stands there, 0 or more.</param>
public sealed record Stop(Length At, Duration Wait);

/// <summary>
/// A road to ride: elevation and grade over the distance along it, speeds wished and places to stop. A route recorded in
/// several segments lays them end to end; the gap between two contributes neither distance nor climb.
/// </summary>
/// <remarks>Every question about a distance beyond an end is answered for the end.</remarks>
/// <validity>Grades up to 40 %; see <see cref="Segment"/> for how distance is measured.</validity>
/// <error>For recorded routes that of <see cref="ElevationFilter"/>; for stated ones none.</error>
/// <source cref="Sources.Geometry"/>
public sealed record Route
{
    static readonly Length FiveMetres = Length.FromMetres(5);

    readonly double[] _starts;

    /// <summary>Joins segments to a route.</summary>
    /// <param name="name">What the route is called.</param>
    /// <param name="segments">At least one, in the order ridden.</param>
    /// <param name="wishes">Speeds wished, each within the route; where several hold, the lowest counts.</param>
    /// <param name="stops">Places to stop, within the route.</param>
    /// <exception cref="ArgumentException">There is no segment, or a wish or stop lies outside the route or makes no sense.</exception>
    public Route(string name, IReadOnlyList<Segment> segments, IReadOnlyList<SpeedWish>? wishes = null, IReadOnlyList<Stop>? stops = null)
    {
        if (segments.Count == 0)
            throw new ArgumentException("A route has at least one segment.", nameof(segments));
        (Name, Segments) = (name, [.. segments]);
        _starts = new double[segments.Count + 1];
        for (var i = 0; i < segments.Count; i++)
            _starts[i + 1] = _starts[i] + segments[i].Distance.Metres;
        Wishes = [.. (wishes ?? []).OrderBy(w => w.From).ThenBy(w => w.To)];
        Stops = [.. (stops ?? []).OrderBy(s => s.At)];
        foreach (var wish in Wishes)
        {
            if (!(wish.From.Metres >= 0 && wish.From < wish.To && wish.To <= Distance && wish.AtMost.Si > 0))
                throw new ArgumentException(FormattableString.Invariant($"{wish} is not a speed above 0 within the route."), nameof(wishes));
        }

        foreach (var stop in Stops)
        {
            if (!(stop.At.Metres >= 0 && stop.At <= Distance && stop.Wait.Seconds >= 0))
                throw new ArgumentException(FormattableString.Invariant($"{stop} is not a wait of 0 or more within the route."), nameof(stops));
        }
    }

    /// <summary>What the route is called.</summary>
    public string Name { get; }
    /// <summary>The segments in the order ridden; what lies between two is not known.</summary>
    public IReadOnlyList<Segment> Segments { get; }
    /// <summary>Speeds wished, by their beginning.</summary>
    public IReadOnlyList<SpeedWish> Wishes { get; }
    /// <summary>Places to stop, in order.</summary>
    public IReadOnlyList<Stop> Stops { get; }
    /// <summary>Distance of all segments.</summary>
    public Length Distance => Length.FromMetres(_starts[^1]);
    /// <summary>Height climbed on the filtered profile, between turns; the figure to plan with.</summary>
    public Length Climb => Sum(s => s.Ascent).Up;
    /// <summary>Height descended on the filtered profile, between turns.</summary>
    public Length Descent => Sum(s => s.Ascent).Down;
    /// <summary>Every recorded rise and fall, noise included; an upper bound.</summary>
    public Ascent RawAscent => Sum(s => s.RawAscent);
    /// <summary>Recorded rises and falls by hysteresis of 5 m, as many bicycle computers show them.</summary>
    public Ascent FiveMetreAscent => Sum(s => s.HysteresisAscent(FiveMetres));
    /// <summary>Lowest recorded elevation.</summary>
    public Length Lowest => Segments.Min(s => s.RecordedRange.Lowest);
    /// <summary>Highest recorded elevation.</summary>
    public Length Highest => Segments.Max(s => s.RecordedRange.Highest);
    /// <summary>Distance over which the profile is steeper than the greatest grade believed, so that the grade is cut.</summary>
    public Length CutDistance => Segments.Aggregate(default(Length), (sum, s) => sum + s.CutDistance);

    /// <summary>Elevation at a distance; where two segments meet, that of the one ahead.</summary>
    public Length ElevationAt(Length at)
    {
        var (segment, within) = Find(at);
        return segment.ElevationAt(within);
    }

    /// <summary>Grade at a distance; where it changes, that of the road ahead; at the end of the route, the last.</summary>
    public Fraction GradeAt(Length at)
    {
        var (segment, within) = Find(at);
        return segment.GradeAt(within);
    }

    /// <summary>The lowest speed wished at a distance; where a wish begins or ends, it holds.</summary>
    /// <returns>The speed, or <c>null</c> where nothing is wished.</returns>
    public Speed? WishAt(Length at)
    {
        Speed? lowest = null;
        foreach (var wish in Wishes)
        {
            if (wish.From <= at && at <= wish.To && !(lowest <= wish.AtMost))
                lowest = wish.AtMost;
        }

        return lowest;
    }

    /// <summary>The greatest mean grade over a window within one segment.</summary>
    /// <returns>The grade, negative on a route that only falls; <c>null</c> when every segment is shorter than the window.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The window is not above 0.</exception>
    public Fraction? SteepestClimb(Length window) => Steepest(window, 1);

    /// <summary>The least mean grade over a window within one segment: negative where the route falls.</summary>
    /// <returns>The grade, or <c>null</c> when every segment is shorter than the window.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The window is not above 0.</exception>
    public Fraction? SteepestDescent(Length window) => Steepest(window, -1);

    /// <summary>The route as pieces of one grade and one wish each, in order; a stop ends a piece. A stop at the very start is in
    /// <see cref="Stops"/> only.</summary>
    public IReadOnlyList<RouteStretch> Stretches()
    {
        SortedSet<double> edges = [.. GradePlaces()];
        foreach (var wish in Wishes)
            edges.UnionWith([wish.From.Metres, wish.To.Metres]);
        edges.UnionWith(Stops.Select(s => s.At.Metres));
        var waits = Stops.ToLookup(s => s.At.Metres, s => s.Wait);
        List<RouteStretch> stretches = [];
        var start = 0.0;
        foreach (var edge in edges.Skip(1))
        {
            var middle = Length.FromMetres((start + edge) / 2);
            var wait = waits[edge].Aggregate(default(Duration), (sum, w) => sum + w);
            stretches.Add(new(Length.FromMetres(edge - start), GradeAt(middle), WishAt(middle), wait));
            start = edge;
        }

        return stretches;
    }

    /// <summary>The same road the other way, wishes and stops with it.</summary>
    public Route Reversed() => new(
        Name,
        [.. Segments.Reverse().Select(s => s.Reversed())],
        [.. Wishes.Select(w => new SpeedWish(Mirrored(w.To), Mirrored(w.From), w.AtMost))],
        [.. Stops.Select(s => s with { At = Mirrored(s.At) })]);

    /// <summary>A level road.</summary>
    /// <exception cref="ArgumentException">The distance is not above 0.</exception>
    public static Route Level(Length distance, Length elevation = default) =>
        new("level", [Segment.Stated([new(default, elevation), new(distance, elevation)])]);

    /// <summary>A made-up loop of equal hills that ends where it began: z = H/2 · (1 − cos(2πns/L)), in 240 straight pieces for each
    /// hill.</summary>
    /// <param name="distance">Distance L round the loop, above 0.</param>
    /// <param name="height">Height H of each hill, 0 or more; steepest grade π n H / L.</param>
    /// <param name="hills">How many hills n, 1 to 10 000.</param>
    /// <exception cref="ArgumentException">A value is outside its range, or the hills are steeper than 40 %.</exception>
    public static Route Loop(Length distance, Length height, int hills = 1)
    {
        const int Pieces = 240;
        if (hills is < 1 or > 10_000)
            throw new ArgumentOutOfRangeException(nameof(hills), hills, "A loop has 1 to 10 000 hills.");
        if (!(height.Metres >= 0 && distance.Metres > 0
            && Math.PI * hills * height.Metres / distance.Metres <= ElevationFilter.Usual.Steepest.Value))
            throw new ArgumentException("A loop is longer than 0 and its hills are 0 m or higher and at most 40 % steep.", nameof(height));
        var points = new RoadPoint[Pieces * hills + 1];
        for (var i = 0; i < points.Length; i++)
            points[i] = new(distance * i / (Pieces * hills), height / 2 * (1 - Math.Cos(2 * Math.PI * (i % Pieces) / Pieces)));
        return new("loop", [Segment.Stated(points)]);
    }

    /// <summary>A route of stated stretches, its elevation counted from the start; nothing is smoothed.</summary>
    /// <exception cref="ArgumentException">There is no stretch, or one is outside its ranges.</exception>
    public static Route Create(string name, params IReadOnlyList<RouteStretch> stretches)
    {
        List<RoadPoint> points = [default];
        List<SpeedWish> wishes = [];
        List<Stop> stops = [];
        foreach (var stretch in stretches)
        {
            if (!(stretch.Length.Metres > 0 && Math.Abs(stretch.Grade.Value) <= ElevationFilter.Usual.Steepest.Value))
                throw new ArgumentException(FormattableString.Invariant($"{stretch} is not longer than 0 and at most 40 % steep."), nameof(stretches));
            var (from, height) = (points[^1].Distance, points[^1].Elevation);
            var to = from + stretch.Length;
            points.Add(new(to, height + stretch.Length * stretch.Grade.Value));
            if (stretch.AtMost is { } speed)
                wishes.Add(new(from, to, speed));
            if (stretch.Wait.Seconds != 0)
                stops.Add(new(to, stretch.Wait));
        }

        return new(name, [Segment.Stated(points)], wishes, stops);
    }

    /// <summary>Distances from the start at which the grade may change, in metres, ends included.</summary>
    internal IEnumerable<double> GradePlaces()
    {
        for (var i = 0; i < Segments.Count; i++)
        {
            foreach (var place in Segments[i].Places)
                yield return Math.Min(_starts[i] + place, _starts[i + 1]);
        }
    }

    (Segment Segment, Length Within) Find(Length at)
    {
        var place = Math.Clamp(at.Metres, 0, _starts[^1]);
        var found = Array.BinarySearch(_starts, place);
        var index = Math.Clamp(found >= 0 ? found : ~found - 1, 0, Segments.Count - 1);
        return (Segments[index], Length.FromMetres(Math.Min(place - _starts[index], Segments[index].Distance.Metres)));
    }

    Fraction? Steepest(Length window, int sign)
    {
        if (!(window.Metres > 0))
            throw new ArgumentOutOfRangeException(nameof(window), window, "A window is longer than 0.");
        double? steepest = null;
        foreach (var segment in Segments)
        {
            if (segment.Steepest(window.Metres, sign) is { } grade && !(sign * steepest >= sign * grade))
                steepest = grade;
        }

        return steepest is { } found ? Fraction.FromValue(found) : null;
    }

    Ascent Sum(Func<Segment, Ascent> part) => Segments.Aggregate(default(Ascent), (sum, s) => sum + part(s));

    // Rounding must not push a mirrored place over the end.
    Length Mirrored(Length at) => Length.FromMetres(Math.Clamp(Distance.Metres - at.Metres, 0, Distance.Metres));
}
