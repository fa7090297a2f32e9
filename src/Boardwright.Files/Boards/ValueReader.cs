using System.Globalization;
using Boardwright.Files.Yaml;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>Reads the value of one entry from its node, whatever form it has.</summary>
/// <param name="complaints">Takes what is wrong.</param>
sealed class ValueReader(Complaints complaints)
{
    const int LongestText = 2000;

    /// <summary>What marks a value as a guess, written behind it.</summary>
    internal const string GuessMark = " ?";

    static readonly string[] FrameKeys = ["value", "give", "from"];

    /// <summary>Reads a value.</summary>
    /// <returns>The entry's known value, or <c>null</c> when it was complained about.</returns>
    public object? Read(Entry entry, Node node, string key)
    {
        switch (node)
        {
            case SpoiledNode:
                return null;
            case ScalarNode { IsEmpty: true }:
                complaints.Add(node.At, key, $"Nothing is written for {key}.", Wanted(entry) is { Length: > 0 } wanted ? $"{wanted}, or take the line out while it is not known." : "Write a value, or take the line out while it is not known.");
                return null;
            case MapNode map when map.Pairs.Any(pair => FrameKeys.Contains(pair.Key.Text, StringComparer.Ordinal)):
                return Framed(entry, map, key);
            case ScalarNode scalar when Unmarked(scalar) is { } bare:
                return Plain(entry, bare, key) is { } guess ? entry.Known(guess, from: Units.Origin.Guess) : null;
            default:
                return Plain(entry, node, key) is { } value ? entry.Known(value) : null;
        }
    }

    /// <summary>A value without the mark of a guess.</summary>
    /// <returns>The value; <c>null</c> where no mark stands behind it. In quotation marks a question mark is part of a text.</returns>
    internal static ScalarNode? Unmarked(ScalarNode scalar) =>
        scalar.IsPlain && scalar.Text.EndsWith(GuessMark, StringComparison.Ordinal)
        && scalar.Text[..^GuessMark.Length].TrimEnd() is { Length: > 0 } bare ? scalar with { Text = bare } : null;

    object? Framed(Entry entry, MapNode map, string key)
    {
        var before = complaints.Count;
        foreach (var (word, _) in map.Pairs)
        {
            if (!FrameKeys.Contains(word.Text, StringComparer.Ordinal))
            {
                var near = Nearest.To(word.Text, FrameKeys);
                complaints.Add(word.At, key, $"{QuantityText.Quote(word.Text)} is not known beside a value.", near is null ? "Write { value: …, give: …, from: … } and nothing else." : $"Write {near} instead.");
            }
        }

        if (map.Find("value") is not { } inner)
        {
            complaints.Add(map.At, key, $"{key} says how well it is known and not what it is.", $"Add value: before it{(entry.Example.Length > 0 ? $", as in {{ value: {entry.Example}, from: measured }}" : "")}.");
            return null;
        }

        var value = inner is ScalarNode { IsEmpty: true } or MapNode { Pairs: [] } ? Missing(entry, inner, key) : Plain(entry, inner, key);
        var from = map.Find("from") is { } origin ? Origin(origin, key) : null;
        var spread = map.Find("give") is { } give && value is not null ? Give(entry, give, value, key) : null;
        return value is null || complaints.Count > before ? null : entry.Known(value, spread, from);
    }

    object? Missing(Entry entry, Node node, string key)
    {
        complaints.Add(node.At, key, $"Nothing is written after value: for {key}.", entry.Example.Length > 0 ? $"Write a value, such as {entry.Example}." : "Write the value.");
        return null;
    }

    Origin? Origin(Node node, string key)
    {
        var words = Entry.StatedOrigins.ToDictionary(static origin => Entry.Word(origin), StringComparer.Ordinal);
        if (node is ScalarNode { Text: var text } && words.TryGetValue(text, out var origin))
            return origin;
        if (node is not SpoiledNode)
        {
            var near = node is ScalarNode scalar ? Nearest.To(scalar.Text, words.Keys) : null;
            complaints.Add(node.At, key, $"{Shown(node)} does not say where a value comes from.", near is null ? "Write from: measured, from: maker or from: guess." : $"Write from: {near}.");
        }

        return null;
    }

