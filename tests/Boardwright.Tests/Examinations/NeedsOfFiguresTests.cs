using Boardwright.Examinations;
using Boardwright.UsualValues;

namespace Boardwright.Tests.Examinations;

/// <summary>A figure asks for what it rests on, and for nothing else.</summary>
public sealed class NeedsOfFiguresTests
{
    static readonly string[] Headlines =
    [
        "speed.top_full", "speed.top_half", "speed.top_reserve", "speed.unloaded_full", "cruise.range", "cruise.consumption", "cruise.power",
        "climb.grade_at_climb_speed", "climb.phase_current", "climb.pack_current", "force.start",
        "brake.regen_distance", "brake.regen_distance_full", "brake.regen_distance_downhill", "brake.grade_held_full",
        "charge.time_full", "charge.time_80", "charge.time_lower_bound", "mass.board", "mass.rolling", "mass.effective", "heat.winding_at_climb",
        "heat.minutes_to_limit_at_climb",
    ];

    [Theory]
    [InlineData("tern")]
    [InlineData("puffin")]
    [InlineData("curlew")]
    public void An_entry_that_is_taken_away_moves_the_figures_that_name_it_and_no_other(string name)
    {
        // With usual values as if they were stated: one that goes comes back, and none moves because what it follows from went.
        var board = UsualTable.Complete(Boards.Read(name));
        var figures = Examination.FiguresOf(board);
        var named = Headlines.ToDictionary(id => id, id => FigureNeeds.EntriesOf(figures, id), StringComparer.Ordinal);
        var whole = figures.ToDictionary(f => f.Kind.Id, f => f.Value, StringComparer.Ordinal);
        List<string> silent = [], unmoved = [];
        foreach (var key in board.KnownKeys())
        {
            var without = Examination.FiguresOf(board.Without(key)).ToDictionary(f => f.Kind.Id, f => f, StringComparer.Ordinal);
            foreach (var id in Headlines)
            {
                // What has no value cannot lose one: Puffin's windings find no end.
                if (whole[id] is null)
                    continue;
                var (before, after) = (whole[id], without.TryGetValue(id, out var figure) ? figure : null);
                var moved = after is null || after.Missing.Count > 0 || after.Value != before;
                if (moved && !named[id].Contains(key))
                    silent.Add($"{id} moves without {key}, which it does not name");
                if (!moved && named[id].Contains(key) && !HasOther(key) && UsualTable.Find(key) is null)
                    unmoved.Add($"{id} names {key} and does without it");
            }
        }

        Assert.True(silent.Count + unmoved.Count == 0, string.Join("\n", silent.Concat(unmoved)));
    }

    [Fact]
    public void The_list_of_needs_parts_what_a_figure_must_have_from_what_it_can_do_without()
    {
        var top = FigureNeeds.List(Boards.Tern).Single(n => n.Kind.Id == "speed.top_full");

        Assert.Contains("motor.kv", top.Needed);
        Assert.Contains("brief.rider_mass", top.Needed);
        Assert.Contains("limits.pack_current", top.Spared);
        Assert.Contains("brief.road", top.Spared);
        Assert.DoesNotContain(top.Needed.Concat(top.Spared), key => key is "deck.wheelbase" or "limits.regen_current" or "motor.rotor_inertia");
    }

    // What each headline must not wait for.
    [Theory]
    [InlineData("speed.top_full", "limits.brake_phase_current", "limits.regen_current", "deck.wheelbase", "motor.rotor_inertia", "brief.reserve", "cell.voltage_full", "cell.capacity", "brief.climb_speed")]
    [InlineData("climb.grade_at_climb_speed", "motor.rotor_inertia", "limits.regen_current", "deck.wheelbase", "brief.climb_wanted", "brief.cruise_speed")]
    [InlineData("cruise.range", "deck.wheelbase", "limits.phase_current", "limits.pack_current", "motor.rotor_inertia", "brief.climb_speed")]
    [InlineData("brake.regen_distance", "limits.phase_current", "limits.pack_current", "controller.electrical_speed_limit", "brief.climb_wanted", "brief.reserve")]
    [InlineData("charge.time_lower_bound", "cell.rest_voltage", "cell.resistance", "pack.links", "brief.temperature", "charger.voltage")]
    [InlineData("charge.time_full", "wheels.diameter", "brief.rider_mass", "motor.kv")]
    [InlineData("speed.unloaded_full", "brief.rider_mass", "brief.stance", "wheels.rolling_resistance")]
    [InlineData("heat.winding_at_climb", "limits.phase_current", "limits.pack_current", "deck.wheelbase", "motor.rotor_inertia")]
    public void A_headline_does_not_wait_for_what_it_does_not_use(string id, params string[] keys)
    {
        // Without what the devices hold by themselves, too.
        var board = Boards.Tern.With([.. keys.Select(key => (key, ""))]);
        var figure = Examination.FiguresOf(board).Single(f => f.Kind.Id == id);

        Assert.Empty(figure.Missing);
        Assert.Equal(Examination.FiguresOf(Boards.Tern).Single(f => f.Kind.Id == id).Value, figure.Value);
    }

    // Entries that a figure can do without: they have a usual value, another stands in for them, another limit is below them, or what is
    // missing makes a lower bound that the figure may not feel.
    static bool HasOther(string key) => Spared.Contains(key) || key.EndsWith(".mass", StringComparison.Ordinal)
        || key.EndsWith(".count", StringComparison.Ordinal) || key.StartsWith("limits.", StringComparison.Ordinal)
        || key.StartsWith("cell.polarisation.", StringComparison.Ordinal)
        // A run of which nobody says what it joins is none between pack and controller.
        || key is "wiring[1].from" or "wiring[1].to" or "wiring[1].plug"
        // The resistance between two leads is then taken as usual.
        or "motor.phase_resistance";

    static readonly HashSet<string> Spared = new(StringComparer.Ordinal)
    {
        "brief.road", "brief.stance", "brief.headwind", "brief.altitude", "wheels.durometer",
        "brief.gear_mass", "drive.driven", "gearbox.efficiency", "gearbox.oil_loss",
        "wheels.inertia", "pack.mass_extra", "motor.case_to_air", "motor.winding_capacity", "motor.case_capacity", "motor.winding_to_case",
        "motor.winding_limit", "controller.motors", "controller.electrical_speed_limit", "controller.phase_current_peak",
        "controller.pack_current", "controller.regen_current", "pack.protection.charge_current", "pack.protection.discharge_current",
    };
}
