using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pictures;
using Boardwright.Logs;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;

namespace Boardwright.Tests.Documents;

public sealed class RidePicturesTests
{
    const int Rows = 3000;

    [Fact]
    public void Panels_share_the_axis_across_and_only_those_with_values_are_there()
    {
        var placed = ChartLayout.Compute(RidePictures.OverDistance(Loop(), "A ride", new($"Made up."))!, new ChartView(760));

        Assert.Equal(5, placed.Frames.Count);
        Assert.Single(placed.Frames.Select(f => (f.Left, f.Right, f.From, f.To)).Distinct());
        Assert.DoesNotContain(placed.Drawing.Shapes.OfType<Words>(), w => w.Text.StartsWith("elevation", StringComparison.Ordinal));
    }

    [Fact]
    public void A_channel_that_is_not_known_to_one_line_is_a_band()
    {
        var chart = RidePictures.OverTime(Loop(), "A ride")!;
        var series = chart.Panels.Cast<LinePanel>().Single(p => p.Up.Says == "temperature").Series;

        Assert.Contains(series, s => s is Band { Name: "windings" });
        Assert.Contains(series, s => s is Line { Name: "cells" });
    }

    [Fact]
    public void A_ride_without_distance_has_no_picture_over_it() =>
        Assert.Null(RidePictures.OverDistance(Loop() with { Columns = new Dictionary<Channel, double[]>() }, "A ride"));

    [Fact]
    public void The_picture_of_a_ride_looks_as_approved() => Approved.Matches(
        "Documents/ride.svg",
        Svg.Write(ChartLayout.Compute(
            RidePictures.OverTime(Loop(), "A made-up ride", new($"Made up."), [(Channel.MotorTemperature, new Guide(373.15, new($"fades from {Temperature.FromCelsius(100)}")))])!,
            new ChartView(760)).Drawing));

    [Fact]
    public void A_computed_ride_is_drawn_over_distance_and_time_and_by_where_its_energy_went()
    {
        var route = Route.Loop(Length.FromKilometres(2), Length.FromMetres(20));
        var ride = Ride.Simulate(Boards.Tern, route, new() { TraceEvery = Duration.FromSeconds(1) }).Value;
        var charts = RidePictures.Draw(Boards.Tern, ride, route);

        Assert.Equal(["ride-distance", "ride-time", "ride-energy"], charts.Select(c => c.Name));
        Assert.Equal(["speed", "elevation", "grade", "power", "current", "voltage under load", "charge", "temperature"], charts[0].Panels.Cast<LinePanel>().Select(p => p.Up.Says));
        var bars = charts[2].Panels.Cast<BarPanel>().Single().Bars;
        Assert.Equal(ride.Energy.FromCells, bars[^1].To, 1e-3 * ride.Energy.FromCells);
    }

    [Fact]
    public void Only_temperatures_that_rest_on_guesses_are_bands_and_the_bands_reach_as_far_as_the_figures()
    {
        var ride = Ride.Cruising(Boards.Tern, new() { TraceEvery = Duration.FromSeconds(30) }).Value;
        var panels = RidePictures.Draw(Boards.Tern, ride, null)[1].Panels.Cast<LinePanel>().ToList();
        var series = panels.Single(p => p.Up.Says == "temperature").Series;
        var cells = Assert.IsType<Band>(series.Single(s => s.Name == "cells"));

        Assert.True(ride.Cells.IsBand);
        Assert.False(ride.Winding.IsBand);
        Assert.IsType<Line>(series.Single(s => s.Name == "windings"));
        Assert.Equal((ride.Cells.Low.Kelvins, ride.Cells.High.Kelvins), (cells.Low.Span[^1], cells.High.Span[^1]),
            (a, b) => Math.Abs(a.Item1 - b.Item1) < 0.01 && Math.Abs(a.Item2 - b.Item2) < 0.01);
        Assert.DoesNotContain(panels, p => p.Up.Says is "elevation" or "grade");
    }

    [Fact]
    public void A_board_of_which_nobody_says_the_limits_is_drawn_all_the_same()
    {
        var board = Boards.Tern.With(("motor.winding_limit", ""), ("controller.taper_temperature_start", ""), ("cell.discharge_temperature_max", ""), ("motor.winding_capacity", ""));
        var ride = Ride.Simulate(board, Route.Level(Length.FromMetres(500)), new() { TraceEvery = Duration.FromSeconds(1) }).Value;
        var charts = RidePictures.Draw(board, ride, Route.Level(Length.FromMetres(500)));

        Assert.All(charts[0].Panels.Cast<LinePanel>(), p => Assert.Empty(p.Levels));
        Assert.Contains(charts[1].Panels.Cast<LinePanel>().SelectMany(p => p.Series), s => s is Band { Name: "windings" });
    }

    // Whole numbers and simple sums, so that it is the same ride on every machine.
    static RideTrace Loop() => new(
        new Dictionary<Channel, double[]>
        {
            [Channel.Time] = Rowed(i => i),
            [Channel.Distance] = Rowed(i => 6.5 * i),
            [Channel.Speed] = Rowed(i => Math.Min(7, Math.Min(i % 600 * 0.2, (600 - i % 600) * 0.3))),
            [Channel.Grade] = Rowed(i => 0.0004 * (Math.Abs(i % 400 - 200) - 100)),
            [Channel.PackPower] = Rowed(i => i % 600 > 570 ? -200 : 150 + 4 * (Math.Abs(i % 400 - 200) - 100)),
            [Channel.ChargeLeft] = Rowed(i => i > 2000 && i < 2100 ? double.NaN : 1 - i / 4000.0),
            [Channel.PackTemperature] = Rowed(i => 291.15 + i / 600.0),
        },
        new Dictionary<Channel, TraceBand>
        {
            [Channel.MotorTemperature] = new(Rowed(i => 291.15 + i / 80.0), Rowed(i => 291.15 + i / 50.0)),
        });

    static double[] Rowed(Func<int, double> value) => [.. Enumerable.Range(0, Rows).Select(value)];
}
