using Boardwright.Findings;

namespace Boardwright.Traction;

/// <summary>Where the power of a steady ride goes, from the charge in the cells to the road, W.</summary>
/// <param name="Air">Against the air.</param>
/// <param name="Rolling">Against rolling.</param>
/// <param name="Grade">Uphill; negative downhill.</param>
/// <param name="Gearing">Lost in belts or gears.</param>
/// <param name="Drag">Lost to the motors' drag.</param>
/// <param name="Copper">Warms the motors' copper.</param>
/// <param name="Controllers">Lost in the controllers: conducting, switching, and idle.</param>
/// <param name="Wiring">Warms the wires between pack and controllers.</param>
/// <param name="Links">Warms links and leads inside the pack.</param>
/// <param name="Cells">Warms the cells.</param>
/// <validity>As for <see cref="SteadyRunning"/>.</validity>
/// <error>The parts add up to what leaves the charge exactly.</error>
/// <source cref="Sources.Mechanics"/>
public sealed record PowerSplit(
    double Air, double Rolling, double Grade, double Gearing, double Drag, double Copper, double Controllers, double Wiring, double Links,
    double Cells)
{
    /// <summary>All of it: rest voltage times current.</summary>
    public double Sum => AtTerminals + Cells;
    /// <summary>What leaves the cells at their terminals, which is what a consumption counts.</summary>
    public double AtTerminals => Air + Rolling + Grade + Gearing + Drag + Copper + Controllers + Wiring + Links;

    /// <summary>Of an operating point.</summary>
    /// <param name="run">The board.</param>
    /// <param name="at">The operating point.</param>
    /// <param name="grade">The grade it was found for, rise over run.</param>
    /// <param name="charge">The state of charge it was found for, 0 to 1.</param>
    public static PowerSplit Compute(SteadyRunning run, OperatingPoint at, double grade, double charge)
    {
        var (drive, load) = (run.Drive, run.Load);
        var (speed, current, bus) = (at.Speed, at.PhaseCurrent, at.Bus);
        var motor = drive.MotorSpeed(speed);
        var air = load.Drag(Speed.FromMetresPerSecond(speed), Speed.FromMetresPerSecond(run.Headwind)).Newtons;
        var climbing = load.Weight.Newtons * grade / Math.Sqrt(1 + grade * grade);
        var squared = bus.Amperes * bus.Amperes;
        return new PowerSplit(
            Air: air * speed,
            Rolling: (at.Force - air - climbing) * speed,
            Grade: climbing * speed,
            Gearing: at.Force * speed * (1 / drive.Efficiency - 1),
            Drag: drive.Motors * drive.Drag(motor) * motor,
            Copper: drive.Motors * 1.5 * drive.PhaseResistance * current * current,
            Controllers: drive.Motors
            * (1.5 * drive.SwitchResistance * current * current + drive.SwitchingFactor * bus.Volts * Math.Abs(current)) + drive.IdlePower,
            Wiring: squared * run.WiringResistance,
            Links: squared * run.Pack.Links.Ohms,
            Cells: squared * run.Pack.CellOhmsAt(charge));
    }
}
