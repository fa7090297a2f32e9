using System.Runtime.InteropServices;
using Boardwright.Documents.Charts;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;

namespace Boardwright.Documents.Pictures;

/// <summary>What is recorded along a ride; values are SI.</summary>
public enum TraceChannel
{
    /// <summary>Time since the start, s; never falls.</summary>
    Time,

    /// <summary>Distance since the start, m; never falls.</summary>
    Distance,

    /// <summary>Speed, m/s.</summary>
    Speed,

    /// <summary>Grade, rise over run.</summary>
    Grade,

    /// <summary>Elevation, m.</summary>
    Elevation,

    /// <summary>Power at the wheels, W; negative when braking.</summary>
    WheelPower,

    /// <summary>Power that the pack feeds the controllers, W; negative when it is fed back.</summary>
    PackPower,

    /// <summary>Current out of the pack, A.</summary>
    PackCurrent,

    /// <summary>Phase amplitude of a motor, A.</summary>
    PhaseCurrent,

    /// <summary>Voltage that reaches the controllers, V.</summary>
    PackVoltage,

    /// <summary>State of charge, 0 to 1.</summary>
    Charge,

    /// <summary>Temperature of the windings, K.</summary>
    WindingTemperature,

    /// <summary>Temperature of the motors' cases, K.</summary>
    CaseTemperature,

    /// <summary>Temperature of the controllers, K.</summary>
    ControllerTemperature,

    /// <summary>Temperature of the cells, K.</summary>
    CellTemperature,
}

/// <summary>A ride as a table of equally long columns; whoever rides or records gives one.</summary>
public interface IRideTrace
{
    /// <summary>The values of a channel, SI.</summary>
    /// <returns>One value for each row, not a number where there is none; empty when the ride does not have the channel.</returns>
    ReadOnlyMemory<double> Values(TraceChannel channel);

    /// <summary>Between which values a channel lies where it is not known to one.</summary>
    /// <returns>The low and the high values, or <c>null</c> when the channel is one line.</returns>
    TraceBand? BandOf(TraceChannel channel) => null;
}

/// <summary>A low and a high value for each row of a trace.</summary>
/// <param name="Low">The low values, SI.</param>
/// <param name="High">The high values, SI.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TraceBand(ReadOnlyMemory<double> Low, ReadOnlyMemory<double> High);

/// <summary>Pictures of a ride: everything over distance or over time, one below another.</summary>
public static class RidePictures
{
    const double LongInHours = 3 * 3600, ShortInSeconds = 180, ShortInMetres = 2000;

    static readonly (Axis Up, double Share, (TraceChannel Channel, string Name)[] Channels)[] Rooms =
    [
        (Axis.For<Speed>("speed", "km/h") with { From = 0 }, 1, [(TraceChannel.Speed, "speed")]),
        (Axis.For<Length>("elevation", "m"), 0.8, [(TraceChannel.Elevation, "elevation")]),
        (Axis.For<Fraction>("grade", "%"), 0.8, [(TraceChannel.Grade, "grade")]),
        (Axis.For<Power>("power", "W") with { From = 0 }, 1, [(TraceChannel.PackPower, "pack"), (TraceChannel.WheelPower, "wheels")]),
        (Axis.For<Current>("current", "A") with { From = 0 }, 1, [(TraceChannel.PackCurrent, "pack"), (TraceChannel.PhaseCurrent, "motor phase")]),
        (Axis.For<Voltage>("voltage under load", "V"), 0.9, [(TraceChannel.PackVoltage, "at the controllers")]),
        (Axis.For<Fraction>("charge", "%"), 0.8, [(TraceChannel.Charge, "charge")]),
        (Axis.For<Temperature>("temperature", "°C"), 1.1, [(TraceChannel.WindingTemperature, "windings"), (TraceChannel.CaseTemperature, "motor case"), (TraceChannel.ControllerTemperature, "controllers"), (TraceChannel.CellTemperature, "cells")]),
    ];

