using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Wiring;

namespace Boardwright.Boxes;

/// <summary>What a thing in a box is.</summary>
public enum ThingKind
{
    /// <summary>The pack.</summary>
    Pack,
    /// <summary>A protection circuit beside the pack.</summary>
    Protection,
    /// <summary>A controller.</summary>
    Controller,
    /// <summary>The remote's receiver.</summary>
    Receiver,
    /// <summary>The main fuse, with its holder.</summary>
    Fuse,
    /// <summary>A cable gland.</summary>
    Gland,
    /// <summary>The charge socket.</summary>
    ChargeSocket,
    /// <summary>The switch.</summary>
    Switch,
    /// <summary>The charge gauge.</summary>
    Gauge,
    /// <summary>Another fitting.</summary>
    Fitting,
}

/// <summary>A place where wires leave a thing.</summary>
/// <param name="Name">What the wires lead to: <c>pack</c>, <c>motor 1</c>, <c>charge</c> and so on; <c>inside</c> on a fitting.</param>
/// <param name="X">Towards the nose, from the middle of the box; of a thing not yet placed, from its own middle, unturned.</param>
/// <param name="Y">Towards the right-hand side.</param>
/// <param name="Towards">The wall towards which the wires leave.</param>
/// <param name="Room">How far the room reaches that they need to bend, or a hand to plug them in.</param>
/// <param name="Across">How wide that room is.</param>
public sealed record Lead(string Name, Length X, Length Y, BoxWall Towards, Length Room, Length Across);

