namespace Boardwright.Tests.Files;

/// <summary>The board of the format's description, with a shelf of invented parts.</summary>
static class Tern
{
    public const string Board = """
        boardwright: 1
        name: Tern
        brief:
          rider_mass: 80 kg
          gear_mass: 5 kg                # clothes, shoes, bag
          stance: upright                # upright | crouched | tucked; or drag_area: 0.55 m2
          cruise_speed: 25 km/h
          range_wanted: 25 km
          top_speed_wanted: 45 km/h
          climb_wanted: 15 %
          climb_speed: 12 km/h
          speed_limit: 25 km/h           # what the builder found in the local rules
          temperature: 18 °C
          altitude: 20 m
          headwind: 0 m/s
          surface: smooth asphalt        # smooth asphalt | rough asphalt | paving | packed gravel
          reserve: 10 %                  # charge the rider wants left
          route: routes/harbour-loop.gpx
        shelf: [shelf/]
        parts:
          deck: marram-96
          front_truck: ling-184
          rear_truck: ling-184
          wheels: { use: cobble-100, count: 4 }
          drive: { kind: belt, driven: rear, motors: 2, placement: behind }   # kind: belt | gear | hub
          mount: ling-clamp
          motor: m6374-170
          motor_pulley: p15-5m-10
          wheel_pulley: w40-5m-cobble
          belt: { profile: HTD 5M, teeth: 56, width: 15 mm }
          controller: { use: twin-60, count: 1 }
          cell: c21700-50
          pack: { series: 12, parallel: 4, protection: bms-12s-60, plug: XT90, mass_extra: 0.5 kg, links: 4 mohm, length: 330 mm, width: 150 mm, height: 42 mm }
          charger: ch-12s-4a
          remote: palm-2g4
          box: dune-tray-620
        wiring:
          - { from: pack, to: controller, gauge: AWG 10, length: 0.25 m, plug: XT90 }
          - { from: controller, to: motors, gauge: AWG 12, length: 0.9 m, plug: bullet 4 mm }
        limits:                          # what the builder has set, or means to set, in the controller
          phase_current: 60 A
          brake_phase_current: 50 A
          pack_current: 50 A
          regen_current: 12 A
          taper_start: 3.4 V             # per cell: power starts to fade
          taper_end: 3.1 V               # per cell: power is cut
        fixings:
          box: { count: 6, bolt: M5, insert: deck_insert }
        money:
          labour_hours: 9 h
          labour_rate: 35 EUR/h
          overhead: 12 %
          margin: 25 %
        """;

    public const string Chassis = """
        - id: marram-96
          kind: deck
          name: Marram 96
          mass: 2.1 kg
          price: 140 EUR
          length: 960 mm
          width: 240 mm
          mounting: drop-platform
          platform_drop: 20 mm
          wheelbase: [720 mm, 740 mm]
          bend_per_kg: 0.12 mm/kg
        - id: ling-184
          kind: truck
          mass: 430 g
          hanger_width: 184 mm
          axle_diameter: 8 mm
          kingpin: single
          pivot_angle: 44 deg
          lean_stiffness: 2.5 Nm/deg
          hanger_profile: square 27
        - id: cobble-100
          kind: wheel
          diameter: 4 in
          width: { value: 65 mm, give: 0.3 mm, from: measured }
          rolling_resistance: { smooth asphalt: 0.014, rough-asphalt: 0.022, paving: 0.03 }
        - { id: dune-tray-620, kind: box, inner_length: 620 mm, wall: 3 mm }
        """;

    public const string Electrics = """
        - id: ling-clamp
          kind: mount
          hanger_profile: square 27
          bolt_circle: [30 mm, 44 mm]
          angles: [0 deg, 25 deg]
        - id: m6374
          kind: motor
          phase_resistance: { value: 0.028 ohm, give: 5 %, from: measured }
          pole_pairs: 7
          no_load_tests: { 12 V: 1.1 A, 24 V: 1.4 A }
          winding_limit: { value: 130 °C, give: 5 K, from: guess }
          sensor: hall
        - { id: m6374-170, use: m6374, kind: motor, kv: 170 rpm/V, shaft_diameter: 10 mm }
        - { id: p15-5m-10, kind: pulley, profile: HTD 5M, teeth: 15, bore: 10 mm, fixing: set screw }
        - { id: w40-5m-cobble, kind: pulley, profile: HTD 5M, teeth: 40, core: six spokes 44 }
        - { id: twin-60, kind: controller, motors: 2, voltage_max: 60 V, switching_time: 120 ns }
        - id: c21700-50
          kind: cell
          capacity: 5.0 Ah
          price: 6.20 EUR
          rest_voltage: { 0 %: 3.00 V, 10 %: 3.38 V, 50 %: 3.68 V, 90 %: 4.06 V, 100 %: 4.18 V }
          resistance:
            temperatures: [0 °C, 25 °C, 45 °C]
            10 %: [62 mohm, 31 mohm, 24 mohm]
            100 %: [50 mohm, 25 mohm, 20 mohm]
          polarisation: { R1: 12 mohm, tau1: 30 s }
        - { id: bms-12s-60, kind: protection, series: 12, regen_through: yes }
        - { id: ch-12s-4a, kind: charger, voltage: 50.4 V, current: 4 A }
        - { id: palm-2g4, kind: remote, failsafe: coast }
        - { id: xt90, name: XT90, kind: plug, current_continuous: 45 A, mates_with: [XT90, XT90-S] }
        - { id: bullet-4, name: bullet 4 mm, kind: plug, current_continuous: 40 A }
        - { id: gland-12, kind: fitting, window: [26 mm, 14 mm] }
        - { id: fuse-60, kind: fuse, rating: 60 A, melting_i2t: 4200 A2s }
        """;

    public static Workplace Place() => new Workplace()
        .Write("tern.board.yaml", Board)
        .Write("shelf/chassis.yaml", Chassis)
        .Write("shelf/electrics.yml", Electrics)
        .Write("shelf/notes.txt", "not a shelf file");
}
