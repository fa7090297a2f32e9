using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Boxes;

/// <summary>Turns a box and what goes into it into a floor plan, has it searched, and turns the answer back.</summary>
/// <remarks>First in whole millimetres, outlines rounded up; in tenths when that is too coarse.</remarks>
/// <source cref="Sources.Geometry"/>
/// <source cref="Sources.CommonPractice"/>
sealed class BoxProposal
{
    // Least distances, mm; common practice, no source: room for a spanner between nuts, and for tape between all else.
    const int BetweenNuts = 6, BetweenThings = 2;

    // What counts beside the wires' lengths, mm of power wire.
    const double OtherWall = 60, WorseWall = 150, OffMiddle = 0.2;

    /// <summary>More things than this are not searched for; no board has so many.</summary>
    public const int Most = 32;

    const int Usual = 16;

    // Metres.
    const double Coarse = 0.001, Fine = 0.0001;

    const int Rounds = 160, Starts = 24, Trials = 100;

    static readonly int[] Turns = [0, 90, 180, 270];

    readonly BoxTask task;
    readonly double step;
    readonly int along, across;
    readonly double offX, offY;
    readonly List<(int From, int FromLead, int To, int ToLead, double Weight)> wires = [];

    BoxProposal(BoxTask task, double stepMetres)
    {
        (this.task, step) = (task, stepMetres);
        (along, across) = (Steps(task.Length.Metres), Steps(task.Width.Metres));
        (offX, offY) = ((task.Length.Metres - along * step) / 2, (task.Width.Metres - across * step) / 2);
    }

    /// <summary>Between a pack and a controller, so that the warmth of one stays off the other; common practice, no source.</summary>
    public static Length HeatGap { get; } = Length.FromMillimetres(10);

    /// <summary>Some place for everything, quickly.</summary>
    /// <returns>The places in the order of the things, <c>null</c> where none was found, and the step that was fine enough.</returns>
    public static (IReadOnlyList<PlacedThing?> Places, double Step) Any(BoxTask task)
    {
        if (task.Things.Count > Most)
            return ([.. task.Things.Select(task.StatedPlaceOf)], Coarse);
        var coarse = new BoxProposal(task, Coarse).AnyWay();
        if (coarse.All(p => p is not null) || IsCertainlyTooSmall(task))
            return (coarse, Coarse);
        var fine = new BoxProposal(task, Fine).AnyWay();
        return fine.Count(p => p is not null) > coarse.Count(p => p is not null) ? (fine, Fine) : (coarse, Coarse);
    }

    /// <summary>The places that make the wires short, where everything goes in.</summary>
    /// <param name="task">The task.</param>
    /// <param name="step">The step that was fine enough.</param>
    public static IReadOnlyList<PlacedThing?> Propose(BoxTask task, double step) => new BoxProposal(task, step).Cheapest();

    /// <summary>Whether everything goes in, as far as a shorter search finds.</summary>
    public static bool Fits(BoxTask task)
    {
        var plan = new BoxProposal(task, Coarse).Plan();
        return task.Things.Count <= Most && !plan.IsCertainlyTooSmall && FloorSearch.Fit(plan, RoundsFor(plan) / 8 + 1).IsComplete;
    }

    /// <summary>Whether it is certain that it does not all go in.</summary>
    public static bool IsCertainlyTooSmall(BoxTask task) => new BoxProposal(task, Fine).Plan(shrunk: true).IsCertainlyTooSmall;

    // The work of a round grows faster than the third power of the pieces.
    static int RoundsFor(FloorPlan plan) => Share(plan, Rounds);

    static int Share(FloorPlan plan, int whole) =>
        (int)Math.Max(1, whole * Math.Pow(Math.Min(1, (double)Usual / Math.Max(1, plan.Pieces.Count)), 4));

    IReadOnlyList<PlacedThing?> AnyWay()
    {
        var plan = Plan();
        return Placed(plan, FloorSearch.Fit(plan, plan.IsCertainlyTooSmall ? 1 : RoundsFor(plan)));
    }

