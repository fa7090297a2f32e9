using Boardwright.Documents.Charts;
using CsCheck;

namespace Boardwright.Tests.Documents;

public sealed class DecimationTests
{
    static readonly Gen<(double[] Steps, double[] Y, int Columns)> Lines =
        Gen.Int[3, 400].SelectMany(n => Gen.Select(Gen.Double[0, 1].Array[n], Gen.Double[-10, 10].Array[n], Gen.Int[1, 60]));

    [Fact]
    public void Every_column_keeps_its_first_least_greatest_and_last_point() => Lines.Sample((steps, y, columns) =>
    {
        var x = Places(steps);
        var (from, to) = (x[0], x[^1] + 1e-9);
        var kept = Decimation.Reduce(x, y, from, to, columns);
        return Enumerable.Range(0, x.Length).GroupBy(i => (int)((x[i] - from) * (columns / (to - from)))).All(column =>
        {
            var there = column.Intersect(kept).ToList();
            return there.Min(i => y[i]) == column.Min(i => y[i]) && there.Max(i => y[i]) == column.Max(i => y[i])
                && there.Contains(column.First()) && there.Contains(column.Last());
        });
    });

    [Fact]
    public void Points_stay_in_order_and_are_at_most_four_a_column() => Lines.Sample((steps, y, columns) =>
    {
        var x = Places(steps);
        var kept = Decimation.Reduce(x, y, x[0], x[^1] + 1e-9, columns);
        return kept.Count <= Math.Max(2, 4) * columns && kept.Zip(kept.Skip(1)).All(p => p.First < p.Second);
    });

    [Fact]
    public void Few_points_are_all_kept() => Assert.Equal([0, 1, 2], Decimation.Reduce([0, 1, 2], [5, 5, 5], 0, 2, 100));

    static double[] Places(double[] steps)
    {
        var x = new double[steps.Length];
        for (var i = 1; i < x.Length; i++)
            x[i] = x[i - 1] + steps[i];
        return x;
    }
}
