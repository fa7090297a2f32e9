using System.Globalization;
using Boardwright.Examinations;
using Boardwright.Files.Cells;
using Boardwright.Packs;
using Boardwright.Parts;

namespace Boardwright.Tests.Packs;

/// <summary>Fits and replays of a measured cell. The files lie beside the checked-out project; where they do not, the tests are
/// skipped.</summary>
public sealed class MeasuredCellTests(MeasuredCellTests.Fits fits) : IClassFixture<MeasuredCellTests.Fits>
{
    static string Folder()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            foreach (var place in new[] { at.FullName, Path.Combine(at.FullName, "shared") })
            {
                if (Path.Combine(place, "data", "cells") is var cells && Directory.Exists(cells)) return cells;
            }
        }

        Assert.Skip("The measured cells are not here: no folder shared/data/cells beside or above this project.");
        return "";
    }

    static string FileOf(string name) => Path.Combine(Folder(), $"{name}.csv");

    static IReadOnlyList<CellMeasurement> Read(params string[] names)
    {
        var (measurements, complaints) = CellMeasurements.Read([.. names.Select(FileOf)], Temperature.FromCelsius(25));
        Assert.Empty(complaints);
        return measurements;
    }

    /// <summary>Fits are made once, as each takes seconds.</summary>
    public sealed class Fits
    {
        readonly Lazy<CellFit> warm = new(() => CellFit.Fit("warm", Read("lg_hg2/hppc_25C", "lg_hg2/cc_25C_0p5C", "lg_hg2/cc_25C_1C")));
        readonly Lazy<CellFit> cold = new(() => CellFit.Fit("cold", Read("lg_hg2/hppc_0C", "lg_hg2/cc_0C_0p5C", "lg_hg2/cc_0C_1C")));
        readonly Lazy<CellFit> both = new(() => CellFit.Fit("both", Read(
            "lg_hg2/hppc_25C", "lg_hg2/cc_25C_0p5C", "lg_hg2/cc_25C_1C", "lg_hg2/hppc_0C", "lg_hg2/cc_0C_0p5C", "lg_hg2/cc_0C_1C")));

        public CellFit Warm => warm.Value;

        public CellFit Cold => cold.Value;

        public CellFit Both => both.Value;
    }

    static void Holds(CellModel model, string drive, double millivolts, double energyPart)
    {
        var replay = CellReplay.Replay(model, Read(drive)[0]);
        Assert.True(replay.RmsVolts * 1000 <= millivolts, $"{drive}: {replay.RmsVolts * 1000:0.0} mV");
        Assert.True(Math.Abs(replay.EnergyError) <= energyPart, $"{drive}: {replay.EnergyError * 100:0.00} %");
    }

    // Kollmeyer et al. 2020. Fitted to pulses and constant current; no drive was used. The limits are the goal set before: 15 mV and 0.5 %.
    [Theory]
    [InlineData("lg_hg2/drive_25C_UDDS")]
    [InlineData("lg_hg2/drive_25C_LA92")]
    [InlineData("lg_hg2/drive_25C_Mixed1")]
    public void Drives_at_25_degrees_are_foretold(string drive)
    {
        Holds(fits.Warm.Model, drive, 15, 0.005);
        Holds(fits.Both.Model, drive, 15, 0.005);
    }

    // The goal set before: 45 mV and 1.5 %.
    [Fact]
    public void A_drive_at_0_degrees_is_foretold()
    {
        Holds(fits.Cold.Model, "lg_hg2/drive_0C_LA92", 45, 0.015);
        Holds(fits.Both.Model, "lg_hg2/drive_0C_LA92", 45, 0.015);
    }

    // The goal set before: 80 mV and 3.5 %.
    [Theory]
    [InlineData("lg_hg2/drive_25C_UDDS")]
    [InlineData("lg_hg2/drive_25C_LA92")]
    [InlineData("lg_hg2/drive_25C_Mixed1")]
    public void Two_curves_alone_foretell_a_drive_more_roughly(string drive)
    {
        var curves = Read("lg_hg2/cc_25C_0p5C", "lg_hg2/cc_25C_2C");
        Holds(TwoCurveModel.Create("two", curves[0], curves[1]).Model, drive, 80, 0.035);
    }

    // Handbook, battery, check 22: 34.3, 39.5 and 43.5 mΩ at 0.5, 1.4 and 2.3 Ah, to 0.5 mΩ.
    [Theory]
    [InlineData(0.5, 34.3)]
    [InlineData(1.4, 39.5)]
    [InlineData(2.3, 43.5)]
    public void Two_curves_give_the_resistance_worked_out(double amperehours, double milliohms)
    {
        var curves = Read("lg_hg2/cc_25C_0p5C", "lg_hg2/cc_25C_2C");
        var model = TwoCurveModel.Create("two", curves[0], curves[1]).Model;

        Assert.Equal(milliohms, 1000 * model.OhmsAfter(0, 1 - amperehours / model.Capacity.AmpereHours, 298.15), 0.5);
    }

    // Handbook, battery, check 24: another program's replay of other parameters, 1 mV and 0.1 %.
    [Theory]
    [InlineData("lg_hg2/drive_25C_UDDS", 9.29, 9.4426)]
    [InlineData("lg_hg2/drive_25C_LA92", 9.17, 9.2863)]
    [InlineData("lg_hg2/drive_25C_Mixed1", 11.06, 9.2767)]
    public void Given_parameters_replay_as_they_did_elsewhere(string drive, double millivolts, double wattHours)
    {
        static double[][] Rows(string name) =>
        [
            .. File.ReadLines(FileOf(name)).Where(l => l[0] != '#').Skip(1)
                .Select(l => l.Split(',').Select(f => double.Parse(f, CultureInfo.InvariantCulture)).ToArray())
                .OrderByDescending(r => r[0]),
        ];
        double[] kelvins = [290, 310];
        var branches = Rows("lg_hg2/fitted_25C_2RC");
        ResistanceTable Column(int column) => new(
            [.. branches.Select(r => Fraction.FromValue(1 - r[0]))],
            [.. kelvins.Select(Temperature.FromKelvins)],
            [.. branches.Select(r => (IReadOnlyList<Resistance>)[.. kelvins.Select(
            k => Resistance.FromOhms(r[column] * Math.Exp(2500 * (1 / k - 1 / 298.15))))])]);
        var model = new CellModel(
            Charge.FromAmpereHours(2.78), new Curve<Fraction, Voltage>(Rows("lg_hg2/fitted_25C_ocv").Select(r => (1 - r[0], r[1]))), Column(1),
            new CellBranch(Column(2), Duration.FromSeconds(4)), new CellBranch(Column(3), Duration.FromSeconds(120)));
        var replay = CellReplay.Replay(model, Read(drive)[0]);

        Assert.Equal(millivolts, replay.RmsVolts * 1000, 1.0);
        Assert.Equal(wattHours, replay.Model.WattHours, 0.001 * wattHours);
    }

    // Handbook, battery, check 12: 10 s resistance at 3 A and some 55 % charge, 54 mΩ at 0 °C and 27 mΩ at 25 °C. It falls to 25.9 and 47.8
    // mΩ at the 18 A of the largest
    // pulses, which weigh most in the fit, and the model has one value for all currents: hence 15 % in the cold and 10 % in the warm,
    // downwards. The pulses were fitted, so this is no forecast.
    [Fact]
    public void The_fitted_resistance_after_ten_seconds_is_that_of_the_pulses()
    {
        Assert.InRange(1000 * fits.Warm.Model.OhmsAfter(10, 0.55, 298.15), 27 * 0.9, 27);
        Assert.InRange(1000 * fits.Cold.Model.OhmsAfter(10, 0.55, 273.15), 54 * 0.85, 54);
    }

    // The goal set before: 2 % with the tau of one charge. Widanage 2021: four charges of one cell, the tau of the first of them that
    // followed a discharge at 0.5C.
    [Theory]
    [InlineData("lg_m50/charge_25C_after_0p1C")]
    [InlineData("lg_m50/charge_25C_after_1C")]
    [InlineData("lg_m50/charge_25C_after_2C")]
    public void The_time_of_a_charge_follows_from_the_tail_of_another(string name)
    {
        var tail = MeasuredCharge.Measure(Read("lg_m50/charge_25C_after_0p5C")[0])!;
        var other = MeasuredCharge.Measure(Read(name)[0])!;
        var foretold = new ChargeTail(other.Charged, other.Current, other.EndCurrent, tail.Decay).Total!.Value;

        Assert.Equal(other.Duration.Seconds, foretold.Seconds, 0.02 * other.Duration.Seconds);
    }

    // The same charges, asked of a board of one such cell.
    [Theory]
    [InlineData("lg_m50/charge_25C_after_0p1C")]
    [InlineData("lg_m50/charge_25C_after_1C")]
    [InlineData("lg_m50/charge_25C_after_2C")]
    public void A_board_whose_cell_has_a_measured_tail_says_the_measured_time(string name)
    {
        var tail = MeasuredCharge.Measure(Read("lg_m50/charge_25C_after_0p5C")[0])!;
        var other = MeasuredCharge.Measure(Read(name)[0])!;
        string Said(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:0.0000} {unit}");
        var board = Boards.Tern.With(
            ("pack.series", "1"), ("pack.parallel", "1"), ("charger.voltage", "4.2 V"), ("cell.capacity", Said(other.Charged.AmpereHours, "Ah")),
            ("charger.current", Said(other.Current.Amperes, "A")), ("charger.end_current", Said(other.EndCurrent.Amperes, "A")), ("cell.charge_tail", Said(tail.Decay.Seconds, "s")));

        Assert.Equal(other.Duration.Seconds, Examination.Examine(board).Charge.Value.Full.Seconds, 0.02 * other.Duration.Seconds);
    }

    // Handbook, battery, check 6: 87.6 minutes, 2.732 Ah.
    [Fact]
    public void A_charge_is_read_with_its_time_and_charge()
    {
        var tail = MeasuredCharge.Measure(Read("lg_hg2/charge_25C_Charge2")[0])!;

        Assert.Equal(87.6, tail.Duration.Seconds / 60, 0.1);
        Assert.Equal(2.732, tail.Charged.AmpereHours, 0.0005);
        Assert.Equal(635.3, tail.Decay.Seconds, 10.0); // from the whole time; the handbook's is of several charges
    }

    [Fact]
    public void A_cell_written_to_a_shelf_and_read_back_replays_the_same()
    {
        string[] drives = [FileOf("lg_hg2/drive_25C_LA92"), FileOf("lg_hg2/drive_0C_LA92")];
        var shelf = Path.Combine(Path.GetTempPath(), $"boardwright-{Guid.NewGuid():N}.yaml");
        try
        {
            File.WriteAllText(shelf, CellText.Shelf(fits.Both));
            var outcome = CellBench.Replay(shelf, "both", drives);

            Assert.Empty(outcome.Complaints);
            foreach (var (read, direct) in outcome.Replays.Zip(
                drives.Select(d => CellReplay.Replay(fits.Both.Model, CellMeasurements.Read([d]).Measurements[0]))))
                Assert.Equal(direct.RmsVolts, read.RmsVolts, 0.00005); // the shelf is written to a tenth of a millivolt
        }
        finally
        {
            File.Delete(shelf);
        }
    }
}
