namespace Boardwright.Units;

/// <summary>An electric charge.</summary>
public readonly record struct Charge : IQuantity<Charge>, IComparable<Charge>
{
    Charge(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "charge", "Ah", "3.0 Ah", 0.0, 100000000.0,
        [
            new("C", 1.0, 0.0, null, []),
            new("Ah", 3600.0, 0.0, null, []),
            new("mAh", 3.6, 0.0, null, []),
        ]);

    /// <inheritdoc/>
    public static Charge FromSi(double si) => new(si);

    /// <summary>The value in C.</summary>
    public double Coulombs => Si;

    /// <summary>From a value in C.</summary>
    public static Charge FromCoulombs(double coulombs) => new(coulombs);

    /// <summary>The value in Ah.</summary>
    public double AmpereHours => Si / 3600.0;

    /// <summary>From a value in Ah.</summary>
    public static Charge FromAmpereHours(double ampereHours) => new(ampereHours * 3600.0);

    /// <summary>The sum.</summary>
    public static Charge operator +(Charge a, Charge b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Charge operator -(Charge a, Charge b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Charge operator -(Charge a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Charge operator *(Charge a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Charge operator *(double times, Charge a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Charge operator /(Charge a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Charge a, Charge b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Charge a, Charge b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Charge a, Charge b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Charge a, Charge b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Charge a, Charge b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Charge other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
