using Boardwright.Analyses;
using Boardwright.Findings;

namespace Boardwright.Rules;

/// <summary>What the customer can pay.</summary>
static class PriceRules
{
    /// <summary>The price is within the budget.</summary>
    public static Rule<BoardAnalysis> WithinBudget { get; } = new(
        "price.budget", "brief.budget", "The price is no more than the customer wants to pay.",
        "money.price against the brief; money.parts where the file does not say what work and margin come on top.",
        Sources.Brief,
        (e, needs) =>
        {
            if (!e.Board.Brief.Budget.IsKnown)
                return null;
            var budget = needs.Read(e.Board.Brief.Budget);
            var asked = DescribeTarget(e);
            var price = e.Price.IsKnown ? needs.Read(e.Price).Money : needs.Read(e.Quote)?.Parts ?? default;
            if (needs.Unmet)
                return null;
            var (value, limit) = (new Amount((double)price.Amount, price.Currency), new Amount((double)budget.Amount, budget.Currency));
            return price.Amount <= budget.Amount
                ? [WithinBudget!.Found(Level.Fine, $"{asked} {price}; {budget} are there.", value: value, limit: limit)]
                : [WithinBudget!.Found(Level.Fix, $"{asked} {price}; {budget} are there: {price with { Amount = price.Amount - budget.Amount }} too much.", $"Cheaper parts, less work or margin, or a larger budget.", value, limit)];
        });

    /// <summary>Every rule about prices.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } = [WithinBudget];

    static string DescribeTarget(BoardAnalysis e) => e.Price.IsKnown ? "The board costs" : "The parts alone cost";
}
