using Boardwright.Findings;

namespace Boardwright.Parts;

/// <summary>What turns the wheels.</summary>
public enum DriveKind
{
    /// <summary>A toothed belt for each motor.</summary>
    Belt,
    /// <summary>A pair of gears for each motor.</summary>
    Gear,
    /// <summary>Motors inside the wheels.</summary>
    Hub,
}

/// <summary>Which axle is driven.</summary>
public enum Driven
{
    /// <summary>The rear axle.</summary>
    Rear,
    /// <summary>The front axle.</summary>
    Front,
    /// <summary>Both axles.</summary>
    Both,
}

/// <summary>Where the motors sit, seen from their axle.</summary>
public enum Placement
{
    /// <summary>Behind the rear axle (before the front axle): out from under the deck's middle.</summary>
    Behind,
    /// <summary>Ahead of the rear axle (behind the front axle): between the trucks.</summary>
    Ahead,
}

/// <summary>How the wheels are driven.</summary>
public sealed record Drive : Sheet
{
    /// <summary>Whether belts turn the wheels.</summary>
    public bool IsBelt => Kind is { IsKnown: true, Value: DriveKind.Belt };
    /// <summary>Whether belts turn the wheels, for a rule about belts: where the file does not say, it is asked.</summary>
    public bool TurnsBelts(Needs needs) => needs.Read(Kind) == DriveKind.Belt && Kind.IsKnown;
    /// <summary>Whether gears turn the wheels.</summary>
    public bool IsGear => Kind is { IsKnown: true, Value: DriveKind.Gear };
    /// <summary>Whether the motors sit in the wheels.</summary>
    public bool IsHub => Kind is { IsKnown: true, Value: DriveKind.Hub };
    /// <summary>Belt, gear or hub.</summary>
    [Entry("What turns the wheels.")]
    public Known<DriveKind> Kind { get; init; }
    /// <summary>The driven axle.</summary>
    [Entry("Which axle is driven; rear where not given.")]
    public Known<Driven> Driven { get; init; }
    /// <summary>Number of motors.</summary>
    [Entry("How many motors.", Example = "2", Least = 1, Greatest = 4)]
    public Known<int> Motors { get; init; }
    /// <summary>Where the motors sit.</summary>
    [Entry("Where the motors sit: behind the rear axle, or ahead of it between the trucks.")]
    public Known<Placement> Placement { get; init; }
    /// <summary>Mount angle that the builder means to use.</summary>
    [Entry("Mount angle that is meant to be used, of those the mount offers; its first where not given.", Example = "20 deg", Least = -1.5707963, Greatest = 1.5707963, Spread = SpreadKind.None)]
    public Known<Angle> MountAngle { get; init; }
    /// <summary>From the hanger's end out to the wheel pulley.</summary>
    [Entry("From the hanger's end out to the wheel pulley's inner end: the washers between them; negative where a hollow pulley reaches over the hanger; 1 mm, one washer, where not given.", Measure = "Depth gauge, with wheel and pulley on the axle.", Example = "1 mm", Least = -0.1, Greatest = 0.1)]
    public Known<Length> PulleyFromHanger { get; init; }
    /// <summary>Efficiency on torque.</summary>
    [Entry("Efficiency on torque; a usual value for belt and gears, 1 for a hub motor where not given.", Example = "0.95", Least = 0.1, Greatest = 1)]
    public Known<Number> Efficiency { get; init; }
    /// <summary>How much the truck and the wheels shield the motors from the wind.</summary>
    [Entry("How many times as far above the air a motor warms on the board as one alone in half of the board's speed, where motor.case_to_air is not given.", Example = "1.3", Positive = true, Least = 0.2, Greatest = 5, Spread = SpreadKind.Thermal)]
    public Known<Number> Shielding { get; init; }
    /// <summary>Share of the weight on the driven axle.</summary>
    [Entry("Share of the whole weight on the driven axle when standing; half where not given.", Example = "50 %", Least = 0, Greatest = 1)]
    public Known<Fraction> WeightShare { get; init; }
}

