using Boardwright.Files.Boards;

namespace Boardwright.Tests.Files;

/// <summary>A folder for one test, with files written into it, gone when the test is.</summary>
sealed class Workplace : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("board").FullName;

    public Workplace Write(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return this;
    }

    public Workplace Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(Path.Combine(Folder, name), bytes);
        return this;
    }

    public LoadedBoard Read(string name = "tern.board.yaml") => BoardFile.Read(Path.Combine(Folder, name));

    /// <summary>The complaints as a builder reads them, without the folder of this test.</summary>
    public string Told(LoadedBoard loaded) =>
        string.Join('\n', loaded.Complaints.Select(complaint => complaint.ToString().Replace(Folder + "/", "", StringComparison.Ordinal)));

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
