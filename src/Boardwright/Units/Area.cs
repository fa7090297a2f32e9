namespace Boardwright.Units;

/// <summary>An area: a drag area or the copper section of a wire.</summary>
public readonly record struct Area : IQuantity<Area>, IComparable<Area>
{
    Area(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "area", "mm2", "5.3 mm2", 0.0, 10.0,
        [
            new("m2", 1.0, 0.0, "ft2", ["m²", "sq m"]),
            new("mm2", 1e-06, 0.0, null, ["mm²", "sq mm"]),
            new("cm2", 0.0001, 0.0, "in2", ["cm²"]),
            new("in2", 0.00064516, 0.0, null, ["in²"]),
            new("ft2", 0.09290304, 0.0, null, ["ft²"]),
        ]);

    /// <inheritdoc/>
    public static Area FromSi(double si) => new(si);

    /// <summary>The value in m2.</summary>
    public double SquareMetres => Si;

    /// <summary>From a value in m2.</summary>
    public static Area FromSquareMetres(double squareMetres) => new(squareMetres);

    /// <summary>The value in mm2.</summary>
    public double SquareMillimetres => Si / 1e-06;

    /// <summary>From a value in mm2.</summary>
    public static Area FromSquareMillimetres(double squareMillimetres) => new(squareMillimetres * 1e-06);

    /// <summary>The value in cm2.</summary>
    public double SquareCentimetres => Si / 0.0001;

    /// <summary>The value in in2.</summary>
    public double SquareInches => Si / 0.00064516;

    /// <summary>From a value in in2.</summary>
    public static Area FromSquareInches(double squareInches) => new(squareInches * 0.00064516);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Area a, Area b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Area a, Area b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Area a, Area b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Area a, Area b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Area other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
