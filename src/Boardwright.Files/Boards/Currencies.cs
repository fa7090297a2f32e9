using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>One board is reckoned in one currency: the program knows no rates of exchange.</summary>
static class Currencies
{
    /// <summary>Complains about every amount in another currency than the first.</summary>
    public static void Check(Board board, IReadOnlyDictionary<string, SourceLocation> places, Complaints complaints)
    {
        (string Currency, string Key)? first = null;
        foreach (var (key, currency) in Find(board).Concat(PlugsOf(board).SelectMany(Find)))
        {
            first ??= (currency, key);
            if (currency != first.Value.Currency && places.TryGetValue(key, out var at))
                complaints.Add(at, key, $"This is in {currency}, and {first.Value.Key} is in {first.Value.Currency}.", $"Write every amount of a board in one currency; convert this one to {first.Value.Currency}.");
        }
    }

    static IEnumerable<(string Key, string Currency)> Find(Sheet sheet)
    {
        foreach (var entry in Entry.ListEntries(sheet.GetType()))
        {
            switch (entry.Read(sheet))
            {
                case Known<Money> { IsKnown: true } money:
                    yield return (money.Key, money.Value.Currency);
                    break;
                case Known<HourlyRate> { IsKnown: true } rate:
                    yield return (rate.Key, rate.Value.PerHour.Currency);
                    break;
                case Sheet inner:
                    foreach (var found in Find(inner))
                        yield return found;
                    break;
                case IEnumerable<Sheet> list:
                    foreach (var found in list.SelectMany(Find))
                        yield return found;
                    break;
            }
        }
    }

    /// <summary>The plugs that the runs of wire name; other plugs of the shelf are not on this board.</summary>
    static IEnumerable<Plug> PlugsOf(Board board) =>
        board.Wiring.Where(run => run.Plug.IsKnown && board.Plugs.ContainsKey(run.Plug.Value))
        .Select(run => board.PlugCalled(run.Plug.Value)).Distinct();
}
