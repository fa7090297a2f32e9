using Boardwright.Findings;

namespace Boardwright.Parts;

/// <summary>How a deck sits on its trucks.</summary>
public enum Mounting
{
    /// <summary>The deck lies on the truck's base plate.</summary>
    Top,
    /// <summary>The base plate lies on the deck and the hanger goes through a window.</summary>
    DropThrough,
    /// <summary>The middle of the deck hangs lower than its ends.</summary>
    DropPlatform,
}

/// <summary>The deck.</summary>
public sealed record Deck : Part
{
    /// <summary>Overall length.</summary>
    [Entry("Overall length.", Example = "960 mm", Positive = true)]
    public Known<Length> Length { get; init; }
    /// <summary>Greatest width.</summary>
    [Entry("Greatest width.", Example = "240 mm", Positive = true)]
    public Known<Length> Width { get; init; }
    /// <summary>Thickness.</summary>
    [Entry("Thickness where the trucks are bolted.", Measure = "Vernier caliper at a truck hole.", Example = "13 mm", Positive = true, Greatest = 0.2)]
    public Known<Length> Thickness { get; init; }
    /// <summary>How it sits on the trucks.</summary>
    [Entry("How the deck sits on its trucks.")]
    public Known<Mounting> Mounting { get; init; }
    /// <summary>How much lower the platform is than the truck mounts.</summary>
    [Entry("How much lower the platform's underside hangs than the plane of the truck mounts.", Measure = "Straight edge across the truck mounts, caliper down to the platform.", Example = "20 mm")]
    public Known<Length> PlatformDrop { get; init; }
    /// <summary>Name of the truck hole pattern.</summary>
    [Entry("Name of the hole pattern for the trucks; the same name as on the truck.", Example = "53.975 x 41.275")]
    public Known<string> HolePattern { get; init; }
    /// <summary>Distance between the axles.</summary>
    [Entry("Distance between the axles, or a list where the deck has several sets of holes (the first is used).", Measure = "Tape from axle to axle.", Example = "720 mm", Positive = true)]
    public Known<Quantities<Length>> Wheelbase { get; init; }
    /// <summary>Length of flat underside.</summary>
    [Entry("Length of flat underside where a box can be screwed on.", Example = "480 mm")]
    public Known<Length> UndersideFlatLength { get; init; }
    /// <summary>Width of flat underside.</summary>
    [Entry("Width of flat underside where a box can be screwed on.", Example = "200 mm")]
    public Known<Length> UndersideFlatWidth { get; init; }
    /// <summary>How far the deck reaches beyond the rear axle.</summary>
    [Entry("How far the deck reaches beyond the rear axle.", Example = "120 mm")]
    public Known<Length> TailOverhang { get; init; }
    /// <summary>How far the deck bends in its middle.</summary>
    [Entry("How far the middle sinks for each kilogram of rider.", Measure = "Height of the middle above the floor with and without a rider, divided by the rider's mass.")]
    public Known<BendPerMass> BendPerKg { get; init; }
    /// <summary>What it is made of.</summary>
    [Entry("What it is made of.", Example = "maple, 8 layers")]
    public Known<string> Material { get; init; }
}

/// <summary>How many kingpins a truck has.</summary>
public enum Kingpin
{
    /// <summary>One kingpin.</summary>
    Single,
    /// <summary>Two kingpins with a link between them.</summary>
    Double,
}

