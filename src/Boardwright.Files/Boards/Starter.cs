namespace Boardwright.Files.Boards;

/// <summary>The board file that a builder begins with.</summary>
public static class Starter
{
    /// <summary>A commented board that reads without complaint and needs no shelf; its parts are invented.</summary>
    /// <param name="name">Name of the board.</param>
    public static string Text(string name) =>
        Board.Replace("NAME", BoardText.Quote(name, inFlow: false), StringComparison.Ordinal);

    const string Board = """
        boardwright: 1                  # version of this format, always the first line
        name: NAME

        # Every value carries its unit: 960 mm, 38 in, 80 kg, 180 lb, 25 km/h, 16 mph, 12 %, 18 °C.
        # A value can say how well it is known: { value: 38 mm, give: 0.1 mm, from: measured };
        # give is one standard deviation, from is measured, maker (a data sheet) or guess.
        # Leave out what you do not know. Whatever needs it then asks you to measure it,
        # and everything else is still worked out. The parts below are invented: put yours in.

        brief:                          # what the rider wants
          rider_mass: 80 kg
          gear_mass: 5 kg               # clothes, shoes, bag
          stance: upright               # upright | crouched | tucked; or drag_area: 0.55 m2
          cruise_speed: 25 km/h
          range_wanted: 20 km           # at cruise speed
          top_speed_wanted: 38 km/h
          climb_wanted: 12 %            # steepest climb, rise over run
          climb_speed: 12 km/h
          speed_limit: 25 km/h          # what you found in your local rules
          temperature: 18 °C
          altitude: 50 m
          headwind: 0 m/s
          surface: smooth asphalt       # smooth asphalt | rough asphalt | paving | packed gravel
          reserve: 10 %                 # charge you want left at the end
          # route: routes/home.gpx      # a recorded ride, from this file's folder

        # A shelf is a folder of files, each a list of parts: - { id: ID, kind: deck, length: 960 mm }
        # Name it here, write an id in place of a part below (deck: ID), or take a part from
        # the shelf and change it: deck: { use: ID, mass: 2.2 kg }.
        shelf: []

        parts:
          deck:
            name: first deck
            mass: 2.1 kg
            price: 120 EUR
            length: 960 mm
            width: 240 mm
            thickness: 13 mm
            mounting: top               # top | drop-through | drop-platform
            wheelbase: 720 mm           # between the axles
            hole_pattern: 53.975 x 41.275
            underside_flat_length: 640 mm
            underside_flat_width: 210 mm
            tail_overhang: 120 mm
          front_truck: { mass: 480 g, price: 35 EUR, hanger_width: 218 mm, axle_diameter: 8 mm, height: 68 mm, kingpin: single, pivot_angle: 44 deg, lean_stop: 22 deg, hole_pattern: 53.975 x 41.275 }
          rear_truck:  { mass: 480 g, price: 35 EUR, hanger_width: 218 mm, axle_diameter: 8 mm, height: 68 mm, kingpin: single, pivot_angle: 44 deg, lean_stop: 22 deg, hole_pattern: 53.975 x 41.275, hanger_profile: square 27 }
          wheels:
            count: 4
            mass: 260 g
            price: 16 EUR               # one of them
            diameter: 100 mm
            width: 62 mm
            core: six spokes 44
            rolling_resistance: { smooth asphalt: 0.014, rough asphalt: 0.022, paving: 0.03 }
          drive:
            kind: belt                  # belt | gear | hub
            driven: rear                # rear | front | both
            motors: 2
            placement: behind           # behind | ahead of the axle
          mount:
            mass: 150 g
            price: 28 EUR
            hanger_profile: square 27   # the same name as on the truck
            bolt_circle: [30 mm, 44 mm]
            bolt: M4
            bolt_count: 4
            bolt_length: 12 mm
            plate_thickness: 8 mm
            centre_min: 60 mm           # between motor shaft and axle
            centre_max: 78 mm
            angles: [20 deg]            # above the horizontal
          motor:
            mass: 680 g
            price: 85 EUR
            kv: 170 rpm/V
            phase_resistance: { value: 28 mohm, from: measured }   # line to neutral: half of what a meter reads between two leads
            phase_inductance: 26 uH
            pole_pairs: 7               # half the number of magnets
            no_load_current: 1.4 A
            no_load_voltage: 24 V
            phase_current_peak: 80 A
            can_diameter: 63 mm
            can_length: 74 mm
            shaft_diameter: 8 mm
            shaft_length: 36 mm         # beyond the face on the mount
            key_width: 3 mm
            key_height: 3 mm
            bolt_circle: 44 mm
            bolt: M4
            bolt_depth: 6 mm
            winding_limit: 130 °C
            magnet_limit: 100 °C
            sensor: hall                # none | hall | encoder
            lead_plug: bullet 4 mm
          motor_pulley: { mass: 40 g, price: 9 EUR, profile: HTD 5M, teeth: 15, bore: 8 mm, keyway_width: 3 mm, face_width: 16 mm, length: 24 mm, fixing: both }
          wheel_pulley: { mass: 70 g, price: 14 EUR, profile: HTD 5M, teeth: 40, face_width: 16 mm, core: six spokes 44 }
          belt: { mass: 20 g, price: 6 EUR, profile: HTD 5M, teeth: 56, width: 15 mm }
          controller:
            mass: 320 g
            price: 170 EUR
            motors: 2                   # how many one of them drives
            voltage_min: 14 V
            voltage_max: 60 V
            phase_current_peak: 80 A
            phase_current_continuous: 50 A
            pack_current: 60 A
            regen_current: 30 A
            electrical_speed_limit: 60000 rpm
            idle_power: 3 W
            length: 110 mm
            width: 74 mm
            height: 26 mm
            pack_plug: XT90
            motor_plug: bullet 4 mm
            remote_port: pulse 3-pin
          cell:
            format: "21700"
            mass: 70 g
            price: 6.20 EUR
            capacity: 5.0 Ah
            voltage_nominal: 3.6 V
            voltage_full: 4.2 V
            voltage_empty: 2.5 V
            rest_voltage: { 0 %: 3.00 V, 10 %: 3.38 V, 50 %: 3.68 V, 90 %: 4.06 V, 100 %: 4.18 V }
            resistance:                 # one value, or a table over charge, or over charge and temperature
              temperatures: [0 °C, 25 °C, 45 °C]
              10 %: [62 mohm, 31 mohm, 24 mohm]
              100 %: [50 mohm, 25 mohm, 20 mohm]
            discharge_current: 15 A
            charge_current: 4 A
            charge_temperature_min: 0 °C
            diameter: 21.2 mm
            length: 70.2 mm
          pack:
            series: 12
            parallel: 3
            protection: { mass: 90 g, price: 42 EUR, series: 12, discharge_current: 60 A, charge_current: 20 A, regen_through: yes, voltage_cut: 2.8 V }
            plug: XT90
            mass_extra: 0.5 kg          # links, wrap and holder
            links: 4 mohm
            length: 330 mm
            width: 150 mm
            height: 42 mm
          charger: { price: 38 EUR, voltage: 50.4 V, current: 4 A, efficiency: 0.9, end_current: 0.4 A }
          remote: { mass: 20 g, price: 45 EUR, port: pulse 3-pin, failsafe: coast }   # coast | brake | none
          box: { mass: 600 g, price: 48 EUR, inner_length: 560 mm, inner_width: 180 mm, inner_depth: 48 mm, wall: 3 mm, flange_width: 15 mm, gasket_thickness: 3 mm }
          fuse: { price: 4 EUR, rating: 60 A, voltage: 80 V }

        wiring:
          - { from: pack, to: controller, gauge: AWG 10, length: 0.25 m, plug: XT90 }
          - { from: controller, to: motors, gauge: AWG 12, length: 0.9 m, plug: bullet 4 mm }

        limits:                         # what you have set, or mean to set, in the controller
          phase_current: 60 A
          brake_phase_current: 50 A
          pack_current: 40 A
          regen_current: 12 A
          taper_start: 3.4 V            # loaded volts per cell at which power begins to fade
          taper_end: 3.1 V              # and at which it is cut

        fixings:
          box: { count: 8, bolt: M5, insert: deck_insert }

        layout:                         # where things lie in the box; what is not said is proposed
          # pack: { x: 80 mm, y: 0 mm, turn: 180 deg }    # its middle, from the box's middle: x to the nose, y to the right

        money:
          labour_hours: 9 h
          labour_rate: 35 EUR/h
          overhead: 12 %
          margin: 25 %

        """;
}
