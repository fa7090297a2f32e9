using System.Runtime.InteropServices;
using Boardwright.Findings;

namespace Boardwright.Rides;

/// <summary>Everything a ride remembers from one step to the next, in SI units.</summary>
/// <param name="Seconds">Time since the start.</param>
/// <param name="Metres">Distance ridden.</param>
/// <param name="Place">Place on the route.</param>
/// <param name="Speed">Speed.</param>
/// <param name="Charge">State of charge, 0 to 1.</param>
/// <param name="FirstVolts">Voltage of the pack's first branch.</param>
/// <param name="SecondVolts">Voltage of the second.</param>
/// <param name="Cells">Temperature of the cells, K.</param>
/// <param name="Winding">Temperature of the windings, K.</param>
/// <param name="Case">Temperature of the motors' cases, K.</param>
/// <param name="Controller">Temperature of the controllers, K.</param>
/// <source cref="Sources.Mechanics"/>
[StructLayout(LayoutKind.Auto)]
public record struct RideState(
    double Seconds, double Metres, double Place, double Speed, double Charge, double FirstVolts, double SecondVolts,
    double Cells, double Winding, double Case, double Controller)
{
    /// <summary>Standing at the start, rested and as warm as the air.</summary>
    public static RideState AtRest(double charge, double kelvins) => new(0, 0, 0, 0, charge, 0, 0, kelvins, kelvins, kelvins, kelvins);
}

/// <summary>What keeps a board from what its rider wants.</summary>
public enum RideLimit
{
    /// <summary>Nothing.</summary>
    Nothing,
    /// <summary>Phase current.</summary>
    PhaseCurrent,
    /// <summary>Phase current, faded by a hot controller.</summary>
    HotController,
    /// <summary>Pack current.</summary>
    PackCurrent,
    /// <summary>The taper of an emptying pack.</summary>
    Taper,
    /// <summary>Voltage, or the electrical speed.</summary>
    Voltage,
    /// <summary>Grip of the tyres.</summary>
    Grip,
}

/// <summary>How a ride ended.</summary>
public enum RideEnd
{
    /// <summary>At the end of the route.</summary>
    EndOfRoute,
    /// <summary>With no more than the reserve left.</summary>
    Reserve,
    /// <summary>The loaded cells fell to where power is cut.</summary>
    PowerCut,
    /// <summary>The board could not go on.</summary>
    CannotGoOn,
    /// <summary>After the longest time allowed.</summary>
    TimeIsUp,
}

/// <summary>One moment of a ride, for traces: means of the step that ends there, and the state at its end.</summary>
/// <param name="State">State at the end of the step.</param>
/// <param name="Grade">Grade of the road, rise over run.</param>
/// <param name="Force">Force of the drive at the wheels, N; negative when it brakes.</param>
/// <param name="FootBrake">Force of the foot or slide brake, N.</param>
/// <param name="PhaseCurrent">Phase amplitude of each motor, A; negative when it brakes.</param>
/// <param name="PackCurrent">Current out of the pack, A; negative into it.</param>
/// <param name="BusVolts">Voltage at the controllers.</param>
/// <param name="CellVolts">Voltage of a cell.</param>
/// <param name="HeldBack">What kept the board from what its rider wanted.</param>
/// <source cref="Sources.Mechanics"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct RideMoment(
    RideState State, double Grade, double Force, double FootBrake, double PhaseCurrent, double PackCurrent, double BusVolts,
    double CellVolts, RideLimit HeldBack);

/// <summary>Where the energy of a ride came from and went to, in joules.</summary>
/// <remarks>What the cells gave up inside equals the sum of everything else.</remarks>
/// <source cref="Sources.Mechanics"/>
[StructLayout(LayoutKind.Auto)]
public record struct RideEnergy
{
    /// <summary>Given up inside the cells: ∫ E I dt, E the rest voltage.</summary>
    public double FromCells { get; set; }
    /// <summary>Pushed through the air; negative when the wind pushed more than it held back.</summary>
    public double Air { get; set; }
    /// <summary>Rolling.</summary>
    public double Rolling { get; set; }
    /// <summary>Lifted; negative when the ride went down.</summary>
    public double Grade { get; set; }
    /// <summary>Still in motion at the end, less that at the start.</summary>
    public double Motion { get; set; }
    /// <summary>Lost in the copper of the motors.</summary>
    public double Copper { get; set; }
    /// <summary>Lost to the drag of the motors, oil included.</summary>
    public double Drag { get; set; }
    /// <summary>Lost in belts or gears.</summary>
    public double Gears { get; set; }
    /// <summary>Lost in the bridges while they conduct.</summary>
    public double Conduction { get; set; }
    /// <summary>Lost in the bridges while they switch.</summary>
    public double Switching { get; set; }
    /// <summary>Taken by the controllers for themselves.</summary>
    public double Idle { get; set; }
    /// <summary>Lost in the wires between pack and controllers.</summary>
    public double Wiring { get; set; }
    /// <summary>Lost in the links inside the pack.</summary>
    public double Links { get; set; }
    /// <summary>Lost in the resistance of the cells that answers at once.</summary>
    public double CellResistance { get; set; }
    /// <summary>Lost in the slower part of the cells' resistance.</summary>
    public double Polarisation { get; set; }
    /// <summary>Still held by the slower part at the end; it becomes heat while the pack rests.</summary>
    public double HeldInPolarisation { get; set; }
    /// <summary>Burnt by foot or slide.</summary>
    public double FootBrake { get; set; }
    /// <summary>Left the cells at their terminals, gross.</summary>
    public double Delivered { get; set; }
    /// <summary>Came back into the cells at their terminals from the electric brake.</summary>
    public double Returned { get; set; }

    /// <summary>Everything that the energy given up inside the cells went to.</summary>
    public readonly double Used => Air + Rolling + Grade + Motion + Copper + Drag + Gears + Conduction + Switching + Idle + Wiring + Links
        + CellResistance + Polarisation + HeldInPolarisation + FootBrake;

    /// <summary>What does not add up, as a part of the energy that left the cells; the arithmetic's own error.</summary>
    public readonly double Unaccounted => Delivered == 0 ? 0 : Math.Abs(FromCells - Used) / Delivered;
}
