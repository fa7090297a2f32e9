using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Wiring;

namespace Boardwright.Traction;

/// <summary>Something that holds a current of the board to a value.</summary>
/// <param name="Key">Its entry.</param>
/// <param name="Says">What it is, in a sentence.</param>
/// <param name="Current">The limit for the whole board (for one motor, when it is a phase current).</param>
public readonly record struct CurrentLimit(string Key, string Says, Current Current)
{
    /// <summary>Whether the builder sets it in the controller, rather than a device holding it by itself.</summary>
    public bool IsSet => Key.StartsWith("limits.", StringComparison.Ordinal);

    /// <summary>Whether the protection lets more flow until it opens.</summary>
    public bool IsTrip => Current.Si > 0 && Key.StartsWith("pack.protection.", StringComparison.Ordinal);
}

/// <summary>Everything that holds one current of the board, the least first: what is set in the controllers, the controllers' own maximum,
/// and the current at which the protection opens.</summary>
/// <remarks>What cells, plugs, fuse and motors are rated for holds no current: see <see cref="CurrentRatings"/>. A protection may pass more
/// than its rating for a moment; how long is on no sheet, so that it is taken to open at its rating.</remarks>
/// <param name="All">The limits that are known, the least first.</param>
public sealed record CurrentLimits(IReadOnlyList<CurrentLimit> All)
{
    /// <summary>The least of them, which is met first.</summary>
    public CurrentLimit Enforced => All[0];

    /// <summary>What flows until the protection opens, which is what the parts on the way have to bear: the least of the others, or the
    /// protection's own where nothing else is known.</summary>
    public CurrentLimit BeforeTrip => All.FirstOrDefault(l => !l.IsTrip) is { Key: not null } pushed ? pushed : Enforced;

    /// <summary>What the builder has set; <c>null</c> where nothing is.</summary>
    public CurrentLimit? Set => All.Where(l => l.IsSet).Cast<CurrentLimit?>().FirstOrDefault();

    /// <summary>Phase current of one motor when driving: the builder's and the controller's.</summary>
    public static Answer<CurrentLimits> Phase(Board board) => FromList("limits.phase_current", needs =>
    [
        Limit(needs, board.Limits.PhaseCurrent, "the phase current that is set"),
        Limit(needs, board.Parts.Controller.PhaseCurrentPeak, "the controller's peak phase current"),
    ], board.Limits.PhaseCurrent);

    /// <summary>Phase current of one motor when braking: the builder's and the controller's.</summary>
    public static Answer<CurrentLimits> BrakePhase(Board board) => FromList("", needs =>
    [
        Limit(needs, board.Limits.BrakePhaseCurrent, "the braking phase current that is set"),
        Limit(needs, board.Parts.Controller.PhaseCurrentPeak, "the controller's peak phase current"),
    ], board.Limits.BrakePhaseCurrent);

    /// <summary>Current out of the pack: the builder's, the protection's and the controllers'.</summary>
    public static Answer<CurrentLimits> Pack(Board board) => FromList("limits.pack_current", needs =>
    [
        Limit(needs, board.Limits.PackCurrent, "the pack current that is set"),
        Limit(needs, board.Parts.Pack.Protection.DischargeCurrent, "the protection's discharge current"),
        Limit(needs, board.Parts.Controller.PackCurrent, "the controllers' supply current", PartSlot.ControllerCount(needs, board.Parts)),
    ], board.Limits.PackCurrent);

    /// <summary>Current into the pack: the builder's, the protection's and the controllers'.</summary>
    public static Answer<CurrentLimits> Regen(Board board) => FromList("limits.regen_current", needs =>
    [
        Limit(needs, board.Limits.RegenCurrent, "the braking pack current that is set"),
        Back(needs, board.Parts.Pack.Protection),
        Limit(needs, board.Parts.Controller.RegenCurrent, "the controllers' braking current", PartSlot.ControllerCount(needs, board.Parts)),
    ], board.Limits.RegenCurrent);

    /// <summary>Power at the controllers at the pack current that the board holds, at half charge: I (E − I R), or the most the pack can
    /// give when that comes sooner.</summary>
    public static Answer<Power> FeedPowerOf(Answer<CurrentLimits> limits, Answer<PackModel> pack, Answer<PackWiring> wiring) =>
        Answer<Power>.Ask("", needs =>
    {
        var (limit, model, wires) = (needs.Read(limits), needs.Read(pack), needs.Read(wiring));
        if (needs.Unmet)
            return default;
        var (rest, ohms) = (model.RestVoltsAt(0.5), model.OhmsAt(0.5) + wires.Resistance.Ohms);
        var amperes = Math.Min(limit.Enforced.Current.Amperes, rest / (2 * ohms));
        return Power.FromWatts(amperes * (rest - amperes * ohms));
    });

    /// <summary>Shaft torque of one motor at the phase current that the board holds.</summary>
    public static Answer<Torque> PeakTorqueOf(Answer<MotorConstantsOfBoard> constants, Answer<CurrentLimits> limits) =>
        Answer<Torque>.Ask("", needs =>
    {
        var (motor, limit) = (needs.Read(constants), needs.Read(limits));
        return needs.Unmet ? default : new MotorConstants(motor.Kv, 1).Torque(limit.Enforced.Current);
    });

    /// <summary>Voltage lost between pack and controllers at the pack current that the board holds.</summary>
    public static Answer<Voltage> DropOf(Answer<CurrentLimits> limits, Answer<PackWiring> wiring) => Answer<Voltage>.Ask("", needs =>
    {
        var (limit, wires) = (needs.Read(limits), needs.Read(wiring));
        return needs.Unmet ? default : Voltage.FromVolts(limit.Enforced.Current.Amperes * wires.Resistance.Ohms);
    });

    /// <summary>What the protection lets back into the pack.</summary>
    internal static CurrentLimit? Back(Needs needs, Protection protection)
    {
        if (protection.RegenThrough is not { IsKnown: true, Value: false } shut)
            return Limit(needs, protection.ChargeCurrent, "the protection's charge current");
        needs.Read(shut);
        return new CurrentLimit(shut.Key, "the protection, which lets no braking current through", default);
    }

    internal static CurrentLimit? Limit(Needs needs, Known<Current> current, string says, int times = 1) =>
        current.IsKnown && times > 0 ? new(current.Key, says, needs.Read(current) * times) : null;

    static Answer<CurrentLimits> FromList(string id, Func<Needs, IReadOnlyList<CurrentLimit?>> list, Known<Current> otherwise) =>
        Answer<CurrentLimits>.Ask(id, needs =>
        {
            var known = list(needs).OfType<CurrentLimit>().OrderBy(l => l.Current).ToList();
            if (known.Count > 0)
                return new CurrentLimits(known);
            needs.Read(otherwise);
            return null;
        });
}
