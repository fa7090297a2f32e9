using Boardwright.Packs;
using Boardwright.Parts;
using CsCheck;

namespace Boardwright.Tests.Packs;

public sealed class CellFitTests
{
    static readonly (Duration, Duration) Known = (Duration.FromSeconds(4), Duration.FromSeconds(120));

    static double Kelvins(double celsius) => celsius + 273.15;

    /// <summary>What a tester would log of a model: each entry of the programme is held for a time and sampled, closely after a
    /// change.</summary>
    internal static CellMeasurement Logged(
        string name, CellModel cell, double celsius, IEnumerable<(double Amperes, double Seconds)> programme)
    {
        var (state, time, taken) = (CellState.Rested(1), 0.0, 0.0);
        var readings = new List<CellReading> { new(0, 0, cell.VoltsAt(state, 0, Kelvins(celsius)), double.NaN, 0, Kelvins(celsius)) };
        foreach (var (amperes, seconds) in programme)
        {
            for (var (done, step) = (0.0, 0.1); done < seconds - 1e-9; done += step,
                step = Math.Min(Math.Min(step * 1.5, 60), seconds - done))
            {
                state = cell.Step(state, amperes, step, Kelvins(celsius)).After;
                (time, taken) = (time + step, taken + amperes * step);
                readings.Add(new(time, amperes, cell.VoltsAt(state, amperes, Kelvins(celsius)), double.NaN, taken, Kelvins(celsius)));
            }
        }

        return new CellMeasurement(name, CellRecordKind.Samples, readings);
    }

    internal static CellMeasurement Pulses(CellModel cell, double celsius, double depth = 0.98) => Logged(
        "pulses", cell, celsius,
        Enumerable.Range(0, 14).SelectMany(_ => new (double, double)[]
        {
            (3, 10), (0, 40), (-1.5, 10), (0, 600), (12, 10), (0, 40), (-3, 10), (0, 600), (1.5, 440 * depth), (0, 1800),
        }));

    internal static CellMeasurement Discharge(CellModel cell, double celsius, double amperes, double depth = 0.97) =>
        Logged("discharge", cell, celsius, [(amperes, 10800 * depth / amperes)]);

    [Fact]
    public void A_cell_that_is_of_the_model_s_kind_is_found_again()
    {
        var cell = CellModelTests.Invented();
        var fit = CellFit.Fit("found", [Pulses(cell, 25), Discharge(cell, 25, 1.5), Discharge(cell, 25, 3)]);

        Assert.Equal(4, fit.Cell.Polarisation.Tau1.Value.Seconds);
        Assert.Equal(120, fit.Cell.Polarisation.Tau2.Value.Seconds);
        // Between its places the fit's lines and the invented cell's differ by that much, most of it at the steep end.
        Assert.InRange(fit.RmsVolts, 0, 0.006);
        Assert.All(fit.Replays, replay => Assert.InRange(replay.RmsVoltsAboveTenth, 0, 0.003));
        Assert.Equal(0, fit.Held);
        foreach (var (seconds, allowed) in new[] { (0.0, 0.02), (10, 0.02), (100, 0.03) })
        {
            // The fit's empty is where the measurements ended, a little above the invented cell's.
            var inCell = 1 - 0.5 * (fit.Model.Capacity / cell.Capacity);
            var expected = cell.OhmsAfter(seconds, inCell, Kelvins(25));
            Assert.Equal(expected, fit.Model.OhmsAfter(seconds, 0.5, Kelvins(25)), allowed * expected);
        }
    }

    [Fact]
    public void Two_temperatures_give_back_the_slope_between_them_and_what_lies_between()
    {
        var cell = CellModelTests.Invented();
        var fit = CellFit.Fit("found", [Pulses(cell, 25), Discharge(cell, 25, 3), Pulses(cell, 0, 0.9), Discharge(cell, 0, 3, 0.9)], Known);

        Assert.Equal([0, 25], fit.Temperatures.Select(t => Math.Round(t.Celsius, 6)));
        Assert.Equal(2500, fit.Activations[0], 60.0); // 2 % of the resistances
        Assert.Equal(cell.OhmsAfter(10, 0.52, Kelvins(12)), fit.Model.OhmsAfter(10, 0.5, Kelvins(12)),
            0.03 * cell.OhmsAfter(10, 0.52, Kelvins(12)));
        Assert.False(fit.ActivationIsAssumed);
    }

    [Fact]
    public void A_finished_fit_says_of_each_measurement_what_a_replay_of_it_says()
    {
        var cell = CellModelTests.Invented();
        CellMeasurement[] measurements = [Pulses(cell, 25), Discharge(cell, 25, 3)];
        var fit = CellFit.Fit("found", measurements, Known);

        foreach (var (measured, replay) in measurements.Zip(fit.Replays))
            Assert.Equal(CellReplay.Replay(fit.Model, measured).RmsVolts, replay.RmsVolts);
    }

