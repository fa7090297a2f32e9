using Boardwright.Analyses;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rules;
using Boardwright.UsualValues;

namespace Boardwright.Spreads;

/// <summary>What an examination gave, as reports and the result document show it.</summary>
/// <param name="Board">The board.</param>
/// <param name="Figures">The figures, in the order of the catalogue.</param>
/// <param name="Findings">The findings, worst first.</param>
public sealed record CheckOutcome(Board Board, IReadOnlyList<Figure> Figures, IReadOnlyList<Finding> Findings)
{
    /// <summary>How well the figures are known, by figure id; empty where that was not asked for.</summary>
    public IReadOnlyDictionary<string, Interval> Spread { get; init; } = new Dictionary<string, Interval>(StringComparer.Ordinal);
    /// <summary>What to measure next, the most telling first; empty where that was not asked for.</summary>
    public IReadOnlyList<Measurement> MeasureNext { get; init; } = [];
    /// <summary>The usual values that were taken for what the board does not state.</summary>
    public IReadOnlyList<TakenValue> Usual { get; init; } = [];
    /// <summary>The usual values that each figure rests on, by its id; only those that rest on some.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> UsualOfFigures { get; init; } =
        new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
    /// <summary>The rules that the findings name.</summary>
    public IReadOnlyList<Rule<BoardAnalysis>> Rules { get; init; } = [];

    /// <summary>What an examination gave under the rules of the rulebook.</summary>
    public static CheckOutcome Create(Examination examination, Spread? spread = null)
    {
        var outcome = new CheckOutcome(examination.Board, examination.Figures, spread?.Findings ?? examination.Findings)
        {
            Rules = Rulebook.All,
            Usual = examination.Usual,
            UsualOfFigures = examination.Figures.Select(f => (f.Kind.Id, Keys: examination.UsualAmong(f.From))).Where(f => f.Keys.Count > 0)
                .ToDictionary(f => f.Id, f => f.Keys, StringComparer.Ordinal),
        };
        return spread is null ? outcome : outcome with
        {
            Spread = spread.Intervals,
            MeasureNext = spread.MeasureNext,
            Findings = [.. outcome.Findings.Select(f => WithDoubt(f, spread.Intervals))],
        };
    }

    // What a brief wants may lie within what is known of the figure: then the board may well have it.
    static Finding WithDoubt(Finding finding, IReadOnlyDictionary<string, Interval> intervals)
    {
        var figure = finding.Rule switch
        {
            "speed.wanted" => Catalogue.TopFull,
            "climb.wanted" => Catalogue.Grade,
            "cruise.range_wanted" => Catalogue.Range,
            _ => null,
        };
        if (figure is null || finding is not { Level: Level.Fix, Limit: { } wanted } || !intervals.TryGetValue(figure.Id, out var known)
            || wanted.Unit != figure.Unit || wanted.Value < known.Low || wanted.Value > known.High)
            return finding;
        FormattableString between = figure == Catalogue.TopFull
            ? $"{Speed.FromKilometresPerHour(known.Low):0.0 km/h} to {Speed.FromKilometresPerHour(known.High):0.0 km/h}"
            : figure == Catalogue.Range ? $"{Length.FromKilometres(known.Low):0.0 km} to {Length.FromKilometres(known.High):0.0 km}"
            : (FormattableString)$"{Fraction.FromPercent(known.Low):0.0 %} to {Fraction.FromPercent(known.High):0.0 %}";
        return finding with
        {
            Says = Phrase.Join(finding.Says, new($"What is wanted lies within what is known of the board, {(Phrase)between}: measure before changing parts.")),
        };
    }

    /// <summary>Whether a usual value was taken for an entry.</summary>
    public bool IsUsual(string key) => Usual.Any(u => u.Key == key);
    /// <summary>The usual values that a finding rests on.</summary>
    public IReadOnlyList<string> UsualOf(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return [.. finding.From.SelectMany(key => IsUsual(key) ? [key] : UsualOfFigures.GetValueOrDefault(key) ?? [])
            .Distinct(StringComparer.Ordinal)];
    }

    /// <summary>Name of the board.</summary>
    public string Name => Board.Name.Or("");
    /// <summary>Whether something stops the board or has to be changed.</summary>
    public bool IsWanting => Findings.Any(f => f.Level is Level.Stop or Level.Fix);
    /// <summary>Whether so little is known that nobody can say how fast, how steep or how far the board goes.</summary>
    public bool IsTooLittleKnown => HeadlineFigures.Any() && HeadlineFigures.All(f => f.Value is null && f.Missing.Count > 0);

    /// <summary>The few entries that those questions wait for, each once; of a part that was not chosen the part itself, as that asks for
    /// less.</summary>
    public IReadOnlyList<string> LeastToFillIn =>
    [
        .. HeadlineFigures.SelectMany(f => f.Missing).Select(key => Board.Parts.UnchosenPlaceOf(key) ?? key)
            .Distinct(StringComparer.Ordinal),
    ];

    /// <summary>Where a finding's equation and limit come from; empty when its rule is not known.</summary>
    public string SourceOf(Finding finding) => Rules.FirstOrDefault(r => r.Id == finding.Rule)?.Source.Text ?? "";

    IEnumerable<Figure> HeadlineFigures =>
        Figures.Where(f => f.Kind == Catalogue.TopFull || f.Kind == Catalogue.Grade || f.Kind == Catalogue.Range);
}