    double? Give(Entry entry, Node node, object value, string key)
    {
        if (node is SpoiledNode)
            return null;
        if (node is not ScalarNode { Text: var text })
        {
            complaints.Add(node.At, key, $"{Shown(node)} is not a spread; one standard deviation is wanted.", "Write one value, such as give: 5 %.");
            return null;
        }

        var reference = value switch
        {
            double si => si,
            double[] items => items.Max(Math.Abs),
            _ => 1,
        };
        var isTable = value is not (double or double[]);
        if (isTable && entry.Form is not (EntryForm.Curve or EntryForm.ResistanceTable or EntryForm.RollingTable))
        {
            complaints.Add(node.At, key, $"{key} has no spread: it is exactly what it is said to be.", "Take give: out.");
            return null;
        }

        var relative = text.TrimEnd().EndsWith('%');
        if (relative && entry.Dimension == Temperature.Dimension)
        {
            complaints.Add(node.At, key, $"{QuantityText.Quote(text)} is a part of the whole, which a temperature does not have.", "Write the spread in kelvin, such as give: 2 K.");
            return null;
        }

        if (relative || isTable)
        {
            var share = QuantityText.Read(
                text, new QuantityRequest(Fraction.Dimension) { Key = "give", Example = "5 %", Least = 0, Greatest = 1 });
            if (share.Refusal is { } wrong)
                complaints.Add(node.At, key, wrong);
            return share.IsRead ? share.Si * Math.Abs(reference) : null;
        }

        var dimension = entry.Dimension == Temperature.Dimension ? Differences : entry.Dimension!;
        var spread = QuantityText.Read(
            text, new QuantityRequest(
            dimension)
            {
                Key = "give",
                Example = dimension == Differences ? "2 K" : "5 %",
                Least = 0,
                Greatest = Math.Max(Math.Abs(entry.Greatest), Math.Abs(entry.Least))
            });
        if (spread.Refusal is { } refusal)
            complaints.Add(node.At, key, refusal.Says,
                $"Write one standard deviation, {(dimension == Differences ? "" : "in % of the value or ")}{(dimension.Usual.Symbol.Length == 0 ? "as a plain number" : $"in {dimension.Usual.Symbol}")}, such as give: {(dimension == Differences ? "2 K" : "5 %")}.");
        return spread.IsRead ? spread.Si : null;
    }

    // A spread of a temperature is written in degrees, without their zero.
    static readonly Dimension Differences = new(
        TemperatureDifference.Dimension.Name, "K", "2 K", 0, 600, [.. Temperature.Dimension.Units.Select(unit => unit with { Offset = 0 })]);

    /// <summary>The plain value: a number in SI, an array of them, a table, a word.</summary>
    object? Plain(Entry entry, Node node, string key) => entry.Form switch
    {
        EntryForm.Quantity => One(node, RequestFor(entry, key)),
        EntryForm.Quantities => Many(node, RequestFor(entry, key)),
        EntryForm.Count => Word(entry, node, key) is { } text ? Count(entry, text, key) : null,
        EntryForm.Text => Word(entry, node, key) is { } text ? Text(text, key) : null,
        EntryForm.Choice => Word(entry, node, key) is { } text ? Choice(entry, text, key) : null,
        EntryForm.YesNo => Word(entry, node, key) is { } text ? YesNo(text, key) : null,
        EntryForm.Moment => Word(entry, node, key) is { } text ? When(text, key) : null,
        EntryForm.Money => Word(entry, node, key) is { } text ? Money(text, perHour: false, entry, key) : null,
        EntryForm.HourlyRate => Word(entry, node, key) is { } text ? Money(text, perHour: true, entry, key) : null,
        EntryForm.Texts => Texts(entry, node, key),
        EntryForm.Curve => Curve(entry, node, key),
        EntryForm.ResistanceTable => node is MapNode map ? Resistances(entry, map, key) : One(node, RequestFor(entry, key)) is double ohms
            ? new ResistanceTable(Resistance.FromOhms(ohms)) : null,
        EntryForm.RollingTable => node is MapNode map ? Rolling(entry, map, key) : One(node, RequestFor(entry, key)) is double number
            ? new RollingTable(Number.FromValue(number), new Dictionary<Surface, Number>()) : null,
        _ => throw new NotSupportedException($"{key} is not a value."),
    };