    [Fact]
    public void The_rest_voltage_never_falls_and_every_resistance_is_above_zero_whatever_was_measured() =>
        Gen.Double[-0.05, 0.05].Array[400].Sample(
            noise =>
            {
                var clean = Discharge(CellModelTests.Invented(), 25, 3);
                var rough = new CellMeasurement(
                    "rough", CellRecordKind.Samples, [.. clean.Readings.Select((r, i) => r with { Volts = r.Volts + noise[i % 400] })]);
                var fit = CellFit.Fit("rough", [rough], Known);
                var rest = fit.Cell.RestVoltage.Value.Points;
                return rest.Zip(rest.Skip(1)).All(p => p.Second.Y > p.First.Y)
                    && new[] { fit.Cell.Resistance.Value, fit.Cell.Polarisation.R1.Value, fit.Cell.Polarisation.R2.Value }.All(
                    t => t.Values.All(row => row.All(r => r.Ohms > 0)));
            }, iter: 5);

    [Fact]
    public void The_same_measurements_give_the_same_cell_to_the_last_digit()
    {
        var cell = CellModelTests.Invented();
        var (a, b) = (CellFit.Fit("a", [Discharge(cell, 25, 3)], Known), CellFit.Fit("b", [Discharge(cell, 25, 3)], Known));

        Assert.Equal(a.Cell.RestVoltage.Value.Points, b.Cell.RestVoltage.Value.Points);
        Assert.Equal(a.RmsVolts, b.RmsVolts);
    }

    [Fact]
    public void What_teaches_nothing_is_refused()
    {
        var means = new CellMeasurement(
            "drive", CellRecordKind.Means, [new(0, 1, 4, double.NaN, double.NaN, 298), new(1, 1, 4, double.NaN, double.NaN, 298)]);
        var idle = new CellMeasurement("idle", CellRecordKind.Samples, [new(0, 0, 4, double.NaN, 0, 298), new(1, 0, 4, double.NaN, 0, 298)]);

        Assert.Throws<ArgumentException>(() => CellFit.Fit("x", []));
        Assert.Throws<ArgumentException>(() => CellFit.Fit("x", [means]));
        Assert.Throws<ArgumentException>(() => CellFit.Fit("x", [idle]));
    }
}

public sealed class CellMeasurementTests
{
    static CellReading Row(double seconds, double amperes, double amperehours) =>
        new(seconds, amperes, 3.7, double.NaN, amperehours * 3600, 298.15);

    [Fact]
    public void A_test_ends_where_the_tester_sets_its_count_to_zero()
    {
        var measured = new CellMeasurement(
            "m", CellRecordKind.Samples, [Row(0, 3, 0), Row(3600, 3, 3), Row(3660, 0, 0), Row(3720, -3, -0.05)]);

        Assert.Equal(2, measured.Stretches.Count);
        Assert.Equal(2, measured.RowsLeftOut);
    }

    [Fact]
    public void The_charge_after_a_discharge_is_left_out_but_one_between_pulses_is_not()
    {
        var charged = new CellMeasurement("m", CellRecordKind.Samples, [Row(0, 3, 0), Row(3600, 3, 3), Row(4800, -3, 2), Row(6000, -3, 1)]);
        var pulsed = new CellMeasurement(
            "m", CellRecordKind.Samples, [Row(0, 3, 0), Row(1800, 3, 1.5), Row(1900, -3, 1.4167), Row(3700, 3, 2.9167)]);

        Assert.Equal(2, charged.Stretches.Count);
        Assert.Equal(4, pulsed.Stretches.Count);
    }

    [Fact]
    public void A_first_row_that_comes_late_was_reached_with_its_own_current()
    {
        var measured = new CellMeasurement("m", CellRecordKind.Samples, [Row(60, 3, 0.05), Row(120, 3, 0.1)]);

        Assert.Equal(new CellStretch(0, 60, 3, 180), measured.Stretches[0]);
    }

    [Fact]
    public void A_long_stretch_has_the_current_of_the_count_and_a_short_one_that_of_its_end()
    {
        var measured = new CellMeasurement("m", CellRecordKind.Samples, [Row(0, 0, 0), Row(0.1, 6, 0.0001), Row(60.1, 3, 0.0601)]);

        Assert.Equal(6, measured.Stretches[1].Amperes);
        Assert.Equal(3.6, measured.Stretches[2].Amperes, 1e-9);
    }

