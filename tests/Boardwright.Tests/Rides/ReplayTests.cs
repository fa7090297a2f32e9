using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.Spreads;
using Boardwright.Units;

namespace Boardwright.Tests.Rides;

/// <summary>Rides that a board's own simulation wrote down, put through the model again.</summary>
public sealed class ReplayTests(ITestOutputHelper output)
{
    static readonly Route Hilly = Route.Loop(Length.FromKilometres(4), Length.FromMetres(14), 2);

    static readonly ReplayConditions Calm = new() { Headwind = default(Speed) };

    static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>A simulated ride as a logger would write it down, with noise where it is asked for.</summary>
    static RideLog Logged(Board board, Route route, double noise = 0, double step = 0.2, Func<double, bool>? isLost = null)
    {
        var ride = Ride.Of(board, route, new() { TraceEvery = Duration.FromSeconds(step), StartCharge = Fraction.FromPercent(90) }).Value;
        var chance = new Chance(77);
        var kept = ride.Trace.Where(m => isLost is null || !isLost(m.State.Seconds)).ToArray();
        return new RideLog("made", [.. kept.Select(m => m.State.Seconds)], new Dictionary<Channel, double[]>
        {
            [Channel.Speed] = [.. kept.Select(m => m.State.Speed + noise * chance.Normal())],
            [Channel.Elevation] = [.. kept.Select(m => route.ElevationAt(Length.FromMetres(Math.Min(m.State.Place, route.Distance.Metres))).Metres)],
            [Channel.PackVoltage] = [.. kept.Select(m => m.BusVolts + noise * chance.Normal())],
            [Channel.PackCurrent] = [.. kept.Select(m => m.PackCurrent + noise * chance.Normal())],
            [Channel.MotorTemperature] = [.. kept.Select(m => m.State.Winding)],
            [Channel.ControllerTemperature] = [.. kept.Select(m => m.State.Controller)],
            [Channel.PackTemperature] = [.. kept.Select(m => m.State.Cells)],
        });
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    public void A_ride_that_the_model_wrote_is_predicted_by_it(double noise)
    {
        var log = Logged(Boards.Tern, Hilly, noise);
        var comparison = RideComparison.Of(Boards.Tern, log, Calm with { StartCharge = Fraction.FromPercent(90) }, points: 16, cancellation: Cancellation);

        Assert.True(comparison.IsKnown, string.Join(", ", comparison.Missing));
        foreach (var difference in comparison.Value.Differences)
        {
            output.WriteLine($"{difference.Kind.Id}: {difference.Measured:0.000} against {difference.Predicted:0.000} ({difference.Low:0.00} to {difference.High:0.00}); {difference.Says}");
            Assert.True(difference.IsWithin, difference.Says);
        }

        double Ratio(string id) => comparison.Value.Differences.Single(d => d.Kind.Id == id).Ratio;
        Assert.Equal(1, Ratio("measured.energy"), noise > 0 ? 0.03 : 0.015);
        Assert.Equal(1, Ratio("measured.sag"), 0.03);
        Assert.Equal(1, Ratio("measured.winding"), 0.03);
        Assert.Equal(5, comparison.Value.Differences.Count);
        Assert.Empty(comparison.Value.Missing);
    }
}
