using Boardwright.App.Reports;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;

namespace Boardwright.Tests.App;

public sealed class ReportTests
{
    [Theory]
    [InlineData(80, false, false)]
    [InlineData(80, true, false)]
    [InlineData(50, false, false)]
    [InlineData(50, true, false)]
    [InlineData(80, false, true)]
    [InlineData(50, true, true)]
    public void A_report_reads_as_approved(int width, bool isImperial, bool showsAll)
    {
        var report = Written(Heron.Outcome, width, isImperial ? UnitSystem.Imperial : UnitSystem.Metric, showsAll);

        Approved.Matches($"App/report-{width}-{(isImperial ? "imperial" : "metric")}{(showsAll ? "-all" : "")}.txt", report);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(47)]
    [InlineData(80)]
    [InlineData(100)]
    public void No_line_is_wider_than_the_terminal_and_none_ends_in_blanks(int width)
    {
        foreach (var line in Written(Heron.Outcome, width, UnitSystem.Metric, showsAll: true).Split('\n'))
        {
            Assert.True(line.Length <= width, line);
            Assert.Equal(line.TrimEnd(), line);
        }
    }

    [Fact]
    public void Styles_add_nothing_but_styles()
    {
        using var text = new StringWriter();
        Report.Write(new TerminalText(text, 80, isStyled: true), Heron.Outcome, UnitSystem.Metric, showsAll: false);

        Assert.Contains('\u001b', text.ToString());
        var bare = System.Text.RegularExpressions.Regex.Replace(
            text.ToString(), "\u001b\\[[0-9;]*m", "", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromMinutes(1));
        Assert.Equal(Written(Heron.Outcome, 80, UnitSystem.Metric, showsAll: false), bare);
    }

    [Fact]
    public void The_level_is_always_said_in_a_word()
    {
        var report = Written(Heron.Outcome, 80, UnitSystem.Metric, showsAll: true);

        foreach (var word in new[] { "stop ", "fix ", "measure ", "fine " })
            Assert.Contains($"\n{word}", report, StringComparison.Ordinal);
    }

    [Fact]
    public void The_report_never_says_that_a_board_is_safe() =>
        Assert.DoesNotContain("safe", Written(Heron.Outcome, 80, UnitSystem.Metric, showsAll: true), StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void A_board_without_anything_is_reported_too() =>
        Assert.StartsWith("A board without a name\nNo parts are chosen yet.\n", Written(new CheckOutcome(new Board().WithNames(), [], []), 80, UnitSystem.Metric, showsAll: true),
        StringComparison.Ordinal);

    [Fact]
    public void Values_that_hold_up_most_come_first_and_a_long_list_names_the_rest()
    {
        var rule = Heron.Rules[0];
        var findings = Enumerable.Range(1, 14).Select(i => new Finding
        {
            Rule = rule.Id,
            Level = Level.Measure,
            Where = "brief",
            Says = default,
            Needs = i == 9 ? ["brief.rider_mass"] : ["brief.rider_mass", $"brief.entry_{i:00}"],
        });
        var report = Written(new CheckOutcome(Heron.Board, [], [.. findings]), 80, UnitSystem.Metric, showsAll: false);

        Assert.Contains("measure  14 values are not known; 14 checks and 0 figures wait for them:\n           brief.rider_mass (14):", report, StringComparison.Ordinal);
        Assert.Contains("Before the board is run also: brief.entry_11,", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_longer_than_a_line_are_cut() =>
        Assert.Equal(["ab", "abcdefghij", "klm no"], TerminalText.Wrapped("ab abcdefghijklm no", 10));

    [Fact]
    public void Wide_letters_count_double() =>
        Assert.Equal(["鷺の", "板 x"], TerminalText.Wrapped("鷺の 板 x", 5));

    static string Written(CheckOutcome outcome, int width, UnitSystem units, bool showsAll)
    {
        using var text = new StringWriter();
        Report.Write(new TerminalText(text, width, isStyled: false), outcome, units, showsAll);
        return text.ToString();
    }
}
