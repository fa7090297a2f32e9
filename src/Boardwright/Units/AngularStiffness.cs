namespace Boardwright.Units;

/// <summary>Torque for each angle of lean.</summary>
public readonly record struct AngularStiffness : IQuantity<AngularStiffness>, IComparable<AngularStiffness>
{
    AngularStiffness(double si) => Si = si;

    /// <inheritdoc/>
    public double Si { get; }

    /// <inheritdoc/>
    public static Dimension Dimension { get; } = new(
        "angular stiffness", "N·m/deg", "2.5 Nm/deg", 0.0, 1000000.0,
        [
            new("N·m/rad", 1.0, 0.0, null, ["Nm/rad", "N m/rad"]),
            new("N·m/deg", 57.29577951308232, 0.0, null, ["Nm/deg", "N m/deg", "Nm/°", "N·m/°"]),
        ]);

    /// <inheritdoc/>
    public static AngularStiffness FromSi(double si) => new(si);

    /// <summary>Whether the first is less than the second.</summary>
    public static bool operator <(AngularStiffness a, AngularStiffness b) => a.Si < b.Si;

    /// <summary>Whether the first is more than the second.</summary>
    public static bool operator >(AngularStiffness a, AngularStiffness b) => a.Si > b.Si;

    /// <summary>Whether the first is at most the second.</summary>
    public static bool operator <=(AngularStiffness a, AngularStiffness b) => a.Si <= b.Si;

    /// <summary>Whether the first is at least the second.</summary>
    public static bool operator >=(AngularStiffness a, AngularStiffness b) => a.Si >= b.Si;

    /// <inheritdoc/>
    public int CompareTo(AngularStiffness other) => Si.CompareTo(other.Si);

    /// <summary>The value with its usual metric unit.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Dimension.Write(Si, format, formatProvider);
}
