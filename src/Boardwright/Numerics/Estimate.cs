using System.Runtime.InteropServices;

namespace Boardwright.Numerics;

/// <summary>A value found from measurements, with the range it lies in nine times out of ten.</summary>
/// <param name="Value">The best value.</param>
/// <param name="Low">5 % quantile.</param>
/// <param name="High">95 % quantile.</param>
/// <param name="Deviation">Its standard deviation, in the SI unit of the value.</param>
/// <param name="Narrowing">What would narrow the range, in words.</param>
/// <typeparam name="T">Quantity of the value.</typeparam>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Estimate<T>(T Value, T Low, T High, double Deviation, string Narrowing)
    where T : struct, IQuantity<T>
{
    /// <summary>From a value, its deviation, and how many deviations the range reaches to either side.</summary>
    /// <param name="si">Value in SI units.</param>
    /// <param name="deviation">Standard deviation in SI units, 0 or more.</param>
    /// <param name="reach">Deviations to either side; 1.645 for a normal distribution.</param>
    /// <param name="narrowing">What would narrow the range.</param>
    public static Estimate<T> Create(double si, double deviation, double reach, string narrowing) =>
        new(T.FromSi(si), T.FromSi(si - reach * deviation), T.FromSi(si + reach * deviation), deviation, narrowing);

    /// <summary>Whether a value lies in the range.</summary>
    public bool Covers(T value) => value.Si >= Low.Si && value.Si <= High.Si;
}
