using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Rides;

/// <summary>A route with the speeds a rider aims at, cut into pieces of one grade over which the square of the target speed runs straight:
/// the form in which a simulation reads it.</summary>
/// <validity>As for <see cref="SpeedPlan"/>.</validity>
/// <error>None beyond rounding.</error>
/// <source cref="Sources.StandingBalance"/>
public sealed class RideCourse
{
    readonly CoursePiece[] pieces;

    RideCourse(Route route, RiderPace pace, CoursePiece[] pieces) => (Route, Pace, this.pieces) = (route, pace, pieces);

    /// <summary>The route.</summary>
    public Route Route { get; }
    /// <summary>How the rider rides.</summary>
    public RiderPace Pace { get; }

    internal ReadOnlySpan<CoursePiece> Pieces => pieces;

    /// <summary>Lays a rider's pace over a route.</summary>
    public static RideCourse Create(Route route, RiderPace pace)
    {
        var plan = pace.Over(route);
        var halts = plan.Stops.ToLookup(s => s.At.Metres, s => s.Wait.Seconds);
        var places = route.GradePlaces().Distinct().Order().ToArray();
        List<CoursePiece> cut = [];
        var next = 0;
        foreach (var target in plan.TargetPieces)
        {
            var start = target.Start;
            while (start < target.End)
            {
                while (next < places.Length && places[next] <= start)
                    next++;
                var end = next < places.Length ? Min(places[next], target.End) : target.End;
                cut.Add(PieceOf(route, target, start, end, halts));
                start = end;
            }
        }

        return new(route, pace, [.. cut]);
    }

    /// <summary>Lays a smooth plan over a route, joined by straight lines of the square of the speed between the places where the grade
    /// changes; at its end the rider does not stop.</summary>
    /// <remarks>The plan is the rider's own: it must not rise faster than the pace accelerates.</remarks>
    /// <param name="route">The route, as finely cut as the plan asks for.</param>
    /// <param name="pace">How the rider rides where something has held him back.</param>
    /// <param name="squareAt">Square of the speed aimed at, m²/s², at a place, m.</param>
    internal static RideCourse Create(Route route, RiderPace pace, Func<double, double> squareAt)
    {
        var places = route.GradePlaces().Distinct().Order().ToArray();
        var laid = new CoursePiece[places.Length - 1];
        var noHalts = Enumerable.Empty<double>().ToLookup(d => d);
        for (var i = 0; i < laid.Length; i++)
        {
            var (start, end) = (places[i], places[i + 1]);
            laid[i] = PieceOf(route, new(start, end, squareAt(start), squareAt(end)), start, end, noHalts);
        }

        return new(route, pace, laid);
    }

    /// <summary>A level road of 2000 km without a stop, which no board outlasts.</summary>
    public static RideCourse Level(RiderPace pace) =>
        Create(Route.Create("level road", new RouteStretch(Length.FromKilometres(2000), default)), pace);

    static CoursePiece PieceOf(Route route, SpeedPlan.TargetPiece target, double start, double end, ILookup<double, double> halts)
    {
        var slope = (target.SquareAtEnd - target.SquareAtStart) / (target.End - target.Start);
        var grade = route.GradeAt(Length.FromMetres((start + end) / 2)).Value;
        var cosine = 1 / Sqrt(1 + grade * grade);
        var isHalt = end == target.End && halts.Contains(end);
        return new(start, end, target.SquareAtStart + slope * (start - target.Start), slope, cosine, grade * cosine, isHalt,
            isHalt ? halts[end].Sum() : 0);
    }

    /// <summary>A piece of road.</summary>
    /// <param name="Start">Place of its start, m.</param>
    /// <param name="End">Place of its end, m.</param>
    /// <param name="Square">Square of the target speed at its start, m²/s².</param>
    /// <param name="Slope">Rise of that square for each metre, m/s²: twice the acceleration of who keeps to it.</param>
    /// <param name="Cosine">Cosine of the slope of the road.</param>
    /// <param name="Sine">Sine of it.</param>
    /// <param name="IsHalt">Whether the rider comes to rest at its end.</param>
    /// <param name="WaitSeconds">How long he stands there.</param>
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct CoursePiece(
        double Start, double End, double Square, double Slope, double Cosine, double Sine, bool IsHalt, double WaitSeconds)
    {
        public double SquareAt(double place) => Square + Slope * (place - Start);
    }
}