    static QuantityRequest RequestFor(Entry entry, string key) => new(entry.Dimension!)
    {
        Key = key,
        Example = entry.Example.StartsWith('[') ? entry.Example.Split('[', ',', ']')[1] : entry.Example.StartsWith('{')
            ? entry.Dimension!.Example : entry.Example,
        Least = entry.Least,
        Greatest = entry.Greatest,
        Positive = entry.About.Positive,
    };

    static string Wanted(Entry entry) => entry.Form switch
    {
        EntryForm.Choice => $"Write {JoinWords(entry.Choices)}",
        EntryForm.YesNo => "Write yes or no",
        EntryForm.Moment => $"Write a day such as {Moment.Example[..10]}, with or without the time, such as {Moment.Example}",
        _ when entry.Example.Length > 0 => $"Write a value such as {entry.Example}",
        _ => "",
    };

    ScalarNode? Word(Entry entry, Node node, string key)
    {
        if (node is ScalarNode scalar)
            return scalar;
        if (node is not SpoiledNode)
            complaints.Add(node.At, key, $"{Shown(node)} stands where {key} wants one value.", Wanted(entry) is { Length: > 0 } wanted ? wanted + "." : "Write one value.");
        return null;
    }

    double? One(Node node, QuantityRequest asked)
    {
        if (node is SpoiledNode)
            return null;
        if (node is not ScalarNode scalar)
        {
            complaints.Add(node.At, asked.Key, $"{Shown(node)} stands where {asked.Key} wants one value.", $"Write a value such as {asked.Example}.");
            return null;
        }

        // Listings print it as a bare number behind the letters KV, which are its unit.
        var isBareSpeedConstant = asked.Dimension == SpeedConstant.Dimension
            && scalar.Text.All(static c => char.IsAsciiDigit(c) || c == '.');
        var written = QuantityText.Read(isBareSpeedConstant ? $"{scalar.Text} {asked.Dimension.Usual.Symbol}" : scalar.Text, asked);
        if (written.Refusal is { } refusal)
            complaints.Add(node.At, asked.Key, refusal);
        return written.IsRead ? written.Si : null;
    }

    double[]? Many(Node node, QuantityRequest asked)
    {
        if (node is not SequenceNode list)
            return One(node, asked) is double one ? [one] : null;
        if (list.Items.Count == 0)
        {
            complaints.Add(node.At, asked.Key, $"The list of {asked.Key} is empty.", $"Write a value such as {asked.Example}, or take the line out.");
            return null;
        }

        var before = complaints.Count;
        var values = new List<double>();
        for (var i = 0; i < list.Items.Count; i++)
        {
            if (IsHalfOfComma(list, i, asked.Dimension))
            {
                var (whole, part) = (((ScalarNode)list.Items[i]).Text, ((ScalarNode)list.Items[++i]).Text);
                complaints.Add(list.Items[i - 1].At, Numbered(asked.Key, i - 1), $"'{whole},{part}' has a comma, which begins the next item of a list.", $"Write {whole}.{part} if one value is meant, or a unit after {whole} if two are.");
            }
            else if (One(list.Items[i], asked with { Key = Numbered(asked.Key, i) }) is { } value)
            {
                values.Add(value);
            }
        }

        return complaints.Count > before || values.Count < list.Items.Count ? null : [.. values];
    }

    /// <summary>Whether an item is the first half of a number with a decimal comma: <c>[72,5 cm]</c> is a list of 72 and 5 cm.</summary>
    static bool IsHalfOfComma(SequenceNode list, int at, Dimension dimension) =>
        list.IsFlow && at + 1 < list.Items.Count && dimension.Find("") is null
        && list.Items[at] is ScalarNode { IsPlain: true } whole && whole.Text.All(char.IsAsciiDigit) && whole.Text.Length is > 0 and < 20
        && list.Items[at + 1] is ScalarNode { IsPlain: true } part && char.IsAsciiDigit(part.Text.FirstOrDefault())
        && part.Text.Length < 40;

