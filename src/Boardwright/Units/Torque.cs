namespace Boardwright.Units;

/// <summary>A torque.</summary>
public readonly record struct Torque : IQuantity<Torque>, IComparable<Torque>
{
    Torque(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "torque", "N·m", "2.1 Nm", 0.0, 100000.0,
        [
            new("N·m", 1.0, 0.0, "lbf·in", ["Nm", "N m", "N*m"]),
            new("lbf·in", 0.1129848290276167, 0.0, null, ["lbf in", "in lbf", "in-lbf", "lb-in", "lbf*in"]),
            new("lbf·ft", 1.3558179483314003, 0.0, null, ["lbf ft", "ft lbf", "ft-lbf", "lb-ft", "lbf*ft"]),
        ]);

    /// <inheritdoc/>
    public static Torque FromSi(double si) => new(si);

    /// <summary>The value in N·m.</summary>
    public double NewtonMetres => Si;

    /// <summary>From a value in N·m.</summary>
    public static Torque FromNewtonMetres(double newtonMetres) => new(newtonMetres);

    /// <summary>The value in lbf·in.</summary>
    public double PoundForceInches => Si / 0.1129848290276167;

    /// <summary>From a value in lbf·in.</summary>
    public static Torque FromPoundForceInches(double poundForceInches) => new(poundForceInches * 0.1129848290276167);

    /// <summary>The sum.</summary>
    public static Torque operator +(Torque a, Torque b) => new(a.Si + b.Si);

    /// <summary>The difference.</summary>
    public static Torque operator -(Torque a, Torque b) => new(a.Si - b.Si);

    /// <summary>The opposite.</summary>
    public static Torque operator -(Torque a) => new(-a.Si);

    /// <summary>The value times a number.</summary>
    public static Torque operator *(Torque a, double times) => new(a.Si * times);

    /// <summary>The value times a number.</summary>
    public static Torque operator *(double times, Torque a) => new(a.Si * times);

    /// <summary>The value divided by a number.</summary>
    public static Torque operator /(Torque a, double by) => new(a.Si / by);

    /// <summary>How many times the second goes into the first.</summary>
    public static double operator /(Torque a, Torque b) => a.Si / b.Si;

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(Torque a, Torque b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(Torque a, Torque b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(Torque a, Torque b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(Torque a, Torque b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(Torque other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