    /// <summary>Every picture of a computed ride: over distance, over time, and where its energy went. What the ride does not have is left out.</summary>
    /// <param name="board">The board.</param>
    /// <param name="ride">The ride, its moments kept.</param>
    /// <param name="route">The route it was ridden on; <c>null</c> for a level cruise.</param>
    public static IReadOnlyList<Chart> Draw(Board board, Ride ride, Route? route)
    {
        var trace = new RiddenTrace(ride, route);
        var (levels, says) = (LevelsOf(board, ride), SaysOf(ride));
        string Title(string what) => BoardPictures.Title(board, $"{what}, {ride.Road}");
        Chart?[] charts = [OverDistance(trace, Title("the ride over distance"), says, levels), OverTime(trace, Title("the ride over time"), says, levels), EnergyPicture.Draw(board, ride)];
        return [.. charts.OfType<Chart>()];
    }

    // Only limits that a body comes near: a line far above everything would press the rest together.
    static List<(TraceChannel Channel, Guide Level)> LevelsOf(Board board, Ride ride)
    {
        const double Near = 25;
        List<(TraceChannel, Guide)> levels = [];

        void Level(TraceChannel channel, Hottest hottest, Known<Temperature> limit, Phrase label)
        {
            if (limit.IsKnown && hottest.High.Kelvins > limit.Value.Kelvins - Near)
                levels.Add((channel, new Guide(limit.Value.Kelvins, label)));
        }

        var (motor, controller, cell) = (board.Parts.Motor, board.Parts.Controller, board.Parts.Cell);
        Level(TraceChannel.WindingTemperature, ride.Winding, motor.WindingLimit, new($"limit of the windings"));
        Level(TraceChannel.ControllerTemperature, ride.Controller, controller.TaperTemperatureStart, new($"controllers fade from here"));
        Level(TraceChannel.CellTemperature, ride.Cells, cell.DischargeTemperatureMax, new($"limit of the cells"));
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
    public static Chart? OverDistance(IRideTrace trace, string title, Phrase says = default, IReadOnlyList<(TraceChannel Channel, Guide Level)>? levels = null)
    {
        var metres = trace.Values(TraceChannel.Distance);
        var unit = metres.Length > 0 && metres.Span[^1] < ShortInMetres ? "m" : "km";
        return Over(trace, metres, Axis.For<Length>("distance", unit), "ride-distance", title, says, levels ?? []);
    }

    /// <summary>The ride over time.</summary>
    /// <inheritdoc cref="OverDistance"/>
    /// <returns>The chart, or <c>null</c> when the trace has no time or nothing to show over it.</returns>
    public static Chart? OverTime(IRideTrace trace, string title, Phrase says = default, IReadOnlyList<(TraceChannel Channel, Guide Level)>? levels = null)
    {
        var seconds = trace.Values(TraceChannel.Time);
        var unit = seconds.Length == 0 || seconds.Span[^1] <= ShortInSeconds ? "s" : seconds.Span[^1] <= LongInHours ? "min" : "h";
        return Over(trace, seconds, Axis.For<Duration>("time", unit), "ride-time", title, says, levels ?? []);
    }

    static Chart? Over(IRideTrace trace, ReadOnlyMemory<double> x, Axis across, string name, string title, Phrase says, IReadOnlyList<(TraceChannel Channel, Guide Level)> levels)
    {
        if (x.IsEmpty)
            return null;
        var panels = new List<Panel>();
        foreach (var (up, share, channels) in Rooms)
        {
            var series = new List<ChartSeries>();
            for (var i = 0; i < channels.Length; i++)
            {
                var (channel, called) = channels[i];
                if (trace.BandOf(channel) is { } band)
                    series.Add(new Band(called, x, band.Low, band.High) { Pen = i });
                else if (trace.Values(channel) is { IsEmpty: false } values)
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
