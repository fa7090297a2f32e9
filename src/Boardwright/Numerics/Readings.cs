using System.Globalization;

namespace Boardwright.Numerics;

/// <summary>The values that belong to places, checked once when a curve or a table is built.</summary>
static class Readings
{
    /// <summary>A copy of the values, all finite.</summary>
    /// <exception cref="ArgumentException">The count differs from the one expected, or a value is not finite.</exception>
    public static double[] Interpolate(ReadOnlySpan<double> values, int expected, string name)
    {
        if (values.Length != expected)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{values.Length} values given for {expected} places."), name);
        for (var i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Value {i} is {values[i]}; values must be finite."), name);
        }

        return values.ToArray();
    }
}
