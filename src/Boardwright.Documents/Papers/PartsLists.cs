using Boardwright.Boxes;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Prices;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>Parts list, purchase list, cut list and price sheet.</summary>
static class PartsLists
{
    public static IReadOnlyList<Block> Parts(PaperContext gathering)
    {
        var answer = PurchaseLine.Compute(gathering.Board);
        gathering.Format(answer, _ => null);
        if (!answer.IsKnown)
            return [new ParagraphBlock("The parts cannot be listed before the kind of drive and the number of motors are known.")];
        var list = answer.Value;
        List<Block> blocks =
        [
            new HeadingBlock("Parts of this board"),
            new TableBlock(
                [new("Place", 2.2), new("Part", 5.2), new("Needed", 1.3, true), new("In stock", 1.2, true), new("To buy", 1.1, true), new("Mass each", 1.6, true), new("Taken", 1.1)],
                [.. list.Select(l => (IReadOnlyList<string?>)
                [
                    PlaceOf(l.Place.Key), TitleOf(l.Place.Part), Invariant($"{l.Place.Count}"), Invariant($"{l.FromStock}"), Invariant($"{l.ToBuy}"),
                    l.Place.Part.Mass.IsKnown ? gathering.Say($"{l.Place.Part.Mass.Value:0 g}") : "", null,
                ])]),
            new HeadingBlock("To buy"),
        ];
        var buying = list.Where(l => l.ToBuy > 0).ToList();
        if (buying.Count == 0)
            blocks.Add(new ParagraphBlock("Nothing: everything lies on the shelf, as far as the shelf's counts are right."));
        foreach (var supplier in buying.GroupBy(l => l.Place.Part.Supplier.Or("supplier not known"), StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var rows = supplier.Select(
                l => (IReadOnlyList<string?>)[TitleOf(l.Place.Part), l.Place.Part.Id, Invariant($"{l.ToBuy}"),
                l.Place.Part.Price.IsKnown ? Words(l.Place.Part.Price.Value) : null, Words(l.ToPay), null]).ToList();
            rows.Add(["Together", "", "", "", SumOf(supplier.Select(l => l.ToPay)), ""]);
            blocks.Add(new ParagraphBlock(supplier.Key));
            blocks.Add(new TableBlock(
                [new("Part", 5), new("Shelf id", 2.6), new("Count", 1, true), new("Each", 1.8, true), new("Together", 2, true), new("Ordered", 1.4)],
                rows)
            { HasTotal = true });
        }

        Unpriced(gathering, blocks);
        blocks.Add(new ParagraphBlock("Small parts that no board file names: thread lock, sleeves, tape, crimps, bolts of trucks and covers, grease.", IsQuiet: true));
        return blocks;
    }

    public static IReadOnlyList<Block> Cut(PaperContext gathering)
    {
        List<Block> blocks = [new HeadingBlock("Wire"), .. WiringSheet.CutList(gathering)];
        var pattern = gathering.Order.Pattern;
        if (!pattern.IsBeside)
        {
            blocks.Add(new HeadingBlock("Box"));
            gathering.Format(pattern, _ => null);
            if (pattern.IsKnown)
                blocks.Add(BoxParts(gathering, pattern.Value));
        }

        return blocks;
    }

    static TableBlock BoxParts(PaperContext gathering, BoltPattern pattern)
    {
        var flange = pattern.Flange;
        var round = 2 * (flange.OuterLength - flange.Width + flange.OuterWidth - flange.Width);
        var box = gathering.Parts.Box;
        List<IReadOnlyList<string?>> rows =
        [
            ["Gasket strip", Invariant($"{(box.GasketThickness.IsKnown ? Invariant($"{box.GasketThickness.Value.Millimetres:0.#} mm thick, ") : "")}{flange.Width.Millimetres:0.#} mm wide at most"), Invariant($"{round.Millimetres:0} mm, cut {round.Millimetres + 10:0} mm"), null],
            ["Bolts", pattern.Thread.Name + BoltLength(gathering, pattern), Invariant($"{pattern.Places.Count}"), null],
            [pattern.IsWoodScrew ? "Screws go into the wood" : "Inserts", pattern.IsWoodScrew ? "" : Invariant($"{pattern.Thread.Name}, barrel Ø {pattern.DeckHole.Millimetres:0.0} mm, no longer than the deck is thick"), pattern.IsWoodScrew ? "" : Invariant($"{pattern.Places.Count}"), null],
            ["Washers", Invariant($"{pattern.Thread.Name}, Ø {pattern.Thread.Washer.OuterDiameter.Millimetres:0.#} mm (ISO 7089)"), Invariant($"{pattern.Places.Count}"), null],
        ];
        return new TableBlock([new("What", 2), new("Which", 5), new("How much", 2.5, true), new("Ready", 1)], rows);
    }

    // Through washer, flange and squeezed gasket, and no further than the deck's upper side.
    static string BoltLength(PaperContext gathering, BoltPattern pattern)
    {
        var (box, deck) = (gathering.Parts.Box, gathering.Parts.Deck);
        if (!box.GasketThickness.IsKnown || !deck.Thickness.IsKnown)
            return "";
        var before = pattern.Thread.Washer.Thickness + pattern.Flange.Wall
            + GasketSqueeze.ClosedHeight(box.GasketThickness.Value, BoltPattern.SqueezeAtBolts);
        return Invariant($", under the head at least {(before + pattern.Thread.Diameter).Millimetres:0.0} mm, at most {(before + deck.Thickness.Value).Millimetres:0.0} mm");
    }

    public static IReadOnlyList<Block> Price(PaperContext gathering)
    {
        var (examination, money) = (gathering.Examination, gathering.Board.Money);
        List<Block> blocks = [new HeadingBlock("Parts")];
        var answer = PurchaseLine.Compute(gathering.Board);
        if (answer.IsKnown)
        {
            var rows = answer.Value.Select(
                l => (IReadOnlyList<string?>)[PlaceOf(l.Place.Key), TitleOf(l.Place.Part), Invariant($"{l.Place.Count}"),
                l.Place.Part.Price.IsKnown ? Words(l.Place.Part.Price.Value) : null, Words(l.Worth)]).ToList();
            rows.Add(["Together", "", "", "", examination.Quote.IsKnown ? Words(examination.Quote.Value.Parts) : null]);
            blocks.Add(new TableBlock(
                [new("Place", 2.2), new("Part", 5.5), new("Count", 1.2, true), new("Each", 2, true), new("Together", 2.2, true)], rows)
            { HasTotal = true });
        }

        Unpriced(gathering, blocks);
        blocks.Add(new HeadingBlock("From parts to price"));
        var hours = gathering.Format(money.LabourHours, h => $"{h.Hours:0.##} h");
        var rate = gathering.Format(money.LabourRate, r => $"{r.PerHour} an hour");
        blocks.Add(new TableBlock(
            [new("Step", 6), new("Amount", 3, true)],
            [
                ["Parts", examination.Quote.IsKnown ? Words(examination.Quote.Value.Parts) : null],
                [Invariant($"Work: {Or(hours)} at {Or(rate)}"),
                    money.LabourHours.IsKnown && money.LabourRate.IsKnown
                        ? Words(money.LabourRate.Value.PerHour with { Amount = money.LabourRate.Value.PerHour.Amount
                        * (decimal)money.LabourHours.Value.Hours }) : null],
                [Invariant($"Cost of one, with {Or(gathering.Format(money.Overhead, o => $"{o.Percent:0.#} %"))} overhead on parts and work"), gathering.Format(examination.Cost, c => $"{c.Money}")],
                [Invariant($"Price without tax, with {Or(gathering.Format(money.Margin, m => $"{m.Percent:0.#} %"))} margin on the cost"), gathering.Format(examination.Price, c => $"{c.Money}")],
            ])
        {
            HasTotal = true,
        });
        if (examination is { Cost.IsKnown: true, Price.IsKnown: true })
        {
            var left = examination.Price.Value.Money with
            {
                Amount = examination.Price.Value.Money.Amount
                - examination.Cost.Value.Money.Amount
            };
            blocks.Add(new ParagraphBlock(Invariant($"Left of each board after its cost: {left}. Tax, carriage, guarantee work and insurance are not in these figures.")));
        }

        blocks.Add(new ParagraphBlock("Parts list, work, overhead and margin are as the board file states them; prices are the shelf's and without tax.", IsQuiet: true));
        return blocks;
    }

    static void Unpriced(PaperContext gathering, List<Block> blocks)
    {
        if (gathering.Examination.Quote is not { IsKnown: true, Value.Unpriced: { Count: > 0 } unpriced })
            return;
        foreach (var key in unpriced)
            gathering.Lack(key);
        blocks.Add(new ParagraphBlock("Without a price, so that every sum is a lower bound: " + string.Join(", ", unpriced) + "."));
    }

    static string? SumOf(IEnumerable<Money?> amounts)
    {
        var known = amounts.OfType<Money>().ToList();
        return known.Count == 0 || known.Any(m => m.Currency != known[0].Currency) ? null
            : Words(new Money(known.Sum(m => m.Amount), known[0].Currency));
    }

    static string? Words(Money? money) => money?.ToString(null, null);

    static string TitleOf(Part part) => part.IsChosen ? part.Title : "not chosen yet";

    static string PlaceOf(string key) =>
        key.Replace('_', ' ').Replace("fittings[", "fitting ", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal)
        .Replace("pack.protection", "protection", StringComparison.Ordinal);
}