/// <summary>A truck.</summary>
public sealed record Truck : Part
{
    /// <summary>Width of the hanger.</summary>
    [Entry("Width of the hanger between the places where the wheels' washers sit.", Measure = "Vernier caliper over the hanger's ends.", Example = "184 mm", Positive = true)]
    public Known<Length> HangerWidth { get; init; }
    /// <summary>Diameter of the axle.</summary>
    [Entry("Diameter of the axle.", Example = "8 mm", Positive = true, Greatest = 0.05)]
    public Known<Length> AxleDiameter { get; init; }
    /// <summary>How far the axle stands out of the hanger on each side.</summary>
    [Entry("How far the axle stands out of the hanger on each side.", Measure = "Depth gauge from the hanger's end to the axle's end.", Example = "46 mm", Greatest = 0.5)]
    public Known<Length> AxleOverhang { get; init; }
    /// <summary>From the mounting plane to the axle's centre.</summary>
    [Entry("From the mounting plane of the base plate to the axle's centre.", Measure = "Bolt the truck on, measure from the deck's underside to the axle, add half the axle.", Example = "68 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Height { get; init; }
    /// <summary>Single or double kingpin.</summary>
    [Entry("One kingpin, or two with a link between.")]
    public Known<Kingpin> Kingpin { get; init; }
    /// <summary>Angle of the pivot axis from the deck.</summary>
    [Entry("Angle of the pivot axis above the deck.", Example = "44 deg", Least = 0, Greatest = 1.5707963)]
    public Known<Angle> PivotAngle { get; init; }
    /// <summary>Greatest lean.</summary>
    [Entry("Greatest lean of the deck, where the bushings or the metal stop it.", Measure = "Lean the deck by hand to the stop and read a phone's level.", Example = "22 deg", Least = 0, Greatest = 1.3)]
    public Known<Angle> LeanStop { get; init; }
    /// <summary>Torque for each angle of lean.</summary>
    [Entry("Torque for each degree of lean.")]
    public Known<AngularStiffness> LeanStiffness { get; init; }
    /// <summary>Name of the hole pattern.</summary>
    [Entry("Name of the hole pattern of the base plate; the same name as on the deck.", Example = "53.975 x 41.275")]
    public Known<string> HolePattern { get; init; }
    /// <summary>Name of the hanger's profile where a motor mount grips it.</summary>
    [Entry("Name of the hanger's profile where a motor mount grips it; the same name as on the mount.", Example = "square 27")]
    public Known<string> HangerProfile { get; init; }
}

/// <summary>A wheel.</summary>
public sealed record Wheel : Part
{
    /// <summary>Diameter.</summary>
    [Entry("Diameter, new.", Measure = "Roll ten turns on the road with the rider on, divide by ten and by pi.", Example = "107 mm", Positive = true, Greatest = 1)]
    public Known<Length> Diameter { get; init; }
    // A wheel as large as this of which no hardness is stated is an air tyre or solid rubber.
    static readonly Length LeastTyre = Units.Length.FromMillimetres(140);

    /// <summary>Whether it is an air tyre or solid rubber, and not urethane: by its size where nobody states a hardness.</summary>
    public bool IsTyre(Needs needs)
    {
        ArgumentNullException.ThrowIfNull(needs);
        return needs.Read(Diameter, default) >= LeastTyre && needs.Read(Durometer, "").Length == 0;
    }

    /// <summary>Rolling radius.</summary>
    public Length Radius(Needs needs) => needs.Read(Diameter) / 2;
    /// <summary>Width of the tread body.</summary>
    [Entry("Width of the whole wheel.", Example = "65 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Width { get; init; }
    /// <summary>Name of the core.</summary>
    [Entry("Name of the core that a wheel pulley grips; the same name as on the wheel pulley.", Example = "six spokes 44")]
    public Known<string> Core { get; init; }
    /// <summary>Rolling resistance.</summary>
    [Entry("Rolling resistance coefficient: one number, or a map from surfaces to numbers.", Measure = "Coast down on level ground, warm wheels, both ways.", Example = "0.014", Positive = true, Least = 0, Greatest = 1)]
    public Known<RollingTable> RollingResistance { get; init; }
    /// <summary>Hardness.</summary>
    [Entry("Hardness of the tread.", Example = "76A")]
    public Known<string> Durometer { get; init; }
    /// <summary>Name of the bearing.</summary>
    [Entry("Name of the bearing, two to a wheel.", Example = "608")]
    public Known<string> Bearing { get; init; }
    /// <summary>From the wheel's inner face in to the bearing's outer face.</summary>
    [Entry("How deep the inner bearing's face lies behind the wheel's inner face.", Measure = "Depth gauge from the wheel's inner face to the bearing.", Example = "14 mm", Greatest = 0.3)]
    public Known<Length> SeatOffset { get; init; }
    /// <summary>Moment of inertia.</summary>
    [Entry("Moment of inertia about the axle; a solid disc of the wheel's mass where not given.")]
    public Known<Inertia> Inertia { get; init; }
}

/// <summary>A box under the deck.</summary>
public sealed record Box : Part
{
    /// <summary>Inner length.</summary>
    [Entry("Inner length.", Example = "600 mm", Positive = true)]
    public Known<Length> InnerLength { get; init; }
    /// <summary>Inner width.</summary>
    [Entry("Inner width.", Example = "180 mm", Positive = true)]
    public Known<Length> InnerWidth { get; init; }
    /// <summary>Inner depth.</summary>
    [Entry("Inner depth, from the deck to the floor of the box.", Example = "50 mm", Positive = true)]
    public Known<Length> InnerDepth { get; init; }
    /// <summary>Thickness of the wall.</summary>
    [Entry("Thickness of walls and floor.", Example = "3 mm", Greatest = 0.1)]
    public Known<Length> Wall { get; init; }
    /// <summary>Width of the flange.</summary>
    [Entry("Width of the flange that is screwed to the deck.", Example = "18 mm")]
    public Known<Length> FlangeWidth { get; init; }
    /// <summary>Thickness of the gasket.</summary>
    [Entry("Thickness of the gasket before it is squeezed.", Example = "3 mm", Greatest = 0.1)]
    public Known<Length> GasketThickness { get; init; }
    /// <summary>What it is made of.</summary>
    [Entry("What it is made of.", Example = "ABS")]
    public Known<string> Material { get; init; }
    /// <summary>Name of its bolt pattern.</summary>
    [Entry("Name of its bolt pattern.", Example = "6 x M5")]
    public Known<string> BoltPattern { get; init; }
}

/// <summary>What a fitting in a box's wall is for.</summary>
public enum FittingRole
{
    /// <summary>Lets a cable through and seals it.</summary>
    Gland,
    /// <summary>The charger plugs in here.</summary>
    ChargeSocket,
    /// <summary>Turns the board on.</summary>
    Switch,
    /// <summary>Shows the charge.</summary>
    Gauge,
    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>Something that goes through the box's wall: a gland, a charge socket, a switch, a charge gauge.</summary>
public sealed record Fitting : Part
{
    /// <summary>What it is for.</summary>
    [Entry("What it is for; where not given, a gland when it seals a cable, else what its name says.", Example = "charge-socket")]
    public Known<FittingRole> Role { get; init; }
    /// <summary>Diameter of the hole.</summary>
    [Entry("Diameter of the hole it needs.", Example = "12.5 mm", Greatest = 0.2)]
    public Known<Length> HoleDiameter { get; init; }
    /// <summary>Window instead of a round hole.</summary>
    [Entry("Length and width of the window it needs, where the hole is not round.", Example = "[26 mm, 14 mm]")]
    public Known<Quantities<Length>> Window { get; init; }
    /// <summary>Thread.</summary>
    [Entry("Thread.", Example = "M12")]
    public Known<string> Thread { get; init; }
    /// <summary>Thinnest cable.</summary>
    [Entry("Thinnest cable it seals.", Example = "3 mm", Greatest = 0.1)]
    public Known<Length> CableMin { get; init; }
    /// <summary>Thickest cable.</summary>
    [Entry("Thickest cable it seals.", Example = "6 mm", Greatest = 0.1)]
    public Known<Length> CableMax { get; init; }
    /// <summary>Room it needs behind the wall.</summary>
    [Entry("Room it needs behind the wall.", Example = "22 mm")]
    public Known<Length> DepthBehind { get; init; }
    /// <summary>Ingress protection that its maker states.</summary>
    [Entry("Ingress protection that its maker states for the part; a box has none until it is tested.", Example = "IP67")]
    public Known<string> IpRating { get; init; }
}