    int? Count(Entry entry, ScalarNode scalar, string key)
    {
        var text = scalar.Text.Trim();
        var bounds = FormattableString.Invariant($"from {entry.Least:0} to {entry.Greatest:0}");
        var digits = text.TrimStart('+', '-');
        if (digits.Length == 0 || digits.Length > 18 || text.Length - digits.Length > 1 || !digits.All(char.IsAsciiDigit))
        {
            complaints.Add(scalar.At, key, $"{QuantityText.Quote(text)} is not a whole number, and {key} is counted.", $"Write a whole number {bounds}, without unit, point or comma, such as {Example(entry)}.");
            return null;
        }

        var number = long.Parse(text, CultureInfo.InvariantCulture);
        if (number >= entry.Least && number <= entry.Greatest)
            return (int)number;
        complaints.Add(scalar.At, key, $"{QuantityText.Quote(text)} is out of bounds: {key} is {bounds}.", $"Write a number such as {Example(entry)}.");
        return null;
    }

    static string Example(Entry entry) =>
        entry.Example.Length > 0 ? entry.Example : Math.Max(1, entry.Least).ToString("0", CultureInfo.InvariantCulture);

    string? Text(ScalarNode scalar, string key)
    {
        if (scalar.Text.Length <= LongestText)
            return scalar.Text;
        complaints.Add(scalar.At, key, FormattableString.Invariant($"{QuantityText.Quote(scalar.Text)} has {scalar.Text.Length} characters."), FormattableString.Invariant($"Shorten it to {LongestText} characters."));
        return null;
    }

    Moment? When(ScalarNode scalar, string key)
    {
        if (Moment.Read(scalar.Text) is { } moment)
            return moment;
        complaints.Add(scalar.At, key, $"{QuantityText.Quote(scalar.Text)} is not a day.", $"Write year, month and day, such as {Moment.Example[..10]}, and the time behind it where it is known, such as {Moment.Example}.");
        return null;
    }

    string? Choice(Entry entry, ScalarNode scalar, string key)
    {
        // A hyphen and a space are the same to whoever types it.
        var word = entry.Choices.FirstOrDefault(
            choice => string.Equals(choice.Replace(' ', '-'), scalar.Text.Replace(' ', '-'), StringComparison.Ordinal));
        if (word is null)
            NoChoice(entry.Choices, scalar, key);
        return word;
    }

    void NoChoice(IReadOnlyList<string> choices, ScalarNode scalar, string key)
    {
        var near = Nearest.To(scalar.Text, choices);
        complaints.Add(scalar.At, key, $"{QuantityText.Quote(scalar.Text)} is not one of the words for {key}.", near is null ? $"Write {JoinWords(choices)}." : $"Write {near}; the choice is {JoinWords(choices)}.");
    }

    bool? YesNo(ScalarNode scalar, string key)
    {
        if (scalar.Text is "yes" or "true")
            return true;
        if (scalar.Text is "no" or "false")
            return false;
        complaints.Add(scalar.At, key, $"{QuantityText.Quote(scalar.Text)} is neither yes nor no.", "Write yes or no, in small letters.");
        return null;
    }

    object? Money(ScalarNode scalar, bool perHour, Entry entry, string key)
    {
        var text = scalar.Text.Trim();
        var right = entry.Example.Length > 0 ? entry.Example : perHour ? "35 EUR/h" : "42 EUR";
        var what = perHour ? "money for an hour" : "an amount of money";
        var gap = text.IndexOf(' ');
        var (number, currency) = gap < 0 ? (text, "") : (text[..gap], text[(gap + 1)..].Trim());
        if (text.Contains(','))
            return Refuse($"{QuantityText.Quote(text)} has a comma, and money is read with a decimal point only.", $"Write it as in {right.Replace(" ", ".50 ", StringComparison.Ordinal)}.");
        if (perHour && currency.EndsWith("/h", StringComparison.Ordinal))
            currency = currency[..^2].TrimEnd();
        else if (perHour)
            return Refuse($"{QuantityText.Quote(text)} is not {what}.", $"Write the amount, the currency in three capital letters and /h, such as {right}.");
        if (currency.Length != 3 || !currency.All(char.IsAsciiLetterUpper))
        {
            return Refuse(
                text.All(c => char.IsAsciiDigit(c) || c == '.') ? $"{QuantityText.Quote(text)} has no currency, and {key} wants {what}." : $"{QuantityText.Quote(text)} is not {what}.",
                $"Write the amount and then the currency in three capital letters, such as {right}.");
        }

