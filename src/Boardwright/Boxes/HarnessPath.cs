using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;
using Boardwright.Wiring;

namespace Boardwright.Boxes;

/// <summary>How long the runs of a harness are along a layout of the box: from lead to lead, along the board and across it, as wires are
/// laid and tied.</summary>
/// <validity>Leads where the layout has them; outside of the box from the gland to the middle of the motor's can.</validity>
/// <error>The layout's places, and some 20 mm at each lead.</error>
/// <source cref="Sources.Geometry"/>
static class HarnessPath
{
    /// <summary>A harness with the lengths of those runs whose two ends have a place.</summary>
    /// <param name="harness">The harness.</param>
    /// <param name="layout">What lies where in the box.</param>
    /// <param name="shape">Where box and motors are on the board.</param>
    /// <param name="board">The board.</param>
    public static Harness Along(Harness harness, BoxLayout layout, BoardShape shape, Board board)
    {
        ArgumentNullException.ThrowIfNull(harness);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(board);
        return harness.Laid(run => LengthOf(run, harness, layout, shape, board));
    }

    static Length? LengthOf(HarnessRun run, Harness harness, BoxLayout layout, BoardShape shape, Board board) => run.Kind switch
    {
        RunKind.Pack => Supply(run, harness, layout, board),
        RunKind.Charge => Between(At(layout, "charge socket", "inside"), At(layout, "pack", "charge")),
        RunKind.Gauge => Between(At(layout, "gauge", "inside"), At(layout, "pack", "charge")),
        RunKind.Receiver => Between(At(layout, "receiver", "controller"), At(layout, "controller", "receiver")),
        RunKind.Switch => Between(At(layout, "switch", "inside"), At(layout, "controller", "receiver")),
        RunKind.Motor or RunKind.Sensor =>
            ToMotor(harness.Runs.Where(r => r.Kind == run.Kind).TakeWhile(r => r != run).Count(), layout, shape, board),
        _ => null,
    };

    // Through the fuse where it has a place; several controllers on one run reach as far as the farthest.
    static Length? Supply(HarnessRun run, Harness harness, BoxLayout layout, Board board)
    {
        var runs = harness.Runs.Where(r => r.Kind == RunKind.Pack).ToList();
        var controllers = PartSlot.ControllerCount(board.Parts);
        var mine = runs.Count >= controllers ? [runs.IndexOf(run)] : Enumerable.Range(0, controllers);
        Length? longest = null;
        foreach (var number in mine)
        {
            var controller = At(layout, BoxThing.NameOf(ThingKind.Controller, number + 1), "pack");
            var way = layout["fuse"] is { } fuse
                ? Sum(Sum(Between(At(layout, "pack", "main"), At(layout, "fuse", "pack")), fuse.Thing.Length), Between(At(layout, "fuse", "out"), controller))
                : Between(At(layout, "pack", "main"), controller);
            longest = longest is { } l && way is { } w && l > w ? longest : way ?? longest;
        }

        return longest;
    }

    static Length? ToMotor(int motor, BoxLayout layout, BoardShape shape, Board board)
    {
        var each = Math.Max(1, board.Parts.Controller.Motors.Or(1));
        var (controller, gland) = (BoxThing.NameOf(ThingKind.Controller, motor / each + 1), BoxThing.NameOf(ThingKind.Gland, motor + 1));
        var from = At(layout, controller, FormattableString.Invariant($"motor {motor % each + 1}"));
        // One gland may take the wires of all motors.
        var through = layout[gland] is null ? "gland 1" : gland;
        if (layout[through] is not { } hole || At(layout, through, "inside") is not { } inside || shape.Box is not { } box
            || motor >= shape.Motors.Count)
            return null;
        var can = shape.Motors[motor].Can;
        var middle = (box.Inside.Back + box.Inside.Front) / 2;
        // The layout counts right as positive, the board's frame left.
        var outside = Between((middle + hole.X, hole.Y), (can.X, -can.Middle));
        return Sum(Between(from, inside), Sum(hole.Thing.Length, outside));
    }

    static (Length X, Length Y)? At(BoxLayout layout, string thing, string lead) =>
        layout[thing]?.Leads.FirstOrDefault(l => l.Name == lead) is { } found ? (found.X, found.Y) : null;

    static Length? Between((Length X, Length Y)? a, (Length X, Length Y)? b) => a is { } from && b is { } to
        ? Length.FromMetres(Math.Abs((from.X - to.X).Metres) + Math.Abs((from.Y - to.Y).Metres)) : null;

    static Length? Sum(Length? a, Length? b) => a is { } one && b is { } other ? one + other : null;
}
