using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Road;
using Boardwright.Traction;
using Boardwright.UsualValues;

namespace Boardwright.Lessons;

/// <summary>Everything that rides teach of one board, each with its range, and what its file can take over.</summary>
/// <validity>As each fit.</validity>
/// <error>As each fit.</error>
/// <source cref="Sources.RideRecord"/>
public sealed record RideTeaching
{
    /// <summary>Energy for the distance, of the first ride that tells it.</summary>
    public EnergyFromRide? Energy { get; init; }
    /// <summary>The pack, of the first ride that tells it.</summary>
    public PackFromRide? Pack { get; init; }
    /// <summary>Capacity by rest voltages.</summary>
    public Estimate<Charge>? Capacity { get; init; }
    /// <summary>Speed for a volt.</summary>
    public KvFromRide? Drive { get; init; }
    /// <summary>That against the board file.</summary>
    public Estimate<Number>? Against { get; init; }
    /// <summary>Heat of the motor.</summary>
    public MotorHeatFromRide? Heat { get; init; }
    /// <summary>How many coast-downs were found.</summary>
    public required int Runs { get; init; }
    /// <summary>Rolling and drag; <c>null</c> where the board's mass is not known.</summary>
    public CoastDownAnswer? Rolling { get; init; }
    /// <summary>What the board can take over, and what it cannot and why.</summary>
    public required IReadOnlyList<Lesson> Lessons { get; init; }
    /// <summary>Whether anything was learnt.</summary>
    public bool IsAny => Energy is not null || Pack is not null || Drive is not null || Heat is not null || Rolling?.Fit is not null;

    /// <summary>Learns from rides.</summary>
    /// <param name="board">The board, its entries named.</param>
    /// <param name="logs">Its rides, at least one.</param>
    public static RideTeaching Learn(Board board, params IReadOnlyList<RideLog> logs)
    {
        ArgumentNullException.ThrowIfNull(board);
        board = UsualTable.Complete(board);
        var (parts, own) = (board.Parts, SteadyRunningOfBoard.Compute(board));
        var pack = logs.Select(PackFromRide.Fit).FirstOrDefault(p => p is not null);
        var capacity = pack is not null && parts is { Cell.RestVoltage.IsKnown: true, Pack.Series.IsKnown: true }
            ? pack.Capacity(parts.Cell.RestVoltage.Value, parts.Pack.Series.Value) : null;
        var drive = logs.Select(KvFromRide.Fit).FirstOrDefault(d => d is not null);
        Estimate<Number>? against = drive is not null && parts is { Motor.Kv.IsKnown: true, Wheels.Diameter.IsKnown: true }
            && own.Gearing.IsKnown
            ? drive.Against(parts.Motor.Kv.Value, own.Gearing.Value.Ratio, parts.Wheels.Diameter.Value) : null;
        var heat = parts.Motor.LineResistance.IsKnown || parts.Motor.PhaseResistance.IsKnown
            ? logs.Select(log => MotorHeatFromRide.Fit(
                log, parts.Motor.LineResistance.IsKnown ? parts.Motor.LineResistance.Value : 2 * parts.Motor.PhaseResistance.Value,
                log.AirTemperatures.IsThere || !board.Brief.Temperature.IsKnown ? null : board.Brief.Temperature.Value))
                .FirstOrDefault(h => h is not null)
            : null;
        CoastDownRun[] runs = [.. logs.SelectMany(log => CoastDown.Find(log))];
        var conditions = ConditionsOf(own);
        var rolling = conditions is null ? null : CoastDown.Fit(runs, conditions);
        List<Lesson> lessons =
        [
            .. rolling?.Fit is { } fit ? LessonSet.From(fit, board, conditions!) : [],
            .. pack is null ? [] : new[] { LessonSet.From(pack, board) },
            .. capacity is { } charge ? new[] { LessonSet.Capacity(charge, board) } : [],
            .. against is { } kv ? new[] { LessonSet.Kv(kv, board) } : [],
            .. heat is null ? [] : new[] { LessonSet.From(heat, board) },
        ];
        return new()
        {
            Energy = logs.Select(EnergyFromRide.Fit).FirstOrDefault(e => e is not null),
            Pack = pack,
            Capacity = capacity,
            Drive = drive,
            Against = against,
            Heat = heat,
            Runs = runs.Length,
            Rolling = rolling,
            Lessons = lessons,
        };
    }

    /// <summary>What a coast-down needs to know of board, rider and air, as the board file has it.</summary>
    /// <returns>The conditions; <c>null</c> where the masses are not known.</returns>
    public static CoastDownConditions? ConditionsOf(SteadyRunningOfBoard board)
    {
        ArgumentNullException.ThrowIfNull(board);
        if (!board.RollingMass.IsKnown || !board.EffectiveMass.IsKnown) return null;
        var mass = board.RollingMass.Value.Mass;
        var air = board.Air.IsKnown ? board.Air.Value : Air.SeaLevel;
        // A rider is weighed to a hundredth, and the air of a day is known to two.
        return new(mass, board.EffectiveMass.Value.Mass - mass, air.DensityKilogramsPerCubicMetre) { MassSpread = 0.01, AirSpread = 0.02 };
    }
}
