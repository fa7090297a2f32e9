namespace Boardwright.Parts;

/// <summary>A motor controller for one motor or several.</summary>
public sealed record Controller : Part
{
    /// <summary>How many motors one controller drives.</summary>
    [Entry("How many motors one of them drives.", Example = "2", Least = 1, Greatest = 4)]
    public Known<int> Motors { get; init; }
    /// <summary>Least supply voltage.</summary>
    [Entry("Least supply voltage.", Example = "14 V")]
    public Known<Voltage> VoltageMin { get; init; }
    /// <summary>Greatest supply voltage.</summary>
    [Entry("Greatest supply voltage.", Example = "60 V", Positive = true)]
    public Known<Voltage> VoltageMax { get; init; }
    /// <summary>Peak phase current.</summary>
    [Entry("Greatest phase current (amplitude) of each motor output for a short time.", Example = "80 A", Positive = true)]
    public Known<Current> PhaseCurrentPeak { get; init; }
    /// <summary>Continuous phase current.</summary>
    [Entry("Greatest phase current (amplitude) of each motor output for ever.", Example = "50 A", Positive = true)]
    public Known<Current> PhaseCurrentContinuous { get; init; }
    /// <summary>Greatest current from the pack.</summary>
    [Entry("Greatest current that one controller may take from the pack.", Example = "60 A", Positive = true)]
    public Known<Current> PackCurrent { get; init; }
    /// <summary>Greatest current back to the pack.</summary>
    [Entry("Greatest current that one controller may feed back into the pack.", Example = "30 A")]
    public Known<Current> RegenCurrent { get; init; }
    /// <summary>Greatest electrical speed.</summary>
    [Entry("Greatest electrical speed: motor r/min times pole pairs.", Example = "60000 rpm", Positive = true)]
    public Known<AngularSpeed> ElectricalSpeedLimit { get; init; }
    /// <summary>Resistance of one switch.</summary>
    [Entry("Resistance of one switch of the bridge, hot.", Example = "1.5 mohm")]
    public Known<Resistance> BridgeResistance { get; init; }
    /// <summary>Switching time, rise and fall together.</summary>
    [Entry("Switching time, rise and fall together.", Example = "120 ns", Spread = SpreadKind.Usual)]
    public Known<Duration> SwitchingTime { get; init; }
    /// <summary>Switching frequency.</summary>
    [Entry("Switching frequency.", Example = "20 kHz")]
    public Known<Frequency> SwitchingFrequency { get; init; }
    /// <summary>Power it takes for itself.</summary>
    [Entry("Power it takes for itself.", Example = "3 W", Spread = SpreadKind.Usual)]
    public Known<Power> IdlePower { get; init; }
    /// <summary>Capacitance on the supply side.</summary>
    [Entry("Capacitance on its supply side.", Example = "2040 uF", Spread = SpreadKind.Usual)]
    public Known<Capacitance> BusCapacitance { get; init; }
    /// <summary>Length.</summary>
    [Entry("Length.", Example = "110 mm")]
    public Known<Length> Length { get; init; }
    /// <summary>Width.</summary>
    [Entry("Width.", Example = "74 mm")]
    public Known<Length> Width { get; init; }
    /// <summary>Height.</summary>
    [Entry("Height.", Example = "26 mm")]
    public Known<Length> Height { get; init; }
    /// <summary>Thermal resistance to the air.</summary>
    [Entry("Thermal resistance to the air around it.", Example = "1.8 K/W")]
    public Known<ThermalResistance> CaseToAir { get; init; }
    /// <summary>Heat capacity.</summary>
    [Entry("Heat capacity.", Example = "180 J/K", Spread = SpreadKind.Thermal)]
    public Known<HeatCapacity> HeatCapacity { get; init; }
    /// <summary>Temperature where power begins to fade.</summary>
    [Entry("Temperature at which its power begins to fade.", Example = "85 °C")]
    public Known<Temperature> TaperTemperatureStart { get; init; }
    /// <summary>Temperature where power is gone.</summary>
    [Entry("Temperature at which its power is gone.", Example = "100 °C")]
    public Known<Temperature> TaperTemperatureEnd { get; init; }
    /// <summary>Plug on the pack side.</summary>
    [Entry("Plug on the pack side.", Example = "XT90")]
    public Known<string> PackPlug { get; init; }
    /// <summary>Plug on the motor side.</summary>
    [Entry("Plug on the motor side.", Example = "bullet 4 mm")]
    public Known<string> MotorPlug { get; init; }
    /// <summary>Port for the remote's receiver.</summary>
    [Entry("Port for the remote's receiver; the same name as on the remote.", Example = "pulse 3-pin")]
    public Known<string> RemotePort { get; init; }
}