/// <summary>A thing that goes into a box, with the room that it needs around it.</summary>
/// <remarks>Unturned its length lies along the board and its first lead leaves towards the nose; a fitting's unturned wall is the rear
/// one.</remarks>
/// <param name="Name">Its stable name, such as <c>pack</c>, <c>controller 2</c> or <c>gland 1</c>.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Title">Name of the part.</param>
/// <param name="Key">Key of the part on its board, such as <c>controller</c> or <c>fittings[1]</c>.</param>
/// <param name="Length">Its length; of a fitting how deep it reaches behind the wall.</param>
/// <param name="Width">Its width; of a fitting along the wall.</param>
/// <param name="Height">Its height.</param>
/// <param name="Foam">Foam around it.</param>
/// <param name="Leads">Where its wires leave.</param>
/// <validity>Leads are taken to leave in the middle of an end, as on most parts of the trade; a part whose leads leave elsewhere is turned
/// by hand.</validity>
/// <source cref="Sources.CommonPractice"/>
/// <source cref="Sources.CableBends"/>
public sealed record BoxThing(
    string Name, ThingKind Kind, string Title, string Key, Length Length, Length Width, Length Height, Length Foam,
    IReadOnlyList<Lead> Leads)
{
    // All in mm, common practice, no source.
    const double Signal = 1.5, Hand = 15, HandAtPower = 20, NutOverHole = 1.4, UsualPower = 5;

    /// <summary>Foam between the pack and everything else, floor and deck included.</summary>
    public static Length FoamAroundPack { get; } = Length.FromMillimetres(2);
    /// <summary>Whether it sits in a wall.</summary>
    public bool IsFitting => Kind >= ThingKind.Gland;
    /// <summary>Hole or window of a fitting.</summary>
    public (Length Width, Length? Tall)? Hole { get; init; }

    /// <summary>Room that a wire needs to turn aside: three diameters inside, and itself.</summary>
    /// <param name="diameter">Diameter over the insulation.</param>
    /// <source cref="Sources.CableBends"/>
    public static Length BendOf(Length diameter) => 4 * diameter;

    /// <summary>Everything that goes into a board's box, the large things first.</summary>
    /// <param name="board">The board.</param>
    /// <returns>What has a size, and the missing entries of what has none, by name.</returns>
    public static (IReadOnlyList<BoxThing> Things, IReadOnlyList<(string Name, IReadOnlyList<string> Missing)> Unsized) ListThings(
        Board board)
    {
        ArgumentNullException.ThrowIfNull(board);
        var list = new Listing(board);
        return (list.Things, list.Unsized);
    }

    /// <summary>What a fitting is for.</summary>
    public static ThingKind RoleOf(Fitting fitting)
    {
        ArgumentNullException.ThrowIfNull(fitting);
        if (fitting.Role.IsKnown)
        {
            return fitting.Role.Value switch
            {
                FittingRole.Gland => ThingKind.Gland,
                FittingRole.ChargeSocket => ThingKind.ChargeSocket,
                FittingRole.Switch => ThingKind.Switch,
                FittingRole.Gauge => ThingKind.Gauge,
                _ => ThingKind.Fitting,
            };
        }

        bool IsCalled(string word) =>
            fitting.Id.Contains(word, StringComparison.OrdinalIgnoreCase)
            || fitting.Title.Contains(word, StringComparison.OrdinalIgnoreCase);
        return fitting.CableMax.IsKnown || fitting.CableMin.IsKnown || IsCalled("gland") ? ThingKind.Gland
            : IsCalled("socket") || IsCalled("inlet") ? ThingKind.ChargeSocket
            : IsCalled("switch") || IsCalled("button") ? ThingKind.Switch
            : IsCalled("gauge") || IsCalled("meter") || IsCalled("display") ? ThingKind.Gauge
            : ThingKind.Fitting;
    }

    /// <summary>Words that a name begins with, in the order of the kinds.</summary>
    public static IReadOnlyList<string> Words { get; } = ["pack", "protection", "controller", "receiver", "fuse", "gland", "charge socket", "switch", "gauge", "fitting"];
    /// <summary>The name of the n-th of a kind: glands are numbered from the first, all else from the second.</summary>
    public static string NameOf(ThingKind kind, int number) =>
        number == 1 && kind != ThingKind.Gland ? Words[(int)kind] : FormattableString.Invariant($"{Words[(int)kind]} {number}");

    sealed class Listing
    {
        readonly Board board;
        readonly Dictionary<ThingKind, int> counts = [];

        public List<BoxThing> Things { get; } = [];

        public List<(string Name, IReadOnlyList<string> Missing)> Unsized { get; } = [];

        public Listing(Board board)
        {
            this.board = board;
            var parts = board.Parts;
            var pack = parts.Pack;
            var power = DiameterOf("pack", "controller", UsualPower);
            var charge = DiameterOf("charger", "pack", 3.5);
            var motor = DiameterOf("controller", "motors", UsualPower);
            if (pack.IsChosen)
            {
                Add(ThingKind.Pack, pack, "pack", pack.Length, pack.Width, pack.Height, FoamAroundPack, (length, width) =>
                [
                    At("main", length / 2, -width / 4, BoxWall.Front, Power(power), 2 * power),
                    At("charge", length / 2, width / 4, BoxWall.Front, BendOf(charge), 2 * charge),
                ]);
                if (pack.Protection.IsChosen && pack.ProtectionOutside.Or(false))
                {
                    var circuit = pack.Protection;
                    Add(ThingKind.Protection, circuit, "pack.protection", circuit.Length, circuit.Width, circuit.Height, default, (length, _) =>
                    [
                        At("pack", length / 2, default, BoxWall.Front, Power(power), 2 * power),
                        At("out", -length / 2, default, BoxWall.Rear, Power(power), 2 * power),
                    ]);
                }
            }

            if (parts.Controller.IsChosen)
            {
                var controller = parts.Controller;
                var motors = Math.Clamp(controller.Motors.Or(1), 1, 4);
                for (var i = 0; i < Math.Clamp(PartSlot.ControllerCount(parts), 1, 8); i++)
                {
                    Add(ThingKind.Controller, controller, "controller", controller.Length, controller.Width, controller.Height, default,
                        (length, width) =>
                    [
                        At("pack", length / 2, default, BoxWall.Front, Power(power), 2 * power),
                        .. Enumerable.Range(0, motors)
                            .Select(m => At(FormattableString.Invariant($"motor {m + 1}"), -length / 2, width * ((m + 0.5) / motors - 0.5), BoxWall.Rear,
                            Power(motor), 3 * motor)),
                        At("receiver", length / 2, width / 3, BoxWall.Front, Length.FromMillimetres(Hand), Length.FromMillimetres(12)),
                    ]);
                }
            }

            if (parts.Fuse.IsChosen)
            {
                var fuse = parts.Fuse;
                for (var i = 0; i < Math.Clamp(fuse.Count.Or(1), 1, 8); i++)
                {
                    Add(ThingKind.Fuse, fuse, "fuse", fuse.Length, fuse.Width, fuse.Height, default, (length, _) =>
                    [
                        At("pack", length / 2, default, BoxWall.Front, BendOf(power), power),
                        At("out", -length / 2, default, BoxWall.Rear, BendOf(power), power),
                    ]);
                }
            }

            if (parts.Remote.IsChosen)
            {
                var remote = parts.Remote;
                Add(ThingKind.Receiver, remote, "remote", remote.ReceiverLength, remote.ReceiverWidth, remote.ReceiverHeight, default,
                    (length, _) =>
                    [At("controller", length / 2, default, BoxWall.Front, Length.FromMillimetres(Hand), Length.FromMillimetres(12))]);
            }

            foreach (var (i, fitting) in parts.Fittings.Index())
            {
                for (var n = 0; n < Math.Clamp(fitting.Count.Or(1), 1, 64); n++)
                    AddFitting(fitting, FormattableString.Invariant($"fittings[{i + 1}]"), motor, charge);
            }
        }

        void AddFitting(Fitting fitting, string key, Length motor, Length charge)
        {
            var kind = RoleOf(fitting);
            var name = Next(kind);
            var hole = fitting.HoleDiameter.IsKnown ? (fitting.HoleDiameter.Value, null)
                : fitting.Window is { IsKnown: true, Value.Items: [var width, var tall, ..] } ? (width, tall)
                : ((Length Width, Length? Tall)?)null;
            if (hole is not { } opening || !fitting.DepthBehind.IsKnown)
            {
                Unsized.Add((name, [.. hole is null ? new[] { fitting.HoleDiameter.Key } : [],
                    .. fitting.DepthBehind.IsKnown ? Array.Empty<string>() : [fitting.DepthBehind.Key]]));
                return;
            }

            var depth = fitting.DepthBehind.Value;
            // A round fitting has a nut; a window has its rim.
            var (across, high) = (NutOverHole * opening.Width, NutOverHole * (opening.Tall ?? opening.Width));
            var wire = kind switch { ThingKind.Gland => motor, ThingKind.ChargeSocket => charge, _ => Length.FromMillimetres(Signal) };
            Things.Add(new(name, kind, fitting.Title, key, depth, across, high, default,
                [At("inside", depth / 2, default, BoxWall.Front, BendOf(wire), across < 3 * wire ? across : 3 * wire)])
            { Hole = hole });
        }

        void Add(ThingKind kind, Part part, string key, Known<Length> length, Known<Length> width, Known<Length> height, Length foam,
            Func<Length, Length, IReadOnlyList<Lead>> leads)
        {
            var name = Next(kind);
            string[] missing = [.. new[] { length, width, height }.Where(k => !k.IsKnown).Select(k => k.Key)];
            if (missing.Length > 0)
                Unsized.Add((name, missing));
            else
                Things.Add(new(name, kind, part.Title, key, length.Value, width.Value, height.Value, foam,
                    leads(length.Value, width.Value)));
        }

        string Next(ThingKind kind) => NameOf(kind, counts[kind] = counts.GetValueOrDefault(kind) + 1);

        static Lead At(string name, Length x, Length y, BoxWall towards, Length room, Length across) =>
            new(name, x, y, towards, room, across);

        static Length Power(Length diameter) =>
            BendOf(diameter) is var bend && bend.Millimetres > HandAtPower ? bend : Length.FromMillimetres(HandAtPower);

        Length DiameterOf(string from, string to, double usual)
        {
            var run = board.Wiring.FirstOrDefault(r => r.From.Or("") == from && r.To.Or("") == to);
            return run is null ? Length.FromMillimetres(usual)
                : run.OuterDiameter.IsKnown ? run.OuterDiameter.Value
                : run.Gauge.IsKnown && run.Gauge.Value.Si > 0 ? new Conductor(run.Gauge.Value).GuessedOuterDiameter
                : Length.FromMillimetres(usual);
        }
    }
}
