namespace Boardwright.Units;

/// <summary>A pressure, or a stress in a solid.</summary>
public readonly record struct Pressure : IQuantity<Pressure>, IComparable<Pressure>
{
    Pressure(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "pressure", "MPa", "75 MPa", 0.0, 1e12,
        [
            new("Pa", 1.0, 0.0, "psi", []),
            new("kPa", 1000.0, 0.0, "psi", []),
            new("MPa", 1000000.0, 0.0, "ksi", ["N/mm2", "N/mm²"]),
            new("GPa", 1000000000.0, 0.0, "ksi", []),
            new("psi", 6894.757293168361, 0.0, null, []),
            new("ksi", 6894757.293168361, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Pressure FromSi(double si) => new(si);

    /// <summary>The value in Pa.</summary>
    public double Pascals => Si;

    /// <summary>From a value in Pa.</summary>
    public static Pressure FromPascals(double pascals) => new(pascals);

    /// <summary>The value in MPa.</summary>
    public double Megapascals => Si / 1000000.0;

    /// <summary>From a value in MPa.</summary>
    public static Pressure FromMegapascals(double megapascals) => new(megapascals * 1000000.0);

    /// <summary>From a value in psi.</summary>
    public static Pressure FromPoundsPerSquareInch(double poundsPerSquareInch) => new(poundsPerSquareInch * 6894.757293168361);

    /// <summary>The sum.</summary>
    public static Pressure operator +(Pressure a, Pressure b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Pressure operator -(Pressure a, Pressure b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Pressure operator -(Pressure a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Pressure operator *(Pressure a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Pressure operator *(double times, Pressure a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Pressure operator /(Pressure a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Pressure a, Pressure b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Pressure a, Pressure b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Pressure a, Pressure b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Pressure a, Pressure b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Pressure a, Pressure b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Pressure other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
