using System.Globalization;
using System.Text;

namespace Boardwright.Units;

/// <summary>Why something written was refused, and how to mend it; a sentence each.</summary>
/// <param name="Says">What is wrong.</param>
/// <param name="Remedy">How to mend it.</param>
public sealed record Refusal(string Says, string Remedy);

/// <summary>What a written value is for, so that a refusal can say it.</summary>
/// <param name="Dimension">What is measured.</param>
public sealed record QuantityRequest(Dimension Dimension)
{
    /// <summary>The key it is written under.</summary>
    public string Key { get; init; } = "this value";
    /// <summary>A right value.</summary>
    public string Example { get; init; } = Dimension.Example;
    /// <summary>Least value, SI.</summary>
    public double Least { get; init; } = Dimension.Least;
    /// <summary>Greatest value, SI.</summary>
    public double Greatest { get; init; } = Dimension.Greatest;
    /// <summary>Whether zero is refused.</summary>
    public bool Positive { get; init; }
}

/// <summary>What came of reading a written value: its SI value, or why it was refused.</summary>
/// <param name="Si">The value in SI; not a number where it was refused.</param>
/// <param name="Refusal">Why it was refused, or <c>null</c>.</param>
public readonly record struct QuantityReading(double Si, Refusal? Refusal)
{
    /// <summary>Whether there is a value.</summary>
    public bool IsRead => Refusal is null;
}

/// <summary>Quantities as people write them: <c>107 mm</c>, <c>1 1/4 in</c>, <c>AWG 12</c>, <c>18 °C</c>.</summary>
public static class QuantityText
{
    const int LongestText = 100;

    // So that 90 deg passes a bound written as 1.5707963.
    const double BoundSlack = 1e-6;

    static readonly Lazy<IReadOnlyList<Dimension>> Dimensions = new(static () =>
    [
        .. typeof(Dimension).Assembly.GetTypes()
            .Where(static type => type.IsValueType && type.IsAssignableTo(typeof(IQuantity)))
            .Select(static type => (Dimension)type.GetProperty(nameof(Length.Dimension))!.GetValue(null)!)
            .OrderBy(static dimension => dimension.Name, StringComparer.Ordinal),
    ]);

    /// <summary>Every dimension there is, by name.</summary>
    public static IReadOnlyList<Dimension> AllDimensions => Dimensions.Value;
    /// <summary>Reads a written value.</summary>
    public static QuantityReading Read(string text, Dimension dimension) => Read(text, new QuantityRequest(dimension));

    /// <summary>Reads a written value for a key with bounds of its own.</summary>
    public static QuantityReading Read(string text, QuantityRequest asked)
    {
        var cursor = new Cursor(Tidy(text));
        if (cursor.Text.Length == 0)
            return Refused($"Nothing is written for {asked.Key}", asked);
        if (cursor.Text.Length > LongestText)
            return Refused($"{Quote(text)} is too long for a value", asked);
        if (asked.Dimension == Area.Dimension && Gauge(cursor.Text, asked) is { } gauge)
            return gauge;
        if (cursor.Text.Contains('±') || cursor.Text.Contains("+/-", StringComparison.Ordinal)
            || cursor.Text.Contains("+-", StringComparison.Ordinal))
        {
            return new(double.NaN, new(
                $"{Quote(text)} gives a value and its spread in one.",
                $"Write the spread beside the value, as in {{ value: {asked.Example}, give: 5 %, from: measured }}."));
        }

        return ReadNumber(ref cursor, text, asked) is { } refusal
            ? new(double.NaN, refusal)
            : Scale(cursor.Number, cursor.Rest, text, asked);
    }

    /// <summary>Writes a value so that reading it gives the value back, in the dimension's usual unit where that can be done.</summary>
    public static string Write(double si, Dimension dimension)
    {
        foreach (var unit in dimension.Units.OrderBy(unit => unit == dimension.Usual ? 0 : unit is { Factor: 1, Offset: 0 } ? 1 : 2))
        {
            if (Shortest(si, unit) is { } number)
                return With(number, unit);
        }

        return With(dimension.Usual.FromSi(si).ToString("R", CultureInfo.InvariantCulture), dimension.Usual);
    }

    /// <summary>A piece of a file in quotation marks, shortened, with control characters made visible.</summary>
    public static string Quote(string text)
    {
        var shown = new StringBuilder("'");
        foreach (var rune in text.EnumerateRunes())
        {
            if (shown.Length > 60)
                return shown.Append("…'").ToString();
            shown.Append(rune.Value switch
            {
                '\n' => "\\n",
                '\r' => "\\r",
                '\t' => "\\t",
                _ when Rune.IsControl(rune) => $"\\x{rune.Value:X2}",
                _ => rune.ToString(),
            });
        }

        return shown.Append('\'').ToString();
    }

