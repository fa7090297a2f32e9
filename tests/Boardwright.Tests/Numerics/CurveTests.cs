using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class CurveTests
{
    // Rounding of a few operations on values of order 1.
    const double Rounding = 1e-14;

    static readonly Gen<(double[] X, double[] Y)> Points =
        Gen.Select(Gen.Double[-10, 10], Gen.Double[0.01, 3].Array[1, 12], Gen.Double[-5, 5].Array[13]).Select((start, widths, values) =>
        {
            var x = new double[widths.Length + 1];
            x[0] = start;
            for (var i = 0; i < widths.Length; i++) x[i + 1] = x[i] + widths[i];
            return (x, values[..x.Length]);
        });

    static IEnumerable<PointLine> Both(double[] x, double[] y) => [new Polyline(x, y), new MonotoneCubic(x, y)];

    [Fact]
    public void Curves_go_through_their_points() =>
        Points.Sample(points => Both(points.X, points.Y).All(curve =>
            points.X.Zip(points.Y).All(point => Math.Abs(curve.At(point.First) - point.Second) <= Rounding)));

    [Fact]
    public void Between_two_points_a_curve_stays_between_their_values() =>
        Gen.Select(Points, Gen.Double[0, 1]).Sample((points, along) => Both(points.X, points.Y).All(curve =>
            Enumerable.Range(0, points.X.Length - 1).All(i =>
            {
                var value = curve.At(points.X[i] + along * (points.X[i + 1] - points.X[i]));
                return value >= Math.Min(points.Y[i], points.Y[i + 1]) - Rounding
                    && value <= Math.Max(points.Y[i], points.Y[i + 1]) + Rounding;
            })));

    [Fact]
    public void Rising_points_give_a_rising_curve() =>
        Points.Sample(points =>
        {
            Array.Sort(points.Y);
            var curve = new MonotoneCubic(points.X, points.Y);
            var step = (curve.End - curve.Start) / 500;
            return Enumerable.Range(0, 500).All(i => curve.At(curve.Start + (i + 1) * step) >= curve.At(curve.Start + i * step) - Rounding
                // A slope of order 1000 rounds in its thirteenth digit.
                && curve.Slope(curve.Start + i * step) >= -1e-10);
        });

    [Fact]
    public void The_slope_is_the_limit_of_the_chord() =>
        Gen.Select(Points, Gen.Double[0.01, 0.99]).Sample((points, along) => Both(points.X, points.Y).All(curve =>
        {
            const double half = 1e-6;
            var x = points.X[0] + along * (points.X[1] - points.X[0]);
            var chord = (curve.At(x + half) - curve.At(x - half)) / (2 * half);
            // Rounding of values of order 10 over 2e-6; the third derivative, up to 1e7 for the narrowest pieces, times half²/6.
            return Math.Abs(chord - curve.Slope(x)) < 1e-4;
        }));

    [Fact]
    public void The_slope_of_a_cubic_does_not_jump_at_a_point()
    {
        double[] x = [0, 1, 1.5, 3, 4], y = [0, 1, 4, 4.5, 2];
        var curve = new MonotoneCubic(x, y);

        foreach (var knot in x[1..^1])
            Assert.Equal(curve.Slope(knot - 1e-9), curve.Slope(knot), 1e-7); // 1e-9 times a curvature below 100
    }

    [Fact]
    public void A_peak_lies_on_its_point()
    {
        var curve = new MonotoneCubic([0, 1, 2, 3], [0, 2, 1, 5]);

        Assert.Equal(0, curve.Slope(1));
        Assert.Equal(0, curve.Slope(2));
    }

    [Fact]
    public void Two_points_give_a_straight_line()
    {
        foreach (var curve in Both([1, 3], [10, 4]))
        {
            Assert.Equal(8.5, curve.At(1.5), Rounding);
            Assert.Equal(-3, curve.Slope(1), Rounding);
            Assert.Equal(-3, curve.Slope(2.9), Rounding);
            Assert.Equal(-3, curve.Slope(3), Rounding);
        }
    }

    [Fact]
    public void A_cubic_through_a_gentle_parabola_is_the_parabola()
    {
        double[] x = [1, 1.7, 2, 3.2, 4];
        var curve = new MonotoneCubic(x, [.. x.Select(static v => v * v)]);

        for (var at = 1.0; at <= 4; at += 0.05)
        {
            Assert.Equal(at * at, curve.At(at), Rounding);
            Assert.Equal(2 * at, curve.Slope(at), 10 * Rounding); // slopes divide by widths below 1
        }
    }

    [Fact]
    public void Half_the_spacing_gives_an_eighth_of_the_error()
    {
        double Worst(int pieces)
        {
            var x = Enumerable.Range(0, pieces + 1).Select(i => (double)i / pieces).ToArray();
            var curve = new MonotoneCubic(x, [.. x.Select(Math.Exp)]);
            return Enumerable.Range(0, 4001).Max(i => Math.Abs(curve.At(i / 4000.0) - Math.Exp(i / 4000.0)));
        }

        // The order, 3, within the twentieth that pieces this short leave.
        Assert.Equal(3, Math.Log2(Worst(64) / Worst(128)), 0.05);
    }

    // The limiter at work, by hand: means 0 | 1 | 0.1. The slope at x = 1 is 0 beside a level piece; free slopes at 2 and 3
    // are (1 + 0.1) / 2 = 0.55 and 0.1 + (0.1 − 1) / 2 < 0, so 0. On the last piece 0.55 is 5.5 times the mean: limited to 3.
    [Fact]
    public void A_slope_too_steep_for_its_piece_is_limited_to_three_times_the_mean()
    {
        var curve = new MonotoneCubic([0, 1, 2, 3], [0, 0, 1, 1.1]);

        Assert.Equal(0, curve.At(0.5));
        Assert.Equal(0, curve.Slope(1));
        Assert.Equal(0.3, curve.Slope(2), Rounding);
        Assert.Equal(0, curve.Slope(3), Rounding);
    }

    [Fact]
    public void Beyond_the_ends_the_end_value_holds_and_is_not_covered()
    {
        foreach (var curve in Both([0, 1, 2], [5, 7, 6]))
        {
            Assert.Equal(5, curve.At(-100));
            Assert.Equal(6, curve.At(100));
            Assert.Equal(0, curve.Slope(-1));
            Assert.Equal(0, curve.Slope(2.1));
            Assert.Equal(0, curve.Start);
            Assert.Equal(2, curve.End);
            Assert.True(curve.Covers(0));
            Assert.True(curve.Covers(2));
            Assert.False(curve.Covers(-1e-9));
            Assert.False(curve.Covers(2.0000001));
            Assert.False(curve.Covers(double.NaN));
            Assert.Equal(double.NaN, curve.At(double.NaN));
            Assert.Equal(double.NaN, curve.Slope(double.NaN));
        }
    }

    [Fact]
    public void A_polyline_takes_the_slope_to_the_right_of_a_point()
    {
        var line = new Polyline([0, 1, 3], [0, 2, 3]);

        Assert.Equal(2, line.Slope(0));
        Assert.Equal(0.5, line.Slope(1));
        Assert.Equal(0.5, line.Slope(3));
        Assert.Equal(2.5, line.At(2));
    }

    [Fact]
    public void Points_that_make_no_curve_are_refused()
    {
        (double[] X, double[] Y)[] wrong =
        [
            ([1], [1]), ([1, 1], [1, 2]), ([2, 1], [1, 2]), ([1, 2], [1]), ([1, 2], [1, 2, 3]),
            ([1, double.NaN], [1, 2]), ([1, 2], [1, double.PositiveInfinity]),
        ];
        foreach (var (x, y) in wrong)
        {
            Assert.Throws<ArgumentException>(() => new Polyline(x, y));
            Assert.Throws<ArgumentException>(() => new MonotoneCubic(x, y));
        }
    }

    [Fact]
    public void A_curve_keeps_its_own_copy_of_the_points()
    {
        double[] x = [0, 1], y = [0, 1];
        var curves = Both(x, y).ToArray();
        (x[1], y[1]) = (50, 50);

        Assert.All(curves, static curve => Assert.Equal(0.5, curve.At(0.5)));
    }
}