/// <summary>How a cell answers a current after the first moment: a resistor and capacitor side by side, or two such pairs in a
/// row.</summary>
/// <remarks>After a current step I the first adds R1 · I · (1 − exp(−t/tau1)) to the voltage lost in the cell's
/// <see cref="Cell.Resistance"/>, the second likewise.</remarks>
public sealed record Polarisation : Sheet
{
    /// <summary>Resistance of the branch.</summary>
    [Entry("Resistance of the branch: one value, a map over charge, or a table over charge and temperature.", Key = "R1", Example = "12 mohm", Positive = true)]
    public Known<ResistanceTable> R1 { get; init; }
    /// <summary>Time constant of the branch.</summary>
    [Entry("Time constant of the branch.", Key = "tau1", Example = "30 s", Positive = true, Spread = SpreadKind.Usual)]
    public Known<Duration> Tau1 { get; init; }
    /// <summary>Resistance of a second, slower branch.</summary>
    [Entry("Resistance of a second, slower branch, where there is one; written like R1.", Key = "R2", Example = "20 mohm", Positive = true)]
    public Known<ResistanceTable> R2 { get; init; }
    /// <summary>Time constant of the second branch.</summary>
    [Entry("Time constant of the second branch.", Key = "tau2", Example = "120 s", Positive = true, Spread = SpreadKind.Usual)]
    public Known<Duration> Tau2 { get; init; }
}

