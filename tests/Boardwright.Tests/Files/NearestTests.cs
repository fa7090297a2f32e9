using Boardwright.Files;

namespace Boardwright.Tests.Files;

public sealed class NearestTests
{
    // The classic pairs of Levenshtein's and Damerau's measures.
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("teeth", "teeth", 0)]
    [InlineData("teeht", "teeth", 1)]
    [InlineData("", "abc", 3)]
    public void Distance_counts_slips(string a, string b, int slips) => Assert.Equal(slips, Nearest.Distance(a, b));

    [Theory]
    [InlineData("lenght", "length")]
    [InlineData("shaft-length", "shaft_length")]
    [InlineData("Kv", "kv")]
    [InlineData("phase_curent", "phase_current")]
    [InlineData("zzz", null)]
    public void The_word_that_was_meant_is_found(string written, string? meant) =>
        Assert.Equal(meant, Nearest.To(written, ["length", "shaft_length", "kv", "phase_current"]));
}
