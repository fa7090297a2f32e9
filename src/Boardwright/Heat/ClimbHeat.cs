using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Parts;
using Boardwright.Road;

namespace Boardwright.Heat;

/// <summary>How hot the motors get on the brief's climb.</summary>
/// <param name="Settled">Temperatures after hours on the climb; <c>null</c> when the copper's own rise lets them run away.</param>
/// <param name="TimeToLimit">Time from cold until the winding passes its limit; <c>null</c> when it never does, or no limit is
/// known.</param>
/// <param name="Limit">The winding's limit; <c>null</c> when not known.</param>
/// <param name="IsTold">Whether that time could be told; not where the heat capacities of winding and case are too unlike.</param>
/// <param name="CaseToAir">Thermal resistance from can to air at the end.</param>
/// <source cref="Sources.TwoNodeMotor"/>
public sealed record ClimbHeat(
    MotorTemperatures? Settled, Duration? TimeToLimit, Temperature? Limit, bool IsTold, ThermalResistance CaseToAir)
{
    // The highest thermal class that windings are made in, IEC 60085.
    static readonly Temperature Hottest = Temperature.FromCelsius(250);

    /// <summary>Those temperatures where a winding lives to see them; <c>null</c> where it runs away, or settles above 250 °C on paper
    /// only.</summary>
    public MotorTemperatures? Outlived => Settled is { } end && end.Winding <= Hottest ? end : null;

    /// <summary>Heats a board's motors with a steady phase current at the climb's speed.</summary>
    /// <param name="board">The board.</param>
    /// <param name="motor">Its motor.</param>
    /// <param name="air">Air of the brief.</param>
    /// <param name="climb">Phase current and motor speed on the climb.</param>
    public static Answer<ClimbHeat> Compute(Board board, Answer<MotorModel> motor, Answer<Air> air, Answer<MotorDuty> climb) =>
        Answer<ClimbHeat>.Ask("heat.winding_at_climb", needs =>
    {
        var part = board.Parts.Motor;
        var duty = needs.Read(climb);
        var model = needs.Read(motor);
        var around = needs.Read(air);
        var speed = needs.Read(board.Brief.ClimbSpeed);
        var winding = needs.Read(part.WindingCapacity);
        var shell = needs.Read(part.CaseCapacity);
        var between = needs.Read(part.WindingToCase);
        var limit = part.WindingLimit.IsKnown ? needs.Read(part.WindingLimit) : (Temperature?)null;
        FixedCooling? given = part.CaseToAir.IsKnown ? new FixedCooling(needs.Read(part.CaseToAir), around.Temperature) : null;
        var can = given is null ? new Can(needs.Read(part.CanDiameter), needs.Read(part.CanLength)) : default;
        var shielding = given is null ? ShieldingOf(needs, board) : 1;
        if (needs.Unmet)
            return null;
        var nodes = new TwoNode(winding, shell, between);
        var drag = model.Drag.PowerAt(duty.Speed);
        var heat = new MotorHeat(Power.FromWatts(1.5 * model.PhaseResistanceAt20.Ohms * duty.Phase.Amperes * duty.Phase.Amperes), drag);
        return given is { } cooling ? With(nodes, heat, cooling, limit)
            : With(nodes, heat, CanCooling.Riding(can, speed, around, shielding), limit);
    });

    /// <summary>How much the truck and the wheels shield a board's motors; a motor in a wheel stands free.</summary>
    internal static double ShieldingOf(Needs needs, Board board) =>
        board.Parts.Drive.IsHub ? needs.Read(board.Parts.Drive.Shielding, Number.FromValue(1)).Value
        : needs.Read(board.Parts.Drive.Shielding).Value;

    static ClimbHeat With<TCooling>(TwoNode nodes, MotorHeat heat, TCooling cooling, Temperature? limit)
        where TCooling : struct, ICooling
    {
        var settled = nodes.Settled(heat, cooling);
        var passes = limit is { } most && (settled is not { } end || end.Winding > most);
        var (time, isTold) = passes ? Timed(nodes, heat, cooling, limit!.Value) : (null, true);
        return new ClimbHeat(
            settled,
            time,
            limit,
            isTold,
            cooling.At(settled?.Case ?? limit ?? cooling.Ambient));
    }

    static (Duration? Time, bool IsTold) Timed<TCooling>(TwoNode nodes, MotorHeat heat, TCooling cooling, Temperature limit)
        where TCooling : struct, ICooling
    {
        try
        {
            return (nodes.TimeToLimit(heat, cooling, limit), true);
        }
        catch (Numerics.NonConvergenceException)
        {
            return (null, false);
        }
    }
}

/// <summary>What a motor does.</summary>
/// <param name="Phase">Phase amplitude.</param>
/// <param name="Speed">Shaft speed.</param>
public sealed record MotorDuty(Current Phase, AngularSpeed Speed);
