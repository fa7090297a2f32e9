using System.Collections.Concurrent;
using Boardwright.Builds;
using Boardwright.Documents.Papers;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Findings;
using Boardwright.Shops;

namespace Boardwright.App.ShopWork;

/// <summary>A design with the steps of its papers.</summary>
/// <param name="Examined">The design, examined.</param>
/// <param name="Steps">Its steps and checks.</param>
public sealed record StepsOfDesign(Examination Examined, IReadOnlyList<Step> Steps);

/// <summary>A built board, judged against the design it was built from.</summary>
/// <param name="Place">Where it is kept.</param>
/// <param name="Opened">As it was opened.</param>
/// <param name="Design">The design.</param>
/// <param name="Steps">The design with its steps.</param>
/// <param name="Readiness">Whether it may be ridden.</param>
public sealed record JudgedBuilt(BuiltStore Place, OpenedBuilt Opened, BuiltDesign Design, StepsOfDesign Steps, Readiness Readiness)
{
    /// <summary>The board.</summary>
    public BuiltBoard Built => Readiness.Built;
    /// <summary>A step or check by its id.</summary>
    public Judgement? Find(string id) => Readiness.Judgements.FirstOrDefault(judged => judged.Step.Id == id);
}

/// <summary>Judges built boards. The steps of a design that cannot change are made once.</summary>
/// <param name="intervals">How well the figures of a design are known, for the ranges to pass.</param>
sealed class BuiltJudge(Func<Examination, IReadOnlyDictionary<string, Interval>> intervals)
{
    readonly ConcurrentDictionary<string, Lazy<StepsOfDesign>> known = new(StringComparer.Ordinal);

    /// <summary>Judges a board.</summary>
    /// <returns>The board; <c>null</c> with complaints where its file or its design is not in order.</returns>
    /// <exception cref="ShopException">The design is not there.</exception>
    public async Task<(JudgedBuilt? Judged, IReadOnlyList<Complaint> Complaints)> OfAsync(
        BuiltStore place, CancellationToken cancel = default) => await OfAsync(place, await place.ReadAsync(cancel), cancel);

    /// <summary>Judges a board that was opened.</summary>
    public async Task<(JudgedBuilt? Judged, IReadOnlyList<Complaint> Complaints)> OfAsync(
        BuiltStore place, OpenedBuilt opened, CancellationToken cancel = default)
    {
        if (opened.Loaded.Built is not { } built)
            return (null, opened.Loaded.Complaints);
        var design = await place.DesignAsync(built, cancel);
        if (design.Loaded.Board is not { } board)
            return (null, design.Loaded.Complaints);
        var steps = design.Key is { } key ? known.GetOrAdd(key, _ => new(() => Made(board))).Value : Made(board);
        return (new(place, opened, design, steps, Readiness.Compute(built, steps.Steps, steps.Examined)), []);
    }

    StepsOfDesign Made(Parts.Board board)
    {
        var examined = Examination.Examine(board);
        return new(examined, BuildSteps.Collect(new PaperOrder(examined) { Intervals = intervals(examined) }));
    }
}
