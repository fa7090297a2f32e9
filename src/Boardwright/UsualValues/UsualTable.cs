using System.Text.RegularExpressions;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.UsualValues;

/// <summary>Every usual value, and a board that has them.</summary>
public static partial class UsualTable
{
    /// <summary>Every row.</summary>
    public static IReadOnlyList<UsualValue> All { get; } =
        [.. RoadValues.All, .. MotorValues.All, .. ElectricValues.All, .. BuildValues.All];

    /// <summary>What has no usual value, and why.</summary>
    public static IReadOnlyList<(string What, string Why)> Never { get; } =
    [
        ("every dimension that parts meet at: shaft, plate, slot, standoff, cover, pulley length, bore, hanger, axle, overhang, seat, bolt circle, thread depth, key, inside of the box, outside of the pack, fittings, and the names of profiles and patterns",
            "they stray by 1 to 5 mm where 1 mm decides; a wrong one costs the part, a bolt that is 2 mm too long costs the winding"),
        ("front_truck and rear_truck: lean_stop, pivot_angle, lean_stiffness, kingpin; deck.wheelbase", "wheel bite and wobble; trucks differ by a factor of two"),
        ("fuse: rating, voltage, breaking_current, melting_i2t; plugs: currents and voltage; wiring: gauge and fuse", "they are the protection; a guess here is a fire later"),
        ("cell: discharge_current, charge_current, voltage_full, voltage_empty", "the same wrap is sold as 10 A and 35 A; full is 3.65, 4.1, 4.2 or 4.35 V"),
        ("pack.protection: series, currents, regen_through, voltage_cut", "the electric brake depends on them"),
        ("charger: voltage, current, plug", "overcharge"),
        ("controller: voltage_min, voltage_max, currents, electrical_speed_limit", "destroyed parts, and a brake that lets go"),
        ("limits and every setting", "the builder decides them"),
        ("motor: winding_limit, magnet_limit", "a limit that nobody states can warn, and never pass"),
        ("remote.failsafe", "it must be tried on the stand"),
        ("brief: rider_mass, speed_limit; prices, certificates, ingress protection, cycle life", "facts of others"),
        ("series, parallel, teeth, number of motors", "counted in a second"),
    ];

    /// <summary>A board with a usual value wherever its maker states none and one can be taken. Each follows from what is stated alone, so
    /// that no estimate rests on an estimate. A board that has them already stays as it is.</summary>
    /// <param name="stated">The board, its entries named.</param>
    public static Board Complete(Board stated)
    {
        var filled = stated;
        foreach (var row in All)
            filled = row.AddTo(stated, filled);
        return filled;
    }

    /// <summary>The usual values on a board, in the order of the file.</summary>
    public static IReadOnlyList<TakenValue> ListTaken(Board completed)
    {
        List<TakenValue> taken = [];
        Collect(completed);
        return taken;

        void Collect(Sheet sheet)
        {
            foreach (var entry in Entry.ListEntries(sheet.GetType()))
            {
                switch (entry.Read(sheet))
                {
                    case Sheet inner:
                        Collect(inner);
                        break;
                    case IEnumerable<Sheet> list:
                        foreach (var item in list)
                            Collect(item);
                        break;
                    case IKnown { IsKnown: true, From: Origin.Usual } known when Find(known.Key) is { } row:
                        taken.Add(new(known.Key, ValueText.Rounded(entry, known), Exp(Relative(known)), row));
                        break;
                }
            }
        }
    }

    /// <summary>The row for an entry.</summary>
    /// <returns>The row, or <c>null</c> where no usual value is ever taken for it.</returns>
    public static UsualValue? Find(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        var plain = Numbers().Replace(key, "");
        return All.FirstOrDefault(row => row.Key == plain);
    }

    static double Relative(IKnown known) =>
        known.Spread is not { } spread ? 0
        : known.Content is not IQuantity quantity ? spread
        : quantity.Si == 0 ? 0 : spread / Abs(quantity.Si);

    [GeneratedRegex(@"\[\d+\]", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbers();
}
