using System.Globalization;
using Boardwright.Builds;
using Boardwright.Documents.Papers;
using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;

namespace Boardwright.Tests.Builds;

public sealed class ReadinessTests
{
    static readonly Moment Now = Moment.Read("2026-05-04 18:00")!.Value;
    static readonly Lazy<Examination> Tern = new(static () => Examination.Examine(BoardFile.Read(Repository.At("examples", "tern", "tern.board.yaml")).Board!));
    static readonly Lazy<IReadOnlyList<Step>> Steps = new(
        static () => BuildSteps.Collect(new(Tern.Value) { Intervals = Spread.Sample(Tern.Value, 32).Intervals }));
    static readonly BoardState[] Ridden = [BoardState.OnTrial, BoardState.ReadyToRide, BoardState.HandedOver];

    static string Begun => BuiltText.Begin("TERN-0001", "Tern", 1, Now, "Ada");

    [Fact]
    public void Every_line_of_both_papers_has_an_id_of_its_own()
    {
        var lines = new[] { BuildSheet.Compose(new(new(Tern.Value))), BenchList.Compose(new(new(Tern.Value))) }.SelectMany(
            static blocks => blocks).OfType<ChecksBlock>().Sum(static checks => checks.Items.Count);

        Assert.Equal(lines, Steps.Value.Count);
        Assert.Equal(lines, Steps.Value.Select(static step => step.Id).Distinct().Count());
        Assert.InRange(Steps.Value.Count(static step => step.Range is not null), 15, lines);
    }

    [Fact]
    public void A_range_in_numbers_is_the_one_that_the_paper_writes()
    {
        foreach (var step in Steps.Value.Where(
            static step => step.Range is { Least: > double.NegativeInfinity, Greatest: < double.PositiveInfinity }
            && step.Passes.Contains(" to ", StringComparison.Ordinal)))
        {
            var written = step.Passes.Split(" to ", 2);
            Assert.Equal(double.Parse(written[0], CultureInfo.InvariantCulture), Of(step.Range!.Least), 1e-9);
            Assert.Equal(double.Parse(written[1].Split(' ')[0], CultureInfo.InvariantCulture), Of(step.Range.Greatest), 1e-9);

            double Of(double si) => step.Range.Dimension.Find(step.Range.Unit)!.FromSi(si);
        }
    }

    [Fact]
    public void A_board_with_everything_done_is_marked_ready_without_a_reason()
    {
        var text = AllDone(Begun);
        foreach (var state in Ridden)
        {
            var marked = Mark(text, state, null);

            Assert.Null(marked.Refusal);
            var now = Of(marked.Text);
            Assert.Equal(state, now.State);
            Assert.Null(now.Reason);
        }
    }

