using Boardwright.Documents.Charts;
using Boardwright.Logs;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Levels = System.Collections.Generic.List<(Boardwright.Logs.Channel Channel, Boardwright.Documents.Charts.Guide Level)>;

namespace Boardwright.Documents.Pictures;

/// <summary>Pictures of a ride: everything over distance or over time, one below another.</summary>
public static class RidePictures
{
    const double LongInHours = 3 * 3600, ShortInSeconds = 180, ShortInMetres = 2000;

    static readonly (Axis Up, double Share, (Channel Channel, string Name)[] Channels)[] Rooms =
    [
        (Axis.For<Speed>("speed", "km/h") with { From = 0 }, 1, [(Channel.Speed, "speed")]),
        (Axis.For<Length>("elevation", "m"), 0.8, [(Channel.Elevation, "elevation")]),
        (Axis.For<Fraction>("grade", "%"), 0.8, [(Channel.Grade, "grade")]),
        (Axis.For<Power>("power", "W") with { From = 0 }, 1, [(Channel.PackPower, "pack"), (Channel.WheelPower, "wheels")]),
        (Axis.For<Current>("current", "A") with { From = 0 }, 1, [(Channel.PackCurrent, "pack"), (Channel.PhaseCurrent, "motor phase")]),
        (Axis.For<Voltage>("voltage under load", "V"), 0.9, [(Channel.PackVoltage, "at the controllers")]),
        (Axis.For<Fraction>("charge", "%"), 0.8, [(Channel.ChargeLeft, "charge")]),
        (Axis.For<Temperature>("temperature", "°C"), 1.1,
        [
            (Channel.MotorTemperature, "windings"), (Channel.CaseTemperature, "motor case"),
            (Channel.ControllerTemperature, "controllers"), (Channel.PackTemperature, "cells"),
        ]),
    ];

    /// <summary>Every picture of a computed ride: over distance, over time, and where its energy went. What the ride does not have is left
    /// out.</summary>
    /// <param name="board">The board.</param>
    /// <param name="ride">The ride, its moments kept.</param>
    /// <param name="route">The route it was ridden on; <c>null</c> for a level cruise.</param>
    public static IReadOnlyList<Chart> Draw(Board board, Ride ride, Route? route)
    {
        var trace = RideTrace.Create(ride, route);
        var (levels, says) = (LevelsOf(board, ride), SaysOf(ride));
        string Title(string what) => BoardPictures.Title(board, $"{what}, {ride.Road}");
        Chart?[] charts = [OverDistance(trace, Title("the ride over distance"), says, levels), OverTime(trace, Title("the ride over time"), says, levels),
            EnergyPicture.Draw(board, ride)];
        return [.. charts.OfType<Chart>()];
    }

    // Only limits that a body comes near: a line far above everything would press the rest together.
    static Levels LevelsOf(Board board, Ride ride)
    {
        const double Near = 25;
        var levels = new List<(Channel, Guide)>();

        void Level(Channel channel, Hottest hottest, Known<Temperature> limit, Phrase label)
        {
            if (limit.IsKnown && hottest.High.Kelvins > limit.Value.Kelvins - Near)
                levels.Add((channel, new Guide(limit.Value.Kelvins, label)));
        }

        var (motor, controller, cell) = (board.Parts.Motor, board.Parts.Controller, board.Parts.Cell);
        Level(Channel.MotorTemperature, ride.Winding, motor.WindingLimit, new($"limit of the windings"));
        Level(Channel.ControllerTemperature, ride.Controller, controller.TaperTemperatureStart, new($"controllers fade from here"));
        Level(Channel.PackTemperature, ride.Cells, cell.DischargeTemperatureMax, new($"limit of the cells"));
        return levels;
    }

    static Phrase SaysOf(Ride ride) => Phrase.Join(
        new($"{ride.Distance:0.0 km} in {ride.Time:0.0 min}, {ride.Used:0.0 Wh} used, {ride.ChargeLeft:0 %} of the charge left."),
        ride.CoolTrace.Count > 0 ? new($"Where a temperature is a band, heat capacities or cooling are guessed.") : default);

    /// <summary>The ride over distance.</summary>
    /// <param name="trace">The ride.</param>
    /// <param name="title">Title of the chart.</param>
    /// <param name="says">What is to be seen.</param>
    /// <param name="levels">Reference lines by channel, such as the temperature at which power fades.</param>
    /// <returns>The chart, or <c>null</c> when the trace has no distance or nothing to show over it.</returns>
    internal static Chart? OverDistance(RideTrace trace, string title, Phrase says = default, Levels? levels = null)
    {
        var unit = trace.LastOf(Channel.Distance) < ShortInMetres ? "m" : "km";
        return Over(trace, Channel.Distance, Axis.For<Length>("distance", unit), "ride-distance", title, says, levels ?? []);
    }

    /// <summary>The ride over time.</summary>
    /// <inheritdoc cref="OverDistance"/>
    /// <returns>The chart, or <c>null</c> when the trace has no time or nothing to show over it.</returns>
    internal static Chart? OverTime(RideTrace trace, string title, Phrase says = default, Levels? levels = null) =>
        Over(trace, Channel.Time, TimeAxis(trace.LastOf(Channel.Time) ?? 0), "ride-time", title, says, levels ?? []);

    /// <summary>An axis of time in the unit that suits how long it lasts.</summary>
    internal static Axis TimeAxis(double seconds) =>
        Axis.For<Duration>("time", seconds > LongInHours ? "h" : seconds > ShortInSeconds ? "min" : "s");

    static Chart? Over(RideTrace trace, Channel along, Axis across, string name, string title, Phrase says, Levels levels)
    {
        if (!trace.Columns.TryGetValue(along, out var x))
            return null;
        var panels = new List<Panel>();
        foreach (var (up, share, channels) in Rooms)
        {
            var series = new List<ChartSeries>();
            for (var i = 0; i < channels.Length; i++)
            {
                var (channel, called) = channels[i];
                if (trace.Bands.TryGetValue(channel, out var band))
                    series.Add(new Band(called, x, band.Low, band.High) { Pen = i });
                else if (trace.Columns.TryGetValue(channel, out var values))
                    series.Add(new Line(called, x, values) { Pen = i });
            }

            if (series.Count > 0)
            {
                panels.Add(new LinePanel(up)
                {
                    Share = share,
                    Series = series,
                    Levels = [.. levels.Where(l => channels.Any(c => c.Channel == l.Channel)).Select(l => l.Level)],
                });
            }
        }

        return panels.Count == 0 ? null : new Chart { Name = name, Title = title, Says = says, Across = across, Panels = panels };
    }
}