        if (number.Length > 20 || !decimal.TryParse(
            number, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var amount))
            return Refuse($"{QuantityText.Quote(number)} is not a number, and {key} wants {what}.", $"Write it as in {right}.");
        if (amount is < 0 or > 1_000_000_000)
            return Refuse($"{QuantityText.Quote(text)} is out of bounds: {key} is from 0 to 1000000000 {currency}.", $"Write it as in {right}.");
        var money = new Money(amount, currency);
        return perHour ? new HourlyRate(money) : money;

        object? Refuse(string says, string remedy)
        {
            complaints.Add(scalar.At, key, says, remedy);
            return null;
        }
    }

    Texts? Texts(Entry entry, Node node, string key)
    {
        if (node is not SequenceNode list)
            return Word(entry, node, key) is { } one && Text(one, key) is { } alone ? new Texts([alone]) : null;
        var before = complaints.Count;
        var words = new List<string>();
        foreach (var (i, item) in list.Items.Index())
        {
            if (item is ScalarNode { IsEmpty: false } scalar)
                words.Add(Text(scalar, Numbered(key, i)) ?? "");
            else if (item is not SpoiledNode)
                complaints.Add(item.At, Numbered(key, i), $"{Shown(item)} stands where {key} wants words.", "Write a list of words, as in [one, two].");
        }

        return complaints.Count > before ? null : new Texts(words);
    }

    List<(double X, double Y)>? Curve(Entry entry, Node node, string key)
    {
        var over = entry.Over!;
        if (node is not MapNode map)
        {
            if (node is not SpoiledNode)
                complaints.Add(node.At, key, $"{Shown(node)} stands where {key} wants a table.", $"Write a map from {over.Name} to {entry.Dimension!.Name}{(entry.Example.Length > 0 ? $", such as {entry.Example}" : "")}.");
            return null;
        }

        var points = new List<(double X, double Y)>();
        var before = complaints.Count;
        var last = double.NegativeInfinity;
        foreach (var (word, value) in map.Pairs)
        {
            var x = First(word, over, key, ref last);
            if (One(value, RequestFor(entry, $"{key}[{word.Text}]")) is double y && x is { } place)
                points.Add((place, y));
        }

        if (complaints.Count > before)
            return null;
        if (points.Count >= 2)
            return points;
        complaints.Add(map.At, key, $"The table of {key} has {(points.Count == 0 ? "no points" : "one point")}, and a line needs two.", "Add a point, or take the table out.");
        return null;
    }

    /// <summary>A table's first variable, which must rise from row to row.</summary>
    double? First(ScalarNode word, Dimension over, string key, ref double last)
    {
        var asked = new QuantityRequest(over) { Key = $"the first column of {key}", Example = over == Fraction.Dimension ? "50 %" : over.Example };
        if (over == Fraction.Dimension)
            asked = asked with { Least = 0, Greatest = 1 };
        var written = QuantityText.Read(word.Text, asked);
        if (written.Refusal is { } refusal)
        {
            complaints.Add(word.At, key, refusal);
            return null;
        }

        // A step so small that it cannot be meant would make a line of endless slope.
        if (!(written.Si - last > 1e-9 * Math.Max(1, Math.Abs(written.Si))))
        {
            complaints.Add(word.At, key, $"The first column of {key} does not rise at {QuantityText.Quote(word.Text)}.", "Write the rows in rising order, each place once.");
            return null;
        }

        last = written.Si;
        return written.Si;
    }

