using Boardwright.Rides;
using Boardwright.Road;

namespace Boardwright.Documents.Pictures;

/// <summary>The trace of a computed ride as the columns of a picture.</summary>
/// <remarks>Bands are taken at equal times: between the ride whose guessed capacities and conductances are at the cool ends of their spreads and the one at the hot ends.</remarks>
/// <param name="ride">The ride, its moments kept.</param>
/// <param name="route">The route; <c>null</c> on a level cruise, which has neither elevation nor grade to show.</param>
sealed class RiddenTrace(Ride ride, Route? route) : IRideTrace
{
    public ReadOnlyMemory<double> Values(TraceChannel channel) => channel switch
    {
        TraceChannel.Time => Column(m => m.State.Seconds),
        TraceChannel.Distance => Column(m => m.State.Metres),
        TraceChannel.Speed => Column(m => m.State.Speed),
        TraceChannel.Grade => route is null ? default : Column(m => m.Grade),
        TraceChannel.Elevation => route is null ? default : Column(m => route.ElevationAt(Length.FromMetres(m.State.Place)).Metres),
        TraceChannel.WheelPower => Column(m => m.Force * m.State.Speed),
        TraceChannel.PackPower => Column(m => m.PackCurrent * m.BusVolts),
        TraceChannel.PackCurrent => Column(m => m.PackCurrent),
        TraceChannel.PhaseCurrent => Column(m => m.PhaseCurrent),
        TraceChannel.PackVoltage => Column(m => m.BusVolts),
        TraceChannel.Charge => Column(m => m.State.Charge),
        _ => Body(channel) is { } body ? Column(m => body.Of(m.State)) : default,
    };

    public TraceBand? BandOf(TraceChannel channel)
    {
        if (Body(channel) is not { Hottest.IsBand: true } body || ride.CoolTrace.Count == 0 || ride.HotTrace.Count == 0)
            return null;
        var (low, high) = (new double[ride.Trace.Count], new double[ride.Trace.Count]);
        var (cool, hot) = (0, 0);
        for (var i = 0; i < low.Length; i++)
        {
            var (own, seconds) = (body.Of(ride.Trace[i].State), ride.Trace[i].State.Seconds);
            low[i] = Math.Min(own, At(ride.CoolTrace, ref cool, seconds));
            high[i] = Math.Max(own, At(ride.HotTrace, ref hot, seconds));
        }

        return new TraceBand(low, high);

        // Rides that fade differently end at different times; beyond its end a ride says no more than that.
        double At(IReadOnlyList<RideMoment> trace, ref int next, double seconds)
        {
            while (next < trace.Count && trace[next].State.Seconds < seconds)
                next++;
            if (next == trace.Count)
                return body.Of(trace[^1].State);
            var (after, before) = (trace[next].State, trace[Math.Max(0, next - 1)].State);
            var part = after.Seconds > before.Seconds ? (seconds - before.Seconds) / (after.Seconds - before.Seconds) : 1;
            return body.Of(before) + Math.Clamp(part, 0, 1) * (body.Of(after) - body.Of(before));
        }
    }

    (Hottest Hottest, Func<RideState, double> Of)? Body(TraceChannel channel) => channel switch
    {
        TraceChannel.WindingTemperature => (ride.Winding, s => s.Winding),
        TraceChannel.CaseTemperature => (ride.Case, s => s.Case),
        TraceChannel.ControllerTemperature => (ride.Controller, s => s.Controller),
        TraceChannel.CellTemperature => (ride.Cells, s => s.Cells),
        _ => null,
    };

    double[] Column(Func<RideMoment, double> of) => [.. ride.Trace.Select(of)];
}
