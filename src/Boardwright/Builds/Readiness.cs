using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Builds;

/// <summary>Something that stands against riding a board.</summary>
/// <param name="Id">What is open, in words that stay the same while it does: <c>undone brake.ramp</c>, <c>failed pack.rest</c>, <c>stop
/// remote.failsafe</c>, <c>fault 2 of 2026-05-03</c>.</param>
/// <param name="Says">What is open, in a sentence.</param>
/// <param name="IsOfRoad">Whether it is a check that can only be done by riding, and was not done yet.</param>
public sealed record OpenPoint(string Id, string Says, bool IsOfRoad = false);

/// <summary>Whether a built board may be called ready to ride, and the one way to call it so.</summary>
/// <remarks>
/// Against it stand each <c>stop</c> finding of the design, each step and check that is undone or failed, and each open fault.
/// For the trial, which its builder rides, the checks of the road may still be undone. A written reason answers for what was open when it
/// was written, and for nothing that came up later.
/// </remarks>
public sealed record Readiness
{
    Readiness(BuiltBoard built, IReadOnlyList<Judgement> judgements, IReadOnlyList<OpenPoint> hindrances) =>
        (Built, Judgements, Hindrances) = (built, judgements, hindrances);

    /// <summary>The board.</summary>
    public BuiltBoard Built { get; }
    /// <summary>Every step and check of the design with what came of it, in the order of the papers.</summary>
    public IReadOnlyList<Judgement> Judgements { get; }
    /// <summary>What stands against riding it, reasons aside.</summary>
    public IReadOnlyList<OpenPoint> Hindrances { get; }
    /// <summary>What stands against a state: of those in which it is ridden, everything that is open, but for a trial not the undone checks
    /// of the road.</summary>
    public IReadOnlyList<OpenPoint> Against(BoardState state) =>
        state == BoardState.OnTrial ? [.. Hindrances.Where(static open => !open.IsOfRoad)] : Hindrances;
    /// <summary>The state it was put into last; <c>null</c> where nobody did.</summary>
    public Marking? Marking => Built.States.Count > 0 ? Built.States[^1] : null;

    /// <summary>What stands against riding it as it was marked, or at all where it was not, and is answered for by no reason.</summary>
    public IReadOnlyList<OpenPoint> Unanswered =>
        Marking is { } marking && Claims(Marked) && !string.IsNullOrWhiteSpace(marking.Why.Or(""))
        && marking.Despite is { IsKnown: true, Value.Items: var answered }
        ? [.. Against(Marked).Where(open => !answered.Contains(open.Id, StringComparer.Ordinal))] : Against(Marked);

    /// <summary>Whether it was said that it may be ridden, and something has come up since, or was never answered for, so that it may
    /// not.</summary>
    public bool IsWithheld => Claims(Marked) && Unanswered.Count > 0;
    /// <summary>The state that holds: the one it was put into, or on the bench where that is withheld.</summary>
    public BoardState State => IsWithheld ? BoardState.OnTheBench : Marked;
    /// <summary>The reason that stands in for what is open; <c>null</c> where none is due or none holds.</summary>
    public Marking? Reason =>
        Marking is { } marking && Claims(State) && marking.Despite is { IsKnown: true, Value.Items.Count: > 0 } ? marking : null;

    /// <summary>The state and what has to be said with it, in sentences.</summary>
    public string Says
    {
        get
        {
            var state = Wording(State);
            if (IsWithheld)
                return $"{state}. Marked as {Entry.Word(Marking!.Is.Value)} on {Marking.When.Value} by {Marking.Who.Or("nobody")}, but it may not be ridden: {Join(Unanswered)}.";
            var since = Marking is { } marking ? $"{state}, since {marking.When.Value} by {marking.Who.Or("nobody")}" : state;
            return Reason is { } reason ? $"{since}, by a written reason: {reason.Why.Value.TrimEnd('.')}. Open then: {Join(reason.Despite.Value.Items)}." : $"{since}.";
        }
    }

