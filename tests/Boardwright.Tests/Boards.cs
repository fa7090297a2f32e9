using System.Globalization;
using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Tests;

/// <summary>The example boards, and boards that differ from them in single entries.</summary>
static class Boards
{
    static readonly double[] OneAlone = [1.0];

    public static IReadOnlyList<string> Names { get; } = ["tern", "puffin", "curlew"];

    public static string PathOf(string name) => Repository.At("examples", name, $"{name}.board.yaml");

    public static Board Read(string name)
    {
        var loaded = BoardFile.Read(PathOf(name));
        Assert.Empty(loaded.Complaints);
        return loaded.Board!;
    }

    public static Board Tern { get; } = Read("tern");

    public static Board Curlew { get; } = Read("curlew");

    /// <summary>A board with some entries replaced; a value is written as in a file, and nothing at all takes the entry away.</summary>
    public static Board With(this Board board, params (string Key, string Value)[] changes)
    {
        foreach (var (key, value) in changes)
        {
            var done = false;
            if (key.Split('.') is ["layout", var name, ..] && !board.Layout.ContainsKey(name))
                board = (board with { Layout = new Dictionary<string, BoxPosition>(board.Layout) { [name] = new() } }).WithNames();
            board = (Board)Changed(board, key, value, ref done);
            Assert.True(done, $"'{key}' is no entry of the board.");
        }

        return board;
    }

    /// <summary>Every entry that is known, by its key; money and lists of words aside.</summary>
    public static IReadOnlyList<string> Entries(Sheet sheet)
    {
        var keys = new List<string>();
        foreach (var entry in Entry.ListEntries(sheet.GetType()))
        {
            switch (entry.Read(sheet))
            {
                case Sheet inner:
                    keys.AddRange(Entries(inner));
                    break;
                case IReadOnlyList<Sheet> list:
                    keys.AddRange(list.SelectMany(Entries));
                    break;
                case IKnown { IsKnown: true } known when entry.Form is not (EntryForm.Money or EntryForm.HourlyRate
                    or EntryForm.Texts):
                    keys.Add(known.Key);
                    break;
            }
        }

        return keys;
    }

    static Sheet Changed(Sheet sheet, string key, string value, ref bool done)
    {
        foreach (var entry in Entry.ListEntries(sheet.GetType()))
        {
            switch (entry.Read(sheet))
            {
                case Sheet inner:
                    var changed = Changed(inner, key, value, ref done);
                    if (done)
                        return sheet.With([(entry, changed)]);
                    break;
                case IReadOnlyList<Sheet> list:
                    for (var i = 0; i < list.Count; i++)
                    {
                        var item = Changed(list[i], key, value, ref done);
                        if (done)
                            return sheet.With([(entry, entry.Known(list.Select((s, n) => n == i ? item : s).ToArray()))]);
                    }

                    break;
                case IReadOnlyDictionary<string, BoxPosition> spots:
                    foreach (var (name, spot) in spots)
                    {
                        var item = Changed(spot, key, value, ref done);
                        if (done)
                            return sheet.With([(entry,
                                entry.Known(spots.Select(s => KeyValuePair.Create(s.Key, s.Key == name ? item : s.Value))))]);
                    }

                    break;
                case IKnown known when known.Key == key:
                    done = true;
                    return sheet.With([(entry, Valued(entry, key, value))]);
            }
        }

        return sheet;
    }

    static object Valued(Entry entry, string key, string text)
    {
        if (text.Length == 0)
            return Named(entry, Activator.CreateInstance(typeof(Known<>).MakeGenericType(ItemOf(entry)))!, key);
        object value = entry.Form switch
        {
            EntryForm.Quantity => Si(entry.Dimension!, text),
            EntryForm.Quantities => text.Split(", ").Select(t => Si(entry.Dimension!, t)).ToArray(),
            EntryForm.Count => int.Parse(text, CultureInfo.InvariantCulture),
            EntryForm.YesNo => text == "yes",
            EntryForm.Money => new Money(decimal.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture), text.Split(' ')[1]),
            EntryForm.ResistanceTable => new ResistanceTable(Resistance.FromSi(Si(Resistance.Dimension, text))),
            EntryForm.RollingTable => new RollingTable(Number.FromSi(Si(Number.Dimension, text)), new Dictionary<Surface, Number>()),
            _ => text,
        };
        return Named(entry, entry.Known(value), key);
    }

    static Type ItemOf(Entry entry) => entry.Known(entry.Form switch
    {
        EntryForm.Quantity => 1.0,
        EntryForm.Quantities => OneAlone,
        EntryForm.Count => 1,
        EntryForm.YesNo => true,
        EntryForm.Choice => entry.Choices[0],
        EntryForm.ResistanceTable => new ResistanceTable(Resistance.FromOhms(1)),
        EntryForm.RollingTable => new RollingTable(Number.FromValue(1), new Dictionary<Surface, Number>()),
        EntryForm.Curve => new[] { (0.0, 1.0), (1.0, 2.0) },
        _ => "",
    }).GetType().GetGenericArguments()[0];

    static object Named(Entry entry, object known, string key) => entry.WithName(known, key);

    static double Si(Dimension dimension, string text)
    {
        var reading = QuantityText.Read(
            text, new QuantityRequest(dimension) { Least = double.NegativeInfinity, Greatest = double.PositiveInfinity });
        Assert.True(reading.Refusal is null, text);
        return reading.Si;
    }
}
