using System.Xml.Linq;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pictures;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Tests.Documents;

public sealed class BoardPicturesTests
{
    public static TheoryData<string> Ids { get; } = [.. BoardPictures.All.Select(p => p.Id)];

    static readonly string[] Broken = ["NaN", "Infinity", "∞", "\r"];

    static Answer<Chart> Draw(string id, Parts.Board board) => BoardPictures.All.Single(p => p.Id == id).Of(Examination.Examine(board));

    static IEnumerable<(string Name, PlacedChart Placed, Chart Chart)> Everything() =>
        from name in Boards.Names
        let examination = Examination.Examine(Boards.Read(name))
        from picture in BoardPictures.All
        let answer = picture.Of(examination)
        where answer.IsKnown
        from width in new[] { 380.0, 760 }
        from units in new[] { UnitSystem.Metric, UnitSystem.Imperial }
        select ($"{name}, {picture.Id}, {width}", ChartLayout.Compute(answer.Value, new ChartView(width) { Units = units }), answer.Value);

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_pictures_of_Tern_look_as_approved(string id) =>
        Approved.Matches($"Documents/tern.{id}.svg", Svg.Write(ChartLayout.Compute(Draw(id, Boards.Tern).Value, new ChartView(760)).Drawing));

    [Fact]
    public void The_same_board_gives_the_same_bytes()
    {
        foreach (var picture in BoardPictures.All)
        {
            string Once() => Svg.Write(ChartLayout.Compute(picture.Of(Examination.Examine(Boards.Tern)).Value, new ChartView(500)).Drawing);
            Assert.Equal(Once(), Once());
        }
    }

    [Fact]
    public void Every_picture_is_whole_markup_with_title_and_description_and_without_broken_numbers()
    {
        foreach (var (name, placed, _) in Everything())
        {
            var svg = Svg.Write(placed.Drawing);
            var root = XDocument.Parse(svg).Root!;

            Assert.False(string.IsNullOrWhiteSpace(root.Elements().Single(e => e.Name.LocalName == "title").Value), name);
            Assert.False(string.IsNullOrWhiteSpace(root.Elements().Single(e => e.Name.LocalName == "desc").Value), name);
            Assert.All(Broken, broken => Assert.DoesNotContain(broken, svg, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Every_series_and_bar_is_named()
    {
        foreach (var (name, placed, chart) in Everything())
        {
            var words = placed.Drawing.Shapes.OfType<Words>().Select(w => w.Text).ToHashSet();
            var names = chart.Panels.OfType<LinePanel>().SelectMany(p => p.Series).Select(s => s.Name)
                .Concat(chart.Panels.OfType<BarPanel>().SelectMany(p => p.Bars).Select(b => b.Name));
            Assert.All(names, n => Assert.True(words.Contains(n), $"{name}: {n}"));
        }
    }

    [Fact]
    public void No_words_cover_one_another_or_leave_the_sheet()
    {
        foreach (var (name, placed, _) in Everything())
        {
            var boxes = placed.Drawing.Shapes.OfType<Words>().Select(w =>
            {
                var width = Lettering.WidthOf(w.Text, w.Size, w.IsBold) / 1.06;
                var left = w.At.X - (w.Anchor == Anchor.Start ? 0 : w.Anchor == Anchor.Middle ? width / 2 : width);
                return (w.Text, Left: left, Right: left + width, Top: w.At.Y - 0.72 * w.Size, Bottom: w.At.Y + 0.2 * w.Size);
            }).ToList();
            Assert.All(boxes, b => Assert.True(
                b.Left >= 0 && b.Right <= placed.Drawing.Width && b.Top >= 0 && b.Bottom <= placed.Drawing.Height, $"{name}: {b}"));
            for (var i = 0; i < boxes.Count; i++)
            {
                for (var k = i + 1; k < boxes.Count; k++)
                {
                    var (a, b) = (boxes[i], boxes[k]);
                    Assert.False(a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom, $"{name}: {a} and {b}");
                }
            }
        }
    }

    [Theory]
    [InlineData("traction", "motor.kv")]
    [InlineData("energy", "brief.cruise_speed")]
    [InlineData("range", "cell.capacity")]
    [InlineData("charge", "charger.current")]
    public void What_is_missing_is_named(string id, string key)
    {
        var answer = Draw(id, Boards.Tern.With((key, "")));

        Assert.False(answer.IsKnown);
        Assert.Contains(key, answer.Missing);
    }

    [Fact]
    public void A_cell_of_which_no_voltage_is_known_is_not_drawn()
    {
        var parts = Boards.Tern.Parts;
        var answer = Draw("cell",
            (Boards.Tern with { Parts = parts with { Cell = parts.Cell with { RestVoltage = default, VoltageFull = default } } })
            .WithNames());

        Assert.False(answer.IsKnown);
        Assert.Contains("cell.rest_voltage", answer.Missing);
    }

    [Fact]
    public void The_bars_of_the_cruise_begin_where_the_one_before_ends_and_make_up_the_sum()
    {
        var bars = Assert.IsType<BarPanel>(Draw("energy", Boards.Tern).Value.Panels[0]).Bars;

        Assert.All(bars.Zip(bars.Skip(1)).Where(p => !p.Second.IsSum), p => Assert.Equal(p.First.To, p.Second.From));
        Assert.Equal(bars[^2].To, bars[^1].To, 1e-12);
    }
}
