using Boardwright.Analyses;
using Boardwright.Boxes;
using Boardwright.Findings;

namespace Boardwright.Rules;

/// <summary>What lies in the box goes in, lies clear and has room for its wires.</summary>
static class LayoutRules
{
    /// <summary>Everything has a place.</summary>
    public static Rule<BoardAnalysis> EverythingHasAPlace { get; } = new(
        "box.layout.fits", "layout", "Everything that goes into the box has a place in it, with the room that wires, hands and foam need.",
        "Pack, protection beside it, controllers, receiver, fuse and fittings are laid on the box's floor and in its walls: 2 mm of foam around the pack, 10 mm between pack and controller, 2 mm between things, 6 mm between nuts, and at each lead room to bend (3 diameters inside, and the wire itself) or for a hand (20 mm at power leads, 15 mm at small plugs). Stated places stay; a search finds the others. Where it finds none that is no proof, unless areas alone rule it out.",
        Sources.CornerPlacement,
        (e, needs) =>
        {
            var layout = needs.Read(e.Layout);
            if (needs.Unmet)
                return null;
            foreach (var key in layout.Unsized.SelectMany(u => u.Missing))
                needs.Lack(key);
            if (layout.Shortfall is not { } shortfall)
                return [EverythingHasAPlace!.Found(Level.Fine, $"Everything whose size is known has a place; {layout.Filled:0 %} of the floor are taken.")];
            var names = List(layout.Unplaced.Select(t => t.Name), "and");
            return [shortfall.IsCertain
                ? EverythingHasAPlace!.Found(Level.Stop, $"The box, {layout.RoomLength:0 mm} by {layout.RoomWidth:0 mm} inside, is too small for what goes in: the outlines alone rule it out.", Remedy(shortfall))
                : EverythingHasAPlace!.Found(Level.Fix, $"No place was found for {names} in {layout.RoomLength:0 mm} by {layout.RoomWidth:0 mm}, with the room that wires and hands need.", Remedy(shortfall))];
        });

    /// <summary>No two things lie in the same place.</summary>
    public static Rule<BoardAnalysis> NothingOverlaps { get; } = new(
        "box.layout.overlap", "layout", "No two things in the box lie in the same place, and none where a bolt is.",
        "Outlines on the floor, the pack's with its foam, fittings with the room behind them. Nothing stands on anything else.",
        Sources.Geometry,
        (e, _) => Judged(e, NothingOverlaps!, Level.Stop, LayoutFaultKind.Overlap, LayoutFaultKind.Bolt));

    /// <summary>Nothing sticks out.</summary>
    public static Rule<BoardAnalysis> AllInside { get; } = new(
        "box.layout.inside", "layout", "Everything in the box lies between its walls.",
        "Outlines on the floor, the pack's with its foam, against the box's inner length and width.",
        Sources.Geometry,
        (e, _) => Judged(e, AllInside!, Level.Stop, LayoutFaultKind.Outside));

    /// <summary>Everything is low enough under the deck.</summary>
    public static Rule<BoardAnalysis> LowUnderDeck { get; } = new(
        "box.layout.height", "box.inner_depth", "Everything in the box stays clear of the deck with the rider on it.",
        "Height, and 2 mm of foam above and below the pack, against the box's depth less the deck's bend between two bolts: curvature 12 δ/L² for a weight in the middle of the wheelbase, κ p²/8 over the bolts' distance p. A deck whose bend nobody knows is taken as stiff.",
        Sources.DeckBend,
        (e, needs) =>
        {
            var layout = needs.Read(e.Layout);
            if (needs.Unmet)
                return null;
            var sag = needs.Read(layout.Sag);
            // What is higher than the box is deep is for the rule on the box's contents.
            bool IsDeeperThanBox(LayoutFault f) =>
                (f.Name == "pack" || f.Name.StartsWith("controller", StringComparison.Ordinal)) && f.By > sag + 2 * BoxThing.FoamAroundPack;
            var high = layout.Faults.Where(f => f.Kind == LayoutFaultKind.High && !IsDeeperThanBox(f)).ToList();
            return high.Count == 0
                ? needs.Unmet ? [] : [LowUnderDeck!.Found(Level.Fine, $"{layout.Headroom:0.0 mm} stay under the loaded deck.", value: Amount.Create(layout.Headroom, "mm"))]
                : high.Select(fault => LowUnderDeck!.Found(Level.Fix,
                    $"The {fault.Name} is {fault.By:0.0 mm} too high: the box is {layout.RoomDepth:0.0 mm} deep, and the deck bends {sag:0.0 mm} into it between two bolts.",
                    fault.Remedy, limit: Amount.Create(layout.Headroom, "mm")));
        });

