using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Traction;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>The limits sheet: what to set in the controller, in the trade's terms, with the reason and the part that sets it.</summary>
static class LimitsSheet
{
    public static IReadOnlyList<Block> Compose(PaperContext gathering)
    {
        var (board, examination) = (gathering.Board, gathering.Examination);
        var controllers = PartSlot.ControllerCount(board.Parts);
        List<Block> blocks =
        [
            new ParagraphBlock(Invariant($"For {Count(controllers, "controller")}: {board.Parts.Controller.Title}. Pack currents are for the whole board; with several controllers each takes its share. Read every value back after setting it and write it down: what is not read back is not set.")),
            new CautionBlock("A limit set too high hurts a part or the rider without a sound. Set the lower of two values when in doubt, keep the wheels in the air while setting, and try braking and the loss of the remote's link again after every change."),
            new HeadingBlock("Currents"),
            Sheet(
            [
                Limit(gathering, "Phase current, driving, each motor (amplitude)", examination.PhaseLimits, CurrentRatings.Phase, 1),
                Limit(gathering, "Phase current, braking, each motor (amplitude)", examination.BrakePhaseLimits, CurrentRatings.Phase, 1),
                Limit(gathering, controllers > 1 ? "Pack current out, each controller" : "Pack current out", examination.PackLimits, CurrentRatings.Pack, controllers),
                Limit(gathering, controllers > 1 ? "Pack current in (braking), each controller" : "Pack current in (braking)", examination.RegenLimits, CurrentRatings.Regen, controllers),
            ]),
            new HeadingBlock("Voltages"),
            Sheet([.. Voltages(gathering)]),
            new HeadingBlock("Speeds"),
            Sheet([.. Speeds(gathering)]),
            new HeadingBlock("Temperatures"),
            Sheet([.. Temperatures(gathering)]),
            new HeadingBlock("Motor and remote"),
            Sheet([.. Motor(gathering)]),
            new SignaturesBlock(["Set by", "Read back by", "Date", "Board no."]),
        ];
        return blocks;
    }

    static TableBlock Sheet(IReadOnlyList<IReadOnlyList<string?>> rows) =>
        new([new("What to set", 4), new("To", 2.6), new("Why, and what sets it", 6.4), new("Read back", 2)], rows);

    static IReadOnlyList<string?> Limit(PaperContext gathering, string what, Answer<CurrentLimits> answer,
        Func<Needs, Board, IEnumerable<CurrentRating>> ratings, int controllers)
    {
        gathering.Format(answer, _ => null);
        if (!answer.IsKnown)
            return [what, null, "not known: " + JoinWords(answer.Missing), null];
        // What is to be set is what every part bears, whatever the board file has.
        var limits = answer.Value;
        var rated = ratings(new Needs(), gathering.Board).Select(r => r.Rated);
        var all = limits.All.Concat(rated).DistinctBy(l => l.Key, StringComparer.Ordinal).OrderBy(l => l.Current).ToArray();
        // The builder's own wish may be stricter than any part; then the next says how much the parts would bear.
        var (least, next) = (all[0], all.Skip(1).FirstOrDefault());
        var room = next.Says is null ? "" : Invariant($"; next, {next.Says}, {next.Current.Amperes:0.#} A");
        var beyond = limits.Enforced.Current <= least.Current ? ""
            : Invariant($" The board file has {limits.Enforced.Says}, {limits.Enforced.Current.Amperes:0.#} A ({limits.Enforced.Key}): every figure is computed with that.");
        return [what, Invariant($"{(least.Current / controllers).Amperes:0.#} A"), Invariant($"The least is {least.Says}, {least.Current.Amperes:0.#} A ({least.Key}){room}.{beyond}"), null];
    }

    static IEnumerable<IReadOnlyList<string?>> Voltages(PaperContext gathering)
    {
        var (limits, cell) = (gathering.Board.Limits, gathering.Parts.Cell);
        var series = gathering.Parts.Pack.Series;
        string? Whole(Known<Voltage> each) => gathering.Format(each, v => $"{v.Volts:0.00} V a cell{(series.IsKnown ? Invariant($", {v.Volts * series.Value:0.0} V pack") : "")}");
        yield return ["Power begins to fade at (loaded)", Whole(limits.TaperStart), "So that the end of the pack is felt before it comes; the builder's own choice (limits.taper_start).", null];
        yield return ["Power is cut at (loaded)", Whole(limits.TaperEnd),
            Invariant($"Above the protection's own cut{(gathering.Parts.Pack.Protection.VoltageCut.IsKnown ? Invariant($" at {gathering.Parts.Pack.Protection.VoltageCut.Value.Volts:0.00} V a cell (pack.protection.voltage_cut)") : "")}, which would stop the board, brake and all."),
                null];
        yield return ["Braking current fades out at", Whole(cell.VoltageFull), "The cells' full voltage (cell.voltage_full): a full pack takes nothing back.", null];
        yield return ["Least supply voltage", Whole(cell.VoltageEmpty), "The cells' least voltage (cell.voltage_empty).", null];
        if (gathering.Parts.Controller.VoltageMax.IsKnown)
            yield return ["Greatest supply voltage", Invariant($"{gathering.Parts.Controller.VoltageMax.Value.Volts:0.#} V"), "What the controller bears (controller.voltage_max); do not raise it.", null];
    }

