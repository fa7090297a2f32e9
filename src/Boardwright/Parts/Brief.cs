using Boardwright.Findings;

namespace Boardwright.Parts;

/// <summary>How the rider stands.</summary>
public enum Stance
{
    /// <summary>Upright and relaxed.</summary>
    Upright,
    /// <summary>Knees bent, side on.</summary>
    Crouched,
    /// <summary>As small as possible.</summary>
    Tucked,
}

/// <summary>State of the road's surface.</summary>
public enum Weather
{
    /// <summary>Dry.</summary>
    Dry,
    /// <summary>Wet.</summary>
    Wet,
}

/// <summary>What the rider wants and where the board will be ridden.</summary>
public sealed record Brief : Sheet
{
    /// <summary>Mass of the rider.</summary>
    [Entry("Mass of the rider.", Example = "80 kg", Positive = true, Greatest = 300, Spread = SpreadKind.None)]
    public Known<Mass> RiderMass { get; init; }
    /// <summary>Mass of what the rider wears and carries.</summary>
    [Entry("Mass of clothes, shoes and bag.", Example = "5 kg", Greatest = 200, Spread = SpreadKind.None)]
    public Known<Mass> GearMass { get; init; }
    /// <summary>Mass that the deck carries: the rider with what is worn and carried; nothing is carried where the file says nothing of
    /// it.</summary>
    public Mass LoadOnDeck(Needs needs) => needs.Read(RiderMass) + needs.Read(GearMass, default);
    /// <summary>Stance.</summary>
    [Entry("How the rider stands; sets the drag area where none is given.")]
    public Known<Stance> Stance { get; init; }
    /// <summary>Drag area.</summary>
    [Entry("Drag coefficient times frontal area of rider and board.", Measure = "Coast down on level ground, both ways.", Example = "0.55 m2", Greatest = 3, Spread = SpreadKind.DragArea)]
    public Known<Area> DragArea { get; init; }
    /// <summary>Cruise speed.</summary>
    [Entry("Speed that the range is asked for.", Example = "25 km/h", Positive = true)]
    public Known<Speed> CruiseSpeed { get; init; }
    /// <summary>Comfortable acceleration.</summary>
    [Entry("How hard the rider likes to start; 1.0 m/s2 where not given.", Example = "1.0 m/s2", Positive = true, Greatest = 5)]
    public Known<Acceleration> Acceleration { get; init; }
    /// <summary>Comfortable braking.</summary>
    [Entry("How hard the rider likes to brake; 1.2 m/s2 where not given.", Example = "1.2 m/s2", Positive = true, Greatest = 6)]
    public Known<Acceleration> Braking { get; init; }
    /// <summary>Least deceleration that the electric brake must reach.</summary>
    [Entry("Mean deceleration that the electric brake must reach from cruise speed; 1.54 m/s2 where not given.", Example = "1.54 m/s2", Positive = true, Greatest = 6, Spread = SpreadKind.None)]
    public Known<Acceleration> BrakingLeast { get; init; }
    /// <summary>Range wanted.</summary>
    [Entry("Range wanted at cruise speed.", Example = "25 km", Greatest = 1e6, Spread = SpreadKind.None)]
    public Known<Length> RangeWanted { get; init; }
    /// <summary>Top speed wanted.</summary>
    [Entry("Top speed wanted.", Example = "45 km/h")]
    public Known<Speed> TopSpeedWanted { get; init; }
    /// <summary>Steepest climb wanted.</summary>
    [Entry("Steepest climb wanted, rise over run.", Example = "15 %", Least = 0, Greatest = 1)]
    public Known<Fraction> ClimbWanted { get; init; }
    /// <summary>Speed on that climb.</summary>
    [Entry("Speed wanted on the steepest climb.", Example = "12 km/h", Positive = true)]
    public Known<Speed> ClimbSpeed { get; init; }
    /// <summary>Speed limit found in the local rules.</summary>
    [Entry("Speed limit that the builder found in the local rules.", Example = "25 km/h", Positive = true)]
    public Known<Speed> SpeedLimit { get; init; }
    /// <summary>Most that the customer wants to pay.</summary>
    [Entry("Most that the customer wants to pay for the board.", Example = "1800 EUR")]
    public Known<Money> Budget { get; init; }
    /// <summary>Air temperature.</summary>
    [Entry("Air temperature.", Example = "18 °C", Least = 223.15, Greatest = 333.15)]
    public Known<Temperature> Temperature { get; init; }
    /// <summary>Altitude.</summary>
    [Entry("Altitude above the sea.", Example = "20 m", Least = -500, Greatest = 6000, Spread = SpreadKind.None)]
    public Known<Length> Altitude { get; init; }
    /// <summary>Headwind.</summary>
    [Entry("Headwind; negative from behind.", Example = "0 m/s", Least = -40, Greatest = 40)]
    public Known<Speed> Headwind { get; init; }
    /// <summary>Surface.</summary>
    [Entry("What the road is made of.")]
    public Known<Surface> Surface { get; init; }
    /// <summary>Dry or wet.</summary>
    [Entry("Dry or wet road; dry where not given.")]
    public Known<Weather> Road { get; init; }
    /// <summary>Charge the rider wants left.</summary>
    [Entry("Charge the rider wants left at the end.", Example = "10 %", Least = 0, Greatest = 0.95)]
    public Known<Fraction> Reserve { get; init; }
    /// <summary>Route file.</summary>
    [Entry("A route file, from the board file's folder.", Example = "routes/harbour-loop.gpx")]
    public Known<string> Route { get; init; }
}

