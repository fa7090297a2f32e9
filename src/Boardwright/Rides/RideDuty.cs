using Boardwright.Findings;
using Boardwright.Wiring;
using static System.Math;

namespace Boardwright.Rides;

/// <summary>What a ride asks of the wires.</summary>
/// <source cref="Sources.CircuitTheory"/>
public static class RideDuty
{
    /// <summary>Root of the mean square of a ride's currents, and their peaks, in each wire: a phase's amplitude over √2.</summary>
    public static HarnessDuty Compute(Ride ride)
    {
        ArgumentNullException.ThrowIfNull(ride);
        return new HarnessDuty(
            $"on the ride over {ride.Road}",
            new WireDuty(ride.RmsPack, ride.PeakPack > ride.PeakRegen ? ride.PeakPack : ride.PeakRegen),
            new WireDuty(ride.RmsPhase / Sqrt(2), ride.PeakPhase / Sqrt(2)));
    }
}
