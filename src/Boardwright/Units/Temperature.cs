namespace Boardwright.Units;

/// <summary>A temperature on a scale with a zero of its own; a difference of two is a <see cref="TemperatureDifference"/>.</summary>
public readonly record struct Temperature : IQuantity<Temperature>, IComparable<Temperature>
{
    Temperature(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "temperature", "°C", "18 °C", 200.0, 800.0,
        [
            new("K", 1.0, 0.0, "°F", []),
            new("°C", 1.0, 273.15, "°F", ["degC", "ºC"]),
            new("°F", 0.5555555555555556, 255.3722222222222, null, ["degF", "ºF"]),
        ]);

    /// <inheritdoc/>
    public static Temperature FromSi(double si) => new(si);

    /// <summary>The value in K.</summary>
    public double Kelvins => Si;

    /// <summary>From a value in K.</summary>
    public static Temperature FromKelvins(double kelvins) => new(kelvins);

    /// <summary>The value in °C.</summary>
    public double Celsius => Si - 273.15;

    /// <summary>From a value in °C.</summary>
    public static Temperature FromCelsius(double celsius) => new(celsius + 273.15);

    /// <summary>How much warmer the first is than the second.</summary>
    public static TemperatureDifference operator -(Temperature a, Temperature b) => TemperatureDifference.FromSi(a.Si - b.Si);

    /// <summary>A temperature raised by a difference.</summary>
    public static Temperature operator +(Temperature a, TemperatureDifference b) => new(a.Si + b.Si);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Temperature a, Temperature b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Temperature a, Temperature b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Temperature a, Temperature b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Temperature a, Temperature b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
