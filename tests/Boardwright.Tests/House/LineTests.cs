using System.Text.RegularExpressions;

namespace Boardwright.Tests.House;

public sealed partial class LineTests
{
    const int Longest = 140;

    [Fact]
    public void A_line_fits_on_a_screen()
    {
        var longer = from file in Repository.CSharpFiles
                     from line in TooLong(File.ReadAllText(file))
                     select $"{Path.GetRelativePath(Repository.Root, file)}({line})";

        Assert.Empty(longer);
    }

    // A text is not cut for its length, so what stands in quotes does not count.
    static IEnumerable<int> TooLong(string code) =>
        from line in RawText().Replace(code, lines => new string('\n', lines.Value.Count(c => c == '\n'))).Split('\n').Index()
        where Text().Replace(line.Item, "\"\"").Length > Longest
        select line.Index + 1;

    [GeneratedRegex("\"\"\"[\\s\\S]*?\"\"\"", RegexOptions.None, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex RawText();

    [GeneratedRegex("\"(?:[^\"\\\\\n]|\\\\.)*\"", RegexOptions.None, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Text();
}
