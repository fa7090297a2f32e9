using Boardwright.Documents.Charts;
using Boardwright.Lessons;
using Boardwright.Logs;
using static System.Math;

namespace Boardwright.Documents.Pictures;

/// <summary>What a ride teaches, in pictures.</summary>
public static class LearningPictures
{
    /// <summary>Predicted beside measured, over time; what the log does not have is left out.</summary>
    /// <param name="replay">The ride put through the model.</param>
    /// <param name="title">Title of the chart.</param>
    public static Chart Against(Replay replay, string title)
    {
        ArgumentNullException.ThrowIfNull(replay);
        double[] x = [.. replay.Seconds.Select(s => s - replay.Seconds[0])];
        var panels = new List<Panel>();
        Pair(Axis.For<Speed>("speed", "km/h") with { From = 0 }, replay.Speeds, Channel.Speed, 0.7);
        Pair(Axis.For<Current>("pack current", "A") with { From = 0 }, replay.PackAmperes, Channel.PackCurrent, 1);
        Pair(Axis.For<Voltage>("voltage under load", "V"), replay.PackVolts, Channel.PackVoltage, 1);
        Pair(Axis.For<Temperature>("motor", "°C"), replay.Windings, Channel.MotorTemperature, 0.9);
        Pair(Axis.For<Temperature>("controller", "°C"), replay.Controllers, Channel.ControllerTemperature, 0.8);
        Pair(Axis.For<Temperature>("pack", "°C"), replay.Cells, Channel.PackTemperature, 0.8);
        return new Chart
        {
            Name = "ride-time",
            Title = title,
            Says = new($"The ride's speeds and grades put through the model of the board, beside what was logged. Where nothing was logged nothing is drawn."),
            Across = RidePictures.TimeAxis(x[^1]),
            Panels = panels,
        };

        void Pair(Axis up, IReadOnlyList<double> predicted, Channel channel, double share)
        {
            var measured = replay.Measured(channel);
            var isFollowed = channel == Channel.Speed;
            List<ChartSeries> series = measured.Length > 0 ? [new Line("measured", x, measured) { Pen = 0 }] : [];
            if (!isFollowed || series.Count == 0)
                series.Add(new Line(isFollowed ? "followed" : "predicted", x, predicted.ToArray()) { Pen = 1 });
            // A temperature that nobody logged is told by the figures, not here.
            if (measured.Length > 0 || up.Dimension != Temperature.Dimension)
                panels.Add(new LinePanel(up) { Share = share, Series = series });
        }
    }

    /// <summary>The region in which rolling coefficient and drag area lie together nine times out of ten.</summary>
    /// <param name="fit">What the coast-downs tell.</param>
    public static Chart Ellipse(CoastDownFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        const int Steps = 60;
        // 4.605 is the 90 % quantile of χ² with two degrees of freedom.
        var reach = Sqrt(4.605170185988091);
        var (x, low, high) = (new double[Steps + 1], new double[Steps + 1], new double[Steps + 1]);
        for (var i = 0; i <= Steps; i++)
        {
            var across = -Cos(PI * i / Steps);
            var (middle, half) = (fit.Correlation * across, Sqrt(Max(0, (1 - fit.Correlation * fit.Correlation) * (1 - across * across))));
            x[i] = fit.DragArea.Value.Si + reach * fit.DragArea.Deviation * across;
            low[i] = fit.RollingResistance.Value.Si + reach * fit.RollingResistance.Deviation * (middle - half);
            high[i] = fit.RollingResistance.Value.Si + reach * fit.RollingResistance.Deviation * (middle + half);
        }

        return new Chart
        {
            Name = "coast-down-ellipse",
            Title = "Rolling and drag together",
            Says = new($"Nine times out of ten both lie inside: {fit.RollingResistance.Value.Value:0.0000} and {fit.DragArea.Value:0.000 m2} go together by {fit.Correlation:0.00}, so when one is too high the other is too low."),
            Across = Axis.For<Area>("drag area", "m2"),
            Panels =
            [
                new LinePanel(Axis.For<Number>("rolling coefficient", ""))
                {
                    Series = [new Band("nine in ten", x, low, high) { Pen = 0 }],
                    Marks = [new ChartMark(fit.DragArea.Value.Si, fit.RollingResistance.Value.Si, new($"fitted"), 1)],
                },
            ],
        };
    }
}