/// <summary>A motor mount that grips a truck's hanger.</summary>
public sealed record Mount : Part
{
    /// <summary>Name of the hanger profile it grips.</summary>
    [Entry("Name of the hanger profile it grips; the same name as on the truck.", Example = "square 27")]
    public Known<string> HangerProfile { get; init; }
    /// <summary>Bolt circle for the motor.</summary>
    [Entry("Diameter of the bolt circle for the motor, or a list where slots take several.", Example = "[30 mm, 44 mm]", Positive = true)]
    public Known<Quantities<Length>> BoltCircle { get; init; }
    /// <summary>Bolt for the motor.</summary>
    [Entry("Bolt that holds the motor.", Example = "M4")]
    public Known<string> Bolt { get; init; }
    /// <summary>Number of bolts.</summary>
    [Entry("How many bolts hold the motor.", Example = "4", Least = 1, Greatest = 12)]
    public Known<int> BoltCount { get; init; }
    /// <summary>Strength class of the bolts.</summary>
    [Entry("Strength class of the motor's bolts: A2-70, 8.8, 10.9 or 12.9; A2-70 where not given, which is tightened least.", Example = "A2-70")]
    public Known<string> BoltClass { get; init; }
    /// <summary>Grip length of the bolts.</summary>
    [Entry("Length of the bolts under the head, washers not counted.", Example = "12 mm", Greatest = 0.2)]
    public Known<Length> BoltLength { get; init; }
    /// <summary>Thickness of the plate.</summary>
    [Entry("Thickness of the plate between motor and pulley.", Measure = "Vernier caliper at the slot.", Example = "8 mm", Positive = true, Greatest = 0.1)]
    public Known<Length> PlateThickness { get; init; }
    /// <summary>Least distance of shaft and axle.</summary>
    [Entry("Least distance between motor shaft and axle that the slot allows.", Example = "66 mm", Positive = true, Greatest = 1)]
    public Known<Length> CentreMin { get; init; }
    /// <summary>Greatest distance of shaft and axle.</summary>
    [Entry("Greatest distance between motor shaft and axle that the slot allows.", Example = "76 mm", Positive = true, Greatest = 1)]
    public Known<Length> CentreMax { get; init; }
    /// <summary>Angles above the horizontal.</summary>
    [Entry("Angles at which the motor can sit, above the horizontal; negative is below the axle.", Example = "[0 deg, 25 deg]", Least = -1.5707963, Greatest = 1.5707963)]
    public Known<Quantities<Angle>> Angles { get; init; }
    /// <summary>From the hanger's end to the plate.</summary>
    [Entry("From the hanger's end in to the outer face of the plate.", Example = "14 mm")]
    public Known<Length> PlateFromWheel { get; init; }
    /// <summary>Inner depth of the belt cover.</summary>
    [Entry("Inner depth of the belt cover, from the face that lies on the standoffs.", Measure = "Depth gauge into the cover.", Example = "30 mm")]
    public Known<Length> CoverDepth { get; init; }
    /// <summary>Length of the cover's standoffs.</summary>
    [Entry("Length of the standoffs between plate and cover.", Example = "6 mm")]
    public Known<Length> CoverStandoff { get; init; }
    /// <summary>Bolt of the cover.</summary>
    [Entry("Screw that holds the cover; M4 where not given.", Example = "M4")]
    public Known<string> CoverBolt { get; init; }
}

/// <summary>How a pulley is held on its shaft.</summary>
public enum Fixing
{
    /// <summary>A key.</summary>
    Key,
    /// <summary>Set screws.</summary>
    SetScrew,
    /// <summary>A key and set screws.</summary>
    Both,
}

