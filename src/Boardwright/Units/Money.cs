using System.Globalization;

namespace Boardwright.Units;

/// <summary>An amount of money in one currency.</summary>
/// <param name="Amount">How much.</param>
/// <param name="Currency">Three capital letters, such as EUR.</param>
public readonly record struct Money(decimal Amount, string Currency) : IFormattable
{
    /// <inheritdoc/>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        Amount.ToString("0.00", CultureInfo.InvariantCulture) + " " + Currency;
}

/// <summary>Money for each hour of work.</summary>
/// <param name="PerHour">The money for one hour.</param>
public readonly record struct HourlyRate(Money PerHour) : IFormattable
{
    /// <inheritdoc/>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => PerHour.ToString(format, formatProvider) + "/h";
}
