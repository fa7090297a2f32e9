using Boardwright.App.ShopWork;
using Boardwright.Builds;

namespace Boardwright.App.Reports;

/// <summary>Tells of a built board in lines of text.</summary>
static class BuiltReport
{
    /// <summary>Everything that is known of it.</summary>
    /// <param name="paper">Where to write.</param>
    /// <param name="judged">The board.</param>
    /// <param name="onlyOpen">Whether steps that passed are left out.</param>
    public static void Write(TerminalText paper, JudgedBuilt judged, bool onlyOpen)
    {
        var (built, readiness) = (judged.Built, judged.Readiness);
        paper.Write(0, $"{built.Serial.Value}: {judged.Design.Name}{(built.For.IsKnown ? $", for {built.For.Value}" : "")}", TerminalStyle.Heading);
        paper.Write(0, readiness.Says,
            readiness.IsWithheld ? TerminalStyle.Stop : readiness.Reason is null ? TerminalStyle.Plain : TerminalStyle.Fix);
        if (built.Ridden.Metres > 0 || built.RidingTime.Seconds > 0)
            paper.Write(0, FormattableString.Invariant($"Ridden {built.Ridden.Kilometres:0.0} km in {built.RidingTime.Seconds / 3600:0.0} h."));
        if (built.Warranty.Until.IsKnown)
            paper.Write(0, $"Warranty{(built.Warranty.From.IsKnown ? $" from {built.Warranty.From.Value}" : "")} until {built.Warranty.Until.Value}{(built.Warranty.Covers.IsKnown ? $": {built.Warranty.Covers.Value}" : "")}.");
        foreach (var stop in readiness.Hindrances.Where(static open => open.Id.StartsWith("stop ", StringComparison.Ordinal)))
            paper.Write(8, $"{stop.Id[5..]}: {stop.Says}", lead: "STOP", leadInk: TerminalStyle.Stop, leadIndent: 2);
        Steps(paper, judged, StepList.Building, "Build sheet", onlyOpen);
        Steps(paper, judged, StepList.Bench, "Bench list", onlyOpen);
        WriteList(paper, "Fitted", built.Fitted.Select(static part => Joined(
            part.Part.Or("") + (part.Number.IsKnown ? FormattableString.Invariant($" {part.Number.Value}") : ""), part.Is.Or(""),
            part.Batch.IsKnown ? "batch " + part.Batch.Value : "", part.Serial.IsKnown ? "serial " + part.Serial.Value : "", Signed(part.When, part.Who),
            part.Remark.Or(""))));
        WriteList(paper, "Faults",
            built.Faults.Select(static (fault, i) =>
            FormattableString.Invariant($"{i + 1}  {(fault.IsMended ? "mended" : "OPEN")}: ")
            + Joined(fault.Says.Or(""), Signed(fault.Found, fault.Who), fault.IsMended ? $"{fault.Repair.Or("mended")} ({Signed(fault.Mended, fault.MendedBy)})" : "")));
        WriteList(paper, "Rides", built.Rides.Select(static ride => Joined(
            ride.When.IsKnown ? ride.When.Value.ToString() : "", ride.File.Or(""),
            ride.Distance.IsKnown ? FormattableString.Invariant($"{ride.Distance.Value.Kilometres:0.00} km") : "", ride.Lasting.IsKnown ? FormattableString.Invariant($"{ride.Lasting.Value.Minutes:0} min") : "",
            ride.BadRows.Or(0) > 0 ? FormattableString.Invariant($"{ride.BadRows.Value} of {ride.Rows.Or(0)} rows could not be used") : "", ride.Remark.Or(""))));
        WriteList(paper, "Notes",
            built.Notes.Select(static note =>
            Joined(note.Says.Or(""), note.File.Or(""), note.About.IsKnown ? "about " + note.About.Value : "", Signed(note.When, note.Who))));
    }

    static void Steps(TerminalText paper, JudgedBuilt judged, StepList list, string title, bool onlyOpen)
    {
        var all = judged.Readiness.Judgements.Where(one => one.Step.List == list).ToList();
        paper.Gap();
        paper.Write(0, FormattableString.Invariant($"{title}: {all.Count(static one => one.Result == Result.Passed)} of {all.Count} {(list == StepList.Building ? "done" : "passed")}"), TerminalStyle.Heading);
        foreach (var under in all.Where(one => !onlyOpen || one.Result != Result.Passed)
            .GroupBy(static one => one.Step.Heading, StringComparer.Ordinal))
        {
            paper.Write(2, under.Key);
            foreach (var caution in under.Where(static one => one.Result == Result.Undone && one.Step.Caution.Length > 0)
                .Select(static one => one.Step.Caution).Distinct(StringComparer.Ordinal))
                paper.Write(4, $"Caution: {caution}");
            foreach (var one in under)
                Step(paper, one);
        }
    }

    static void Step(TerminalText paper, Judgement one)
    {
        var (lead, ink) = one.Result switch
        {
            Result.Passed => ("done", TerminalStyle.Fine),
            Result.Failed => ("FAILED", TerminalStyle.Stop),
            _ => ("open", TerminalStyle.Measure)
        };
        var done = one.Done;
        var words = done is null || one.Result != Result.Passed ? $"{one.Step.Id}: {one.Step.Says}{Passes(one.Step)}" : one.Step.Id;
        paper.Write(12, done is null ? words : $"{words}{(one.Result == Result.Passed ? ":" : "")} {Joined(ValueOf(done), Signed(done.When, done.Who), one.Says, done.Remark.Or(""))}", lead: lead, leadInk: ink, leadIndent: 4);
    }

    /// <summary>What a step has to come to, as it follows on the step.</summary>
    public static string Passes(Step step) => step.Passes.Length > 0 ? $" Passes: {step.Passes}." : step.Range is { } range ? $" Passes: {range}." : "";
    /// <summary>What was measured.</summary>
    public static string ValueOf(DoneStep done) => done.Value.IsKnown ? string.Join(", ", done.Value.Value.Items) : "";
    /// <summary>When and who, where they are known.</summary>
    public static string Signed(Known<Moment> when, Known<string> who) =>
        string.Join(" ", new[] { when.IsKnown ? when.Value.ToString() : "", who.Or("") }.Where(static word => word.Length > 0));

    static string Joined(params IEnumerable<string> words) =>
        string.Join(", ", words.Where(static word => word.Length > 0).Select(static word => word.TrimEnd('.')));

    static void WriteList(TerminalText paper, string title, IEnumerable<string> lines)
    {
        var all = lines.ToList();
        if (all.Count == 0)
            return;
        paper.Gap();
        paper.Write(0, title, TerminalStyle.Heading);
        foreach (var line in all)
            paper.Write(2, line);
    }
}
