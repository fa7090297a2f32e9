namespace Boardwright.Units;

/// <summary>A length.</summary>
public readonly record struct Length : IQuantity<Length>, IComparable<Length>
{
    Length(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "length", "mm", "107 mm", 0.0, 10.0,
        [
            new("m", 1.0, 0.0, "ft", []),
            new("mm", 0.001, 0.0, "in", []),
            new("cm", 0.01, 0.0, "in", []),
            new("km", 1000.0, 0.0, "mi", []),
            new("um", 1e-06, 0.0, "in", ["µm", "μm"]),
            new("in", 0.0254, 0.0, null, ["inch", "\""]),
            new("ft", 0.3048, 0.0, null, []),
            new("mi", 1609.344, 0.0, null, ["mile", "miles"]),
        ]);

    /// <inheritdoc/>
    public static Length FromSi(double si) => new(si);

    /// <summary>The value in m.</summary>
    public double Metres => Si;

    /// <summary>From a value in m.</summary>
    public static Length FromMetres(double metres) => new(metres);

    /// <summary>The value in mm.</summary>
    public double Millimetres => Si / 0.001;

    /// <summary>From a value in mm.</summary>
    public static Length FromMillimetres(double millimetres) => new(millimetres * 0.001);

    /// <summary>The value in cm.</summary>
    public double Centimetres => Si / 0.01;

    /// <summary>The value in km.</summary>
    public double Kilometres => Si / 1000.0;

    /// <summary>From a value in km.</summary>
    public static Length FromKilometres(double kilometres) => new(kilometres * 1000.0);

    /// <summary>The value in um.</summary>
    public double Micrometres => Si / 1e-06;

    /// <summary>From a value in um.</summary>
    public static Length FromMicrometres(double micrometres) => new(micrometres * 1e-06);

    /// <summary>The value in in.</summary>
    public double Inches => Si / 0.0254;

    /// <summary>From a value in in.</summary>
    public static Length FromInches(double inches) => new(inches * 0.0254);

    /// <summary>The value in ft.</summary>
    public double Feet => Si / 0.3048;

    /// <summary>From a value in ft.</summary>
    public static Length FromFeet(double feet) => new(feet * 0.3048);

    /// <summary>The sum.</summary>
    public static Length operator +(Length a, Length b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Length operator -(Length a, Length b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Length operator -(Length a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Length operator *(Length a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Length operator *(double times, Length a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Length operator /(Length a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Length a, Length b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Length a, Length b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Length a, Length b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Length a, Length b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Length a, Length b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
