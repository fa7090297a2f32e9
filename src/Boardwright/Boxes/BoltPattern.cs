using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Boxes;

/// <summary>A place on the underside of a board, from the middle of the box.</summary>
/// <param name="Name">What it is called on a drawing, such as <c>B1</c>.</param>
/// <param name="X">Towards the nose.</param>
/// <param name="Y">Towards the right-hand side, facing the nose.</param>
/// <source cref="Sources.Geometry"/>
public sealed record BoltPosition(string Name, Length X, Length Y);

/// <summary>Where the bolts go that hold a box to its deck: the four corners, the middle of both long sides, and the rest evenly
/// between.</summary>
/// <remarks>A bolt sits in the middle of the flange, or further in where the edge distance asks for it.</remarks>
/// <validity>A box whose flange runs all around outside of its walls, with square corners.</validity>
/// <error>Exact for the stated geometry; a moulded box is true to some 0.5 mm, so its own flange has the last word.</error>
/// <source cref="Sources.En1993"/>
/// <source cref="Sources.Geometry"/>
public sealed record BoltPattern
{
    // Diameters from an insert's centre to the edge of a wooden deck; common practice.
    const double InsertEdge = 2;

    // Wall of the deck that must stay between two inserts, as above.
    const double InsertPitch = 3;

    readonly Length flatLength;
    readonly Length deckWidth;

    BoltPattern(BoltThread thread, Flange flange, Length deckHole, Length inset, Length flat, Length width)
    {
        (Thread, Flange, DeckHole, Inset) = (thread, flange, deckHole, inset);
        BoxHole = BoltHoles.Clearance(thread);
        (flatLength, deckWidth) = (flat, width);
    }

    /// <summary>The bolt.</summary>
    public BoltThread Thread { get; }
    /// <summary>The flange.</summary>
    public Flange Flange { get; }
    /// <summary>Hole in the deck, for the insert or as a pilot hole.</summary>
    public Length DeckHole { get; }
    /// <summary>Clearance hole in the flange.</summary>
    public Length BoxHole { get; }
    /// <summary>Distance of the bolts' centres from the flange's outer edge.</summary>
    public Length Inset { get; }
    /// <summary>The bolts, those near the nose first.</summary>
    public IReadOnlyList<BoltPosition> Places { get; private init; } = [];
    /// <summary>How many the board file states.</summary>
    public int Stated { get; private init; }
    /// <summary>Whether the size of the deck's hole is the usual one and not measured.</summary>
    public bool IsDeckHoleUsual { get; private init; }
    /// <summary>Whether screws go straight into the wood.</summary>
    public bool IsWoodScrew { get; private init; }
    /// <summary>What the bolts go into, in the builder's own words.</summary>
    public string Insert { get; private init; } = "";
    /// <summary>Largest distance between neighbouring bolts.</summary>
    public Length Pitch { get; private init; }
    /// <summary>Least distance between neighbouring bolts.</summary>
    public Length Closest { get; private init; }
    /// <summary>The largest distance at which the gasket stays squeezed; <c>null</c> when the box's material has no known
    /// stiffness.</summary>
    public Length? GreatestPitch { get; private init; }
    /// <summary>Number of bolts that keeps within it.</summary>
    public int? CountForGasket { get; private init; }
    /// <summary>Squeeze that the bolts should set, by stops or by feel.</summary>
    public static Fraction SqueezeAtBolts { get; } = Fraction.FromPercent(40);
    /// <summary>From the hole in the flange to the flange's edge.</summary>
    public Length BoxEdge => Inset;
    /// <summary>From the hole in the deck to the edge of the flat underside, at the sides.</summary>
    public Length DeckSideEdge => deckWidth / 2 - (Flange.OuterWidth / 2 - Inset);
    /// <summary>From the hole in the deck to the end of the flat underside.</summary>
    public Length DeckEndEdge => flatLength / 2 - (Flange.OuterLength / 2 - Inset);
    /// <summary>How far a washer stands into the wall; below 0 what is left beside it.</summary>
    public Length WasherIntoWall => Inset + Thread.Washer.OuterDiameter / 2 - Flange.Width;
    /// <summary>What should stay from a hole in the deck to its edge: twice the hole; common practice.</summary>
    public Length LeastDeckEdge => InsertEdge * DeckHole;
    /// <summary>What should lie between two holes in the deck, centre to centre: three times the hole; common practice.</summary>
    public Length LeastPitch => InsertPitch * DeckHole;
    /// <summary>Length of the flat of the deck.</summary>
    public Length FlatLength => flatLength;

