using Boardwright.Documents.Charts;
using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pictures;
using Boardwright.Units;

namespace Boardwright.Tests.Documents;

public sealed class RidePicturesTests
{
    const int Rows = 3000;

    [Fact]
    public void Panels_share_the_axis_across_and_only_those_with_values_are_there()
    {
        var placed = ChartLayout.Lay(RidePictures.OverDistance(new Loop(), "A ride", new($"Made up."))!, new ChartView(760));

        Assert.Equal(5, placed.Frames.Count);
        Assert.Single(placed.Frames.Select(f => (f.Left, f.Right, f.From, f.To)).Distinct());
        Assert.DoesNotContain(placed.Drawing.Shapes.OfType<Words>(), w => w.Text.StartsWith("elevation", StringComparison.Ordinal));
    }

    [Fact]
    public void A_channel_that_is_not_known_to_one_line_is_a_band()
    {
        var chart = RidePictures.OverTime(new Loop(), "A ride")!;
        var series = chart.Panels.Cast<LinePanel>().Single(p => p.Up.Says == "temperature").Series;

        Assert.Contains(series, s => s is Band { Name: "windings" });
        Assert.Contains(series, s => s is Line { Name: "cells" });
    }

    [Fact]
    public void A_ride_without_distance_has_no_picture_over_it() => Assert.Null(RidePictures.OverDistance(new Nothing(), "A ride"));

    [Fact]
    public void The_picture_of_a_ride_looks_as_approved() => Approved.Matches(
        "Documents/ride.svg",
        Svg.Write(ChartLayout.Lay(
            RidePictures.OverTime(new Loop(), "A made-up ride", new($"Made up."), [(Channel.WindingTemperature, new Guide(373.15, new($"fades from {Temperature.FromCelsius(100)}")))])!,
            new ChartView(760)).Drawing));

    sealed class Nothing : IRideTrace
    {
        public ReadOnlyMemory<double> Of(Channel channel) => default;
    }

    // Whole numbers and simple sums, so that it is the same ride on every machine.
    sealed class Loop : IRideTrace
    {
        public ReadOnlyMemory<double> Of(Channel channel) => channel switch
        {
            Channel.Time => Rowed(i => i),
            Channel.Distance => Rowed(i => 6.5 * i),
            Channel.Speed => Rowed(i => Math.Min(7, Math.Min(i % 600 * 0.2, (600 - i % 600) * 0.3))),
            Channel.Grade => Rowed(i => 0.0004 * (Math.Abs(i % 400 - 200) - 100)),
            Channel.PackPower => Rowed(i => i % 600 > 570 ? -200 : 150 + 4 * (Math.Abs(i % 400 - 200) - 100)),
            Channel.Charge => Rowed(i => i > 2000 && i < 2100 ? double.NaN : 1 - i / 4000.0),
            Channel.CellTemperature => Rowed(i => 291.15 + i / 600.0),
            _ => default,
        };

        public TraceBand? BandOf(Channel channel) => channel == Channel.WindingTemperature
            ? new TraceBand(Rowed(i => 291.15 + i / 80.0), Rowed(i => 291.15 + i / 50.0))
            : null;

        static double[] Rowed(Func<int, double> value) => [.. Enumerable.Range(0, Rows).Select(value)];
    }
}
