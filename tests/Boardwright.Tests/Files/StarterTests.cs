using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Tests.Files;

public sealed class StarterTests
{
    // What a rider asks first; each has to have an answer.
    static readonly FigureKind[] Headline =
    [
        Catalogue.TopFull, Catalogue.TopHalf, Catalogue.TopReserve, Catalogue.Grade, Catalogue.Range, Catalogue.Consumption,
        Catalogue.ChargeFull, Catalogue.BoardMass, Catalogue.RollingMass, Catalogue.BrakeDistance,
    ];

    // What follows from the answers and not from the parts: windings and magnets get hot on a long hill with one motor or a heavy rider,
    // and a full pack takes little back.
    static readonly string[] Honest = ["heat.climb", "heat.magnets", "brake.strength", "cruise.held"];

    [Theory]
    [InlineData("Tern")]
    [InlineData("Tern: the \"second\" # one")]
    [InlineData("yes")]
    [InlineData("Which one ?")]
    [InlineData("海鸥 😀")]
    [InlineData("- a")]
    public void A_starter_board_reads_without_complaint(string name)
    {
        var loaded = BoardFile.ReadText(Starter.Text(name), "new.board.yaml");

        Assert.Empty(loaded.Complaints);
        Assert.Equal(name, loaded.Board!.Name.Value);
    }

    [Fact]
    public void A_starter_board_has_every_section_and_every_part_of_a_belt_drive()
    {
        var board = BoardFile.ReadText(Starter.Text("Tern"), "new.board.yaml").Board!;

        // What rides say of the model is written by the program, once there are rides.
        foreach (var entry in Entry.ListEntries(typeof(Board)).Where(e => e.Key != "model"))
            Assert.Contains($"\n{entry.Key}:", Starter.Text("Tern"), StringComparison.Ordinal);
        foreach (var entry in Entry.ListEntries(typeof(Fitted)))
        {
            if (entry.Read(board.Parts) is Part part and not Gearbox)
                Assert.True(part.IsChosen, entry.Key);
        }

        Assert.Equal("wheels.diameter", board.Parts.Wheels.Diameter.Key);
    }

    [Fact]
    public void Everything_that_nobody_answered_is_marked_as_a_guess()
    {
        // The kind of drive is what the program is for, and four wheels are what a board has; where a wire leads is no guess either.
        string[] plain = ["name", "shelf", "drive.kind", "wheels.count"];
        var board = BoardFile.ReadText(Starter.Text("Heron"), "heron.board.yaml").Board!;
        var known = Known(board).ToList();

        Assert.True(known.Count > 120, $"{known.Count} entries");
        var unmarked = known.Where(k => k.From != Origin.Guess).Select(k => k.Key)
            .Where(key => !plain.Contains(key) && !key.EndsWith(".from", StringComparison.Ordinal)
                && !key.EndsWith(".to", StringComparison.Ordinal));
        Assert.Equal("", string.Join(", ", unmarked));
    }

    [Fact]
    public void Answers_are_no_guesses()
    {
        var answers = StartQuestion.All.Aggregate(new StartAnswers(), (so, question) => question.Take(so, "").Answers);
        var board = BoardFile.ReadText(Starter.Text("Heron", answers), "heron.board.yaml").Board!;

        var answered = Known(board).Where(k => k.From is null).Select(k => k.Key).ToList();
        foreach (var key in new[] { "brief.rider_mass", "brief.surface", "brief.range_wanted", "brief.cruise_speed", "brief.climb_wanted", "wheels.diameter", "drive.motors", "pack.series", "pack.parallel" })
            Assert.Contains(key, answered);
        Assert.Contains(Known(board), k => k is { Key: "motor.kv", From: Origin.Guess });
    }

    [Fact]
    public void A_starter_board_stops_for_nothing_and_answers_what_a_rider_asks_over_the_whole_grid()
    {
        var wrong = new List<string>();
        foreach (var answers in StartGrid.Answers().Prepend(new StartAnswers()))
        {
            var of = $"{answers.Rider}, {answers.Cells}, {answers.Motors} motors, {answers.Diameter:0 mm} {answers.Wheels}";
            var loaded = BoardFile.ReadText(Starter.Text("Heron", answers), "heron.board.yaml");
            wrong.AddRange(loaded.Complaints.Select(c => $"{of}: {c}"));
            if (loaded.Board is not { } board)
                continue;
            var examination = Examination.Examine(board);
            wrong.AddRange(examination.Figures.Where(f => Headline.Contains(f.Kind) && f.Value is null).Select(f => $"{of}: no {f.Kind.Id}"));
            wrong.AddRange(examination.Findings.Where(f => f.Level is Level.Stop || (f.Level is Level.Fix && !Honest.Contains(f.Rule)))
                .Select(f => $"{of}: {f.Level} {f.Rule}: {f.Says}"));
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong.Distinct(StringComparer.Ordinal)));
    }

    [Theory]
    [InlineData(15)]
    [InlineData(35)]
    [InlineData(45)]
    public void The_gearing_suits_the_cruise(double kilometresPerHour)
    {
        var answers = new StartAnswers { Cruise = Speed.FromKilometresPerHour(kilometresPerHour) };
        var board = BoardFile.ReadText(Starter.Text("Heron", answers), "heron.board.yaml").Board!;
        var figures = Examination.Examine(board).Figures;

        Assert.InRange(figures.First(f => f.Kind == Catalogue.TopReserve).Value!.Value, kilometresPerHour, 1.6 * kilometresPerHour);
        Assert.InRange(figures.First(f => f.Kind == Catalogue.TopFull).Value!.Value, 1.2 * kilometresPerHour, 2.1 * kilometresPerHour);
    }

    [Fact]
    public void The_pack_that_is_proposed_carries_as_far_as_was_asked()
    {
        foreach (var kilometres in new[] { 15.0, 25, 40 })
        {
            var answers = new StartAnswers { Range = Length.FromKilometres(kilometres) };
            var board = BoardFile.ReadText(Starter.Text("Heron", answers), "heron.board.yaml").Board!;

            var range = Examination.Examine(board).Figures.First(f => f.Kind == Catalogue.Range);
            Assert.True(range.Value >= kilometres, $"{kilometres} km");
        }
    }

    static IEnumerable<IKnown> Known(Sheet sheet) => Entry.ListEntries(sheet.GetType()).SelectMany(entry => entry.Read(sheet) switch
    {
        IKnown { IsKnown: true } known => [known],
        Sheet inner => Known(inner),
        IReadOnlyList<Sheet> list => list.SelectMany(Known),
        _ => [],
    });
}
