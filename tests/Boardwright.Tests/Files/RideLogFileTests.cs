using System.Text;
using Boardwright.Files;
using Boardwright.Files.Logs;
using Boardwright.Logs;

namespace Boardwright.Tests.Files;

public sealed class RideLogFileTests
{
    static RideLogReading Read(string text, LogWishes? wishes = null) => RideLogFile.Read(Encoding.UTF8.GetBytes(text), "ride.csv", wishes);

    static RideLog Log(string text, LogWishes? wishes = null)
    {
        var reading = Read(text, wishes);
        Assert.True(reading.Log is not null, string.Join("; ", reading.Complaints));
        return reading.Log;
    }

    [Theory]
    [InlineData("time_s,speed_kmh,pack_voltage_V,pack_current_A,phase_current_A,duty_percent,motor_temp_C")]
    [InlineData("Time (s);Speed [km/h];Battery voltage (V);Battery current (A);Motor current (A);Duty cycle (%);Temp motor (°C)")]
    [InlineData("Seconds\tSpeed km/h\tV_in (V) voltage\tCurrent in (A)\tPhase current A\tDuty %\tMotor temperature °C")]
    [InlineData("elapsed s|GPS Speed (kph)|input voltage|input current|motor current|duty (%)|motorTemp")]
    public void Columns_are_found_by_the_words_and_units_of_their_names(string header)
    {
        var mark = header.First(c => ",;\t|".Contains(c, StringComparison.Ordinal));
        var log = Log($"{header}\n0,36,50,10,40,50,25\n1,18,49.5,-2,-8,25,26\n".Replace(',', mark));

        Assert.Equal(10, log.Speeds[0]!.Value.MetresPerSecond, 1e-12);
        Assert.Equal(49.5, log.PackVoltages[1]!.Value.Volts);
        Assert.Equal(-2, log.PackCurrents[1]!.Value.Amperes);
        Assert.Equal(40, log.PhaseCurrents[0]!.Value.Amperes);
        Assert.Equal(0.25, log.Duties[1]!.Value.Value, 1e-12);
        Assert.Equal(26, log.MotorTemperatures[1]!.Value.Celsius, 1e-9);
        Assert.Equal(1, log.Lasting.Seconds);
    }

    [Theory]
    [InlineData("speed_mph", "10", 4.4704)]
    [InlineData("speed_m/s", "10", 10)]
    [InlineData("Speed (m/s)", "10", 10)]
    public void Units_of_speed_are_told_apart(string name, string written, double metresPerSecond) =>
        Assert.Equal(metresPerSecond, Log($"time_s,{name}\n0,{written}\n1,{written}\n").Speeds[0]!.Value.MetresPerSecond, 1e-12);

    [Theory]
    [InlineData("time_s", "0", "1.5", 1.5)]
    [InlineData("time_ms", "1000", "2500", 1.5)]
    [InlineData("timestamp", "1700000000", "1700000002", 2)]
    [InlineData("timestamp", "1700000000000", "1700000000200", 0.2)]
    [InlineData("time", "100", "300", 0.2)]
    [InlineData("time", "23:59:59.5", "00:00:00.7", 1.2)]
    [InlineData("time", "2026-03-01 12:00:00", "2026-03-01 12:01:02", 62)]
    [InlineData("time", "2026-02-28T23:59:59Z", "2026-03-01T00:00:01Z", 2)]
    [InlineData("time", "31.12.2025 23:59:58", "01.01.2026 00:00:00", 2)]
    [InlineData("time", "2026-03-01T12:00:00.250+01:00", "2026-03-01T11:00:01.500Z", 1.25)]
    public void Times_are_seconds_milliseconds_or_a_clock(string name, string first, string second, double apart) =>
        // A time after 1970 in seconds is only known to a quarter of a microsecond.
        Assert.Equal(apart, Log($"{name},speed_kmh\n{first},1\n{second},2\n").Lasting.Seconds, 1e-5);

