using Boardwright.Builds;
using Boardwright.Files.Logs;
using Boardwright.Findings;
using Boardwright.Logs;
using Boardwright.Shops;
using Boardwright.Spreads;

namespace Boardwright.App.ShopWork;

/// <summary>A ride of a built board, with the design that the board was built from.</summary>
/// <param name="Board">Serial number of the board.</param>
/// <param name="Ride">Name of the ride.</param>
/// <param name="Design">The design, with the ride's own load.</param>
/// <param name="Log">The ride.</param>
sealed record ShopRide(string Board, string Ride, Parts.Board Design, RideLog Log);

/// <summary>All rides of all built boards of a shop, and what they say of the model.</summary>
static class ShopRides
{
    /// <summary>Reads every ride.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="passedOver">Told which rides could not be read, and why.</param>
    /// <param name="cancellation">Stops it between two rides.</param>
    public static async IAsyncEnumerable<ShopRide> ReadAsync(
        Shop shop, Action<string> passedOver, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        foreach (var (place, opened) in await BuiltInShop.ListAsync(shop, cancellation))
        {
            if (opened.Loaded.Built is not { Rides.Count: > 0 } built)
                continue;
            Parts.Board? design = null;
            try
            {
                design = (await place.DesignAsync(built, cancellation)).Loaded.Board;
            }
            catch (ShopException trouble)
            {
                passedOver($"{place.Name}: {trouble.Says}");
            }

            if (design is null)
                continue;
            foreach (var ride in built.Rides)
            {
                if (!ride.File.IsKnown || await place.FileAsync(ride.File.Value, cancellation) is not { } bytes)
                {
                    passedOver($"{place.Name}: the log of a ride is not there.");
                    continue;
                }

                var reading = RideLogFile.Read(bytes, ride.File.Value, LoggerFile.WishesOf(ride.Columns));
                if (reading.Log is not { } log)
                {
                    passedOver($"{place.Name}, {ride.File.Value}: {reading.Complaints[0].Says}");
                    continue;
                }

                yield return new(place.Name, Path.GetFileNameWithoutExtension(ride.File.Value),
                    ride.Load.IsKnown ? Carrying(design, ride.Load.Value) : design, log);
            }
        }
    }

    /// <summary>Holds a ride against the model.</summary>
    /// <param name="ride">The ride.</param>
    /// <param name="passedOver">Told why it could not be held.</param>
    /// <param name="cancellation">Stops it.</param>
    public static IReadOnlyList<RideEvidence> CompareRide(ShopRide ride, Action<string> passedOver, CancellationToken cancellation)
    {
        // Where nobody wrote down heights the road is taken as level, which the model cannot be blamed for; so such a ride says nothing.
        var answer = RideComparison.Compare(ride.Design, ride.Log, cancellation: cancellation);
        if (answer.IsKnown)
            return [.. answer.Value.Differences.Select(d => new RideEvidence(ride.Board, ride.Ride, d))];
        passedOver($"{ride.Board}, {ride.Ride}: cannot be held against the model without {string.Join(", ", answer.Missing)}.");
        return [];
    }

    static Parts.Board Carrying(Parts.Board design, Mass load)
    {
        var gear = design.Brief.GearMass.Or(default);
        return design with { Brief = design.Brief with { RiderMass = design.Brief.RiderMass.With(load - gear) } };
    }
}