    [Fact]
    public void What_is_undone_failed_or_stops_keeps_a_board_from_being_ridden_unless_a_reason_is_written()
    {
        foreach (var (name, text, design, id) in Wanting())
        {
            foreach (var state in Ridden)
            {
                foreach (var blank in new[] { null, "", "   ", "\n", " - " })
                {
                    var refused = BuiltText.Mark(text, Steps.Value, design, state, "Ada", Now, blank);
                    Assert.True(refused.Refusal is not null, $"{name}, {state}");
                    Assert.Contains(id, refused.Refusal.Says, StringComparison.Ordinal);
                    Assert.Equal(text, refused.Text);
                }

                var marked = BuiltText.Mark(text, Steps.Value, design, state, "Ada", Now, "waits for a part; I ride it myself");
                Assert.Null(marked.Refusal);
                var now = Readiness.Compute(BuiltFile.ReadText(marked.Text, "").Built!, Steps.Value, design);
                Assert.Equal(state, now.State);
                Assert.Equal(("waits for a part; I ride it myself", "Ada", Now), (now.Reason!.Why.Value, now.Reason.Who.Value, now.Reason.When.Value));
                Assert.Contains(id, now.Reason.Despite.Value.Items);
                Assert.Contains("waits for a part; I ride it myself", now.Says, StringComparison.Ordinal);
                Assert.Contains(id, now.Says, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Any_one_step_left_out_or_failed_is_enough()
    {
        foreach (var step in Steps.Value)
        {
            var undone = Of(AllDone(Begun, but: step.Id));
            Assert.Equal($"undone {step.Id}", Assert.Single(undone.Hindrances).Id);
            Assert.Equal(!step.IsOnRoad, undone.Mark(BoardState.OnTrial, "Ada", Now).Refusal is not null);
            Assert.NotNull(undone.Mark(BoardState.ReadyToRide, "Ada", Now).Refusal);

            var failed = Of(Done(AllDone(Begun), step, passed: false));
            Assert.Equal($"failed {step.Id}", Assert.Single(failed.Hindrances).Id);
            Assert.NotNull(failed.Mark(BoardState.OnTrial, "Ada", Now).Refusal);
            if (step.Range is { } range)
            {
                var outside = double.IsInfinity(range.Greatest) ? range.Least - 0.2 * Math.Abs(range.Least)
                    : range.Greatest + 0.2 * Math.Abs(range.Greatest);
                var measured = Of(Done(AllDone(Begun), step, QuantityText.Write(outside, range.Dimension)));
                Assert.Equal($"failed {step.Id}", Assert.Single(measured.Hindrances).Id);
            }
        }
    }

    [Fact]
    public void A_reason_answers_for_what_was_open_then_and_not_for_what_comes_after()
    {
        var text = Mark(AllDone(Begun, but: "brake.ramp"), BoardState.ReadyToRide, "the ramp is wet").Text;
        Assert.Equal(BoardState.ReadyToRide, Of(text).State);

        var failed = Of(Done(text, Steps.Value.Single(static step => step.Id == "brake.ramp"), passed: false));
        var faulty = Of(BuiltText.Add(text, "faults", new BoardFault { Says = "belt 2 jumps", Found = Now }).Text);

        Assert.All(new[] { failed, faulty }, static now => Assert.Equal((BoardState.OnTheBench, true), (now.State, now.IsWithheld)));
        Assert.Null(failed.Reason);
        Assert.Contains("may not be ridden: failed brake.ramp is open", failed.Says, StringComparison.Ordinal);
        Assert.Contains("fault 1 of 2026-05-04 18:00 is open", faulty.Says, StringComparison.Ordinal);
        Assert.Equal(BoardState.ReadyToRide, Of(Done(text, Steps.Value.Single(static step => step.Id == "brake.ramp"), passed: true)).State);
    }

    [Fact]
    public void A_state_that_somebody_wrote_by_hand_is_withheld_like_any_other()
    {
        var text = Begun.Replace("is: in building", "is: ready to ride", StringComparison.Ordinal);

        Assert.Equal((BoardState.OnTheBench, true), (Of(text).State, Of(text).IsWithheld));
        var hand = text.Replace("who: Ada", "who: Ada, despite: [" + string.Join(", ", Of(text).Hindrances.Select(static open => $"\"{open.Id}\"")) + "]", StringComparison.Ordinal);
        Assert.True(Of(hand).IsWithheld, "what is listed without a reason is not answered for");
    }

    [Fact]
    public void States_in_which_nobody_rides_need_no_reason()
    {
        foreach (var state in Enum.GetValues<BoardState>().Except(Ridden))
            Assert.Equal(state, Of(Mark(Begun, state, null).Text).State);
    }

    [Fact]
    public void A_measurement_is_judged_in_any_unit_and_says_by_how_much()
    {
        var step = Steps.Value.Single(static step => step.Id == "pack.rest");
        var (low, high) = (step.Range!.Least, step.Range.Greatest);
        Judgement Judged(params string[] values) => Judgement.Judge(step, new DoneStep { Step = step.Id, Value = new Texts(values) });

        Holds(Result.Passed, $"{high - 1:0.###} V holds the most of {high:0.###} V by 1 V.", $"{high - 1} V");
        Holds(Result.Passed, $"{low:0.###} V holds the least of {low:0.###} V by 0 V.", $"{low * 1000} mV");
        Holds(Result.Failed, $"{high + 0.5:0.###} V is 0.5 V more than the most of {high:0.###} V (the worst of 2).", $"{high - 1} V", $"{high + 0.5} V");
        Assert.Equal(Result.Undone, Judged("41 A").Result);
        Assert.Equal(Result.Undone, Judged().Result);
        Assert.Equal(Result.Undone, Judgement.Judge(step, null).Result);

        void Holds(Result result, FormattableString says, params FormattableString[] values)
        {
            var judged = Judged([.. values.Select(FormattableString.Invariant)]);
            Assert.Equal((result, FormattableString.Invariant(says)), (judged.Result, judged.Says));
        }
    }

    [Fact]
    public void Windings_that_differ_by_more_than_a_twentieth_fail_though_each_is_in_range()
    {
        var step = Steps.Value.Single(static step => step.Id == "motor-1.resistance");
        var middle = (step.Range!.Least + step.Range.Greatest) / 2;
        Judgement Judged(params double[] ohms) =>
            Judgement.Judge(step, new DoneStep
            {
                Step = step.Id,
                Value = new Texts([.. ohms.Select(static value => FormattableString.Invariant($"{value} ohm"))])
            });

        Assert.Equal(Result.Passed, Judged(middle, middle * 1.02, middle * 0.99).Result);
        Assert.Equal(Result.Failed, Judged(middle, middle * 1.04, middle * 0.97).Result);
    }

    [Fact]
    public void What_no_range_decides_somebody_has_to_decide()
    {
        var step = Steps.Value.Single(static step => step.Id == "road.temperatures");

        Assert.True(step.IsJudgedByHand);
        Assert.Equal(Result.Undone, Judgement.Judge(step, new DoneStep { Step = step.Id, Value = new Texts(["61 °C"]) }).Result);
        Assert.Equal(Result.Passed, Judgement.Judge(step, new DoneStep { Step = step.Id, Value = new Texts(["61 °C"]), Passed = true }).Result);
    }

    static IEnumerable<(string Name, string Text, Examination Design, string Id)> Wanting()
    {
        yield return ("undone", AllDone(Begun, but: "pack.rest"), Tern.Value, "undone pack.rest");
        yield return ("failed", Done(AllDone(Begun), Steps.Value.Single(static step => step.Id == "pack.rest"), "10 V"), Tern.Value, "failed pack.rest");
        yield return ("fault", BuiltText.Add(AllDone(Begun), "faults", new BoardFault { Says = "belt 2 jumps", Found = Now }).Text, Tern.Value, "fault 1 of 2026-05-04 18:00");
        var board = Tern.Value.Board;
        var runaway = Examination.Examine(
            board with { Parts = board.Parts with { Remote = board.Parts.Remote with { Failsafe = Failsafe.None } } });
        Assert.Contains(runaway.Findings, static finding => finding.Level == Level.Stop);
        yield return ("stop", AllDone(Begun), runaway, "stop remote.failsafe");
    }

    static Readiness Of(string text) => Readiness.Compute(BuiltFile.ReadText(text, "").Built!, Steps.Value, Tern.Value);

    static Changed Mark(string text, BoardState state, string? why) => BuiltText.Mark(text, Steps.Value, Tern.Value, state, "Ada", Now, why);

    // Written at once, since adding line by line reads the text anew each time.
    static string AllDone(string text, string? but = null) =>
        text + string.Concat(new[] { StepList.Building, StepList.Bench }.Select(list =>
        (list == StepList.Building ? "steps:\n" : "bench:\n")
        + string.Concat(Items.Value.Where(item => item.Step.List == list && item.Step.Id != but).Select(static item => $"  - {item.Text}\n"))));

    static readonly Lazy<IReadOnlyList<(Step Step, string Text)>> Items = new(
        static () => [.. Steps.Value.Select(
        static step => (step, BuiltText.Item(DoneOf(step, Middle(step), step.IsJudgedByHand ? true : null))))]);

    static string? Middle(Step step) => step.Range is not { } range ? null : QuantityText.Write(
        double.IsInfinity(range.Least) ? range.Greatest / 2 : double.IsInfinity(range.Greatest) ? range.Least * 2
        : (range.Least + range.Greatest) / 2, range.Dimension);

    static string Done(string text, Step step, string? value = null, bool? passed = null)
    {
        var changed = BuiltText.Add(text, step.List == StepList.Building ? "steps" : "bench", DoneOf(step, value, passed));
        Assert.Null(changed.Refusal);
        return changed.Text;
    }

    static DoneStep DoneOf(Step step, string? value, bool? passed)
    {
        var done = new DoneStep { Step = step.Id, When = Now, Who = "Ada" };
        if (value is not null)
            done = done with { Value = new Texts([value]) };
        return passed is { } said ? done with { Passed = said } : done;
    }
}