    /// <summary>Wires have room to bend.</summary>
    public static Rule<BoardAnalysis> WiresBend { get; } = new(
        "box.layout.bend", "layout", "At every lead there is room for the wires to bend, or for a hand to plug them in.",
        "In front of each lead nothing lies for 4 diameters of the wire (3 inside the bend, and the wire), at least 20 mm at power leads and 15 mm at small plugs. Wires may share that room.",
        Sources.CableBends,
        (e, _) => Judged(e, WiresBend!, Level.Fix, LayoutFaultKind.Bend));

    /// <summary>The controller's heat stays off the pack.</summary>
    public static Rule<BoardAnalysis> HeatStaysOff { get; } = new(
        "box.layout.heat", "layout", "At least 10 mm stay between the pack and a controller.",
        "A controller gets hot on its bridge; cells beside it age sooner and are charged warmer than their makers allow. Its cooling face belongs on the box's floor or wall.",
        Sources.CommonPractice,
        (e, _) => Judged(e, HeatStaysOff!, Level.Fix, LayoutFaultKind.Heat));

    /// <summary>Every place is of something that is there.</summary>
    public static Rule<BoardAnalysis> PlacesAreOfThings { get; } = new(
        "box.layout.names", "layout", "Every place in the layout is of a thing that the board has: of a fitting in a wall, of all else on the floor.",
        "A place that nothing has is passed over, so that taking a part off a board does not spoil the file.",
        Sources.Brief,
        (e, _) => e.Layout is { IsKnown: true, Value.Misplaced: { Count: > 0 } names }
            ? names.Select(name => e.Layout.Value.Things.Any(t => t.Name == name) || e.Layout.Value.Unplaced.Any(t => t.Name == name)
                ? PlacesAreOfThings!.Found(Level.Fix, $"The {name} cannot lie where the layout says it does.", $"Write wall and along for a fitting, x, y and turn for everything else.", where: $"layout.{name}")
                : PlacesAreOfThings!.Found(Level.Fix, $"The layout has a place for {name}, and the board has no such thing.", $"Take {name} out of the layout, or put the part on the board.", where: $"layout.{name}"))
            : null);

    /// <summary>Every rule about the layout of the box.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [EverythingHasAPlace, NothingOverlaps, AllInside, LowUnderDeck, WiresBend, HeatStaysOff, PlacesAreOfThings];

    static IEnumerable<Finding>? Judged(BoardAnalysis e, Rule<BoardAnalysis> rule, Level level, params LayoutFaultKind[] kinds)
    {
        // Nothing is asked where nothing is stated: a proposal keeps the rules.
        if (!e.Layout.IsKnown || !e.Layout.Value.IsStated)
            return null;
        var faults = e.Layout.Value.Faults.Where(f => kinds.Contains(f.Kind)).ToList();
        return faults.Count == 0
            ? [rule.Found(Level.Fine, $"It holds for every place that the layout states.")]
            : faults.Select(f => rule.Found(level, f.Says, f.Remedy, Amount.Create(f.By, "mm"), where: $"layout.{f.Name}"));
    }

    static FormattableString Remedy(Shortfall shortfall)
    {
        List<FormattableString> ways = [];
        if (shortfall.Longer is { } longer)
            ways.Add($"a box {longer:0 mm} longer");
        if (shortfall.Wider is { } wider)
            ways.Add($"a box {wider:0 mm} wider");
        foreach (var (name, by) in shortfall.Shorter)
            ways.Add($"a {name} {by:0 mm} shorter");
        foreach (var name in shortfall.Freed)
            ways.Add($"another place for the {name} than the layout states");
        if (ways.Count == 0 && shortfall.Without.Count == 0)
            return $"Take a larger box, or less to go into it: no single change that was tried would do.";
        if (ways.Count == 0)
            return $"Take a box of another size: even 200 mm more in length or in width alone would not do. Without {List(shortfall.Without, "or")} the rest goes in.";
        var all = ways[0];
        foreach (var way in ways.Skip(1))
            all = way == ways[^1] ? $"{new Phrase(all)}, or {new Phrase(way)}" : (FormattableString)$"{new Phrase(all)}, {new Phrase(way)}";
        return $"Each of these would do by itself: {new Phrase(all)}.";
    }

    static string List(IEnumerable<string> names, string joined) => names.ToArray() switch
    {
        [] => "everything",
        [var one] => $"the {one}",
        var many => string.Join(", ", many[..^1].Select(n => $"the {n}")) + $" {joined} the {many[^1]}",
    };
}
