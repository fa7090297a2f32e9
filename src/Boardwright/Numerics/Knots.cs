using System.Globalization;

namespace Boardwright.Numerics;

/// <summary>Places in strictly rising order, and which pair of neighbours a value lies between.</summary>
readonly struct Knots
{
    readonly double[] _places;

    /// <summary>Keeps a copy of the places.</summary>
    /// <exception cref="ArgumentException">Fewer places than asked for, one not finite, or the order is not strictly rising.</exception>
    public Knots(ReadOnlySpan<double> places, int atLeast, string name)
    {
        if (places.Length < atLeast)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{places.Length} places given, {atLeast} needed."), name);
        for (var i = 0; i < places.Length; i++)
        {
            if (!double.IsFinite(places[i]) || (i > 0 && places[i] <= places[i - 1]))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Place {i} is {places[i]}; places must be finite and rise strictly."), name);
        }

        _places = places.ToArray();
    }

    public double this[int index] => _places[index];

    public int Count => _places.Length;

    public double Start => _places[0];

    public double End => _places[^1];

    public bool Cover(double x) => x >= Start && x <= End;

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

    /// <summary>
    /// The two places a value lies between and how far along it is, 0 to 1; beyond an end, and on an axis of one place,
    /// the value at the end.
    /// </summary>
    public (int Before, int After, double Along) Locate(double x)
    {
        if (x <= Start) return (0, 0, 0);
        if (x >= End) return (Count - 1, Count - 1, 0);
        var i = Interval(x);
        return (i, i + 1, (x - _places[i]) / (_places[i + 1] - _places[i]));
    }
}
