using Boardwright.Analyses;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rules;

namespace Boardwright.Spreads;

/// <summary>Tries what is fine with each usual value at its ends: what holds with the usual value alone is no promise.</summary>
/// <remarks>Each usual value in turn is moved by two standard deviations either way, the others stay.</remarks>
/// <validity>One value at a time; two that are off together are not tried.</validity>
/// <source cref="Sources.CommonPractice"/>
static class UsualTrial
{
    const double Deviations = 2;

    /// <summary>The findings of an examination; one that is fine only while a usual value is right asks for that value.</summary>
    public static IReadOnlyList<Finding> Try(Examination examination, CancellationToken cancellation = default)
    {
        var fine = (from finding in examination.Findings
                    where finding.Level == Level.Fine
                    let keys = examination.UsualAmong(finding.From)
                    where keys.Count > 0
                    select (Finding: finding, Keys: keys)).ToList();
        var tried = fine.SelectMany(f => f.Keys).Distinct(StringComparer.Ordinal).ToArray();
        var doubts = new Dictionary<Finding, string>[tried.Length];
        Parallel.For(0, tried.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
            doubts[i] = DoubtsOf(examination.Board, tried[i],
            [.. fine.Where(f => f.Keys.Contains(tried[i], StringComparer.Ordinal)).Select(f => f.Finding)]));
        var doubted = doubts.SelectMany(d => d).ToLookup(d => d.Key, d => d.Value, ReferenceEqualityComparer.Instance);
        return [.. examination.Findings.Select(f => doubted[f].FirstOrDefault() is { } key ? Doubted(f, key) : f)
            .OrderBy(f => f.Level)];
    }

    static Dictionary<Finding, string> DoubtsOf(Board board, string key, IReadOnlyList<Finding> findings)
    {
        var doubts = new Dictionary<Finding, string>(ReferenceEqualityComparer.Instance);
        var plan = Sampling.SamplingPlan.Create(board, new(StringComparer.Ordinal) { [key] = 0 });
        if (plan is null)
            return doubts;
        for (var way = -1; way <= 1; way += 2)
        {
            var moved = new BoardAnalysis((Board)plan.Moved(board, [[way * Deviations]], 0));
            foreach (var rule in findings.Select(f => f.Rule).Distinct(StringComparer.Ordinal))
            {
                var again = Rulebook.All.First(r => r.Id == rule).Judge(moved);
                foreach (var finding in findings.Where(f => f.Rule == rule))
                {
                    if (again.Any(f => f.Where == finding.Where && f.Level is Level.Stop or Level.Fix))
                        doubts.TryAdd(finding, key);
                }
            }
        }

        return doubts;
    }

    static Finding Doubted(Finding finding, string key) => finding with
    {
        Level = Level.Measure,
        Says = Phrase.Join(
            finding.Says, (FormattableString)$"That rests on a usual value for {key} and no longer holds two spreads away from it."),
        Remedy = (FormattableString)$"Measure or look up {key}.",
    };
}
