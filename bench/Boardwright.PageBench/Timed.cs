using System.Globalization;

namespace Boardwright.PageBench;

/// <summary>Times of the same thing done many times, ms.</summary>
/// <param name="what">The thing.</param>
/// <param name="target">What 95 of 100 times are to stay below, ms; not a number for none.</param>
sealed class Timed(string what, double target)
{
    readonly List<double> times = [];

    public void Add(double milliseconds) => times.Add(milliseconds);

    public void Print(TextWriter output) =>
        output.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"{what,-58} n {times.Count,3}   median {At(0.5),6:0}   p95 {At(0.95),6:0}   worst {times.Max(),6:0}{(double.IsNaN(target) ? "" : FormattableString.Invariant($"   target p95 {target,5:0} ms  {(At(0.95) <= target ? "reached" : "MISSED")}"))}"));

    double At(double part) => times.Order().ElementAt((int)Math.Ceiling(part * times.Count) - 1);
}
