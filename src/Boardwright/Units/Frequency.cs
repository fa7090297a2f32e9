namespace Boardwright.Units;

/// <summary>A frequency.</summary>
public readonly record struct Frequency : IQuantity<Frequency>, IComparable<Frequency>
{
    Frequency(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "frequency", "Hz", "20 kHz", 0.0, 10000000000.0,
        [
            new("Hz", 1.0, 0.0, null, []),
            new("kHz", 1000.0, 0.0, null, []),
            new("MHz", 1000000.0, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Frequency FromSi(double si) => new(si);

    /// <summary>The value in Hz.</summary>
    public double Hertz => Si;

    /// <summary>From a value in Hz.</summary>
    public static Frequency FromHertz(double hertz) => new(hertz);

    /// <summary>From a value in kHz.</summary>
    public static Frequency FromKilohertz(double kilohertz) => new(kilohertz * 1000.0);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Frequency a, Frequency b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Frequency a, Frequency b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Frequency a, Frequency b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Frequency a, Frequency b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Frequency other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