    static IEnumerable<IReadOnlyList<string?>> Speeds(PaperContext gathering)
    {
        var (brief, drive, controller) = (gathering.Board.Brief, gathering.Examination.Wheels, gathering.Parts.Controller);
        if (brief.SpeedLimit.IsKnown)
        {
            var limit = brief.SpeedLimit.Value;
            var set = gathering.Format(drive, d =>
            {
                var motor = AngularSpeed.FromRadiansPerSecond(d.MotorSpeed(limit.MetresPerSecond));
                return $"{Math.Floor(motor.Rpm):0} rpm of the motor, {Math.Floor(motor.Rpm) * d.PolePairs:0} rpm electrical";
            });
            yield return ["Greatest speed", set, gathering.Say($"{limit:0.# km/h} is what the builder found in the local rules (brief.speed_limit); ask the authority of the place what holds there."), null];
        }
        else
            yield return ["Greatest speed", null, "The board file names no limit (brief.speed_limit): find out what holds where it will be ridden.", null];
        if (controller.ElectricalSpeedLimit.IsKnown)
            yield return ["Electrical speed, never above", Invariant($"{controller.ElectricalSpeedLimit.Value.Rpm:0} rpm electrical"), "What the controller follows (controller.electrical_speed_limit).", null];
    }

    static IEnumerable<IReadOnlyList<string?>> Temperatures(PaperContext gathering)
    {
        var (controller, motor, cell) = (gathering.Parts.Controller, gathering.Parts.Motor, gathering.Parts.Cell);
        var fade = controller.TaperTemperatureStart.IsKnown && controller.TaperTemperatureEnd.IsKnown
            ? gathering.Say($"{controller.TaperTemperatureStart.Value:0 °C} to {controller.TaperTemperatureEnd.Value:0 °C}") : null;
        yield return ["Controller: power fades over", fade, "The controller's own sheet (controller.taper_temperature_start, taper_temperature_end).", null];
        if (motor.WindingLimit.IsKnown)
            yield return ["Motor: power fades over", gathering.Say($"{Temperature.FromCelsius(motor.WindingLimit.Value.Celsius - 20):0 °C} to {motor.WindingLimit.Value:0 °C}"), gathering.Say($"The winding's limit (motor.winding_limit), beginning 20 K before it (common practice); needs a feeler in the winding.{(motor.MagnetLimit.IsKnown ? gathering.Say($" Magnets bear {motor.MagnetLimit.Value:0 °C} (motor.magnet_limit).") : "")}"),
                null];
        else
            yield return ["Motor: power fades over", null, "Not known (motor.winding_limit).", null];
        yield return ["No braking current into cells below", gathering.Format(cell.ChargeTemperatureMin, t => $"{t:0 °C}"), "Braking charges the cells (cell.charge_temperature_min). Where the controller cannot do it, the rider must know.", null];
    }

    static IEnumerable<IReadOnlyList<string?>> Motor(PaperContext gathering)
    {
        var (motor, remote) = (gathering.Parts.Motor, gathering.Parts.Remote);
        yield return ["Pole pairs", gathering.Format(motor.PolePairs, p => $"{p}"), "For speed and position (motor.pole_pairs).", null];
        yield return ["Rotor position from",
            gathering.Format(motor.Sensor, s => s switch { Sensor.Hall => $"Hall switches", Sensor.Encoder => $"an encoder", _ => (FormattableString)$"the current alone" }), "What the motor has (motor.sensor). Let the controller measure resistance, inductance and flux itself, then compare with the bench list.",
                null];
        yield return ["Turning sense", null, "Forward on the remote is forward on the road; try with the wheels in the air.", null];
        yield return ["When the remote is lost",
            gathering.Format(remote.Failsafe, f => f switch { Failsafe.Coast => $"coast", Failsafe.Brake => $"brake softly", _ => (FormattableString)$"NOTHING: do not ride" }),
                "What the receiver does (remote.failsafe); the controller must see a lost signal as no command.", null];
        yield return ["Throttle and brake", "begin softly", "Write down dead zone and ramps that were found good.", null];
    }
}
