using Boardwright.Packs;
using Boardwright.Parts;
using CsCheck;

namespace Boardwright.Tests.Packs;

public sealed class CellModelTests
{
    const double Warm = 298.15;

    internal static readonly Curve<Fraction, Voltage> Rest = new(
        [(0, 2.95), (0.05, 3.2), (0.1, 3.35), (0.3, 3.57), (0.5, 3.72), (0.7, 3.9), (0.9, 4.06), (1, 4.18)]);

    internal static ResistanceTable Flat(double milliohms) => new(Resistance.FromMilliohms(milliohms));

    /// <summary>An invented cell: resistances that rise towards empty and with the cold, as exp(2500 K / T).</summary>
    internal static CellModel Invented(double times = 1) => new(
        Charge.FromAmpereHours(3), Rest,
        Table(18 * times), new CellBranch(Table(6 * times), Duration.FromSeconds(4)),
        new CellBranch(Table(20 * times), Duration.FromSeconds(120)));

    internal static ResistanceTable Table(double milliohms)
    {
        double[] celsius = [-10, 0, 25, 45];
        return new(
            [Fraction.FromPercent(0), Fraction.FromPercent(20), Fraction.FromPercent(100)],
            [.. celsius.Select(Temperature.FromCelsius)],
            [.. new[] { 1.6, 1, 1 }.Select(
            rise => (IReadOnlyList<Resistance>)[.. celsius.Select(
            c => Resistance.FromMilliohms(milliohms * rise * Math.Exp(2500 * (1 / (c + 273.15) - 1 / Warm))))])]);
    }

    // A rest voltage that does not move and resistances that do not either.
    static CellModel Still(double first = 5, double second = 10) => new(
        Charge.FromAmpereHours(1000), new Curve<Fraction, Voltage>([(0, 4), (1, 4)]), Flat(15),
        new CellBranch(Flat(first), Duration.FromSeconds(4)), new CellBranch(Flat(second), Duration.FromSeconds(120)));

    // Handbook, battery, check 4: a step of 10 A with R0 15, R1 5 mΩ at 4 s, R2 10 mΩ at 120 s; and check 5, the same with any step.
    [Theory]
    [InlineData(0, 150.000)]
    [InlineData(1, 161.890)]
    [InlineData(10, 203.891)]
    [InlineData(60, 239.347)]
    [InlineData(600, 299.326)]
    public void A_current_step_is_answered_as_by_hand_whatever_the_steps(double seconds, double millivolts)
    {
        foreach (var step in new[] { 600.0, 10, 1, 0.1 })
        {
            var state = CellState.Rested(1);
            var steps = Math.Max(1, (int)Math.Round(seconds / step));
            for (var i = 0; i < steps; i++) state = Still().Step(state, 10, seconds / steps, Warm).After;

            Assert.Equal(millivolts, 1000 * (4 - Still().VoltsAt(state, 10, Warm)),
                0.0006); // half the last digit, and rounding of 6000 steps
            Assert.Equal(millivolts / 10, 1000 * Still().OhmsAfter(seconds, 1, Warm), 0.0001);
        }
    }

    // Handbook, battery, check 3: 40 V, 0.1 Ω, 1200 W gives 32.668 A at 36.733 V; the most is 4000 W at 200 A. A cell of 4 V and 10 mΩ
    // gives a tenth of each voltage and power.
    [Fact]
    public void A_power_is_drawn_with_the_smaller_current_and_no_more_than_the_cell_can_give()
    {
        var cell = new CellModel(Charge.FromAmpereHours(1000), new Curve<Fraction, Voltage>([(0, 4), (1, 4)]), Flat(10));
        var step = cell.StepAtPower(CellState.Rested(1), 120, 1, Warm)!.Value;

        Assert.Equal(32.668, step.Amperes, 0.0005);
        Assert.Equal(3.6733, step.MeanVolts, 0.00005);
        Assert.Equal(200, cell.StepAtPower(CellState.Rested(1), 400 - 1e-9, 1, Warm)!.Value.Amperes, 0.01);
        Assert.Null(cell.StepAtPower(CellState.Rested(1), 400.1, 1, Warm));
    }

