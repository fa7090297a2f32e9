using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;

namespace Boardwright.Tests.Documents;

public sealed class ChartLayoutTests
{
    static readonly double[] Seconds = [.. Enumerable.Range(0, 1000).Select(i => i * 0.6)];

    static readonly double[] TenMiles = [0, 16_093.44];
    static readonly double[] ColdToWarm = [273.15, 293.15];
    static readonly string[] Names = ["a band of some width", "lower", "upper", "a line", "another line with a long name", "a short one"];

    static Chart Of(params ChartSeries[] series) => new()
    {
        Name = "test",
        Title = "A test",
        Across = Axis.For<Duration>("time", "min"),
        Panels = [new LinePanel(Axis.For<Power>("power", "W")) { Series = series }],
    };

    static double[] Wave(double size) => [.. Seconds.Select(s => size * Math.Sin(s / 40))];

    [Fact]
    public void A_peak_of_a_single_point_is_drawn_to_its_height()
    {
        var x = Enumerable.Range(0, 20_000).Select(i => (double)i).ToArray();
        var y = new double[x.Length];
        y[13_337] = 100;
        var placed = ChartLayout.Compute(Of(new Line("peak", x, y)), new ChartView(500));

        var frame = Assert.Single(placed.Frames);
        var path = LinesOf(placed.Drawing, Ink.Hue1).Single();
        Assert.Equal(frame.Up(100), path.Min(s => s.Y), 0.051);
        Assert.InRange(path.Count, 100, 4 * 500);
    }

    [Fact]
    public void A_line_has_a_gap_where_values_are_missing()
    {
        var y = Wave(10);
        y[300] = double.NaN;
        y[301] = double.PositiveInfinity;
        var placed = ChartLayout.Compute(Of(new Line("wave", Seconds, y)), new ChartView(500));

        Assert.Equal(2, LinesOf(placed.Drawing, Ink.Hue1).Count);
        Assert.DoesNotContain("NaN", Svg.Write(placed.Drawing), StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_without_any_value_and_a_chart_without_lines_are_drawn_empty()
    {
        foreach (var chart in new[] { Of(new Line("nothing", Seconds, new double[Seconds.Length].Select(_ => double.NaN).ToArray())), Of() })
            Assert.Contains("<svg", Svg.Write(ChartLayout.Compute(chart, new ChartView(500)).Drawing), StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_is_cut_exactly_where_it_begins_and_ends()
    {
        var placed = ChartLayout.Compute(
            Of(new Line("slope", new double[] { 0, 600 }, new double[] { 0, 600 })), new ChartView(500) { From = 100.5, To = 200.5 });

        var frame = placed.Frames[0];
        var path = LinesOf(placed.Drawing, Ink.Hue1).Single();
        Assert.Equal((frame.Left, frame.Right), (path[0].X, path[^1].X));
        Assert.Equal(frame.Up(100.5), path[0].Y, 1e-9);
        Assert.Equal(frame.Up(200.5), path[^1].Y, 1e-9);
        Assert.Equal(150.5, frame.ValueAt(frame.Across(150.5)), 1e-9);
    }

    [Theory]
    [InlineData(240)]
    [InlineData(380)]
    [InlineData(760)]
    [InlineData(1400)]
    public void Every_series_is_named_at_every_width(double width)
    {
        var chart = Of(
            new Band("a band of some width", Seconds, Wave(8), Wave(12)),
            new LayeredPanel(Seconds, [new("lower", Seconds.Select(_ => 3.0).ToArray()), new("upper", Seconds.Select(_ => 4.0).ToArray())]),
            new Line("a line", Seconds, Wave(10)),
            new Line("another line with a long name", Seconds, Wave(20)),
            new Line("a short one", Seconds.AsMemory(0, 400), Wave(5).AsMemory(0, 400)));
        var words = WordsOf(ChartLayout.Compute(chart, new ChartView(width)).Drawing);

        Assert.All(Names, name => Assert.Contains(name, words));
    }

    [Fact]
    public void Six_lines_have_six_patterns_and_colours()
    {
        var drawing = ChartLayout.Compute(Of([.. Enumerable.Range(1, 6).Select(i => new Line($"line {i}", Seconds, Wave(i)))]), new ChartView(760))
            .Drawing;
        var pens = drawing.Shapes.OfType<Stroke>().Where(s => s.Pen.Ink is >= Ink.Hue1 and <= Ink.Hue6 && s.Path.Length > 2)
            .Select(s => s.Pen).Distinct().ToList();

        Assert.Equal(6, pens.Select(p => p.Dash).Distinct().Count());
        Assert.Equal(6, pens.Select(p => p.Ink).Distinct().Count());
    }

    [Fact]
    public void Imperial_axes_have_imperial_ticks()
    {
        var chart = new Chart
        {
            Name = "test",
            Title = "A test",
            Across = Axis.For<Length>("distance", "km"),
            Panels = [new LinePanel(Axis.For<Temperature>("temperature", "°C")) { Series = [new Line("air", TenMiles, ColdToWarm)] }],
        };
        var words = WordsOf(ChartLayout.Compute(chart, new ChartView(760) { Units = UnitSystem.Imperial }).Drawing);

        Assert.Contains("distance, mi", words);
        Assert.Contains("temperature, °F", words);
        Assert.Contains("10", words);
        Assert.Contains("50", words);
    }

    [Fact]
    public void A_place_is_read_between_the_points()
    {
        var chart = Of(new Line("slope", new double[] { 0, 10 }, new double[] { 100, 200 }),
            new Line("later", new double[] { 8, 10 }, new double[] { 0, 1 }));

        var reading = Assert.Single(Reading.At(chart, 5, UnitSystem.Metric));
        Assert.Equal(("slope", 150, "150 W"), (reading.Name, reading.Value, reading.Text));
    }

    [Fact]
    public void A_band_is_read_as_its_two_ends_and_as_one_where_they_meet()
    {
        var chart = new Chart
        {
            Name = "test",
            Title = "A test",
            Across = Axis.For<Length>("distance", "m"),
            Panels = [new LinePanel(Axis.For<Power>("power", "W")) { Series =
                [new Band("guessed", new double[] { 0, 10 }, new double[] { 100, 100 }, new double[] { 100, 140 })] }],
        };

        Assert.Equal("100 to 120 W", Assert.Single(Reading.At(chart, 5, UnitSystem.Metric)).Text);
        Assert.Equal("100 W", Assert.Single(Reading.At(chart, 0, UnitSystem.Metric)).Text);
    }

    [Fact]
    public void Markup_in_names_is_text()
    {
        var svg = Svg.Write(ChartLayout.Compute(Of(new Line("<b> & \"c\"", Seconds, Wave(3))), new ChartView(500)).Drawing);

        Assert.Contains("&lt;b&gt; &amp; &quot;c&quot;", svg, StringComparison.Ordinal);
        Assert.NotNull(System.Xml.Linq.XDocument.Parse(svg));
    }

    static List<List<Point>> LinesOf(Drawing drawing, Ink ink) =>
        [.. drawing.Shapes.OfType<Stroke>().Where(s => s.Pen.Ink == ink && s.Pen.Width > 1.5).Select(s => s.Path.ToArray().ToList())];

    static HashSet<string> WordsOf(Drawing drawing) => [.. drawing.Shapes.OfType<Words>().Select(w => w.Text)];
}
