using Boardwright.Analyses;
using Boardwright.Boxes;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Rules;

/// <summary>What the bolts between box and deck must satisfy.</summary>
public static class BoltRules
{
    const string Place = "fixings.box.count";

    /// <summary>The stated number lies alike on both sides.</summary>
    public static Rule<BoardAnalysis> CountLiesAlike { get; } = new(
        "box.bolt_count", Place, "The box's bolts lie in the corners, in the middle of the long sides, and alike on both sides.",
        "At least six, and an even number. Others are drawn as the next number that does.",
        Sources.CommonPractice,
        (e, needs) => Judged(e, needs, pattern => pattern.Stated == pattern.Places.Count
            ? CountLiesAlike!.Found(Level.Fine, $"{pattern.Stated} bolts: corners, middles of the long sides, and alike on both sides.", value: Amount.Plain(pattern.Stated))
            : CountLiesAlike!.Found(Level.Fix, $"{pattern.Stated} bolts are stated; {pattern.Places.Count} are drawn, because the corners, the middles of the long sides and both sides alike need that many.", $"Write {pattern.Places.Count}.", Amount.Plain(pattern.Stated), Amount.Plain(pattern.Places.Count),
            mend: Count(pattern.Places.Count))));

    /// <summary>The bolts are close enough for the gasket.</summary>
    public static Rule<BoardAnalysis> GasketStaysSqueezed { get; } = new(
        "box.gasket_pitch", Place, "Between two bolts the gasket stays squeezed.",
        "The wall is a beam on edge that the gasket pushes away: squeezed by 40 % at a bolt, it should still be squeezed by 25 % midway. L = (185 E I δ / w)^¼.",
        Sources.BeamTheory,
        (e, needs) => Judged(e, needs, pattern =>
        {
            if (pattern.GreatestPitch is not { } greatest)
                return NotTold(e.Board.Parts.Box, needs);
            var (value, limit) = (Amount.Create(pattern.Pitch, "mm"), Amount.Create(greatest, "mm"));
            if (pattern.Pitch <= greatest)
                return GasketStaysSqueezed!.Found(Level.Fine, $"The bolts lie {pattern.Pitch:0 mm} apart; up to {greatest:0 mm} the gasket stays squeezed by a quarter.", value: value, limit: limit);
            var remedy = pattern.CountForGasket is { } enough ? (FormattableString)$"{enough} bolts would do." : $"No even number of bolts up to 32 would do: take a stiffer box or a softer gasket.";
            return GasketStaysSqueezed!.Found(
                Level.Fix, $"The bolts lie {pattern.Pitch:0 mm} apart. At more than {greatest:0 mm} the box's edge is reckoned to bow so far that the gasket is squeezed by less than a quarter between them.", remedy, value, limit, mend: pattern.CountForGasket is { } count ? Count(count) : null);
        }));

    /// <summary>Holes stay clear of the deck's edges.</summary>
    public static Rule<BoardAnalysis> EdgesHold { get; } = new(
        "box.bolt_edge", "deck", "From the holes in the deck to its edges, and to where it begins to bend, twice the hole's diameter stays.",
        "Half the flat's length and half the deck's width, where it is widest, against the outermost holes.",
        Sources.CommonPractice,
        (e, needs) => Judged(e, needs, pattern =>
        {
            var least = pattern.LeastDeckEdge;
            var (end, side) = (Amount.Create(pattern.DeckEndEdge, "mm"), Amount.Create(pattern.DeckSideEdge, "mm"));
            var limit = Amount.Create(least, "mm");
            if (pattern.DeckEndEdge < least || pattern.Flange.OuterLength > pattern.FlatLength)
                return EdgesHold!.Found(Level.Fix, $"The box is {pattern.Flange.OuterLength:0 mm} long and the flat of the deck {pattern.FlatLength:0 mm}: {pattern.DeckEndEdge:0.0 mm} stay from the end holes to where the deck begins to bend, {least:0.0 mm} are common practice.", $"Take a shorter box, or a deck with a longer flat.", end, limit, e.Board.Parts.Deck.UndersideFlatLength.Key);
            return pattern.DeckSideEdge < least
                ? EdgesHold!.Found(Level.Fix, $"{pattern.DeckSideEdge:0.0 mm} stay from the side holes to the deck's edge where it is widest; {least:0.0 mm} are common practice.", $"Measure the deck's width at each hole before drilling; take a narrower box.", side, limit, e.Board.Parts.Deck.Width.Key)
                : EdgesHold!.Found(Level.Fine, $"{pattern.DeckEndEdge:0.0 mm} stay at the ends and {pattern.DeckSideEdge:0.0 mm} at the sides where the deck is widest.", value: side, limit: limit, where: e.Board.Parts.Deck.Width.Key);
        }));

