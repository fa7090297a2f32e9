using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Tests.Files;

public sealed class StartQuestionTests
{
    [Theory]
    [InlineData("rider", "75", "75 kg")]
    [InlineData("rider", "165 lb", "74.8 kg")]
    [InlineData("range", "30", "30 km")]
    [InlineData("cruise", "15 mph", "24.1 km/h")]
    [InlineData("climb", "8", "8 %")]
    [InlineData("surface", "Rough-Asphalt", "rough asphalt")]
    [InlineData("wheels", "97", "97 mm urethane")]
    [InlineData("wheels", "air", "107 mm air")]
    [InlineData("wheels", "175mm", "175 mm air")]
    [InlineData("wheels", "rubber, 150 mm", "150 mm rubber")]
    [InlineData("wheels", "6 in air tyres", "152 mm air")]
    [InlineData("motors", "1", "1")]
    [InlineData("pack", "10s 3p", "10S3P")]
    public void An_answer_is_read_as_people_write_it(string name, string written, string shown)
    {
        var question = StartQuestion.Named(name);
        var taken = question.Take(new StartAnswers(), written);

        Assert.Null(taken.Refusal);
        Assert.Equal(shown, question.Usual(taken.Answers));
        Assert.Equal([name], taken.Answers.Answered);
    }

    [Theory]
    [InlineData("rider", "heavy")]
    [InlineData("rider", "75 km")]
    [InlineData("rider", "5")]
    [InlineData("cruise", "25,5 km/h")]
    [InlineData("surface", "mud")]
    [InlineData("motors", "3")]
    [InlineData("pack", "12S")]
    [InlineData("pack", "12x4")]
    [InlineData("pack", "40S4P")]
    public void A_bad_answer_changes_nothing_and_says_what_to_write(string name, string written)
    {
        var before = new StartAnswers();
        var taken = StartQuestion.Named(name).Take(before, written);

        Assert.NotNull(taken.Refusal);
        Assert.EndsWith(".", taken.Refusal.Remedy, StringComparison.Ordinal);
        Assert.Same(before, taken.Answers);
    }

    [Fact]
    public void Nothing_written_takes_what_is_usual()
    {
        foreach (var question in StartQuestion.All)
        {
            var taken = question.Take(new StartAnswers(), " ");

            Assert.Null(taken.Refusal);
            Assert.Equal(question.Usual(new StartAnswers()), question.Usual(taken.Answers));
        }
    }

    [Fact]
    public void The_usual_pack_follows_from_range_and_pace()
    {
        var near = new StartAnswers { Range = Length.FromKilometres(10) };
        var far = new StartAnswers { Range = Length.FromKilometres(50), Cruise = Speed.FromKilometresPerHour(30) };

        Assert.True(near.Cells.Parallel < far.Cells.Parallel);
        Assert.Equal(12, far.Cells.Series);
    }

    [Fact]
    public void A_question_mark_marks_a_guess_in_every_form_and_is_words_in_quotation_marks()
    {
        const string text = """
            boardwright: 1
            name: "Is it ?"
            brief: { rider_mass: 80 kg ?, stance: tucked ? }
            parts:
              wheels: { count: 4 ?, core: six spokes ?, rolling_resistance: 0.014 ? }
              pack: { protection: { regen_through: yes ? } }
            """;
        var board = BoardFile.ReadText(text, "a.board.yaml").Board!;

        Assert.Equal("Is it ?", board.Name.Value);
        Assert.Null(board.Name.From);
        Assert.Equal((80, Origin.Guess), (board.Brief.RiderMass.Value.Kilograms, board.Brief.RiderMass.From));
        Assert.Equal((Stance.Tucked, Origin.Guess), (board.Brief.Stance.Value, board.Brief.Stance.From));
        Assert.Equal((4, Origin.Guess), (board.Parts.Wheels.Count.Value, board.Parts.Wheels.Count.From));
        Assert.Equal(("six spokes", Origin.Guess), (board.Parts.Wheels.Core.Value, board.Parts.Wheels.Core.From));
        Assert.Equal(Origin.Guess, board.Parts.Wheels.RollingResistance.From);
        Assert.Equal((true, Origin.Guess), (board.Parts.Pack.Protection.RegenThrough.Value, board.Parts.Pack.Protection.RegenThrough.From));
        Assert.Equal(new Entered("80 kg", null, "guess"), BoardText.Read(text, "brief.rider_mass"));
        Assert.Contains("rider_mass: 82 kg,", BoardText.Change(text, "brief.rider_mass", new Entered("82 kg")).Text, StringComparison.Ordinal);
    }
}
