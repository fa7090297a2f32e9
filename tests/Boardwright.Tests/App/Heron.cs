using Boardwright.Analyses;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;

namespace Boardwright.Tests.App;

/// <summary>A board that does not exist, with figures and findings made up by hand, so that reports can be looked at whatever the core
/// computes.</summary>
static class Heron
{
    public static Source Sheet { get; } = new("a source with an author, its pages 12–14, and enough words that the line has to be broken somewhere");

    public static IReadOnlyList<FigureKind> Kinds { get; } =
    [
        new("drive.ratio", "", "Gear ratio", "Turns of the motor for one turn of the wheel.", "wheel teeth / motor teeth", Sources.Geometry),
        new("speed.top_full", "km/h", "Top speed, full pack", "Speed on level ground at which the motors' pull equals all resistance, with a full pack.", "F(v) = R(v)", Sheet),
        new("climb.grade_at_climb_speed", "%", "Grade at climb speed", "Steepest grade that is held at the climb speed.", "(F - R) / (m g)", Sheet),
        new("cruise.range", "km", "Range at cruise", "Distance at cruise speed down to the reserve.", "E / e", Sheet),
        new("cruise.consumption", "Wh/km", "Consumption at cruise", "Energy out of the pack for each kilometre.", "P / v", Sheet),
        new("charge.time_full", "h", "Charging, empty to full", "Time on the charger from empty.", "Q / I", Sheet),
        new("mass.board", "kg", "Board", "Everything but the rider.", "sum of the parts", Sources.MakersSheet),
        new("money.parts", "EUR", "Parts", "Every part at its price.", "sum of the prices", Sources.MakersSheet),
        new("heat.winding_at_climb", "°C", "Winding after the climb", "Temperature of the winding at the end of the climb.", "two heat capacities in a row", Sheet),
    ];

    public static IReadOnlyList<Rule<BoardAnalysis>> Rules { get; } =
    [
        Rule("fits.cover_depth", "mount.cover_depth", "The motor pulley stays inside the belt cover."),
        Rule("limits.phase_current", "limits.phase_current", "The phase current stays within what motor and controller bear."),
        Rule("pack.resistance_known", "cell.resistance", "The pack's resistance is known at the riding temperature."),
        Rule("fits.shaft_length", "motor.shaft_length", "The motor shaft reaches through the pulley."),
        Rule("drive.teeth_in_mesh", "motor_pulley", "At least six teeth of the motor pulley carry load."),
    ];

    public static Board Board { get; } = new Board
    {
        Name = "Heron",
        Brief = new()
        {
            TopSpeedWanted = Speed.FromKilometresPerHour(45),
            RangeWanted = Length.FromKilometres(25),
            ClimbWanted = Fraction.FromPercent(15),
        },
        Parts = new()
        {
            Deck = new() { IsChosen = true, Name = "Reed 92" },
            Drive = new() { Kind = DriveKind.Belt, Motors = 2 },
            Motor = new() { IsChosen = true },
            Pack = new() { Series = 12, Parallel = 4 },
            Cell = new() { IsChosen = true, Name = "C21700-50" },
            Wheels = new() { Diameter = Length.FromMillimetres(100) },
        },
    }.WithNames();

    public static CheckOutcome Outcome { get; } = new(
        Board,
        [
            Known("drive.ratio", 40 / 15.0, "wheel_pulley.teeth", "motor_pulley.teeth"),
            Known("speed.top_full", 46.0837, "pack.voltage_full", "drive.ratio") with { Caution = "Level ground, no wind." },
            Known("climb.grade_at_climb_speed", 18.25, "limits.phase_current"),
            Known("cruise.range", 31.7, "pack.energy"),
            Known("cruise.consumption", 13.4, "brief.cruise_speed"),
            new() { Kind = Kinds[5], Unit = "h", Missing = ["charger.current", "charger.end_current", "cell.resistance"] },
            Known("mass.board", 9.84),
            Known("money.parts", 843.2),
            Known("heat.winding_at_climb", 74.5),
        ],
        [
            Found(0, Level.Stop, $"The pulley stands {Length.FromMillimetres(36.2):0.0 mm} out, the cover is {Length.FromMillimetres(34):0.0 mm} deep: {Length.FromMillimetres(2.2):0.0 mm} too little.", $"Take standoffs of {Length.FromMillimetres(9):0.0 mm}.")
                with { Value = new(36.2, "mm"), Limit = new(34, "mm"), Mend = new("mount.cover_standoff", "9 mm") },
            Found(1, Level.Fix, $"{Current.FromAmperes(60):0 A} are set; the motor bears {Current.FromAmperes(55):0 A} as long as the climb lasts.", $"Set {Current.FromAmperes(55):0 A} or less.")
                with { Value = new(60, "A"), Limit = new(55, "A") },
            Rules[2].Judge(null!)[0],
            Rules[3].Judge(null!)[0],
            Found(4, Level.Fine, $"7 teeth carry load; 6 are needed.", null) with { Value = new(7, ""), Limit = new(6, "") },
        ])
    {
        Rules = Rules,
        Spread = new Dictionary<string, Interval>(StringComparer.Ordinal)
        {
            ["drive.ratio"] = new(40 / 15.0, 40 / 15.0, []),
            ["speed.top_full"] = new(43.02, 48.95, ["motor.kv", "brief.drag_area"]),
            ["cruise.range"] = new(26.1, 37.4, ["brief.drag_area", "wheels.rolling_resistance"]),
            ["cruise.consumption"] = new(11.2, 16.1, ["brief.drag_area"]),
            ["mass.board"] = new(9.7, 9.98, []),
        },
        MeasureNext = [new("brief.drag_area", "Coast down on level ground.", [new("cruise.range", 0.4), new("speed.top_full", 0.25), new("climb.grade_at_climb_speed", 0)])],
    };

    static Figure Known(string id, double value, params string[] from)
    {
        var kind = Kinds.Single(k => k.Id == id);
        return new() { Kind = kind, Value = value, Unit = kind.Unit, From = from };
    }

    static Finding Found(int rule, Level level, FormattableString says, FormattableString? remedy) =>
        Rules[rule].Found(level, says, remedy);

    static Rule<BoardAnalysis> Rule(string id, string where, string claim) => new(
        id, where, claim, "What happens otherwise.", Sheet, (_, needs) =>
        {
            needs.Lack(where);
            return null;
        });
}