    /// <summary>Washers lie on the flange.</summary>
    public static Rule<BoardAnalysis> WashersLieFlat { get; } = new(
        "box.bolt_washer", "box.flange_width", "The washers of the box's bolts lie on its flange.",
        "A bolt sits in the middle of the flange, or further in where the edge distance of 1.2 holes asks for it; the washer's radius against what is then left before the wall.",
        Sources.En1993,
        (e, needs) => Judged(e, needs, pattern => pattern.WasherIntoWall.Si > 0
            ? WashersLieFlat!.Found(Level.Fix, $"The flange is {pattern.Flange.Width:0.# mm} wide: with {HoleEdges.EdgeDistance(pattern.BoxHole):0.0 mm} from a {pattern.BoxHole:0.0 mm} hole to its edge, the {pattern.Thread.Name} washer ({pattern.Thread.Washer.OuterDiameter:0.# mm}) stands {pattern.WasherIntoWall:0.0 mm} into the wall.", $"Take a thinner bolt, a wider flange, or a washer cut flat on one side.", Amount.Create(pattern.WasherIntoWall, "mm"), Amount.Create(default(Length), "mm"),
            e.Board.Parts.Box.FlangeWidth.Key)
            : WashersLieFlat!.Found(Level.Fine, $"{-1 * pattern.WasherIntoWall:0.0 mm} stay between washer and wall.", value: Amount.Create(pattern.WasherIntoWall, "mm"),
            limit: Amount.Create(default(Length), "mm"), where: e.Board.Parts.Box.FlangeWidth.Key)));

    /// <summary>Holes keep their distance.</summary>
    public static Rule<BoardAnalysis> HolesKeepDistance { get; } = new(
        "box.bolt_spacing", Place, "The holes in the deck lie at least three diameters apart.",
        "Closer ones cut the wood's fibres between them.",
        Sources.CommonPractice,
        (e, needs) => Judged(e, needs, pattern =>
        {
            var (value, limit) = (Amount.Create(pattern.Closest, "mm"), Amount.Create(pattern.LeastPitch, "mm"));
            return pattern.Closest < pattern.LeastPitch
                ? HolesKeepDistance!.Found(Level.Fix, $"The holes lie {pattern.Closest:0 mm} apart; closer than three diameters weakens the wood.", $"Take fewer bolts.", value, limit)
                : HolesKeepDistance!.Found(Level.Fine, $"The holes lie {pattern.Closest:0 mm} apart, three diameters are {pattern.LeastPitch:0 mm}.", value: value, limit: limit);
        }));

    /// <summary>Bolts go into inserts.</summary>
    public static Rule<BoardAnalysis> InsertsHold { get; } = new(
        "box.bolt_insert", "fixings.box.insert", "The box's bolts go into inserts.",
        "A wood screw in the deck's thin plies wears its hole each time the box is opened.",
        Sources.CommonPractice,
        (e, needs) => Judged(e, needs, pattern => pattern.IsWoodScrew
            ? InsertsHold!.Found(Level.Fix, $"A wood screw in the deck's thin plies wears its hole each time the box is opened.", $"Flanged inserts hold better: set insert to deck_insert.", mend: new Change("fixings.box.insert", "deck_insert"))
            : needs.Read(e.Board.Fixings.Box.Insert) is { Length: > 0 } ? InsertsHold!.Found(Level.Fine, $"They go into {pattern.Insert}.") : null));

    /// <summary>Every rule about the box's bolts.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [CountLiesAlike, GasketStaysSqueezed, EdgesHold, WashersLieFlat, HolesKeepDistance, InsertsHold];

    // What keeps the distance from being computed: an entry that is missing, or a material of which nothing is known.
    static Finding? NotTold(Box box, Needs needs)
    {
        var (material, thickness) = (needs.Read(box.Material), needs.Read(box.GasketThickness));
        needs.Read(box.InnerDepth);
        if (material is not null && !GasketBeam.Knows(material))
            return NameRules.Unknown(GasketStaysSqueezed, box.Material.Key, material, "material", GasketBeam.Materials);
        if (thickness.Si <= 0)
            needs.Lack(box.GasketThickness.Key);
        return null;
    }

    static Finding[]? Judged(BoardAnalysis e, Needs needs, Func<BoltPattern, Finding?> judge)
    {
        var pattern = needs.Read(e.Bolts);
        return needs.Unmet || judge(pattern) is not { } finding ? null : [finding];
    }

    static Change Count(int count) => new(Place, FormattableString.Invariant($"{count}"));
}
