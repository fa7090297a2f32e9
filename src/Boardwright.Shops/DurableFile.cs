namespace Boardwright.Shops;

/// <summary>Files that are whole or not there, whenever the power fails.</summary>
static class DurableFile
{
    /// <summary>Writes a file beside its place, makes sure that it is on the disk, and puts it in place.</summary>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        var partial = path + ".partial";
        using (var stream = new FileStream(partial, FileMode.Create, FileAccess.Write))
        {
            stream.Write(bytes);
            stream.Flush(flushToDisk: true);
        }

        File.Move(partial, path, overwrite: true);
    }

    /// <summary>Makes sure that a file is on the disk.</summary>
    public static void Settle(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite);
        file.Flush(flushToDisk: true);
    }
}
