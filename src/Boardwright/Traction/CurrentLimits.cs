using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Wiring;

namespace Boardwright.Traction;

/// <summary>One part or setting that limits a current.</summary>
/// <param name="Key">Its entry.</param>
/// <param name="Says">What it is, in a sentence.</param>
/// <param name="Current">The limit for the whole board (for one motor, when it is a phase current).</param>
public readonly record struct CurrentLimit(string Key, string Says, Current Current);

/// <summary>Everything that limits one current of the board, weakest first.</summary>
/// <param name="All">The limits that are known, the least first.</param>
public sealed record CurrentLimits(IReadOnlyList<CurrentLimit> All)
{
    /// <summary>The least of them.</summary>
    public CurrentLimit Weakest => All[0];

    /// <summary>Phase current of one motor when driving: the builder's, the motor's, the controller's.</summary>
    public static Answer<CurrentLimits> Phase(Board board) => FromList("limits.phase_current", needs =>
    [
        Limit(needs, board.Limits.PhaseCurrent, "the phase current that is set"),
        Limit(needs, board.Parts.Motor.PhaseCurrentPeak, "the motor's peak phase current"),
        Limit(needs, board.Parts.Controller.PhaseCurrentPeak, "the controller's peak phase current"),
    ], board.Limits.PhaseCurrent);

    /// <summary>Phase current of one motor when braking: the builder's, the motor's, the controller's.</summary>
    public static Answer<CurrentLimits> BrakePhase(Board board) => FromList("", needs =>
    [
        Limit(needs, board.Limits.BrakePhaseCurrent, "the braking phase current that is set"),
        Limit(needs, board.Parts.Motor.PhaseCurrentPeak, "the motor's peak phase current"),
        Limit(needs, board.Parts.Controller.PhaseCurrentPeak, "the controller's peak phase current"),
    ], board.Limits.BrakePhaseCurrent);

    /// <summary>Current out of the pack: the builder's, and what cells, protection, plug, fuse and controllers carry for ever.</summary>
    public static Answer<CurrentLimits> Pack(Board board) => FromList("limits.pack_current", needs =>
    [
        Limit(needs, board.Limits.PackCurrent, "the pack current that is set"),
        .. PackParts(needs, board),
    ], board.Limits.PackCurrent);

    /// <summary>What the parts between cells and controller carry for ever.</summary>
    public static IReadOnlyList<CurrentLimit?> PackParts(Needs needs, Board board)
    {
        var parts = board.Parts;
        return
        [
            Limit(needs, parts.Cell.DischargeCurrent, "the cells' discharge current", parts.Pack.Parallel.Or(0)),
            Limit(needs, parts.Pack.Protection.DischargeCurrent, "the protection's discharge current"),
            .. Carriers(needs, board),
            Limit(needs, parts.Controller.PackCurrent, "the controllers' supply current", PartSlot.ControllerCount(parts)),
        ];
    }

    /// <summary>What plug and fuse carry for ever, either way.</summary>
    public static IReadOnlyList<CurrentLimit?> Carriers(Needs needs, Board board) =>
    [
        board.Parts.Pack.Plug.IsKnown ? Limit(needs, board.PlugCalled(board.Parts.Pack.Plug.Value).CurrentContinuous, "the pack plug's continuous current") : null,
        Limit(needs, board.Parts.Fuse.Rating, "the fuse's rating"),
    ];

    /// <summary>Current into the pack: the builder's, and what cells, protection and controllers take.</summary>
    public static Answer<CurrentLimits> Regen(Board board) => FromList("limits.regen_current", needs =>
    {
        var parts = board.Parts;
        var cell = parts.Cell;
        var around = board.Brief.Temperature;
        var forbidding = !around.IsKnown ? default
            : cell.ChargeTemperatureMin.IsKnown && around.Value < cell.ChargeTemperatureMin.Value ? cell.ChargeTemperatureMin
            : cell.ChargeTemperatureMax.IsKnown && around.Value > cell.ChargeTemperatureMax.Value ? cell.ChargeTemperatureMax
            : default;
        return
        [
            Limit(needs, board.Limits.RegenCurrent, "the braking pack current that is set"),
            forbidding.IsKnown ? new CurrentLimit(forbidding.Key, "the cells, which may not be charged at the brief's temperature", default)
                : Limit(needs, cell.ChargeCurrent, "the cells' charge current", parts.Pack.Parallel.Or(0)),
            parts.Pack.Protection.RegenThrough is { IsKnown: true, Value: false }
                ? new CurrentLimit(parts.Pack.Protection.RegenThrough.Key, "the protection, which lets no braking current through", default)
                : Limit(needs, parts.Pack.Protection.ChargeCurrent, "the protection's charge current"),
            Limit(needs, parts.Controller.RegenCurrent, "the controllers' braking current", PartSlot.ControllerCount(parts)),
        ];
    }, board.Limits.RegenCurrent);

    /// <summary>Power at the controllers at the least of the pack current limits, at half charge: I (E − I R), or the most the pack can
    /// give when that comes sooner.</summary>
    public static Answer<Power> FeedPowerOf(Answer<CurrentLimits> limits, Answer<PackModel> pack, Answer<PackWiring> wiring) =>
        Answer<Power>.Ask("", needs =>
    {
        var (limit, model, wires) = (needs.Read(limits), needs.Read(pack), needs.Read(wiring));
        if (needs.Unmet)
            return default;
        var (rest, ohms) = (model.RestVoltsAt(0.5), model.OhmsAt(0.5) + wires.Resistance.Ohms);
        var amperes = Math.Min(limit.Weakest.Current.Amperes, rest / (2 * ohms));
        return Power.FromWatts(amperes * (rest - amperes * ohms));
    });

    /// <summary>Shaft torque of one motor at the phase current limit.</summary>
    public static Answer<Torque> PeakTorqueOf(Answer<MotorConstantsOfBoard> constants, Answer<CurrentLimits> limits) =>
        Answer<Torque>.Ask("", needs =>
    {
        var (motor, limit) = (needs.Read(constants), needs.Read(limits));
        return needs.Unmet ? default : new MotorConstants(motor.Kv, 1).Torque(limit.Weakest.Current);
    });

    /// <summary>Voltage lost between pack and controllers at the pack current limit.</summary>
    public static Answer<Voltage> DropOf(Answer<CurrentLimits> limits, Answer<PackWiring> wiring) => Answer<Voltage>.Ask("", needs =>
    {
        var (limit, wires) = (needs.Read(limits), needs.Read(wiring));
        return needs.Unmet ? default : Voltage.FromVolts(limit.Weakest.Current.Amperes * wires.Resistance.Ohms);
    });

    static CurrentLimit? Limit(Needs needs, Known<Current> current, string says, int times = 1) =>
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
