using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Tests.Traction;

public sealed class CurrentLimitsTests
{
    static readonly string[] Ridden =
    [
        "speed.top_full", "speed.top_half", "climb.grade_at_climb_speed", "brake.regen_distance", "brake.regen_distance_full", "wire.pack_temperature",
        "limits.pack_current", "limits.phase_current", "limits.regen_current", "pack.feed_power", "motor.peak_torque", "drive.peak_belt_pull",
    ];

    // Nothing on a board holds a current down to what a cell, a plug, a fuse or a motor is rated for.
    [Theory]
    [InlineData("cell.discharge_current", "25 A", "7 A", "current.pack", Level.Fix)]
    [InlineData("cell.discharge_current", "25 A", "5 A", "current.pack", Level.Stop)]
    [InlineData("cell.charge_current", "4 A", "2 A", "current.regen", Level.Fix)]
    [InlineData("cell.charge_current", "4 A", "1 A", "current.regen", Level.Stop)]
    [InlineData("cell.charge_temperature_min", "0 °C", "20 °C", "current.regen", Level.Stop)]
    [InlineData("fuse.rating", "60 A", "30 A", "current.pack", Level.Fix)]
    [InlineData("motor.phase_current_peak", "90 A", "40 A", "current.phase", Level.Fix)]
    public void A_weaker_part_is_a_finding_and_changes_no_figure_of_the_ride(
        string key, string strong, string weak, string rule, Level level)
    {
        // Tern's own plug is too weak for what is set; here nothing else is.
        var board = Boards.Tern.With(("limits.pack_current", "44 A"));
        var (one, other) = (Examination.Examine(board.With((key, strong))), Examination.Examine(board.With((key, weak))));
        foreach (var id in Ridden)
            Assert.Equal(ValueOf(one, id), ValueOf(other, id));
        Assert.All(one.Findings.Where(f => f.Rule == rule), f => Assert.Equal(Level.Fine, f.Level));
        var found = Assert.Single(other.Findings, f => f.Rule == rule && f.Level == level);
        Assert.True(found.Value!.Value.Value > found.Limit!.Value.Value);
    }

    [Theory]
    [InlineData("pack.protection.discharge_current", "30 A", "limits.pack_current", 30)]
    [InlineData("controller.pack_current", "20 A", "limits.pack_current", 20)]
    [InlineData("controller.phase_current_peak", "25 A", "limits.phase_current", 25)]
    [InlineData("controller.regen_current", "5 A", "limits.regen_current", 5)]
    [InlineData("pack.protection.charge_current", "6 A", "limits.regen_current", 6)]
    [InlineData("pack.protection.regen_through", "no", "limits.regen_current", 0)]
    public void What_a_device_holds_by_itself_limits_the_board(string key, string value, string figure, double amperes) =>
        Assert.Equal(amperes, ValueOf(Examination.Examine(Boards.Tern.With(("controller.count", "1"), (key, value))), figure)!.Value, 1e-9);

    [Fact]
    public void No_part_may_lean_on_the_protection_to_open()
    {
        var board = Boards.Tern.With(("pack.protection.discharge_current", "30 A"), ("cell.discharge_current", "10 A"));
        var found = Examination.Examine(board).Findings;

        Assert.Contains(found, f => f is { Rule: "current.pack", Where: "cell.discharge_current", Level: Level.Fix, Value: { Value: 50 } });
    }

    [Fact]
    public void The_brake_note_says_when_the_cells_may_not_be_charged()
    {
        static string Note(Board board) => Examination.Examine(board).BrakeNote.Value;
        Assert.DoesNotContain("may not be charged", Note(Boards.Tern), StringComparison.Ordinal);
        Assert.Contains("may not be charged", Note(Boards.Tern.With(("brief.temperature", "-5 °C"))), StringComparison.Ordinal);
        Assert.DoesNotContain("may not be charged", Note(Boards.Tern.With(("brief.temperature", "-5 °C"), ("limits.regen_current", "0 A"))), StringComparison.Ordinal);
    }

    static double? ValueOf(Examination examination, string id) => examination.Figures.Single(f => f.Kind.Id == id).Value;
}