    /// <summary>The name of a dimension with its article, as in <c>a length</c> and <c>an area</c>.</summary>
    public static string WithArticle(Dimension dimension) => ("aeiou".Contains(dimension.Name[0]) ? "an " : "a ") + dimension.Name;

    static string? Shortest(double si, Unit unit)
    {
        var written = unit.FromSi(si);
        for (var digits = 1; digits <= 17; digits++)
        {
            var text = written.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            if (unit.ToSi(double.Parse(text, CultureInfo.InvariantCulture)) == si)
                return Plain(text);
        }

        return null;
    }

    // Nobody writes 1E+02 mm; only what has no end of zeros keeps its power of ten.
    static string Plain(string number) =>
        number.Contains('E', StringComparison.Ordinal)
        && decimal.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
        && Math.Abs(value) is >= 1e-6m and < 1e9m
        ? value.ToString("0.#############", CultureInfo.InvariantCulture)
        : number;

    static string With(string number, Unit unit) => unit.Symbol.Length == 0 ? number : $"{number} {unit.Symbol}";

    static Refusal? ReadNumber(ref Cursor cursor, string text, QuantityRequest asked)
    {
        var negative = cursor.Sign();
        var digits = cursor.TakeWhile(static c => char.IsAsciiDigit(c) || c is '.' or ',' or '\'' or '_');
        if (digits.Contains(','))
            return Comma(digits, text, asked);
        if (digits.AsSpan().ContainsAny('\'', '_'))
            return new($"{Quote(text)} has a mark between its digits.", $"Write the digits of {asked.Key} without marks between them, as in {asked.Example}.");
        if (digits.Count(static c => c == '.') > 1)
            return new($"{Quote(text)} has more than one point in its number.", $"Write one number with one point, as in {asked.Example}.");
        if (!digits.AsSpan().ContainsAnyInRange('0', '9'))
            return NoNumber(text, asked);
        var value = double.Parse(digits, CultureInfo.InvariantCulture);
        if (cursor.Exponent() is { } exponent)
            value = double.Parse(digits + exponent, CultureInfo.InvariantCulture);
        else if (!digits.Contains('.') && cursor.Fraction(value) is { } fraction)
            value = fraction;
        if (double.IsNaN(value))
            return new($"{Quote(text)} divides by zero.", $"Write a fraction such as 1/4, or a number with a point, as in {asked.Example}.");
        if (double.IsInfinity(value))
            return new($"{Quote(text)} is too large for a number.", $"Write a value as in {asked.Example}.");
        cursor.Number = negative ? -value : value;
        return null;
    }

    static QuantityReading Scale(double number, string symbol, string text, QuantityRequest asked)
    {
        if (FindUnit(symbol, asked.Dimension) is not { } unit)
            return new(double.NaN, WrongUnit(number, symbol, text, asked));
        var si = unit.ToSi(number);
        return Bounds(si, unit, text, asked) is { } refusal ? new(double.NaN, refusal) : new(si, null);
    }

    static Refusal? Bounds(double si, Unit unit, string text, QuantityRequest asked)
    {
        var zero = asked.Positive && asked.Least <= 0;
        var (atLeast, atMost) = (asked.Least - BoundSlack * Math.Abs(asked.Least), asked.Greatest + BoundSlack * Math.Abs(asked.Greatest));
        if (si <= atMost && (zero ? si > 0 : si >= atLeast))
            return null;
        var (least, greatest) = (With(Dimension.Figures(unit.FromSi(zero ? 0 : asked.Least)), unit),
            With(Dimension.Figures(unit.FromSi(asked.Greatest)), unit));
        var bounds = zero ? $"more than {least} and at most {greatest}" : $"from {least} to {greatest}";
        return new(
            $"{Quote(text)} is out of bounds: {asked.Key} is {bounds}.",
            $"Check the number and its unit; a value such as {asked.Example} is expected.");
    }