    IReadOnlyList<PlacedThing?> Cheapest()
    {
        var plan = Plan();
        Join();
        return Placed(plan, FloorSearch.Cheapest(
            plan, new WireCost(this, plan), RoundsFor(plan), Share(plan, Starts), Share(plan, Trials)));
    }

    IReadOnlyList<PlacedThing?> Placed(FloorPlan plan, FloorFound found) =>
        [.. found.Places.Select((place, i) => place is { } at ? Placed(i, plan.Pieces[i].Forms[at.Form], at) : null)];

    /// <summary>The task in whole steps.</summary>
    /// <param name="shrunk">Rounds outlines down rather than up and leaves the fixed places out, so that what is impossible then is
    /// impossible.</param>
    FloorPlan Plan(bool shrunk = false)
    {
        var pieces = task.Things.Select(thing => Piece(thing, shrunk)).ToList();
        return new(along + (shrunk ? 1 : 0), across + (shrunk ? 1 : 0), pieces, shrunk ? [] : [.. task.Bosses.Select(Outwards)], (i, j) =>
        {
            var (a, b) = (task.Things[i], task.Things[j]);
            return a.Kind == ThingKind.Pack && b.Kind == ThingKind.Controller ? Up((HeatGap - a.Foam).Metres)
                : a.Kind == ThingKind.Controller && b.Kind == ThingKind.Pack ? 0
                : a.IsFitting && b.IsFitting ? Up(BetweenNuts / 1000.0)
                : a.Foam.Si > 0 || b.Foam.Si > 0 ? 0
                : Up(BetweenThings / 1000.0);
        });
    }

    FloorPiece Piece(BoxThing thing, bool shrunk)
    {
        var spot = task.Spots.GetValueOrDefault(thing.Name);
        if (task.StatedPlaceOf(thing) is { } stated)
        {
            if (shrunk)
                return new([], IsFixed: true);
            var outline = Outwards(stated.Solid);
            return new([new(stated.Turn, outline.Along, outline.Across,
                [.. stated.Rooms.Select(room => Outwards(room).Moved(-outline.X, -outline.Y))], (outline.X, outline.X),
                (outline.Y, outline.Y))], IsFixed: true);
        }

        var forms = Turns.Where(turn => IsAllowed(thing, spot, turn)).Select(turn => Form(thing, spot, turn, shrunk)).ToList();
        return new(forms);
    }

    static bool IsAllowed(BoxThing thing, BoxPosition? spot, int turn) =>
        thing.IsFitting ? spot?.Wall is not { IsKnown: true } wall || wall.Value == WallAt(turn)
        : spot?.Turn is not { IsKnown: true } stated || BoxTask.QuarterTurn(stated.Value) == turn;

    FloorForm Form(BoxThing thing, BoxPosition? spot, int turn, bool shrunk)
    {
        var (solid, rooms) = Shape(thing, turn);
        int Size(double metres) => shrunk ? Math.Max(0, (int)Math.Floor(metres / step + 1e-6)) : Up(metres);
        var (l, w) = (Size(solid.Along.Metres), Size(solid.Across.Metres));
        var (backX, leftY) = (solid.X.Metres - l * step / 2, solid.Y.Metres - w * step / 2);
        FloorRectangle[] beside = shrunk ? []
            : [.. rooms.Select(r => Rectangle(
            r.Back.Metres - backX, r.Front.Metres - backX, r.Left.Metres - leftY, r.Right.Metres - leftY))];
        var (floorX, floorY) = (along + (shrunk ? 1 : 0), across + (shrunk ? 1 : 0));
        var form = FloorForm.Anywhere(turn, l, w, beside, floorX, floorY);
        if (thing.IsFitting)
        {
            form = WallAt(turn) switch
            {
                BoxWall.Rear => form with { X = (0, 0) },
                BoxWall.Front => form with { X = (floorX - l, floorX - l) },
                BoxWall.Left => form with { Y = (0, 0) },
                _ => form with { Y = (floorY - w, floorY - w) },
            };
            if (!form.Rooms.All(r => r.X + form.X.Least >= 0 && r.EndX + form.X.Least <= floorX && r.Y + form.Y.Least >= 0
                && r.EndY + form.Y.Least <= floorY))
                form = form with { X = (0, -1) };
            if (spot?.Along is { IsKnown: true } at)
                form = WallAt(turn) is BoxWall.Left or BoxWall.Right ? form with { X = At(at.Value, task.Length, offX, l) }
                    : form with { Y = At(at.Value, task.Width, offY, w) };
        }
        else
        {
            if (spot?.X is { IsKnown: true } x)
                form = form with { X = At(x.Value, task.Length, offX, l) };
            if (spot?.Y is { IsKnown: true } y)
                form = form with { Y = At(y.Value, task.Width, offY, w) };
        }

        return form;
    }

