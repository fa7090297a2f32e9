using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Traction;
using Boardwright.UsualValues;

namespace Boardwright.Rides;

/// <summary>What a ride needs to know of a board and its rider.</summary>
/// <validity>As <see cref="Running"/>, <see cref="CellModel"/> and <see cref="RideHeat"/>.</validity>
/// <error>Theirs.</error>
/// <source cref="Sources.Mechanics"/>
public sealed record RideModel
{
    /// <summary>The board on the road: the same forces and limits as in the steady figures.</summary>
    public required BrakedRunning Running { get; init; }
    /// <summary>One cell.</summary>
    public required CellModel Cell { get; init; }
    /// <summary>What gets warm.</summary>
    public required RideHeat Heat { get; init; }
    /// <summary>How the rider rides.</summary>
    public required RiderPace Pace { get; init; }
    /// <summary>Resistance of one phase at 20 °C, ohm.</summary>
    public required double PhaseOhmsAt20 { get; init; }
    /// <summary>Part of the drag torque that a gearbox's oil takes, which does not warm the motor, N·m.</summary>
    public required double OilTorque { get; init; }
    /// <summary>Charge the rider wants left, 0 to 1.</summary>
    public required double Reserve { get; init; }
    /// <summary>Entries all this rests on.</summary>
    public required IReadOnlyList<string> From { get; init; }

    /// <summary>Of a board.</summary>
    public static Answer<RideModel> Compute(Board board)
    {
        board = UsualTable.Complete(board);
        var parts = SteadyRunningOfBoard.Compute(board);
        return Answer<RideModel>.Ask("", (Func<Needs, RideModel?>)(needs =>
        {
            var (drive, running) = (needs.Read(parts.Drive), needs.Read(parts.Braked));
            var cell = needs.Read(CellModel.Compute(board.Parts.Cell));
            var motor = needs.Read(parts.Motor);
            var heat = needs.Read(RideHeat.Compute(board, parts.Air));
            var brief = board.Brief;
            var cruise = needs.Read(brief.CruiseSpeed);
            var (accelerating, braking) =
                (needs.Read(brief.Acceleration, RiderPace.UsualAccelerating), needs.Read(brief.Braking, RiderPace.UsualBraking));
            var reserve = needs.Read(brief.Reserve);
            return needs.Unmet ? null : new RideModel
            {
                Running = running with { Drive = drive },
                Cell = cell,
                Heat = heat,
                Pace = new RiderPace(cruise, accelerating, braking),
                PhaseOhmsAt20 = motor.PhaseResistanceAt20.Ohms,
                OilTorque = motor.OilLoss.NewtonMetres,
                Reserve = reserve.Value,
                From = [.. needs.RestsOn.Concat(parts.From).Distinct(StringComparer.Ordinal)],
            };
        }));
    }
}
