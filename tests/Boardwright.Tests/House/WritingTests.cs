using System.Text.RegularExpressions;

namespace Boardwright.Tests.House;

public sealed partial class WritingTests
{
    // Files that handle what lies on a disk themselves, and why.
    static readonly Dictionary<string, string> Exceptions = new(StringComparer.Ordinal)
    {
        ["Boardwright.Files/DurableFile.cs"] = "the writer itself",
        ["Boardwright.Shops.Sqlite/SqliteLocation.cs"] = "holds a lock, and moves whole databases that SQLite wrote",
    };

    [Fact]
    public void Every_file_is_written_by_the_one_safe_writer()
    {
        var writing = Directory.EnumerateFiles(Repository.At("src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => Writes().IsMatch(File.ReadAllText(file)))
            .Select(file => Path.GetRelativePath(Repository.At("src"), file).Replace('\\', '/'));

        Assert.Equal(Exceptions.Keys.Order(StringComparer.Ordinal), writing.Order(StringComparer.Ordinal));
    }

    // A stream that opens an existing file for reading alone is no writing.
    [GeneratedRegex(
        @"\bFile\.(Write\w+|Append\w+|Create|CreateText|Open|OpenWrite|OpenHandle|Copy|Move|Replace)\(
        | \bnew\ FileStream\((?![^;]*FileMode\.Open,\ FileAccess\.Read,)
        | \bnew\ StreamWriter\((?![^;]*leaveOpen)
        | FileInfo\([^)]*\)\.(Create|Append|Open|Copy|Move|Replace)",
        RegexOptions.ExplicitCapture | RegexOptions.IgnorePatternWhitespace, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Writes();
}
