namespace Boardwright.Tests;

/// <summary>The folder that the tests were built from.</summary>
static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>A path inside it.</summary>
    public static string At(params string[] names) => Path.Combine([Root, .. names]);

    /// <summary>Every C# file that people wrote: migrations are written by a tool.</summary>
    public static IEnumerable<string> CSharpFiles =>
        from folder in Folders
        from file in Directory.EnumerateFiles(At(folder), "*.cs", SearchOption.AllDirectories)
        where !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("Migrations", StringComparison.Ordinal)
        select file;

    static readonly string[] Folders = ["src", "tests", "validation", "bench"];

    static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Boardwright.slnx")))
                return folder.FullName;
        }

        throw new InvalidOperationException("The tests do not run from inside the repository.");
    }
}