/// <summary>A pulley for a toothed belt, on a motor shaft or on a wheel.</summary>
public sealed record Pulley : Part
{
    /// <summary>Name of the tooth profile.</summary>
    [Entry("Name of the tooth profile, with its pitch.", Example = "HTD 5M")]
    public Known<string> Profile { get; init; }
    /// <summary>Number of teeth.</summary>
    [Entry("Number of teeth.", Example = "15", Least = 1, Greatest = 400)]
    public Known<int> Teeth { get; init; }
    /// <summary>Diameter of the bore.</summary>
    [Entry("Diameter of the bore.", Example = "10 mm", Positive = true, Greatest = 0.2)]
    public Known<Length> Bore { get; init; }
    /// <summary>Width of the keyway.</summary>
    [Entry("Width of the keyway.", Example = "3 mm", Greatest = 0.05)]
    public Known<Length> KeywayWidth { get; init; }
    /// <summary>Width between the flanges.</summary>
    [Entry("Width of the toothed face, between the flanges.", Example = "16 mm", Positive = true, Greatest = 0.2)]
    public Known<Length> FaceWidth { get; init; }
    /// <summary>Overall length.</summary>
    [Entry("Overall length along the shaft.", Example = "24 mm", Positive = true, Greatest = 0.3)]
    public Known<Length> Length { get; init; }
    /// <summary>From the pulley's inner end to its teeth.</summary>
    [Entry("From the pulley's inner end, which faces the board's middle, to the inner edge of its teeth; where not given, anywhere between its ends.", Measure = "Depth gauge from the pulley's end, over the flange, to the teeth.", Example = "2 mm", Greatest = 0.3)]
    public Known<Length> FaceOffset { get; init; }
    /// <summary>Diameter of the flanges.</summary>
    [Entry("Diameter of the flanges.", Example = "28 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> FlangeDiameter { get; init; }
    /// <summary>How it is held.</summary>
    [Entry("How it is held on the shaft.")]
    public Known<Fixing> Fixing { get; init; }
    /// <summary>Name of the wheel core it grips.</summary>
    [Entry("For a wheel pulley: name of the wheel core it grips; the same name as on the wheel.", Example = "six spokes 44")]
    public Known<string> Core { get; init; }
}

/// <summary>A toothed belt.</summary>
public sealed record Belt : Part
{
    /// <summary>Name of the tooth profile.</summary>
    [Entry("Name of the tooth profile, with its pitch.", Example = "HTD 5M")]
    public Known<string> Profile { get; init; }
    /// <summary>Length on the pitch line.</summary>
    [Entry("Length on the pitch line; or give the teeth.", Example = "280 mm", Positive = true, Spread = SpreadKind.None)]
    public Known<Length> Length { get; init; }
    /// <summary>Number of teeth.</summary>
    [Entry("Number of teeth; or give the length.", Example = "56", Least = 1, Greatest = 2000)]
    public Known<int> Teeth { get; init; }
    /// <summary>Width.</summary>
    [Entry("Width.", Example = "15 mm", Positive = true, Greatest = 0.2)]
    public Known<Length> Width { get; init; }
    /// <summary>Factor on the peak pull.</summary>
    [Entry("Factor on the peak pull for shocks, frequent starts and braking; 1.5 where not given.", Example = "1.5", Least = 1, Greatest = 4, Spread = SpreadKind.None)]
    public Known<Number> ServiceFactor { get; init; }
    /// <summary>The factor that is taken: the file's, or the usual one.</summary>
    /// <source cref="Sources.SdpSiServiceFactor"/>
    public Number Service(Needs needs) => needs.Read(ServiceFactor, Number.FromValue(1.5));
    /// <summary>Cord.</summary>
    [Entry("What the cord is made of.", Example = "glass")]
    public Known<string> Cord { get; init; }
}

/// <summary>A pair of gears between a motor and its wheel.</summary>
public sealed record Gearbox : Part
{
    /// <summary>Ratio.</summary>
    [Entry("Turns of the motor for one turn of the wheel.", Example = "4.2", Positive = true, Least = 0, Greatest = 100)]
    public Known<Number> Ratio { get; init; }
    /// <summary>Efficiency on torque.</summary>
    [Entry("Efficiency on torque.", Example = "0.95", Least = 0.1, Greatest = 1)]
    public Known<Number> Efficiency { get; init; }
    /// <summary>Drag of the oil.</summary>
    [Entry("Torque that the oil takes at the motor shaft.", Example = "0.02 Nm")]
    public Known<Torque> OilLoss { get; init; }
}

/// <summary>What tells the controller where the rotor is.</summary>
public enum Sensor
{
    /// <summary>Nothing.</summary>
    None,
    /// <summary>Hall switches.</summary>
    Hall,
    /// <summary>An encoder.</summary>
    Encoder,
}

/// <summary>A brushless motor.</summary>
public sealed record Motor : Part
{
    /// <summary>Speed constant.</summary>
    [Entry("KV: r/min for each volt of DC bus, unloaded and at full modulation.", Measure = "Spin it with a drill, read the peak between two leads and the r/min.", Positive = true)]
    public Known<SpeedConstant> Kv { get; init; }
    /// <summary>Resistance of one phase, line to neutral.</summary>
    [Entry("Resistance of one phase, line to neutral, at 20 °C; or give line_resistance.", Measure = "Half of what a four-wire meter reads between two leads.", Example = "28 mohm", Positive = true)]
    public Known<Resistance> PhaseResistance { get; init; }
    /// <summary>Resistance between two leads.</summary>
    [Entry("Resistance between two leads, at 20 °C; or give phase_resistance.", Measure = "Four-wire meter between two leads.", Example = "56 mohm", Positive = true)]
    public Known<Resistance> LineResistance { get; init; }
    /// <summary>Inductance of one phase.</summary>
    [Entry("Inductance of one phase, line to neutral.", Measure = "Half of what a meter reads between two leads.", Example = "26 uH")]
    public Known<Inductance> PhaseInductance { get; init; }
    /// <summary>Pole pairs.</summary>
    [Entry("Pole pairs: half the number of magnets.", Example = "7", Least = 1, Greatest = 100)]
    public Known<int> PolePairs { get; init; }
    /// <summary>Current at no load.</summary>
    [Entry("Current from the supply at no load.", Measure = "Run it free from a bench supply, read volts and amps.", Example = "1.4 A", Spread = SpreadKind.NoLoad)]
    public Known<Current> NoLoadCurrent { get; init; }
    /// <summary>Voltage of the no-load test.</summary>
    [Entry("Voltage of the no-load test.", Example = "24 V", Positive = true)]
    public Known<Voltage> NoLoadVoltage { get; init; }
    /// <summary>Several no-load tests.</summary>
    [Entry("Several no-load tests: a map from voltage to current; better than one.", Example = "{ 12 V: 1.1 A, 24 V: 1.4 A, 36 V: 1.7 A }", Spread = SpreadKind.NoLoad)]
    public Known<Curve<Voltage, Current>> NoLoadTests { get; init; }
    /// <summary>Peak phase current.</summary>
    [Entry("Greatest phase current (amplitude) for a short time.", Example = "80 A", Positive = true)]
    public Known<Current> PhaseCurrentPeak { get; init; }
    /// <summary>Continuous phase current.</summary>
    [Entry("Greatest phase current (amplitude) for ever, in the maker's conditions.", Example = "45 A", Positive = true)]
    public Known<Current> PhaseCurrentContinuous { get; init; }
    /// <summary>Advertised power.</summary>
    [Entry("Power that the maker advertises.", Example = "3150 W")]
    public Known<Power> PowerRating { get; init; }
    /// <summary>Diameter of the can.</summary>
    [Entry("Diameter of the can.", Measure = "Vernier caliper over the can.", Example = "63 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> CanDiameter { get; init; }
    /// <summary>Length of the can.</summary>
    [Entry("Length of the can, without the shaft.", Measure = "Vernier caliper along the can.", Example = "74 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> CanLength { get; init; }
    /// <summary>Diameter of the shaft.</summary>
    [Entry("Diameter of the shaft.", Measure = "Micrometer on the shaft.", Example = "10 mm", Positive = true, Greatest = 0.1)]
    public Known<Length> ShaftDiameter { get; init; }
    /// <summary>Length of the shaft.</summary>
    [Entry("Length of the shaft beyond the face that is bolted to the mount.", Measure = "Depth gauge from the mounting face to the shaft's end.", Example = "38 mm", Positive = true, Greatest = 0.3)]
    public Known<Length> ShaftLength { get; init; }
    /// <summary>Width of the key.</summary>
    [Entry("Width of the key.", Example = "3 mm", Greatest = 0.05)]
    public Known<Length> KeyWidth { get; init; }
    /// <summary>Height of the key.</summary>
    [Entry("Height of the key, out of its slot.", Example = "3 mm", Greatest = 0.05)]
    public Known<Length> KeyHeight { get; init; }
    /// <summary>Bolt circle.</summary>
    [Entry("Diameter of the bolt circle, or a list.", Example = "44 mm", Positive = true)]
    public Known<Quantities<Length>> BoltCircle { get; init; }
    /// <summary>Bolt.</summary>
    [Entry("Thread of its mounting holes.", Example = "M4")]
    public Known<string> Bolt { get; init; }
    /// <summary>Depth of thread.</summary>
    [Entry("Depth of thread in its mounting holes; a longer bolt meets the winding.", Measure = "Depth gauge into the hole.", Example = "6 mm", Greatest = 0.1)]
    public Known<Length> BoltDepth { get; init; }
    /// <summary>Rotor inertia.</summary>
    [Entry("Moment of inertia of the rotor.", Example = "0.0002 kg m2")]
    public Known<Inertia> RotorInertia { get; init; }
    /// <summary>Heat capacity of the winding.</summary>
    [Entry("Heat capacity of the winding.", Example = "48 J/K", Positive = true, Spread = SpreadKind.Thermal)]
    public Known<HeatCapacity> WindingCapacity { get; init; }
    /// <summary>Heat capacity of the rest.</summary>
    [Entry("Heat capacity of everything but the winding.", Example = "230 J/K", Positive = true, Spread = SpreadKind.Thermal)]
    public Known<HeatCapacity> CaseCapacity { get; init; }
    /// <summary>Thermal resistance from winding to case.</summary>
    [Entry("Thermal resistance from the winding to the case.", Example = "0.6 K/W", Positive = true)]
    public Known<ThermalResistance> WindingToCase { get; init; }
    /// <summary>Thermal resistance from case to air.</summary>
    [Entry("Thermal resistance from the case to the air, in the wind of the ride; computed from the can's size where not given.", Example = "1.5 K/W", Positive = true)]
    public Known<ThermalResistance> CaseToAir { get; init; }
    /// <summary>Greatest winding temperature.</summary>
    [Entry("Greatest temperature of the winding.", Example = "130 °C", Greatest = 773.15)]
    public Known<Temperature> WindingLimit { get; init; }
    /// <summary>Greatest magnet temperature.</summary>
    [Entry("Greatest temperature of the magnets.", Example = "100 °C")]
    public Known<Temperature> MagnetLimit { get; init; }
    /// <summary>Rotor sensor.</summary>
    [Entry("What tells the controller where the rotor is.")]
    public Known<Sensor> Sensor { get; init; }
    /// <summary>Plug on the leads.</summary>
    [Entry("Plug on its leads.", Example = "bullet 4 mm")]
    public Known<string> LeadPlug { get; init; }
}
