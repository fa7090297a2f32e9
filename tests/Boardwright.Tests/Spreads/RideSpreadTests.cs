using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.Spreads;

namespace Boardwright.Tests.Spreads;

public sealed class RideSpreadTests
{
    static readonly Route Hilly = Route.Loop(Length.FromKilometres(3), Length.FromMetres(12), 2);

    static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    static readonly RideSpread Tern = RideSpread.Sample(Boards.Tern, Hilly, points: 64, cancellation: Cancellation).Value;

    [Fact]
    public void Every_figure_of_a_ride_has_an_interval_that_holds_it()
    {
        var ride = Ride.Simulate(Boards.Tern, Hilly).Value;
        foreach (var kind in RideFigures.All)
        {
            var (value, interval) = (RideFigures.ValueOf(kind, ride)!.Value, Tern.Intervals[kind.Id]);
            // The interval's rides have longer steps, which move a figure by a thousandth at most.
            var slack = 2e-3 * Math.Abs(value) + 1e-3;
            Assert.True(interval.Low - slack <= value && value <= interval.High + slack, $"{kind.Id}: {value} in {interval.Low} to {interval.High}");
        }

        Assert.Contains("wheels.rolling_resistance", Tern.Intervals["ride.consumption"].MattersMost);
    }

    [Fact]
    public void A_temperature_that_rests_on_a_guess_is_as_wide_as_its_band()
    {
        var (cells, interval) = (Ride.Simulate(Boards.Tern, Hilly).Value.Cells, Tern.Intervals["ride.cell_peak"]);

        Assert.True(interval.Low <= cells.Low.Celsius + 0.05 && interval.High >= cells.High.Celsius - 0.05);
    }

    [Fact]
    public void The_same_seed_gives_the_same_intervals_and_another_seed_others()
    {
        var again = RideSpread.Sample(Boards.Read("tern"), Hilly, points: 64, cancellation: Cancellation).Value;
        var other = RideSpread.Sample(Boards.Tern, Hilly, points: 64, seed: 2, cancellation: Cancellation).Value;

        static string Told(RideSpread spread) =>
            string.Join('\n', spread.Intervals.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => $"{p.Key} {p.Value.Low:R} {p.Value.High:R} {string.Join(',', p.Value.MattersMost)}"))
            + string.Join('\n', spread.MeasureNext.Select(m => $"{m.Key} {m.Narrows.Sum(n => n.Part):R}"));
        Assert.Equal(Told(Tern), Told(again));
        Assert.NotEqual(Told(Tern), Told(other));
    }

    [Fact]
    public void Measuring_what_is_named_first_narrows_the_figures_by_about_what_is_said()
    {
        var first = Tern.MeasureNext.First(m => m.Key == "wheels.rolling_resistance");
        var said = first.Narrows.First(n => n.Figure == "ride.consumption").Part;
        var rolling = Boards.Tern.Parts.Wheels.RollingResistance;
        var measured = Boards.Tern with
        {
            Parts = Boards.Tern.Parts with
            {
                Wheels =
                Boards.Tern.Parts.Wheels with { RollingResistance = new(rolling.Value, 0.02, Origin.Measured, rolling.Key) }
            },
        };
        static double Width(RideSpread spread) => spread.Intervals["ride.consumption"].High - spread.Intervals["ride.consumption"].Low;

        // A rank correlation of 64 points is good to about a tenth.
        Assert.Equal(said, 1 - Width(RideSpread.Sample(measured, Hilly, points: 64, cancellation: Cancellation).Value) / Width(Tern), 0.12);
    }

    [Fact]
    public void The_steady_figures_name_what_to_measure_next_too()
    {
        var next = Spread.Sample(Examination.Examine(Boards.Tern), 128, cancellation: Cancellation).MeasureNext;

        Assert.Contains("wheels.rolling_resistance", next.Take(3).Select(m => m.Key));
        Assert.Equal(next.OrderByDescending(m => m.Narrows.Sum(n => n.Part)).Select(m => m.Key), next.Select(m => m.Key));
        Assert.All(next, m => Assert.NotEmpty(m.How));
        // Measured on the bench already.
        Assert.DoesNotContain("motor.kv", next.Select(m => m.Key));
    }

    [Fact]
    public void Sampling_tells_how_far_it_is_and_stops_when_asked()
    {
        var counter = new Counter();
        RideSpread.Sample(Boards.Tern, Hilly, points: 64, progress: counter, cancellation: Cancellation);
        using var stop = new CancellationTokenSource();
        stop.Cancel();

        Assert.Equal(64, counter.Most);
        Assert.Throws<OperationCanceledException>(() => RideSpread.Sample(Boards.Tern, Hilly, points: 64, cancellation: stop.Token));
    }

    [Fact]
    public void Entries_that_are_missing_are_named() =>
        Assert.Contains("cell.capacity", RideSpread.Sample(Boards.Tern.With(("cell.capacity", "")), null, cancellation: Cancellation).Missing);

    sealed class Counter : IProgress<int>
    {
        readonly Lock gate = new();
        int most;

        public int Most => most;

        public void Report(int value)
        {
            lock (gate)
                most = Math.Max(most, value);
        }
    }
}
