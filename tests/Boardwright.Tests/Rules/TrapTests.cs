using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rules;

namespace Boardwright.Tests.Rules;

/// <summary>Mistakes that a builder makes, on an example board: the rule that must catch each, and its level. None may be fine. A place
/// with nothing behind the equals sign has that part or entry taken away.</summary>
public sealed class TrapTests
{
    public static TheoryData<string, string, string, Level> Traps => new()
    {
        // Names.
        { "tern", "pack.plug=XT9", "name.known", Level.Measure },
        { "tern", "pack.plug=XT9", "voltage.parts", Level.Measure },
        { "tern", "wiring[2].plug=bulet 4 mn", "name.known", Level.Measure },
        { "tern", "controller.pack_plug=XT-60", "plug.mates", Level.Stop },
        { "tern", "wheels.bearing=60 8", "name.known", Level.Measure },
        { "tern", "wheels.bearing=625", "fit.axle_length", Level.Measure },
        { "tern", "fixings.box.bolt=M55", "name.known", Level.Measure },
        { "tern", "fixings.box.bolt=M55", "box.gasket_pitch", Level.Measure },
        { "tern", "mount.cover_bolt=4 mm", "name.known", Level.Measure },
        { "tern", "motor_pulley.profile=HTD 55M", "fit.belt_profile", Level.Stop },
        { "tern", "motor_pulley.profile=HTD 55M", "belt.rating", Level.Measure },
        { "tern", "mount.hanger_profile=square 28", "fit.hanger_profile", Level.Stop },
        { "tern", "wheel_pulley.core=five bolts 60", "fit.core", Level.Stop },
        { "tern", "deck.hole_pattern=63.5 x 41.275", "fit.hole_pattern_front", Level.Stop },
        { "tern", "box.material=kitchen tray", "box.gasket_pitch", Level.Measure },
        { "tern", "box.material=", "box.gasket_pitch", Level.Measure },

        // Sizes that do not go together.
        { "tern", "rear_truck.axle_diameter=12 mm", "fit.bearing_bore", Level.Stop },
        { "curlew", "wheels.bearing=608", "fit.bearing_bore", Level.Stop },
        { "tern", "motor.key_width=4 mm", "fit.key_width", Level.Stop },
        { "tern", "motor.key_width=2.5 mm", "fit.key_width", Level.Stop },
        { "tern", "mount.bolt=M5", "fit.bolt_circle", Level.Stop },
        { "tern", "motor.bolt_circle=48 mm", "fit.bolt_circle", Level.Stop },
        { "tern", "motor_pulley.bore=8 mm", "fit.bore", Level.Stop },
        { "tern", "belt.length=282 mm;belt.teeth=", "belt.length", Level.Stop },
        { "tern", "belt.length=285 mm", "belt.length", Level.Stop },
        { "tern", "belt.teeth=50", "belt.slot", Level.Stop },
        { "tern", "belt.width=20 mm", "fit.belt_width", Level.Stop },
        { "tern", "motor.shaft_length=45 mm", "fit.shaft_cover", Level.Stop },
        { "tern", "mount.bolt_length=20 mm", "bolt.motor", Level.Stop },
        { "tern", "mount.plate_from_wheel=21.5 mm", "fit.shaft_cover", Level.Stop },
        { "tern", "mount.plate_from_wheel=21.5 mm", "fit.pulley_seat", Level.Fix },
        { "tern", "mount.plate_from_wheel=2 mm", "belt.alignment", Level.Fix },
        { "tern", "rear_truck.axle_overhang=32 mm", "fit.axle_length", Level.Stop },
        { "tern", "wheels.diameter=150 mm", "fit.wheel_bite", Level.Stop },
        { "tern", "pack.height=48 mm", "box.layout.height", Level.Fix },
        { "tern", "deck.bend_per_kg=0.6 mm/kg", "fit.ground_box", Level.Fix },
        { "tern", "fixings.box.count=4", "box.bolt_count", Level.Fix },
        { "tern", "fixings.box.insert=wood screw", "box.bolt_insert", Level.Fix },

        // Electricity.
        { "curlew", "charger.voltage=50.4 V", "charge.voltage", Level.Stop },
        { "tern", "pack.series=10", "charge.voltage", Level.Stop },
        { "tern", "pack.series=10", "pack.protection_series", Level.Stop },
        { "tern", "pack.protection=", "pack.protection_series", Level.Stop },
        { "tern", "fuse=", "fuse.wire", Level.Fix },
        { "tern", "fuse.voltage=32 V", "voltage.parts", Level.Stop },
        { "tern", "fuse.breaking_current=1000 A", "fuse.breaking", Level.Stop },
        { "tern", "fuse.rating=100 A", "fuse.wire", Level.Fix },
        { "tern", "wiring[3].fuse=", "fuse.branch", Level.Fix },
        { "tern", "wiring[3]=", "fuse.branch", Level.Measure },
        { "tern", "pack.precharge=", "inrush.precharge", Level.Measure },
        { "tern", "motor.sensor=encoder;fittings[1].cable_max=9.7 mm", "wire.gland", Level.Fix },
        { "tern", "limits.taper_end=2.4 V", "limits.taper", Level.Stop },

        // On the road.
        { "tern", "limits.regen_current=1 A", "brake.strength", Level.Stop },
        { "tern", "limits.brake_phase_current=8 A", "brake.strength", Level.Stop },
        { "tern", "motor.magnet_limit=60 °C", "heat.magnets", Level.Fix },
        { "tern", "motor.magnet_limit=", "heat.magnets", Level.Measure },
        { "tern", "motor.winding_limit=", "heat.climb", Level.Measure },
        { "tern", "motor.power_rating=3000 W", "pack.advertised_power", Level.Fix },
        { "tern", "limits.phase_current=60 A", "belt.rating", Level.Fix },
        { "tern", "motor_pulley.fixing=set-screw", "key.set_screw_alone", Level.Fix },
        { "tern", "brief.speed_limit=20 km/h", "speed.limit", Level.Fix },
        { "tern", "remote.failsafe=none", "remote.failsafe", Level.Stop },
        { "tern", "rear_truck.lean_stiffness=", "speed.stability", Level.Measure },
    };

