using Boardwright.Analyses;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rules;

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
    /// <summary>The rules that the findings name.</summary>
    public IReadOnlyList<Rule<BoardAnalysis>> Rules { get; init; } = [];

    /// <summary>What an examination gave under the rules of the rulebook.</summary>
    public static CheckOutcome Create(Examination examination, Spread? spread = null)
    {
        var outcome = new CheckOutcome(examination.Board, examination.Figures, examination.Findings) { Rules = Rulebook.All };
        return spread is null ? outcome : outcome with { Spread = spread.Intervals, MeasureNext = spread.MeasureNext };
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