    static Refusal Comma(string digits, string text, QuantityRequest asked)
    {
        var (whole, part) = (digits[..digits.LastIndexOf(',')], digits[(digits.LastIndexOf(',') + 1)..]);
        var rest = Tidy(text)[(Tidy(text).IndexOf(digits, StringComparison.Ordinal) + digits.Length)..];
        var bare = string.Concat(whole.Where(char.IsAsciiDigit));
        var ambiguous = part.Length == 3 && part.All(char.IsAsciiDigit) && !whole.Contains('.') && whole.Length > 0;
        var remedy =
            part.Contains('.') ? $"Write {bare}{part}{rest}: no comma between thousands."
            : ambiguous ? $"Write {bare}{part}{rest} or {bare}.{part}{rest}, whichever is meant, without a comma."
            : $"Write {(bare.Length == 0 ? "0" : bare)}.{part}{rest}, with a point.";
        return new($"{Quote(text)} has a comma, and {asked.Key} is read with a decimal point only.", remedy);
    }

    static Refusal NoNumber(string text, QuantityRequest asked)
    {
        var word = Tidy(text).TrimStart('+', '-', '−', '.');
        return word.StartsWith("nan", StringComparison.OrdinalIgnoreCase) || word.StartsWith("inf", StringComparison.OrdinalIgnoreCase)
            || word.StartsWith('∞')
            ? new($"{Quote(text)} is not a number that can be reckoned with.", $"Write a value such as {asked.Example}, or leave {asked.Key} out while it is not known.")
            : new($"{Quote(text)} does not begin with a number, and {asked.Key} wants {WithArticle(asked.Dimension)}.", Expected(asked));
    }

    static Refusal WrongUnit(double number, string symbol, string text, QuantityRequest asked)
    {
        var figure = number.ToString("R", CultureInfo.InvariantCulture);
        if (symbol.Length == 0)
            return new($"{Quote(text)} has no unit, and {asked.Key} wants {WithArticle(asked.Dimension)}.", Expected(asked));
        if (symbol[0] is '-' or '–' or '~' && symbol.AsSpan().ContainsAnyInRange('0', '9'))
            return new($"{Quote(text)} is a range, and {asked.Key} wants one value.", $"Write the middle and how far it spreads, as in {{ value: {asked.Example}, give: 5 % }}.");
        if (char.IsAsciiDigit(symbol[0]))
            return new($"{Quote(text)} holds two numbers.", $"Write one number without spaces between its digits, as in {asked.Example}.");
        // C and F alone are the coulomb and the farad.
        if ((asked.Dimension == Temperature.Dimension || asked.Dimension == TemperatureDifference.Dimension)
            && symbol is "C" or "F" or "c" or "f")
        {
            var (letter, name) = char.ToUpperInvariant(symbol[0]) == 'C' ? ("C", "coulomb") : ("F", "farad");
            var right = asked.Dimension == Temperature.Dimension ? $"{figure} °{letter}" : asked.Example;
            return new($"{Quote(text)} is not a temperature: {letter} alone is the {name}.", $"Write {right}.");
        }

        foreach (var other in AllDimensions)
        {
            if (other != asked.Dimension && FindUnit(symbol, other) is not null)
                return new($"{Quote(text)} is {WithArticle(other)}; {asked.Key} wants {WithArticle(asked.Dimension)}.", Expected(asked));
        }

        foreach (var unit in asked.Dimension.Units)
        {
            foreach (var spelling in unit.Spellings.Prepend(unit.Symbol))
            {
                if (string.Equals(Fold(spelling), Fold(symbol), StringComparison.OrdinalIgnoreCase))
                    return new($"{Quote(text)} has its unit in the wrong capitals.", $"Write {figure} {spelling}; capitals matter in units.");
            }
        }

        return new($"'{Shorten(symbol)}' is not a unit of {asked.Dimension.Name} that is known here.", Expected(asked));
    }

    static string Shorten(string text) => Quote(text)[1..^1];

    static string Expected(QuantityRequest asked)
    {
        var units = asked.Dimension.Units.Select(static unit => unit.Symbol).Where(static symbol => symbol.Length > 0).ToArray();
        var bare = units.Length < asked.Dimension.Units.Count;
        return bare ? $"Write a plain number, or one with {string.Join(" or ", units)}, such as {asked.Example}."
            : units.Length == 1 ? $"Write it in {units[0]}, such as {asked.Example}."
            : $"Write it in {string.Join(", ", units[..^1])} or {units[^1]}, such as {asked.Example}.";
    }

    static QuantityReading Refused(string says, QuantityRequest asked) => new(double.NaN, new(says + ".", Expected(asked)));

