namespace Boardwright.Tests;

/// <summary>Compares a text with a file that somebody has read and approved. With BOARDWRIGHT_BLESS=1 the file is written anew
/// instead.</summary>
static class Approved
{
    /// <summary>Fails when the text differs from the file, and shows the first lines that do.</summary>
    /// <param name="path">Path of the file from this project's folder.</param>
    /// <param name="text">The text.</param>
    public static void Matches(string path, string text)
    {
        var file = Repository.At("tests", "Boardwright.Tests", path);
        if (Environment.GetEnvironmentVariable("BOARDWRIGHT_BLESS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
            return;
        }

        Assert.True(File.Exists(file), $"{path} is not there. Run the test with BOARDWRIGHT_BLESS=1, read the file, commit it.");
        var (approved, given) = (File.ReadAllText(file).Split('\n'), text.Split('\n'));
        var differing = Enumerable.Range(0, Math.Max(approved.Length, given.Length))
            .Where(i => approved.ElementAtOrDefault(i) != given.ElementAtOrDefault(i))
            .Select(i => $"line {i + 1}\n  - {approved.ElementAtOrDefault(i) ?? "(end)"}\n  + {given.ElementAtOrDefault(i) ?? "(end)"}")
            .ToList();
        Assert.True(differing.Count == 0, $"{path} differs in {differing.Count} lines; BOARDWRIGHT_BLESS=1 writes it anew.\n{string.Join('\n', differing.Take(12))}");
    }
}
