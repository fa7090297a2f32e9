using System.Globalization;
using Boardwright.Validation;

namespace Boardwright.Tests;

/// <summary>Compares with a number as its source prints it.</summary>
public static class Printed
{
    /// <summary>Asserts that a value rounds to the print: at most half a unit of its last digit away.</summary>
    public static void Matches(string printed, double value) =>
        Assert.True(new PrintedNumber(printed).Covers(value), string.Create(CultureInfo.InvariantCulture, $"Printed {printed}, computed {value}."));
}