/// <summary>What the builder has set, or means to set, in the controller.</summary>
public sealed record Limits : Sheet
{
    /// <summary>Phase current when driving.</summary>
    [Entry("Phase current (amplitude) for each motor when driving.", Example = "60 A", Positive = true)]
    public Known<Current> PhaseCurrent { get; init; }
    /// <summary>Phase current when braking.</summary>
    [Entry("Phase current (amplitude) for each motor when braking.", Example = "50 A")]
    public Known<Current> BrakePhaseCurrent { get; init; }
    /// <summary>Current out of the pack, all together.</summary>
    [Entry("Current out of the pack, for all motors together.", Example = "50 A", Positive = true)]
    public Known<Current> PackCurrent { get; init; }
    /// <summary>Current back into the pack, all together.</summary>
    [Entry("Current back into the pack, for all motors together.", Example = "12 A")]
    public Known<Current> RegenCurrent { get; init; }
    /// <summary>Loaded cell voltage where power begins to fade.</summary>
    [Entry("Loaded voltage per cell at which power begins to fade.", Example = "3.4 V", Positive = true, Greatest = 10)]
    public Known<Voltage> TaperStart { get; init; }
    /// <summary>Loaded cell voltage where power is cut.</summary>
    [Entry("Loaded voltage per cell at which power is cut.", Example = "3.1 V", Positive = true, Greatest = 10)]
    public Known<Voltage> TaperEnd { get; init; }
}

/// <summary>Screws that hold the box.</summary>
public sealed record BoxFixing : Sheet
{
    /// <summary>How many.</summary>
    [Entry("How many.", Example = "6", Least = 1, Greatest = 60)]
    public Known<int> Count { get; init; }
    /// <summary>Bolt.</summary>
    [Entry("Bolt.", Example = "M5")]
    public Known<string> Bolt { get; init; }
    /// <summary>What the bolt goes into.</summary>
    [Entry("What the bolt goes into.", Example = "deck_insert")]
    public Known<string> Insert { get; init; }
    /// <summary>Diameter of the insert's hole.</summary>
    [Entry("Diameter of the hole that the insert needs in the deck; a usual one where not given.", Measure = "Vernier caliper over the insert's barrel.", Example = "6.5 mm", Positive = true, Greatest = 0.05)]
    public Known<Length> InsertHole { get; init; }
}

/// <summary>What holds things together.</summary>
public sealed record Fixings : Sheet
{
    /// <summary>Screws of the box.</summary>
    [Entry("Screws that hold the box to the deck.")]
    public BoxFixing Box { get; init; } = new();
}

/// <summary>What the board costs to make.</summary>
public sealed record Costs : Sheet
{
    /// <summary>Hours of work.</summary>
    [Entry("Hours of work.", Example = "9 h", Spread = SpreadKind.None)]
    public Known<Duration> LabourHours { get; init; }
    /// <summary>Price of an hour.</summary>
    [Entry("What an hour of work costs.", Example = "35 EUR/h")]
    public Known<HourlyRate> LabourRate { get; init; }
    /// <summary>Overhead on parts and work.</summary>
    [Entry("Overhead on parts and work.", Example = "12 %", Least = 0, Greatest = 5)]
    public Known<Fraction> Overhead { get; init; }
    /// <summary>Margin on the cost.</summary>
    [Entry("Margin on the cost.", Example = "25 %", Least = 0, Greatest = 5)]
    public Known<Fraction> Margin { get; init; }
}
