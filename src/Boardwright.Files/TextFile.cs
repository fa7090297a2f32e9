using System.Text;

namespace Boardwright.Files;

/// <summary>Reads text files, and says what is wrong with those that are none.</summary>
/// <param name="open">Opens a file for reading.</param>
sealed class TextFile(Func<string, Stream> open)
{
    const int LargestFile = 4 * 1024 * 1024;

    /// <summary>Files of the disk.</summary>
    public static TextFile OnDisk { get; } = new(static path => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));

    /// <summary>Reads a file.</summary>
    /// <param name="path">Where it lies.</param>
    /// <param name="shown">How complaints name it.</param>
    /// <param name="complaints">Takes what is wrong.</param>
    /// <returns>The text, or <c>null</c> when there is none; that was then complained about.</returns>
    public string? Read(string path, string shown, Complaints complaints)
    {
        var start = new Place(shown, 1, 1);
        try
        {
            if (Directory.Exists(path))
            {
                complaints.Add(start, "", "This is a folder, and a file is wanted.", "Name the board file inside it, which ends in .board.yaml.");
                return null;
            }

            using var stream = open(path);
            var bytes = new byte[LargestFile + 1];
            var length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            if (length > LargestFile)
            {
                complaints.Add(start, "", "The file is larger than 4 MB, which no board or shelf file is.", "Check that it is the right file; a large shelf can be split into several files.");
                return null;
            }

            return Decode(bytes.AsSpan(0, length), shown, complaints);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException or System.Security.SecurityException)
        {
            var (says, remedy) = fault switch
            {
                FileNotFoundException or DirectoryNotFoundException => ("There is no such file.", "Check the name and the folder."),
                UnauthorizedAccessException or System.Security.SecurityException => ("The file may not be read by this user.", "Give yourself the permission to read it."),
                PathTooLongException or ArgumentException or NotSupportedException => ("This is not a name that a file can have.", "Check the name."),
                _ => ("The file could not be read: the disk or another program is in the way.", "Close programs that use it and try again."),
            };
            complaints.Add(start, "", says, remedy);
            return null;
        }
    }

    static string? Decode(ReadOnlySpan<byte> bytes, string shown, Complaints complaints)
    {
        var start = new Place(shown, 1, 1);
        if (Wide(bytes) is { } wide)
        {
            complaints.Add(start, "", $"The file is encoded as {wide}, and UTF-8 is wanted.", "Save it again as UTF-8.");
            return null;
        }

        if (bytes.StartsWith(Encoding.UTF8.Preamble))
            bytes = bytes[Encoding.UTF8.Preamble.Length..];
        for (var i = 0; i < bytes.Length; i++)
        {
            if (bytes[i] is < 32 and not ((byte)'\n' or (byte)'\r' or (byte)'\t') or 127)
            {
                complaints.Add(PlaceOf(bytes, i, shown), "", FormattableString.Invariant($"The byte 0x{bytes[i]:X2} does not occur in text, so this is not a text file."), "Check that it is the right file, and save it as plain UTF-8 text.");
                return null;
            }
        }

        var invalid = System.Text.Unicode.Utf8.IsValid(bytes) ? -1 : FirstInvalid(bytes);
        if (invalid >= 0)
        {
            complaints.Add(PlaceOf(bytes, invalid, shown), "", FormattableString.Invariant($"The byte 0x{bytes[invalid]:X2} is not UTF-8; the file is probably encoded as Latin-1 (Windows-1252), where it is '{(char)bytes[invalid]}'."), "Save the file again as UTF-8.");
            return null;
        }

        return Encoding.UTF8.GetString(bytes);
    }

    static string? Wide(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.UTF32.Preamble))
            return "UTF-32";
        if (bytes.StartsWith(Encoding.Unicode.Preamble) || bytes.StartsWith(Encoding.BigEndianUnicode.Preamble))
            return "UTF-16";
        // Without a mark at its start: every second byte of plain text is zero.
        var sample = bytes[..Math.Min(bytes.Length, 64)];
        var (even, odd) = (0, 0);
        for (var i = 0; i + 1 < sample.Length; i += 2)
        {
            even += sample[i] == 0 && sample[i + 1] >= 32 ? 1 : 0;
            odd += sample[i + 1] == 0 && sample[i] >= 10 ? 1 : 0;
        }

        return sample.Length >= 4 && Math.Max(even, odd) >= sample.Length / 2 * 0.9 ? "UTF-16" : null;
    }

    static int FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        for (var i = 0; i < bytes.Length;)
        {
            if (Rune.DecodeFromUtf8(bytes[i..], out _, out var consumed) != System.Buffers.OperationStatus.Done)
                return i;
            i += consumed;
        }

        return -1;
    }

    static Place PlaceOf(ReadOnlySpan<byte> bytes, int index, string shown)
    {
        var before = bytes[..index];
        var line = before.Count((byte)'\n') + 1;
        var column = index - before.LastIndexOf((byte)'\n');
        return new(shown, line, column);
    }
}
