namespace Boardwright.Tests;

/// <summary>Where the sources lie, for tests that read or rewrite files beside them.</summary>
static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    static string Find(string? folder) =>
        folder is null ? throw new DirectoryNotFoundException("The tests do not run inside the repository.")
        : File.Exists(Path.Combine(folder, "Boardwright.slnx")) ? folder
        : Find(Path.GetDirectoryName(folder));
}
