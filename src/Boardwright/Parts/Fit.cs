using Boardwright.Findings;

namespace Boardwright.Parts;

/// <summary>How many of each part a board carries, and which places of it must be filled.</summary>
/// <param name="Key">Key of the place.</param>
/// <param name="Part">What fills it.</param>
/// <param name="Count">How many.</param>
/// <param name="Needed">Whether the board cannot do without.</param>
/// <param name="Carried">Whether the board carries it on the road.</param>
public sealed record PartSlot(string Key, Part Part, int Count, bool Needed, bool Carried)
{
    /// <summary>Entries that say how many, as far as they are known.</summary>
    public IReadOnlyList<Known<int>> CountedBy { get; init; } = [Part.Count];

    /// <summary>Every place of a board, in the order of the file.</summary>
    /// <returns>The places; the number of motors and the kind of drive must be known.</returns>
    public static Answer<IReadOnlyList<PartSlot>> All(Board board) => Answer<IReadOnlyList<PartSlot>>.Ask("", needs =>
    {
        var parts = board.Parts;
        var drive = needs.Read(parts.Drive.Kind);
        var motors = needs.Read(parts.Drive.Motors);
        if (needs.Unmet)
            return null;
        var belt = drive == DriveKind.Belt;
        var cells = parts.Pack.Series.Or(0) * parts.Pack.Parallel.Or(0);
        List<PartSlot> places =
        [
            new("deck", parts.Deck, parts.Deck.Count.Or(1), true, true),
            new("front_truck", parts.FrontTruck, parts.FrontTruck.Count.Or(1), true, true),
            new("rear_truck", parts.RearTruck, parts.RearTruck.Count.Or(1), true, true),
            new("wheels", parts.Wheels, parts.Wheels.Count.Or(4), true, true),
            new("mount", parts.Mount, parts.Mount.Count.Or(motors), belt, true),
            new("motor", parts.Motor, parts.Motor.Count.Or(motors), true, true),
            new("motor_pulley", parts.MotorPulley, parts.MotorPulley.Count.Or(motors), belt, true),
            new("wheel_pulley", parts.WheelPulley, parts.WheelPulley.Count.Or(motors), belt, true),
            new("belt", parts.Belt, parts.Belt.Count.Or(motors), belt, true),
            new("gearbox", parts.Gearbox, parts.Gearbox.Count.Or(motors), drive == DriveKind.Gear, true),
            new("controller", parts.Controller, ControllerCount(parts), true, true)
            {
                CountedBy = [parts.Controller.Count.IsKnown ? parts.Controller.Count : parts.Controller.Motors],
            },
            new("cell", parts.Cell, cells, true, true) { CountedBy = [parts.Pack.Series, parts.Pack.Parallel] },
            new("pack", parts.Pack, 1, true, true) { CountedBy = [] },
            new("pack.protection", parts.Pack.Protection, parts.Pack.Protection.Count.Or(1), false, true),
            new("charger", parts.Charger, parts.Charger.Count.Or(1), false, false),
            new("remote", parts.Remote, parts.Remote.Count.Or(1), false, true),
            new("box", parts.Box, parts.Box.Count.Or(1), false, true),
            new("fuse", parts.Fuse, parts.Fuse.Count.Or(1), false, true),
        ];
        places.AddRange(parts.Fittings.Select((fitting, i) => new PartSlot($"fittings[{i + 1}]", fitting, fitting.Count.Or(1), false, true)));
        return places;
    });

    /// <summary>How many controllers the board has: as stated, or as many as its motors need.</summary>
    public static int ControllerCount(Needs needs, Fitted parts)
    {
        var (controller, motors) = (parts.Controller, parts.Drive.Motors);
        if (controller.Count.IsKnown)
            return needs.Read(controller.Count);
        needs.Read(controller.Motors, 1);
        needs.Read(motors, 1);
        return ControllerCount(parts);
    }

    /// <summary>The same, for those who need not say what it rests on.</summary>
    public static int ControllerCount(Fitted parts)
    {
        var each = Math.Max(1, parts.Controller.Motors.Or(1));
        return parts.Controller.Count.Or((parts.Drive.Motors.Or(1) + each - 1) / each);
    }
}
