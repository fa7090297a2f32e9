namespace Boardwright.Tests;

/// <summary>How many cases a slow test takes: a quarter in each run, all of them where <c>BOARDWRIGHT_THOROUGH=1</c> asks for it.</summary>
public static class Thorough
{
    /// <summary>Whether all cases are asked for.</summary>
    public static bool IsAsked { get; } = Environment.GetEnvironmentVariable("BOARDWRIGHT_THOROUGH") == "1";

    /// <summary>The number of cases to take of so many.</summary>
    public static int Cases(int all) => IsAsked ? all : all / 4;

    /// <summary>Nine times in ten, as far as so many cases can tell: 85 to 95 of a hundred; of fewer, what no more than one set of cases in
    /// a thousand would miss.</summary>
    public static void IsNineInTen(int inside, int cases, int mostOfHundred = 95)
    {
        var by = cases >= 100 ? 0.05 : 3.3 * Math.Sqrt(0.9 * 0.1 / cases);
        Assert.InRange(inside, (0.9 - by) * cases, cases >= 100 ? mostOfHundred / 100.0 * cases : cases);
    }
}
