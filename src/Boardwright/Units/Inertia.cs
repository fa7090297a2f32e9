namespace Boardwright.Units;

/// <summary>A moment of inertia.</summary>
public readonly record struct Inertia : IQuantity<Inertia>, IComparable<Inertia>
{
    Inertia(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "inertia", "kg·m2", "0.0002 kg m2", 0.0, 1000.0,
        [
            new("kg·m2", 1.0, 0.0, null, ["kg m2", "kg·m²", "kg m²", "kgm2"]),
            new("g·cm2", 1e-07, 0.0, null, ["g cm2", "g·cm²", "g cm²", "gcm2"]),
            new("kg·mm2", 1e-06, 0.0, null, ["kg mm2", "kg·mm²", "kg mm²"]),
        ]);

    /// <inheritdoc/>
    public static Inertia FromSi(double si) => new(si);

    /// <summary>The value in kg·m2.</summary>
    public double KilogramSquareMetres => Si;

    /// <summary>From a value in kg·m2.</summary>
    public static Inertia FromKilogramSquareMetres(double kilogramSquareMetres) => new(kilogramSquareMetres);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Inertia a, Inertia b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Inertia a, Inertia b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Inertia a, Inertia b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Inertia a, Inertia b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Inertia other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
