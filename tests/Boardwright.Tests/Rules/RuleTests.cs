using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rules;

namespace Boardwright.Tests.Rules;

/// <summary>Each rule on Tern with one or a few entries changed: the level it then has, and a word that its finding or remedy must
/// hold.</summary>
public sealed class RuleTests
{
    public static TheoryData<string, string, Level, string> Cases => new()
    {
        // Interfaces.
        { "fit.hanger_profile", "mount.hanger_profile=round 32", Level.Stop, "round 32" },
        { "fit.core", "wheel_pulley.core=five spokes", Level.Stop, "five spokes" },
        { "fit.hole_pattern_front", "front_truck.hole_pattern=wide", Level.Stop, "wide" },
        { "fit.hole_pattern_rear", "rear_truck.hole_pattern=wide", Level.Stop, "wide" },
        { "fit.remote_port", "remote.port=other", Level.Stop, "other" },
        { "fit.bolt_circle", "motor.bolt_circle=32 mm", Level.Stop, "32.0 mm" },
        { "fit.bolt_circle", "motor.bolt=M5", Level.Stop, "M5" },
        { "fit.bolt_circle", "motor.bolt_circle=", Level.Measure, "motor.bolt_circle" },
        { "fit.bearing_bore", "rear_truck.axle_diameter=12 mm", Level.Stop, "does not go on" },
        { "fit.bearing_bore", "wheels.bearing=6001", Level.Stop, "out of true" },
        { "fit.bearing_bore", "wheels.bearing=609", Level.Measure, "608" },
        { "fit.bearing_bore", "wheels.bearing=", Level.Measure, "wheels.bearing" },
        { "fit.belt_profile", "belt.profile=5M HTD", Level.Fine, "are all" },
        { "fit.bore", "motor.shaft_diameter=8 mm", Level.Stop, "larger than the shaft" },
        { "fit.bore", "motor.shaft_diameter=12 mm", Level.Stop, "does not go on" },
        { "fit.bore", "motor.shaft_diameter=", Level.Measure, "motor.shaft_diameter" },
        { "fit.key_width", "motor.key_width=2 mm", Level.Stop, "play" },
        { "fit.key_width", "motor.key_width=4 mm", Level.Stop, "broached" },
        { "fit.belt_profile", "belt.profile=HTD 3M", Level.Stop, "HTD 3M" },
        { "fit.belt_width", "belt.width=25 mm", Level.Stop, "face only" },

        // Clearances.
        { "fit.shaft_cover", "motor.shaft_length=30 mm", Level.Fine, "stay free" },
        { "fit.shaft_cover", "motor.shaft_length=42 mm", Level.Stop, "Shorten the shaft by" },
        { "fit.shaft_cover", "mount.cover_depth=", Level.Measure, "mount.cover_depth" },
        { "fit.pulley_seat", "motor.shaft_length=20 mm", Level.Fix, "of the pulley is on the shaft" },
        { "fit.pulley_seat", "motor.shaft_length=7 mm", Level.Stop, "0 %" },
        { "fit.shaft_cover", "mount.plate_from_wheel=", Level.Measure, "mount.plate_from_wheel" },
        { "belt.alignment", "mount.plate_from_wheel=1 mm;motor_pulley.face_offset=4 mm", Level.Fix, "more on the axle" },
        { "belt.alignment", "motor_pulley.face_offset=1 mm", Level.Fine, "Set it with a straight edge" },
        { "fit.motors_side_by_side", "motor.can_length=90 mm", Level.Stop, "overlap" },
        { "fit.motor_deck", "rear_truck.lean_stop=50 deg", Level.Stop, "before its stop" },
        { "fit.motor_deck", "drive.mount_angle=0 deg", Level.Fine, "At 15 deg" },
        { "fit.wheel_bite", "wheels.diameter=125 mm", Level.Stop, "riser" },
        { "fit.wheel_bite", "deck.width=120 mm", Level.Fine, "inside" },
        { "fit.ground_motor", "motor.can_diameter=115 mm", Level.Fix, "smaller in diameter" },
        { "fit.ground_pulley", "wheel_pulley.flange_diameter=95 mm", Level.Fix, "smaller over their flanges" },
        { "fit.ground_box", "box.inner_depth=100 mm", Level.Fix, "hump" },
        { "fit.box_between_trucks", "box.inner_length=800 mm", Level.Stop, "shorter" },
        { "fit.box_between_trucks", "box.inner_width=400 mm", Level.Stop, "narrower" },
        { "fit.box_contents", "pack.height=100 mm", Level.Stop, "deep" },
        { "fit.box_contents", "pack.length=900 mm", Level.Stop, "end to end" },
        { "fit.axle_length", "rear_truck.axle_overhang=30 mm", Level.Stop, "the nut would not be full" },

        // The box's inside.
        { "box.layout.fits", "pack.height=46 mm", Level.Fine, "of the floor" },
        { "box.layout.fits", "remote.receiver_width=", Level.Measure, "remote.receiver_width" },
        { "box.layout.fits", "box.inner_width=130 mm", Level.Stop, "wider" },
        { "box.layout.fits", "box.inner_length=400 mm", Level.Fix, "longer" },
        { "box.layout.fits", "controller.length=290 mm", Level.Fix, "a controller" },
        { "box.layout.fits", "box.inner_length=450 mm;layout.pack.x=0 mm;layout.pack.y=0 mm", Level.Fix, "another place for the pack" },
        { "box.layout.overlap", "layout.pack.x=100 mm;layout.pack.y=0 mm;layout.fuse.x=0 mm;layout.fuse.y=0 mm", Level.Stop, "The pack and the fuse lie in the same place" },
        { "box.layout.overlap", "layout.fuse.x=0 mm;layout.fuse.y=0 mm", Level.Fine, "holds" },
        { "box.layout.inside", "layout.pack.x=200 mm;layout.pack.y=0 mm", Level.Stop, "49.5 mm through the wall" },
        { "box.layout.height", "fuse.height=60 mm", Level.Fix, "fuse" },
        { "box.layout.height", "pack.height=48 mm", Level.Fix, "deeper" },
        { "box.layout.height", "brief.rider_mass=", Level.Measure, "brief.rider_mass" },
        { "box.layout.bend", "layout.controller.x=-230 mm;layout.controller.y=0 mm", Level.Fix, "before the wall" },
        { "box.layout.bend", "layout.fuse.x=-59 mm;layout.fuse.y=0 mm;layout.receiver.x=-15 mm;layout.receiver.y=0 mm", Level.Fix, "receiver lies" },
        { "box.layout.heat", "layout.pack.x=100 mm;layout.pack.y=0 mm;layout.controller.x=-102 mm;layout.controller.y=0 mm", Level.Fix, "away from the pack" },
        { "box.layout.names", "layout.gland 3.along=0 mm", Level.Fix, "no such thing" },
        { "box.layout.names", "layout.fuse.along=0 mm", Level.Fix, "wall and along" },

        // Belts, keys, bolts.
        { "belt.slot", "belt.teeth=60", Level.Stop, "hangs loose" },
        { "belt.slot", "belt.teeth=52", Level.Stop, "too short to put on" },
        { "belt.slot", "belt.teeth=30", Level.Stop, "does not reach around" },
        { "belt.slot", "mount.centre_max=68.4 mm", Level.Fix, "tensioning takes" },
        { "belt.slot", "drive.kind=", Level.Measure, "drive.kind" },
        { "belt.length", "belt.length=282 mm;belt.teeth=", Level.Stop, "280 mm and 285 mm" },
        { "belt.length", "belt.length=285 mm", Level.Stop, "the file says 56" },
        { "belt.length", "belt.length=280 mm", Level.Fine, "are 56 teeth" },
        { "belt.mesh", "motor_pulley.teeth=13", Level.Fix, "Take a motor pulley with" },
        { "belt.least_teeth", "motor_pulley.teeth=12", Level.Fix, "14" },
        { "belt.rating", "limits.phase_current=80 A", Level.Fix, "Set the phase current to" },
        { "belt.rating", "limits.phase_current=45 A", Level.Fix, "service factor of 1.5" },
        { "belt.rating", "limits.phase_current=45 A;belt.service_factor=1", Level.Fine, "are left" },
        { "key.standard", "motor.key_width=2 mm", Level.Measure, "buy the pulley for the key" },
        { "belt.tension", "belt.width=15 mm", Level.Fine, "Hz" },
        { "belt.slack", "limits.phase_current=20 A", Level.Fix, "slack" },
        { "belt.speed", "motor.kv=900 rpm/V;controller.electrical_speed_limit=;motor_pulley.teeth=24", Level.Fix, "m/s" },
        { "key.strength", "motor_pulley.length=2 mm", Level.Fix, "too much" },
        { "key.set_screw_alone", "motor_pulley.fixing=set-screw", Level.Fix, "keyway" },
        { "bolt.motor", "mount.bolt_length=25 mm", Level.Stop, "bottom" },
        { "bolt.motor", "mount.bolt_length=10 mm", Level.Fix, "engage only" },
        { "bolt.motor", "mount.bolt_length=", Level.Measure, "M4×" },
        { "bolt.motor", "motor.bolt=M44", Level.Measure, "Write M4" },
        { "bolt.motor", "brief.altitude=20 m", Level.Fine, "A2-70 to 2.4 N·m" },
        { "bolt.motor", "mount.bolt_class=8.8", Level.Fine, "8.8 to 3.1 N·m" },
        { "bolt.motor", "mount.bolt_class=9.9", Level.Measure, "8.8" },

        // Voltages, currents, plugs, wires.
        { "voltage.controller", "pack.series=16", Level.Stop, "cells in series" },
        { "voltage.controller", "controller.voltage_min=45 V", Level.Fix, "taper_end" },
        { "voltage.parts", "fuse.voltage=32 V", Level.Stop, "DC" },
        { "current.outputs", "controller.count=1;drive.motors=4", Level.Stop, "outputs" },
        { "current.phase", "motor.phase_current_peak=40 A", Level.Fix, "motor" },
        { "current.phase", "wiring[2].plug=round 3-pin", Level.Fix, "motor plug round 3-pin" },
        { "current.brake_phase", "controller.phase_current_peak=20 A", Level.Fix, "controller" },
        { "current.phase", "motor.phase_current_peak=40 A", Level.Fix, "K each second" },
        { "current.phase", "wiring[2].plug=round 3-pin", Level.Fix, "times the heat" },
        { "current.phase", "limits.phase_current=;motor.phase_current_peak=70 A", Level.Fix, "Nothing is set" },
        { "current.pack", "cell.discharge_current=10 A", Level.Fix, "the cells' discharge current is 40 A: 10 A too little" },
        { "current.pack", "cell.discharge_current=10 A", Level.Fix, "K a minute" },
        { "current.pack", "cell.discharge_current=5 A", Level.Stop, "the cells' discharge current" },
        { "current.pack", "pack.protection.discharge_current=40 A", Level.Fix, "the protection opens" },
        { "current.pack", "fuse.rating=40 A", Level.Fix, "the fuse opens" },
        { "current.pack", "controller.pack_current=40 A", Level.Fix, "hold themselves to that" },
        { "current.pack", "limits.pack_current=;cell.discharge_current=14 A", Level.Fix, "The board holds" },
        { "current.pack", "limits.pack_current=;controller.pack_current=40 A;controller.count=1", Level.Fine, "Nothing is set" },
        { "current.pack", "limits.pack_current=;controller.pack_current=;pack.protection.discharge_current=", Level.Measure, "limits.pack_current" },
        { "current.regen", "cell.charge_current=2 A", Level.Fix, "the cells' charge current" },
        { "current.regen", "cell.charge_current=1 A", Level.Stop, "the cells' charge current" },
        { "current.regen", "pack.protection.regen_through=no", Level.Stop, "lets no braking current through" },
        { "current.regen", "brief.temperature=-15 °C", Level.Stop, "may not be charged" },
        { "current.regen", "brief.temperature=-15 °C", Level.Stop, "Bring the pack" },
        { "current.regen", "brief.temperature=55 °C", Level.Stop, "Bring the pack" },
        { "current.regen", "limits.regen_current=62 A;cell.charge_current=20 A;pack.protection.charge_current=90 A;controller.regen_current=90 A", Level.Fix, "pack plug" },
        { "plug.mates", "controller.pack_plug=XT60", Level.Stop, "does not mate" },
        { "wire.temperature", "wiring[1].gauge=AWG 20", Level.Fix, "AWG" },
        { "fuse.wire", "wiring[1].gauge=AWG 18", Level.Fix, "fuse" },
        { "wire.bundle", "wiring[2].gauge=AWG 26", Level.Fix, "more than the bundle takes for ever" },
        { "wire.bundle", "wiring[2].gauge=AWG 20", Level.Fine, "may not last" },
        { "wire.length", "layout.pack.x=140 mm;layout.pack.y=0 mm;wiring[1].length=20 mm", Level.Stop, "does not reach" },
        { "wire.length", "layout.pack.x=140 mm;layout.pack.y=0 mm;wiring[1].length=2 m", Level.Fine, "its way with loop" },
        { "wire.gland", "fittings[1].cable_max=8 mm", Level.Fix, "Take a gland for cables of 10.2 mm" },
        { "wire.gland", "fittings[1].cable_max=10 mm", Level.Fix, "one more gland for the sensor's cable" },
        { "wire.gland", "fittings[1].cable_max=10 mm;motor.sensor=none", Level.Fine, "Put the plugs on after" },
        { "wire.gland", "fittings[1].count=1", Level.Fix, "Put in 1 more" },
        { "wire.gland", "brief.altitude=20 m", Level.Fine, "seal between them too" },
        { "fuse.fault", "wiring[1].gauge=AWG 18", Level.Fix, "Take a thicker wire" },
        { "fuse.fault", "cell.resistance=200 mohm", Level.Fix, "times the fuse's" },
        { "fuse.fault", "brief.altitude=20 m", Level.Fine, "the fuse melts after" },
        { "fuse.breaking", "fuse.breaking_current=500 A", Level.Stop, "Take a fuse that breaks at least" },
        { "fuse.breaking", "fuse.breaking_current=2000 A", Level.Stop, "first milliseconds" },
        { "fuse.breaking", "fuse.breaking_current=3000 A", Level.Fine, "first milliseconds" },
        { "fuse.breaking", "fuse.breaking_current=", Level.Measure, "fuse.breaking_current" },
        { "inrush.precharge", "pack.precharge=", Level.Measure, "Fill the capacitors first through 33 ohm" },
        { "inrush.precharge", "pack.precharge=;fuse.melting_i2t=100 A2s", Level.Measure, "a fuse that melts" },
        { "inrush.precharge", "pack.precharge=220 ohm", Level.Fix, "leave" },
        { "inrush.precharge", "pack.precharge=2000 ohm;controller.idle_power=0 W", Level.Fix, "a hand lets go sooner" },
        { "inrush.precharge", "pack.precharge=0.05 ohm", Level.Fix, "the first current is" },
        { "inrush.precharge", "pack.precharge=2 ohm;fuse.melting_i2t=1 A2s", Level.Fix, "wears at a fifth" },
        { "fuse.branch", "wiring[3].fuse=", Level.Fix, "one of 5 A" },
        { "fuse.branch", "brief.altitude=20 m", Level.Measure, "no lead between pack and charge gauge" },
        { "fuse.branch", "wiring[3].fuse=60 A", Level.Fix, "a thicker wire" },
        { "fuse.branch", "wiring[3].fuse=2 A", Level.Fix, "its fuse is rated 2 A" },

        // The box's bolts.
        { "box.bolt_count", "fixings.box.count=7", Level.Fix, "7 bolts are stated; 8 are drawn" },
        { "box.gasket_pitch", "fixings.box.count=6", Level.Fix, "10 bolts would do" },
        { "box.gasket_pitch", "box.inner_depth=10 mm;box.gasket_thickness=0.1 mm", Level.Fix, "stiffer box" },
        { "box.gasket_pitch", "fixings.box.count=10", Level.Fine, "squeezed by a quarter" },
        { "box.gasket_pitch", "box.material=", Level.Measure, "box.material" },
        { "box.gasket_pitch", "box.material=ABX", Level.Measure, "Write ABS" },
        { "box.gasket_pitch", "box.gasket_thickness=", Level.Measure, "box.gasket_thickness" },
        { "box.bolt_edge", "deck.underside_flat_length=600 mm", Level.Fix, "begins to bend" },
        { "box.bolt_edge", "deck.width=185 mm", Level.Fix, "Measure the deck's width" },
        { "box.bolt_washer", "box.flange_width=9 mm", Level.Fix, "into the wall" },
        { "box.bolt_spacing", "fixings.box.count=200", Level.Fix, "weakens the wood" },
        { "box.bolt_insert", "fixings.box.insert=wood screw", Level.Fix, "inserts hold better" },

        { "speed.electrical", "controller.electrical_speed_limit=30000 rpm", Level.Fix, "rpm/V" },

        // Pack and charge.
        { "pack.protection_series", "pack.series=11", Level.Stop, "11" },
        { "charge.voltage", "charger.voltage=54.6 V", Level.Stop, "Never charge" },
        { "charge.voltage", "charger.voltage=42 V", Level.Fix, "below" },
        { "charge.current", "charger.current=40 A", Level.Fix, "at most" },
        { "limits.taper", "limits.taper_end=3.6 V", Level.Stop, "above the end" },
        { "limits.taper", "limits.taper_end=2.0 V", Level.Stop, "at least" },
        { "limits.taper", "pack.protection.voltage_cut=", Level.Measure, "pack.protection.voltage_cut" },
        { "limits.taper_start", "limits.taper_start=3.9 V", Level.Fix, "Set taper_start" },

        // The ride.
        { "speed.wanted", "brief.top_speed_wanted=80 km/h", Level.Fix, "instead of 15" },
        { "speed.wanted", "brief.top_speed_wanted=51 km/h", Level.Fix, "A motor pulley of 16 teeth" },
        { "speed.limit", "brief.speed_limit=60 km/h", Level.Fine, "at most" },
        { "speed.stability", "rear_truck.kingpin=double", Level.Measure, "weave" },
        { "speed.stability", "rear_truck.pivot_angle=", Level.Measure, "rear_truck.pivot_angle" },
        { "speed.stability", "motor.rotor_inertia=;motor.kv=", Level.Measure, "reaches 40 km/h" },
        { "climb.wanted", "brief.climb_wanted=40 %", Level.Fix, "phase current" },
        { "cruise.range_wanted", "brief.range_wanted=90 km", Level.Fix, "only reached at a steady" },
        { "cruise.range_wanted", "cell.resistance=2 ohm", Level.Fix, "cannot hold" },
        { "cruise.held", "limits.taper_end=3.5 V;limits.taper_start=3.6 V", Level.Fix, "taper" },
        { "brake.downhill_full", "brief.climb_wanted=18 %", Level.Stop, "Start down that hill" },
        { "brake.downhill_full", "brief.climb_wanted=30 %", Level.Stop, "at no charge" },
        { "brake.strength", "limits.regen_current=1 A;brief.cruise_speed=45 km/h", Level.Stop, "m/s2 are asked" },
        { "brake.strength", "limits.regen_current=4 A", Level.Stop, "0.80 m/s2" },
        { "brake.strength", "brief.altitude=20 m", Level.Fix, "do not set out with a full pack" },
        { "brake.strength", "brief.braking_least=0.5 m/s2", Level.Fine, "0.50 m/s2 are asked" },
        { "brake.strength", "cell.voltage_full=4.4 V", Level.Fine, "1.54 m/s2 are asked" },
        { "brake.strength", "cell.voltage_full=4.4 V;brief.braking_least=2 m/s2", Level.Fix, "2.00 m/s2 are asked" },
        { "brake.stops", "limits.brake_phase_current=0 A;limits.regen_current=0 A;brief.climb_wanted=20 %", Level.Stop, "never" },
        { "remote.failsafe", "remote.failsafe=none", Level.Stop, "coast" },
        { "heat.climb", "motor.winding_limit=50 °C", Level.Fix, "hill of up to" },
        { "heat.climb", "motor.winding_limit=", Level.Measure, "120 °C" },
        { "heat.climb", "motor.winding_limit=;brief.climb_wanted=20 %", Level.Fix, "120 °C" },
        { "heat.climb", "brief.climb_wanted=40 %", Level.Fix, "never settle" },
        { "heat.magnets", "motor.magnet_limit=60 °C", Level.Fix, "the magnets bear 60 °C" },
        { "heat.magnets", "motor.magnet_limit=", Level.Measure, "motor.magnet_limit" },
        { "heat.magnets", "motor.magnet_limit=;brief.climb_wanted=14 %", Level.Fix, "not marked" },
        { "heat.magnets", "brief.climb_wanted=40 %", Level.Fix, "never settle" },
        { "name.known", "pack.plug=XT9", Level.Measure, "XT90" },
        { "name.known", "wheels.bearing=nothing like it", Level.Measure, "Known are" },
        { "name.known", "brief.altitude=20 m", Level.Fine, "are known" },
        { "voltage.parts", "wiring[1].plug=XT9", Level.Measure, "XT90" },
        { "pack.advertised_power", "motor.power_rating=3150 W", Level.Fix, "Promise" },
        { "pack.advertised_power", "motor.power_rating=500 W", Level.Fine, "can feed" },
        { "pack.caution", "pack.parallel=4", Level.Fine, "qualified people" },
        { "price.budget", "brief.budget=900 EUR", Level.Fix, "900" },
        { "pack.tables_reach", "brief.temperature=-40 °C", Level.Measure, "guess" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_change_brings_its_finding(string id, string changes, Level level, string word)
    {
        var board = Boards.Tern.With([.. changes.Split(';').Select(c => c.Split('=', 2)).Select(c => (c[0], c[1]))]);

        var findings = Examination.Examine(board).Findings.Where(f => f.Rule == id).ToArray();

        Assert.True(findings.Any(f => f.Level == level && $"{f.Says} {f.Remedy}".Contains(word, StringComparison.Ordinal)),
            $"{id}: {string.Join(" | ", findings.Select(f => $"{f.Level}: {f.Says} {f.Remedy}"))}");
    }

    [Fact]
    public void Every_rule_has_a_case()
    {
        var tested = Cases.Select(c => c.Data.Item1).ToHashSet(StringComparer.Ordinal);

        Assert.DoesNotContain(Rulebook.All, r => !tested.Contains(r.Id));
    }

    [Fact]
    public void Every_stop_and_fix_says_what_to_change()
    {
        foreach (var name in Boards.Names)
        {
            foreach (var finding in Examination.Examine(Boards.Read(name)).Findings.Where(f => f.Level is Level.Stop or Level.Fix))
                Assert.False(finding.Remedy.IsEmpty, $"{name}: {finding.Rule}");
        }
    }

    [Fact]
    public void The_remedy_that_changes_one_entry_mends_what_it_is_for()
    {
        // A mend is tried on the board that has the fault; the rule must then hold at that place.
        foreach (var (_, row) in Cases.Index())
        {
            var (id, changes, _, _) = row.Data;
            var board = Boards.Tern.With([.. changes.Split(';').Select(c => c.Split('=', 2)).Select(c => (c[0], c[1]))]);
            foreach (var finding in Examination.Examine(board)
                .Findings.Where(f => f.Rule == id && f.Mend is not null && f.Level != Level.Fine))
            {
                var mended = Examination.Examine(board.With((finding.Mend!.Key, finding.Mend.Text)));
                Assert.True(mended.Findings.Where(f => f.Rule == id && f.Where == finding.Where)
                    .All(f => f.Level is Level.Fine or Level.Measure), $"{id}: {finding.Remedy}");
            }
        }
    }

    [Fact]
    public void A_finding_never_says_safe()
    {
        foreach (var name in Boards.Names)
        {
            foreach (var finding in Examination.Examine(Boards.Read(name)).Findings)
                Assert.DoesNotContain("safe", $"{finding.Says} {finding.Remedy}".Replace("failsafe", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void A_board_of_which_nothing_is_known_asks_for_measurements_and_nothing_else()
    {
        var findings = Examination.Examine(new Board().WithNames()).Findings;

        Assert.All(findings, f => Assert.True(f.Level == Level.Measure, $"{f.Rule}: {f.Says}"));
    }

    [Fact]
    public void A_part_that_nobody_chose_is_asked_for_once_and_not_entry_by_entry()
    {
        var board = (Boards.Tern with { Parts = Boards.Tern.Parts with { Motor = new(), Wheels = new() } }).WithNames();

        var top = Assert.Single(Examination.Examine(board).Findings, f => f.Rule == "speed.wanted");

        Assert.StartsWith("Cannot be said until the motor and the wheels are chosen: the top", top.Says.In(UnitSystem.Metric), StringComparison.Ordinal);
        Assert.Equal("Choose the motor and the wheels.", top.Remedy.In(UnitSystem.Metric));
        Assert.Contains("motor.kv", top.Needs);
    }

    [Fact]
    public void Taking_any_single_entry_away_never_breaks_the_examination()
    {
        foreach (var board in new[] { Boards.Tern, Boards.Curlew })
        {
            foreach (var entry in Boards.Entries(board))
                Assert.NotEmpty(Examination.Examine(board.With((entry, ""))).Findings);
        }
    }
}
