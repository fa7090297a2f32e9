using System.Xml.Linq;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Views;
using Boardwright.Examinations;
using Boardwright.Findings;

namespace Boardwright.Tests.Documents;

public sealed class BoardViewsTests
{
    public static TheoryData<string, string> Everything { get; } = new(Boards.Names.SelectMany(b => BoardViews.All.Select(v => (b, v.Id))));

    static Drawing Draw(string board, string view) => Draw(Boards.Read(board), view);

    static Drawing Draw(Parts.Board board, string view, ViewWishes? wishes = null) =>
        BoardViews.All.Single(v => v.Id == view).Of(Examination.Examine(board), wishes ?? ViewWishes.Usual);

    static IEnumerable<DrawingGroup> Groups(Drawing drawing, string kind) =>
        drawing.Shapes.OfType<DrawingGroup>().Where(g => g.Kind == kind);

    static IEnumerable<Point> SpotsOf(Shape shape) => shape switch
    {
        Stroke stroke => stroke.Path.ToArray(),
        Patch patch => patch.Outline.ToArray(),
        Circle circle => [circle.Centre],
        Words words => [words.At],
        DrawingGroup group => group.Shapes.SelectMany(SpotsOf),
        _ => [],
    };

    [Theory]
    [MemberData(nameof(Everything))]
    public void The_views_look_as_approved(string board, string view) => Approved.Matches($"Documents/{board}.{view}.svg", Svg.Write(Draw(board, view)));

    [Theory]
    [MemberData(nameof(Everything))]
    public void The_same_board_gives_the_same_bytes(string board, string view) =>
        Assert.Equal(Svg.Write(Draw(board, view)), Svg.Write(Draw(board, view)));

