using System.Text.Json;
using Boardwright.Examinations;
using Boardwright.Files.Results;
using Boardwright.Findings;
using Boardwright.Spreads;
using Boardwright.Parts;

namespace Boardwright.Tests.App;

public sealed class ResultDocumentTests
{
    static readonly JsonElement Document = JsonDocument.Parse(ResultDocument.Write(Heron.Outcome)).RootElement;

    [Fact]
    public void The_document_reads_as_approved() => Approved.Matches("App/heron.json", ResultDocument.Write(Heron.Outcome));

    [Fact]
    public void The_document_has_the_members_that_the_format_names()
    {
        Assert.Equal(["boardwright", "board", "results", "findings", "measure_next", "usual_values"], Names(Document));
        Assert.Equal(1, Document.GetProperty("boardwright").GetInt32());
        Assert.Equal("Heron", Document.GetProperty("board").GetString());
        Assert.Equal(["id", "value", "unit", "low", "high", "from"], Names(Document.GetProperty("results")[0]));
        Assert.Equal(["id", "level", "where", "says", "value", "limit", "unit", "remedy", "source"], Names(Document.GetProperty("findings")[1]));
    }

    [Fact]
    public void Numbers_come_back_as_they_were() =>
        Assert.Equal(40 / 15.0, Document.GetProperty("results")[0].GetProperty("value").GetDouble());

    [Fact]
    public void A_figure_that_cannot_be_said_names_what_is_missing()
    {
        var figure = Document.GetProperty("results").EnumerateArray().Single(r => r.GetProperty("id").GetString() == "charge.time_full");

        Assert.Equal(JsonValueKind.Null, figure.GetProperty("value").ValueKind);
        Assert.Equal(JsonValueKind.Null, figure.GetProperty("low").ValueKind);
        Assert.Equal(JsonValueKind.Null, figure.GetProperty("high").ValueKind);
        Assert.Equal(["charger.current", "charger.end_current", "cell.resistance"], figure.GetProperty("missing").EnumerateArray().Select(k => k.GetString()!));
    }

    [Fact]
    public void What_to_measure_next_says_by_how_much_each_figure_narrows()
    {
        var measurement = Document.GetProperty("measure_next")[0];

        Assert.Equal(["key", "how", "narrows_%"], Names(measurement));
        Assert.Equal(40, measurement.GetProperty("narrows_%").GetProperty("cruise.range").GetDouble(), 1e-9);
    }

    [Fact]
    public void A_mend_is_a_change_of_one_entry()
    {
        var change = Document.GetProperty("findings")[0].GetProperty("change");

        Assert.Equal("mount.cover_standoff", change.GetProperty("key").GetString());
        Assert.Equal("9 mm", change.GetProperty("value").GetString());
    }

    [Fact]
    public void A_number_that_is_not_finite_is_null()
    {
        var outcome = new CheckOutcome(
            new Board().WithNames(), [new() { Kind = Heron.Kinds[0], Unit = "", Value = double.PositiveInfinity }], []);

        Assert.Equal(JsonValueKind.Null,
            JsonDocument.Parse(ResultDocument.Write(outcome)).RootElement.GetProperty("results")[0].GetProperty("value").ValueKind);
    }

    [Fact]
    public void The_level_words_are_those_of_the_trade() =>
        Assert.Equal(["stop", "fix", "measure", "fine"], Enum.GetValues<Level>().Select(l => l.Word));

    static IEnumerable<string> Names(JsonElement element) => element.EnumerateObject().Select(p => p.Name);
}