/// <summary>A lithium-ion cell.</summary>
public sealed record Cell : Part
{
    /// <summary>Format.</summary>
    [Entry("Format.", Example = "21700")]
    public Known<string> Format { get; init; }
    /// <summary>Capacity.</summary>
    [Entry("Capacity at a slow discharge.", Example = "5.0 Ah", Positive = true)]
    public Known<Charge> Capacity { get; init; }
    /// <summary>Nominal voltage.</summary>
    [Entry("Nominal voltage.", Example = "3.6 V", Positive = true, Greatest = 10)]
    public Known<Voltage> VoltageNominal { get; init; }
    /// <summary>Voltage when full.</summary>
    [Entry("Voltage to which it is charged.", Example = "4.2 V", Positive = true, Greatest = 10)]
    public Known<Voltage> VoltageFull { get; init; }
    /// <summary>Voltage when empty.</summary>
    [Entry("Least voltage under load.", Example = "2.5 V", Positive = true, Greatest = 10)]
    public Known<Voltage> VoltageEmpty { get; init; }
    /// <summary>Rest voltage over charge.</summary>
    [Entry("Rest voltage over state of charge.", Measure = "Discharge in steps of 10 %, rest an hour, read the voltage.", Example = "{ 0 %: 3.0 V, 50 %: 3.68 V, 100 %: 4.18 V }", Positive = true, Greatest = 10, Spread = SpreadKind.None)]
    public Known<Curve<Fraction, Voltage>> RestVoltage { get; init; }
    /// <summary>Resistance; with a polarisation, the part that answers at once, to which the branches add theirs.</summary>
    [Entry("DC resistance over about a second: one value, a map over charge, or a table over charge and temperature. The 1 kHz value of a data sheet is too low for this.", Measure = "Voltage step at a current step, one second after it.", Example = "25 mohm", Positive = true)]
    public Known<ResistanceTable> Resistance { get; init; }
    /// <summary>Slow part of the resistance.</summary>
    [Entry("The slower part of its answer to a current.")]
    public Polarisation Polarisation { get; init; } = new();
    /// <summary>How fast the current dies away at the end of a charge.</summary>
    [Entry("Time constant with which the current dies away at constant voltage.", Measure = "Log one charge: seconds in which the current at constant voltage falls to 37 %.", Example = "640 s", Positive = true, Spread = SpreadKind.Usual)]
    public Known<Duration> ChargeTail { get; init; }
    /// <summary>Greatest discharge current.</summary>
    [Entry("Greatest continuous discharge current.", Example = "15 A", Positive = true)]
    public Known<Current> DischargeCurrent { get; init; }
    /// <summary>Greatest charge current.</summary>
    [Entry("Greatest charge current.", Example = "4 A")]
    public Known<Current> ChargeCurrent { get; init; }
    /// <summary>Coldest charge.</summary>
    [Entry("Lowest temperature at which it may be charged, braking included.", Example = "0 °C")]
    public Known<Temperature> ChargeTemperatureMin { get; init; }
    /// <summary>Hottest charge.</summary>
    [Entry("Highest temperature at which it may be charged.", Example = "45 °C")]
    public Known<Temperature> ChargeTemperatureMax { get; init; }
    /// <summary>Hottest discharge.</summary>
    [Entry("Highest temperature at which it may be discharged.", Example = "60 °C")]
    public Known<Temperature> DischargeTemperatureMax { get; init; }
    /// <summary>Diameter.</summary>
    [Entry("Diameter.", Example = "21.2 mm", Positive = true, Greatest = 0.2)]
    public Known<Length> Diameter { get; init; }
    /// <summary>Length.</summary>
    [Entry("Length.", Example = "70.2 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Length { get; init; }
    /// <summary>Heat capacity.</summary>
    [Entry("Heat capacity of one cell.", Example = "68 J/K", Spread = SpreadKind.Thermal)]
    public Known<HeatCapacity> HeatCapacity { get; init; }
    /// <summary>Cycle life.</summary>
    [Entry("Full cycles its maker promises.", Example = "500")]
    public Known<int> CycleLife { get; init; }
}

/// <summary>The circuit that protects a pack's cells.</summary>
public sealed record Protection : Part
{
    /// <summary>Cells in series it watches.</summary>
    [Entry("Cells in series it watches.", Example = "12", Least = 1, Greatest = 200)]
    public Known<int> Series { get; init; }
    /// <summary>Greatest discharge current.</summary>
    [Entry("Greatest continuous discharge current.", Example = "60 A", Positive = true)]
    public Known<Current> DischargeCurrent { get; init; }
    /// <summary>Greatest charge current.</summary>
    [Entry("Greatest charge current.", Example = "20 A")]
    public Known<Current> ChargeCurrent { get; init; }
    /// <summary>Whether braking current can pass.</summary>
    [Entry("Whether braking current can come back through it.")]
    public Known<bool> RegenThrough { get; init; }
    /// <summary>Balance current.</summary>
    [Entry("Balance current.", Example = "60 mA")]
    public Known<Current> BalanceCurrent { get; init; }
    /// <summary>Cell voltage at which it cuts off.</summary>
    [Entry("Cell voltage at which it cuts off.", Example = "2.8 V", Greatest = 10)]
    public Known<Voltage> VoltageCut { get; init; }
    /// <summary>Length.</summary>
    [Entry("Length.", Example = "90 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Length { get; init; }
    /// <summary>Width.</summary>
    [Entry("Width.", Example = "60 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Width { get; init; }
    /// <summary>Height.</summary>
    [Entry("Height.", Example = "8 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Height { get; init; }
}

/// <summary>How the cells are put together.</summary>
public sealed record Pack : Part
{
    /// <summary>Cells in series.</summary>
    [Entry("Cells in series.", Example = "12", Least = 1, Greatest = 200)]
    public Known<int> Series { get; init; }
    /// <summary>Cells in parallel.</summary>
    [Entry("Cells in parallel.", Example = "4", Least = 1, Greatest = 100)]
    public Known<int> Parallel { get; init; }
    /// <summary>The protection circuit.</summary>
    [Entry("The protection circuit: an id on the shelf, or an inline part.", Example = "bms-12s-60")]
    public Protection Protection { get; init; } = new();
    /// <summary>Whether the protection lies beside the pack.</summary>
    [Entry("Whether the protection circuit lies beside the pack and is no part of its length, width and height; no where not given.")]
    public Known<bool> ProtectionOutside { get; init; }
    /// <summary>Plug of the pack.</summary>
    [Entry("Plug of the pack.", Example = "XT90")]
    public Known<string> Plug { get; init; }
    /// <summary>Mass of links, wrap and holder.</summary>
    [Entry("Mass of everything in the pack but cells and protection.", Example = "0.5 kg")]
    public Known<Mass> MassExtra { get; init; }
    /// <summary>Resistance of the links.</summary>
    [Entry("Resistance of links and leads inside the pack.", Example = "4 mohm")]
    public Known<Resistance> Links { get; init; }
    /// <summary>Resistor that fills the controllers' capacitors.</summary>
    [Entry("Resistor through which the controllers' capacitors are filled before the main contact closes, where there is one.", Example = "33 ohm", Positive = true)]
    public Known<Resistance> Precharge { get; init; }
    /// <summary>Length.</summary>
    [Entry("Length.", Example = "330 mm", Positive = true)]
    public Known<Length> Length { get; init; }
    /// <summary>Width.</summary>
    [Entry("Width.", Example = "150 mm", Positive = true)]
    public Known<Length> Width { get; init; }
    /// <summary>Height.</summary>
    [Entry("Height.", Example = "42 mm", Positive = true)]
    public Known<Length> Height { get; init; }
}

/// <summary>A mains charger.</summary>
public sealed record Charger : Part
{
    /// <summary>End voltage.</summary>
    [Entry("End voltage.", Example = "50.4 V", Positive = true)]
    public Known<Voltage> Voltage { get; init; }
    /// <summary>Current.</summary>
    [Entry("Charge current.", Example = "4 A", Positive = true)]
    public Known<Current> Current { get; init; }
    /// <summary>Efficiency.</summary>
    [Entry("Efficiency from the wall to the pack.", Example = "0.9", Least = 0.1, Greatest = 1)]
    public Known<Number> Efficiency { get; init; }
    /// <summary>Current at which it stops.</summary>
    [Entry("Current at which it stops.", Example = "0.4 A")]
    public Known<Current> EndCurrent { get; init; }
    /// <summary>Plug.</summary>
    [Entry("Plug.", Example = "round 3-pin")]
    public Known<string> Plug { get; init; }
}

/// <summary>What a remote's receiver tells the controller when it hears nothing.</summary>
public enum Failsafe
{
    /// <summary>Neither drive nor brake.</summary>
    Coast,
    /// <summary>A soft brake.</summary>
    Brake,
    /// <summary>Nothing: the last command goes on.</summary>
    None,
}

/// <summary>A hand remote and its receiver.</summary>
public sealed record Remote : Part
{
    /// <summary>Port of the receiver.</summary>
    [Entry("Port of the receiver; the same name as on the controller.", Example = "pulse 3-pin")]
    public Known<string> Port { get; init; }
    /// <summary>What happens when the link is lost.</summary>
    [Entry("What the receiver tells the controller when the link is lost.")]
    public Known<Failsafe> Failsafe { get; init; }
    /// <summary>Length of the receiver.</summary>
    [Entry("Length of the receiver that lies in the box.", Example = "40 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> ReceiverLength { get; init; }
    /// <summary>Width of the receiver.</summary>
    [Entry("Width of the receiver that lies in the box.", Example = "22 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> ReceiverWidth { get; init; }
    /// <summary>Height of the receiver.</summary>
    [Entry("Height of the receiver that lies in the box.", Example = "9 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> ReceiverHeight { get; init; }
}

/// <summary>A kind of plug.</summary>
public sealed record Plug : Part
{
    /// <summary>Continuous current.</summary>
    [Entry("Greatest continuous current.", Example = "45 A", Positive = true)]
    public Known<Current> CurrentContinuous { get; init; }
    /// <summary>Peak current.</summary>
    [Entry("Greatest current for a short time.", Example = "90 A", Positive = true)]
    public Known<Current> CurrentPeak { get; init; }
    /// <summary>Resistance of a mated pair of contacts.</summary>
    [Entry("Resistance of one mated pair of contacts.", Example = "0.3 mohm")]
    public Known<Resistance> ContactResistance { get; init; }
    /// <summary>Greatest voltage.</summary>
    [Entry("Greatest voltage.", Example = "120 V", Positive = true)]
    public Known<Voltage> Voltage { get; init; }
    /// <summary>What it mates with, when not with its like.</summary>
    [Entry("Plugs it mates with, when not with its like.", Example = "XT90")]
    public Known<Texts> MatesWith { get; init; }
}

/// <summary>A fuse.</summary>
public sealed record Fuse : Part
{
    /// <summary>Rating.</summary>
    [Entry("Rated current.", Example = "60 A", Positive = true)]
    public Known<Current> Rating { get; init; }
    /// <summary>Melting integral.</summary>
    [Entry("Current squared times time that melts it.")]
    public Known<FusingIntegral> MeltingI2t { get; init; }
    /// <summary>Greatest voltage.</summary>
    [Entry("Greatest DC voltage it can break.", Example = "80 V", Positive = true)]
    public Known<Voltage> Voltage { get; init; }
    /// <summary>Greatest current it can break.</summary>
    [Entry("Greatest current that it can break at that voltage.", Example = "2000 A", Positive = true)]
    public Known<Current> BreakingCurrent { get; init; }
    /// <summary>Length.</summary>
    [Entry("Length, with its holder.", Example = "45 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Length { get; init; }
    /// <summary>Width.</summary>
    [Entry("Width, with its holder.", Example = "18 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Width { get; init; }
    /// <summary>Height.</summary>
    [Entry("Height, with its holder.", Example = "14 mm", Positive = true, Greatest = 0.5)]
    public Known<Length> Height { get; init; }
}

/// <summary>One run of wire between two places.</summary>
public sealed record Run : Sheet
{
    /// <summary>Where it begins.</summary>
    [Entry("Where it begins: pack, controller, charger.", Example = "pack")]
    public Known<string> From { get; init; }
    /// <summary>Where it ends.</summary>
    [Entry("Where it ends: controller, motors, pack.", Example = "controller")]
    public Known<string> To { get; init; }
    /// <summary>Copper section.</summary>
    [Entry("Wire gauge or copper section.", Example = "AWG 12", Positive = true, Greatest = 0.001)]
    public Known<Area> Gauge { get; init; }
    /// <summary>Length of the run, one way.</summary>
    [Entry("Length of the run, one way; both conductors of a pair are this long.", Example = "0.25 m", Spread = SpreadKind.None)]
    public Known<Length> Length { get; init; }
    /// <summary>Plug in the run.</summary>
    [Entry("Plug in the run.", Example = "XT90")]
    public Known<string> Plug { get; init; }
    /// <summary>Fuse of a thin branch.</summary>
    [Entry("Rating of a fuse of its own at the pack's end of a thin branch, where it has one.", Example = "7.5 A", Positive = true)]
    public Known<Current> Fuse { get; init; }
    /// <summary>Diameter over the insulation.</summary>
    [Entry("Diameter over the insulation; from the section where not given.", Example = "4.5 mm", Positive = true, Greatest = 0.05)]
    public Known<Length> OuterDiameter { get; init; }
    /// <summary>Greatest conductor temperature.</summary>
    [Entry("Greatest temperature of the conductor; 105 °C where not given.", Example = "105 °C")]
    public Known<Temperature> InsulationLimit { get; init; }
}
