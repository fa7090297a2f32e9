using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.UsualValues;

namespace Boardwright.Spreads;

/// <summary>How well the figures of a ride are known: the same ride on many boards like one.</summary>
/// <param name="Intervals">The figures' intervals, by id. Temperatures that rest on guessed heat capacities or cooling are as wide as their
/// bands at least.</param>
/// <param name="MeasureNext">What to measure next, the most telling first: what narrows the charge left (or the distance, where the ride
/// ends for want of charge), the consumption and the heat of the windings.</param>
/// <validity>As <see cref="Sampling"/>.</validity>
/// <error>As <see cref="Sampling"/>; rides are sampled with steps of half a second, which move a figure by some thousandths.</error>
/// <source cref="Sources.QuasiMonteCarlo"/>
public sealed record RideSpread(IReadOnlyDictionary<string, Interval> Intervals, IReadOnlyList<Measurement> MeasureNext)
{
    /// <summary>Step of the sampled rides; an interval does not need the last digit.</summary>
    public static Duration SampleStep { get; } = Duration.FromSeconds(0.5);

    /// <summary>Samples a ride over a route.</summary>
    /// <param name="board">The board as it stands, its entries named.</param>
    /// <param name="route">The route; <c>null</c> for a level cruise to the reserve.</param>
    /// <param name="options">How the ride is ridden; its step and trace do not matter here.</param>
    /// <param name="points">Number of boards; a power of two spreads them best.</param>
    /// <param name="seed">Seed of the scrambling.</param>
    /// <param name="progress">Told how many boards are done, now and then.</param>
    /// <param name="cancellation">Stops the work between two boards.</param>
    public static Answer<RideSpread> Sample(
        Board board, Route? route, RideOptions? options = null, int points = Spread.DefaultPoints, ulong seed = 1,
        IProgress<int>? progress = null, CancellationToken cancellation = default) => Answer<RideSpread>.Ask("", needs =>
    {
        board = UsualTable.Complete(board);
        var model = needs.Read(RideModel.Compute(board));
        if (needs.Unmet)
            return null;
        var sampled = (options ?? new()) with { Step = SampleStep, TraceEvery = null };
        RideCourse CourseFor(RiderPace pace) => route is null ? RideCourse.Level(pace) : RideCourse.Create(route, pace);
        var course = CourseFor(model.Pace);
        var kinds = RideFigures.All;
        var sampling = new Sampling(board, model.From, kinds.Count, Row, points, seed, progress, cancellation);
        var ride = Ride.On(model, course, sampled);
        return new RideSpread(
            kinds.Select((kind, i) => (kind.Id, Interval: IntervalOf(kind, ride, sampling, i))).Where(p => p.Interval is not null)
                .ToDictionary(p => p.Id, p =>
                ModelSpread.Over(board, p.Id, RideFigures.ValueOf(kinds.First(k => k.Id == p.Id), ride)!.Value, p.Interval!),
                StringComparer.Ordinal),
            sampling.MeasureNext([.. kinds.Select((kind, i) => (Index: i, kind.Id)).Where(k => Cared.Contains(k.Id))]));

        IReadOnlyList<double?> Row(Board moved)
        {
            var answer = RideModel.Compute(moved);
            if (!answer.IsKnown)
                return new double?[kinds.Count];
            // The course depends on the board only through the rider's pace, which hardly ever varies.
            var ridden = Ride.Once(answer.Value, answer.Value.Pace == course.Pace ? course : CourseFor(answer.Value.Pace), sampled);
            return [.. kinds.Select(kind => RideFigures.ValueOf(kind, ridden))];
        }
    });

    static HashSet<string> Cared { get; } = new(
        StringComparer.Ordinal) { RideFigures.Distance.Id, RideFigures.ChargeLeft.Id, RideFigures.Consumption.Id, RideFigures.Winding.Id };

    static Interval? IntervalOf(FigureKind kind, Ride ride, Sampling sampling, int index)
    {
        if (RideFigures.ValueOf(kind, ride) is not { } value)
            return null;
        var interval = sampling.IntervalOf(index, value);
        return RideFigures.HottestOf(kind, ride) is { IsBand: true } band
            ? interval with { Low = Math.Min(interval.Low, band.Low.Celsius), High = Math.Max(interval.High, band.High.Celsius) }
            : interval;
    }
}
