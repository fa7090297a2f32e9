using Boardwright.Findings;
using Boardwright.Lessons;
using Boardwright.Logs;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.Spreads;
using Boardwright.Traction;

namespace Boardwright.Tests.Lessons;

/// <summary>Rides that a board's own simulation wrote down, put through the model again.</summary>
public sealed class ReplayTests(ITestOutputHelper output)
{
    static readonly Route Hilly = Route.Loop(Length.FromKilometres(4), Length.FromMetres(14), 2);

    static readonly ReplayConditions Calm = new() { Headwind = default(Speed) };

    static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>A simulated ride as a table of a logger.</summary>
    internal static string Table(RideLog log)
    {
        var text = new System.Text.StringBuilder("time_s,speed_mps,elevation_m,pack_voltage_V,pack_current_A,motor_temperature_C,controller_temperature_C,pack_temperature_C\n");
        for (var i = 0; i < log.Count; i++)
        {
            double At(Channel channel, double from = 0) => log.Si(channel)[i] - from;
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{log.Seconds[i]:0.00},{Math.Max(0, At(Channel.Speed)):0.000},{At(Channel.Elevation):0.000},{At(Channel.PackVoltage):0.000},{At(Channel.PackCurrent):0.000},{At(Channel.MotorTemperature, 273.15):0.00},{At(Channel.ControllerTemperature, 273.15):0.00},{At(Channel.PackTemperature, 273.15):0.00}\n");
        }

        return text.ToString();
    }

    /// <summary>A ride on a hilly loop of the board as it stands, after it stood for some seconds.</summary>
    internal static RideLog Evening(Board board, double kilometres = 3) =>
        Logged(board, Route.Loop(Length.FromKilometres(kilometres), Length.FromMetres(10), 2), 0.05);