    [Fact]
    public void The_mean_power_of_a_step_is_the_power_asked_for() =>
        Gen.Select(Gen.Double[-20, 40], Gen.Double[0.01, 60], Gen.Double[0.3, 0.9], Gen.Double[-0.1, 0.1])
        .Sample((watts, seconds, charge, held) =>
        {
            var step = Invented().StepAtPower(new CellState(charge, held, held), watts, seconds, Warm);
            return step is null || Math.Abs(step.Value.Watts - watts) < 1e-9;
        });

    [Fact]
    public void A_step_without_length_changes_nothing()
    {
        var state = new CellState(0.5, 0.01, 0.02);
        var step = Invented().Step(state, 5, 0, Warm);

        Assert.Equal(0.5, step.After.Charge);
        Assert.Equal(0.01, step.After.FirstVolts, 1e-15); // rounding
        Assert.Equal(0.02, step.After.SecondVolts, 1e-15);
        Assert.Equal(Invented().VoltsAt(state, 5, Warm), step.MeanVolts, 1e-12);
    }

    // Independent: a thousandth of the step, added up.
    [Fact]
    public void The_mean_voltage_and_heat_of_a_long_step_are_those_of_many_short_ones() =>
        Gen.Select(Gen.Double[-10, 20], Gen.Double[0.1, 300], Gen.Double[-0.1, 0.1], Gen.Double[-0.1, 0.1])
        .Sample((amperes, seconds, first, second) =>
        {
            var whole = Still().Step(new CellState(0.5, first, second), amperes, seconds, Warm);
            var (state, volts, heat) = (new CellState(0.5, first, second), 0.0, 0.0);
            for (var i = 0; i < 1000; i++)
            {
                var part = Still().Step(state, amperes, seconds / 1000, Warm);
                (state, volts, heat) = (part.After, volts + part.MeanVolts / 1000, heat + part.HeatWatts / 1000);
            }

            return Math.Abs(whole.MeanVolts - volts) < 1e-10 && Math.Abs(whole.HeatWatts - heat) < 1e-9 * (1 + heat)
                && Math.Abs(whole.After.SecondVolts - state.SecondVolts) < 1e-12;
        });

    // What leaves the rest voltage goes to the terminals, into heat, or into the branches: exact while the tables stand still.
    [Fact]
    public void Energy_is_neither_lost_nor_found_in_a_step() =>
        Gen.Select(Gen.Double[-10, 20], Gen.Double[0.001, 1000], Gen.Double[-0.1, 0.1], Gen.Double[-0.1, 0.1])
        .Sample((amperes, seconds, first, second) =>
        {
            var cell = Still();
            var before = new CellState(0.5, first, second);
            var step = cell.Step(before, amperes, seconds, Warm);
            var stored = cell.StoredJoules(step.After, Warm) - cell.StoredJoules(before, Warm);
            var balance = (step.RestVolts * amperes - step.Watts - step.HeatWatts) * seconds - stored;
            return step.HeatWatts >= 0 && Math.Abs(balance) < 1e-8 * (1 + Math.Abs(step.RestVolts * amperes * seconds));
        });

    // Handbook, battery, check 27: heat and terminal energy make up the integral of rest voltage times current within 0.1 %.
    [Fact]
    public void Over_a_discharge_heat_and_energy_make_up_what_the_rest_voltage_gave()
    {
        var (state, given, out_) = (CellState.Rested(1), 0.0, 0.0);
        while (state.Charge > 0.02)
        {
            var step = Invented().Step(state, state.Charge > 0.5 ? 9 : 3, 1, Warm);
            given += step.RestVolts * step.Amperes;
            out_ += step.Watts + step.HeatWatts;
            state = step.After;
        }

        Assert.Equal(given, out_ + Invented().StoredJoules(state, Warm), 0.001 * given);
    }

    static double EnergyTo(double cutVolts, CellModel cell, double watts, double kelvins, Func<double, double>? current = null)
    {
        var (state, joules) = (CellState.Rested(1), 0.0);
        while (state.Charge > 0)
        {
            var step = current is null ? cell.StepAtPower(state, watts, 2, kelvins) : cell.Step(state, current(state.Charge), 2, kelvins);
            if (step is not { } done || done.MeanVolts < cutVolts) break;
            joules += done.Watts * 2;
            state = done.After;
        }

        return joules;
    }

