using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Wiring;

/// <summary>What melts a copper wire, and what heats it in a time too short to lose heat.</summary>
/// <remarks>Melting is no limit to design by: insulation fails long before.</remarks>
/// <source cref="Sources.Onderdonk"/>
public static class Fusing
{
    /// <summary>The current that melts a wire that has time: I = 10244 A · d^1.5, d in inches.</summary>
    /// <param name="diameter">Diameter of the bare wire, 0 or more.</param>
    /// <validity>Bare, straight, horizontal copper in free air, longer than a hand.</validity>
    /// <error>10 %, more for short wires between cold terminals.</error>
    /// <source cref="Sources.Preece"/>
    public static Current Preece(Length diameter) => Current.FromAmperes(10244 * Pow(diameter.Inches, 1.5));

    /// <summary>The current that melts a wire in a time: I = A √(log₁₀(1 + (1083 − T_a)/(234 + T_a))/(33 t)), A in circular mils, T in
    /// °C.</summary>
    /// <param name="section">Section of copper.</param>
    /// <param name="time">Time, above 0.</param>
    /// <param name="start">Temperature at the start, −200 °C to 1083 °C.</param>
    /// <validity>No heat is lost: up to about 10 s.</validity>
    /// <error>A few per cent within its validity; copper's latent heat is left out.</error>
    /// <source cref="Sources.Onderdonk"/>
    public static Current Onderdonk(Area section, Duration time, Temperature start) =>
        Current.FromAmperes(CircularMils(section) * Sqrt(OnderdonkLog(start) / (33 * time.Seconds)));

    /// <summary>The time in which a current melts a wire, by the same equation.</summary>
    /// <param name="section">Section of copper.</param>
    /// <param name="current">Current, above 0.</param>
    /// <param name="start">Temperature at the start, −200 °C to 1083 °C.</param>
    /// <validity>No heat is lost: up to about 10 s.</validity>
    /// <error>A few per cent within its validity.</error>
    /// <source cref="Sources.Onderdonk"/>
    public static Duration OnderdonkTime(Area section, Current current, Temperature start)
    {
        var ratio = CircularMils(section) / current.Amperes;
        return Duration.FromSeconds(ratio * ratio * OnderdonkLog(start) / 33);
    }

    /// <summary>The I²t that heats copper from one temperature to another without loss: 226² A² s/mm⁴ · S² ln((T₂ + 234.5)/(T₁ + 234.5)), T
    /// in °C.</summary>
    /// <param name="section">Section of copper S.</param>
    /// <param name="start">Temperature at the start T₁.</param>
    /// <param name="end">Temperature at the end T₂, at least the start's.</param>
    /// <validity>No heat is lost: up to a few seconds for a wire.</validity>
    /// <error>1 %, on the safe side.</error>
    /// <source cref="Sources.Iec60949"/>
    public static FusingIntegral Adiabatic(Area section, Temperature start, Temperature end)
    {
        var reach = 226 * section.SquareMillimetres;
        return FusingIntegral.FromAmpereSquaredSeconds(reach * reach * Log((end.Celsius + 234.5) / (start.Celsius + 234.5)));
    }

    /// <summary>The constant current that uses up an I²t in a time: √(I²t/t).</summary>
    /// <param name="integral">The I²t.</param>
    /// <param name="time">Time, above 0.</param>
    public static Current CurrentFor(FusingIntegral integral, Duration time) =>
        Current.FromAmperes(Sqrt(integral.AmpereSquaredSeconds / time.Seconds));

    static double OnderdonkLog(Temperature start) => Log10((1083 - start.Celsius) / (234 + start.Celsius) + 1);

    // A circular mil is the area of a circle of a thousandth of an inch.
    static double CircularMils(Area section) => section.SquareInches * 1e6 * 4 / PI;
}
