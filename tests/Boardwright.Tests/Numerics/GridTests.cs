using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class GridTests
{
    // Rounding of a few operations, relative to the value.
    const double Rounding = 1e-14;

    [Fact]
    public void A_law_of_Arrhenius_is_read_back_exactly_between_its_temperatures() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[253.15, 333.15]).Sample((charge, kelvin) =>
        {
            static double Ohms(double charge, double kelvin) => (0.02 - 0.005 * charge) * Math.Exp(2500 * (1 / kelvin - 1 / 298.15));
            double[] charges = [0, 1], kelvins = [253.15, 273.15, 298.15, 333.15];
            var grid = Grid.LogarithmicInReciprocal(charges, kelvins, [.. charges.SelectMany(_ => kelvins, Ohms)]);
            return Math.Abs(grid.At(charge, kelvin) / Ohms(charge, kelvin) - 1) < Rounding;
        });

    // By hand: 1/y halfway between 1/200 and 1/400 is 1/266.67; half the logarithm from 1 to 4 is the geometric mean, 2.
    [Fact]
    public void Halfway_in_the_reciprocal_lies_the_geometric_mean() =>
        Assert.Equal(2, Grid.LogarithmicInReciprocal([0, 1], [200, 400], [1, 4, 1, 4]).At(0, 800 / 3.0), 2 * Rounding);

    [Fact]
    public void Entries_are_read_back_as_they_were_written()
    {
        double[] x = [0, 0.3, 1], y = [250, 298.15, 330], z = [1, 2, 3, 4, 5, 6, 7, 8, 9];
        var grid = Grid.LogarithmicInReciprocal(x, y, z);

        for (var i = 0; i < 9; i++)
            Assert.Equal(z[i], grid.At(x[i / 3], y[i % 3]));
    }

    [Fact]
    public void Beyond_an_edge_the_edge_holds()
    {
        var grid = Grid.LogarithmicInReciprocal([0, 1], [200, 400], [1, 2, 3, 4]);

        Assert.Equal(grid.At(0, 300), grid.At(-5, 300));
        Assert.Equal(grid.At(0.4, 400), grid.At(0.4, 900));
        Assert.Equal(3, grid.At(9, 0));
        Assert.Equal(double.NaN, grid.At(double.NaN, 300));
        Assert.Equal(double.NaN, grid.At(0, double.NaN));
    }

    [Fact]
    public void Tables_that_cannot_be_read_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Grid.LogarithmicInReciprocal([0, 1], [200, 300], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => Grid.LogarithmicInReciprocal([], [200, 300], []));
        Assert.Throws<ArgumentException>(() => Grid.LogarithmicInReciprocal([1, 0], [200, 300], [1, 2, 3, 4]));
        Assert.Throws<ArgumentException>(() => Grid.LogarithmicInReciprocal([0, 1], [298.15], [1, 2]));
        Assert.Throws<ArgumentException>(() => Grid.LogarithmicInReciprocal([0, 1], [0, 300], [1, 2, 3, 4]));
        Assert.Throws<ArgumentException>(() => Grid.LogarithmicInReciprocal([0, 1], [200, 300], [1, 2, 0, 4]));
    }
}