    (int, int) At(Length middle, Length whole, double off, int size) =>
        (int)Math.Round((middle.Metres + whole.Metres / 2 - off) / step - size / 2.0) is var at ? (at, at) : default;

    PlacedThing Placed(int i, FloorForm form, FloorPlace at)
    {
        var thing = task.Things[i];
        if (task.StatedPlaceOf(thing) is { } stated)
            return stated;
        var x = Length.FromMetres((at.X + form.Along / 2.0) * step + offX - task.Length.Metres / 2);
        var y = Length.FromMetres((at.Y + form.Across / 2.0) * step + offY - task.Width.Metres / 2);
        return thing.IsFitting ? task.InWall(
            thing, WallAt(form.Turn), WallAt(form.Turn) is BoxWall.Left or BoxWall.Right ? x : y, isStated: false)
            : new(thing, Tidy(x), Tidy(y), form.Turn, null, false);
    }

    // Steps of a tenth or a whole millimetre are sums of binary fractions: what is written into a file is not to end in ...0000001.
    static Length Tidy(Length value) => Length.FromMetres(Math.Round(value.Metres, 5));

    /// <summary>Which leads belong together, by the kinds of things.</summary>
    void Join()
    {
        int Index(ThingKind kind, int number = 1) =>
            task.Things.Index().FirstOrDefault(t => t.Item.Name == BoxThing.NameOf(kind, number), (-1, null!)).Item1;
        int Lead(int i, string name) => task.Things[i].Leads.Index().FirstOrDefault(l => l.Item.Name == name, (-1, null!)).Item1;
        void Wire(int from, string fromLead, int to, string toLead, double weight)
        {
            if (from >= 0 && to >= 0 && Lead(from, fromLead) is >= 0 and var a && Lead(to, toLead) is >= 0 and var b)
                wires.Add((from, a, to, b, weight));
        }

        var (pack, protection, fuse, receiver) =
            (Index(ThingKind.Pack), Index(ThingKind.Protection), Index(ThingKind.Fuse), Index(ThingKind.Receiver));
        Wire(pack, "main", protection, "pack", 1);
        var (source, lead) = protection >= 0 ? (protection, "out") : (pack, "main");
        if (fuse >= 0)
        {
            Wire(source, lead, fuse, "pack", 1);
            (source, lead) = (fuse, "out");
        }

        int[] glands = [.. task.Things.Index().Where(t => t.Item.Kind == ThingKind.Gland).Select(t => t.Index)];
        int[] controllers = [.. task.Things.Index().Where(t => t.Item.Kind == ThingKind.Controller).Select(t => t.Index)];
        var motor = 0;
        foreach (var controller in controllers)
        {
            Wire(source, lead, controller, "pack", 1);
            foreach (var name in task.Things[controller].Leads.Select(l => l.Name).Where(n => n.StartsWith("motor ", StringComparison.Ordinal)))
                Wire(controller, name, glands.Length > 0 ? glands[motor++ % glands.Length] : -1, "inside", 1);
        }

        Wire(receiver, "controller", controllers.Length > 0 ? controllers[0] : -1, "receiver", 0.25);
        foreach (var (i, thing) in task.Things.Index())
        {
            if (thing.Kind == ThingKind.ChargeSocket)
                Wire(i, "inside", pack, "charge", 0.5);
            else if (thing.Kind is ThingKind.Switch)
                Wire(i, "inside", controllers.Length > 0 ? controllers[0] : pack, controllers.Length > 0 ? "receiver" : "main", 0.2);
            else if (thing.Kind is ThingKind.Gauge)
                Wire(i, "inside", pack, "charge", 0.2);
        }
    }