    // Handbook, battery, check 27: more cells side by side (less power for each), a warmer cell or a smaller resistance never give less
    // energy, nor does a smaller current.
    // One step of the cut-off is the resolution.
    [Fact]
    public void Less_power_for_each_cell_never_gives_less_energy() =>
        Gen.Select(Gen.Double[5, 40], Gen.Double[0.5, 1], Gen.Double[265, 318]).Sample(
            (watts, part, kelvins) =>
            EnergyTo(2.8, Invented(), watts * part, kelvins) >= EnergyTo(2.8, Invented(), watts, kelvins) - 2 * watts, iter: 40);

    [Fact]
    public void A_warmer_cell_never_gives_less_energy() =>
        Gen.Select(Gen.Double[5, 40], Gen.Double[0, 30], Gen.Double[265, 288]).Sample(
            (watts, more, kelvins) =>
            EnergyTo(2.8, Invented(), watts, kelvins + more) >= EnergyTo(2.8, Invented(), watts, kelvins) - 2 * watts, iter: 40);

    [Fact]
    public void A_smaller_resistance_never_gives_less_energy() =>
        Gen.Select(Gen.Double[5, 40], Gen.Double[0.3, 1]).Sample(
            (watts, part) => EnergyTo(2.8, Invented(part), watts, Warm) >= EnergyTo(2.8, Invented(), watts, Warm) - 2 * watts, iter: 40);

    [Fact]
    public void A_smaller_current_never_gives_less_energy() =>
        Gen.Select(Gen.Double[1, 15], Gen.Double[0.3, 1]).Sample(
            (amperes, part) => EnergyTo(2.8, Invented(), 0, Warm, _ => amperes * part) >= EnergyTo(2.8, Invented(), 0, Warm, _ => amperes)
            - 10 * amperes, iter: 40);

    [Fact]
    public void In_a_discharge_from_rest_the_voltage_never_passes_the_rest_voltage() =>
        Gen.Double[0, 20].Array[1, 200].Sample(currents =>
        {
            var state = CellState.Rested(1);
            foreach (var amperes in currents)
            {
                var step = Invented().Step(state, amperes, 5, Warm);
                if (step.MeanVolts > step.RestVolts + 1e-12 || step.HeatWatts < 0) return false;
                state = step.After;
            }

            return true;
        });

    [Fact]
    public void A_shelf_cell_is_modelled_as_far_as_it_is_known()
    {
        var bare = new Cell { Capacity = Charge.FromAmpereHours(3), RestVoltage = Rest, Resistance = Flat(20) };
        var one = bare with { Polarisation = new Polarisation { R1 = Flat(10), Tau1 = Duration.FromSeconds(30) } };
        var two = one with { Polarisation = one.Polarisation with { R2 = Flat(5), Tau2 = Duration.FromSeconds(300) } };

        Assert.Null(CellModel.Compute(bare).Value.First);
        Assert.Equal(0.020, CellModel.Compute(bare).Value.OhmsAfter(1e9, 0.5, Warm), 1e-12);
        Assert.Equal(0.020 + 0.010 * (1 - Math.Exp(-1)), CellModel.Compute(one).Value.OhmsAfter(30, 0.5, Warm), 1e-12);
        Assert.Equal(0.035, CellModel.Compute(two).Value.OhmsAfter(1e9, 0.5, Warm), 1e-12);
        Assert.False(CellModel.Compute(new Cell { Capacity = Charge.FromAmpereHours(3) }).IsKnown);
        Assert.False(CellModel.Compute(bare with { Polarisation = new Polarisation { R1 = Flat(10) } }).IsKnown);
        Assert.False(CellModel.Compute(two with { Polarisation = two.Polarisation with { Tau2 = default } }).IsKnown);
    }

    [Fact]
    public void What_no_cell_has_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new CellModel(Charge.FromAmpereHours(0), Rest, Flat(1)));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => new CellModel(Charge.FromAmpereHours(1), Rest, Flat(1), new CellBranch(Flat(1), Duration.FromSeconds(0))));
        Assert.Throws<ArgumentException>(
            () => new CellModel(Charge.FromAmpereHours(1), Rest, Flat(1), null, new CellBranch(Flat(1), Duration.FromSeconds(1))));
        Assert.Throws<ArgumentOutOfRangeException>(() => Invented().Step(CellState.Rested(1), 1, -1, Warm));
    }
}
