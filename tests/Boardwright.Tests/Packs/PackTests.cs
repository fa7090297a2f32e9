using Boardwright.Packs;
using Boardwright.Parts;
using CsCheck;

namespace Boardwright.Tests.Packs;

public sealed class ChargeTailTests
{
    static readonly ChargeTail Measured = new(
        Charge.FromAmpereHours(2.732), Current.FromAmperes(3), Current.FromMilliamperes(50), Duration.FromSeconds(635.3));

    // Kollmeyer's LG HG2 at 25 °C, charge 2: 87.6 min measured, constant current over before 44.0 min in a log of one line a minute.
    [Fact]
    public void A_measured_charge_is_met()
    {
        Assert.Equal(87.6, Measured.Total!.Value.Minutes, 0.05);
        Assert.Equal(44.23, Measured.ConstantCurrent!.Value.Minutes, 0.005);
        Assert.Equal(43.35, Measured.ConstantVoltage.Minutes, 0.005);
        Assert.Equal(0.521, Measured.AtConstantVoltage.AmpereHours, 0.0005);
    }

    // Charge is kept: constant current times its time, and the decaying current's integral.
    [Fact]
    public void The_two_parts_hold_the_missing_charge() =>
        Gen.Select(Gen.Double[0.5, 20], Gen.Double[0.5, 8], Gen.Double[0.01, 0.9], Gen.Double[30, 2000])
        .Sample((missing, current, part, decay) =>
        {
            var charge = new ChargeTail(
                Charge.FromAmpereHours(missing), Current.FromAmperes(current), Current.FromAmperes(current * part),
                Duration.FromSeconds(decay));
            return charge.ConstantCurrent is not { } first
                || Math.Abs(first.Seconds * current + charge.AtConstantVoltage.Coulombs - charge.Missing.Coulombs) < 1e-6;
        });

    [Fact]
    public void A_nearly_full_pack_is_outside_the_form() =>
        Assert.Null((Measured with { Missing = Charge.FromAmpereHours(0.1) }).Total);
}

public sealed class CellGroupTests
{
    [Fact]
    public void Twelve_by_four_cells()
    {
        var group = new CellGroup(12, 4);

        Assert.Equal(43.2, group.Voltage(Voltage.FromVolts(3.6)).Volts, 1e-12);
        Assert.Equal(50.4, group.Voltage(Voltage.FromVolts(4.2)).Volts, 1e-12);
        Assert.Equal(11.8, group.Capacity(Charge.FromAmpereHours(2.95)).AmpereHours, 1e-12);
        Assert.Equal(509.8, group.Energy(Charge.FromAmpereHours(2.95), Voltage.FromVolts(3.6)).WattHours, 0.05);
        Assert.Equal(2.304, group.Mass(Mass.FromGrams(48)).Kilograms, 1e-12);
        Assert.Equal(60, group.Current(Current.FromAmperes(15)).Amperes, 1e-12);
    }

    [Fact]
    public void Ten_by_three_cells_sag()
    {
        var group = new CellGroup(10, 3);
        var pack = new LoadedPack(Voltage.FromVolts(36), group.Resistance(Resistance.FromMilliohms(30)));
        var current = Current.FromAmperes(40);

        Assert.Equal(0.1, pack.Resistance.Ohms, 1e-12);
        Assert.Equal(4.00, pack.Sag(current).Volts, 1e-12);
        Assert.Equal(160, pack.Heat(current).Watts, 1e-9);
        Assert.Equal(5.33, group.PerCell(current).Amperes * group.PerCell(current).Amperes * 0.030, 0.005);
    }

    static readonly LoadedPack Forty = new(Voltage.FromVolts(40), Resistance.FromOhms(0.1));

    [Fact]
    public void A_power_is_drawn_at_the_higher_voltage()
    {
        Assert.Equal(32.668, Forty.CurrentAt(Power.FromWatts(1200))!.Value.Amperes, 0.0005);
        Assert.Equal(36.733, Forty.VoltageAt(Power.FromWatts(1200))!.Value.Volts, 0.0005);
        Assert.Equal(4000, Forty.GreatestPower.Watts, 1e-9);
        Assert.Equal(200, Forty.CurrentAt(Power.FromWatts(4000))!.Value.Amperes, 1e-9);
    }

    [Fact]
    public void More_than_the_greatest_power_cannot_be_drawn() => Assert.Null(Forty.CurrentAt(Power.FromWatts(4001)));

    [Fact]
    public void Power_at_the_terminals_is_what_was_asked_for() =>
        Gen.Double[-3000, 4000].Sample(watts =>
        {
            var (voltage, current) = (Forty.VoltageAt(Power.FromWatts(watts))!.Value, Forty.CurrentAt(Power.FromWatts(watts))!.Value);
            return Math.Abs(voltage.Volts * current.Amperes - watts) < 1e-9
                && Math.Abs(40 - current.Amperes * 0.1 - voltage.Volts) < 1e-9;
        });
}

public sealed class PackModelTests
{
    [Fact]
    public void A_pack_sags_by_all_that_a_lasting_current_meets()
    {
        var (pack, cell) = (PackModel.Compute(Boards.Tern).Value, CellModel.Compute(Boards.Tern.Parts.Cell).Value);
        foreach (var charge in new[] { 0.1, 0.37, 0.5, 1 })
            Assert.Equal(12.0 / 4 * cell.OhmsAfter(double.PositiveInfinity, charge, pack.Temperature.Kelvins), pack.CellOhmsAt(charge),
                1e-12);
    }

