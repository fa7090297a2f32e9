using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Rides;

/// <summary>How a rider follows a route: at cruise speed or the speed wished, whichever is lower, slowing down early enough for what
/// comes.</summary>
/// <validity>A rider who sees every limit and stop ahead. Curves, grip, and what drive and brakes can do, do not enter.</validity>
/// <error>A matter of habit: riders differ by half as much again in how hard they start and brake.</error>
/// <source cref="Sources.StandingBalance"/>
public sealed record RiderPace
{
    /// <summary>States a pace.</summary>
    /// <param name="cruise">Speed on an open road, above 0.</param>
    /// <param name="accelerating">Comfortable acceleration, above 0; 1.0 m/s2 where not given.</param>
    /// <param name="braking">Comfortable deceleration, above 0; 1.2 m/s2 where not given: a little more than an unwarned person stands, as
    /// the rider is ready for it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0, or not finite.</exception>
    public RiderPace(Speed cruise, Acceleration? accelerating = null, Acceleration? braking = null)
    {
        Cruise = Speed.FromSi(Positive(cruise.Si, nameof(cruise)));
        Accelerating = Acceleration.FromSi(Positive((accelerating ?? UsualAccelerating).Si, nameof(accelerating)));
        Braking = Acceleration.FromSi(Positive((braking ?? UsualBraking).Si, nameof(braking)));
    }

    /// <summary>Comfortable acceleration where none is given.</summary>
    public static Acceleration UsualAccelerating { get; } = Acceleration.FromMetresPerSecondSquared(1.0);
    /// <summary>Comfortable deceleration where none is given.</summary>
    public static Acceleration UsualBraking { get; } = Acceleration.FromMetresPerSecondSquared(1.2);
    /// <summary>Speed on an open road.</summary>
    public Speed Cruise { get; }
    /// <summary>Comfortable acceleration.</summary>
    public Acceleration Accelerating { get; }
    /// <summary>Comfortable deceleration.</summary>
    public Acceleration Braking { get; }
    /// <summary>The speeds aimed at over a route that begins and ends at rest.</summary>
    public SpeedPlan Over(Route route) => new(this, route);

    static double Positive(double value, string name) => double.IsFinite(value) && value > 0
        ? value
        : throw new ArgumentOutOfRangeException(name, value, "A pace is above 0.");
}

/// <summary>
/// The speed aimed at over a route. Found from the end backwards: before each place with a lower speed u,
/// v² = u² + 2 b Δs, cut at the speed wished; exact, as v² is straight in s between its corners.
/// </summary>
/// <validity>As for <see cref="RiderPace"/>.</validity>
/// <error>None beyond rounding, for the stated decelerations.</error>
/// <source cref="Sources.StandingBalance"/>
public sealed record SpeedPlan
{
    readonly double[] _edges;
    readonly SpeedPiece[] _target;
    readonly SpeedPiece[] _ideal;

    /// <summary>v² over one piece of road: straight from its start to its end.</summary>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct SpeedPiece(double Start, double End, double SquareAtStart, double SquareAtEnd)
    {
        public double At(double place) => SquareAtStart + (SquareAtEnd - SquareAtStart) * Clamp((place - Start) / (End - Start), 0, 1);

        public double Seconds => 2 * (End - Start) / (Sqrt(SquareAtStart) + Sqrt(SquareAtEnd));
    }

    /// <summary>A piece of the road over which the square of the target runs straight, for loops: places in m, squares in m²/s².</summary>
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct TargetPiece(double Start, double End, double SquareAtStart, double SquareAtEnd);
    /// <summary>The target in pieces, in order and without gaps.</summary>
    internal IEnumerable<TargetPiece> TargetPieces => _target.Select(p => new TargetPiece(p.Start, p.End, p.SquareAtStart, p.SquareAtEnd));

    internal SpeedPlan(RiderPace pace, Route route)
    {
        (Pace, Route) = (pace, route);
        var end = route.Distance.Metres;
        Stops = [.. route.Stops.Where(s => s.At.Metres > 0 && s.At < route.Distance),
            new(route.Distance, Total(route.Stops.Where(s => s.At == route.Distance)))];
        _edges = [.. new SortedSet<double>(
            [0, end, .. route.Wishes.SelectMany(w => new[] { w.From.Metres, w.To.Metres }), .. Stops.Select(s => s.At.Metres)])];
        var halts = Stops.Select(s => s.At.Metres).ToHashSet();
        _target = Backwards(Caps(), halts, 2 * pace.Braking.Si);
        _ideal = Forwards(_target, halts, 2 * pace.Accelerating.Si);
    }

