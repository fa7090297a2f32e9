namespace Boardwright.Files.Logs;

/// <summary>Reads what a logger wrote on a ride: a table of any logger, or GPX.</summary>
/// <remarks>
/// Columns are found by the words and units of their names and shown as a mapping that can be overridden. Nothing is read
/// that could mean two things: 1,234 in a file that nowhere tells what its commas are is a complaint. Rows that cannot be
/// used are counted and listed.
/// </remarks>
public static class RideLogFile
{
    /// <summary>The largest file that is read.</summary>
    public const long MostBytes = 1L << 30;
    /// <summary>Bad rows that are listed one by one; all are counted.</summary>
    public const int MostBadRows = 1000;

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file, as the user wrote it.</param>
    /// <param name="wishes">What the user says about it.</param>
    public static RideLogReading Read(string path, LogWishes? wishes = null)
    {
        var shown = path.Replace('\\', '/');
        byte[] bytes;
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > MostBytes })
                return Refused(shown, 1, "", "The file is larger than 1 GiB.", "Cut the recording into rides.");
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(shown, 1, "", fault is FileNotFoundException or DirectoryNotFoundException ? "There is no such file." : "The file could not be read.", "Check the name, the folder, and whether another program holds the file.");
        }

        return Read(bytes, shown, wishes);
    }

    /// <summary>Reads bytes.</summary>
    /// <param name="bytes">The content of a file.</param>
    /// <param name="shown">How complaints name it.</param>
    /// <param name="wishes">What the user says about it.</param>
    public static RideLogReading Read(ReadOnlyMemory<byte> bytes, string shown, LogWishes? wishes = null)
    {
        var span = bytes.Span;
        if (span.StartsWith("\uFEFF"u8)) bytes = bytes[3..];
        else if (span.Length > 1 && (span[0], span[1]) is (0xFF, 0xFE) or (0xFE, 0xFF))
            return Refused(shown, 1, "", "The file is encoded as UTF-16, and UTF-8 is wanted.", "Save it again as UTF-8.");
        span = bytes.Span;
        if (span[..Math.Min(span.Length, 4096)].Contains((byte)0))
            return Refused(shown, 1, "", "The file is no text.", "Export the log as comma-separated values or GPX.");
        var first = span.IndexOfAnyExcept(" \t\r\n"u8);
        if (first < 0)
            return Refused(shown, 1, "", "The file is empty.", "Check that it is the right file.");
        return span[first] == (byte)'<'
            ? new GpxLog(shown).Read(bytes)
            : new LogTable(bytes, shown, wishes ?? new()).Read();
    }

    internal static RideLogReading Refused(string shown, int line, string key, string says, string remedy) =>
        new() { Complaints = [new(new(shown, line, 1), key, says, remedy)] };
}
