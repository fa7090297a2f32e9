using System.Runtime.InteropServices;
using Boardwright.Logs;
using Boardwright.Rides;
using Boardwright.Road;

namespace Boardwright.Documents.Pictures;

/// <summary>A ride as a table of equally long columns, SI: one value for each row, not a number where there is none.</summary>
/// <param name="Columns">The channels that the ride has.</param>
/// <param name="Bands">Between which values a channel lies where it is not known to one.</param>
sealed record RideTrace(IReadOnlyDictionary<Channel, double[]> Columns, IReadOnlyDictionary<Channel, TraceBand> Bands)
{
    /// <summary>The trace of a computed ride.</summary>
    /// <remarks>Bands are taken at equal times: between the ride whose guessed capacities and conductances are at the cool ends of their
    /// spreads and the one at the hot ends.</remarks>
    /// <param name="ride">The ride, its moments kept.</param>
    /// <param name="route">The route; <c>null</c> on a level cruise, which has neither elevation nor grade to show.</param>
    public static RideTrace Create(Ride ride, Route? route)
    {
        var columns = new Dictionary<Channel, double[]>();
        var bands = new Dictionary<Channel, TraceBand>();
        Column(Channel.Time, m => m.State.Seconds);
        Column(Channel.Distance, m => m.State.Metres);
        Column(Channel.Speed, m => m.State.Speed);
        Column(Channel.WheelPower, m => m.Force * m.State.Speed);
        Column(Channel.PackPower, m => m.PackCurrent * m.BusVolts);
        Column(Channel.PackCurrent, m => m.PackCurrent);
        Column(Channel.PhaseCurrent, m => m.PhaseCurrent);
        Column(Channel.PackVoltage, m => m.BusVolts);
        Column(Channel.ChargeLeft, m => m.State.Charge);
        if (route is not null)
        {
            Column(Channel.Grade, m => m.Grade);
            Column(Channel.Elevation, m => route.ElevationAt(Length.FromMetres(m.State.Place)).Metres);
        }

        Body(Channel.MotorTemperature, ride.Winding, s => s.Winding);
        Body(Channel.CaseTemperature, ride.Case, s => s.Case);
        Body(Channel.ControllerTemperature, ride.Controller, s => s.Controller);
        Body(Channel.PackTemperature, ride.Cells, s => s.Cells);
        return new(columns, bands);

        void Column(Channel channel, Func<RideMoment, double> of)
        {
            if (ride.Trace.Count > 0)
                columns[channel] = [.. ride.Trace.Select(of)];
        }

        void Body(Channel channel, Hottest hottest, Func<RideState, double> of)
        {
            Column(channel, m => of(m.State));
            if (hottest.IsBand && ride.CoolTrace.Count > 0 && ride.HotTrace.Count > 0)
                bands[channel] = Between(ride, of);
        }
    }

    /// <summary>The last value of a channel, or <c>null</c> where the ride does not have it.</summary>
    public double? LastOf(Channel channel) => Columns.TryGetValue(channel, out var values) ? values[^1] : null;

    static TraceBand Between(Ride ride, Func<RideState, double> of)
    {
        var (low, high) = (new double[ride.Trace.Count], new double[ride.Trace.Count]);
        var (cool, hot) = (0, 0);
        for (var i = 0; i < low.Length; i++)
        {
            var (own, seconds) = (of(ride.Trace[i].State), ride.Trace[i].State.Seconds);
            low[i] = Math.Min(own, At(ride.CoolTrace, ref cool, seconds));
            high[i] = Math.Max(own, At(ride.HotTrace, ref hot, seconds));
        }

        return new(low, high);

        // Rides that fade differently end at different times; beyond its end a ride says no more than that.
        double At(IReadOnlyList<RideMoment> trace, ref int next, double seconds)
        {
            while (next < trace.Count && trace[next].State.Seconds < seconds)
                next++;
            if (next == trace.Count)
                return of(trace[^1].State);
            var (after, before) = (trace[next].State, trace[Math.Max(0, next - 1)].State);
            var part = after.Seconds > before.Seconds ? (seconds - before.Seconds) / (after.Seconds - before.Seconds) : 1;
            return of(before) + Math.Clamp(part, 0, 1) * (of(after) - of(before));
        }
    }
}

/// <summary>A low and a high value for each row of a trace.</summary>
/// <param name="Low">The low values, SI.</param>
/// <param name="High">The high values, SI.</param>
[StructLayout(LayoutKind.Auto)]
readonly record struct TraceBand(double[] Low, double[] High);
