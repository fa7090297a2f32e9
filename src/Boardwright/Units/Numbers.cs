namespace Boardwright.Units;

/// <summary>A plain number, such as a ratio or a coefficient; a percent sign may be used.</summary>
public readonly record struct Number : IQuantity<Number>
{
    public static Dimension Dimension { get; } = new(
        "number", "", "0.014", -1e6, 1e6, [new("", 1), new("%", 0.01)]);

    public double Si { get; private init; }
    public static Number FromSi(double si) => new() { Si = si };
    public int CompareTo(Number other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in plain number.</summary>
    public double Value => Si;
    /// <summary>From a value in plain number.</summary>
    public static Number FromValue(double value) => FromSi(value);
}

/// <summary>A part of a whole, or a slope (rise over run); written with a percent sign.</summary>
public readonly record struct Fraction : IQuantity<Fraction>
{
    public static Dimension Dimension { get; } = new(
        "fraction", "%", "12 %", -10, 10, [new("%", 0.01)]);

    public double Si { get; private init; }
    public static Fraction FromSi(double si) => new() { Si = si };
    public int CompareTo(Fraction other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in plain number.</summary>
    public double Value => Si;
    /// <summary>From a value in plain number.</summary>
    public static Fraction FromValue(double value) => FromSi(value);
    /// <summary>The value in %.</summary>
    public double Percent => Si / 0.01;
    /// <summary>From a value in %.</summary>
    public static Fraction FromPercent(double percent) => FromSi(percent * 0.01);
}
