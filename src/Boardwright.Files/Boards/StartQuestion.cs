using System.Globalization;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>What came of an answer: the answers with it, or why it was refused.</summary>
/// <param name="Answers">All answers so far; as they were where this one was refused.</param>
/// <param name="Refusal">Why it was refused, or <c>null</c>.</param>
public sealed record StartReading(StartAnswers Answers, Refusal? Refusal);

/// <summary>One question that is asked when a board is begun, in a terminal and on a page alike.</summary>
public sealed class StartQuestion
{
    readonly Func<StartAnswers, string> show;
    readonly Func<StartAnswers, string, StartReading> take;

    StartQuestion(string name, string asks, string help, Func<StartAnswers, string> show, Func<StartAnswers, string, StartReading> take) =>
        (Name, Asks, Help, this.show, this.take) = (name, asks, help, show, take);

    /// <summary>Short name, as of an option.</summary>
    public string Name { get; }
    /// <summary>The question.</summary>
    public string Asks { get; }
    /// <summary>What to think of, in a few words.</summary>
    public string Help { get; }
    /// <summary>Words to choose from; empty where anything can be written.</summary>
    public IReadOnlyList<string> Choices { get; private init; } = [];

    /// <summary>Every question, in the order in which they are asked: a later one's usual answer may follow from those before.</summary>
    public static IReadOnlyList<StartQuestion> All { get; } =
    [
        Quantity<Mass>("rider", "How heavy is the rider?", "without clothes and bag", 20, 200, a => a.Rider, (a, v) => a with { Rider = v }),
        Word("surface", "What is the road made of?", "where it is ridden most", [.. Enum.GetValues<Surface>().Select(s => Entry.Word(s))],
            a => Entry.Word(a.Surface), (a, i) => a with { Surface = Enum.GetValues<Surface>()[i] }),
        Quantity<Length>("range", "How far on one charge?", "at the pace below", 1e3, 200e3, a => a.Range, (a, v) => a with { Range = v }, "km"),
        Quantity<Speed>("cruise", "How fast does it cruise?", "held without effort; local law may allow less", 8 / 3.6, 60 / 3.6, a => a.Cruise, (a, v) => a with { Cruise = v }),
        Quantity<Fraction>("climb", "How steep is the steepest hill?", "rise over run; most ramps and streets have 4 % to 10 %", 0, 0.3, a => a.Climb, (a, v) => a with { Climb = v }),
        new("wheels", "Which wheels?", "diameter, and urethane, rubber or air", Wheels, TakeWheels),
        Word("motors", "One motor or two?", "two climb and brake better", ["1", "2"], a => a.Motors.ToString(CultureInfo.InvariantCulture),
            (a, i) => a with { Motors = i + 1 }),
        new("pack", "How many cells?", "series and parallel, as packs are sold", a => a.Cells.ToString(), TakePack),
    ];

    /// <summary>The question of a name.</summary>
    public static StartQuestion Named(string name) => All.First(question => question.Name == name);
    /// <summary>The answer that is taken where nothing is written.</summary>
    public string Usual(StartAnswers answers) => show(answers);

    /// <summary>Takes an answer.</summary>
    /// <param name="answers">The answers so far.</param>
    /// <param name="text">What was written; nothing stands for the usual answer.</param>
    public StartReading Take(StartAnswers answers, string text)
    {
        ArgumentNullException.ThrowIfNull(answers);
        ArgumentNullException.ThrowIfNull(text);
        var written = text.Trim();
        var taken = take(answers, written.Length > 0 ? written : Usual(answers));
        return taken.Refusal is null ? taken with { Answers = taken.Answers with { Answered = taken.Answers.Answered.Add(Name) } } : taken;
    }

    static StartQuestion Quantity<T>(
        string name, string asks, string help, double least, double greatest, Func<StartAnswers, T> get,
        Func<StartAnswers, T, StartAnswers> set, string? unit = null)
        where T : struct, IQuantity<T>
    {
        var symbol = unit ?? T.Dimension.Usual.Symbol;
        return new(name, asks, help, a => get(a).ToString(symbol, null), (a, text) =>
        {
            var read = QuantityText.Read(WithUnit(text, symbol), new QuantityRequest(T.Dimension)
            {
                Key = "the answer",
                Example = get(new StartAnswers()).ToString(symbol, null),
                Least = least,
                Greatest = greatest,
            });
            return read.Refusal is { } refusal ? new(a, refusal) : new(set(a, T.FromSi(read.Si)), null);
        });
    }

    static StartQuestion Word(
        string name, string asks, string help, IReadOnlyList<string> words, Func<StartAnswers, string> get,
        Func<StartAnswers, int, StartAnswers> set) => new(name, asks, help, get, (a, text) =>
    {
        var meant = text.Replace('-', ' ');
        var at = words.ToList().FindIndex(word => string.Equals(word, meant, StringComparison.OrdinalIgnoreCase));
        return at >= 0 ? new(set(a, at), null)
            : new(a, new($"{QuantityText.Quote(text)} is not one of the answers.", $"Write {ValueReader.JoinWords(words)}."));
    })
        { Choices = words };

    // Somebody who is asked for kilograms need not write them; a file needs them.
    static string WithUnit(string text, string symbol) => char.IsAsciiDigit(text[^1]) || text[^1] == '.' ? $"{text} {symbol}" : text;

    static string Wheels(StartAnswers answers) => $"{answers.Diameter.ToString("mm", null)} {Entry.Word(answers.Wheels)}";

    static StartReading TakeWheels(StartAnswers answers, string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries).ToList();
        WheelKind? kind = null;
        foreach (var (word, meant) in KindWords)
        {
            if (words.RemoveAll(w => string.Equals(w.Trim(','), word, StringComparison.OrdinalIgnoreCase)) > 0)
                kind = meant;
        }

        var across = words.Count > 0 ? string.Join(' ', words).TrimEnd(',') : answers.Diameter.ToString("mm", null);
        var read = QuantityText.Read(WithUnit(across, "mm"), new QuantityRequest(Length.Dimension)
        {
            Key = "the wheels' diameter",
            Example = "107 mm",
            Least = 0.06,
            Greatest = 0.3,
        });
        if (read.Refusal is { } refusal)
            return new(answers, refusal with { Remedy = "Write diameter and kind, such as 107 mm urethane, 150 mm rubber or 175 mm air." });
        // Hardly any urethane wheel is larger than this, and hardly any tyre smaller.
        kind ??= read.Si > 0.14 ? WheelKind.Air : WheelKind.Urethane;
        return new(answers with { Diameter = Length.FromSi(read.Si), Wheels = kind.Value }, null);
    }

    static readonly (string Word, WheelKind Kind)[] KindWords =
    [
        ("urethane", WheelKind.Urethane), ("rubber", WheelKind.Rubber), ("solid", WheelKind.Rubber), ("air", WheelKind.Air),
        ("tyre", WheelKind.Air), ("tyres", WheelKind.Air), ("tire", WheelKind.Air), ("tires", WheelKind.Air),
    ];

    static StartReading TakePack(StartAnswers answers, string text)
    {
        if (CellCount.Read(text) is not { } cells)
            return new(answers, new($"{QuantityText.Quote(text)} does not say how many cells.", "Write series and parallel, such as 12S4P."));
        return cells is { Series: < 4 or > 20 } or { Parallel: > 16 }
            ? new(answers, new($"{cells} is out of bounds: 4 to 20 in series, 1 to 16 in parallel.", "Write series and parallel, such as 12S4P."))
            : new(answers with { Pack = cells }, null);
    }
}
