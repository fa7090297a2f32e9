using Boardwright.Findings;
using Boardwright.Packs;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Wiring;

/// <summary>A resistor through which the controllers' capacitors are filled before the main contact closes.</summary>
/// <param name="Resistance">Its resistance.</param>
/// <param name="Filling">The pack on the empty capacitors through it.</param>
/// <param name="Idle">Power that the controllers may take meanwhile.</param>
/// <validity>Capacitors empty at the start, nothing but the controllers' own draw behind them.</validity>
/// <error>As good as the capacitance, some 20 %.</error>
/// <source cref="Sources.CircuitTheory"/>
public sealed record Precharge(Resistance Resistance, Inrush Filling, Power Idle)
{
    // Longer than this nobody holds a button; what is left of the voltage may still spark: common practice.
    const double PatienceSeconds = 1, Left = 0.05;

    // The usual steps of resistors, six to the decade (IEC 60063).
    static readonly double[] Steps = [1, 1.5, 2.2, 3.3, 4.7, 6.8];

    /// <summary>The resistor that fills a board's capacitors: the stated one, or one that would suit.</summary>
    public static Answer<Precharge> Compute(Board board, Answer<VoltageWindow> window) => Answer<Precharge>.Ask("", needs =>
    {
        var (controller, count) = (board.Parts.Controller, PartSlot.ControllerCount(board.Parts));
        var capacitance = Capacitance.FromFarads(needs.Read(controller.BusCapacitance).Farads * count);
        var idle = needs.Read(controller.IdlePower) * count;
        var volts = needs.Read(window);
        if (needs.Unmet || capacitance.Farads <= 0)
            return null;
        return board.Parts.Pack.Precharge.IsKnown
            ? With(needs.Read(board.Parts.Pack.Precharge), volts.Full, capacitance, idle)
            : Sized(volts.Full, capacitance, idle);
    });

    /// <summary>Time until 95 % of the pack's voltage.</summary>
    public Duration Mostly => Filling.TimeConstant * Log(20);
    /// <summary>Time until 99 % of it.</summary>
    public Duration Full => Filling.TimeConstant * Log(100);
    /// <summary>Energy of the one pulse, whatever the resistance: ½ C V².</summary>
    public Energy Pulse => Filling.Energy;
    /// <summary>Power at the first moment: V²/R.</summary>
    public Power FirstPower => Filling.PeakPower;
    /// <summary>Current at the first moment: V/R.</summary>
    public Current FirstCurrent => Filling.PeakCurrent;
    /// <summary>Voltage that the controllers' own draw keeps across it for ever: P R / V.</summary>
    public Voltage Remains => Voltage.FromVolts(Idle.Watts / Filling.Supply.Volts * Resistance.Ohms);
    /// <summary>Whether that is no more than 5 % of the pack's voltage.</summary>
    public bool Reaches => Remains <= Filling.Supply * Left;
    /// <summary>I²t that it lets through: C V²/(2 R).</summary>
    public FusingIntegral Through => FusingIntegral.FromAmpereSquaredSeconds(Pulse.Joules / Resistance.Ohms);

    /// <summary>With a given resistance.</summary>
    public static Precharge With(Resistance resistance, Voltage supply, Capacitance capacitance, Power idle) =>
        new(resistance, new Inrush(supply, capacitance, resistance), idle);

    /// <summary>The largest usual resistance that fills to 99 % within a second, and past which the controllers' own draw leaves no more
    /// than 5 % of the voltage.</summary>
    public static Precharge Sized(Voltage supply, Capacitance capacitance, Power idle)
    {
        var quick = PatienceSeconds / (Log(100) * capacitance.Farads);
        var reaching = idle.Watts > 0 ? Left * supply.Volts * supply.Volts / idle.Watts : double.PositiveInfinity;
        return With(Resistance.FromOhms(StepBelow(Min(quick, reaching))), supply, capacitance, idle);
    }

    static double StepBelow(double most)
    {
        var decade = Pow(10, Floor(Log10(most)));
        return Steps.Last(s => s * decade <= most * (1 + 1e-9)) * decade;
    }
}