    /// <summary>For each piece, form and lead the point where the wire has turned, from the near corner, in steps.</summary>
    (double X, double Y)[][][] Tips(FloorPlan plan) =>
    [
        .. task.Things.Select((thing, i) => plan.Pieces[i].Forms.Select(form =>
        {
            var placed = new PlacedThing(thing, default, default, form.Turn, null, false);
            var (backX, leftY) = (placed.Solid.X.Metres / step - form.Along / 2.0, placed.Solid.Y.Metres / step - form.Across / 2.0);
            return placed.Leads.Select(lead =>
            {
                var (x, y) = (lead.X.Metres / step - backX, lead.Y.Metres / step - leftY);
                var room = lead.Room.Metres / step;
                return lead.Towards switch
                {
                    BoxWall.Front => (x + room, y),
                    BoxWall.Rear => (x - room, y),
                    BoxWall.Right => (x, y + room),
                    _ => (x, y - room),
                };
            }).ToArray();
        }).ToArray()),
    ];

    /// <summary>What the wires are long, those of the motors to the end of the box; and what speaks against a wall for a fitting.</summary>
    sealed class WireCost(BoxProposal proposal, FloorPlan plan) : IFloorCost
    {
        readonly (double X, double Y)[][][] tips = proposal.Tips(plan);
        readonly (int From, int FromLead, int To, int ToLead, double Weight)[] all = [.. proposal.wires];
        readonly (int From, int FromLead, int To, int ToLead, double Weight)[][] at =
            [.. Enumerable.Range(0, plan.Pieces.Count).Select(i => proposal.wires.Where(w => w.From == i || w.To == i).ToArray())];

        public double Compute(int piece, FloorPlace place, ReadOnlySpan<FloorPlace?> places)
        {
            var sum = Alone(piece, place);
            foreach (var wire in at[piece])
            {
                if (wire.From == piece && places[wire.To] is { } to)
                    sum += LengthOf(wire, place, to);
                else if (wire.To == piece && places[wire.From] is { } from)
                    sum += LengthOf(wire, from, place);
            }

            return sum;
        }

        public double Compute(ReadOnlySpan<FloorPlace?> places)
        {
            var sum = 0.0;
            for (var i = 0; i < places.Length; i++)
                sum += places[i] is { } place ? Alone(i, place) : 0;
            foreach (var wire in all)
            {
                if (places[wire.From] is { } from && places[wire.To] is { } to)
                    sum += LengthOf(wire, from, to);
            }

            return sum;
        }

        double LengthOf((int From, int FromLead, int To, int ToLead, double Weight) wire, FloorPlace from, FloorPlace to)
        {
            var (p, q) = (tips[wire.From][from.Form][wire.FromLead], tips[wire.To][to.Form][wire.ToLead]);
            return wire.Weight * (Math.Abs(from.X + p.X - to.X - q.X) + Math.Abs(from.Y + p.Y - to.Y - q.Y));
        }

        double Alone(int piece, FloorPlace place)
        {
            var form = plan.Pieces[piece].Forms[place.Form];
            var thing = proposal.task.Things[piece];
            if (thing.IsFitting)
            {
                var outside = thing.Kind == ThingKind.Gland ? proposal.task.Driven == BoxWall.Front ? plan.Along - place.X - form.Along
                    : place.X : 0;
                return outside + 0.001 / proposal.step * proposal.Dislike(thing, WallAt(form.Turn));
            }

            return thing.Kind is ThingKind.Pack or ThingKind.Controller
                ? OffMiddle * Math.Abs(place.Y + form.Across / 2.0 - plan.Across / 2.0) : 0;
        }
    }