    [Theory]
    [InlineData("tern", "deck front_truck rear_truck wheels motor mount motor_pulley wheel_pulley belt box pack controller")]
    [InlineData("curlew", "deck front_truck rear_truck wheels motor mount gearbox box pack controller")]
    public void Every_part_that_can_be_seen_is_a_group_with_its_name(string board, string slots)
    {
        foreach (var view in new[] { "above", "side" })
        {
            var parts = Groups(Draw(board, view), "part").ToList();
            Assert.Equal(slots.Split(' ').Select(s => $"parts.{s}").Order(StringComparer.Ordinal),
                parts.Select(p => p.Key).Distinct().Order(StringComparer.Ordinal));
            Assert.All(parts, p => Assert.Contains(": ", p.Title, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Groups_carry_their_key_and_name_into_the_file()
    {
        XNamespace svg = "http://www.w3.org/2000/svg";
        var motor = XDocument.Parse(Svg.Write(Draw("tern", "side"))).Descendants(svg + "g").First(g => (string?)g.Attribute("data-part") == "parts.motor");

        Assert.Equal("bw-part", (string?)motor.Attribute("class"));
        Assert.Equal("Motor: Larkmere 63x74, 170", (string?)motor.Element(svg + "title"));
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void Every_finding_about_a_drawn_part_has_its_pin_with_its_number_and_no_pins_meet(string board, string view)
    {
        var exam = Examination.Examine(Boards.Read(board));
        var open = exam.Findings.Where(f => f.Level != Level.Fine).ToList();
        var drawing = Draw(board, view);
        var (drawn, pins) = (Groups(drawing, "part").Select(p => p.Key).ToHashSet(), Groups(drawing, "finding").ToList());

        foreach (var (finding, i) in open.Select((f, i) => (f, i)))
        {
            var pin = pins.Where(p => p.Key.Split(' ').Contains(finding.Rule, StringComparer.Ordinal)
                && p.Title.Split('\n').Any(t => t.StartsWith($"{i + 1}: ", StringComparison.Ordinal))).ToList();
            Assert.Equal(drawn.Contains($"parts.{PartOf(finding.Where)}"), pin.Count == 1);
            Assert.All(pin, p => Assert.Equal(finding.Level.ToString().ToLowerInvariant(), p.Mark));
        }

        var middles = pins.Select(p => p.Shapes.OfType<Words>().Single().At).ToList();
        for (var i = 0; i < middles.Count; i++)
            Assert.All(middles.Skip(i + 1), m => Assert.True(Math.Max(Math.Abs(m.X - middles[i].X), Math.Abs(m.Y - middles[i].Y)) > 19));
    }

    [Fact]
    public void Findings_that_wait_for_values_of_one_part_share_a_pin_and_brackets_hold_what_is_guessed()
    {
        var drawing = Draw(Boards.Tern.With(("motor.can_diameter", ""), ("motor.can_length", "")), "side");
        var pin = Groups(drawing, "finding").Single(p => p.Mark == "measure" && p.Key.Split(' ').Contains("fit.ground_motor", StringComparer.Ordinal));

        Assert.True(pin.Title.Split('\n').Length > 1);
        Assert.EndsWith("+", pin.Shapes.OfType<Words>().Single().Text, StringComparison.Ordinal);
        Assert.Equal("(36.2 mm)", Groups(drawing, "dimension").Single(d => d.Key == "clearance.motor_to_road").Shapes.OfType<Words>().Single().Text);
    }

    // What has no outline of its own is pinned to what holds it.
    static string PartOf(string where) => where.Split('.', '[')[0] switch
    {
        "drive" => "motor",
        "cell" => "pack",
        "fuse" or "fittings" => "box",
        var part => part,
    };

    [Fact]
    public void The_shape_of_a_pin_says_its_level()
    {
        var pins = Groups(Draw("puffin", "side"), "finding").ToLookup(p => p.Mark, p => p.Shapes.OfType<Patch>().Single().Outline.Length);

        Assert.All(pins["stop"], corners => Assert.Equal(8, corners));
        Assert.All(pins["fix"], corners => Assert.Equal(3, corners));
        Assert.All(pins["measure"], corners => Assert.Equal(4, corners));
        Assert.Equal(3, pins.Count);
    }

    [Theory]
    [InlineData("tern")]
    [InlineData("puffin")]
    public void The_belt_is_drawn_as_long_as_it_is(string board)
    {
        var exam = Examination.Examine(Boards.Read(board));
        var drawing = Draw(board, "side");
        var length = Groups(drawing, "part").Where(p => p.Key == "parts.belt").SelectMany(p => p.Shapes).OfType<Stroke>()
            .Sum(s => s.Path.ToArray().Zip(s.Path.ToArray().Skip(1), (a, b) => Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2)))
            .Sum());

        Assert.Equal(exam.Belt.Value.Path.PitchLength.Millimetres, length / drawing.UnitsPerMillimetre!.Value, 0.3);
    }

    [Theory]
    [InlineData("tern", "above", 5)]
    [InlineData("tern", "behind", 2)]
    [InlineData("curlew", "side", 5)]
    public void A_view_is_as_many_times_smaller_as_it_says(string board, string view, double reduction)
    {
        var drawing = Draw(board, view);

        Assert.Equal(1 / (Drawing.Millimetre * reduction), drawing.UnitsPerMillimetre!.Value, 1e-12);
        Assert.Contains(drawing.Shapes.OfType<Words>(), w => w.Text == $"1 : {reduction}");
    }

    [Fact]
    public void The_overall_length_measures_what_it_says()
    {
        var drawing = Draw("tern", "above");
        var dimension = Groups(drawing, "dimension").Single(d => d.Key == "deck.length");
        var ends = dimension.Shapes.OfType<Stroke>().SelectMany(SpotsOf).ToList();

        Assert.Equal("960 mm", dimension.Shapes.OfType<Words>().Single().Text);
        Assert.Equal(960, (ends.Max(s => s.X) - ends.Min(s => s.X)) / drawing.UnitsPerMillimetre!.Value, 1e-6);
    }

    [Fact]
    public void The_tightest_clearance_is_marked_where_it_is_seen()
    {
        var marked = Groups(Draw("puffin", "behind"), "dimension").Single(d => d.Mark == "tightest");

        Assert.Equal("clearance.motor_to_deck", marked.Key);
        Assert.Equal("−27.7 mm", marked.Shapes.OfType<Words>().Single().Text);
        Assert.Equal("clearance.pulley_to_wheel", Groups(Draw("tern", "side"), "dimension").Single(d => d.Mark == "tightest").Key);
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void Without_dimensions_and_pins_only_parts_are_left(string board, string view)
    {
        var drawing = Draw(Boards.Read(board), view, new() { Dimensions = Dimensioned.Nothing, HasPins = false });

        Assert.All(drawing.Shapes.OfType<DrawingGroup>(), g => Assert.Equal("part", g.Kind));
    }

    [Fact]
    public void Dimensions_are_in_the_units_that_are_asked_for() =>
        Assert.Contains(DrawingGroup.Flat(Draw(Boards.Tern, "above", new() { Units = UnitSystem.Imperial }).Shapes).OfType<Words>(),
        w => w.Text == "37.8 in");

    [Theory]
    [MemberData(nameof(Everything))]
    public void No_words_cover_one_another_or_leave_the_sheet(string board, string view)
    {
        var drawing = Draw(board, view);
        var boxes = DrawingGroup.Flat([.. drawing.Shapes.Where(s => s is not DrawingGroup { Kind: "finding" })]).OfType<Words>().Select(w =>
        {
            var width = Lettering.WidthOf(w.Text, w.Size, w.IsBold) / 1.06;
            var left = w.At.X - (w.Anchor == Anchor.Start ? 0 : w.Anchor == Anchor.Middle ? width / 2 : width);
            return (w.Text, Left: left, Right: left + width, Top: w.At.Y - 0.72 * w.Size, Bottom: w.At.Y + 0.2 * w.Size);
        }).ToList();

        Assert.All(boxes, b => Assert.True(b.Left >= 0 && b.Right <= drawing.Width && b.Top >= 0 && b.Bottom <= drawing.Height, $"{b}"));
        for (var i = 0; i < boxes.Count; i++)
            Assert.All(boxes.Skip(i + 1),
                b => Assert.False(boxes[i].Left < b.Right && b.Left < boxes[i].Right && boxes[i].Top < b.Bottom && b.Top < boxes[i].Bottom,
                $"{boxes[i]} and {b}"));
    }

    [Fact]
    public void The_deck_leans_to_the_side_that_is_asked_for()
    {
        var exam = Examination.Examine(Boards.Tern);
        // The deck's lower right corner on the sheet: further down the more it leans to the right.
        double Corner(double lean) =>
            Groups(BoardViews.Behind(exam, Angle.FromDegrees(lean)), "part").Where(p => p.Key == "parts.deck").SelectMany(SpotsOf).MaxBy(s => s.X).Y;
        var middle = Groups(BoardViews.Behind(exam, default), "part").Where(p => p.Key == "parts.deck").SelectMany(SpotsOf).Select(s => s.X).ToList();

        Assert.Equal(500, (middle.Min() + middle.Max()) / 2, 1);
        Assert.True(Corner(14) > Corner(-14));
    }

    [Fact]
    public void Any_board_is_drawn_with_finite_places_in_whole_markup()
    {
        for (var seed = 0; seed < AnyBoardTests.HowMany / 4; seed++)
        {
            var exam = Examination.Examine(AnyBoardTests.Strange(seed));
            foreach (var view in BoardViews.All)
            {
                var svg = Svg.Write(view.Of(
                    exam, ViewWishes.Usual with { HasRoundScale = seed % 2 == 0, Width = seed % 3 == 0 ? 360 : 1000 }));
                // The writer refuses places that are not finite.
                Assert.NotNull(XDocument.Parse(svg).Root);
            }
        }
    }

    [Fact]
    public void A_board_of_which_nothing_is_known_is_drawn_as_is_usual_and_says_so()
    {
        var drawing = Draw(new Parts.Board().WithNames(), "above");

        Assert.Contains(drawing.Shapes.OfType<Words>(), w => w.Text.Contains("Not in the file", StringComparison.Ordinal));
        Assert.Contains(Groups(drawing, "part"), p => p.Key == "parts.wheels");
        Assert.DoesNotContain(Groups(drawing, "part"), p => p.Key == "parts.motor");
    }
}
