using System.Diagnostics;
using System.Globalization;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.Spreads;

namespace Boardwright.Bench;

/// <summary>How fast rides are, against what is promised: printed without a harness, in processor time, so that one run tells
/// all.</summary>
static class RideTimes
{
    const int Boards = 512;

    /// <summary>Times rides and prints a table.</summary>
    public static void Print(TextWriter to)
    {
        string Line(string what, double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{what,-52}{value,12:0.00} {unit}");
        var board = TernExample.WithTwoBranches().WithNames();
        var model = RideModel.Compute(board).Value;
        foreach (var (name, course) in new[] { ("level", RideBench.Level(model)), ("hilly", RideBench.Hilly(model)) })
        {
            long steps = 0;
            var seconds = Stint.SecondsOf(() => steps = RideBench.Hour(model, course).Steps);
            to.WriteLine(Line($"An hour's {name} ride, steps for each second of a core", steps / seconds / 1e6, "M/s"));
            var simulation = new Simulation(model, course, RideBench.AnHour);
            simulation.Advance();
            var before = GC.GetAllocatedBytesForCurrentThread();
            simulation.Run();
            var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            to.WriteLine(Line($"  allocated by its {simulation.Steps} steps", allocated, "B"));
        }

        // As the example stands: sampling moves every entry that is uncertain, and builds each board anew.
        var tern = TernExample.Read().WithNames();
        var route = RideBench.Hills();
        RideSpread.Sample(tern, route, points: 64);
        var (watch, processor) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        RideSpread.Sample(tern, route, points: Boards);
        var (wall, busy) = (watch.Elapsed.TotalSeconds, (Environment.CpuUsage.TotalTime - processor).TotalSeconds);
        to.WriteLine(Line("Sampled rides of 30 km, for each second of a core", Boards / busy, "/s"));
        to.WriteLine(Line("  10 000 of them on two cores, from processor time", 10_000 / (Boards / busy) / 2, "s"));
        to.WriteLine(Line("  the same from wall time, beside other programs", 10_000 / (Boards / wall), "s"));
    }
}
