using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Numerics;

namespace Boardwright.Road;

/// <summary>A point of a profile.</summary>
/// <param name="Distance">Distance along the road from the start of its segment.</param>
/// <param name="Elevation">Height above the sea.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct RoadPoint(Length Distance, Length Elevation);

/// <summary>A piece of road without a gap: elevation over distance, straight between its points.</summary>
/// <remarks>
/// Grade is rise over distance, dz/ds, with the distance measured in plan; it integrates to the elevation as long as
/// nothing is cut at the greatest grade.
/// </remarks>
/// <validity>Grades up to 40 %.</validity>
/// <error>The road itself is longer than its plan by √(1 + G²): 0.1 % at 5 %, 0.5 % at 10 %, 2 % at 20 %.</error>
/// <source cref="Sources.Geometry"/>
public sealed record Segment
{
    readonly double[] _places;
    readonly double[] _heights;
    readonly double[] _recorded;
    readonly Polyline _profile;
    readonly ElevationFilter _filter;
    readonly bool _filtered;

    Segment(double[] places, double[] heights, double[] recorded, ElevationFilter filter, bool filtered)
    {
        (_places, _heights, _recorded, _filter, _filtered) = (places, heights, recorded, filter, filtered);
        _profile = new Polyline(places, heights);
    }

    /// <summary>A recorded profile; its noise is taken out.</summary>
    /// <param name="points">At least two, the first at distance 0, distances rising (equal neighbours allowed), the last above 0.</param>
    /// <param name="filter">How; <see cref="ElevationFilter.Usual"/> where not given.</param>
    /// <exception cref="ArgumentException">The points break a condition.</exception>
    public static Segment Recorded(IReadOnlyList<RoadPoint> points, ElevationFilter? filter = null)
    {
        var (distances, heights) = Checked(points, strictly: false);
        filter ??= ElevationFilter.Usual;
        var (places, smooth) = filter.Apply(distances, heights);
        return new(places, smooth, heights, filter, filtered: true);
    }

    /// <summary>A profile taken as it stands: straight lines from point to point.</summary>
    /// <param name="points">At least two, the first at distance 0, distances strictly rising.</param>
    /// <exception cref="ArgumentException">The points break a condition.</exception>
    public static Segment Stated(IReadOnlyList<RoadPoint> points)
    {
        var (distances, heights) = Checked(points, strictly: true);
        return new(distances, heights, heights, ElevationFilter.Usual, filtered: false);
    }

    /// <summary>Distance from end to end.</summary>
    public Length Distance => Length.FromMetres(_places[^1]);
    /// <summary>How many points were recorded or stated.</summary>
    public int PointCount => _recorded.Length;
    /// <summary>Lowest and highest recorded elevation.</summary>
    public (Length Lowest, Length Highest) RecordedRange => (Length.FromMetres(_recorded.Min()), Length.FromMetres(_recorded.Max()));
    /// <summary>Sum of all recorded rises and falls, noise included.</summary>
    public Ascent RawAscent => Ascent.Raw(_recorded);
    /// <summary>Rises and falls of the profile between its turns; turns lower than the filter's are left out.</summary>
    public Ascent Ascent => Ascent.BetweenTurns(_heights, _filtered ? _filter.Turn : default);

    /// <summary>Distance over which the profile is steeper than the greatest grade believed, so that the grade is cut.</summary>
    public Length CutDistance
    {
        get
        {
            var sum = 0.0;
            for (var i = 1; i < _places.Length; i++)
            {
                if (Math.Abs(_profile.Slope(_places[i - 1])) > _filter.Steepest.Value * (1 + 1e-12))
                    sum += _places[i] - _places[i - 1];
            }

            return Length.FromMetres(sum);
        }
    }

    /// <summary>Recorded rises and falls by the rule of <see cref="Road.Ascent.WithHysteresis"/>.</summary>
    public Ascent HysteresisAscent(Length threshold) => Ascent.WithHysteresis(_recorded, threshold);
    /// <summary>Elevation at a distance; beyond an end, that of the end.</summary>
    public Length ElevationAt(Length at) => Length.FromMetres(_profile.At(at.Metres));
    /// <summary>Grade at a distance, from −<see cref="ElevationFilter.Steepest"/> to it; where it changes, that of the road ahead; 0 beyond
    /// an end.</summary>
    public Fraction GradeAt(Length at) => Believed(_profile.Slope(at.Metres));

    /// <summary>The same piece of road, ridden the other way.</summary>
    public Segment Reversed()
    {
        var length = _places[^1];
        var places = Array.ConvertAll(_places, x => length - x);
        Array.Reverse(places);
        double[] heights = [.. _heights.AsEnumerable().Reverse()], recorded = [.. _recorded.AsEnumerable().Reverse()];
        return new(places, heights, recorded, _filter, _filtered);
    }

    /// <summary>Distances at which the grade may change, ends included.</summary>
    internal IReadOnlyList<double> Places => _places;

    /// <summary>Greatest (sign 1) or least (sign −1) mean grade over a window; <c>null</c> when the segment is shorter.</summary>
    internal double? Steepest(double window, int sign)
    {
        var length = _places[^1];
        if (window > length)
            return null;
        // The mean is straight between the places where either end of the window meets a point of the profile.
        var steepest = double.NegativeInfinity;
        foreach (var place in _places)
        {
            steepest = Math.Max(steepest, sign * MeanFrom(Math.Min(place, length - window)));
            steepest = Math.Max(steepest, sign * MeanFrom(Math.Max(place - window, 0)));
        }

        return sign * steepest;

        double MeanFrom(double start) => Believed((_profile.At(start + window) - _profile.At(start)) / window).Value;
    }

    Fraction Believed(double grade) => Fraction.FromValue(Math.Clamp(grade, -_filter.Steepest.Value, _filter.Steepest.Value));

    static (double[] Distances, double[] Heights) Checked(IReadOnlyList<RoadPoint> points, bool strictly)
    {
        double[] distances = [.. points.Select(p => p.Distance.Metres)], heights = [.. points.Select(p => p.Elevation.Metres)];
        if (distances.Length < 2 || distances[0] != 0 || !(distances[^1] > 0))
            throw new ArgumentException("A segment has at least two points, the first at distance 0 and the last beyond it.", nameof(points));
        for (var i = 0; i < distances.Length; i++)
        {
            var rises = i == 0 || (strictly ? distances[i] > distances[i - 1] : distances[i] >= distances[i - 1]);
            if (!rises || !double.IsFinite(distances[i]) || !double.IsFinite(heights[i]))
                throw new ArgumentException(FormattableString.Invariant($"Point {i} ({distances[i]} m, {heights[i]} m) is not finite, or lies before its neighbour."), nameof(points));
        }

        return (distances, heights);
    }
}