    double Dislike(BoxThing thing, BoxWall wall) => thing.Kind == ThingKind.Gland
        ? wall == task.Driven ? 0 : wall is BoxWall.Left or BoxWall.Right ? OtherWall : WorseWall
        // On the right, where a hand finds it; spray from the wheels hits the ends.
        : wall switch { BoxWall.Right => 0, BoxWall.Left => OtherWall / 2, _ => WorseWall };

    static BoxWall WallAt(int turn) => turn switch { 0 => BoxWall.Rear, 90 => BoxWall.Left, 180 => BoxWall.Front, _ => BoxWall.Right };

    static (PlanRectangle Solid, IReadOnlyList<PlanRectangle> Rooms) Shape(BoxThing thing, int turn) =>
        new PlacedThing(thing, default, default, turn, null, false) is var placed ? (placed.Solid, placed.Rooms) : default;

    FloorRectangle Outwards(PlanRectangle r)
    {
        var (halfX, halfY) = (task.Length.Metres / 2 - offX, task.Width.Metres / 2 - offY);
        return Rectangle(r.Back.Metres + halfX, r.Front.Metres + halfX, r.Left.Metres + halfY, r.Right.Metres + halfY);
    }

    FloorRectangle Rectangle(double back, double front, double left, double right)
    {
        var (x, y) = ((int)Math.Floor(back / step + 1e-6), (int)Math.Floor(left / step + 1e-6));
        return new(x, y, (int)Math.Ceiling(front / step - 1e-6) - x, (int)Math.Ceiling(right / step - 1e-6) - y);
    }

    int Steps(double metres) => (int)Math.Floor(metres / step + 1e-6);

    int Up(double metres) => Math.Max(0, (int)Math.Ceiling(metres / step - 1e-6));
}

/// <summary>A box and what goes into it.</summary>
/// <param name="Length">Length inside.</param>
/// <param name="Width">Width inside.</param>
/// <param name="Things">What goes in.</param>
/// <param name="Spots">Places that the board file states, by name.</param>
/// <param name="Bosses">Places that bolts take.</param>
/// <param name="Driven">The wall towards the motors.</param>
/// <source cref="Sources.Geometry"/>
sealed record BoxTask(Length Length, Length Width, IReadOnlyList<BoxThing> Things, IReadOnlyDictionary<string, BoxPosition> Spots,
    IReadOnlyList<PlanRectangle> Bosses, BoxWall Driven)
{
    /// <summary>A stated angle as a quarter turn, in degrees.</summary>
    public static int QuarterTurn(Angle turn) => ((int)Math.Round(turn.Degrees / 90) % 4 + 4) % 4 * 90;

    /// <summary>The place that the board file states in full.</summary>
    public PlacedThing? StatedPlaceOf(BoxThing thing)
    {
        if (!Spots.TryGetValue(thing.Name, out var spot))
            return null;
        if (thing.IsFitting)
            return spot.Wall.IsKnown && spot.Along.IsKnown ? InWall(thing, spot.Wall.Value, spot.Along.Value, isStated: true) : null;
        return spot.X.IsKnown && spot.Y.IsKnown ? new(thing, spot.X.Value, spot.Y.Value, QuarterTurn(spot.Turn.Or(default)), null, true)
            : null;
    }

    /// <summary>A fitting in a wall.</summary>
    public PlacedThing InWall(BoxThing thing, BoxWall wall, Length along, bool isStated)
    {
        var (endX, endY) = ((Length - thing.Length) / 2, (Width - thing.Length) / 2);
        along = Length.FromMetres(Math.Round(along.Metres, 5));
        return wall switch
        {
            BoxWall.Rear => new(thing, -endX, along, 0, wall, isStated),
            BoxWall.Front => new(thing, endX, along, 180, wall, isStated),
            BoxWall.Left => new(thing, along, -endY, 90, wall, isStated),
            _ => new(thing, along, endY, 270, wall, isStated),
        };
    }
}
