using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Units;

namespace Boardwright.Validation.Traction;

/// <summary>A whole board as the trade advertises it, against what its own parts can do.</summary>
public sealed class AdvertisedBoardCase : Case
{
    static readonly Source Trade = Sources.CommonPractice;

    /// <inheritdoc/>
    public override string Room => "Traction";

    /// <inheritdoc/>
    public override string Topic => "Advertised board";

    /// <inheritdoc/>
    public override string About =>
        "Figures under which boards of this make-up are sold: two belts, 15:38 teeth, motors of 190 rpm/V and 3150 W each, 107 mm wheels, 12S4P of 3.0 Ah cells, a 3 A charger. " +
        "The parts' other values are honest guesses of the usual size, written in the case. Nobody measured this board; the page only shows whether the program and the trade's claims can both be right, and where they cannot.";

    /// <summary>The board: a pack of 3.0 Ah cells at 3.7 V nominal, a rider of 80 kg standing upright on smooth asphalt.</summary>
    public static string BoardText => """
        boardwright: 1
        name: As advertised
        brief:
          rider_mass: 80 kg
          stance: upright
          cruise_speed: 35 km/h
          range_wanted: 30 mi
          climb_wanted: 10 %
          climb_speed: 12 km/h
          temperature: 20 °C
          altitude: 0 m
          surface: smooth asphalt
          reserve: 0 %
        parts:
          deck: { mass: 3.2 kg, wheelbase: 760 mm }
          front_truck: { mass: 0.75 kg }
          rear_truck: { mass: 0.75 kg }
          wheels: { mass: 0.32 kg, diameter: 107 mm, rolling_resistance: 0.014 }
          drive: { kind: belt, driven: rear, motors: 2, placement: behind }
          mount: { mass: 0.15 kg }
          motor: { mass: 0.85 kg, kv: 190 rpm/V, pole_pairs: 7, phase_resistance: 22 mohm, phase_inductance: 20 uH, no_load_current: 1.6 A, no_load_voltage: 24 V, rotor_inertia: 0.0002 kg m2, phase_current_peak: 80 A, power_rating: 3150 W }
          motor_pulley: { mass: 40 g, profile: HTD 5M, teeth: 15 }
          wheel_pulley: { mass: 90 g, profile: HTD 5M, teeth: 38 }
          belt: { profile: HTD 5M, length: 275 mm, width: 15 mm }
          controller: { mass: 0.35 kg, motors: 2, phase_current_peak: 80 A, pack_current: 60 A, bridge_resistance: 1.5 mohm, switching_time: 120 ns, switching_frequency: 20 kHz, idle_power: 3 W }
          cell: { mass: 47 g, capacity: 3.0 Ah, voltage_nominal: 3.7 V, voltage_full: 4.2 V, voltage_empty: 2.8 V, rest_voltage: { 0 %: 3.0 V, 10 %: 3.35 V, 30 %: 3.58 V, 50 %: 3.70 V, 70 %: 3.88 V, 90 %: 4.07 V, 100 %: 4.19 V }, resistance: 30 mohm, discharge_current: 15 A, charge_current: 3 A }
          pack: { series: 12, parallel: 4, mass_extra: 0.4 kg, links: 4 mohm }
          charger: { voltage: 50.4 V, current: 3 A, end_current: 0.3 A }
        wiring:
          - { from: pack, to: controller, gauge: AWG 10, length: 0.25 m }
        limits: { phase_current: 60 A, pack_current: 50 A, taper_end: 3.0 V }
        """;

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare()
    {
        var board = BoardFile.ReadText(BoardText, "advertised.board.yaml").Board ?? throw new InvalidOperationException("The case's own board does not read.");
        var figures = Examination.FiguresOf(board).ToDictionary(f => f.Kind.Id, f => f.Value, StringComparer.Ordinal);
        double Figure(string id) => figures[id] ?? throw new InvalidOperationException($"'{id}' has no value.");

        yield return new("Energy of the pack", "12S4P of 3.0 Ah, 3.7 V nominal", "532", "Wh", Figure("pack.energy"), Trade, "", EvidenceLevel.CommonPractice) { Allowed = Allowance.Create(1, "sold as 532 Wh, cut off and not rounded") };
        yield return new("Shaft to axle", "15 and 38 teeth, 275 mm belt (55 teeth)", "68.80", "mm", Figure("drive.centre_distance"), Trade, "", EvidenceLevel.CommonPractice);
        yield return new("Top speed, full charge", "190 rpm/V, 15:38 teeth, 107 mm wheels, 12S, rider of 80 kg", "38", "mph", Figure("speed.top_full") / 1.609344, Trade, "",
            EvidenceLevel.CommonPractice)
        { Allowed = Allowance.Part(0.08, "advertised as “up to”, for an unknown rider and road") };
        yield return new("Power advertised for two motors", "2 × 3150 W", "6300", "W", 2 * board.Parts.Motor.PowerRating.Value.Watts, Trade, "", EvidenceLevel.CommonPractice);
        yield return new("What the pack feeds beyond half of that", "50 A set, half charge", "0", "W", Math.Max(0, Figure("pack.feed_power") - board.Parts.Motor.PowerRating.Value.Watts), Trade, "",
            EvidenceLevel.CommonPractice);
        yield return new("Range advertised", $"30 miles on 532 Wh: the program names a steady {Figure("cruise.pace_for_range_wanted"):0.0} km/h", "30", "mi", RangeAt(board, Figure("cruise.pace_for_range_wanted")), Trade, "",
            EvidenceLevel.CommonPractice)
        { Allowed = Allowance.Part(0.001, "the pace is solved for, so this only checks that it is one") };
        yield return new("Charge, lower bound", "12 Ah at 3 A", "4", "h", Figure("charge.time_lower_bound"), Trade, "", EvidenceLevel.CommonPractice);
    }

    static double RangeAt(Board board, double kilometresPerHour)
    {
        var brief = board.Brief with
        {
            CruiseSpeed = new Known<Speed>(
            Speed.FromKilometresPerHour(kilometresPerHour), key: board.Brief.CruiseSpeed.Key)
        };
        return Examination.FiguresOf(board with { Brief = brief }).Single(f => f.Kind.Id == "cruise.range").Value!.Value / 1.609344;
    }
}
