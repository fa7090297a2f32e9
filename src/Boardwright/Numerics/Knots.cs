using static System.FormattableString;

namespace Boardwright.Numerics;

/// <summary>Places in strictly rising order, and which pair of neighbours a value lies between.</summary>
readonly struct Knots
{
    readonly double[] _places;

    /// <summary>Keeps a copy of the places.</summary>
    /// <exception cref="ArgumentException">Fewer than two places, one not finite, or the order is not strictly rising.</exception>
    public Knots(ReadOnlySpan<double> places, string name)
    {
        if (places.Length < 2)
            throw new ArgumentException(Invariant($"{places.Length} places given, 2 needed."), name);
        _places = Values(places, places.Length, name);
        for (var i = 1; i < places.Length; i++)
        {
            if (places[i] <= places[i - 1])
                throw new ArgumentException(Invariant($"Place {i} is {places[i]}; places must rise strictly."), name);
        }
    }

    /// <summary>A copy of the values that belong to places, all finite.</summary>
    /// <exception cref="ArgumentException">The count differs from the one expected, or a value is not finite.</exception>
    public static double[] Values(ReadOnlySpan<double> values, int expected, string name)
    {
        if (values.Length != expected)
            throw new ArgumentException(Invariant($"{values.Length} values given for {expected} places."), name);
        for (var i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
                throw new ArgumentException(Invariant($"Value {i} is {values[i]}; values must be finite."), name);
        }

        return values.ToArray();
    }

    public double this[int index] => _places[index];

    public int Count => _places.Length;

    public double Start => _places[0];

    public double End => _places[^1];

    /// <summary>The last i with place i at or below <paramref name="x"/>, kept within 0 and Count − 2.</summary>
    public int Interval(double x)
    {
        var (low, high) = (0, _places.Length - 1);
        while (high - low > 1)
        {
            var middle = (low + high) >>> 1;
            if (x >= _places[middle]) low = middle;
            else high = middle;
        }

        return low;
    }

    /// <summary>The two places a value lies between and how far along it is, 0 to 1; beyond an end, the end twice.</summary>
    public (int Before, int After, double Along) Locate(double x)
    {
        if (x <= Start) return (0, 0, 0);
        if (x >= End) return (Count - 1, Count - 1, 0);
        var i = Interval(x);
        return (i, i + 1, (x - _places[i]) / (_places[i + 1] - _places[i]));
    }
}
