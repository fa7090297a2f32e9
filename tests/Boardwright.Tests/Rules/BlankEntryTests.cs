using Boardwright.Examinations;
using Boardwright.Findings;

namespace Boardwright.Tests.Rules;

/// <summary>Fine is earned: taking an entry away leaves a finding as it is, takes it away with what it is about, or asks for a
/// measurement.</summary>
public sealed class BlankEntryTests(ITestOutputHelper output)
{
    // Entry (or its end, after *), rule (or * for every one), and why the rule may then say less or nothing.
    static readonly (string Entry, string Rule, string Reason)[] Allowed =
    [
        ("brief.gear_mass", "*", "nothing is carried where the file says nothing of it"),
        ("brief.headwind", "*", "the air is still where nothing is given"),
        ("brief.range_wanted", "cruise.range_wanted", "nothing is asked any more"),
        ("brief.speed_limit", "speed.limit", "no limit is entered any more"),
        ("brief.top_speed_wanted", "speed.wanted", "nothing is asked any more"),
        ("motor.power_rating", "pack.advertised_power", "nothing is advertised any more"),
        ("cell.mass", "*", "what nobody weighed is left out of the mass, and the mass is said to be a lower bound"),
        ("cell.polarisation.R1", "*", "the slow part of a cell's resistance is none where not given"),
    ];

    [Theory]
    [InlineData("tern")]
    [InlineData("puffin")]
    [InlineData("curlew")]
    public void Nothing_turns_to_fine_because_an_entry_is_blank(string name)
    {
        var board = Boards.Read(name);
        var before = Worst(Examination.Examine(board).Findings);
        var wrong = new List<string>();
        foreach (var key in Boards.Entries(board))
        {
            var after = Worst(Examination.Examine(board.With((key, ""))).Findings);
            foreach (var (rule, level) in before)
            {
                var now = after.TryGetValue(rule, out var found) ? found : (Level?)null;
                // A finding that is worse or asks, or stays, has earned its place.
                if (now is { } still && (still <= level || still == Level.Measure))
                    continue;
                if (Array.Find(Allowed, a => Fits(a.Entry, key) && (a.Rule == "*" || a.Rule == rule)) is { Reason: { } reason })
                    output.WriteLine($"{key} blank: {rule} {level} becomes {now?.ToString() ?? "nothing"}, as {reason}");
                else
                    wrong.Add($"{key} blank: {rule} {level} becomes {now?.ToString() ?? "nothing"}");
            }
        }

        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    static Dictionary<string, Level> Worst(IReadOnlyList<Finding> findings) =>
        findings.GroupBy(f => f.Rule).ToDictionary(g => g.Key, g => g.Min(f => f.Level), StringComparer.Ordinal);

    static bool Fits(string pattern, string key) =>
        pattern.StartsWith('*') ? key.EndsWith(pattern[1..], StringComparison.Ordinal) : key == pattern;
}
