using Boardwright.Analyses;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rules;

namespace Boardwright.Searches;

/// <summary>Which parts go together: the examination's own rules, asked of a board that holds nothing but the parts in question. A pair
/// goes together when no rule that looks at it says <see cref="Level.Stop"/>.</summary>
/// <remarks>Every answer is kept, so that a rule is asked once for each group of parts and not once for each board.</remarks>
sealed class PartFits(CandidateParts offers, int drive, string? overlooked = null)
{
    /// <summary>What the search itself leaves out; rules have their own ids.</summary>
    public const string Stock = "search.stock", Unknown = "search.unknown", Dearer = "search.dearer", NoLayout = "fit.box_contents";

    static readonly Dictionary<string, Rule<BoardAnalysis>> Rules = Rulebook.All.ToDictionary(r => r.Id, StringComparer.Ordinal);

    // A rule is asked as soon as every place it looks at is filled. What depends on where the belt puts the motor is reckoned by Field,
    // from the same places.
    static readonly PartFit[] All =
    [
        new([Slot.Deck, Slot.Trucks], ["fit.hole_pattern_front", "fit.hole_pattern_rear"]),
        new([Slot.Deck, Slot.Trucks, Slot.Wheels], ["fit.wheel_bite"]),
        new([Slot.Trucks, Slot.Wheels], ["fit.bearing_bore"]),
        new([Slot.Trucks, Slot.Mount], ["fit.hanger_profile"]),
        new([Slot.Mount, Slot.Motor], ["fit.bolt_circle", "bolt.motor"]),
        new([Slot.Trucks, Slot.Mount, Slot.Motor], ["fit.motors_side_by_side"]),
        new([Slot.Motor, Slot.MotorPulley], ["fit.bore", "fit.key_width"]),
        new([Slot.Mount, Slot.Motor, Slot.MotorPulley, Slot.WheelPulley], ["fit.shaft_cover", "fit.pulley_seat"]),
        new([Slot.Wheels, Slot.WheelPulley], ["fit.core", "fit.ground_pulley"]),
        new([Slot.Trucks, Slot.Wheels, Slot.WheelPulley], ["fit.axle_length"]),
        new([Slot.MotorPulley, Slot.WheelPulley, Slot.Belt], ["fit.belt_profile", "fit.belt_width"]),
        new([Slot.Controller], ["current.outputs", "plug.mates"]),
        new([Slot.Controller, Slot.Cell, Slot.Pack], ["voltage.controller"]),
        new([Slot.Pack, Slot.Protection], ["pack.protection_series"]),
        new([Slot.Controller, Slot.Cell, Slot.Pack, Slot.Protection], ["limits.taper", "current.regen"]),
        new([Slot.Controller, Slot.Cell, Slot.Pack, Slot.Fuse], ["voltage.parts", "fuse.breaking"]),
        new([Slot.Remote], ["remote.failsafe"]),
        new([Slot.Controller, Slot.Remote], ["fit.remote_port"]),
        new([Slot.Cell, Slot.Pack, Slot.Charger], ["charge.voltage"]),
        new([Slot.Motor, Slot.Controller], ["plug.mates"]),
        new([Slot.Deck, Slot.Trucks, Slot.Wheels, Slot.Box], ["fit.ground_box"]),
        new([Slot.Deck, Slot.Box], ["fit.box_between_trucks"]),
    ];

    readonly Dictionary<long, string?>[] known = [.. All.Select(_ => new Dictionary<long, string?>())];
    readonly int[] pick = new int[CandidateParts.Slots];

    /// <summary>The joints that are decided when a place is filled after those before it.</summary>
    public static IReadOnlyList<int> DecidedAt(Slot slot) => [.. All.Index().Where(j => j.Item.Slots.Max() == slot).Select(j => j.Index)];

    /// <summary>The joint of exactly these places.</summary>
    public static int CountFor(params ReadOnlySpan<Slot> slots)
    {
        for (var i = 0; i < All.Length; i++)
        {
            if (slots.SequenceEqual(All[i].Slots))
                return i;
        }

        throw new ArgumentException("There is no joint of these places.", nameof(slots));
    }

    /// <summary>The rule that stops a joint.</summary>
    /// <returns>Its id, or <c>null</c> when the parts go together.</returns>
    public string? StoppedBy(int joint, ReadOnlySpan<int> chosen)
    {
        var slots = All[joint].Slots;
        var key = 0L;
        foreach (var slot in slots)
            key = key << 14 | (uint)chosen[(int)slot];
        if (known[joint].TryGetValue(key, out var answer))
            return answer;
        Array.Fill(pick, -1);
        pick[(int)Slot.Drive] = drive;
        foreach (var slot in slots)
            pick[(int)slot] = chosen[(int)slot];
        var board = offers.Partly(pick);
        if (board.Parts.Controller.IsChosen)
            board = Settings.WithWiring(board);
        var examination = Examination.Examine(board);
        foreach (var id in All[joint].Rules)
        {
            if (id != overlooked && Rules[id].Judge(examination).Any(f => f.Level == Level.Stop))
            {
                answer = id;
                break;
            }
        }

        return known[joint][key] = answer;
    }

    /// <summary>What a reason means, in a sentence.</summary>
    public static string Says(string reason) => reason switch
    {
        Stock => "There are enough of each part on the shelf.",
        Unknown => "Every value is known that range, climb, speed, mass and price rest on.",
        Dearer => "No other charger does the same for less money.",
        _ => Rules[reason].Claim,
    };

    sealed record PartFit(Slot[] Slots, string[] Rules);
}
