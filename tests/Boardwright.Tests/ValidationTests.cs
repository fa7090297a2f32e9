using Boardwright.Validation;

namespace Boardwright.Tests;

public sealed class ValidationTests
{
    static readonly string Docs = Repository.At("docs", "validation");

    [Fact]
    public void The_committed_pages_are_those_that_the_program_writes()
    {
        var pages = ValidationPages.Write(Cases.All);
        foreach (var (name, text) in pages)
        {
            var file = Path.Combine(Docs, name);
            Assert.True(
                File.Exists(file) && File.ReadAllText(file).ReplaceLineEndings("\n") == text,
                $"docs/validation/{name} is stale: run dotnet run --project validation/Boardwright.Validation and look at what changed.");
        }

        Assert.Empty(Directory.EnumerateFiles(Docs).Select(Path.GetFileName).Except(pages.Keys));
    }

    [Fact]
    public void Every_miss_is_explained_and_no_pass_is_explained_away()
    {
        var checks = Cases.All.SelectMany(static topic => topic.Checks.Select((check, i) => (Name: $"{topic.Topic} {i + 1}: {check.Quantity}, published {check.Printed}, ours {check.Ours}", Check: check))).ToList();
        Assert.Empty(checks.Where(static c => c.Check.IsMiss && string.IsNullOrWhiteSpace(c.Check.MissBecause)).Select(static c => c.Name));
        Assert.Empty(checks.Where(static c => !c.Check.IsMiss && c.Check.MissBecause is not null).Select(static c => c.Name));
    }

    [Fact]
    public void Topics_have_names_of_their_own_and_stand_together_by_room()
    {
        Assert.Equal(Cases.All.Count, Cases.All.Select(static c => c.Slug).Distinct(StringComparer.Ordinal).Count());
        var rooms = Cases.All.Select(static c => c.Room).ToList();
        Assert.Equal(rooms.Distinct(StringComparer.Ordinal).Count(), rooms.Where((room, i) => i == 0 || rooms[i - 1] != room).Count());
    }

    [Theory]
    [InlineData("230.074", 230.0744, true)]
    [InlineData("230.074", 230.0746, false)]
    [InlineData("2.5e3", 2549, true)]
    [InlineData("2.5e3", 2551, false)]
    [InlineData("11 111", 11111.4, true)]
    [InlineData("-0.5", -0.56, false)]
    [InlineData("1.00", double.NaN, false)]
    public void A_value_matches_to_half_the_last_printed_digit(string printed, double value, bool matches) =>
        Assert.Equal(matches, new PrintedNumber(printed).Covers(value));
}
