using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Prices;

/// <summary>A part of a board as it is taken from the shelf or bought.</summary>
/// <param name="Place">The place and how many it takes.</param>
/// <param name="FromStock">How many the shelf has for it, as far as the shelf says.</param>
/// <source cref="Sources.CommonPractice"/>
public sealed record PurchaseLine(PartSlot Place, int FromStock)
{
    /// <summary>How many to buy.</summary>
    public int ToBuy => Place.Count - FromStock;
    /// <summary>What all of them are worth; <c>null</c> when the price is not known.</summary>
    public Money? Worth => Times(Place.Count);
    /// <summary>What is to be paid for those to buy; <c>null</c> when the price is not known.</summary>
    public Money? ToPay => Times(ToBuy);

    /// <summary>Parts of a board, one line for each place that is filled or must be; the pack itself is made of the others.</summary>
    public static Answer<IReadOnlyList<PurchaseLine>> Compute(Board board) => Answer<IReadOnlyList<PurchaseLine>>.Ask("", needs =>
    {
        var places = needs.Read(PartSlot.All(board));
        if (needs.Unmet)
            return null;
        // Two places may draw on one box of the shelf: what the first takes the second has not.
        var taken = new Dictionary<string, int>(StringComparer.Ordinal);
        var list = new List<PurchaseLine>();
        foreach (var place in places.Where(p => (p.Part.IsChosen || p.Needed) && p.Part is not Pack { Price.IsKnown: false }))
        {
            var before = taken.GetValueOrDefault(place.Part.Id);
            var stock = Math.Clamp(place.Part.Stock.Or(0) - (place.Part.Id.Length > 0 ? before : 0), 0, place.Count);
            if (place.Part.Id.Length > 0)
                taken[place.Part.Id] = before + stock;
            list.Add(new PurchaseLine(place, stock));
        }

        return list;
    });

    Money? Times(int count) =>
        Place.Part.Price.IsKnown ? Place.Part.Price.Value with { Amount = Place.Part.Price.Value.Amount * count } : null;
}