    /// <summary>Reads a wire gauge by number: d = 0.127 mm · 92^((36 − n) / 39), the area of a solid wire of that diameter.</summary>
    /// <source>ASTM B258, the standard for diameters of solid round wires by gauge number.</source>
    static QuantityReading? Gauge(string text, QuantityRequest asked)
    {
        var at = text.IndexOf("AWG", StringComparison.OrdinalIgnoreCase);
        if (at < 0)
            return null;
        var written = text.Substring(at, 3);
        var number = (text[..at] + text[(at + 3)..]).Trim();
        if (!string.Equals(written, "AWG", StringComparison.Ordinal))
            return new QuantityReading(double.NaN, new($"{Quote(text)} has its unit in the wrong capitals.", $"Write AWG {Shorten(number)}; capitals matter in units."));
        var gauge = number switch
        {
            "00" or "2/0" => -1,
            "000" or "3/0" => -2,
            "0000" or "4/0" => -3,
            "1/0" => 0,
            _ => number.Length is 1 or 2 && number.All(char.IsAsciiDigit) ? int.Parse(number, CultureInfo.InvariantCulture) : int.MaxValue,
        };
        if (gauge > 40)
            return new QuantityReading(double.NaN, new($"{Quote(text)} is not a wire gauge that is known here.", "Write AWG 40 to AWG 1, AWG 1/0 to AWG 4/0, or the copper section, such as 5.3 mm2."));
        var diameter = 0.127e-3 * Math.Pow(92, (36 - gauge) / 39.0);
        var area = Math.PI / 4 * diameter * diameter;
        return Bounds(area, asked.Dimension.Usual, text, asked) is { } refusal ? new QuantityReading(double.NaN, refusal)
            : new QuantityReading(area, null);
    }

    static Unit? FindUnit(string symbol, Dimension dimension)
    {
        if (dimension.Find(symbol) is { } unit)
            return unit;
        var folded = Fold(symbol);
        return dimension.Units.FirstOrDefault(candidate =>
            Fold(candidate.Symbol) == folded || candidate.Spellings.Any(spelling => Fold(spelling) == folded));
    }

    /// <summary>One spelling for characters that look alike: micro, ohm, degree, the multiplication dots and raised figures.</summary>
    static string Fold(string symbol)
    {
        var folded = new StringBuilder(symbol.Length);
        foreach (var c in symbol)
        {
            if (c == ' ' && (folded.Length == 0 || folded[^1] == ' '))
                continue;
            folded.Append(c switch
            {
                'μ' => 'µ',
                '\u2126' => 'Ω',
                'º' or '˚' => '°',
                '⋅' or '∙' or '•' => '·',
                '²' => '2',
                _ => c,
            });
        }

        return folded.ToString();
    }

    static string Tidy(string text)
    {
        // No-break and thin spaces stand between number and unit in text copied from a data sheet.
        var tidy = new StringBuilder(text.Length);
        foreach (var c in text)
            tidy.Append(c is '\u00A0' or '\u202F' or '\u2009' ? ' ' : c);
        return tidy.ToString().Trim();
    }

    struct Cursor(string text)
    {
        int at;

        public readonly string Text => text;

        public readonly string Rest => text[at..].Trim();

        public double Number { get; set; }

        public bool Sign()
        {
            if (at >= text.Length || text[at] is not ('+' or '-' or '−'))
                return false;
            return text[at++] != '+';
        }

        public string TakeWhile(Func<char, bool> belongs)
        {
            var start = at;
            while (at < text.Length && belongs(text[at]))
                at++;
            return text[start..at];
        }

        public string? Exponent()
        {
            var start = at;
            if (at < text.Length && text[at] is 'e' or 'E')
            {
                at++;
                var sign = Sign() ? "-" : "";
                var power = TakeWhile(char.IsAsciiDigit);
                if (power.Length > 0)
                    return $"e{sign}{power}";
            }

            at = start;
            return null;
        }

        /// <summary>A fraction whose numerator was read already (<c>5/16</c>), or one after whole inches (<c>1 1/4</c>, <c>1-1/4</c>); not
        /// a number when it divides by zero.</summary>
        public double? Fraction(double before)
        {
            var start = at;
            if (Over() is { } below)
                return before / below;
            if (at < text.Length && text[at] is ' ' or '-')
            {
                TakeWhile(static c => c == ' ');
                if (at == start)
                    at++;
                var above = TakeWhile(char.IsAsciiDigit);
                if (above.Length > 0 && Over() is { } under)
                    return before + double.Parse(above, CultureInfo.InvariantCulture) / under;
            }

            at = start;
            return null;
        }

        double? Over()
        {
            if (at + 1 >= text.Length || text[at] != '/' || !char.IsAsciiDigit(text[at + 1]))
                return null;
            at++;
            var below = double.Parse(TakeWhile(char.IsAsciiDigit), CultureInfo.InvariantCulture);
            return below == 0 ? double.NaN : below;
        }
    }
}
