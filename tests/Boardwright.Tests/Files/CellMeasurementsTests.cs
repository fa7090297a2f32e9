using Boardwright.App.Commands;
using Boardwright.Files.Cells;
using Boardwright.Packs;
using Boardwright.Tests.Packs;

namespace Boardwright.Tests.Files;

public sealed class CellMeasurementsTests
{
    const string Header = "# a comment, 1,2\ntime_s,current_A,voltage_V,discharged_Ah,case_temp_C\n";

    [Fact]
    public void Rows_are_read_in_their_units()
    {
        var (measured, complaints) = CellMeasurements.ReadText("\n# c\r\ntime_min, current_mA,note,voltage_mV,counter_mAh,cell_temp_mid_C\r\n0,1500,5,4100,0,25\r\n1,-500,x,4000,25,26\r\n", "folder/pulses.csv");

        Assert.Empty(complaints);
        Assert.Equal("pulses.csv", measured!.Name);
        Assert.Equal(CellRecordKind.Samples, measured.Kind);
        Assert.Equal(new CellReading(60, -0.5, 4, double.NaN, 90, 299.15), measured.Readings[1]);
    }

    [Theory]
    [InlineData("discharged_Ah", CellRecordKind.Samples)]
    [InlineData("counter_Ah", CellRecordKind.Samples)]
    [InlineData("charged_Ah", CellRecordKind.Charge)]
    [InlineData("power_W", CellRecordKind.Means)]
    public void The_count_says_what_the_rows_are(string column, CellRecordKind kind) =>
        Assert.Equal(kind, CellMeasurements.ReadText($"time_s,current_A,voltage_V,{column}\n0,1,4,0\n1,1,4,0\n", "f.csv", Temperature.FromCelsius(20)).Measurement!.Kind);

    [Theory]
    [InlineData(Header + "0,1,4,0,25\n1,1,4,0,warm\n", "f.csv:4:9: case_temp_C: 'warm' is not a number.")]
    [InlineData(Header + "0,1,4,0,25\n1,1,,0,25\n", "f.csv:4:5: voltage_V: '' is not a number.")]
    [InlineData(Header + "0,1,4,0,25\n1,1,4\n", "f.csv:4:6: discharged_Ah: The row has 3 fields, and 5 are named.")]
    [InlineData(Header + "0,1,4,0,25\n1,1,4,0,25,7\n", "f.csv:4:12: The row has more than the 5 fields that are named.")]
    [InlineData(Header + "5,1,4,0,25\n1,1,4,0,25\n", "f.csv:4:1: time: Time runs back here.")]
    [InlineData(Header + "0,1,4,0,25\n", "f.csv:3:1: A measurement needs at least two rows of numbers.")]
    [InlineData("# nothing\n", "f.csv:1:1: The file holds no row of names.")]
    [InlineData("time_s,current_A\n0,1\n", "f.csv:1:1: voltage: There is no column of voltage.")]
    [InlineData("time_s,current_A,voltage_V,discharged_Ah\n0,1,4,0\n", "f.csv:1:1: case_temp: There is no column of temperature.")]
    [InlineData("time_s,current_bar,voltage_V\n0,1,4\n", "f.csv:1:8: current_bar: The name does not end in a unit of current.")]
    [InlineData("time_s,current,voltage_V\n0,1,4\n", "f.csv:1:8: current: The name does not end in a unit of current.")]
    [InlineData("time_s,current_A,time_min,voltage_V\n0,1,0,4\n", "f.csv:1:18: time_min: There are two columns of time.")]
    public void What_is_wrong_is_told_with_its_place(string text, string told)
    {
        var (measured, complaints) = CellMeasurements.ReadText(text, "f.csv");

        Assert.Null(measured);
        Assert.StartsWith(told, Assert.Single(complaints).ToString(), StringComparison.Ordinal);
        Assert.NotEmpty(complaints[0].Remedy);
    }

    [Fact]
    public void A_file_full_of_faults_is_not_told_to_its_end()
    {
        var text = Header + string.Concat(Enumerable.Repeat("x,1,4,0,25\n", 5000));

        Assert.InRange(CellMeasurements.ReadText(text, "f.csv").Complaints.Count, 5, 50);
    }
}