    [Fact]
    public void Times_that_may_be_either_are_asked_about()
    {
        const string Text = "time,speed_kmh\n0,1\n5,2\n10,3\n";

        Assert.Contains("seconds or milliseconds", Assert.Single(Read(Text).Complaints).Says, StringComparison.Ordinal);
        Assert.Equal(10, Log(Text, new() { Time = TimeForm.Seconds }).Lasting.Seconds);
        Assert.Equal(0.01, Log(Text, new() { Time = TimeForm.Milliseconds }).Lasting.Seconds, 1e-12);
    }

    [Fact]
    public void A_comma_that_may_part_thousands_or_decimals_is_asked_about()
    {
        const string Text = "time_s;pack_voltage_V\n0;1,234\n1;1,235\n";

        var complaint = Assert.Single(Read(Text).Complaints);
        Assert.Equal(2, complaint.Line);
        Assert.Contains("1,234", complaint.Says, StringComparison.Ordinal);
        Assert.Equal(1.234, Log(Text, new() { DecimalMark = ',' }).PackVoltages[0]!.Value.Volts);
        Assert.Equal(1234, Log(Text, new() { DecimalMark = '.' }).PackVoltages[0]!.Value.Volts);
    }

    [Theory]
    [InlineData("1,234", "0,5", 1.234)]
    [InlineData("1,234", "12,25", 1.234)]
    [InlineData("1,234", "1.234,5", 1.234)]
    [InlineData("1,234", "0.5", 1234)]
    [InlineData("1,234", "1,234.5", 1234)]
    [InlineData("1.234", "0,5", 1234)]
    [InlineData("1.234", "0.5", 1.234)]
    public void One_number_that_can_be_read_in_one_way_only_settles_the_others(string doubtful, string clear, double meant) =>
        Assert.Equal(meant, Log($"time_s;pack_voltage_V\n0;{doubtful}\n1;{clear}\n").PackVoltages[0]!.Value.Volts);

    [Fact]
    public void Decimal_points_beside_decimal_commas_are_refused() =>
        Assert.Contains("decimal comma", Assert.Single(Read("time_s;pack_voltage_V\n0;50,5\n1;50.5\n").Complaints).Says, StringComparison.Ordinal);

