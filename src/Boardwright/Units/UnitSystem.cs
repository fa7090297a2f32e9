using System.Globalization;

namespace Boardwright.Units;

/// <summary>In which units a report is written. Passed as the format provider wherever a quantity is turned into text.</summary>
public sealed class UnitSystem : IFormatProvider
{
    UnitSystem(bool imperial) => IsImperial = imperial;

    /// <summary>Millimetres, kilograms, km/h, °C.</summary>
    public static UnitSystem Metric { get; } = new(imperial: false);
    /// <summary>Inches, pounds, mph, °F; electrical units stay as they are.</summary>
    public static UnitSystem Imperial { get; } = new(imperial: true);
    /// <summary>Whether lengths, masses, speeds and temperatures are written in imperial units.</summary>
    public bool IsImperial { get; }

    /// <inheritdoc/>
    public object? GetFormat(Type? formatType) =>
        formatType == typeof(UnitSystem) ? this
        : formatType == typeof(NumberFormatInfo) ? NumberFormatInfo.InvariantInfo
        : null;

    internal static UnitSystem Of(IFormatProvider? provider) => provider?.GetFormat(typeof(UnitSystem)) as UnitSystem ?? Metric;
}
