namespace Boardwright.Bench;

/// <summary>Measures work by the processor time it takes, which other programs on the machine disturb least.</summary>
static class Stint
{
    /// <summary>Processor seconds of one piece of work: the best of several stints of many pieces.</summary>
    public static double SecondsOf(Action work, double stintSeconds = 0.1, int stints = 5)
    {
        var pieces = 1;
        double Once()
        {
            var before = Environment.CpuUsage.TotalTime;
            for (var i = 0; i < pieces; i++)
                work();
            return (Environment.CpuUsage.TotalTime - before).TotalSeconds;
        }

        // Until the compiler has seen enough, and a stint is long against the clock's own grain.
        for (var seconds = 0.0; seconds < stintSeconds;)
        {
            seconds = Once();
            if (seconds < stintSeconds)
                pieces *= 2;
        }

        var best = double.PositiveInfinity;
        for (var i = 0; i < stints; i++)
            best = Math.Min(best, Once() / pieces);
        return best;
    }
}