    /// <summary>The pattern of a board.</summary>
    public static Answer<BoltPattern> Compute(Board board) =>
        !board.Parts.Box.IsChosen ? Answer<BoltPattern>.Beside : Answer<BoltPattern>.Ask("", needs =>
    {
        var (box, deck, fixing) = (board.Parts.Box, board.Parts.Deck, board.Fixings.Box);
        var flange = Flange.FromBox(needs, box);
        var count = needs.Read(fixing.Count);
        var name = needs.Read(fixing.Bolt);
        var insert = fixing.Insert.IsKnown ? needs.Read(fixing.Insert) : "";
        var flat = needs.Read(deck.UndersideFlatLength);
        var width = needs.Read(deck.Width);
        if (needs.Unmet || flange is null)
            return null;
        if (BoltThread.Parse(name) is not { } thread)
        {
            needs.Lack(fixing.Bolt.Key);
            return null;
        }

        var isWoodScrew = insert.Contains("screw", StringComparison.OrdinalIgnoreCase);
        var deckHole = fixing.InsertHole.IsKnown ? needs.Read(fixing.InsertHole) : BoltHoles.Usual(thread, isWoodScrew);
        var least = HoleEdges.EdgeDistance(BoltHoles.Clearance(thread));
        var inset = flange.Width / 2 > least ? flange.Width / 2 : least;
        var pattern = new BoltPattern(thread, flange, deckHole, inset, flat, width)
        {
            Stated = count,
            Insert = insert.Replace('_', ' '),
            IsWoodScrew = isWoodScrew,
            IsDeckHoleUsual = !fixing.InsertHole.IsKnown,
            GreatestPitch = GasketBeam.GreatestPitch(needs, box),
        };
        return pattern.Placed();
    });

    BoltPattern Placed()
    {
        var (middles, ends) = Shares(Drawn(Stated));
        return this with
        {
            Places = [.. PlaceBolts(middles, ends)],
            Pitch = Larger(Steps(middles, ends)),
            Closest = Smaller(Steps(middles, ends)),
            CountForGasket = GreatestPitch is { } greatest
                ? Enumerable.Range(3, 14).Select(half => 2 * half).Cast<int?>().FirstOrDefault(n => Fits(n!.Value, greatest)) : null,
        };
    }

    bool Fits(int count, Length greatest)
    {
        var (middles, ends) = Shares(count);
        return Larger(Steps(middles, ends)) <= greatest;
    }

    (Length Along, Length Across) Steps(int middles, int ends) =>
        ((Flange.OuterLength - 2 * Inset) / (middles + 1), (Flange.OuterWidth - 2 * Inset) / (ends + 1));

    static Length Larger((Length Along, Length Across) steps) => steps.Along > steps.Across ? steps.Along : steps.Across;

    static Length Smaller((Length Along, Length Across) steps) => steps.Along < steps.Across ? steps.Along : steps.Across;

    // Alike on both sides, and at least the corners and the middles of the long sides.
    static int Drawn(int stated) => Math.Max(6, stated + stated % 2);

    // Bolts between the corners: on each long side, always one in its middle, and on each end.
    static (int Middles, int Ends) Shares(int count)
    {
        var half = (count - 4) / 2;
        return half % 2 == 1 ? (half, 0) : (half - 1, 1);
    }

    IEnumerable<BoltPosition> PlaceBolts(int middles, int ends)
    {
        var (x, y) = (Flange.OuterLength / 2 - Inset, Flange.OuterWidth / 2 - Inset);
        var spots = new List<(Length X, Length Y)>();
        for (var i = 0; i <= middles + 1; i++)
        {
            var along = x - 2 * x * ((double)i / (middles + 1));
            spots.Add((along, y));
            spots.Add((along, -y));
            if (i == 0 || i == middles + 1)
            {
                for (var k = 1; k <= ends; k++)
                    spots.Add((along, y - 2 * y * ((double)k / (ends + 1))));
            }
        }

        return spots.OrderByDescending(s => s.X.Si).ThenByDescending(s => s.Y.Si)
            .Select((s, i) => new BoltPosition(FormattableString.Invariant($"B{i + 1}"), s.X, s.Y));
    }
}

