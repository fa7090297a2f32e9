using Boardwright.Files;

namespace Boardwright.Tests.Files;

public sealed class NearestTests
{
    [Theory]
    [InlineData("lenght", "length")]
    [InlineData("shaft-length", "shaft_length")]
    [InlineData("Kv", "kv")]
    [InlineData("phase_curent", "phase_current")]
    [InlineData("zzz", null)]
    public void The_word_that_was_meant_is_found(string written, string? meant) =>
        Assert.Equal(meant, Nearest.To(written, ["length", "shaft_length", "kv", "phase_current"]));
}