    [Fact]
    public void Rows_out_of_time_or_too_few_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new CellMeasurement("m", CellRecordKind.Samples, [Row(0, 0, 0)]));
        Assert.Throws<ArgumentException>(() => new CellMeasurement("m", CellRecordKind.Samples, [Row(1, 0, 0), Row(0, 0, 0)]));
    }

    // A replay of what a model logged is that model again.
    [Fact]
    public void A_replay_of_a_model_s_own_log_has_no_error()
    {
        var cell = CellModelTests.Invented();
        var replay = CellReplay.Replay(cell, CellFitTests.Logged("own", cell, 10, [(3, 900), (0, 600), (-2, 100), (9, 60)]));

        Assert.True(replay.RmsVolts < 1e-9);
        Assert.Equal(0, replay.EnergyError, 0.002); // samples are joined by straight lines
    }

    [Fact]
    public void A_model_with_too_much_rest_voltage_is_found_out_by_just_that()
    {
        var cell = CellModelTests.Invented();
        var high = new CellModel(
            cell.Capacity, new Curve<Fraction, Voltage>(CellModelTests.Rest.Points.Select(p => (p.X.Si, p.Y.Si + 0.037))),
            CellModelTests.Table(18), cell.First, cell.Second);
        var replay = CellReplay.Replay(high, CellFitTests.Logged("log", cell, 25, [(3, 900), (0, 600)]));

        Assert.Equal(0.037, replay.RmsVolts, 1e-9);
        Assert.Equal(0.037, replay.WorstVolts, 1e-9);
        Assert.Equal(0.037 / 3.9, replay.EnergyError, 0.001);
    }

    [Fact]
    public void A_charge_cannot_be_replayed() =>
        Assert.Throws<ArgumentException>(
        () => CellReplay.Replay(CellModelTests.Invented(),
        new CellMeasurement("c", CellRecordKind.Charge, [Row(0, -3, 0), Row(60, -3, 0.05)])));
}

public sealed class MeasuredChargeTests
{
    static CellMeasurement Charged(double coulombs, double amperes, double end, double tau)
    {
        var constant = coulombs / amperes - tau * (1 - end / amperes);
        var rows = new List<CellReading>();
        for (var t = 0.0; t < constant + tau * Math.Log(amperes / end) + 300; t += 5)
        {
            var fall = Math.Max(0, t - constant);
            var i = amperes * Math.Exp(-fall / tau);
            var put = amperes * Math.Min(t, constant) + tau * (amperes - Math.Max(i, end));
            rows.Add(new CellReading(t, i < end ? 0 : -i, 4, double.NaN, put, 298));
        }

        return new CellMeasurement("charge", CellRecordKind.Charge, rows);
    }

    [Fact]
    public void An_exponential_tail_is_read_back() =>
        Gen.Select(Gen.Double[2, 5], Gen.Double[0.3, 1], Gen.Double[0.02, 0.2], Gen.Double[200, 1500]).Sample((hours, rate, part, tau) =>
        {
            var amperes = hours * rate;
            var tail = MeasuredCharge.Measure(Charged(hours * 3600, amperes, amperes * part, tau));
            return 3600 / rate < tau * 1.2 || Math.Abs(tail!.Decay.Seconds / tau - 1) < 0.03; // rows 5 s apart
        });

    [Fact]
    public void A_charge_that_was_cut_short_has_no_tail() =>
        Assert.Null(MeasuredCharge.Measure(
        new CellMeasurement("cut short", CellRecordKind.Charge, [new(0, -3, 4, double.NaN, 0, 298), new(60, -3, 4, double.NaN, 180, 298)])));
}

public sealed class TwoCurveModelTests
{
    // Two discharges of a cell that is a rest voltage and a resistance: both come back.
    [Fact]
    public void A_cell_with_a_resistance_alone_is_found_again()
    {
        var cell = new CellModel(Charge.FromAmpereHours(3), CellModelTests.Rest, CellModelTests.Flat(40));
        var two = TwoCurveModel.Create("two", CellFitTests.Discharge(cell, 25, 6), CellFitTests.Discharge(cell, 25, 1.5));

        Assert.Equal(1.5, two.SlowCurrent.Amperes, 1e-9);
        foreach (var charge in new[] { 0.2, 0.5, 0.8 })
        {
            var inCell = 1 - (1 - charge) * two.Model.Capacity / cell.Capacity;
            Assert.Equal(0.040, two.Model.OhmsAfter(0, charge, 298), 0.0005); // straight lines between the rows
            Assert.Equal(cell.RestVoltsAt(inCell), two.Model.RestVoltsAt(charge), 0.002);
        }
    }

    [Fact]
    public void Curves_that_cannot_be_told_apart_are_refused()
    {
        var cell = CellModelTests.Invented();

        Assert.Throws<ArgumentException>(
            () => TwoCurveModel.Create("x", CellFitTests.Discharge(cell, 25, 3), CellFitTests.Discharge(cell, 25, 3.3)));
        Assert.Throws<ArgumentException>(
            () => TwoCurveModel.Create("x", CellFitTests.Discharge(cell, 25, 3), CellFitTests.Logged("rest", cell, 25, [(0, 100)])));
    }
}