    [Theory]
    [MemberData(nameof(Traps))]
    public void A_trap_is_never_fine(string name, string edits, string rule, Level level)
    {
        var findings = Examination.Examine(Edited(name, edits)).Findings.Where(f => f.Rule == rule).ToArray();

        Assert.True(findings.Length > 0 && findings.Min(f => f.Level) == level, $"{rule}: {string.Join(" | ", findings.Select(f => $"{f.Level}: {f.Says} {f.Remedy}"))}");
        Assert.False(findings.MinBy(f => f.Level)!.Remedy.IsEmpty);
    }

    [Fact]
    public void Every_rule_has_a_board_on_which_it_is_not_fine()
    {
        // Each row is tried by its own test; here it is only counted. These two only tell, so all that can fail is that they cannot.
        string[] telling = ["belt.tension", "pack.caution"];
        var caught = Traps.Where(t => t.Data.Item4 != Level.Fine).Select(t => t.Data.Item3)
            .Concat(RuleTests.Cases.Where(c => c.Data.Item3 != Level.Fine).Select(c => c.Data.Item1)).ToHashSet(StringComparer.Ordinal);

        Assert.DoesNotContain(Rulebook.All, rule => !caught.Contains(rule.Id) && !telling.Contains(rule.Id));
        var blank = Examination.Examine(new Board().WithNames()).Findings;
        Assert.All(blank.Where(f => telling.Contains(f.Rule)), f => Assert.Equal(Level.Measure, f.Level));
    }

    static Board Edited(string name, string edits)
    {
        var board = Boards.Read(name);
        foreach (var edit in edits.Split(';').Select(e => e.Split('=', 2)))
            board = edit[1].Length == 0 && Without(board, edit[0]) is { } less ? less : board.With((edit[0], edit[1]));
        return board;
    }

    // A whole part or run of wire taken off, where the key is one of those.
    static Board? Without(Board board, string place)
    {
        if (place == "pack.protection")
            return (board with { Parts = board.Parts with { Pack = board.Parts.Pack with { Protection = new() } } }).WithNames();
        if (place.StartsWith("wiring[", StringComparison.Ordinal) && place.EndsWith(']'))
            return (board with { Wiring = [.. board.Wiring.Where((_, i) => place != FormattableString.Invariant($"wiring[{i + 1}]"))] }).WithNames();
        return Entry.ListEntries(typeof(Fitted)).FirstOrDefault(e => e.Key == place) is { Form: EntryForm.Sheet } entry
            ? (board with { Parts = (Fitted)board.Parts.With([(entry, Activator.CreateInstance(entry.ValueType)!)]) }).WithNames()
            : null;
    }
}
