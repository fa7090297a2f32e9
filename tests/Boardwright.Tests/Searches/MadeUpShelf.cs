using System.Globalization;
using System.Text;

namespace Boardwright.Tests.Searches;

/// <summary>How many parts of each kind a made-up shelf holds.</summary>
sealed record Stocked(int Decks = 1, int Trucks = 2, int Wheels = 2, int Mounts = 1, int Motors = 2, int MotorPulleys = 2,
    int WheelPulleys = 2, int Belts = 2,
    int Boxes = 1, int Controllers = 2, int Cells = 1, int Protections = 2, int Fuses = 1, int Remotes = 1, int Chargers = 2)
{
    /// <summary>A few hundred parts.</summary>
    public static Stocked Large { get; } = new(14, 16, 20, 16, 30, 24, 24, 24, 18, 24, 20, 16, 12, 18, 24);

    public int Sum => Decks + Trucks + Wheels + Mounts + Motors + MotorPulleys + WheelPulleys + Belts + Boxes + Controllers + Cells
        + Protections + Fuses + Remotes + Chargers;
}

/// <summary>A shelf of parts that nobody makes, the same for the same number: interfaces drawn from a few kinds, sizes and figures spread
/// about what the trade sells.</summary>
sealed class MadeUpShelf(int seed)
{
    ulong state = (ulong)seed * 0x9E3779B97F4A7C15UL + 0x1234567;

    static readonly string[] Profiles = ["square 25", "square 27"];
    static readonly string[] Cores = ["six spokes 44", "five bolts 60"];
    static readonly string[] Holes = ["53.975 x 41.275", "63.5 x 41.275"];
    static readonly string[] Plugs = ["XT60", "XT90"];
    static readonly string[] Leads = ["bullet 4 mm", "bullet 5.5 mm"];
    static readonly string[] Ports = ["pulse 3-pin", "pulse 4-pin"];

    /// <summary>The shelf as one file.</summary>
    public static string Text(int seed, Stocked stocked) => new MadeUpShelf(seed).Of(stocked);

    /// <summary>Writes a brief and its shelf into a folder.</summary>
    /// <returns>Path of the brief.</returns>
    public static string Write(string folder, int seed, Stocked stocked, string brief)
    {
        var shelf = Path.Combine(folder, "shelf");
        Directory.CreateDirectory(shelf);
        File.WriteAllText(Path.Combine(shelf, "parts.yaml"), Text(seed, stocked));
        var path = Path.Combine(folder, "brief.board.yaml");
        File.WriteAllText(path, brief);
        return path;
    }

    /// <summary>A brief of which most made-up shelves can meet something.</summary>
    public static string Brief(double rangeKilometres = 14, double climbPercent = 8, string parts = "  pack: { parallel: 3 }\n  drive: { motors: 2, placement: behind }\n", string more = "") =>
        string.Create(CultureInfo.InvariantCulture, $"""
        boardwright: 1
        name: Made up
        brief:
          rider_mass: 80 kg
          gear_mass: 4 kg
          cruise_speed: 22 km/h
          range_wanted: {rangeKilometres} km
          climb_wanted: {climbPercent} %
          climb_speed: 11 km/h
          reserve: 10 %
          temperature: 18 °C
        {more}shelf: [shelf/]
        parts:
        {parts}
        """);

