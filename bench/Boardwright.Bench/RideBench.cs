using BenchmarkDotNet.Attributes;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.Spreads;

namespace Boardwright.Bench;

/// <summary>Rides of Tern with two-branch cells, at the usual step, and rides of many boards like it.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class RideBench
{
    const int Boards = 64;

    readonly RideModel model = RideModel.Compute(TernExample.WithTwoBranches().WithNames()).Value;
    readonly Board tern = TernExample.Read().WithNames();
    readonly Route hills = Hills();
    RideCourse level = null!, hilly = null!;

    /// <summary>An hour and no longer.</summary>
    internal static RideOptions AnHour { get; } = new() { Longest = Duration.FromHours(1) };
    /// <summary>30 km over twelve hills of 30 m.</summary>
    internal static Route Hills() => Route.Loop(Length.FromKilometres(30), Length.FromMetres(30), 12);

    internal static RideCourse Level(RideModel model) => RideCourse.Level(model.Pace);

    internal static RideCourse Hilly(RideModel model) => RideCourse.Create(Hills(), model.Pace);

    internal static Simulation Hour(RideModel model, RideCourse course)
    {
        var simulation = new Simulation(model, course, AnHour);
        simulation.Run();
        return simulation;
    }

    [GlobalSetup]
    public void LayOut() => (level, hilly) = (Level(model), Hilly(model));

    [Benchmark(Baseline = true)]
    public long LevelHour() => Hour(model, level).Steps;

    [Benchmark]
    public long HillyHour() => Hour(model, hilly).Steps;

    [Benchmark(OperationsPerInvoke = Boards)]
    public int SampledRide() => RideSpread.Sample(tern, hills, points: Boards).Value.Intervals.Count;
}