/// <summary>The flange that runs around a box, outside of its walls.</summary>
/// <param name="InnerLength">Length inside the walls.</param>
/// <param name="InnerWidth">Width inside the walls.</param>
/// <param name="Wall">Thickness of the walls.</param>
/// <param name="Width">Width of the flange.</param>
/// <source cref="Sources.Geometry"/>
public sealed record Flange(Length InnerLength, Length InnerWidth, Length Wall, Length Width)
{
    /// <summary>Length over all.</summary>
    public Length OuterLength => InnerLength + 2 * (Wall + Width);
    /// <summary>Width over all.</summary>
    public Length OuterWidth => InnerWidth + 2 * (Wall + Width);

    internal static Flange? FromBox(Needs needs, Box box)
    {
        var (length, width, wall, flange) =
            (needs.Read(box.InnerLength), needs.Read(box.InnerWidth), needs.Read(box.Wall), needs.Read(box.FlangeWidth));
        return needs.Unmet ? null : new Flange(length, width, wall, flange);
    }
}

/// <summary>The edge of a box between two bolts, pushed away from the deck by its gasket: the wall is a beam on edge.</summary>
/// <validity>A box whose wall stands up from its flange, as in a tray; the deck is taken as stiff, the twist of the flange is left
/// out.</validity>
/// <error>The foam's pressure and the material's modulus are known to some 40 %, the distance that follows to some 10 %, since it goes with
/// their fourth root.</error>
/// <source cref="Sources.BeamTheory"/>
/// <source cref="Sources.FoamPressure"/>
/// <source cref="Sources.GasketCompression"/>
static class GasketBeam
{
    // The stiffer end of the grade.
    const double FoamPascals = 63_000;

    static readonly (string Word, double Pascals)[] Moduli =
    [
        ("ABS", 2.2e9), ("polycarbonate", 2.3e9), ("PETG", 2.0e9), ("nylon", 1.8e9), ("carbon", 40e9), ("glass", 10e9), ("aluminium", 69e9), ("steel", 205e9), ("ply", 8e9), ("wood", 8e9),
    ];

    /// <summary>Words for materials whose stiffness is known; a material that holds one is known by it.</summary>
    public static IReadOnlyList<string> Materials { get; } = [.. Moduli.Select(m => m.Word)];

    /// <summary>Whether a material's stiffness is known.</summary>
    public static bool Knows(string material) => ModulusOf(material) > 0;

    static double ModulusOf(string material) => Array.Find(
        Moduli, m => TradeName.Plain(material).Contains(TradeName.Plain(m.Word), StringComparison.Ordinal)).Pascals;

    /// <summary>The distance of bolts at which the gasket is squeezed by 40 % at a bolt and still by 25 % midway: L = (185 E I δ /
    /// w)^¼.</summary>
    /// <returns>The distance; <c>null</c> when gasket, depth or material are not known.</returns>
    public static Length? GreatestPitch(Needs needs, Box box)
    {
        if (!box.GasketThickness.IsKnown || !box.Material.IsKnown || !box.InnerDepth.IsKnown || !box.Wall.IsKnown
            || !box.FlangeWidth.IsKnown)
            return null;
        var material = needs.Read(box.Material);
        var modulus = ModulusOf(material);
        var window = (BoltPattern.SqueezeAtBolts.Value - GasketKind.ClosedCellFoam.Least.Value) * needs.Read(box.GasketThickness).Metres;
        var (depth, wall) = (needs.Read(box.InnerDepth).Metres, needs.Read(box.Wall).Metres);
        var load = FoamPascals * (needs.Read(box.FlangeWidth).Metres + wall);
        if (modulus == 0 || window <= 0 || load <= 0)
            return null;
        var inertia = wall * Math.Pow(depth, 3) / 12;
        return Length.FromMetres(Math.Pow(185 * modulus * inertia * window / load, 0.25));
    }
}
