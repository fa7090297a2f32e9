using Boardwright.Road;

namespace Boardwright.Files.Routes;

/// <summary>What a reader of a route should know, though nothing is wrong enough to refuse the file.</summary>
/// <param name="Line">Line it is about, counted from 1; 0 for the file as a whole.</param>
/// <param name="Says">What was found and what was made of it.</param>
public sealed record RouteNote(int Line, string Says);

/// <summary>What came out of a route file: a route, or complaints; never both.</summary>
public sealed record RouteReading
{
    /// <summary>The route; <c>null</c> when there are complaints.</summary>
    public Route? Route { get; init; }
    /// <summary>What was left out, taken as level or refused in part.</summary>
    public IReadOnlyList<RouteNote> Notes { get; init; } = [];
    /// <summary>Everything wrong with the file, in order of its lines; no more than <see cref="RouteFile.MostComplaints"/>.</summary>
    public IReadOnlyList<Complaint> Complaints { get; init; } = [];
    /// <summary>Points read.</summary>
    public int PointCount { get; init; }
    /// <summary>Segments found in the file, empty ones included.</summary>
    public int SegmentCount { get; init; }
    /// <summary>How long the recording took, gaps between segments left out; <c>null</c> when the file has no times, or none to
    /// believe.</summary>
    public Duration? Recorded { get; init; }
}