    string Of(Stocked s)
    {
        var text = new StringBuilder();
        void Each(int count, Func<int, string> part)
        {
            for (var i = 0; i < count; i++)
                text.Append(part(i)).Append('\n');
        }

        // The first of each kind goes with the first of the others, so that something can always be built.
        string Pick(string[] kinds, int i) => i == 0 ? kinds[^1] : kinds[Next(kinds.Length)];
        Each(s.Decks, i => $"- {{ id: deck-{i}, kind: deck, mass: {Between(1400, 2400)} g, price: {Between(60, 160)} EUR, length: 960 mm, width: {(i == 0 ? 190 : Between(180, 240))} mm, thickness: 12 mm, mounting: top, hole_pattern: {(i == 0 ? Holes[0] : Pick(Holes, Next(3)))}, wheelbase: {Between(740, 820)} mm, underside_flat_length: {(i == 0 ? 680 : Between(480, 700))} mm, underside_flat_width: 186 mm, tail_overhang: {Between(60, 140)} mm, bend_per_kg: 0.08 mm/kg }}");
        Each(s.Trucks, i => $"- {{ id: truck-{i}, kind: truck, mass: {Between(360, 900)} g, price: {Between(40, 120)} EUR, hanger_width: {(i == 0 ? 190 : Between(160, 230))} mm, axle_diameter: 8 mm, axle_overhang: {(i == 0 ? 76 : Between(62, 84))} mm, height: {Between(72, 92)} mm, kingpin: single, pivot_angle: 44 deg, lean_stop: {Between(12, 20)} deg, hole_pattern: {(i == 0 ? Holes[0] : Pick(Holes, Next(3)))}, hanger_profile: {Pick(Profiles, i)} }}");
        Each(s.Wheels, i => $"- {{ id: wheel-{i}, kind: wheel, mass: {Between(200, 420)} g, price: {Between(10, 34)} EUR, diameter: {(i == 0 ? 100 : Between(83, 120))} mm, width: {Between(52, 70)} mm, core: {Pick(Cores, i)}, rolling_resistance: 0.0{Between(11, 22)}, bearing: \"608\", seat_offset: {Between(8, 16)} mm }}");
        Each(s.Mounts, i => $"- {{ id: mount-{i}, kind: mount, mass: {Between(90, 190)} g, price: {Between(18, 60)} EUR, hanger_profile: {Pick(Profiles, i)}, bolt_circle: {(i == 0 || Next(2) == 0 ? "[30 mm, 44 mm]" : "44 mm")}, bolt: M4, bolt_count: 4, bolt_length: 14 mm, plate_thickness: 7 mm, centre_min: {(i == 0 ? 60 : Between(56, 66))} mm, centre_max: {(i == 0 ? 82 : Between(70, 86))} mm, angles: [{Between(0, 12)} deg, {Between(15, 40)} deg], plate_from_wheel: {Between(6, 12)} mm, cover_depth: {Between(27, 33)} mm, cover_standoff: 6 mm, cover_bolt: M4 }}");
        Each(s.Motors, i =>
        {
            var (can, length) = (Between(50, 68), Between(55, 85));
            var kv = Between(120, 220);
            return $"- {{ id: motor-{i}, kind: motor, mass: {Between(440, 980)} g, price: {Between(50, 140)} EUR, kv: {kv} rpm/V, phase_resistance: {Between(16, 44)} mohm, phase_inductance: {Between(16, 34)} uH, pole_pairs: 7, no_load_current: 1.{Between(0, 9)} A, no_load_voltage: 24 V, phase_current_peak: {Between(55, 120)} A, phase_current_continuous: {Between(30, 50)} A, can_diameter: {can} mm, can_length: {(i == 0 ? 60 : length)} mm, shaft_diameter: {(i == 0 || Next(3) > 0 ? 8 : 10)} mm, shaft_length: 34 mm, key_width: 3 mm, key_height: 3 mm, bolt_circle: 44 mm, bolt: M4, bolt_depth: 8 mm, rotor_inertia: 0.0002 kg m2, winding_limit: 130 °C, magnet_limit: 100 °C, sensor: hall, lead_plug: {(i == 0 || Next(3) > 0 ? Leads[0] : Leads[1])} }}";
        });
        Each(s.MotorPulleys, i => $"- {{ id: small-{i}, kind: pulley, mass: {Between(28, 60)} g, price: {Between(8, 18)} EUR, profile: HTD 5M, teeth: {(i == 0 ? 15 : Between(13, 20))}, bore: {(i == 0 || Next(3) > 0 ? 8 : 10)} mm, keyway_width: 3 mm, face_width: 16 mm, length: 24 mm, flange_diameter: 30 mm, fixing: both }}");
        Each(s.WheelPulleys, i => $"- {{ id: large-{i}, kind: pulley, mass: {Between(70, 130)} g, price: {Between(16, 32)} EUR, profile: HTD 5M, teeth: {(i == 0 ? 36 : Between(32, 48))}, face_width: 16 mm, length: {Between(18, 24)} mm, core: {Pick(Cores, i)} }}");
        Each(s.Belts, i => $"- {{ id: belt-{i}, kind: belt, price: {Between(5, 14)} EUR, profile: HTD 5M, teeth: {(i == 0 ? 55 : Between(48, 66))}, width: {(i == 0 || Next(2) == 0 ? 15 : 9)} mm }}");
        Each(s.Boxes, i => $"- {{ id: box-{i}, kind: box, mass: {Between(320, 700)} g, price: {Between(30, 90)} EUR, inner_length: {(i == 0 ? 560 : Between(380, 600))} mm, inner_width: {Between(150, 160)} mm, inner_depth: {Between(46, 60)} mm, wall: 2 mm, flange_width: 10 mm }}");
        Each(s.Controllers, i => $"- {{ id: controller-{i}, kind: controller, mass: {Between(200, 460)} g, price: {Between(110, 300)} EUR, motors: {(i == 0 || Next(4) > 0 ? 2 : 1)}, voltage_min: 14 V, voltage_max: {(i == 0 ? 60 : Between(42, 75))} V, phase_current_peak: {Between(60, 140)} A, pack_current: {Between(40, 90)} A, regen_current: {Between(15, 45)} A, electrical_speed_limit: {Between(60, 110)}000 rpm, bridge_resistance: {Between(8, 24)}00 uohm, switching_time: 130 ns, switching_frequency: 20 kHz, idle_power: {Between(2, 5)} W, bus_capacitance: 2000 uF, length: {Between(90, 120)} mm, width: 74 mm, height: 27 mm, pack_plug: {Pick(Plugs, i)}, motor_plug: {(i == 0 || Next(3) > 0 ? Leads[0] : Leads[1])}, remote_port: {Pick(Ports, i)} }}");
        Each(s.Cells, i =>
        {
            var ohms = Between(14, 30);
            return $"- {{ id: cell-{i}, kind: cell, mass: {Between(66, 72)} g, price: {Between(3, 6)}.{Next(10)}0 EUR, format: \"21700\", capacity: {Between(3, 5)}.{Next(10)} Ah, voltage_nominal: 3.6 V, voltage_full: 4.2 V, voltage_empty: 2.5 V, rest_voltage: {{ 0 %: 2.95 V, 5 %: 3.22 V, 10 %: 3.38 V, 20 %: 3.50 V, 30 %: 3.58 V, 50 %: 3.71 V, 70 %: 3.89 V, 90 %: 4.06 V, 100 %: 4.15 V }}, resistance: {{ 10 %: {ohms + 6} mohm, 50 %: {ohms} mohm, 100 %: {ohms - 1} mohm }}, discharge_current: {Between(12, 30)} A, charge_current: {Between(3, 6)} A, charge_temperature_min: 0 °C, charge_temperature_max: 45 °C, diameter: 21.2 mm, length: 70.2 mm }}";
        });
        Each(s.Protections, i => $"- {{ id: guard-{i}, kind: protection, mass: {Between(50, 110)} g, price: {Between(20, 55)} EUR, series: {(i == 0 ? 12 : 10 + Next(2) * 2)}, discharge_current: {Between(40, 80)} A, charge_current: {Between(12, 30)} A, regen_through: yes, voltage_cut: 2.8 V }}");
        Each(s.Fuses, i => $"- {{ id: fuse-{i}, kind: fuse, mass: {Between(8, 16)} g, price: {Between(2, 8)} EUR, rating: {Between(40, 80)} A, voltage: {(i == 0 ? 80 : Between(48, 90))} V }}");
        Each(s.Remotes, i => $"- {{ id: remote-{i}, kind: remote, mass: {Between(80, 150)} g, price: {Between(30, 70)} EUR, port: {Pick(Ports, i)}, failsafe: {(i == 0 || Next(4) > 0 ? "coast" : "none")} }}");
        Each(s.Chargers, i => $"- {{ id: charger-{i}, kind: charger, mass: 600 g, price: {Between(25, 80)} EUR, voltage: {(i == 0 || Next(2) == 0 ? "50.4" : "42.0")} V, current: {Between(2, 6)} A, efficiency: 0.9 }}");
        text.Append("- { id: xt60, kind: plug, name: XT60, current_continuous: 30 A, current_peak: 60 A, contact_resistance: 0.5 mohm, voltage: 120 V }\n");
        text.Append("- { id: xt90, kind: plug, name: XT90, current_continuous: 45 A, current_peak: 90 A, contact_resistance: 0.3 mohm, voltage: 120 V }\n");
        text.Append("- { id: bullet-4, kind: plug, name: bullet 4 mm, current_continuous: 60 A, current_peak: 100 A, contact_resistance: 0.25 mohm, voltage: 120 V }\n");
        text.Append("- { id: bullet-5, kind: plug, name: bullet 5.5 mm, current_continuous: 100 A, current_peak: 150 A, contact_resistance: 0.15 mohm, voltage: 120 V }\n");
        return text.ToString();
    }

    int Between(int least, int most) => least + Next(most - least + 1);

    int Next(int below)
    {
        state = state * 6364136223846793005UL + 1442695040888963407UL;
        return (int)((state >> 33) % (ulong)below);
    }
}
