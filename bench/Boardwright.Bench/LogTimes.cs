using System.Diagnostics;
using System.Globalization;
using System.Text;
using Boardwright.Files.Logs;

namespace Boardwright.Bench;

/// <summary>How fast the log of a long ride is read, against what is promised.</summary>
static class LogTimes
{
    const int Rows = 1_000_000;
    const int Times = 5;

    /// <summary>Times readings and prints a table.</summary>
    public static void Print(TextWriter to)
    {
        foreach (var (name, log) in new[] { ("times in ms, decimal points", Made(',', '.', static i => FormattableString.Invariant($"{i * 100L}"))),
            ("times of day, decimal commas", Made(';', ',', static i => FormattableString.Invariant($"2026-05-03 {TimeSpan.FromMilliseconds(i * 80L):hh\\:mm\\:ss\\.fff}"))) })
        {
            var (first, best, wall) = (double.NaN, double.PositiveInfinity, double.PositiveInfinity);
            for (var i = 0; i < Times; i++)
            {
                var (watch, before) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
                var reading = RideLogFile.Read(log, "log.csv");
                var (busy, waited) = ((Environment.CpuUsage.TotalTime - before).TotalSeconds, watch.Elapsed.TotalSeconds);
                if (reading.Log?.Count != Rows)
                    throw new InvalidOperationException($"{name}: not every row was read.");
                (first, best, wall) = (double.IsNaN(first) ? busy : first, Math.Min(best, busy), Math.Min(wall, waited));
            }

            to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"A million rows of eight columns, {name,-30}{log.Length / 1e6,6:0.0} MB: processor {first:0.00} s the first time, {best:0.00} s at best; wall {wall:0.00} s at best"));
        }
    }

    static byte[] Made(char delimiter, char mark, Func<int, string> time)
    {
        var text = new StringBuilder(string.Join(delimiter, "time", "speed_kmh", "pack_voltage_V", "pack_current_A", "phase_current_A", "duty_percent", "motor_temp_C", "controller_temp_C")).Append('\n');
        for (var i = 0; i < Rows; i++)
            text.Append(CultureInfo.InvariantCulture, $"{time(i)}{delimiter}{i % 400 / 10}{mark}{i % 10}{delimiter}48{mark}{i % 7}1{delimiter}12{mark}25{delimiter}-{i % 60}{mark}5{delimiter}55{mark}1{delimiter}41{mark}5{delimiter}38{mark}2\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
