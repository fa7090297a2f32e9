namespace Boardwright.Units;

/// <summary>A temperature on a scale with a zero of its own; a difference of two is a <see cref="TemperatureDifference"/>.</summary>
public readonly record struct Temperature : IQuantity<Temperature>
{
    public static Dimension Dimension { get; } = new(
        "temperature", "°C", "18 °C", 200, 800,
        [
            new("K", 1, "°F"), new("°C", 1, "°F", "degC", "ºC") { Offset = 273.15 },
            new("°F", 0.5555555555555556, null, "degF", "ºF") { Offset = 255.3722222222222 },
        ]);

    public double Si { get; private init; }
    public static Temperature FromSi(double si) => new() { Si = si };
    public int CompareTo(Temperature other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in K.</summary>
    public double Kelvins => Si;
    /// <summary>From a value in K.</summary>
    public static Temperature FromKelvins(double kelvins) => FromSi(kelvins);
    /// <summary>The value in °C.</summary>
    public double Celsius => Si - 273.15;
    /// <summary>From a value in °C.</summary>
    public static Temperature FromCelsius(double celsius) => FromSi(celsius + 273.15);
    /// <summary>How much warmer the first is than the second.</summary>
    public static TemperatureDifference operator -(Temperature a, Temperature b) => TemperatureDifference.FromSi(a.Si - b.Si);
    /// <summary>A temperature raised by a difference.</summary>
    public static Temperature operator +(Temperature a, TemperatureDifference b) => FromSi(a.Si + b.Si);
}

/// <summary>A difference of two temperatures.</summary>
public readonly record struct TemperatureDifference : IAdditive<TemperatureDifference>
{
    public static Dimension Dimension { get; } = new(
        "temperature difference", "K", "12 K", -600, 600, [new("K", 1)]);

    public double Si { get; private init; }
    public static TemperatureDifference FromSi(double si) => new() { Si = si };
    public int CompareTo(TemperatureDifference other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in K.</summary>
    public double Kelvins => Si;
    /// <summary>From a value in K.</summary>
    public static TemperatureDifference FromKelvins(double kelvins) => FromSi(kelvins);
}

/// <summary>Temperature difference for each watt of heat that flows.</summary>
public readonly record struct ThermalResistance : IQuantity<ThermalResistance>
{
    public static Dimension Dimension { get; } = new(
        "thermal resistance", "K/W", "1.5 K/W", 0, 10000, [new("K/W", 1, null, "°C/W")]);

    public double Si { get; private init; }
    public static ThermalResistance FromSi(double si) => new() { Si = si };
    public int CompareTo(ThermalResistance other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in K/W.</summary>
    public double KelvinsPerWatt => Si;
    /// <summary>From a value in K/W.</summary>
    public static ThermalResistance FromKelvinsPerWatt(double kelvinsPerWatt) => FromSi(kelvinsPerWatt);
}

/// <summary>Heat for each kelvin of warming.</summary>
public readonly record struct HeatCapacity : IQuantity<HeatCapacity>
{
    public static Dimension Dimension { get; } = new(
        "heat capacity", "J/K", "46 J/K", 0, 1e7, [new("J/K", 1, null, "J/°C")]);

    public double Si { get; private init; }
    public static HeatCapacity FromSi(double si) => new() { Si = si };
    public int CompareTo(HeatCapacity other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in J/K.</summary>
    public double JoulesPerKelvin => Si;
    /// <summary>From a value in J/K.</summary>
    public static HeatCapacity FromJoulesPerKelvin(double joulesPerKelvin) => FromSi(joulesPerKelvin);
}
