using System.Runtime.InteropServices;
using Boardwright.App.Workbench.BoardPages;
using Boardwright.App.Workbench.Frame;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Pictures;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Routes;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Spreads;

namespace Boardwright.App.Workbench.RidePages;

/// <summary>The ride of the open board: on which road, what came of it, and how well that is known.</summary>
/// <remarks>A ride is computed apart from the page, and only the newest one is shown.</remarks>
sealed class RideSession(EditSession session) : IFollowed, IDisposable
{
    /// <summary>Largest route file taken from a browser, bytes.</summary>
    public const int MostBytes = 16 * 1024 * 1024;
    /// <summary>Boards ridden to say how well the figures are known.</summary>
    const int Samples = 64;

    // As fine as a picture can show, and no more than a browser likes to hold.
    const int MostRows = 20_000;

    readonly List<RideRoad> brought = [];
    CancellationTokenSource riding = new();
    Examination? ridden;
    string? briefRoute;
    RideRoad? briefRoad;

    /// <summary>Something has changed; may be raised from any thread.</summary>
    public event Action? Changed;
    /// <summary>The roads to choose from.</summary>
    public IReadOnlyList<RideRoad> Roads => [.. briefRoad is { } own ? [own] : Array.Empty<RideRoad>(), .. RideRoad.MadeUp, .. brought];
    /// <summary>The road that is ridden.</summary>
    public RideRoad Road { get; private set; } = RideRoad.MadeUp[1];
    /// <summary>Whether it is ridden until the reserve is reached.</summary>
    public bool Repeats { get; private set; }
    /// <summary>What is wrong with the last route file.</summary>
    public IReadOnlyList<Complaint> Complaints { get; private set; } = [];
    /// <summary>The ride; <c>null</c> while the first is ridden, or when values are missing.</summary>
    public Ride? Ride { get; private set; }
    /// <summary>Pictures of it: over distance, over time, and where the energy went.</summary>
    public IReadOnlyList<Chart> Charts { get; private set; } = [];
    /// <summary>How well its figures are known; <c>null</c> until that is computed.</summary>
    public RideSpread? Spread { get; private set; }
    /// <summary>The entries without which it cannot be ridden.</summary>
    public IReadOnlyList<string> Missing { get; private set; } = [];
    /// <summary>Whether a newer ride is on its way.</summary>
    public bool IsRiding { get; private set; }
    /// <summary>Number of the ride that is shown, to tell it from the one before.</summary>
    public int Number { get; private set; }

    /// <summary>Takes another road.</summary>
    public void Take(RideRoad road)
    {
        Road = road;
        Again();
    }

    /// <summary>Rides the road once, or until the reserve is reached.</summary>
    public void Repeat(bool repeats)
    {
        Repeats = repeats;
        Again();
    }

    /// <summary>Takes a route file that was brought to the page, and rides it when it is in order.</summary>
    public async Task BringAsync(string file, Stream content)
    {
        var reading = await Task.Run(() => RouteFile.Read(file, content));
        Complaints = reading.Complaints;
        if (reading.Route is null)
        {
            Changed?.Invoke();
            return;
        }

        var road = RideRoad.From(FormattableString.Invariant($"file{brought.Count + 1}"), file, reading);
        brought.Add(road);
        Take(road);
    }

    /// <summary>Says why a route file was not taken.</summary>
    public void Refuse(string file, string says, string remedy)
    {
        Complaints = [new Complaint(new(file, 1, 1), "", says, remedy)];
        Changed?.Invoke();
    }

    /// <summary>Rides the board as it now is, unless that was ridden already.</summary>
    public void Follow()
    {
        if (session.Examination is { } now && !ReferenceEquals(now, ridden))
            Again();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        riding.Cancel();
        riding.Dispose();
    }

    void Again()
    {
        riding.Cancel();
        riding.Dispose();
        riding = new CancellationTokenSource();
        if (session.Examination is not { } examination)
            return;
        ridden = examination;
        ReadBriefRoute(examination);
        IsRiding = true;
        Changed?.Invoke();
        _ = RideAsync(examination, Road, Repeats, riding.Token);
    }

    // The brief's own road is the first to be ridden, once it is known; the file is read again only when another one is named.
    void ReadBriefRoute(Examination examination)
    {
        var named = examination.Board.Brief.Route is { IsKnown: true } known ? known.Value : null;
        if (named == briefRoute || session.Source is not { } source)
            return;
        (briefRoute, var before) = (named, briefRoad);
        briefRoad = null;
        if (named is not null)
        {
            var reading = RouteFile.Load(Path.Combine(Path.GetDirectoryName(source.Path) ?? "", named), source.Files);
            Complaints = reading.Complaints;
            briefRoad = reading.Route is null ? null : RideRoad.From("brief", named, reading);
        }

        if (briefRoad is not null && (before is null || Road == before))
            Road = briefRoad;
        else if (briefRoad is null && Road == before)
            Road = RideRoad.MadeUp[1];
    }

