using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.UsualValues;

namespace Boardwright.Tests.Rules;

/// <summary>Fine is earned: taking an entry away leaves a finding as it is, takes it away with what it is about, or asks for a
/// measurement.</summary>
public sealed class BlankEntryTests(ITestOutputHelper output)
{
    // Entry, rule (or * for every one), and why the rule may then say less or nothing.
    static readonly (string Entry, string Rule, string Reason)[] Allowed =
    [
        ("brief.gear_mass", "*", "nothing is carried where the file says nothing of it"),
        ("brief.headwind", "*", "the air is still where nothing is given"),
        ("brief.range_wanted", "cruise.range_wanted", "nothing is asked any more"),
        ("brief.speed_limit", "speed.limit", "no limit is entered any more"),
        ("brief.top_speed_wanted", "speed.wanted", "nothing is asked any more"),
        ("motor.power_rating", "pack.advertised_power", "nothing is advertised any more"),
        ("cell.mass", "*", "what nobody weighed is left out of the mass, and the mass is said to be a lower bound"),
        ("belt.length", "belt.length", "the belt is then known by its teeth, or asked for by belt.slot"),
        ("limits.regen_current", "current.regen", "what is not set yet can still be set right"),
        ("cell.polarisation.R1", "*", "the slow part of a cell's resistance is none where not given"),
    ];

    [Theory]
    [InlineData("tern")]
    [InlineData("puffin")]
    [InlineData("curlew")]
    public void Nothing_turns_to_fine_because_an_entry_is_blank(string name)
    {
        var board = Boards.Read(name);
        var findings = Examination.Examine(board).Findings;
        var (before, places) = (Worst(findings, f => f.Rule), Worst(findings, f => $"{f.Rule} at {f.Where}"));
        var wrong = new List<string>();
        foreach (var key in Boards.Entries(board))
        {
            findings = Examination.Examine(board.With((key, ""))).Findings;
            var (after, placesAfter) = (Worst(findings, f => f.Rule), Worst(findings, f => $"{f.Rule} at {f.Where}"));
            foreach (var (rule, level) in before)
            {
                // A finding that is worse or asks, or stays, has earned its place.
                if (!(after.TryGetValue(rule, out var now)
                    && (now <= level || findings.Any(f => f.Rule == rule && f.Level == Level.Measure))))
                    Note(key, rule, rule, level, after.TryGetValue(rule, out var found) ? $"{found}" : "nothing");
            }

            foreach (var (place, level) in places.Where(p => p.Value != Level.Fine))
            {
                if (placesAfter.TryGetValue(place, out var now) && now == Level.Fine)
                    Note(key, place.Split(' ')[0], place, level, "Fine");
            }
        }

        void Note(string key, string rule, string place, Level level, string now)
        {
            var says = $"{key} blank: {place} {level} becomes {now}";
            if (Array.Find(Allowed, a => a.Entry == key && (a.Rule == "*" || a.Rule == rule)) is { Reason: { } reason })
                output.WriteLine($"{says}, as {reason}");
            else if (UsualTable.Find(key) is not null || key is "motor.phase_resistance" or "motor.no_load_current")
                output.WriteLine($"{says}, as a usual value stands in; the report tries it two spreads away");
            else
                wrong.Add(says);
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    static Dictionary<string, Level> Worst(IReadOnlyList<Finding> findings, Func<Finding, string> by) =>
        findings.GroupBy(by, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Min(f => f.Level), StringComparer.Ordinal);
}