    ResistanceTable? Resistances(Entry entry, MapNode map, string key)
    {
        const string temperaturesKey = "temperatures";
        var before = complaints.Count;
        double[] temperatures = [];
        if (map.Find(temperaturesKey) is { } heads)
        {
            temperatures = Many(heads, new QuantityRequest(Temperature.Dimension) { Key = $"{key}.{temperaturesKey}", Example = "25 °C" }) ?? [];
            for (var i = 1; i < temperatures.Length; i++)
            {
                if (!(temperatures[i] > temperatures[i - 1] + 1e-6))
                    complaints.Add(heads.At, $"{key}.{temperaturesKey}", "The temperatures do not rise from column to column.", "Write the columns in rising order of temperature.");
            }
        }

        var (charges, rows) = (new List<Fraction>(), new List<IReadOnlyList<Resistance>>());
        var last = double.NegativeInfinity;
        foreach (var (word, value) in map.Pairs.Where(pair => pair.Key.Text != temperaturesKey))
        {
            if (char.IsLetter(word.Text.FirstOrDefault()) && Nearest.To(word.Text, [temperaturesKey]) is not null)
            {
                complaints.Add(word.At, key, $"{QuantityText.Quote(word.Text)} is not a key of a resistance table.", $"Write {temperaturesKey}.");
                continue;
            }

            var charge = First(word, Fraction.Dimension, key, ref last);
            var row = Many(value, RequestFor(entry, $"{key}[{word.Text}]"));
            if (row is not null && row.Length != Math.Max(1, temperatures.Length)
                && (temperatures.Length > 0 || map.Find(temperaturesKey) is null))
            {
                complaints.Add(
                    value.At,
                    $"{key}[{word.Text}]",
                    FormattableString.Invariant(
                    $"This row has {row.Length} {(row.Length == 1 ? "value" : "values")}, and the table has {(temperatures.Length == 0 ? "no temperatures" : $"{temperatures.Length} {(temperatures.Length == 1 ? "temperature" : "temperatures")}")}."),
                    temperatures.Length == 0 ? $"Write one value, or add a row {temperaturesKey}: [0 °C, 25 °C]." : "Write one value for each temperature.");
            }

            if (charge is { } c && row is not null)
            {
                charges.Add(Fraction.FromValue(c));
                rows.Add([.. row.Select(Resistance.FromOhms)]);
            }
        }

        if (complaints.Count > before)
            return null;
        if (rows.Count > 0)
            return new ResistanceTable(charges, [.. temperatures.Select(Temperature.FromKelvins)], rows);
        complaints.Add(map.At, key, $"The table of {key} has no rows.", $"Write a row for each state of charge, as in 50 %: {entry.Example}.");
        return null;
    }

    RollingTable? Rolling(Entry entry, MapNode map, string key)
    {
        var before = complaints.Count;
        var surfaces = Enum.GetValues<Surface>();
        IReadOnlyList<string> words = [.. surfaces.Select(surface => Entry.Word(surface))];
        var numbers = new Dictionary<Surface, Number>();
        foreach (var (word, value) in map.Pairs)
        {
            var at = words.ToList().FindIndex(
                surface => string.Equals(surface.Replace(' ', '-'), word.Text.Replace(' ', '-'), StringComparison.Ordinal));
            var number = One(value, RequestFor(entry, $"{key}[{word.Text}]"));
            if (at < 0)
                NoChoice(words, word, key);
            else if (number is double si && !numbers.TryAdd(surfaces[at], Number.FromValue(si)))
                complaints.Add(word.At, key, $"{QuantityText.Quote(word.Text)} is written twice here.", "Keep one of the two.");
        }

        if (complaints.Count > before)
            return null;
        if (numbers.Count > 0)
            return new RollingTable(null, numbers);
        complaints.Add(map.At, key, $"The table of {key} is empty.", $"Write one number, such as {entry.Example}, or one for each surface.");
        return null;
    }

    /// <summary>What a node is, for a complaint.</summary>
    internal static string Shown(Node node) => node switch
    {
        ScalarNode scalar => QuantityText.Quote(scalar.Text),
        SequenceNode => "A list",
        _ => "A map",
    };

    /// <summary>Words in a sentence: <c>a, b or c</c>.</summary>
    internal static string JoinWords(IReadOnlyList<string> words) =>
        words.Count == 1 ? words[0] : $"{string.Join(", ", words.Take(words.Count - 1))} or {words[^1]}";

    static string Numbered(string key, int index) => FormattableString.Invariant($"{key}[{index + 1}]");
}