    // Constant current for twenty time constants, near half charge: what is lost is I times the pack's resistance.
    [Fact]
    public void The_cell_model_ends_at_the_packs_steady_voltage()
    {
        var board = Boards.Tern.With(("cell.polarisation.R1", "11 mohm"), ("cell.polarisation.tau1", "2 s"), ("cell.polarisation.R2", "9 mohm"), ("cell.polarisation.tau2", "3 s"));
        var (pack, cell) = (PackModel.Compute(board).Value, CellModel.Compute(board.Parts.Cell).Value);
        var state = CellState.Rested(0.5);
        for (var i = 0; i < 60; i++)
            state = cell.Step(state, 2, 1, pack.Temperature.Kelvins).After;

        Assert.Equal(2 * pack.CellOhmsAt(state.Charge) * 4 / 12,
            cell.RestVoltsAt(state.Charge) - cell.VoltsAt(state, 2, pack.Temperature.Kelvins), 1e-5);
    }

    [Fact]
    public void A_cell_without_branches_has_its_one_resistance()
    {
        var board = Boards.Tern.With(("cell.polarisation.R1", ""), ("cell.polarisation.tau1", ""), ("cell.resistance", "24 mohm"));

        Assert.Equal(12.0 / 4 * 0.024, PackModel.Compute(board).Value.CellOhmsAt(0.5), 1e-12);
    }
}

public sealed class CellBodyTests
{
    static CellBody Cell(double diameter, double length, double grams) =>
        new(Length.FromMillimetres(diameter), Length.FromMillimetres(length), CellBody.HeatCapacityOf(Mass.FromGrams(grams), 960));

    [Theory]
    [InlineData(18.4, 65.2, 43.0, 17.3)]
    [InlineData(21.2, 70.2, 53.8, 24.8)]
    public void Round_cells_have_this_surface_and_volume(double diameter, double length, double squareCentimetres, double cubicCentimetres)
    {
        var cell = Cell(diameter, length, 48);

        Assert.Equal(squareCentimetres, cell.Surface.SquareCentimetres, 0.05);
        Assert.Equal(cubicCentimetres, cell.Litres * 1000, 0.05);
    }

    [Fact]
    public void A_cell_warms_as_in_the_hand_calculation()
    {
        var cell = Cell(18.4, 65.2, 48);
        var air = cell.ToAir(10);

        Assert.Equal(46.1, cell.Capacity.JoulesPerKelvin, 0.05);
        Assert.Equal(0.109, cell.AdiabaticKelvinsPerSecond(Power.FromWatts(12 * 12 * 0.035)), 0.0005);
        Assert.Equal(23.25, air.KelvinsPerWatt, 0.01);
        Assert.Equal(1071, cell.TimeConstant(air).Seconds, 0.5);
        Assert.Equal(29.9, cell.Rise(Power.FromWatts(3), air, Duration.FromSeconds(600)).Kelvins, 0.05);
        Assert.Equal(69.8, cell.Rise(Power.FromWatts(3), air, Duration.FromHours(100)).Kelvins, 0.05);
    }

    [Fact]
    public void A_nickel_strip_has_a_milliohm()
    {
        var strip = new Strip(Length.FromMillimetres(0.15), Length.FromMillimetres(8), Length.FromMillimetres(20), 6.99e-8);

        Assert.Equal(1.165, strip.Resistance.Milliohms, 0.0005);
        Assert.Equal(29, strip.Heat(Current.FromAmperes(5)).Milliwatts, 0.5);
        Assert.Equal(6, strip.Rise(Current.FromAmperes(5), 15).Kelvins, 0.5);
    }
}

public sealed class PolarisationBranchTests
{
    static readonly PolarisationBranch Quick = new(Resistance.FromMilliohms(5), Duration.FromSeconds(4));
    static readonly PolarisationBranch Slow = new(Resistance.FromMilliohms(10), Duration.FromSeconds(120));

    static double Drop(double seconds, int steps)
    {
        var (quick, slow) = (Voltage.FromVolts(0), Voltage.FromVolts(0));
        var (current, step) = (Current.FromAmperes(10), Duration.FromSeconds(seconds / steps));
        for (var i = 0; i < steps; i++)
            (quick, slow) = (Quick.After(quick, current, step), Slow.After(slow, current, step));
        return 150 + (quick + slow).Millivolts;
    }

    // 10 A on 15 mohm, 5 mohm with 4 s and 10 mohm with 120 s, worked out by hand.
    [Theory]
    [InlineData(1, 161.890)]
    [InlineData(10, 203.891)]
    [InlineData(60, 239.347)]
    [InlineData(600, 299.326)]
    public void A_step_of_current_matches_the_hand_calculation(double seconds, double millivolts) =>
        Assert.Equal(millivolts, Drop(seconds, 1), 0.0005);

    [Fact]
    public void The_length_of_the_step_does_not_matter() => Assert.Equal(Drop(600, 60), Drop(600, 6000), 1e-3);
}

public sealed class PackRangeTests
{
    [Fact]
    public void Nine_tenths_of_500_watt_hours_reach_30_kilometres() =>
        Assert.Equal(30, PackRange.Compute(
        Energy.FromWattHours(500), Fraction.FromPercent(90), EnergyPerDistance.FromWattHoursPerKilometre(15)).Kilometres, 1e-9);
}