    [Fact]
    public void Decimal_commas_between_commas_are_not_taken_for_more_fields()
    {
        var reading = Read("time_s,pack_voltage_V\n0,0,50,5\n1,0,50,4\n");

        Assert.Null(reading.Log);
        Assert.Contains("semicolons", Assert.Single(reading.Complaints).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_rows_are_counted_and_listed_and_the_rest_is_read()
    {
        var reading = Read("# of a test\ntime_s,speed_kmh,pack_voltage_V\n0,1,50\n1,x,50\n2,2\n3,,50\n2.5,3,50\n,,\nlater,3,50\n4,3,49\n4,5,49\n5,3,49\n6,3,49\n");

        Assert.Equal([4, 5, 7, 9, 11], reading.BadRows.Select(b => b.Line));
        Assert.Equal(5, reading.BadRowCount);
        Assert.Equal(1, reading.EmptyRowCount);
        Assert.Equal(10, reading.RowCount);
        Assert.Equal(reading.RowCount, reading.Log!.Count + reading.BadRowCount);
        Assert.Equal([0.0, 3, 4, 5, 6], reading.Log.Seconds.ToArray());
        Assert.Null(reading.Log.Speeds[1]);
    }

    [Fact]
    public void One_clock_that_jumps_ahead_does_not_take_the_rest_with_it()
    {
        var reading = Read("time_s,speed_kmh\n0,1\n1,2\n90000,3\n2,4\n3,5\n");

        Assert.Equal(4, Assert.Single(reading.BadRows).Line);
        Assert.Equal([0.0, 1, 2, 3], reading.Log!.Seconds.ToArray());
    }

    [Fact]
    public void Rows_finer_than_their_clock_are_parted_evenly_and_that_is_said()
    {
        var reading = Read("time,speed_kmh\n12:00:00,1\n12:00:00,2\n12:00:01,3\n12:00:01,4\n12:00:02,5\n12:00:02,6\n");

        Assert.Equal([0.0, 0.5, 1, 1.5, 2, 2.5], reading.Log!.Seconds.ToArray());
        Assert.Contains(reading.Notes, n => n.Contains("coarser", StringComparison.Ordinal));
    }

    [Fact]
    public void The_mapping_is_shown_and_can_be_overridden()
    {
        const string Text = "time_s,speed,foo,temperature\n0,36,41,20\n1,36,42,20\n";
        var proposed = Read(Text);

        Assert.True(proposed.Mapping!.Columns[1].IsAssumed);
        Assert.Null(proposed.Mapping.Columns[2].Channel);
        Assert.Contains("does not say of what", proposed.Mapping.Columns[3].Why, StringComparison.Ordinal);
        var stated = Log(Text, new()
        {
            Columns = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase) { ["speed"] = "speed m/s", ["foo"] = "pack-voltage V", ["temperature"] = "air-temperature °C" },
        });
        Assert.Equal(36, stated.Speeds[0]!.Value.MetresPerSecond);
        Assert.Equal(42, stated.PackVoltages[1]!.Value.Volts);
        Assert.Equal(293.15, stated.AirTemperatures[0]!.Value.Kelvins, 1e-9);
        Assert.Contains("not a channel",
            Assert.Single(Read(Text, new() { Columns = new Dictionary<string, string>(StringComparer.Ordinal) { ["foo"] = "warp" } }).Complaints)
            .Says, StringComparison.Ordinal);
        Assert.Contains("no column",
            Assert.Single(Read(Text, new() { Columns = new Dictionary<string, string>(StringComparer.Ordinal) { ["bar"] = "speed" } }).Complaints)
            .Says, StringComparison.Ordinal);
    }

    [Fact]
    public void Shares_and_per_cent_are_told_by_their_values()
    {
        Assert.Equal(0.6, Log("time_s,duty\n0,0.6\n1,0.95\n").Duties[0]!.Value.Value, 1e-12);
        Assert.Equal(0.6, Log("time_s,duty\n0,60\n1,95\n").Duties[0]!.Value.Value, 1e-12);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("hello")]
    [InlineData("a,b\n1,2\n")]
    [InlineData("time_s,colour\n1,2\n2,3\n")]
    [InlineData("time_s,speed_kmh\n")]
    [InlineData("time_s,speed_kmh\n0,1\n")]
    public void What_is_no_log_is_refused_in_words(string text)
    {
        var reading = Read(text);

        Assert.Null(reading.Log);
        Assert.NotEmpty(Assert.Single(reading.Complaints).Remedy);
    }

    [Fact]
    public void A_million_rows_are_all_read()
    {
        var text = new StringBuilder("time_ms,speed_kmh,pack_voltage_V,pack_current_A,phase_current_A,duty_percent,motor_temp_C\n");
        for (var i = 0; i < 1_000_000; i++)
            text.Append(i * 100).Append(',').Append(i % 400 / 10).Append('.').Append(i % 10).Append(",48.").Append(i % 7).Append(",12.25,-3.5,55,41.5\n");
        var reading = Read(text.ToString());

        Assert.Equal(1_000_000, reading.Log!.Count);
        Assert.Equal(0, reading.BadRowCount);
        Assert.Equal(99_999.9, reading.Log.Lasting.Seconds, 1e-9);
    }

    [Fact]
    public void Gaps_stay_gaps_when_a_log_is_resampled()
    {
        var log = new RideLog("", [0, 1, 2, 10, 11.5, 13],
            new Dictionary<Channel, double[]> { [Channel.Speed] = [0, 2, double.NaN, 5, 8, 8] }, [5]);
        var even = log.Resampled(Duration.FromSeconds(0.5), Duration.FromSeconds(3));

        Assert.Equal([0, 0.5, 1, 1.5, 2, 10, 10.5, 11, 11.5, 13], even.Seconds.ToArray());
        Assert.Equal([0, 1, 2, double.NaN, double.NaN, 5, 6, 7, 8, 8], even.Si(Channel.Speed).ToArray());
        Assert.Equal([5, 9], even.Breaks);
        Assert.Equal([(0, 3), (3, 5), (5, 6)], log.Stretches(Duration.FromSeconds(3)));
    }
}
