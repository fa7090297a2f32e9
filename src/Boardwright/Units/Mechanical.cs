namespace Boardwright.Units;

/// <summary>A mass.</summary>
public readonly record struct Mass : IAdditive<Mass>
{
    public static Dimension Dimension { get; } = new(
        "mass", "kg", "82 kg", 0, 1000,
        [new("kg", 1, "lb"), new("g", 0.001, "oz"), new("lb", 0.45359237, null, "lbs"), new("oz", 0.028349523125)]);

    public double Si { get; private init; }
    public static Mass FromSi(double si) => new() { Si = si };
    public int CompareTo(Mass other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in kg.</summary>
    public double Kilograms => Si;
    /// <summary>From a value in kg.</summary>
    public static Mass FromKilograms(double kilograms) => FromSi(kilograms);
    /// <summary>The value in g.</summary>
    public double Grams => Si / 0.001;
    /// <summary>From a value in g.</summary>
    public static Mass FromGrams(double grams) => FromSi(grams * 0.001);
}

/// <summary>A moment of inertia.</summary>
public readonly record struct Inertia : IQuantity<Inertia>
{
    public static Dimension Dimension { get; } = new(
        "inertia", "kg·m2", "0.0002 kg m2", 0, 1000,
        [
            new("kg·m2", 1, null, "kg m2", "kg·m²", "kg m²", "kgm2"), new("g·cm2", 1e-07, null, "g cm2", "g·cm²", "g cm²", "gcm2"),
            new("kg·mm2", 1e-06, null, "kg mm2", "kg·mm²", "kg mm²"),
        ]);

    public double Si { get; private init; }
    public static Inertia FromSi(double si) => new() { Si = si };
    public int CompareTo(Inertia other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in kg·m2.</summary>
    public double KilogramSquareMetres => Si;
    /// <summary>From a value in kg·m2.</summary>
    public static Inertia FromKilogramSquareMetres(double kilogramSquareMetres) => FromSi(kilogramSquareMetres);
}

/// <summary>A force.</summary>
public readonly record struct Force : IAdditive<Force>
{
    public static Dimension Dimension { get; } = new(
        "force", "N", "115 N", 0, 1e6, [new("N", 1, "lbf"), new("kN", 1000, "lbf"), new("lbf", 4.4482216152605)]);

    public double Si { get; private init; }
    public static Force FromSi(double si) => new() { Si = si };
    public int CompareTo(Force other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in N.</summary>
    public double Newtons => Si;
    /// <summary>From a value in N.</summary>
    public static Force FromNewtons(double newtons) => FromSi(newtons);
    /// <summary>The value in kN.</summary>
    public double Kilonewtons => Si / 1000.0;
    /// <summary>From a value in kN.</summary>
    public static Force FromKilonewtons(double kilonewtons) => FromSi(kilonewtons * 1000.0);
    /// <summary>The value in lbf.</summary>
    public double PoundsForce => Si / 4.4482216152605;
    /// <summary>From a value in lbf.</summary>
    public static Force FromPoundsForce(double poundsForce) => FromSi(poundsForce * 4.4482216152605);
}

/// <summary>A torque.</summary>
public readonly record struct Torque : IAdditive<Torque>
{
    public static Dimension Dimension { get; } = new(
        "torque", "N·m", "2.1 Nm", 0, 100000,
        [
            new("N·m", 1, "lbf·in", "Nm", "N m", "N*m"),
            new("lbf·in", 0.1129848290276167, null, "lbf in", "in lbf", "in-lbf", "lb-in", "lbf*in"),
            new("lbf·ft", 1.3558179483314003, null, "lbf ft", "ft lbf", "ft-lbf", "lb-ft", "lbf*ft"),
        ]);

    public double Si { get; private init; }
    public static Torque FromSi(double si) => new() { Si = si };
    public int CompareTo(Torque other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in N·m.</summary>
    public double NewtonMetres => Si;
    /// <summary>From a value in N·m.</summary>
    public static Torque FromNewtonMetres(double newtonMetres) => FromSi(newtonMetres);
    /// <summary>The value in lbf·in.</summary>
    public double PoundForceInches => Si / 0.1129848290276167;
    /// <summary>From a value in lbf·in.</summary>
    public static Torque FromPoundForceInches(double poundForceInches) => FromSi(poundForceInches * 0.1129848290276167);
}

/// <summary>A pressure, or a stress in a solid.</summary>
public readonly record struct Pressure : IAdditive<Pressure>
{
    public static Dimension Dimension { get; } = new(
        "pressure", "MPa", "75 MPa", 0, 1e12,
        [
            new("Pa", 1, "psi"), new("kPa", 1000, "psi"), new("MPa", 1e6, "ksi", "N/mm2", "N/mm²"), new("GPa", 1000000000, "ksi"),
            new("psi", 6894.757293168361), new("ksi", 6894757.293168361),
        ]);

    public double Si { get; private init; }
    public static Pressure FromSi(double si) => new() { Si = si };
    public int CompareTo(Pressure other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in Pa.</summary>
    public double Pascals => Si;
    /// <summary>From a value in Pa.</summary>
    public static Pressure FromPascals(double pascals) => FromSi(pascals);
    /// <summary>The value in MPa.</summary>
    public double Megapascals => Si / 1000000.0;
    /// <summary>From a value in MPa.</summary>
    public static Pressure FromMegapascals(double megapascals) => FromSi(megapascals * 1000000.0);
    /// <summary>From a value in psi.</summary>
    public static Pressure FromPoundsPerSquareInch(double poundsPerSquareInch) => FromSi(poundsPerSquareInch * 6894.757293168361);
}

/// <summary>Torque for each angle of lean.</summary>
public readonly record struct AngularStiffness : IQuantity<AngularStiffness>
{
    public static Dimension Dimension { get; } = new(
        "angular stiffness", "N·m/deg", "2.5 Nm/deg", 0, 1e6,
        [new("N·m/rad", 1, null, "Nm/rad", "N m/rad"), new("N·m/deg", 57.29577951308232, null, "Nm/deg", "N m/deg", "Nm/°", "N·m/°")]);

    public double Si { get; private init; }
    public static AngularStiffness FromSi(double si) => new() { Si = si };
    public int CompareTo(AngularStiffness other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);
}

/// <summary>How far a deck bends for each kilogram that stands on it.</summary>
public readonly record struct BendPerMass : IQuantity<BendPerMass>
{
    public static Dimension Dimension { get; } = new(
        "bend per mass", "mm/kg", "0.12 mm/kg", 0, 0.1, [new("m/kg", 1), new("mm/kg", 0.001)]);

    public double Si { get; private init; }
    public static BendPerMass FromSi(double si) => new() { Si = si };
    public int CompareTo(BendPerMass other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in m/kg.</summary>
    public double MetresPerKilogram => Si;
}

/// <summary>A power.</summary>
public readonly record struct Power : IAdditive<Power>
{
    public static Dimension Dimension { get; } = new(
        "power", "W", "2500 W", 0, 1e6, [new("W", 1), new("kW", 1000), new("mW", 0.001), new("hp", 745.6998715822702)]);

    public double Si { get; private init; }
    public static Power FromSi(double si) => new() { Si = si };
    public int CompareTo(Power other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in W.</summary>
    public double Watts => Si;
    /// <summary>From a value in W.</summary>
    public static Power FromWatts(double watts) => FromSi(watts);
    /// <summary>From a value in kW.</summary>
    public static Power FromKilowatts(double kilowatts) => FromSi(kilowatts * 1000.0);
    /// <summary>The value in mW.</summary>
    public double Milliwatts => Si / 0.001;
}

/// <summary>An amount of energy.</summary>
public readonly record struct Energy : IAdditive<Energy>
{
    public static Dimension Dimension { get; } = new(
        "energy", "Wh", "532 Wh", 0, 1000000000, [new("J", 1), new("Wh", 3600), new("kWh", 3600000), new("kJ", 1000)]);

    public double Si { get; private init; }
    public static Energy FromSi(double si) => new() { Si = si };
    public int CompareTo(Energy other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in J.</summary>
    public double Joules => Si;
    /// <summary>From a value in J.</summary>
    public static Energy FromJoules(double joules) => FromSi(joules);
    /// <summary>The value in Wh.</summary>
    public double WattHours => Si / 3600.0;
    /// <summary>From a value in Wh.</summary>
    public static Energy FromWattHours(double wattHours) => FromSi(wattHours * 3600.0);
}

/// <summary>Energy spent for each length of road.</summary>
public readonly record struct EnergyPerDistance : IQuantity<EnergyPerDistance>
{
    public static Dimension Dimension { get; } = new(
        "energy per distance", "Wh/km", "14 Wh/km", -100000, 100000,
        [new("J/m", 1), new("Wh/km", 3.6, "Wh/mi"), new("Wh/mi", 2.236936292054402)]);

    public double Si { get; private init; }
    public static EnergyPerDistance FromSi(double si) => new() { Si = si };
    public int CompareTo(EnergyPerDistance other) => Si.CompareTo(other.Si);
    public override string ToString() => Dimension.Write(Si, null, null);

    /// <summary>The value in J/m.</summary>
    public double JoulesPerMetre => Si;
    /// <summary>From a value in J/m.</summary>
    public static EnergyPerDistance FromJoulesPerMetre(double joulesPerMetre) => FromSi(joulesPerMetre);
    /// <summary>The value in Wh/km.</summary>
    public double WattHoursPerKilometre => Si / 3.6;
    /// <summary>From a value in Wh/km.</summary>
    public static EnergyPerDistance FromWattHoursPerKilometre(double wattHoursPerKilometre) => FromSi(wattHoursPerKilometre * 3.6);
}