    /// <summary>Judges a board.</summary>
    /// <param name="built">The board.</param>
    /// <param name="steps">Steps and checks of the design it was built from.</param>
    /// <param name="design">The design, examined.</param>
    public static Readiness Compute(BuiltBoard built, IReadOnlyList<Step> steps, Examination design)
    {
        ArgumentNullException.ThrowIfNull(built);
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(design);
        List<Judgement> judgements = [.. steps.Select(step => Judgement.Judge(built, step))];
        var open = new List<OpenPoint>();
        foreach (var stops in design.Findings.Where(static finding => finding.Level == Level.Stop)
            .GroupBy(static finding => finding.Rule == finding.Where ? $"stop {finding.Rule}" : $"stop {finding.Rule} {finding.Where}", StringComparer.Ordinal))
            open.Add(new(stops.Key, string.Join(" ", stops.Select(static finding => finding.Says.In(UnitSystem.Metric)))));
        foreach (var (number, fault) in built.OpenFaults)
            open.Add(new(FormattableString.Invariant($"fault {number}{(fault.Found.IsKnown ? $" of {fault.Found.Value}" : "")}"), fault.Says.Or("")));
        // What failed comes before what is undone, since a list may be cut short.
        foreach (var judged in judgements.Where(static judged => judged.Result != Result.Passed)
            .OrderByDescending(static judged => judged.Result))
        {
            var word = judged.Result == Result.Failed ? "failed" : "undone";
            open.Add(new($"{word} {judged.Step.Id}", judged.Says.Length > 0 ? $"{judged.Step.Says} {judged.Says}" : judged.Step.Says, judged.Step.IsOnRoad && judged.Result == Result.Undone));
        }

        return new(built, judgements, open);
    }

    /// <summary>Puts the board into a state.</summary>
    /// <param name="state">The state.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="when">When.</param>
    /// <param name="why">Why; due where the board is to be ridden while something is open.</param>
    /// <returns>What is to be written, or why it is refused; one of the two.</returns>
    public (Marking? Marking, Refusal? Refusal) Mark(BoardState state, string who, Moment when, string? why = null)
    {
        if (string.IsNullOrWhiteSpace(who))
            return (null, new("Nobody is named who does it.", "Say who does it."));
        var reason = why?.Trim() ?? "";
        var open = Claims(state) ? Against(state) : [];
        var isOpen = open.Count > 0;
        if (isOpen && !reason.Any(char.IsLetterOrDigit))
            return (null, new($"This board cannot be marked as {Entry.Word(state)}: {Join(open)}.", "Do what is open, or give a written reason, which is shown wherever the board's state is shown."));
        var marking = new Marking { Is = state, Who = who.Trim(), When = when };
        if (reason.Length > 0)
            marking = marking with { Why = reason };
        return (isOpen ? marking with { Despite = new Texts([.. open.Select(static one => one.Id)]) } : marking, null);
    }

    BoardState Marked => Marking?.Is.Or(BoardState.InBuilding) ?? BoardState.InBuilding;

    /// <summary>Whether a board is ridden in a state.</summary>
    public static bool Claims(BoardState state) => state is BoardState.OnTrial or BoardState.ReadyToRide or BoardState.HandedOver;

    static string Wording(BoardState state) => Entry.Word(state) is var word ? char.ToUpperInvariant(word[0]) + word[1..] : "";

    static string Join(IReadOnlyList<OpenPoint> open) => $"{Join([.. open.Select(static one => one.Id)])} {(open.Count == 1 ? "is" : "are")} open";

    static string Join(IReadOnlyList<string> ids)
    {
        const int Most = 6;
        return ids.Count > Most + 1 ? FormattableString.Invariant($"{string.Join(", ", ids.Take(Most))} and {ids.Count - Most} more") : string.Join(", ", ids);
    }
}
