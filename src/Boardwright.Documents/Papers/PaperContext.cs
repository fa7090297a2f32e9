using System.Globalization;
using Boardwright.Builds;
using Boardwright.Drivetrains;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Documents.Papers;

/// <summary>Takes what a paper says out of a board and its figures, and keeps the entries that were not known.</summary>
sealed class PaperContext(PaperOrder order)
{
    // Standard deviations between which nine of ten values lie.
    const double NineOfTen = 1.645;

    const double Closest = 0.1;

    readonly List<string> missing = [];
    readonly List<string> objections = [];

    public PaperOrder Order => order;

    public Examination Examination => order.Examination;

    public Board Board => order.Board;

    public Fitted Parts => order.Board.Parts;

    public IReadOnlyList<string> Missing => missing;

    public IReadOnlyList<string> Objections => objections;


    /// <summary>Words with their quantities in the reader's units.</summary>
    public string Say(FormattableString text) => text.ToString(order.Units);
    /// <summary>Words, or a request to write in what is not known.</summary>
    public static string Or(string? words, string otherwise = "________") => words ?? otherwise;

    /// <summary>Words about an entry; <c>null</c> when it is not known, which is kept.</summary>
    public string? Format<T>(Known<T> known, Func<T, FormattableString> say)
        where T : notnull
    {
        if (known.IsKnown)
            return Say(say(known.Value));
        Lack(known.Key);
        return null;
    }

    /// <summary>A word entry; <c>null</c> when it is not known, which is kept.</summary>
    public string? Format(Known<string> known) => Format(known, w => $"{w}");

    /// <summary>Words about an answer; <c>null</c> when there is none, and what it lacks is kept.</summary>
    public string? Format<T>(Answer<T> answer, Func<T, FormattableString?> say)
        where T : notnull
    {
        if (answer.IsKnown)
            return say(answer.Value) is { } said ? Say(said) : null;
        foreach (var key in answer.Missing)
            Lack(key);
        return null;
    }

    /// <summary>A figure with its unit; <c>null</c> when it has no value, and what it lacks is kept.</summary>
    public string? Figure(FigureKind kind, string format = "0.#")
    {
        var figure = Examination.Figures.FirstOrDefault(f => f.Kind.Id == kind.Id);
        foreach (var key in figure?.Missing ?? [])
            Lack(key);
        if (figure?.Value is not { } value)
            return null;
        var (number, unit) = In(value, figure.Unit, format);
        return unit.Length == 0 ? number : $"{number} {unit}";
    }

    /// <summary>The interval of a figure with its unit; <c>null</c> where there is none.</summary>
    public string? Between(FigureKind kind, string format = "0.#") =>
        order.Intervals.TryGetValue(kind.Id, out var interval)
            ? $"{In(interval.Low, kind.Unit, format).Number} to {In(interval.High, kind.Unit, format).Number} {In(interval.High, kind.Unit, format).Unit}".TrimEnd() : null;

    /// <summary>A number in the reader's units; the format is that of the metric unit, others have three digits.</summary>
    public (string Number, string Unit) In(double value, string unit, string format)
    {
        var (shown, symbol) = Dimensions.In(order.Units, value, unit);
        return symbol == unit ? (value.ToString(format, CultureInfo.InvariantCulture), unit) : (Dimension.Figures(shown), symbol);
    }

    /// <summary>The interval of a figure as a range to pass; <c>null</c> where there is none.</summary>
    public PassRange? RangeOf(FigureKind kind) =>
        order.Intervals.TryGetValue(kind.Id, out var interval) ? PassRange.In(kind.Unit, interval.Low, interval.High) : null;
    /// <summary>A range without a least value.</summary>
    public static PassRange AtMost(double greatest, string unit) => PassRange.In(unit, double.NegativeInfinity, greatest);

    /// <summary>Between which values nine of ten parts of an entry's kind lie, SI; one that was measured says little of the next, so never
    /// closer than a tenth.</summary>
    public static (double Low, double High) Nine(Sheet sheet, string key)
    {
        var entry = Entry.ListEntries(sheet.GetType()).First(e => e.Key == key);
        var known = entry.Read(sheet);
        var value = known switch
        {
            Known<Resistance> { IsKnown: true } ohms => ohms.Value.Si,
            Known<Current> { IsKnown: true } amperes => amperes.Value.Si,
            _ => double.NaN,
        };
        var spread = Math.Max(entry.SpreadOf(known) * NineOfTen, Closest * value);
        return (value - spread, value + spread);
    }

    /// <summary>A finding with its remedy, in the reader's units.</summary>
    public string Words(Finding finding)
    {
        var says = finding.Says.In(order.Units);
        return finding.Remedy.IsEmpty || finding.Level == Level.Fine ? says : $"{(finding.Level == Level.Measure ? "To find out: " : "")}{says} {finding.Remedy.In(order.Units)}";
    }

    public void Object(FormattableString objection) => objections.Add(objection.ToString(order.Units));

    public void Lack(string key)
    {
        if (key.Length > 0 && !missing.Contains(key))
            missing.Add(key);
    }

    /// <summary>Names after one another; of many the first and how many more.</summary>
    public static string JoinWords(IReadOnlyList<string> names)
    {
        const int Most = 6;
        return names.Count <= Most + 1 ? string.Join(", ", names) : Invariant($"{string.Join(", ", names.Take(Most))} and {names.Count - Most} more");
    }

    public static string Number(double value, string unit, string format) =>
        string.Create(CultureInfo.InvariantCulture, $"{value.ToString(format, CultureInfo.InvariantCulture)}{(unit.Length == 0 ? "" : " " + unit)}");

    public static string Count(int count, string one, string? many = null) => Invariant($"{count} {(count == 1 ? one : many ?? one + "s")}");
}
