using System.Globalization;
using System.Text.RegularExpressions;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Tests.Rules;

/// <summary>Faults planted along the driven axle: each is found, and what the finding says to do mends it.</summary>
public sealed class StackRuleTests
{
    // Tern with a shaft that its cover takes, and every dimension a maker's.
    static readonly Board Sound = Boards.Tern.With(("motor.shaft_length", "36 mm"), ("mount.cover_depth", "26 mm"), ("motor_pulley.length", "24 mm"));

    static readonly string[] Along = ["fit.shaft_cover", "fit.pulley_seat", "fit.axle_length", "belt.alignment"];

    static Board Edited(string edits) => Sound.With([.. edits.Split(';').Select(e => e.Split('=', 2)).Select(e => (e[0], e[1]))]);

    static Finding Found(Board board, string rule) => Assert.Single(Examination.Examine(board).Findings, f => f.Rule == rule);

    public static TheoryData<string, string, Level, string, string> Faults => new()
    {
        // The fault; rule and level; what the remedy says; what that is in the file.
        { "mount.plate_from_wheel=22 mm;motor.shaft_length=48 mm;mount.cover_depth=25 mm", "fit.shaft_cover", Level.Stop, "take cover standoffs of 20.0 mm", "mount.cover_standoff=20 mm" },
        { "motor.shaft_length=40 mm", "fit.shaft_cover", Level.Stop, "Shorten the shaft by 3.5 mm", "motor.shaft_length=36.5 mm" },
        { "motor.shaft_length=38.5 mm", "fit.shaft_cover", Level.Fix, "put 3 washers ISO 7089-M4 (0.8 mm)", "mount.cover_standoff=8.4 mm" },
        { "motor_pulley.face_offset=1 mm;mount.cover_depth=27.5 mm", "fit.shaft_cover", Level.Fix, "Turn the motor pulley around", "motor_pulley.face_offset=7 mm" },
        { "motor.shaft_length=25 mm", "fit.pulley_seat", Level.Fix, "Take a motor whose shaft is at least 32.0 mm long", "motor.shaft_length=32 mm" },
        { "mount.plate_from_wheel=14 mm;motor.shaft_length=31 mm", "fit.pulley_seat", Level.Fix, "shaft is at least 38.0 mm", "motor.shaft_length=38 mm" },
        { "motor_pulley.face_offset=1 mm;motor.shaft_length=34.5 mm", "fit.pulley_seat", Level.Fix, "Turn the pulley around", "motor_pulley.face_offset=7 mm" },
        { "mount.plate_from_wheel=1 mm;motor_pulley.face_offset=4 mm", "belt.alignment", Level.Fix, "put 3 washers of 1 mm more", "drive.pulley_from_hanger=4 mm" },
        { "mount.plate_from_wheel=1 mm;motor_pulley.face_offset=4 mm;rear_truck.axle_overhang=67 mm", "belt.alignment", Level.Fix, "no thread left", "mount.plate_from_wheel=3.5 mm" },
        { "mount.plate_from_wheel=3 mm;motor_pulley.face_offset=6 mm", "belt.alignment", Level.Fix, "Turn the motor pulley around", "motor_pulley.face_offset=2 mm" },
        { "rear_truck.axle_overhang=60 mm", "fit.axle_length", Level.Stop, "stands out at least 66.0 mm", "rear_truck.axle_overhang=66 mm" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void A_planted_fault_is_found_and_its_remedy_mends_it(string fault, string rule, Level level, string remedy, string mending)
    {
        var found = Found(Edited(fault), rule);

        Assert.True(found.Level == level && $"{found.Remedy}".Contains(remedy, StringComparison.Ordinal), $"{found.Level}: {found.Says} {found.Remedy}");
        var mended = Found(Edited($"{fault};{mending}"), rule);
        Assert.True(mended.Level == Level.Fine, $"{mended.Level}: {mended.Says} {mended.Remedy}");
    }

    [Fact]
    public void On_any_board_what_a_remedy_says_mends_what_it_was_said_of()
    {
        var random = new Random(20261129);
        string Between(double least, double most) =>
            FormattableString.Invariant($"{Math.Round(2 * (least + (most - least) * random.NextDouble())) / 2} mm");
        var tried = new Dictionary<string, int>();
        for (var i = 0; i < 160; i++)
        {
            var board = Sound.With(("mount.plate_from_wheel", Between(0, i % 2 == 0 ? 24 : 4)), ("motor.shaft_length", Between(18, 50)),
                ("mount.cover_depth", Between(18, 34)), ("motor_pulley.face_offset", Between(1, 7)),
                ("wheel_pulley.face_offset", Between(1, 4)), ("rear_truck.axle_overhang", Between(58, 76)),
                ("wheels.seat_offset", Between(6, 16)));
            foreach (var found in Examination.Examine(board).Findings
                .Where(f => Along.Contains(f.Rule) && f.Level is Level.Stop or Level.Fix))
            {
                foreach (var (way, mending) in Mendings(board, found))
                {
                    var after = Found(board.With(mending), found.Rule);
                    Assert.True(after.Level == Level.Fine, $"{found.Says} {found.Remedy} | {mending} | {after.Level}: {after.Says}");
                    tried[way] = tried.GetValueOrDefault(way) + 1;
                }
            }
        }

        Assert.Equal(7, tried.Count);
        Assert.All(tried, t => Assert.True(t.Value > 2, $"{t.Key}: {t.Value}"));
    }

    /// <summary>What a finding's remedy offers, each as a change of one entry.</summary>
    static IEnumerable<(string Way, (string Key, string Value) Mending)> Mendings(Board board, Finding found)
    {
        if (found.Mend is { } mend)
            yield return (mend.Key, (mend.Key, mend.Text));
        var parts = board.Parts;
        (string Pattern, string Key, Func<double, double, double> Value)[] ways =
        [
            (@"^Shorten the shaft by (?<a>[\d.]+) mm", "motor.shaft_length", (a, _) => parts.Motor.ShaftLength.Value.Millimetres - a),
            (@"(?<a>\d+) washers? ISO 7089-M4 \((?<b>[\d.]+) mm\)", "mount.cover_standoff",
                (a, b) => parts.Mount.CoverStandoff.Value.Millimetres + a * b),
            (@"cover standoffs of (?<a>[\d.]+) mm", "mount.cover_standoff", (a, _) => a),
            (@"whose shaft is at least (?<a>[\d.]+) mm", "motor.shaft_length", (a, _) => a),
            (@"stands out at least (?<a>[\d.]+) mm", "rear_truck.axle_overhang", (a, _) => a),
        ];
        foreach (var (pattern, key, value) in ways)
        {
            if (Regex.Match($"{found.Remedy}", pattern, RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)) is not { Success: true } match)
                continue;
            double Number(string group) =>
                match.Groups[group] is { Success: true } g ? double.Parse(g.Value, CultureInfo.InvariantCulture) : 0;
            yield return (pattern, (key, FormattableString.Invariant($"{value(Number("a"), Number("b"))} mm")));
        }
    }

    [Fact]
    public void Without_a_fault_nothing_is_found()
    {
        var found = Examination.Examine(Sound).Findings.Where(f => Along.Contains(f.Rule)).ToArray();

        Assert.Equal(4, found.Length);
        Assert.All(found, f => Assert.True(f.Level == Level.Fine, $"{f.Rule} {f.Level}: {f.Says} {f.Remedy}"));
    }

    [Theory]
    [InlineData("fit.shaft_cover", "motor_pulley.face_offset=;mount.cover_depth=26 mm", "motor_pulley.face_offset")]
    [InlineData("belt.alignment", "motor_pulley.face_offset=;mount.plate_from_wheel=4 mm", "motor_pulley.face_offset")]
    [InlineData("fit.shaft_cover", "mount.plate_from_wheel=", "mount.plate_from_wheel")]
    [InlineData("fit.pulley_seat", "wheel_pulley.face_offset=;wheel_pulley.length=", "wheel_pulley.length")]
    [InlineData("fit.axle_length", "wheels.seat_offset=", "wheels.seat_offset")]
    public void What_nobody_measured_is_asked_for_where_it_matters(string rule, string edits, string key)
    {
        var found = Found(Edited(edits), rule);

        Assert.True(found.Level == Level.Measure, $"{found.Level}: {found.Says} {found.Remedy}");
        Assert.Contains(key, found.Needs);
    }

    [Theory]
    [InlineData("fit.shaft_cover", "motor.shaft_length=42 mm", Level.Stop)]
    [InlineData("fit.pulley_seat", "motor.shaft_length=20 mm", Level.Fix)]
    public void What_the_shaft_alone_says_is_said_without_the_pulley_s_place(string rule, string edits, Level level)
    {
        var found = Examination.Examine(Edited($"{edits};mount.plate_from_wheel=")).Findings.Where(f => f.Rule == rule).ToArray();

        Assert.Equal([level, Level.Measure], found.Select(f => f.Level).Order());
    }

    [Theory]
    [InlineData("27.5 mm", Level.Measure)]
    [InlineData("22.5 mm", Level.Measure)]
    [InlineData("20.5 mm", Level.Stop)]
    public void What_fails_wherever_the_teeth_sit_fails_though_nobody_measured_them(string depth, Level level)
    {
        // The pulley ends 27 to 33 mm beyond the plate, as its teeth sit at its outer or its inner end.
        var found = Found(Edited($"motor.shaft_length=26 mm;motor_pulley.face_offset=;mount.cover_depth={depth}"), "fit.shaft_cover");

        Assert.True(found.Level == level, $"{found.Level}: {found.Says} {found.Remedy}");
    }

    [Fact]
    public void What_holds_only_by_the_written_dimensions_is_to_be_measured()
    {
        var found = Found(Edited("motor.shaft_length=37.5 mm"), "fit.shaft_cover");

        Assert.Equal(Level.Measure, found.Level);
        Assert.Contains("at worst", $"{found.Says}", StringComparison.Ordinal);
        Assert.Contains("motor.shaft_length", $"{found.Remedy}", StringComparison.Ordinal);
    }

    [Fact]
    public void The_plate_s_place_enters_into_every_finding_about_the_motor_pulley()
    {
        // The surprise of a build: the same parts with the plate 17 mm further in are no longer fine.
        var found = Examination.Examine(Edited("mount.plate_from_wheel=25 mm")).Findings.ToLookup(f => f.Rule);

        Assert.Equal(Level.Stop, found["fit.shaft_cover"].Single().Level);
        Assert.Equal(Level.Fix, found["fit.pulley_seat"].Single().Level);
        Assert.Contains("past the shaft's end", $"{found["fit.pulley_seat"].Single().Says}", StringComparison.Ordinal);
        Assert.Contains("because", $"{found["fit.shaft_cover"].Single().Remedy}", StringComparison.Ordinal);
    }
}
