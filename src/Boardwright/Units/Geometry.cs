namespace Boardwright.Units;

/// <summary>A length.</summary>
public readonly record struct Length : IAdditive<Length>
{
    public static Dimension Dimension { get; } = new(
        "length", "mm", "107 mm", 0, 10,
        [
            new("m", 1, "ft"), new("mm", 0.001, "in"), new("cm", 0.01, "in"), new("km", 1000, "mi"), new("um", 1e-06, "in", "µm", "μm"),
            new("in", 0.0254, null, "inch", "\""), new("ft", 0.3048), new("mi", 1609.344, null, "mile", "miles"),
        ]);

    public double Si { get; private init; }
    public static Length FromSi(double si) => new() { Si = si };
    public int CompareTo(Length other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in m.</summary>
    public double Metres => Si;
    /// <summary>From a value in m.</summary>
    public static Length FromMetres(double metres) => FromSi(metres);
    /// <summary>The value in mm.</summary>
    public double Millimetres => Si / 0.001;
    /// <summary>From a value in mm.</summary>
    public static Length FromMillimetres(double millimetres) => FromSi(millimetres * 0.001);
    /// <summary>The value in cm.</summary>
    public double Centimetres => Si / 0.01;
    /// <summary>The value in km.</summary>
    public double Kilometres => Si / 1000.0;
    /// <summary>From a value in km.</summary>
    public static Length FromKilometres(double kilometres) => FromSi(kilometres * 1000.0);
    /// <summary>The value in um.</summary>
    public double Micrometres => Si / 1e-06;
    /// <summary>From a value in um.</summary>
    public static Length FromMicrometres(double micrometres) => FromSi(micrometres * 1e-06);
    /// <summary>The value in in.</summary>
    public double Inches => Si / 0.0254;
    /// <summary>From a value in in.</summary>
    public static Length FromInches(double inches) => FromSi(inches * 0.0254);
    /// <summary>The value in ft.</summary>
    public double Feet => Si / 0.3048;
    /// <summary>From a value in ft.</summary>
    public static Length FromFeet(double feet) => FromSi(feet * 0.3048);
}

/// <summary>An area: a drag area or the copper section of a wire.</summary>
public readonly record struct Area : IQuantity<Area>
{
    public static Dimension Dimension { get; } = new(
        "area", "mm2", "5.3 mm2", 0, 10,
        [
            new("m2", 1, "ft2", "m²", "sq m"), new("mm2", 1e-06, null, "mm²", "sq mm"), new("cm2", 0.0001, "in2", "cm²"),
            new("in2", 0.00064516, null, "in²"), new("ft2", 0.09290304, null, "ft²"),
        ]);

    public double Si { get; private init; }
    public static Area FromSi(double si) => new() { Si = si };
    public int CompareTo(Area other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in m2.</summary>
    public double SquareMetres => Si;
    /// <summary>From a value in m2.</summary>
    public static Area FromSquareMetres(double squareMetres) => FromSi(squareMetres);
    /// <summary>The value in mm2.</summary>
    public double SquareMillimetres => Si / 1e-06;
    /// <summary>From a value in mm2.</summary>
    public static Area FromSquareMillimetres(double squareMillimetres) => FromSi(squareMillimetres * 1e-06);
    /// <summary>The value in cm2.</summary>
    public double SquareCentimetres => Si / 0.0001;
    /// <summary>The value in in2.</summary>
    public double SquareInches => Si / 0.00064516;
    /// <summary>From a value in in2.</summary>
    public static Area FromSquareInches(double squareInches) => FromSi(squareInches * 0.00064516);
}

/// <summary>An angle.</summary>
public readonly record struct Angle : IAdditive<Angle>
{
    public static Dimension Dimension { get; } = new(
        "angle", "deg", "25 deg", -3.141592653589793, 3.141592653589793,
        [new("rad", 1), new("deg", 0.017453292519943295, null, "°", "degrees")]);

    public double Si { get; private init; }
    public static Angle FromSi(double si) => new() { Si = si };
    public int CompareTo(Angle other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in rad.</summary>
    public double Radians => Si;
    /// <summary>From a value in rad.</summary>
    public static Angle FromRadians(double radians) => FromSi(radians);
    /// <summary>The value in deg.</summary>
    public double Degrees => Si / 0.017453292519943295;
    /// <summary>From a value in deg.</summary>
    public static Angle FromDegrees(double degrees) => FromSi(degrees * 0.017453292519943295);
}
