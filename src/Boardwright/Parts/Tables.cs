using Boardwright.Numerics;

namespace Boardwright.Parts;

/// <summary>What a table says, as plain numbers: two of one kind with the same numbers say the same.</summary>
interface ITable
{
    /// <summary>All numbers, in SI units and in a fixed order.</summary>
    IEnumerable<double> Numbers { get; }
}

/// <summary>A list of quantities of one dimension.</summary>
public sealed class Quantities<T>(IReadOnlyList<T> items)
    where T : struct, IQuantity<T>
{
    /// <summary>The quantities, in the order of the file.</summary>
    public IReadOnlyList<T> Items { get; } = items;
}

/// <summary>A list of words.</summary>
public sealed class Texts(IReadOnlyList<string> items)
{
    /// <summary>The words, in the order of the file.</summary>
    public IReadOnlyList<string> Items { get; } = items;
}

/// <summary>A quantity given at some values of another: a monotone cubic runs between the points, and beyond them the end value
/// holds.</summary>
public sealed class Curve<TX, TY> : ITable
    where TX : struct, IQuantity<TX>
    where TY : struct, IQuantity<TY>
{
    readonly MonotoneCubic line;

    /// <summary>Through points in SI units.</summary>
    /// <exception cref="ArgumentException">Fewer than two points, or two at the same place.</exception>
    public Curve(IEnumerable<(double X, double Y)> points)
    {
        Points = [.. points.OrderBy(p => p.X).Select(p => (TX.FromSi(p.X), TY.FromSi(p.Y)))];
        line = new MonotoneCubic([.. Points.Select(p => p.X.Si)], [.. Points.Select(p => p.Y.Si)]);
    }

    /// <summary>The given points, in rising order of the first variable.</summary>
    public IReadOnlyList<(TX X, TY Y)> Points { get; }
    /// <summary>The value at a place.</summary>
    public TY At(TX x) => TY.FromSi(line.At(x.Si));
    /// <summary>The value at a place, all in SI; for loops.</summary>
    public double At(double si) => line.At(si);
    /// <summary>Whether the points reach a place.</summary>
    public bool Covers(TX x) => x.Si >= Points[0].X.Si - 1e-12 && x.Si <= Points[^1].X.Si + 1e-12;

    IEnumerable<double> ITable.Numbers => Points.SelectMany(p => new[] { p.X.Si, p.Y.Si });

    internal Curve<TX, TY> Scaled(double times) => new(Points.Select(p => (p.X.Si, p.Y.Si * times)));
}

/// <summary>A cell's resistance: one value, or a table over state of charge, or over state of charge and temperature.</summary>
/// <remarks>Between states of charge it is linear; between temperatures the logarithm is linear in 1/T, the shape of an activated process.
/// Beyond the ends the end value holds.</remarks>
public sealed class ResistanceTable : ITable
{
    readonly Grid? grid;
    readonly Polyline? line;
    readonly double everywhere;

    /// <summary>One value for every state.</summary>
    public ResistanceTable(Resistance single) : this([Fraction.FromPercent(50)], [], [[single]])
    {
    }

    /// <summary>A table.</summary>
    /// <param name="charges">States of charge, rising.</param>
    /// <param name="temperatures">Temperatures, rising; empty when the resistance is given over charge alone.</param>
    /// <param name="values">For each state of charge one value for each temperature, or just one when there are no temperatures.</param>
    public ResistanceTable(IReadOnlyList<Fraction> charges, IReadOnlyList<Temperature> temperatures,
        IReadOnlyList<IReadOnlyList<Resistance>> values)
    {
        (Charges, Temperatures, Values) = (charges, temperatures, values);
        if (temperatures.Count > 1)
        {
            // One row alone holds at every state of charge.
            var rows = charges.Count > 1 ? [.. charges.Select(c => c.Value)] : new[] { 0.0, 1.0 };
            var cells = charges.Count > 1 ? values : [values[0], values[0]];
            grid = Grid.LogarithmicInReciprocal(
                rows, [.. temperatures.Select(t => t.Kelvins)], [.. cells.SelectMany(row => row).Select(r => r.Ohms)]);
        }
        else if (charges.Count > 1)
            line = new Polyline([.. charges.Select(c => c.Value)], [.. values.Select(row => row[0].Ohms)]);
        else
            everywhere = values[0][0].Ohms;
    }

    /// <summary>States of charge of the rows.</summary>
    public IReadOnlyList<Fraction> Charges { get; }
    /// <summary>Temperatures of the columns; empty when the resistance is given over charge alone.</summary>
    public IReadOnlyList<Temperature> Temperatures { get; }
    /// <summary>The given resistances, a row for each state of charge.</summary>
    public IReadOnlyList<IReadOnlyList<Resistance>> Values { get; }
    /// <summary>The resistance at a state of charge and a temperature.</summary>
    public Resistance At(Fraction charge, Temperature temperature) => Resistance.FromOhms(At(charge.Value, temperature.Kelvins));

    /// <summary>The resistance in ohm at a state of charge (0 to 1) and a temperature in kelvin; for loops.</summary>
    public double At(double charge, double kelvins) =>
        grid is not null ? grid.At(charge, kelvins) : line is not null ? line.At(charge) : everywhere;

    /// <summary>Whether the table reaches a state; a single value is taken to hold everywhere, and a table without temperatures at every
    /// temperature.</summary>
    public bool Covers(Fraction charge, Temperature temperature) =>
        (Charges.Count < 2 || (charge >= Charges[0] && charge <= Charges[^1]))
        && (Temperatures.Count < 2 || (temperature >= Temperatures[0] && temperature <= Temperatures[^1]));

    IEnumerable<double> ITable.Numbers =>
        [.. Charges.Select(c => c.Value), .. Temperatures.Select(t => t.Kelvins), .. Values.SelectMany(row => row).Select(r => r.Ohms)];

    internal ResistanceTable Scaled(double times) =>
        new(Charges, Temperatures, [.. Values.Select(row => (IReadOnlyList<Resistance>)[.. row.Select(r => r * times)])]);
}

/// <summary>What the road is made of.</summary>
[Spaced]
public enum Surface
{
    /// <summary>Smooth asphalt.</summary>
    SmoothAsphalt,
    /// <summary>Coarse asphalt.</summary>
    RoughAsphalt,
    /// <summary>Paving stones.</summary>
    Paving,
    /// <summary>Packed gravel.</summary>
    PackedGravel,
}

/// <summary>A wheel's rolling resistance: one number for every surface, or one for each surface that somebody knows.</summary>
public sealed class RollingTable(Number? everywhere, IReadOnlyDictionary<Surface, Number> bySurface) : ITable
{
    /// <summary>One number for every surface.</summary>
    public Number? Everywhere { get; } = everywhere;
    /// <summary>The numbers by surface.</summary>
    public IReadOnlyDictionary<Surface, Number> BySurface { get; } = bySurface;

    /// <summary>The coefficient on a surface.</summary>
    /// <returns>The coefficient, or <c>null</c> when the table does not have the surface.</returns>
    public Number? On(Surface surface) => Everywhere ?? (BySurface.TryGetValue(surface, out var number) ? number : null);

    IEnumerable<double> ITable.Numbers =>
        [Everywhere?.Value ?? double.NaN, .. BySurface.OrderBy(p => p.Key).SelectMany(p => new[] { (double)p.Key, p.Value.Value })];

    internal RollingTable Scaled(double times) => new(
        Everywhere is { } number ? Number.FromValue(number.Value * times) : null,
        BySurface.ToDictionary(p => p.Key, p => Number.FromValue(p.Value.Value * times)));
}