    async Task RideAsync(Examination examination, RideRoad road, bool repeats, CancellationToken cancellation)
    {
        var board = examination.Board;
        var options = new RideOptions { Repeats = repeats && road.Route is not null, TraceEvery = Duration.FromSeconds(1) };
        try
        {
            // On a thread of its own: the ride is waited for, while the samplings that fill the pool are not.
            var (answer, charts) = await Task.Factory.StartNew(
                () =>
                {
                    var ride = road.Route is { } route ? Rides.Ride.Simulate(board, route, options) : Rides.Ride.Cruising(board, options);
                    return (ride, ride.IsKnown ? RidePictures.Draw(board, Thinned(ride.Value), road.Route) : []);
                },
                cancellation, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            if (cancellation.IsCancellationRequested)
                return;
            (Ride, Charts, Spread, Missing, IsRiding) =
                (answer.IsKnown ? answer.Value : null, charts, null, answer.IsKnown ? [] : answer.Missing, false);
            Number++;
            Changed?.Invoke();
            if (!answer.IsKnown)
                return;
            var spread = await Task.Run(
                () => RideSpread.Sample(board, road.Route, options, Samples, cancellation: cancellation), cancellation);
            if (cancellation.IsCancellationRequested)
                return;
            Spread = spread.IsKnown ? spread.Value : null;
            Changed?.Invoke();
        }
        catch (OperationCanceledException)
        {
            // The builder has edited on, or took another road.
        }
    }

    static Ride Thinned(Ride ride)
    {
        var step = (ride.Trace.Count + MostRows - 1) / MostRows;
        return step <= 1 ? ride : ride with { Trace = [.. ride.Trace.Where((_, i) => i % step == 0 || i == ride.Trace.Count - 1)] };
    }
}

/// <summary>A chart as numbers, for a cursor that reads them without asking the program.</summary>
static class CursorTable
{
    /// <summary>What is along the axis and in the panels.</summary>
    /// <param name="Across">The axis across.</param>
    /// <param name="Rows">How many values each column has.</param>
    /// <param name="Columns">The columns after that of the axis.</param>
    public sealed record CursorHeading(Measure Across, int Rows, IReadOnlyList<CursorColumn> Columns);

    /// <summary>How a value in SI units is written.</summary>
    public sealed record Measure(string Name, string Unit, double Factor, double Offset);
    /// <summary>A line, or a band between two columns.</summary>
    public sealed record CursorColumn(int Panel, string Name, bool IsBand, int Pen, Measure Measure);

    /// <summary>The heading of a chart of lines that all have the same places across.</summary>
    public static CursorHeading HeadingOf(Chart chart, UnitSystem units) => new(
        MeasureOf(chart.Across, units),
        Across(chart).Length,
        [.. Series(chart).Select(
        s => new CursorColumn(s.Panel, s.Series.Name, s.Series is Band, (s.Series.Pen ?? 0) % 6 + 1, MeasureOf(s.Up, units)))]);

    /// <summary>All values in SI units as numbers of four bytes, column by column, the axis first; two columns for a band.</summary>
    public static byte[] BytesOf(Chart chart)
    {
        var columns = new List<ReadOnlyMemory<double>> { Across(chart) };
        foreach (var (_, _, series) in Series(chart))
        {
            if (series is Line line)
                columns.Add(line.Y);
            else if (series is Band band)
                columns.AddRange([band.Low, band.High]);
        }

        var rows = columns[0].Length;
        var numbers = new float[rows * columns.Count];
        for (var c = 0; c < columns.Count; c++)
        {
            var column = columns[c].Span;
            for (var i = 0; i < rows; i++)
                numbers[c * rows + i] = (float)column[i];
        }

        return MemoryMarshal.AsBytes(numbers.AsSpan()).ToArray();
    }

    /// <summary>The series with their panels.</summary>
    public static IEnumerable<(int Panel, Axis Up, ChartSeries Series)> Series(Chart chart) =>
        chart.Panels.SelectMany((panel, i) => panel is LinePanel lines ? lines.Series.Select(s => (i, lines.Up, s)) : []);

    static ReadOnlyMemory<double> Across(Chart chart) => Series(chart).Select(s => s.Series.X).FirstOrDefault();

    static Measure MeasureOf(Axis axis, UnitSystem units)
    {
        var unit = axis.UnitIn(units);
        return new(axis.Says, Axis.SymbolOf(unit), unit.Factor, unit.Offset);
    }
}