    /// <summary>A simulated ride as a logger would write it down, with noise where it is asked for.</summary>
    static RideLog Logged(Board board, Route route, double noise = 0, double step = 0.2, Func<double, bool>? isLost = null)
    {
        var ride = Ride.Simulate(board, route, new() { TraceEvery = Duration.FromSeconds(step), StartCharge = Fraction.FromPercent(90) })
            .Value;
        var chance = new Chance(77);
        var kept = ride.Trace.Where(m => isLost is null || !isLost(m.State.Seconds)).ToArray();
        // Before it goes off the board stands for five seconds, its pack at rest.
        const int Before = 25;
        var rest = board.Parts.Pack.Series.Value * board.Parts.Cell.RestVoltage.Value.At(0.9);
        var air = board.Brief.Temperature.Value.Kelvins;
        double[] All(double standing, Func<RideMoment, double> of) => [.. Enumerable.Repeat(standing, Before), .. kept.Select(of)];
        double Noisy(double value) => value + noise * chance.Normal();
        return new RideLog("made", [.. Enumerable.Range(0, Before).Select(i => 0.2 * i - 5), .. kept.Select(m => m.State.Seconds)],
            new Dictionary<Channel, double[]>
            {
                [Channel.Speed] = All(0, m => Noisy(m.State.Speed)),
                [Channel.Elevation] = All(
                route.ElevationAt(default).Metres,
                m => route.ElevationAt(Length.FromMetres(Math.Min(m.State.Place, route.Distance.Metres))).Metres),
                [Channel.PackVoltage] = All(rest, m => Noisy(m.BusVolts)),
                [Channel.PackCurrent] = All(0, m => Noisy(m.PackCurrent)),
                [Channel.MotorTemperature] = All(air, m => m.State.Winding),
                [Channel.ControllerTemperature] = All(air, m => m.State.Controller),
                [Channel.PackTemperature] = All(air, m => m.State.Cells),
            });
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    public void A_ride_that_the_model_wrote_is_predicted_by_it(double noise)
    {
        var log = Logged(Boards.Tern, Hilly, noise);
        var comparison = RideComparison.Compare(
            Boards.Tern, log, Calm with { StartCharge = Fraction.FromPercent(90) }, points: 16, cancellation: Cancellation);

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

    [Fact]
    public void The_charge_at_the_start_is_read_off_the_pack_at_rest()
    {
        var replay = Replay.Run(Boards.Tern, Logged(Boards.Tern, Hilly), Calm);

        Assert.Equal(90, replay.Value.StartCharge.Percent, 0.1);
        Assert.Equal(replay.Value.Seconds.Count, replay.Value.Measured(Channel.PackCurrent).Length);
        Assert.Empty(replay.Value.Measured(Channel.Duty));
    }

    [Fact]
    public void What_lies_outside_the_prediction_is_said_with_its_likeliest_cause()
    {
        var log = Logged(Boards.Tern.With(("wheels.rolling_resistance", "0.024")), Hilly);
        var board = Boards.Tern.With(("wheels.rolling_resistance", "0.014"), ("brief.drag_area", "0.6 m2"));
        var energy = RideComparison.Compare(
            board, log, Calm with { StartCharge = Fraction.FromPercent(90) }, points: 32, cancellation: Cancellation).Value.Differences[0];

        Assert.False(energy.IsWithin);
        Assert.True(energy.Ratio > 1.1);
        Assert.StartsWith("It used ", energy.Says, StringComparison.Ordinal);
        Assert.Contains("outside the prediction's own 90 % range", energy.Says, StringComparison.Ordinal);
        Assert.Contains(energy.Cause, energy.Says, StringComparison.Ordinal);
        output.WriteLine(energy.Says);
    }

    [Fact]
    public void A_gap_stays_a_gap_on_both_sides()
    {
        var (whole, torn) = (Logged(Boards.Tern, Hilly), Logged(Boards.Tern, Hilly, isLost: t => t is > 100 and < 160));
        RideComparison Of(RideLog log) =>
            RideComparison.Compare(Boards.Tern, log, Calm with { StartCharge = Fraction.FromPercent(90) }, points: 8,
            cancellation: Cancellation).Value;
        var (a, b) = (Of(whole), Of(torn));

        Assert.Contains(b.Replay.Seconds.Zip(b.Replay.PackAmperes), p => p.First is > 100 and < 160 && double.IsNaN(p.Second));
        Assert.DoesNotContain(b.Replay.Seconds.Zip(b.Replay.PackAmperes), p => p.First is > 102 and < 158 && !double.IsNaN(p.Second));
        Assert.True(b.Differences[0].Measured < a.Differences[0].Measured);
        Assert.Equal(1, b.Differences[0].Ratio, 0.02);
        Assert.Contains(b.Replay.Cautions, c => c.Contains("gap of 6", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_missing_is_named_and_never_guessed()
    {
        var full = Logged(Boards.Tern, Hilly);
        RideLog Without(params Channel[] lost) =>
            new("made", full.Seconds, full.Channels.Except(lost).ToDictionary(c => c, c => full.Si(c).ToArray()));

        Assert.Contains("log.elevation",
            RideComparison.Compare(Boards.Tern, Without(Channel.Elevation), Calm, points: 8, cancellation: Cancellation).Missing);
        Assert.Contains("log.speed",
            RideComparison.Compare(Boards.Tern, Without(Channel.Speed), Calm, points: 8, cancellation: Cancellation).Missing);
        Assert.Contains("log.charge_left",
            RideComparison.Compare(Boards.Tern, Without(Channel.PackVoltage), Calm, points: 8, cancellation: Cancellation).Missing);
        var cold = RideComparison.Compare(
            Boards.Tern, Without(Channel.MotorTemperature, Channel.PackCurrent), Calm with { StartCharge = Fraction.FromPercent(90) },
            points: 8, cancellation: Cancellation).Value;
        Assert.Equal(["pack current", "motor temperature"], cold.Missing);
        Assert.Equal(["measured.controller", "measured.cells"], cold.Differences.Select(d => d.Kind.Id));
    }

    // The board simulates itself without the wheels' help: what is taken of its coast-downs must be what its file says.
    [Fact]
    public void A_coast_down_gives_back_the_rolling_of_the_wheels_without_the_drag_of_the_motors()
    {
        var board = Boardwright.UsualValues.UsualTable.Complete(Boards.Tern);
        var running = Boardwright.Traction.SteadyRunningOfBoard.Compute(board);
        var (mass, effective) = (running.RollingMass.Value.Mass.Kilograms, running.EffectiveMass.Value.Mass.Kilograms);
        var (drive, load) = (running.Drive.Value, running.Load.Value.Load);
        var speeds = new List<double>();
        for (var v = 8.6; v > 1.2;)
        {
            speeds.Add(v);
            for (var k = 0; k < 20; k++)
                v -= 0.01 * (drive.BrakeForce(0, v) + load.ForceAt(Speed.FromMetresPerSecond(v), default, default).Newtons) / effective;
        }

        double[] times = [.. Enumerable.Range(0, speeds.Count).Select(i => 0.2 * i)];
        CoastDownRun[] runs = [.. Enumerable.Range(0, 4).Select(_ => new CoastDownRun("made", default, times, speeds.ToArray()))];
        var conditions = new CoastDownConditions(
            Mass.FromKilograms(mass), Mass.FromKilograms(effective - mass),
            running.Air.Value.DensityKilogramsPerCubicMetre)
        { SpeedScaleSpread = 0 };
        var fit = CoastDown.Fit(runs, conditions).Fit!;
        var lessons = LessonSet.From(fit, board, conditions);

        double Taken(string name) =>
            double.Parse(lessons.Single(l => l.Name == name).Entries[0].Value.Split(' ')[0],
            System.Globalization.CultureInfo.InvariantCulture);
        output.WriteLine($"fitted {fit.RollingResistance.Value.Value:0.00000}, taken {Taken("rolling")}; {lessons[0].Says}");
        Assert.True(fit.RollingResistance.Value.Value > 1.1 * load.RollingResistance.Value);
        Assert.Equal(1, Taken("rolling") / load.RollingResistance.Value, 0.03);
        Assert.Equal(1, Taken("drag-area") / load.DragArea.SquareMetres, 0.03);
    }
}
