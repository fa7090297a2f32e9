using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Road;

/// <summary>What the board weighs, and what rolls.</summary>
/// <param name="Board">Sum of the parts that the board carries; a lower bound when some are not weighed.</param>
/// <param name="Unweighed">Entries of parts whose mass is not known.</param>
/// <source cref="Sources.Geometry"/>
public sealed record Masses(Mass Board, IReadOnlyList<string> Unweighed)
{
    /// <summary>Adds up a board. Cells count one by one, wrap and links by <c>pack.mass_extra</c>, a belt without a mass by its size. The
    /// remote rides along in the hand; the charger stays behind.</summary>
    public static Answer<Masses> Compute(Board board) => Answer<Masses>.Ask("mass.board", needs =>
    {
        var places = needs.Read(PartSlot.All(board));
        if (needs.Unmet)
            return null;
        var sum = Mass.FromKilograms(0);
        List<string> unweighed = [];
        foreach (var place in places)
        {
            if (!place.Carried || (!place.Part.IsChosen && !place.Needed))
                continue;
            var mass = EachIn(place);
            foreach (var count in place.CountedBy.Where(c => c.IsKnown))
                needs.Read(count);
            if (place.Count == 0)
                unweighed.AddRange(place.CountedBy.Where(c => !c.IsKnown).Select(c => c.Key));
            if (mass.IsKnown)
                sum += needs.Read(mass) * place.Count;
            else
                unweighed.Add(place.Part.IsChosen ? mass.Key : place.Key);
        }

        return new Masses(sum, unweighed);
    });

    /// <summary>Mass of one of the parts in a place.</summary>
    internal static Known<Mass> EachIn(PartSlot place) => place.Part switch
    {
        Pack pack => pack.Mass.IsKnown ? pack.Mass : pack.MassExtra,
        Belt { Mass.IsKnown: false } belt => Drivetrains.BeltMass.Compute(belt),
        _ => place.Part.Mass,
    };
}
