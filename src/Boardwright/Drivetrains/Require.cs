using System.Globalization;
using System.Runtime.CompilerServices;

namespace Boardwright.Drivetrains;

/// <summary>Preconditions of this room's formulas; each throws with the value and the limit.</summary>
static class Require
{
    /// <summary>The quantity, which must lie above another.</summary>
    internal static T Above<T>(T value, T limit, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : struct, IQuantity<T>
    {
        if (!(value.Si > limit.Si))
            throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"Must be above {limit}."));
        return value;
    }

    /// <summary>The quantity, which must lie above zero.</summary>
    internal static T AboveZero<T>(T value, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : struct, IQuantity<T> => Above(value, T.FromSi(0), name);

    /// <summary>The quantity, which must not be less than another.</summary>
    internal static T AtLeast<T>(T value, T limit, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : struct, IQuantity<T>
    {
        if (!(value.Si >= limit.Si))
            throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"Must be at least {limit}."));
        return value;
    }

    /// <summary>The number, which must lie above zero.</summary>
    internal static double AboveZero(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > 0 ? value : throw new ArgumentOutOfRangeException(name, value, "Must be above 0.");
}
