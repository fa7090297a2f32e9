using System.Globalization;

namespace Boardwright.Validation;

/// <summary>A number as its source prints it: the value, and how far the print itself may be from what was meant.</summary>
public sealed record PrintedNumber
{
    /// <summary>Reads a printed number: an optional sign, digits with a decimal point, an optional exponent; blanks between groups of
    /// digits are skipped.</summary>
    /// <exception cref="FormatException">The text is not such a number.</exception>
    public PrintedNumber(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Text = text;
        var bare = text.Replace(" ", "", StringComparison.Ordinal).Replace('−', '-');
        Value = double.Parse(bare, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture);
        var exponent = bare.IndexOfAny(['e', 'E']);
        HasExponent = exponent >= 0;
        var mantissa = HasExponent ? bare[..exponent] : bare;
        var point = mantissa.IndexOf('.', StringComparison.Ordinal);
        Decimals = point < 0 ? 0 : mantissa.Length - point - 1;
        var power = HasExponent ? int.Parse(bare[(exponent + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) : 0;
        HalfLastDigit = 0.5 * Math.Pow(10, power - Decimals);
    }

    /// <summary>The text as printed.</summary>
    public string Text { get; }
    /// <summary>The value.</summary>
    public double Value { get; }
    /// <summary>Digits behind the point.</summary>
    public int Decimals { get; }
    /// <summary>Whether it is printed with a power of ten.</summary>
    public bool HasExponent { get; }
    /// <summary>Half a unit of the last printed digit: the most by which a correctly rounded print differs from the exact value.</summary>
    public double HalfLastDigit { get; }
    /// <summary>Whether a value rounds to the print; ties pass, as does the rounding of the last bit.</summary>
    public bool Covers(double value) => Math.Abs(value - Value) <= HalfLastDigit * (1 + 1e-9) + 1e-12 * Math.Abs(Value);
}
