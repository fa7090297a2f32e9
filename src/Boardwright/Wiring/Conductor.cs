using System.Globalization;
using System.Runtime.InteropServices;
using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Wiring;

/// <summary>A size of the American wire gauge: d = 0.127 mm · 92^((36 − n)/39), with 0 for 1/0, −1 for 2/0, −2 for 3/0 and −3 for
/// 4/0.</summary>
/// <param name="Number">The number n, −3 to 40.</param>
/// <validity>Solid round wire; a stranded wire of a gauge has about the same section of metal.</validity>
/// <error>The standard's table rounds the diameter to 0.1 mil.</error>
/// <source cref="Sources.AstmB258"/>
public readonly record struct WireGauge(int Number)
{
    /// <summary>The thickest size, 4/0.</summary>
    public const int Thickest = -3;
    /// <summary>The thinnest size.</summary>
    public const int Thinnest = 40;
    /// <summary>Diameter of the solid wire.</summary>
    public Length Diameter => Length.FromMillimetres(0.127 * Pow(92, (36 - Number) / 39.0));
    /// <summary>Section of the solid wire: π d²/4.</summary>
    public Area Section => Area.FromSquareMetres(PI / 4 * Diameter.Metres * Diameter.Metres);
    /// <summary>The same section in circular mils, the square of the diameter in thousandths of an inch.</summary>
    public double CircularMils => Diameter.Inches * Diameter.Inches * 1e6;

    /// <summary>Its name, such as <c>AWG 12</c> or <c>AWG 2/0</c>.</summary>
    public string Name => Number > 0
        ? string.Create(CultureInfo.InvariantCulture, $"AWG {Number}")
        : string.Create(CultureInfo.InvariantCulture, $"AWG {1 - Number}/0");

    /// <summary>The gauge whose section is nearest by proportion.</summary>
    /// <param name="section">Section of metal, above 0.</param>
    /// <returns>The gauge; the thickest or thinnest of the standard for a section beyond it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The section is not above 0.</exception>
    public static WireGauge Nearest(Area section)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(section.SquareMetres, nameof(section));
        var millimetres = Sqrt(4 / PI * section.SquareMillimetres);
        var number = 36 - 39 * Log(millimetres / 0.127) / Log(92);
        return new((int)Round(Clamp(number, Thickest, Thinnest), MidpointRounding.AwayFromZero));
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}

/// <summary>A copper conductor: its section, and how much longer its strands are than itself.</summary>
/// <param name="Section">Section of metal, above 0.</param>
/// <param name="LayFactor">Length of a strand over length of the wire, 1 or more; 1 for solid wire, up to 1.16 for the finest strands'
/// greatest permitted resistance.</param>
/// <validity>Annealed plain copper, direct current.</validity>
/// <error>Solid wire 1 %; fine stranded wire has up to 16 % more than its section says.</error>
/// <source cref="Sources.Iec60028"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Conductor(Area Section, double LayFactor = 1)
{
    /// <summary>Resistivity of annealed copper at 20 °C, Ω m.</summary>
    public const double ResistivityAt20 = 1.7241e-8;
    /// <summary>Part by which resistance at 20 °C rises for each kelvin, 1/K.</summary>
    public const double PerKelvin = 0.00393;

    /// <summary>Resistance of each metre at a temperature: 17.241 Ω mm²/km · lay/A · (1 + 0.00393 (T − 20 °C)), Ω/m.</summary>
    /// <param name="copper">Temperature of the copper.</param>
    public double OhmsPerMetre(Temperature copper) =>
        ResistivityAt20 * LayFactor / Section.SquareMetres * (1 + PerKelvin * (copper.Celsius - 20));

    /// <summary>Resistance of a length at a temperature.</summary>
    /// <param name="length">Length of conductor; for a pair twice the run.</param>
    /// <param name="copper">Temperature of the copper.</param>
    public Resistance Resistance(Length length, Temperature copper) =>
        Units.Resistance.FromOhms(OhmsPerMetre(copper) * length.Metres);

    /// <summary>Voltage lost over a length: I R.</summary>
    /// <param name="current">Current.</param>
    /// <param name="length">Length of conductor; for a pair twice the run.</param>
    /// <param name="copper">Temperature of the copper.</param>
    /// <source cref="Sources.CircuitTheory"/>
    public Voltage Drop(Current current, Length length, Temperature copper) =>
        Voltage.FromVolts(current.Amperes * Resistance(length, copper).Ohms);

    /// <summary>Power lost over a length: I² R.</summary>
    /// <param name="current">Root-mean-square current.</param>
    /// <param name="length">Length of conductor; for a pair twice the run.</param>
    /// <param name="copper">Temperature of the copper.</param>
    /// <source cref="Sources.CircuitTheory"/>
    public Power Loss(Current current, Length length, Temperature copper) =>
        Power.FromWatts(current.Amperes * current.Amperes * Resistance(length, copper).Ohms);

    /// <summary>Guess of the diameter over the insulation: 1.2 times the solid wire's, and 2 mm.</summary>
    /// <error>0.5 mm.</error>
    /// <source cref="Sources.CommonPractice"/>
    public Length GuessedOuterDiameter => Length.FromMetres(1.2 * Sqrt(4 / PI * Section.SquareMetres) + 0.002);

    /// <summary>Factor that brings a resistance read at a temperature to 20 °C, as the cable standard rounds it: 1/(1 + 0.004 (T − 20
    /// °C)).</summary>
    /// <source cref="Sources.Iec60228"/>
    public static double CableFactor(Temperature copper) => 1 / (1 + 0.004 * (copper.Celsius - 20));

    /// <summary>Temperature at which copper has a number of times its resistance at another: (T₁ + 234.5 °C) · ratio − 234.5 °C.</summary>
    /// <param name="start">Temperature of the first reading.</param>
    /// <param name="ratio">Second reading over the first, above 0.</param>
    /// <source cref="Sources.Iec60028"/>
    public static Temperature FromRatio(Temperature start, double ratio) =>
        Temperature.FromCelsius((start.Celsius + 234.5) * ratio - 234.5);

    /// <summary>Part of a wire's own current that each may carry when several lie in a bundle: 1, 0.94, 0.89, 0.83, 0.76 for one to
    /// five.</summary>
    /// <param name="wires">Loaded wires in the bundle, at least 1.</param>
    /// <returns>The factor; <c>null</c> beyond five, for which the source has none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no wire.</exception>
    /// <source cref="Sources.MilW5088"/>
    public static double? BundleFactor(int wires)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(wires, 1);
        return wires switch { 1 => 1, 2 => 0.94, 3 => 0.89, 4 => 0.83, 5 => 0.76, _ => null };
    }
}
