using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Wiring;

/// <summary>Wires of one run as they are cut.</summary>
/// <param name="Name">Between which parts.</param>
/// <param name="Run">The run.</param>
/// <param name="Conductors">How many wires: three for each motor, two for anything else.</param>
/// <source cref="Sources.Geometry"/>
public sealed record WireCut(string Name, Run Run, int Conductors)
{
    const int OfMotor = 3, OfPair = 2;

    /// <summary>Length of all wires of the run; <c>null</c> when the run's length is not known.</summary>
    public Length? Together => Run.Length.IsKnown ? Run.Length.Value * Conductors : null;

    /// <summary>Name of the wire: its gauge, or its section where it is none.</summary>
    /// <returns>The name; <c>null</c> when the section is not known.</returns>
    public string? Wire
    {
        get
        {
            if (!Run.Gauge.IsKnown)
                return null;
            var section = Run.Gauge.Value;
            var millimetres = FormattableString.Invariant($"{section.SquareMetres * 1e6:0.##} mm²");
            var gauge = WireGauge.Nearest(section);
            return Math.Abs(gauge.Section.SquareMetres / section.SquareMetres - 1) < 0.02 ? $"{gauge.Name} ({millimetres})" : millimetres;
        }
    }

    /// <summary>Every run of a board.</summary>
    public static IReadOnlyList<WireCut> Of(Board board)
    {
        ArgumentNullException.ThrowIfNull(board);
        var motors = board.Parts.Drive.Motors.Or(1);
        return [.. board.Wiring.Select(run => new WireCut($"{run.From.Or("?")} to {run.To.Or("?")}", run, WiringRuns.IsMotorRun(run) ? OfMotor * motors : OfPair))];
    }
}