public sealed class CellBenchTests : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("boardwright-cells-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    string Write(string name, CellMeasurement measured, string count = "discharged_Ah")
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, Table(measured, count));
        return path;
    }

    internal static string Table(CellMeasurement measured, string count = "discharged_Ah") =>
        $"time_s,current_A,voltage_V,{count},case_temp_C\n" + string.Concat(measured.Readings.Select(r =>
            FormattableString.Invariant($"{r.Seconds},{r.Amperes},{r.Volts:0.000000},{r.Coulombs / 3600:0.000000},{r.Kelvins - 273.15:0.00}\n")));

    static (int Code, string Out, string Error) Run(params string[] words)
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        var code = CellCommands.Build().Parse(words).Invoke(new() { Output = output, Error = error });
        return (code, output.ToString(), error.ToString());
    }

    [Fact]
    public void A_cell_is_fitted_written_and_replayed_from_the_command_line()
    {
        var cell = CellModelTests.Invented();
        var (pulses, discharge) = (Write("pulses.csv", CellFitTests.Pulses(cell, 25), "counter_Ah"), Write("one.csv", CellFitTests.Discharge(cell, 25, 3)));
        var other = Write("other.csv", CellFitTests.Discharge(cell, 25, 6));
        var shelf = Path.Combine(folder, "shelf.yaml");

        var fitted = Run("fit", pulses, discharge, "--name", "larkmere", "--out", shelf);
        Assert.Equal((0, ""), (fitted.Code, fitted.Error));
        Assert.Contains("larkmere: ", fitted.Out, StringComparison.Ordinal);
        Assert.Contains("kind: cell", File.ReadAllText(shelf), StringComparison.Ordinal);

        var replayed = Run("replay", shelf, other);
        Assert.Equal((0, ""), (replayed.Code, replayed.Error));
        Assert.Contains("other.csv", replayed.Out, StringComparison.Ordinal);
        // Twice the largest current of the fit's discharge; the steep end, where the places of the fit lie too far apart, is left out.
        Assert.InRange(CellBench.Replay(shelf, null, [other]).Replays[0].RmsVoltsAboveTenth, 0, 0.005);
    }

    [Fact]
    public void Without_a_file_to_write_the_part_follows_the_report()
    {
        var discharge = Write("one.csv", CellFitTests.Discharge(CellModelTests.Invented(), 25, 3));

        Assert.Contains("- id: fitted-cell\n  kind: cell\n", Run("fit", discharge).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Files_that_do_not_suit_are_complained_about_and_nothing_is_fitted()
    {
        var drive = Path.Combine(folder, "drive.csv");
        File.WriteAllText(drive, "time_s,current_A,voltage_V,power_W,case_temp_C\n0,1,4,4,25\n1,1,4,4,25\n");
        var turned = Write("turned.csv", CellFitTests.Logged("t", CellModelTests.Invented(), 25, [(-1, 60)]));

        Assert.Equal(2, Run("fit", drive).Code);
        Assert.Contains("means over time", Run("fit", drive).Error, StringComparison.Ordinal);
        Assert.Contains("Hardly any charge", Run("fit", turned).Error, StringComparison.Ordinal);
        Assert.Contains("There is no such file", Run("fit", Path.Combine(folder, "none.csv")).Error, StringComparison.Ordinal);
        Assert.Contains("--temperature", Run("fit", drive, "--temperature", "25 V").Error, StringComparison.Ordinal);
        Assert.Contains("--name", Run("fit", drive, "--name", "a b").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shelf_without_the_cell_is_complained_about()
    {
        var shelf = Path.Combine(folder, "shelf.yaml");
        var log = Write("one.csv", CellFitTests.Discharge(CellModelTests.Invented(), 25, 3));

        File.WriteAllText(shelf, "- { id: a, kind: cell, capacity: 3 Ah }\n- { id: b, kind: cell, capacity: 3 Ah }\n");
        Assert.Contains("several cells in this file: a, b", Run("replay", shelf, log).Error, StringComparison.Ordinal);
        Assert.Contains("There is no cell 'c'", Run("replay", shelf, log, "--id", "c").Error, StringComparison.Ordinal);
        Assert.Contains("It needs capacity, rest_voltage and resistance", Run("replay", shelf, log, "--id", "a").Error, StringComparison.Ordinal);
        File.WriteAllText(shelf, "- { id: a, kind: fuse }\n");
        Assert.Contains("There is no cell in this file", Run("replay", shelf, log).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Branches_on_a_shelf_may_be_values_or_tables()
    {
        var shelf = Path.Combine(folder, "shelf.yaml");
        var log = Write("one.csv", CellFitTests.Discharge(CellModelTests.Invented(), 25, 3));
        File.WriteAllText(shelf, """
            - id: a
              kind: cell
              capacity: 3 Ah
              rest_voltage: { 0 %: 3 V, 100 %: 4.2 V }
              resistance: 20 mohm
              polarisation: { R1: 12 mohm, tau1: 30 s, R2: { 0 %: 30 mohm, 100 %: 20 mohm }, tau2: 300 s }
            """);

        Assert.Empty(CellBench.Replay(shelf, null, [log]).Complaints);
    }
}
