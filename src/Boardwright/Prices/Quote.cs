using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Prices;

/// <summary>What the parts cost, what the board costs to make, and its price.</summary>
/// <param name="Parts">Sum of the parts' prices; a lower bound when some are not known.</param>
/// <param name="Unpriced">Entries of parts whose price is not known.</param>
/// <source cref="Sources.CommonPractice"/>
public sealed record Quote(Money Parts, IReadOnlyList<string> Unpriced)
{
    /// <summary>Adds up the parts that are bought for the board, charger and remote included.</summary>
    public static Answer<Quote> Compute(Board board) => Answer<Quote>.Ask("money.parts", needs =>
    {
        var places = needs.Read(PartSlot.All(board));
        if (needs.Unmet)
            return null;
        var sum = 0m;
        string? currency = null;
        List<string> unpriced = [];
        foreach (var place in places)
        {
            if (place.Part is Pack { Price.IsKnown: false } || (!place.Part.IsChosen && !place.Needed))
                continue;
            if (!place.Part.Price.IsKnown)
            {
                unpriced.Add(place.Part.IsChosen ? place.Part.Price.Key : place.Key);
                continue;
            }

            var price = needs.Read(place.Part.Price);
            currency ??= price.Currency;
            sum += price.Amount * place.Count;
        }

        if (currency is null)
        {
            needs.Lack(unpriced.Count > 0 ? unpriced[0] : "deck.price");
            return null;
        }

        return new Quote(new Money(sum, currency), unpriced);
    });

    /// <summary>Cost of making one: parts and work, with the overhead on both.</summary>
    public static Answer<CostOfOne> CostOf(Board board, Answer<Quote> parts) => Answer<CostOfOne>.Ask("money.cost", needs =>
    {
        var quote = needs.Read(parts);
        var hours = needs.Read(board.Money.LabourHours);
        var rate = needs.Read(board.Money.LabourRate);
        var overhead = needs.Read(board.Money.Overhead);
        if (needs.Unmet)
            return null;
        var work = (decimal)hours.Hours * rate.PerHour.Amount;
        return new CostOfOne(new Money((quote.Parts.Amount + work) * (1 + (decimal)overhead.Value), quote.Parts.Currency));
    });

    /// <summary>Price: the cost with the margin added on top of it.</summary>
    public static Answer<CostOfOne> PriceOf(Board board, Answer<CostOfOne> cost) => Answer<CostOfOne>.Ask("money.price", needs =>
    {
        var made = needs.Read(cost);
        var margin = needs.Read(board.Money.Margin);
        return needs.Unmet ? null : new CostOfOne(made.Money with { Amount = made.Money.Amount * (1 + (decimal)margin.Value) });
    });
}

/// <summary>Money for one board.</summary>
/// <param name="Money">How much.</param>
public sealed record CostOfOne(Money Money);