    /// <summary>How the rider rides.</summary>
    public RiderPace Pace { get; }
    /// <summary>The route.</summary>
    public Route Route { get; }
    /// <summary>Where the rider comes to rest, in order; the last is the end of the route. A stop at the very start only delays it and is
    /// left out.</summary>
    public IReadOnlyList<Stop> Stops { get; }

    /// <summary>
    /// The greatest speed at a distance from which every lower speed ahead is reached in time with the comfortable
    /// deceleration. It falls to 0 towards each stop; at the stop itself it is the speed for riding on, at the end of
    /// the route 0. How quickly the rider gains speed is not in it.
    /// </summary>
    public Speed TargetAt(Length at) => At(_target, at);

    /// <summary>The target as a board would follow it that starts from rest, never short of power: also v² = u² + 2 a Δs after each
    /// start.</summary>
    public Speed IdealAt(Length at) => At(_ideal, at);

    /// <summary>The next stop beyond a distance.</summary>
    /// <returns>The stop, or <c>null</c> at the end of the route and beyond.</returns>
    public Stop? StopAhead(Length at)
    {
        foreach (var stop in Stops)
        {
            if (stop.At > at)
                return stop;
        }

        return null;
    }

    /// <summary>Time on the move along <see cref="IdealAt"/>: no ride at this pace is quicker.</summary>
    public Duration IdealMoving => Duration.FromSeconds(_ideal.Sum(p => p.Seconds));

    Speed At(SpeedPiece[] pieces, Length at)
    {
        var place = Clamp(at.Metres, 0, Route.Distance.Metres);
        var (low, high) = (0, pieces.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) >>> 1;
            if (place >= pieces[middle].Start) low = middle;
            else high = middle - 1;
        }

        return Speed.FromMetresPerSecond(Sqrt(pieces[low].At(place)));
    }

    /// <summary>The square of the greatest speed between each edge and the next.</summary>
    double[] Caps()
    {
        var caps = new double[_edges.Length - 1];
        Array.Fill(caps, Pace.Cruise.Si * Pace.Cruise.Si);
        foreach (var wish in Route.Wishes)
        {
            for (var i = Array.BinarySearch(_edges, wish.From.Metres); _edges[i] < wish.To.Metres; i++)
                caps[i] = Min(caps[i], wish.AtMost.Si * wish.AtMost.Si);
        }

        return caps;
    }

    SpeedPiece[] Backwards(double[] caps, HashSet<double> halts, double rate)
    {
        List<SpeedPiece> pieces = [];
        var ahead = 0.0;
        for (var i = caps.Length - 1; i >= 0; i--)
        {
            var (start, end, cap) = (_edges[i], _edges[i + 1], caps[i]);
            var atEnd = halts.Contains(end) ? 0 : Min(cap, ahead);
            ahead = Slope(pieces, start, end, cap, atEnd, rate);
        }

        pieces.Reverse();
        return [.. pieces];
    }

    /// <summary>Adds the braking up to <paramref name="end"/> and what is left at the cap before it; the square at the start.</summary>
    static double Slope(List<SpeedPiece> pieces, double start, double end, double cap, double atEnd, double rate)
    {
        var begun = Max(start, end - (cap - atEnd) / rate);
        var square = Min(cap, atEnd + rate * (end - begun));
        if (begun < end)
            pieces.Add(new(begun, end, square, atEnd));
        if (begun > start)
            pieces.Add(new(start, begun, cap, cap));
        return square;
    }

    static SpeedPiece[] Forwards(SpeedPiece[] target, HashSet<double> halts, double rate)
    {
        List<SpeedPiece> pieces = [];
        var square = 0.0;
        foreach (var piece in target)
        {
            if (halts.Contains(piece.Start))
                square = 0;
            square = Min(square, piece.SquareAtStart);
            // Where the speed gained meets the target: start + (target − gained) / (rate + fall of the target).
            var fall = (piece.SquareAtStart - piece.SquareAtEnd) / (piece.End - piece.Start);
            var met = Min(piece.End, piece.Start + (piece.SquareAtStart - square) / (rate + fall));
            if (met > piece.Start)
                pieces.Add(new(piece.Start, met, square, Min(square + rate * (met - piece.Start), piece.At(met))));
            if (met < piece.End)
                pieces.Add(new(met, piece.End, piece.At(met), piece.SquareAtEnd));
            square = pieces[^1].SquareAtEnd;
        }

        return [.. pieces];
    }

    static Duration Total(IEnumerable<Stop> stops) => stops.Aggregate(default(Duration), (sum, s) => sum + s.Wait);
}
