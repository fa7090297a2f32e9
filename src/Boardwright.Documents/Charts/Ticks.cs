using System.Globalization;
using static System.Math;

namespace Boardwright.Documents.Charts;

/// <summary>Round numbers along an axis.</summary>
static class Ticks
{
    static readonly double[] Decimal = [1, 2, 5];
    static readonly double[] OfSixty = [1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 240, 300, 600];

    /// <summary>The least round step with which a span has no more than a number of steps: 1, 2 or 5 times a power of ten, or a part or
    /// multiple of sixty for minutes and seconds.</summary>
    /// <param name="span">Length of the axis, above 0.</param>
    /// <param name="most">Greatest number of steps, at least 1.</param>
    /// <param name="isOfSixty">Whether the numbers are minutes or seconds.</param>
    public static double Step(double span, int most, bool isOfSixty = false)
    {
        if (!(span > 0) || !double.IsFinite(span))
            throw new ArgumentOutOfRangeException(nameof(span), span, "An axis has a finite length above 0.");
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        var least = span / most;
        if (isOfSixty && least > 0.5)
        {
            foreach (var step in OfSixty)
            {
                if (step >= least * (1 - 1e-9))
                    return step;
            }
        }

        var power = (int)Floor(Log10(least));
        for (; ; power++)
        {
            foreach (var factor in Decimal)
            {
                // Negative powers by division: a product with 0.1 would not be the decimal number that is nearest.
                var step = power >= 0 ? factor * Pow(10, power) : factor / Pow(10, -power);
                if (step >= least * (1 - 1e-9))
                    return step;
            }
        }
    }

    /// <summary>The multiples of a step from one value to another, both ends included.</summary>
    public static IReadOnlyList<double> Between(double low, double high, double step)
    {
        var (first, last) = (Ceiling(low / step - 1e-6), Floor(high / step + 1e-6));
        var ticks = new List<double>();
        for (var k = first; k <= last; k++)
            ticks.Add(step < 1 ? k / Round(1 / step, 9) : k * step);
        return ticks;
    }

    /// <summary>A tick as text, with as many decimals as its step has and a true minus sign.</summary>
    public static string Write(double tick, double step)
    {
        var decimals = 0;
        while (decimals < 12 && Abs(step * Pow(10, decimals) - Round(step * Pow(10, decimals))) > 1e-6 * step * Pow(10, decimals))
            decimals++;
        var rounded = Round(tick, decimals) + 0.0;
        return rounded.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('-', '−');
    }
}
